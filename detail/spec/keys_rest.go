package spec

import (
	"standclear/detail/stock"
	"standclear/detail/unit"
)

func waterKeys(s *Spec) []key {
	w := &s.Water
	f := &w.Flashing
	around := func() unit.Length { return 2 * pick(s, true, 3.5, 90, 0, 0) }
	return []key{
		section("flashing", "the cap over the ledger",
			length("up", &f.Up, "upstand on the wall").in(0.5, 24).or("4in", "100mm", usual),
			length("out", &f.Out, "over the ledger").in(0.5, 24).
				from(func() { f.Out = s.flashingOut() }, "2 3/8in", "70mm", "past the face of the ledger, 2 in or 55 mm at least").last(),
			length("drip", &f.Drip, "down the face").in(0, 6).or("3/4in", "20mm", usual),
			length("thickness", &f.Thickness, "of the metal").in(0.005, 0.25).or("0.024in", "0.6mm", usual),
			text("material", &f.Material, "as printed").orWord("galvanized steel", usual),
			word("lap", &f.Lap, "which layer laps over its upstand; outside: none does", "cladding", "wrb", "outside").orWord("cladding", "judgement: keeps the cavity open over the gap"),
			length("end_dam", &f.EndDam, "turned up at the ends").in(0, 6).or("1in", "25mm", usual),
		),
		section("patch", "membrane on the sheathing behind each block",
			length("width", &w.Patch.Width, "of the patch").in(2, 72).
				from(func() { w.Patch.Width = s.Blocks.Width + around() }, "14 3/4in", "400mm", "the block and 3 1/2 in or 90 mm on each side"),
			length("height", &w.Patch.Height, "of the patch").in(2, 72).
				from(func() { w.Patch.Height = s.Blocks.Height + around() }, "16 1/4in", "425mm", "the block and 3 1/2 in or 90 mm on each side"),
			yesNo("under", &w.Patch.Under, "its top edge runs under the barrier above").orWord("yes", usual),
		),
		length("wrap_lap", &w.WrapLap, "block wrap onto the patch").in(0, 12).or("2in", "50mm", usual),
		length("gap_min", &w.GapMin, "clear gap asked for behind the ledger").in(0, 6).
			from(func() { w.GapMin = max(s.cavityDepth(), pick(s, true, 0.375, 10, 0, 0)) }, "3/4in", "28mm", "as the cavity of the cladding, 3/8 in or 10 mm at least"),
		yesNo("screen", &w.Screen, "insect screen at the open ends").orWord("yes", usual),
		value(aShare, "screen_free", field[unit.Percent]{&w.ScreenFree}, "net free share of the screen").within(0, 1).orWord("60%", usual),
	}
}

func doorKeys(s *Spec) key {
	return key{name: "doors", about: "that open onto the deck", kind: aList, series: &series{
		grow:  func(n int) { s.Doors = make([]Door, n) },
		count: func() int { return len(s.Doors) },
		each: func(i int) []key {
			d := &s.Doors[i]
			return []key{
				length("from", &d.From, "left jamb, from x = 0").ft(-20, 120).survey("70in", "1850mm"),
				length("to", &d.To, "right jamb, from x = 0").ft(-20, 120).survey("142in", "3650mm"),
				word("swing", &d.Swing, "of the door", "in", "out", "slide").orWord("in", usual),
				length("threshold", &d.Threshold, "top above the finished floor").in(-6, 24).or("1in", "25mm", usual),
			}
		},
		rows: func() []pair {
			return []pair{{"{from: 70in, to: 142in, swing: in, threshold: 1in}", "{from: 1850mm, to: 3650mm, swing: in, threshold: 25mm}"}}
		},
	}}
}

