package strength

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Rows at -1.5 and -3 in both stand in the top third (6.167 in and more over the foot). Arms: min(7.75 - 2.21875/3, 0.75 x
// 7.75) = 5.8125 and 1.5 less; mean 5.0625. T = 4877.8/5.0625 = 963.5 lb on four bolts.
// By height over the foot, rows at -3 and -6.375: arms 4.6875 and 1.3125, z = (21.973 + 1.723)/6 = 3.9492, T = 1235.1,
// on a top bolt 4.6875/6 of half of it.
func TestSeveralRowsPull(t *testing.T) {
	m := scenarioB()
	through(&m, func(s *Set) { s.Rows = lengths(-1.5, -3) })
	r, _ := Run(m)
	wants(t, r, map[string]float64{"lever_arm": 5.0625, "top_row_tension": 963.5, "tension_per_top_bolt": 240.9})
	m = scenarioB()
	m.Assume.Rows = ByStiffness
	r, _ = Run(m)
	wants(t, r, map[string]float64{"lever_arm": 3.9492, "top_row_tension": 1235.1, "tension_per_top_bolt": 482.5})
}

// The outer end governs pull and shear where the ledger is soft: 60.298 psi of 200 x 0.67 x 1.125 = 150.75 is 0.4, beside
// the whole dowel's 0.79906, which holds at that end as at the other.
func TestSoftLedgerPullsAndShears(t *testing.T) {
	m := scenarioB()
	m.Ledger.Wood.FcPerp = 200 * unit.PSI
	r, _ := Run(m)
	wants(t, r, map[string]float64{"linear_interaction_top_bolt": 1.1990})
	if s := r.Find("linear_interaction_top_bolt"); !strings.Contains(s.Note, "outer end") {
		t.Errorf("%q, want the outer end", s.Note)
	}
}

// Between the least distance and the full one the value falls in proportion: rows 2 in apart of 4 D = 2.5, and columns
// 2 in from the end of the block of 4 D, have 0.8. NDS 2018 tables 12.5.1A and B.
func TestGeometryFactorOfTheBlock(t *testing.T) {
	for name, change := range map[string]func(*Model){
		"rows 2 in apart": func(m *Model) { through(m, func(s *Set) { s.Rows = lengths(-3, -5) }) },
		"2 in to the end": func(m *Model) { m.Blocks.Width = 7.5 * in },
	} {
		m := scenarioB()
		change(&m)
		r, _ := Run(m)
		wants(t, r, map[string]float64{"c_delta": 0.8, "plane1_rim_from_block[Cd]": 0.8})
		for _, s := range r.Steps {
			if (s.ID == "spacing_in_row" || s.ID == "end_block") && s.Verdict != check.OK {
				t.Errorf("%s: %s is %v", name, s.ID, s.Verdict)
			}
		}
	}
}

// A pad against the sheathing leaves the block no wood at its inner face, one against the ledger none at its outer face:
// the block is a void.
func TestPadAtAFace(t *testing.T) {
	for after, says := range []string{"inner face of the block", "", "outer face of the block"} {
		m := scenarioB()
		padded(psip(40))(&m)
		m.Blocks.Pad.After = after
		r, _ := Run(m)
		if says == "" {
			continue
		}
		if s := r.Find("block_couple"); s == nil || !strings.Contains(s.Note, says) {
			t.Errorf("pad after ply %d: %+v, want %q", after, s, says)
		}
		if s := r.Find("many_layer_void"); s.Verdict != check.Fails {
			t.Errorf("pad after ply %d: the void reading is %v, want FAILS", after, s.Verdict)
		}
	}
}

// Faces that touch only low down hold little: with the top of the ledger at -4.5 in they do up to 4.75 - 2.21875/3 = 4.0104
// in over the foot, 962.9 x (4.0104 - 1.5625) = 2357 lb-in, less than the 2587.5 of the bolts. Then the block is a void.
func TestFacesThatHoldTooLittle(t *testing.T) {
	m := scenarioB()
	m.Ledger.Top = -4.5 * in
	r, _ := Run(m)
	wants(t, r, map[string]float64{"block_couple": 2587.5})
	if s := r.Find("block_couple"); !strings.Contains(s.Note, "2,357 lb-in") || !strings.Contains(s.Note, "counted as a void") {
		t.Errorf("%q, want 2,357 lb-in and a void", s.Note)
	}
	for id, want := range map[string]check.Verdict{"many_layer_void": check.Fails, "many_layer_held": check.Info, "block_couple": check.Info} {
		if s := r.Find(id); s.Verdict != want {
			t.Errorf("%s: %v, want %v", id, s.Verdict, want)
		}
	}
}

// Screws across a pad are not counted, wherever the pad stands.
func TestScrewsAcrossAPad(t *testing.T) {
	m := scenarioB()
	padded(psip(40))(&m)
	m.Blocks.Pad.After, m.Blocks.LedgerScrews = 2, PlyScrews{20, 0.19 * in, 4 * in}
	r, _ := Run(m)
	if s := r.Find("ledger_screws"); s == nil || s.Verdict != check.Fails {
		t.Errorf("%+v, want FAILS", s)
	}
	if r.Find("plane1_rim_from_block_ledger") != nil {
		t.Error("a block across a pad counts with the ledger")
	}
}

// With the ledger screwed on, the piece outside a joint is the outer ply and the ledger.
func TestJointUnderAScrewedLedger(t *testing.T) {
	m := scenarioB()
	m.Blocks.LedgerScrews = PlyScrews{20, 0.19 * in, 3 * in}
	c := &calc{m: m}
	if j := c.joints()[0]; j.name != "block_ledger" || math.Abs(j.fromOutside-3) > 1e-9 || math.Abs(j.fromInside-1.5) > 1e-9 {
		t.Errorf("piece %s, %.3f in inside and %.3f outside of the joint; want block_ledger, 1.5 and 3", j.name, j.fromInside, j.fromOutside)
	}
}

// A bolt that turns in 3 in of wood of 2031.25 lb/in under 1900 lb bears one way over (1900/2031.25 + 3)/2 = 1.9677 in.
// Beyond a joint at 1.5 in the net is 1900 - 2031.25 x 1.5 = -1146.9, at 2.5 in -2031.25 x 0.5 = -1015.6.
func TestForceAcrossAJoint(t *testing.T) {
	d, _ := DowelOf(Bolt, 0.625*in, 0)
	block := onePart("block", 3*in, wood{0.55, 90}, 1.4e6*unit.PSI, dryWet)
	for at, want := range map[float64]float64{1.5: 1146.9, 2.5: 1015.6} {
		for mode, share := range map[string]float64{"II": want / 1900, "IIIs": want / 1900, "IIIm": 0, "IV": 0, "Im": 0} {
			if got := d.acrossJoint(block, Mode{Name: mode, P: 1900 * unit.Pound}, "IIIs", at); math.Abs(got-share) > 1e-4 {
				t.Errorf("mode %s, joint at %g in: %.4f of the load, by hand %.4f", mode, at, got, share)
			}
		}
	}
}

// A block holds x within half its width: 4.5 in of 9.
func TestBlockUnder(t *testing.T) {
	c := &calc{m: scenarioB()}
	for x, want := range map[float64]int{25.6: 1, 25.4: -1, 34.4: 1, 34.6: -1, 4: 0, 56: 2} {
		if i, ok := c.blockUnder(x); ok != (want >= 0) || ok && i != want {
			t.Errorf("at %g in: block %d, %v, want %d", x, i, ok, want)
		}
	}
}

// Where a group presses on the dowel its forces sum to the load, and their moment about the face is the one with which
// it holds the dowel, turned about: as a stiff bar as well as with a hinge.
func TestPressingIsInBalance(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 52))
	stiff := 0
	for range 400 {
		var b bedding
		for range 1 + r.IntN(3) {
			b = append(b, struct{ q, l float64 }{500 + 2000*r.Float64(), 0.5 + 2*r.Float64()})
		}
		p, my := b.total()*0.9*r.Float64(), 500+4000*r.Float64()
		presses := b.pressing(p, my)
		hinge := b.hingeAt(p, my)
		if len(presses) == 2 {
			stiff++
		}
		if (len(presses) == 2) != (hinge < 0) || hinge >= 0 && math.Abs(hinge/25.4-presses[0].to) > 1e-9 {
			t.Fatalf("%v: a hinge at %.3f mm, presses %v", b, hinge, presses)
		}
		force, moment := 0.0, 0.0
		for _, s := range presses {
			at := 0.0
			for _, l := range b {
				if from, to := math.Max(s.from, at), math.Min(s.to, at+l.l); to > from {
					force += s.sense * l.q * (to - from)
					moment += s.sense * l.q * (to*to - from*from) / 2
				}
				at += l.l
			}
		}
		if math.Abs(force-p) > 1e-6*p || math.Abs(moment+b.hold(p, my)) > 1e-6*(my+math.Abs(moment)) {
			t.Fatalf("%v under %.1f lb, My %.0f: presses %v sum to %.3f lb and %.3f lb-in, holds %.3f", b, p, my, presses, force, moment, b.hold(p, my))
		}
	}
	if stiff < 50 || stiff > 350 {
		t.Errorf("%d of 400 turn stiff", stiff)
	}
}

