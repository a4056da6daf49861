package layout

import (
	"math"
	"math/rand"
	"slices"
	"testing"
)

func TestJoistsByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		r    JoistRules
		want []float64
	}{
		// 174 1/2 in from axis to axis are ten spaces of 16 in and one of 14 1/2 in at the far end.
		{"at the spacing", JoistRules{First: 0.75, Last: 175.25, Spacing: 16},
			[]float64{0.75, 16.75, 32.75, 48.75, 64.75, 80.75, 96.75, 112.75, 128.75, 144.75, 160.75, 175.25}},
		{"at the spacing, nothing left over", JoistRules{First: 0, Last: 60, Spacing: 20}, []float64{0, 20, 40, 60}},
		{"bolts that are clear move nothing", JoistRules{First: 0, Last: 50, Spacing: 20, Grid: 1, Bolts: []float64{10, 30}, Clear: 10}, []float64{0, 20, 40, 50}},
		{"one space", JoistRules{First: 0, Last: 15, Spacing: 16}, []float64{0, 15}},
		// 100 and then 120 mm stand either side of a joist at 100: two spaces of 50 and two of 60 are fewest and evenest.
		{"through what is fixed", JoistRules{First: 0, Last: 220, Spacing: 70, Grid: 1, Fixed: []float64{100}}, []float64{0, 50, 100, 160, 220}},
		// 300 mm at 110 take three spaces of 100, and 100 lies 20 from the bolt: as near as 25 lets it, 95, then
		// (300 - 95)/2 = 102.5 each, on the grid of 5 one of 100 and one of 105.
		{"round a bolt, as evenly as it can", JoistRules{First: 0, Last: 300, Spacing: 110, Grid: 5, Bolts: []float64{120}, Clear: 25}, []float64{0, 95, 195, 300}},
		// Something fixed at an end joist is the end joist; 50 mm from it, the least by default, it stands beside it.
		{"fixed at the end", JoistRules{First: 0, Last: 300, Spacing: 100, Grid: 5, Fixed: []float64{0, 300}}, []float64{0, 100, 200, 300}},
		{"fixed beside the end", JoistRules{First: 0, Last: 300, Spacing: 100, Grid: 5, Fixed: []float64{50, 250}}, []float64{0, 50, 150, 250, 300}},
		// What is left over, 10 mm, is less than a joist is wide: four spaces of 100 and one of 10 become 82 each.
		{"no sliver at the far end", JoistRules{First: 0, Last: 410, Spacing: 100, Grid: 1}, []float64{0, 82, 164, 246, 328, 410}},
		{"fixed just farther", JoistRules{First: 0, Last: 300, Spacing: 100, Grid: 5, Fixed: []float64{51}}, []float64{0, 51, 135, 215, 300}},
		{"no spacing", JoistRules{First: 5, Last: 300}, []float64{5}},
		{"ends crossed", JoistRules{First: 30, Last: 10, Spacing: 16}, []float64{30}},
	} {
		if got := Joists(c.r); !alike(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// alike also takes the row mirrored between two fixed joists: the spaces are the same, so is the cost.
func alike(got, want []float64) bool {
	if len(got) != len(want) {
		return false
	}
	return math.Abs(squares(got)-squares(want)) < 1e-6 && got[0] == want[0] && got[len(got)-1] == want[len(want)-1]
}

func squares(x []float64) float64 {
	s := 0.0
	for i := 1; i < len(x); i++ {
		s += (x[i] - x[i-1]) * (x[i] - x[i-1])
	}
	return s
}

// Where bolts wall off more than one space, no row can be kept: the joists stay at the spacing, on
// the bolts, for the checks to find. Bolts at 15, 20 and 25 with 6 clear leave nothing between 9 and 31, which
// is 22 of a spacing of 10.
func TestJoistsThatCannotBeKept(t *testing.T) {
	r := JoistRules{First: 0, Last: 40, Spacing: 10, Grid: 1, Bolts: []float64{15, 20, 25}, Clear: 6, Least: 5}
	want := []float64{0, 10, 20, 30, 40}
	if got := Joists(r); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	r.Spacing = 22
	if got, want := Joists(r), []float64{0, 9, 31, 40}; !slices.Equal(got, want) {
		t.Errorf("with 22 they must stand on either side of the bolts: %v, want %v", got, want)
	}
}

func TestFree(t *testing.T) {
	r := JoistRules{Bolts: []float64{100, 300}, Clear: 40}
	for _, c := range []struct {
		at   float64
		free bool
	}{{60, true}, {60.1, false}, {100, false}, {139.9, false}, {140, true}, {200, true}, {261, false}, {340, true}} {
		if r.Free(c.at) != c.free {
			t.Errorf("at %.1f free is %v", c.at, !c.free)
		}
	}
}

// random rules with up to two fixed joists, away from the ends and not in each other's place.
func randomJoists(rnd *rand.Rand) JoistRules {
	r := JoistRules{First: float64(rnd.Intn(40)), Spacing: 100 + float64(rnd.Intn(120)), Grid: 10, Clear: float64(20 + rnd.Intn(30))}
	r.Last = r.First + 400 + float64(rnd.Intn(500))
	for x := r.First + float64(rnd.Intn(100)); x < r.Last; x += 90 + float64(rnd.Intn(150)) {
		r.Bolts = append(r.Bolts, x)
	}
	for range rnd.Intn(3) {
		f := r.First + 60 + rnd.Float64()*(r.Last-r.First-120)
		if len(r.Fixed) == 0 || math.Abs(r.Fixed[0]-f) > 40 {
			r.Fixed = append(r.Fixed, f)
		}
	}
	return r
}

// Laws of a row that can be kept: it runs from end joist to end joist, no space is over the
// spacing, everything fixed is there, and whatever was moved misses the bolts.
func TestJoistLaws(t *testing.T) {
	rnd := rand.New(rand.NewSource(7))
	kept := 0
	for n := range 600 {
		r := randomJoists(rnd)
		x := Joists(r)
		if x[0] != r.First || x[len(x)-1] != r.Last || !slices.IsSorted(x) {
			t.Fatalf("%d: %+v runs %v", n, r, x)
		}
		for i := 1; i < len(x); i++ {
			if x[i]-x[i-1] > r.Spacing+slack || x[i]-x[i-1] < slack {
				t.Errorf("%d: a space of %.3f in %v, at most %.1f", n, x[i]-x[i-1], x, r.Spacing)
			}
		}
		if r.evenly() == nil {
			continue // stays at the spacing
		}
		kept++
		for _, f := range r.Fixed {
			if !slices.Contains(x, f) {
				t.Errorf("%d: nothing at the fixed %.3f in %v", n, f, x)
			}
		}
		for _, at := range x[1 : len(x)-1] {
			if !slices.Contains(r.Fixed, at) && !r.Free(at) {
				t.Errorf("%d: the joist at %.1f is on a bolt of %v", n, at, r.Bolts)
			}
		}
	}
	if kept < 200 {
		t.Errorf("only %d rows could be kept: the law is hardly tried", kept)
	}
}

// The row is of the fewest joists, found by stepping as far as each space reaches, and for that
// number no row is evener: a table by count of joists, another way than the program's.
func TestJoistsAreFewestAndEvenest(t *testing.T) {
	rnd := rand.New(rand.NewSource(11))
	for n := range 200 {
		r := randomJoists(rnd)
		x := r.evenly()
		if x == nil {
			continue
		}
		at := r.spots()
		if want := fewestByReach(at, r.Spacing); len(x) != want {
			t.Errorf("%d: %d joists, %d would do", n, len(x), want)
			continue
		}
		if want := evenestOf(at, r.Spacing, len(x)); squares(x) > want+1e-6 {
			t.Errorf("%d: squared spaces come to %.3f, %.3f can be had", n, squares(x), want)
		}
	}
}

// fewestByReach steps from each joist to the farthest spot in reach that skips nothing fixed.
func fewestByReach(at []spot, reach float64) int {
	count, i := 1, 0
	for i < len(at)-1 {
		next := i
		for j := i + 1; j < len(at) && at[j].x-at[i].x <= reach+slack; j++ {
			next = j
			if at[j].must {
				break
			}
		}
		if next == i {
			return 0
		}
		i, count = next, count+1
	}
	return count
}

// evenestOf returns the least sum of squared spaces of exactly n joists.
func evenestOf(at []spot, reach float64, n int) float64 {
	cost := make([]float64, len(at))
	for i := range cost {
		cost[i] = math.Inf(1)
	}
	cost[0] = 0
	for range n - 1 {
		next := make([]float64, len(at))
		for i := range next {
			next[i] = math.Inf(1)
			for j := range i {
				d := at[i].x - at[j].x
				if d > reach+slack || slices.ContainsFunc(at[j+1:i], func(s spot) bool { return s.must }) {
					continue
				}
				next[i] = math.Min(next[i], cost[j]+d*d)
			}
		}
		cost = next
	}
	return cost[len(at)-1]
}
