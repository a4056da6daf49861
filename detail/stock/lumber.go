package stock

import (
	"sync"

	"standclear/detail/unit"
)

// LumberValues are the reference design values of one grade at one depth, for allowable stress design
// at normal load duration, dry, before any adjustment but what CF says.
type LumberValues struct {
	Species, Grade string
	Fb             unit.Pressure // bending, as tabulated
	CF             float64       // size factor on Fb and Ft; 1 where the table has it built in
	Ft             unit.Pressure // tension along the grain, as tabulated
	Fv             unit.Pressure // shear along the grain
	FcPerp         unit.Pressure // bearing across the grain
	E, Emin        unit.Pressure
	G              float64 // specific gravity, oven-dry mass over oven-dry volume
	Source         string  // standard and table; says when it is from memory or a judgement
}

// FbCF returns the tabulated bending value times the size factor.
func (v LumberValues) FbCF() unit.Pressure { return unit.Pressure(v.CF) * v.Fb }

// gradeRow is one grade of one species; Fb and Ft stand for depths of 5 1/2, 7 1/4, 9 1/4, 11 1/4 in.
type gradeRow struct {
	species, grade  string
	fb, ft          [4]float64 // psi
	fv, fcPerp      float64    // psi
	e, emin         float64    // 10^6 psi
	g               float64
	sizeFactorApart bool // CF is not built into fb and ft
	source          string
}

func flat(v float64) [4]float64 { return [4]float64{v, v, v, v} }

// gradeRows is NDS 2018 Supplement, Tables 4A and 4B, 2 to 4 in thick.
var gradeRows = sync.OnceValue(func() []gradeRow {
	const (
		pine  = "NDS 2018 Supplement, Table 4B; read in SI, psi " + memory
		table = "NDS 2018 Supplement, Table 4A; " + memory
	)
	return []gradeRow{
		{
			"southern pine", "No.1", [4]float64{1350, 1250, 1050, 1000}, [4]float64{875, 800, 700, 650},
			175, 565, 1.6, 0.58, 0.55, false, pine,
		},
		{
			"southern pine", "No.2", [4]float64{1000, 925, 800, 750}, [4]float64{600, 550, 475, 450},
			175, 565, 1.4, 0.51, 0.55, false, pine,
		},
		{"hem-fir", "No.1", flat(975), flat(625), 150, 405, 1.5, 0.55, 0.43, true, table},
		{"hem-fir", "No.2", flat(850), flat(525), 150, 405, 1.3, 0.47, 0.43, true, table},
		{"douglas fir-larch", "No.1", flat(1000), flat(675), 180, 625, 1.7, 0.62, 0.50, true, table},
		{"douglas fir-larch", "No.2", flat(900), flat(575), 180, 625, 1.6, 0.58, 0.50, true, table},
		{"spruce-pine-fir", "No.1", flat(875), flat(450), 135, 425, 1.4, 0.51, 0.42, true, table},
		{"spruce-pine-fir", "No.2", flat(875), flat(450), 135, 425, 1.4, 0.51, 0.42, true, table},
	}
})

// Lumber returns the values of a species and grade at a dressed depth.
//
// A depth between two tabulated ones takes the values of the deeper, which are the lower; anything
// under 5 1/2 in takes those of 5 1/2 in. It is false for an unknown species or grade, for a depth
// that is not positive, and past 11 1/4 in, where the tables go on but this one does not.
func Lumber(species, grade string, depth unit.Length) (LumberValues, bool) {
	s, ok := SpeciesOf(species)
	if !ok {
		return LumberValues{}, false
	}
	grade, ok = s.Grade(grade)
	class := depthClass(depth)
	if !ok || class < 0 {
		return LumberValues{}, false
	}
	if s.Key == "european softwood" {
		return c24(class), true
	}
	for _, r := range gradeRows() {
		if r.species == s.Key && r.grade == grade {
			return r.values(class), true
		}
	}
	return LumberValues{}, false
}

// depthClass returns the place of the first tabulated depth that is not less, or -1.
func depthClass(depth unit.Length) int {
	if !(depth > 0) {
		return -1
	}
	for i, d := range []float64{5.5, 7.25, 9.25, 11.25} {
		if depth.Inches() <= d+1e-6 {
			return i
		}
	}
	return -1
}

// sizeFactor is CF of No.1 and No.2 by depth class, NDS 2018 Supplement, Table 4A: 2x6 1.3, 2x8 1.2,
// 2x10 1.1, 2x12 1.0; read.
func sizeFactor(class int) float64 { return [...]float64{1.3, 1.2, 1.1, 1.0}[class] }

func (r gradeRow) values(class int) LumberValues {
	v := LumberValues{
		Species: r.species, Grade: r.grade, CF: 1,
		Fb: psi(r.fb[class]), Ft: psi(r.ft[class]), Fv: psi(r.fv), FcPerp: psi(r.fcPerp),
		E: psi(1e6 * r.e), Emin: psi(1e6 * r.emin), G: r.g, Source: r.source,
	}
	if r.sizeFactorApart {
		v.CF = sizeFactor(class)
	}
	return v
}

func psi(v float64) unit.Pressure { return unit.Pressure(v) * unit.PSI }
