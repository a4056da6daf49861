package sheet

import (
	"fmt"
	"math"

	"standclear/detail/check/thermal"
	"standclear/geom"
	"standclear/render"
)

// heatSheet draws the temperatures in the section at a block and between blocks, with the scale of the
// grounds and the table of the named places beside them.
func (w *writer) heatSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	wide := math.Min(136, room.W()*0.3)
	views := geom.Box{Min: room.Min, Max: pt(room.Max.X-wide-8, room.Max.Y)}
	cuts := w.heatCuts()
	titles := []string{"TEMPERATURES AT BLOCK " + w.heat.Block, "TEMPERATURES BETWEEN BLOCKS"}
	var one, two *composer
	try := func(k float64) *composer {
		one, two = w.heatView(cuts[0], k), w.heatView(cuts[1], k)
		low := math.Min(one.extent.Min.Y, two.extent.Min.Y)
		one.extent.Min.Y, two.extent.Min.Y = low, low // titles in line
		one.title("1", titles[0], w.scale(k).Text)
		two.title("2", titles[1], w.scale(k).Text)
		both := *one
		both.extent = geom.Box{Min: geom.Vec{Y: math.Min(one.extent.Min.Y, two.extent.Min.Y)}, Max: geom.Vec{X: one.extent.W() + two.extent.W() + one.mm(12), Y: math.Max(one.extent.Max.Y, two.extent.Max.Y)}}
		return &both
	}
	area := geom.Vec{X: views.W(), Y: views.H()}
	c, fits := w.choose(w.a.Spec.Sheets.Section, 2, 10, area, try)
	if !fits && w.tight == 3 {
		c, fits = w.choose(0, 2, 10, area, try)
	}
	if fits {
		w.heatNames(one, cuts[0])
		w.heatNames(two, cuts[1])
	}
	w.beside(s, views, []*composer{one, two}, []string{"1", "2"}, titles)
	x, y := room.Max.X-wide, w.heatKey(s, room.Max.X-wide, room.Max.Y, wide)
	for _, t := range []*table{w.spotTable(wide), w.heatNotes(wide)} {
		items, used, rest := t.draw(x, y, y-room.Min.Y)
		s.Items = append(s.Items, items...)
		y -= used + 4
		fits = fits && len(rest) == 0 && y >= room.Min.Y-4
	}
	return w.scale(c.k).Text, fits
}

// heatKey draws the scale of the grounds and what the lines and crosses mean, from (x, y) down; it
// returns the height it reaches.
func (w *writer) heatKey(s *render.Sheet, x, y, wide float64) float64 {
	const high = 9.0
	h := w.heatScale()
	title, under := "TEMPERATURE FACTOR f = (T - T OUTSIDE) / (T INSIDE - T OUTSIDE)", "SITE TEMPERATURES NOT STATED: 0 IS OUTSIDE, 1 IS INSIDE"
	if h.stated {
		title = "TEMPERATURE," + caps(h.unit())
		under = fmt.Sprintf("AT DESIGN: %s%s INSIDE, %s%s OUTSIDE", h.tenths(h.value(1)), h.unit(), h.tenths(h.value(0)), h.unit())
	}
	for i, line := range wrap(title, 3.5, wide, true) {
		s.Items = append(s.Items, render.Text{Pen: render.Heading, At: pt(x, y-1-float64(i)*5.6), Height: 3.5, Align: render.TopLeft, Lines: []string{line}, Bold: true})
	}
	y -= 1 + 5.6*float64(len(wrap(title, 3.5, wide, true)))
	s.Items = append(s.Items, render.Text{Pen: render.Note, At: pt(x, y), Height: 2.4, Align: render.TopLeft, Lines: []string{under}})
	y -= 7
	ends := append(append([]float64{h.value(0)}, h.levels()...), h.value(1))
	each := wide / float64(len(ends)-1)
	for i := range len(ends) - 1 {
		box := geom.Rect(x+float64(i)*each, y-high, x+float64(i+1)*each, y)
		s.Items = append(s.Items, render.Fill{Pen: ground(i, len(ends)-1), Region: box})
		if i > 0 {
			s.Items = append(s.Items, render.Stroke{Pen: render.Isotherm, Path: geom.Polyline(pt(x+float64(i)*each, y-high-1.5), pt(x+float64(i)*each, y))})
		}
	}
	s.Items = append(s.Items, render.Stroke{Pen: render.Isotherm, Path: geom.Rect(x, y-high, x+wide, y)[0]})
	for i, v := range ends {
		al := render.TopCentre
		switch i {
		case 0:
			al = render.TopLeft
		case len(ends) - 1:
			al = render.TopRight
		}
		s.Items = append(s.Items, render.Text{Pen: render.Note, At: pt(x+float64(i)*each, y-high-2.2), Height: 2.4, Align: al, Lines: []string{h.text(v)}})
	}
	return w.heatSigns(s, x, y-high-9, wide)
}

