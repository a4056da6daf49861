package dxf

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// dim draws a dimension: the entity with its measured points and, in a block of its own, the
// picture that viewers show. Programs draw the picture anew from the dimension style when someone
// touches the dimension, so style and picture come from one table and must print one text.
//
// A dimension that measures nothing is left out; the ordinate of the datum itself is drawn as the
// lines and the text that it is.
func (c *canvas) dim(m render.Dim) error {
	p := c.measured(m)
	if math.IsNaN(p.value) {
		return errors.New("its points do not span an angle")
	}
	e := &entity{kind: "DIMENSION", order: dimensions}
	number, err := c.number(m, p.value, e)
	if err != nil {
		return err
	}
	pic := m.Picture(c.unit.Style(), c.k, number)
	if p.value <= tiny {
		return c.nothing(m, pic)
	}
	if e.picture, err = c.picture(m, pic); err != nil {
		return err
	}
	e.data, err = c.dimension(m, p, pic)
	if err != nil {
		return err
	}
	e.box = e.picture.box()
	e.same = fmt.Sprint(m.Kind, " ", spot(c.at(pic.Foot), p.p, p.q, p.centre, geom.Vec{X: p.angle}))
	return c.put(e, m.Pen)
}

// measure is a dimension as the file holds it: rounded points and the value they give, in the
// file's unit or in radians.
type measure struct {
	p, q, centre geom.Vec
	angle        float64 // of the dimension line, degrees
	value        float64 // NaN when there is none
}

// measured measures the rounded points, so that the stored value is what the file itself says.
func (c *canvas) measured(m render.Dim) measure {
	r := measure{p: c.at(m.P), q: c.at(m.Q), centre: c.at(m.Centre), angle: wrap(m.Angle)}
	span := r.q.Sub(r.p)
	switch m.Kind {
	case render.Linear:
		r.value = math.Abs(span.Dot(geom.Polar(geom.Vec{}, 1, r.angle*math.Pi/180)))
	case render.OrdinateX:
		r.value = math.Abs(span.X)
	case render.OrdinateY:
		r.value = math.Abs(span.Y)
	case render.Angular:
		a, b := r.p.Sub(r.centre), r.q.Sub(r.centre)
		r.value = turn(math.Atan2(a.Cross(b), a.Dot(b)))
		if a.Len() <= tiny || b.Len() <= tiny {
			r.value = math.NaN()
		}
	default:
		r.value = span.Len()
	}
	return r
}

// dimension returns the record of a dimension; the name of its picture is filled in later.
func (c *canvas) dimension(m render.Dim, p measure, pic render.DimPicture) (tags, error) {
	def := c.at(pic.Foot)
	if m.Kind == render.Diameter || m.Kind == render.OrdinateX || m.Kind == render.OrdinateY {
		def = p.p
	}
	t := tags{}.class("AcDbDimension").int(280, 0).str(2, "").point(10, def).point(11, c.at(pic.TextAt)).
		int(70, dimType(m)).int(71, int(render.MiddleCentre)).real(42, p.value)
	if m.Text != "" && m.Text != "<>" {
		text := words(m.Text)
		if len(text) > maxString {
			return nil, fmt.Errorf("text of %d bytes; a dimension holds %d", len(text), maxString)
		}
		t = t.str(1, text)
	}
	t = t.str(3, c.dimStyle(c.k))
	switch m.Kind {
	case render.Angular:
		return t.class("AcDb3PointAngularDimension").point(13, p.p).point(14, p.q).point(15, p.centre), nil
	case render.Diameter:
		return t.class("AcDbDiametricDimension").point(15, p.q).real(40, 0), nil
	case render.OrdinateX, render.OrdinateY:
		return t.class("AcDbOrdinateDimension").point(13, p.q).point(14, c.at(m.Line)), nil
	}
	t = t.class("AcDbAlignedDimension").point(13, p.p).point(14, p.q)
	if m.Kind == render.Linear {
		if p.angle != 0 {
			t = t.real(50, p.angle)
		}
		t = t.class("AcDbRotatedDimension")
	}
	return t, nil
}

