package sheet

import (
	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
)

// spot returns a point inside the largest piece of a role, at fractions of its box.
func spot(p view.Picture, role detail.Role, fx, fy float64, match func(view.Piece) bool) (geom.Vec, *detail.Part, bool) {
	var best view.Piece
	area := 0.0
	for _, c := range p.Pieces {
		if c.Part.Role != role || match != nil && !match(c) {
			continue
		}
		if len(c.Lines) > 0 && best.Part == nil {
			best = c
		}
		if a := c.Region.Area(); a > area {
			best, area = c, a
		}
	}
	if best.Part == nil {
		return geom.Vec{}, nil, false
	}
	if len(best.Lines) > 0 {
		l := best.Lines[0]
		return l.V[0].Lerp(l.V[1].Vec, fy), best.Part, true
	}
	return inside(best.Region, fx, fy), best.Part, true
}

// inside returns the point at the fractions of the region's box, or the nearest row's point that
// lies in it.
func inside(r geom.Region, fx, fy float64) geom.Vec {
	b := r.Bounds()
	for _, d := range []float64{0, 0.1, -0.1, 0.2, -0.2, 0.3, -0.3, 0.4, -0.4} {
		q := geom.Vec{X: b.Min.X + fx*b.W(), Y: b.Min.Y + (fy+d)*b.H()}
		if fy+d > 0 && fy+d < 1 && r.Contains(q) {
			return q
		}
	}
	return r.Centroid()
}

// label writes a part: mark, name, size, words.
func (w *writer) label(p *detail.Part, words ...string) string {
	t := p.Mark + " " + p.Name
	if p.Size[0] > 0 && !p.Thin {
		t += " " + w.text(p.Size[0].MM())
		if p.Size[1] > 0 {
			t += " x " + w.text(p.Size[1].MM())
		}
	}
	for _, x := range words {
		if x != "" {
			t += ", " + x
		}
	}
	return caps(t)
}
