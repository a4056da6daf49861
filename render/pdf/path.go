package pdf

import (
	"math"

	"standclear/geom"
)

// arcTol is how far a curve may leave the arc that it stands for, in plotted millimetres. PDF has
// no arcs.
const arcTol = 0.005

// path lays a path down for stroking or filling.
func (p *page) path(path geom.Path) {
	segs := path.Segs()
	if len(segs) == 0 {
		return
	}
	p.f.MoveTo(segs[0].A.X, p.h-segs[0].A.Y)
	for i, s := range segs {
		switch {
		case s.IsArc():
			p.arc(s)
		case path.Closed && i == len(segs)-1: // drawn by closing
		default:
			p.f.LineTo(s.B.X, p.h-s.B.Y)
		}
	}
	if path.Closed {
		p.f.ClosePath()
	}
}

// arc draws an arc as cubic curves. Over an angle a the handles are 4/3 tan(a/4) radii long, along
// the tangents:
//
//	P0 --- C1
//	         `. C2       C1 = P0 + k (P0-c) turned left
//	  c        \|        C2 = P1 - k (P1-c) turned left
//	            P1
func (p *page) arc(s geom.Seg) {
	c, r, _, sweep := s.Arc()
	n := pieces(r, math.Abs(sweep))
	k := 4.0 / 3 * math.Tan(sweep/float64(n)/4)
	from := s.A
	for i := 1; i <= n; i++ {
		to := s.At(float64(i) / float64(n))
		c1 := from.Add(from.Sub(c).Perp().Mul(k))
		c2 := to.Sub(to.Sub(c).Perp().Mul(k))
		p.f.CurveBezierCubicTo(c1.X, p.h-c1.Y, c2.X, p.h-c2.Y, to.X, p.h-to.Y)
		from = to
	}
}

// pieces returns how many curves keep an arc of radius r and the angle sweep within arcTol, none
// more than a quarter turn. A curve over the angle a leaves its arc by 2/27 r sin^6(a/4)/cos^2(a/4).
func pieces(r, sweep float64) int {
	n := max(1, math.Ceil(sweep/(math.Pi/2)-1e-9))
	for ; ; n++ {
		sin, cos := math.Sincos(sweep / n / 4)
		if 2.0/27*r*math.Pow(sin, 6)/(cos*cos) <= arcTol {
			return int(n)
		}
	}
}
