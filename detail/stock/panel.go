package stock

import "standclear/detail/unit"

// Panel is a sheet that lies in the path of the load: sheathing under the foot of a block, a filler
// ply in the block itself.
type Panel struct {
	Key           string // key of Materials
	FcPerp, FcWet unit.Pressure
	G             float64 // equivalent specific gravity for bolts
	Bears         bool    // may take the foot of a block
	Source        string
}

// Panels returns the sheets with known bearing, and those that must not carry any.
func Panels() []Panel {
	soft := "crushes under a foot; " + judged
	return []Panel{
		plywoodPanel(),
		osbPanel(),
		{Key: "gypsum-sheathing", Source: soft},
		{Key: "fibreboard", Source: soft},
		{Key: "wood-fibre", Source: soft},
	}
}

// PanelOf finds a panel by its material key.
func PanelOf(key string) (Panel, bool) {
	for _, p := range Panels() {
		if same(p.Key, key) {
			return p, true
		}
	}
	return Panel{}, false
}

func plywoodPanel() Panel {
	return Panel{
		Key: "plywood", FcPerp: psi(360), FcWet: psi(210), G: 0.42, Bears: true,
		Source: "face bearing 360 psi dry, 210 wet, panel design data; G 0.42, NDS 2018 Table 12.3.3B, grades other than Structural 1; " + memory,
	}
}

func osbPanel() Panel {
	return Panel{
		Key: "osb", FcPerp: psi(360), FcWet: psi(210), G: 0.42, Bears: true,
		Source: "face bearing 360 psi dry, 210 wet, panel design data; G 0.42 where NDS 2018 Table 12.3.3B has 0.50 for thin fasteners only; " + memory,
	}
}
