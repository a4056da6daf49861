package geom

import "math"

// vertices gives every point a number, the same number to points within Tol of each other. The
// first point that takes a place keeps it.
type vertices struct {
	pts   []Vec
	next  []int32 // the vertex filed before this one in the same cell, -1 at the end
	cells map[cell]int32
}

// cell is a square of the grid in which vertices are filed, two Tol wide.
type cell struct{ i, j int64 }

const cellSize = 2 * Tol

func newVertices(size int) *vertices { return &vertices{cells: make(map[cell]int32, size)} }

// at returns the number of the vertex at p, a new one if there is none yet.
func (v *vertices) at(p Vec) int32 {
	i0, i1 := cellIndex(p.X-Tol), cellIndex(p.X+Tol)
	j0, j1 := cellIndex(p.Y-Tol), cellIndex(p.Y+Tol)
	for i := i0; i <= i1; i++ {
		for j := j0; j <= j1; j++ {
			if n, ok := v.find(cell{i, j}, p); ok {
				return n
			}
		}
	}
	home := cell{cellIndex(p.X), cellIndex(p.Y)}
	last, ok := v.cells[home]
	if !ok {
		last = -1
	}
	n := int32(len(v.pts))
	v.pts, v.next = append(v.pts, p), append(v.next, last)
	v.cells[home] = n
	return n
}

func (v *vertices) find(c cell, p Vec) (int32, bool) {
	n, ok := v.cells[c]
	for ; ok && n >= 0; n = v.next[n] {
		if v.pts[n].Near(p) {
			return n, true
		}
	}
	return 0, false
}

func cellIndex(x float64) int64 { return int64(math.Floor(x / cellSize)) }
