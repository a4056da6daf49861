package unit

// Transmittance is heat through an area, W/(m2 K): a U-value.
type Transmittance float64

// Conductance is heat through a part, W/K: a point bridge, a whole run.
type Conductance float64

// LineConductance is heat along a line, W/(m K): a line bridge.
type LineConductance float64

// Energy is heat over a time, kWh.
type Energy float64

// Q returns u as a Quantity.
func (u Transmittance) Q() Quantity { return Quantity{float64(u), KTransmittance} }

// Q returns c as a Quantity.
func (c Conductance) Q() Quantity { return Quantity{float64(c), KConductance} }

// Q returns c as a Quantity.
func (c LineConductance) Q() Quantity { return Quantity{float64(c), KLineConductance} }

// Q returns e as a Quantity.
func (e Energy) Q() Quantity { return Quantity{float64(e), KEnergy} }

// What one unit of SI is in inch-pound units: the international Btu, 1055.056 J, and the foot of 0.3048 m.
const (
	btuPerHourF    = 1.895634 // Btu/(h F) in a W/K
	btuPerHourFt2F = 0.176110 // Btu/(h ft2 F) in a W/(m2 K)
	btuPerHourFtF  = 0.577789 // Btu/(h ft F) in a W/(m K)
)
