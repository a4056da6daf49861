package heat_test

import (
	"bytes"
	"context"
	"encoding/gob"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"standclear/detail/heat"
)

// assembly is a random wall between a room and the outside, with blocks of any material in it; a
// third environment is a hole at its side.
func assembly(r *rand.Rand, dim int) heat.Case {
	const size, thick = 300, 200
	c := heat.Case{
		Name: "random", Dim: dim,
		Envs: []heat.Env{
			{Name: "room", T: 20, Rs: 0.13}, {Name: "outside", T: -10 * r.Float64(), Rs: 0.04}, {Name: "cellar", T: 10, Rs: 0.1},
		},
	}
	for i := range 6 {
		k := math.Exp(r.Float64()*math.Log(1000)) * 0.05 // 0.05 to 50
		m := heat.Isotropic(fmt.Sprint("m", i), k)
		if i%2 == 0 {
			m.K[1] *= 0.5 + r.Float64()
		}
		c.Materials = append(c.Materials, m)
	}
	add := func(lo, hi heat.Point, b heat.Box) {
		b.Lo, b.Hi = lo, hi
		c.Boxes = append(c.Boxes, b)
	}
	add(heat.Point{0, -50, 0}, heat.Point{size, 0, size}, heat.Box{Env: "room"})
	add(heat.Point{0, thick, 0}, heat.Point{size, thick + 50, size}, heat.Box{Env: "outside"})
	add(heat.Point{0, 0, 0}, heat.Point{size, thick, size}, heat.Box{Material: "m0"})
	for range 10 - 3*dim { // four blocks, or one
		var lo, hi heat.Point
		for a, most := range [3]int{size, thick, size} {
			from := r.IntN(most-10) / 10 * 10
			lo[a] = float64(from)
			hi[a] = float64(from + 10*(1+r.IntN((most-from)/10)))
		}
		add(lo, hi, heat.Box{Material: fmt.Sprint("m", 1+r.IntN(5))})
	}
	add(heat.Point{0, 60, 0}, heat.Point{40, 120, 50}, heat.Box{Env: "cellar"})
	c.Probes = []heat.Probe{{Name: "mid", At: heat.Point{150, 130, 150}}, {Name: "face", At: heat.Point{200, 0, 100}}}
	return c
}

func random(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 7)) }

// Much finer grids move no flow, coupling or temperature by more than the error stated.
func TestStatedErrorHolds(t *testing.T) {
	seeds := uint64(25)
	if testing.Short() {
		seeds = 3 // in the plane alone: the race detector makes the fine grids of the rest slow
	}
	for seed := range seeds {
		dim, loose, fine := 2, 0.05, 0.002
		if seed%8 == 3 {
			dim, loose, fine = 3, 0.5, 0.001
		}
		c := assembly(random(seed), dim)
		coarse := solve(t, c, heat.Options{Error: loose, MaxCells: 1e6})
		limit := solve(t, c, heat.Options{Error: loose, MaxCells: 1e6, Limit: true})
		better := solve(t, c, heat.Options{Error: fine, MaxCells: 4e6})
		if len(coarse.Grids) < 3 || len(better.Grids) == len(coarse.Grids) {
			t.Errorf("seed %d: %d and %d grids tell nothing", seed, len(coarse.Grids), len(better.Grids))
			continue
		}
		check := func(what string, a, b heat.Value) {
			if math.Abs(a.V-b.V) > a.Err {
				t.Errorf("seed %d: %s %.6g ± %.2g moves to %.6g ± %.2g (%d to %d grids)", seed, what, a.V, a.Err, b.V, b.Err, len(coarse.Grids), len(better.Grids))
			}
		}
		for e := range coarse.Envs {
			check("flow", coarse.Envs[e].Flow, better.Envs[e].Flow)
			check("limit of the flow", limit.Envs[e].Flow, better.Envs[e].Flow)
			check("coldest surface", coarse.Envs[e].Low.T, better.Envs[e].Low.T)
			check("warmest surface", coarse.Envs[e].High.T, better.Envs[e].High.T)
			for o := range coarse.Envs {
				check("coupling", coarse.Coupling[e][o], better.Coupling[e][o])
			}
		}
		for p := range coarse.Probes {
			check(coarse.Probes[p].Name, coarse.Probes[p].T, better.Probes[p].T)
			check("limit of "+coarse.Probes[p].Name, limit.Probes[p].T, better.Probes[p].T)
		}
	}
}

