package layout

import (
	"math"
	"testing"
)

const in = 25.4

func joists(first, step, length float64) []float64 {
	var j []float64
	for x := first; x < length; x += step {
		j = append(j, x)
	}
	return j
}

func deck() Rules {
	return Rules{Length: 176 * in, Width: 7 * in, Columns: []float64{0}, MaxSpacing: 24 * in,
		EndMin: 4.5 * in, EndMax: 10 * in, Grid: in / 4, Avoid: []Axes{{"house joist", joists(7.2*in, 19.2*in, 176*in), 2.5 * in}}}
}

func balcony() Rules {
	return Rules{Length: 102 * in, Width: 7 * in, Columns: []float64{0}, MaxSpacing: 24 * in,
		EndMin: 4.5 * in, EndMax: 10 * in, Grid: in / 4, Avoid: []Axes{{"house joist", joists(3*in, 16*in, 102*in), 2.25 * in}}}
}

func deckMetric() Rules {
	return Rules{Length: 4600, Width: 180, Columns: []float64{0}, MaxSpacing: 600, EndMin: 115, EndMax: 260, Grid: 5,
		Avoid: []Axes{{"house joist", joists(150, 480, 4600), 65}}}
}

func balconyMetric() Rules {
	return Rules{Length: 2500, Width: 180, Columns: []float64{0}, MaxSpacing: 600, EndMin: 115, EndMax: 260, Grid: 5,
		Avoid: []Axes{{"house joist", joists(80, 400, 2500), 60}}}
}

func TestEqualDivisionFirst(t *testing.T) {
	// Worked by hand: (176 - 2 x 6.5)/7 = 23.286; (102 - 13)/4 = 22.25; (4600 - 330)/8 = 533.75; (2500 - 330)/4 = 542.5.
	for _, c := range []struct {
		name  string
		r     Rules
		n     int
		space float64
	}{
		{"deck", deck(), 8, 23.2857 * in}, {"balcony", balcony(), 5, 22.25 * in},
		{"deck metric", deckMetric(), 9, 533.75}, {"balcony metric", balconyMetric(), 5, 542.5},
	} {
		x := c.r.EqualRow()
		if len(x) != c.n || math.Abs(x[1]-x[0]-c.space) > 0.01*in {
			t.Errorf("%s: %d blocks at %.3f, want %d at %.3f", c.name, len(x), x[1]-x[0], c.n, c.space)
		}
	}
}

func TestClashesOfFirstGuess(t *testing.T) {
	// B1 at 6.5 is 0.70 in from the joist at 7.2; B6 at 122.929 is 0.53 in from the one at 122.4.
	got := deck().Judge(deck().EqualRow()).Clashes
	want := map[int]float64{0: 0.70 * in, 5: 0.529 * in}
	if len(got) != 2 {
		t.Fatalf("clashes %v, want B1 and B6", got)
	}
	for _, c := range got {
		if d, ok := want[c.Block]; !ok || math.Abs(c.Distance-d) > 0.01*in {
			t.Errorf("clash %+v not expected", c)
		}
	}
}

func TestLayoutsWorkedElsewhere(t *testing.T) {
	scale := func(k float64, x ...float64) []float64 {
		for i := range x {
			x[i] *= k
		}
		return x
	}
	duct := deck()
	duct.Inside = []Zone{{Name: "duct", From: 66 * in, To: 80 * in}}
	lamp := balcony()
	lamp.Inside = []Zone{{Name: "lamp", From: 60 * in, To: 70 * in}}
	for _, c := range []struct {
		name string
		r    Rules
		x    []float64
	}{
		{"deck", deck(), scale(in, 9.75, 29.75, 50, 70.25, 90.5, 110.75, 131, 151.25, 171.5)},
		{"deck with duct", duct, scale(in, 10, 33.25, 56.75, 80.25, 98.5, 116.75, 135, 153.25, 171.5)},
		{"balcony", balcony(), scale(in, 5.25, 27, 48.75, 72, 95.25)},
		{"balcony with lamp box", lamp, scale(in, 5.25, 27, 48.75, 72, 95.25)},
		{"deck metric", deckMetric(), scale(1, 215, 735, 1255, 1780, 2305, 2830, 3355, 3880, 4405)},
		{"balcony metric", balconyMetric(), scale(1, 140, 680, 1220, 1785, 2350)},
	} {
		r := Find(c.r)
		if !r.Feasible || len(r.X) != len(c.x) {
			t.Errorf("%s: %v feasible %v", c.name, scale(1/in, r.X...), r.Feasible)
			continue
		}
		if known := c.r.Judge(c.x); len(known.Clashes) != 0 {
			t.Errorf("%s: the row known to be good breaks %v", c.name, known.Clashes)
		}
		if cost, want := uneven(c.r, r.X), uneven(c.r, c.x); cost > want+1e-6 {
			t.Errorf("%s: unevenness %.4f is worse than the row known, %.4f", c.name, cost, want)
		}
	}
}

// uneven is what the search makes least: the sum of squared spaces, twice the squared ends, and lever at both.
func uneven(r Rules, x []float64) float64 {
	e0, e1 := x[0], r.Length-x[len(x)-1]
	n := len(x) - 1
	s := 2*e0*e0 + 2*e1*e1 + lever(e0, x[1]-x[0]) + lever(e1, x[n]-x[n-1])
	for i := 1; i < len(x); i++ {
		d := x[i] - x[i-1]
		s += d * d
	}
	return s
}

func TestBlockedBayAsksForMoreSpacing(t *testing.T) {
	r := deck()
	r.Inside = []Zone{{Name: "duct", From: 64.8 * in, To: 84 * in}}
	got := Find(r)
	if got.Feasible || math.Abs(got.Limit-24.25*in) > 1e-6 {
		t.Fatalf("limit %.3f in feasible %v, want 24.25 and not feasible", got.Limit/in, got.Feasible)
	}
}

// A ledger of any length has its blocks: sums of a thousand squares are rounded, and no row is lost to that.
func TestLongLedgersHaveBlocks(t *testing.T) {
	for n := range 40 {
		length := 150e3 + 7919.3*float64(n)
		found := Find(Rules{Length: length, Width: 222, Columns: []float64{-60, 60}, MaxSpacing: 400 + 11.3*float64(n), EndMin: 120, EndMax: 320, Grid: 12.7,
			Avoid: []Axes{{Kind: "house joist", At: joists(100, 406.4, length), Clear: 40}}})
		if found.Feasible && len(found.X) < 2 {
			t.Errorf("%.0f mm: %d blocks", length, len(found.X))
		}
	}
}
