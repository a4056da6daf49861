package strength

import (
	"math"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// The end of a piece of backing keeps 2 D like any end: 2 x 0.625 = 1.25 in. NDS 2018 table 12.5.1A.
func TestBackingKeepsItsEnd(t *testing.T) {
	for at, want := range map[float64]check.Verdict{5.1: check.Fails, 5.0: check.OK} { // 1.15 and 1.25 in from the column
		m := scenarioB()
		m.Backing.Pieces[0].From = unit.Length(at) * in
		r, _ := Run(m)
		wants(t, r, map[string]float64{"end_backing@limit": 1.25})
		if s := r.Find("end_backing"); s.Verdict != want || s.Where != "B1" {
			t.Errorf("backing from %.2f in: %v at %s, want %v at B1", at, s.Verdict, s.Where, want)
		}
	}
}

// A ply of plywood bears on bolts as wood of G 0.42 at most: across the grain 6100 x 0.42^1.45/0.625^0.5 = 2193, to
// 2200 psi, and not the 3250 of lumber of 0.55. NDS 2018 table 12.3.3 and its note; the cap is a judgement.
func TestPanelPlyBearsAsSoftWood(t *testing.T) {
	m := scenarioB()
	m.Blocks.Plies[1].Panel = true
	r, _ := Run(m)
	wants(t, r, map[string]float64{"plane2_block_from_ledger[Fe_m]": 2200, "plane1_rim_from_block[Fe_s]": 2200})
}

// What a set carries at one block is in the results for CD 1: 4 x 319.1 x 0.7 x 0.990 = 884.7 lb of the whole dowel,
// 4 x 422.14 x 0.7 x 0.990 = 1170.4 of the plane at the rim.
func TestCapacitiesInTheResults(t *testing.T) {
	_, res := Run(scenarioB())
	want := map[string]float64{"many_layer_held": 884.7, "plane1_rim_from_block": 1170.4}
	for _, p := range res.Planes {
		if w, ok := want[p.ID]; ok && math.Abs(p.Capacity.Pounds()-w) > 0.005*w {
			t.Errorf("%s carries %.1f lb, by hand %.1f", p.ID, p.Capacity.Pounds(), w)
		}
		delete(want, p.ID)
	}
	if len(want) > 0 {
		t.Errorf("not in the results: %v", want)
	}
}

// A lag of 6 in through washer 0.25, block 3 and sheathing 0.5 stands 2.25 in the rim and its backing of 3: 2.03 without
// Two sets at one height of each other share the wood between: 1.6875 in one over the other and in line is 0.675 of 4 D =
// 2.5 in, for both. 3.5 in aside, more than the least of columns, nothing is lowered.
func TestSetsLowerEachOther(t *testing.T) {
	for away, want := range map[float64]float64{0: 0.675, 3.5: 1} {
		m := lagged()
		m.Blocks.Width = 20 * in
		rim := m.Fasteners.ToRim
		rim.Rows, rim.Columns = lengths(-4.6875), lengths(-1.75-away, 1.75+away)
		r, _ := Run(m)
		for _, id := range []string{"c_delta_to_rim", "c_delta_to_block"} {
			if got := r.Find(id).Value.V; math.Abs(got-want) > 1e-9 {
				t.Errorf("%s with the other set %g in aside: %.4f, want %g", id, away, got, want)
			}
		}
	}
}

// A washer half as thick bends at a quarter of the pull, which counts in pull and shear together: 21,556.9 x 0.125^2/(3 x
// 1.03125^2) x 8.629 = 910.4 lb; 520.3/910.4 = 0.5715, + 0.79906.
func TestThinWasherPullsAndShears(t *testing.T) {
	m := scenarioB()
	through(&m, func(s *Set) { s.Washer.Thickness = 0.125 * in })
	r, _ := Run(m)
	wants(t, r, map[string]float64{"linear_interaction_top_bolt": 1.3706, "linear_interaction_top_bolt[T1/T']": 0.5715})
}

// A part of several layers is as stiff as its softest one, for the group factor.
func TestSoftestLayerCounts(t *testing.T) {
	for _, e := range [][2]float64{{1.0e6, 1.3e6}, {1.3e6, 1.0e6}} {
		m := scenarioB()
		m.Rim.Wood.E, m.Backing.Wood.E = unit.Pressure(e[0])*unit.PSI, unit.Pressure(e[1])*unit.PSI
		c := &calc{m: m}
		if got := c.rimPart().e; math.Abs(got-1.0e6) > 1 {
			t.Errorf("rim of %.1e and backing of %.1e psi: %.3e, want 1.0e6", e[0], e[1], got)
		}
	}
}

// The standard's own bending yield strength needs nobody's word.
func TestYieldOfTheStandard(t *testing.T) {
	m := scenarioB()
	through(&m, func(s *Set) { s.Yield = 45_000 * unit.PSI })
	r, _ := Run(m)
	if s := r.Find("scope_fyb"); s.Verdict != check.OK {
		t.Errorf("45 ksi stated for a bolt: %v, %s", s.Verdict, s.Reason)
	}
}

// Three loose plies are three parts, each with its planes; what is loose counts as a gap: sheathing 0.5 and all plies,
// 1.5 + 0.75 + 1 = 3.25, between rim and ledger.
func TestThreeLoosePlies(t *testing.T) {
	m := scenarioB()
	m.Blocks.PliesFastened = false
	m.Blocks.Plies = []Ply{pinePly(1.5), pinePly(0.75), pinePly(1)}
	r, _ := Run(m)
	for _, id := range []string{"plane1_rim_from_ply1", "plane2_ply1_from_ply2", "plane3_ply2_from_ply3", "plane4_ply3_from_ledger",
		"block_couple_ply1", "block_couple_ply2", "block_couple_ply3"} {
		if r.Find(id) == nil {
			t.Errorf("no step %s", id)
		}
	}
	wants(t, r, map[string]float64{"floating_rim_from_ledger[gap]": 3.75, "many_layer_void[longest_void]": 3.75, "many_layer_held[longest_void]": 0.5})
}

// A wood screw of No. N measures 0.060 + 0.013 N in (ASME B18.6.1, from memory, confirm), its tip is taken as two of that,
// Flat-use factors of members 2 and 3 in thick, NDS 2018 Supplement table 4A: 1.00 at 2 and 3 in of width, 1.10 at 4 and
// 5, 1.15 at 6 and 8, 1.20 at 10 and more; by dressed width.
func TestFlatUse(t *testing.T) {
	for depth, want := range map[float64]float64{1.5: 1, 2.5: 1, 3.5: 1.1, 4.5: 1.1, 5.5: 1.15, 7.25: 1.15, 9.25: 1.2, 11.25: 1.2} {
		if got := flatUse(depth); got != want {
			t.Errorf("%g in deep: %g, want %g", depth, got, want)
		}
	}
}

// A hole is as stated, or 1/16 in more than the bolt.
func TestHole(t *testing.T) {
	for stated, want := range map[float64]float64{0: 0.6875, 0.75: 0.75} {
		s := Set{Diameter: 0.625 * in, Hole: unit.Length(stated) * in}
		if got := s.hole(); math.Abs(got-want) > 1e-9 {
			t.Errorf("stated %g: %.4f in, want %g", stated, got, want)
		}
	}
}

// Wood fastened wet splits where two lines of bolts across its grain hold it: 0.4. Two columns in one row stand along the
// grain of rim, ledger and a block of level grain, 0.7, and across that of a block of upright grain. NDS 2018 table 11.3.3.
func TestWetFastenersOfUprightGrain(t *testing.T) {
	for _, c := range []struct {
		rows    []unit.Length
		upright bool
		want    float64
	}{{lengths(-3), false, 0.7}, {lengths(-3), true, 0.4}, {lengths(-3, -6.375), false, 0.4}} {
		m := scenarioB()
		m.Blocks.Moisture.Assembly, m.Blocks.VerticalGrain = Wet, c.upright
		through(&m, func(s *Set) { s.Rows = c.rows })
		r, _ := Run(m)
		wants(t, r, map[string]float64{"plane1_rim_from_block[CM]": c.want})
	}
}

// Every mode is its load over its reduction, in double shear as in single.
func TestDoubleShearLoads(t *testing.T) {
	d, _ := DowelOf(Bolt, 0.5*in, 0)
	m := Member{1.5 * in, DowelBearing(0.50, d.Nominal, 0), 0}
	for _, mode := range d.DoubleShear(m, m, 0) {
		if math.Abs(float64(mode.P)/mode.Rd-float64(mode.Z)) > 1e-9*float64(mode.Z) {
			t.Errorf("mode %s: P %.1f lb over %.2f is not Z %.1f", mode.Name, mode.P.Pounds(), mode.Rd, mode.Z.Pounds())
		}
	}
}

// Sets 1.6875 in apart one over the other, in line, keep 0.9 of 3 D = 1.875.
func TestSetsOneOverTheOther(t *testing.T) {
	m := lagged()
	m.Fasteners.ToRim.Rows, m.Fasteners.ToRim.Columns = lengths(-4.6875), lengths(-1.75, 1.75)
	r, _ := Run(m)
	wants(t, r, map[string]float64{"sets_spacing": 0.9})
	if s := r.Find("sets_spacing"); s.Verdict != check.Fails {
		t.Errorf("0.9 of the least spacing: %v", s.Verdict)
	}
}

// Bending yield strengths by size, NDS 2018 tables 12J, 12L and their notes (from memory, confirm): lags 1/4 70, 5/16 60, 3/8
// A round washer of 3 in less a hole of 11/16: 7.069 - 0.371 = 6.697 in2.
func TestRoundWasher(t *testing.T) {
	m := scenarioB()
	through(&m, func(s *Set) { s.Washer.Round = true })
	r, _ := Run(m)
	wants(t, r, map[string]float64{"rim_washer_bearing[A]": 6.697, "rim_washer_bearing": 77.69})
}

// Half of a screw's tip of two diameters counts: a No. 10 of 2.3 in past 1.5 in of ply bears over 0.8 - 0.19 = 0.61 in. Mode
// Pull at the inner end is beside the shear of the inner planes alone: with the ledger's plane the worst, 0.9, and a plane
// at the rim of 0.5, the inner end has 0.5 and the outer one 0.9. Of a single plane both ends are the same.
func TestShearOfEachEnd(t *testing.T) {
	named := func(name string) part { return part{name: name} }
	g := &group{parts: []part{named("rim"), named("block"), named("ledger")}, shear: []float64{0}, inside: []float64{0}, outside: []float64{0}}
	g.sheared(layer{side: named("block")}, 0, 0.5)
	g.sheared(layer{side: named("ledger")}, 0, 0.9)
	g.sheared(layer{side: named("ledger"), informal: true}, 0, 2)
	if g.shear[0] != 0.9 || g.inside[0] != 0.5 || g.outside[0] != 0.9 {
		t.Errorf("worst %g, inside %g, outside %g", g.shear[0], g.inside[0], g.outside[0])
	}
	one := &group{parts: []part{named("block"), named("ledger")}, shear: []float64{0}, inside: []float64{0}, outside: []float64{0}}
	one.sheared(layer{side: named("ledger")}, 0, 0.7)
	if one.inside[0] != 0.7 || one.outside[0] != 0.7 {
		t.Errorf("a single plane: inside %g, outside %g", one.inside[0], one.outside[0])
	}
}

// A washer that bends is offered the thickness at which it does not: stress goes with the square of it. 0.09 in at 3 x 60.298 x
// 1.0635/0.0081 = 23,750 of 0.9 x 21,557 psi: 0.0996 in.
func TestThickerWasherIsEnough(t *testing.T) {
	m := scenarioB()
	through(&m, func(s *Set) { s.Washer.Thickness = 0.09 * in })
	r, _ := Run(m)
	s := r.Find("washer_bending")
	need := 0.09 * math.Sqrt(s.Ratio/0.9)
	if math.Abs(need-0.0996) > 2e-4 || !strings.HasPrefix(s.Fix, "washers "+inch(need).Text(unit.IP)+" thick") {
		t.Errorf("%q is offered, want %.4f in", s.Fix, need)
	}
}

// What each set passes: to the rim through the sheathing, from the ledger through the gap before it.
func TestVoidsOfTwoSets(t *testing.T) {
	m := lagged()
	m.Blocks.FrontGap = 0.75 * in
	c := &calc{m: m, a: m.Assume.filled()}
	sets := c.fastenerGroups()
	for i, want := range []float64{0.5, 0.75} {
		if v := sets[i].stack.voids; len(v) != 1 || !(math.Abs(v[0]-want) <= 1e-9) {
			t.Errorf("set %d passes voids of %v in, want %g", i+1, v, want)
		}
	}
}

// Only two round washers may come nearer than their sizes side by side: 2.2 in aside and above they stand 3.11 in apart, and a
// square corner reaches across.
func TestRoundAndSquareWashers(t *testing.T) {
	for round, want := range map[int]float64{0: 2.2, 1: 2.2, 2: 3.1113} {
		m := lagged()
		rim := m.Fasteners.ToRim
		rim.Rows, rim.Columns = lengths(-0.8), lengths(-3.95, 3.95)
		m.Fasteners.ToBlock.Rows = lengths(-3)
		rim.Washer.Round, m.Fasteners.ToBlock.Washer.Round = round > 0, round > 1
		r, _ := Run(m)
		wants(t, r, map[string]float64{"sets_washers": want})
		if s := r.Find("sets_washers"); (s.Verdict == check.OK) != (round == 2) {
			t.Errorf("%d round: %v", round, s.Verdict)
		}
	}
}

// Engineered wood has no specific gravity for bolts in the standard: 0.42 at most unless its maker's report says more. Sawn wood has
// its own.
func TestGravityOfEngineeredWood(t *testing.T) {
	for _, c := range []struct {
		engineered, reported bool
		g, want              float64
	}{{true, false, 0.5, 0.42}, {true, false, 0.4, 0.4}, {true, true, 0.5, 0.5}, {false, false, 0.55, 0.55}} {
		if got := bandG(c.g, c.engineered, c.reported); got != c.want {
			t.Errorf("%+v: %g", c, got)
		}
	}
	m := scenarioB()
	m.Rim.Kind, m.Rim.Wood.G, m.Backing.Panel, m.Backing.Wood.G = EngineeredRim, 0.5, true, 0.5
	r, _ := Run(m)
	wants(t, r, map[string]float64{"plane1_rim_from_block[Fe_m]": 2200}) // 6100 x 0.42^1.45/0.625^0.5, to 50 psi
}

// A wood screw is drawn out at 2850 G^2 D (NDS 2018 12.2.2), here 2850 x 0.43^2 x 0.242 = 127.5 lb/in over 2.25 - 0.484 = 1.766 in
