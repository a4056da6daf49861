package strength

import (
	"math"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// A ledger joint over the middle block: each side carries its own load with its own two bolts. Left of it
// w 22/2 less what the overhang's moment takes, 946/22: V = 325.19 - 43.0 = 282.2 solved; design values are
// higher by pattern and by the floor of the reaction, shared out to the side that needs it.
func TestJointHasTwoDuties(t *testing.T) {
	m := scenarioB()
	m.Ledger.Splices = lengths(30)
	c := &calc{m: m, a: m.Assume.filled()}
	c.loads()
	c.solve()
	c.groups = c.fastenerGroups()
	all := c.duties(c.groups[0])
	if len(all) != 4*len(c.solved) {
		t.Fatalf("%d duties, want 4 a combination: B1, B2 left, B2 right, B3", len(all))
	}
	for _, d := range all {
		k := c.solved[d.solution.n]
		switch d.side {
		case "":
			if d.v != k.reaction[d.block] || d.n != 4 {
				t.Errorf("block %d: %.1f lb on %d, want %.1f on 4", d.block, d.v, d.n, k.reaction[d.block])
			}
		default:
			if side := math.Max(k.sides[1][0], k.sides[1][1]); d.n != 2 || d.v < 282.2*k.total()/29.5625-0.1 || d.v > math.Max(side, k.reaction[1]-side)+0.1 {
				t.Errorf("%s of %s: %.1f lb on %d bolts, sides %.1f of %.1f", d.side, k.name, d.v, d.n, k.sides[1], k.reaction[1])
			}
		}
	}
	r, _ := Run(m)
	s := r.Find("end_splice")
	if s == nil || math.Abs(inchPound(s.Value)-1.75) > 1e-9 || s.Verdict != check.OK {
		t.Errorf("%+v, want 1.75 in of 1.25", s)
	}
	if s := r.Find("c_delta"); math.Abs(s.Value.V-0.7) > 1e-9 { // 1.75/2.5 at the joint
		t.Errorf("geometry factor %.3f, want 0.7", s.Value.V)
	}
}

// A joint beside the middle of the block leaves one side without bolts: nothing carries it.
func TestJointBesideTheBolts(t *testing.T) {
	m := scenarioB()
	m.Ledger.Splices = lengths(33.5)
	r, _ := Run(m)
	if s := r.Find("plane2_block_from_ledger"); s.Verdict != check.Fails || s.Ratio < check.Beyond {
		t.Errorf("no bolts right of the joint: %v at %.1f", s.Verdict, s.Ratio)
	}
}

// Screws from the ledger into the front of a padded block count that part with the ledger, and take what
// passes between them. Scenario A: 1150.97 lb on ten No. 10 of 127.76 lb at CM 0.7: 894.3 lb. With the inner ply
// a void the bolt turns at 215.773 x 4.5 = 971.0 lb; outer part and ledger bear 2950 x 0.75 = 2212.5 lb/in, up over
// (971.0/2212.5 + 3)/2 = 1.719 in and down over the rest: all of the outer part bears up, 2212.5 x 1.5 = 3318.75,
// 3.4179 times the load, and the ledger the other way.
func TestLedgerScrews(t *testing.T) {
	r, _ := Run(scenarioA())
	wants(t, r, map[string]float64{"ledger_screws[k]": 3.4179, "ledger_screws": 3933.9, "ledger_screws@limit": 894.3, "ledger_screws_penetration": 1.5})
	if s := r.Find("ledger_screws"); s.Verdict != check.Fails || s.Fix == "" {
		t.Errorf("%v, fix %q", s.Verdict, s.Fix)
	}
	m := scenarioA()
	m.Blocks.LedgerScrews = PlyScrews{}
	r, _ = Run(m)
	if r.Find("ledger_screws") != nil || r.Find("plane2_inner_from_outer_ledger") != nil {
		t.Error("without screws the front of the block still counts with the ledger")
	}
	m = scenarioB()
	m.Blocks.LedgerScrews, m.Blocks.FrontGap = PlyScrews{20, 0.19 * unit.Inch, 3 * unit.Inch}, 0.5*in
	r, _ = Run(m)
	if s := r.Find("ledger_screws"); s.Verdict != check.Fails {
		t.Errorf("screws across a gap: %v", s.Verdict)
	}
	if r.Find("plane1_rim_from_block_ledger") != nil {
		t.Error("a block across a gap counts with the ledger")
	}
}

// The last block 1.75 in from the end of the ledger has 1.75/2.5 = 0.7 of the value; the middle one keeps all of it.
func TestShortEndCutsItsBlockOnly(t *testing.T) {
	m := scenarioB()
	m.Blocks.At = marks(8, 30, 56.5)
	m.Backing.Pieces[2].To, m.Tie.At[5] = 64*in, 64*in
	r, _ := Run(m)
	if s := r.Find("c_delta"); math.Abs(s.Value.V-0.7) > 1e-9 || s.Where != "B3" {
		t.Errorf("geometry factor %.3f at %s, want 0.7 at B3", s.Value.V, s.Where)
	}
	s := r.Find("plane2_block_from_ledger")
	if cd, _ := lookUp(r, "plane2_block_from_ledger[Cd]"); s.Where == "B2" && cd != 1 || s.Where == "B3" && math.Abs(cd-0.7) > 1e-9 {
		t.Errorf("plane at %s with a geometry factor of %.3f", s.Where, cd)
	}
}
