// Package unit holds the quantities of the job as types: a number always says its unit.
//
// Each type is held in one SI-based unit, named in its comment, and prints in either system.
//
//	cover := 1.5 * unit.Inch
//	fmt.Println(cover.Text(unit.IP), cover.Text(unit.SI)) // 1 1/2" 38.1 mm
package unit

// System is the pair of unit systems a project is written and printed in.
type System int

// IP prints inches, pounds, degrees Fahrenheit; SI prints millimetres, kilonewtons, degrees Celsius.
const (
	IP System = iota
	SI
)

// Length is a distance in millimetres.
type Length float64

// Length units.
const (
	MM    Length = 1
	Metre        = 1000 * MM
	Inch         = 25.4 * MM
	Foot         = 12 * Inch
)

// MM returns l in millimetres.
func (l Length) MM() float64 { return float64(l) }

// Inches returns l in inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Feet returns l in feet.
func (l Length) Feet() float64 { return float64(l / Foot) }

// Force is a force in newtons.
type Force float64

// Force units. The pound-force is 0.45359237 kg at 9.80665 m/s2, exactly.
const (
	Newton     Force = 1
	Kilonewton       = 1000 * Newton
	Pound            = 0.45359237 * 9.80665 * Newton
)

// Pounds returns f in pounds-force.
func (f Force) Pounds() float64 { return float64(f / Pound) }

// Newtons returns f in newtons.
func (f Force) Newtons() float64 { return float64(f) }

// Moment is a moment of force in newton millimetres.
type Moment float64

// PoundInch is one pound-force at one inch.
const PoundInch = Moment(Pound) * Moment(Inch)

// PoundInches returns m in pound-inches.
func (m Moment) PoundInches() float64 { return float64(m / PoundInch) }

// Pressure is a stress or an area load in pascals.
type Pressure float64

// Pressure units.
const (
	Pascal     Pressure = 1
	Kilopascal          = 1000 * Pascal
	Megapascal          = 1e6 * Pascal
	PSI                 = Pressure(Pound) / (0.0254 * 0.0254)
	PSF                 = PSI / 144
)

// PSI returns p in pounds per square inch.
func (p Pressure) PSI() float64 { return float64(p / PSI) }

// PSF returns p in pounds per square foot.
func (p Pressure) PSF() float64 { return float64(p / PSF) }

// MPa returns p in newtons per square millimetre.
func (p Pressure) MPa() float64 { return float64(p / Megapascal) }

// LineLoad is a load per length in newtons per millimetre (the same number as kN/m).
type LineLoad float64

// PLF is one pound-force per foot.
const PLF = LineLoad(Pound) / LineLoad(Foot)

// PLF returns w in pounds per foot.
func (w LineLoad) PLF() float64 { return float64(w / PLF) }

// Temp is a temperature in degrees Celsius.
type Temp float64

// Fahrenheit returns t in degrees Fahrenheit.
func (t Temp) Fahrenheit() float64 { return float64(t)*9/5 + 32 }

// DegreeDays is a heating sum in kelvin days.
type DegreeDays float64

// FahrenheitDays returns d in degree-Fahrenheit days.
func (d DegreeDays) FahrenheitDays() float64 { return float64(d) * 9 / 5 }

// Speed is a speed in metres per second.
type Speed float64

// MPH is one mile per hour.
const MPH Speed = 0.44704

// MPH returns v in miles per hour.
func (v Speed) MPH() float64 { return float64(v / MPH) }

// Conductivity is a thermal conductivity in W/(m K).
type Conductivity float64

// Resistance is the thermal resistance of an area in m2 K/W.
type Resistance float64

// RValue returns r in h ft2 F/Btu, of which there are 5.678263 to one m2 K/W.
func (r Resistance) RValue() float64 { return float64(r) * 5.678263 }

// Slope is a fall as rise over run: 0.125 is 1:8.
type Slope float64

// Percent is a share: 0.5 is 50 %.
type Percent float64
