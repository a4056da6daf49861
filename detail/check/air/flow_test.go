package air

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) { // not a number is none
		t.Errorf("%s is %.5g, want %.5g within %g %%", what, got, want, share*100)
	}
}

// Speeds and air changes worked by hand from the balance of pressures: no wind, 5 C outside, free ends. For the first:
// 9.81 x 0.235 x 1.269 x 1/279.15 = 0.0105 Pa; at 0.031 m/s friction takes 12 x 1.74e-5 x 0.235 x 0.031 / 0.0127^2 =
// 0.0094 Pa and the ends 1.5 x 1.269/2 x 0.031^2 = 0.0009 Pa. The air changes lie in the range measured behind sidings,
// 100 to 1000 an hour, but for the gap of 3/8 in.
func TestSpeeds(t *testing.T) {
	for _, c := range []struct {
		name                  string
		depth, height, warmer float64
		speed, changes        float64
	}{
		{"1/2 in behind a ledger", 0.0127, 0.235, 1, 0.031, 480},
		{"3/4 in of a storey", 0.019, 2.4, 1, 0.073, 110},
		{"the same, 3 K", 0.019, 2.4, 3, 0.201, 302},
		{"1 in of a storey", 0.0254, 2.4, 1, 0.120, 180},
		{"3/8 in of a storey", 0.0095, 2.4, 1, 0.019, 29},
	} {
		k := channel{c.depth, c.height, c.depth, c.depth}
		w := weather{outside: 5, humidity: 0.85, warmer: c.warmer}
		near(t, c.name+": speed", k.speed(w), c.speed, 0.025)
		near(t, c.name+": air changes", k.changes(w), c.changes, 0.02)
	}
}

// Stack of 1 K over 2.4 m: 3463 x 2.4 x (1/278.15 - 1/279.15) = 0.107 Pa; over 0.235 m 0.0105 Pa.
func TestDrive(t *testing.T) {
	w := weather{outside: 5, warmer: 1}
	near(t, "stack of a storey", channel{height: 2.4}.drive(w), 0.107, 0.02)
	near(t, "stack of a ledger", channel{height: 0.235}.drive(w), 0.0105, 0.02)
	w.wind = 0.1
	near(t, "with wind", channel{height: 2.4}.drive(w), 0.207, 0.02)
}

// Slots of 5 mm at both ends of a gap of 19 mm take most of the flow: with 1 K and 0.1 Pa of wind 77 changes an hour,
// 204 with open ends.
func TestSlots(t *testing.T) {
	w := weather{outside: 5, humidity: 0.85, warmer: 1, wind: 0.1}
	near(t, "slots: speed", channel{0.019, 2.4, 0.005, 0.005}.speed(w), 0.052, 0.02)
	near(t, "slots: changes", channel{0.019, 2.4, 0.005, 0.005}.changes(w), 77, 0.02)
	near(t, "open ends: speed", channel{0.019, 2.4, 0.019, 0.019}.speed(w), 0.136, 0.02)
	near(t, "open ends: changes", channel{0.019, 2.4, 0.019, 0.019}.changes(w), 204, 0.02)
	// Wider than the gap is no opening of its own.
	near(t, "wider ends", channel{0.019, 2.4, 0.1, 0.1}.speed(w), channel{0.019, 2.4, 0.019, 0.019}.speed(w), 1e-9)
}

// Water carried off a wet face behind a ledger 0.235 m high, gap 12.7 mm, 1 K. At 5 C and 85 %: saturated air holds
// 872/(461.5 x 278.15) = 6.79 g/m3, room for 0.15 of it; 3.9e-4 m3/s a metre x 1.02 g/m3 x 0.93 = 32.5 g/day.
func TestDryingRates(t *testing.T) {
	k := channel{0.0127, 0.235, 0.0127, 0.0127}
	for _, c := range []struct{ outside, humidity, want float64 }{{5, 0.85, 33}, {10, 0.75, 73}, {-6, 0.85, 15}} {
		near(t, "drying", k.dries(weather{outside: c.outside, humidity: c.humidity, warmer: 1}), c.want, 0.025)
	}
	near(t, "on a square metre", k.dries(weather{outside: 5, humidity: 0.85, warmer: 1})/0.235, 139, 0.02)
}

