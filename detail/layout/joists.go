package layout

import "math"

// JoistRules is what the deck joists must keep.
type JoistRules struct {
	First, Last float64   // axes of the end joists
	Spacing     float64   // greatest, and the one wanted
	Grid        float64   // step for those that have to move
	Bolts       []float64 // bolt axes on the ledger, ascending
	Clear       float64   // least distance, joist axis to bolt axis
}

// Joists lays the deck joists from the first to the last axis: each at the wanted spacing from the
// one before, or as far as it can go where a bolt is in the way. A joist that cannot be kept clear
// stays at the spacing; the checks report it.
func Joists(r JoistRules) []float64 {
	if r.Spacing <= 0 || r.Last < r.First {
		return []float64{r.First}
	}
	x := []float64{r.First}
	for at := r.First; r.Last-at > r.Spacing+slack; {
		at = r.next(at)
		x = append(x, at)
	}
	if r.Last-x[len(x)-1] > slack {
		x = append(x, r.Last)
	}
	return x
}

// next returns the joist after the one at from. The last but one splits what is left in two, so that
// no two joists stand side by side at the end.
func (r JoistRules) next(from float64) float64 {
	if left := r.Last - from; left < 1.4*r.Spacing {
		return r.near(from+left/2, 0.4*left)
	}
	want := from + r.Spacing
	for at := want; at > from+r.Spacing/4; at -= r.step() {
		if r.clear(at) {
			return at
		}
	}
	return want
}

// near returns the clear place nearest to at within d of it, or at itself when there is none.
func (r JoistRules) near(at, d float64) float64 {
	at = math.Round(at/r.step()) * r.step()
	for k := 0.0; k <= d; k += r.step() {
		for _, x := range []float64{at - k, at + k} {
			if r.clear(x) && r.Last-x <= r.Spacing+slack {
				return x
			}
		}
	}
	return at
}

func (r JoistRules) step() float64 {
	if r.Grid > 0 {
		return r.Grid
	}
	return r.Spacing / 64
}

func (r JoistRules) clear(at float64) bool {
	for _, b := range r.Bolts {
		if math.Abs(b-at) < r.Clear-slack {
			return false
		}
	}
	return true
}
