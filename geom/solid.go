package geom

import "math"

// Solid is a body made by drawing a flat region straight out of its plane, less the bodies bored out of
// it. The zero value is the empty solid.
//
//	W          the profile lies in the plane of U and V through O
//	^  ____    and is drawn along W by Length
//	| /   /|
//	|/___/ |   A point of the profile at (a, b) and the height h is O + a U + b V + h W.
//	|    | /
//	O----U
type Solid struct {
	Profile Region
	O       Vec3    // where the profile has its origin
	U, V, W Vec3    // unit vectors at right angles, of either hand
	Length  float64 // along W, positive, mm

	// Bores are taken out of the body. They may stick out of it, touch it or miss it, end inside it,
	// and cross each other; what is bored out of a bore itself is passed over.
	Bores []Solid
}

// Extrude returns the profile in the plane of u and v through o, drawn along w by length. The vectors
// must be of length one and at right angles. A negative length draws it the other way.
func Extrude(profile Region, o, u, v, w Vec3, length float64) Solid {
	if length < 0 {
		w, length = w.Mul(-1), -length
	}
	return Solid{Profile: profile, O: o, U: u, V: v, W: w, Length: length}
}

// Prism returns a profile drawn along a world axis between two coordinates, given in any order. The
// profile's coordinates are those of the two other axes: (y, z) along X, (x, z) along Y, (x, y) along Z.
func Prism(profile Region, axis Axis, from, to float64) Solid {
	from, to = math.Min(from, to), math.Max(from, to)
	u, v := axis.across()
	return Extrude(profile, axis.Unit().Mul(from), u, v, axis.Unit(), to-from)
}

// across returns the two other axes, as Prism has them.
func (a Axis) across() (u, v Vec3) {
	switch a {
	case X:
		return Y.Unit(), Z.Unit()
	case Y:
		return X.Unit(), Z.Unit()
	}
	return X.Unit(), Y.Unit()
}

// BoxSolid returns a box; the empty solid for an empty box or one without thickness.
func BoxSolid(b Box3) Solid {
	s := b.Size()
	if b.Empty() || s.X <= Tol || s.Y <= Tol || s.Z <= Tol {
		return Solid{}
	}
	return Prism(Rect(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y), Z, b.Min.Z, b.Max.Z)
}

// Cylinder returns the round bar of radius r whose axis starts at a and runs along a world axis by
// length, which may be negative.
func Cylinder(a Vec3, axis Axis, r, length float64) Solid {
	if !(r > Tol) {
		return Solid{}
	}
	u, v := axis.across()
	return Extrude(Circle(Vec{}, r), a, u, v, axis.Unit(), length)
}

// Sheet returns a thin sheet, bent along the path p, drawn along a world axis: the Prism of Thicken.
func Sheet(p Path, left, right float64, axis Axis, from, to float64) Solid {
	return Prism(Thicken(p, left, right), axis, from, to)
}

// Bore returns s with more bores taken out.
func (s Solid) Bore(bores ...Solid) Solid {
	s.Bores = append(append([]Solid(nil), s.Bores...), bores...)
	return s
}

// Empty reports whether the body of s has no size.
func (s Solid) Empty() bool { return len(s.Profile) == 0 || !(s.Length > Tol) }

// body returns s without its bores.
func (s Solid) body() Solid {
	s.Bores = nil
	return s
}

// at returns the point of space at the profile point p and the height h.
func (s Solid) at(p Vec, h float64) Vec3 {
	return s.O.Add(s.U.Mul(p.X)).Add(s.V.Mul(p.Y)).Add(s.W.Mul(h))
}

// local returns the profile point and height of a point of space: the inverse of at.
func (s Solid) local(q Vec3) (Vec, float64) {
	d := q.Sub(s.O)
	return Vec{d.Dot(s.U), d.Dot(s.V)}, d.Dot(s.W)
}

// Bounds returns a box that holds the body, bores not counted. It is the smallest one when the solid
// lies along the world axes, and else the smallest round the rectangle that holds the profile.
func (s Solid) Bounds() Box3 {
	b := EmptyBox3()
	if s.Empty() {
		return b
	}
	r := s.Profile.Bounds()
	if s.U.alongAxis() && s.V.alongAxis() && s.W.alongAxis() {
		return b.Include(s.at(r.Min, 0)).Include(s.at(r.Max, s.Length))
	}
	for _, c := range corners(r) {
		b = b.Include(s.at(c, 0)).Include(s.at(c, s.Length))
	}
	return b
}

func corners(b Box) [4]Vec {
	return [4]Vec{b.Min, {b.Max.X, b.Min.Y}, b.Max, {b.Min.X, b.Max.Y}}
}

// Move returns s displaced by d, with its bores.
func (s Solid) Move(d Vec3) Solid {
	m := Still()
	m.O = d
	return s.Transform(m)
}

// Transform returns s moved as a rigid body, or mirrored, with its bores.
func (s Solid) Transform(m Rigid) Solid {
	s.O, s.U, s.V, s.W = m.Apply(s.O), m.Dir(s.U), m.Dir(s.V), m.Dir(s.W)
	bores := s.Bores
	s.Bores = nil
	for _, b := range bores {
		s.Bores = append(s.Bores, b.Transform(m))
	}
	return s
}
