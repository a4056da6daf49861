package design

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// levers are the parameters a designer would turn, those that cost least first.
func levers(s *spec.Spec, a *detail.Assembly) []lever {
	k := in{s.Project.System}
	all := []lever{
		{changes: k.holes(s)},
		{changes: k.raised("tie.rating", s.Tie.Rating)},
		{changes: k.raised("floor.backing.fixing", max(s.Floor.Backing.Fixing, 200*unit.Pound))},
		{changes: k.raised("deck.joists.hanger", s.Deck.Joists.Hanger)},
		{changes: k.raised("tie.lateral.rating", s.Tie.Lateral.Rating)},
		{changes: moreScrews("blocks.ply_screws.count", s.Blocks.PlyScrews.Count)},
		{changes: moreScrews("blocks.ledger_screws.count", s.Blocks.LedgerScrews.Count)},
		{changes: k.wider(s)},
		{changes: k.closer(a)},
		{changes: k.shifted(s), all: true},
		{changes: k.up(s), given: true},
		{changes: [][]string{{"blocks.end_min=" + k.length(s.Blocks.Width/2)}}},
		{changes: k.plates(s)},
		{changes: k.thicker(s)},
		{changes: k.washers(s)},
		{changes: k.shorter(s.Deck.Span), given: true},
	}
	all = append(all, k.added(s, a)...)
	if s.Blocks.Pad.Thickness > 0 {
		all = append(all, lever{changes: k.solid(s)})
		if !s.Blocks.Pad.Foot {
			all = append(all, lever{changes: [][]string{{"blocks.pad.foot=yes"}}})
		}
	}
	all = append(all, k.behind(s)...)
	if s.Blocks.Moisture.Assembly != "dry" {
		all = append(all, lever{changes: [][]string{{"blocks.moisture.assembly=dry"}}})
	}
	return append(all, lever{changes: k.rims(s.Floor.Rim.Thickness), given: true})
}

// in writes values as a project file of one system of units has them.
type in struct{ sys unit.System }

func (k in) length(l unit.Length) string {
	if k.sys == unit.SI {
		return fmt.Sprintf("%gmm", math.Round(l.MM()*2)/2)
	}
	return fmt.Sprintf("%gin", math.Round(l.Inches()*16)/16)
}

func (k in) force(f unit.Force) string {
	if k.sys == unit.SI {
		return fmt.Sprintf("%gkN", math.Ceil(f.Newtons()/100)/10)
	}
	return fmt.Sprintf("%glb", math.Ceil(f.Pounds()/10)*10)
}

// raised are greater ratings; none where no rating is stated at all.
func (k in) raised(key string, from unit.Force) (out [][]string) {
	if from <= 0 {
		return nil
	}
	for _, f := range []unit.Force{1.1, 1.25, 1.5, 2, 3, 5} {
		out = append(out, []string{key + "=" + k.force(from*f)})
	}
	return out
}

func moreScrews(key string, from int) (out [][]string) {
	if from == 0 {
		return nil
	}
	for n := from + 2; n <= from+12; n += 2 {
		out = append(out, []string{fmt.Sprintf("%s=%d", key, n)})
	}
	return out
}

// closer are spacings below the greatest there is, down to a foot.
func (k in) closer(a *detail.Assembly) (out [][]string) {
	greatest := 0.0
	for i := range a.Blocks[:max(0, len(a.Blocks)-1)] {
		greatest = max(greatest, a.Blocks[i+1].X-a.Blocks[i].X)
	}
	step := unit.Length(unit.Inch)
	if k.sys == unit.SI {
		step = 25 * unit.MM
	}
	for l := unit.Length(math.Ceil(greatest/step.MM())-1) * step; l >= 12*step; l -= step {
		out = append(out, []string{"blocks.max_spacing=" + k.length(l)})
	}
	return out
}

// wider are wider blocks.
func (k in) wider(s *spec.Spec) (out [][]string) {
	step := unit.Inch / 2
	if k.sys == unit.SI {
		step = 10 * unit.MM
	}
	for n := unit.Length(1); n <= 8; n++ {
		out = append(out, []string{"blocks.width=" + k.length(s.Blocks.Width+n*step)})
	}
	return out
}

// shifted are rows of fasteners moved down or up by sixteenths or millimetres, the top row or the lowest.
func (k in) shifted(s *spec.Spec) (out [][]string) {
	step := unit.Inch / 16
	if k.sys == unit.SI {
		step = 2 * unit.MM
	}
	for n := 1; n <= 5; n++ {
		for _, way := range []unit.Length{1, -1} {
			for _, set := range sets(s) {
				for _, row := range []int{0, len(set.at.Rows) - 1} {
					var rows []string
					for i, z := range set.at.Rows {
						if i == row {
							z += way * unit.Length(n) * step
						}
						rows = append(rows, k.length(z))
					}
					out = append(out, []string{fmt.Sprintf("fasteners.%s.rows=[%s]", set.name, strings.Join(rows, ", "))})
				}
			}
		}
	}
	return out
}

// up is the deck nearer the floor.
func (k in) up(s *spec.Spec) (out [][]string) {
	step := unit.Inch / 4
	if k.sys == unit.SI {
		step = 5 * unit.MM
	}
	for n := unit.Length(1); n <= 12 && s.Deck.Below-n*step > 0; n++ {
		out = append(out, []string{"deck.below_floor=" + k.length(s.Deck.Below-n*step)})
	}
	return out
}

