package moisture

import (
	"math"
	"testing"

	"standclear/detail/unit"
)

func near(t *testing.T, name string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s: %.5g; want %.5g +- %g", name, got, want, by)
	}
}

// Room air by the formulas of ISO 13788 annex E (from memory), worked apart from this program.
func TestRoomAir(t *testing.T) {
	for _, c := range []struct{ temp, rh, p, dew, t80 float64 }{
		{20, 0.5, 1168.5, 9.27, 12.62},
		{20, 0.4, 934.8, 6.00, 9.27},
		{20, 0.35, 817.9, 4.09, 7.30},
		{21.1, 0.35, 875.3, 5.06, 8.30},
		{21.1, 0.4, 1000.4, 6.99, 10.28},
		{22, 0.3, 792.7, 3.64, 6.85},
		{24, 0.6, 1789.3, 15.76, 19.29},
	} {
		p := c.rh * saturation(c.temp)
		near(t, "vapour pressure", p, c.p, 0.06)
		near(t, "dew point", dewPoint(p), c.dew, 0.006)
		near(t, "80 % point", dewPoint(p/0.8), c.t80, 0.006)
	}
}

// Saturation against steam tables: 611.2 Pa at 0 C, 2339 at 20, 4247 at 30 (IAPWS), 259.9 over ice at -10,
// 103.2 at -20 (WMO). The formulas are good to half a per cent.
func TestSaturation(t *testing.T) {
	for temp, p := range map[float64]float64{0: 611.2, 20: 2339, 30: 4247, -10: 259.9, -20: 103.2} {
		near(t, "saturation", saturation(temp)/p, 1, 0.005)
	}
	for temp := -40.0; temp <= 40; temp += 0.7 {
		near(t, "there and back", dewPoint(saturation(temp)), temp, 1e-9)
	}
}

// Factors needed against mould at 20 C inside, worked apart from this program from (T80 - Te)/(Ti - Te).
func TestFactorNeeded(t *testing.T) {
	for _, c := range []struct{ rh, out, f float64 }{
		{0.5, 5, 0.508}, {0.5, 0, 0.631}, {0.5, -6, 0.716}, {0.5, -10, 0.754}, {0.5, -18, 0.806},
		{0.35, 5, 0.154}, {0.35, 0, 0.365}, {0.35, -6, 0.512}, {0.35, -10, 0.577}, {0.35, -18, 0.666},
	} {
		m := month{out: c.out, in: 20, p: c.rh * saturation(20)}
		near(t, "factor", m.need(0.8), c.f, 0.0006)
	}
	for _, warm := range []month{{out: 20, in: 20, p: 1600}, {out: 24, in: 20, p: 2000}, {out: 15, in: 20, p: 900}} {
		near(t, "nothing asked", warm.need(0.8), 0, 0)
	}
}

// Classes of ISO 13788 annex A at 0 C outside: 270, 540, 810 and 1080 Pa part them; at 10 C half of that.
func TestHumidityClass(t *testing.T) {
	for _, c := range []struct {
		out, excess float64
		class       string
	}{{-6, -50, "1"}, {-6, 260, "1"}, {0, 280, "2"}, {0, 800, "3"}, {-6, 874, "4"}, {-20, 1100, "5"}, {10, 260, "2"}, {10, 560, "5"}, {10, 130, "1"}, {10, 5000, "5"}} {
		if got := humidityClass(c.out, c.excess); len(got) < 16 || got[15:16] != c.class {
			t.Errorf("%v Pa at %v C: %s; want class %s", c.excess, c.out, got, c.class)
		}
	}
	if got := humidityClass(21, 50); got != "no class in so warm a month" {
		t.Error(got)
	}
}

// Room air of 20 C and 50 % drops its water at 9.27 C, of 24 C and 60 % at 15.76 C, of 20 C and 35 % at
// 4.09 C (ISO 13788:2012, annex E, worked by hand); at 20 C and 20 % the pressure of 467.4 Pa is that over
// ice at 265.5 ln(467.4/610.5) / (21.875 - ln(467.4/610.5)) = -3.20 C.
func TestDewPointOfAir(t *testing.T) {
	for _, c := range []struct {
		air  unit.Temp
		rh   unit.Percent
		want float64
	}{{20, 0.5, 9.27}, {24, 0.6, 15.76}, {20, 0.35, 4.09}, {20, 0.2, -3.20}, {20, 1, 20}, {-5, 1, -5}} {
		if got := float64(DewPoint(c.air, c.rh)); math.Abs(got-c.want) > 0.01 {
			t.Errorf("air of %g C and %g: %.3f C, want %.2f", float64(c.air), float64(c.rh), got, c.want)
		}
	}
}
