package dxf

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// layout is a sheet of paper: its items and its windows into model space.
type layout struct {
	sheet  *render.Sheet
	name   string
	space  *block
	handle handle
	shift  geom.Vec // mm, of all its views in model space
	main   *entity  // the viewport that is the sheet itself
	props  []string // what the file should remember of the sheet
}

// layout adds the paper of a sheet, with a viewport for each view, before anything is drawn on it. Entities of
// the first layout stand in the section of entities, those of the others in their blocks.
func (d *document) layout(s *render.Sheet) *layout {
	l := &layout{sheet: s, name: layoutName(s.ID), handle: d.next(), props: facts(s.Props...)}
	n := len(d.layouts)
	block := "*Paper_Space"
	if n > 0 {
		block += strconv.Itoa(n - 1)
		l.shift = d.below(s)
	}
	l.space = d.block(block)
	l.space.paper, l.space.separated, l.space.layout = true, n == 0, l.handle
	x := l.paper()
	const sees, locked = 32 + 32768 + 524288, 16384 // on, no icon and no border tricks of 3-D
	l.main = viewport(1, "0", sees, x.Center(), x.W()*1.1, x.H()*1.1, x.Center(), 1)
	l.space.items = append(l.space.items, l.main)
	for i, v := range drawn(s.Views) {
		k, per := v.Scale.K, d.unit.PerMM()
		paper := frame{per: per}.at(v.At.Add(v.Window.Center().Mul(1 / k)))
		model := d.frameOf(l, v).at(v.Window.Center())
		e := viewport(i+2, d.layer(s, render.NoPlot), sees+locked, paper, round(v.Window.W()/k*per), round(v.Window.H()/k*per), model, k)
		l.space.items = append(l.space.items, e)
	}
	d.layouts = append(d.layouts, l)
	return l
}

// frameOf returns where a view of the sheet lies in model space.
func (d *document) frameOf(l *layout, v render.View) frame {
	return frame{place: v.Place.Add(l.shift), per: d.unit.PerMM(), k: v.Scale.K}
}

// below returns how far the views of a sheet move so that they stand under those of the sheets before: by whole
// steps of 10 ft or 3 m, far enough that none reaches into a viewport of another even where a program does not
// clip.
func (d *document) below(s *render.Sheet) geom.Vec {
	step := 3000.0
	if s.Unit == render.Inch {
		step = 3048
	}
	under := reach(s)
	for _, before := range slices.Backward(d.layouts) {
		if over := reach(before.sheet); !over.Empty() && !under.Empty() {
			return geom.Vec{Y: math.Floor((over.Min.Y+before.shift.Y-under.Max.Y)/step) * step}
		}
	}
	return geom.Vec{}
}

// reach returns what the viewports of a sheet could show of model space if they were as large as the sheet.
func reach(s *render.Sheet) geom.Box {
	x := geom.EmptyBox()
	for _, v := range drawn(s.Views) {
		paper := geom.Vec{X: s.Size.W, Y: s.Size.H}.Mul(v.Scale.K / 2)
		x = x.Include(v.Window.Min.Add(v.Place).Sub(paper)).Include(v.Window.Max.Add(v.Place).Add(paper))
	}
	return x
}

// layoutName makes a sheet's name fit for a layout; Model is taken.
func layoutName(id string) string {
	if n := name(id); n != "" && !strings.EqualFold(n, "Model") {
		return n
	}
	return "Sheet"
}

// paper returns the sheet in the file's unit, its lower left corner at (0, 0).
func (l *layout) paper() geom.Box {
	per := l.sheet.Unit.PerMM()
	return geom.BoxOf(geom.Vec{}, geom.Vec{X: round(l.sheet.Size.W * per), Y: round(l.sheet.Size.H * per)})
}

// viewport returns a window w x h about paper that shows what lies about model, at exactly 1 to k:
// the height it sees is its own height times k.
func viewport(id int, layer string, flags int, paper geom.Vec, w, h float64, model geom.Vec, k float64) *entity {
	t := tags{}.class("AcDbViewport").point(10, paper).real(40, w).real(41, h).int(68, id).int(69, id).xy(12, model)
	t = append(t, grid()...)
	t = t.zeros(16, 26).real(36, 1).zeros(17, 27, 37).real(42, 50).zeros(43, 44).real(45, h*k).zeros(50, 51).
		int(72, 1000).int(90, flags).str(1, "").int(281, 0).int(71, 1).int(74, 0)
	t = append(t, axes(110)...)
	t = t.int(79, 0).real(146, 0)
	return &entity{kind: "VIEWPORT", layer: layer, order: viewports, data: t, box: geom.EmptyBox()}
}

// axes returns origin, x and y axis of a plane coordinate system under three codes from code on.
func axes(code int) tags {
	return tags{}.point(code, geom.Vec{}).point(code+1, geom.Vec{X: 1}).point(code+2, geom.Vec{Y: 1})
}

