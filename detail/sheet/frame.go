package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"standclear/detail/check"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// layoutOf is what a sheet size leaves for drawing and for the title strip.
type layoutOf struct {
	size  render.Size
	frame geom.Box // border
	field geom.Box // where views go
	strip geom.Box // title strip on the right; of a slim frame, at the foot
	slim  bool
}

// sheetOf returns the layout of a named sheet size: the strip stands at the right edge, its width by
// the size (office practice for vertical title strips, from memory).
func sheetOf(name string) layoutOf {
	s, ok := stock.SheetSizeOf(name)
	if !ok {
		s, _ = stock.SheetSizeOf("ARCH D")
	}
	w, h := s.Width.MM(), s.Height.MM()
	bind, edge, strip := 20.0, 10.0, 76.0
	if w < 500 {
		bind, edge, strip = 12, 8, 62
	}
	l := layoutOf{size: render.Size{Name: s.Name, W: w, H: h}}
	l.frame = geom.Box{Min: pt(bind, edge), Max: pt(w-edge, h-edge)}
	l.strip = geom.Box{Min: pt(l.frame.Max.X-strip, edge), Max: l.frame.Max}
	l.field = geom.Box{Min: pt(l.frame.Min.X+4, l.frame.Min.Y+4), Max: pt(l.strip.Min.X-4, l.frame.Max.Y-4)}
	return l
}

// border draws the frame, the strip and everything in it.
func (w *writer) border(s *render.Sheet, l layoutOf, n, of int, scale string) {
	if l.slim {
		w.slimBorder(s, l, n, of, scale)
		return
	}
	var it []render.Item
	it = append(it, render.Stroke{Pen: render.Border, Path: geom.Rect(l.frame.Min.X, l.frame.Min.Y, l.frame.Max.X, l.frame.Max.Y)[0]})
	it = append(it, rule(render.Heading, pt(l.strip.Min.X, l.strip.Min.Y), pt(l.strip.Min.X, l.strip.Max.Y)))
	s.Items = append(s.Items, it...)
	y := w.fields(s, l, n, of, scale)
	y = w.revisions(s, l, y)
	y = w.stamp(s, l, y)
	y = w.checkSquare(s, l, y)
	y = w.seal(s, l, y)
	w.stripNotes(s, l, y)
	w.banner(s, l)
}

func rule(p render.Pen, a, b geom.Vec) render.Stroke {
	return render.Stroke{Pen: p, Path: geom.Polyline(a, b)}
}

// field is one cell of the title strip. A value may run over the lines of its cell.
type field struct {
	attr, label, value string
	lines              int     // the cell has room for
	text               float64 // cap height of the value
}

func (f field) height() float64 { return 5.4 + float64(f.lines)*f.text*render.LinePitch }

// fit wraps the value to the cell, smaller where it would not fit.
func (f field) fit(width float64) ([]string, float64) {
	h := f.text
	for ; h > 2; h -= 0.1 {
		if l := wrap(f.value, h, width, false); len(l) <= f.lines {
			return l, h
		}
	}
	l := wrap(f.value, 2, width, false)
	return l[:min(len(l), f.lines)], 2
}

// cells are the fields of the title strip from the bottom up.
func (w *writer) cells(s *render.Sheet, n, of int, scale string) []field {
	sp := w.a.Spec
	p := sp.Project
	units := "INCHES (FEET AND INCHES)"
	if p.System == unit.SI {
		units = "MILLIMETRES"
	}
	return []field{
		{"SHEET_NO", "SHEET", s.ID, 1, 9},
		{"SHEET_N", "OF SET", fmt.Sprintf("%d OF %d", n, of), 1, 2.5},
		{"TITLE", "TITLE", s.Title, 2, 3.5},
		{"SCALE", "SCALE OF THE MAIN VIEW", scale, 1, 2.5},
		{"DATE", "DATE / REVISION", orNone(p.Date) + "  /  " + lastRevision(p.Revisions), 1, 2.5},
		{"DRAWN", "DRAWN / CHECKED", orNone(p.Drawn) + "  /  " + orNone(p.Checked), 1, 2.5},
		{"ELEMENT", "ELEMENT", orNone(p.Element), 1, 3},
		{"PROJECT", "PROJECT", strings.TrimSpace(orNone(p.Name) + "  " + p.Number), 1, 3},
		{"CODE", "CODE AS STATED BY THE USER", orNone(p.Code), 1, 2.5},
		{"BASIS", "STRENGTH CHECKED BY", "ALLOWABLE STRESS: NDS 2018, ASCE 7-16, IRC 2021" + w.foreign(), 2, 2.5},
		{"UNITS", "UNITS", units, 1, 2.5},
		{"DATUM", "DATUM", "X 0 LEFT END OF LEDGER, Y 0 OUTER FACE OF SHEATHING, Z 0 FINISHED FLOOR", 3, 2.2},
		{"HASH", "PARAMETERS / PROGRAM", w.hash + "  /  standclear " + w.version, 1, 2.5},
	}
}

