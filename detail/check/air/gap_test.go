package air_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/air"
	"standclear/detail/demo"
	"standclear/detail/detailtest"
	"standclear/geom"
)

func report(a *detail.Assembly) check.Report {
	var r check.Report
	air.Run(a, &r)
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

// The way of the air in the inch deck, worked by hand in inches: ledger back at 3 3/4, two boards of 1 3/16, F1 at the
// back of the cladding at 3 1/8, cladding 1/2 below the ledger; nine blocks of 8 3/4 in 176; a screen of 60 %.
func TestPathOfTheDeck(t *testing.T) {
	p := air.PathOf(detailtest.Demo(t, "deck"))
	share := 1 - 9*8.75/176
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"gap", p.Gap / 25.4, 3.75 - 2*1.1875},
		{"head", p.Head / 25.4, 0.75},
		{"foot", p.Foot / 25.4, 0.5},
		{"height", p.Height / 25.4, 9.25},
		{"screen", p.Screen, 0.6},
		{"throat", p.Throat() / 25.4, 0.5},
		{"blocked", p.Blocked, 1 - share},
		{"sill", p.Sill / 25.4, 0.75},
		// Half an inch of a foot, less the blocks; 3/4 at the top less the furring of 2 1/2 in that begins over the ledger.
		{"area at the foot", p.FootArea().V, 12.7 * 1000 * share},
		{"area at the top", p.HeadArea().V, 19.05 * 1000 * share * (1 - p.Strips)},
	} {
		if math.Abs(c.got-c.want) > 1e-6*math.Max(1, c.want) {
			t.Errorf("%s is %.6f, want %.6f", c.name, c.got, c.want)
		}
	}
	// Strips of 2 1/2 in on studs at 0, 24 ... 168: the first half on the ledger; eight axes.
	if want := (1.25 + 7*2.5) / 176; math.Abs(p.Strips-want) > 1e-9 {
		t.Errorf("furring fills %.4f, want %.4f", p.Strips, want)
	}
	open := 0.0
	for _, s := range p.Open {
		open += s.Long() / 25.4
		if s.From < 142*25.4-1 && s.To > 70*25.4+1 {
			t.Errorf("%v lies under the door and counts as open", s)
		}
	}
	sills := 0.0
	for _, s := range p.Sills {
		sills += s.Long() / 25.4
	}
	if math.Abs(open+sills-(176-9*8.75)) > 1e-6 || sills <= 0 {
		t.Errorf("%.3f in open and %.3f under the door are not what the blocks leave", open, sills)
	}
	if p.Closed != "" {
		t.Errorf("closed: %s", p.Closed)
	}
}

// What stands on the wall outside takes its width from the gap.
func TestObstacleOutside(t *testing.T) {
	a := detailtest.Demo(t, "deck", "obstacles.0.inside=no", "obstacles.0.from=40in", "obstacles.0.to=46in", "blocks.positions=[12 1/2in, 34in, 55in, 76in, 97in, 118in, 139in, 160in]")
	if p, want := air.PathOf(a), (8*8.75+6)/176; math.Abs(p.Blocked-want) > 1e-9 {
		t.Errorf("blocked %.5f, want %.5f", p.Blocked, want)
	}
}

// The path is read off the parts: what is moved into the gap narrows it, what is taken away widens it.
func TestPathFollowsTheParts(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	for _, p := range a.Find(detail.Ledger) {
		for i := range p.Solids {
			p.Solids[i] = p.Solids[i].Move(geom.Vec3{Y: -12.7})
		}
	}
	if g := air.PathOf(a).Gap / 25.4; math.Abs(g-0.875) > 1e-6 {
		t.Errorf("the ledger 1/2 in nearer leaves %.4f in", g)
	}
	a = detailtest.Demo(t, "deck")
	for _, p := range a.Find(detail.Flashing) {
		for i := range p.Solids {
			p.Solids[i] = p.Solids[i].Move(geom.Vec3{Y: -15})
		}
	}
	if p := air.PathOf(a); math.Abs(p.Head-(19.05-15)) > 1e-6 || p.Closed == "" {
		t.Errorf("F1 moved in leaves %.2f mm at the top, closed by %q", p.Head, p.Closed)
	}
	a = detailtest.Demo(t, "deck", "wall.layers.4.thickness=1/2in")
	if g := air.PathOf(a).Gap / 25.4; math.Abs(g-(3.75-0.5-1.1875)) > 1e-6 {
		t.Errorf("thinner insulation leaves %.4f in", g)
	}
}

// Numbers of the inch deck, each worked by hand from the parameters, in inches.
func TestValuesByHand(t *testing.T) {
	r := report(detailtest.Demo(t, "deck"))
	for _, c := range []struct {
		id           string
		value, limit float64
	}{
		{"gap_clear", 3.75 - 2.375, 0.75},
		{"gap_capillary", 3.75 - 2.375, 0.375},
		{"gap_open_top", 0.75, 0.375},
		{"gap_open_foot", 0.5, 0.375},
		{"gap_screen", 1.375 * 0.6, 0.375},
	} {
		s := found(t, r, c.id)
		if math.Abs(s.Value.V/25.4-c.value) > 1e-6 || s.Limit == nil || math.Abs(s.Limit.V/25.4-c.limit) > 1e-6 {
			t.Errorf("%s is %.5f of %+v, want %.5f of %.5f in", c.id, s.Value.V/25.4, s.Limit, c.value, c.limit)
		}
	}
	if s := found(t, r, "gap_blocked_share"); math.Abs(s.Value.V-9*8.75/176) > 1e-9 {
		t.Errorf("blocks fill %.6f", s.Value.V)
	}
}

// The demos air their gap: every check holds.
func TestDemosHold(t *testing.T) {
	for _, name := range demo.Names() {
		seen := map[string]bool{}
		for _, s := range report(detailtest.Demo(t, name)).Steps {
			if s.Verdict > check.OK {
				t.Errorf("%s: %s is %v: %s", name, s.ID, s.Verdict, s.Reason)
			}
			if s.Verdict <= check.OK && (s.Reason != "" || s.Fix != "") {
				t.Errorf("%s: %s is %v and gives a reason %q and a remedy %q", name, s.ID, s.Verdict, s.Reason, s.Fix)
			}
			if seen[s.ID] || s.Name == "" || s.Clause == "" || s.Group != check.Water {
				t.Errorf("%s: %s is there twice, lacks a name or a clause, or stands under %v", name, s.ID, s.Group)
			}
			seen[s.ID] = true
		}
	}
}