// sign writes what the file should remember onto the title block, else onto the first thing on the sheet; with
// nothing on it, onto the title of the view, which goes along when model space is inserted elsewhere, else onto
// the sheet itself.
func (l *layout) sign(d *document) {
	var first, title, heading *entity
	for _, e := range l.space.items {
		switch {
		case e.kind == "VIEWPORT":
		case title == nil && d.isTitle(l, e):
			title = e
		case first == nil:
			first = e
		}
	}
	for _, e := range d.model.items {
		if heading == nil && len(d.layouts) == 1 && e.kind == "TEXT" && e.layer == d.layer(l.sheet, render.Heading) {
			heading = e
		}
	}
	e := cmp.Or(title, first, heading, l.main)
	e.remember = append(e.remember, l.props...)
}

// isTitle reports whether e is a symbol on one of the layers of the title block.
func (d *document) isTitle(l *layout, e *entity) bool {
	return e.kind == "INSERT" && (e.layer == d.layer(l.sheet, render.Border) || e.layer == d.layer(l.sheet, render.TitleText))
}

// objectSection holds the dictionaries and the layouts, model space among them.
func (d *document) objectSection() tags {
	t := dictionary(d.root, 0, pointer{"ACAD_GROUP", d.groups}, pointer{"ACAD_LAYOUT", d.plans}, pointer{"ACAD_PLOTSTYLENAME", d.plots})
	t = append(t, dictionary(d.groups, d.root)...)
	plans := []pointer{{"Model", d.model.layout}}
	for _, l := range d.layouts {
		plans = append(plans, pointer{l.name, l.handle})
	}
	t = append(t, dictionary(d.plans, d.root, plans...)...)
	t = t.str(0, "ACDBDICTIONARYWDFLT").ref(5, d.plots).ref(330, d.root).class("AcDbDictionary").int(281, 1).
		str(3, "Normal").ref(350, d.plain).class("AcDbDictionaryWithDefault").ref(340, d.plain).
		str(0, "ACDBPLACEHOLDER").ref(5, d.plain).ref(330, d.plots)
	for i, l := range d.layouts {
		if i == 0 {
			model := &layout{sheet: l.sheet, name: "Model", space: d.model, handle: d.model.layout}
			t = append(t, model.record(d.plans, 0, d.extent())...)
		}
		t = append(t, l.record(d.plans, i+1, l.paper())...)
	}
	return t
}

// pointer is a named entry of a dictionary.
type pointer struct {
	key string
	to  handle
}

func dictionary(h, owner handle, entries ...pointer) tags {
	t := tags{}.str(0, "DICTIONARY").ref(5, h).ref(330, owner).class("AcDbDictionary").int(281, 1)
	for _, e := range entries {
		t = t.str(3, e.key).ref(350, e.to)
	}
	return t
}

// record returns the layout object: how the paper is plotted, at 1:1 and without margins, so that
// the corner of the sheet is the origin. Paper sizes are in millimetres in every file.
func (l *layout) record(owner handle, tab int, limits geom.Box) tags {
	s := l.sheet
	const standard, model = 688, 1024 // standard scale, plot styles, line weights, viewports first
	flags, unit := standard, 1
	if tab == 0 {
		flags += model
	}
	if s.Unit == render.Inch {
		unit = 0
	}
	t := tags{}.str(0, "LAYOUT").ref(5, l.handle).ref(330, owner).class("AcDbPlotSettings").
		str(1, "").str(2, "none_device").str(4, paperName(s)).str(6, "").
		zeros(40, 41, 42, 43).real(44, s.Size.W).real(45, s.Size.H).zeros(46, 47, 48, 49, 140, 141).
		real(142, 1).real(143, 1).int(70, flags).int(72, unit).int(73, 0).int(74, 5).str(7, "").int(75, 16).
		real(147, 1).int(76, 0).int(77, 2).int(78, 300).zeros(148, 149)
	t = t.class("AcDbLayout").str(1, l.name).int(70, 1).int(71, tab).xy(10, limits.Min).xy(11, limits.Max).
		point(12, geom.Vec{}).point(14, limits.Min).point(15, limits.Max).real(146, 0).
		point(13, geom.Vec{}).point(16, geom.Vec{X: 1}).point(17, geom.Vec{Y: 1}).int(76, 0).ref(330, l.space.record)
	if l.main != nil {
		t = t.ref(331, l.main.handle)
	}
	return t
}

// paperName returns the name of the paper with its size: ARCH_D_(36.00_x_24.00_Inches).
func paperName(s *render.Sheet) string {
	n, per, unit := strings.ReplaceAll(name(s.Size.Name), " ", "_"), s.Unit.PerMM(), "MM"
	if n == "" {
		n = "SHEET"
	}
	if s.Unit == render.Inch {
		unit = "Inches"
	}
	return fmt.Sprintf("%s_(%.2f_x_%.2f_%s)", n, s.Size.W*per, s.Size.H*per, unit)
}
