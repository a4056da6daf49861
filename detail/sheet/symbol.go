package sheet

import (
	"math"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

func pt(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

// titleMark is the circle with the view's number and the rule under its title, in plotted
// millimetres; the grip is the left end of the rule.
var titleMark = &render.Symbol{Name: "SC-VIEW", Items: []render.Item{
	render.Stroke{Pen: render.Mark, Path: geom.Circle(pt(6, 0), 6)[0]},
	render.Text{Pen: render.Mark, At: pt(6, 0), Height: 3.5, Align: render.MiddleCentre, Lines: []string{"1"}, Attr: "VIEW_NO"},
}}

// levelTarget is the triangle and line of a level, grip at the tip.
var levelTarget = &render.Symbol{Name: "SC-LEVEL", Items: []render.Item{
	render.Stroke{Pen: render.Mark, Path: geom.Polygon(pt(0, 0), pt(1.6, 2.4), pt(-1.6, 2.4))},
}}

// sectionMark shows where a section is cut and which way it looks: circle with view and sheet, a
// filled triangle on the side looked to (right).
var sectionMark = &render.Symbol{Name: "SC-CUT", Items: []render.Item{
	render.Stroke{Pen: render.Mark, Path: geom.Circle(pt(0, 0), 6)[0]},
	render.Fill{Pen: render.Mark, Region: geom.Region{geom.Polygon(pt(4.6, -3.9), pt(9, 0), pt(4.6, 3.9))}},
	render.Stroke{Pen: render.Mark, Path: geom.Polyline(pt(-6, 0), pt(6, 0))},
	render.Text{Pen: render.Mark, At: pt(0, 2.9), Height: 2.5, Align: render.MiddleCentre, Lines: []string{"1"}, Attr: "VIEW_NO"},
	render.Text{Pen: render.Mark, At: pt(0, -2.7), Height: 2, Align: render.MiddleCentre, Lines: []string{"A-301"}, Attr: "SHEET_NO"},
}}

// partMark is the box round a part's mark.
var partMark = &render.Symbol{Name: "SC-MARK", Items: []render.Item{
	render.Stroke{Pen: render.Mark, Path: geom.Circle(pt(0, 0), 4)[0]},
	render.Text{Pen: render.Mark, At: pt(0, 0), Height: 2.2, Align: render.MiddleCentre, Lines: []string{"B1"}, Attr: "MARK"},
}}

// title writes the view's title under everything else of it: number, title, rule, scale, bar.
func (c *composer) title(no, title, scale string) {
	x, y := c.heading(no, title, "SCALE "+scale, 60)
	at := geom.Vec{X: x + c.mm(font.Width("SCALE "+scale, 2.5, false)+8), Y: y - c.mm(3.4)}
	c.scaleBar(at)
}

// heading writes number, title and rule, and words below the rule with room plotted millimetres beside them;
// it returns where the words start.
func (c *composer) heading(no, title, words string, room float64) (x, y float64) {
	x = c.extent.Min.X
	y = c.extent.Min.Y - c.mm(14)
	w := max(font.Width(title, 5, true), font.Width(words, 2.5, false)+room) + 4
	c.put(
		render.Insert{Pen: render.Mark, Symbol: titleMark, At: geom.Vec{X: x, Y: y}, Scale: c.k, Fields: []render.Field{{Name: "VIEW_NO", Value: no}}},
		render.Stroke{Pen: render.Heading, Path: geom.Polyline(geom.Vec{X: x + c.mm(12), Y: y}, geom.Vec{X: x + c.mm(15+w), Y: y})},
		render.Text{Pen: render.Heading, At: geom.Vec{X: x + c.mm(15), Y: y + c.mm(1.6)}, Height: 5, Align: render.BottomLeft, Lines: []string{title}, Bold: true},
	)
	c.text(render.Note, geom.Vec{X: x + c.mm(15), Y: y - c.mm(2)}, 2.5, render.TopLeft, 0, words)
	c.grow(geom.Vec{X: x, Y: y + c.mm(6)}, geom.Vec{X: x + c.mm(15+w), Y: y - c.mm(9)})
	return x + c.mm(15), y
}

// caption names a view of a shop sheet, with its scale; a long name goes over lines no wider than the view.
func (c *composer) caption(title, scale string) {
	const h, least = 3.0, 90.0
	at := geom.Vec{X: c.object.Min.X, Y: c.extent.Min.Y - c.mm(4)}
	lines := wrap(title, h, math.Max(least, c.object.W()/c.k)-font.Width(scale, 2.5, false)-4, true)
	c.put(render.Text{Pen: render.Heading, At: at, Height: h, Align: render.TopLeft, Lines: lines, Bold: true})
	last := len(lines) - 1
	w, down := font.Width(lines[last], h, true), float64(last)*h*render.LinePitch
	c.text(render.Note, at.Add(geom.Vec{X: c.mm(w + 4), Y: -c.mm(down + 0.5)}), 2.5, render.TopLeft, 0, scale)
	b := letterBox(at, h, render.TopLeft, 0, lines, c.k, true)
	c.grow(at, b.Min, b.Max, at.Sub(geom.Vec{Y: c.mm(down + 4)}))
}

// scaleBar draws five divisions of a round length with its ends named.
func (c *composer) scaleBar(at geom.Vec) {
	div := c.barDivision()
	for i := range 5 {
		x0, x1 := at.X+float64(i)*div, at.X+float64(i+1)*div
		y1 := at.Y + c.mm(1)
		if i%2 == 0 {
			c.put(render.Fill{Pen: render.Mark, Region: geom.Rect(x0, at.Y, x1, y1)})
		}
	}
	c.put(render.Stroke{Pen: render.Mark, Path: geom.Rect(at.X, at.Y, at.X+5*div, at.Y+c.mm(1))[0]})
	c.text(render.Note, geom.Vec{X: at.X + 5*div + c.mm(2), Y: at.Y + c.mm(0.5)}, 2.5, render.MiddleLeft, 0, c.number(5*div))
}

// barDivision is a round length near 8 mm plotted.
func (c *composer) barDivision() float64 {
	unit, rounds := 1.0, []float64{5, 10, 20, 50, 100, 200, 500}
	if c.number(25.4) == `1"` {
		unit, rounds = 25.4, []float64{0.25, 0.5, 1, 2, 4, 6, 12, 24}
	}
	best := rounds[0] * unit
	for _, r := range rounds {
		if r*unit <= c.mm(9) {
			best = r * unit
		}
	}
	return best
}

// levelMark writes a level beside its target.
func (c *composer) levelMark(s side, at geom.Vec, words string) {
	out := 1.0
	al := render.BottomLeft
	if s == left {
		out, al = -1, render.BottomRight
	}
	w := font.Width(words, c.st.Text, false)
	tip := at.Add(geom.Vec{X: out * c.mm(2)})
	c.put(
		render.Insert{Pen: render.Mark, Symbol: levelTarget, At: tip, Scale: c.k},
		render.Stroke{Pen: render.Note, Path: geom.Polyline(at, at.Add(geom.Vec{X: out * c.mm(5.5+w)}))},
	)
	c.grow(at, at.Add(geom.Vec{X: out * c.mm(5.5+w)}))
	c.text(render.Note, at.Add(geom.Vec{X: out * c.mm(5), Y: c.mm(0.9)}), c.st.Text, al, 0, words)
}
