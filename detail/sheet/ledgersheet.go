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

// ledgerPages: the pieces, their holes and how to make them, then the ledger at a block and its joists.
func (w *writer) ledgerPages() int { return 2 }

// ledgerFirst returns the strips and the tables under them, at the largest scale at which a room holds both.
func (w *writer) ledgerFirst(room geom.Box) (strips []*composer, under []render.Item, ok bool) {
	for _, k := range unit.Scales(w.a.Spec.Project.System) {
		if k < 10 || k > 24 {
			continue
		}
		strips = w.ledgerStrips(k, room.W())
		low := room
		for _, c := range strips {
			low.Max.Y -= c.paper().H() + 12
		}
		t := &render.Sheet{}
		if low.H() >= 20 && w.shopColumns(t, low, geom.Vec{}, w.ledgerTables) {
			return strips, t.Items, true
		}
	}
	return strips, nil, false
}

// ledgerSheet is the shop drawing of the ledger: every piece at full length, broken into strips where the sheet
// is too narrow for it, with its holes; on the next page one block of it larger in three views, and its joists.
func (w *writer) ledgerSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	if w.page > 0 {
		return w.ledgerDetail(s, room)
	}
	strips, under, ok := w.ledgerFirst(room)
	w.stack(s, room, strips)
	s.Items = append(s.Items, under...)
	return w.scale(strips[0].k).Text, ok
}

// stack sets the strips one under the other against the left side of the room.
func (w *writer) stack(s *render.Sheet, room geom.Box, strips []*composer) {
	y := room.Max.Y
	for i, c := range strips {
		p := c.paper()
		w.place(s, c, fmt.Sprint(i+1), "LEDGER FROM OUTSIDE", "lower left corner of the piece, outside face", pt(room.Min.X-p.Min.X, y-p.Max.Y))
		y -= p.H() + 12
	}
}

// ledgerStrips composes every piece in as many strips as the width asks for.
func (w *writer) ledgerStrips(k, width float64) []*composer {
	var out []*composer
	for _, piece := range w.a.Find(detail.Ledger) {
		for _, sp := range w.stripSpans(piece, (width-12)*k) {
			out = append(out, w.ledgerStrip(piece, sp, k))
		}
	}
	return out
}

// stripSpans divides a piece into stretches no longer than most, parted midway between blocks and joists.
func (w *writer) stripSpans(piece *detail.Part, most float64) []span {
	b := piece.Bounds()
	long := b.Max.X - b.Min.X
	n := int(math.Ceil(long/most - 1e-9))
	var busy []float64
	for _, h := range w.ledgerHoles(piece) {
		busy = append(busy, h.X)
	}
	for _, j := range w.a.DeckJoists {
		busy = append(busy, j-b.Min.X)
	}
	out := make([]span, n)
	at := 0.0
	for i := range out {
		end := long
		if i+1 < n {
			end = clearOf(busy, at+(long-at)/float64(n-i), math.Min(most-(long-at)/float64(n-i), 200))
		}
		out[i] = span{at, end}
		at = end
	}
	return out
}

// clearOf returns the place within reach of x, toward the left where equal, that is farthest from all of busy.
func clearOf(busy []float64, x, reach float64) float64 {
	best, far := x, -1.0
	for d := -math.Max(0, reach); d <= math.Max(0, reach); d += 10 {
		near := math.Inf(1)
		for _, v := range busy {
			near = math.Min(near, math.Abs(v-x-d))
		}
		if near > far {
			best, far = x+d, near
		}
	}
	return best
}

// fromOutside looks at a piece of the ledger from its own datum, the lower left corner of its outer face.
func fromOutside(piece *detail.Part) geom.View {
	v, b := view.FromOutside(0), piece.Bounds()
	v.O = geom.Vec3{X: b.Min.X, Y: b.Min.Y, Z: b.Min.Z}
	return v
}

// ledgerOptions shows a piece with its holes, the hangers on it and, dashed, the inner plies of the blocks behind.
func (w *writer) ledgerOptions(piece *detail.Part, window geom.Box) view.Options {
	return view.Options{Window: window, Bored: true,
		Only: func(p *detail.Part) bool {
			return p == piece || p.Role == detail.Hanger || p.Role == detail.BlockPly && p.Mark == "P1"
		},
		Behind: map[detail.Role]bool{detail.BlockPly: true},
		Ghost:  map[detail.Role]bool{detail.Hanger: true},
	}
}

// ledgerStrip draws the stretch sp of a piece.
func (w *writer) ledgerStrip(piece *detail.Part, sp span, k float64) *composer {
	c := w.composer(k)
	b := piece.Bounds()
	long, high := b.Max.X-b.Min.X, b.Max.Z-b.Min.Z
	foot := math.Min(0, w.a.Frame.BlockBottom-b.Min.Z)
	for _, h := range w.a.Find(detail.Hanger) {
		foot = math.Min(foot, h.Bounds().Min.Z-b.Min.Z)
	}
	first, last := sp.lo < 1, sp.hi > long-1
	past := c.mm(5)
	win := geom.Box{Min: geom.Vec{X: sp.lo, Y: foot - 1}, Max: geom.Vec{X: sp.hi, Y: high + 1}}
	if first {
		win.Min.X -= past
	}
	if last {
		win.Max.X += past
	}
	p := w.once(fmt.Sprintf("ledger %s %.1f %.1f %.0f", piece.Mark, sp.lo, sp.hi, k), func() view.Picture { return view.Look(w.a, fromOutside(piece), w.ledgerOptions(piece, win)) })
	c.add(p.Draw(k, w.a.Spec.Project.System), geom.Box{Min: geom.Vec{X: sp.lo, Y: foot}, Max: geom.Vec{X: sp.hi, Y: high}})
	edge := geom.Box{Min: geom.Vec{X: sp.lo}, Max: geom.Vec{X: sp.hi, Y: high}}
	c.sideBreaks(edge, !first, !last)
	w.stripDims(c, piece, sp)
	c.finish()
	w.stripMarks(c, piece, sp)
	c.caption(w.stripTitle(piece, sp), w.scale(k).Text)
	return c
}

