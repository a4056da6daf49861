package spec_test

import (
	"testing"

	"standclear/detail/spec"
)

func TestSet(t *testing.T) {
	s := readDeck(t,
		"ledger.length=16'-0\"", "ledger.length=15'-0\"", // the later wins
		"doors.0.from=71in", // into an item
		"doors.1={from: 150in, to: 170in, swing: slide}", // appended
		"obstacles.0=",            // taken out
		"blocks.plies.2=",         // the filler
		"blocks.plies.0=1 3/4in",  // an item of a list of values
		"deck.guard_posts.0=24in", // a list made on the way
		"loads.snow=",             // not stated any more
		"sheets.section=1 1/2\" = 1'-0\"",
		" ledger.grade = no 1 ", // spaces and short forms
		"floor.rim.moisture=WET",
	)
	if s.Ledger.Length.Feet() < 14.999 || len(s.Doors) != 2 || s.Doors[0].From.Inches() < 70.9 || s.Doors[1].Swing != "slide" {
		t.Errorf("ledger %v ft, doors %+v", s.Ledger.Length.Feet(), s.Doors)
	}
	if len(s.Obstacles) != 0 || len(s.Blocks.Plies) != 2 || s.Blocks.Plies[0].Inches() != 1.75 || len(s.Deck.GuardPosts) != 1 || s.Loads.Snow != nil {
		t.Errorf("obstacles %v, plies %v, posts %v, snow %v", s.Obstacles, s.Blocks.Plies, s.Deck.GuardPosts, s.Loads.Snow)
	}
	if s.Sheets.Section != 8 || s.Ledger.Grade != "No.1" || s.Floor.Rim.Moisture != "wet" {
		t.Errorf("scale %v, grade %q, moisture %q", s.Sheets.Section, s.Ledger.Grade, s.Floor.Rim.Moisture)
	}
}

func TestSetProblems(t *testing.T) {
	for _, c := range []struct{ set, want string }{
		{"ledger.length", `--set: "ledger.length" is not key=value; write for instance ledger.length=14'-8"`},
		{"=3in", `--set: "=3in" is not key=value; write for instance ledger.length=14'-8"`},
		{"", `--set: "" is not key=value; write for instance ledger.length=14'-8"`},
		{"doors.3.from=10in", "--set: doors.3.from: place 3 is past the end of the list; the next place is 1"},
		{"doors.x.from=10in", `--set: doors.x.from: "x" is not a place in the list; count places from 0`},
		{"doors.-1.from=10in", `--set: doors.-1.from: "-1" is not a place in the list; count places from 0`},
		{"ledger.length.x=3in", `--set: ledger.length.x: length is one value, "14'-8\""; set it as a whole`},
		{"a.b.c.d.e.f.g.h.i.j.k.l.m=1", "--set: a.b.c.d.e.f.g.h.i.j.k.l.m: the key has more than 12 parts"},
		{"blocks.plies=[1in", "--set: blocks.plies: not readable as YAML: did not find expected ',' or ']'; close the bracket [ ] or put a comma between the values"},
		{"blocks.plies=[1in]]", "--set: blocks.plies: not readable as YAML: did not find expected key; look at the indent of this line and the one before, and at quotes left open"},
		{"doors.1={to: 9in, to: 8in, from: 1in}", "--set: doors.1: given twice, first in line 1; keep one of the two"},
	} {
		checkOne(t, c.set, c.want)
	}
}

// The command line alone can make a project.
func TestSetWithoutFile(t *testing.T) {
	s, problems := spec.Read("empty.yaml", nil, []string{
		"floor={rim: {material: spf, size: 2x10}, joists: {kind: sawn, first: 8in, spacing: 16in}, access: open}",
		"wall.layers=[{role: sheathing, material: plywood, thickness: 1/2in}]",
		"deck={span: 10ft, below_floor: 3in}", "ledger.length=12ft", "fasteners.through={diameter: 1/2in, rows: [2in]}",
	})
	if s == nil {
		t.Fatal(problems.Error())
	}
	if s.Floor.Rim.Material != "spruce-pine-fir" || s.Floor.Joists.Depth != s.Floor.Rim.Depth || s.Wall.Layers[0].Name != "PLYWOOD" {
		t.Errorf("%+v %+v", s.Floor, s.Wall.Layers)
	}
}
