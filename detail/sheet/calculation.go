package sheet

import (
	"fmt"
	"strings"

	"standclear/detail/check"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// Calculation returns the calculation as upright pages, Letter or A4: cautions, then group by group every
// step with its formula, numbers, result, limit and clause, the figures where they belong, and what it
// rests on. Pages are numbered C-001 on.
func (s *Set) Calculation() []*render.Sheet {
	b := newBook(s.w.twin())
	b.intro()
	for g := check.Loads; g <= check.Scope; g++ {
		b.group(g)
	}
	b.assumptions()
	b.number()
	return b.pages
}

// book fills pages from the top down.
type book struct {
	w     *writer
	pages []*render.Sheet
	size  render.Size
	text  geom.Box // where the text goes
	y     float64
}

func newBook(w *writer) *book {
	b := &book{w: w, size: render.Size{Name: "Letter", W: 215.9, H: 279.4}}
	if w.a.Spec.Project.System == unit.SI {
		b.size = render.Size{Name: "A4", W: 210, H: 297}
	}
	b.text = geom.Box{Min: pt(20, 16), Max: pt(b.size.W-12, b.size.H-20)}
	b.turn()
	return b
}

// turn starts a page.
func (b *book) turn() {
	id := fmt.Sprintf("C-%03d", len(b.pages)+1)
	b.pages = append(b.pages, &render.Sheet{ID: id, Title: "CALCULATION", Desc: "A page of the calculation.", Size: b.size, Unit: b.w.unit(), Number: number(b.w.a.Spec.Project.System)})
	b.y = b.text.Max.Y
}

func (b *book) page() *render.Sheet { return b.pages[len(b.pages)-1] }

// need turns the page when less than h is left.
func (b *book) need(h float64) {
	if b.y-h < b.text.Min.Y {
		b.turn()
	}
}

// Text sizes of the pages, cap heights in mm: 2.2 is about 9 point.
const (
	bodyText = 2.2
	headText = 3.5
)

// words are lines of text of one size, set with the rest of their block.
type words struct {
	lines  []string
	pen    render.Pen
	bold   bool
	indent float64
	height float64
}

func (t words) tall() float64 { return float64(len(t.lines)) * t.height * render.LinePitch }

// say wraps a text to the width left beside the indent.
func (b *book) say(text string, pen render.Pen, bold bool, indent, height, spare float64) words {
	return words{wrap(text, height, b.text.W()-indent-spare, bold), pen, bold, indent, height}
}

// block sets texts that stay on one page, with room above.
func (b *book) block(above float64, parts ...words) {
	h := above
	for _, p := range parts {
		h += p.tall()
	}
	b.need(h)
	b.y -= above
	for _, p := range parts {
		b.page().Items = append(b.page().Items, render.Text{Pen: p.pen, At: pt(b.text.Min.X+p.indent, b.y), Height: p.height, Align: render.TopLeft, Lines: p.lines, Bold: p.bold})
		b.y -= p.tall()
	}
}

func (b *book) heading(text string) {
	b.need(30)
	b.block(5, b.say(text, render.Heading, true, 0, headText, 0))
	b.page().Items = append(b.page().Items, rule(render.Mark, pt(b.text.Min.X, b.y+0.6), pt(b.text.Max.X, b.y+0.6)))
	b.y--
}

// intro is what a reader must know before any number.
func (b *book) intro() {
	b.heading("BEFORE READING")
	if v := b.w.verdict(); v != "" {
		b.block(1, b.say(v, render.Status, true, 0, 2.8, 0))
	}
	b.block(1, b.say(strings.Join(b.w.verdictLines()[:3], ", ")+fmt.Sprintf(", %d OK.", b.w.report.Count(check.OK)), render.Note, true, 0, bodyText, 0))
	for _, c := range b.w.report.Cautions {
		b.block(0.8, b.say(c, render.Note, false, 0, bodyText, 0))
	}
}

// group sets the steps of one group under its heading.
func (b *book) group(g check.Group) {
	first := true
	for i := range b.w.report.Steps {
		s := &b.w.report.Steps[i]
		if s.Group != g {
			continue
		}
		if first {
			b.heading(strings.ToUpper(g.String()))
			b.figures(g)
			first = false
		}
		b.step(s)
	}
}

// step sets one step: its name and verdict, then its rows.
func (b *book) step(s *check.Step) {
	name, pen := s.Name, render.Note
	if s.Where != "" {
		name += " (" + s.Where + ")"
	}
	if s.Verdict > check.OK {
		pen = render.Status
	}
	const verdictRoom = 26
	parts := []words{b.say(name, pen, true, 0, bodyText, verdictRoom)}
	for _, r := range s.Rows(b.w.a.Spec.Project.System) {
		parts = append(parts, b.say(r.Head+r.Text, either(r.Head == "why: " || r.Head == "smallest change: ", pen, render.Note), false, 5, bodyText, 0))
	}
	b.block(2, parts...)
	if s.Verdict != check.Info {
		tall := 0.0
		for _, p := range parts {
			tall += p.tall()
		}
		b.page().Items = append(b.page().Items, render.Text{Pen: pen, At: pt(b.text.Max.X, b.y+tall), Height: bodyText, Align: render.TopRight, Lines: []string{s.Verdict.String()}, Bold: true})
	}
}

// figures sets the sketches that belong to a group, each in the middle of the column.
func (b *book) figures(g check.Group) {
	for _, f := range b.w.figuresOf(g, b.text.W()) {
		p := f.view.paper()
		b.need(p.H() + 4)
		at := pt((b.text.Min.X+b.text.Max.X-p.W())/2-p.Min.X, b.y-2-p.Max.Y)
		b.w.place(b.page(), f.view, fmt.Sprint(len(b.page().Views)+1), f.title, origin, at)
		b.y -= p.H() + 2 + 12
	}
}

// assumptions sets what the numbers rest on, each with the key that changes it.
func (b *book) assumptions() {
	b.heading("ASSUMPTIONS, WITH THE KEY THAT CHANGES EACH")
	for _, a := range b.w.report.Assumptions {
		key := a.Key
		if key == "" {
			key = "fixed"
		}
		b.block(0.8, b.say(fmt.Sprintf("%s [%s; %s]", a.Text, key, a.Source), render.Note, false, 0, bodyText, 0))
	}
}

// number writes head and foot of every page, now that their count is known.
func (b *book) number() {
	p := b.w.a.Spec.Project
	for i, s := range b.pages {
		top, foot := b.size.H-14, 12.0
		x0, x1 := b.text.Min.X, b.text.Max.X
		note := func(x, y float64, al render.Align, bold bool, t string) {
			s.Items = append(s.Items, render.Text{Pen: render.Note, At: pt(x, y), Height: bodyText, Align: al, Lines: []string{t}, Bold: bold})
		}
		left := strings.TrimSpace(orNone(p.Name) + "  " + p.Number + "  " + orNone(p.Element))
		for font.Width(left, bodyText, true) > x1-x0-60 {
			left = left[:len(left)-4] + "..."
		}
		note(x0, top, render.BottomLeft, true, left)
		note(x1, top, render.BottomRight, true, fmt.Sprintf("CALCULATION %s, PAGE %d OF %d", s.ID, i+1, len(b.pages)))
		note(x0, foot, render.TopLeft, false, "A calculation aid, not a permit drawing: local code and a licensed engineer decide.")
		note(x1, foot, render.TopRight, false, b.w.hash+" / standclear "+b.w.version)
		s.Items = append(s.Items, rule(render.Grid, pt(x0, top-2), pt(x1, top-2)), rule(render.Grid, pt(x0, foot+1.5), pt(x1, foot+1.5)))
		s.Props = [][2]string{{"project", p.Name}, {"sheet", s.ID}, {"parameters", b.w.hash}, {"program", "standclear " + b.w.version}}
	}
}
