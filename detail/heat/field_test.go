package heat_test

import (
	"math"
	"testing"

	"standclear/detail/heat"
)

// The plane of a slab without bridges, by hand: 120 mm of 0.12 W/(m K) between 0.13 and 0.04 m2K/W, 20 and -10 C:
// T = 20 - 30 (0.13 + y/0.12)/1.17 with y in m; the air beside it holds no material.
func TestField(t *testing.T) {
	c := slab(3, 0.13, 0.04, []float64{120}, []float64{0.12})
	c.Cuts = []heat.Cut{{Axis: heat.X, At: 500}, {Axis: heat.Y, At: 60}}
	r := solve(t, c, heat.Options{})
	f := r.Cuts[0]
	if len(f.U) != len(f.T[0])+1 || len(f.V) != len(f.T)+1 || f.U[0] != -10 || f.U[len(f.U)-1] != 130 {
		t.Fatalf("%d by %d cells, y from %g to %g", len(f.T[0]), len(f.T), f.U[0], f.U[len(f.U)-1])
	}
	for k, row := range f.T {
		for j, got := range row {
			y := (f.U[j] + f.U[j+1]) / 2
			if full := y > 0 && y < 120; f.Full[k][j] != full {
				t.Fatalf("material at y %g: %v", y, f.Full[k][j])
			} else if want := 20 - 30*(0.13+y/1e3/0.12)/1.17; full && math.Abs(got-want) > 1e-4 {
				t.Fatalf("%.5f C at y %g, want %.5f", got, y, want)
			}
		}
	}
	across := r.Cuts[1]
	if across.U[len(across.U)-1] != 1000 || across.V[len(across.V)-1] != 1000 || !across.Full[0][0] {
		t.Errorf("the plane across y runs to %g and %g", across.U[len(across.U)-1], across.V[len(across.V)-1])
	}
}
