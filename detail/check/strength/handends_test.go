package strength

import (
	"math"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// At the face of the ledger the weaker of block and ledger decides: 400 x 0.67 psi of a soft ledger, 378.55 of a hard one.
func TestFootAgainstASoftLedger(t *testing.T) {
	for strength, want := range map[unit.Pressure]float64{400: 268, 700: 378.55} {
		m := lagged()
		m.Ledger.Wood.FcPerp = strength * unit.PSI
		r, _ := Run(m)
		wants(t, r, map[string]float64{"foot_peak_stress_ledger@limit": want})
	}
}

// The inner end governs pull and shear where the backing is soft: 60.298 psi of 100 x 1.125 is 0.536, beside the whole dowel's
// 0.79906, which holds at that end as at the other.
func TestSoftBackingPullsAndShears(t *testing.T) {
	m := scenarioB()
	m.Backing.Wood.FcPerp = 100 * unit.PSI
	r, _ := Run(m)
	wants(t, r, map[string]float64{"linear_interaction_top_bolt": 1.3350})
}

// A lag from the ledger bears in the block as deep as it stands there less half its tip: 4 - 0.25 - 1.5 - 7/64 = 2.1406 in of 3.
func TestLagBearsInTheBlockAsDeepAsItStands(t *testing.T) {
	m := lagged()
	front := *m.Fasteners.ToRim
	front.Length, front.Columns = 4*in, lengths(-1.75, 1.75)
	m.Fasteners.ToBlock = &front
	r, _ := Run(m)
	wants(t, r, map[string]float64{"plane2_block_from_ledger_to_block[lm]": 2.1406})
}

// What rim and backing bear of fasteners with stated values is not known.
func TestSharesOfEvaluatedFasteners(t *testing.T) {
	m := scenarioB()
	through(&m, evaluated)
	r, _ := Run(m)
	for _, id := range []string{"backing_fixing", "rim_bearing"} {
		if s := r.Find(id); s == nil || s.Verdict != check.NotChecked {
			t.Errorf("%s: %+v, want NOT CHECKED", id, s)
		}
	}
}

// A foot that reaches past the rim presses on the plate: 200 x 0.67 psi of a soft one, less than the sheathing's 210.
func TestFootOnTheSoftPlate(t *testing.T) {
	m := scenarioB()
	m.Rim.Bottom, m.Plate.FcPerp = -8.5*in, 200*unit.PSI
	r, _ := Run(m)
	wants(t, r, map[string]float64{"foot_peak_stress@limit": 134})
	m.Rim.Bottom = m.Blocks.Bottom
	r, _ = Run(m)
	wants(t, r, map[string]float64{"foot_peak_stress@limit": 210})
}

// The couple at the rim is in the results as it is in scenario_b.txt.
func TestCoupleInTheResults(t *testing.T) {
	_, res := Run(scenarioB())
	for name, v := range map[string][2]float64{"moment": {res.Moment.PoundInches(), 4877.8}, "lever arm": {res.LeverArm.Inches(), 4.6875},
		"pull": {res.Tension.Pounds(), 1040.6}, "pull of a bolt": {res.PerBolt.Pounds(), 520.3}} {
		if !(math.Abs(v[0]-v[1]) <= 0.001*v[1]) {
			t.Errorf("%s %.3f, by hand %.3f", name, v[0], v[1])
		}
	}
}

// The order in which rows and columns are written changes nothing.
func TestOrderOfRowsAndColumns(t *testing.T) {
	one, two := scenarioB(), scenarioB()
	through(&one, func(s *Set) { s.Columns = lengths(-2.5, 0.5, 3.5) })
	through(&two, func(s *Set) { s.Rows, s.Columns = lengths(-6.375, -3), lengths(3.5, -2.5, 0.5) })
	a, _ := Run(one)
	b, _ := Run(two)
	for i, s := range a.Steps {
		if o := b.Steps[i]; o.ID != s.ID || o.Value != s.Value || o.Ratio != s.Ratio || o.Verdict != s.Verdict {
			t.Errorf("%s is %v at %.4f, with the columns in another order %s %v at %.4f", s.ID, s.Value, s.Ratio, o.ID, o.Value, o.Ratio)
		}
	}
}

// A ledger that sags over a block is weakened by the holes there as one that hogs: 3,000 lb-in over 20.054 in3.
func TestSaggingAtABlock(t *testing.T) {
	m := scenarioB()
	c := &calc{m: m, a: m.Assume.filled()}
	c.solved = []solution{{combo: combo{dead: 1, cd: 1}, support: 3000, hog: -1000, sag: 500}}
	c.ledgerBending()
	wants(t, c.rep, map[string]float64{"ledger_fb": 149.6, "ledger_fb[M_block]": 3000})
	// The middle support of two spans of 20 in gives way by 0.1 in: the moment there is 3 EI d/L^2, upward bent no more.
	b := beam{length: 40, at: []float64{0, 20, 40}, cut: make([]bool, 3), ei: 1e8}
	one := b.solve(action{spread: make([]float64, 4), lift: []float64{0, -0.1, 0}})
	s := solution{reaction: make([]float64, 3), least: make([]float64, 3), sides: make([][2]float64, 3)}
	s.merge(alone(one))
	if want := 3 * 1e8 * 0.1 / 400; !(math.Abs(s.support-want) <= 1e-6*want) || s.hog != 0 {
		t.Errorf("moment at a block %.1f, hogging %.1f, by hand %.1f and none", s.support, s.hog, want)
	}
}

// The layers a lag bears in, from inside: 0.6406 in of backing and all 1.5 of the rim; of a bolt all of both.
func TestMainBeds(t *testing.T) {
	for kind, want := range map[Kind][2]float64{Lag: {0.640625, 1.5}, Bolt: {1.5, 1.5}} {
		m := lagged()
		m.Fasteners.ToRim.Kind = kind
		c := &calc{m: m, a: m.Assume.filled()}
		beds := c.fastenerGroups()[0].mainBeds()
		if len(beds) != 2 || beds[0].Name != "backing" || beds[1].Name != "rim" || !(math.Abs(beds[0].Length.Inches()-want[0]) <= 1e-9) || !(math.Abs(beds[1].Length.Inches()-want[1]) <= 1e-9) {
			t.Errorf("%v: %+v, want %v in", kind, beds, want)
		}
	}
}

// Sets of two sizes keep the wider of their spacings side by side: 5 D = 1.875 in of lags of 3/8 in 3 in of rim; 4.5 in is 2.4
// of it. NDS 2018 table 12.5.1D.
func TestSetsSideBySide(t *testing.T) {
	r, _ := Run(lagged())
	wants(t, r, map[string]float64{"sets_spacing": 2.4, "sets_spacing[spacing_of_columns]": 1.875})
}

// A lag of no listed size holds nothing that is known.
func TestLagOfNoSize(t *testing.T) {
	m := lagged()
	m.Fasteners.ToRim.Diameter = 0.45 * in
	r, _ := Run(m)
	for _, id := range []string{"fasteners_to_rim", "screw_pull_and_shear_to_rim"} {
		if s := r.Find(id); s == nil || s.Verdict != check.NotChecked {
			t.Errorf("%s: %+v, want NOT CHECKED", id, s)
		}
	}
}

// The least edge of any member, top or bottom: of scenario B the block's top, 3 - 0.375; then each in turn.
func TestLeastEdge(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Model)
		want   float64
	}{
		"as it is":      {func(*Model) {}, 2.625},
		"block bottom":  {func(m *Model) { m.Blocks.Bottom = -8 * in }, 1.625},
		"ledger top":    {func(m *Model) { m.Ledger.Top = -1 * in }, 2},
		"ledger bottom": {func(m *Model) { m.Ledger.Bottom = -8 * in }, 1.625},
		"rim top":       {func(m *Model) { m.Rim.Top = -1 * in }, 2},
		"rim bottom":    {func(m *Model) { m.Rim.Bottom = -8 * in }, 1.625},
	} {
		m := scenarioB()
		c.change(&m)
		k := &calc{m: m, a: m.Assume.filled()}
		if got := k.leastEdge(k.fastenerGroups()[0]); !(math.Abs(got-c.want) <= 1e-9) {
			t.Errorf("%s: %.4f in, want %g", name, got, c.want)
		}
	}
}

