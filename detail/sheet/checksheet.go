package sheet

import (
	"math"
	"strings"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// checkLayout is an upright page for a clipboard.
func (w *writer) checkLayout(size string) layoutOf { return w.slimOf(size, posture{upright: true}) }

// checkPages returns how many pages the check sheet takes.
func (w *writer) checkPages() int {
	l := w.checkLayout(w.pageSizes()[0])
	return len(w.checkFlow(w.checkRoom(l)))
}

// checkRoom is what a page leaves for tables under its strip of blocks.
func (w *writer) checkRoom(l layoutOf) geom.Box {
	room := l.field.Grow(-3)
	room.Max.Y -= w.checkStrip(l).paper().H() + tableGap
	return room
}

// checkSheet is a page of the steps of the work with hold points, boxes and signatures; on top of every page
// the blocks stand as seen from outside, to be ticked off.
func (w *writer) checkSheet(s *render.Sheet, l layoutOf) (string, bool) {
	c := w.checkStrip(l)
	p, room := c.paper(), l.field.Grow(-3)
	w.place(s, c, "1", "BLOCKS", elevationOrigin, pt(room.Min.X+(room.W()-p.W())/2-p.Min.X, room.Max.Y-p.Max.Y))
	pages := w.checkFlow(w.checkRoom(l))
	if w.page < len(pages) {
		s.Items = append(s.Items, pages[w.page]...)
	}
	return w.scale(c.k).Text, true
}

// checkFlow sets the tables one under the other, a new page where one does not fit; long ones run over.
func (w *writer) checkFlow(room geom.Box) [][]render.Item {
	pages := [][]render.Item{nil}
	y := room.Max.Y
	next := func() {
		pages, y = append(pages, nil), room.Max.Y
	}
	for _, t := range w.checkSteps(room.W()) {
		long := len(t.rows) >= 8 && y-room.Min.Y > 60 // parted with some rows on either page
		if t.height() > y-room.Min.Y && y < room.Max.Y && !long {
			next()
		}
		for {
			items, used, rest := t.draw(room.Min.X, y, y-room.Min.Y)
			pages[len(pages)-1] = append(pages[len(pages)-1], items...)
			y -= used + tableGap
			if len(rest) == 0 {
				break
			}
			t.rows, t.title = rest, strings.TrimSuffix(t.title, ", CONTINUED")+", CONTINUED"
			next()
		}
	}
	return pages
}

// checkStrip shows the ledger and its blocks with bolts from outside, a box to tick over each block.
func (w *writer) checkStrip(l layoutOf) *composer {
	room := l.field.Grow(-3)
	c, _ := w.choose(0, 12, 100, geom.Vec{X: room.W(), Y: 46}, func(k float64) *composer { return w.blockStrip(k, room.W(), true) })
	return c
}

// blockStrip is the ledger and its blocks from outside by their marks, with boxes to tick or as a key: in one row, or
// by turns in as many as the room asks for.
func (w *writer) blockStrip(k, room float64, boxes bool) *composer {
	show := map[detail.Role]bool{detail.BlockPly: true, detail.Bolt: true, detail.Washer: true, detail.TensionRod: true}
	f := w.a.Frame
	win := geom.Box{Min: geom.Vec{X: -60, Y: min(f.LedgerBottom, f.BlockBottom) - 20}, Max: geom.Vec{X: w.a.Spec.Ledger.Length.MM() + 60, Y: max(f.LedgerTop, f.BlockTop) + 20}}
	p := w.once("blocks to tick", func() view.Picture {
		return view.Look(w.a, view.FromOutside(0), view.Options{Window: win, Only: func(p *detail.Part) bool { return show[p.Role] }})
	})
	c := w.composer(k)
	c.add(p.Draw(k, w.a.Spec.Project.System), win)
	c.put(render.Stroke{Pen: render.Note, Path: geom.Rect(0, f.LedgerBottom, w.a.Spec.Ledger.Length.MM(), f.LedgerTop)[0]})
	const wide = 6.8
	rows := int(math.Ceil(float64(len(w.a.Blocks)) * wide / room))
	y := win.Max.Y
	for row := range rows {
		var slots []slot
		for i := row; i < len(w.a.Blocks); i += rows {
			slots = append(slots, slot{want: w.a.Blocks[i].X / k, before: wide / 2, after: wide / 2})
		}
		spread(slots)
		up := 1.5
		for i, s := range slots {
			x := s.at * k
			if boxes {
				c.put(render.Stroke{Pen: render.Mark, Path: geom.Rect(x-c.mm(2.2), y+c.mm(2), x+c.mm(2.2), y+c.mm(6.4))[0]})
				up = 7.4
			}
			c.text(render.Note, geom.Vec{X: x, Y: y + c.mm(up)}, 2.2, render.BottomCentre, 0, w.a.Blocks[row+i*rows].Mark)
		}
		y += c.mm(up + 2.7)
	}
	c.finish()
	c.caption(either(boxes, "BLOCKS FROM OUTSIDE: TICK WHEN THIS PAGE IS DONE", "KEY TO THE BLOCKS, FROM OUTSIDE"), w.scale(k).Text)
	return c
}
