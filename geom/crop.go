package geom

import "math"

// Crop returns the part of s inside a box. A solid that does not lie along the world axes is returned whole,
// and so are bores, which may stick out of what is left.
func (s Solid) Crop(b Box3) Solid {
	u, ok1 := s.span(s.U, b)
	v, ok2 := s.span(s.V, b)
	h, ok3 := s.span(s.W, b)
	if s.Empty() || !ok1 || !ok2 || !ok3 {
		return s
	}
	lo, hi := math.Max(0, h.lo), math.Min(s.Length, h.hi)
	room := Box{Min: Vec{u.lo, v.lo}, Max: Vec{u.hi, v.hi}}
	if lo >= hi || room.Empty() {
		return Solid{}
	}
	if p := s.Profile.Bounds(); !room.Holds(p.Min) || !room.Holds(p.Max) {
		s.Profile = s.Profile.Clip(room)
	}
	s.O, s.Length = s.O.Add(s.W.Mul(lo)), hi-lo
	return s
}

// span returns from where to where the box reaches along d, one of the directions of s, counted from its
// origin; not ok when d does not lie along a world axis.
func (s Solid) span(d Vec3, b Box3) (span, bool) {
	for _, a := range [3]Axis{X, Y, Z} {
		k := d.Dot(a.Unit())
		if math.Abs(k) < 1-square {
			continue
		}
		p, q := b.Min.Sub(s.O).Dot(d), b.Max.Sub(s.O).Dot(d)
		return span{math.Min(p, q), math.Max(p, q)}, true
	}
	return span{}, false
}
