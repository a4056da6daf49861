package fit_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/demo"
	"standclear/detail/detailtest"
	"standclear/geom"
)

// twoSets bolts the blocks to the rim and lags the ledger to the blocks, with room for the bolt heads between.
func twoSets(more ...string) []string {
	return append([]string{
		"fasteners={to_rim: {diameter: 5/8in, rows: [3in, 6 1/2in], columns: 2, column_spacing: 3 1/4in}, " +
			"to_block: {kind: lag, diameter: 1/2in, length: 4in, rows: [4 5/8in], washer: {kind: round, size: 1 3/8in, thickness: 0.1in}}}",
		"blocks.spacer=1in", "water.flashing.out=3 1/4in"}, more...)
}

// failure is a change of a demo that a check must answer, with its verdict and some of its words.
type failure struct {
	id      string
	demo    string
	sets    []string
	verdict check.Verdict
	says    string
}

func set(s ...string) []string { return s }

// failures has at least one for every check that can fail. Changes that fail by a hand's breadth are worked beside.
func failures() []failure {
	return slices.Concat(placeFailures(), boltFailures(), durableFailures(), waterFailures(), layerFailures())
}

func placeFailures() []failure {
	return []failure{
		{"block_spacing_max", "deck", set("blocks.positions=[12 1/2in, 60in, 110in, 166in]"), check.Fails, `4'-8" is more than the 1'-10" allowed`},
		{"block_spacing_max", "deck", set("obstacles.0.from=62in", "obstacles.0.to=86in"), check.Fails, "a blocked bay must carry a block"},
		{"block_end_left", "deck", set("blocks.positions=[4in, 24in, 44in, 166in]"), check.Fails, `4" is under the 4 1/2" asked for`},
		{"block_end_left", "deck", set("blocks.positions=[13in, 33in, 166in]"), check.Fails, `1'-1" of ledger stand beyond`},
		{"block_end_right", "deck", set("blocks.positions=[12in, 33in, 172in]"), check.Fails, `4" is under the 4 1/2" asked for`},
		{"block_end_right", "deck-metric", set("blocks.positions=[215mm, 715mm, 4290mm]"), check.Fails, "310 mm of ledger stand beyond"},
		{"bolt_joist_clearance", "deck", set("blocks.equal=yes"), check.Fails, "B2 0.49 in"},
		// 2.5625 in beside a joist keep the 2 1/2 asked for, but not half a flange and half a plate, 2.65625.
		{"bolt_joist_clearance", "deck", set("blocks.positions=[11.3875in]"), check.Fails, "B1 2.56 in"},
		{"bolt_obstacle", "deck", set("blocks.equal=yes"), check.Fails, "in the zone of SUPPLY DUCT"},
		{"block_obstacle", "deck", set("blocks.equal=yes", "obstacles.0.inside=no"), check.Fails, "in the zone of SUPPLY DUCT"},
		// 10 in from axis to axis leave 1 1/4 between blocks of 8 3/4: 2 in are asked for.
		{"block_clear_gap", "deck", set("blocks.positions=[12 1/2in, 22 1/2in, 166in]"), check.Fails, `1 1/4" between blocks`},
		{"hanger_bolt_clearance", "deck", set("deck.joists.positions=[3/4in, 10 7/8in, 175 1/4in]"), check.Fails, "J2 at B1"},
		{"block_behind_ledger", "deck", set("blocks.positions=[4in, 24in, 166in]"), check.Fails, `3/8" out past the ledger`},
		{"block_behind_ledger", "deck", set("blocks.positions=[12in, 24in, 173in]"), check.Fails, `1 3/8" out past the ledger`},
		{"hanger_on_ledger", "deck", set("deck.joists.positions=[1/4in, 10ft]"), check.Fails, `the hanger of J1 stands 1/2" past the end of its piece`},
		{"joist_on_ledger", "deck", set("deck.joists.size=2x12"), check.Fails, `joists and hangers end 2" below the ledger`},
		{"ledger_piece", "deck", set("ledger.length=20'-1\""), check.Fails, `a piece of 20'-1" cannot be bought`},
		{"ledger_piece", "deck", set("ledger.length=31'-0\"", "ledger.splices=[130in]"), check.Fails, `a piece of 20'-2" cannot be bought`},
		{"ledger_piece", "deck-metric", set("ledger.length=6050mm"), check.Fails, "a piece of 6050 mm cannot be bought"},
		{"lowest_row_in_rim", "deck", set("deck.below_floor=5 7/8in"), check.Fails, "the lower bolts leave the rim"},   // 2 1/2 to spare, lowered by 2 5/8
		{"highest_row_in_rim", "deck", set("deck.below_floor=-2 3/8in"), check.Fails, "the upper bolts leave the rim"}, // 5 9/16 to spare, raised by 5 5/8
		{"nut_access", "deck", set("floor.access=finished"), check.Fails, "unreachable at 9 places"},
		{"nut_access", "deck", set("floor.access=strip", "floor.strip=11in"), check.Fails, "unreachable"},
		{"door_1_step", "deck", set("doors.0.swing=out"), check.Fails, `step of 4 1/4"; at most 1 1/2"`},
		{"door_1_step", "deck", set("deck.below_floor=6 7/8in"), check.Fails, `step of 7 7/8"; at most 7 3/4"`},
		{"door_1_water", "deck", set("deck.below_floor=7/8in"), check.Fails, `the deck stands 7/8" below the lower of floor and sill`},
		{"door_1_water", "deck-metric", set("deck.below_floor=24mm"), check.Fails, "water and step conflict"},
		{"grade_clearance", "deck", set("foundation.grade=-24in", "foundation.grade_high=-21 3/8in"), check.Engineer, `7 7/8" between ground and wood`}, // foot at -13 1/2
		{"grade_clearance", "deck", set("foundation.grade=", "foundation.grade_high="), check.NotChecked, "height of the ground (foundation.grade) not stated"},
	}
}

