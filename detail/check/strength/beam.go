package strength

import (
	"cmp"
	"math"
	"slices"
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
	pieces   []piece   // of all spans
	rows     []float64 // of the equations
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
func (b beam) solve(a action) bent { return *b.solveIn(&bent{}, a) }

// solveIn is solve into the memory of a result that is done with.
func (b beam) solveIn(r *bent, a action) *bent {
	r.beam = b
	b.segments(r, a)
	r.moment = b.supportMoments(r, a)
	for i := range r.spans[1:len(b.at)] {
		r.spans[i+1].carry(r.moment[i], r.moment[i+1])
	}
	b.bend(r, a)
	r.reaction = sized(r.reaction, len(b.at))
	for i := range b.at {
		_, left := r.spans[i].end()
		r.reaction[i] = r.spans[i+1].startShear() - left + a.nodal(b.at[i])
	}
	return r
}

// segments cuts the beam at its supports and each segment at its point loads. The shear of each piece
// holds, for now, the load at its left end.
func (b beam) segments(r *bent, a action) {
	r.spans = sized(r.spans, len(b.at)+1)
	r.pieces = slices.Grow(r.pieces[:0], len(r.spans)+len(a.points))
	byX := func(p, q point) int { return cmp.Compare(p.x, q.x) }
	if !slices.IsSortedFunc(a.points, byX) {
		a.points = slices.Clone(a.points)
		slices.SortStableFunc(a.points, byX)
	}
	from := 0.0
	for i := range r.spans {
		to := b.length
		if i < len(b.at) {
			to = b.at[i]
		}
		s := &r.spans[i]
		*s = span{x0: from, length: to - from}
		r.pieces = s.cutAt(r.pieces, a, i == 0, i == len(b.at), a.spread[i])
		from = to
	}
}

// within reports whether a point stands strictly between two supports; the free end of an overhang counts
// as inside.
func (p point) within(from, to float64, first, last bool) bool {
	return p.x > from+near && p.x < to-near ||
		first && p.x <= from+near && to-from > near || last && p.x >= to-near && to-from > near
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

// cutAt cuts the span at the points of the action within it, in their order, and appends the pieces to all,
// which has room for them.
func (s *span) cutAt(all []piece, a action, first, last bool, w float64) []piece {
	n := len(all)
	all = append(all, piece{x: s.x0, w: w})
	for _, p := range a.points {
		if !p.within(s.x0, s.x0+s.length, first, last) {
			continue
		}
		x := max(s.x0, min(p.x, s.x0+s.length))
		end := &all[len(all)-1]
		end.l = x - end.x
		all = append(all, piece{x: x, w: w, v: p.p})
	}
	end := &all[len(all)-1]
	end.l = s.x0 + s.length - end.x
	s.pieces = all[n:len(all):len(all)]
	return all
}

// sized returns a slice of length n in the memory of s if it is enough.
func sized[T any](s []T, n int) []T { return slices.Grow(s[:0], n)[:n] }

// supportMoments solves the three-moment equations, one row a support.
func (b beam) supportMoments(r *bent, a action) []float64 {
	n, spans := len(b.at), r.spans
	r.rows = sized(r.rows, 4*n)
	clear(r.rows)
	low, mid, up, rhs := r.rows[:n], r.rows[n:2*n], r.rows[2*n:3*n], r.rows[3*n:]
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
	return tridiagonal(sized(r.moment, n), low, mid, up, rhs)
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

// tridiagonal solves a diagonally dominant system by elimination, into x.
func tridiagonal(x, low, mid, up, rhs []float64) []float64 {
	n := len(rhs)
	for i := 1; i < n; i++ {
		f := low[i] / mid[i-1]
		mid[i] -= f * up[i-1]
		rhs[i] -= f * rhs[i-1]
	}
	for i := n - 1; i >= 0; i-- {
		x[i] = rhs[i]
		if i < n-1 {
			x[i] -= up[i] * x[i+1]
		}
		x[i] /= mid[i]
	}
	return x
}
