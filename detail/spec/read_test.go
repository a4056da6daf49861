package spec_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"standclear/detail/spec"
	"standclear/detail/unit"
)

func file(t *testing.T, name string) []byte {
	t.Helper()
	src, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

func deckFile(t *testing.T) []byte {
	t.Helper()
	return file(t, "deck.yaml")
}

func readDeck(t *testing.T, sets ...string) *spec.Spec {
	t.Helper()
	s, problems := spec.Read("deck.yaml", deckFile(t), sets)
	if s == nil {
		t.Fatalf("%v:\n%s", sets, problems.Error())
	}
	return s
}

func TestReadDeck(t *testing.T) {
	s := readDeck(t)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"ledger length, 14'-8\"", s.Ledger.Length.MM(), 4470.4},
		{"ledger thickness of a 2x10", s.Ledger.Thickness.Inches(), 1.5},
		{"ledger height of a 2x10", s.Ledger.Height.Inches(), 9.25},
		{"joist width of a 2x8", s.Deck.Joists.Width.Inches(), 1.5},
		{"joist depth of a 2x8", s.Deck.Joists.Depth.Inches(), 7.25},
		{"top slope 1:8", float64(s.Ledger.TopSlope), 0.125},
		{"rim", s.Floor.Rim.Thickness.Inches(), 1.25},
		{"inside air", float64(*s.Site.Inside), 20},
		{"humidity", float64(*s.Site.Humidity), 0.5},
		{"degree days", float64(*s.Site.DegreeDays), 3830},
		{"wind", s.Site.Wind.MPH(), 115},
		{"snow on the deck", s.Loads.Snow.PSF(), 45},
		{"second layer", s.Wall.Layers[1].Thickness.Inches(), 5.5},
		{"line of the first layer", float64(s.Wall.Layers[0].Line), 59},
		{"filler ply", s.Blocks.Plies[2].Inches(), 0.5},
		{"stand-off, 1.5 + 1.5 + 0.5", s.Standoff().Inches(), 3.5},
		{"ply screws", float64(s.Blocks.PlyScrews.Count), 8},
		{"lower row", s.Fasteners.Through.Rows[1].Inches(), 6.375},
		{"plate washer", s.Fasteners.Through.Washer.Size.Inches(), 3},
		{"tie", s.Tie.Rating.Pounds(), 1500},
		{"grade", s.Foundation.Grade.Inches(), -66},
		{"foundation insulation", s.Foundation.Insulation.Inches(), 2},
		{"door", s.Doors[0].To.Inches(), 142},
		{"section scale", s.Sheets.Section, 4},
		{"shop scale", s.Sheets.Shop, 2},
		{"screen", float64(s.Water.ScreenFree), 0.6},
		{"cap, a default", s.Assume.Cap, 0.9},
		{"foot depth, a default", float64(s.Assume.FootDepth), 0.25},
		{"lever for slip, a default", s.Assume.SupportSlip.Inches(), 1.0 / 16},
	} {
		if math.Abs(c.got-c.want) > 1e-9*math.Max(1, math.Abs(c.want)) {
			t.Errorf("%s: %v; want %v", c.name, c.got, c.want)
		}
	}
	for _, c := range []struct{ name, got, want string }{
		{"source", s.Source, "deck.yaml"}, {"nominal", s.Ledger.Nominal, "2x10"}, {"date", s.Project.Date, "2026-11-02"},
		{"filler", s.Blocks.Material[2], "plywood"}, {"ply", s.Blocks.Material[0], "lumber"}, {"grade", s.Ledger.Grade, "No.2"},
		{"species", s.Blocks.Species, "southern pine"}, {"lever arm", s.Assume.LeverArm, "audited"}, {"duct", s.Obstacles[0].Name, "SUPPLY DUCT"},
		{"wind, not said", s.Loads.Wind, "unknown"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q; want %q", c.name, c.got, c.want)
		}
	}
	if !s.Blocks.PliesFastened || !s.Obstacles[0].Inside || s.Ledger.Incised || !s.Assume.Torsion || s.Assume.PlyCouple {
		t.Errorf("a yes or no is the wrong way round: %+v %+v %+v", s.Blocks, s.Obstacles, s.Assume)
	}
	if s.Fasteners.ToRim != nil || len(s.Warnings) != 0 || len(s.Hash()) != 8 {
		t.Errorf("to_rim %v, warnings %v, hash %q", s.Fasteners.ToRim, s.Warnings, s.Hash())
	}
}

