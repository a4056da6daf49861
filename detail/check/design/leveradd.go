package design

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// added are the levers that add something the design has not got yet, or choose another kind of it.
func (k in) added(s *spec.Spec, a *detail.Assembly) []lever {
	var all []lever
	add := func(changes ...[]string) { all = append(all, lever{changes: changes, adds: true}) }
	j := s.Deck.Joists
	if j.HangerDepth != "full" {
		add([]string{"deck.joists.hanger_depth=full"})
	}
	if !j.Restrained {
		add([]string{"deck.joists.restrained=yes"})
	}
	if j.HangerFlange > 0 {
		all = append(all, lever{changes: [][]string{{"deck.joists.hanger_flange=" + k.length(0)}}})
	}
	if s.Tie.Lateral.Count == 0 {
		// IRC 2021 R507.9.2: two devices of 1,500 lb or four of 750 lb
		add([]string{"tie.lateral.count=2", "tie.lateral.rating=" + k.force(1500*unit.Pound)})
	}
	all = append(all, lever{changes: k.fastened(s), adds: true}, lever{changes: k.ends(s), all: true}, lever{changes: k.deeper(s), all: true},
		lever{changes: k.fitted(s, a), all: true}, lever{changes: k.paired(s), adds: true}, lever{changes: k.narrower(s), all: true},
		lever{changes: fewerScrews("blocks.ply_screws.count", s.Blocks.PlyScrews.Count), all: true},
		lever{changes: k.shorterScrews(s), all: true}, lever{changes: k.farther(s, a.Layout.Limit), all: true}, lever{changes: k.flashed(s)})
	return append(all, k.whole(s, a, all))
}

// whole is all that carries at once: backing, ties, tension devices, plies fixed to each other, two columns of bolts,
// as far as the design has not got them, also with rows placed anew and end blocks farther in. It is for designs in
// which no one change gets far.
func (k in) whole(s *spec.Spec, a *detail.Assembly, single []lever) lever {
	var sets []string
	for _, l := range append(k.behind(s), single...) {
		if n := len(l.changes); n > 0 && l.adds {
			sets = append(sets, l.changes[n-1]...)
		}
	}
	if s.Blocks.Pad.Thickness > 0 {
		sets = append(sets, k.solid(s)[0]...)
	}
	l := lever{changes: [][]string{sets}, many: true, all: true}
	for _, with := range [][][]string{k.fitted(s, a), k.ends(s)} {
		for _, so := range l.changes {
			if len(with) > 0 {
				l.changes = append(l.changes, slices.Concat(so, with[len(with)/2]))
			}
		}
	}
	return l
}

// behind are blocking and ties behind the rim, where there are none; ties only where house joists run onto it.
func (k in) behind(s *spec.Spec) (all []lever) {
	if s.Floor.Backing.Kind != "carried" {
		all = append(all, lever{adds: true, changes: [][]string{{"floor.backing.kind=carried", "floor.backing.material=lsl", "floor.backing.thickness=" + k.length(1.75*unit.Inch), "floor.backing.fixing=" + k.force(1000*unit.Pound)}}})
	}
	if s.Tie.Kind == "none" && s.Floor.Joists.Direction != "parallel" {
		l := lever{adds: true}
		for _, f := range []unit.Force{1000, 1500, 2500} {
			l.changes = append(l.changes, []string{"tie.kind=strap", "tie.rating=" + k.force(f*unit.Pound)})
		}
		all = append(all, l)
	}
	return all
}

// fastened are plies screwed to each other, across each joint as many as hold and as few as may be.
func (k in) fastened(s *spec.Spec) (out [][]string) {
	b := s.Blocks
	if b.PliesFastened || b.PlyScrews.Count > 0 || len(b.Plies) < 2 {
		return nil
	}
	d, l := unit.Length(0.19)*unit.Inch, 2.75*unit.Inch // No.10
	if k.sys == unit.SI {
		d, l = 5, 80
	}
	for n := 8; n <= 20; n += 4 {
		out = append(out, []string{"blocks.plies_fastened=yes", fmt.Sprintf("blocks.ply_screws.count=%d", n), "blocks.ply_screws.diameter=" + k.fine(d), "blocks.ply_screws.length=" + k.length(l)})
	}
	return out
}

// ends are end blocks that may stand farther in, up to 20 in or 500 mm.
func (k in) ends(s *spec.Spec) (out [][]string) {
	step, most := unit.Inch/2, 20*unit.Inch
	if k.sys == unit.SI {
		step, most = 20*unit.MM, 500*unit.MM
	}
	for l := s.Blocks.EndMax + step; l <= most; l += step {
		out = append(out, []string{"blocks.end_max=" + k.length(l)})
	}
	return out
}

// farther are greater spacings, by up to half a foot or 150 mm; first the one that a row of blocks needs at least.
func (k in) farther(s *spec.Spec, needed float64) (out [][]string) {
	step, fine := unit.Inch, unit.Inch/8
	if k.sys == unit.SI {
		step, fine = 25*unit.MM, unit.MM
	}
	if least := (unit.Length(math.Ceil(needed/float64(fine)-1e-6)) * fine); least > s.Blocks.MaxSpacing {
		out = append(out, []string{"blocks.max_spacing=" + k.length(least)})
	}
	for n := unit.Length(1); n <= 6; n++ {
		out = append(out, []string{"blocks.max_spacing=" + k.length(s.Blocks.MaxSpacing+n*step)})
	}
	return out
}

