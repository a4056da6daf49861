package fit_test

import (
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/detailtest"
	"standclear/geom"
)

// part returns the first part of the role, of block 0 where it belongs to one.
func part(t *testing.T, a *detail.Assembly, role detail.Role, mark string) *detail.Part {
	t.Helper()
	for _, p := range a.Find(role) {
		if p.Block <= 0 && strings.HasPrefix(p.Mark, mark) {
			return p
		}
	}
	t.Fatalf("no %s %s", role, mark)
	return nil
}

// into moves a part so that its first solid sits in the middle of the first solid of another.
func into(p, other *detail.Part) {
	d := other.Solids[0].Bounds().Center().Sub(p.Solids[0].Bounds().Center())
	shift(p, d)
}

func shift(p *detail.Part, d geom.Vec3) {
	moved := make([]geom.Solid, len(p.Solids))
	for i, s := range p.Solids {
		moved[i] = s.Move(d)
	}
	p.Solids = moved
}

// Each of head, nut and washer is found in every wood it may not stand in, and whatever of wood is put
// in its place.
func TestHardwareInWood(t *testing.T) {
	metal := []struct {
		role detail.Role
		mark string
		name string
	}{{detail.Bolt, "BT1", "hex bolt"}, {detail.Nut, "NT1", "nut"}, {detail.Washer, "WS1", "plate washer"}}
	for _, wood := range []struct {
		role detail.Role
		name string
		sets []string
	}{
		{detail.HouseJoist, "house joist", nil}, {detail.Ledger, "ledger", twoSets()}, {detail.BlockPly, "block ply", nil}, {detail.Sheathing, "plywood sheathing", nil},
		{detail.Rim, "rim", nil}, {detail.Backing, "backing", nil}, {detail.Plate, "sole plate", nil},
		{detail.FootPiece, "foot spacer", []string{"blocks.pad={thickness: 1/2in, after: 1, foot: yes, strength: 40psi}"}},
	} {
		for _, m := range metal {
			for _, woodMoves := range []bool{false, true} {
				a := detailtest.Demo(t, "deck", wood.sets...)
				p, q := part(t, a, m.role, m.mark), part(t, a, wood.role, "")
				if woodMoves {
					into(q, p)
				} else {
					into(p, q)
				}
				s := found(t, report(a), "clash_hardware")
				if s.Verdict != check.Fails || !strings.Contains(s.Reason, m.name+" of B1 in the "+wood.name) && !strings.Contains(s.Reason, "more") {
					t.Errorf("%s in the %s (wood moved: %v): %v, %q", m.name, wood.name, woodMoves, s.Verdict, s.Reason)
				}
			}
		}
	}
}

// What only touches is no clash: a washer let 0.2 mm into the backing still lies on it, 1 mm is in it.
func TestHardwareMayTouch(t *testing.T) {
	for _, c := range []struct {
		deep    float64
		verdict check.Verdict
	}{{0, check.OK}, {0.2, check.OK}, {1, check.Fails}} {
		a := detailtest.Demo(t, "deck")
		for _, p := range a.Find(detail.Washer) {
			if p.ID == "B1/WI-1" {
				shift(p, geom.Vec3{Y: c.deep})
			}
		}
		if s := found(t, report(a), "clash_hardware"); s.Verdict != c.verdict {
			t.Errorf("%.1f mm into the backing: %v, %q", c.deep, s.Verdict, s.Reason)
		}
	}
}

// Heads of one set and what belongs to the other, in one place.
func TestHardwareOfTwoSets(t *testing.T) {
	for _, c := range []struct {
		role detail.Role
		mark string
		says string
	}{{detail.Nut, "NT1", "nut and "}, {detail.Bolt, "BT1", "hex bolt and "}, {detail.Washer, "WS1", "washer and "}} {
		a := detailtest.Demo(t, "deck", twoSets()...)
		if s := found(t, report(a), "clash_hardware"); s.Verdict != check.OK {
			t.Fatalf("as built: %v, %q", s.Verdict, s.Reason)
		}
		lag := part(t, a, detail.Bolt, "BT2")
		into(part(t, a, c.role, c.mark), lag)
		s := found(t, report(a), "clash_hardware")
		if s.Verdict != check.Fails || !strings.Contains(s.Reason, " of B1 in one place") {
			t.Errorf("%s on the head of the lag: %v, %q", c.mark, s.Verdict, s.Reason)
		}
	}
}

