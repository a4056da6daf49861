package detail

import (
	"fmt"
	"math"
	"sort"

	"standclear/detail/unit"
)

// Line is one row of the schedule: parts that are alike, counted.
type Line struct {
	Mark, Name, Material, Note string
	Size                       [3]unit.Length
	Qty                        int
	Existing                   bool
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
		if p.Role == Earth || p.Role == Obstacle {
			continue
		}
		k := key{p.Mark, p.Name, p.Material, p.Note, [3]int64{micron(p.Size[0]), micron(p.Size[1]), micron(p.Size[2])}}
		if i, ok := at[k]; ok {
			lines[i].Qty++
			continue
		}
		at[k] = len(lines)
		lines = append(lines, Line{Mark: p.Mark, Name: p.Name, Material: p.Material, Note: p.Note, Size: p.Size, Qty: 1, Existing: p.Existing})
	}
	sort.SliceStable(lines, func(i, j int) bool { return !lines[i].Existing && lines[j].Existing })
	return lines
}

// micron rounds to a hundredth of a millimetre, so that equal parts count as equal.
func micron(l unit.Length) int64 { return int64(math.Round(l.MM()*100 + 1e-6)) }

// Stick is one bought length of lumber and the pieces cut from it.
type Stick struct {
	Section string // "1 1/2 x 9 1/4"
	Length  unit.Length
	Pieces  []string // marks, in cutting order
	Each    unit.Length
	Left    unit.Length // offcut
}

// CutList cuts the block plies from stock sticks: trim off one end, a kerf between pieces. It fails
// with a reason when a ply is longer than a stick.
func (a *Assembly) CutList() ([]Stick, string) {
	st := a.Spec.Stock
	each := a.Spec.Blocks.Width
	if st.Length <= 0 {
		return nil, "stock.length is not given"
	}
	per := int(math.Floor(float64((st.Length-st.Trim+st.Kerf)/(each+st.Kerf)) + 1e-9))
	if per < 1 {
		return nil, fmt.Sprintf("a ply of %s does not fit a stick of %s", each.Text(a.Spec.Project.System), st.Length.Text(a.Spec.Project.System))
	}
	groups := map[string][]*Part{}
	var order []string
	for _, p := range a.Find(BlockPly) {
		s := p.Material + " " + p.Size[0].Text(a.Spec.Project.System) + " x " + a.Spec.Blocks.Height.Text(a.Spec.Project.System)
		if groups[s] == nil {
			order = append(order, s)
		}
		groups[s] = append(groups[s], p)
	}
	var out []Stick
	for _, s := range order {
		for ps := groups[s]; len(ps) > 0; {
			n := min(per, len(ps))
			k := Stick{Section: s, Length: st.Length, Each: each}
			for _, p := range ps[:n] {
				k.Pieces = append(k.Pieces, p.ID)
			}
			k.Left = st.Length - st.Trim - unit.Length(n)*each - unit.Length(n-1)*st.Kerf
			out = append(out, k)
			ps = ps[n:]
		}
	}
	return out, ""
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