func obstacleKeys(s *Spec) key {
	return key{name: "obstacles", about: "in the floor or on the wall, that a block must miss", kind: aList, series: &series{
		grow:  func(n int) { s.Obstacles = make([]Obstacle, n) },
		count: func() int { return len(s.Obstacles) },
		each: func(i int) []key {
			o := &s.Obstacles[i]
			return []key{
				word("kind", &o.Kind, "of obstacle", "duct", "pipe", "box", "beam", "other").orWord("other", notSaid),
				text("name", &o.Name, "as printed").eg("SUPPLY DUCT", "SUPPLY DUCT"),
				length("from", &o.From, "left edge, from x = 0").ft(-20, 120).survey("66in", "1675mm"),
				length("to", &o.To, "right edge, from x = 0").ft(-20, 120).survey("80in", "2030mm"),
				yesNo("inside", &o.Inside, "behind the rim, in the way of bolts; else outside, in the way of blocks").orWord("yes", notSaid),
			}
		},
		rows: func() []pair {
			return []pair{{"{kind: duct, name: SUPPLY DUCT, from: 66in, to: 80in, inside: yes}", "{kind: duct, name: SUPPLY DUCT, from: 1675mm, to: 2030mm, inside: yes}"}}
		},
	}}
}

func loadKeys(l *Loads) []key {
	return []key{
		load("dead", &l.Dead, "of the deck itself").within(0, 200*psf).ask("12psf", "0.6kPa"),
		load("live", &l.Live, "of people and things").within(0, 300*psf).ask("40psf", "2kPa"),
		load("snow", &l.Snow, "on the deck").within(0, 500*psf).ask("45psf", "2.15kPa"),
		word("basis", &l.Basis, "which rules name the live load", "IRC", "ASCE").orWord("IRC", usual),
		word("wind", &l.Wind, "is wind or seismic along or off the wall to be resisted here", "yes", "no", "unknown").orWord("unknown", notSaid).ask("no", "no"),
	}
}

func sheetKeys(p *Sheets) []key {
	return []key{
		word("size", &p.Size, "of the paper", stock.SheetNames()...).or("ARCH D", "A2", usual),
		scale("section", &p.Section, "of the sections").eg(`3" = 1'-0"`, "1:5"),
		scale("elevation", &p.Elevation, "of the elevation").eg(`1/2" = 1'-0"`, "1:20"),
		scale("plan", &p.Plan, "of the plan").eg(`1/2" = 1'-0"`, "1:20"),
		scale("shop", &p.Shop, "of the shop drawings").eg(`6" = 1'-0"`, "1:2"),
	}
}

func stockKeys(s *Stock) []key {
	return []key{
		length("length", &s.Length, "of the sticks bought").ft(2, 40).or(`10'-0"`, "4200mm", usual),
		length("kerf", &s.Kerf, "of the saw").in(0, 1).or("1/8in", "4mm", usual),
		length("trim", &s.Trim, "cut off each stick").in(0, 12).or("1/2in", "20mm", usual),
		length("bolt_step", &s.BoltStep, "between stock lengths of bolts").in(0.05, 6).or("1/2in", "10mm", usual),
	}
}

// assumeKeys are judgements: no standard settles them. The audited ones are the careful side.
func assumeKeys(a *Assume) []key {
	share := func(name string, p *unit.Percent, about string) key {
		return value(aShare, name, field[unit.Percent]{p}, about)
	}
	return []key{
		word("lever_arm", &a.LeverArm, "of the couple; foot: the top row less a third of the foot, audited: that or 0.75 of the top row",
			"audited", "foot").orWord("audited", judged),
		share("foot_depth", &a.FootDepth, "foot in bearing, as a share of the block height").within(0.05, 0.5).orWord("25%", judged),
		word("reaction", &a.Reaction, "of one block; solved: the beam alone, audited: with patterns and 1.25 w s",
			"audited", "solved").orWord("audited", judged),
		yesNo("net_section", &a.NetSection, "take the holes out of ledger and rim").orWord("yes", judged),
		yesNo("torsion", &a.Torsion, "count the twist of the ledger by the hangers").orWord("yes", judged),
		value(aFactor, "cap", field[float64]{&a.Cap}, "largest utilisation accepted").within(0.1, 1).orWord("0.9", judged),
		length("max_group", &a.MaxGroup, "greatest spread of rows in wet wood").in(1, 12).or("5in", "125mm", "judgement, after NDS 2018 12.5.1.3"),
		word("rows_in_tension", &a.RowsInTension, "which rows take the pull", "top", "stiffness").orWord("top", judged),
		yesNo("ply_couple", &a.PlyCouple, "a fixed ply may supply a couple to the bolt").orWord("no", judged),
		length("support_slip", &a.SupportSlip, "one support high by this, as a sensitivity").in(0, 0.5).or("1/16in", "1.5mm", judged),
	}
}
