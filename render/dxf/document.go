package dxf

import (
	"bufio"
	"errors"
	"fmt"

	"standclear/geom"
	"standclear/render"
)

// appName is the name under which extended data stands in the file.
const appName = "STANDCLEAR"

// document is the file being built: spaces and blocks with their entities, the names they use,
// and the handles. A sheet is added to it; several could be.
//
// The file opens with the highest handle and its tables name what the entities use, so entities
// come first, the records around them later, and nothing is written before all of it stands.
type document struct {
	unit render.Unit

	last    handle
	model   *block
	blocks  []*block // in file order, model space first
	layouts []*layout
	figures map[string]*figure // by lower-case block name
	inner   []*figure          // symbols, inner ones first
	names   used

	heads   map[string]handle // of the tables, by name
	root    handle
	groups  handle
	plans   handle // dictionary of layouts
	plots   handle // dictionary of plot styles
	plain   handle // the one plot style
	tables  tags
	objects tags
}

func newDocument(u render.Unit) *document {
	d := &document{unit: u, figures: map[string]*figure{}, heads: map[string]handle{}}
	d.names.layers = map[string]render.Pen{}
	for _, t := range tableNames {
		d.heads[t] = d.next()
	}
	for _, h := range []*handle{&d.root, &d.groups, &d.plans, &d.plots, &d.plain} {
		*h = d.next()
	}
	d.model = d.block("*Model_Space")
	d.model.layout, d.model.separated = d.next(), true
	return d
}

// next returns a handle that is not in use.
func (d *document) next() handle {
	d.last++
	return d.last
}

func (d *document) block(name string) *block {
	b := &block{name: name, record: d.next(), begin: d.next(), end: d.next()}
	d.blocks = append(d.blocks, b)
	return b
}

// add draws the sheet: its symbols as blocks, its views in model space, its paper in a layout.
func (d *document) add(s *render.Sheet) error {
	if err := d.draw(s); err != nil {
		return fmt.Errorf("dxf: sheet %s: %w", s.ID, err)
	}
	return nil
}

func (d *document) draw(s *render.Sheet) error {
	if err := d.inspect(s); err != nil {
		return err
	}
	l := d.layout(s)
	for _, e := range l.space.items {
		if !e.data.sound() {
			return errors.New("a view lies too far out")
		}
	}
	for _, f := range d.inner {
		if err := d.drawSymbol(s, f); err != nil {
			return err
		}
	}
	for _, v := range drawn(s.Views) {
		f := frame{place: v.Place, per: d.unit.PerMM(), k: v.Scale.K}
		c := &canvas{document: d, sheet: s, into: d.model, frame: f}
		if err := each(v.Items, c.item); err != nil {
			return fmt.Errorf("view %q: %w", v.ID, err)
		}
	}
	c := &canvas{document: d, sheet: s, into: l.space, frame: frame{per: d.unit.PerMM(), k: 1}}
	return each(s.Items, c.item)
}

// finish settles what the entities left open: their order, the dimension pictures, the handles.
func (d *document) finish() {
	pictures := []*block{}
	for _, b := range d.blocks {
		b.settle()
		for _, e := range b.items {
			if e.picture != nil {
				pictures = append(pictures, e.picture)
				e.picture.name = fmt.Sprintf("*D%d", len(pictures))
				e.data.set(2, e.picture.name)
			}
		}
	}
	for _, p := range pictures {
		p.record, p.begin, p.end = d.next(), d.next(), d.next()
	}
	d.blocks = append(d.blocks, pictures...)
	for _, l := range d.layouts {
		l.sign()
	}
	d.each(func(e *entity) { e.handle = d.next() })
	d.tally()
	d.tables, d.objects = d.tableSection(), d.objectSection()
}

// write sends the whole file to w.
func (d *document) write(w *bufio.Writer) {
	section := func(name string, body tags) {
		tags{}.str(0, "SECTION").str(2, name).write(w)
		body.write(w)
		tags{}.str(0, "ENDSEC").write(w)
	}
	section("HEADER", d.header())
	section("CLASSES", classes())
	section("TABLES", d.tables)
	section("BLOCKS", d.blockSection())
	section("ENTITIES", d.entitySection())
	section("OBJECTS", d.objects)
	tags{}.str(0, "EOF").write(w)
}

func (d *document) blockSection() tags {
	var t tags
	for _, b := range d.blocks {
		t = append(t, b.edge("BLOCK", b.begin, "AcDbBlockBegin")...)
		t = t.str(2, b.name).int(70, b.flags).point(10, geom.Vec{}).str(3, b.name).str(1, "")
		if !b.separated {
			t = append(t, b.entities()...)
		}
		t = append(t, b.edge("ENDBLK", b.end, "AcDbBlockEnd")...)
	}
	return t
}

// edge returns the opening of the record that begins or ends the block.
func (b *block) edge(kind string, h handle, class string) tags {
	t := tags{}.str(0, kind).ref(5, h).ref(330, b.record).class("AcDbEntity")
	if b.paper {
		t = t.int(67, 1)
	}
	return t.str(8, "0").class(class)
}

func (b *block) entities() tags {
	var t tags
	for _, e := range b.items {
		t = append(t, e.tags(b.record, b.paper)...)
	}
	return t
}

// entitySection holds model space and the first layout; a second layout would stand in its block.
func (d *document) entitySection() tags {
	var t tags
	for _, b := range d.blocks {
		if b.separated {
			t = append(t, b.entities()...)
		}
	}
	return t
}

// extent returns the box of model space in the file's unit; the first sheet when that is empty.
func (d *document) extent() geom.Box {
	if x := d.model.box(); !x.Empty() {
		return geom.BoxOf(x.Min, x.Max)
	}
	return d.layouts[0].paper()
}
