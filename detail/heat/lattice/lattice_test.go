package lattice

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// rough is a random system: conductances from 1/7 to 7, one in ten cut.
func rough(s Shape, seed uint64) (*System, []float64) {
	r := rand.New(rand.NewPCG(seed, 3))
	sys, heat := New(s), make([]float64, s.Len())
	out := func() bool { return r.IntN(10) == 0 }
	conduct := func() float32 {
		if out() {
			return 0
		}
		return float32(math.Exp(4*r.Float64() - 2))
	}
	for k := range s.Z {
		for j := range s.Y {
			for i := range s.X {
				n := s.At(i, j, k)
				if i+1 < s.X {
					sys.East[n] = conduct()
				}
				if j+1 < s.Y {
					sys.North[n] = conduct()
				}
				if k+1 < s.Z {
					sys.Up[n] = conduct()
				}
				sys.Loss[n] = float32(math.Exp(-8 * r.Float64()))
				heat[n] = r.Float64() - 0.3
			}
		}
	}
	return sys, heat
}

// left returns the largest imbalance of any cell.
func left(s *System, t, heat []float64) float64 {
	var worst float64
	at := func(n int) float64 { return t[n] }
	for k := range s.Z {
		for j := range s.Y {
			for i := range s.X {
				n := s.At(i, j, k)
				q := heat[n] - float64(s.Loss[n])*at(n)
				for a := alongX; a <= alongZ; a++ {
					d := s.stride(a)
					c := [...]int{i, j, k}[a]
					if c > 0 {
						q -= float64(s.links(a)[n-d]) * (at(n) - at(n-d))
					}
					if c+1 < *s.size(a) {
						q -= float64(s.links(a)[n]) * (at(n) - at(n+d))
					}
				}
				worst = max(worst, math.Abs(q))
			}
		}
	}
	return worst
}

// Every cell balances, whatever the shape and the conductances.
func TestBalances(t *testing.T) {
	for seed, s := range []Shape{{1, 1, 1}, {2, 1, 1}, {1, 1, 900}, {1, 700, 1}, {500, 1, 1}, {40, 50, 1}, {1, 60, 30}, {9, 8, 7}, {30, 20, 25}, {3, 70, 40}} {
		sys, heat := rough(s, uint64(seed))
		solver, err := Prepare(context.Background(), sys, Options{})
		if err != nil {
			t.Fatal(err)
		}
		temp := make([]float64, s.Len())
		run, err := solver.Solve(context.Background(), temp, heat, 1e-10)
		if err != nil {
			t.Errorf("%v: %v", s, err)
			continue
		}
		if worst := left(sys, temp, heat); worst > 1e-8*math.Sqrt(float64(s.Cells())) {
			t.Errorf("%v: a cell is %.1e out of balance after %d rounds", s, worst, run.Rounds)
		}
	}
}

