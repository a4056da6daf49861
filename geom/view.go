package geom

import "math"

// Axis names a direction of the world: x to the right, y toward the viewer of the front view, z up.
// That frame is left-handed, so nothing here is told from the sign of a triple product.
type Axis int

// The three directions of the world.
const (
	X Axis = iota
	Y
	Z
)

// Unit returns the unit vector along the axis.
func (a Axis) Unit() Vec3 {
	switch a {
	case X:
		return Vec3{X: 1}
	case Y:
		return Vec3{Y: 1}
	}
	return Vec3{Z: 1}
}

// View is a way of looking at the world along parallel lines, and a plane to cut it by. O maps to the
// origin of the drawing, U to its x direction, V to its y direction, and N points at the viewer. The
// plane passes through O and faces the viewer. U, V and N are unit vectors at right angles; of either
// hand, so that a mirrored view is made by turning U about.
type View struct{ O, U, V, N Vec3 }

// To returns where p is drawn, and how far in front of the plane it lies; behind is negative.
func (v View) To(p Vec3) (Vec, float64) {
	d := p.Sub(v.O)
	return Vec{d.Dot(v.U), d.Dot(v.V)}, d.Dot(v.N)
}

// From returns the point drawn at p that lies at the given depth: the inverse of To.
func (v View) From(p Vec, depth float64) Vec3 {
	return v.O.Add(v.U.Mul(p.X)).Add(v.V.Mul(p.Y)).Add(v.N.Mul(depth))
}

// AxisView returns the view from the positive end of an axis when sign is positive, else from its
// negative end, with the plane at the coordinate at. No view is mirrored; what is up in the world is up
// in the drawing, and in the two views along z the wall is as in a plan seen from above:
//
//	from +y (front)  U = +x, V = +z        from -y (back)   U = -x, V = +z
//	from +x          U = -y, V = +z        from -x          U = +y, V = +z
//	from +z (plan)   U = +x, V = -y        from -z          U = +x, V = +y
func AxisView(n Axis, sign int, at float64) View {
	s := 1.0
	if sign < 0 {
		s = -1
	}
	v := View{O: n.Unit().Mul(at), V: Vec3{Z: 1}, N: n.Unit().Mul(s).Add(Vec3{})} // no negative zeros
	if n == Z {
		v.V = Vec3{Y: -s}
	}
	v.U = v.N.Cross(v.V).Add(Vec3{})
	return v
}

// Axonometric returns the view of a viewer in the direction n from o, which is drawn at the origin with
// z pointing up. From straight above or below it is the plan of AxisView. The zero vector counts as the
// front.
func Axonometric(o, n Vec3) View {
	n = n.Unit()
	if n == (Vec3{}) {
		n = Y.Unit()
	}
	up := Z.Unit().Sub(n.Mul(n.Z))
	if up.Len() < 1e-9 {
		v := AxisView(Z, int(math.Copysign(1, n.Z)), 0)
		v.O = o
		return v
	}
	v := View{O: o, V: up.Unit(), N: n}
	v.U = v.N.Cross(v.V)
	return v
}

// Isometric returns the view from above in which x, y and z are shortened alike, by sqrt(2/3). The viewer
// stands on the right-hand side (positive x) when right is positive, else on the left, and in front
// (positive y) when toward is positive, else at the back.
func Isometric(o Vec3, right, toward int) View {
	sign := func(n int) float64 { return math.Copysign(1, float64(n)) }
	return Axonometric(o, Vec3{sign(right), sign(toward), 1})
}

// map2 returns where the point of a plane frame f, given by its two coordinates, is drawn in v.
func (v View) map2(f View) Xform {
	o, _ := v.To(f.O)
	return Xform{
		A: f.U.Dot(v.U), B: f.V.Dot(v.U), C: o.X,
		D: f.U.Dot(v.V), E: f.V.Dot(v.V), F: o.Y,
	}
}

// Rigid is a motion of space that keeps distances: where the origin goes, and into what directions x, y
// and z turn. The three are unit vectors at right angles, of either hand: a mirror is allowed.
type Rigid struct{ O, X, Y, Z Vec3 }

// Still returns the motion that moves nothing.
func Still() Rigid { return Rigid{X: X.Unit(), Y: Y.Unit(), Z: Z.Unit()} }

// Turn returns the turn by rad radians about the line through at along an axis, in the sense that takes
// y to z, z to x, or x to y.
func Turn(axis Axis, at Vec3, rad float64) Rigid {
	s, c := sincos(rad)
	var m Rigid
	switch axis {
	case X:
		m = Rigid{X: Vec3{X: 1}, Y: Vec3{0, c, s}, Z: Vec3{0, -s, c}}
	case Y:
		m = Rigid{X: Vec3{c, 0, -s}, Y: Vec3{Y: 1}, Z: Vec3{s, 0, c}}
	default:
		m = Rigid{X: Vec3{c, s, 0}, Y: Vec3{-s, c, 0}, Z: Vec3{Z: 1}}
	}
	m.O = at.Sub(m.Dir(at))
	return m
}

// MirrorIn returns the reflection in the plane at right angles to an axis at the coordinate at.
func MirrorIn(axis Axis, at float64) Rigid {
	m := Still()
	switch axis {
	case X:
		m.X = Vec3{X: -1}
	case Y:
		m.Y = Vec3{Y: -1}
	default:
		m.Z = Vec3{Z: -1}
	}
	m.O = axis.Unit().Mul(2 * at)
	return m
}

// Apply returns the image of a point.
func (m Rigid) Apply(p Vec3) Vec3 { return m.O.Add(m.Dir(p)) }

// Dir returns the image of a direction.
func (m Rigid) Dir(d Vec3) Vec3 { return m.X.Mul(d.X).Add(m.Y.Mul(d.Y)).Add(m.Z.Mul(d.Z)) }
