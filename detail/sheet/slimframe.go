package sheet

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail/check"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// slimMargin is what an office printer leaves white: 1/4 in (common practice, no source).
const slimMargin = 6.5

// posture is how a page lies and where its title strip stands: at the foot, or at the right.
type posture struct{ upright, aside bool }

// slimOf returns the layout of a page that an office printer takes, with a small title strip.
func (w *writer) slimOf(name string, as posture) layoutOf {
	s, _ := stock.SheetSizeOf(name)
	wide, high := s.Width.MM(), s.Height.MM()
	if as.upright {
		wide, high = high, wide
	}
	l := layoutOf{size: render.Size{Name: s.Name, W: wide, H: high}, slim: true}
	l.frame = geom.Box{Min: pt(slimMargin, slimMargin), Max: pt(wide-slimMargin, high-slimMargin)}
	l.strip, l.field = l.frame, l.frame.Grow(-1)
	if as.aside {
		const least = 48 // for the words
		l.strip.Min.X = l.frame.Max.X - math.Max(least, w.slimSquare()+6)
		l.field.Max.X = l.strip.Min.X - 1
		return l
	}
	l.strip.Max.Y = l.frame.Min.Y + w.slimSquare() + 6
	l.field.Min.Y = l.strip.Max.Y + 1
	return l
}

// slimSquare is the side of the square to measure on a print at full size: 1 in, 50 mm.
func (w *writer) slimSquare() float64 {
	if w.a.Spec.Project.System == unit.SI {
		return 50
	}
	return 25.4
}

// slimBorder draws the frame and its strip: the square to measure, what the page is, what it must not be taken
// for.
func (w *writer) slimBorder(s *render.Sheet, l layoutOf, n, of int, scale string) {
	frame, strip := l.frame, l.strip
	s.Items = append(s.Items, render.Stroke{Pen: render.Border, Path: geom.Rect(frame.Min.X, frame.Min.Y, frame.Max.X, frame.Max.Y)[0]})
	d := w.slimSquare()
	at := pt(strip.Min.X+3, strip.Min.Y+3)
	s.Items = append(s.Items, render.Stroke{Pen: render.Mark, Path: geom.Rect(at.X, at.Y, at.X+d, at.Y+d)[0]},
		render.Text{Pen: render.Note, At: at.Add(pt(d/2, d/2)), Height: 2.2, Align: render.MiddleCentre, Lines: wrap(w.squareWords(), 2.2, d-3, false)})
	if strip.Max.Y == frame.Max.Y { // at the right
		s.Items = append(s.Items, rule(render.Heading, pt(strip.Min.X, strip.Min.Y), pt(strip.Min.X, strip.Max.Y)))
		y := w.slimFields(s, at.X, strip.Max.Y-2.5, strip.W()-6, n, of, scale)
		w.slimStatus(s, at.X, y-4, strip.W()-6, 8)
		return
	}
	s.Items = append(s.Items, rule(render.Heading, pt(strip.Min.X, strip.Max.Y), pt(strip.Max.X, strip.Max.Y)))
	x := at.X + d + 4
	width := strip.Max.X - 3 - x
	w.slimFields(s, x, strip.Max.Y-2.5, width*0.38, n, of, scale)
	w.slimStatus(s, x+width*0.38+4, strip.Max.Y-2.5, width*0.62-4, 2)
}

func (w *writer) squareWords() string {
	side := `1"`
	if w.a.Spec.Project.System == unit.SI {
		side = "50 mm"
	}
	return "THIS SQUARE IS " + side + " x " + side + ". PRINT AT 100 %, NOT FITTED TO THE PAGE."
}

// slimFields say what the page is; they return the height they reach.
func (w *writer) slimFields(s *render.Sheet, x, y, width float64, n, of int, scale string) float64 {
	p := w.a.Spec.Project
	y = w.lines(s, render.TitleText, x, y, width, 5, true, s.ID)
	y = w.lines(s, render.TitleText, x, y, width, 2.5, true, s.Title)
	for _, t := range []string{
		fmt.Sprintf("%s %d OF %d, SCALE %s", either(w.leaf, "SHOP PAGE", "SHEET"), n, of, scale),
		orNone(p.Name) + " " + p.Number + ", " + orNone(p.Element),
		"DATE " + orNone(p.Date) + "; " + w.hash + " / standclear " + w.version,
	} {
		l := wrap(t, 2, width, false)
		y = w.lines(s, render.TitleText, x, y, width, 2, false, strings.Join(l[:min(len(l), 2)], " "))
	}
	return y
}

// slimStatus prints the cautions of every sheet; of a verdict as much as most lines hold.
func (w *writer) slimStatus(s *render.Sheet, x, y, width float64, most int) {
	y = w.lines(s, render.Status, x, y, width, 2, true, w.reviewWords())
	if v := wrap(w.verdict(), 2, width, true); w.verdict() != "" {
		for n := 2; n > 0 && len(v) > most; n-- {
			v = wrap(w.verdictOf(n), 2, width, true)
		}
		y = w.lines(s, render.Status, x, y, width, 2, true, strings.Join(v[:min(len(v), most)], " "))
	}
	r := w.report
	y = w.lines(s, render.Note, x, y, width, 2, false, fmt.Sprintf("CHECKS: %d FAIL, %d FOR THE ENGINEER, %d NOT CHECKED, %d OK",
		r.Count(check.Fails), r.Count(check.Engineer), r.Count(check.NotChecked), r.Count(check.OK)))
	w.lines(s, render.Note, x, y, width, 2, false, "LIFE-SAFETY CONNECTION. CALCULATION AID, NOT A PERMIT DRAWING. LOCAL CODE AND A LICENSED ENGINEER DECIDE. ALL GENERAL NOTES ON G-001 APPLY TO THIS SHEET.")
}

// reviewWords is the review status in one line.
func (w *writer) reviewWords() string {
	if r := w.a.Spec.Project.Reviewer; r.Name != "" {
		return "REVIEWED: " + r.Name + ", " + r.Licence + ", " + r.Date
	}
	return "NOT FOR CONSTRUCTION UNTIL REVIEWED BY A LICENSED PROFESSIONAL"
}

// lines sets text from its top left corner and returns where the next goes.
func (w *writer) lines(s *render.Sheet, pen render.Pen, x, y, width, h float64, bold bool, t string) float64 {
	l := wrap(t, h, width, bold)
	s.Items = append(s.Items, render.Text{Pen: pen, At: pt(x, y), Height: h, Align: render.TopLeft, Lines: l, Bold: bold})
	return y - float64(len(l)-1)*h*render.LinePitch - h - 1.3
}
