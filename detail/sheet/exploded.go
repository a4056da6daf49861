package sheet

import (
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

const (
	pictorialOrigin = "isometric: left end of ledger x outer face of sheathing x finished floor"
	noScale         = "NOT TO SCALE"
)

// exploded is what the sheet of that name shows, at no scale yet.
type exploded struct {
	n     neighbourhood
	marks []string // in building order
	apart view.Pictorial
	whole assembled
	drawn []render.Item // of apart
}

// pictorial looks from the left end of the ledger, from outside and above: outside is to the right, down the
// page.
func pictorial() geom.View { return geom.Isometric(geom.Vec3{}, -1, 1) }

// newExploded pulls the parts at one block apart so that each shows about a third of its width past the
// next.
func (w *writer) newExploded() *exploded {
	e := &exploded{n: w.explodedBlock()}
	clear := e.n.room.Size().X * 0.36
	at := 0.0
	var ms []view.Moved
	for i, g := range w.groups(e.n) {
		lo, hi := g.depth()
		switch {
		case i > 0 && g.near:
			at += clear * 0.45
		case i > 0:
			at += clear
		}
		for _, m := range g.parts {
			ms = append(ms, m.By(geom.Vec3{Y: at - lo}))
			if !slices.Contains(e.marks, m.Part.Mark) {
				e.marks = append(e.marks, m.Part.Mark)
			}
		}
		at += hi - lo
	}
	e.apart = view.Lay(pictorial(), ms, w.traces(e.n.block, ms))
	e.whole, e.drawn = w.newAssembled(e.n), e.apart.Draw()
	return e
}

// traces are the axes of the bolts of block b, from the innermost to the outermost of what is drawn apart.
func (w *writer) traces(b int, ms []view.Moved) [][2]geom.Vec3 {
	ends := map[geom.Vec]span{}
	var order []geom.Vec
	for _, m := range ms {
		if m.Part.Block != b || m.Part.Role != detail.Bolt && m.Part.Role != detail.Nut && m.Part.Role != detail.Washer {
			continue
		}
		box := m.Solids[0].Bounds()
		for _, s := range m.Solids {
			box = box.Union(s.Bounds())
		}
		at := geom.Vec{X: math.Round(box.Center().X*10) / 10, Y: math.Round(box.Center().Z*10) / 10}
		s, ok := ends[at]
		if !ok {
			s = span{math.Inf(1), math.Inf(-1)}
			order = append(order, at)
		}
		ends[at] = span{math.Min(s.lo, box.Min.Y), math.Max(s.hi, box.Max.Y)}
	}
	var out [][2]geom.Vec3
	for _, at := range order {
		out = append(out, [2]geom.Vec3{{X: at.X, Y: ends[at].lo, Z: at.Y}, {X: at.X, Y: ends[at].hi, Z: at.Y}})
	}
	return out
}

// explodedSheet pulls the parts at one block apart along the wall's normal, in building order, and shows
// them assembled beside: the band of parts falls from the upper left to the lower right, the assembled view
// stands in the corner over it, the list in the corner under it.
func (w *writer) explodedSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	if len(w.a.Blocks) == 0 {
		s.Items = append(s.Items, render.Text{Pen: render.Note, At: room.Center(), Height: 3.5, Align: render.MiddleCentre, Lines: []string{"NOT DRAWN: NO BLOCK COULD BE PLACED"}})
		return noScale, true
	}
	if w.exploded == nil {
		w.exploded = w.newExploded()
	}
	e, t := w.exploded, w.orderTable(w.exploded)
	c, band := w.explodedView(e, room)
	p := c.paper()
	at := pt(room.Min.X-p.Min.X, room.Max.Y-p.Max.Y)
	foot := room.Min.Y + headingHigh + t.height()
	corner := pt(room.Min.X+t.total(), foot).Sub(at).Mul(c.k)
	fits := c.k <= smallest && band.under(corner, c.mm(balloonRow+balloonR+3))
	fits = w.addAssembled(c, e, band, pt(room.Max.X-2, room.Max.Y-4).Sub(at).Mul(c.k)) && fits
	c.extent = geom.Box{Min: room.Min.Sub(at).Add(pt(0, headingHigh)).Mul(c.k), Max: room.Max.Sub(at).Mul(c.k)}
	words := noScale + ". DO NOT DIMENSION. LAYERS, LEDGER, RIM AND JOISTS RUN ON PAST THE BLOCK WHERE THEY ARE CUT OFF HERE"
	if len(w.a.HouseJoists) == 0 {
		words += ". " + joistsAlong
	}
	c.heading("1", "EXPLODED AXONOMETRIC AT BLOCK "+w.a.Blocks[e.n.block].Mark, words, 0)
	v := render.View{ID: "1", Title: "EXPLODED AXONOMETRIC", Origin: pictorialOrigin, Scale: render.Scale{K: c.k, Text: noScale}, At: at, Window: c.extent, Items: c.items}
	s.Views = append(s.Views, v)
	items, _, _ := t.draw(room.Min.X, foot, t.height()+1)
	s.Items = append(s.Items, items...)
	return noScale, fits
}

