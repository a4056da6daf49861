package sheet

import (
	"math"
	"slices"

	"standclear/geom"
	"standclear/render"
)

// dataPages are as few as hold the tables on the size asked for; one where five do not.
func (w *writer) dataPages() int {
	return w.fewest("G-001", w.setSizes()[0], w.dataSheet)
}

// paging is how a sheet of tables goes on over pages: their number, and how narrow all of them are.
type paging struct{ pages, tight int }

// fewest is the number of pages of a size, up to five, on which what draw draws fits; one where it does not, for a
// larger size. Draw is asked for nothing else, so that what only makes a page look better is left out.
func (w *writer) fewest(id, size string, draw func(*render.Sheet, layoutOf) (string, bool)) int {
	defer func(page int) { w.page, w.counting = page, false }(w.page)
	if w.paging == nil {
		w.paging = map[string]paging{}
	}
	w.page, w.counting = 0, true
	for n := 1; n <= 5; n++ {
		for tight := range 4 {
			w.paging[id] = paging{n, tight}
			if _, ok := draw(&render.Sheet{}, sheetOf(size)); ok {
				return n
			}
		}
	}
	w.paging[id] = paging{1, 3}
	return 1
}

// dataSheet prints what the design rests on and what the checks say, with the free body of a block: narrow facts on
// the left and the wide check table over two columns; where that takes more pages than one, the facts over two
// columns and the free body under them, the checks over one column beside them and two of every page after.
func (w *writer) dataSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	const gap = 6
	wide, facts := (room.W()-2*gap)*0.37, (room.W()-2*gap)*0.26
	on := w.paging["G-001"]
	pages := make([]*render.Sheet, max(1, on.pages))
	for i := range pages {
		pages[i] = &render.Sheet{}
	}
	at := func(x float64, page int) columnAt { return columnAt{pt(x, room.Max.Y), pages[page], room.Min.Y} }
	narrow, of := []columnAt{at(room.Min.X, 0)}, []columnAt{at(room.Max.X-2*wide-gap, 0), at(room.Max.X-wide, 0)}
	if len(pages) > 1 {
		wide = (room.W() - gap) / 2
		facts = (wide - gap) / 2
		narrow = append(narrow, at(room.Min.X+facts+gap, 0))
		of = []columnAt{at(room.Max.X-wide, 0)}
		key, _ := w.choose(0, 12, 100, geom.Vec{X: wide, Y: 40}, func(k float64) *composer { return w.blockStrip(k, wide, false) })
		for i, on := range pages[1:] { // a key to the places the checks name, at the head
			p := key.paper()
			w.place(on, key, "1", "KEY", elevationOrigin, pt(room.Min.X-p.Min.X, room.Max.Y-p.Max.Y))
			left, right := at(room.Min.X, i+1), at(room.Max.X-wide, i+1)
			left.at.Y -= p.H() + 8
			of = append(of, left, right)
		}
	}
	lettered := func(all []*table) []*table {
		for _, t := range all {
			t.text = []float64{2.5, 2.2, 2.2, 2.2}[on.tight]
		}
		return all
	}
	under, fits := w.facts(narrow, facts, lettered)
	fits = level(of, pages, len(pages) > 1 && !w.counting, func(of []columnAt) bool {
		flow := columnsFrom(of)
		for _, t := range lettered(append(w.checkTables(wide), w.restTables(wide)[under:]...)) {
			flow.add(t)
		}
		return flow.ok()
	}) && fits
	shown := pages[min(w.page, len(pages)-1)]
	s.Views, s.Items = append(s.Views, shown.Views...), append(s.Items, shown.Items...)
	return "AS SHOWN", fits
}

// facts sets the data in narrow columns, the free body under them, and of the other tables as many as there is room
// for; it returns how many.
func (w *writer) facts(of []columnAt, width float64, lettered func([]*table) []*table) (under int, fits bool) {
	n := len(of)
	c := w.freeBody(float64(n) * width)
	p := c.paper()
	first := of[0]
	page := []*render.Sheet{first.on}
	if n > 1 { // the figure under all of them
		for i := range of {
			of[i].foot += p.H() + 16
		}
	}
	var flow column
	low := 0.0
	for under = either(n > 1, len(w.restTables(width)), 0); under >= 0 && !fits; under-- {
		fits = level(of, page, n > 1 && !w.counting, func(of []columnAt) bool {
			flow = columnsFrom(of)
			low = flow.top
			for _, t := range lettered(append(w.dataTables(width), w.restTables(width)[:under]...)) {
				if h := t.height(); h > flow.y-flow.foot && h <= flow.top-flow.foot {
					flow.next() // whole rather than parted
				}
				flow.add(t)
				low = math.Min(low, flow.y)
			}
			return flow.ok()
		})
	}
	under++
	fits = fits && p.W() <= float64(n)*(width+6)
	mid, top := first.at.X+width/2, flow.y-4
	if n > 1 {
		mid, top = first.at.X+width+3, low-8
	}
	w.place(first.on, c, "1", "FREE BODY OF ONE BLOCK", origin, pt(mid-p.Center().X, top-p.Max.Y))
	if n > 1 {
		return under, fits
	}
	flow.y -= p.H() + 12
	fits = fits && flow.y >= flow.foot-8
	for _, t := range lettered(w.restTables(width)) {
		if flow.y-t.height()-4 < flow.foot {
			break
		}
		flow.add(t)
		under++
	}
	return under, fits
}

// level lets fill set tables in columns on pages; where it is asked to, those of the last page as short as they go,
// so that they come out of about one height.
func level(of []columnAt, pages []*render.Sheet, short bool, fill func([]columnAt) bool) bool {
	held := make([][]render.Item, len(pages))
	for i, p := range pages {
		held[i] = p.Items
	}
	last := pages[len(pages)-1]
	fits := func(share float64) bool {
		for i, p := range pages {
			p.Items = slices.Clone(held[i])
		}
		try := slices.Clone(of)
		for i, c := range of {
			if c.on == last {
				try[i].foot = c.at.Y - (c.at.Y-c.foot)*share
			}
		}
		return fill(try)
	}
	if fits(1) {
		for share := 0.3; short && share < 1; share += 0.05 {
			if fits(share) {
				return true
			}
		}
		return !short || fits(1)
	}
	for i, p := range pages {
		p.Items = held[i]
	}
	return false
}

// tableGap is the room between tables, plotted.
const tableGap = 4.0

// column sets tables one under the other, and over into the next column where one runs out.
type column struct {
	s         *render.Sheet
	x, y      float64 // where the next table goes
	top, foot float64
	step      float64    // to the next column
	left      int        // columns not yet full, this one counted
	more      []columnAt // the columns to come, where they are not in step
}

// columnAt is the upper left corner of a column, the sheet it stands on and where it ends.
type columnAt struct {
	at   geom.Vec
	on   *render.Sheet
	foot float64
}

// columnsFrom is at the head of the first of columns.
func columnsFrom(of []columnAt) column {
	f := column{more: of, left: len(of) + 1}
	f.next()
	return f
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
		f.y -= used + tableGap
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
	if len(f.more) > 0 {
		c := f.more[0]
		f.s, f.x, f.y, f.top, f.foot, f.more = c.on, c.at.X, c.at.Y, c.at.Y, c.foot, f.more[1:]
	}
}
