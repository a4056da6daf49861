package together

import (
	"slices"
	"sync/atomic"
	"testing"
)

func TestEachDoesEveryOneOnce(t *testing.T) {
	for _, n := range []int{0, 1, 100} {
		done := make([]int, n)
		Each(n, func(i int) { done[i]++ })
		if slices.ContainsFunc(done, func(k int) bool { return k != 1 }) {
			t.Errorf("of %d: %v", n, done)
		}
	}
}

// A panic comes back on the goroutine of the caller, who can recover from it, and ends the rest.
func TestEachPanicsWithTheValue(t *testing.T) {
	var after atomic.Int64
	defer func() {
		if r := recover(); r != "third" {
			t.Errorf("recovered %v", r)
		}
		if n := after.Load(); n > 1000 {
			t.Errorf("%d more were begun", n)
		}
	}()
	Each(1e6, func(i int) {
		if i == 3 {
			panic("third")
		}
		if i > 3 {
			after.Add(1)
		}
	})
	t.Error("no panic")
}
