package strength

import (
	"math"
	"testing"

	"standclear/detail/check"
)

// Distances of columns from the ends and cut ends of a ledger of 60 in in two pieces: 58 in is 2 in from the end, 31 in is 1 in from
// the joint at 30, 25 in is 5. Off the ledger all distances are less than nothing.
func TestLedgerEnds(t *testing.T) {
	m := scenarioB()
	m.Ledger.Splices = lengths(30)
	c := &calc{m: m}
	for _, w := range []struct {
		at       []float64
		end, cut float64
	}{{[]float64{58}, 2, 28}, {[]float64{25}, 25, 5}, {[]float64{31}, 29, 1}, {[]float64{25, 31, 58}, 2, 1}, {[]float64{61}, -1, -31}, {[]float64{-1}, -1, -31}} {
		end, cut := c.ledgerEnds(w.at)
		if !(math.Abs(end-w.end) <= 1e-9) || !(math.Abs(cut-w.cut) <= 1e-9) {
			t.Errorf("columns at %v: %g in to the end and %g to the joint, want %g and %g", w.at, end, cut, w.end, w.cut)
		}
	}
}

// A single column takes with it three diameters of wood, for the group factor: E A of 1.4e6 x 3 x 1.875 and 1.4e6 x 1.5 x 1.875.
// NDS 2018 11.3.6: gamma = 180,000 x 0.625^1.5 = 88,939, u = 1 + 88,939 x 3.375/2 x (1/7.875e6 + 1/3.9375e6) = 1.05718,
// m = 0.71398, Cg = 0.98213.
func TestGroupFactorOfOneColumn(t *testing.T) {
	m := scenarioB()
	m.Rim.Wood.E, m.Backing.Wood.E = m.Ledger.Wood.E, m.Ledger.Wood.E
	through(&m, func(s *Set) { s.Columns = lengths(0) })
	r, _ := Run(m)
	u := 1 + 88939*3.375/2*(1/7.875e6+1/3.9375e6)
	k := u - math.Sqrt(u*u-1)
	k4 := k * k * k * k
	want := k * (1 - k4) / (2 * ((1+0.5*k*k)*(1+k) - 1 + k4)) * 1.5 / (1 - k)
	wants(t, r, map[string]float64{"plane1_rim_from_block[Cg]": want})
	if got, _ := lookUp(r, "plane1_rim_from_block[Cg]"); !(math.Abs(got-want) <= 1e-5) {
		t.Errorf("Cg %.6f, by hand %.6f", got, want)
	}
}

// What of screws, washers, heads and threads is not known is open by name.
func TestHardwareNotKnown(t *testing.T) {
	for _, c := range []struct {
		name   string
		model  Model
		change func(*Model)
		id     string
	}{
		{"washers of two sets", lagged(), func(m *Model) { m.Fasteners.ToRim.Washer = Washer{} }, "sets_washers"},
		{"ledger screws of no size", scenarioB(), func(m *Model) { m.Blocks.LedgerScrews = PlyScrews{20, 0.45 * in, 3 * in} }, "ledger_screws"},
		{"wood under a head", lagged(), func(m *Model) { m.Blocks.Plies[1].FcPerp = 0 }, "head_bearing_to_rim"},
		{"thread of a bolt", scenarioB(), func(m *Model) { through(m, func(s *Set) { s.Diameter = 0.55 * in }) }, "threads"},
	} {
		c.change(&c.model)
		r, _ := Run(c.model)
		n := 0
		for _, s := range r.Steps {
			if s.ID == c.id {
				n++
			}
		}
		if s := r.Find(c.id); n != 1 || s.Verdict != check.NotChecked || s.Reason == "" {
			t.Errorf("%s: %d steps, %+v, want one that says NOT CHECKED", c.name, n, s)
		}
	}
}

// A pad parts the plies into two pieces, each with its own joint; at either end of the block it parts nothing.
func TestPilesBesideAPad(t *testing.T) {
	for after, want := range [][]pile{{{"block", 0, 4}}, {{"inner", 0, 1}, {"outer", 1, 4}}, {{"inner", 0, 2}, {"outer", 2, 4}}, {{"inner", 0, 3}, {"outer", 3, 4}}, {{"block", 0, 4}}} {
		m := scenarioB()
		m.Blocks.Plies = []Ply{pinePly(1), pinePly(1), pinePly(1), pinePly(1)}
		padded(psip(40))(&m)
		m.Blocks.Pad.After = after
		got := (&calc{m: m}).piles()
		if len(got) != len(want) {
			t.Fatalf("pad after %d: %v, want %v", after, got, want)
		}
		for i := range want {
			if got[i] != want[i] {
				t.Errorf("pad after %d: %v, want %v", after, got, want)
			}
		}
	}
}

