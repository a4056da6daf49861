package dxf

import (
	"errors"
	"fmt"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// drawSymbol draws a symbol as a block about its grip, in the file's unit at the symbol's own size.
func (d *document) drawSymbol(s *render.Sheet, f *figure) error {
	f.block = d.block(name(f.symbol.Name))
	c := &canvas{document: d, sheet: s, into: f.block, frame: frame{per: d.unit.PerMM(), k: 1}, figure: f}
	err := each(f.symbol.Items, func(it render.Item) error {
		if t, ok := it.(render.Text); ok && t.Attr != "" {
			return c.attributeDefinition(t)
		}
		return c.item(it)
	})
	if err == nil && len(f.block.items) == 0 {
		err = errors.New("has nothing to draw")
	}
	if err != nil {
		return fmt.Errorf("symbol %q: %w", f.symbol.Name, err)
	}
	return nil
}

func hasField(s *render.Symbol, n string) bool {
	for _, it := range s.Items {
		if t, ok := it.(render.Text); ok && t.Attr != "" && field(t.Attr) == field(n) {
			return true
		}
	}
	return false
}

// attribute returns what the definition of an attribute and its value share. The lines of a field
// stand on one line.
func (c *canvas) attribute(kind string, t render.Text, value string) (*entity, error) {
	if value = plain(value); len(value) > maxString {
		return nil, fmt.Errorf("field %s of %d bytes; it holds %d", field(t.Attr), len(value), maxString)
	}
	e := &entity{kind: kind, order: texts, box: geom.EmptyBox()}
	e.data = c.single(t, c.at(t.At), c.plotted(t.Height), value)
	return e, nil
}

// closeAttribute appends the second half of the record: name and vertical place. Code 280 stands
// twice: version first, then the lock of its place.
func (e *entity) closeAttribute(class, prompt string, t render.Text) {
	e.data = e.data.class(class).int(280, 0)
	if prompt != "" {
		e.data = e.data.str(3, prompt)
	}
	e.data = e.data.str(2, field(t.Attr)).int(70, 0)
	if _, v := justify(t.Align); v != 0 {
		e.data = e.data.int(74, v)
	}
	e.data = e.data.int(280, 1)
}

func (c *canvas) attributeDefinition(t render.Text) error {
	e, err := c.attribute("ATTDEF", t, strings.Join(t.Lines, " "))
	if err != nil {
		return err
	}
	e.closeAttribute("AcDbAttributeDefinition", name(t.Attr), t)
	c.into.flags |= 2
	return c.put(e, t.Pen)
}

// insert places a symbol with the values of all its fields: those given, and for the others the
// text that stands in the symbol.
func (c *canvas) insert(in render.Insert) error {
	f := c.figureOf(in.Symbol)
	scale := in.Scale
	if scale == 0 {
		scale = 1
	}
	e := &entity{kind: "INSERT", order: symbols, remember: tagged(in.Tag)}
	at := c.frame.at(in.At)
	attributes, err := c.attributes(in, f, scale)
	if err != nil {
		return err
	}
	e.data = tags{}.class("AcDbBlockReference")
	if len(attributes) > 0 {
		e.data = e.data.int(66, 1)
		e.parts = append(attributes, &entity{kind: "SEQEND", layer: c.layerOf(in.Pen)})
	}
	e.data = e.data.str(2, f.block.name).point(10, at)
	if scale != 1 {
		e.data = e.data.real(41, scale).real(42, scale).real(43, scale)
	}
	e.same = f.block.name + " " + spot(at)
	e.box = geom.BoxOf(at)
	if x := f.block.box(); !x.Empty() {
		e.box = geom.BoxOf(at.Add(x.Min.Mul(scale)), at.Add(x.Max.Mul(scale)))
	}
	for _, a := range attributes {
		e.box = e.box.Union(a.box)
	}
	return c.put(e, in.Pen)
}

// attributes returns the fields of an inserted symbol where they stand in the drawing.
func (c *canvas) attributes(in render.Insert, f *figure, scale float64) ([]*entity, error) {
	given := map[string]string{}
	for _, v := range in.Fields {
		given[field(v.Name)] = v.Value
	}
	here := *c
	here.k = scale // a symbol's text is in symbol units
	var out []*entity
	for _, it := range f.symbol.Items {
		t, ok := it.(render.Text)
		if !ok || t.Attr == "" {
			continue
		}
		value, ok := given[field(t.Attr)]
		if !ok {
			value = strings.Join(t.Lines, " ")
		}
		t.At = in.At.Add(t.At.Mul(scale))
		e, err := here.attribute("ATTRIB", t, value)
		if err != nil {
			return nil, err
		}
		e.closeAttribute("AcDbAttribute", "", t)
		t.Lines = []string{value}
		e.layer, e.box = c.layerOf(t.Pen), here.textBox(t)
		out = append(out, e)
	}
	return out, nil
}