// With the grain upright the top and bottom of the block are ends, 3.5 D = 2.1875 in, full from 7 D, and its sides are edges,
// 1.5 D = 0.9375 in, or half the distance of the columns where a ply is thicker than 6 D: 3.5/2 = 1.75 at 2 in on 5/16.
// NDS 2018 tables 12.5.1A and C.
func TestUprightPlaces(t *testing.T) {
	m := scenarioB()
	m.Blocks.VerticalGrain = true
	r, _ := Run(m)
	wants(t, r, map[string]float64{"end_block_top": 2.625, "end_block_top@limit": 2.1875, "end_block_bottom@limit": 2.1875, "edge_block@limit": 0.9375,
		"c_delta": 0.6}) // 2.625 of 4.375
	m.Blocks.Plies = []Ply{pinePly(2), pinePly(2)}
	through(&m, func(s *Set) { s.Diameter = 0.3125 * in })
	r, _ = Run(m)
	wants(t, r, map[string]float64{"edge_block@limit": 1.75})
}

// A block checked alone has its own load, B1 570.9 lb and not the 813.0 of B2, and every other block none.
func TestBlockAlone(t *testing.T) {
	m := scenarioB()
	m.Blocks.Alone = "B1"
	r, res := Run(m)
	for _, id := range []string{"plane1_rim_from_block", "many_layer_held", "moment_at_rim_face[R]", "block_couple[R]", "rim_bearing[R]"} {
		wants(t, r, map[string]float64{id: 570.887})
		if s := r.Find(strings.TrimSuffix(id, "[R]")); s.Where != "B1" {
			t.Errorf("%s is at %s", s.ID, s.Where)
		}
	}
	wants(t, r, map[string]float64{"tie_rating": 365.37}) // 570.887 x 6/4.6875/2
	if res.Worst != 0 {
		t.Errorf("block %d is the most loaded", res.Worst+1)
	}
}

