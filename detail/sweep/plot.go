package sweep

import (
	"fmt"
	"math"
	"strconv"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// Paper of a plot in millimetres: the field within the axes, and the key right of it.
const (
	paperW, paperH       = 297.0, 190.0
	fieldL, fieldR       = 34.0, 196.0
	fieldB, fieldT       = 30.0, 152.0
	keyL, keyR           = 206.0, 289.0
	letter, small, title = 2.5, 2.2, 3.5
)

// Plot draws the rows of one or two axes: the ratio of the check that governs over one parameter, or a map of
// two. What fails no check is shaded; the checks that govern are named in the key, by marks or letters. It
// fails for more axes.
func Plot(project string, axes []Axis, rows []Row) (*render.Sheet, error) {
	p := plot{axes: axes, rows: rows, names: map[string]int{}}
	p.s = &render.Sheet{ID: "SWEEP", Size: render.Size{Name: "plot", W: paperW, H: paperH}, Unit: render.Millimetre}
	for i := range rows {
		if r := &rows[i]; r.Governs.ID != "" {
			if _, ok := p.names[r.Governs.Name]; !ok {
				p.names[r.Governs.Name] = len(p.order)
				p.order = append(p.order, r.Governs.Name)
			}
		}
	}
	switch len(axes) {
	case 1:
		p.s.Title = "ratio of the governing check over " + axes[0].Key
		p.curve()
	case 2:
		p.s.Title = "designs over " + axes[0].Key + " and " + axes[1].Key
		p.grid()
	default:
		return nil, fmt.Errorf("a plot shows one or two parameters, not %d", len(axes))
	}
	p.s.Desc = project + ": " + Summary(rows, len(rows)) + ". Heat is not in the ratio. A calculation aid: local code and a licensed engineer decide."
	p.text(geom.Vec{X: fieldL, Y: paperH - 12}, render.MiddleLeft, title, true, p.s.Title)
	for i, l := range font.Wrap(p.s.Desc, small, paperW-fieldL-8, false) {
		p.text(geom.Vec{X: fieldL, Y: paperH - 19 - float64(i)*3.8}, render.MiddleLeft, small, false, l)
	}
	return p.s, nil
}

// plot is a drawing in the making.
type plot struct {
	s     *render.Sheet
	axes  []Axis
	rows  []Row
	names map[string]int // checks that govern, by name
	order []string
	y     float64 // where the key goes on
}

func (p *plot) add(i ...render.Item) { p.s.Items = append(p.s.Items, i...) }

func (p *plot) text(at geom.Vec, align render.Align, height float64, bold bool, line string) {
	p.add(render.Text{Pen: render.Note, At: at, Height: height, Align: align, Bold: bold, Lines: []string{line}})
}

func (p *plot) line(pen render.Pen, pts ...geom.Vec) {
	p.add(render.Stroke{Pen: pen, Path: geom.Polyline(pts...)})
}

// across returns where point i of an axis stands between lo and hi.
func (a *Axis) across(i int, lo, hi float64) float64 {
	n := len(a.Points)
	if n == 1 {
		return (lo + hi) / 2
	}
	if a.Scaled {
		from, to := a.Points[0].At, a.Points[n-1].At
		return lo + (hi-lo)*(a.Points[i].At-from)/(to-from)
	}
	return lo + (hi-lo)*float64(i)/float64(n-1)
}

// ticks are the points of an axis that have room for their text on a length, each text as long as size says.
func (a *Axis) ticks(length float64, size func(string) float64) []int {
	room := 0.0
	for _, p := range a.Points {
		room = math.Max(room, size(p.Text)+3)
	}
	n := len(a.Points)
	step := max(1, int(math.Ceil(room*float64(max(1, n-1))/length)))
	var out []int
	for i := 0; i < n; i += step {
		out = append(out, i)
	}
	return out
}

// curve draws the ratio over one parameter.
func (p *plot) curve() {
	a := &p.axes[0]
	most := 1.2
	for i := range p.rows {
		if p.rows[i].Governs.Limit != nil {
			most = math.Max(most, p.rows[i].Ratio)
		}
	}
	step := 0.2
	for _, s := range []float64{0.5, 1} {
		if most/step > 8 {
			step = s
		}
	}
	top := math.Min(math.Ceil(most/step)*step, 6)
	in := 4.0 // so that no mark stands on the frame
	x := func(i int) float64 { return a.across(i, fieldL+in, fieldR-in) }
	y := func(v float64) float64 { return fieldB + (fieldT-fieldB-in)*math.Min(v, top)/top }
	p.shade(a, x)
	p.frame()
	for v := 0.0; v <= top+1e-9; v += step {
		p.line(render.Fine, geom.Vec{X: fieldL - 1.5, Y: y(v)}, geom.Vec{X: fieldL, Y: y(v)})
		t := strconv.FormatFloat(v, 'f', 1, 64)
		if v >= top-1e-9 && most > top {
			t += " +"
		}
		p.text(geom.Vec{X: fieldL - 3, Y: y(v)}, render.MiddleRight, small, false, t)
	}
	p.line(render.Phantom, geom.Vec{X: fieldL, Y: y(1)}, geom.Vec{X: fieldR, Y: y(1)})
	p.add(render.Text{Pen: render.Note, At: geom.Vec{X: 14, Y: (fieldB + fieldT) / 2}, Height: letter, Align: render.MiddleCentre, Rot: 90, Lines: []string{"demand over what is allowed"}})
	p.bottom(a, x)
	var run []geom.Vec
	flush := func() {
		if len(run) > 1 {
			p.line(render.Fine, run...)
		}
		run = nil
	}
	for i := range p.rows {
		r := &p.rows[i]
		if r.Problem != "" || r.Governs.Limit == nil {
			flush()
			continue
		}
		run = append(run, geom.Vec{X: x(r.At[0]), Y: y(r.Ratio)})
	}
	flush()
	for i := range p.rows {
		switch r := &p.rows[i]; {
		case r.Problem != "":
			p.cross(geom.Vec{X: x(r.At[0]), Y: fieldB + in})
		case r.Governs.Limit != nil:
			p.mark(geom.Vec{X: x(r.At[0]), Y: y(r.Ratio)}, p.names[r.Governs.Name], r.Feasible())
		}
	}
	p.key(true)
}

// shade covers the stretches of one parameter in which no check fails.
func (p *plot) shade(a *Axis, x func(int) float64) {
	for k := 0; k < len(p.rows); k++ {
		if !p.rows[k].Feasible() {
			continue
		}
		from := k
		for k+1 < len(p.rows) && p.rows[k+1].Feasible() && p.rows[k+1].At[0] == p.rows[k].At[0]+1 {
			k++
		}
		l, r := x(p.rows[from].At[0]), x(p.rows[k].At[0])
		if l > r {
			l, r = r, l
		}
		p.add(render.Fill{Pen: render.Heat7, Region: geom.Rect(math.Max(fieldL, l-2), fieldB, math.Min(fieldR, r+2), fieldT)})
	}
}

func (p *plot) frame() {
	path := geom.Rect(fieldL, fieldB, fieldR, fieldT)[0]
	p.add(render.Stroke{Pen: render.Visible, Path: path})
}

// bottom writes the axis along the foot of the field.
func (p *plot) bottom(a *Axis, x func(int) float64) {
	for _, i := range a.ticks(fieldR-fieldL, func(s string) float64 { return font.Width(s, small, false) }) {
		p.line(render.Fine, geom.Vec{X: x(i), Y: fieldB - 1.5}, geom.Vec{X: x(i), Y: fieldB})
		p.text(geom.Vec{X: x(i), Y: fieldB - 4.5}, render.MiddleCentre, small, false, a.Points[i].Text)
	}
	p.text(geom.Vec{X: (fieldL + fieldR) / 2, Y: fieldB - 12}, render.MiddleCentre, letter, false, a.Key)
}

// cross marks a design that could not be built.
func (p *plot) cross(c geom.Vec) {
	const r = 1.2
	p.line(render.Note, geom.Vec{X: c.X - r, Y: c.Y - r}, geom.Vec{X: c.X + r, Y: c.Y + r})
	p.line(render.Note, geom.Vec{X: c.X - r, Y: c.Y + r}, geom.Vec{X: c.X + r, Y: c.Y - r})
}

// mark draws the figure of check n about a point, full where no check fails.
func (p *plot) mark(c geom.Vec, n int, full bool) {
	const r = 1.3
	sides := []int{0, 4, 3, 6, 5, 8}[n%6]
	turn := math.Pi / 2
	if sides == 4 {
		turn = math.Pi / 4
	}
	region := geom.Circle(c, r)
	if sides > 0 {
		pts := make([]geom.Vec, sides)
		for i := range pts {
			pts[i] = geom.Polar(c, r*1.15, turn+2*math.Pi*float64(i)/float64(sides))
		}
		region = geom.Region{geom.Polygon(pts...)}
	}
	p.add(render.Fill{Pen: render.Note, Region: region, White: !full}, render.Stroke{Pen: render.Note, Path: region[0]})
}

// letterOf is the letter of check n in a map: A to Z, then a to z.
func letterOf(n int) string {
	const all = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
	return string(all[n%len(all)])
}

// keyLine writes one line of the key behind a figure that draw makes about a point.
func (p *plot) keyLine(text string, draw func(c geom.Vec)) {
	lines := font.Wrap(text, small, keyR-keyL-9, false)
	if p.y-float64(len(lines))*3.8 < 8 {
		return // the rest stands in the table
	}
	draw(geom.Vec{X: keyL + 2.5, Y: p.y})
	for _, l := range lines {
		p.text(geom.Vec{X: keyL + 8, Y: p.y}, render.MiddleLeft, small, false, l)
		p.y -= 3.8
	}
	p.y -= 2
}

// swatch is a small field of the key.
func swatch(c geom.Vec) geom.Region { return geom.Rect(c.X-2.5, c.Y-1.5, c.X+2.5, c.Y+1.5) }

// key names the checks that govern, and the shades.
func (p *plot) key(marks bool) {
	p.y = fieldT - 2
	p.text(geom.Vec{X: keyL, Y: p.y}, render.MiddleLeft, letter, true, "CHECK THAT GOVERNS")
	p.y -= 6
	for n, name := range p.order {
		p.keyLine(name, func(c geom.Vec) {
			if marks {
				p.mark(c, n, true)
			} else {
				p.text(c, render.MiddleCentre, small, true, letterOf(n))
			}
		})
	}
	p.y -= 3
	if marks {
		p.keyLine("shaded, full marks: no check fails", func(c geom.Vec) { p.add(render.Fill{Pen: render.Heat7, Region: swatch(c)}) })
		p.keyLine("hollow marks: a check fails, or could not be done", func(c geom.Vec) { p.mark(c, 0, false) })
		p.keyLine("limit, ratio 1", func(c geom.Vec) {
			p.line(render.Phantom, geom.Vec{X: c.X - 2.5, Y: c.Y}, geom.Vec{X: c.X + 2.5, Y: c.Y})
		})
	}
	p.keyLine("crossed: the input is invalid", p.cross)
}
