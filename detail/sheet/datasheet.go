package sheet

import (
	"math"

	"standclear/render"
)

// dataSheet prints what the design rests on and what the checks say, with the free body of a block.
func (w *writer) dataSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	const gap = 6
	// narrow facts on the left, the wide check table over two columns
	facts := (room.W() - 2*gap) * 0.26
	wide := (room.W() - 2*gap - facts) / 2
	c := w.freeBody(facts)
	p := c.paper()
	flow := column{s: s, x: room.Min.X, y: room.Max.Y, top: room.Max.Y, foot: room.Min.Y, step: 0, left: 1}
	for _, t := range w.dataTables(facts) {
		flow.add(t)
	}
	w.place(s, c, "1", "FREE BODY OF ONE BLOCK", origin, pt(room.Min.X+(facts-p.W())/2-p.Min.X, flow.y-4-p.Max.Y))
	fits := flow.ok() && flow.y-4-p.H() >= room.Min.Y
	flow.y -= p.H() + 12
	under := 0
	for _, t := range w.restTables(facts) { // under the figure as far as there is room, else after the checks
		if flow.y-t.height()-4 < room.Min.Y {
			break
		}
		flow.add(t)
		under++
	}
	flow = column{s: s, x: room.Min.X + facts + gap, y: room.Max.Y, top: room.Max.Y, foot: room.Min.Y, step: wide + gap, left: 2}
	for _, t := range append(w.checkTables(wide), w.restTables(wide)[under:]...) {
		flow.add(t)
	}
	return "AS SHOWN", fits && flow.ok()
}

// column sets tables one under the other, and over into the next column where one runs out.
type column struct {
	s         *render.Sheet
	x, y      float64 // where the next table goes
	top, foot float64
	step      float64 // to the next column
	left      int     // columns not yet full, this one counted
}

// ok reports whether everything found room.
func (f *column) ok() bool { return f.left > 0 }

func (f *column) add(t *table) {
	const least = 30 // a head and a few rows
	title := t.title
	for f.left > 0 {
		if f.y-f.foot < math.Max(math.Min(least, t.height()), t.start()) {
			f.next()
			continue
		}
		items, used, rest := t.draw(f.x, f.y, f.y-f.foot)
		f.s.Items = append(f.s.Items, items...)
		f.y -= used + 4
		if len(rest) == 0 {
			return
		}
		if len(t.pens) > 0 {
			t.pens = t.pens[len(t.rows)-len(rest):]
		}
		t.rows, t.title = rest, title+", CONTINUED"
		f.next()
	}
}

func (f *column) next() {
	f.left--
	f.x, f.y = f.x+f.step, f.top
}
