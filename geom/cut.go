package geom

import "math"

// ChordTol is how far in millimetres chords may stray from the arcs they stand for where an exact curve
// would be an ellipse: in a slanting cut, and in a slanting view.
const ChordTol = 0.01

// square is the cosine under which two directions count as being at right angles.
const square = 1e-9

// Cut returns the section of s by the plane of v, in the coordinates of v. It is exact when the plane is
// parallel to the direction in which the solid was drawn (rectangles) or at right angles to it (the
// profile, arcs as arcs). A slanting cut is exact too for straight-sided profiles; arcs are followed by
// chords within ChordTol.
//
// Where the plane lies in a face the rule is half-open: the section shows the material directly behind
// the plane. So a solid with its front face in the plane is cut, and one that only touches the plane
// with its back face is not; of two solids that touch in the plane just one is cut.
//
//	      viewer
//	  ____ ____          the plane between A and B cuts B only: A lies wholly in front
//	 | A  |
//	-+----+---- plane
//	 | B  |
//	 |____|
func (s Solid) Cut(v View) Region {
	r := s.cutBody(v)
	if r.Empty() || len(s.Bores) == 0 {
		return r
	}
	return subtractInside(r, s.cutBores(v))
}

// cutBores returns the sections of the bores of s.
func (s Solid) cutBores(v View) []Region {
	var holes []Region
	for _, b := range s.Bores {
		if h := b.cutBody(v); !h.Empty() {
			holes = append(holes, h)
		}
	}
	return holes
}

// subtractInside is Subtract, quick where the holes cannot need cutting: a rectangle with plain holes
// well apart.
func subtractInside(r Region, holes []Region) Region {
	if len(holes) == 0 {
		return r
	}
	box, plain := r.Bounds(), len(r) == 1 && isRect(r[0])
	var free []Box
	out := r
	for _, h := range holes {
		b := h.Bounds().Grow(1e3 * Tol)
		if !box.Overlaps(b) {
			continue
		}
		plain = plain && len(h) == 1 && box.Holds(b.Min) && box.Holds(b.Max)
		for _, f := range free {
			plain = plain && !f.Overlaps(b)
		}
		if !plain {
			return Subtract(r, holes...)
		}
		free = append(free, b)
		out = append(out[:len(out):len(out)], h[0].Reverse())
	}
	return out
}

// isRect reports whether p is a rectangle along the axes of its plane.
func isRect(p Path) bool {
	if len(p.V) != 4 {
		return false
	}
	b := p.Bounds()
	for i, v := range p.V {
		w := p.V[(i+1)%4]
		if v.Bulge != 0 || v.X != w.X && v.Y != w.Y || v.Vec == w.Vec {
			return false
		}
	}
	return p.Area() > 0 && math.Abs(p.Area()-b.W()*b.H()) <= 1e-9*(1+p.Area())
}

// cutBody returns the section of s without regard to its bores.
func (s Solid) cutBody(v View) Region {
	if s.Empty() {
		return nil
	}
	switch {
	case s.W.Cross(v.N).Len() < square:
		return s.cutAcross(v)
	case math.Abs(s.W.Dot(v.N)) < square:
		return s.cutAlong(v)
	}
	return s.cutSlanting(v)
}

// cutAcross is the cut at right angles to the direction of the solid.
func (s Solid) cutAcross(v View) Region {
	h := v.O.Sub(s.O).Dot(s.W)
	lo, hi := h, s.Length-h // how far the ends lie beyond the plane, along W
	if s.W.Dot(v.N) < 0 {
		lo, hi = hi, lo
	}
	// lo is now what lies behind the plane, hi what lies in front of it.
	if lo <= Tol || hi < -Tol {
		return nil
	}
	return s.Profile.Transform(v.map2(View{O: s.O, U: s.U, V: s.V}))
}

// cutAlong is the cut parallel to the direction of the solid: one rectangle for each stretch in which
// the plane meets the profile.
func (s Solid) cutAlong(v View) Region {
	// Turn the profile so that the plane is the level line y = 0 and the viewer looks down on it.
	n := Vec{s.U.Dot(v.N), s.V.Dot(v.N)}.Unit()
	o, _ := s.local(v.O)
	turn := Xform{A: n.Y, B: -n.X, D: n.X, E: n.Y}
	turn.C, turn.F = -(turn.A*o.X + turn.B*o.Y), -(turn.D*o.X + turn.E*o.Y)
	along := s.U.Mul(n.Y).Sub(s.V.Mul(n.X)) // the level line in space
	start, _ := v.To(v.O.Sub(s.W.Mul(v.O.Sub(s.O).Dot(s.W))))
	a, w := Vec{along.Dot(v.U), along.Dot(v.V)}, Vec{s.W.Dot(v.U), s.W.Dot(v.V)}
	var r Region
	for _, t := range s.Profile.scanTurned(turn) {
		p, q := start.Add(a.Mul(t.lo)), start.Add(a.Mul(t.hi))
		r = append(r, outward(Polygon(p, q, q.Add(w.Mul(s.Length)), p.Add(w.Mul(s.Length)))))
	}
	return r
}

// scanTurned returns the stretches of the level line y = 0 just under which r lies when it is turned.
func (r Region) scanTurned(turn Xform) spans {
	var buf [8]crossing
	cs := buf[:0]
	for _, p := range r {
		p.Closed = true
		for i := range p.V {
			s, ok := p.seg(i)
			if s.Bulge != 0 || !p.finite() {
				return newOutline(r.Transform(turn)).scan(0, under)
			}
			if ok {
				cs = curve{a: turn.Apply(s.A), b: turn.Apply(s.B)}.cross(0, under, cs)
			}
		}
	}
	return inside(cs)
}

// outward returns a ring run counter-clockwise.
func outward(p Path) Path {
	if p.Area() < 0 {
		return p.Reverse()
	}
	return p
}

// cutSlanting cuts the profile down to the strip in which the plane passes between the ends of the
// solid, and shows that as the plane sees it.
func (s Solid) cutSlanting(v View) Region {
	// On the plane the height is h = h0 + g . p over the profile point p.
	k := s.W.Dot(v.N)
	h0, g := v.O.Sub(s.O).Dot(v.N)/k, Vec{-s.U.Dot(v.N) / k, -s.V.Dot(v.N) / k}
	flat := s.Profile.Flatten(ChordTol)
	strip := stripBetween(flat.Bounds(), g, h0, s.Length)
	r := Intersect(flat, strip)
	// The point p of the profile is seen at the image of O + p + h W.
	o, _ := v.To(s.O.Add(s.W.Mul(h0)))
	u, w := s.U.Add(s.W.Mul(g.X)), s.V.Add(s.W.Mul(g.Y))
	x := Xform{A: u.Dot(v.U), B: w.Dot(v.U), C: o.X, D: u.Dot(v.V), E: w.Dot(v.V), F: o.Y}
	return r.Transform(x)
}

// stripBetween returns the part of the plane, as large as box needs, where 0 <= h0 + g.p <= length.
func stripBetween(box Box, g Vec, h0, length float64) Region {
	c, reach := box.Center(), box.W()+box.H()+1
	u, slope := g.Unit(), g.Len()
	at := h0 + g.Dot(c) // the height at the middle of the box
	lo, hi := math.Max(-at/slope, -reach), math.Min((length-at)/slope, reach)
	if lo >= hi {
		return nil
	}
	side := u.Perp().Mul(reach)
	p, q := c.Add(u.Mul(lo)), c.Add(u.Mul(hi))
	return Region{Polygon(p.Sub(side), q.Sub(side), q.Add(side), p.Add(side))}
}
