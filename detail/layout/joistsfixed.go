package layout

import (
	"cmp"
	"math"
	"slices"
)

// FixedJoists tells quickly what one more fixed joist would make of a row: what lies left of a fixed joist
// and what lies right of it do not know of each other, so two walks over the rules serve every place.
type FixedJoists struct {
	r           JoistRules
	left, right walk
}

// WithFixed makes the rules ready for With.
func (r JoistRules) WithFixed() *FixedJoists {
	f := &FixedJoists{r: r}
	if r.Spacing <= 0 || r.Last < r.First {
		return f
	}
	f.left = walk{near: r.least() - slack, far: r.Spacing + slack, at: r.spots()}
	f.right = f.left
	f.right.at = slices.Clone(f.left.at)
	slices.Reverse(f.right.at)
	for i := range f.right.at {
		f.right.at[i].x = -f.right.at[i].x
	}
	return f
}

// walk finds the best runs over spots from the first of them on, as far as it is asked.
type walk struct {
	near, far float64
	at        []spot
	runs      []run // of the spots walked over
}

// run is the fewest spaces from the first spot, and of those the least sum of their squares.
type run struct {
	count int
	cost  float64
}

// none is the count of spaces where there is no way.
const none = math.MaxInt

// to returns the best run to a joist at x.
func (w *walk) to(x float64) run {
	n, _ := slices.BinarySearchFunc(w.at, x, func(s spot, x float64) int { return cmp.Compare(s.x, x) })
	for i := len(w.runs); i < n; i++ {
		if i == 0 {
			w.runs = append(make([]run, 0, len(w.at)), run{})
			continue
		}
		w.runs = append(w.runs, w.step(w.at[i].x, i-1))
	}
	return w.step(x, n-1)
}

// step returns the best run to x by a last space from one of the spots from j back.
func (w *walk) step(x float64, j int) run {
	best := run{none, math.Inf(1)}
	for ; j >= 0; j-- {
		s := w.at[j]
		d := x - s.x
		if d > w.far {
			break
		}
		if d >= w.near && w.runs[j].count < best.count {
			if c := (run{w.runs[j].count + 1, w.runs[j].cost + d*d}); c.count < best.count || c.cost < best.cost {
				best = c
			}
		}
		if s.must {
			break
		}
	}
	return best
}

// With returns how many joists there are with one more fixed at x, and the sum of their squared spaces; false
// when no row can keep it.
func (f *FixedJoists) With(x float64) (n int, cost float64, ok bool) {
	if x > f.r.First+slack && x < f.r.Last-slack && len(f.left.at) > 0 {
		left, right := f.left.to(x), f.right.to(-x)
		if left.count < none && right.count < none {
			return left.count + right.count + 1, left.cost + right.cost, true
		}
	}
	return f.slow(x)
}

// slow lays the row out.
func (f *FixedJoists) slow(fixed float64) (n int, cost float64, ok bool) {
	r := f.r
	r.Fixed = append(slices.Clone(r.Fixed), fixed)
	x := Joists(r)
	for i, at := range x {
		ok = ok || math.Abs(at-fixed) < slack
		if i > 0 {
			cost += (at - x[i-1]) * (at - x[i-1])
		}
	}
	return len(x), cost, ok
}
