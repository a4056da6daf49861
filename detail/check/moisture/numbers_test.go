package moisture

import (
	"fmt"
	"strings"
	"testing"
)

// What the sheathing weighs is its own thickness and density, not those of another layer: 18 mm of OSB at 600 kg/m3.
func TestWeightOfTheSheathing(t *testing.T) {
	c := of(t, project(t, "wall.layers.2.thickness=18mm"))
	near(t, "sheathing", c.pathsOf(clear(0.3)).sheath, 10.8, 1e-9)
}

// The resistances printed beside a verdict are those it rests on, 3.836 and 1.299 m of still air (see TestPathsByHand).
func TestResistancesArePrinted(t *testing.T) {
	s := run(project(t), with(clear(0.3))).Find("damp_clear")
	want := map[string]float64{"s_i": 3836, "s_e": 1299}
	for _, a := range s.With {
		if w, ok := want[a.Symbol]; ok {
			near(t, a.Symbol, a.Value.V, w, 1)
			delete(want, a.Symbol)
		}
	}
	if len(want) > 0 {
		t.Errorf("not printed: %v", want)
	}
}

// The water of a winter is said in grams as it is judged, as a share of 7.2 kg/m2 of sheathing; 1 kg/m2 is 0.2048 lb/ft2.
func TestWaterOfAWinter(t *testing.T) {
	s := run(project(t), with(Place{Key: "behind", F: 0.4, Behind: Rim, AtBlock: true})).Find("dew_behind")
	kg := s.Value.V * 7.2
	if want := fmt.Sprintf("diffusion brings %.0f g/m2 (%.4f lb/ft2) in a winter", 1000*kg, 0.2048*kg); kg < 0.01 || !strings.Contains(s.Reason, want[:strings.Index(want, "(")]) {
		t.Errorf("%q does not say %q", s.Reason, want)
	}
}

// A wall without a ventilated cavity: up to the boards 0.012/0.13 + 0.0005/0.25 + 0.080/0.043 and 0.04 at the air outside are
// 1.9948, of 1.9948 + 3.805 in all.
func TestWallWithoutACavity(t *testing.T) {
	c := of(t, project(t))
	c.layers = c.layers[:6]
	near(t, "series", c.series(), 0.3439, 1e-4)
}

// The cold season is the mean of its three months in everything.
func TestColdSeason(t *testing.T) {
	c := of(t, project(t)).climate
	got := c.coldSeason()
	var out, in, p, pOut float64
	for _, i := range []int{0, 1, 11} { // January, February, December
		m := c.months[i]
		out, in, p, pOut = out+m.out/3, in+m.in/3, p+m.p/3, pOut+m.pOut/3
	}
	near(t, "outside, (-6 - 5.2 - 2.2)/3", got.out, -4.467, 0.001)
	near(t, "outside", got.out, out, 1e-9)
	near(t, "room", got.in, in, 1e-9)
	near(t, "vapour in the room", got.p, p, 1e-9)
	near(t, "vapour outside", got.pOut, pOut, 1e-9)
}
