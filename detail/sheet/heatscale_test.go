package sheet

import (
	"math"
	"slices"
	"testing"

	"standclear/detail/check/thermal"
	"standclear/detail/unit"
	"standclear/render"
)

// Round steps, no more bands than there are grounds: 38 K from -18 C to 20 C is eight bands of 5 K, the
// ends cut; the same in F, -0.4 to 68, is seven of 10 F, for the isotherm of 0 F would run along the
// outside.
func TestIsothermsAreRound(t *testing.T) {
	for _, c := range []struct {
		name    string
		sys     unit.System
		in, out unit.Temp
		step    float64
		levels  []float64
	}{
		{"metric", unit.SI, 20, -18, 5, []float64{-15, -10, -5, 0, 5, 10, 15}},
		{"inch", unit.IP, 20, -18, 10, []float64{10, 20, 30, 40, 50, 60}},
		{"mild", unit.SI, 20, 8, 2, []float64{10, 12, 14, 16, 18}},
		{"arctic", unit.SI, 22, -50, 10, []float64{-40, -30, -20, -10, 0, 10, 20}},
		{"a degree", unit.SI, 20, 19, 1, nil},
	} {
		h := heatScale{sys: c.sys, in: c.in, out: c.out, stated: true}
		if h.step() != c.step || !slices.Equal(h.levels(), c.levels) {
			t.Errorf("%s: every %g: %v, want every %g: %v", c.name, h.step(), h.levels(), c.step, c.levels)
		}
		for _, v := range c.levels {
			if got := h.value(h.factor(v)); math.Abs(got-v) > 1e-9 {
				t.Errorf("%s: %g comes back as %g", c.name, v, got)
			}
		}
	}
	bare := heatScale{}
	if want := []float64{0.2, 0.4, 0.6, 0.8}; len(bare.levels()) != 4 || math.Abs(bare.levels()[3]-want[3]) > 1e-12 || bare.text(0.2) != "0.2" {
		t.Errorf("without temperatures: %v, want %v", bare.levels(), want)
	}
}

func TestGroundsRiseWithTheBands(t *testing.T) {
	for n := 2; n <= mostBands; n++ {
		if ground(0, n) != render.Heat1 || ground(n-1, n) != render.Heat8 {
			t.Errorf("%d bands run from %v to %v", n, ground(0, n), ground(n-1, n))
		}
		for k := 1; k < n; k++ {
			if ground(k, n) <= ground(k-1, n) {
				t.Errorf("%d bands: band %d is no warmer than the one before", n, k)
			}
		}
	}
}

func TestErrorsAreRoundedUp(t *testing.T) {
	for _, c := range []struct {
		v    thermal.Value
		d    int
		want string
	}{
		{thermal.Value{V: 48.16, Err: 0.21}, 1, "48.2 ±0.3"},
		{thermal.Value{V: 0.71, Err: 0.004}, 3, "0.710 ±0.004"},
		{thermal.Value{V: 9.31, Err: -1}, 1, "9.3 ±?"},
		{thermal.Value{V: 9.31, Err: math.Inf(1)}, 1, "9.3 ±?"},
		{thermal.Value{V: -0.04, Err: 0.01}, 1, "0.0 ±0.1"},
		{thermal.Value{V: 0.5}, 2, "0.50"},
	} {
		if got := plusMinus(c.v, c.d); got != c.want {
			t.Errorf("%+v to %d: %q, want %q", c.v, c.d, got, c.want)
		}
	}
	for v, want := range map[float64]int{1234: 0, 149: 0, 38.9: 1, 3.07: 2, 0.802: 3, 0.0547: 4, 0: 1} {
		if got := decimals(v); got != want {
			t.Errorf("%g has %d decimals, want %d", v, got, want)
		}
	}
}

func TestLetters(t *testing.T) {
	if got := letter(0) + letter(8) + letter(23) + letter(24); got != "AJZA2" {
		t.Errorf("letters %s", got)
	}
}
