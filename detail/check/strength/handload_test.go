package strength

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Joists at 1, 17, 33 and 59 in on 60 in of ledger load it to half way to each other: 9, 16, 21 and 14 in. The
// widest share loads the hanger: 29.5625 x 21 = 620.8 lb, of a joist spacing of 16 in stated. It is 0.887 of 700 lb.
func TestSharesOfTheJoists(t *testing.T) {
	m := scenarioB()
	m.Joists.At = lengths(1, 17, 33, 59)
	c := &calc{m: m}
	for i, want := range []float64{9, 16, 21, 14} {
		if got := c.shares()[i]; math.Abs(got-want) > 1e-9 {
			t.Errorf("joist %d carries %.3f in of ledger, want %g", i+1, got, want)
		}
	}
	r, _ := Run(m)
	wants(t, r, map[string]float64{"joist_reaction": 620.8, "hanger": 620.8, "hanger@ratio": 0.8869})
}

// A joist between the outermost bolts of a block, 1.75 in to either side, stands straight on it; one past them bends
// the ledger where it is.
func TestJoistOverTheBolts(t *testing.T) {
	m := scenarioB()
	m.Joists.At = lengths(6.5, 28.1, 31.9, 53.5)
	c := &calc{m: m, a: m.Assume.filled()}
	for i, want := range []float64{8, 28.1, 31.9, 52} {
		if got := c.joistLoads(c.beam())[i].x; math.Abs(got-want) > 1e-9 {
			t.Errorf("joist at %v loads the ledger at %.3f in, want %g", m.Joists.At[i].Inches(), got, want)
		}
	}
}

// An overhang longer than half the widest span twists about its block whole: 24 in of overhang beside spans of 18
// and 10 in. 29.5625 x (0.75 + 1) x 24 = 1241.6 lb-in, /(0.30 x 1.5^2 x 9.25) = 198.9 psi, whichever end it is at.
func TestOverhangTwists(t *testing.T) {
	for _, at := range [][]Place{marks(24, 42, 52), marks(8, 18, 36)} {
		m := scenarioB()
		m.Blocks.At = at
		r, _ := Run(m)
		wants(t, r, map[string]float64{"ledger_torsion[l]": 24, "ledger_torsion[T]": 1241.6, "ledger_torsion[t]": 198.9, "ledger_torsion@limit": 195.2})
		if s := r.Find("ledger_torsion"); s.Verdict != check.Fails {
			t.Errorf("198.9 psi of twist alone, of 195.2: %v", s.Verdict)
		}
	}
}

// The pad's own free body, cut at its inner face: everything from there out to the load line, 0.5 pad + 1.5 outer ply
// + 1.5 ledger + 1 = 4.5 in. 812.97 x 4.5 = 3658.4 lb-in, /4.6875 = 780.5 lb; at the foot 2 x 780.5/(2.21875 x 9) =
// 78.17 psi of the spacer's 565 x 0.67.
func TestPadByHand(t *testing.T) {
	m := scenarioB()
	padded(psip(40))(&m)
	r, _ := Run(m)
	wants(t, r, map[string]float64{"moment_at_pad": 3658.4, "lever_arm_pad": 4.6875, "top_row_tension_pad": 780.5,
		"foot_peak_stress_pad": 78.17, "foot_peak_stress_pad@limit": 378.55})
}

// Without a tie at both ends of any piece nothing is known of the ties' load: not 0 lb of the rating.
func TestNoPieceBetweenTies(t *testing.T) {
	m := scenarioB()
	m.Tie.At = lengths(8, 30, 52)
	r, res := Run(m)
	for id, want := range map[string]check.Verdict{"backing_ties": check.Fails, "tie_rating": check.NotChecked, "backing_bending": check.NotChecked} {
		if s := r.Find(id); s == nil || s.Verdict != want {
			t.Errorf("%s: %+v, want %v", id, s, want)
		}
	}
	if res.RequiredTie < 1000*unit.Pound {
		t.Errorf("the tie wanted is %v, less than the pull at one block", res.RequiredTie)
	}
}