func boltFailures() []failure {
	return []failure{
		{"bolt_length", "deck", set("fasteners.through.length=11in"), check.Fails, "too short by 0.82 in: 11.82 in needed"},
		{"bolt_length", "deck", twoSets("fasteners.to_rim.length=7in"), check.Fails, "too short"},
		{"bolt_length_2", "deck", twoSets("fasteners.to_block.kind=bolt", "fasteners.to_block.length=4in"), check.Fails, "too short"},
		// 11 in less a thread of 1 3/4 are the 9 1/4 it clamps; a 1/2 in more runs out of thread.
		{"bolt_shank", "deck", set("fasteners.through.length=13 1/2in"), check.Fails, "the nut runs out of thread"},
		{"bolt_shank", "deck", set("fasteners.through.thread=3/4in"), check.Fails, "the nut runs out of thread"},
		{"bolt_shank_2", "deck", twoSets("fasteners.to_block.kind=bolt", "fasteners.to_block.length=12in"), check.Fails, "the nut runs out of thread"},
		{"bolt_hole", "deck", set("fasteners.through.hole=0.65in"), check.Fails, "at least 0.03 in"},
		{"bolt_hole", "deck", set("fasteners.through.hole=0.69in"), check.Fails, "at most 0.06 in"},
		{"bolt_hole", "deck-metric", set("fasteners.through.hole=16.9mm"), check.Fails, "at least 1.0 mm"},
		{"bolt_hole", "deck-metric", set("fasteners.through.hole=18.1mm"), check.Fails, "at most 2.0 mm"},
		{"bolt_hole_2", "deck", twoSets("fasteners.to_block.kind=bolt", "fasteners.to_block.hole=5/8in"), check.Fails, "at most 0.06 in"},
		{"clash_hardware", "deck", twoSets("blocks.spacer=0in"), check.Fails, "of B1 in the ledger"},
		{"clash_hardware", "deck", twoSets("fasteners.to_block.kind=bolt"), check.Fails, "in the plywood sheathing"},
		// Sixty screws are thirty rows in 7 7/16 in: 6.3 mm a row, where 4.8 and 3 of wood are needed.
		{"clash_screws", "deck", set("blocks.ply_screws.count=60"), check.Fails, "in one place"},
		// A first column of bolts 3/4 in from the end of the block stands in the column of the screws.
		{"clash_screws", "deck", set("fasteners.through.column_spacing=6 3/4in"), check.Fails, "in a bolt hole"},
		// From the face of the second ply, at 3 in, a screw of 2 15/16 leaves 1/16.
		{"screw_point", "deck", set("blocks.ply_screws.length=2 15/16in"), check.Fails, `reach 1/16" from the sheathing face`},
		{"lateral_joists", "deck", set("floor.joists.direction=parallel"), check.Fails, `no house joist beside LT1 at 2'-0", no house joist beside LT2 at 12'-8"`},
		{"lateral_joists", "deck", set("tie.lateral.from_end=3in"), check.Fails, `no house joist beside LT1 at 3", no house joist beside LT2 at 14'-5"`},
		// With no joists inside B1 stands about 11 1/8 in, where the rule puts the rod.
		{"clash_rods", "deck", set("floor.joists.direction=parallel", "tie.lateral.from_end=11in"), check.Fails, "LT1 through the block ply"},
	}
}

