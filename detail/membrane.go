package detail

import (
	"fmt"
	"math"

	"standclear/detail/unit"
	"standclear/geom"
)

// Film is the thickness of one membrane, mm. Membranes lie on each other in layers of it, so that the
// order of the laps is in the solids and every section shows it.
//
//	sheathing | patch | wrap | barrier     above the block: each over the one before
//	          | ===== block
//	sheathing | barrier | patch            below it: the patch hangs over the barrier
const Film = 0.5

// layerAt returns the depths of the n-th film on the sheathing.
func layerAt(n int) (y0, y1 float64) { return float64(n) * Film, float64(n+1) * Film }

// PatchBox returns the outline of the patch behind block i in x and z; it is empty without a patch.
func (a *Assembly) PatchBox(i int) geom.Box {
	s, mid := a.Spec, a.Blocks[i].Box.Center()
	w, h := s.Water.Patch.Width.MM()/2, s.Water.Patch.Height.MM()/2
	if w <= 0 || h <= 0 {
		return geom.EmptyBox()
	}
	p := geom.Box{Min: geom.Vec{X: mid.X - w, Y: mid.Z - h}, Max: geom.Vec{X: mid.X + w, Y: mid.Z + h}}
	for _, d := range s.Doors {
		if p.Max.X > d.From.MM() && p.Min.X < d.To.MM() {
			p.Max.Y = math.Min(p.Max.Y, a.Frame.SubTop) // cut at the sill of the opening
		}
	}
	return p
}

// patch lies on the sheathing down to the foot of the block and over the barrier below it.
func (a *Assembly) patch(i int) {
	p, b := a.PatchBox(i), &a.Blocks[i]
	if p.Empty() {
		return
	}
	foot := b.Box.Min.Z
	in0, in1 := layerAt(0)
	if !a.Spec.Water.Patch.Under {
		in0, in1 = layerAt(1) // over the barrier at its top edge too: a reversed lap
	}
	out0, out1 := layerAt(1)
	mid0, mid1 := (in0+in1)/2, (out0+out1)/2
	part := a.add(Part{ID: b.Mark + "/M1", Mark: "M1", Name: "MEMBRANE PATCH", Role: Patch, Material: "membrane", Block: i, Thin: true,
		Size:  [3]unit.Length{0, a.Spec.Water.Patch.Width, a.Spec.Water.Patch.Height},
		Bends: []Bend{{geom.X, geom.Polyline(geom.Vec{X: mid0, Y: p.Max.Y}, geom.Vec{X: mid0, Y: foot}, geom.Vec{X: mid1, Y: foot}, geom.Vec{X: mid1, Y: p.Min.Y})}},
		Solids: []geom.Solid{
			panel(geom.Rect(p.Min.X, foot, p.Max.X, p.Max.Y), in0, in1), panel(geom.Rect(p.Min.X, p.Min.Y, p.Max.X, foot), out0, out1),
		}})
	b.Parts = append(b.Parts, part)
}

// WrapTop returns the height to which the wrap of block i turns up the wall.
func (a *Assembly) WrapTop(i int) float64 { return a.blockTop(i, 0) + a.Spec.Water.WrapLap.MM() }

// sideFlap is how far the cap of a block turns down over its sides, and the side pieces out onto the wall, mm:
// 2 in, as a horizontal lap (IRC R703.2).
const sideFlap = 50.8

// capPath is the profile of the cap in the plane across x, the same for every block: up the wall and out over
// the top.
func (a *Assembly) capPath() geom.Path {
	in0, in1 := a.wrapLayer()
	mid, end := (in0+in1)/2, a.Blocks[0].Box.Max.Y
	return geom.Polyline(geom.Vec{X: mid, Y: a.WrapTop(0)}, geom.Vec{X: mid, Y: a.blockTop(0, mid)}, geom.Vec{X: end, Y: a.blockTop(0, end)})
}