// No backing to tie: the load of the ties is left open, and blocking is asked for.
func TestTiesWithoutBacking(t *testing.T) {
	m := scenarioB()
	m.Backing = Backing{}
	r, _ := Run(m)
	if s := r.Find("tie_rating"); s == nil || s.Verdict != check.NotChecked {
		t.Errorf("%+v, want NOT CHECKED", s)
	}
}

// What stands straight over a block with a joint may stand on either side of it: 1,000 lb more over the block is
// 1,000 lb more for the bolts left of the joint and for those right of it.
func TestLoadOverAJoint(t *testing.T) {
	var v [2]map[string]float64
	for i := range v {
		m := scenarioB()
		m.Ledger.Splices = lengths(30)
		if i == 1 {
			m.PointLoads = []PointLoad{{"post", 30 * in, 1000 * unit.Pound}}
		}
		c := &calc{m: m, a: m.Assume.filled()}
		c.loads()
		c.solve()
		c.groups = c.fastenerGroups()
		v[i] = map[string]float64{}
		for _, d := range c.duties(c.groups[0]) {
			if d.side != "" {
				v[i][d.name+" "+d.side] = d.v
			}
		}
	}
	for side, before := range v[0] {
		if got := v[1][side] - before; math.Abs(got-1000) > 1e-6 {
			t.Errorf("%s: %.1f lb more under 1,000 lb straight over the block", side, got)
		}
	}
	if len(v[0]) != 8 {
		t.Errorf("%d duties beside the joint, want 2 in each of 4 combinations", len(v[0]))
	}
}

// A block lifted: its lowest bolts stand 6 in under its top and hold with min(6 - 2.21875/3, 0.75 x 6) = 4.5 in. At e =
// 6 in they reach a pull of 1,000 lb at a lift of 750 lb.
func TestTurnedOverByHand(t *testing.T) {
	m := scenarioB()
	c := &calc{m: m, a: m.Assume.filled()}
	c.groups = c.fastenerGroups()
	c.res.Tension = 1000 * unit.Pound
	for load, holds := range map[float64]bool{749: true, 751: false} {
		if why := c.turnedOver(load); (why == "") != holds {
			t.Errorf("lifted by %g lb: %q", load, why)
		}
	}
	c.a.FootDepth = 0.9 // 6 - 0.9 x 8.875/3 = 3.3375 in: 556.25 lb
	for load, holds := range map[float64]bool{556: true, 557: false} {
		if why := c.turnedOver(load); (why == "") != holds {
			t.Errorf("lifted by %g lb on a deep foot: %q", load, why)
		}
	}
}

// The greatest deflection of a span is no less than any of three hundred points of it, and near the greatest of them.
func TestDropAgainstSamples(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for range 60 {
		b, a := randomBeam(r)
		one := b.solve(a)
		for _, s := range one.spans {
			if s.length < 1 {
				continue
			}
			most := 0.0
			for i := range 301 {
				most = math.Max(most, math.Abs(one.dropAt(s.x0+s.length*float64(i)/300)))
			}
			if got := s.drop(b.ei, 0); got < most*(1-1e-9) || got > most*1.001+1e-9 {
				t.Fatalf("span from %.1f, %.1f long: greatest deflection %.9f in, at a point of it %.9f", s.x0, s.length, got, most)
			}
		}
	}
}

// Every size that the code asks for and is not there has a way to mend it.
func TestSizesAreMended(t *testing.T) {
	m := scenarioB()
	m.Ledger.Thickness, m.Joists.Seat = 1.25*in, in
	r, _ := Run(m)
	for _, id := range []string{"ledger_thickness", "hanger_seat"} {
		if s := r.Find(id); s.Verdict != check.Fails || s.Fix == "" {
			t.Errorf("%s: %v, mended by %q", id, s.Verdict, s.Fix)
		}
	}
}

