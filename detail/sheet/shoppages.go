package sheet

import (
	"fmt"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/sheet/judge"
	"standclear/detail/together"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// ShopPages returns the sheets a builder works from as pages of letter or A4 size, composed anew from the assembly at
// the scales that such a page holds, printed on each: the survey, the block, the ledger, the lateral devices, the
// schedules; those of the set that are such pages already stand among them as they are in the set.
func (s *Set) ShopPages(set []*render.Sheet) []*render.Sheet {
	sheets := s.w.index()
	leaflets := make([]*leaflet, len(sheets))
	together.Each(len(sheets), func(i int) {
		p := sheets[i]
		b := &leaflet{w: s.leafWriter(), id: p.id, title: p.title}
		leaflets[i] = b
		switch fill := leaves[p.id]; {
		case s.only != "" && s.only != p.id:
		case paged[p.id].layout != nil:
			b.pages = slices.DeleteFunc(slices.Clone(set), func(s *render.Sheet) bool { return !strings.HasPrefix(s.ID, p.id) })
		case fill != nil:
			fill(b)
		}
	})
	all := &leaflet{w: s.leafWriter()}
	for _, b := range leaflets {
		all.pages, all.own = append(all.pages, b.pages...), append(all.own, b.own...)
	}
	all.number()
	return all.pages
}

// leafWriter composes shop pages, which go on as far as they go.
func (s *Set) leafWriter() *writer {
	w := s.w.twin()
	w.leaf, w.paging = true, nil
	return w
}

const (
	ledgerTitle  = "LEDGER FROM OUTSIDE"
	ledgerOrigin = "lower left corner of the piece, outside face"
)

// leaves are the sheets that go on pages, and what fills them.
var leaves = map[string]func(*leaflet){
	"G-003": (*leaflet).survey, "S-501": (*leaflet).block, "S-503": (*leaflet).ledger, "S-504": (*leaflet).tension, "S-701": (*leaflet).material,
}

// leaflet fills pages from the top down.
type leaflet struct {
	w         *writer
	pages     []*render.Sheet
	own       []leaf // of them those composed here
	id, title string
	no        int // of the page of its sheet
	room      geom.Box
	y         float64
}

// leaf is a page with its frame.
type leaf struct {
	s *render.Sheet
	l layoutOf
}

// turn starts a page.
func (b *leaflet) turn(as posture) {
	b.no++
	l := b.w.slimOf(b.w.pageSizes()[0], as)
	s := &render.Sheet{ID: fmt.Sprintf("%s P%d", b.id, b.no), Title: b.title, Desc: "A shop page of " + b.id + ".", Size: l.size, Unit: b.w.unit(), Number: number(b.w.a.Spec.Project.System)}
	b.pages, b.own = append(b.pages, s), append(b.own, leaf{s, l})
	b.room = l.field.Grow(-3)
	b.y = b.room.Max.Y
}

// portrait is how most pages lie.
var portrait = posture{upright: true}

// page is the one under way, left what is left of it.
func (b *leaflet) page() *render.Sheet { return b.pages[len(b.pages)-1] }

func (b *leaflet) left() geom.Box {
	return geom.Box{Min: b.room.Min, Max: pt(b.room.Max.X, b.y)}
}

// need turns the page where less than h is left.
func (b *leaflet) need(h float64) {
	if b.y-b.room.Min.Y < h && b.y < b.room.Max.Y {
		b.turn(portrait)
	}
}

// number frames the pages once it is known how many there are.
func (b *leaflet) number() {
	for _, p := range b.own {
		var scales []string
		for _, v := range p.s.Views {
			if !slices.Contains(scales, v.Scale.Text) {
				scales = append(scales, v.Scale.Text)
			}
		}
		n := slices.Index(b.pages, p.s) + 1
		b.w.slimBorder(p.s, p.l, n, len(b.pages), either(len(scales) == 0, "NTS", strings.Join(scales, ", ")))
	}
}

// tables sets tables one under the other, a new page where one does not fit; long ones run over.
func (b *leaflet) tables(all []*table) {
	for _, t := range all {
		if t.height() <= b.room.H()*0.6 || b.y-b.room.Min.Y < t.start()+20 {
			b.need(min(t.height(), b.room.H()))
		}
		for title := t.title; ; t.title = title + ", CONTINUED" {
			items, used, rest := t.draw(b.room.Min.X, b.y, b.y-b.room.Min.Y)
			b.page().Items = append(b.page().Items, items...)
			b.y -= used + tableGap
			if len(rest) == 0 {
				break
			}
			if len(t.pens) > 0 {
				t.pens = t.pens[len(t.rows)-len(rest):]
			}
			t.rows = rest
			b.turn(portrait)
		}
	}
	b.y -= 4
}

// view sets a view at the left of the page, on the next one where this has no room for it.
func (b *leaflet) view(c *composer, title, origin string) {
	p := c.paper()
	b.need(p.H())
	b.w.place(b.page(), c, fmt.Sprint(len(b.page().Views)+1), title, origin, pt(b.room.Min.X+max(0, b.room.W()-p.W())/2-p.Min.X, b.y-p.Max.Y))
	b.y -= p.H() + 12
}

// scaled draws on an empty page of its own at the usual scales from one to another, largest first, until what is drawn
// fits the room and keeps every rule; false when it does at none.
func (b *leaflet) scaled(from, to float64, draw func(s *render.Sheet, room geom.Box, k float64) (fits bool)) bool {
	l := b.own[len(b.own)-1].l
	for _, k := range unit.Scales(b.w.a.Spec.Project.System) {
		if k < from || k > to {
			continue
		}
		s := &render.Sheet{ID: b.id, Title: b.title, Size: l.size, Unit: b.w.unit(), Number: b.page().Number}
		if !draw(s, b.room, k) {
			continue
		}
		b.w.slimBorder(s, l, 1, 1, "")
		if found, err := judge.Layout(s); err == nil && len(found) == 0 {
			return true
		}
	}
	return false
}

// fit sets the first of some drawings of a view that keeps every rule at a usual scale, in a part of an empty page's
// height; where none does, the page says which sheet shows it.
func (b *leaflet) fit(part, from, to float64, title, origin string, draw ...func(k float64) *composer) {
	for _, compose := range draw {
		var c *composer
		if b.scaled(from, to, func(s *render.Sheet, room geom.Box, k float64) bool {
			c = compose(k)
			p := c.paper()
			if p.W() > room.W() || p.H() > part*room.H() {
				return false
			}
			b.w.place(s, c, "1", title, origin, pt(room.Min.X+(room.W()-p.W())/2-p.Min.X, room.Max.Y-p.Max.Y))
			return true
		}) {
			b.view(c, title, origin)
			return
		}
	}
	b.elsewhere(title)
}

// third is fit for three views of one thing.
func (b *leaflet) third(title string, titles [3]string, datum string, draw func(k float64) shopViews) {
	var v shopViews
	if !b.scaled(2, 10, func(s *render.Sheet, room geom.Box, k float64) bool {
		v = draw(k)
		if v.room().X > room.W() || v.room().Y > room.H() {
			return false
		}
		b.w.setThird(s, room, v, 0, titles, datum)
		return true
	}) {
		b.elsewhere(title)
		return
	}
	b.need(v.room().Y)
	b.w.setThird(b.page(), b.left(), v, len(b.page().Views), titles, datum)
	b.y -= v.room().Y + 10
}

// elsewhere says that a view has no room on such a page.
func (b *leaflet) elsewhere(title string) {
	b.tables([]*table{{title: title, width: []float64{b.room.W()}, rows: [][]string{{"TOO MUCH FOR A PAGE OF THIS SIZE: SEE SHEET " + b.id}}}})
}

// block is the block in three views, its pieces, its tables.
func (b *leaflet) block() {
	w := b.w
	if len(w.a.Blocks) == 0 {
		return
	}
	b.turn(portrait)
	b.third("BLOCK", [3]string{"FRONT", "LEFT SIDE", "TOP"}, blockOrigin, func(k float64) shopViews {
		return shopViews{w.blockFront(k), w.blockSide(k), w.blockTop(k)}
	})
	b.tables(w.blockTables(b.room.W()))
	var all []*composer
	high := 0.0
	if b.scaled(2, 10, func(s *render.Sheet, room geom.Box, k float64) (fits bool) {
		all = w.pieceViews(k)
		high, fits = w.inRows(s, room, all)
		return fits
	}) {
		b.need(high)
		w.inRows(b.page(), b.left(), all)
		b.y -= high + 10
	} else {
		b.elsewhere("PIECES")
	}
	b.tables(w.pieceTables(b.room.W()))
}

// ledger is every piece of the ledger in strips, its tables, and one block of it in three views.
func (b *leaflet) ledger() {
	w := b.w
	b.turn(portrait)
	pieces := len(w.a.Find(detail.Ledger))
	var strips []*composer
	if b.scaled(10, 24, func(s *render.Sheet, room geom.Box, k float64) bool {
		strips = w.ledgerStrips(k, room.W())
		p := strips[0].paper()
		w.place(s, strips[0], "1", ledgerTitle, ledgerOrigin, pt(room.Min.X-p.Min.X, room.Max.Y-p.Max.Y))
		return len(strips) <= 3*pieces
	}) {
		for _, c := range strips {
			b.view(c, ledgerTitle, ledgerOrigin)
		}
	} else {
		b.elsewhere(ledgerTitle)
	}
	b.tables(w.ledgerTables(b.room.W()))
	if i := w.sectionBlock(); i >= 0 {
		piece := w.pieceAt(w.a.Blocks[i].X)
		title := "LEDGER AT BLOCK " + w.a.Blocks[i].Mark
		b.third(title, [3]string{title, title, title}, "axis of the block x lower edge of the ledger", func(k float64) shopViews {
			return shopViews{w.ledgerFront(piece, i, k), w.ledgerEnd(piece, k), w.ledgerTop(piece, i, k)}
		})
	}
	b.tables(w.detailTables(b.room.W()))
}

// material is what is bought, and the cutting plan with the lumber.
func (b *leaflet) material() {
	w := b.w
	b.turn(portrait)
	b.tables(w.materialBlocks(b.room.W()))
	b.fit(1, 8, 50, "CUTTING PLAN", stickOrigin, w.cuttingPlan)
	b.tables(append(w.lumberBlocks(b.room.W()), w.otherBlocks(b.room.W())...))
}

// survey is what is measured on site, to write on.
func (b *leaflet) survey() {
	w := b.w
	b.turn(portrait)
	list := w.surveyList()
	b.fit(0.5, 8, 100, "SECTION", origin, func(k float64) *composer { return w.surveySection(list, k) })
	b.fit(0.5, 8, 100, "ELEVATION", elevationOrigin, func(k float64) *composer { return w.surveyElevation(list, k) })
	b.turn(portrait)
	b.tables(w.surveyTables(list, b.room.W(), 9))
}

// tension is the lateral device: its section and its plan across a page each, where the devices stand, the tables.
func (b *leaflet) tension() {
	w := b.w
	d, ok := w.shownDevice()
	if !ok {
		return
	}
	defer func(tight int) { w.tight = tight }(w.tight)
	w.tight = 3 // short notes
	section := w.devicePicture(d, "section at a device")
	b.turn(posture{aside: true})
	keyed := func(k float64) *composer {
		w.keyed = true
		defer func() { w.keyed = false }()
		return w.tensionSection(section, d, k)
	}
	b.fit(1, 4, 20, "SECTION AT DEVICE", origin, func(k float64) *composer { return w.tensionSection(section, d, k) }, keyed)
	plan := w.devicePicture(d, "plan at a device")
	b.turn(portrait)
	b.fit(0.7, 4, 20, "PLAN AT DEVICE", planOrigin, func(k float64) *composer { return w.tensionPlan(plan, d, k) })
	b.fit(1, 8, 100, "POSITIONS", frontOrigin, w.tensionElevation)
	b.tables(w.tensionTables(b.room.W()))
}
