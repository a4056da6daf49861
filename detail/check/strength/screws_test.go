package strength

import (
	"math"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// lagged puts 3/8 x 6 lags from the block into rim and backing beside the bolts of the ledger, 4.5 in apart.
func lagged() Model {
	m := scenarioB()
	rim, ledger := *m.Fasteners.Through, *m.Fasteners.Through
	rim.Kind, rim.Diameter, rim.Length, rim.Hole, rim.Columns = Lag, 0.375*in, 6*in, 0.375*in, lengths(-6.25, 6.25)
	m.Blocks.Width, m.Backing.Pieces = 18*in, nil
	m.Fasteners = Fasteners{ToRim: &rim, ToBlock: &ledger}
	return m
}

// A bolt of 9 in has 1.75 in of thread from 7.25 in under its head; rim and backing end at 0.25 + 1.5 + 3 + 0.5 + 3
// = 8.25: 1 in of thread in 3, more than a quarter. Root 0.625 - 1.2269/11 = 0.51346 in; Im = 2250 x 0.51346 x 3/5; the
// ledger crushes first, 3250 x 0.51346 x 1.5.
func TestThreadsInTheMainMember(t *testing.T) {
	m := scenarioB()
	through(&m, func(s *Set) { s.Length = 9 * in })
	r, _ := Run(m)
	wants(t, r, map[string]float64{"threads": 1, "threads[share]": 0.33333, "threads[Dr]": 0.51346,
		"plane1_rim_from_block[D bearing]": 0.51346, "plane1_rim_from_block[Im]": 693.2, "many_layer_held[crushing]": 3250 * 0.51346 * 1.5})
	full, _ := Run(scenarioB())
	for _, id := range []string{"plane1_rim_from_block", "plane2_block_from_ledger", "many_layer_held"} {
		if r.Find(id).Ratio <= full.Find(id).Ratio {
			t.Errorf("%s is no nearer its limit with threads in the wood", id)
		}
	}
}

// A lag from the ledger holds in the front part of a padded block, not in what lies behind the pad: 4 in less
// ledger 1.5 and washer 0.25 leave 2.25 in, of which the outer ply takes 0.75; 4 D = 1.5 in is wanted.
func TestLagHoldsInTheOuterPart(t *testing.T) {
	m := lagged()
	m.Blocks.Plies = []Ply{pinePly(1.5), pinePly(0.75)}
	m.Blocks.Pad = Pad{Thickness: 0.5 * in, Strength: psip(40), After: 1, Foot: true}
	front := *m.Fasteners.ToRim
	front.Length, front.Columns = 4*in, lengths(-1.75, 1.75)
	m.Fasteners.ToBlock = &front
	r, _ := Run(m)
	wants(t, r, map[string]float64{"penetration_to_block": 0.75, "penetration_to_block@limit": 1.5})
	if s := r.Find("penetration_to_block"); s.Verdict != check.Fails {
		t.Errorf("%v, want FAILS", s.Verdict)
	}
}

// The head end of a lag: T1 = 520.3 lb over a washer of 9 - 0.1104 = 8.890 in2 is 58.5 psi on the block's
// 378.55; steel 22500 x pi/4 x 0.265^2 = 1241 lb. Without a washer the hexagon 9/16 across bears on
// 0.8660 x 0.5625^2 - 0.1104 = 0.16357 in2: 3181 psi.
func TestLagHead(t *testing.T) {
	m := lagged()
	r, _ := Run(m)
	wants(t, r, map[string]float64{"head_bearing_to_rim": 58.53, "head_bearing_to_rim@limit": 378.55, "root_tension_to_rim": 520.3, "root_tension_to_rim@limit": 1241})
	m.Fasteners.ToRim.Washer = Washer{}
	r, _ = Run(m)
	wants(t, r, map[string]float64{"head_bearing_to_rim": 3181})
	if s := r.Find("head_bearing_to_rim"); s.Verdict != check.Fails {
		t.Errorf("head without washer %v, want FAILS", s.Verdict)
	}
}

// A wood screw's head, 0.242 x 1.75 = 0.4235 in, is drawn through the block at 690 pi x 0.4235 x 0.55^2 x
// (2.5 x 0.4235) = 294.0 lb, wet 205.8, at CD 1.15 236.7.
func TestScrewHead(t *testing.T) {
	m := lagged()
	rim := m.Fasteners.ToRim
	rim.Kind, rim.Diameter, rim.Hole, rim.Washer = Screw, 0.242*in, 0.242*in, Washer{}
	r, _ := Run(m)
	wants(t, r, map[string]float64{"head_pull_through_to_rim@limit": 236.7})
	if s := r.Find("head_pull_through_to_rim"); s.Verdict != check.Fails {
		t.Errorf("520 lb on a head of 237: %v", s.Verdict)
	}
}

// Evaluated fasteners keep the least of any dowel, whatever their report says; its own distances are left open.
func TestEvaluatedPlaces(t *testing.T) {
	m := scenarioB()
	through(&m, func(s *Set) {
		s.Kind, s.Lateral, s.Withdrawal, s.Report = Evaluated, 400*unit.Pound, 1600*unit.Pound, "test report as stated"
	})
	r, _ := Run(m)
	if s := r.Find("distances"); s == nil || s.Verdict != check.NotChecked {
		t.Errorf("distances by the report: %+v, want NOT CHECKED", s)
	}
	wants(t, r, map[string]float64{"end_block@limit": 1.25, "edge_block_top@limit": 0.9375, "spacing_in_row@limit": 1.875})
	m.Blocks.Width = 5.9 * in // 1.2 in from the end of the block
	r, _ = Run(m)
	if s := r.Find("end_block"); s.Verdict != check.Fails {
		t.Errorf("1.2 in to the end of the block: %v", s.Verdict)
	}
}

// Two sets in the same holes fail; 4.5 in apart they do not touch.
func TestSetsKeepApart(t *testing.T) {
	m := lagged()
	r, _ := Run(m)
	for _, id := range []string{"sets_spacing", "sets_washers"} {
		if s := r.Find(id); s == nil || s.Verdict != check.OK {
			t.Errorf("%s 4.5 in apart: %+v", id, s)
		}
	}
	m.Fasteners.ToRim.Columns = m.Fasteners.ToBlock.Columns
	r, _ = Run(m)
	for _, id := range []string{"sets_spacing", "sets_washers"} {
		if s := r.Find(id); s.Verdict != check.Fails {
			t.Errorf("%s in the same holes: %v", id, s.Verdict)
		}
	}
	// 3 in apart side by side: more than the least of columns, the plates just touch.
	m.Fasteners.ToRim.Columns = lengths(-4.75, 4.75)
	r, _ = Run(m)
	wants(t, r, map[string]float64{"sets_washers": 3, "sets_washers@limit": 3})
	if s := r.Find("c_delta_to_rim"); math.Abs(s.Value.V-1) > 1e-9 {
		t.Errorf("geometry factor %.3f beside a set 3 in away, want 1", s.Value.V)
	}
}