// What is absent and may be stays nil or unknown; a check says so later.
func TestReadAbsent(t *testing.T) {
	s := readDeck(t, "loads=", "site=", "foundation=", "doors=", "deck.support=", "blocks.pad={thickness: 1/2in}")
	if s.Loads.Live != nil || s.Loads.Dead != nil || s.Loads.Snow != nil || s.Blocks.Pad.Strength != nil || s.Site.Inside != nil ||
		s.Foundation.Grade != nil || len(s.Doors) > 0 {
		t.Errorf("something was made up: %+v %+v %+v", s.Loads, s.Site, s.Blocks.Pad)
	}
	if s.Site.Seismic != "unknown" || s.Site.RoofAbove != "unknown" || s.Foundation.Kind != "none" || s.Loads.Basis != "IRC" ||
		s.Loads.Wind != "unknown" || s.Deck.Support != "unknown" {
		t.Errorf("%+v %+v %+v, support %s", s.Site, s.Foundation, s.Loads, s.Deck.Support)
	}
}

// Screws are read joint by joint: between the plies, and from the ledger into the outermost one. A count
// asks for the size; none needs none.
func TestReadScrews(t *testing.T) {
	s := readDeck(t, "blocks.ledger_screws={count: 4, diameter: 0.25in, length: 3 1/2in}", "blocks.ply_screws.count=6")
	if l := s.Blocks.LedgerScrews; l.Count != 4 || math.Abs(l.Diameter.Inches()-0.25) > 1e-9 || math.Abs(l.Length.Inches()-3.5) > 1e-9 {
		t.Errorf("ledger screws %+v", l)
	}
	if p := s.Blocks.PlyScrews; p.Count != 6 || math.Abs(p.Diameter.Inches()-0.19) > 1e-9 || math.Abs(p.Length.Inches()-3) > 1e-9 {
		t.Errorf("ply screws %+v", p)
	}
	if s := readDeck(t, "blocks.ply_screws="); s.Blocks.PlyScrews.Count != 0 || s.Blocks.LedgerScrews.Count != 0 {
		t.Errorf("screws nobody gave: %+v %+v", s.Blocks.PlyScrews, s.Blocks.LedgerScrews)
	}
	for _, key := range []string{"diameter", "length"} {
		_, problems := spec.Read("deck.yaml", deckFile(t), []string{"blocks.ledger_screws={count: 4, diameter: 0.19in, length: 3in}", "blocks.ledger_screws." + key + "="})
		if len(problems) != 1 || problems[0].Key != "blocks.ledger_screws."+key {
			t.Errorf("no %s: %s", key, problems.Error())
		}
	}
}

// The three answers to wind, and nothing else.
func TestReadWind(t *testing.T) {
	for _, w := range []string{"yes", "no", "unknown"} {
		if got := readDeck(t, "loads.wind="+w).Loads.Wind; got != w {
			t.Errorf("%s read as %s", w, got)
		}
	}
	if s, _ := spec.Read("deck.yaml", deckFile(t), []string{"loads.wind=perhaps"}); s != nil {
		t.Error("perhaps was taken")
	}
}

// A default is listed with what it is and why, in file order, and a given value is not.
func TestReadDefaults(t *testing.T) {
	s := readDeck(t, "blocks.height=", "fasteners.through.hole=", "fasteners.through.washer=", "water.patch=", "water.gap_min=",
		"deck.projection=", "floor.plate_width=", "blocks.species=", "fasteners.through.column_spacing=", "blocks.plies=")
	want := []spec.Default{
		{Key: "floor.plate_width", Value: `5 1/2"`, Why: "as the studs"},
		{Key: "deck.projection", Value: `11'-4 1/2"`, Why: "to the beam, no overhang"}, // 132 + 3 + 1.5 in
		{Key: "blocks.plies", Value: `1 1/2", lumber, 1 1/2", lumber`, Why: "common practice, no source"},
		{Key: "blocks.height", Value: `9 1/4"`, Why: "as the ledger"},
		{Key: "blocks.species", Value: "southern pine", Why: "as the ledger"},
		{Key: "fasteners.through.column_spacing", Value: `2 1/2"`, Why: "4D, NDS 2018 Table 12.5.1 from memory, confirm"},
		{Key: "fasteners.through.hole", Value: `11/16"`, Why: "clearance for a bolt, the shank for a screw"},
		{Key: "fasteners.through.washer.size", Value: `3"`, Why: "the usual one of the kind"},
		{Key: "water.patch.height", Value: `1'-4 1/4"`, Why: "the block and 3 1/2 in or 90 mm on each side"},
		{Key: "water.gap_min", Value: `3/4"`, Why: "as the cavity of the cladding, 3/8 in or 10 mm at least"},
		{Key: "assume.cap", Value: "0.9", Why: "judgement"},
	}
	for _, d := range s.Defaults {
		if len(want) > 0 && d.Key == want[0].Key {
			if d != want[0] {
				t.Errorf("%+v; want %+v", d, want[0])
			}
			want = want[1:]
		}
		if d.Key == "ledger.length" || d.Key == "blocks.width" {
			t.Errorf("%s was given and is called a default", d.Key)
		}
	}
	if len(want) > 0 {
		t.Errorf("not listed, or not in file order: %+v", want)
	}
}

