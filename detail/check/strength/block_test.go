package strength

import (
	"math"
	"math/rand/v2"
	"testing"

	"standclear/detail/check"
)

// wants compares lines of a report with values worked by hand, within 0.5 %.
func wants(t *testing.T, r check.Report, values map[string]float64) {
	t.Helper()
	for key, want := range values {
		got, ok := lookUp(r, key)
		if !ok {
			t.Errorf("%s: not in the report", key)
		} else if !(math.Abs(got-want) <= 0.005*math.Abs(want)) { // not a number is none
			t.Errorf("%s is %.6g, by hand %.6g", key, got, want)
		}
	}
}

// Every cut face is in balance: the rows' pulls times their lever arms are M, the foot's triangle of
// stress pushes as much as the rows pull, for both ways of sharing and with spacers.
func TestFreeBody(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for seed := range uint64(200) {
		m := randomModel(seed, 0)
		m.Assume.Rows = Tension(r.IntN(2))
		c := &calc{m: m, a: m.Assume.filled()}
		if m.faults() != nil {
			continue
		}
		c.groups = c.fastenerGroups()
		load := 2000 * r.Float64()
		for _, f := range c.faces() {
			p := c.whole(f, load)
			if p.lever == 0 {
				continue
			}
			if math.Abs(p.t*p.lever-load*f.arm) > 1e-9*load*f.arm {
				t.Fatalf("seed %d, %s: T z = %.9f, R e = %.9f", seed, f.name, p.t*p.lever, load*f.arm)
			}
			if foot := p.peak * p.depth * m.Blocks.Width.Inches() / 2; !f.spacers && math.Abs(foot-p.t) > 1e-9*p.t {
				t.Fatalf("seed %d, %s: the foot pushes %.9f, the rows pull %.9f", seed, f.name, foot, p.t)
			}
			levers := c.levers(f, p.depth)
			sum, moment := 0.0, 0.0
			for _, z := range levers {
				force := p.bolt * float64(len(f.g.cols))
				if m.Assume.Rows == ByStiffness || f.spacers {
					force *= z / levers[0]
				}
				sum, moment = sum+force, moment+force*z
			}
			if math.Abs(sum-p.t) > 1e-9*p.t || math.Abs(moment-p.moment) > 1e-9*p.moment {
				t.Fatalf("seed %d, %s: rows pull %.9f at %.9f, want %.9f at %.9f", seed, f.name, sum, moment, p.t, p.moment)
			}
		}
	}
}

// Twice every load gives twice every reaction, moment and pull, and twice the ratio of every plane.
func TestTwiceTheLoad(t *testing.T) {
	one, two := scenarioB(), scenarioB()
	two.Loads = Loads{Dead: psfp(24), Live: psfp(80), Snow: psfp(60)}
	r1, a := Run(one)
	r2, b := Run(two)
	for i := range a.Reactions {
		if got := float64(b.Reactions[i].Design / a.Reactions[i].Design); math.Abs(got-2) > 1e-12 {
			t.Errorf("reaction %d grows %.15f times", i, got)
		}
	}
	if math.Abs(float64(b.Tension/a.Tension)-2) > 1e-12 || math.Abs(float64(b.Moment/a.Moment)-2) > 1e-12 {
		t.Errorf("pull and moment grow %.12f and %.12f times", b.Tension/a.Tension, b.Moment/a.Moment)
	}
	for _, id := range []string{"plane1_rim_from_block", "plane2_block_from_ledger", "many_layer_held", "foot_peak_stress", "ledger_fb", "ledger_fv_connection", "ledger_torsion", "linear_interaction_top_bolt", "ply_screws_1"} {
		if got := r2.Find(id).Ratio / r1.Find(id).Ratio; math.Abs(got-2) > 1e-9 {
			t.Errorf("%s grows %.12f times", id, got)
		}
	}
}

