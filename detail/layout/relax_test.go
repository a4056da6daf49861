package layout

import (
	"math/rand/v2"
	"slices"
	"sync"
	"testing"
)

// Where the rules cannot be kept, the spacing the row is relaxed to is the least on the grid at which there is a row:
// at it there is the row that was found, one step under it there is none, each looked for with nothing left of before.
func TestRelaxedToTheLeast(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 0x1a))
	relaxed := 0
	for n := range 1500 {
		rules := deckMetric()
		rules.MaxSpacing, rules.EndMax, rules.Avoid = 300+400*r.Float64(), 200+200*r.Float64(), nil
		from := 300 + 3000*r.Float64()
		rules.Outside = []Zone{{Name: "duct", From: from, To: from + 600 + 300*r.Float64()}}
		got := Find(rules)
		if got.Unplaced {
			if rules.fewest(anew(rules)) > 0 {
				t.Errorf("%d: no row was found at any spacing, and there is one", n)
			}
			continue
		}
		if got.Limit <= rules.MaxSpacing {
			continue
		}
		relaxed++
		if x, _ := rules.search(rules.free(), got.Limit); len(x) < 2 || !slices.Equal(x, got.X) {
			t.Errorf("%d: at %g another row than was found", n, got.Limit)
		}
		if x, _ := rules.search(rules.free(), got.Limit-rules.Grid); x != nil && got.Limit-rules.Grid > rules.MaxSpacing {
			t.Errorf("%d: relaxed to %g, a step less would do", n, got.Limit)
		}
	}
	if relaxed < 200 {
		t.Errorf("only %d of the rules were relaxed", relaxed)
	}
}

// anew is what fewest takes for any spacing, in memory nobody used.
func anew(r Rules) (s spots, reach, lo, hi int) {
	s = r.free()
	lo, hi = r.ends(s)
	return s, len(s.ok), lo, hi
}

// Two who ask for a fixed joist at the same time get what each gets alone.
func TestFixedJoistsAtTheSameTime(t *testing.T) {
	rules := JoistRules{First: 19, Last: 4451, Spacing: 406.4, Grid: 6.35, Bolts: []float64{900, 1500, 2100, 2700}, Clear: 60}
	type answer struct {
		n    int
		cost float64
		ok   bool
	}
	ask := func(f *FixedJoists, x float64) (a answer) {
		a.n, a.cost, a.ok = f.With(x)
		return a
	}
	shared := rules.withFixed()
	var wait sync.WaitGroup
	for from := range 2 {
		wait.Go(func() {
			for i := range 300 {
				x := 100 + float64((i*7+from*150)%300)*14
				if got, want := ask(shared, x), ask(rules.withFixed(), x); got != want {
					t.Errorf("at %g: %v, alone %v", x, got, want)
				}
			}
		})
	}
	wait.Wait()
}
