package heat_test

import (
	"math"
	"testing"

	"standclear/detail/heat"
)

// pierced is a wall of insulation with a bolt through it, or with the bolt painted over.
func pierced(bolt bool) heat.Case {
	c := slab(3, 0.13, 0.04, []float64{12, 76, 12}, []float64{0.13, 0.036, 0.13})
	c.Materials = append(c.Materials, heat.Isotropic("steel", 50))
	rod := heat.RodBox(heat.Y, heat.Point{500, 0, 500}, 0, 100, 12.7, "steel")
	walls := c.Boxes[1:4]
	if bolt {
		c.Boxes = append(c.Boxes, rod)
		return c
	}
	c.Boxes = append([]heat.Box{c.Boxes[0], c.Boxes[4], rod}, walls...)
	return c
}

// The heat a bolt adds is found within its own error from two runs on one set of cells, and is known
// far better than the error of the two flows. By hand, without constriction: the bolt alone passes
// 1/(0.1/(50 A) + (0.13+0.04)/A) = 126.7e-6/(0.002+0.17) = 0.00074 W/K, and more when the wood beside its
// ends gathers heat: at most its own length, 50 A/0.1 = 0.063 W/K.
func TestAdded(t *testing.T) {
	opt := heat.Options{Error: 0.01, MaxCells: 1e6}
	with, without := solve(t, pierced(true), opt), solve(t, pierced(false), opt)
	got, ok := heat.Added(with, without, 0, false)
	if !ok {
		t.Fatalf("grids %+v and %+v", with.Grids, without.Grids)
	}
	chi := got.V / 30 // K between the two environments
	if chi < 0.00074 || chi > 0.063 {
		t.Errorf("chi is %g W/K", chi)
	}
	limit, ok := heat.Added(with, without, 0, true)
	if !ok {
		t.Fatal("no limit from the same grids")
	}
	opt = heat.Options{Error: 1e-5, MaxCells: 1e6}
	with, without = solve(t, pierced(true), opt), solve(t, pierced(false), opt)
	finer, ok := heat.Added(with, without, 0, false)
	if !ok || math.Abs(finer.V-got.V) > got.Err || finer.Err > got.Err && len(with.Grids) > 3 {
		t.Errorf("%g ± %g becomes %g ± %g", got.V, got.Err, finer.V, finer.Err)
	}
	if math.Abs(finer.V-limit.V) > limit.Err+finer.Err || limit.Err > got.Err {
		t.Errorf("the limit %g ± %g becomes %g ± %g", limit.V, limit.Err, finer.V, finer.Err)
	}
	if finer.Err > 0.2*finer.V {
		t.Errorf("the bolt adds %g ± %g W", finer.V, finer.Err)
	}
}

// Results on other cells, or on too few grids, are not compared.
func TestAddedNeedsTheSameCells(t *testing.T) {
	a := solve(t, pierced(true), heat.Options{Error: 0.2, MaxCells: 3e5})
	b := solve(t, slab(3, 0.13, 0.04, []float64{12, 76, 12}, []float64{0.13, 0.036, 0.13}), heat.Options{})
	if v, ok := heat.Added(a, b, 0, false); ok || !math.IsInf(v.Err, 1) {
		t.Errorf("other cells give %+v", v)
	}
	if _, ok := heat.Added(b, b, 2, false); ok {
		t.Error("an environment that is not there gives heat")
	}
	if v, ok := heat.Added(b, b, 0, false); !ok || v != (heat.Value{}) {
		t.Errorf("a wall less itself is %+v", v)
	}
}
