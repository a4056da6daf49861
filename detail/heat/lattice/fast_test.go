package lattice

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"
)

// graded returns n widths that grow from 1 to 100 and fall again, with a fresh start here and there.
func graded(r *rand.Rand, n int) []float64 {
	w := make([]float64, n)
	v, by := 1.0, 1.3
	for i := range w {
		w[i] = v
		switch {
		case r.IntN(15) == 0:
			v, by = 1, 1.3
		case v*by > 100 || v*by < 1:
			by = 1 / by
		default:
			v *= by
		}
	}
	return w
}

// blocks is a box of stretched cells with blocks of materials from 0.02 to 230 W/(m K) in foam.
func blocks(seed uint64, nx, ny, nz int) *bay {
	r := rand.New(rand.NewPCG(seed, 1))
	b := &bay{x: graded(r, nx), y: graded(r, ny), z: graded(r, nz)}
	b.System = New(Shape{nx, ny, nz})
	n := b.Len()
	b.kx, b.ky, b.kz = make([]float64, n), make([]float64, n), make([]float64, n)
	b.room, b.heat, b.half = make([]float32, n), make([]float64, n), make([]float64, n)
	span := func(n int) (from, to int) {
		from = r.IntN(n)
		return from, min(n, from+1+r.IntN(max(1, n/(1+r.IntN(20)))))
	}
	for block := range 60 {
		k := 0.02 * math.Exp(r.Float64()*math.Log(230/0.02))
		x0, x1, y0, y1, z0, z1 := 0, nx, 0, ny, 0, nz
		if block == 0 {
			k = 0.04
		} else {
			x0, x1 = span(nx)
			y0, y1 = span(ny)
			z0, z1 = span(nz)
		}
		for at := range n {
			if i := at - 1; at > 0 {
				x, y, z := i%(nx+1), i/(nx+1)%ny, i/(nx+1)/ny
				if x < nx && x >= x0 && x < x1 && y >= y0 && y < y1 && z >= z0 && z < z1 {
					b.kx[at], b.ky[at], b.kz[at] = k, k, k
				}
			}
		}
	}
	b.join()
	return b
}

// The rounds stay few where conductivities differ by ten thousand and cells are stretched by a hundred,
// and hardly grow with the grid.
func TestStaysFast(t *testing.T) {
	for seed := range uint64(9) {
		b := blocks(seed, 40, 45, 50)
		if seed%3 == 2 {
			b = blocks(seed, 300, 200, 1)
		}
		s, err := Prepare(context.Background(), b.System, Options{})
		if err != nil {
			t.Fatal(err)
		}
		run, err := s.Solve(context.Background(), make([]float64, b.Len()), b.heat, 1e-8)
		if err != nil || run.Rounds > 60 {
			t.Errorf("seed %d: %d rounds, %v", seed, run.Rounds, err)
		}
		t.Logf("seed %d: %d rounds on %d levels", seed, run.Rounds, len(s.cycle.levels))
	}
}
