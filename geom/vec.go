// Package geom is a plane and space geometry kernel for drawings: points, paths of
// lines and arcs, regions with islands, extruded solids, plane cuts, projection with
// hidden lines, and hatching. It knows nothing of what is drawn.
//
// Coordinates are float64 millimetres, y up. Outer rings run counter-clockwise, islands
// clockwise. Two points closer than Tol are one point.
//
//	plate := geom.Subtract(geom.Rect(0, 0, 100, 60), geom.Circle(geom.Vec{X: 50, Y: 30}, 8))
//	fmt.Printf("%.1f\n", plate.Area()) // 100*60 - pi*64
package geom

import "math"

// Tol is the distance in millimetres under which two points count as one.
const Tol = 1e-6

// Vec is a point or a displacement in the plane.
type Vec struct{ X, Y float64 }

// Add returns a+b.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y} }

// Sub returns a-b.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y} }

// Mul returns a scaled by k.
func (a Vec) Mul(k float64) Vec { return Vec{a.X * k, a.Y * k} }

// Dot returns the scalar product.
func (a Vec) Dot(b Vec) float64 { return a.X*b.X + a.Y*b.Y }

// Cross returns the z component of a x b: positive when b lies to the left of a.
func (a Vec) Cross(b Vec) float64 { return a.X*b.Y - a.Y*b.X }

// Len returns the length of a.
func (a Vec) Len() float64 { return math.Hypot(a.X, a.Y) }

// Dist returns the distance from a to b.
func (a Vec) Dist(b Vec) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// Unit returns a scaled to length one; the zero vector stays zero.
func (a Vec) Unit() Vec {
	l := a.Len()
	if l == 0 {
		return Vec{}
	}
	return Vec{a.X / l, a.Y / l}
}

// Perp returns a turned a quarter counter-clockwise.
func (a Vec) Perp() Vec { return Vec{-a.Y, a.X} }

// Lerp returns the point at t on the way from a (t = 0) to b (t = 1).
func (a Vec) Lerp(b Vec, t float64) Vec { return Vec{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t} }

// Near reports whether a and b are one point within Tol.
func (a Vec) Near(b Vec) bool { return math.Abs(a.X-b.X) <= Tol && math.Abs(a.Y-b.Y) <= Tol }

// Polar returns the point at distance r from c in direction angle, in radians.
func Polar(c Vec, r, angle float64) Vec {
	return Vec{c.X + r*math.Cos(angle), c.Y + r*math.Sin(angle)}
}

// Vec3 is a point or a displacement in space.
type Vec3 struct{ X, Y, Z float64 }

// Add returns a+b.
func (a Vec3) Add(b Vec3) Vec3 { return Vec3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub returns a-b.
func (a Vec3) Sub(b Vec3) Vec3 { return Vec3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Mul returns a scaled by k.
func (a Vec3) Mul(k float64) Vec3 { return Vec3{a.X * k, a.Y * k, a.Z * k} }

// Dot returns the scalar product.
func (a Vec3) Dot(b Vec3) float64 { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }

// Cross returns the vector product by the algebraic rule, whatever the handedness of the frame.
func (a Vec3) Cross(b Vec3) Vec3 {
	return Vec3{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X}
}

// Len returns the length of a.
func (a Vec3) Len() float64 { return math.Sqrt(a.Dot(a)) }

// Unit returns a scaled to length one; the zero vector stays zero.
func (a Vec3) Unit() Vec3 {
	l := a.Len()
	if l == 0 {
		return Vec3{}
	}
	return a.Mul(1 / l)
}

// alongAxis reports whether a runs along a world axis, without rounding.
func (a Vec3) alongAxis() bool {
	return a.X == 0 && a.Y == 0 || a.Y == 0 && a.Z == 0 || a.X == 0 && a.Z == 0
}

// Near reports whether a and b are one point within Tol.
func (a Vec3) Near(b Vec3) bool {
	return math.Abs(a.X-b.X) <= Tol && math.Abs(a.Y-b.Y) <= Tol && math.Abs(a.Z-b.Z) <= Tol
}
