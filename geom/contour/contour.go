// Package contour turns a field on a grid of cells into bands of equal value and the lines between them.
//
//	m := contour.Of(contour.Grid{X: xs, Y: ys, V: v}, window, []float64{0.2, 0.4}, 0.1)
//	fill(m.Bands[0]) // below 0.2
//
// The field is linear from the middle of a cell to the middle of the next, as marching squares has it; at the
// edge of the material it goes on as it ran. Neighbouring bands share their border to the last bit.
package contour

import (
	"math"
	"slices"

	"standclear/geom"
)

// Grid is a field on cells. V holds the value in the middle of each, NaN where there is nothing.
type Grid struct {
	X, Y []float64   // where the cells begin, rising; one more for the end
	V    [][]float64 // V[y][x]
}

// Map is what Of finds for n levels.
type Map struct {
	Bands []geom.Region // n+1: below the first level, between two, from the last on
	Lines [][]geom.Path // n: where the field has that level, the higher side on the left
}

// Of returns the bands and lines of a field at rising levels, as far as the window shows them. Corners
// nearer than tol to the line between their neighbours are left out. An empty window shows all.
func Of(g Grid, window geom.Box, levels []float64, tol float64) Map {
	m := newMesh(g).crop(window)
	r := ringer{mesh: m, levels: levels, cross: map[crossing]int32{}, open: map[edge]int16{}}
	r.sort()
	for j := range m.ny() {
		for i := range m.nx() {
			r.quarter(i, j)
		}
	}
	return r.rings(tol)
}

// mesh is the field at the corners, in the middle and half-way along the sides of every cell: its lines are
// those of the grid and those through the middles, in turn.
//
//	o--+--o--+--o    o corner, + side, x middle
//	|  |  |  |  |
//	+--x--+--x--+    each cell has four quarters
//	|  |  |  |  |
//	o--+--o--+--o
type mesh struct {
	x, y []line
	v    []float64 // row by row; NaN where no cell about it is full
	full []bool    // of each quarter, row by row
}

// line is one line of a mesh.
type line struct {
	at  float64
	odd bool // the quarter it opens has the middle of the cell behind it
}

func (m *mesh) nx() int { return max(len(m.x)-1, 0) }
func (m *mesh) ny() int { return max(len(m.y)-1, 0) }

func newMesh(g Grid) *mesh {
	m := &mesh{x: halved(g.X), y: halved(g.Y)}
	for j := range m.y {
		for i := range m.x {
			m.v = append(m.v, g.node(i, j))
		}
	}
	for j := range m.ny() {
		for i := range m.nx() {
			m.full = append(m.full, !math.IsNaN(g.V[j/2][i/2]))
		}
	}
	return m
}

func halved(c []float64) []line {
	var out []line
	for n, v := range c {
		out = append(out, line{at: v})
		if n+1 < len(c) {
			out = append(out, line{mid(c, n), true})
		}
	}
	return out
}

// node returns the value at a crossing of the mesh: even numbers are lines of the grid, odd ones middles.
func (g Grid) node(i, j int) float64 {
	switch m, n := i/2, j/2; {
	case i%2 == 1 && j%2 == 1:
		return g.at(m, n)
	case j%2 == 1:
		return g.side(m, n, 0)
	case i%2 == 1:
		return g.side(m, n, 1)
	default:
		return g.corner(m, n)
	}
}

// side returns the value half-way along the side where cell (i, j) and the one before it along an axis
// meet.
func (g Grid) side(i, j, axis int) float64 {
	c, n, before := g.X, i, [2]int{i - 1, j}
	if axis == 1 {
		c, n, before = g.Y, j, [2]int{i, j - 1}
	}
	a, b := g.at(before[0], before[1]), g.at(i, j)
	switch {
	case math.IsNaN(a) && math.IsNaN(b):
		return a
	case math.IsNaN(a):
		return b + g.slope(i, j, axis)*(c[n]-mid(c, n))
	case math.IsNaN(b):
		return a + g.slope(before[0], before[1], axis)*(c[n]-mid(c, n-1))
	}
	return a + (b-a)*(c[n]-mid(c, n-1))/(mid(c, n)-mid(c, n-1))
}

// at returns the value of a cell, NaN beyond the grid.
func (g Grid) at(i, j int) float64 {
	if i < 0 || j < 0 || i >= len(g.X)-1 || j >= len(g.Y)-1 {
		return math.NaN()
	}
	return g.V[j][i]
}

