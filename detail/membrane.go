package detail

import (
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
	return geom.Box{Min: geom.Vec{X: mid.X - w, Y: mid.Z - h}, Max: geom.Vec{X: mid.X + w, Y: mid.Z + h}}
}

// membranes builds the patch on the sheathing behind the block and the wrap round its sides.
func (a *Assembly) membranes(i int) {
	a.patch(i)
	a.wrap(i)
}

// patch lies on the sheathing down to the foot of the block and over the barrier below it.
func (a *Assembly) patch(i int) {
	p, b := a.PatchBox(i), &a.Blocks[i]
	if p.Empty() {
		return
	}
	foot := b.Box.Min.Z
	in0, in1 := layerAt(0)
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

// wrap turns up the wall above the block, runs out over its top and round sides and foot.
func (a *Assembly) wrap(i int) {
	s, b := a.Spec, &a.Blocks[i]
	z1 := func(y float64) float64 { return a.blockTop(i, y) }
	lap := s.Water.WrapLap.MM()
	in0, in1 := layerAt(1)
	mid, end := (in0+in1)/2, b.Box.Max.Y
	top := geom.Polyline(geom.Vec{X: mid, Y: z1(0) + lap}, geom.Vec{X: mid, Y: z1(mid)}, geom.Vec{X: end, Y: z1(end)})
	bottom := geom.Polyline(geom.Vec{X: 0, Y: b.Box.Min.Z}, geom.Vec{X: end, Y: b.Box.Min.Z})
	girth := 2*(b.Box.Max.Z-b.Box.Min.Z) + 2*s.Blocks.Width.MM()
	p := a.add(Part{ID: b.Mark + "/M2", Mark: "M2", Name: "BLOCK WRAP", Role: Wrap, Material: "membrane", Block: i, Thin: true, Bends: []Bend{{geom.X, top}, {geom.X, bottom}},
		Size: [3]unit.Length{0, unit.Length(end + lap), unit.Length(girth)},
		Solids: []geom.Solid{
			geom.Sheet(top, Film/2, Film/2, geom.X, b.Box.Min.X, b.Box.Max.X), geom.Sheet(bottom, 0, Film, geom.X, b.Box.Min.X, b.Box.Max.X),
			box(b.Box.Min.X-Film, b.Box.Min.X, 0, end, b.Box.Min.Z, z1(end)), box(b.Box.Max.X, b.Box.Max.X+Film, 0, end, b.Box.Min.Z, z1(end)),
		}})
	b.Parts = append(b.Parts, p)
}

// barrier returns the water barrier: on the sheathing, but over patch and wrap from the foot of each
// block upward when it laps over them.
func (a *Assembly) barrier(cut geom.Region, t float64) []geom.Solid {
	var over geom.Region
	if a.Spec.Water.Patch.Under {
		for i := range a.Blocks {
			if p := a.PatchBox(i); !p.Empty() {
				over = append(over, geom.Rect(p.Min.X, a.Blocks[i].Box.Min.Z, p.Max.X, p.Max.Y)...)
			}
		}
	}
	over = geom.Intersect(geom.Union(over), cut)
	y, _ := layerAt(2)
	return append(panels(geom.Subtract(cut, over), 0, t), panels(over, y, y+t)...)
}