// Two plies of 3 in: the dowel hinges in the block at 1806.1 lb, 1806.1/2031.25 in behind its inner face. Rim and backing turn
// on 3 in, 1406.25 x (9/2 - 2.1422^2) = -124 lb-in, and 124 + 1806.1 x 0.5 + 1806.1^2/(2 x 2031.25) = 1831 = My. The block
// gives what main and ledger do not hold of P x 6.5: 12,478 lb-in. It bears with (6 - sqrt(36 - 4 x 12478/2031.25))/2 = 1.3098
// in at each face, so 2031.25 x 1.3098/1806.1 of the load passes the joint in the middle.
func TestForceAcrossAThickBlock(t *testing.T) {
	m := scenarioB()
	m.Blocks.Plies = []Ply{pinePly(3), pinePly(3)}
	m.Blocks.PlyScrews.Length = 5 * in
	through(&m, func(s *Set) { s.Length, s.Thread = 12.5*in, 1.75*in })
	r, _ := Run(m)
	wants(t, r, map[string]float64{"many_layer_held[hinges]": 1806.1, "many_layer_held[Z]": 451.53, "ply_screws_1[k]": 1.4731})
}

// Where no row can pull, everything that rests on its pull is left open by name.
func TestNoRowPulls(t *testing.T) {
	m := scenarioB()
	lowRows(&m)
	r, _ := Run(m)
	for _, id := range []string{"top_row_tension", "foot_peak_stress", "linear_interaction_top_bolt", "tie_rating", "backing_bending", "floor_couple"} {
		if s := r.Find(id); s == nil || s.Verdict != check.NotChecked {
			t.Errorf("%s: %+v, want NOT CHECKED", id, s)
		}
	}
	m.Backing.Kind = LooseBacking
	r, _ = Run(m)
	if s := r.Find("rim_out_of_plane"); s == nil || s.Verdict != check.NotChecked {
		t.Errorf("rim without a pull: %+v, want NOT CHECKED", s)
	}
}

