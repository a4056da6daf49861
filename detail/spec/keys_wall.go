package spec

import "standclear/detail/stock"

func wallKeys(s *Spec) []key {
	w := &s.Wall
	c := &w.Cladding
	return []key{
		layerKeys(s),
		word("retarder", &w.Retarder, "vapour retarder on the room side: at most 0.1, 1 or 10 perm by class",
			"class-1", "class-2", "class-3", "none", "unknown").orWord("unknown", notSaid).ask("class-2", "class-2"),
		length("stud_spacing", &w.StudSpacing, "axis to axis").in(8, 48).or("24in", "600mm", usual),
		length("stud_width", &w.StudWidth, "along the wall").in(0.5, 8).or("1 1/2in", "45mm", usual),
		length("stud_first", &w.StudFirst, "axis of the first stud, from x = 0").in(-48, 48).or("0in", "0mm", notSaid),
		section("cladding", "how the siding meets the ledger",
			length("exposure", &c.Exposure, "height of a course, 0 for flat cladding").in(0, 24).or("0in", "0mm", notSaid),
			yesNo("behind_ledger", &c.BehindLedger, "siding runs on behind the ledger").orWord("no", usual),
			length("above_flashing", &c.AboveFlash, "clearance, siding to the flashing below it").in(0, 8).or("1/2in", "12mm", usual),
			length("below_ledger", &c.BelowLedger, "clearance, ledger to the siding below it").in(0, 8).or("1/2in", "12mm", usual),
			length("below_sill", &c.BelowSill, "clearance, sill of a door to the siding below it: the cavity's way out").in(0, 8).or("3/4in", "20mm", usual),
		),
		length("storey", &w.Storey, "height of wall drawn above the floor").in(0, 240).orAuto("as the sheet needs"),
	}
}

// layerKeys is the list of layers, inside to outside. A thickness is never defaulted.
func layerKeys(s *Spec) key {
	w := &s.Wall
	return key{name: "layers", about: "inside to outside", kind: aList, need: true, series: &series{
		grow:  func(n int) { w.Layers = make([]Layer, n) },
		count: func() int { return len(w.Layers) },
		each:  func(i int) []key { return oneLayer(&w.Layers[i]) },
		mark:  func(i, line int) { w.Layers[i].Line = line },
		rows: func() []pair {
			var rows []pair
			for _, l := range usualLayers {
				head := "{role: " + l.role + ", name: " + l.name + ", material: " + l.material + ", thickness: "
				rows = append(rows, pair{head + l.thickness.ip + "}", head + l.thickness.si + "}"})
			}
			return rows
		},
	}}
}

// usualLayers are the samples of a wall, inside to outside.
var usualLayers = []struct {
	role, name, material string
	thickness            pair
}{
	{"finish", "GYPSUM BOARD", "gypsum", pair{"1/2in", "12.5mm"}},
	{"studs", "STUDS AND BATTS", "batt", pair{"5 1/2in", "145mm"}},
	{"sheathing", "PLYWOOD SHEATHING", "plywood", pair{"1/2in", "11mm"}},
	{"wrb", "WEATHER BARRIER", "membrane", pair{"0.02in", "0.5mm"}},
	{"insulation", "MINERAL WOOL BOARD", "mineral-wool", pair{"1 1/2in", "40mm"}},
	{"cavity", "VERTICAL FURRING", "softwood", pair{"3/4in", "28mm"}},
	{"cladding", "LAP SIDING", "softwood", pair{"5/8in", "21mm"}},
}

// usualThickness is the sample for a layer of a role; that of the sheathing for any other.
func usualThickness(role string) pair {
	out := pair{"1/2in", "11mm"}
	for _, l := range usualLayers {
		if l.role == role {
			out = l.thickness
		}
	}
	return out
}

func oneLayer(l *Layer) []key {
	return []key{
		word("role", &l.Role, "what the layer does",
			"finish", "studs", "sheathing", "wrb", "insulation", "cavity", "cladding", "other").survey("sheathing", "sheathing"),
		text("name", &l.Name, "as printed").from(func() { l.Name = materialName(l.Material) }, "PLYWOOD", "PLYWOOD", "name of the material"),
		word("material", &l.Material, "what it is made of", stock.MaterialKeys()...).survey("plywood", "plywood"),
		length("thickness", &l.Thickness, "of the layer").in(0, 24).survey("1/2in", "11mm").like(func() pair { return usualThickness(l.Role) }),
	}
}

func materialName(key string) string {
	m, _ := stock.MaterialOf(key)
	return m.Name
}

func foundationKeys(f *Foundation) []key {
	stands := func() bool { return f.Kind != "none" }
	solid := func() bool { return f.Kind == "concrete" || f.Kind == "masonry" }
	return []key{
		word("kind", &f.Kind, "wall: a storey stands below", "concrete", "masonry", "wall", "none").orWord("none", "not stated: not drawn").lead("").ask("concrete", "concrete"),
		length("thickness", &f.Thickness, "of the foundation wall").in(3, 36).or("8in", "200mm", usual).only(stands),
		section("insulation", "outside, below grade and up to the sill",
			length("thickness", &f.Insulation, "0 for none").in(0, 24).or("0in", "0mm", notSaid).only(solid).lead("").eg("2in", "50mm"),
			word("material", &f.Material, "what it is made of", stock.MaterialKeys()...).orWord("xps", usual).
				only(func() bool { return f.Insulation > 0 }),
		),
		length("drainage_board", &f.Board, "thickness, 0 for none").in(0, 6).or("0in", "0mm", notSaid).only(solid),
		maybeLength("grade", &f.Grade, "level of the ground at the wall where it is lowest").ft(-100, 5).ask("-66in", "-1680mm"),
		maybeLength("grade_high", &f.GradeHigh, "level of the ground where it is highest along the ledger").ft(-100, 5).ask("-60in", "-1530mm"),
	}
}
