package sheet

import (
	"fmt"
	"math"

	"standclear/detail/check/strength"
	"standclear/geom"
	"standclear/render"
)

// dowelFigures draws every set of fasteners at its limit, in the reading the verdict rests on.
func (w *writer) dowelFigures(width float64) []figure {
	var out []figure
	for _, d := range w.results.Dowels {
		if !d.Counts || len(d.Beds) == 0 || d.Z == 0 {
			continue
		}
		c, _ := w.choose(0, 2, 5, geom.Vec{X: width, Y: 110}, func(k float64) *composer {
			c := w.composer(k)
			c.noteWidth = 34
			w.dowelLines(c, d)
			c.finish()
			c.title(fmt.Sprint(len(out)+1), "ONE FASTENER AT ITS LIMIT", w.scale(k).Text)
			return c
		})
		out = append(out, figure{"ONE FASTENER AT ITS LIMIT", c})
	}
	return out
}

// dowelLines draws the layers side by side with the fastener through them, inside on the left: what bears,
// which way, where it bends.
func (w *writer) dowelLines(c *composer, d strength.DowelFigure) {
	r := d.Shank.MM() / 2
	half := c.mm(24)
	last := d.Beds[len(d.Beds)-1].To.MM()
	for _, b := range d.Beds {
		x0, x1 := b.From.MM(), b.To.MM()
		pen := render.Visible
		if b.Hold == strength.Void {
			pen = render.Existing
		}
		c.put(render.Stroke{Pen: pen, Path: geom.Rect(x0, -half, x1, half)[0]})
		for _, s := range b.Bears {
			y0, y1 := r, r+c.mm(9*s.Share)
			if s.Up {
				y0, y1 = -y1, -y0
			}
			c.put(render.Fill{Pen: render.Load, Region: geom.Rect(s.From.MM(), y0, s.To.MM(), y1)})
		}
		c.call(either(x0+x1 < last, left, right), geom.Vec{X: (x0 + x1) / 2, Y: half * (0.5 + 0.4*peak((x0+x1)/(2*last)))}, render.Dot, caps(b.Name+" "+w.text(x1-x0)+hold(b.Hold, len(b.Bears))))
	}
	c.put(render.Stroke{Pen: render.CutMain, Path: geom.Rect(-c.mm(3), -r, last+c.mm(3), r)[0]})
	for _, h := range d.Hinges {
		c.put(render.Fill{Pen: render.Status, Region: geom.Circle(geom.Vec{X: h.MM()}, max(r*0.8, c.mm(1.2)))})
	}
	c.object = geom.Box{Min: geom.Vec{X: -c.mm(3), Y: -half}, Max: geom.Vec{X: last + c.mm(3), Y: half}}
	sys := w.a.Spec.Project.System
	about := fmt.Sprintf("%s: P %s BY %s, REFERENCE VALUE Z %s. RED: WOOD BEARING, AT ITS STRENGTH WHERE DEEPEST. DOT: HINGE IN THE STEEL. INSIDE OF THE HOUSE ON THE LEFT.", caps(d.Set), d.Load.Text(sys), caps(d.Governs), d.Z.Text(sys))
	lines := wrap(about, 2.2, max(90, last/c.k), false)
	c.text(render.Note, geom.Vec{X: -c.mm(3), Y: -half - c.mm(3)}, 2.2, render.TopLeft, 0, lines...)
}

// peak rises from 0 at either end to 1 in the middle, so that leaders to the sides do not cross.
func peak(at float64) float64 { return 1 - math.Abs(2*at-1) }

// hold says what a layer does.
func hold(h strength.Hold, bears int) string {
	switch {
	case h == strength.Void:
		return ", COUNTED AS EMPTY"
	case bears == 0:
		return ", BEARS NOTHING"
	}
	return ""
}
