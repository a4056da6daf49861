package detail

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"standclear/detail/unit"
)

// Line is one row of the schedule: parts that are alike, counted.
type Line struct {
	Mark, Name, Material, Note string
	Size                       [3]unit.Length
	Qty                        int
	Existing                   bool // or by others, or a layer of the wall, whose extent is not counted
}

// Schedule counts the parts by mark, name and size; new parts first, each group in build order.
func (a *Assembly) Schedule() []Line {
	type key struct {
		mark, name, mat, note string
		size                  [3]int64
	}
	at := map[key]int{}
	var lines []Line
	for _, p := range a.Parts {
		if p.Role == Earth || p.Role == Obstacle || p.Role == Outside {
			continue
		}
		k := key{p.Mark, p.Name, p.Material, p.Note, [3]int64{micron(p.Size[0]), micron(p.Size[1]), micron(p.Size[2])}}
		if i, ok := at[k]; ok {
			lines[i].Qty++
			continue
		}
		at[k] = len(lines)
		lines = append(lines, Line{Mark: p.Mark, Name: p.Name, Material: p.Material, Note: p.Note, Size: p.Size, Qty: 1, Existing: p.Existing || p.layer()})
	}
	sort.SliceStable(lines, func(i, j int) bool { return !lines[i].Existing && lines[j].Existing })
	return lines
}

// layer reports whether a part is a layer of the wall: it runs on past what is drawn, so its extent is not
// counted here.
func (p *Part) layer() bool {
	switch p.Role {
	case Barrier, OuterInsul, Furring, Cladding:
		return true
	}
	return false
}

// micron rounds to a hundredth of a millimetre, so that equal parts count as equal.
func micron(l unit.Length) int64 { return int64(math.Round(l.MM()*100 + 1e-6)) }

// Stick is one bought length of lumber and the pieces cut from it; sheet goods have no length.
type Stick struct {
	Section string // "southern pine 1 1/2 x 9 1/4"
	Length  unit.Length
	Pieces  []string // in cutting order
	Each    unit.Length
	Left    unit.Length // offcut
}

// CutList cuts the block plies from stock sticks: trim off one end, a kerf between pieces. The length of
// a piece lies along its grain. Plywood comes from sheets and is only counted. It fails with a reason
// when a ply is longer than a stick.
func (a *Assembly) CutList() ([]Stick, string) {
	s := a.Spec
	each, across := s.Blocks.Width, s.Blocks.Height
	if s.Blocks.Grain == "vertical" {
		each, across = across, each
	}
	if s.Stock.Length <= 0 {
		return nil, "stock.length is not given"
	}
	per := int(math.Floor(float64((s.Stock.Length-s.Stock.Trim+s.Stock.Kerf)/(each+s.Stock.Kerf)) + 1e-9))
	if per < 1 {
		return nil, fmt.Sprintf("a ply of %s does not fit a stick of %s", each.Text(s.Project.System), s.Stock.Length.Text(s.Project.System))
	}
	groups := map[string][]*Part{}
	var order []string
	for _, p := range a.Find(BlockPly) {
		k := p.Material + " " + strings.TrimSuffix(p.Size[0].Text(s.Project.System), " mm") + " x " + across.Text(s.Project.System)
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], p)
	}
	var out []Stick
	for _, k := range order {
		if groups[k][0].Material != s.Blocks.Species {
			out = append(out, Stick{Section: k, Each: each, Pieces: ids(groups[k])})
			continue
		}
		for ps := groups[k]; len(ps) > 0; {
			n := min(per, len(ps))
			left := s.Stock.Length - s.Stock.Trim - unit.Length(n)*each - unit.Length(n-1)*s.Stock.Kerf
			out = append(out, Stick{Section: k, Length: s.Stock.Length, Each: each, Pieces: ids(ps[:n]), Left: left})
			ps = ps[n:]
		}
	}
	return out, ""
}

func ids(ps []*Part) []string {
	out := make([]string, len(ps))
	for i, p := range ps {
		out[i] = p.ID
	}
	return out
}

// BlockMass returns the mass of one block in kilograms: plies and pad by volume and density.
func (a *Assembly) BlockMass(density func(material string) float64) float64 {
	if len(a.Blocks) == 0 {
		return 0
	}
	m := 0.0
	for _, p := range a.Blocks[0].Parts {
		if p.Role != BlockPly && p.Role != BlockPad && p.Role != FootPiece {
			continue
		}
		for _, s := range p.Solids {
			m += s.Volume() * 1e-9 * density(p.Material)
		}
	}
	return m
}
