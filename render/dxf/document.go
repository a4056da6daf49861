package dxf

import (
	"bufio"
	"errors"
	"fmt"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// appName is the name under which extended data stands in the file.
const appName = "STANDCLEAR"

// document is the file being built: spaces and blocks with their entities, the names they use,
// and the handles. Sheets are added to it.
//
// The file opens with the highest handle and its tables name what the entities use, so entities
// come first, the records around them later, and nothing is written before all of it stands.
type document struct {
	unit   render.Unit
	layers render.Layers

	last    handle
	model   *block
	blocks  []*block // in file order, model space first
	layouts []*layout
	figures map[figureKey]*figure
	inner   []*figure // symbols, inner ones first
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
	d := &document{unit: u, layers: render.OwnLayers(), figures: map[figureKey]*figure{}, heads: map[string]handle{}}
	d.names = used{layers: map[string]render.Layer{}, named: map[placed]string{}, told: map[render.Tag][]string{}}
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

// add draws the sheets: their symbols as blocks, their views in model space, their paper in layouts.
func (d *document) add(sheets ...*render.Sheet) error {
	for _, s := range sheets {
		if err := d.accept(s); err != nil {
			return fmt.Errorf("dxf: sheet %s: %w", s.ID, err)
		}
	}
	for _, f := range d.inner {
		if err := d.drawSymbol(f); err != nil {
			return fmt.Errorf("dxf: sheet %s: %w", f.sheet.ID, err)
		}
	}
	for _, l := range d.layouts {
		if err := d.draw(l); err != nil {
			return fmt.Errorf("dxf: sheet %s: %w", l.sheet.ID, err)
		}
	}
	return nil
}

// accept looks at a sheet and gives it a layout, before anything is drawn.
func (d *document) accept(s *render.Sheet) error {
	if s.Unit != d.unit {
		return errors.New("it is in another unit than the first")
	}
	if err := d.inspect(s); err != nil {
		return err
	}
	l := d.layout(s)
	for _, o := range d.layouts[:len(d.layouts)-1] {
		if strings.EqualFold(o.name, l.name) {
			return fmt.Errorf("two sheets have the name %s", l.name)
		}
	}
	for _, e := range l.space.items {
		if !e.data.sound() {
			return errors.New("a view lies too far out")
		}
	}
	return nil
}

// draw draws the views and the paper of a sheet.
func (d *document) draw(l *layout) error {
	for _, v := range drawn(l.sheet.Views) {
		c := &canvas{document: d, sheet: l.sheet, into: d.model, frame: d.frameOf(l, v)}
		if err := each(v.Items, c.item); err != nil {
			return fmt.Errorf("view %q: %w", v.ID, err)
		}
	}
	c := &canvas{document: d, sheet: l.sheet, into: l.space, frame: frame{per: d.unit.PerMM(), k: 1}}
	return each(l.sheet.Items, c.item)
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
		l.sign(d)
	}
	d.each(func(e *entity) { e.handle = d.next() })
	d.tally()
	d.tables, d.objects = d.tableSection(), d.objectSection()
}

// write sends the whole file to w.
func (d *document) write(w *bufio.Writer) {
	section := func(name string, body func(w *bufio.Writer)) {
		tags{}.str(0, "SECTION").str(2, name).write(w)
		body(w)
		tags{}.str(0, "ENDSEC").write(w)
	}
	section("HEADER", d.header().write)
	section("CLASSES", classes().write)
	section("TABLES", d.tables.write)
	section("BLOCKS", d.writeBlocks)
	section("ENTITIES", d.writeEntities)
	section("OBJECTS", d.objects.write)
	tags{}.str(0, "EOF").write(w)
}

func (d *document) writeBlocks(w *bufio.Writer) {
	for _, b := range d.blocks {
		b.edge("BLOCK", b.begin, "AcDbBlockBegin").str(2, b.name).int(70, b.flags).point(10, geom.Vec{}).str(3, b.name).str(1, "").write(w)
		if !b.separated {
			b.writeEntities(w)
		}
		b.edge("ENDBLK", b.end, "AcDbBlockEnd").write(w)
	}
}

// edge returns the opening of the record that begins or ends the block.
func (b *block) edge(kind string, h handle, class string) tags {
	t := tags{}.str(0, kind).ref(5, h).ref(330, b.record).class("AcDbEntity")
	if b.paper {
		t = t.int(67, 1)
	}
	return t.str(8, "0").class(class)
}

func (b *block) writeEntities(w *bufio.Writer) {
	for _, e := range b.items {
		e.write(w, b.record, b.paper)
	}
}

// writeEntities writes model space and the first layout; the others stand in their blocks.
func (d *document) writeEntities(w *bufio.Writer) {
	for _, b := range d.blocks {
		if b.separated {
			b.writeEntities(w)
		}
	}
}

// extent returns the box of model space in the file's unit; the first sheet when that is empty.
func (d *document) extent() geom.Box {
	if x := d.model.box(); !x.Empty() {
		return geom.BoxOf(x.Min, x.Max)
	}
	return d.layouts[0].paper()
}
