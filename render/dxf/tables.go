package dxf

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// tableNames are the nine tables in the order of the file.
var tableNames = []string{"VPORT", "LTYPE", "LAYER", "STYLE", "VIEW", "UCS", "APPID", "DIMSTYLE", "BLOCK_RECORD"}

// defPoints is the layer of the points a dimension is defined by; it is never plotted.
const defPoints = "Defpoints"

// entry is one record of a table; its handle is given when the table is closed, if it has none.
type entry struct {
	handle handle
	data   tags
}

// table returns a table of entries; class is the second marker of each.
func (d *document) table(name, class string, entries []entry) tags {
	head := d.heads[name]
	for i := range entries {
		if entries[i].handle == 0 {
			entries[i].handle = d.next()
		}
	}
	t := tags{}.str(0, "TABLE").str(2, name).ref(5, head).ref(330, 0).class("AcDbSymbolTable").int(70, len(entries))
	code := 5
	if name == "DIMSTYLE" {
		code = 105
		t = t.class("AcDbDimStyleTable").int(71, len(entries))
		for _, e := range entries {
			t = t.ref(340, e.handle)
		}
	}
	for _, e := range entries {
		t = t.str(0, name).ref(code, e.handle).ref(330, head).class("AcDbSymbolTableRecord").class(class)
		t = append(t, e.data...)
	}
	return t.str(0, "ENDTAB")
}

func (d *document) tableSection() tags {
	styles := d.textStyles()
	return slices.Concat(
		d.table("VPORT", "AcDbViewportTableRecord", []entry{{data: d.firstView()}}),
		d.table("LTYPE", "AcDbLinetypeTableRecord", d.lineTypes()),
		d.table("LAYER", "AcDbLayerTableRecord", d.layerEntries()),
		d.table("STYLE", "AcDbTextStyleTableRecord", styles),
		d.table("VIEW", "", nil),
		d.table("UCS", "", nil),
		d.table("APPID", "AcDbRegAppTableRecord", d.applications()),
		d.table("DIMSTYLE", "AcDbDimStyleTableRecord", d.dimStyleEntries(styles)),
		d.table("BLOCK_RECORD", "AcDbBlockTableRecord", d.blockRecords()),
	)
}

// firstView shows the whole of model space when the file is opened.
func (d *document) firstView() tags {
	const aspect = 1.5
	x := d.extent()
	height := math.Max(x.H(), x.W()/aspect) * 1.1
	t := tags{}.str(2, "*Active").int(70, 0).xy(10, geom.Vec{}).xy(11, geom.Vec{X: 1, Y: 1}).xy(12, x.Center())
	t = append(t, grid()...)
	t = t.zeros(16, 26).real(36, 1).zeros(17, 27, 37).
		real(40, height).real(41, aspect).real(42, 50).zeros(43, 44, 50, 51).
		int(71, 0).int(72, 1000).int(73, 1).int(74, 3)
	for _, code := range []int{75, 76, 77, 78, 281} {
		t = t.int(code, 0)
	}
	return t.int(65, 1).real(146, 0)
}

// grid returns the snap and grid that every view of the format has.
func grid() tags {
	half := geom.Vec{X: 0.5, Y: 0.5}
	return tags{}.xy(13, geom.Vec{}).xy(14, half).xy(15, half)
}

// usedLayers returns the names of the layers in use, sorted.
func (d *document) usedLayers() []string { return slices.Sorted(maps.Keys(d.names.layers)) }

