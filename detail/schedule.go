package detail

import (
	"math"
	"sort"

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