// 3/4 in bolts with a gap before the ledger turn in rim and block at 2072 lb (1537.5 and 2212.5 lb/in, sheathing 0.5 in): in the
// block they bear one way over (2072/2212.5 + 3)/2 = 1.968 in from inside. Past a joint 2 in in: 2072 - 4354.5 + 70.5 = -2212,
// 1.0676 of the load, more than at the other plane.
func TestForceAcrossAJointFarFromTheRim(t *testing.T) {
	m := scenarioB()
	m.Blocks.Plies, m.Blocks.FrontGap = []Ply{pinePly(2), pinePly(1)}, 0.75*in
	through(&m, func(s *Set) { s.Diameter, s.Hole, s.Length = 0.75*in, 0.8125*in, 10.5*in })
	r, _ := Run(m)
	wants(t, r, map[string]float64{"plane1_rim_from_block[II]": 460.4, "ply_screws_1[k]": 1.0676})
}

// One joist in the middle of 40 in brings the live and snow load of all 60 in, 52.5 psf x 66/144 = 24.06 lb/in, there: 1443.75 x
// 40^3/(48 x 1.2465e8) = 0.01544 in.
func TestJoistsBendTheLedger(t *testing.T) {
	m := scenarioB()
	m.Blocks.At, m.Joists.At = marks(10, 50), lengths(30)
	r, _ := Run(m)
	wants(t, r, map[string]float64{"ledger_defl_live": 0.015443})
}

// Bounds that rest on no load are held with no load stated; a lag too short for the rim holds nothing that is known.
func TestBoundsWithoutLoads(t *testing.T) {
	m := scenarioB()
	m.Loads.Dead, m.Blocks.FrontGap = nil, 4.1*in
	r, _ := Run(m)
	if s := r.Find("scope_gap"); s == nil || s.Verdict != check.Engineer {
		t.Errorf("4.1 in of open dowel: %+v, want ENGINEER", s)
	}
	m = lagged()
	m.Fasteners.ToRim.Length = 3.7 * in // 0.25 + 3 + 0.5 lie before the rim
	r, _ = Run(m)
	if s := r.Find("fasteners_to_rim"); s == nil || s.Verdict != check.NotChecked {
		t.Errorf("a lag that ends in the sheathing: %+v, want NOT CHECKED", s)
	}
}

// Joists that end at their beam are said to.
func TestJoistsEndAtTheirBeam(t *testing.T) {
	r, _ := Run(scenarioB())
	if s := r.Find("scope_joist_cantilever"); s == nil || s.Verdict != check.OK {
		t.Errorf("%+v, want OK", s)
	}
}

// A bolt of 5/8 in through two pieces of 6 in hinges in both: P = (2 x 1831.1 x 2031.25)^0.5 = 2727.4 lb, and each hinge stands
// 2727.4/2031.25 = 1.3427 in from the joint at 6 in.
func TestHingesOfAFigure(t *testing.T) {
	d, _ := DowelOf(Bolt, 0.625*in, 0)
	fe := DowelBearing(0.55, d.Nominal, 90)
	f := d.Figure([]Bed{{Name: "main", Hold: Main, Length: 6 * in, Fe: fe, Angle: 90}, {Name: "side", Hold: Side, Length: 6 * in, Fe: fe, Angle: 90}})
	if !(math.Abs(f.Load.Pounds()-2727.4) <= 0.5) || len(f.Hinges) != 2 {
		t.Fatalf("load %.1f lb, hinges %v", f.Load.Pounds(), f.Hinges)
	}
	for i, want := range []float64{6 - 1.3427, 6 + 1.3427} {
		if got := f.Hinges[i].Inches(); !(math.Abs(got-want) <= 1e-3) {
			t.Errorf("hinge at %.4f in, by hand %.4f", got, want)
		}
	}
}
