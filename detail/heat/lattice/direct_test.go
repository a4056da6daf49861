package lattice

import (
	"context"
	"math"
	"testing"
)

// matrix is the system written out in full: row n holds what flows out of cell n at one degree of each cell.
func matrix(s *System) [][]float64 {
	a := make([][]float64, s.Len())
	for n := range a {
		a[n] = make([]float64, s.Len())
		a[n][n] = float64(s.Loss[n])
	}
	join := func(n, m int, c float32) {
		a[n][n] += float64(c)
		a[m][m] += float64(c)
		a[n][m] -= float64(c)
		a[m][n] -= float64(c)
	}
	for k := range s.Z {
		for j := range s.Y {
			for i := range s.X {
				n := s.At(i, j, k)
				if i+1 < s.X {
					join(n, s.At(i+1, j, k), s.East[n])
				}
				if j+1 < s.Y {
					join(n, s.At(i, j+1, k), s.North[n])
				}
				if k+1 < s.Z {
					join(n, s.At(i, j, k+1), s.Up[n])
				}
			}
		}
	}
	return a
}

// cholesky solves a x = b for a symmetric positive matrix, which it overwrites.
func cholesky(a [][]float64, b []float64) []float64 {
	n := len(b)
	for j := range n {
		for k := range j {
			a[j][j] -= a[j][k] * a[j][k]
		}
		a[j][j] = math.Sqrt(a[j][j])
		for i := j + 1; i < n; i++ {
			for k := range j {
				a[i][j] -= a[i][k] * a[j][k]
			}
			a[i][j] /= a[j][j]
		}
	}
	x := append([]float64{}, b...)
	for i := range n {
		for k := range i {
			x[i] -= a[i][k] * x[k]
		}
		x[i] /= a[i][i]
	}
	for i := n - 1; i >= 0; i-- {
		for k := i + 1; k < n; k++ {
			x[i] -= a[k][i] * x[k]
		}
		x[i] /= a[i][i]
	}
	return x
}

// The temperatures of random systems are those of a direct solution of the whole matrix, which knows nothing of
// folds, cycles or rounds.
func TestAgainstDirectSolution(t *testing.T) {
	for seed, s := range []Shape{{7, 1, 1}, {1, 9, 5}, {5, 6, 7}, {8, 8, 3}, {3, 4, 11}, {6, 5, 6}} {
		sys, heat := rough(s, uint64(40+seed))
		solver, err := Prepare(context.Background(), sys, Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := make([]float64, s.Len())
		if _, err := solver.Solve(context.Background(), got, heat, 1e-12); err != nil {
			t.Fatal(err)
		}
		want, most := cholesky(matrix(sys), heat), 0.0
		for _, w := range want {
			most = max(most, math.Abs(w))
		}
		for n := range want {
			if math.Abs(got[n]-want[n]) > 1e-8*most {
				t.Fatalf("%v: cell %d has %v, by direct solution %v", s, n, got[n], want[n])
			}
		}
	}
}
