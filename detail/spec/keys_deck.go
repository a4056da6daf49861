package spec

import (
	"standclear/detail/stock"
	"standclear/detail/unit"
)

func deckKeys(s *Spec) []key {
	d := &s.Deck
	return []key{
		word("kind", &d.Kind, "what it is", "deck", "balcony").orWord("deck", usual),
		word("support", &d.Support, "of the outer edge", "posts", "braces", "hung", "cantilever", "unknown").orWord("unknown", notSaid).ask("posts", "posts"),
		word("storey", &d.Storey, "of the floor served", "ground", "upper").
			from(func() { d.Storey = either(d.Kind == "balcony", "upper", "ground") }, "ground", "ground", derived),
		length("projection", &d.Projection, "sheathing to outer edge").ft(1, 40).
			from(func() { d.Projection = s.Standoff() + s.Ledger.Thickness + d.Span }, `10'-10 1/2"`, "3035mm", "to the beam, no overhang").last(),
		length("span", &d.Span, "ledger face to beam").ft(1, 30).survey(`10'-6"`, "2900mm"),
		section("joists", "hung on the ledger", deckJoistKeys(s)...),
		length("decking", &d.Decking, "thickness").in(0.25, 6).or("1in", "28mm", usual),
		length("decking_gap", &d.DeckGap, "decking to cladding").in(0, 4).or("1/4in", "6mm", usual),
		length("below_floor", &d.Below, "top of decking below the finished floor").in(-24, 60).survey("2 1/2in", "65mm"),
		text("beam", &d.Beam, "as printed").eg("3-PLY 2x10", "2 x 45x220"),
		text("posts", &d.Post, "as printed").eg("2 POSTS 6x6", "2 POSTS 140x140"),
		guardPostKeys(d),
		{
			name: "point_loads", about: "stair, doubled joist, post on the ledger", kind: aList, series: &series{
				grow:  func(n int) { d.PointLoads = make([]PointLoad, n) },
				count: func() int { return len(d.PointLoads) },
				each:  func(i int) []key { return pointLoadKeys(&d.PointLoads[i]) },
				rows: func() []pair {
					return []pair{{"{name: STAIR, x: 24in, load: 500lb}", "{name: STAIR, x: 600mm, load: 2kN}"}}
				},
			},
		},
	}
}

func guardPostKeys(d *Deck) key {
	k := lengthList("guard_posts", &d.GuardPosts, "x of guard posts fastened to the ledger", 0, 1200)
	k.series.rows = func() []pair { return []pair{{"24in", "600mm"}} }
	return k
}

func pointLoadKeys(p *PointLoad) []key {
	return []key{
		text("name", &p.Name, "as printed").eg("STAIR", "STAIR"),
		length("x", &p.X, "from the left end of the ledger").in(0, 1200).survey("24in", "600mm"),
		force("load", &p.Load, "downward").within(0, 50000*lb).survey("500lb", "2kN"),
	}
}

