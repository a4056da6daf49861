package sheet

import (
	"math"

	"standclear/detail/sheet/cloud"
	"standclear/detail/spec"
	"standclear/render"
)

// mostRevisions is how many lines the revision block has; the newest are kept.
const mostRevisions = 4

// revisions draws the revision block above height y, newest on top, and returns the height it reaches. A set
// without revisions has none.
//
//	 /1\  2026-11-20  A.B.
//	/___\ BLOCKS WIDER
func (w *writer) revisions(s *render.Sheet, l layoutOf, y float64) float64 {
	list := w.a.Spec.Project.Revisions
	if len(list) == 0 {
		return y
	}
	list = list[max(0, len(list)-mostRevisions):]
	x, right := l.strip.Min.X, l.strip.Max.X
	for _, r := range list {
		lines := append([]string{r.Date + "  " + r.By}, wrap(r.Text, 2.2, right-x-14, false)...)
		h := math.Max(9, float64(len(lines))*2.2*render.LinePitch+3)
		s.Items = append(s.Items, rule(render.Grid, pt(x, y+h), pt(right, y+h)), render.Stroke{Pen: render.Grid, Path: cloud.Triangle(pt(x+6, y+h/2-0.6), r.Mark)},
			render.Text{Pen: render.Note, At: pt(x+6, y+h/2-0.6), Height: 2.2, Align: render.MiddleCentre, Lines: []string{r.Mark}, Bold: true},
			render.Text{Pen: render.Note, At: pt(x+12, y+h-1.5), Height: 2.2, Align: render.TopLeft, Lines: lines})
		y += h
	}
	s.Items = append(s.Items, render.Text{Pen: render.TitleText, At: pt(x+2, y+1.2), Height: 2, Align: render.BottomLeft, Lines: []string{"REVISIONS"}})
	return y + 4
}

// lastRevision is the mark that the title strip states; 0 for the first issue.
func lastRevision(list []spec.Revision) string {
	if len(list) == 0 {
		return "0"
	}
	return list[len(list)-1].Mark
}
