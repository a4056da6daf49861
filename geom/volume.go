package geom

import (
	"math"
	"slices"
)

// Volume returns the volume in cubic millimetres: the body less its bores, each counted only where it
// lies in the body.
//
// It is exact to rounding when the bores do not cross each other and every bore is parallel to the body
// or at right angles to it, as a round hole through a box is, whether or not it sticks out. Bores that
// cross, or run at a slant, are reckoned by adding up cross sections: the result is then good to about
// one part in a million of the volume bored out, and to ChordTol for slanting round bores.
func (s Solid) Volume() float64 {
	if s.Empty() {
		return 0
	}
	whole := s.Profile.Area() * s.Length
	if s.boresApart() {
		for _, b := range s.Bores {
			whole -= s.common(b)
		}
		return whole
	}
	return s.sumOfSections()
}

// boresApart reports whether every bore is square to the body and no two may cross.
func (s Solid) boresApart() bool {
	box := s.Bounds()
	for i, b := range s.Bores {
		if b.Empty() {
			continue
		}
		if c := math.Abs(b.W.Dot(s.W)); c > square && b.W.Cross(s.W).Len() > square {
			return false
		}
		for _, o := range s.Bores[:i] {
			if crossIn(box, b, o) {
				return false
			}
		}
	}
	return true
}

// crossIn reports whether two bores may share volume inside a box.
func crossIn(box Box3, a, b Solid) bool {
	if a.Empty() || b.Empty() {
		return false
	}
	ab, bb := a.Bounds(), b.Bounds()
	if !ab.Overlaps(bb) || !ab.Overlaps(box) || !bb.Overlaps(box) {
		return false
	}
	if a.W.Cross(b.W).Len() < square {
		return a.common(b) > minRing
	}
	return true
}

// common returns the volume that two bodies, parallel or at right angles to each other, have in common.
func (s Solid) common(b Solid) float64 {
	if s.Empty() || b.Empty() {
		return 0
	}
	if s.W.Cross(b.W).Len() < square {
		_, h0 := s.local(b.O)
		h1 := h0 + b.Length*b.W.Dot(s.W)
		deep := math.Min(math.Max(h0, h1), s.Length) - math.Max(math.Min(h0, h1), 0)
		if deep <= 0 {
			return 0
		}
		other := b.Profile.Transform(View{O: s.O, U: s.U, V: s.V}.map2(View{O: b.O, U: b.U, V: b.V}))
		return Intersect(s.Profile, other).Area() * deep
	}
	return crossed(s, b)
}

// crossed returns the common volume of two bodies at right angles. In the plane of both directions, at
// the distance y across it, each body is a set of strips, and the strips share rectangles:
//
//	     |  b  |
//	  ___|_____|___      area = (width of s along b.W) x (width of b along s.W)
//	s ___|_____|___
//	     |     |
func crossed(s, b Solid) float64 {
	n := s.W.Cross(b.W)
	so, bo := s.endOn(b.W, n), b.endOn(s.W, n)
	ss, bs := b.reach(), s.reach() // what limits the strips of s, and those of b
	return integrate(append(levels(so, ss), levels(bo, bs)...), 1e-12*s.body().Volume(), func(y float64) float64 {
		w := so.scan(y, above).common(spans{ss}, 0).total()
		if w == 0 {
			return 0
		}
		return w * bo.scan(y, above).common(spans{bs}, 0).total()
	})
}

// endOn returns the profile of s measured from the world's origin along two directions in its plane.
func (s Solid) endOn(x, y Vec3) *outline {
	return newOutline(s.Profile.Transform(Xform{
		A: s.U.Dot(x), B: s.V.Dot(x), C: s.O.Dot(x),
		D: s.U.Dot(y), E: s.V.Dot(y), F: s.O.Dot(y),
	}))
}

// reach returns from where to where s extends along its own direction, from the world's origin.
func (s Solid) reach() span {
	h := s.O.Dot(s.W)
	return span{h, h + s.Length}
}

// levels returns the heights at which the width of an outline between two upright limits may change its
// law.
func levels(o *outline, limits span) []float64 {
	var ys []float64
	var meets []Vec
	for _, k := range o.ks {
		ys = append(ys, k.a.Y, k.b.Y)
		for _, x := range [2]float64{limits.lo, limits.hi} {
			post := curve{a: Vec{x, o.box.Min.Y - 1}, b: Vec{x, o.box.Max.Y + 1}}
			for _, p := range k.meet(post, meets[:0]) {
				ys = append(ys, p.Y)
			}
		}
	}
	return ys
}