// Two cells in a row: 3 W pass both conductances of 1 W/K, so 3 and 6 degrees.
func TestTwoCells(t *testing.T) {
	sys := New(Shape{2, 1, 1})
	sys.East[sys.At(0, 0, 0)], sys.Loss[sys.At(1, 0, 0)] = 1, 1
	heat, temp := make([]float64, sys.Len()), make([]float64, sys.Len())
	heat[sys.At(0, 0, 0)] = 3
	solver, err := Prepare(context.Background(), sys, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := solver.Solve(context.Background(), temp, heat, 1e-12); err != nil {
		t.Fatal(err)
	}
	if a, b := temp[sys.At(0, 0, 0)], temp[sys.At(1, 0, 0)]; math.Abs(a-6) > 1e-9 || math.Abs(b-3) > 1e-9 {
		t.Errorf("got %g and %g", a, b)
	}
}

// The cycle is symmetric: x B y = y B x, to the rounding of float32.
func TestCycleIsSymmetric(t *testing.T) {
	sys, x := rough(Shape{20, 24, 28}, 5)
	_, y := rough(Shape{20, 24, 28}, 6)
	c, err := newCycle(context.Background(), sys, Crew{})
	if err != nil {
		t.Fatal(err)
	}
	if len(c.levels) < 3 {
		t.Fatalf("%d levels", len(c.levels))
	}
	through := func(v []float64) []float64 {
		for n, f := range v {
			c.input()[n] = float32(f)
		}
		c.crew.Each(sys.Shape, c.begin)
		z, _ := c.run(v)
		out := make([]float64, len(v))
		for n, f := range z {
			out[n] = float64(f)
		}
		return out
	}
	dot := func(a, b []float64) (sum, size float64) {
		for n := range a {
			sum += a[n] * b[n]
			size += math.Abs(a[n] * b[n])
		}
		return sum, size
	}
	bx, by := through(x), through(y)
	a, size := dot(y, bx)
	b, _ := dot(x, by)
	if math.Abs(a-b) > 1e-5*size {
		t.Errorf("y B x is %g, x B y is %g", a, b)
	}
	for _, v := range [][]float64{x, y} {
		if d, _ := dot(v, through(v)); d <= 0 {
			t.Errorf("x B x is %g", d)
		}
	}
}

// A fold keeps the conductance from end to end of a row, and the sum of the losses.
func TestFoldKeepsConductance(t *testing.T) {
	sys, _ := rough(Shape{21, 4, 3}, 9)
	clear(sys.North)
	clear(sys.Up)
	for n := range sys.East {
		if sys.East[n] == 0 && n%22 != 21 && n > 0 {
			sys.East[n] = 2
		}
	}
	gone, _ := chosen(slices.Repeat([]float64{1}, 21), 0.5)
	f := newFold(alongX, sys.Shape, gone)
	f.weigh(Crew{}, sys)
	small := f.reduce(Crew{}, sys)
	if small.X != 11 {
		t.Fatalf("%d planes stay", small.X)
	}
	ends := func(s *System, k int) float64 {
		var r float64
		for i := range s.X - 1 {
			r += 1 / float64(s.East[s.At(i, 1, k)])
		}
		return r
	}
	sum := func(s *System) (v float64) {
		for _, g := range s.Loss {
			v += float64(g)
		}
		return v
	}
	for k := range 3 {
		if a, b := ends(sys, k), ends(small, k); math.Abs(a-b) > 1e-5*a {
			t.Errorf("row %d: resistance %g becomes %g", k, a, b)
		}
	}
	if a, b := sum(sys), sum(small); math.Abs(a-b) > 1e-5*a {
		t.Errorf("loss %g becomes %g", a, b)
	}
}

// The bits of the answer do not depend on the number of threads.
func TestThreads(t *testing.T) {
	sys, heat := rough(Shape{40, 30, 35}, 2)
	var first []float64
	for _, threads := range []int{1, 2, 5} {
		solver, err := Prepare(context.Background(), sys, Options{Threads: threads})
		if err != nil {
			t.Fatal(err)
		}
		temp := make([]float64, sys.Len())
		if _, err := solver.Solve(context.Background(), temp, heat, 1e-8); err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = temp
		}
		if !slices.Equal(first, temp) {
			t.Errorf("%d threads give other temperatures", threads)
		}
	}
}

func TestStops(t *testing.T) {
	sys, heat := rough(Shape{30, 30, 30}, 4)
	solver, err := Prepare(context.Background(), sys, Options{MaxRounds: 2})
	if err != nil {
		t.Fatal(err)
	}
	if run, err := solver.Solve(context.Background(), make([]float64, sys.Len()), heat, 1e-10); !errors.Is(err, ErrStalled) || run.Rounds != 2 {
		t.Errorf("two rounds: %v, %+v", err, run)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := solver.Solve(ctx, make([]float64, sys.Len()), heat, 1e-10); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
	if _, err := Prepare(ctx, sys, Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
	cold := slices.Repeat([]float64{1}, sys.Len())
	if run, err := solver.Solve(context.Background(), cold, make([]float64, sys.Len()), 1e-10); err != nil || run.Rounds != 0 || cold[5] != 0 {
		t.Errorf("no heat: %v, %+v, %g degrees", err, run, cold[5])
	}
}