// Deflection may be 1/360 of the span under live and snow load and 1/240 under all, IRC 2021 table R301.7; an overhang
// counts as half a span. Spans 22 and overhangs 8 in.
func TestDeflectionLimits(t *testing.T) {
	r, _ := Run(scenarioB())
	wants(t, r, map[string]float64{"ledger_defl_live@limit": 0.061111, "ledger_defl_total@limit": 0.091667,
		"overhang_defl_live@limit": 0.044444, "overhang_defl_total@limit": 0.066667})
	for id, want := range map[string]float64{"ledger_defl_live": 22. / 360, "overhang_defl_live": 16. / 360} {
		if got := inchPound(*r.Find(id).Limit); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: at most %.6f in, want %.6f", id, got, want)
		}
	}
}

// The distance to the end of a ledger piece counts either end and every joint.
func TestFromEnd(t *testing.T) {
	m := scenarioB()
	c := &calc{m: m}
	for x, want := range map[float64]float64{8: 8, 30: 30, 52: 8} {
		if got := c.fromEnd(x); math.Abs(got-want) > 1e-9 {
			t.Errorf("at %g in: %g in to the end, want %g", x, got, want)
		}
	}
	c.m.Ledger.Splices = lengths(31)
	if got := c.fromEnd(30); math.Abs(got-1) > 1e-9 {
		t.Errorf("beside a joint: %g in to the end, want 1", got)
	}
}

// The widest span decides wherever it is: 34 in first, 34 in last.
func TestWidestSpan(t *testing.T) {
	for _, at := range [][]Place{marks(8, 42, 52), marks(8, 18, 52)} {
		m := scenarioB()
		m.Blocks.At = at
		r, _ := Run(m)
		wants(t, r, map[string]float64{"block_spacing": 34, "ledger_torsion[l]": 17})
	}
}

// One joist in the middle of a ledger on two blocks 40 in apart brings the load of all 60 in there: 29.5625 x 60/2 x 20 =
// 17,737.5 lb-in, three times and more what spread load makes.
func TestJoistsLoadTheLedger(t *testing.T) {
	m := scenarioB()
	m.Blocks.At, m.Joists.At = marks(10, 50), lengths(30)
	r, _ := Run(m)
	wants(t, r, map[string]float64{"ledger_m_pos_max": 17737.5, "ledger_fb[M_span]": 17737.5})
}

// Shear where a member hangs on dowels: 3 x 300/(2 x 1.5 x 6) = 50 psi; within 5 depths of the end, 46.25 in of 9.25, times
// (9.25/6)^2 = 2.3767. NDS 2018 3.4.3.3 (from memory, confirm).
func TestShearAtBolts(t *testing.T) {
	for end, want := range map[float64]float64{46: 118.84, 46.5: 50, 0: 118.84} {
		if got := shearAtBolts(300, 1.5, 9.25, 6, end); math.Abs(got-want) > 0.01 {
			t.Errorf("%g in from the end: %.2f psi, want %.2f", end, got, want)
		}
	}
}

// How far the ledger goes down is in the results: 2 x 0.01095 + 1/16 in by slip and play, 0.02323 in by turning.
func TestDropInTheResults(t *testing.T) {
	_, res := Run(scenarioB())
	if drop, turn := res.Drop.Inches(), res.Turn.Inches(); math.Abs(drop-0.0844) > 1e-4 || math.Abs(turn-0.02323) > 1e-4 {
		t.Errorf("down %.5f by slip and %.5f by turning, by hand 0.0844 and 0.02323", drop, turn)
	}
}

