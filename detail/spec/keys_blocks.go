package spec

import (
	"standclear/detail/stock"
	"standclear/detail/unit"
)

func blockKeys(s *Spec) []key {
	b := &s.Blocks
	pad := func() bool { return b.Pad.Thickness > 0 }
	return []key{
		plyKeys(s),
		size(&b.Nominal, "", "height", "2x10", "45x245mm"),
		length("height", &b.Height, "of the block").in(2, 24).
			from(func() { b.Height = s.Ledger.Height }, "9 1/4in", "245mm", "as the ledger"),
		length("width", &b.Width, "along the wall").in(1.5, 48).or("7in", "180mm", judged).begin("7 3/4in", "220mm"),
		word("grain", &b.Grain, "direction of the grain", "horizontal", "vertical").orWord("horizontal", usual),
		word("species", &b.Species, "of the wood", speciesKeys()...).also(speciesKey).
			from(func() { b.Species = s.Ledger.Species }, "southern pine", "douglas fir-larch", "as the ledger"),
		text("grade", &b.Grade, "No.1, No.2, C24").from(func() { b.Grade = lastGrade(b.Species) }, "No.2", "No.2", "the lowest of the species"),
		yesNo("treated", &b.Treated, "with preservative").from(func() { b.Treated = s.Ledger.Treated }, "yes", "yes", "as the ledger"),
		yesNo("incised", &b.Incised, "cut so that it takes the preservative").
			from(func() { b.Incised = b.Treated && incised(b.Species) }, "no", "no", "as treated wood of the species comes"),
		slope("top_slope", &b.TopSlope, "of the top, falling outward").orWord("1:8", judged).begin("1:12", "1:16"),
		section("pad", "stiff foam in the sandwich; leave out for none",
			length("thickness", &b.Pad.Thickness, "0 for no pad").in(0, 6).or("0in", "0mm", "no pad").lead("").eg("1/2in", "20mm"),
			word("material", &b.Pad.Material, "what it is made of", stock.MaterialKeys()...).orWord("xps", usual).only(pad),
			value(aStress, "strength", maybe[unit.Pressure]{&b.Pad.Strength}, "compressive, at 10 % or yield").within(1*psi, 400*psi).
				eg("40psi", "300kPa").only(pad),
			count("after", &b.Pad.After, "plies between it and the sheathing").within(0, 10).orWord("1", usual).only(pad),
			yesNo("foot", &b.Pad.Foot, "a solid spacer at the foot takes the compression past the pad").orWord("no", careful).only(pad),
		),
		length("spacer", &b.Spacer, "open gap in front of the block, kept by spacers on the bolts").in(0, 4).or("0in", "0mm", usual),
		yesNo("plies_fastened", &b.PliesFastened, "plies fixed to each other by their own screws for the full shear").orWord("no", careful).begin("yes", "yes"),
		screwKeys("ply_screws", "fasten the plies of one block to each other", "across each joint between two plies, driven from the outer one", "20", &b.PlyScrews, "2 3/4in", "80mm"),
		screwKeys("ledger_screws", "fasten the ledger to the outermost ply, apart from the fasteners", "in one block", "", &b.LedgerScrews, "2 3/4in", "80mm"),
		length("below", &b.Below, "top of the block below the top of the ledger").in(-6, 12).or("0in", "0mm", usual),
		length("max_spacing", &b.MaxSpacing, "axis to axis").in(4, 120).or("24in", "600mm", judged).begin("22in", "515mm"),
		length("end_min", &b.EndMin, "least distance, ledger end to block axis").in(0.5, 48).or("4 1/2in", "115mm", judged),
		length("end_max", &b.EndMax, "greatest distance, ledger end to block axis").in(0.5, 72).or("10in", "260mm", judged).begin("12 1/2in", "300mm"),
		func() key {
			k := lengthList("positions", &b.Positions, "axes forced, in place of the search", 0, 1200)
			k.series.rows = func() []pair { return []pair{{"10in", "215mm"}, {"33 1/4in", "735mm"}} }
			return k
		}(),
		yesNo("equal", &b.Equal, "force equal division, clashes and all").orWord("no", usual),
		length("grid", &b.Grid, "step of the search").in(0.03, 4).or("1/4in", "5mm", judged),
		moistureKeys(&b.Moisture),
	}
}

// screwKeys are the wood screws of one joint; begin is how many the starter file writes out, "" for none.
func screwKeys(name, about, where, begin string, p *Screws, in, mm string) key {
	some := func() bool { return p.Count > 0 }
	written := func(k key) key {
		if begin != "" {
			k.begins = k.sample
		}
		return k
	}
	return section(name, about,
		count("count", &p.Count, where).within(0, 60).orWord("0", notSaid).lead("").eg("8", "8").begin(begin, begin),
		written(length("diameter", &p.Diameter, "of the shank").in(0.08, 0.75).survey("0.19in", "5mm").only(some)),
		written(length("length", &p.Length, "overall").in(0.5, 16).survey(in, mm).only(some)),
	)
}

