package sweep

import (
	"math"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// bands shade the designs of a map that fail nothing, by the ratio of what governs, most reserve first; lighter is
// nearer the limit.
var bands = []struct {
	upTo float64
	pen  render.Pen
	text string
}{
	{0.70, render.Heat4, "no check fails, ratio up to 0.70"},
	{0.85, render.Heat6, "no check fails, up to 0.85"},
	{math.Inf(1), render.Heat8, "no check fails, up to 1"},
}

// grid draws a map of two parameters, the first upward.
func (p *plot) grid() {
	up, right := &p.axes[0], &p.axes[1]
	nx, ny := float64(len(right.Points)), float64(len(up.Points))
	w, h := (fieldR-fieldL)/nx, (fieldT-fieldB)/ny
	cell := func(r *Row) geom.Box {
		x, y := fieldL+w*float64(r.At[1]), fieldB+h*float64(r.At[0])
		return geom.Box{Min: geom.Vec{X: x, Y: y}, Max: geom.Vec{X: x + w, Y: y + h}}
	}
	for i := range p.rows {
		p.tint(&p.rows[i], cell(&p.rows[i]))
	}
	p.frame()
	if w > 3.4 && h > 3.8 {
		for i := range p.rows {
			r, c := &p.rows[i], cell(&p.rows[i]).Center()
			switch {
			case r.Problem != "":
				p.cross(c)
			case r.Governs.ID != "":
				p.text(c, render.MiddleCentre, small, false, letterOf(p.names[r.Governs.Name]))
			}
		}
	}
	p.bottom(right, func(i int) float64 { return fieldL + w*(float64(i)+0.5) })
	wide := 0.0
	for _, i := range up.ticks(fieldT-fieldB, func(string) float64 { return small }) {
		y := fieldB + h*(float64(i)+0.5)
		p.line(render.Fine, geom.Vec{X: fieldL - 1.5, Y: y}, geom.Vec{X: fieldL, Y: y})
		t := up.Points[i].Text
		for font.Width(t, small, false) > fieldL-14 && len(t) > 4 {
			t = t[:len(t)-4] + "..."
		}
		wide = math.Max(wide, font.Width(t, small, false))
		p.text(geom.Vec{X: fieldL - 3, Y: y}, render.MiddleRight, small, false, t)
	}
	p.add(render.Text{Pen: render.Note, At: geom.Vec{X: math.Max(4, fieldL-3-wide-6), Y: (fieldB + fieldT) / 2}, Height: letter, Align: render.MiddleCentre, Rot: 90, Lines: []string{up.Key}})
	p.key(false)
	for _, b := range bands {
		p.keyLine(b.text, func(c geom.Vec) { p.add(render.Fill{Pen: b.pen, Region: swatch(c)}) })
	}
	p.keyLine("white: a check fails, or could not be done", func(c geom.Vec) { p.add(render.Stroke{Pen: render.Fine, Path: swatch(c)[0]}) })
}

// tint shades a design that fails nothing.
func (p *plot) tint(r *Row, b geom.Box) {
	if !r.Feasible() {
		return
	}
	for _, band := range bands {
		if r.Ratio <= band.upTo {
			p.add(render.Fill{Pen: band.pen, Region: geom.Rect(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)})
			return
		}
	}
}
