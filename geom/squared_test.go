package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The lattice gives what the arrangement gives, vertex by vertex: rectangles on whole millimetres, so that
// edges lie on each other and corners touch.
func TestSquaredAsArranged(t *testing.T) {
	wanted := []func(a, b int32) bool{
		func(a, b int32) bool { return a > 0 }, func(a, b int32) bool { return a > 0 && b > 0 }, func(a, b int32) bool { return a > 0 && b <= 0 },
	}
	rnd := rand.New(rand.NewPCG(1, 2))
	rect := func() Region {
		x, y := float64(rnd.IntN(9)), float64(rnd.IntN(9))
		return Rect(x, y, x+1+float64(rnd.IntN(5)), y+1+float64(rnd.IntN(5)))
	}
	many := 0
	for n := range 3000 {
		var groups [2][]Region
		for g := range groups {
			for range 1 + rnd.IntN(5) {
				groups[g] = append(groups[g], rect())
			}
		}
		if n%3 == 0 { // rings with islands
			groups[0] = []Region{combineAny(groups, wanted[2])}
		}
		for k, w := range wanted {
			want := combineAny(groups, w)
			got, ok := combineSquared(groups, w)
			if !ok || !sameRegion(got, want) {
				t.Fatalf("%d, %d of %v: %v, %v, want %v", n, k, groups, ok, got, want)
			}
			if len(got) > 1 {
				many++
			}
		}
	}
	if many < 1000 {
		t.Errorf("only %d results of several rings", many)
	}
}

func sameRegion(a, b Region) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if len(a[i].V) != len(b[i].V) || !a[i].Closed {
			return false
		}
		for k, v := range a[i].V {
			if w := b[i].V[k]; math.Hypot(v.X-w.X, v.Y-w.Y) > 1e-9 || v.Bulge != w.Bulge {
				return false
			}
		}
	}
	return true
}

// What is slanting, round, or nearer than may be told apart goes the long way.
func TestNotSquared(t *testing.T) {
	for name, r := range map[string]Region{
		"a slanting edge": {Polygon(Vec{0, 0}, Vec{9, 1}, Vec{9, 9}, Vec{0, 9})},
		"a disc":          Circle(Vec{5, 5}, 3),
		"nearly one line": append(Rect(0, 0, 5, 5), Rect(5+Tol/2, 0, 9, 5)...),
	} {
		if _, ok := combineSquared([2][]Region{{r}}, func(a, b int32) bool { return a > 0 }); ok {
			t.Errorf("%s was taken for squared", name)
		}
	}
	// Two boxes half a Tol apart are one: 9 by 5.
	if r := Union(Rect(0, 0, 5, 5), Rect(5+Tol/2, 0, 9, 5)); len(r) != 1 || math.Abs(r.Area()-45) > 1e-5 {
		t.Errorf("%v", r)
	}
}