// A gap of 0.75 in before a block of 1 and 2 in, 3/4 in bolts, 2950 x 0.75 = 2212.5 lb/in: the bolt turns in block and ledger
// at 1823.6 lb, bears one way over (1823.6/2212.5 + 3)/2 = 1.9121 in of the block from outside and the other way past it.
// Beyond the joint, 2 in in: 1823.6 - 4230.5 + 194.5 = -2212.4, 1.2132 of the load.
func TestForceAcrossABlockBehindAGap(t *testing.T) {
	m := scenarioB()
	m.Blocks.Plies, m.Blocks.FrontGap = []Ply{pinePly(1), pinePly(2)}, 0.75*in
	through(&m, func(s *Set) { s.Diameter, s.Hole, s.Length = 0.75*in, 0.8125*in, 10.5*in })
	r, _ := Run(m)
	wants(t, r, map[string]float64{"plane2_block_from_ledger[II]": 405.25, "ply_screws_1[k]": 1.2132})
}

// The faces need not touch up to the rows: 4.3104 - 1.5625 = 2.7479 in over which 962.9 lb hold 2646 lb-in are enough.
func TestFacesThatHoldJustEnough(t *testing.T) {
	m := scenarioB()
	m.Ledger.Top = -4.2 * in
	r, _ := Run(m)
	wants(t, r, map[string]float64{"block_couple": 2587.5, "block_couple@limit": 2646})
	if r.Find("many_layer_held").Verdict == check.Info || r.Find("block_couple").Verdict != check.OK {
		t.Error("the block holds its couple, and is a void")
	}
}

// Two rows that pull make two holes in the rim where it bends: T = 963.5 lb (see TestSeveralRowsPull) x (4 - 0.4375) = 3432.5
// lb-in over (9.25 - 2 x 0.6875) x 1.5^2/6 = 2.9531 in3.
func TestRimBendsAtTwoRows(t *testing.T) {
	m := scenarioB()
	m.Backing.Kind = LooseBacking
	through(&m, func(s *Set) { s.Rows = lengths(-1.5, -3) })
	r, _ := Run(m)
	wants(t, r, map[string]float64{"rim_out_of_plane[S]": 2.9531, "rim_out_of_plane": 1162.3})
}

// Loose plies behind fasteners of their own into the rim are a gap for them too: sheathing 0.5 and a ply of 1.5.
func TestLoosePliesOfTwoSets(t *testing.T) {
	m := lagged()
	m.Blocks.PliesFastened = false
	m.Fasteners.ToRim.Kind, m.Fasteners.ToRim.Length = Bolt, 0
	r, _ := Run(m)
	wants(t, r, map[string]float64{"floating_rim_from_outer_to_rim[gap]": 2})
}

// What is outside of a joint is all the plies there: with 2, 0.5 and 0.5 in the bolt's couple of 4570.3 lb-in would press on 1.5
// in at each face (1436 lb, scenario_b.txt), and 1 in of it lies outside the first joint, 0.5 in outside the second:
// 2031.25 x 1/1436 and 2031.25 x 0.5/1436. A ply passes on no more than it bears.
func TestForceAcrossManyJoints(t *testing.T) {
	m := scenarioB()
	m.Blocks.Plies = []Ply{pinePly(2), pinePly(0.5), pinePly(0.5)}
	r, _ := Run(m)
	wants(t, r, map[string]float64{"ply_screws_1[k]": 1.4145, "ply_screws_2[k]": 0.7073})
}

// Where the pull of one end is not known, pull and shear together are not checked.
func TestPullAndShearOfUnknownWood(t *testing.T) {
	for name, change := range map[string]func(*Model){
		"backing": func(m *Model) { m.Backing.Wood.FcPerp = 0 },
		"ledger":  func(m *Model) { m.Ledger.Wood.FcPerp = 0 },
		"washer":  func(m *Model) { through(m, func(s *Set) { s.Washer.Thickness = 0 }) },
		"gravity": func(m *Model) { m.Ledger.Wood.G = 0 },
	} {
		m := scenarioB()
		change(&m)
		r, _ := Run(m)
		if s := r.Find("linear_interaction_top_bolt"); s == nil || s.Verdict != check.NotChecked {
			t.Errorf("%s not known: %+v, want NOT CHECKED", name, s)
		}
	}
}

// Engineered rim has no flat-use factor: 850 x 1.1 x 1.15 = 1075.25 psi.
func TestEngineeredRimBends(t *testing.T) {
	m := scenarioB()
	m.Backing.Kind, m.Rim.Kind = LooseBacking, EngineeredRim
	r, _ := Run(m)
	wants(t, r, map[string]float64{"rim_out_of_plane@limit": 1075.25})
}

