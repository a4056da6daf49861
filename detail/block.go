package detail

import (
	"fmt"

	"standclear/detail/spec"
	"standclear/detail/unit"
	"standclear/geom"
)

// blocks builds plies, pad, foot spacer, screws, patch and wrap of every block.
//
//	sheathing |ply|pad|ply|sp| ledger     top falls outward
func (a *Assembly) blocks() {
	if len(a.Blocks) == 0 {
		return
	}
	top := a.capPath()
	profile := geom.Thicken(top, Film/2, Film/2)
	for i := range a.Blocks {
		a.plies(i)
		a.patch(i)
		a.wrapSides(i)
		a.cap(i, top, profile)
		a.screws(i)
	}
}

func (a *Assembly) plies(i int) {
	s := a.Spec
	y := 0.0
	for k, t := range s.Blocks.Plies {
		if s.Blocks.Pad.Thickness > 0 && s.Blocks.Pad.After == k {
			y = a.pad(i, y)
		}
		mat, name := s.Blocks.Species, "BLOCK PLY"
		if k < len(s.Blocks.Material) && s.Blocks.Material[k] != "" && s.Blocks.Material[k] != "lumber" {
			mat, name = s.Blocks.Material[k], "FILLER PLY"
		}
		grain := geom.X
		if s.Blocks.Grain == "vertical" {
			grain = geom.Z
		}
		p := a.blockPiece(i, fmt.Sprintf("P%d", k+1), name, BlockPly, mat, y, t.MM())
		p.Grain = grain
		if mat == s.Blocks.Species {
			p.Note = s.Blocks.Grade
		}
		y += t.MM()
	}
	if s.Blocks.Pad.Thickness > 0 && s.Blocks.Pad.After >= len(s.Blocks.Plies) {
		a.pad(i, y)
	}
}

func (a *Assembly) pad(i int, y float64) float64 {
	s := a.Spec
	t := s.Blocks.Pad.Thickness.MM()
	p := a.blockPiece(i, "PD", "PAD", BlockPad, s.Blocks.Pad.Material, y, t)
	if s.Blocks.Pad.Foot {
		a.foot(i, p, y, t)
	}
	return y + t
}

// foot cuts the lowest quarter of the pad out for a solid spacer that takes the compression.
func (a *Assembly) foot(i int, pad *Part, y, t float64) {
	b := &a.Blocks[i]
	z := b.Box.Min.Z + (b.Box.Max.Z-b.Box.Min.Z)/4
	profile := geom.Subtract(a.sideProfile(i, y, t), geom.Rect(y-1, b.Box.Min.Z-1, y+t+1, z))
	pad.Solids[0] = geom.Prism(profile, geom.X, b.Box.Min.X, b.Box.Max.X)
	pad.Size[1] -= unit.Length(z - b.Box.Min.Z)
	p := a.add(Part{ID: b.Mark + "/FT", Mark: "FT1", Name: "FOOT SPACER", Role: FootPiece, Material: a.Spec.Blocks.Species, Note: a.Spec.Blocks.Grade, Block: i, Grain: geom.X,
		Size:   [3]unit.Length{unit.Length(t), unit.Length(z - b.Box.Min.Z), a.Spec.Blocks.Width},
		Solids: []geom.Solid{box(b.Box.Min.X, b.Box.Max.X, y, y+t, b.Box.Min.Z, z)}})
	b.Parts = append(b.Parts, p)
}

// blockPiece adds one ply or pad: its side profile with the sloped top, over the block's width.
func (a *Assembly) blockPiece(i int, mark, name string, role Role, mat string, y, t float64) *Part {
	b := &a.Blocks[i]
	p := a.add(Part{ID: b.Mark + "/" + mark, Mark: mark, Name: name, Role: role, Material: mat, Block: i,
		Size:   [3]unit.Length{unit.Length(t), unit.Length(a.blockTop(i, y) - b.Box.Min.Z), a.Spec.Blocks.Width},
		Solids: []geom.Solid{geom.Prism(a.sideProfile(i, y, t), geom.X, b.Box.Min.X, b.Box.Max.X)}})
	p.Bores = a.blockBores(i)
	b.Parts = append(b.Parts, p)
	return p
}

// blockTop is the height of the top of block i at depth y.
func (a *Assembly) blockTop(i int, y float64) float64 {
	return a.Blocks[i].Box.Max.Z - float64(a.Spec.Blocks.TopSlope)*y
}

// sideProfile is the outline of a piece of block i from depth y, t thick, in the plane across x.
func (a *Assembly) sideProfile(i int, y, t float64) geom.Region {
	z := a.Blocks[i].Box.Min.Z
	return geom.Region{geom.Polygon(
		geom.Vec{X: y, Y: z}, geom.Vec{X: y + t, Y: z}, geom.Vec{X: y + t, Y: a.blockTop(i, y+t)}, geom.Vec{X: y, Y: a.blockTop(i, y)})}
}

// blockBores returns the holes of every set that passes through block i.
func (a *Assembly) blockBores(i int) []geom.Solid {
	all := a.holes(i)
	out := make([]geom.Solid, 0, len(all))
	for _, at := range all {
		out = append(out, a.rod(at.X, at.Z, at.Dia/2, -1, a.Frame.BlockOut+1))
	}
	return out
}

// Hole is one bolt hole of a block: centre in x and z, diameter, and the set it is for.
type Hole struct {
	X, Z, Dia float64
	Set       *spec.Set
}

// Holes returns the holes of block i, set by set, top row first, left to right.
func (a *Assembly) Holes(i int) []Hole { return a.holes(i) }

func (a *Assembly) holes(i int) []Hole {
	n := 0
	for _, r := range a.Rows {
		n += max(1, r.Set.Columns)
	}
	out := make([]Hole, 0, n)
	for _, r := range a.Rows {
		for _, c := range r.Set.Offsets() {
			out = append(out, Hole{a.Blocks[i].X + c, r.Z, r.Set.Hole.MM(), r.Set})
		}
	}
	return out
}

// bores returns the holes of the sets that reach the rim, through depth y0 to y1.
func (a *Assembly) bores(y0, y1 float64) []geom.Solid {
	if len(a.Blocks) == 0 {
		return nil
	}
	out := make([]geom.Solid, 0, len(a.Blocks)*len(a.Blocks[0].Bolts))
	set := a.rimSet()
	for i := range a.Blocks {
		for _, h := range a.holes(i) {
			if h.Set == set {
				out = append(out, a.rod(h.X, h.Z, h.Dia/2, y0, y1))
			}
		}
	}
	return out
}