// flashed are flashings that reach farther out.
func (k in) flashed(s *spec.Spec) (out [][]string) {
	step := unit.Inch / 8
	if k.sys == unit.SI {
		step = 5 * unit.MM
	}
	for n := unit.Length(1); n <= 12; n++ {
		out = append(out, []string{"water.flashing.out=" + k.length(s.Water.Flashing.Out+n*step)})
	}
	return out
}

// deeper are blocks of more plies, each the size above the last, up to 5 in or 120 mm more.
func (k in) deeper(s *spec.Spec) (out [][]string) {
	ply, board := 1.5*unit.Inch, 0.75*unit.Inch
	if k.sys == unit.SI {
		ply, board = 45*unit.MM, 20*unit.MM
	}
	now := unit.Length(s.Blocks.Depth())
	for half := 2; half <= 16; half++ {
		depth := unit.Length(half/2)*ply + unit.Length(half%2)*board
		if depth <= now+0.5 || depth > now+5*unit.Inch {
			continue
		}
		var plies []string
		for range half / 2 {
			plies = append(plies, k.length(ply))
		}
		if half%2 == 1 {
			plies = append(plies, k.length(board))
		}
		change := []string{"blocks.plies=[" + strings.Join(plies, ", ") + "]"}
		if s.Blocks.Pad.Thickness > 0 {
			change = append(change, "blocks.pad.thickness="+k.length(0))
		}
		out = append(out, change)
	}
	return out
}

// fitted are two rows of through bolts placed anew between the edges they must keep from: 4 D above the underside of
// the rim, 4 D below the lower of the tops of ledger and block, in the deck's place or nearer the floor.
func (k in) fitted(s *spec.Spec, a *detail.Assembly) (out [][]string) {
	set := s.Fasteners.Through
	if set == nil || set.Kind != "bolt" || len(set.Rows) != 2 {
		return nil
	}
	step, grid := unit.Inch/2, unit.Inch/16
	if k.sys == unit.SI {
		step, grid = 10*unit.MM, unit.MM
	}
	f, edge := a.Frame, 4*set.Diameter
	top := unit.Length(f.LedgerTop-min(f.LedgerTopFront, f.BlockTopFront)) + edge
	top = grid * unit.Length(math.Ceil(float64(top/grid)-1e-9))
	for n := unit.Length(0); n <= 12 && s.Deck.Below-n*step > 0; n++ {
		low := unit.Length(f.LedgerTop-f.RimBottom) + n*step - edge
		low = grid * unit.Length(math.Floor(float64(min(low, s.Ledger.Height-edge)/grid)+1e-9))
		if low < top+edge {
			continue
		}
		rows := fmt.Sprintf("fasteners.through.rows=[%s, %s]", k.length(top), k.length(low))
		if n == 0 {
			out = append(out, []string{rows})
			continue
		}
		out = append(out, []string{"deck.below_floor=" + k.length(s.Deck.Below-n*step), rows})
	}
	return out
}

// paired are two columns of through bolts in place of one, on blocks wide enough to keep 4 D beside them.
func (k in) paired(s *spec.Spec) [][]string {
	set := s.Fasteners.Through
	if set == nil || set.Kind != "bolt" || set.Columns != 1 {
		return nil
	}
	apart := max(4*set.Diameter, set.Washer.Size+unit.Inch/4)
	wide := max(s.Blocks.Width, apart+8*set.Diameter+unit.Inch/8)
	return [][]string{{"fasteners.through.columns=2", "fasteners.through.column_spacing=" + k.length(apart), "blocks.width=" + k.length(wide)}}
}

// narrower are blocks that leave more of the gap open.
func (k in) narrower(s *spec.Spec) (out [][]string) {
	step := unit.Inch / 4
	if k.sys == unit.SI {
		step = 5 * unit.MM
	}
	for n := unit.Length(1); n <= 6 && s.Blocks.Width-n*step > 4*unit.Inch; n++ {
		out = append(out, []string{"blocks.width=" + k.length(s.Blocks.Width-n*step)})
	}
	return out
}

func fewerScrews(key string, from int) (out [][]string) {
	for n := from - 2; n >= max(4, from-12); n -= 2 {
		out = append(out, []string{fmt.Sprintf("%s=%d", key, n)})
	}
	return out
}

// shorterScrews are screws between the plies that do not reach so far.
func (k in) shorterScrews(s *spec.Spec) (out [][]string) {
	step, least := unit.Inch/4, 1.75*unit.Inch
	if k.sys == unit.SI {
		step, least = 10*unit.MM, 45*unit.MM
	}
	if s.Blocks.PlyScrews.Count == 0 {
		return nil
	}
	for l := s.Blocks.PlyScrews.Length - step; l >= least; l -= step {
		out = append(out, []string{"blocks.ply_screws.length=" + k.length(l)})
	}
	return out
}

// fine writes a length that is no multiple of a sixteenth.
func (k in) fine(l unit.Length) string {
	if k.sys == unit.SI {
		return fmt.Sprintf("%gmm", math.Round(l.MM()*10)/10)
	}
	return fmt.Sprintf("%gin", math.Round(l.Inches()*1000)/1000)
}