// The hexagon of a lag bears beside its hole where that is wider than the shank: 0.8660 x 0.5625^2 - pi/4 x 0.5^2 = 0.0777 in2.
func TestHeadBesideAWideHole(t *testing.T) {
	g := &group{Set: &Set{Diameter: 0.375 * in, Hole: 0.5 * in}}
	if got := g.headArea(); !(math.Abs(got-0.0777) <= 1e-4) {
		t.Errorf("%.5f in2, by hand 0.0777", got)
	}
}

// The pull passes from ply to ply: what presses on the outer face of one presses on the inner face of the next.
func TestPullFromPlyToPly(t *testing.T) {
	m := scenarioB()
	m.Blocks.PliesFastened = false
	r, _ := Run(m)
	ho, _ := lookUp(r, "block_couple_inner[ho]")
	hi, ok := lookUp(r, "block_couple_outer[hi]")
	first, _ := lookUp(r, "block_couple_inner[hi]")
	if !ok || !(math.Abs(ho-hi) <= 1e-9) || !(math.Abs(first-1.5625) <= 1e-9) || ho <= first {
		t.Errorf("inner ply from %.4f to %.4f in over the foot, outer ply from %.4f", first, ho, hi)
	}
}

// A ledger has no second load path, so that no strength is used beyond 0.9: every ratio of a strength has that limit. Distances,
// sizes that a code asks for, deflections and the bounds of this program have none.
func TestEveryStrengthIsCapped(t *testing.T) {
	loose, joined, foam, stated, screws := scenarioB(), scenarioB(), scenarioB(), scenarioB(), lagged()
	loose.Backing.Kind, loose.Blocks.PliesFastened = LooseBacking, false
	joined.Blocks.LedgerScrews, loose.Blocks.FrontGap = PlyScrews{20, 0.19 * in, 3 * in}, 0.75*in
	padded(psip(40))(&foam)
	through(&stated, evaluated)
	rim := screws.Fasteners.ToRim
	rim.Kind, rim.Diameter, rim.Hole, rim.Washer = Screw, 0.242*in, 0.242*in, Washer{}
	capped := map[string]int{}
	for _, m := range []Model{scenarioB(), lagged(), loose, joined, foam, stated, screws} {
		r, _ := Run(m)
		for _, s := range r.Steps {
			if s.Limit != nil && s.Cap == 0.9 {
				capped[s.ID]++
			} else if s.Cap != 0 && s.Cap != 0.9 {
				t.Errorf("%s is capped at %g", s.ID, s.Cap)
			}
		}
	}
	for _, id := range []string{"hanger", "ledger_fb", "ledger_fv", "ledger_fv_connection", "ledger_torsion",
		"plane1_rim_from_block", "plane2_block_from_ledger", "plane1_rim_from_block_to_rim", "many_layer_held", "many_layer_void", "floating_rim_from_ledger",
		"ply_screws_1", "ledger_screws", "evaluated_shear", "foot_peak_stress", "foot_peak_stress_ledger", "foot_peak_stress_pad",
		"bolt_tension", "rim_washer_bearing", "ledger_washer_bearing", "block_washer_bearing_to_block", "washer_bending", "linear_interaction_top_bolt",
		"screw_pull_and_shear_to_rim", "root_tension_to_rim", "head_bearing_to_rim", "head_pull_through_to_rim",
		"block_connection_shear_to_rim", "block_connection_shear_to_block", "block_rolling_shear", "rim_out_of_plane", "rim_bearing", "backing_fixing", "backing_bending", "tie_rating"} {
		if capped[id] == 0 {
			t.Errorf("%s has no limit of 0.9", id)
		}
	}
	m := scenarioB()
	m.Blocks.PlyScrews.Count = 18 // 20/18 of 0.83864
	r, _ := Run(m)
	wants(t, r, map[string]float64{"ply_screws_1@ratio": 0.9318})
	if s := r.Find("ply_screws_1"); s.Verdict != check.Fails {
		t.Errorf("screws used to 0.93: %v", s.Verdict)
	}
}