// cap builds the cap of block i over its side pieces, of the profile of all: up the wall, out over the top, down
// both sides. The foot stays bare, so that water in the block can leave.
//
//	|_____        cap M2
//	||   |        side pieces M3, under the cap
func (a *Assembly) cap(i int, top geom.Path, profile geom.Region) {
	s, b := a.Spec, &a.Blocks[i]
	_, in1 := a.wrapLayer()
	end := b.Box.Max.Y
	z1 := a.blockTop(i, end)
	flap := func(x0, x1 float64) geom.Solid { return box(x0, x1, in1, end, z1-sideFlap, z1) }
	p := a.add(Part{ID: b.Mark + "/M2", Mark: "M2", Name: "BLOCK CAP", Role: Wrap, Material: "membrane", Block: i, Thin: true, Bends: []Bend{{geom.X, top}},
		Size: [3]unit.Length{0, unit.Length(end) + s.Water.WrapLap, unit.Length(b.Box.Max.X - b.Box.Min.X + 2*sideFlap)}, Note: "turned down both sides",
		Solids: []geom.Solid{
			geom.Prism(profile, geom.X, b.Box.Min.X, b.Box.Max.X), flap(b.Box.Min.X-2*Film, b.Box.Min.X-Film), flap(b.Box.Max.X+Film, b.Box.Max.X+2*Film),
		}})
	b.Parts = append(b.Parts, p)
}

// wrapSides builds the two side pieces of block i, each turned out onto the wall.
func (a *Assembly) wrapSides(i int) {
	b := &a.Blocks[i]
	in0, in1 := a.wrapLayer()
	end := b.Box.Max.Y
	top := a.blockTop(i, end)
	for k, x := range []float64{b.Box.Min.X, b.Box.Max.X} {
		out := -1.0
		if k == 1 {
			out = 1
		}
		l, r := math.Min(x, x+out*Film), math.Max(x, x+out*Film)
		wl, wr := math.Min(x, x+out*sideFlap), math.Max(x, x+out*sideFlap)
		mid := (in0 + in1) / 2
		path := geom.Polyline(geom.Vec{X: x + out*sideFlap, Y: mid}, geom.Vec{X: x + out*Film/2, Y: mid}, geom.Vec{X: x + out*Film/2, Y: end})
		p := a.add(Part{ID: fmt.Sprintf("%s/M3-%d", b.Mark, k+1), Mark: "M3", Name: "BLOCK SIDE PIECE", Role: Wrap, Material: "membrane", Block: i, Thin: true, Bends: []Bend{{geom.Z, path}},
			Size: [3]unit.Length{0, unit.Length(end + sideFlap), unit.Length(b.Box.Max.Z - b.Box.Min.Z)}, Note: "2 in (50 mm) out onto the wall",
			Solids: []geom.Solid{box(l, r, in1, end, b.Box.Min.Z, top), panel(geom.Rect(wl, b.Box.Min.Z, wr, a.blockTop(i, 0)), in0, in1)}})
		b.Parts = append(b.Parts, p)
	}
}

// wrapLayer is where the wrap lies on the wall: over the patch.
func (a *Assembly) wrapLayer() (y0, y1 float64) {
	if !a.Spec.Water.Patch.Under {
		return layerAt(2)
	}
	return layerAt(1)
}

// barrier returns the water barrier: on the sheathing, but over patch and wrap from the foot of each
// block upward when it laps over them.
func (a *Assembly) barrier(cut geom.Region) []geom.Solid {
	var over geom.Region
	if a.Spec.Water.Patch.Under {
		for i := range a.Blocks {
			if p := a.PatchBox(i); !p.Empty() {
				b := a.Blocks[i].Box
				over = append(over, geom.Rect(p.Min.X, b.Min.Z, p.Max.X, p.Max.Y)...)
				over = append(over, geom.Rect(b.Min.X-sideFlap, b.Min.Z, b.Max.X+sideFlap, a.WrapTop(i))...)
			}
		}
	}
	over = geom.Intersect(geom.Union(over), cut)
	y0, y1 := layerAt(2)
	return append(panels(geom.Subtract(cut, over).Parts(), 0, Film), panels(over.Parts(), y0, y1)...)
}
