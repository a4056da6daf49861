package layout

import (
	"cmp"
	"math"
	"slices"

	"standclear/detail/same"
)

// JoistRules is what the deck joists must keep.
type JoistRules struct {
	First, Last float64   // axes of the end joists
	Spacing     float64   // greatest, and the one wanted
	Grid        float64   // step for those that have to move
	Bolts       []float64 // bolt axes on the ledger, ascending
	Clear       float64   // least distance, joist axis to bolt axis
	Least       float64   // least distance between two axes; 0 is 50 mm
	Fixed       []float64 // axes where a joist must stand, such as beside a tension device
}

// Joists lays the deck joists from the first to the last axis: at the wanted spacing where no bolt is in
// the way and nothing is fixed; else as few as keep the spacing, miss the bolts and stand where they
// must, as evenly as they can. A run that cannot be kept clear stays at the spacing, and the checks
// report it. The list is shared with others who keep the same rules and must not be changed.
func Joists(r JoistRules) []float64 { return foundJoists.Get(same.Of(r), r.joists) }

func (r JoistRules) joists() []float64 {
	if r.Spacing <= 0 || r.Last < r.First {
		return []float64{r.First}
	}
	x := r.regular()
	if n := len(x); len(r.Fixed) > 0 || !r.allClear(x) || n > 1 && x[n-1]-x[n-2] < r.least()-slack {
		if y := r.evenly(); y != nil {
			return y
		}
	}
	return x
}

// regular steps from the first axis at the wanted spacing; what is left over lies at the far end.
func (r JoistRules) regular() []float64 {
	var x []float64
	for k := 0; r.First+float64(k)*r.Spacing < r.Last-slack; k++ {
		x = append(x, r.First+float64(k)*r.Spacing)
	}
	return append(x, r.Last)
}

func (r JoistRules) least() float64 {
	if r.Least > 0 {
		return r.Least
	}
	return 50
}

func (r JoistRules) allClear(x []float64) bool {
	return !slices.ContainsFunc(x, func(at float64) bool { return !r.Free(at) })
}

// Free reports whether a joist at that axis clears every bolt.
func (r JoistRules) Free(at float64) bool {
	return !slices.ContainsFunc(r.Bolts, func(b float64) bool { return math.Abs(b-at) < r.Clear-slack })
}

// evenly returns the row of fewest joists on the grid, and of those the one with the least sum of
// squared spaces; nil when no row misses the bolts. The end joists stand wherever they must.
func (r JoistRules) evenly() []float64 {
	w := r.walk()
	i := len(w.at) - 1
	here := w.to(w.at[i].x)
	if i == 0 || here.count == none {
		return nil
	}
	x := []float64{w.at[i].x}
	for i > 0 {
		i = w.before(i, here.count)
		here = w.runs[i]
		x = append(x, w.at[i].x)
	}
	slices.Reverse(x)
	return x
}

// spot is a place where a joist may, or must, stand.
type spot struct {
	x    float64
	must bool
}

// spots lists where a joist may stand, from the left: both ends, what is fixed, and the clear steps of
// the grid between them. Something fixed at an end joist is that joist.
func (r JoistRules) spots() []spot {
	step := r.Grid
	if step <= 0 {
		step = r.Spacing / 64
	}
	at := make([]spot, 0, 4+len(r.Fixed)+int(min(1e6, max(0, (r.Last-r.First)/step))))
	at = append(at, spot{r.First, true})
	near := 0 // the first bolt that is not left of the spot and clear of it
	for k := math.Floor(r.First/step) + 1; k*step < r.Last-slack; k++ {
		x := k * step
		for near < len(r.Bolts) && r.Bolts[near] <= x-r.Clear+slack {
			near++
		}
		if x > r.First+slack && (near == len(r.Bolts) || r.Bolts[near] >= x+r.Clear-slack) {
			at = append(at, spot{x, false})
		}
	}
	at = append(at, spot{r.Last, true})
	for _, f := range r.Fixed {
		if f > r.First+slack && f < r.Last-slack {
			n, _ := slices.BinarySearchFunc(at, f, func(s spot, x float64) int { return cmp.Compare(s.x, x) })
			at = slices.Insert(at, n, spot{f, true})
		}
	}
	return at
}
