package spec

import (
	"math"
	"strings"

	"standclear/detail/stock"
	"standclear/detail/unit"
)

// keys is the whole table, bound to the fields of s: every key a project file may hold, in the order
// of the file. Ranges are what is plausible at all, wide enough for the odd house and narrow enough
// that a figure in the wrong unit falls out.
func keys(s *Spec) []key {
	return []key{
		section("project", "what the title block says", projectKeys(&s.Project)...),
		section("site", "climate and ground; what is not stated is not checked", siteKeys(&s.Site)...),
		section("floor", "the house side at the ledger", floorKeys(s)...),
		section("tie", "what takes the pull behind the rim into the floor, at each block", tieKeys(&s.Tie)...),
		section("wall", "the build-up, inside to outside", wallKeys(s)...),
		section("foundation", "what stands below the floor", foundationKeys(&s.Foundation)...),
		section("deck", "what hangs outside", deckKeys(s)...),
		section("ledger", "the beam on the blocks", ledgerKeys(&s.Ledger)...),
		section("blocks", "the short pieces between sheathing and ledger", blockKeys(s)...),
		section("fasteners", "through, or to_rim and to_block", fastenerKeys(&s.Fasteners)...),
		section("water", "flashing and membrane", waterKeys(s)...),
		doorKeys(s),
		obstacleKeys(s),
		section("loads", "on the deck; what is not stated is not checked", loadKeys(&s.Loads)...),
		section("sheets", "how the set is printed", sheetKeys(&s.Sheets)...),
		section("stock", "what can be bought, for the cut list", stockKeys(&s.Stock)...),
		rateKeys(&s.Rates),
		section("assume", "judgements the calculation rests on", assumeKeys(&s.Assume)...),
	}
}

func projectKeys(p *Project) []key {
	return []key{
		text("name", &p.Name, "name of the project").eg("PENNANT HOUSE", "PENNANT HOUSE"),
		text("element", &p.Element, "what is drawn").eg("REAR DECK LEDGER", "REAR DECK LEDGER"),
		text("number", &p.Number, "number of the drawing").eg("PH-1", "PH-1"),
		date("date", &p.Date, "date of issue"),
		text("drawn", &p.Drawn, "who drew it").eg("A.B.", "A.B."),
		text("checked", &p.Checked, "who checked it").eg("C.D.", "C.D."),
		section("reviewer", "the licensed professional, once one has taken responsibility",
			text("name", &p.Reviewer.Name, "name").eg("E. F.", "E. F."),
			text("licence", &p.Reviewer.Licence, "licence number").eg("12345", "12345"),
			date("date", &p.Reviewer.Date, "date of review"),
		),
		text("code", &p.Code, "code edition as the owner states it").eg("IRC 2021", "EN 1995-1-1"),
		{
			name: "units", about: "how the sheets are dimensioned", kind: aWord, text: system{&p.System},
			words: []string{"inch", "metric"}, usual: pair{"inch", "metric"}, why: notSaid, begins: pair{"inch", "metric"},
		},
		{
			name: "notes", about: "notes of this project, after the general ones", kind: aList, series: &series{
				grow:  func(n int) { p.Notes = make([]string, n) },
				count: func() int { return len(p.Notes) },
				item:  func(i int) key { return text("", &p.Notes[i], "a note") },
				rows:  func() []pair { return []pair{{"KEEP THE GAP CLEAR.", "KEEP THE GAP CLEAR."}} },
			},
		},
		revisionKeys(p),
	}
}

