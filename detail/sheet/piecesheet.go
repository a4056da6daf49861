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

// pieceSheet shows every piece of the block by itself, with its screws and its grain, over the cut list and the
// steps.
func (w *writer) pieceSheet(s *render.Sheet, room geom.Box) (string, bool) {
	for _, k := range unit.Scales(w.a.Spec.Project.System) {
		if k < 2 || k > 10 {
			continue
		}
		views := w.pieceViews(k)
		on, high, fits := &render.Sheet{}, 0.0, false
		if high, fits = w.inRows(on, room, views); !fits {
			continue
		}
		under := room
		under.Max.Y -= high + 10
		if under.H() < 20 || !w.shopColumns(on, under, geom.Vec{}, w.pieceTables) {
			continue
		}
		s.Views, s.Items = append(s.Views, on.Views...), append(s.Items, on.Items...)
		return w.scale(k).Text, true
	}
	return "NTS", false
}

// inRows sets views side by side from the upper left of the room, their datums in line, in rows one under the
// other; it returns how high they stand.
func (w *writer) inRows(s *render.Sheet, room geom.Box, views []*composer) (high float64, fits bool) {
	fits = true
	for n := 0; n < len(views); {
		end, wide, up, down := n, 0.0, 0.0, 0.0
		for ; end < len(views); end++ {
			p := views[end].paper()
			if end > n && wide+p.W() > room.W() {
				break
			}
			wide += p.W() + 12
			up, down = math.Max(up, p.Max.Y), math.Min(down, p.Min.Y)
		}
		fits = fits && wide-12 <= room.W()
		x, gap := room.Min.X, 12+math.Max(0, room.W()-wide+12)/float64(end-n)
		for ; n < end; n++ {
			p := views[n].paper()
			w.place(s, views[n], fmt.Sprint(len(s.Views)+1), "PIECE", "lower left corner of the piece", pt(x-p.Min.X, room.Max.Y-high-up))
			x += p.W() + gap
		}
		high += up - down + 12
	}
	return high - 12, fits && high-12 <= room.H()
}

// blockPieces are the pieces of the first block, from the wall outward.
func (w *writer) blockPieces() []*detail.Part {
	var out []*detail.Part
	for _, p := range w.a.Blocks[0].Parts {
		if p.Role == detail.BlockPly || p.Role == detail.BlockPad || p.Role == detail.FootPiece {
			out = append(out, p)
		}
	}
	return out
}

func (w *writer) pieceViews(k float64) []*composer {
	var out []*composer
	for _, p := range w.blockPieces() {
		out = append(out, w.pieceView(p, k))
	}
	return out
}

// pieceView is one piece from outside: its size, its holes, the screws driven from this face, its grain.
func (w *writer) pieceView(p *detail.Part, k float64) *composer {
	c := w.composer(k)
	b := p.Bounds()
	v := view.FromOutside(0)
	v.O = geom.Vec3{X: b.Min.X, Y: b.Min.Y, Z: b.Min.Z}
	pic := w.once("piece "+p.ID, func() view.Picture {
		return view.Look(w.a, v, view.Options{Window: geom.EmptyBox(), Bored: true, Only: func(q *detail.Part) bool { return q == p }})
	})
	c.add(pic.Draw(k, w.a.Spec.Project.System), pic.Box())
	width, high := b.Max.X-b.Min.X, b.Max.Z-b.Min.Z
	var centres []geom.Vec
	for _, h := range w.a.Holes(0) {
		centres = append(centres, geom.Vec{X: h.X - b.Min.X, Y: h.Z - b.Min.Z})
	}
	if len(centres) > 0 {
		c.centres(centres, c.mm(4))
		c.object = c.object.Union(geom.BoxOf(centres...).Grow(c.mm(4))) // a hole may lie off the piece
	}
	words := p.Mark
	if xs, ys, inner := w.pieceScrews(c, p); inner != "" {
		words += " ON " + inner
		c.run(bottom, stations(0, xs, width))
		c.run(left, stations(0, ys))
	} else {
		c.dims(bottom, []tick{{0, 0}, {width, 0}})
	}
	c.dims(right, []tick{{0, width}, {high, width}}, either(w.a.Spec.Blocks.TopSlope > 0, "<> AT WALL SIDE, "+p.Mark, ""))
	c.finish()
	if p.Role != detail.BlockPad {
		c.grainOver(pic.Box(), w.a.Spec.Blocks.Grain == "vertical")
	}
	c.caption(words+", "+w.text(p.Size[0].MM())+" THICK", w.scale(k).Text)
	return c
}

// grainOver draws the way of the fibres over a piece, in the same place on every one.
func (c *composer) grainOver(face geom.Box, upright bool) {
	top := face.Max.Y
	for _, l := range c.taken().lines { // axes of holes near the edge run beyond it
		if math.Max(l[0].X, l[1].X) > face.Min.X+0.1 && math.Min(l[0].X, l[1].X) < face.Max.X-0.1 {
			top = math.Max(top, math.Max(l[0].Y, l[1].Y))
		}
	}
	at := geom.Vec{X: face.Min.X + c.mm(9), Y: top + c.mm(4)}
	half := geom.Vec{X: c.mm(8)}
	words := at.Add(geom.Vec{X: c.mm(10)})
	if upright {
		at.Y += c.mm(5)
		half, words = geom.Vec{Y: c.mm(6)}, at.Add(geom.Vec{X: c.mm(2.5)})
	}
	for _, from := range []geom.Vec{at.Sub(half), at.Add(half)} { // a tip at either end
		c.put(render.Leader{Pen: render.Note, Points: []geom.Vec{from, at}, End: render.Arrow})
		c.grow(from.Add(geom.Vec{Y: c.mm(1.5)}))
	}
	c.text(render.Note, words, 2.5, render.MiddleLeft, 0, "GRAIN")
}

// pieceScrews marks the screws driven from the face of a piece, and returns where they stand from its lower left
// corner and the piece they go on into; "" when none is.
func (w *writer) pieceScrews(c *composer, p *detail.Part) (xs, ys []float64, inner string) {
	b := p.Bounds()
	for j, joint := range w.a.Joints() {
		if joint.Outer != p.Mark {
			continue
		}
		for _, at := range w.a.ScrewSpots(0, j, joint.Screws.Count) {
			q := geom.Vec{X: at.X - b.Min.X, Y: at.Y - b.Min.Z}
			c.cross(render.Mark, q, c.mm(1.2), false)
			xs, ys = append(xs, q.X), append(ys, q.Y)
		}
		inner = joint.Inner
	}
	return distinct(xs), distinct(ys), inner
}

// stations are ticks on the lower or left edge of a piece: its datum, what stands along it, its far end.
func stations(from float64, along []float64, to ...float64) []tick {
	var out []tick
	for _, v := range slices.Concat([]float64{from}, along, to) {
		out = append(out, tick{v, 0})
	}
	return out
}
