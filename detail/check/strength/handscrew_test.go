package strength

import (
	"math"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Three plies of one piece: the second joint has two plies inside and one outside, the screws at it hold in both.
func TestJointsOfThreePlies(t *testing.T) {
	m := scenarioB()
	m.Blocks.Plies = []Ply{pinePly(1.5), pinePly(0.75), pinePly(1)}
	c := &calc{m: m}
	joints := c.joints()
	if len(joints) != 2 {
		t.Fatalf("%d joints of three plies", len(joints))
	}
	for i, want := range [][4]float64{{1.5, 0.75, 1.5, 1.75}, {2.25, 1, 2.25, 1}} {
		j := joints[i]
		for k, got := range []float64{j.inner.thick, j.outer.thick, j.fromInside, j.fromOutside} {
			if math.Abs(got-want[k]) > 1e-9 {
				t.Errorf("joint %d: inner and outer part, inside and outside of the joint: number %d is %.3f in, want %g", i+1, k, got, want[k])
			}
		}
		if j.layers != i+1 || j.ply != i+2 {
			t.Errorf("joint %d: %d layers inside, outer ply %d", i+1, j.layers, j.ply)
		}
	}
}

// the tip, more than 4 D = 1.5, and holds. In dry wood its withdrawal is not lowered: 397.7/(1.15 x 0.7) = 494.0 lb.
func TestLagHolds(t *testing.T) {
	m := lagged()
	r, _ := Run(m)
	if s := r.Find("penetration_to_rim"); s.Verdict != check.OK {
		t.Errorf("2.03 in of 1.5: %v, %s", s.Verdict, s.Reason)
	}
	c := &calc{m: m, a: m.Assume.filled()}
	wet := c.withdrawal(c.fastenerGroups()[0])
	c.m.Blocks.Moisture.Service = Dry
	dry := c.withdrawal(c.fastenerGroups()[0])
	if math.Abs(dry-494.0) > 1 || math.Abs(wet/dry-0.7) > 1e-9 {
		t.Errorf("withdrawal dry %.1f lb, wet %.1f; by hand 494.0 and 345.8", dry, wet)
	}
}

// A wood screw holds over 6 D: 6 x 0.242 = 1.452 in. NDS 2018 12.1.5.6 (from memory, confirm).
func TestScrewPenetration(t *testing.T) {
	m := lagged()
	rim := m.Fasteners.ToRim
	rim.Kind, rim.Diameter, rim.Hole, rim.Length = Screw, 0.242*in, 0.242*in, 5*in
	r, _ := Run(m)
	// 5 - 0.25 - 3 - 0.5 = 1.25, less a tip of 2 x 0.242.
	wants(t, r, map[string]float64{"penetration_to_rim@limit": 1.452, "penetration_to_rim": 0.766})
	if s := r.Find("penetration_to_rim"); s.Verdict != check.Fails {
		t.Errorf("0.77 in of 1.45: %v", s.Verdict)
	}
}

// and its root by NDS 2018 appendix L3 (from memory, confirm).
func TestScrewThreads(t *testing.T) {
	root := map[int]float64{6: 0.113, 7: 0.122, 8: 0.131, 9: 0.142, 10: 0.152, 12: 0.171, 14: 0.196, 16: 0.209, 18: 0.232, 20: 0.255, 24: 0.298}
	for n, want := range root {
		d := 0.060 + 0.013*float64(n)
		th, ok := threadOf(Screw, unit.Length(d)*in)
		if !ok || math.Abs(th.nominal-d) > 1e-9 || math.Abs(th.tip-2*d) > 1e-9 || math.Abs(th.root-want) > 1e-9 {
			t.Errorf("No. %d: %+v, want %.3f, root %.3f", n, th, d, want)
		}
	}
	if len(screwThreads()) != len(root) {
		t.Errorf("%d screws listed, want %d", len(screwThreads()), len(root))
	}
}

// A lag bears in rim and backing as deep as it stands there less half its tip: 2.25 - 7/64 = 2.1406 in of the 3.
func TestLagBearsAsDeepAsItStands(t *testing.T) {
	r, _ := Run(lagged())
	wants(t, r, map[string]float64{"plane1_rim_from_block_to_rim[lm]": 2.1406})
}

// and more 45 ksi; wood screws No. 6 100, 7 to 9 90, 10 to 12 80, 14 and 16 70, 18 and 20 60, 24 45 ksi; bolts 45 ksi.
func TestBendingYield(t *testing.T) {
	for kind, sizes := range map[Kind]map[float64]float64{
		Lag: {0.25: 70, 0.3125: 60, 0.375: 45, 0.5: 45, 1: 45},
		Screw: {0.138: 100, 0.151: 90, 0.164: 90, 0.177: 90, 0.190: 80, 0.216: 80, 0.242: 70, 0.268: 70, 0.294: 60, 0.320: 60,
			0.372: 45},
		Bolt: {0.25: 45, 0.5: 45, 1: 45},
	} {
		for d, want := range sizes {
			if got := bendingYield(kind, d).PSI(); math.Abs(got-1000*want) > 1e-6 {
				t.Errorf("%v of %g in: %.0f psi, want %g ksi", kind, d, got, want)
			}
		}
	}
}

// Wood that is dry when fastened and in service takes nothing off a screw or a bolt. NDS 2018 table 11.3.3.
func TestDryFasteners(t *testing.T) {
	m := scenarioB()
	m.Ledger.Moisture, m.Blocks.Moisture = Moisture{Dry, Dry}, Moisture{Dry, Dry}
	r, _ := Run(m)
	wants(t, r, map[string]float64{"plane1_rim_from_block[CM]": 1, "ply_screws_1[CM]": 1})
}

// IIIm with q = 843.6: A = 8.8905e-4, B = 0.305, C = -46.83 - 78.48: P = 241.2, /2.2 = 109.6 lb.
func TestShortPlyScrews(t *testing.T) {
	m := scenarioB()
	m.Blocks.PlyScrews.Length = 2.3 * in
	r, _ := Run(m)
	wants(t, r, map[string]float64{"ply_screws_1[Z]": 109.6, "ply_screws_1_penetration": 0.8, "ply_screws_1_penetration@limit": 1.14})
}

// Screws under 1/4 in have no geometry factor: their distances are left open, and nothing is added to their value for it.
func TestThinScrewsHaveNoGeometryFactor(t *testing.T) {
	m := lagged()
	rim := m.Fasteners.ToRim
	rim.Kind, rim.Diameter, rim.Hole, rim.Length = Screw, 0.19*in, 0.19*in, 6*in
	r, _ := Run(m)
	wants(t, r, map[string]float64{"plane1_rim_from_block_to_rim[Cd]": 1, "plane1_rim_from_block_to_rim[n]": 4})
	if s := r.Find("distances_to_rim"); s == nil || s.Verdict != check.NotChecked {
		t.Errorf("%+v, want NOT CHECKED", s)
	}
}

// of rim and backing: 225.2 lb, wet 157.7.
func TestScrewHoldsByItsOwnRule(t *testing.T) {
	m := lagged()
	rim := m.Fasteners.ToRim
	rim.Kind, rim.Diameter, rim.Hole = Screw, 0.242*in, 0.242*in
	c := &calc{m: m, a: m.Assume.filled()}
	if got := c.withdrawal(c.fastenerGroups()[0]); !(math.Abs(got-157.7) <= 0.2) {
		t.Errorf("withdrawal %.2f lb, by hand 157.7", got)
	}
}

// Pull and shear of a screw count the shear of its worst plane or of the whole screw, whichever is nearer its limit.
func TestWholeScrewCounts(t *testing.T) {
	m := lagged()
	m.Blocks.PliesFastened = false // the faces of the plies hold their couple, and the whole screw turns before any plane does
	m.Fasteners.ToRim.Diameter, m.Fasteners.ToRim.Hole = 0.75*in, 0.75*in
	r, _ := Run(m)
	worst := 0.0
	for _, s := range r.Steps {
		if s.Group == check.Connection && s.Symbol == "R" && strings.HasSuffix(s.ID, "_to_rim") && s.Limit != nil {
			worst = math.Max(worst, s.Ratio)
		}
	}
	whole := r.Find("many_layer_held_to_rim").Ratio
	v, _ := lookUp(r, "screw_pull_and_shear_to_rim[V]")
	if z, _ := lookUp(r, "screw_pull_and_shear_to_rim[Z']"); whole != worst || whole <= 1.01*r.Find("plane1_rim_from_inner_to_rim").Ratio || !(math.Abs(z-v/worst) <= 1e-6*z) {
		t.Errorf("Z' is %.2f lb of a load of %.2f at a worst ratio of %.4f, the whole screw's %.4f", z, v, worst, whole)
	}
}
