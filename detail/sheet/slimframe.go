package sheet

import (
	"fmt"

	"standclear/detail/check"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// slimMargin is what an office printer leaves white: 1/4 in (common practice, no source).
const slimMargin = 6.5

// slimOf returns the layout of a page that an office printer takes, with a low title strip at its foot; upright
// turns the page.
func (w *writer) slimOf(name string, upright bool) layoutOf {
	s, _ := stock.SheetSizeOf(name)
	wide, high := s.Width.MM(), s.Height.MM()
	if upright {
		wide, high = high, wide
	}
	l := layoutOf{size: render.Size{Name: s.Name, W: wide, H: high}, slim: true}
	l.frame = geom.Box{Min: pt(slimMargin, slimMargin), Max: pt(wide-slimMargin, high-slimMargin)}
	l.strip = geom.Box{Min: l.frame.Min, Max: pt(l.frame.Max.X, l.frame.Min.Y+w.slimSquare()+6)}
	l.field = geom.Box{Min: pt(l.frame.Min.X+1, l.strip.Max.Y+1), Max: pt(l.frame.Max.X-1, l.frame.Max.Y-1)}
	return l
}

// slimSquare is the side of the square to measure on a print at full size: 1 in, 50 mm.
func (w *writer) slimSquare() float64 {
	if w.a.Spec.Project.System == unit.SI {
		return 50
	}
	return 25.4
}

// slimBorder draws the frame and the strip at its foot: the square to measure, what the page is, what it must
// not be taken for.
func (w *writer) slimBorder(s *render.Sheet, l layoutOf, n, of int) {
	frame := l.frame
	s.Items = append(s.Items, render.Stroke{Pen: render.Border, Path: geom.Rect(frame.Min.X, frame.Min.Y, frame.Max.X, frame.Max.Y)[0]},
		rule(render.Heading, pt(frame.Min.X, l.strip.Max.Y), pt(frame.Max.X, l.strip.Max.Y)))
	d := w.slimSquare()
	x, y := l.strip.Min.X+3, l.strip.Min.Y+3
	s.Items = append(s.Items, render.Stroke{Pen: render.Mark, Path: geom.Rect(x, y, x+d, y+d)[0]},
		render.Text{Pen: render.Note, At: pt(x+d/2, y+d/2), Height: 2.2, Align: render.MiddleCentre, Lines: wrap(w.squareWords(), 2.2, d-3, false)})
	x += d + 4
	width := l.strip.Max.X - 3 - x
	w.slimFields(s, x, l.strip.Max.Y-2.5, width*0.44, n, of)
	w.slimStatus(s, x+width*0.44+4, l.strip, l.strip.Max.X-3)
}

func (w *writer) squareWords() string {
	side := `1"`
	if w.a.Spec.Project.System == unit.SI {
		side = "50 mm"
	}
	return "THIS SQUARE IS " + side + " x " + side + ". PRINT AT 100 %, NOT FITTED TO THE PAGE."
}

// slimFields say what the page is.
func (w *writer) slimFields(s *render.Sheet, x, y, width float64, n, of int) {
	p := w.a.Spec.Project
	w.lines(s, x, y, width, 5.5, true, s.ID)
	y -= 8
	y = w.lines(s, x, y, width, 3, true, s.Title)
	for _, t := range []string{
		fmt.Sprintf("SHEET %d OF %d. SCALE %s. DATE %s, REVISION 0", n, of, w.scale(1).Text, orNone(p.Date)),
		orNone(p.Name) + " " + p.Number, orNone(p.Element), w.a.Spec.Hash + " / standclear " + w.version,
	} {
		if y-2.2 < slimMargin+1.5 {
			return
		}
		h := min(2.2, max(2, 2.2*width/font.Width(t, 2.2, false)))
		s.Items = append(s.Items, render.Text{Pen: render.TitleText, At: pt(x, y), Height: h, Align: render.TopLeft, Lines: wrap(t, h, width, false)[:1]})
		y -= 3.5
	}
}

// slimStatus prints the cautions of every sheet.
func (w *writer) slimStatus(s *render.Sheet, x float64, strip geom.Box, x1 float64) {
	y, width := strip.Max.Y-2.5, x1-x
	y = w.lines(s, x, y, width, 2.2, true, w.reviewWords())
	if v := w.verdict(); v != "" {
		y = w.lines(s, x, y, width, 2, true, wrap(v, 2, width, true)[0])
	}
	r := w.report
	for _, t := range []string{
		fmt.Sprintf("CHECKS: %d FAIL, %d FOR THE ENGINEER, %d NOT CHECKED, %d OK. SEE G-001.", r.Count(check.Fails), r.Count(check.Engineer), r.Count(check.NotChecked), r.Count(check.OK)),
		"LIFE-SAFETY CONNECTION. CALCULATION AID, NOT A PERMIT DRAWING. LOCAL CODE AND A LICENSED ENGINEER DECIDE. ALL GENERAL NOTES ON G-001 APPLY TO THIS SHEET.",
	} {
		lines := wrap(t, 2, width, false)
		s.Items = append(s.Items, render.Text{Pen: render.Note, At: pt(x, y), Height: 2, Align: render.TopLeft, Lines: lines})
		y -= float64(len(lines)) * 2 * render.LinePitch
	}
}

// reviewWords is the review status in one line.
func (w *writer) reviewWords() string {
	if r := w.a.Spec.Project.Reviewer; r.Name != "" {
		return "REVIEWED: " + r.Name + ", " + r.Licence + ", " + r.Date
	}
	return "NOT FOR CONSTRUCTION UNTIL REVIEWED BY A LICENSED PROFESSIONAL"
}

// lines sets bold text from its top left corner and returns where the next goes.
func (w *writer) lines(s *render.Sheet, x, y, width, h float64, bold bool, t string) float64 {
	l := wrap(t, h, width, bold)
	pen := render.TitleText
	if h < 2.5 {
		pen = render.Status
	}
	s.Items = append(s.Items, render.Text{Pen: pen, At: pt(x, y), Height: h, Align: render.TopLeft, Lines: l, Bold: bold})
	return y - float64(len(l))*h*render.LinePitch
}
