package heat

import (
	"math"
	"slices"

	"standclear/detail/heat/lattice"
)

// grid is the cells of a layout: every interval between planes divided, fine at the planes and growing
// away from them.
type grid struct {
	l     *layout
	width [3][]float64 // of the cells along each axis, mm
	from  [3][]float64 // where each cell begins, mm; one more for the end
	in    [3][]int     // interval between planes of each cell
}

// growth is the most by which a cell of the first grid is wider than its neighbour toward a plane. It
// is a judgement: cells that double cost a third of even ones and lose little.
const growth = 2

// firstGrid divides each interval so that the cell at a plane is as wide as the thinner of the intervals
// beside it, or coarse times that: one cell across the thinnest layer. Later grids divide every cell.
func firstGrid(l *layout, coarse float64) *grid {
	var width [3][]float64
	var in [3][]int
	for a := range width {
		lens := l.lengths(Axis(a))
		for i, w := range lens {
			var cells []float64
			if l.empty[a][i] || a >= l.c.Dim {
				cells = []float64{w}
			} else {
				cells = divide(w, coarse*l.edge(Axis(a), lens, i, i-1), coarse*l.edge(Axis(a), lens, i, i+1))
			}
			width[a] = append(width[a], cells...)
			for range cells {
				in[a] = append(in[a], i)
			}
		}
	}
	return newGrid(l, width, in)
}

func newGrid(l *layout, width [3][]float64, in [3][]int) *grid {
	g := &grid{l: l, width: width, in: in}
	for a := range width {
		at := l.planes[a][0]
		last := -1
		for c, w := range width[a] {
			if i := in[a][c]; i != last {
				at, last = l.planes[a][i], i // no rounding gathers from one interval to the next
			}
			g.from[a] = append(g.from[a], at)
			at += w
		}
		g.from[a] = append(g.from[a], l.planes[a][len(l.planes[a])-1])
	}
	return g
}

// lengths returns the intervals between planes, mm.
func (l *layout) lengths(a Axis) []float64 {
	out := make([]float64, l.regions(a))
	for i := range out {
		out[i] = l.planes[a][i+1] - l.planes[a][i]
	}
	return out
}

// edge returns how wide the cell of interval i at its plane toward interval o may be: no wider than the
// thinner of the two, nor than the thinnest part that passes through the plane, whose corners bend the
// flow within its own thickness; but a quarter of the interval will do.
func (l *layout) edge(a Axis, lens []float64, i, o int) float64 {
	if o < 0 || o >= len(lens) || l.empty[a][o] {
		return lens[i]
	}
	own := min(lens[i], lens[o])
	return min(own, max(own/4, l.thin(a, l.planes[a][max(i, o)])))
}

// thin returns the least size of any box of a material that reaches or passes the plane at v along a.
func (l *layout) thin(a Axis, v float64) float64 {
	least := math.Inf(1)
	for _, b := range l.c.Boxes {
		if b.Material == "" || b.Lo[a] > v+thinnest || b.Hi[a] < v-thinnest {
			continue
		}
		for d := range l.c.Dim {
			least = min(least, b.Hi[d]-b.Lo[d])
		}
	}
	return least
}

// divide cuts a length into cells no wider than first and last at its ends, growing toward the middle.
func divide(length, first, last float64) []float64 {
	var head, tail []float64
	var sum float64
	for sum < length*(1-1e-9) {
		if first <= last {
			head, sum, first = append(head, first), sum+first, first*growth
		} else {
			tail, sum, last = append(tail, last), sum+last, last*growth
		}
	}
	slices.Reverse(tail)
	cells := append(head, tail...)
	for i := range cells {
		cells[i] *= length / sum
	}
	return cells
}

// divided returns the grid with every cell cut into n equal parts along each axis of the case. Intervals that
// hold no material stay whole.
func (g *grid) divided(n int) *grid {
	var width [3][]float64
	var in [3][]int
	for a := range width {
		for c, w := range g.width[a] {
			i := g.in[a][c]
			parts := n
			if a >= g.l.c.Dim || g.l.empty[a][i] {
				parts = 1
			}
			for range parts {
				width[a], in[a] = append(width[a], w/float64(parts)), append(in[a], i)
			}
		}
	}
	return newGrid(g.l, width, in)
}

// shape returns the numbers of cells.
func (g *grid) shape() lattice.Shape {
	return lattice.Shape{X: len(g.width[0]), Y: len(g.width[1]), Z: len(g.width[2])}
}

// region returns the region that cell i, j, k lies in.
func (g *grid) region(i, j, k int) int { return g.l.at(g.in[0][i], g.in[1][j], g.in[2][k]) }

// cell returns the numbers of the cells along a that v lies in or on, within interval i.
func (g *grid) cell(a Axis, v float64, i int) []int {
	var out []int
	for _, c := range beside(g.from[a], v) {
		if g.in[a][c] == i {
			out = append(out, c)
		}
	}
	return out
}