// The remedy for heads in the ledger is a spacer as thick as washer and head: 1/4 + 27/64 = 43/64 in of a 5/8 in
// bolt, 11/16 on the drafter's sixteenths.
func TestRemedyForHeads(t *testing.T) {
	s := found(t, report(detailtest.Demo(t, "deck", twoSets("blocks.spacer=0in")...)), "clash_hardware")
	if s.Verdict != check.Fails || !strings.Contains(s.Fix, `blocks.spacer: at least 11/16"`) {
		t.Errorf("%v, remedy %q", s.Verdict, s.Fix)
	}
}

// Two screws on one axis, one behind the other: 3 mm of wood between them are enough.
func TestScrewsBehindEachOther(t *testing.T) {
	for _, c := range []struct {
		between float64
		want    check.Verdict
	}{{2.9, check.Fails}, {3.1, check.OK}} {
		a := detailtest.Demo(t, "deck")
		all := a.Find(detail.PlyScrew)
		d := all[5].Bounds().Center().Sub(all[0].Bounds().Center())
		d.Y = all[0].Size[2].MM() + c.between
		shift(all[0], d)
		if s := found(t, report(a), "clash_screws"); s.Verdict != c.want {
			t.Errorf("%g mm between: %v, %q", c.between, s.Verdict, s.Reason)
		}
	}
}

// A screw put in a bolt hole, in the wood beside it, and on another screw.
func TestScrewClashes(t *testing.T) {
	hole := func(a *detail.Assembly) geom.Vec3 { h := a.Holes(0)[0]; return geom.Vec3{X: h.X, Z: h.Z} }
	for _, c := range []struct {
		name    string
		to      func(a *detail.Assembly) geom.Vec3
		verdict check.Verdict
		says    string
	}{
		{"in a hole", hole, check.Fails, "screw B1/PS1-1-1 in a bolt hole"},
		// Hole 11/16 and screw 0.19 in: 8.73 + 2.41 + 3 = 14.14 mm are needed.
		{"14.0 mm from a hole", func(a *detail.Assembly) geom.Vec3 { return hole(a).Add(geom.Vec3{X: 14}) }, check.Fails, "in a bolt hole"},
		{"14.3 mm from a hole", func(a *detail.Assembly) geom.Vec3 { return hole(a).Add(geom.Vec3{X: 14.3}) }, check.OK, ""},
		{"on another screw", func(a *detail.Assembly) geom.Vec3 { return a.Find(detail.PlyScrew)[5].Bounds().Center() }, check.Fails, "screws B1/PS1-1-1 and B1/PS1-1-6 in one place"},
		// Two screws of 4.826 mm need 4.826 + 3 = 7.83 between axes.
		{"7.7 mm from another", func(a *detail.Assembly) geom.Vec3 {
			return a.Find(detail.PlyScrew)[5].Bounds().Center().Add(geom.Vec3{X: 7.7})
		}, check.Fails, "in one place"},
		{"8 mm from another", func(a *detail.Assembly) geom.Vec3 {
			return a.Find(detail.PlyScrew)[5].Bounds().Center().Add(geom.Vec3{X: 8})
		}, check.OK, ""},
	} {
		a := detailtest.Demo(t, "deck")
		p := a.Find(detail.PlyScrew)[0]
		d := c.to(a).Sub(p.Bounds().Center())
		d.Y = 0
		shift(p, d)
		if s := found(t, report(a), "clash_screws"); s.Verdict != c.verdict || !strings.Contains(s.Reason, c.says) {
			t.Errorf("%s: %v, %q", c.name, s.Verdict, s.Reason)
		}
	}
}

