package geom

import "math"

// Box is an axis-aligned rectangle. Its zero value is the point at the origin; an empty box
// (EmptyBox) has Min above Max.
type Box struct{ Min, Max Vec }

// EmptyBox returns the box that holds nothing: the start of a union.
func EmptyBox() Box {
	return Box{Vec{math.Inf(1), math.Inf(1)}, Vec{math.Inf(-1), math.Inf(-1)}}
}

// BoxOf returns the smallest box that holds the points.
func BoxOf(pts ...Vec) Box {
	b := EmptyBox()
	for _, p := range pts {
		b = b.Include(p)
	}
	return b
}

// Empty reports whether b holds nothing.
func (b Box) Empty() bool { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y }

// W returns the width; 0 when empty.
func (b Box) W() float64 { return max(0, b.Max.X-b.Min.X) }

// H returns the height; 0 when empty.
func (b Box) H() float64 { return max(0, b.Max.Y-b.Min.Y) }

// Center returns the middle of the box.
func (b Box) Center() Vec { return b.Min.Lerp(b.Max, 0.5) }

// Include returns b grown to hold p.
func (b Box) Include(p Vec) Box {
	return Box{Vec{min(b.Min.X, p.X), min(b.Min.Y, p.Y)}, Vec{max(b.Max.X, p.X), max(b.Max.Y, p.Y)}}
}

// Union returns the smallest box that holds both.
func (b Box) Union(c Box) Box {
	if c.Empty() {
		return b
	}
	return b.Include(c.Min).Include(c.Max)
}

// Intersect returns what the boxes share; it may be empty.
func (b Box) Intersect(c Box) Box {
	return Box{Vec{max(b.Min.X, c.Min.X), max(b.Min.Y, c.Min.Y)}, Vec{min(b.Max.X, c.Max.X), min(b.Max.Y, c.Max.Y)}}
}

// Grow returns b moved out by d on every side; a negative d shrinks it.
func (b Box) Grow(d float64) Box {
	return Box{Vec{b.Min.X - d, b.Min.Y - d}, Vec{b.Max.X + d, b.Max.Y + d}}
}

// Move returns b displaced by d.
func (b Box) Move(d Vec) Box { return Box{b.Min.Add(d), b.Max.Add(d)} }

// Holds reports whether p lies in b, its edges included.
func (b Box) Holds(p Vec) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// Overlaps reports whether b and c share area (touching is not overlapping).
func (b Box) Overlaps(c Box) bool {
	return b.Min.X < c.Max.X && c.Min.X < b.Max.X && b.Min.Y < c.Max.Y && c.Min.Y < b.Max.Y
}

// Box3 is an axis-aligned box in space, with the conventions of Box.
type Box3 struct{ Min, Max Vec3 }

// EmptyBox3 returns the box that holds nothing.
func EmptyBox3() Box3 {
	i := math.Inf(1)
	return Box3{Vec3{i, i, i}, Vec3{-i, -i, -i}}
}

// Empty reports whether b holds nothing.
func (b Box3) Empty() bool { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y || b.Min.Z > b.Max.Z }

// Include returns b grown to hold p.
func (b Box3) Include(p Vec3) Box3 {
	return Box3{
		Vec3{min(b.Min.X, p.X), min(b.Min.Y, p.Y), min(b.Min.Z, p.Z)},
		Vec3{max(b.Max.X, p.X), max(b.Max.Y, p.Y), max(b.Max.Z, p.Z)},
	}
}

// Union returns the smallest box that holds both.
func (b Box3) Union(c Box3) Box3 {
	if c.Empty() {
		return b
	}
	return b.Include(c.Min).Include(c.Max)
}

// Overlaps reports whether b and c share volume by more than Tol on every axis.
func (b Box3) Overlaps(c Box3) bool {
	return b.Min.X < c.Max.X-Tol && c.Min.X < b.Max.X-Tol &&
		b.Min.Y < c.Max.Y-Tol && c.Min.Y < b.Max.Y-Tol &&
		b.Min.Z < c.Max.Z-Tol && c.Min.Z < b.Max.Z-Tol
}

// Size returns the edge lengths.
func (b Box3) Size() Vec3 { return b.Max.Sub(b.Min) }

// Center returns the middle of the box.
func (b Box3) Center() Vec3 { return b.Min.Add(b.Max).Mul(0.5) }
