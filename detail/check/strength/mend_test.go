package strength

import (
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Every repair offered for fasteners and block repairs: with it done the step is OK. Scenario B is over in
// pull and shear: 3/4 in bolts would come nearer than 4 D = 3 in to the block's top, so a fourth block it is.
func TestRepairsRepair(t *testing.T) {
	r, _ := Run(scenarioB())
	s := r.Find("linear_interaction_top_bolt")
	if !strings.Contains(s.Fix, "4 of them") {
		t.Fatalf("fix %q, want blocks nearer each other", s.Fix)
	}
	m := scenarioB()
	m.Blocks.At = marks(8, 8+44./3, 8+88./3, 52)
	r, _ = Run(m)
	if s := r.Find("linear_interaction_top_bolt"); s.Verdict != check.OK {
		t.Errorf("with four blocks %v at %.3f", s.Verdict, s.Ratio)
	}
}

// Half-inch bolts fail in pull and shear; the next size mends it.
func TestThickerBolts(t *testing.T) {
	m := scenarioB()
	m.Loads.Snow, m.Loads.GroundSnow = psfp(24), psfp(24)
	through(&m, func(s *Set) { s.Diameter, s.Hole = 0.5*in, 9./16*in })
	r, _ := Run(m)
	if s := r.Find("linear_interaction_top_bolt"); s.Verdict != check.Fails || !strings.HasPrefix(s.Fix, "bolts of "+(0.625*unit.Inch).Q().Text(unit.IP)) {
		t.Errorf("%v at %.3f with fix %q, want bolts of 5/8 in", s.Verdict, s.Ratio, s.Fix)
	}
}