// A gap before the ledger lengthens the arm of the pad's free body too: 4.5 + 0.75 = 5.25 in (see TestPadByHand).
func TestPadBehindAGap(t *testing.T) {
	m := scenarioB()
	padded(psip(40))(&m)
	m.Blocks.FrontGap = 0.75 * in
	r, _ := Run(m)
	wants(t, r, map[string]float64{"moment_at_pad": 4268.1})
}

// Where the load stands is in the results: 6 in from the rim, 5.5 from the sheathing.
func TestLoadLineInTheResults(t *testing.T) {
	_, res := Run(scenarioB())
	if e, y := res.Eccentricity.Inches(), res.LoadLine.Inches(); !(math.Abs(e-6) <= 1e-9) || !(math.Abs(y-5.5) <= 1e-9) {
		t.Errorf("load line %.4f in from the rim and %.4f from the sheathing, want 6 and 5.5", e, y)
	}
}

// Shear that is not known is not nothing: with the lateral value of an evaluated fastener left out, pull and shear together are
// left open as well.
func TestEvaluatedShearNotKnown(t *testing.T) {
	m := scenarioB()
	through(&m, func(s *Set) { evaluated(s); s.Lateral = 0 })
	r, _ := Run(m)
	for _, id := range []string{"evaluated_shear", "linear_interaction_top_bolt"} {
		if s := r.Find(id); s == nil || s.Verdict != check.NotChecked {
			t.Errorf("%s: %+v, want NOT CHECKED", id, s)
		}
	}
	r, _ = Run(scenarioB())
	wants(t, r, map[string]float64{"rim_bearing[rim]": 1194.2})
}

// What cannot be worked out is said to be open, step by step.
func TestLeftOpenByName(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Model)
		ids    []string
	}{
		{"shear strength of the ledger", func(m *Model) { m.Ledger.Wood.Fv = 0 }, []string{"ledger_fv", "ledger_fv_connection", "ledger_torsion"}},
		{"gravity of the rim", func(m *Model) { m.Rim.Wood.G = 0 }, []string{"fasteners", "ledger_drop", "linear_interaction_top_bolt", "support_slip"}},
		{"gravity of a ply", func(m *Model) { m.Blocks.Plies[0].G = 0.29 }, []string{"fasteners", "ply_screws_1"}},
		{"shear strength of the block", func(m *Model) { m.Blocks.Wood.Fv = 0 }, []string{"block_connection_shear", "block_rolling_shear"}},
		{"bearing of the rim", func(m *Model) { m.Rim.Wood.FcPerp = 0 }, []string{"foot_peak_stress", "rim_bearing"}},
		{"bearing of the plate", func(m *Model) { m.Plate.FcPerp = 0 }, []string{"rim_bearing"}},
		{"bending of the backing", func(m *Model) { m.Backing.Wood.Fb = 0 }, []string{"backing_bending"}},
		{"bending of the rim", func(m *Model) { m.Backing.Kind, m.Rim.Wood.Fb = LooseBacking, 0 }, []string{"rim_out_of_plane"}},
		{"house joists", func(m *Model) { m.Backing.Kind, m.HouseJoists.Spacing = LooseBacking, 0 }, []string{"rim_out_of_plane"}},
		{"washers", func(m *Model) { through(m, func(s *Set) { s.Washer = Washer{} }) },
			[]string{"washer_clear", "rim_washer_bearing", "ledger_washer_bearing", "washer_bending", "linear_interaction_top_bolt"}},
		{"modulus of the ledger", func(m *Model) { m.Ledger.Wood.E = 0 }, []string{"ledger_defl_live", "support_slip", "fasteners"}},
	} {
		m := scenarioB()
		c.change(&m)
		r, _ := Run(m)
		for _, id := range c.ids {
			if s := r.Find(id); s == nil || s.Verdict != check.NotChecked || s.Reason == "" {
				t.Errorf("%s not known: %s is %+v, want NOT CHECKED with a reason", c.name, id, s)
			}
		}
	}
}

// A block that is screwed to its ledger is one piece with it, and the joint between is looked for under that piece's name.
func TestPieceOfBlockAndLedger(t *testing.T) {
	m := scenarioB()
	m.Blocks.LedgerScrews = PlyScrews{20, 0.19 * in, 3 * in}
	c := &calc{m: m}
	j := c.ledgerJoint()
	if j.name != "block_ledger" || j.layers != 2 || !(math.Abs(j.fromInside-3) <= 1e-9) || !(math.Abs(j.fromOutside-1.5) <= 1e-9) {
		t.Errorf("%s, %d layers inside, %.3f in inside and %.3f outside; want block_ledger, 2, 3 and 1.5", j.name, j.layers, j.fromInside, j.fromOutside)
	}
}
