package geom

import "math"

// Within returns what of s lies in the box, with its bores: nothing, one solid, or one for each part that
// the box leaves of the profile. Only solids that lie along the world axes are cut; others come back whole.
func (s Solid) Within(b Box3) []Solid {
	u, ok1 := rangeAlong(s.O, s.U, b)
	v, ok2 := rangeAlong(s.O, s.V, b)
	w, ok3 := rangeAlong(s.O, s.W, b)
	if !ok1 || !ok2 || !ok3 {
		return []Solid{s}
	}
	from, to := math.Max(0, w[0]), math.Min(s.Length, w[1])
	if !(to-from > Tol) {
		return nil
	}
	var out []Solid
	for _, r := range s.Profile.Clip(Box{Vec{u[0], v[0]}, Vec{u[1], v[1]}}).Parts() {
		q := s
		q.Profile, q.O, q.Length = r, s.O.Add(s.W.Mul(from)), to-from
		out = append(out, q)
	}
	return out
}

// rangeAlong returns where the box lies along d, measured from o; false when d is no world axis.
func rangeAlong(o, d Vec3, b Box3) ([2]float64, bool) {
	lo, hi := b.Min.Sub(o), b.Max.Sub(o)
	for _, a := range []Axis{X, Y, Z} {
		switch t := d.Dot(a.Unit()); {
		case t > 1-1e-9:
			return [2]float64{lo.Dot(a.Unit()), hi.Dot(a.Unit())}, true
		case t < -1+1e-9:
			return [2]float64{-hi.Dot(a.Unit()), -lo.Dot(a.Unit())}, true
		}
	}
	return [2]float64{}, false
}
