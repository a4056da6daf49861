package layout

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"standclear/detail/same"
)

// FixedJoists tells quickly what one more fixed joist would make of a row: what lies left of a fixed joist
// and what lies right of it do not know of each other, so two walks over the rules serve every place.
type FixedJoists struct {
	mu          sync.Mutex // of the walks
	r           JoistRules
	left, right walk
}

// WithFixed makes the rules ready for With.
func (r JoistRules) WithFixed() *FixedJoists { return fixedJoists.Get(same.Of(r), r.withFixed) }

func (r JoistRules) withFixed() *FixedJoists {
	f := &FixedJoists{r: r}
	if r.Spacing <= 0 || r.Last < r.First {
		return f
	}
	f.left = r.walk()
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
	lower     bool  // some run is shorter than one before it
	from      int   // the first spot within reach of the last that was walked over
}

// walk begins a walk over the spots of the rules.
func (r JoistRules) walk() walk {
	return walk{near: r.least() - slack, far: r.Spacing + slack, at: r.spots()}
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
	n := w.first(x)
	for i := len(w.runs); i < n; i++ {
		if i == 0 {
			w.runs = append(make([]run, 0, len(w.at)), run{})
			continue
		}
		for w.at[i].x-w.at[w.from].x > w.far {
			w.from++
		}
		r := w.step(w.at[i].x, w.from, i)
		w.lower = w.lower || r.count < w.runs[i-1].count
		w.runs = append(w.runs, r)
		if w.at[i].must {
			w.from = i
		}
	}
	from := n
	for from > 0 && x-w.at[from-1].x <= w.far && (from == n || !w.at[from].must) {
		from--
	}
	return w.step(x, from, n)
}

// first is the number of the first spot at x or right of it.
func (w *walk) first(x float64) int {
	n, _ := slices.BinarySearchFunc(w.at, x, func(s spot, x float64) int { return cmp.Compare(s.x, x) })
	return n
}

// step returns the best run to x by a last space from one of the spots between two.
func (w *walk) step(x float64, from, to int) run {
	best := run{none, math.Inf(1)}
	for j := from; j < to && x-w.at[j].x >= w.near; j++ {
		r := w.runs[j]
		if r.count >= best.count {
			if w.lower {
				continue
			}
			break // as are those behind it
		}
		d := x - w.at[j].x
		if c := (run{r.count + 1, r.cost + d*d}); c.count < best.count || c.cost < best.cost {
			best = c
		}
	}
	return best
}

// before returns the spot before the i-th on the best run to it, of so many spaces; of those as good to within the
// slack, the nearest.
func (w *walk) before(i, count int) int {
	best, cost := -1, math.Inf(1)
	for j := i - 1; j >= 0 && w.at[i].x-w.at[j].x <= w.far; j-- {
		d := w.at[i].x - w.at[j].x
		if c := w.runs[j].cost + d*d; d >= w.near && w.runs[j].count == count-1 && c < cost-slack {
			best, cost = j, c
		}
		if w.at[j].must {
			break
		}
	}
	return best
}

// With returns how many joists there are with one more fixed at x, and the sum of their squared spaces; false
// when no row can keep it.
func (f *FixedJoists) With(x float64) (n int, cost float64, ok bool) {
	if x > f.r.First+slack && x < f.r.Last-slack && len(f.left.at) > 0 {
		f.mu.Lock()
		left, right := f.left.to(x), f.right.to(-x)
		f.mu.Unlock()
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
	x := r.joists()
	for i, at := range x {
		ok = ok || math.Abs(at-fixed) < slack
		if i > 0 {
			cost += (at - x[i-1]) * (at - x[i-1])
		}
	}
	return len(x), cost, ok
}
