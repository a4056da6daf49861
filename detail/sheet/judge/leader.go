package judge

import (
	"math"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// graze is how far a line must run past another to cross it, mm: lines that end on each other meet.
const graze = 0.1

// of returns the pieces of annotation of one use, in painting order.
func (p *page) of(u render.Use) []stroke {
	var out []stroke
	for _, l := range p.lines {
		if l.line.Use == u && strings.HasPrefix(l.line.Pen.Def().Layer, "ANNO-") { // arrows of water and force are none
			out = append(out, l)
		}
	}
	return out
}

// crosses reports where two straight lines cross, each running on past the other on both sides, or lie
// along each other for a stretch.
func crosses(a, b, p, q geom.Vec) (geom.Vec, bool) {
	d, e := b.Sub(a), q.Sub(p)
	la, lb := d.Len(), e.Len()
	if la < graze || lb < graze {
		return geom.Vec{}, false
	}
	det := d.Cross(e)
	if math.Abs(det) < 1e-6*la*lb {
		return along(a, b, p, q)
	}
	t, u := p.Sub(a).Cross(e)/det, p.Sub(a).Cross(d)/det
	if t*la < graze || (1-t)*la < graze || u*lb < graze || (1-u)*lb < graze {
		return geom.Vec{}, false
	}
	return a.Lerp(b, t), true
}

// along reports where two parallel lines lie on each other.
func along(a, b, p, q geom.Vec) (geom.Vec, bool) {
	const stretch = 1.0
	u := b.Sub(a).Unit()
	if math.Abs(p.Sub(a).Cross(u)) > 0.05 {
		return geom.Vec{}, false
	}
	lo, hi := p.Sub(a).Dot(u), q.Sub(a).Dot(u)
	if lo > hi {
		lo, hi = hi, lo
	}
	lo, hi = math.Max(lo, 0), math.Min(hi, a.Dist(b))
	return a.Add(u.Mul((lo + hi) / 2)), hi-lo > stretch
}

// leadersCross is L5.
func leadersCross(p *page) {
	all := p.of(render.LeaderLine)
	for i, a := range all {
		for _, b := range all[i+1:] {
			if a.order == b.order {
				continue // the two legs of one
			}
			if at, ok := crosses(a.a, a.b, b.a, b.b); ok {
				p.fail("L5", at, p.textsOf(a, b), "two leaders cross")
			}
		}
	}
}

// throughDimension is L6.
func throughDimension(p *page) {
	dims := p.of(render.DimensionLine)
	for _, l := range append(p.of(render.LeaderLine), p.of(render.ExtensionLine)...) {
		for _, d := range dims {
			at, ok := crosses(l.a, l.b, d.a, d.b)
			if !ok || l.order == d.order {
				continue
			}
			if l.line.Use == render.LeaderLine {
				p.fail("L6", at, append(p.textsOf(l), p.near(at)), "a leader crosses a dimension line")
			} else {
				p.fail("L6", at, []string{p.near(at)}, "an extension line crosses a dimension line")
			}
		}
	}
}

// textsOf names leaders by the texts at their ends.
func (p *page) textsOf(ls ...stroke) []string {
	var out []string
	for _, l := range ls {
		end := l.b
		for _, o := range p.lines {
			if o.order == l.order {
				end = o.b
			}
		}
		out = append(out, p.near(end))
	}
	return out
}

// near is the text next to a point.
func (p *page) near(at geom.Vec) string {
	best, d := "", math.Inf(1)
	for _, t := range p.texts {
		q := t.own(at)
		dx, dy := math.Max(0, math.Max(-q.X, q.X-t.width)), math.Max(0, math.Max(-q.Y, q.Y-t.Height))
		if v := math.Hypot(dx, dy); v < d {
			best, d = t.Text, v
		}
	}
	return best
}