// The capacity is taken with the duration factor of each combination, so not the largest load decides but
// the largest load over its factor.
func TestDurationDecides(t *testing.T) {
	m := scenarioB()
	m.Loads = Loads{Dead: psfp(12), Live: psfp(40), Snow: psfp(0)}
	r, _ := Run(m)
	if s := r.Find("plane1_rim_from_block"); s.Note != "mode II; D + L" {
		t.Errorf("no snow: %q governs, want D + L", s.Note)
	}
	// 12 + 42 = 54 at 1.15 is 46.96 at 1; 12 + 40 = 52 at 1; D + 0.75L + 0.75S = 73.5 at 1.15 is 63.9.
	m.Loads.Live, m.Loads.Snow = psfp(40), psfp(42)
	r, _ = Run(m)
	if s := r.Find("plane1_rim_from_block"); s.Note != "mode II; D + 0.75L + 0.75S" {
		t.Errorf("with snow: %q governs, want D + 0.75L + 0.75S", s.Note)
	}
	// Dead alone: 60 at CD 0.9 is worth 66.7, more than 60 + 3 at 1.
	m.Loads = Loads{Dead: psfp(60), Live: psfp(3), Snow: psfp(0)}
	r, _ = Run(m)
	if s := r.Find("plane1_rim_from_block"); s.Note != "mode II; D" {
		t.Errorf("dead load: %q governs, want D", s.Note)
	}
}

// Two sets: each carries the whole load and its own couple. R = 812.97 lb, as in scenario_b.txt. The block is
// 18 in wide, with the bolts to the rim 4.5 in outside of those from the ledger.
func TestTwoSets(t *testing.T) {
	m := scenarioB()
	rim, ledger := *m.Fasteners.Through, *m.Fasteners.Through
	rim.Columns = lengths(-6.25, 6.25)
	m.Blocks.Width, m.Backing.Pieces = 18*in, nil
	m.Fasteners = Fasteners{ToRim: &rim, ToBlock: &ledger}
	r, _ := Run(m)
	wants(t, r, map[string]float64{
		"sets_spacing[dx]":                      4.5,
		"plane1_rim_from_block_to_rim[II]":      422.14,
		"plane2_block_from_ledger_to_block[II]": 460.044,
		"moment_at_rim_face":                    4877.8,
		"moment_at_ledger":                      2032.4, // 812.97 x (1.5 + 1)
		"top_row_tension_ledger":                433.58, // 2032.4/4.6875
		"edge_block_top_to_rim@limit":           2.5,    // 4 D: pushed up
		"edge_block_bottom_to_rim@limit":        0.9375, // 1.5 D
		"edge_block_top_to_block@limit":         0.9375,
		"edge_block_bottom_to_block@limit":      2.5,
		"block_connection_shear_to_rim":         74.09, // de 6: 3 x 406.5/(2 x 3 x 6) x (8.875/6)^2
		"block_connection_shear_to_block":       65.57, // de 6.25: 3 x 406.5/(2 x 3 x 6.25) x (8.875/6.25)^2
		"block_connection_shear_to_rim@limit":   195.2,
		"foot_peak_stress_ledger":               21.71, // 2 x 433.58/(2.21875 x 18)
		"foot_peak_stress_ledger@limit":         378.55,
		"block_washer_bearing_to_rim@limit":     378.55, // no Cb: a washer near the end of the block
		"linear_interaction_top_bolt_to_rim":    0.7579, // alone its Cg is 0.999: 812.97/(4 x 422.14 x 0.805 x 0.999) + 60.30/378.55
		"linear_interaction_top_bolt_to_block":  0.6206, // 0.5542 + 216.79/8.629/378.55
	})
}

// A gap kept by spacers in front of the block: the bolts pull at the top row and the spacers push at the
// lowest, 3.375 in apart. M = 812.97 x (0.75 + 2.5) = 2642.2; T = 782.9; 782.9/(2 x 8.629) = 45.4 psi.
func TestGapInFront(t *testing.T) {
	m := scenarioB()
	m.Blocks.FrontGap = 0.75 * in
	r, _ := Run(m)
	wants(t, r, map[string]float64{
		"plane2_block_from_ledger[gap]":         0.75,
		"eccentricity_rim_face_to_ledger_front": 6.75,
		"moment_at_ledger":                      2642.2,
		"lever_arm_ledger":                      3.375,
		"top_row_tension_ledger":                782.9,
		"foot_peak_stress_ledger":               45.37,
	})
	through(&m, func(s *Set) { s.Rows = lengths(-3) })
	r, _ = Run(m)
	if s := r.Find("lever_arm_ledger"); s == nil || s.Verdict != check.Fails {
		t.Errorf("one row and spacers: %+v, want FAILS", s)
	}
}

