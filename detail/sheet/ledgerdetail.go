package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// ledgerDetail is one block of the ledger in three views, as large as the tables beside and under it let them be.
// It reports the scale and whether all of it fits.
func (w *writer) ledgerDetail(s *render.Sheet, room geom.Box) (string, bool) {
	b := w.sectionBlock()
	if b < 0 {
		return "NTS", w.shopColumns(s, room, geom.Vec{}, w.detailTables)
	}
	piece := w.pieceAt(w.a.Blocks[b].X)
	for _, k := range unit.Scales(w.a.Spec.Project.System) {
		if k < 2 || k > 10 {
			continue
		}
		v := shopViews{w.ledgerFront(piece, b, k), w.ledgerEnd(piece, k), w.ledgerTop(piece, b, k)}
		need := v.room()
		t := &render.Sheet{}
		if need.X > room.W() || need.Y > room.H() || !w.shopColumns(t, room, need, w.detailTables) {
			continue
		}
		s.Items = append(s.Items, t.Items...)
		title := "LEDGER AT BLOCK " + w.a.Blocks[b].Mark
		w.setThird(s, room, v, 0, [3]string{title, title, title}, "axis of the block x lower edge of the ledger")
		return w.scale(k).Text, true
	}
	return "NTS", false
}

// pieceAt is the piece of the ledger at x.
func (w *writer) pieceAt(x float64) *detail.Part {
	pieces := w.a.Find(detail.Ledger)
	for _, p := range pieces {
		if b := p.Bounds(); x >= b.Min.X && x <= b.Max.X {
			return p
		}
	}
	return pieces[0]
}

// setThird sets three views in third-angle arrangement in the upper left of the room: the top view over the
// front, the left side beside it, heights and widths in line.
func (w *writer) setThird(s *render.Sheet, room geom.Box, v shopViews, before int, titles [3]string, datum string) {
	f, sd, u := v.front.paper(), v.side.paper(), v.up.paper()
	fx := room.Min.X + sd.W() + 12 - math.Min(f.Min.X, u.Min.X)
	uy := room.Max.Y - u.Max.Y
	fy := uy + u.Min.Y - 12 - math.Max(f.Max.Y, sd.Max.Y)
	for i, c := range []*composer{v.front, v.side, v.up} {
		at := []geom.Vec{pt(fx, fy), pt(room.Min.X-sd.Min.X, fy), pt(fx, uy)}[i]
		w.place(s, c, fmt.Sprint(before+i+1), titles[i], datum, at)
	}
}

// ledgerWindow is the stretch of the ledger shown about block b, from its axis.
func (w *writer) ledgerWindow(b int) span {
	blk := w.a.Blocks[b]
	half := (blk.Box.Max.X-blk.Box.Min.X)/2 + 40
	out := span{-half, half}
	for _, h := range w.a.Find(detail.Hanger) { // whole, where one is near
		box := h.Bounds()
		if lo, hi := box.Min.X-blk.X, box.Max.X-blk.X; hi > -half && lo < half {
			out.lo, out.hi = math.Min(out.lo, lo-20), math.Max(out.hi, hi+20)
		}
	}
	return out
}

// ledgerFront is the outer face about block b with its holes.
func (w *writer) ledgerFront(piece *detail.Part, b int, k float64) *composer {
	c := w.composer(k)
	at, blk, sp := piece.Bounds(), w.a.Blocks[b], w.ledgerWindow(b)
	v := fromOutside(piece)
	v.O.X = blk.X
	high := at.Max.Z - at.Min.Z
	lo, hi := math.Max(sp.lo, at.Min.X-blk.X), math.Min(sp.hi, at.Max.X-blk.X)
	foot := math.Min(0, blk.Box.Min.Z-at.Min.Z)
	win := geom.Box{Min: geom.Vec{X: lo, Y: foot - 1}, Max: geom.Vec{X: hi, Y: high + 1}}
	p := w.once("ledger front "+piece.Mark, func() view.Picture { return view.Look(w.a, v, w.ledgerOptions(piece, win)) })
	c.add(p.Draw(k, w.a.Spec.Project.System), geom.Box{Min: geom.Vec{X: lo, Y: foot}, Max: geom.Vec{X: hi, Y: high}})
	var holes []geom.Vec
	cols, rows := []tick{{blk.Box.Min.X - blk.X, foot}, {blk.Box.Max.X - blk.X, foot}}, []tick{{0, hi}, {w.a.Frame.LedgerTopFront - at.Min.Z, hi}}
	for _, h := range w.ledgerHoles(piece) {
		if h.Block != b {
			continue
		}
		q := geom.Vec{X: h.X + at.Min.X - blk.X, Y: h.Z}
		holes = append(holes, q)
		cols, rows = append(cols, tick{q.X, foot}), append(rows, tick{q.Y, hi})
	}
	if len(holes) > 0 {
		c.centres(holes, c.mm(6))
	}
	c.sideBreaks(geom.Box{Min: geom.Vec{X: lo}, Max: geom.Vec{X: hi, Y: high}}, lo > at.Min.X-blk.X+1, hi < at.Max.X-blk.X-1)
	c.dims(bottom, cols)
	c.dims(right, rows)
	c.finish()
	c.caption("AT BLOCK "+blk.Mark+", FROM OUTSIDE", w.scale(k).Text)
	return c
}