// fields draws the title cells as one inserted symbol with an attribute for every line a cell has room for, and
// returns the height they reach. The symbol is the same on every sheet of its size, so that a set holds it once:
// a long value is lettered smaller by its insert.
func (w *writer) fields(s *render.Sheet, l layoutOf, n, of int, scale string) float64 {
	x0, x1, y := l.strip.Min.X, l.strip.Max.X, l.strip.Min.Y
	sym := &render.Symbol{Name: "SC-TITLE-" + strings.ReplaceAll(l.size.Name, " ", "")}
	ins := render.Insert{Pen: render.TitleText, Symbol: sym, At: pt(x0, y), Scale: 1}
	at := 0.0
	for _, c := range w.cells(s, n, of, scale) {
		top := at + c.height()
		sym.Items = append(sym.Items, rule(render.TitleText, pt(0, top), pt(x1-x0, top)),
			render.Text{Pen: render.TitleText, At: pt(2, top-1.2), Height: 2, Align: render.TopLeft, Lines: []string{c.label}})
		lines, h := c.fit(x1 - x0 - 4)
		for i := range c.lines {
			f := render.Field{Name: c.attr, Height: h}
			if i > 0 {
				f.Name = fmt.Sprintf("%s_%d", c.attr, i+1)
			}
			if i < len(lines) {
				f.Value = lines[i]
			}
			base := top - 4.2 - c.text - float64(i)*c.text*render.LinePitch
			sym.Items = append(sym.Items, render.Text{Pen: render.TitleText, At: pt(2, base), Height: c.text, Align: render.BottomLeft, Lines: []string{"-"}, Attr: f.Name})
			ins.Fields = append(ins.Fields, f)
		}
		at = top
	}
	s.Items = append(s.Items, ins)
	return y + at
}

// stamp draws the review status.
func (w *writer) stamp(s *render.Sheet, l layoutOf, y float64) float64 {
	r := w.a.Spec.Project.Reviewer
	lines := []string{"NOT FOR CONSTRUCTION UNTIL", "REVIEWED BY A LICENSED", "PROFESSIONAL"}
	if r.Name != "" {
		lines = []string{"REVIEWED:", r.Name + ", " + r.Licence, r.Date}
	}
	x0, x1 := l.strip.Min.X+4, l.strip.Max.X-4
	box := geom.Rect(x0, y+4, x1, y+24)
	lines, h := stampLines(lines, x1-x0-4)
	s.Items = append(s.Items, render.Stroke{Pen: render.Status, Path: box[0]},
		render.Text{Pen: render.Status, At: pt((x0+x1)/2, y+14), Height: h, Align: render.MiddleCentre, Lines: lines, Bold: true})
	lines = w.verdictLines()
	pen := render.Note
	if w.report.Count(check.Fails)+w.report.Count(check.Engineer)+w.report.Count(check.NotChecked) > 0 {
		pen = render.Status
	}
	s.Items = append(s.Items, render.Text{Pen: pen, At: pt(x0, y+28), Height: 2.5, Align: render.BottomLeft, Lines: lines, Bold: true})
	return y + 28 + float64(len(lines))*4 + 2
}

// stampLines wraps the stamp to its box, as large as it goes from 3 mm down to 2 mm.
func stampLines(text []string, width float64) (lines []string, h float64) {
	const tall = 17 // of the box, less its padding
	for h = 3; ; h -= 0.1 {
		lines = nil
		for _, t := range text {
			lines = append(lines, wrap(t, h, width, true)...)
		}
		if h < 2.1 || len(lines) == len(text) && h*(1+render.LinePitch*float64(len(lines)-1)) <= tall {
			return lines, h
		}
	}
}

// verdictLines counts the checks for the strip.
func (w *writer) verdictLines() []string {
	r := w.report
	return []string{
		fmt.Sprintf("CHECKS: %d FAIL", r.Count(check.Fails)),
		fmt.Sprintf("%d FOR THE ENGINEER", r.Count(check.Engineer)),
		fmt.Sprintf("%d NOT CHECKED", r.Count(check.NotChecked)),
		fmt.Sprintf("%d OK.  SEE G-001", r.Count(check.OK)),
	}
}

// checkSquare is the square to measure on a print.
func (w *writer) checkSquare(s *render.Sheet, l layoutOf, y float64) float64 {
	d, name := 25.4, "PRINT CHECK: THIS SQUARE IS 1\" x 1\""
	if w.a.Spec.Project.System == unit.SI {
		d, name = 25, "PRINT CHECK: THIS SQUARE IS 25 x 25 mm"
	}
	x := l.strip.Min.X + 4
	s.Items = append(s.Items, render.Stroke{Pen: render.Grid, Path: geom.Rect(x, y+4, x+d, y+4+d)[0]},
		render.Text{Pen: render.Note, At: pt(x+d+3, y+4+d/2), Height: 2.2, Align: render.MiddleLeft,
			Lines: wrap(name+". DO NOT SCALE FROM PRINT; PRINTED DIMENSIONS GOVERN.", 2.2, l.strip.Max.X-x-d-6, false)})
	return y + 4 + d + 2
}

