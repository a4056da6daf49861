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

// Room air of 20 C and 50 % drops its water at 9.27 C, of 24 C and 60 % at 15.76 C, of 20 C and 35 % at
// 4.09 C (ISO 13788:2012, annex E, worked by hand); at 20 C and 20 % the pressure of 467.4 Pa is that over
// ice at 265.5 ln(467.4/610.5) / (21.875 - ln(467.4/610.5)) = -3.20 C.
func TestDewPoint(t *testing.T) {
	for _, c := range []struct {
		air  unit.Temp
		rh   unit.Percent
		want float64
	}{{20, 0.5, 9.27}, {24, 0.6, 15.76}, {20, 0.35, 4.09}, {20, 0.2, -3.20}, {20, 1, 20}, {-5, 1, -5}} {
		if got := float64(dewPoint(c.air, c.rh)); math.Abs(got-c.want) > 0.01 {
			t.Errorf("air of %g C and %g: %.3f C, want %.2f", float64(c.air), float64(c.rh), got, c.want)
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

// One W/K is 3600 s/h / 1055.056 J / 1.8 F = 1.89563 Btu/(h F); over a foot, 0.3048 m, 0.577789; a
// resistance goes the other way with the square foot.
func TestInchUnitsOfHeat(t *testing.T) {
	flow := 3600 / 1055.05585262 / 1.8
	for _, c := range [][2]float64{{btuPerHourF, flow}, {btuPerHourFootF, flow * 0.3048}, {resistanceIP, 1 / (flow * 0.3048 * 0.3048)}} {
		if math.Abs(c[0]/c[1]-1) > 1e-6 {
			t.Errorf("%.7f, want %.7f", c[0], c[1])
		}
	}
}

func TestLetters(t *testing.T) {
	if got := letter(0) + letter(8) + letter(23) + letter(24); got != "AJZA2" {
		t.Errorf("letters %s", got)
	}
}
