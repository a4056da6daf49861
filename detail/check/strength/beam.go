package strength

import (
	"math"
	"sort"
)

// beam is a straight beam on rigid supports, overhanging the outer ones; inches and pounds.
//
//	x=0   at[0]      at[1]        at[2]  length
//	 |-----^----------^------------^-------|
//	 seg 0    seg 1       seg 2      seg 3
type beam struct {
	length float64
	at     []float64 // rising, two at least
	cut    []bool    // per support: the beam is spliced over it and passes no moment
	ei     float64   // lb in2
}

// point is a downward force at x.
type point struct{ x, p float64 }

// action is what acts on a beam: one uniform load per segment, points anywhere, and how far each
// support stands above the line, nil for not at all.
type action struct {
	spread []float64 // lb/in, downward, len(at)+1
	points []point
	lift   []float64 // in
}

// bent is a beam under an action, exact: polynomials between loads.
type bent struct {
	beam
	moment   []float64 // at the supports, sagging positive
	reaction []float64 // upward
	spans    []span    // segments from left to right; overhangs may be of no length
}

// span is one segment in pieces between point loads.
type span struct {
	x0, length float64
	pieces     []piece
}

// piece is a stretch under uniform load w: x, shear, moment, slope and deflection (down positive) at
// its left end.
type piece struct{ x, l, w, v, m, slope, y float64 }

// near is how close in inches a point counts as on a support.
const near = 1e-6

// solve returns the beam under a by the three-moment equation, with support movement.
func (b beam) solve(a action) bent {
	r := bent{beam: b, spans: b.segments(a)}
	r.moment = b.supportMoments(r.spans, a)
	for i := range r.spans[1:len(b.at)] {
		r.spans[i+1].carry(r.moment[i], r.moment[i+1])
	}
	b.bend(&r, a)
	r.reaction = make([]float64, len(b.at))
	for i := range b.at {
		_, left := r.spans[i].end()
		r.reaction[i] = r.spans[i+1].startShear() - left + a.nodal(b.at[i])
	}
	return r
}

// segments cuts the beam at its supports and each segment at its point loads. The shear of each piece
// holds, for now, the load at its left end.
func (b beam) segments(a action) []span {
	ends := append(append([]float64{0}, b.at...), b.length)
	out := make([]span, len(b.at)+1)
	for i := range out {
		out[i] = span{x0: ends[i], length: ends[i+1] - ends[i]}
		out[i].cutAt(a.within(ends[i], ends[i+1], i == 0, i == len(b.at)), a.spread[i])
	}
	return out
}

// within returns the points strictly between two supports, by x; the free end of an overhang counts
// as inside.
func (a action) within(from, to float64, first, last bool) []point {
	var in []point
	for _, p := range a.points {
		inside := p.x > from+near && p.x < to-near
		inside = inside || first && p.x <= from+near && to-from > near || last && p.x >= to-near && to-from > near
		if inside {
			in = append(in, p)
		}
	}
	sort.SliceStable(in, func(i, j int) bool { return in[i].x < in[j].x })
	return in
}

// nodal returns the force that stands straight on a support at x.
func (a action) nodal(x float64) float64 {
	sum := 0.0
	for _, p := range a.points {
		if math.Abs(p.x-x) <= near {
			sum += p.p
		}
	}
	return sum
}

func (s *span) cutAt(points []point, w float64) {
	s.pieces = []piece{{x: s.x0, w: w}}
	for _, p := range points {
		x := math.Max(s.x0, math.Min(p.x, s.x0+s.length))
		s.pieces[len(s.pieces)-1].l = x - s.pieces[len(s.pieces)-1].x
		s.pieces = append(s.pieces, piece{x: x, w: w, v: p.p})
	}
	last := &s.pieces[len(s.pieces)-1]
	last.l = s.x0 + s.length - last.x
}

// supportMoments solves the three-moment equations, one row a support.
func (b beam) supportMoments(spans []span, a action) []float64 {
	n := len(b.at)
	low, mid, up, rhs := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range b.at {
		mid[i] = 1
		switch {
		case i == 0:
			rhs[i] = spans[0].hogging(b.at[0])
		case i == n-1:
			rhs[i] = spans[n].hogging(b.at[n-1])
		case b.cut[i]:
			rhs[i] = 0
		default:
			l1, l2 := spans[i].length, spans[i+1].length
			low[i], mid[i], up[i] = l1, 2*(l1+l2), l2
			rhs[i] = -spans[i].area(false) - spans[i+1].area(true) - 6*b.ei*a.kink(i, l1, l2)
		}
	}
	return tridiagonal(low, mid, up, rhs)
}

// hogging returns the moment an overhang puts on its support at x.
func (s span) hogging(x float64) float64 {
	m := 0.0
	for _, p := range s.pieces {
		m -= p.v*math.Abs(p.x-x) + p.w*p.l*math.Abs(p.x+p.l/2-x)
	}
	return m
}

// area returns 6 A a/L of the simple-span moment diagram about the right end of the span, or about its
// left end when fromRight.
func (s span) area(fromRight bool) float64 {
	sum := s.pieces[0].w * s.length * s.length * s.length / 4
	for _, p := range s.pieces {
		a := p.x - s.x0
		if fromRight {
			a = s.length - a
		}
		sum += p.v * a * (s.length*s.length - a*a) / s.length
	}
	return sum
}

// kink is the change of slope the supports themselves make at support i; deflection is down positive.
func (a action) kink(i int, l1, l2 float64) float64 {
	if a.lift == nil {
		return 0
	}
	y := func(k int) float64 { return -a.lift[k] }
	return (y(i-1)-y(i))/l1 + (y(i+1)-y(i))/l2
}

// tridiagonal solves a diagonally dominant system by elimination.
func tridiagonal(low, mid, up, rhs []float64) []float64 {
	n := len(rhs)
	for i := 1; i < n; i++ {
		f := low[i] / mid[i-1]
		mid[i] -= f * up[i-1]
		rhs[i] -= f * rhs[i-1]
	}
	x := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		x[i] = rhs[i]
		if i < n-1 {
			x[i] -= up[i] * x[i+1]
		}
		x[i] /= mid[i]
	}
	return x
}