// sumOfSections adds up the cross sections of s along its direction.
func (s Solid) sumOfSections() float64 {
	hs := []float64{0, s.Length}
	for _, b := range s.Bores {
		for _, h := range b.heights(s) {
			if h > 0 && h < s.Length {
				hs = append(hs, h)
			}
		}
	}
	plane := View{O: s.O, U: s.U, V: s.V, N: s.W}
	return integrate(hs, 1e-8*s.body().Volume(), func(h float64) float64 {
		plane.O = s.at(Vec{}, h)
		return s.Cut(plane).Area()
	})
}

// heights returns the heights over the profile of s at which the section of b may change its law.
func (b Solid) heights(s Solid) []float64 {
	if b.Empty() {
		return nil
	}
	_, h0 := s.local(b.O)
	rise := b.Length * b.W.Dot(s.W)
	g := Vec{b.U.Dot(s.W), b.V.Dot(s.W)}
	u, steep := g.Unit(), g.Len()
	if steep < square {
		return []float64{h0, h0 + rise}
	}
	var hs []float64
	for _, k := range b.Profile.curves() { // where its edges go in and out of the body
		for _, l := range [3]line3{
			{b.at(k.a, 0), b.at(k.a, b.Length)},
			{b.at(k.a, 0), b.at(k.b, 0)},
			{b.at(k.a, b.Length), b.at(k.b, b.Length)},
		} {
			for _, t := range s.inside(l) {
				_, lo := s.local(l.at(t.lo))
				_, hi := s.local(l.at(t.hi))
				hs = append(hs, lo, hi)
			}
		}
	}
	turned := b.Profile.Transform(Xform{A: u.Y, B: -u.X, D: u.X, E: u.Y}) // up is now along g
	for _, k := range newOutline(turned).ks {
		h := h0 + k.a.Y*steep
		hs = append(hs, h, h+rise)
	}
	return hs
}

// integrate returns the integral of f between the least and the greatest break, to about tol for each
// interval between breaks. There f may have corners, and start and end like a square root, as the width
// of a circle does: each interval is run through as a sine, which makes such ends smooth.
func integrate(breaks []float64, tol float64, f func(float64) float64) float64 {
	slices.Sort(breaks)
	q := quadrature{tol: tol}
	q.nodes, q.weights = gauss(16)
	var sum float64
	for i := 1; i < len(breaks); i++ {
		mid, half := (breaks[i-1]+breaks[i])/2, (breaks[i]-breaks[i-1])/2
		if half <= Tol {
			continue
		}
		q.f = func(s float64) float64 {
			sin, cos := math.Sincos(math.Pi / 2 * s)
			return half * math.Pi / 2 * cos * f(mid+half*sin)
		}
		sum += q.refine(-1, 1, q.panel(-1, 1), 6)
	}
	return sum
}

// quadrature integrates by Gauss-Legendre in panels, halving a panel until its halves agree with it.
type quadrature struct {
	f              func(float64) float64
	nodes, weights []float64
	tol            float64
}

func (q *quadrature) panel(lo, hi float64) float64 {
	var sum float64
	for i, x := range q.nodes {
		sum += q.weights[i] * q.f((lo+hi)/2+(hi-lo)/2*x)
	}
	return sum * (hi - lo) / 2
}

func (q *quadrature) refine(lo, hi, whole float64, depth int) float64 {
	mid := (lo + hi) / 2
	a, b := q.panel(lo, mid), q.panel(mid, hi)
	if depth == 0 || math.Abs(a+b-whole) <= q.tol {
		return a + b
	}
	return q.refine(lo, mid, a, depth-1) + q.refine(mid, hi, b, depth-1)
}

// gauss returns the n nodes and weights of Gauss-Legendre integration over -1 to 1: the roots of the
// Legendre polynomial of degree n, found by Newton's method, and 2 / ((1-x^2) p'(x)^2).
func gauss(n int) (nodes, weights []float64) {
	for i := range n {
		x := math.Cos(math.Pi * (float64(i) + 0.75) / (float64(n) + 0.5))
		var slope float64
		for range 6 {
			p, before := 1.0, 0.0
			for k := 1; k <= n; k++ {
				p, before = ((2*float64(k)-1)*x*p-(float64(k)-1)*before)/float64(k), p
			}
			slope = float64(n) * (x*p - before) / (x*x - 1)
			x -= p / slope
		}
		nodes = append(nodes, x)
		weights = append(weights, 2/((1-x*x)*slope*slope))
	}
	return nodes, weights
}
