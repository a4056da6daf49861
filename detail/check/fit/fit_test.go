package fit_test

import (
	"math"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/fit"
	"standclear/detail/demo"
	"standclear/detail/detailtest"
)

func report(a *detail.Assembly) check.Report {
	var r check.Report
	fit.Run(a, &r)
	return r
}

// found returns the step of that id, or fails the test.
func found(t *testing.T, r check.Report, id string) *check.Step {
	t.Helper()
	s := r.Find(id)
	if s == nil {
		t.Fatalf("no check %s", id)
	}
	return s
}

// The demos can be built as drawn: every check of fit and water holds.
func TestDemosFit(t *testing.T) {
	for _, name := range demo.Names() {
		r := report(detailtest.Demo(t, name))
		seen := map[string]bool{}
		for _, s := range r.Steps {
			if s.Verdict > check.OK {
				t.Errorf("%s: %s is %v: %s", name, s.ID, s.Verdict, s.Reason)
			}
			if s.Group != check.Fit && s.Group != check.Water {
				t.Errorf("%s: %s stands under %v", name, s.ID, s.Group)
			}
			if s.Reason != "" || s.Fix != "" {
				t.Errorf("%s: %s is %v and gives a reason %q and a remedy %q", name, s.ID, s.Verdict, s.Reason, s.Fix)
			}
			if seen[s.ID] || s.Name == "" || s.Clause == "" {
				t.Errorf("%s: %s is there twice, or lacks a name or a clause", name, s.ID)
			}
			seen[s.ID] = true
		}
	}
}

// Numbers of the inch deck, each worked by hand from the parameters, in inches.
func TestValuesByHand(t *testing.T) {
	r := report(detailtest.Demo(t, "deck"))
	for _, c := range []struct {
		id    string
		value float64
		limit float64 // 0: none
	}{
		// Ledger top at 3 1/4 + 1 = 4 1/4 below the floor; rows 2 13/16 and 6 5/8 lower; rim from 1 1/2 to 13 3/8 below.
		{"lowest_row_in_rim", 13.375 - 4.25 - 6.625, 0},
		{"highest_row_in_rim", 4.25 + 2.8125 - 1.5, 0},
		{"foot_below_rim", 4.25 + 9.25 - 13.375, 0},
		// Ledger 1 1/2, block 3 3/4, sheathing 1/2, rim 1 1/4, backing 1 3/4.
		{"grip", 10.5, 0},
		// Grip, two plates of 1/4, nut 35/64, three threads of 1/11: 11.8196; so a 12 in bolt on a 1/2 in step.
		{"bolt_length", 12, 10.5 + 0.5 + 35.0/64 + 3.0/11},
		// Thread of a 5/8 in bolt over 6 in long: 2 x 5/8 + 1/2 = 1 3/4; 12 less that against grip and plates.
		{"bolt_shank", 10.25, 11},
		{"bolt_hole", 1.0 / 16, 1.0 / 16},
		// Half of 2 5/16 and half of 3 are more than the 2 1/2 asked for.
		{"bolt_joist_clearance", -1, 2.65625},
		{"hanger_bolt_clearance", -1, 0.75 + 1.25 + 1.5},
		{"block_spacing_max", -1, 22},
		{"joist_on_ledger", 9.25 - 7.25, 0},
		{"hanger_on_ledger", 0, 0}, // J1 flush with the end, its flanges turned in
		{"ledger_piece", 176, 240},
		{"door_1_step", 1 + 3.25, 7.75},
		{"door_1_water", 3.25, 1},
		// The highest ground is 60 in below the floor, the foot of the block 13 1/2.
		{"grade_clearance", 60 - 13.5, 8},
		{"flashing_upstand", 3.421875, 2}, // under the door: from -4 1/4 and 1/8 of 5/8 up to the subfloor at -3/4
		{"flashing_metal", 0.024, 0.019}, {"cladding_clearance", 0.5, 0.25}, {"decking_gap", 0.25, 0.25},
		// From the cladding's back, 2 3/8 + 3/4 = 3 1/8, 2 1/4 out is 5 3/8; the ledger's face stands at 5 1/4.
		{"flashing_reach", 0.125, 0},
		{"patch_lap", (16 - 9.25) / 2, 2}, {"patch_foot", (16 - 9.25) / 2, 2},
		// Screws of 2 3/4 from the faces at 3 and 3 3/4: the deeper point is 1/4 from the sheathing.
		{"screw_point", 0.25, 0.125},
	} {
		s := found(t, r, c.id)
		if c.value >= 0 && math.Abs(s.Value.V/25.4-c.value) > 1e-6 {
			t.Errorf("%s is %.5f in, want %.5f", c.id, s.Value.V/25.4, c.value)
		}
		if c.limit > 0 && (s.Limit == nil || math.Abs(s.Limit.V/25.4-c.limit) > 1e-6) {
			t.Errorf("%s has a limit of %+v, want %.5f in", c.id, s.Limit, c.limit)
		}
	}
	// Slopes 1:8 and 1:12.
	for id, want := range map[string]float64{"flashing_fall": 0.125, "block_top_fall": 1.0 / 12} {
		if s := found(t, r, id); math.Abs(s.Value.V-want) > 1e-9 {
			t.Errorf("%s is %.6f, want %.6f", id, s.Value.V, want)
		}
	}
}