// dimType returns the kind in the format's numbers.
func dimType(m render.Dim) int {
	const ownBlock, xType, textMoved = 32, 64, 128
	n := ownBlock
	switch m.Kind {
	case render.Aligned:
		n += 1
	case render.Diameter:
		n += 3
	case render.Angular:
		n += 5
	case render.OrdinateY:
		n += 6
	case render.OrdinateX:
		n += 6 + xType
	}
	if m.TextAt != nil {
		n += textMoved
	}
	return n
}

// words returns the text of a dimension made safe; "<>" stands for the value.
func words(text string) string {
	parts := strings.Split(text, "<>")
	for i, p := range parts {
		parts[i] = strings.Join(paragraph(p), "")
	}
	return strings.Join(parts, "<>")
}

// number returns the function that prints the value of the dimension, once it is sure that a
// dimension style prints the same; what that takes beyond the usual style goes into e.
func (c *canvas) number(m render.Dim, value float64, e *entity) (func(float64) string, error) {
	usual := usualNumbering(c.unit)
	print := c.sheet.Number
	if print == nil {
		print = c.unitNumber
	}
	if m.Kind == render.Angular {
		return print, nil
	}
	shown := print(m.Value())
	n, ok := numberingFor(c.unit, value, shown)
	if !ok {
		return nil, fmt.Errorf("it prints %q, but no dimension style prints that for its value; the usual one prints %q", shown, usual.print(value))
	}
	if n != usual {
		e.override = n.override(usual)
	}
	return print, nil
}

// unitNumber prints a length in millimetres where the sheet does not say how.
func (c *canvas) unitNumber(mm float64) string {
	n, v := usualNumbering(c.unit), mm*c.unit.PerMM()
	if c.unit == render.Inch && v < 1 {
		n.zeros = dropBoth // 3/8" without a 0 before it
	}
	return n.print(v)
}

// nothing draws a dimension that measures nothing.
func (c *canvas) nothing(m render.Dim, pic render.DimPicture) error {
	if m.Kind != render.OrdinateX && m.Kind != render.OrdinateY {
		c.into.drop("dimension of nothing on " + c.layerOf(m.Pen))
		return nil
	}
	for _, p := range slices.Concat(pic.Lines, pic.Ticks) {
		if err := c.stroke(render.Stroke{Pen: m.Pen, Path: p}); err != nil {
			return err
		}
	}
	return c.text(label(m.Pen, c.unit.Style(), pic))
}

// label returns the text of a drawn dimension.
func label(p render.Pen, st render.DimStyle, pic render.DimPicture) render.Text {
	return render.Text{Pen: p, At: pic.TextAt, Height: st.Text, Align: render.MiddleCentre, Rot: pic.Rot, Lines: []string{pic.Label}}
}

// picture draws what a dimension shows into a block of its own: lines, ticks, text, and the points
// it is defined by.
func (c *canvas) picture(m render.Dim, pic render.DimPicture) (*block, error) {
	in := *c
	in.into, in.byBlock = &block{flags: 1}, true
	for _, p := range slices.Concat(pic.Lines, pic.Ticks) {
		if err := in.stroke(render.Stroke{Pen: m.Pen, Path: p}); err != nil {
			return nil, err
		}
	}
	t := label(m.Pen, c.unit.Style(), pic)
	e := &entity{kind: "MTEXT", data: in.paragraphs(t, in.at(t.At), in.plotted(t.Height)), box: in.textBox(t)}
	if err := in.put(e, m.Pen); err != nil {
		return nil, err
	}
	in.points(append(slices.Clone(pic.Points), pic.Foot))
	return in.into, nil
}

// points marks the places a dimension is defined by, each once.
func (c *canvas) points(ps []geom.Vec) {
	seen := map[geom.Vec]bool{}
	for _, p := range ps {
		at := c.at(p)
		if seen[at] {
			continue
		}
		seen[at] = true
		e := &entity{kind: "POINT", layer: defPoints, byBlock: true, data: tags{}.class("AcDbPoint").point(10, at), box: geom.BoxOf(at)}
		c.into.items = append(c.into.items, e)
	}
}