// heatSigns says what the lines and crosses of the sheet mean.
func (w *writer) heatSigns(s *render.Sheet, x, y, wide float64) float64 {
	h := w.heatScale()
	sign := func(words string, items ...render.Item) {
		lines := wrap(words, 2.4, wide-18, false)
		s.Items = append(append(s.Items, items...), render.Text{Pen: render.Note, At: pt(x+18, y+1.2), Height: 2.4, Align: render.TopLeft, Lines: lines})
		y -= 2 + float64(len(lines))*2.4*render.LinePitch
	}
	line := func(p render.Pen) render.Stroke { return rule(p, pt(x, y), pt(x+14, y)) }
	every := h.text(h.step()) + h.unit()
	sign("ISOTHERM, ONE EVERY "+every+"; ITS VALUE STANDS AT ITS END OR IN IT", line(render.Isotherm))
	if dew, ok := w.roomDew(); ok && h.stated {
		sign(fmt.Sprintf("DEW POINT OF THE ROOM AIR, %s%s AT %s%s AND %.0f %%", h.tenths(h.degrees(dew)), h.unit(), h.tenths(h.value(1)), h.unit(), 100*float64(*w.a.Spec.Site.Humidity)), line(render.DewPoint))
	}
	sign("OUTLINE OF A PART", line(render.HeatEdge))
	sign("NAMED PLACE, SEE THE TABLE", rule(render.Mark, pt(x+5.4, y), pt(x+8.6, y)), rule(render.Mark, pt(x+7, y-1.6), pt(x+7, y+1.6)))
	return y - 2
}

// spotTable gives the temperatures of the named places with the errors the grid leaves in them.
func (w *writer) spotTable(width float64) *table {
	h := w.heatScale()
	t := &table{title: "NAMED PLACES", head: []string{"", "PLACE", "WHERE", "FACTOR f"}, width: shares(width, 0.55, 3.4, 1.6, 1.9), text: 2.2, right: []bool{false, false, false, true, true, true}}
	site := w.a.Spec.Site
	cold := h.stated && site.ColdMonth != nil && *site.ColdMonth < h.in
	if h.stated {
		t.head, t.width = append(t.head, "AT DESIGN,"+h.unit()), shares(width, 0.55, 3.2, 1.7, 1.9, 1.75)
	}
	if cold {
		t.head, t.width = append(t.head, "COLD MONTH,"+h.unit()), shares(width, 0.55, 3.0, 1.75, 1.9, 1.75, 1.75)
	}
	for i, s := range w.heat.Spots {
		row := []string{letter(i), caps(s.Name), caps(s.Where), plusMinus(s.F, 3)}
		if h.stated {
			row = append(row, h.spot(s.F))
		}
		if cold {
			month := h
			month.out = *site.ColdMonth
			row = append(row, month.spot(s.F))
		}
		t.rows = append(t.rows, row)
	}
	if dew, ok := w.roomDew(); ok && h.stated {
		row := []string{"", "DEW POINT OF THE ROOM AIR", "", "", h.tenths(h.degrees(dew))}
		if cold {
			row = append(row, h.tenths(h.degrees(dew)))
		}
		t.rows = append(t.rows, row)
	}
	return t
}

// spot writes the temperature that belongs to a factor, with its error.
func (h heatScale) spot(f thermal.Value) string {
	return plusMinus(thermal.Value{V: h.value(f.V), Err: f.Err * (h.value(1) - h.value(0))}, 1)
}

// heatNotes says what the temperatures rest on.
func (w *writer) heatNotes(width float64) *table {
	t := &table{title: "WHAT THE TEMPERATURES REST ON", width: []float64{width}, text: 2.2}
	r, h := w.heat, w.heatScale()
	add := func(words string) { t.rows = append(t.rows, []string{caps(words)}) }
	add(fmt.Sprintf("steady heat flow through one bay of wall in three dimensions, %s cells; heat in and out agree to %s", thousands(r.Cells), parts(r.Balance)))
	if r.Error > r.Asked {
		add(fmt.Sprintf("flows are known to %.1f %% only: read every value with its error", 100*r.Error))
	}
	add("± is what the grid leaves in a value; the properties of the materials are not in it")
	add(fmt.Sprintf("section 1 is cut %s, section 2 %s right of the left end of the ledger", w.text(r.AtBlock.X), w.text(r.Between.X)))
	add("white is air, or no part of the solution")
	for _, s := range r.Spots {
		if s.Room {
			add("places on surfaces of the room are solved for the mould criterion of ISO 13788, in slower air than the sections show")
			break
		}
	}
	if !h.stated {
		add("state site.inside_temperature and site.design_temperature for degrees")
	}
	for _, a := range r.Assumed {
		add(a)
	}
	return t
}

// thousands writes a count with blanks between its thousands.
func thousands(n int) string {
	s := fmt.Sprint(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + " " + s[i:]
	}
	return s
}

// parts writes a small share as one part in so many.
func parts(v float64) string {
	if v <= 1e-9 {
		return "all figures"
	}
	return "1 part in " + thousands(int(math.Pow(10, math.Floor(math.Log10(1/v)))))
}
