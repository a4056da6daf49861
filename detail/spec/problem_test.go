package spec_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"standclear/detail/spec"
)

// Every message as the person who typed the value reads it.
func TestProblems(t *testing.T) {
	const lengthForms = `a length is written 7 1/2in, 14'-8", 80mm or 1.2m`
	for _, c := range []struct{ set, want string }{
		{"floor.rim.thickness=89in", "--set: floor.rim.thickness: 89in is outside 0.25..8 in; 89 mm would be 3 1/2 in"},
		{"blocks.width=7ft", "--set: blocks.width: 7ft is outside 1.5..48 in; did you mean 7 in?"},
		{"ledger.length=400ft", "--set: ledger.length: 400ft is outside 1..100 ft; 400 in would be 33'-4\""},
		{"floor.joists.spacing=16mm", "--set: floor.joists.spacing: 16mm is outside 4..60 in; 16 in would be 1'-4\""},
		{"wall.cladding.exposure=-6in", "--set: wall.cladding.exposure: -6in is outside 0..24 in; look at the figure and its unit"},
		{"deck.span=99'-0\"", `--set: deck.span: 99'-0" is outside 1..30 ft; look at the figure and its unit`},
		{"site.inside_temperature=68C", "--set: site.inside_temperature: 68C is outside 41..95 F; did you mean 68 F?"},
		{"site.ground_snow=45kN/m2", "--set: site.ground_snow: 45kN/m2 is outside 0..500 psf; did you mean 45 psf?"},
		{"site.wind=115m/s", "--set: site.wind: 115m/s is outside 40..250 mph; did you mean 115 mph?"},
		{"ledger.top_slope=8:1", "--set: ledger.top_slope: 8:1 is outside 0..1:1; look at the figure and its unit"},
		{"assume.cap=1.5", "--set: assume.cap: 1.5 is outside 0.1..1; look at the figure and its unit"},
		{"fasteners.through.columns=9", "--set: fasteners.through.columns: 9 is outside 1..8; look at the figure and its unit"},
		{"floor.finish=89", `--set: floor.finish: "89" has no unit; ` + lengthForms + "; write 89mm"},
		{"foundation.grade=-66", `--set: foundation.grade: "-66" has no unit; ` + lengthForms + "; write -66in or -66mm or -66ft"},
		{"fasteners.through.diameter=5/8", `--set: fasteners.through.diameter: "5/8" has no unit; a diameter is written 1/2in, 16mm or M16; write 5/8in`},
		{"site.inside_temperature=20", `--set: site.inside_temperature: "20" has no unit; a temperature is written 20C or 68F; write 20C`},
		{"site.inside_humidity=0.5", `--set: site.inside_humidity: "0.5" has no unit; a share is written 60%; write 50%`},
		{"loads.live=40", `--set: loads.live: "40" has no unit; a load or stress is written 45psf, 25psi, 2.15kPa, 2.15kN/m2 or 0.3MPa; write 40psf`},
		{"tie.rating=1500", `--set: tie.rating: "1500" has no unit; a force is written 1500lb, 1.5kip, 800N or 6.7kN; write 1500lb or 1500N`},
		{"ledger.top_slope=8", `--set: ledger.top_slope: "8" has no unit; a slope is written 1:8, 12%, 7deg or 0; write 1:8 or 8%`},
		{"ledger.treated=maybe", `--set: ledger.treated: "maybe" is neither yes nor no; write yes or no`},
		{"fasteners.through.columns=two", `--set: fasteners.through.columns: "two" is not a whole number; a number is written 4`},
		{"assume.cap=90%", `--set: assume.cap: "90%" is not a number; a number is written 0.9`},
		{"assume.cap=1e-1", `--set: assume.cap: "1e-1" is not a number; a number is written 0.9`},
		{"fasteners.through.kind=nail", `--set: fasteners.through.kind: "nail" is not allowed; one of bolt, lag, screw, evaluated`},
		{"foundation.kind=concret", `--set: foundation.kind: "concret" is not allowed; one of concrete, masonry, wall, none; did you mean concrete?`},
		{"project.date=2 Nov 2026", `--set: project.date: "2 Nov 2026" is not a date; a date is written 2026-11-02`},
		{"project.name={a: b}", "--set: project.name: a section stands where one value should; a text is wanted"},
		{"project.notes=[a, b: c]", "--set: project.notes.1: a section stands where one value should; a text is wanted"},
		{"project.notes=[\"a\\nb\"]", "--set: project.notes.0: the text runs over more than one line; write one line of plain text"},
		{"project.notes=[\"a\\u200bb\"]", "--set: project.notes.0: the text holds the character U+200B, which does not print; write one line of plain text"},
		{"project.name=" + strings.Repeat("x", 201), "--set: project.name: the text has more than 200 characters; write one line of plain text"},
		{"floor=3in", "--set: floor: one value stands where a section should; it holds finish, subfloor, rim, joists, backing, bearing, plate, plate_width, access, strip, ceiling"},
		{"doors.0=3in", "--set: doors.0: one value stands where a section should; it holds from, to, swing, threshold"},
		{"blocks.plies=2in", "--set: blocks.plies: one value stands where a list should; put it in brackets: [2in]"},
		{"fasteners.through.rows=[]", "--set: fasteners.through.rows: the list is empty; it holds at least one item"},
		{"blocks.plies=[1 1/2in, ~]", "--set: blocks.plies.1: an item of the list is empty; take it out or fill it in"},
		{"floor.rim.materal=lsl", `--set: floor.rim.materal: "materal" is not a key of floor.rim; it holds material, size, thickness, depth, gravity, moisture; did you mean material?`},
		{"ledger.snow=45psf", `--set: ledger.snow: "snow" is not a key of ledger; it holds length, size, thickness, height, species, grade, treated, incised, top_slope, splices, moisture; did you mean loads.snow?`},
		{"ledger.frobnicate=1", `--set: ledger.frobnicate: "frobnicate" is not a key of ledger; it holds length, size, thickness, height, species, grade, treated, incised, top_slope, splices, moisture`},
		{"deck.joists.size=2x9", `--set: deck.joists.size: "2x9" is not a size of lumber; a size is 2x4, 2x6, 2x8, 2x10 or 2x12, or dressed: 45x220mm, 1 1/2in x 9 1/4in`},
		{"ledger.thickness=2in", `--set: ledger.thickness: 2in, but the size 2x10 has 1 1/2"; give the size or the measure, not both`},
		{"deck.span=", `--set: deck.span: missing; a length of 1..30 ft; it has no default: write for instance span: 10'-6"`},
		{"wall.layers.2.thickness=", "--set: wall.layers.2.thickness: missing; a length of 0..24 in; it has no default: write for instance thickness: 1/2in"},
		{"blocks.pad.strength=40psi", "--set: blocks.pad.thickness: missing; a length of 0..6 in; the rest of its section means nothing without it: write for instance thickness: 1/2in"},
		{"floor.backing.thickness=", "--set: floor.backing.thickness: missing; a length of 0.5..12 in; it has no default: write for instance thickness: 3 1/2in"},
		{"deck.span=survey", `--set: deck.span: not surveyed yet; a length of 1..30 ft; write for instance 10'-6"`},
		{"fasteners.through.rows=SURVEY", "--set: fasteners.through.rows: not surveyed yet; a list is wanted; write for instance [2 13/16in, 6 5/8in]"},
		{"sheets.section=1:3", `--set: sheets.section: "1:3" is not a usual scale; a scale is one of 12" = 1'-0", 6" = 1'-0", 3" = 1'-0", 1 1/2" = 1'-0", 1" = 1'-0", 3/4" = 1'-0", 1/2" = 1'-0", 1/4" = 1'-0", 1/8" = 1'-0", 1:1, 1:2, 1:5, 1:10, 1:20, 1:50, 1:100; the nearest is 1:2`},
	} {
		checkOne(t, c.set, c.want)
	}
}