// Screws of 1.6 in stand 0.1 in in the ply behind the joint: they hold nothing.
func TestScrewsThatHardlyReach(t *testing.T) {
	m := scenarioB()
	m.Blocks.PlyScrews.Length = 1.6 * in
	r, _ := Run(m)
	wants(t, r, map[string]float64{"ply_screws_1": 812.97})
	for _, id := range []string{"ply_screws_1", "ply_screws_1_penetration"} {
		if s := r.Find(id); s.Verdict != check.Fails {
			t.Errorf("%s: %v, want FAILS", id, s.Verdict)
		}
	}
}

// The column farther from the middle of the block is the one that counts: 4.5 - 2.5 in, on whichever side.
func TestColumnsAsideOfTheMiddle(t *testing.T) {
	for _, cols := range [][]unit.Length{lengths(-1, 2.5), lengths(-2.5, 1)} {
		m := scenarioB()
		through(&m, func(s *Set) { s.Columns = cols })
		r, _ := Run(m)
		wants(t, r, map[string]float64{"end_block": 2})
	}
}

// Washers that would overlap bear on what is left between: round ones 2.5 in apart on pi/4 x 2.5^2 - 0.371 = 4.538 in2, square ones
// on 2.5 x 3 - 0.371 = 7.129.
func TestOverlappingWashers(t *testing.T) {
	for round, want := range map[bool]float64{true: 4.538, false: 7.129} {
		m := scenarioB()
		through(&m, func(s *Set) { s.Columns, s.Washer.Round = lengths(-1.25, 1.25), round })
		r, _ := Run(m)
		wants(t, r, map[string]float64{"rim_washer_bearing[A]": want})
		if s := r.Find("washer_clear"); s.Verdict != check.Fails {
			t.Errorf("3 in washers 2.5 in apart: %v", s.Verdict)
		}
	}
}
