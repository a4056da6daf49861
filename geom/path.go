package geom

// Vertex is a corner of a path and the shape of the segment that starts there.
//
// Bulge is tan(angle/4) of the arc to the next vertex, positive when the arc turns
// counter-clockwise: 0 is a straight line, 1 a half circle.
type Vertex struct {
	Vec
	Bulge float64
}

// Path is a chain of lines and arcs. A closed path returns from its last vertex to its first
// (the first is not repeated), so a circle is two vertices with bulge 1.
type Path struct {
	V      []Vertex
	Closed bool
}

// Polyline returns the open path of straight lines through the points.
func Polyline(pts ...Vec) Path {
	p := Path{V: make([]Vertex, len(pts))}
	for i, q := range pts {
		p.V[i].Vec = q
	}
	return p
}

// Polygon returns the closed path of straight lines through the points.
func Polygon(pts ...Vec) Path {
	p := Polyline(pts...)
	p.Closed = true
	return p
}

// Region is an area of the plane bounded by closed paths that do not cross: outer rings
// counter-clockwise, islands clockwise. It may have several parts. The nil region is empty.
type Region []Path

// Rect returns the rectangle between two corners, given in any order, as a region.
func Rect(x0, y0, x1, y1 float64) Region {
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	if y0 > y1 {
		y0, y1 = y1, y0
	}
	return Region{{V: []Vertex{{Vec: Vec{x0, y0}}, {Vec: Vec{x1, y0}}, {Vec: Vec{x1, y1}}, {Vec: Vec{x0, y1}}}, Closed: true}}
}

// Circle returns the disc of radius r about c as a region.
func Circle(c Vec, r float64) Region {
	return Region{{V: []Vertex{{Vec{c.X - r, c.Y}, 1}, {Vec{c.X + r, c.Y}, 1}}, Closed: true}}
}