// One screw driven 1/4 in deeper ends on the sheathing's face; 1/8 in of wood are to be left.
func TestScrewPoint(t *testing.T) {
	for _, c := range []struct {
		deeper  float64
		verdict check.Verdict
	}{{0, check.OK}, {25.4 / 8, check.OK}, {25.4/8 + 0.1, check.Fails}, {25.4 / 4, check.Fails}, {25.4, check.Fails}} {
		a := detailtest.Demo(t, "deck")
		screws := a.Find(detail.PlyScrew)
		shift(screws[len(screws)-24], geom.Vec3{Y: -c.deeper})
		if s := found(t, report(a), "screw_point"); s.Verdict != c.verdict {
			t.Errorf("%.2f mm deeper: %v, %q", c.deeper, s.Verdict, s.Reason)
		}
	}
	if r := report(detailtest.Demo(t, "deck", "blocks.ply_screws=")); r.Find("screw_point") != nil || r.Find("clash_screws") != nil {
		t.Error("screws that are not there were checked")
	}
}

// A tension rod moved through a joist inside or outside, a block or its hardware.
func TestRodClashes(t *testing.T) {
	for _, role := range []detail.Role{detail.HouseJoist, detail.DeckJoist, detail.BlockPly, detail.Bolt, detail.Washer, detail.Nut} {
		a := detailtest.Demo(t, "deck")
		rod, other := a.Find(detail.TensionRod)[1], a.Find(role)[0]
		if s := found(t, report(a), "clash_rods"); s.Verdict != check.OK {
			t.Fatalf("as built: %v, %q", s.Verdict, s.Reason)
		}
		d := other.Bounds().Center().Sub(rod.Bounds().Center())
		d.Y = 0
		shift(rod, d)
		s := found(t, report(a), "clash_rods")
		if s.Verdict != check.Fails || !strings.Contains(s.Reason, "LT2 through the ") {
			t.Errorf("through the %s: %v, %q", role, s.Verdict, s.Reason)
		}
	}
	if r := report(detailtest.Demo(t, "deck", "tie.lateral.count=0")); r.Find("clash_rods") != nil || r.Find("lateral_joists") != nil {
		t.Error("devices that are not there were checked")
	}
}

// Four of a long list are named, the rest counted: nine blocks' heads and washers in the ledger.
func TestLongListsAreCut(t *testing.T) {
	s := found(t, report(detailtest.Demo(t, "deck", twoSets("blocks.spacer=0in")...)), "clash_hardware")
	if strings.Count(s.Reason, ",") != 3 || !strings.HasSuffix(s.Reason, " more") {
		t.Errorf("%q", s.Reason)
	}
}

// A screw from the face of the ledger may not stand under a washer: moved to the middle of a 3 in plate, and to 1 mm within each of
// its edges, it does; 4 mm past an edge, more than its own radius of 2.4, it does not.
func TestLedgerScrewUnderAWasher(t *testing.T) {
	for _, c := range []struct {
		x, z  float64 // from the middle of the plate, in halves of its size
		past  float64 // mm past that, along the way
		under bool
	}{{0, 0, 0, true}, {1, 0, -1, true}, {-1, 0, -1, true}, {0, 1, -1, true}, {0, -1, -1, true},
		{-1, 0, 4, false}, {0, 1, 4, false}, {0, -1, 4, false}} {
		a := detailtest.Demo(t, "deck", "blocks.ply_screws=", "blocks.ledger_screws={count: 4, diameter: 0.19in, length: 3in}")
		screw := part(t, a, detail.PlyScrew, "LS1")
		for _, w := range a.Find(detail.Washer) {
			b := w.Solids[0].Bounds()
			if w.Block != 0 || b.Max.Y <= a.Frame.LedgerFront {
				continue
			}
			half := (b.Max.X - b.Min.X) / 2
			d := b.Center().Sub(screw.Bounds().Center()).Add(geom.Vec3{X: c.x * (half + c.past), Z: c.z * (half + c.past)})
			d.Y = 0
			shift(screw, d)
			break
		}
		s := found(t, report(a), "clash_screws")
		if got := strings.Contains(s.Reason, " under a "); got != c.under || c.under && s.Verdict != check.Fails {
			t.Errorf("%g, %g and %g mm: %v, %q, want under a washer: %v", c.x, c.z, c.past, s.Verdict, s.Reason, c.under)
		}
	}
}
