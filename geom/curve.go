package geom

import "math"

// curve is a Seg made ready for reckoning: its circle is worked out once. It is a line when turn
// is 0, an arc about c run counter-clockwise when turn is +1 and clockwise when it is -1.
type curve struct {
	a, b    Vec
	c       Vec
	r, turn float64
}

// curve returns s with its circle worked out.
func (s Seg) curve() curve {
	if !s.IsArc() {
		return curve{a: s.A, b: s.B}
	}
	c, r, _, sweep := s.Arc()
	return curve{s.A, s.B, c, r, math.Copysign(1, sweep)}
}

// curves returns the pieces of p that have length.
func (p Path) curves() []curve {
	ks := make([]curve, 0, len(p.V))
	for i := range p.V {
		if s, ok := p.seg(i); ok && s.A != s.B {
			ks = append(ks, s.curve())
		}
	}
	return ks
}

// seg returns k as a Seg.
func (k curve) seg() Seg {
	if k.turn == 0 {
		return Seg{A: k.a, B: k.b}
	}
	return Seg{k.a, k.b, k.turn * math.Tan(k.sweep()/4)}
}

func (k curve) reverse() curve {
	k.a, k.b, k.turn = k.b, k.a, -k.turn
	return k
}

// sweep returns the angle run through by an arc, always positive, radians.
func (k curve) sweep() float64 {
	p, q := k.a.Sub(k.c), k.b.Sub(k.c)
	a := k.turn * math.Atan2(p.Cross(q), p.Dot(q))
	if a < 0 {
		a += 2 * math.Pi
	}
	return a
}

// length returns the length in millimetres.
func (k curve) length() float64 {
	if k.turn == 0 {
		return k.a.Dist(k.b)
	}
	return k.r * k.sweep()
}

// at returns the point at the fraction t.
func (k curve) at(t float64) Vec {
	switch {
	case t == 0:
		return k.a
	case t == 1:
		return k.b
	case k.turn == 0:
		return k.a.Lerp(k.b, t)
	}
	sin, cos := math.Sincos(k.turn * k.sweep() * t)
	p := k.a.Sub(k.c)
	return Vec{k.c.X + p.X*cos - p.Y*sin, k.c.Y + p.X*sin + p.Y*cos}
}

// fraction is the inverse of at for a point on the curve. Beyond the ends it is below 0 or above
// 1; on the unused part of a circle the nearer end decides.
func (k curve) fraction(p Vec) float64 {
	if k.turn == 0 {
		d := k.b.Sub(k.a)
		return p.Sub(k.a).Dot(d) / d.Dot(d)
	}
	from, to, all := k.a.Sub(k.c), p.Sub(k.c), k.sweep()
	a := k.turn * math.Atan2(from.Cross(to), from.Dot(to))
	if a < 0 && -a > (2*math.Pi-all)/2 {
		a += 2 * math.Pi
	}
	if a > all && a-all > (2*math.Pi-all)/2 {
		a -= 2 * math.Pi
	}
	return a / all
}

// part returns the stretch of k between two fractions.
func (k curve) part(t0, t1 float64) curve {
	k.a, k.b = k.at(t0), k.at(t1)
	return k
}

// has reports whether p lies on k, its ends included, within Tol.
func (k curve) has(p Vec) bool { return k.within(p, Tol) }

// within reports whether p lies within tol of k.
func (k curve) within(p Vec, tol float64) bool {
	if k.turn == 0 {
		d := k.b.Sub(k.a)
		l := d.Len()
		if l == 0 {
			return p.Dist(k.a) <= tol
		}
		q := p.Sub(k.a)
		along := q.Dot(d) / l
		return math.Abs(q.Cross(d)) <= tol*l && along >= -tol && along <= l+tol
	}
	if math.Abs(p.Dist(k.c)-k.r) > tol {
		return false
	}
	t, slack := k.fraction(p), tol/k.length()
	return t >= -slack && t <= 1+slack
}

// box returns the smallest box that holds k.
func (k curve) box() Box {
	b := Box{k.a, k.a}.Include(k.b)
	if k.turn == 0 {
		return b
	}
	p := k.a.Sub(k.c)
	for _, a := range quadrants(math.Atan2(p.Y, p.X), k.turn*k.sweep()) {
		b = b.Include(Polar(k.c, k.r, a))
	}
	return b
}

