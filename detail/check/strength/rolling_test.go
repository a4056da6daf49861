package strength

import (
	"math"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// narrow is scenario B with blocks as narrow as fail in rolling shear: 962.9 lb on 8 x 3 in is 1.5 x 962.9/24 =
// 60.18 psi, 0.925 of 65.07. Wide enough is 1.5 x 962.9/(3 x 65.07 x 0.9) = 8.221 in: 8 1/4 to the next quarter.
func narrow() Model {
	m := scenarioB()
	m.Blocks.Width = 8 * in
	return m
}

func TestRollingShear(t *testing.T) {
	r, _ := Run(narrow())
	wants(t, r, map[string]float64{"block_rolling_shear": 60.18, "block_rolling_shear@ratio": 0.9249})
	s := r.Find("block_rolling_shear")
	if s.Verdict != check.Fails || !strings.Contains(s.Reason, "many_layer_void") || !strings.HasPrefix(s.Fix, `blocks 8 1/4" wide`) {
		t.Errorf("%v, %q, %q: want FAILS, the void reading named and a width of 8 1/4 in", s.Verdict, s.Reason, s.Fix)
	}
	m := narrow()
	m.Blocks.Width = 8.25 * in
	if r, _ = Run(m); r.Find("block_rolling_shear").Verdict != check.OK {
		t.Errorf("blocks as wide as the fix says: %s", r.Find("block_rolling_shear").Reason)
	}
	m.System, m.Blocks.Width = unit.SI, 8*in // 208.8 mm to the next 5
	if r, _ = Run(m); !strings.HasPrefix(r.Find("block_rolling_shear").Fix, "blocks 210 mm wide") {
		t.Errorf("in millimetres: %s", r.Find("block_rolling_shear").Fix)
	}
	m.Blocks.Wood.Fv = 0
	if r, _ = Run(m); r.Find("block_rolling_shear").Verdict != check.NotChecked {
		t.Error("shear strength not stated: want NOT CHECKED")
	}
}

// Nothing is asked of a block that is counted as a void, and of upright grain something else.
func TestRollingShearWhereTheCoupleCounts(t *testing.T) {
	ids := []string{"block_rolling_shear", "block_across_grain"}
	gap, upright := scenarioB(), scenarioB()
	gap.Blocks.FrontGap = 0.75 * in
	upright.Blocks.VerticalGrain = true
	for name, m := range map[string]Model{"a gap in front": gap, "grain upright": upright} {
		r, _ := Run(m)
		for _, id := range ids {
			if r.Find(id) != nil {
				t.Errorf("%s: %s is there", name, id)
			}
		}
	}
	r, _ := Run(upright)
	if s := r.Find("scope_tear_out"); s == nil || s.Verdict != check.Engineer || !strings.Contains(s.Reason, "appendix E") {
		t.Errorf("grain upright: %+v, want ENGINEER", s)
	}
	if r, _ = Run(scenarioB()); r.Find("scope_tear_out") != nil {
		t.Error("grain along the wall: nothing tears out")
	}
	if s := r.Find("block_across_grain"); s.Verdict != check.Info || s.Limit != nil || !strings.Contains(s.Note, "no standard") {
		t.Errorf("%+v, want a number with no limit", s)
	}
	if !strings.Contains(strings.Join(r.Cautions, "\n"), "across their grain") {
		t.Error("no caution of bending across the grain")
	}
}

// Two loose plies have a step each, and each with its own thickness: half of it doubles the stress the same
// force makes.
func TestRollingShearOfEachPly(t *testing.T) {
	m := scenarioB()
	m.Blocks.PliesFastened = false
	r, _ := Run(m)
	force, ok := lookUp(r, "block_rolling_shear_inner[T]")
	if s := r.Find("block_rolling_shear_inner"); !ok || s == nil || r.Find("block_rolling_shear_outer") == nil {
		t.Fatal("no step of each ply")
	}
	if got := inchPound(r.Find("block_rolling_shear_inner").Value); math.Abs(got-1.5*force/(9*1.5)) > 1e-6 {
		t.Errorf("inner ply %.2f psi under %.1f lb", got, force)
	}
	if s := r.Find("block_rolling_shear_inner"); !strings.Contains(s.Fix, "plies_fastened") {
		t.Errorf("loose plies that fail are to be fixed: %q", s.Fix)
	}
}