// Plies left loose: the bolts pass three planes, and the block counts as a gap of 3 in behind the sheathing.
// Rim and blocking 3.0 (q 1406.25), ledger 1.5 (q 2031.25), g 3.5; mode II: A = 3.0085e-4, B = 5.75,
// C = -3164.1 - 1142.6: P = 721.2, Z = 160.3. IIIs: A = 4.7863e-4, B = 4.25, C = -1142.6 - 1831.1:
// P = 651.9, Z = 163.0. IIIm: A = 4.2393e-4, B = 5, C = -1831.1 - 3164.1: P = 926, Z = 231.6.
func TestLoosePlies(t *testing.T) {
	m := scenarioB()
	m.Blocks.PliesFastened = false
	r, _ := Run(m)
	wants(t, r, map[string]float64{
		"floating_rim_from_ledger[gap]":  3.5,
		"floating_rim_from_ledger[II]":   160.3,
		"floating_rim_from_ledger[IIIs]": 163.0,
		"floating_rim_from_ledger[IIIm]": 231.6,
	})
}

// A 1/2 in lag cannot count in a 1 1/2 in rim: 4 D = 2 in.
func TestHalfInchLagInRim(t *testing.T) {
	m := scenarioB()
	m.Backing = Backing{Kind: LooseBacking, Wood: hemFir(), Thickness: 1.5 * in}
	through(&m, func(s *Set) { s.Kind, s.Diameter, s.Length, s.Hole = Lag, 0.5*in, 8*in, 0 })
	r, _ := Run(m)
	s := r.Find("penetration")
	if s == nil || s.Verdict != check.Fails || math.Abs(inchPound(s.Value)-1.5) > 1e-9 || inchPound(*s.Limit) != 2 {
		t.Errorf("%+v, want 1.5 in of 2 to fail", s)
	}
}

// 3/8 x 6 lags from the block into rim and blocking: 3 + 0.5 + 0.25 washer lie before, 2.25 in stand in 3 in of
// Hem-Fir; without the tip of 7/32: 2.031, over 4 D = 1.5. W = 1800 x 0.43^1.5 x 0.375^0.75 = 243.2 lb/in;
// Wp = 243.2 x 2.031 x 0.7 x 1.15 = 397.7 lb. V = 812.97/4 = 203.24, T1 = 520.3: resultant 558.6 lb.
func TestLags(t *testing.T) {
	m := scenarioB()
	rim, ledger := *m.Fasteners.Through, *m.Fasteners.Through
	rim.Kind, rim.Diameter, rim.Length, rim.Hole = Lag, 0.375*in, 6*in, 0.375*in
	m.Fasteners = Fasteners{ToRim: &rim, ToBlock: &ledger}
	r, _ := Run(m)
	wants(t, r, map[string]float64{
		"penetration_to_rim":              2.03125,
		"penetration_to_rim@limit":        1.5,
		"screw_pull_and_shear_to_rim[Wp]": 397.7,
		"screw_pull_and_shear_to_rim[V]":  203.24,
		"screw_pull_and_shear_to_rim":     558.6,
	})
	s := r.Find("screw_pull_and_shear_to_rim")
	z, _ := lookUp(r, "screw_pull_and_shear_to_rim[Z']")
	sin2 := (520.3 / 558.6) * (520.3 / 558.6)
	if want := 397.7 * z / (397.7*(1-sin2) + z*sin2); math.Abs(inchPound(*s.Limit)/want-1) > 0.005 {
		t.Errorf("combined value %.1f lb, by hand %.1f", inchPound(*s.Limit), want)
	}
	rim.Length = 4 * in
	r, _ = Run(m)
	if s := r.Find("penetration_to_rim"); s == nil || s.Verdict != check.Fails {
		t.Errorf("a lag of 4 in: %+v, want FAILS", s)
	}
}