// Heat in is heat out, couplings are symmetric and positive, weights sum to 1, and no temperature passes
// those of the environments.
func TestLawsOfConduction(t *testing.T) {
	for seed := range uint64(12) {
		c := assembly(random(100+seed), 2+int(seed%4)/3)
		r := solve(t, c, heat.Options{Error: 0.2, MaxCells: 1e5})
		var sum, most float64
		for i, e := range r.Envs {
			sum += e.Flow.V
			most = max(most, math.Abs(e.Flow.V))
			var byCoupling float64
			for j, o := range r.Envs {
				byCoupling += r.Coupling[i][j].V * (e.T - o.T)
				if i != j && r.Coupling[i][j].V <= 0 {
					t.Errorf("seed %d: coupling %d %d is %g", seed, i, j, r.Coupling[i][j].V)
				}
			}
			near(t, "flow by couplings", byCoupling, e.Flow.V, 1e-9*math.Abs(e.Flow.V))
			if e.Low.T.V < c.Envs[1].T || e.High.T.V > 20 || e.Low.T.V > e.High.T.V {
				t.Errorf("seed %d: surface from %g to %g", seed, e.Low.T.V, e.High.T.V)
			}
		}
		near(t, "sum of flows", sum, 0, 1e-9*most)
		for _, p := range r.Probes {
			near(t, "sum of weights", p.Weights[0]+p.Weights[1]+p.Weights[2], 1, 1e-12)
		}
	}
}

// The coupling of two environments is the same from either side: with the environments in another order
// other fields are solved for, and the couplings stay.
func TestReciprocity(t *testing.T) {
	c := caseOf(t, "three-rooms.yaml")
	opt := heat.Options{Error: 0.2, MaxCells: 3e4}
	r := solve(t, c, opt)
	turned := c
	turned.Envs = []heat.Env{c.Envs[2], c.Envs[0], c.Envs[1]}
	s := solve(t, turned, opt)
	for i := range 3 {
		for j := range i {
			near(t, fmt.Sprintf("coupling %d %d", i, j), s.Coupling[(i+1)%3][(j+1)%3].V, r.Coupling[i][j].V, 1e-6*r.Coupling[i][j].V)
		}
		near(t, "flow", s.Envs[(i+1)%3].Flow.V, r.Envs[i].Flow.V, 1e-6*math.Abs(r.Envs[0].Flow.V))
	}
}

// A case in two dimensions drawn out along z is the same per metre.
func TestExtruded(t *testing.T) {
	flat := assembly(random(5), 2)
	deep := flat
	deep.Dim = 3
	deep.Boxes = append([]heat.Box(nil), flat.Boxes...)
	for i := range deep.Boxes {
		deep.Boxes[i].Lo[2], deep.Boxes[i].Hi[2] = 0, 250
	}
	opt := heat.Options{Error: 0.3}
	a, b := solve(t, flat, opt), solve(t, deep, opt)
	if len(a.Grids) != len(b.Grids) {
		t.Fatalf("%d and %d grids", len(a.Grids), len(b.Grids))
	}
	for e := range a.Envs {
		near(t, "flow of a quarter metre", b.Envs[e].Flow.V*4, a.Envs[e].Flow.V, 1e-5*math.Abs(a.Envs[0].Flow.V))
		near(t, "coldest", b.Envs[e].Low.T.V, a.Envs[e].Low.T.V, 1e-4)
	}
	near(t, "probe", b.Probes[0].T.V, a.Probes[0].T.V, 1e-4)
}