func durableFailures() []failure {
	return []failure{
		{"treated_ledger", "deck", set("ledger.treated=no", "blocks.treated=yes"), check.Fails, "ledger.treated: no, and southern pine"},
		{"treated_blocks", "deck", set("blocks.treated=no"), check.Fails, "blocks.treated: no, and southern pine"},
		{"coating", "deck", set("fasteners.through.coating=electroplated"), check.Fails, `coating "electroplated"`},
		{"coating", "deck", twoSets("fasteners.to_rim.coating=plain"), check.Fails, `coating "plain"`},
		{"coating_2", "deck", twoSets("fasteners.to_block.coating=plain"), check.Fails, `coating "plain"`},
		{"steel", "deck", set("fasteners.through.grade=mystery"), check.NotChecked, `"mystery" is no grade`},
		{"steel_2", "deck", twoSets("fasteners.to_block.grade=mystery"), check.NotChecked, `"mystery" is no grade`},
	}
}

func waterFailures() []failure {
	return []failure{
		{"flashing_lap", "deck", set("water.flashing.lap=outside"), check.Fails, "pair F1 / cladding"},
		{"flashing_fall", "deck", set("ledger.top_slope=1:17"), check.Fails, "5.9 %, at least 6 %"},
		{"block_top_fall", "deck", set("blocks.top_slope=1:17"), check.Fails, "5.9 %, at least 6 %"},
		{"flashing_reach", "deck", set("water.flashing.out=2in"), check.Fails, `the drip ends 1/8" behind the face`}, // 3 1/8 + 2 of 5 1/4
		{"flashing_upstand", "deck", set("water.flashing.up=1 15/16in"), check.Fails, `upstand 1 15/16" where it is least (under a door: up to its sill); at least 2"`},
		{"flashing_metal", "deck", set("water.flashing.thickness=0.015in"), check.Fails, "sheet of 0.015 in; at least 0.019 in"},
		{"cladding_clearance", "deck", set("wall.cladding.above_flashing=3/16in"), check.Fails, `3/16" lets the cladding draw water; at least 1/4"`},
		{"decking_gap", "deck", set("deck.decking_gap=3/16in"), check.Fails, `3/16" holds water and leaves`},
		// 13 1/8 in on a block of 9 1/4 laps 1 15/16.
		{"patch_lap", "deck", set("water.patch.height=13 1/8in"), check.Fails, `lap of 1 15/16"`},
		{"patch_foot", "deck", set("water.patch.height=13 1/8in"), check.Fails, `lap of 1 15/16"`},
		{"patch_side", "deck", set("water.patch.width=12 5/8in"), check.Fails, `lap of 1 15/16"`},     // (12 5/8 - 8 3/4)/2
		{"door_1_water", "deck", set("doors.0.threshold=-3 1/2in"), check.Fails, `stands 1/4" above`}, // the sill 1/4 in under the deck at -3 1/4
		{"flashing_material", "deck", set("water.flashing.material=aluminum"), check.Fails, "corrodes"},
		{"flashing_material", "deck", set("water.flashing.material=paper"), check.NotChecked, "no metal"},
		{"ember_screen", "deck", set("site.fire_interface=yes", "water.screen=no"), check.Fails, "embers"},
		{"ember_screen", "deck", set("site.fire_interface=yes"), check.Engineer, "local authority"},
		{"termites", "deck", set("site.termites=heavy"), check.Engineer, "heavy hazard"},
		{"rim_on_plate_width", "deck", set("floor.backing.thickness=5in"), check.Engineer, `6 1/4" deep`}, // 1 1/4 + 5 on 5 1/2
		{"joist_behind_rim", "deck", set("floor.joists.depth=9 1/2in"), check.Fails, `9 1/2" deep`},       // behind a rim of 11 7/8
		{"screw_pitch", "deck", set("blocks.ply_screws.count=40"), check.Fails, "apart"},                  // ten rows in 7.04 in: 0.70, 0.95 asked for
		{"wrap_turn_up", "deck", set("water.wrap_lap=1 1/2in"), check.Fails, `turn-up of 1 1/2"; at least 2"`},
		{"patch_foot", "deck-metric", set("water.patch.height=344mm"), check.Fails, "lap of"}, // 49.5 of 50
		{"patch_order", "deck", set("water.patch.under=no"), check.Fails, "reversed lap: W4 under M2 at B1"},
		{"flashing_over", "deck", set("water.flashing.up=2 7/16in"), check.Fails, `lap of 1 15/16"`}, // the cladding ends 1/2 above
		{"flashing_over", "deck", set(bare()), check.Fails, `lap of 0"`},
		// From 3 1/8 + 2 1/4 = 5 3/8 the leg goes down; the face at 5 1/4 is 1/8 x 1/8 higher: 1/64 more than the drip covered.
		{"flashing_cover", "deck", set("water.flashing.drip=7/16in"), check.Fails, "of the face covered"},
		{"flashing_edge", "deck", set("water.flashing.out=2in"), check.Fails, "water runs back"}, // 6 mm of kick, less 1/8
		{"flashing_end_dam", "deck", set("water.flashing.end_dam=15/16in"), check.Fails, `end dams of 15/16": water runs off the ends into the wall; at least 1"`},
		{"patch_side", "deck", set("water.patch.width=6 3/4in"), check.Fails, `no lap: 1" short of meeting; a lap of at least 2" is needed`}, // (6 3/4 - 8 3/4)/2
		{"flashing_edge", "deck", set("water.flashing.out=1 1/2in"), check.Fails, "behind the face: water runs back"},
		{"flashing_end_dam", "balcony-metric", set("water.flashing.end_dam=24mm"), check.Fails, "end dams of 24 mm"},
	}
}

