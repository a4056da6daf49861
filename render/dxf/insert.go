package dxf

import (
	"errors"
	"fmt"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// drawSymbol draws a symbol as a block about its grip, in the file's unit at the symbol's own size. A block all on
// layer 0 serves every discipline; one that holds layers of its own is named after the discipline where the file
// has several.
func (d *document) drawSymbol(f *figure) error {
	if f.block = d.shared(f); f.block != nil {
		return nil
	}
	f.block = d.block(name(f.symbol.Name))
	c := &canvas{document: d, sheet: f.sheet, into: f.block, frame: frame{per: d.unit.PerMM(), k: 1}, figure: f}
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
	if d.disciplines() > 1 && !f.block.follows() {
		f.block.name += "-" + name(f.sheet.Discipline())
	}
	for _, b := range d.blocks {
		if b != f.block && strings.EqualFold(b.name, f.block.name) {
			return fmt.Errorf("two symbols have the name %q", b.name)
		}
	}
	return nil
}

// shared returns the block that was drawn of the symbol for another discipline, when it serves this one as well.
func (d *document) shared(f *figure) *block {
	for _, o := range d.inner {
		if o.block == nil { // this one, or one not drawn yet
			break
		}
		if keyOf(o.symbol, f.sheet) == keyOf(f.symbol, f.sheet) && o.pen == f.pen && !o.mixed && !f.mixed && o.block.follows() {
			return o.block
		}
	}
	return nil
}

// follows reports whether everything in the block takes the layer of its insert.
func (b *block) follows() bool {
	for _, e := range b.items {
		if e.layer != "0" || e.inner != nil && !e.inner.follows() {
			return false
		}
	}
	return true
}

// disciplines counts those of the sheets.
func (d *document) disciplines() int {
	met := map[string]bool{}
	for _, l := range d.layouts {
		met[l.sheet.Discipline()] = true
	}
	return len(met)
}

// figureOf returns the block of a symbol that inspect has seen.
func (c *canvas) figureOf(s *render.Symbol) *figure { return c.figures[keyOf(s, c.sheet)] }

func hasField(s *render.Symbol, n string) bool {
	for _, it := range s.Items {
		if t, ok := it.(render.Text); ok && t.Attr != "" && strings.EqualFold(t.Attr, n) {
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
	e := &entity{kind: "INSERT", order: symbols, remember: c.tagged(in.Tag), inner: f.block}
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
	here := *c
	here.k = scale // a symbol's text is in symbol units
	var out []*entity
	for _, it := range f.symbol.Items {
		t, ok := it.(render.Text)
		if !ok || t.Attr == "" {
			continue
		}
		t = in.Filled(t)
		t.At = in.At.Add(t.At.Mul(scale))
		e, err := here.attribute("ATTRIB", t, t.Lines[0])
		if err != nil {
			return nil, err
		}
		e.closeAttribute("AcDbAttribute", "", t)
		e.layer, e.box = c.layerOf(t.Pen), here.textBox(t)
		out = append(out, e)
	}
	return out, nil
}
