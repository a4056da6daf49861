package strength

import (
	"fmt"

	"standclear/detail/unit"
)

const in = unit.Inch

func psfp(v float64) *unit.Pressure { p := unit.Pressure(v) * unit.PSF; return &p }
func psip(v float64) *unit.Pressure { p := unit.Pressure(v) * unit.PSI; return &p }

// lengths turns inches into lengths.
func lengths(v ...float64) []unit.Length {
	var out []unit.Length
	for _, x := range v {
		out = append(out, unit.Length(x)*in)
	}
	return out
}

// marks places blocks at x inches and names them B1, B2, ...
func marks(x ...float64) []Place {
	var out []Place
	for i, v := range x {
		out = append(out, Place{fmt.Sprintf("B%d", i+1), unit.Length(v) * in})
	}
	return out
}

// pine is Southern Pine No.2 with Fb of the given size, psi. NDS 2018 Supplement table 4B.
func pine(fb float64) Lumber {
	return Lumber{Name: "Southern Pine No.2", Fb: unit.Pressure(fb) * unit.PSI, Fv: 175 * unit.PSI, FcPerp: 565 * unit.PSI, E: 1.4e6 * unit.PSI, G: 0.55}
}

// hemFir is Hem-Fir No.2, 2x10. NDS 2018 Supplement table 4A (from memory, confirm).
func hemFir() Lumber {
	return Lumber{Name: "Hem-Fir No.2", Fb: 850 * unit.PSI, Fv: 150 * unit.PSI, FcPerp: 405 * unit.PSI, E: 1.3e6 * unit.PSI, G: 0.43, CF: 1.1}
}

func pinePly(t float64) Ply {
	return Ply{Thickness: unit.Length(t) * in, G: 0.55, FcPerp: 565 * unit.PSI, E: 1.4e6 * unit.PSI}
}

// dryWet is wood fastened dry that is wet in service.
var dryWet = Moisture{Dry, Wet}

// scenarioA is the padded block of the hand calculation in testdata/scenario_a.txt: 30 ft of ledger,
// eight blocks, six 3/4 in bolts each, with every assumption in its plain reading.
func scenarioA() Model {
	var x []float64
	for i := range 8 {
		x = append(x, 7+float64(i)*346/7)
	}
	return Model{
		Use:    Use{Support: Posts, AboveGrade: ptr(6 * unit.Foot), Seismic: "low", Lateral: No, Above: OpenSky},
		Loads:  Loads{Dead: psfp(10), Live: psfp(40), Snow: psfp(0), GroundSnow: psfp(0)},
		Joists: Joists{Span: 10 * unit.Foot, Spacing: 16 * in},
		Ledger: Ledger{Wood: pine(800), Moisture: dryWet, Length: 30 * unit.Foot, Thickness: 1.5 * in, Top: 0, Bottom: -9.25 * in},
		Blocks: Blocks{At: marks(x...), Wood: pine(800), Moisture: dryWet, Width: 14 * in, Top: 0, TopAtWall: 0, Bottom: -9.25 * in,
			Plies: []Ply{pinePly(1.5), pinePly(1.5)}, Pad: Pad{Thickness: 1.5 * in, Strength: psip(25), After: 1}, LedgerScrews: PlyScrews{10, 0.19 * in, 3 * in}},
		Sheathing:   Sheathing{Thickness: 0.5 * in, FcPerp: 565 * unit.PSI, Structural: true}, // the hand calculation leaves sheathing out
		Rim:         Rim{Kind: SawnRim, Wood: hemFir(), Thickness: 1.5 * in, Top: 0, Bottom: -9.25 * in, Service: Dry, Bearing: OnPlate},
		HouseJoists: HouseJoists{Kind: SawnJoist, Spacing: 16 * in},
		Plate:       Plate{Thickness: 1.5 * in, Width: 5.5 * in, FcPerp: 425 * unit.PSI},
		Fasteners: Fasteners{Through: &Set{Kind: Bolt, Diameter: 0.75 * in, Rows: lengths(-3, -6.25), Columns: lengths(-4, 0, 4),
			Hole: 13. / 16 * in, Washer: Washer{Size: 3 * in, Thickness: 0.25 * in}}},
		Assume: Assume{LeverArm: Plain, Reaction: Plain, GrossSection: true, NoTorsion: true, Cap: 1},
	}
}

func ptr[T any](v T) *T { return &v }

// scenarioB is the solid block of the hand calculation in testdata/scenario_b.txt.
func scenarioB() Model {
	return Model{
		Use:    Use{Support: Posts, AboveGrade: ptr(6 * unit.Foot), Seismic: "low", Lateral: No, Above: OpenSky},
		Loads:  Loads{Dead: psfp(12), Live: psfp(40), Snow: psfp(30), GroundSnow: psfp(30)},
		Joists: Joists{Span: 11 * unit.Foot, Spacing: 16 * in, Seat: 2 * in, Hanger: 700 * unit.Pound},
		Ledger: Ledger{Wood: pine(800), Moisture: dryWet, Length: 60 * in, Thickness: 1.5 * in, Top: 0, Bottom: -9.25 * in},
		Blocks: Blocks{At: marks(8, 30, 52), Wood: pine(800), Moisture: dryWet, Width: 9 * in, Top: -0.375 * in, TopAtWall: 0, Bottom: -9.25 * in,
			Plies: []Ply{pinePly(1.5), pinePly(1.5)}, PliesFastened: true, PlyScrews: PlyScrews{20, 0.19 * in, 3 * in}},
		Sheathing:   Sheathing{Thickness: 0.5 * in, Structural: true},
		Rim:         Rim{Kind: SawnRim, Wood: hemFir(), Thickness: 1.5 * in, Top: 0, Bottom: -9.25 * in, Service: Dry, Bearing: OnPlate},
		HouseJoists: HouseJoists{Kind: SawnJoist, Spacing: 16 * in, At: lengths(0, 16, 22, 38, 44, 60), Flange: 1.5 * in},
		Backing: Backing{Kind: CarriedBacking, Wood: hemFir(), Thickness: 1.5 * in, Fixing: 600 * unit.Pound,
			Pieces: []Span{{0.75 * in, 15.25 * in}, {22.75 * in, 37.25 * in}, {44.75 * in, 59.25 * in}}},
		Plate: Plate{Thickness: 1.5 * in, Width: 5.5 * in, FcPerp: 405 * unit.PSI},
		Fasteners: Fasteners{Through: &Set{Kind: Bolt, Diameter: 0.625 * in, Length: 9.5 * in, Thread: 1.75 * in, Rows: lengths(-3, -6.375), Columns: lengths(-1.75, 1.75),
			Hole: 11. / 16 * in, Washer: Washer{Size: 3 * in, Thickness: 0.25 * in}}},
		Tie: Tie{Kind: Strap, Rating: 750 * unit.Pound, At: lengths(0.75, 15.25, 22.75, 37.25, 44.75, 59.25), Height: -0.75 * in, Lateral: Lateral{2, 1500 * unit.Pound, 18 * in}},
	}
}
