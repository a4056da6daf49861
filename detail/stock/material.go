package stock

import (
	"slices"
	"sync"

	"standclear/detail/unit"
)

// Material is what a layer is made of, for heat flow and for its mark in a cut.
type Material struct {
	Key     string // as the project file writes it
	Name    string // as printed when the file gives no name
	Across  unit.Conductivity
	Along   unit.Conductivity // along the grain of wood; equal to Across for everything else
	Density float64           // kg/m3
	Vapour  string            // how it lets water vapour through, for the notes
	Hatch   string            // kind of mark in a cut: lumber, plywood, osb, foam, fibre, ...
	Source  string            // of the conductivity; says when it is from memory
}

// MaterialOf finds a material by its key.
func MaterialOf(key string) (Material, bool) {
	for _, m := range materials() {
		if same(m.Key, key) {
			return m, true
		}
	}
	return Material{}, false
}

// MaterialKeys returns the names a layer's material may have in the project file.
func MaterialKeys() []string { return slices.Clone(materialKeys()) }

// Materials returns every material. Conductivities are design values near 10 C, dry to 12 % moisture;
// gypsum is the ISO set (0.25), not the ASHRAE one (0.16). Vapour notes are common practice, no source.
func Materials() []Material { return slices.Clone(materials()) }

// materials is made once and never changed.
var materials = sync.OnceValue(func() []Material {
	return append(woods(), append(insulations(), others()...)...)
})

var materialKeys = sync.OnceValue(func() []string {
	var keys []string
	for _, m := range materials() {
		keys = append(keys, m.Key)
	}
	return keys
})

// even returns a material that conducts alike in every direction.
func even(key, name string, k unit.Conductivity, density float64, vapour, hatch, source string) Material {
	return Material{key, name, k, k, density, vapour, hatch, source}
}

// woods. Along the grain the Wood Handbook has 1.5 to 2.8 times the value across, 1.8 in the mean:
// 0.23 for softwood; read. The same 1.8 is used in the plane of veneers and strands (judgement).
func woods() []Material {
	const moderate = "slows vapour, more open when damp"
	return []Material{
		{"softwood", "SOFTWOOD", 0.13, 0.23, 500, moderate, "lumber", "ISO 10456 reprint, 500 kg/m3; along: Wood Handbook ch. 4; " + read},
		{"hardwood", "HARDWOOD", 0.18, 0.32, 700, moderate, "lumber", "ISO 10456:2007 Table 3, 700 kg/m3; " + memory},
		{"lsl", "LAMINATED STRAND LUMBER", 0.13, 0.23, 600, moderate, "lumber", "as a wood panel of its density, ISO 10456; " + memory},
		{"lvl", "LAMINATED VENEER LUMBER", 0.13, 0.23, 600, moderate, "lumber", "as a wood panel of its density, ISO 10456; " + memory},
		even("plywood", "PLYWOOD", 0.13, 500, "slows vapour, more open when damp", "plywood", "ISO 10456:2007 Table 3, 500 kg/m3; "+memory),
		even("osb", "OSB", 0.13, 600, "slows vapour", "osb", "design value to ISO 10456; "+read),
		even("fibreboard", "FIBREBOARD SHEATHING", 0.055, 290, "vapour open", "fibre", "ASHRAE Handbook of Fundamentals 2005, ch. 25; "+read),
	}
}

func insulations() []Material {
	const open, closed = "vapour open", "nearly vapour tight"
	return []Material{
		even("cellulose", "CELLULOSE, DENSE", 0.040, 55, open, "batt", "ASHRAE Handbook of Fundamentals, ch. 26, 0.039 to 0.046; "+memory),
		even("batt", "MINERAL FIBRE BATT", 0.038, 19, open, "batt", "ASHRAE Handbook of Fundamentals 2005, 140 mm batt of R-21; "+read),
		even("wood-fibre", "WOOD-FIBRE BOARD", 0.043, 180, open, "fibre", "EN 13171, declared 0.038 to 0.048; "+memory),
		even("mineral-wool", "MINERAL WOOL BOARD", 0.036, 100, open, "fibre", "ASHRAE Handbook of Fundamentals 2017 p. 26.8, 0.033 to 0.036; "+read),
		even("glass-fibre", "GLASS FIBRE BOARD", 0.036, 64, open, "fibre", "ASHRAE Handbook of Fundamentals 2005; "+read),
		even("xps", "XPS FOAM", 0.035, 30, closed, "foam", "EN 13164 declared, long term; ASHRAE Handbook of Fundamentals 2017 p. 26.8; "+read),
		even("eps", "EPS FOAM", 0.037, 16, "slows vapour", "foam", "ASHRAE Handbook of Fundamentals 2005, 16 kg/m3; "+read),
		even("polyiso", "POLYISO FOAM", 0.032, 32, closed, "foam", "at -4 C mean, about R-4.5 per inch, for winter design; "+read),
	}
}

func others() []Material {
	const tight = "vapour tight"
	return []Material{
		even("gypsum", "GYPSUM BOARD", 0.25, 800, "vapour open unless painted", "gypsum", "ISO 10456, 0.25; "+read),
		even("gypsum-sheathing", "GYPSUM SHEATHING", 0.25, 900, "vapour open", "gypsum", "ISO 10456, 0.25; "+memory),
		even("membrane", "MEMBRANE", 0.25, 1150, "as its maker states", "membrane", "ISO 10456 Table 3, EPDM 0.25, butyl 0.24; "+memory),
		even("cement-board", "CEMENT BOARD", 0.35, 1300, "slows vapour", "cladding", "common practice, no source; "+memory),
		even("stucco", "CEMENT PLASTER", 0.72, 1856, "slows vapour", "masonry", "ASHRAE Handbook of Fundamentals 2005; "+read),
		even("concrete", "CONCRETE", 2.0, 2400, "slows vapour", "concrete", "ISO 10456 Table 3, 2400 kg/m3; "+memory),
		even("masonry", "CONCRETE MASONRY", 1.0, 2000, "slows vapour", "masonry", "common practice, no source; "+memory),
		even("brick", "BRICK", 0.9, 1900, "slows vapour", "masonry", "common practice, no source; "+memory),
		even("steel", "STEEL", 50, 7800, tight, "steel", "ISO 10456 reprint; zinc coat ignored; "+read),
		even("stainless", "STAINLESS STEEL", 17, 7900, tight, "steel", "ISO 10456 reprint; "+read),
		even("aluminium", "ALUMINIUM", 160, 2800, tight, "steel", "ISO 10456 reprint; "+read),
		even("pvc", "PVC", 0.17, 1390, tight, "cladding", "ISO 10456 reprint; "+read),
		even("air", "AIR", 0.025, 1.2, "vapour open", "air", "still air; an air layer goes by its resistance, ISO 6946; "+memory),
		even("earth", "EARTH", 2.0, 2000, "damp", "earth", "ISO 13370, sand or gravel 2.0; "+memory),
	}
}
