package sheet

import (
	"fmt"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/strength"
	"standclear/geom"
	"standclear/render"
)

// figure is a sketch that belongs to a group of checks.
type figure struct {
	title string
	view  *composer
}

// figuresOf are the sketches of a group, at most width wide as plotted.
func (w *writer) figuresOf(g check.Group, width float64) []figure {
	switch {
	case g == check.Connection:
		return w.dowelFigures(width)
	case g == check.Block && len(w.a.Blocks) > 0:
		return []figure{{"FREE BODY OF ONE BLOCK", w.freeBody(width)}}
	}
	return nil
}

// Figures returns the sketches of a group of checks, each as a sheet of its own size.
func Figures(a *detail.Assembly, r *check.Report, res strength.Results, g check.Group) []*render.Sheet {
	w := newWriter(a, r, res, Options{})
	var out []*render.Sheet
	for i, f := range w.figuresOf(g, 150) {
		p := f.view.paper().Grow(2)
		s := &render.Sheet{ID: fmt.Sprintf("F-%d%02d", g, i+1), Title: f.title, Desc: f.title + ", to scale.", Size: render.Size{Name: "figure", W: p.W(), H: p.H()}, Unit: w.unit(), Number: number(a.Spec.Project.System)}
		w.place(s, f.view, "1", f.title, origin, geom.Vec{X: -p.Min.X, Y: -p.Min.Y})
		out = append(out, s)
	}
	return out
}