// corner returns the value where four cells meet: between them where all are full, else as the full ones
// run on.
//
//	(i-1,j)   | (i,j)
//	----------+--------
//	(i-1,j-1) | (i,j-1)
func (g Grid) corner(i, j int) float64 {
	x, y := g.X[i], g.Y[j]
	low, full := g.along(i, j-1, x)
	high, also := g.along(i, j, x)
	if full && also {
		a, b := mid(g.Y, j-1), mid(g.Y, j)
		return low + (high-low)*(y-a)/(b-a)
	}
	sum, n := 0.0, 0.0
	for _, c := range [4][2]int{{i - 1, j - 1}, {i, j - 1}, {i - 1, j}, {i, j}} {
		if v := g.at(c[0], c[1]); !math.IsNaN(v) {
			sum += v + g.slope(c[0], c[1], 0)*(x-mid(g.X, c[0])) + g.slope(c[0], c[1], 1)*(y-mid(g.Y, c[1]))
			n++
		}
	}
	if n == 0 {
		return math.NaN()
	}
	return sum / n
}

// along returns the value at x between cells i-1 and i of row j; ok when both are full.
func (g Grid) along(i, j int, x float64) (v float64, ok bool) {
	a, b := g.at(i-1, j), g.at(i, j)
	if math.IsNaN(a) || math.IsNaN(b) {
		return 0, false
	}
	p, q := mid(g.X, i-1), mid(g.X, i)
	return a + (b-a)*(x-p)/(q-p), true
}

// slope returns the rise of the field at a cell along one axis, from the full cells beside it; 0 where
// there is none.
func (g Grid) slope(i, j, axis int) float64 {
	di, dj, c, n := 1, 0, g.X, i
	if axis == 1 {
		di, dj, c, n = 0, 1, g.Y, j
	}
	v, sum, of := g.at(i, j), 0.0, 0.0
	for _, s := range []int{-1, 1} {
		if o := g.at(i+s*di, j+s*dj); !math.IsNaN(o) {
			sum += (o - v) / (mid(c, n+s) - mid(c, n))
			of++
		}
	}
	return sum / max(of, 1)
}

func mid(c []float64, n int) float64 { return (c[n] + c[n+1]) / 2 }

// crop cuts the mesh to a window; quarters on its border become smaller.
func (m *mesh) crop(w geom.Box) *mesh {
	if w.Empty() || m.nx() == 0 || m.ny() == 0 {
		return m
	}
	xs, ys := cuts(m.x, w.Min.X, w.Max.X), cuts(m.y, w.Min.Y, w.Max.Y)
	out := &mesh{}
	for _, c := range xs {
		out.x = append(out.x, line{c.at, m.x[c.n].odd})
	}
	for _, c := range ys {
		out.y = append(out.y, line{c.at, m.y[c.n].odd})
	}
	for j := range ys {
		for i := range xs {
			out.v = append(out.v, m.between(xs[i], ys[j]))
		}
	}
	for j := range out.ny() {
		for i := range out.nx() {
			out.full = append(out.full, m.full[ys[j].n*m.nx()+xs[i].n])
		}
	}
	return out
}

// cut is a line of a cropped mesh: where it lies, and the quarter it opens in the whole one, or ends.
type cut struct {
	at float64
	n  int
}

// cuts returns the lines from lo to hi, those two among them.
func cuts(c []line, lo, hi float64) []cut {
	var out []cut
	for n := range len(c) - 1 {
		if a, b := max(c[n].at, lo), min(c[n+1].at, hi); a < b {
			if len(out) == 0 {
				out = append(out, cut{a, n})
			} else {
				out[len(out)-1].n = n
			}
			out = append(out, cut{b, n})
		}
	}
	return out
}

// between returns the value at the crossing of two cuts, from the nodes about it.
func (m *mesh) between(x, y cut) float64 {
	row := func(j int) float64 {
		k := j*len(m.x) + x.n
		return mix(m.v[k], m.v[k+1], (x.at-m.x[x.n].at)/(m.x[x.n+1].at-m.x[x.n].at))
	}
	return mix(row(y.n), row(y.n+1), (y.at-m.y[y.n].at)/(m.y[y.n+1].at-m.y[y.n].at))
}

// mix returns a where t is 0 and b where it is 1, whatever the other.
func mix(a, b, t float64) float64 {
	switch t {
	case 0:
		return a
	case 1:
		return b
	}
	return a + (b-a)*t
}

// bandOf returns the band of a value: how many levels it reaches.
func bandOf(levels []float64, v float64) int16 {
	n, found := slices.BinarySearch(levels, v)
	if found {
		n++
	}
	return int16(n)
}
