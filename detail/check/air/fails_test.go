package air_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/check/air"
	"standclear/detail/demo"
	"standclear/detail/detailtest"
)

// failure is a change of a demo that a check must answer, with its verdict and some of its words.
type failure struct {
	id      string
	demo    string
	sets    []string
	verdict check.Verdict
	says    string
}

func set(s ...string) []string { return s }

// noPath is what is said of every cavity that no air passes through, word for word.
const noPath = "no air path: cannot dry or be inspected"

// layers writes the inch deck's wall anew outside its sheathing, inside to outside.
func layers(outside ...string) string {
	all := append([]string{"{role: finish, material: gypsum, thickness: 1/2in}", "{role: studs, material: cellulose, thickness: 5 1/2in}", "{role: sheathing, material: plywood, thickness: 1/2in}"}, outside...)
	return "wall.layers=[" + strings.Join(all, ", ") + "]"
}

const (
	wrb     = "{role: wrb, material: membrane, thickness: 0.02in}"
	board   = "{role: insulation, material: wood-fibre, thickness: 1 3/16in}"
	furring = "{role: cavity, material: softwood, thickness: 3/4in}"
	siding  = "{role: cladding, material: softwood, thickness: 5/8in}"
)

// dead are walls and ledgers with a cavity that cannot dry, wherever it was put: each must fail, word for word, at the
// named steps.
func dead() []struct {
	name string
	sets []string
	ids  []string
} {
	return []struct {
		name string
		sets []string
		ids  []string
	}{
		{"a cavity between sheathing and insulation", set("wall.layers.4.role=cavity"), []string{"cavity_path_w5"}},
		{"the only cavity between sheathing and insulation", set(layers(wrb, furring, board, board, siding)), []string{"cavity_path_w5", "gap_open_top", "drying_ratio"}},
		{"a cavity between two layers of insulation", set("wall.layers.5.role=cavity", "wall.layers.6.role=insulation", "wall.layers.6.thickness=1 3/16in"), []string{"cavity_path_w6", "gap_open_top"}},
		{"a cavity between two layers and one outside", set(layers(wrb, board, furring, "{role: insulation, material: wood-fibre, thickness: 1/2in}", furring, siding)), []string{"cavity_path_w6"}},
		{"a cavity behind a board of no role", set(layers(wrb, board, furring, "{role: other, material: plywood, thickness: 1/2in}", furring, siding)), []string{"cavity_path_w6"}},
		{"no cavity at all", set("wall.layers.6.role=other"), []string{"gap_open_top", "drying_ratio"}},
		{"cladding on the insulation", set(layers(wrb, board, board, siding)), []string{"gap_open_top", "drying_ratio"}},
		{"insulation outside the cladding", set(layers(wrb, board, furring, siding, board)), []string{"gap_open_top", "cavity_path_w6"}},
		{"no cladding", set(layers(wrb, board, board, furring)), []string{"gap_open_top"}},
		{"a ledger buried in the insulation", set("wall.layers.5.thickness=3in"), []string{"gap_capillary", "gap_open_top", "drying_ratio"}},
		{"insulation just up to the ledger", set("wall.layers.4.thickness=2 9/16in"), []string{"gap_capillary", "gap_open_top", "drying_ratio"}},
		{"a pocket between ledger and sheathing, insulation outside it", set("wall.layers.4.role=cavity", "wall.layers.5.thickness=3in"), []string{"cavity_path_w5", "gap_capillary", "gap_open_top"}},
		{"a short stand-off", set("blocks.plies=[1 1/2in, 3/4in]"), []string{"gap_capillary", "gap_open_top", "drying_ratio"}},
		{"cladding that fills the gap", set("wall.cladding.behind_ledger=yes"), []string{"gap_capillary", "gap_open_top", "drying_ratio"}},
		// 5 1/2 in of stand-off leave 1 3/4 in before the siding, and F1 runs through the siding over it.
		{"cladding behind the ledger and room before it", set("wall.cladding.behind_ledger=yes", "blocks.plies=[1 1/2in, 1 1/2in, 1 1/2in, 1in]"), []string{"gap_open_top", "drying_ratio"}},
		{"a screen without holes", set("water.screen_free=0%"), []string{"gap_screen", "gap_area_foot", "drying_ratio"}},
		{"F1 in to the water barrier", set("water.flashing.lap=wrb"), []string{"gap_open_top", "gap_area_top", "drying_ratio"}},
		{"F1 on the face of the cladding, cladding behind", set("water.flashing.lap=outside", "wall.cladding.behind_ledger=yes"), []string{"gap_open_top"}},
		{"the cladding below against the ledger", set("wall.cladding.below_ledger=0in"), []string{"gap_open_foot", "gap_area_foot", "drying_ratio"}},
		{"the cladding below nearly so", set("wall.cladding.below_ledger=1/4in"), []string{"gap_open_foot", "drying_ratio"}},
	}
}

func TestDeadCavities(t *testing.T) {
	for _, name := range []string{"deck", "balcony"} {
		for _, c := range dead() {
			t.Run(name+" "+c.name, func(t *testing.T) {
				r := report(detailtest.Demo(t, name, c.sets...))
				for _, id := range c.ids {
					if s := found(t, r, id); s.Verdict != check.Fails || s.Reason != noPath {
						t.Errorf("%s: %v: %q", id, s.Verdict, s.Reason)
					}
				}
			})
		}
	}
}