// bare is the inch deck's wall without cladding.
func bare() string { return walls("wrb", "insulation", "insulation", "cavity") }

// walls writes the wall anew outside its sheathing, by roles from inside to outside.
func walls(roles ...string) string {
	all := "{role: finish, material: gypsum, thickness: 1/2in}, {role: studs, material: cellulose, thickness: 5 1/2in}, {role: sheathing, material: plywood, thickness: 1/2in}"
	for _, r := range roles {
		all += ", " + map[string]string{
			"wrb": "{role: wrb, material: membrane, thickness: 0.02in}", "insulation": "{role: insulation, material: wood-fibre, thickness: 1 3/16in}", "cavity": "{role: cavity, material: softwood, thickness: 3/4in}",
			"cladding": "{role: cladding, material: softwood, thickness: 5/8in}", "finish": "{role: finish, material: gypsum, thickness: 1/2in}",
		}[r]
	}
	return "wall.layers=[" + all + "]"
}

// layerFailures: walls W1 finish, W2 studs, W3 sheathing, and W4 on as given.
func layerFailures() []failure {
	return []failure{
		{"layer_barrier", "deck", set(walls("insulation", "insulation", "cavity", "cladding")), check.Fails, "no layer of role wrb"},
		{"layer_barrier", "deck", set("wall.layers.3.role=other"), check.Fails, "no layer of role wrb"},
		{"layer_barrier_place", "deck", set(walls("insulation", "wrb", "insulation", "cavity", "cladding")), check.Fails, "W5 lies outside W4"},
		{"layer_barrier_place", "deck", set(walls("insulation", "insulation", "wrb", "cavity", "cladding")), check.Fails, "W6 lies outside W4, W5"},
		{"layer_order", "deck", set(walls("wrb", "cavity", "cladding", "insulation")), check.Fails, "W7 (insulation) outside W6 (cladding)"},
		{"layer_order", "deck", set(walls("wrb", "insulation", "cladding", "cavity")), check.Fails, "W7 (cavity) outside W6 (cladding)"},
		{"layer_order", "deck", set(walls("wrb", "insulation", "cavity", "cladding", "finish")), check.Fails, "W8 (finish) outside the sheathing"},
		{"layer_inside", "deck", set("wall.layers.0.role=insulation"), check.NotChecked, "W1 (insulation) inside the sheathing"},
		{"insulation_between", "deck", set(walls("wrb", "cavity", "cladding")), check.Engineer, "no insulation stands outside"},
		{"layer_cladding", "deck", set(bare()), check.Fails, "no layer of role cladding"},
	}
}

