package sheet

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail/check/thermal"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// compareSheet sets the ways to hang the deck side by side: what each costs in heat, and how cold it
// makes the inside.
func (w *writer) compareSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	y := room.Max.Y
	t := w.wayTable(room.W())
	items, used, rest := t.draw(room.Min.X, y, y-room.Min.Y)
	s.Items = append(s.Items, items...)
	y -= used + 8
	const apart = 10
	wide := (room.W() - apart) * 0.58
	c := w.wayBars(wide)
	p := c.paper()
	w.place(s, c, "1", "EXTRA HEAT OF THE RUN", "zero line x top of the first bar", pt(room.Min.X-p.Min.X, y-p.Max.Y))
	s.Views[0].Scale.Text = "NTS"
	n := w.wayNotes(room.W() - apart - wide)
	items, high, more := n.draw(room.Min.X+wide+apart, y, y-room.Min.Y)
	s.Items = append(s.Items, items...)
	return "NTS", len(rest)+len(more) == 0 && y-math.Max(p.H(), high) >= room.Min.Y
}

// heatUnits are the units of the comparison: what one of SI is in them, and their names.
type heatUnits struct {
	flow, line, resist float64
	flowIn, lineIn, in string
}

func (w *writer) heatUnits() (u heatUnits) {
	sys := w.a.Spec.Project.System
	u.flow, u.flowIn = unit.Conductance(1).Q().In(sys)
	u.line, u.lineIn = unit.LineConductance(1).Q().In(sys)
	u.resist, u.in = unit.Resistance(1).Q().In(sys)
	return u
}

// wayTable has a row for each way.
func (w *writer) wayTable(width float64) *table {
	u, h, r := w.heatUnits(), w.heatScale(), w.heat
	season := w.a.Spec.Site.DegreeDays
	t := &table{title: "WAYS TO HANG THE DECK, BY THE HEAT THEY COST", text: 2.2}
	var parts []float64
	column := func(head string, part float64, right bool) {
		t.head, parts, t.right = append(t.head, head), append(parts, part), append(t.right, right)
	}
	column("WAY", 3, false)
	column("TAKEN FOR IT", 4.6, false)
	column("EXTRA HEAT OF THE RUN, "+u.flowIn, 1.9, true)
	if season != nil {
		column("HEATING SEASON, kWh", 1.6, true)
	}
	column("PER LENGTH OF LEDGER, "+u.lineIn, 2, true)
	column("SHARE OF THE TIGHT LEDGER", 1.4, true)
	column("R OF "+w.wallArea()+", "+u.in, 1.8, true)
	column("LOWEST INSIDE FACTOR f", 1.7, true)
	if h.stated {
		column("LOWEST INSIDE AT DESIGN,"+h.unit(), 1.6, true)
	}
	t.width = shares(width, parts...)
	tight := r.Way("tight")
	for i := range r.Ways {
		way := &r.Ways[i]
		name := sized(caps(way.Name))
		if way.Drawn && !strings.Contains(name, "DRAWN") {
			name += ", DRAWN"
		}
		row := []string{name, sized(caps(way.Note)), withError(way.Run.Times(u.flow))}
		if season != nil {
			row = append(row, withError(way.Season(float64(*season))))
		}
		share := "-"
		if tight != nil && tight.Run.V > 0 {
			share = fmt.Sprintf("%.0f %%", 100*(1-r.Saved(way))+0)
		}
		row = append(row, withError(r.PerMetre(way).Times(u.line)), share, plusMinus(resistance(r.Effective(way)).Times(u.resist), 2), plusMinus(way.Low, 3))
		if h.stated {
			row = append(row, h.spot(way.Low))
		}
		t.rows = append(t.rows, row)
	}
	return t
}

// withError writes a value to three figures with its error, or to the first figure of an error that is
// larger than that.
func withError(v thermal.Value) string {
	if v.V == 0 && v.Err == 0 {
		return "0"
	}
	return plusMinus(v, decimals(v.V))
}

// resistance turns a U into a resistance, with its error.
func resistance(u thermal.Value) thermal.Value {
	return thermal.Value{V: 1 / u.V, Err: u.Err / (u.V * u.V)}
}

// wallArea is the wall the effective resistance is given for.
func (w *writer) wallArea() string {
	a := w.heat.Area()
	if w.a.Spec.Project.System == unit.IP {
		return fmt.Sprintf("%.0f ft2 OF WALL", a/(0.3048*0.3048))
	}
	return fmt.Sprintf("%.1f m2 OF WALL", a)
}

// diagonal fills the bars of the ways that are not drawn.
var diagonal = &render.HatchPattern{Name: "SC-BAR", Lines: []render.PatternLine{{Angle: 45, Spacing: 1.4}}}

