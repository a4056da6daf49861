package heat_test

import (
	"math"
	"testing"

	"standclear/detail/heat"
)

// added is what Added says where three grids, of 1, 2 and 3 parts, find these flows, and nothing without.
func added(t *testing.T, v [3]float64, limit bool) heat.Value {
	t.Helper()
	with, without := &heat.Result{Envs: make([]heat.EnvResult, 1)}, &heat.Result{Envs: make([]heat.EnvResult, 1)}
	for i, q := range v {
		with.Grids = append(with.Grids, heat.Grid{Parts: i + 1, Flow: []float64{q}})
		without.Grids = append(without.Grids, heat.Grid{Parts: i + 1, Flow: []float64{0}})
	}
	got, ok := heat.Added(with, without, 0, limit)
	if !ok {
		t.Fatalf("%v on the same cells are not ok", v)
	}
	return got
}

// Richardson's extrapolation by hand. Values 10 + 3 h^p for cells of 1, 1/2 and 1/3, so that 3 h^p is left in the last:
//
//	p 0.75   believed: 3 x 0.43869 = 1.31607 left
//	p 2      too good: the first step, 3 x 0.75 = 2.25, over the 3 of order 1 counts as the last, and 0.75 x (1/3)/(1/2 - 1/3) = 1.5 is left
//	p 0.25   too slow: the last step, 3 x (0.84090 - 0.75984) = 0.24319, leaves x 0.57735/(0.70711 - 0.57735) = 1.08204 at order 0.5
//
// The error is twice what is left, or half as much again of a limit, which lies what is left beyond the last value: 10 where
// the order is believed. Values that swing have no limit.
func TestErrorByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		v    [3]float64
		left float64
	}{
		{"order 0.75", [3]float64{13, 10 + 3*math.Pow(0.5, 0.75), 10 + 3*math.Pow(1./3, 0.75)}, 1.31607},
		{"falling", [3]float64{7, 10 - 3*math.Pow(0.5, 0.75), 10 - 3*math.Pow(1./3, 0.75)}, 1.31607},
		{"order 2", [3]float64{13, 10.75, 10 + 1./3}, 1.5},
		{"order 0.25", [3]float64{13, 10 + 3*math.Pow(0.5, 0.25), 10 + 3*math.Pow(1./3, 0.25)}, 1.08204},
		{"all the same", [3]float64{10, 10, 10}, 0},
	} {
		got := added(t, c.v, false)
		near(t, c.name, got.V, c.v[2], 1e-12)
		near(t, c.name+", error", got.Err, 2*c.left, 2e-5)
		limit := added(t, c.v, true)
		near(t, c.name+", limit", limit.V, c.v[2]+math.Copysign(c.left, c.v[2]-c.v[1]), 2e-5)
		if c.left > 0 {
			near(t, c.name+", error of the limit", limit.Err, 1.5*c.left, 2e-5)
		}
	}
	swings := [3]float64{13, 9, 11}
	if a, b := added(t, swings, false), added(t, swings, true); a != b || a.V != 11 || a.Err <= 0 {
		t.Errorf("values that swing: %+v, and a limit of %+v", a, b)
	}
}
