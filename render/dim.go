package render

import (
	"math"
	"strings"

	"standclear/geom"
)

// DimKind is the kind of a dimension.
type DimKind int

// The kinds of dimension.
const (
	Linear    DimKind = iota // along Angle, from P to Q
	Aligned                  // along P-Q
	Angular                  // at Centre, from the direction of P counter-clockwise to that of Q
	Diameter                 // across a circle through P and Q, ends of a diameter
	OrdinateX                // x of Q from the datum P, leader to Line
	OrdinateY                // y of Q from the datum P, leader to Line
)

// Dim is a measured dimension. Its value is computed from its points, never given.
type Dim struct {
	Pen    Pen
	Kind   DimKind
	P, Q   geom.Vec // measured points
	Line   geom.Vec // a point the dimension line (or arc) passes through; end of an ordinate leader
	Angle  float64  // direction of the dimension line in degrees (Linear): 0 or 90 mostly
	Centre geom.Vec // vertex (Angular)
	Text   string   // words around the value, "<>" standing for it; empty is "<>"
	// TextAt moves the middle of the text off its usual place; nil leaves it there.
	TextAt *geom.Vec
}

// DimStyle holds the plotted sizes of dimensions, in millimetres.
type DimStyle struct {
	Text   float64 // cap height
	Gap    float64 // between dimension line and text
	Offset float64 // extension line starts this far from the object
	Over   float64 // and runs this far past the dimension line
	Tick   float64 // half the length of the 45 degree tick
	Arrow  float64 // leader arrow length
	Step   float64 // between parallel dimension lines
	First  float64 // object to first dimension line
}

// Style returns the sizes for a drawing unit: common office practice, inch or millimetre.
func (u Unit) Style() DimStyle {
	if u == Inch {
		const in = 25.4
		return DimStyle{Text: 3 * in / 32, Gap: in / 16, Offset: in / 16, Over: in / 8, Tick: in / 16, Arrow: 3 * in / 32, Step: 3 * in / 8, First: in / 2}
	}
	return DimStyle{Text: 2.5, Gap: 1.2, Offset: 1.5, Over: 2.5, Tick: 1.5, Arrow: 2.5, Step: 9, First: 12}
}

// DimPicture is a dimension drawn out: what every format shows of it, in the dimension's space.
type DimPicture struct {
	Lines  []geom.Path // the dimension line or arc first, where there is one, then extension lines
	Ticks  []geom.Path // 45 degree strokes, heavier
	Label  string
	TextAt geom.Vec // middle of the text
	Rot    float64  // of the text, degrees
	Foot   geom.Vec // on the dimension line at the second measured point; end of an ordinate leader
	Points []geom.Vec
}

// Value returns the measured length in millimetres, or the angle in radians.
func (d Dim) Value() float64 {
	switch d.Kind {
	case Linear:
		u := geom.Polar(geom.Vec{}, 1, d.Angle*math.Pi/180)
		return math.Abs(d.Q.Sub(d.P).Dot(u))
	case Angular:
		a := d.P.Sub(d.Centre)
		b := d.Q.Sub(d.Centre)
		v := math.Atan2(a.Cross(b), a.Dot(b))
		if v < 0 {
			v += 2 * math.Pi
		}
		return v
	case OrdinateX:
		return math.Abs(d.Q.X - d.P.X)
	case OrdinateY:
		return math.Abs(d.Q.Y - d.P.Y)
	}
	return d.P.Dist(d.Q)
}

// Label returns the printed text of the dimension: the value by number, the words around it.
func (d Dim) Label(number func(float64) string) string {
	v := ""
	if d.Kind == Angular {
		v = degrees(d.Value())
	} else {
		v = number(d.Value())
	}
	if d.Kind == Diameter {
		v = "\u00d8" + v
	}
	if d.Text == "" {
		return v
	}
	return strings.ReplaceAll(d.Text, "<>", v)
}

// Picture draws the dimension out in style st at k space millimetres per plotted millimetre.
func (d Dim) Picture(st DimStyle, k float64, number func(float64) string) DimPicture {
	p := DimPicture{Label: d.Label(number), Points: []geom.Vec{d.P, d.Q}}
	switch d.Kind {
	case Linear, Aligned:
		d.linear(&p, st, k)
	case Angular:
		d.angular(&p, st, k)
	case Diameter:
		d.diameter(&p, st, k)
	case OrdinateX, OrdinateY:
		d.ordinate(&p, st, k)
	}
	if d.TextAt != nil {
		p.TextAt = *d.TextAt
	}
	return p
}