// Values that contradict each other so that nothing can be drawn.
func TestCrossProblems(t *testing.T) {
	for _, c := range []struct{ set, want string }{
		{"fasteners.to_rim={diameter: 1/2in, rows: [3in]}", "--set: fasteners: through and to_rim are both given; give through, or to_rim and to_block; take one out"},
		{"fasteners.to_block={diameter: 1/2in, rows: [3in]}", "--set: fasteners: through and to_block are both given; give through, or to_rim and to_block; take one out"},
		{"fasteners.through=", "deck.yaml:131:1: fasteners: no fasteners are given; give through, or to_rim and to_block"},
		{"fasteners=", "--set: fasteners: no fasteners are given; give through, or to_rim and to_block"},
		{"fasteners={to_rim: {diameter: 1/2in, rows: [3in]}}", "--set: fasteners: to_rim is given without to_block; give through, or to_rim and to_block"},
		{"fasteners={to_block: {diameter: 1/2in, rows: [3in]}}", "--set: fasteners: to_block is given without to_rim; give through, or to_rim and to_block"},
		{"fasteners.through.rows=[6in, 3in]", `--set: fasteners.through.rows.1: 3" does not pass the 6" before it; write the list from small to large`},
		{"blocks.positions=[10in, 10in]", `--set: blocks.positions.1: 10" does not pass the 10" before it; write the list from small to large`},
		{"doors.1={from: 100in, to: 150in}", `--set: doors.1.from: 8'-4" lies within the door from 5'-10" to 11'-10"; doors stand beside each other; look at the jambs of both`},
		{"doors=[{from: 10in, to: 100in}, {from: 20in, to: 30in}, {from: 40in, to: 50in}]", `--set: doors.1.from: 1'-8" lies within the door from 10" to 8'-4"; doors stand beside each other; look at the jambs of both` + "\n" +
			`--set: doors.2.from: 3'-4" lies within the door from 10" to 8'-4"; doors stand beside each other; look at the jambs of both`},
		{"doors.1={from: 60in, to: 71in}", `deck.yaml:158:12: doors.0.from: 5'-10" lies within the door from 5'-0" to 5'-11"; doors stand beside each other; look at the jambs of both`},
		{"doors.0.to=60in", `--set: doors.0.to: 5'-0" is not beyond from, 5'-10"; look whether the two are the wrong way round`},
		{"obstacles.0.to=66in", `--set: obstacles.0.to: 5'-6" is not beyond from, 5'-6"; look whether the two are the wrong way round`},
		{"blocks.end_max=3in", `--set: blocks.end_max: 3" is not beyond end_min, 4 1/2"; look whether the two are the wrong way round`},
		{"foundation.grade_high=-80in", `--set: foundation.grade_high: -6'-8" is not beyond grade, -5'-6"; look whether the two are the wrong way round`},
		{"wall.layers.2.role=other", "deck.yaml:58:3: wall.layers: no layer is the sheathing; its outer face is where everything is measured from; give one layer role: sheathing"},
		{"wall.layers.6.role=cladding", "deck.yaml:66:14: wall.layers.7.role: a second layer is called cladding; one layer is; call the other one other"},
		{"blocks.pad={thickness: 1/2in, after: 7}", "--set: blocks.pad.after: the pad stands after ply 7; there are 3 plies"},
		{"deck.projection=4ft", `--set: deck.projection: the deck ends before its beam; stand-off, ledger and span come to 11'-5"; measure the projection from the sheathing, the span from the ledger`},
		{"deck.guard_posts=[200in]", `--set: deck.guard_posts.0: 16'-8" is past the end of the ledger; the ledger is 14'-8" long; measure x from its left end, seen from outside`},
		{"deck.point_loads=[{name: STAIR, x: 15ft, load: 500lb}]", `--set: deck.point_loads.0.x: 15'-0" is past the end of the ledger; the ledger is 14'-8" long; measure x from its left end, seen from outside`},
		{"wall.cladding.exposure=0.01mm", `--set: wall.cladding.exposure: courses of 0.01 mm (0.000394 in); 0 for flat cladding, or at least 1/2"; look at the figure and its unit`},
		{"ledger.splices=[14'-8\"]", `--set: ledger.splices.0: 14'-8" is an end of the ledger: a piece would have no length; between 0 and 14'-8"`},
		{"ledger.splices=[0in]", `--set: ledger.splices.0: 0" is an end of the ledger: a piece would have no length; between 0 and 14'-8"`},
		{"ledger.grade=No.3", `--set: ledger.grade: "No.3" is not a grade of southern pine this tool has values for; one of No.1, No.2`},
	} {
		checkOne(t, c.set, c.want)
	}
}