func failures() []failure {
	return []failure{
		{"gap_clear", "deck", set("water.gap_min=1 1/2in"), check.Fails, `gap 1 3/8" is less than the 1 1/2" gap asked for: a stand-off of 3 7/8"`},
		{"gap_clear", "deck", set("wall.layers.6.thickness=1 1/2in"), check.Fails, `gap 1 3/8" is less than the 1 1/2" cavity of the wall`},
		{"gap_clear", "deck", set("wall.layers.5.thickness=3in"), check.Fails, `NOT BUILDABLE: the ledger is buried 7/16"`}, // 1 3/16 + 3 = 4 3/16 of 3 3/4
		// A board outside the insulation runs on behind the ledger: 3 3/4 - 2 3/8 - 3/4.
		{"gap_clear", "deck", set("wall.layers.6.role=other", "water.gap_min=3/4in"), check.Fails, `leaves 5/8" of the 1 3/8" gap`},
		// The demo's cavity and siding fill its gap of 1 3/8 to the last; 1/8 more siding does not go in.
		{"cladding_behind_ledger", "deck", set("wall.cladding.behind_ledger=yes", "wall.layers.7.thickness=3/4in"), check.Fails, `cladding 1 1/2" deep does not fit in the 1 3/8" gap`},
		{"gap_clear", "deck", set("wall.cladding.behind_ledger=yes"), check.Fails, `W8 horizontal lap siding runs on behind the ledger and leaves 0" of the 1 3/8" gap`},
		{"gap_capillary", "deck", set("wall.layers.5.thickness=2 1/4in"), check.Fails, `5/16" holds water between its faces`}, // 3 3/4 - 1 3/16 - 2 1/4
		{"gap_capillary", "deck-metric", set("blocks.plies=[45mm, 44mm]"), check.Fails, "9 mm holds water"},                   // 89 - 80
		{"gap_open_top", "deck", set("wall.layers.6.thickness=5/16in"), check.Fails, noPath},
		{"gap_open_foot", "deck-metric", set("wall.cladding.below_ledger=9mm"), check.Fails, noPath},
		{"gap_blocked_share", "deck", set("blocks.width=10in"), check.Fails, "51 % of the length is wood"},       // 9 x 10 of 176
		{"gap_screen", "deck", set("water.screen_free=20%"), check.Fails, "closes the gap's foot to"},            // 1 3/8 x 0.2 = 0.275 of 3/8
		{"gap_area_foot", "deck", set("water.screen_free=5%"), check.Fails, "0.709 in2/ft asked for"},            // 34.9 x 0.05 x 0.55 = 0.97 mm
		{"gap_area_top", "deck-metric", set("wall.layers.6.thickness=2mm"), check.Fails, "1500 mm2/m asked for"}, // 2 x 0.57 = 1.1 mm
		{"gap_under_door", "deck", set("wall.cladding.below_sill=0in"), check.Fails, noPath},
		{"gap_under_door", "deck", set("wall.cladding.below_sill=1/2in"), check.Fails, "open under the sill"}, // 0.6 x 1/2 = 0.3 of 3/8
		{"cavity_path_w5", "deck", set("wall.layers.4.role=cavity"), check.Fails, noPath},
		{"drying_ratio", "deck", set("site.cold_month_temperature="), check.NotChecked, "site.cold_month_temperature is not stated"},
		{"drying_ratio", "deck", set("site.rain="), check.NotChecked, "site.rain is not stated"},
		// Three times the rain, or the same rain in the cold of -20 C, where air holds a quarter of what it does at -6 C.
		{"drying_ratio", "deck", set("site.rain=100in"), check.Engineer, "little to spare"},
		{"drying_ratio", "deck", set("site.rain=100in", "site.cold_month_temperature=-20C"), check.Fails, "of the rain that gets in"},
	}
}

func TestEveryFailureIsFound(t *testing.T) {
	for _, c := range failures() {
		t.Run(c.id+" "+c.sets[len(c.sets)-1], func(t *testing.T) {
			s := found(t, report(detailtest.Demo(t, c.demo, c.sets...)), c.id)
			if s.Verdict != c.verdict || !strings.Contains(s.Reason, c.says) {
				t.Errorf("%v: %q, want %v and %q", s.Verdict, s.Reason, c.verdict, c.says)
			}
		})
	}
}

// Every check that the package issues, here or anywhere in the tests, has a failure in the tables.
func TestNoCheckWithoutAFailure(t *testing.T) {
	failed := map[string]bool{}
	for _, c := range failures() {
		failed[c.id] = true
	}
	for _, c := range dead() {
		for _, id := range c.ids {
			failed[id] = true
		}
	}
	for n := 1; n < 12; n++ { // one rule, whichever layer
		failed[fmt.Sprintf("cavity_path_w%d", n)] = true
	}
	for _, name := range demo.Names() {
		for _, s := range report(detailtest.Demo(t, name)).Steps {
			if s.Verdict != check.Info && !failed[s.ID] {
				t.Errorf("nothing makes %s fail", s.ID)
			}
		}
	}
}

// A wall without cladding has nothing under the sill of its door but the ledger: 4 1/4 in below the floor, 3 1/2 in
// below a threshold that stands on the subfloor, 3/4 in down.
func TestNoCladdingUnderADoor(t *testing.T) {
	p := air.PathOf(detailtest.Demo(t, "deck", layers(wrb, board, board)))
	if len(p.Sills) == 0 || math.Abs(p.Sill-3.5*25.4) > 1e-6 {
		t.Errorf("%v under doors, %.2f mm open at the sill, want 88.90", p.Sills, p.Sill)
	}
}