const (
	headingHigh = 24.0 // plotted, what the heading of the sheet takes
	smallest    = 9.5  // model per plotted millimetre: below it bolts run together (judgement)
)

// explodedView composes the parts drawn apart as large as the room lets them be, with their balloons.
func (w *writer) explodedView(e *exploded, room geom.Box) (*composer, *balloons) {
	box, b := e.apart.Box(), newBalloons(e.apart, geom.Vec{X: math.Sqrt(3) / 2, Y: -0.5})
	for k := math.Ceil(8*math.Max(box.W()/(room.W()-balloonRow), box.H()/(room.H()-balloonRow))) / 8; ; k += 0.125 {
		c := w.composer(k)
		b.k = k
		c.add(e.drawn, box)
		c.extent = box
		b.draw(c, e.marks)
		if p := c.paper(); p.W() <= room.W() && p.H() <= room.H() || k > smallest {
			return c, b
		}
	}
}

// addAssembled sets the assembled view with its upper right corner at a point, and reports whether it stays
// clear of the band.
func (w *writer) addAssembled(c *composer, e *exploded, band *balloons, corner geom.Vec) bool {
	box := e.whole.beyond.Box()
	move := corner.Sub(box.Max)
	box = box.Move(move)
	c.put(e.whole.draw(w, c.k, move)...)
	words := []string{"ASSEMBLED, CUT AT THE", "BOLTS OF " + w.a.Blocks[e.n.block].Mark}
	at := geom.Vec{X: box.Max.X, Y: box.Min.Y - c.mm(5)}
	c.put(render.Text{Pen: render.Heading, At: at, Height: 3.5, Align: render.TopRight, Lines: words, Bold: true})
	low := geom.Vec{X: box.Max.X - c.mm(60), Y: at.Y - c.mm(3*3.5)}
	room := c.mm(balloonRow + balloonR + 3)
	return band.over(low, room) && band.over(box.Min.Lerp(geom.Vec{X: box.Min.X, Y: box.Max.Y}, 0.3), room)
}

// orderTable lists what the balloons name, in building order from inside out.
func (w *writer) orderTable(e *exploded) *table {
	t := &table{title: "PARTS IN BUILDING ORDER, FROM INSIDE OUT", head: []string{"MARK", "QTY", "PART", "SIZE"}, width: []float64{15, 15, 52, 62}}
	lines := w.a.Schedule()
	for _, m := range e.marks {
		var of []detail.Line
		for _, l := range lines {
			if l.Mark == m {
				of = append(of, l)
			}
		}
		row := w.partRow(of)
		if of[0].Existing {
			row[1] = "-"
		}
		if m == "PS1" && len(w.a.Joints()) > 1 {
			row[2] += ", OF THE OUTER JOINT HERE"
		}
		t.rows = append(t.rows, row[:4])
	}
	return t
}
