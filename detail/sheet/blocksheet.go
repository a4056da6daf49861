package sheet

import (
	"fmt"
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

const blockOrigin = "lower left corner of the block, outside face"

// blockPages: the block and its holes, then its pieces and the steps.
func (w *writer) blockPages() int { return min(2, 1+len(w.a.Blocks)) }

// blockSheet is the shop drawing of the block assembly: front, left side and top in third-angle
// arrangement with its tables, and a page of its pieces.
func (w *writer) blockSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	if len(w.a.Blocks) == 0 {
		return "NTS", true
	}
	if w.page > 0 {
		return w.pieceSheet(s, room)
	}
	for _, k := range w.shopScales() {
		v := shopViews{w.blockFront(k), w.blockSide(k), w.blockTop(k)}
		t := &render.Sheet{}
		if need := v.room(); need.X > room.W() || need.Y > room.H() || !w.shopColumns(t, room, need, w.blockTables) {
			continue
		}
		w.setThird(s, room, v, 0, [3]string{"FRONT", "LEFT SIDE", "TOP"}, blockOrigin)
		s.Items = append(s.Items, t.Items...)
		return w.scale(k).Text, true
	}
	return "NTS", false
}

// shopColumns sets the tables of a shop sheet beside its views and under them.
func (w *writer) shopColumns(s *render.Sheet, room geom.Box, views geom.Vec, tables func(width float64) []*table) bool {
	return around(s, room, views, []float64{110, 104, 98, 92}[w.tight], 150, tables)
}

// shopScales are the scale asked for, or those that are usual for the views of a block.
func (w *writer) shopScales() []float64 {
	if k := w.a.Spec.Sheets.Shop; k != 0 && !w.free {
		return []float64{k}
	}
	return slices.DeleteFunc(unit.Scales(w.a.Spec.Project.System), func(k float64) bool { return k < 2 || k > 5 })
}

// shopViews are the three views of the block.
type shopViews struct{ front, side, up *composer }

// room returns what the views take in third-angle arrangement, plotted.
func (v shopViews) room() geom.Vec {
	f, sd, u := v.front.paper(), v.side.paper(), v.up.paper()
	low, high := math.Min(f.Min.Y, sd.Min.Y), math.Max(f.Max.Y, sd.Max.Y)
	return geom.Vec{X: sd.W() + 12 + math.Max(f.Max.X, u.Max.X) - math.Min(f.Min.X, u.Min.X), Y: high - low + 12 + u.H()}
}

// blockOnly shows the wood and the pad of the first block, with its holes.
func (w *writer) blockOnly() view.Options {
	return view.Options{Window: geom.EmptyBox(), Bored: true,
		Only: func(p *detail.Part) bool {
			return p.Block == 0 && (p.Role == detail.BlockPly || p.Role == detail.BlockPad || p.Role == detail.FootPiece || p.Role == detail.PlyScrew)
		},
		Dashed: map[detail.Role]bool{detail.BlockPly: true, detail.BlockPad: true},
	}
}

// local moves a view to the block's own datum: its lower left corner on the outside face.
func (w *writer) local(v geom.View) geom.View {
	b := w.a.Blocks[0].Box
	v.O = geom.Vec3{X: b.Min.X, Y: b.Min.Y, Z: b.Min.Z}
	return v
}

// blockFront is the outside face with its holes.
func (w *writer) blockFront(k float64) *composer {
	v := w.local(view.FromOutside(0))
	c := w.blockView(v, k)
	b := w.a.Blocks[0]
	width, high := b.Box.Max.X-b.Box.Min.X, b.Box.Max.Z-b.Box.Min.Z
	faceTop := w.a.Frame.BlockTopFront - b.Box.Min.Z
	xs, zs := []tick{{0, 0}}, []tick{{0, width}}
	var centres []geom.Vec
	past := 0.0
	for _, h := range w.a.Holes(0) {
		centres = append(centres, geom.Vec{X: h.X - b.Box.Min.X, Y: h.Z - b.Box.Min.Z})
		past = math.Max(past, h.Dia/2+c.mm(3))
	}
	c.centres(centres, past)
	group := geom.BoxOf(centres...)
	c.object = c.object.Union(group.Grow(past)) // a hole may lie off the block
	for _, p := range centres {
		xs = append(xs, tick{p.X, group.Min.Y - past})
		zs = append(zs, tick{p.Y, group.Max.X + past})
	}
	c.dims(bottom, append(xs, tick{width, 0}))
	c.dims(bottom, []tick{{0, 0}, {width, 0}})
	c.dims(right, append(zs, tick{faceTop, width}))
	c.dims(right, []tick{{0, width}, {high, width}}, "<> AT WALL")
	c.finish()
	for _, h := range w.a.Holes(0) {
		w.holeMark(c, h)
	}
	title := "FRONT (OUTSIDE FACE)"
	if !c.grain(geom.Box{Max: geom.Vec{X: width, Y: faceTop}}, w.a.Spec.Blocks.Grain == "vertical") {
		title += ", GRAIN " + caps(w.a.Spec.Blocks.Grain)
	}
	c.caption(title, w.scale(k).Text)
	return c
}

