package stock

import "standclear/detail/unit"

// SheetSize is a sheet of paper, wide side across.
type SheetSize struct {
	Name          string
	Width, Height unit.Length // Width >= Height
}

// SheetSizes returns the sheets a set may be printed on: architectural and ANSI sizes as printers
// list them (read), A sizes of ISO 216 (from memory, confirm).
func SheetSizes() []SheetSize {
	return []SheetSize{
		{"ARCH A", in(12), in(9)}, {"ARCH B", in(18), in(12)}, {"ARCH C", in(24), in(18)}, {"ARCH D", in(36), in(24)},
		{"ARCH E1", in(42), in(30)}, {"ARCH E", in(48), in(36)},
		{"ANSI A", in(11), in(8.5)}, {"ANSI B", in(17), in(11)}, {"ANSI C", in(22), in(17)}, {"ANSI D", in(34), in(22)},
		{"ANSI E", in(44), in(34)},
		{"A4", 297, 210}, {"A3", 420, 297}, {"A2", 594, 420}, {"A1", 841, 594}, {"A0", 1189, 841},
	}
}

// SheetSizeOf finds a sheet by its name, whatever its case and spaces.
func SheetSizeOf(name string) (SheetSize, bool) {
	for _, s := range SheetSizes() {
		if same(s.Name, name) {
			return s, true
		}
	}
	return SheetSize{}, false
}

// SheetNames returns the names of all sheets.
func SheetNames() []string {
	var names []string
	for _, s := range SheetSizes() {
		names = append(names, s.Name)
	}
	return names
}

// Scale is a drawing scale with what it is usually good for.
type Scale struct {
	Denominator float64
	Text        string // as printed under a view
	Use         string
}

// Scales returns the scales of unit.Scales with their use (common practice, no source).
func Scales(sys unit.System) []Scale {
	var all []Scale
	for _, d := range unit.Scales(sys) {
		all = append(all, Scale{d, unit.ScaleText(d, sys), scaleUse(d)})
	}
	return all
}

func scaleUse(den float64) string {
	switch {
	case den <= 1:
		return "drill template"
	case den <= 2:
		return "block assembly, flashing profile"
	case den <= 5:
		return "section at a block, flashing"
	case den <= 10:
		return "general section, ledger shop drawing"
	case den <= 16:
		return "ledger shop drawing"
	case den <= 24:
		return "elevation, plan at the ledger"
	}
	return "whole deck, key plan"
}