// A closed gap lets 0.2 to 0.5 g a day out by diffusion, and nothing flows through it; nor where nothing drives it.
func TestClosed(t *testing.T) {
	w := weather{outside: 5, humidity: 0.85, warmer: 1}
	if g := (channel{0.0127, 0.235, 0.0127, 0}).still(w); g < 0.2 || g > 0.5 {
		t.Errorf("diffusion carries off %.2f g a day", g)
	}
	for _, k := range []channel{{0.0127, 0.235, 0.0127, 0}, {0.0127, 0.235, 0, 0.0127}, {-0.003, 0.235, 0.01, 0.01}} {
		if k.speed(w) != 0 || k.dries(w) != 0 || k.changes(w) != 0 {
			t.Errorf("air flows through %+v", k)
		}
	}
	if v := (channel{0.0127, 0.235, 0.0127, 0.0127}).speed(weather{outside: 5}); v != 0 {
		t.Errorf("nothing drives the air and it moves at %g", v)
	}
	if still, saturated := (channel{0.0127, 0.235, 0.0127, 0.0127}), (weather{outside: 5, humidity: 1, warmer: 1}); still.dries(saturated) != 0 {
		t.Error("saturated air dries")
	}
}

// More drive, a deeper gap or a wider opening never slows the air; the balance is met.
func TestFlowLaws(t *testing.T) {
	last := 0.0
	for _, warmer := range []float64{0.1, 0.5, 1, 3, 10, 30} {
		k, w := channel{0.03, 0.3, 0.02, 0.015}, weather{outside: -6, warmer: warmer, wind: 0.1}
		v := k.speed(w)
		if v <= last {
			t.Errorf("%g K moves the air at %g, less warmth at %g", warmer, v, last)
		}
		near(t, "loss", k.loss(v, density(w.outside), viscosity(w.outside)), k.drive(w), 1e-9)
		last = v
	}
	last = 0
	for _, a := range []float64{0.002, 0.005, 0.01, 0.02, 0.03} {
		v := channel{0.03, 0.3, a, 0.03}.speed(weather{outside: -6, warmer: 1})
		if v <= last {
			t.Errorf("an opening of %g lets %g through, a narrower one %g", a, v, last)
		}
		last = v
	}
}

// Plane channel: 96/Re is the friction of laminar flow, 0.316 Re^-1/4 of Blasius; they meet at Re = (96/0.316)^(4/3) = 2042.
func TestTurbulence(t *testing.T) {
	w := weather{outside: 0}
	c := channel{0.03, 10, 1, 1}
	at := func(re float64) float64 { return re * viscosity(0) / (2 * c.depth * density(0)) }
	friction := func(re float64) float64 {
		v := at(re)
		head := density(0) / 2 * v * v
		return (c.loss(v, density(w.outside), viscosity(w.outside))/head - ends) * 2 * c.depth / c.height
	}
	near(t, "laminar", friction(1000), 0.096, 1e-6)
	near(t, "turbulent", friction(10000), 0.0316, 1e-6)
}

// Values of the handbooks: air at 0 C weighs 1.293 kg/m3 and has 17.2e-6 Pa s; saturation at 20 C 2337 Pa, at -10 C 260 Pa.
func TestAir(t *testing.T) {
	near(t, "density", density(0), 1.293, 0.001)
	near(t, "viscosity", viscosity(0), 17.2e-6, 0.005)
	near(t, "viscosity at 20 C", viscosity(20), 18.2e-6, 0.005)
	near(t, "saturation", saturation(20), 2337, 0.002)
	near(t, "over ice", saturation(-10), 260, 0.005)
}