// Direction returns the unit vector of a linear or aligned dimension line.
func (d Dim) Direction() geom.Vec {
	if d.Kind == Aligned {
		return d.Q.Sub(d.P).Unit()
	}
	return geom.Polar(geom.Vec{}, 1, d.Angle*math.Pi/180)
}

//	text
//
// +------+   dimension line, ticks at the feet
// |      |   extension lines, a gap off the object
//
// P      Q
func (d Dim) linear(p *DimPicture, st DimStyle, k float64) {
	u := d.Direction()
	a, b := foot(d.Line, u, d.P), foot(d.Line, u, d.Q)
	p.Foot = b
	p.Lines = append(p.Lines, geom.Polyline(a, b))
	p.extend(d.P, a, st, k)
	p.extend(d.Q, b, st, k)
	p.tick(a, u, st, k)
	p.tick(b, u, st, k)
	rot := math.Atan2(u.Y, u.X) * 180 / math.Pi
	if rot > 90+1e-9 || rot <= -90+1e-9 { // readable from the bottom or from the right
		u = u.Mul(-1)
		rot = math.Atan2(u.Y, u.X) * 180 / math.Pi
	}
	p.Rot = math.Round(rot*1e6) / 1e6
	p.TextAt = a.Lerp(b, 0.5).Add(u.Perp().Mul(k * (st.Gap + st.Text/2)))
}

func (d Dim) angular(p *DimPicture, st DimStyle, k float64) {
	r := d.Line.Dist(d.Centre)
	a := d.P.Sub(d.Centre)
	a0 := math.Atan2(a.Y, a.X)
	v := d.Value()
	f0, f1 := geom.Polar(d.Centre, r, a0), geom.Polar(d.Centre, r, a0+v)
	p.Lines = append(p.Lines, geom.Path{V: []geom.Vertex{{Vec: f0, Bulge: math.Tan(v / 4)}, {Vec: f1}}})
	p.extend(d.P, f0, st, k)
	p.extend(d.Q, f1, st, k)
	p.tick(f0, f0.Sub(d.Centre).Unit().Perp(), st, k)
	p.tick(f1, f1.Sub(d.Centre).Unit().Perp(), st, k)
	p.Foot = geom.Polar(d.Centre, r, a0+v/2)
	p.TextAt = geom.Polar(d.Centre, r+k*(st.Gap+st.Text), a0+v/2)
	p.Points = append(p.Points, d.Centre)
}

func (d Dim) diameter(p *DimPicture, st DimStyle, k float64) {
	u := d.Q.Sub(d.P).Unit()
	p.Lines = append(p.Lines, geom.Polyline(d.P, d.Q))
	p.tick(d.P, u, st, k)
	p.tick(d.Q, u, st, k)
	p.Foot = d.P
	p.TextAt = d.Q.Add(u.Mul(k * (st.Gap + 2*st.Text)))
}

func (d Dim) ordinate(p *DimPicture, st DimStyle, k float64) {
	p.Foot = d.Line
	dir := d.Line.Sub(d.Q).Unit()
	if l := d.Line.Dist(d.Q); l > k*st.Offset {
		p.Lines = append(p.Lines, geom.Polyline(d.Q.Add(dir.Mul(k*st.Offset)), d.Line))
	}
	p.TextAt = d.Line.Add(dir.Mul(k * (st.Gap + st.Text)))
	if d.Kind == OrdinateX {
		p.Rot = 90
	}
}

func (p *DimPicture) extend(from, to geom.Vec, st DimStyle, k float64) {
	l := from.Dist(to)
	if l <= k*st.Offset {
		return
	}
	e := to.Sub(from).Unit()
	p.Lines = append(p.Lines, geom.Polyline(from.Add(e.Mul(k*st.Offset)), to.Add(e.Mul(k*st.Over))))
}

func (p *DimPicture) tick(at, u geom.Vec, st DimStyle, k float64) {
	c, s := math.Cos(math.Pi/4), math.Sin(math.Pi/4)
	d := geom.Vec{X: u.X*c - u.Y*s, Y: u.X*s + u.Y*c}.Mul(k * st.Tick)
	p.Ticks = append(p.Ticks, geom.Polyline(at.Sub(d), at.Add(d)))
}

func foot(on, u, p geom.Vec) geom.Vec { return on.Add(u.Mul(p.Sub(on).Dot(u))) }

func degrees(rad float64) string {
	s := math.Round(rad * 180 / math.Pi)
	return trimFloat(s) + "\u00b0"
}
