package judge

import (
	"math"

	"standclear/render"
)

// index finds the texts near a line: the numbers of the texts that touch each cell of a grid.
type index struct {
	cols, rows int
	cells      [][]int
}

const cell = 8.0 // mm, a few texts to a cell

func indexed(p *page) *index {
	x := &index{cols: int(p.sheet.Size.W/cell) + 1, rows: int(p.sheet.Size.H/cell) + 1}
	x.cells = make([][]int, x.cols*x.rows)
	for i, t := range p.texts {
		b := t.box.Grow(1) // half the heaviest line
		for c := x.col(b.Min.X); c <= x.col(b.Max.X); c++ {
			for r := x.row(b.Min.Y); r <= x.row(b.Max.Y); r++ {
				x.cells[r*x.cols+c] = append(x.cells[r*x.cols+c], i)
			}
		}
	}
	return x
}

func (x *index) col(v float64) int { return min(max(int(v/cell), 0), x.cols-1) }
func (x *index) row(v float64) int { return min(max(int(v/cell), 0), x.rows-1) }

// along calls see with the texts in the cells that a line passes, some more than once.
func (x *index) along(l stroke, see func(int)) {
	a, b := l.a, l.b
	if a.X > b.X {
		a, b = b, a
	}
	for c := x.col(a.X); c <= x.col(b.X); c++ {
		y0, y1 := a.Y, b.Y
		if b.X-a.X > 1e-9 {
			at := func(v float64) float64 {
				return a.Y + (b.Y-a.Y)*math.Min(1, math.Max(0, (v-a.X)/(b.X-a.X)))
			}
			y0, y1 = at(float64(c)*cell), at(float64(c+1)*cell)
		}
		for r := x.row(math.Min(y0, y1)); r <= x.row(math.Max(y0, y1)); r++ {
			for _, i := range x.cells[r*x.cols+c] {
				see(i)
			}
		}
	}
}

// hatchLike reports whether a line is texture.
func hatchLike(l stroke) bool {
	return l.line.Hatch || l.line.Pen == render.Pattern || l.line.Pen == render.Insulation
}