// plyKeys is the list of plies. One written as a plain length is lumber.
func plyKeys(s *Spec) key {
	b := &s.Blocks
	grow := func(n int) { b.Plies, b.Material = make([]unit.Length, n), make([]string, n) }
	return key{name: "plies", about: "thickness of each, from the sheathing outward", kind: aList, why: usual,
		follow: func() {
			grow(2)
			for i := range b.Plies {
				b.Plies[i], b.Material[i] = pick(s, true, 1.5, 45, 0, 0), "lumber"
			}
		},
		series: &series{
			grow:  grow,
			count: func() int { return len(b.Plies) },
			each: func(i int) []key {
				return []key{
					length("thickness", &b.Plies[i], "of the ply").in(0.2, 8).survey("1 1/2in", "45mm"),
					word("material", &b.Material[i], "of the ply", "lumber", "plywood").orWord("lumber", ""),
				}
			},
			short: "thickness",
			rows:  func() []pair { return []pair{{"1 1/2in", "45mm"}, {"1 1/2in", "45mm"}} },
		},
	}
}

func fastenerKeys(f *Fasteners) []key {
	set := func(name, about string, p **Set) key {
		return key{name: name, about: about, kind: anOption, option: &option{
			open: func() []key { *p = new(Set); return setKeys(*p) },
			keys: func() []key {
				if *p == nil {
					return nil
				}
				return setKeys(*p)
			},
		}}
	}
	return []key{
		set("through", "ledger to rim in one", &f.Through),
		set("to_rim", "block to rim, with to_block", &f.ToRim),
		set("to_block", "ledger to block, with to_rim", &f.ToBlock),
	}
}

func setKeys(f *Set) []key {
	evaluated := func() bool { return f.Kind == "evaluated" }
	rows := lengthList("rows", &f.Rows, "below the top of the ledger, or of the block for to_rim", 0, 24)
	rows.need, rows.begins = true, pair{"[2 13/16in, 6 5/8in]", "[71mm, 175mm]"}
	rows.series.rows = func() []pair { return []pair{{"2 13/16in", "71mm"}, {"6 5/8in", "175mm"}} }
	return []key{
		word("kind", &f.Kind, "evaluated: by the values of a report", "bolt", "lag", "screw", "evaluated").orWord("bolt", usual),
		value(aDiameter, "diameter", field[unit.Length]{&f.Diameter}, "nominal").in(0.15, 1.5).survey("5/8in", "M16").begin("5/8in", "M16"),
		length("length", &f.Length, "under the head").in(0, 48).orAuto("the shortest stock length that fits"),
		rows,
		count("columns", &f.Columns, "along the wall").within(1, 8).orWord("1", usual).begin("2", "2"),
		length("column_spacing", &f.ColumnStep, "column to column").in(0, 24).
			from(func() { f.ColumnStep = 4 * f.Diameter }, "2 1/2in", "64mm", "4D, NDS 2018 Table 12.5.1 from memory, confirm").begin("2 3/4in", "85mm").
			only(func() bool { return f.Columns > 1 }),
		length("hole", &f.Hole, "through the wood").in(0.1, 2).
			from(func() { f.Hole = usualHole(f) }, "11/16in", "17.5mm", "clearance for a bolt, the shank for a screw"),
		section("washer", "under head and nut",
			word("kind", &f.Washer.Kind, "of washer", "round", "plate").orWord("plate", judged),
			length("size", &f.Washer.Size, "diameter, or side of the plate").in(0.25, 8).
				from(func() { f.Washer.Size, _ = usualWasher(f) }, "3in", "80mm", "the usual one of the kind").begin("2 1/2in", "80mm"),
			length("thickness", &f.Washer.Thickness, "of the washer").in(0.02, 1).
				from(func() { _, f.Washer.Thickness = usualWasher(f) }, "1/4in", "6mm", "the usual one of the kind"),
		),
		text("grade", &f.Grade, "of the steel").from(func() { f.Grade = usualSteel(f) }, "A307", "4.6", "the plainest"),
		text("coating", &f.Coating, "against rust").orWord("hot-dip galvanized", "IRC 2021 R317.3: in treated wood"),
		length("thread", &f.Thread, "length of thread").in(0, 24).orAuto("by the standard of the bolt"),
		{
			name: "yield", about: "bending yield of the steel", kind: aStress, number: field[unit.Pressure]{&f.Yield},
			hi: 250000 * psi, ranged: true, auto: true, usual: pair{"auto", "auto"}, why: "by kind and diameter",
		},
		force("lateral", &f.Lateral, "of the report: allowable at this stand-off, each").within(0, 20000*lb).or("0lb", "0kN", careful).only(evaluated),
		force("withdrawal", &f.Withdrawal, "of the report: allowable, each").within(0, 20000*lb).or("0lb", "0kN", careful).only(evaluated),
		text("report", &f.Report, "what those values rest on").eg("report no. 1234, table 2", "report no. 1234, table 2"),
	}
}

// metric reports whether the set is of metric size.
func (f *Set) metric() bool {
	b, ok := stock.BoltOf(f.Diameter)
	return ok && b.Metric
}

// usualHole is D + 1/16 in, d + 1.5 mm for a bolt; the shank for everything else.
func usualHole(f *Set) unit.Length {
	switch {
	case f.Kind != "bolt":
		return f.Diameter
	case f.metric():
		return f.Diameter + 1.5
	}
	return f.Diameter + unit.Inch/16
}

// usualWasher is the common plate, or the wide round washer of the bolt's standard.
func usualWasher(f *Set) (size, thickness unit.Length) {
	b, ok := stock.BoltOf(f.Diameter)
	if f.Washer.Kind == "plate" || !ok {
		return b.PlateWasher()
	}
	all := b.Washers()
	w := all[len(all)-1]
	return w.Outside, w.Thickness
}

func usualSteel(f *Set) string {
	return either(f.metric(), "4.6", "A307")
}