// stripDims measures holes below and joists above, from the left end of the piece.
func (w *writer) stripDims(c *composer, piece *detail.Part, sp span) {
	b := piece.Bounds()
	long := b.Max.X - b.Min.X
	low, up := c.object.Min.Y, c.object.Max.Y
	var holes, joists []tick
	last := math.Inf(-1)
	for _, h := range w.ledgerHoles(piece) {
		if h.X <= sp.lo || h.X >= sp.hi {
			continue
		}
		w.flagHole(c, h)
		if h.X-last > 0.01 {
			holes = append(holes, tick{h.X, low})
			c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: h.X, Y: low}, geom.Vec{X: h.X, Y: w.topHole(piece, h.X) + c.mm(2)})})
		}
		last = h.X
	}
	for _, j := range w.a.DeckJoists {
		if x := j - b.Min.X; x > sp.lo && x < sp.hi {
			joists = append(joists, tick{x, up})
			c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: x, Y: low}, geom.Vec{X: x, Y: up})})
		}
	}
	c.runFrom(top, 0, joists)
	if sp.hi > long-1 {
		holes = append(holes, tick{long, low})
	}
	if sp.lo < 1 {
		c.run(bottom, append([]tick{{0, low}}, holes...))
	} else {
		c.runFrom(bottom, 0, holes)
	}
}

// topHole is the height of the highest hole of the column at x.
func (w *writer) topHole(piece *detail.Part, x float64) float64 {
	z := 0.0
	for _, h := range w.ledgerHoles(piece) {
		if math.Abs(h.X-x) < 0.01 {
			z = math.Max(z, h.Z)
		}
	}
	return z
}

// flagHole rings a hole that a hanger covers, or whose washer would lie on one.
func (w *writer) flagHole(c *composer, h detail.LedgerHole) {
	if h.Hanger != "" || h.Washer != "" {
		c.put(render.Stroke{Pen: render.Status, Path: geom.Circle(geom.Vec{X: h.X, Y: h.Z}, math.Max(h.Dia, c.mm(2)))[0]})
	}
}

// stripMarks sets the marks of the joists over the strip and those of the blocks under it.
func (w *writer) stripMarks(c *composer, piece *detail.Part, sp span) {
	left := piece.Bounds().Min.X
	var joists, blocks []mark
	for i, j := range w.a.DeckJoists {
		joists = append(joists, mark{fmt.Sprintf("J%d", i+1), j - left})
	}
	for _, b := range w.a.Blocks {
		blocks = append(blocks, mark{b.Mark, b.X - left})
	}
	c.markRow(joists, sp, c.extent.Max.Y+c.mm(5))
	c.markRow(blocks, sp, c.extent.Min.Y-c.mm(5))
}

// mark is a name and where it stands along a view.
type mark struct {
	name string
	at   float64
}

// markRow sets the marks that lie in the stretch in a row at height y.
func (c *composer) markRow(marks []mark, sp span, y float64) {
	var in []mark
	var slots []slot
	for _, m := range marks {
		if m.at > sp.lo && m.at < sp.hi {
			in, slots = append(in, m), append(slots, slot{want: m.at / c.k, before: 4.5, after: 4.5})
		}
	}
	spread(slots)
	for i, m := range in {
		at := geom.Vec{X: slots[i].at * c.k, Y: y}
		c.put(render.Insert{Pen: render.Mark, Symbol: partMark, At: at, Scale: c.k, Fields: []render.Field{{Name: "MARK", Value: m.name}}})
		c.grow(at.Sub(geom.Vec{X: c.mm(4), Y: c.mm(4)}), at.Add(geom.Vec{X: c.mm(4), Y: c.mm(4)}))
	}
}

// stripTitle names the piece, the stretch of it, and what is at its ends.
func (w *writer) stripTitle(piece *detail.Part, sp span) string {
	b := piece.Bounds()
	long := b.Max.X - b.Min.X
	t := fmt.Sprintf("LEDGER %s, %s LONG, FROM OUTSIDE, DATUM AT THE LEFT END", piece.Mark, w.text(long))
	if sp.lo >= 1 || sp.hi <= long-1 {
		t = fmt.Sprintf("LEDGER %s, %s LONG, FROM OUTSIDE: %s TO %s FROM THE LEFT END", piece.Mark, w.text(long), w.text(sp.lo), w.text(sp.hi))
	}
	return t
}

// ledgerHoles are the holes of a piece, worked out once.
func (w *writer) ledgerHoles(piece *detail.Part) []detail.LedgerHole {
	if h, ok := w.bored[piece]; ok {
		return h
	}
	if w.bored == nil {
		w.bored = map[*detail.Part][]detail.LedgerHole{}
	}
	w.bored[piece] = w.a.LedgerHoles(piece)
	return w.bored[piece]
}