func checkOne(t *testing.T, set, want string) {
	t.Helper()
	s, problems := spec.Read("deck.yaml", deckFile(t), []string{set})
	if got := problems.Error(); s != nil || got != want {
		t.Errorf("%.60s:\n got %s\nwant %s", set, got, want)
	}
}

// Layers in an order no builder would choose still read: that is for the checks.
func TestOddOrderReads(t *testing.T) {
	if s := readDeck(t, "wall.layers.0.role=insulation"); s.Wall.Layers[0].Role != "insulation" {
		t.Error("insulation inside of the sheathing was not read")
	}
}

func TestProblemError(t *testing.T) {
	for _, c := range []struct {
		p    spec.Problem
		want string
	}{
		{spec.Problem{File: "a.yaml", Line: 3, Col: 7, Key: "k", Given: "g", Allowed: "a", Do: "d"}, "a.yaml:3:7: k: g; a; d"},
		{spec.Problem{File: "a.yaml", Line: 3, Col: 7, Given: "g", Do: "d", Warning: true}, "a.yaml:3:7: warning: g; d"},
		{spec.Problem{File: "--set", Key: "k", Given: "g"}, "--set: k: g"},
	} {
		if got := c.p.Error(); got != c.want {
			t.Errorf("%q; want %q", got, c.want)
		}
	}
}

// Of thousands of keys each problem still names its own line.
func TestProblemsAmongManyKeys(t *testing.T) {
	head, tail, _ := bytes.Cut(deckFile(t), []byte("\nobstacles:\n"))
	rows := bytes.Repeat([]byte("  - {kind: pipe, name: P, from: 80in, to: 66in, inside: yes}\n"), 2000)
	src := slices.Concat(head, []byte("\nobstacles:\n"), rows, tail)
	_, problems := spec.Read("deck.yaml", src, nil)
	first := bytes.Count(head, []byte("\n")) + 3
	for k, p := range problems[:50] {
		if p.Line != first+k || p.Key != fmt.Sprintf("obstacles.%d.to", k) {
			t.Errorf("problem %d is %v", k, p)
		}
	}
}