// revisionKeys is the list of changes, oldest first.
func revisionKeys(p *Project) key {
	return key{name: "revisions", about: "of the drawings, oldest first", kind: aList, series: &series{
		grow:  func(n int) { p.Revisions = make([]Revision, n) },
		count: func() int { return len(p.Revisions) },
		each: func(i int) []key {
			r := &p.Revisions[i]
			return []key{
				text("mark", &r.Mark, "in the triangle").survey("1", "1"),
				date("date", &r.Date, "of issue"),
				text("by", &r.By, "who made it").eg("A.B.", "A.B."),
				text("text", &r.Text, "what changed").survey("BLOCKS WIDER", "BLOCKS WIDER"),
			}
		},
		rows: func() []pair {
			return []pair{{"{mark: 1, date: 2026-11-20, by: A.B., text: BLOCKS WIDER}", "{mark: 1, date: 2026-11-20, by: A.B., text: BLOCKS WIDER}"}}
		},
	}}
}

func siteKeys(s *Site) []key {
	temp := func(name string, p **unit.Temp, about string) key {
		return value(aTemp, name, maybe[unit.Temp]{p}, about)
	}
	return []key{
		temp("inside_temperature", &s.Inside, "room air in winter").within(5, 35).ask("68F", "20C"),
		value(aShare, "inside_humidity", maybe[unit.Percent]{&s.Humidity}, "room air in winter").within(0.05, 0.95).ask("35%", "35%"),
		temp("design_temperature", &s.Outside, "outside, for the coldest day").within(-60, 25).eg("0F", "-18C"),
		temp("cold_month_temperature", &s.ColdMonth, "outside, mean of the coldest month").within(-50, 25).ask("21F", "-6C"),
		value(someDegreeDays, "degree_days", maybe[unit.DegreeDays]{&s.DegreeDays}, "heating sum of a year").within(0, 12000).
			ask("6900 F.d", "3830 K.d"),
		maybeLength("rain", &s.Rain, "rain in a year").in(0, 140).ask("35in", "900mm"),
		load("ground_snow", &s.GroundSnow, "on the ground").within(0, 500*psf).ask("45psf", "2.15kPa"),
		value(aSpeed, "wind", maybe[unit.Speed]{&s.Wind}, "ultimate, 3 s gust").within(40*mph, 250*mph).eg("115mph", "51m/s"),
		word("seismic", &s.Seismic, "low, or the design category", "low", "A", "B", "C", "D", "E", "F", "unknown").orWord("unknown", notSaid).ask("low", "low"),
		word("termites", &s.Termites, "hazard", "none", "slight", "moderate", "heavy", "unknown").orWord("unknown", notSaid),
		yesNo("fire_interface", &s.FireInterface, "in a zone of wildfire").orWord("no", notSaid),
		maybeLength("frost_depth", &s.Frost, "depth of frost").in(0, 120).eg("42in", "1050mm"),
		word("above", &s.RoofAbove, "what can shed snow onto the deck", "none", "roof", "wall", "unknown").also(openAbove).orWord("unknown", notSaid).ask("none", "none"),
		word("zone", &s.Zone, "climate zone of the energy code; 5A and 5B are 5, 4C is marine", "1", "2", "3", "4", "4C", "5", "6", "7", "8", "unknown").also(moistureZone).orWord("unknown", notSaid).ask("5", "5"),
		monthKeys(s),
	}
}

func floorKeys(s *Spec) []key {
	f := &s.Floor
	return []key{
		length("finish", &f.Finish, "thickness of the floor finish").in(0, 6).or("3/4in", "15mm", usual),
		length("subfloor", &f.Subfloor, "thickness of the subfloor").in(0, 6).or("3/4in", "22mm", usual),
		section("rim", "the band the blocks are bolted to", rimKeys(&f.Rim)...),
		section("joists", "house joists behind the rim", houseJoistKeys(s)...),
		section("backing", "blocking behind the rim at each block", backingKeys(&f.Backing)...),
		word("bearing", &f.Bearing, "what the rim stands on", "plate", "hangers", "nothing", "unknown").orWord("unknown", notSaid).ask("plate", "plate"),
		length("plate", &f.Plate, "thickness of the plates below the rim").in(0, 8).or("1 1/2in", "45mm", usual),
		length("plate_width", &f.PlateWidth, "width of those plates").in(0, 24).
			from(func() { f.PlateWidth = s.studDepth() }, "5 1/2in", "145mm", "as the studs"),
		word("access", &f.Access, "can the nuts be reached from inside: open ceiling, finished one, strip to be opened",
			"open", "finished", "strip").survey("open", "open"),
		length("strip", &f.Strip, "width of the ceiling strip to open").in(0, 96).or("24in", "600mm", judged).
			only(func() bool { return f.Access == "strip" }),
		length("ceiling", &f.Ceiling, "thickness of the finished ceiling").in(0, 6).or("1/2in", "12.5mm", usual).
			only(func() bool { return f.Access != "open" }),
	}
}

