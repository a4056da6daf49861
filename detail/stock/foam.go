package stock

import "standclear/detail/unit"

// FoamClass is a class of extruded polystyrene by its compressive strength.
type FoamClass struct {
	Name     string
	Strength unit.Pressure // least, at 10 % compression or yield
	Source   string
}

// FoamClasses returns the classes of ASTM C578 (read) and EN 13164 (from memory, confirm), each list
// weak to strong.
func FoamClasses() []FoamClass {
	const astm, en = "ASTM C578; " + read, "EN 13164, level CS(10/Y); " + memory
	return []FoamClass{
		{"C578 Type X", psi(15), astm}, {"C578 Type IV", psi(25), astm}, {"C578 Type VI", psi(40), astm},
		{"C578 Type VII", psi(60), astm}, {"C578 Type V", psi(100), astm},
		{"EN 13164 200", 200 * unit.Kilopascal, en}, {"EN 13164 300", 300 * unit.Kilopascal, en},
		{"EN 13164 500", 500 * unit.Kilopascal, en}, {"EN 13164 700", 700 * unit.Kilopascal, en},
	}
}

// FoamSustained returns what a foam of the given strength may carry for years: a third of it under
// dead load, a fifth under repeated load. Foundation tables of makers (25 psi: 8.3 and 5); read.
func FoamSustained(strength unit.Pressure) (dead, repeated unit.Pressure) {
	return strength / 3, strength / 5
}