// seal leaves a square for the seal of the one who reviews, where the sheet is tall enough to leave the
// notes their room.
func (w *writer) seal(s *render.Sheet, l layoutOf, y float64) float64 {
	const side = 48.0
	if l.size.H < 450 {
		return y
	}
	x := (l.strip.Min.X + l.strip.Max.X - side) / 2
	s.Items = append(s.Items, render.Stroke{Pen: render.Grid, Path: geom.Rect(x, y+4, x+side, y+4+side)[0]},
		render.Text{Pen: render.Note, At: pt(x+2, y+2+side), Height: 2, Align: render.TopLeft, Lines: []string{"SEAL"}})
	return y + 4 + side + 2
}

// banner says in large type that a design must not be built, or not before an engineer has decided.
func (w *writer) banner(s *render.Sheet, l layoutOf) {
	text := w.verdict()
	if text == "" {
		return
	}
	h := 5.0
	for h > 2.5 && font.Width(text, h, true) > l.field.W()-8 {
		h -= 0.5
	}
	lines := wrap(text, h, l.field.W()-8, true)
	y1 := l.field.Max.Y
	box := geom.Rect(l.field.Min.X, y1-h-6, l.field.Max.X, y1)
	s.Items = append(s.Items, render.Stroke{Pen: render.Status, Path: box[0]},
		render.Text{Pen: render.Status, At: pt(l.field.Min.X+4, y1-3-h/2), Height: h, Align: render.MiddleLeft, Lines: lines[:1], Bold: true})
}

// verdict is the text of the banner; "" when every check is OK.
func (w *writer) verdict() string { return w.verdictOf(3) }

// verdictOf names at most n of the steps.
func (w *writer) verdictOf(n int) string {
	if of := w.report.Count(check.Fails); of > 0 {
		return fmt.Sprintf("DO NOT BUILD: %d %s - %s", of, either(of == 1, "CHECK FAILS", "CHECKS FAIL"), w.named(check.Fails, n))
	}
	if w.report.Count(check.Engineer) > 0 {
		return "ENGINEER REQUIRED: " + w.named(check.Engineer, n)
	}
	if w.report.Count(check.NotChecked) > 0 {
		return "NOT CHECKED: " + w.named(check.NotChecked, n)
	}
	return ""
}

// named lists up to n steps of a verdict, the worst first, with their ratio and place.
func (w *writer) named(v check.Verdict, n int) string {
	var of []check.Step
	for _, st := range w.report.Steps {
		if st.Verdict == v {
			of = append(of, st)
		}
	}
	slices.SortStableFunc(of, func(a, b check.Step) int { return cmp.Compare(b.Ratio, a.Ratio) })
	var out []string
	for _, st := range of[:min(n, len(of))] {
		t := st.Name
		if st.Limit != nil && v == check.Fails && st.Ratio < check.Beyond {
			t += fmt.Sprintf(" %s", st.RatioText())
		}
		out = append(out, strings.ToUpper(t))
	}
	if len(of) > n {
		out = append(out, fmt.Sprintf("AND %d MORE", len(of)-n))
	}
	return strings.Join(out, "; ")
}

// foreign says that a code of another country, where one is stated, is not what the checks follow.
func (w *writer) foreign() string {
	if c := strings.ToUpper(w.a.Spec.Project.Code); strings.Contains(c, "EN 19") || strings.Contains(c, "EUROCODE") {
		return "; NOT CHECKED TO EN 1995"
	}
	return ""
}

// stripNotes fills the strip above the fields with the general notes of the sheet.
func (w *writer) stripNotes(s *render.Sheet, l layoutOf, y float64) {
	x := l.strip.Min.X + 4
	width := l.strip.Max.X - x - 4
	top := l.strip.Max.Y - 5
	s.Items = append(s.Items, render.Text{Pen: render.Heading, At: pt(x, top), Height: 3.5, Align: render.TopLeft, Lines: []string{"GENERAL NOTES"}, Bold: true})
	at := top - 7.5
	h := 2.5
	notes := w.generalNotes()
	if noteHeight(notes, 2, width) > at-y-2 {
		notes = []string{"LIFE-SAFETY CONNECTION. CALCULATION AID, NOT A PERMIT DRAWING. LOCAL CODE AND A LICENSED ENGINEER DECIDE.", "ALL GENERAL NOTES ON G-001 APPLY TO THIS SHEET."}
	}
	for ; h > 2; h -= 0.1 {
		if noteHeight(notes, h, width) <= at-y-2 {
			break
		}
	}
	for i, n := range notes {
		lines := wrap(fmt.Sprintf("%d. %s", i+1, n), h, width, false)
		need := float64(len(lines)) * h * render.LinePitch
		if at-need < y {
			break
		}
		s.Items = append(s.Items, render.Text{Pen: render.Note, At: pt(x, at), Height: h, Align: render.TopLeft, Lines: lines})
		at -= need + h*0.5
	}
}

func noteHeight(notes []string, h, width float64) float64 {
	t := 0.0
	for i, n := range notes {
		t += float64(len(wrap(fmt.Sprintf("%d. %s", i+1, n), h, width, false)))*h*render.LinePitch + h*0.5
	}
	return t
}