func rimKeys(r *Rim) []key {
	var size1 string // a sawn rim may be given as 2x10; the Spec keeps only what it measures
	return []key{
		word("material", &r.Material, "what the rim is", stock.RimKeys()...).also(speciesKey).survey("southern pine", "lsl"),
		size(&size1, "thickness", "depth", "2x12", "45x300mm"),
		length("thickness", &r.Thickness, "of the rim, sheathing not counted").in(0.25, 8).survey("1 1/2in", "45mm"),
		length("depth", &r.Depth, "height of the rim").in(3.5, 30).survey("11 1/4in", "300mm"),
		gravity(&r.Gravity),
		word("moisture", &r.Moisture, "in service", "dry", "wet").orWord("dry", "judgement: behind the weather barrier"),
	}
}

func houseJoistKeys(s *Spec) []key {
	j := &s.Floor.Joists
	iJoist := func() bool { return j.Kind == "i-joist" }
	var size1 string
	return []key{
		word("kind", &j.Kind, "parallel: the joists run along the rim", "sawn", "i-joist", "truss", "parallel").survey("sawn", "i-joist"),
		length("first", &j.First, "axis of the first joist, from x = 0").in(-60, 60).survey("4in", "150mm"),
		length("spacing", &j.Spacing, "axis to axis").in(4, 60).survey("16in", "480mm"),
		size(&size1, "flange", "depth", "2x12", "47x300mm"),
		length("flange", &j.Flange, "width of the joist or of its flange").in(0.5, 8).
			from(func() { j.Flange = pick(s, iJoist(), 2.3125, 47, 1.5, 45) }, "1 1/2in", "47mm", usual),
		length("flange_height", &j.FlangeH, "depth of an i-joist's flange").in(0.5, 4).or("1 1/2in", "38mm", usual).only(iJoist),
		length("web", &j.Web, "thickness of an i-joist's web").in(0.2, 2).or("3/8in", "10mm", usual).only(iJoist),
		length("depth", &j.Depth, "height of the joist").in(3.5, 30).
			from(func() { j.Depth = s.Floor.Rim.Depth }, "11 1/4in", "300mm", "as the rim"),
		length("bolt_clearance", &j.Clearance, "least distance, bolt axis to joist axis").in(0, 12).or("2 1/2in", "65mm", judged),
		yesNo("squash_blocks", &j.Squash, "at the bearing of i-joists").orWord("no", careful).only(iJoist).ask("", "yes"),
		word("direction", &j.Direction, "of the joists to the rim", "perpendicular", "parallel").
			from(func() { j.Direction = either(j.Kind == "parallel", "parallel", "perpendicular") }, "perpendicular", "perpendicular", derived),
	}
}

func backingKeys(b *Backing) []key {
	some := func() bool { return b.Kind != "none" }
	return []key{
		word("kind", &b.Kind, "carried: it has its own path for its share", "none", "loose", "carried").orWord("none", careful).lead("").begin("carried", "carried"),
		word("material", &b.Material, "as the rims", stock.RimKeys()...).also(speciesKey).
			or("spruce-pine-fir", "european softwood", careful).only(some).begin("lsl", "lsl"),
		length("thickness", &b.Thickness, "of the blocking, along the bolt").in(0.5, 12).survey("3 1/2in", "90mm").begin("3 1/2in", "90mm").
			only(func() bool { return b.Kind == "loose" || b.Kind == "carried" }),
		gravity(&b.Gravity).only(some),
		force("fixing", &b.Fixing, "allowable vertical load, up or down, of its own fixings to joists or rim, at one block").within(0, 20000*lb).
			or("0lb", "0kN", careful).only(func() bool { return b.Kind == "carried" }).ask("900lb", "4kN"),
	}
}

