package lattice

import "math"

// factor is the Cholesky factor of the coarsest level, its cells that take part in order.
type factor struct {
	cells []int       // their places
	rows  [][]float64 // lower triangle, row by row
	y     []float64
}

func newFactor(l *level) *factor {
	f := &factor{}
	s := l.sys
	order := map[int]int{}
	for k := range s.Z {
		for j := range s.Y {
			for i := range s.X {
				if n := s.At(i, j, k); l.inv[n] > 0 {
					order[n] = len(f.cells)
					f.cells = append(f.cells, n)
				}
			}
		}
	}
	f.y = make([]float64, len(f.cells))
	for r, n := range f.cells {
		row := make([]float64, r+1)
		row[r] += float64(s.Loss[n])
		f.rows = append(f.rows, row)
		for a := alongX; a <= alongZ; a++ {
			if before, link := n-s.stride(a), s.links(a); before > 0 && link[before] > 0 {
				c, v := order[before], float64(link[before])
				row[c] -= v
				row[r] += v
				f.rows[c][c] += v
			}
		}
	}
	f.decompose()
	return f
}

// decompose replaces the matrix by its factor. A pivot lost to rounding cuts its cell off.
func (f *factor) decompose() {
	for r, row := range f.rows {
		whole := row[r]
		for c := 0; c <= r; c++ {
			v, col := row[c], f.rows[c]
			for m := range c {
				v -= row[m] * col[m]
			}
			if c < r {
				row[c] = v / col[c]
				continue
			}
			if v < 1e-12*whole || v <= 0 {
				v = math.Inf(1)
			}
			row[c] = math.Sqrt(v)
		}
	}
}

// solve answers the right side of l.
func (f *factor) solve(l *level) {
	for r, row := range f.rows {
		v := float64(l.b[f.cells[r]])
		for c := range r {
			v -= row[c] * f.y[c]
		}
		f.y[r] = v / row[r]
	}
	for r := len(f.rows) - 1; r >= 0; r-- {
		row := f.rows[r]
		f.y[r] /= row[r]
		v := f.y[r]
		for c := range r {
			f.y[c] -= row[c] * v
		}
		l.x[f.cells[r]] = float32(v)
	}
}