func deckJoistKeys(s *Spec) []key {
	j := &s.Deck.Joists
	var size1 string // the Spec keeps what a joist measures, not its name
	return []key{
		size(&size1, "width", "depth", "2x8", "45x195mm"),
		length("width", &j.Width, "of one joist").in(0.5, 8).or("1 1/2in", "45mm", usual),
		length("depth", &j.Depth, "of the joist").in(3, 20).or("7 1/4in", "195mm", usual),
		length("spacing", &j.Spacing, "axis to axis").in(4, 48).or("16in", "400mm", usual),
		length("first", &j.First, "axis of the first joist, from x = 0").in(0, 48).
			from(func() { j.First = j.Width / 2 }, "3/4in", "22.5mm", "flush with the ledger's end"),
		func() key {
			k := lengthList("positions", &j.Positions, "axes given one by one; else they keep the spacing and clear the bolts", 0, 1200)
			k.series.rows = func() []pair { return []pair{{"3/4in", "22.5mm"}, {"16 3/4in", "422.5mm"}} }
			return k
		}(),
		word("species", &j.Species, "of the wood", speciesKeys()...).also(speciesKey).
			from(func() { j.Species = s.Ledger.Species }, "southern pine", "douglas fir-larch", "as the ledger"),
		length("hanger_seat", &j.Seat, "length of the hanger's seat").in(0.5, 8).or("2in", "50mm", usual),
		force("hanger", &j.Hanger, "allowable load of one hanger, 0 when not known").within(0, 20000*lb).or("0lb", "0kN", notSaid).ask("750lb", "3.5kN"),
		length("hanger_flange", &j.HangerFlange, "of the hanger along the ledger, where no bolt may be; 0: flanges turned in").in(0, 4).or("1 1/4in", "32mm", usual),
		word("hanger_depth", &j.HangerDepth, "how high the hanger is fastened into the ledger", "full", "lower").orWord("lower", careful).begin("full", "full"),
		yesNo("restrained", &j.Restrained, "each joist held top and bottom, so that the ledger cannot twist").orWord("no", careful).begin("yes", "yes"),
	}
}

func ledgerKeys(l *Ledger) []key {
	return append([]key{
		length("length", &l.Length, "end to end").ft(1, 100).survey(`14'-8"`, "4600mm"),
		size(&l.Nominal, "thickness", "height", "2x10", "45x245mm"),
		length("thickness", &l.Thickness, "as dressed").in(0.75, 8).or("1 1/2in", "45mm", usual),
		length("height", &l.Height, "as dressed").in(3, 20).or("9 1/4in", "220mm", usual).begin("", "245mm"),
		word("species", &l.Species, "of the wood", speciesKeys()...).also(speciesKey).or("southern pine", "european softwood", usual).begin("", "douglas fir-larch"),
		text("grade", &l.Grade, "No.1, No.2, C24").from(func() { l.Grade = lastGrade(l.Species) }, "No.2", "No.2", "the lowest of the species"),
		yesNo("treated", &l.Treated, "with preservative").orWord("yes", usual),
		yesNo("incised", &l.Incised, "cut so that it takes the preservative").
			from(func() { l.Incised = l.Treated && incised(l.Species) }, "no", "no", "as treated wood of the species comes"),
		slope("top_slope", &l.TopSlope, "bevel of the top edge, falling outward").orWord("1:8", judged),
		func() key {
			k := lengthList("splices", &l.Splices, "x of the joints of the ledger", 0, 1200)
			k.series.rows = func() []pair { return []pair{{"98 1/2in", "2500mm"}} }
			return k
		}(),
	}, moistureKeys(&l.Moisture))
}

func moistureKeys(m *Moisture) key {
	return section("moisture", "of the wood; dry is 19 % or less",
		word("assembly", &m.Assembly, "when it is bolted up", "dry", "wet", "unknown").orWord("unknown", careful).begin("dry", "dry"),
		word("service", &m.Service, "in use", "dry", "wet").orWord("wet", careful),
	)
}

func speciesKeys() []string {
	var all []string
	for _, s := range stock.SpeciesList() {
		all = append(all, s.Key)
	}
	return all
}

// lastGrade is the lowest grade of a species this tool has values for; "" for an unknown species.
func lastGrade(species string) string {
	s, ok := stock.SpeciesOf(species)
	if !ok {
		return ""
	}
	return s.Grades[len(s.Grades)-1]
}

func incised(species string) bool {
	s, _ := stock.SpeciesOf(species)
	return s.Incised
}

// Standoff is the distance from the sheathing to the back of the ledger: plies, pad and spacer.
func (s *Spec) Standoff() unit.Length {
	sum := s.Blocks.Pad.Thickness + s.Blocks.Spacer
	for _, t := range s.Blocks.Plies {
		sum += t
	}
	return sum
}
