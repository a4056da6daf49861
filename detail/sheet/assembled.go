package sheet

import (
	"math"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// assembled is the neighbourhood of a block in place, cut through its bolts: what lies beyond the cut, and
// the face of the cut.
type assembled struct {
	x      float64
	face   view.Picture
	beyond view.Pictorial
}

// leftOut are the roles the assembled view does not need.
var leftOut = map[detail.Role]bool{
	detail.Obstacle: true, detail.Outside: true, detail.TensionRod: true, detail.PlyScrew: true, detail.Earth: true, detail.Threshold: true,
}

func (w *writer) newAssembled(n neighbourhood) assembled {
	const short = 0.7 // of a stub
	b := w.a.Blocks[n.block].Box
	e := assembled{x: w.cutAtBlock(n.block)}
	r := n.room
	r.Min.X, r.Max.X = e.x, math.Max(b.Max.X+130, e.x+250)
	r.Min.Y, r.Max.Y = r.Min.Y+stub*(1-short), r.Max.Y-stub*(1-short)
	var ms []view.Moved
	for _, p := range w.a.Parts {
		if leftOut[p.Role] || !w.stands(p, n.block) && p.Role != detail.BlockPly && p.Role != detail.BlockPad {
			continue
		}
		m := view.Moved{Part: p}
		for _, s := range p.Solids {
			if c := s.Crop(r); !c.Empty() {
				m.Solids = append(m.Solids, c)
			}
		}
		if len(m.Solids) > 0 {
			ms = append(ms, m)
		}
	}
	e.beyond = view.Lay(pictorial(), ms, nil)
	e.face = view.Cut(w.a, view.AcrossWall(e.x), view.Options{Depth: 1, Leave: leftOut,
		Window: geom.Box{Min: geom.Vec{X: r.Min.Y, Y: r.Min.Z}, Max: geom.Vec{X: r.Max.Y, Y: r.Max.Z}}})
	e.face.Edges = nil
	return e
}

// draw returns the items at k, with the corner of the world at the given point.
func (e assembled) draw(w *writer, k float64, at geom.Vec) []render.Item {
	v := pictorial()
	// a point (y, z) of the cut lies at x, y, z
	o, _ := v.To(geom.Vec3{X: e.x})
	onFace := geom.Xform{A: v.U.Y, B: v.U.Z, C: o.X + at.X, D: v.V.Y, E: v.V.Z, F: o.Y + at.Y}
	var items []render.Item
	var outlines geom.Over
	for _, it := range e.face.Draw(k, w.a.Spec.Project.System) {
		switch it := it.(type) {
		case render.Stroke:
			it.Path = flat(it.Path, k).Transform(onFace)
			if it.Pen != render.Pattern && it.Pen != render.Insulation {
				outlines.Add(it.Path)
			}
			items = append(items, it)
		case render.Fill:
			it.Region, it.Origin = it.Region.Flatten(0.1*k).Transform(onFace), onFace.Apply(it.Origin)
			items = append(items, it)
		}
	}
	for _, it := range e.beyond.Draw() {
		st := it.(render.Stroke)
		for _, q := range outlines.Less(st.Path.Move(at)) {
			items = append(items, render.Stroke{Pen: st.Pen, Path: q})
		}
	}
	return items
}

// flat follows the arcs of a path by chords, so that it can be seen at a slant.
func flat(p geom.Path, k float64) geom.Path {
	q := geom.Polyline(p.Flatten(0.05 * k)...)
	q.Closed = p.Closed
	return q
}
