package strength

import (
	"math"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// The spring of a block, scenario B. The wood under a bolt: 2 x 180000 x 0.625^1.5/1.5 = 118,585 psi. Rim and
// blocking 3 in, block 3 in, 0.5 between: 1/3 + 1/3 + 3.5^2/4.5 = 3.3889; block 3 in on ledger 1.5: 1/3 + 2/3 +
// 2.25^2/2.53125 = 3.0. Slip 6.3889/(4 x 118,585) = 1.3469e-5 in/lb. Turning: T = 6/4.6875 = 1.28, 0.64 a bolt, E across
// 1.3e6 x 0.9/20 = 58,500. Bolt 0.64 x 8.25/(29e6 x 0.3068) = 5.934e-7; washers 0.64/8.629 x 4.5/58,500 = 5.705e-6; foot
// 1.28/(2.21875 x 9) x 4.4375/58,500 = 4.862e-6; together 1.1161e-5/4.6875 x 6 = 1.4286e-5 in/lb. 1/2.7755e-5 = 36,029 lb/in.
func TestSpringOfABlock(t *testing.T) {
	r, _ := Run(scenarioB())
	wants(t, r, map[string]float64{"support_slip[k]": 36029})
	s := r.Find("support_slip")
	if got := s.With[1].Value.Text(unit.IP); !strings.HasSuffix(got, " lb/in") {
		t.Errorf("stiffness printed as %s", got)
	}
	// It is what ledger_drop counts.
	load, _ := lookUp(r, "moment_at_rim_face[R]")
	slip, _ := lookUp(r, "ledger_drop[slip]")
	turn, _ := lookUp(r, "rotation_drop[t e]")
	if k := load / (slip + turn); math.Abs(k-36029) > 0.005*36029 {
		t.Errorf("slip and turning of ledger_drop make %.0f lb/in", k)
	}
}

// A load between blocks stays in the reactions though it goes to an engineer.
func TestPointLoadBetweenBlocks(t *testing.T) {
	m := scenarioB()
	_, before := Run(m)
	m.PointLoads = []PointLoad{{"stair", 19 * in, 100 * unit.Pound}}
	r, after := Run(m)
	sum := 0.0
	for i := range after.Reactions {
		sum += (after.Reactions[i].Solved - before.Reactions[i].Solved).Pounds()
	}
	if s := r.Find("point_load_on_block"); s.Verdict != check.Engineer || math.Abs(sum-100) > 1e-6 {
		t.Errorf("%v, %.3f lb more on the blocks; want ENGINEER and 100", s.Verdict, sum)
	}
}

// With a block missing every ratio grows as the load on the worst block does: the ratio that governs, times the load
// with the block missing over the load without.
func TestBlockMissingIsInProportion(t *testing.T) {
	r, _ := Run(scenarioB())
	missing, ratio := r.Find("block_missing_reaction"), r.Find("block_missing_ratio")
	governs := r.Find(strings.TrimSuffix(strings.Fields(ratio.Note)[1], ","))
	want := governs.Ratio * missing.Value.V / r.Find("block_reaction_max").Value.V
	if missing.Value.V <= r.Find("block_reaction_max").Value.V || math.Abs(ratio.Value.V-want) > 1e-6*want {
		t.Errorf("ratio %.4f with a block missing, want %.4f", ratio.Value.V, want)
	}
}