// wayBars draws a bar for each way, of the length of its extra heat: hatched, the drawn one solid.
func (w *writer) wayBars(wide float64) *composer {
	const high, pitch, names, values = 5.0, 9.5, 60.0, 46.0
	u, r := w.heatUnits(), w.heat
	c := w.composer(1)
	most, least := 0.0, 0.0
	for _, way := range r.Ways {
		most, least = math.Max(most, way.Run.V), math.Min(least, way.Run.V)
	}
	k := 0.0
	if most > least {
		k = (wide - names - values) / (most - least)
	}
	zero := -least * k
	foot := 0.0
	for i, way := range r.Ways {
		y := -float64(i) * pitch
		mid := y - high/2
		foot = y - high
		end := zero + way.Run.V*k
		bar := geom.Rect(math.Min(zero, end), foot, math.Max(zero, end), y)
		if math.Abs(end-zero) > 0.3 {
			if way.Drawn {
				c.put(render.Fill{Pen: render.Existing, Region: bar})
			} else {
				c.put(render.Fill{Pen: render.Pattern, Region: bar, Pattern: diagonal, Origin: bar.Bounds().Min})
			}
			c.put(render.Stroke{Pen: render.Visible, Path: bar[0]})
		}
		words := withError(way.Run.Times(u.flow))
		if way.Drawn {
			words += "  DRAWN"
		}
		c.put(render.Text{Pen: render.Note, At: geom.Vec{X: math.Max(zero, end) + 2, Y: mid}, Height: 2.5, Align: render.MiddleLeft, Lines: []string{words}, Bold: way.Drawn})
		lines := wrap(sized(caps(way.Name)), 2.4, names-4, way.Drawn)
		c.put(render.Text{Pen: render.Note, At: geom.Vec{X: -3, Y: mid}, Height: 2.4, Align: render.MiddleRight, Lines: lines, Bold: way.Drawn})
	}
	c.put(render.Stroke{Pen: render.Cut, Path: geom.Polyline(geom.Vec{X: zero, Y: 2}, geom.Vec{X: zero, Y: foot - 2})})
	c.text(render.Note, geom.Vec{X: zero, Y: foot - 3.2}, 2.2, render.TopCentre, 0, "0")
	c.object = geom.Box{Min: geom.Vec{X: -names, Y: foot - 6}, Max: geom.Vec{X: wide - names, Y: 3}}
	c.finish()
	c.caption("EXTRA HEAT OF THE RUN, "+u.flowIn, "NTS")
	return c
}

// wayNotes says what is compared and what it rests on.
func (w *writer) wayNotes(width float64) *table {
	r, u := w.heat, w.heatUnits()
	t := &table{title: "WHAT IS COMPARED", width: []float64{width}, text: 2.2}
	add := func(words string) { t.rows = append(t.rows, []string{words}) }
	add(caps("extra heat is what the wall with the attachment loses over the same wall without one, its insulation and cladding running on, for one degree between inside and outside; the run is the ledger of ") + unit.Length(r.Length).Text(w.a.Spec.Project.System) + fmt.Sprintf(", %d BLOCKS", r.Blocks))
	wall := resistance(r.Wall).Times(u.resist)
	add(fmt.Sprintf("WALL WITHOUT ATTACHMENT: R %s %s, LOWEST INSIDE FACTOR %s", plusMinus(wall, 2), u.in, plusMinus(r.Low, 3)))
	add("LOWEST INSIDE IS THE COLDEST SPOT THAT ROOM AIR TOUCHES, THE ENDS OF BOLTS AMONG THEM")
	add(fmt.Sprintf("R OF THE WALL IS GIVEN FOR %s: THE LEDGER'S LENGTH BY A STOREY OF %s", w.wallArea(), either(w.unit() == render.Millimetre, "2.44 m", "8 FT")))
	add(caps(fmt.Sprintf("bolts of one block: %s ", withError(r.Bolts.Times(u.flow)))) + u.flowIn + ", PART OF THE DRAWN WAY")
	if d := w.a.Spec.Site.DegreeDays; d != nil {
		add("HEATING SEASON AT " + d.Text(w.a.Spec.Project.System) + "; HEAT THROUGH THE WALL, NOT FUEL BURNT")
	} else {
		add("HEATING SEASON: NOT STATED (site.degree_days)")
	}
	add("A WAY WITHOUT HEAT THROUGH THE WALL COSTS NONE HERE: ITS POSTS AND FOOTINGS ARE ANOTHER COST")
	add(caps("± is what the grid leaves in a value; the properties of the materials are not in it"))
	return t
}