func TestReadMetricDefaults(t *testing.T) {
	s, problems := spec.Read("m.yaml", file(t, "deck-metric.yaml"), []string{"fasteners.through.hole=", "fasteners.through.washer={kind: round}", "fasteners.through.grade=", "ledger.grade=", "blocks.grid="})
	if s == nil {
		t.Fatal(problems.Error())
	}
	f := s.Fasteners.Through
	// M16: hole d + 1.5 mm, large washer 50 x 3.
	if f.Hole != 17.5 || f.Washer.Size != 50 || f.Washer.Thickness != 3 || f.Grade != "4.6" || s.Ledger.Grade != "C24" || s.Blocks.Grid != 5 {
		t.Errorf("%+v, grade %s, grid %v", f, s.Ledger.Grade, float64(s.Blocks.Grid))
	}
}

// Two sets in place of one.
func TestReadTwoSets(t *testing.T) {
	s := readDeck(t, "fasteners={to_rim: {diameter: 3/4in, rows: [3in]}, to_block: {kind: lag, diameter: 1/2in, rows: [2in, 5in]}}")
	f := s.Fasteners
	if f.Through != nil || f.ToRim == nil || f.ToBlock == nil || f.ToBlock.Kind != "lag" || f.ToRim.Kind != "bolt" || len(f.ToBlock.Rows) != 2 {
		t.Fatalf("%+v", f)
	}
	// A lag's hole is its shank; the tolerance is the rounding of 25.4.
	if math.Abs(float64(f.ToBlock.Hole-0.5*unit.Inch)) > 1e-9 || math.Abs(f.ToRim.Hole.Inches()-0.8125) > 1e-9 {
		t.Errorf("holes %v and %v in", f.ToBlock.Hole.Inches(), f.ToRim.Hole.Inches())
	}
}

func TestReadWarnings(t *testing.T) {
	for _, c := range []struct{ name, set, want string }{
		{"decimal feet", "ledger.length=14.8ft", `--set: warning: ledger.length: 14.8 ft is 14'-9 5/8", not 14'-8"; write feet and inches`},
		{"decimal feet in a list", "deck.guard_posts=[3.6ft]", `--set: warning: deck.guard_posts.0: 3.6 ft is 3'-7 3/16", not 3'-6"; write feet and inches`},
		{"nominal joist", "deck.joists.size=2 x 10 in", `--set: warning: deck.joists.width: 2 in x 10 in is not a dressed size; a 2x10 is 1 1/2 x 9 1/4`},
		{"nominal ply", "blocks.plies=[2in]", `--set: warning: blocks.plies.0: 2 in is not a dressed thickness; a 2x is 1 1/2 thick`},
		{"outside in", "wall.layers.0.role=cavity", `deck.yaml:59:7: warning: wall.layers.0: cavity stands inside the sheathing; write the layers from inside to outside`},
		{"house joist", "floor.joists={kind: sawn, first: 5in, spacing: 16in, flange: 2in, depth: 12in}", `--set: warning: floor.joists.flange: 2 in x 12 in is not a dressed size; a 2x12 is 1 1/2 x 11 1/4`},
		{"sawn rim", "floor.rim={material: hf, thickness: 2in, depth: 10in}", `--set: warning: floor.rim.thickness: 2 in x 10 in is not a dressed size; a 2x10 is 1 1/2 x 9 1/4`},
	} {
		if got := readDeck(t, c.set).Warnings.Error(); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
	s := readDeck(t, "ledger.size=", "ledger.thickness=2in", "ledger.height=10in")
	if got := s.Warnings.Error(); !strings.Contains(got, "ledger.thickness: 2 in x 10 in is not a dressed size; a 2x10 is 1 1/2 x 9 1/4") {
		t.Errorf("2 x 10 actual ledger: %q", got)
	}
}

// With something wrong the warnings come along, so that one run shows all.
func TestReadWarningsBesideProblems(t *testing.T) {
	s, problems := spec.Read("deck.yaml", deckFile(t), []string{"ledger.length=14.8ft", "deck.span=11"})
	if s != nil || len(problems) != 2 || !problems.Fatal() || !problems[1].Warning || problems[0].Warning {
		t.Errorf("%v, %s", s, problems.Error())
	}
}

// A parsed file is read again and again: what one reading sets, the next does not see.
func TestFileReadsAnew(t *testing.T) {
	f := spec.Parse("deck.yaml", deckFile(t))
	hash := func(sets ...string) string {
		s, problems := f.Read(sets)
		if s == nil {
			t.Fatal(problems)
		}
		return s.Hash()
	}
	before := hash()
	for _, set := range []string{"blocks.plies.0=2in", "ledger.length=15ft", "doors=", "fasteners.through.rows.1=7in", "wall.layers.4.thickness=2in"} {
		if hash(set) == before {
			t.Errorf("%s changes nothing", set)
		}
		if after := hash(); after != before {
			t.Errorf("after %s the file reads otherwise", set)
		}
	}
}