// broken are assemblies that no project file makes: a part is taken away, cut or moved.
func broken() []struct {
	id, says string
	harm     func(*detail.Assembly)
} {
	lose := func(id string) func(*detail.Assembly) {
		return func(a *detail.Assembly) {
			for i := range a.Blocks {
				a.Blocks[i].Parts = slices.DeleteFunc(a.Blocks[i].Parts, func(p *detail.Part) bool { return p.ID == id })
			}
			a.Parts = slices.DeleteFunc(a.Parts, func(p *detail.Part) bool { return p.ID == id })
		}
	}
	move := func(mark string, by geom.Vec3) func(*detail.Assembly) {
		return func(a *detail.Assembly) {
			for _, p := range a.Parts {
				if p.Mark == mark {
					shift(p, by)
				}
			}
		}
	}
	return []struct {
		id, says string
		harm     func(*detail.Assembly)
	}{
		{"block_films", "B3 without M1", lose("B3/M1")},
		{"block_films", "B2 without M2", lose("B2/M2")},
		{"block_films", "B1 without M3", lose("B1/M3-2")},
		{"block_faces", "B1: top", move("M2", geom.Vec3{Y: -20})},
		{"block_faces", "B1: left side", move("M3", geom.Vec3{Y: -20})},
		{"block_faces", "B1: left side", move("M3", geom.Vec3{Z: 20})},
		{"cap_side_lap", "lap of", move("M2", geom.Vec3{Z: 10})},
		{"side_piece_lap", "lap of", move("M3", geom.Vec3{X: 10})},
		{"flashing_whole", "to its ends", move("F1", geom.Vec3{X: 30})},
		{"layer_barrier", "interrupted between blocks", move("W4", geom.Vec3{X: 1500})},
		{"insulation_between", "W5 at", move("W5", geom.Vec3{Z: 3000})},
		{"patch_order", "M1 under W4", move("M1", geom.Vec3{Y: -1})},
		{"patch_order", "M2 under M1", move("M2", geom.Vec3{Y: -1})},
	}
}

func TestBrokenPartsAreFound(t *testing.T) {
	for _, c := range broken() {
		a := detailtest.Demo(t, "deck")
		c.harm(a)
		if s := found(t, report(a), c.id); s.Verdict != check.Fails || !strings.Contains(s.Reason, c.says) {
			t.Errorf("%s: %v: %q, want %q", c.id, s.Verdict, s.Reason, c.says)
		}
	}
}

// The laps of the inch deck, stated in order: the cladding 4 - 1/2 over F1, the patch (16 - 9 1/4)/2 above and below.
func TestLapsInOrder(t *testing.T) {
	note := found(t, report(detailtest.Demo(t, "deck")), "water_layers").Note
	want := `W8 over F1 3 1/2"; F1 over the ledger 0.766 in; barrier over M2 2"; barrier over M1 3 3/8"; M2 over M3 2"; M3 over M1 2"; M1 over the barrier 3 3/8"`
	if note != want {
		t.Errorf("laps: %s\nwant: %s", note, want)
	}
}

func TestEveryFailureIsFound(t *testing.T) {
	for _, c := range failures() {
		t.Run(c.id+" "+c.sets[len(c.sets)-1], func(t *testing.T) {
			s := found(t, report(detailtest.Demo(t, c.demo, c.sets...)), c.id)
			if s.Verdict != c.verdict || !strings.Contains(s.Reason, c.says) {
				t.Errorf("%v: %q, want %v and %q", s.Verdict, s.Reason, c.verdict, c.says)
			}
			if c.verdict == check.Fails && s.Reason == "" {
				t.Error("it fails and does not say why")
			}
		})
	}
}

// A check fails for its own reason only: the two sets that the failures of the second are made from hold.
func TestTwoSetsFit(t *testing.T) {
	r := report(detailtest.Demo(t, "deck", twoSets()...))
	for _, s := range r.Steps {
		if s.Verdict > check.OK && s.ID != "hanger_bolt_clearance" {
			t.Errorf("%s is %v: %s", s.ID, s.Verdict, s.Reason)
		}
	}
}

// Every check that the package issues, here or anywhere in the tests, has a failure in the table.
func TestNoCheckWithoutAFailure(t *testing.T) {
	issued, failed := map[string]bool{}, map[string]bool{}
	collect := func(r check.Report) {
		for _, s := range r.Steps {
			if s.Verdict != check.Info {
				issued[s.ID] = true
			}
		}
	}
	for _, name := range demo.Names() {
		collect(report(detailtest.Demo(t, name)))
	}
	for _, c := range failures() {
		failed[c.id] = true
		collect(report(detailtest.Demo(t, c.demo, c.sets...)))
	}
	for _, c := range broken() {
		failed[c.id] = true
	}
	door := regexp.MustCompile(`^door_\d+_`)
	for id := range issued {
		if !failed[door.ReplaceAllString(id, "door_1_")] {
			t.Errorf("nothing makes %s fail", id)
		}
	}
}
