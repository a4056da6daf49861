package layout

import (
	"math"
	"slices"
)

// FixedJoists tells quickly what one more fixed joist would make of a row: what lies left of a fixed joist
// and what lies right of it do not know of each other, so two walks over the rules serve every place.
type FixedJoists struct {
	r           JoistRules
	at          []spot
	left, right []run
}

// run is the fewest spaces from an end joist to a spot, and of those the least sum of their squares.
type run struct {
	count int
	cost  float64
}

// none is the count of spaces where there is no way.
const none = math.MaxInt

func (a run) better(b run) bool { return a.count < b.count || a.count == b.count && a.cost < b.cost }

// WithFixed makes the rules ready for With.
func (r JoistRules) WithFixed() *FixedJoists {
	f := &FixedJoists{r: r}
	if r.Spacing <= 0 || r.Last < r.First {
		return f
	}
	f.at = r.spots()
	f.left = f.walk(1)
	f.right = f.walk(-1)
	return f
}

// walk returns the best run to every spot from the first one going right, or from the last going left.
func (f *FixedJoists) walk(way int) []run {
	out := make([]run, len(f.at))
	for k := 1; k < len(f.at); k++ {
		i := k
		if way < 0 {
			i = len(f.at) - 1 - k
		}
		out[i] = f.reach(f.at[i].x, i-way, way, out)
	}
	return out
}

// reach returns the best run to a joist at x over the spots behind it, from one of them back.
func (f *FixedJoists) reach(x float64, from, way int, runs []run) run {
	best := run{none, math.Inf(1)}
	for j := from; j >= 0 && j < len(f.at); j -= way {
		d := math.Abs(x - f.at[j].x)
		if d > f.r.Spacing+slack {
			break
		}
		if p := runs[j]; p.count < none && d >= f.r.least()-slack {
			if c := (run{p.count + 1, p.cost + d*d}); c.better(best) {
				best = c
			}
		}
		if f.at[j].must {
			break
		}
	}
	return best
}

// With returns how many joists there are with one more fixed at x, and the sum of their squared spaces; false
// when no row can keep it.
func (f *FixedJoists) With(x float64) (n int, cost float64, ok bool) {
	if x > f.r.First+slack && x < f.r.Last-slack && len(f.at) > 0 {
		i, _ := slices.BinarySearchFunc(f.at, x, func(s spot, x float64) int {
			if s.x < x {
				return -1
			}
			return 1
		})
		left, right := f.reach(x, i-1, 1, f.left), f.reach(x, i, -1, f.right)
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