// Two ties at one place are one, and one holds no piece.
func TestTwoTiesAtOnePlace(t *testing.T) {
	m := scenarioB()
	m.Tie.At = lengths(0.75, 1.2, 22.75, 37.25, 44.75, 59.25)
	r, _ := Run(m)
	if s := r.Find("backing_ties"); s.Verdict != check.Fails || s.Value.V != 1 || s.Where != "B1" {
		t.Errorf("%v of %v at %s, want FAILS with 1 at B1", s.Verdict, s.Value, s.Where)
	}
}

// Two lateral devices of 1,500 lb or four of 750, IRC 2021 R507.9.2 (from memory, confirm).
func TestLateralDevices(t *testing.T) {
	for _, c := range []struct {
		n      int
		rating unit.Force
		want   check.Verdict
	}{{2, 1500, check.OK}, {3, 1499, check.Fails}, {3, 1500, check.OK}, {4, 750, check.OK}, {4, 749, check.Fails}} {
		m := scenarioB()
		m.Tie.Lateral.Count, m.Tie.Lateral.Rating = c.n, c.rating*unit.Pound
		r, _ := Run(m)
		if s := r.Find("lateral_rating"); s.Verdict != c.want {
			t.Errorf("%d of %g lb: %v, want %v", c.n, float64(c.rating), s.Verdict, c.want)
		}
	}
}

// What does not stand on the ledger is a fault of the model, and nothing is checked.
func TestOffTheLedger(t *testing.T) {
	for name, change := range map[string]func(*Model){
		"point load left of it":  func(m *Model) { m.PointLoads = []PointLoad{{"stair", -in, 100}} },
		"point load right of it": func(m *Model) { m.PointLoads = []PointLoad{{"stair", 61 * in, 100}} },
		"point load upward":      func(m *Model) { m.PointLoads = []PointLoad{{"stair", 30 * in, -100}} },
		"block left of it":       func(m *Model) { m.Blocks.At = marks(-1, 30, 52) },
		"block right of it":      func(m *Model) { m.Blocks.At = marks(8, 30, 61) },
		"blocks out of order":    func(m *Model) { m.Blocks.At = marks(8, 52, 30) },
		"one block":              func(m *Model) { m.Blocks.At = marks(30) },
		"joist left of it":       func(m *Model) { m.Joists.At = lengths(-1, 30) },
		"joist right of it":      func(m *Model) { m.Joists.At = lengths(30, 61) },
		"joists out of order":    func(m *Model) { m.Joists.At = lengths(30, 20) },
		"load upward":            func(m *Model) { m.Loads.Live = psfp(-1) },
		"one set of two":         func(m *Model) { m.Fasteners = Fasteners{ToRim: m.Fasteners.Through} },
		"set without rows":       func(m *Model) { through(m, func(s *Set) { s.Rows = nil }) },
	} {
		m := scenarioB()
		change(&m)
		r, _ := Run(m)
		if s := r.Find("model"); s == nil || s.Verdict != check.NotChecked || len(r.Steps) != 1 {
			t.Errorf("%s: %d steps, want one of the model that says NOT CHECKED", name, len(r.Steps))
		}
	}
}

// A failure says which way the limit lies.
func TestReasonsSayWhichWay(t *testing.T) {
	m := scenarioB()
	m.Tie.Lateral.Rating, m.Tie.Rating = 1400*unit.Pound, 500*unit.Pound
	m.Rim.Thickness, m.Loads.Live, m.Loads.GroundSnow = in, psfp(61), psfp(31)
	r, _ := Run(m)
	for id, says := range map[string]string{"lateral_rating": "must be at least", "tie_rating": "must be at most",
		"scope_rim_thickness": "; at least", "scope_live": "; at most"} {
		if s := r.Find(id); !strings.Contains(s.Reason, says) {
			t.Errorf("%s: %q does not say %q", id, s.Reason, says)
		}
	}
	if s := r.Find("snow_minimum"); !strings.Contains(s.Fix, "loads.snow: 31") {
		t.Errorf("too little snow is mended by %q", s.Fix)
	}
}
