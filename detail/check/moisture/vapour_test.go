package moisture

import (
	"math"
	"testing"

	"standclear/detail/spec"
)

// of returns a checker of a project, with its climate.
func of(t *testing.T, s *spec.Spec) *checker {
	t.Helper()
	c := &checker{s: s, sys: s.Project.System, layers: s.Wall.Layers, retarder: s.Wall.Retarder}
	var lacking []string
	if c.climate, lacking = climateOf(s, 1); len(lacking) > 0 {
		t.Fatal(lacking)
	}
	return c
}

// One perm is 57.2 ng/(s m2 Pa): as much as 2e-10/57.2e-12 = 3.50 m of still air passes.
func TestRetarders(t *testing.T) {
	for class, want := range map[string]float64{"class-1": 34.96, "class-2": 3.496, "class-3": 0.3496, "none": 0, "unknown": 0} {
		near(t, class, retarderResistance(class), want, 0.01)
	}
}

// The wall by hand, metres of still air. Inside: 0.0125 x 4 + 0.145 x 2 + 3.496 = 3.836. Outside: OSB
// 0.012 x 30 = 0.36, barrier of 5 perm 0.699, boards 0.08 x 3 = 0.24: 1.299. Rim: 0.045 x 70 = 3.15, and with
// 90 mm of backing 9.45.
func TestPathsByHand(t *testing.T) {
	c := of(t, project(t))
	p := c.pathsOf(clear(0.35))
	near(t, "in", p.in, 3.836, 0.001)
	near(t, "out", p.out, 1.299, 0.001)
	near(t, "sheathing, 12 mm at 600 kg/m3", p.sheath, 7.2, 1e-9)
	behind := c.pathsOf(Place{Behind: Rim})
	near(t, "rim", behind.in, 3.15, 1e-9)
	near(t, "rim, out", behind.out, 1.299, 0.001)
	block := c.pathsOf(Place{Behind: Rim, AtBlock: true})
	near(t, "rim and backing", block.in, 9.45, 1e-9)
	if !math.IsInf(block.out, 1) {
		t.Errorf("a block lets vapour out: %v", block.out)
	}
	near(t, "room air", c.pathsOf(Place{}).in, 0, 0)
}

// January by hand: p_i = 1168.5 Pa, p_e = 0.8 x 368.6 = 294.9 Pa. Between 3.836 and 1.299 m:
// (1168.5/3.836 + 294.9/1.299)/(1/3.836 + 1/1.299) = (304.6 + 227.0)/1.0305 = 515.9 Pa. At f 0.30 the place is
// at 1.8 C, 695.4 Pa: 74.2 % RH.
func TestBalanceByHand(t *testing.T) {
	c := of(t, project(t))
	w := c.pathsOf(clear(0.3))
	january := c.climate.months[0]
	near(t, "outside", january.pOut, 294.9, 0.5)
	near(t, "balance", w.balance(january), 515.9, 0.6)
	s := run(project(t), with(clear(0.3))).Find("damp_clear")
	near(t, "RH", s.Value.V, 0.742, 0.001)
	near(t, "limit", s.Limit.V, 0.8, 0)
}

// A year by hand: three months at -10 C outside, a room of 1168.5 Pa; nine at 15 C with 800 Pa on both sides.
// At f 0.5 the face is at 5 C, 871.9 Pa: through 2 m of still air come 2e-10 (1168.5 - 871.9)/2 x 2.628e6 s =
// 0.0779 kg/m2 a month, 0.2338 in all; a month at 17.5 C takes 0.315 away. With a way out of 3 m to air of
// 200 Pa 0.1177 a month leaves, more than comes.
func TestUptakeByHand(t *testing.T) {
	var c climate
	for i := range 12 {
		m := month{out: 15, in: 20, p: 800, pOut: 800}
		if i < 2 || i == 11 {
			m = month{out: -10, in: 20, p: 1168.5, pOut: 200}
		}
		c.months = append(c.months, m)
	}
	most, leaves := paths{in: 2, out: math.Inf(1)}.uptake(c, 0.5, 1)
	near(t, "uptake", most, 0.2338, 0.0005)
	if !leaves {
		t.Error("it leaves in April")
	}
	most, leaves = paths{in: 2, out: 3}.uptake(c, 0.5, 1)
	if near(t, "uptake with a way out", most, 0, 0); !leaves {
		t.Error("nothing came")
	}
	for i := range c.months { // a room that is always moist and a face that is always cold
		c.months[i] = month{out: -10, in: 20, p: 1168.5, pOut: 200}
	}
	most, leaves = paths{in: 2, out: math.Inf(1)}.uptake(c, 0.5, 1)
	if near(t, "a year of winter", most, 12*0.07794, 0.003); leaves {
		t.Error("it cannot leave")
	}
}
