package geom

import "math"

// Xform is an affine map of the plane:
//
//	x' = A x + B y + C
//	y' = D x + E y + F
//
// The zero value maps every point to the origin; start from Identity.
type Xform struct{ A, B, C, D, E, F float64 }

// Identity returns the map that moves nothing.
func Identity() Xform { return Xform{A: 1, E: 1} }

// Translate returns the displacement by d.
func Translate(d Vec) Xform { return Xform{A: 1, C: d.X, E: 1, F: d.Y} }

// Rotate returns the turn by rad radians, counter-clockwise, about a point. Quarter turns are
// exact: they move a vertical line onto a horizontal one without rounding.
func Rotate(rad float64, about Vec) Xform {
	s, c := sincos(rad)
	return Translate(about.Mul(-1)).Then(Xform{A: c, B: -s, D: s, E: c}).Then(Translate(about))
}

// sincos is math.Sincos with the rounding taken out at whole quarter turns.
func sincos(rad float64) (s, c float64) {
	s, c = math.Sincos(rad)
	const grain = 1e-15
	switch {
	case math.Abs(s) < grain:
		return 0, math.Copysign(1, c)
	case math.Abs(c) < grain:
		return math.Copysign(1, s), 0
	}
	return s, c
}

// Scale returns the enlargement by k about the origin; a negative k also turns by half a circle.
func Scale(k float64) Xform { return Xform{A: k, E: k} }

// Mirror returns the reflection in the line through a and b. The two points must differ: a line
// of no length mirrors nothing and gives Identity.
func Mirror(a, b Vec) Xform {
	u := b.Sub(a).Unit()
	if u == (Vec{}) {
		return Identity()
	}
	p, q := u.X*u.X-u.Y*u.Y, 2*u.X*u.Y
	return Translate(a.Mul(-1)).Then(Xform{A: p, B: q, D: q, E: -p}).Then(Translate(a))
}

// Then returns the map that does x first and next after it.
func (x Xform) Then(next Xform) Xform {
	return Xform{
		A: next.A*x.A + next.B*x.D,
		B: next.A*x.B + next.B*x.E,
		C: next.A*x.C + next.B*x.F + next.C,
		D: next.D*x.A + next.E*x.D,
		E: next.D*x.B + next.E*x.E,
		F: next.D*x.C + next.E*x.F + next.F,
	}
}

// Apply returns the image of the point p.
func (x Xform) Apply(p Vec) Vec {
	return Vec{x.A*p.X + x.B*p.Y + x.C, x.D*p.X + x.E*p.Y + x.F}
}

// Det returns the factor by which areas grow, negative when x mirrors.
func (x Xform) Det() float64 { return x.A*x.E - x.B*x.D }

// Transform returns the image of p under a similarity: a displacement, turn, enlargement, mirror or
// any chain of them. Arcs stay arcs, and turn the other way in a mirror. Under any other map arcs
// come out wrong: flatten the path first.
func (p Path) Transform(x Xform) Path {
	flip := 1.0
	if x.Det() < 0 {
		flip = -1
	}
	q := Path{V: make([]Vertex, len(p.V)), Closed: p.Closed}
	for i, v := range p.V {
		q.V[i] = Vertex{x.Apply(v.Vec), v.Bulge * flip}
	}
	return q
}

// Transform returns the image of r under a similarity, with its outer rings counter-clockwise
// again after a mirror. The limits of Path.Transform hold.
func (r Region) Transform(x Xform) Region {
	if r == nil {
		return nil
	}
	q := make(Region, len(r))
	for i, p := range r {
		q[i] = p.Transform(x)
		if x.Det() < 0 {
			q[i] = q[i].Reverse()
		}
	}
	return q
}

// Move returns p displaced by d.
func (p Path) Move(d Vec) Path { return p.Transform(Translate(d)) }

// Move returns r displaced by d.
func (r Region) Move(d Vec) Region { return r.Transform(Translate(d)) }