// plates are thicker washers of the same size.
func (k in) plates(s *spec.Spec) (out [][]string) {
	for _, t := range []unit.Length{unit.Inch / 8, 3 * unit.Inch / 16, unit.Inch / 4, 5 * unit.Inch / 16, 3 * unit.Inch / 8} {
		if k.sys == unit.SI {
			t = unit.Length(math.Ceil(t.MM()))
		}
		var change []string
		for _, set := range sets(s) {
			if t > set.at.Washer.Thickness+0.1 {
				change = append(change, "fasteners."+set.name+".washer.thickness="+k.length(t))
			}
		}
		if len(change) > 0 {
			out = append(out, change)
		}
	}
	return out
}

// thicker are the next bolt diameters of every set, with the hole each needs.
func (k in) thicker(s *spec.Spec) (out [][]string) {
	sizes, play := []unit.Length{unit.Inch / 2, 5 * unit.Inch / 8, 3 * unit.Inch / 4, 7 * unit.Inch / 8, unit.Inch}, unit.Inch/16
	if k.sys == unit.SI {
		sizes, play = []unit.Length{12, 16, 20, 24}, 1.5*unit.MM
	}
	for _, d := range sizes {
		var change []string
		for _, set := range sets(s) {
			if d <= set.at.Diameter+0.1 {
				continue
			}
			change = append(change, fmt.Sprintf("fasteners.%s.diameter=%s", set.name, k.length(d)), fmt.Sprintf("fasteners.%s.hole=%s", set.name, k.length(d+play)))
		}
		if len(change) > 0 {
			out = append(out, change)
		}
	}
	return out
}

// holes are bolt holes of the usual play, where they have another.
func (k in) holes(s *spec.Spec) [][]string {
	play := unit.Inch / 16
	if k.sys == unit.SI {
		play = 1.5 * unit.MM
	}
	var change []string
	for _, set := range sets(s) {
		if math.Abs(float64(set.at.Diameter+play-set.at.Hole)) > 0.01 {
			change = append(change, fmt.Sprintf("fasteners.%s.hole=%s", set.name, k.length(set.at.Diameter+play)))
		}
	}
	if len(change) == 0 {
		return nil
	}
	return [][]string{change}
}

// solid is the block with wood in the pad's place.
func (k in) solid(s *spec.Spec) [][]string {
	var plies []string
	for i, p := range s.Blocks.Plies {
		if i == s.Blocks.Pad.After {
			plies = append(plies, k.length(s.Blocks.Pad.Thickness))
		}
		plies = append(plies, k.length(p))
	}
	if s.Blocks.Pad.After >= len(s.Blocks.Plies) {
		plies = append(plies, k.length(s.Blocks.Pad.Thickness))
	}
	return [][]string{{"blocks.plies=[" + strings.Join(plies, ", ") + "]", "blocks.pad.thickness=" + k.length(0)}}
}

// washers are larger plates under head and nut of every set.
func (k in) washers(s *spec.Spec) (out [][]string) {
	plates := [][2]unit.Length{{2 * unit.Inch, 3 * unit.Inch / 16}, {2.5 * unit.Inch, unit.Inch / 4}, {3 * unit.Inch, 5 * unit.Inch / 16}, {4 * unit.Inch, 3 * unit.Inch / 8}}
	if k.sys == unit.SI {
		plates = [][2]unit.Length{{50, 5}, {60, 6}, {80, 8}, {100, 10}}
	}
	for _, p := range plates {
		var change []string
		for _, set := range sets(s) {
			if p[0] > set.at.Washer.Size+0.1 {
				at := "fasteners." + set.name + ".washer."
				change = append(change, at+"size="+k.length(p[0]), at+"thickness="+k.length(p[1]), at+"kind=plate")
			}
		}
		if len(change) > 0 {
			out = append(out, change)
		}
	}
	return out
}

// named is a set of fasteners with its key.
type named struct {
	name string
	at   *spec.Set
}

// sets are the bolts the project has.
func sets(s *spec.Spec) (out []named) {
	for _, n := range []named{{"through", s.Fasteners.Through}, {"to_rim", s.Fasteners.ToRim}, {"to_block", s.Fasteners.ToBlock}} {
		if n.at != nil && n.at.Kind == "bolt" {
			out = append(out, n)
		}
	}
	return out
}

// shorter are joist spans with the beam nearer the house.
func (k in) shorter(from unit.Length) (out [][]string) {
	step := 6 * unit.Inch
	if k.sys == unit.SI {
		step = 150 * unit.MM
	}
	for i := 1; i <= 6 && from-unit.Length(i)*step > 0; i++ {
		out = append(out, []string{"deck.span=" + k.length(from-unit.Length(i)*step)})
	}
	return out
}

// rims are thicker rims, for a house not yet built.
func (k in) rims(from unit.Length) (out [][]string) {
	for _, t := range []unit.Length{1.25 * unit.Inch, 1.5 * unit.Inch, 1.75 * unit.Inch, 3 * unit.Inch} {
		if t > from+0.5 {
			out = append(out, []string{"floor.rim.thickness=" + k.length(t)})
		}
	}
	return out
}