// Stretched by s along an axis, with the conductivity along it times s squared and the films on faces
// square to it over s, an assembly keeps its temperatures, and passes s times the heat.
func TestStretched(t *testing.T) {
	const s = 1.25
	for a := range 3 {
		c := slab(3, 0.13, 0.04, []float64{100, 60}, []float64{0.2, 0.04})
		c.Materials = append(c.Materials, heat.Isotropic("steel", 50))
		c.Boxes = append(c.Boxes, heat.Box{Lo: heat.Point{400, 40, 300}, Hi: heat.Point{500, 150, 350}, Material: "steel"})
		c.Probes = []heat.Probe{{Name: "steel", At: heat.Point{450, 100, 320}}, {Name: "face", At: heat.Point{430, 0, 310}}}
		d := c
		d.Boxes, d.Probes = append([]heat.Box(nil), c.Boxes...), append([]heat.Probe(nil), c.Probes...)
		d.Materials, d.Envs = append([]heat.Material(nil), c.Materials...), append([]heat.Env(nil), c.Envs...)
		for i := range d.Boxes {
			d.Boxes[i].Lo[a] *= s
			d.Boxes[i].Hi[a] *= s
		}
		for i := range d.Materials {
			d.Materials[i].K[a] *= s * s
		}
		for i := range d.Probes {
			d.Probes[i].At[a] *= s
		}
		if heat.Axis(a) == heat.Y { // every surface is square to y
			for i := range d.Envs {
				d.Envs[i].Rs /= s
			}
		}
		opt := heat.Options{Error: 0.2, MaxCells: 4e4}
		r, q := solve(t, c, opt), solve(t, d, opt)
		if r.Grids[0].Shape != q.Grids[0].Shape {
			continue // another grid; only its error could be compared
		}
		near(t, heat.Axis(a).String()+": flow", q.Envs[0].Flow.V, s*r.Envs[0].Flow.V, 0.03*r.Envs[0].Flow.V)
		for i := range r.Probes {
			near(t, heat.Axis(a).String()+": "+r.Probes[i].Name, q.Probes[i].T.V, r.Probes[i].T.V, r.Probes[i].T.Err+q.Probes[i].T.Err+1e-6)
		}
	}
}

// The bytes of a result do not depend on the number of threads.
func TestThreadsChangeNothing(t *testing.T) {
	c := caseOf(t, "bolt-in-wall.yaml")
	var first []byte
	for _, threads := range []int{1, 2, 3, 7} {
		r := solve(t, c, heat.Options{Threads: threads, MaxCells: 1e5})
		var b bytes.Buffer
		if err := gob.NewEncoder(&b).Encode(r); err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = b.Bytes()
		}
		if !bytes.Equal(first, b.Bytes()) {
			t.Errorf("%d threads give other bytes than one", threads)
		}
	}
}

// A cancelled context ends the work with its error, also from within.
func TestCancel(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	rounds := 0
	_, err := heat.Solve(ctx, caseOf(t, "bolt-in-wall.yaml"), heat.Options{Progress: func(p heat.Progress) {
		if rounds++; p.Grid == 1 && p.Round == 2 {
			cancel()
		}
	}})
	if !errors.Is(err, context.Canceled) || rounds < 3 {
		t.Errorf("%v after %d rounds", err, rounds)
	}
	cancel()
}

// With too few cells allowed the result says that the error is not met, and how large it is.
func TestNotMet(t *testing.T) {
	c := caseOf(t, "iso10211-case4.yaml")
	r := solve(t, c, heat.Options{Error: 1e-4, MaxCells: 30000})
	if r.Met || len(r.Grids) != 4 || !(r.Envs[0].Flow.Err > 2e-5) {
		t.Errorf("met %v on %d grids, flow %+v", r.Met, len(r.Grids), r.Envs[0].Flow)
	}
	near(t, "flow by its own error", 4*r.Envs[0].Flow.V, 0.540, 4*r.Envs[0].Flow.Err)
	two := solve(t, c, heat.Options{MaxCells: 4000})
	if two.Met || len(two.Grids) != 2 || !math.IsInf(two.Envs[0].Flow.Err, 1) {
		t.Errorf("two grids: met %v, %+v", two.Met, two.Envs[0].Flow)
	}
}
