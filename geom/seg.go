package geom

import "math"

// flatRise is the rise of an arc over its chord, in millimetres, below which it counts as a line.
const flatRise = Tol / 10

// Seg is one piece of a path, from A to B: a straight line, or an arc with the bulge of Vertex.
//
//	     ___
//	  ,-'   `-.      Bulge = tan(sweep/4) = rise / half the chord
//	 /         \     drawn: a half circle run clockwise from A,
//	A           B    so Bulge = -1
type Seg struct {
	A, B  Vec
	Bulge float64
}

// IsArc reports whether s is curved by more than can be seen: an arc that rises less than Tol/10
// over its chord is a line.
func (s Seg) IsArc() bool {
	return s.Bulge != 0 && math.Abs(s.Bulge)*s.A.Dist(s.B) > 2*flatRise && math.Abs(s.Bulge) < 1/Tol
}

// Arc returns the circle of an arc, the direction from the centre to A, and the turn from A to B,
// both in radians, counter-clockwise positive. It makes sense only when IsArc reports true.
func (s Seg) Arc() (centre Vec, radius, start, sweep float64) {
	d, b := s.B.Sub(s.A), s.Bulge
	centre = s.A.Lerp(s.B, 0.5).Add(d.Perp().Mul((1 - b*b) / (4 * b)))
	radius = d.Len() * (1 + b*b) / (4 * math.Abs(b))
	out := s.A.Sub(centre)
	return centre, radius, math.Atan2(out.Y, out.X), 4 * math.Atan(b)
}

// Len returns the length in millimetres along the line or arc.
func (s Seg) Len() float64 {
	chord := s.A.Dist(s.B)
	if !s.IsArc() {
		return chord
	}
	half := 2 * math.Atan(s.Bulge)
	return chord * half / math.Sin(half)
}

// At returns the point at the fraction t of the way from A (0) to B (1).
//
// The point is found from the chord, not from the centre: a nearly straight arc, whose centre is
// far away, loses nothing.
func (s Seg) At(t float64) Vec {
	if !s.IsArc() {
		return s.A.Lerp(s.B, t)
	}
	half := 2 * math.Atan(s.Bulge)
	k := math.Sin(half*t) / math.Sin(half)
	sin, cos := math.Sincos(half * (t - 1))
	d := s.B.Sub(s.A).Mul(k)
	return s.A.Add(Vec{d.X*cos - d.Y*sin, d.X*sin + d.Y*cos})
}

// Mid returns the point half way along.
func (s Seg) Mid() Vec { return s.At(0.5) }

// Split returns the two parts of s before and after the fraction t.
func (s Seg) Split(t float64) (before, after Seg) {
	p := s.At(t)
	if !s.IsArc() {
		return Seg{A: s.A, B: p}, Seg{A: p, B: s.B}
	}
	quarter := math.Atan(s.Bulge)
	return Seg{s.A, p, math.Tan(quarter * t)}, Seg{p, s.B, math.Tan(quarter * (1 - t))}
}

// Reverse returns s run from B to A.
func (s Seg) Reverse() Seg { return Seg{s.B, s.A, -s.Bulge} }

// Bounds returns the smallest box that holds s.
func (s Seg) Bounds() Box {
	b := Box{s.A, s.A}.Include(s.B)
	if !s.IsArc() {
		return b
	}
	if s.A.Y == s.B.Y && math.Abs(s.Bulge) == 1 { // half a disc, the commonest
		half := s.B.Sub(s.A).Mul(0.5)
		return b.Include(s.A.Add(half).Add(Vec{Y: -s.Bulge * half.X}))
	}
	c, r, start, sweep := s.Arc()
	for _, a := range quadrants(start, sweep) {
		b = b.Include(Polar(c, r, a))
	}
	return b
}

// quadrants returns the whole quarter turns strictly inside the sweep from start, in the order in
// which they are met: the places where an arc is highest, lowest, leftmost or rightmost.
func quadrants(start, sweep float64) []float64 {
	var as []float64
	const quarter = math.Pi / 2
	if sweep > 0 {
		for k := math.Floor(start/quarter) + 1; k*quarter < start+sweep; k++ {
			as = append(as, k*quarter)
		}
		return as
	}
	for k := math.Ceil(start/quarter) - 1; k*quarter > start+sweep; k-- {
		as = append(as, k*quarter)
	}
	return as
}

// area returns the area of the triangle from the origin to both ends of s, and of what the arc adds
// beyond its chord. Summed round a ring it is the area of the ring, positive when the ring runs
// counter-clockwise.
func (s Seg) area() float64 { return s.A.Cross(s.B)/2 + s.capArea() }

// capArea returns the area between the arc and its chord, positive when the arc turns
// counter-clockwise.
func (s Seg) capArea() float64 {
	if !s.IsArc() {
		return 0
	}
	_, r, _, sweep := s.Arc()
	return r * r / 2 * sweepLessSine(sweep)
}

// sweepLessSine returns a - sin a without loss at small angles.
func sweepLessSine(a float64) float64 {
	if math.Abs(a) > 0.1 {
		return a - math.Sin(a)
	}
	q := a * a
	return a * q / 6 * (1 - q/20*(1-q/42*(1-q/72)))
}

// capCentroid returns the centre of area of what lies between an arc and its chord.
func (s Seg) capCentroid() Vec {
	c, r, start, sweep := s.Arc()
	h := math.Sin(sweep / 2)
	return Polar(c, 4*r*h*h*h/(3*sweepLessSine(sweep)), start+sweep/2)
}