// monotone returns k cut where it is highest and lowest and, when both is set, also where it is
// leftmost and rightmost, so that each piece runs one way only.
func (k curve) monotone(both bool) []curve {
	if k.turn == 0 {
		return []curve{k}
	}
	p := k.a.Sub(k.c)
	var ks []curve
	for _, a := range quadrants(math.Atan2(p.Y, p.X), k.turn*k.sweep()) {
		s, c := sincos(a)
		if !both && math.Abs(s) < 0.5 {
			continue
		}
		q := Vec{k.c.X + k.r*c, k.c.Y + k.r*s}
		if q.Near(k.a) || q.Near(k.b) {
			continue
		}
		first := k
		first.b, k.a = q, q
		ks = append(ks, first)
	}
	return append(ks, k)
}

// heading returns the direction in which k leaves its start, as seen over the distance d from it,
// radians. Two curves that leave along one tangent are told apart by it.
func (k curve) heading(d float64) float64 {
	if k.turn == 0 {
		v := k.b.Sub(k.a)
		return math.Atan2(v.Y, v.X)
	}
	v := k.a.Sub(k.c).Perp().Mul(k.turn)
	return math.Atan2(v.Y, v.X) + k.turn*math.Asin(math.Min(1, d/(2*k.r)))
}

// crossings returns the n points where the whole lines and circles of k and o cross or touch.
func (k curve) crossings(o curve) (ps [2]Vec, n int) {
	switch {
	case k.turn == 0 && o.turn == 0:
		return lineMeetsLine(k, o)
	case k.turn == 0:
		return lineMeetsCircle(k.a, k.b, o.c, o.r)
	case o.turn == 0:
		return lineMeetsCircle(o.a, o.b, k.c, k.r)
	}
	return circleMeetsCircle(k.c, k.r, o.c, o.r)
}

// meet appends to out the points where k and o cross or touch, within Tol. Curves that lie along
// one another give none: their ends tell where they part.
func (k curve) meet(o curve, out []Vec) []Vec {
	ps, n := k.crossings(o)
	for _, p := range ps[:n] {
		if k.has(p) && o.has(p) {
			out = append(out, p)
		}
	}
	return out
}

// parallel is the sine of the angle under which two lines never count as crossing.
const parallel = 1e-12

func lineMeetsLine(k, o curve) (ps [2]Vec, n int) {
	d, e := k.b.Sub(k.a), o.b.Sub(o.a)
	den := d.Cross(e)
	if math.Abs(den) <= parallel*d.Len()*e.Len() {
		return ps, 0
	}
	ps[0] = k.a.Add(d.Mul(o.a.Sub(k.a).Cross(e) / den))
	return ps, 1
}

func lineMeetsCircle(a, b, c Vec, r float64) (ps [2]Vec, n int) {
	u := b.Sub(a).Unit()
	foot := a.Add(u.Mul(c.Sub(a).Dot(u)))
	h := foot.Dist(c)
	if h > r+Tol {
		return ps, 0
	}
	half := math.Sqrt(math.Max(0, (r-h)*(r+h)))
	if half < Tol && r-h < Tol/2 { // else a circle so small that the foot is not on it
		return [2]Vec{foot}, 1
	}
	return [2]Vec{foot.Sub(u.Mul(half)), foot.Add(u.Mul(half))}, 2
}

func circleMeetsCircle(c1 Vec, r1 float64, c2 Vec, r2 float64) (ps [2]Vec, n int) {
	d := c1.Dist(c2)
	switch {
	case d <= Tol && math.Abs(r1-r2) <= Tol, d == 0:
		return ps, 0
	case d > r1+r2+Tol, d < math.Abs(r1-r2)-Tol:
		return ps, 0
	}
	u := c2.Sub(c1).Mul(1 / d)
	a := (d + (r1-r2)*(r1+r2)/d) / 2
	half := math.Sqrt(math.Max(0, (r1-a)*(r1+a)))
	if half < Tol && r1-math.Abs(a) < Tol/2 {
		return [2]Vec{c1.Add(u.Mul(math.Copysign(r1, a)))}, 1
	}
	foot := c1.Add(u.Mul(a))
	return [2]Vec{foot.Sub(u.Perp().Mul(half)), foot.Add(u.Perp().Mul(half))}, 2
}
