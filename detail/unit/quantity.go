package unit

// Kind says what a Quantity measures, and so how it prints.
type Kind int

// The kinds of quantity a check can hold.
const (
	Pure              Kind = iota // ratio or factor, no unit
	Count                         // whole number
	KLength                       // mm / in
	KArea                         // mm2 / in2
	KSection                      // mm3 / in3
	KInertia                      // mm4 / in4
	KForce                        // N, kN / lb
	KMoment                       // N mm, kN m / lb-in
	KStress                       // MPa / psi
	KAreaLoad                     // kPa (kN/m2) / psf
	KLineLoad                     // kN/m / plf
	KTemp                         // degrees C / F
	KAngle                        // degrees
	KSlope                        // 1:n
	KPercent                      // per cent
	KForcePerLength               // N/mm / lb/in: withdrawal, slip modulus
	KResistance                   // m2 K/W / h ft2 F/Btu: thermal resistance of an area
	KTransmittance                // W/(m2 K) / Btu/(h ft2 F)
	KFreeArea                     // mm2/m / in2/ft: openings along a wall
	KDayMass                      // g/day / oz/day: water dried
	KDayMassPerLength             // g/(m day) / oz/(ft day): water along a wall
	KConductance                  // W/K / Btu/(h F)
	KLineConductance              // W/(m K) / Btu/(h ft F)
	KEnergy                       // kWh in both
)

// Quantity is a number with what it measures; V is in the SI base of its type in this package
// (mm, N, N mm, Pa, N/mm, degrees C, m2 K/W, mm2/m, g/day).
type Quantity struct {
	V    float64
	Kind Kind
}

// Q returns l as a Quantity.
func (l Length) Q() Quantity { return Quantity{float64(l), KLength} }

// Q returns f as a Quantity.
func (f Force) Q() Quantity { return Quantity{float64(f), KForce} }

// Q returns m as a Quantity.
func (m Moment) Q() Quantity { return Quantity{float64(m), KMoment} }

// Stress returns p as a stress.
func (p Pressure) Stress() Quantity { return Quantity{float64(p), KStress} }

// AreaLoad returns p as a load on an area.
func (p Pressure) AreaLoad() Quantity { return Quantity{float64(p), KAreaLoad} }

// Q returns w as a Quantity.
func (w LineLoad) Q() Quantity { return Quantity{float64(w), KLineLoad} }

// Q returns t as a Quantity.
func (t Temp) Q() Quantity { return Quantity{float64(t), KTemp} }

// Q returns s as a Quantity.
func (s Slope) Q() Quantity { return Quantity{float64(s), KSlope} }

// Q returns p as a Quantity.
func (p Percent) Q() Quantity { return Quantity{float64(p), KPercent} }

// Q returns r as a Quantity.
func (r Resistance) Q() Quantity { return Quantity{float64(r), KResistance} }

// Ratio returns a pure number as a Quantity.
func Ratio(v float64) Quantity { return Quantity{v, Pure} }

// Number returns a count as a Quantity.
func Number(n int) Quantity { return Quantity{float64(n), Count} }