// sideBreaks draws a break line at the ends that are cut off.
func (c *composer) sideBreaks(b geom.Box, atLeft, atRight bool) {
	if atLeft {
		c.breakLine(left, b, span{b.Min.Y, b.Max.Y})
	}
	if atRight {
		c.breakLine(right, b, span{b.Min.Y, b.Max.Y})
	}
}

// ledgerEnd is the left end with the bevel.
func (w *writer) ledgerEnd(piece *detail.Part, k float64) *composer {
	c := w.composer(k)
	at := piece.Bounds()
	v := view.FromLeft(0)
	v.O = geom.Vec3{X: at.Min.X, Y: at.Min.Y, Z: at.Min.Z}
	o := view.Options{Window: geom.EmptyBox(), Only: func(p *detail.Part) bool { return p == piece }}
	p := w.once("ledger end "+piece.Mark, func() view.Picture { return view.Look(w.a, v, o) })
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Box())
	thick, high := at.Max.Y-at.Min.Y, at.Max.Z-at.Min.Z
	c.dims(bottom, []tick{{0, 0}, {thick, 0}})
	c.dims(right, []tick{{0, thick}, {w.a.Frame.LedgerTopFront - at.Min.Z, thick}, {high, 0}})
	c.dims(left, []tick{{0, 0}, {high, 0}})
	c.finish()
	c.caption("LEFT END", w.scale(k).Text)
	return c
}

// ledgerTop is the ledger about block b from above.
func (w *writer) ledgerTop(piece *detail.Part, b int, k float64) *composer {
	c := w.composer(k)
	at, blk, sp := piece.Bounds(), w.a.Blocks[b], w.ledgerWindow(b)
	v := view.FromAbove(0)
	v.O = geom.Vec3{X: blk.X, Y: at.Min.Y, Z: at.Min.Z}
	lo, hi := math.Max(sp.lo, at.Min.X-blk.X), math.Min(sp.hi, at.Max.X-blk.X)
	thick := at.Max.Y - at.Min.Y
	win := geom.Box{Min: geom.Vec{X: lo, Y: -thick - 1}, Max: geom.Vec{X: hi, Y: 1}}
	o := view.Options{Window: win, Bored: true, Dashed: map[detail.Role]bool{detail.Ledger: true}}
	p := w.once("ledger top "+piece.Mark, func() view.Picture { return view.Look(byItself(piece, blk.X+lo, blk.X+hi), v, o) })
	c.add(p.Draw(k, w.a.Spec.Project.System), geom.Box{Min: geom.Vec{X: lo, Y: -thick}, Max: geom.Vec{X: hi}})
	c.sideBreaks(geom.Box{Min: geom.Vec{X: lo, Y: -thick}, Max: geom.Vec{X: hi}}, lo > at.Min.X-blk.X+1, hi < at.Max.X-blk.X-1)
	c.text(render.Note, geom.Vec{X: (lo + hi) / 2, Y: c.mm(2)}, 2.5, render.BottomCentre, 0, "WALL SIDE")
	c.dims(right, []tick{{-thick, hi}, {0, hi}})
	c.finish()
	c.caption("TOP", w.scale(k).Text)
	return c
}

// byItself is a piece of the ledger by itself, with the holes between x0 and x1: all that a view of that stretch needs.
func byItself(piece *detail.Part, x0, x1 float64) *detail.Assembly {
	p := *piece
	p.Bores = nil
	for _, h := range piece.Bores {
		if b := h.Bounds(); b.Max.X > x0 && b.Min.X < x1 {
			p.Bores = append(p.Bores, h)
		}
	}
	return &detail.Assembly{Parts: []*detail.Part{&p}}
}