// grain draws the double-headed arrow that shows the way of the fibres, where the face has most room
// for it among what is drawn there; false where there is none.
func (c *composer) grain(face geom.Box, upright bool) bool {
	half, box := geom.Vec{X: c.mm(9)}, geom.Vec{X: c.mm(10), Y: c.mm(4.5)}
	if upright {
		half, box = geom.Vec{Y: c.mm(9)}, geom.Vec{X: c.mm(14), Y: c.mm(10)}
	}
	t := c.taken()
	best, room := face.Center(), 0.0
	const steps = 24
	for i := 1; i < steps; i++ {
		for j := 1; j < steps; j++ {
			at := geom.Vec{X: face.Min.X + face.W()*float64(i)/steps, Y: face.Min.Y + face.H()*float64(j)/steps}
			if r := t.roomAbout(at, box, face); r > room+1e-6 {
				best, room = at, r
			}
		}
	}
	if room <= 0 {
		return false
	}
	c.put(render.Leader{Pen: render.Note, Points: []geom.Vec{best.Sub(half), best}, End: render.Arrow}, render.Leader{Pen: render.Note, Points: []geom.Vec{best.Add(half), best}, End: render.Arrow})
	if upright {
		c.text(render.Note, best.Add(geom.Vec{X: c.mm(1.5)}), 2.5, render.MiddleLeft, 0, "GRAIN")
		return true
	}
	c.text(render.Note, best.Add(geom.Vec{X: c.mm(1), Y: c.mm(1)}), 2.5, render.BottomCentre, 0, "GRAIN")
	return true
}

// roomAbout is the least distance from a box about at to the face's edges and to the texts and lines in it;
// not above 0 where it meets one.
func (t *taken) roomAbout(at, half geom.Vec, face geom.Box) float64 {
	r := math.Min(math.Min(at.X-face.Min.X, face.Max.X-at.X)-half.X, math.Min(at.Y-face.Min.Y, face.Max.Y-at.Y)-half.Y)
	for r > 0 && t.meets(geom.Box{Min: at.Sub(half), Max: at.Add(half)}.Grow(r)) {
		r = r/2 - 0.1
	}
	return r
}

// holeMark writes the letter of a hole beside it.
func (w *writer) holeMark(c *composer, h detail.Hole) {
	b := w.a.Blocks[0].Box
	at := geom.Vec{X: h.X - b.Min.X, Y: h.Z - b.Min.Z}
	c.tagAt(at, h.Dia/2, holeName(w.holeIndex(h)))
}

func (w *writer) holeIndex(h detail.Hole) int {
	for i, q := range w.a.Holes(0) {
		if q == h {
			return i
		}
	}
	return 0
}

func holeName(i int) string { return fmt.Sprintf("H%d", i+1) }

// blockSide is the left side: plies, pad, fall of the top.
func (w *writer) blockSide(k float64) *composer {
	v := w.local(view.FromLeft(0))
	c := w.blockView(v, k)
	var t []tick
	y := 0.0
	t = append(t, tick{0, 0})
	for _, p := range w.a.Blocks[0].Parts {
		if p.Role == detail.BlockPly || p.Role == detail.BlockPad {
			y = math.Max(y, p.Bounds().Max.Y)
			t = append(t, tick{p.Bounds().Max.Y, 0})
		}
	}
	c.dims(bottom, t)
	c.dims(bottom, []tick{{0, 0}, {y, 0}})
	high := w.a.Blocks[0].Box.Max.Z - w.a.Blocks[0].Box.Min.Z
	face := w.a.Frame.BlockTopFront - w.a.Blocks[0].Box.Min.Z
	c.dims(right, []tick{{0, y}, {face, y}, {high, 0}})
	c.finish()
	c.caption("LEFT SIDE", w.scale(k).Text)
	return c
}

// blockTop is the view from above.
func (w *writer) blockTop(k float64) *composer {
	v := w.local(view.FromAbove(0))
	c := w.blockView(v, k)
	width := w.a.Spec.Blocks.Width.MM()
	d := w.a.Frame.BlockOut
	c.dims(right, []tick{{-d, width}, {0, width}})
	c.text(render.Note, geom.Vec{X: width / 2, Y: c.mm(2)}, 2.5, render.BottomCentre, 0, "WALL SIDE")
	c.finish()
	c.caption("TOP", w.scale(k).Text)
	return c
}

func (w *writer) blockView(v geom.View, k float64) *composer {
	c := w.composer(k)
	p := w.once(fmt.Sprint("block from ", v.N), func() view.Picture { return view.Look(w.a, v, w.blockOnly()) })
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Box())
	return c
}