// gravity is what a maker's report gives for bolts in an engineered board.
func gravity(p *float64) key {
	return value(aFactor, "gravity", field[float64]{p}, "equivalent specific gravity for bolts by the maker's report; auto: the careful value").
		within(0.3, 0.8).orAuto(careful)
}

func tieKeys(t *Tie) []key {
	some := func() bool { return t.Kind != "none" }
	lateral := func() bool { return t.Lateral.Count > 0 }
	return []key{
		word("kind", &t.Kind, "what is nailed or bolted to the joists", "none", "strap", "hold-down").orWord("none", careful).lead("lateral").begin("strap", "strap"),
		force("rating", &t.Rating, "allowable, each; two hold the backing of a bay").within(0, 20000*lb).or("0lb", "0kN", careful).only(some).ask("1250lb", "5kN"),
		length("length", &t.Length, "along the joist").in(6, 120).or("24in", "600mm", judged).only(some),
		section("lateral", "tension hardware that holds the deck to the floor, apart from the blocks",
			count("count", &t.Lateral.Count, "how many").within(0, 40).orWord("0", careful).lead("").begin("2", "2"),
			force("rating", &t.Lateral.Rating, "allowable, each").within(0, 20000*lb).or("0lb", "0kN", careful).only(lateral).ask("1500lb", "6.7kN"),
			length("from_end", &t.Lateral.FromEnd, "from the ledger's end").in(0, 120).or("24in", "600mm", "IRC 2021 R507.9.2: within 24 in").only(lateral),
		),
	}
}

// openAbove reads what people write for nothing overhead.
func openAbove(s string) (string, bool) {
	switch strings.ToLower(s) {
	case "open", "sky", "open sky", "nothing", "no":
		return "none", true
	}
	return "", false
}

// moistureZone reads a climate zone with its letter of moisture, 5A or 6b, as the zone. The letter C stays: a marine
// zone 4 has its own row.
func moistureZone(s string) (string, bool) {
	n := strings.TrimRight(strings.ToUpper(s), "AB")
	return n, len(n) == 1 && len(s) == 2 && n >= "1" && n <= "8"
}

// speciesKey reads a short form of a species as its key.
func speciesKey(s string) (string, bool) {
	sp, ok := stock.SpeciesOf(s)
	return sp.Key, ok
}

// pick returns one of two lengths by a condition, each in inches and in millimetres.
func pick(s *Spec, cond bool, in1, mm1, in2, mm2 float64) unit.Length {
	if !cond {
		in1, mm1 = in2, mm2
	}
	if s.Project.System == unit.SI {
		return unit.Length(mm1)
	}
	return unit.Length(in1) * unit.Inch
}

func either(cond bool, yes, no string) string {
	if cond {
		return yes
	}
	return no
}

// studDepth is the thickness of the stud layer, 3 1/2 in or 95 mm when the wall has none.
func (s *Spec) studDepth() unit.Length {
	for _, l := range s.Wall.Layers {
		if l.Role == "studs" {
			return l.Thickness
		}
	}
	return pick(s, true, 3.5, 95, 0, 0)
}

// cavityDepth is the thickness of the cavity layers, 0 when there are none.
func (s *Spec) cavityDepth() unit.Length {
	var sum unit.Length
	for _, l := range s.Wall.Layers {
		if l.Role == "cavity" {
			sum += l.Thickness
		}
	}
	return unit.Length(math.Max(float64(sum), 0))
}