// lineTypes returns the line types of the layers, lengths as plotted, in the file's unit.
func (d *document) lineTypes() []entry {
	all := []render.LineType{{Name: "ByBlock"}, {Name: "ByLayer"}, render.Solid}
	for _, n := range d.usedLayers() {
		lt := d.names.layers[n].Def().Type
		if !slices.ContainsFunc(all, func(o render.LineType) bool { return o.Name == lt.Name }) {
			all = append(all, lt)
		}
	}
	var out []entry
	for _, lt := range all {
		sum := 0.0
		var dashes tags
		for _, v := range lt.Dashes {
			v = round(v * d.unit.PerMM())
			sum += math.Abs(v)
			dashes = dashes.real(49, v).int(74, 0)
		}
		t := tags{}.str(2, lt.Name).int(70, 0).str(3, lt.Text).int(72, 'A').int(73, len(lt.Dashes)).real(40, sum)
		out = append(out, entry{data: append(t, dashes...)})
	}
	return out
}

// lastNamed is the last colour index that has a name and one meaning: beyond it the index is only near the
// colour meant, which stands beside it.
const lastNamed = 9

// trueColour returns "#rrggbb" as the number 0xrrggbb; a test holds that those of render.Pens can be read.
func trueColour(rgb string) int {
	n, err := strconv.ParseUint(strings.TrimPrefix(rgb, "#"), 16, 24)
	if err != nil {
		panic("dxf: colour " + rgb)
	}
	return int(n)
}

// layerEntries returns the two layers every file has, and those in use. Weight, colour and line
// type stand here and nowhere else.
func (d *document) layerEntries() []entry {
	layer := func(n string, p render.PenDef) entry {
		t := tags{}.str(2, n).int(70, 0).int(62, p.Index)
		if p.Index > lastNamed {
			t = t.int(420, trueColour(p.RGB))
		}
		t = t.str(6, p.Type.Name)
		if p.NoPlot {
			t = t.int(290, 0)
		}
		return entry{data: t.int(370, p.Weight).ref(390, d.plain)}
	}
	plain := render.PenDef{Weight: 25, Type: render.Solid, Index: 7}
	points := plain
	points.NoPlot = true
	out := []entry{layer("0", plain), layer(defPoints, points)}
	for _, n := range d.usedLayers() {
		out = append(out, layer(n, d.names.layers[n].Def()))
	}
	return out
}

// textStyles returns the text styles. Height 0 leaves the height to each text; the extended data
// names the family for programs that look a font up by it.
func (d *document) textStyles() []entry {
	const swiss, bold = 34, 1 << 25
	style := func(n, file string, family int) entry {
		t := tags{}.str(2, n).int(70, 0).real(40, 0).real(41, 1).real(50, 0).int(71, 0).
			real(42, d.textSize(d.scale())).str(3, file).str(4, "")
		if family != 0 {
			t = t.str(1001, "ACAD").str(1000, "Arial").int(1071, family)
		}
		return entry{handle: d.next(), data: t}
	}
	out := []entry{style("Standard", "arial.ttf", 0)}
	if d.names.notes {
		out = append(out, style(noteStyle, "arial.ttf", swiss))
	}
	if d.names.bold {
		out = append(out, style(boldStyle, "arialbd.ttf", swiss|bold))
	}
	return out
}

func (d *document) applications() []entry {
	out := []entry{{data: tags{}.str(2, "ACAD").int(70, 0)}}
	if d.names.remember {
		out = append(out, entry{data: tags{}.str(2, appName).int(70, 0)})
	}
	return out
}

// dimStyleEntries returns the dimension styles; styles are the text styles, notes second.
func (d *document) dimStyleEntries(styles []entry) []entry {
	out := []entry{{data: dimStyle{"Standard", 1}.record(d.unit, styles[0].handle)}}
	for _, s := range d.names.dimStyles {
		out = append(out, entry{data: s.record(d.unit, styles[1].handle)})
	}
	return out
}

func (d *document) blockRecords() []entry {
	unit := 4
	if d.unit == render.Inch {
		unit = 1
	}
	var out []entry
	for _, b := range d.blocks {
		t := tags{}.str(2, b.name).ref(340, b.layout).int(70, unit).int(280, 1).int(281, 0)
		out = append(out, entry{b.record, t})
	}
	return out
}