// A long overhang loaded alone lifts the second block. Turned over, the block is as good, until an edge
// on the other side is nearer than 4 D.
func TestUplift(t *testing.T) {
	m := scenarioB()
	m.Blocks.At = marks(20, 34, 52)
	r, res := Run(m)
	if res.Reactions[1].Least >= 0 {
		t.Fatalf("least reaction %v, want a lift", res.Reactions[1].Least)
	}
	if s := r.Find("uplift"); s.Verdict != check.OK {
		t.Errorf("good edges: %v, %s", s.Verdict, s.Reason)
	}
	m.Ledger.Bottom = -8.5 * in
	r, _ = Run(m)
	if s := r.Find("uplift"); s.Verdict != check.Engineer {
		t.Errorf("ledger edge 2 1/8 in below the bolts: %v, want ENGINEER", s.Verdict)
	}
}

// A rim without carried blocking bends between joists 16 in apart: T = 1040.6, spread 3.5:
// 1040.6 x (4 - 0.4375) = 3707 lb-in over (9.25 - 0.6875) x 1.5^2/6 = 3.211 in3: 1154.6 psi against
// 850 x 1.1 x 1.2 x 1.15 = 1290.3.
func TestRimBends(t *testing.T) {
	m := scenarioB()
	m.Backing.Kind = LooseBacking
	r, _ := Run(m)
	wants(t, r, map[string]float64{"rim_out_of_plane": 1154.6, "rim_out_of_plane@limit": 1290.3, "rim_out_of_plane[spread]": 3.5})
}

// A splice over the middle block, four bolts a side: continuity ends, R = 2 x (w 22/2) less what the
// overhangs take: M at B1 = -946, so V = 325.19 - 43.0 at each side of B2: 564.4.
func TestSplice(t *testing.T) {
	m := scenarioB()
	m.Ledger.Splices = lengths(30)
	r, res := Run(m)
	if s := r.Find("splice_1"); s.Verdict != check.OK || s.Value.V != 2 {
		t.Errorf("splice %v with %v a side, want OK with 2", s.Verdict, s.Value.V)
	}
	if got := res.Reactions[1].Solved.Pounds(); math.Abs(got-564.4) > 0.1 {
		t.Errorf("reaction at the splice %.2f lb, want 564.4", got)
	}
}

// Every assumption has its own text for each reading.
func TestAssumptionsFollowTheReading(t *testing.T) {
	plain := scenarioB()
	plain.Assume = Assume{LeverArm: Plain, Reaction: Plain, GrossSection: true, NoTorsion: true, Rows: ByStiffness, PlyCouple: true, Cap: 1}
	a, _ := Run(scenarioB())
	b, _ := Run(plain)
	for i := range a.Assumptions[:8] {
		x, y := a.Assumptions[i], b.Assumptions[i]
		if x.Key != y.Key || x.Key != "assume.foot_depth" && x.Key != "assume.max_group" && x.Text == y.Text {
			t.Errorf("%s reads the same both ways: %s", x.Key, x.Text)
		}
	}
}

// The diagram runs from end to end, closes at the free ends and jumps at the blocks by the reactions.
func TestDiagram(t *testing.T) {
	_, res := Run(scenarioB())
	first, last := res.Diagram[0], res.Diagram[len(res.Diagram)-1]
	if first.X != 0 || math.Abs((last.X-60*in).Inches()) > 1e-9 {
		t.Errorf("from %v to %v in", first.X.Inches(), last.X.Inches())
	}
	for _, s := range []Station{first, last} {
		if math.Abs(s.Shear.Pounds()) > 1e-6 || math.Abs(s.Moment.PoundInches()) > 1e-6 {
			t.Errorf("free end at %.1f in carries %.6f lb and %.6f lb-in", s.X.Inches(), s.Shear.Pounds(), s.Moment.PoundInches())
		}
	}
	for i := 1; i < len(res.Diagram); i++ {
		a, b := res.Diagram[i-1], res.Diagram[i]
		if a.X != b.X {
			continue
		}
		for _, r := range res.Reactions {
			if math.Abs((r.X-a.X).Inches()) < 1e-6 && math.Abs((b.Shear-a.Shear-r.Solved).Pounds()) > 1e-6 {
				t.Errorf("shear jumps %.3f lb at %s, want %.3f", (b.Shear - a.Shear).Pounds(), r.Mark, r.Solved.Pounds())
			}
		}
	}
}