// The row of blocks tells why it is not equal, and that given positions were given.
func TestStory(t *testing.T) {
	for _, c := range []struct {
		name string
		sets []string
		says []string
	}{
		// Half a block and 75 mm are 7 3/8 in on the grid; (176 - 14 3/4) / 22 = 7.3, so eight spaces of 20.16. B1 has a
		// bolt at 7 3/8 - 1 5/8 = 5 3/4, 1.45 in off the joist at 7.2, which is the second of those built.
		{"deck", nil, []string{`9 blocks at 8 equal spaces of 1'-8 3/16" clash at B1 (1.45 in off house joist 2)`, "9 blocks at spaces of"}},
		{"deck", []string{"floor.joists.direction=parallel", "obstacles="}, []string{`9 blocks at 8 equal spaces of 1'-8 3/16"`}},
		{"deck", []string{"blocks.positions=[12 1/2in, 30in]"}, []string{"positions as given: 2 blocks"}},
		{"deck", []string{"blocks.positions=[12 1/2in]"}, []string{"positions as given: 1 block"}},
	} {
		got := found(t, report(detailtest.Demo(t, c.name, c.sets...)), "block_spacing_max").Note
		for _, w := range c.says {
			if !strings.Contains(got, w) {
				t.Errorf("%v: %q does not say %q", c.sets, got, w)
			}
		}
	}
}

// A strip of ceiling that can be opened reaches the nuts from 300 mm on, and one block has both its ends looked at.
func TestJustEnough(t *testing.T) {
	for strip, want := range map[string]check.Verdict{"300mm": check.OK, "299mm": check.Fails} {
		if s := found(t, report(detailtest.Demo(t, "deck-metric", "floor.access=strip", "floor.strip="+strip)), "nut_access"); s.Verdict != want {
			t.Errorf("a strip of %s: %v, %s", strip, s.Verdict, s.Reason)
		}
	}
	r := report(detailtest.Demo(t, "deck", "blocks.positions=[12 1/2in]"))
	if s := found(t, r, "block_end_left"); s.Verdict != check.OK || math.Abs(s.Value.V/25.4-12.5) > 1e-6 {
		t.Errorf("%v in to the left end, %v", s.Value.V/25.4, s.Verdict)
	}
	if s := found(t, r, "block_end_right"); s.Verdict != check.Fails || math.Abs(s.Value.V/25.4-163.5) > 1e-6 { // 176 - 12 1/2
		t.Errorf("%v in to the right end, %v", s.Value.V/25.4, s.Verdict)
	}
}
