package unit

// Transmittance returns w, W/(m2 K), as a Quantity.
func Transmittance(w float64) Quantity { return Quantity{w, KTransmittance} }

// Conductance returns w, W/K, as a Quantity.
func Conductance(w float64) Quantity { return Quantity{w, KConductance} }

// LineConductance returns w, W/(m K), as a Quantity.
func LineConductance(w float64) Quantity { return Quantity{w, KLineConductance} }

// Resistance returns r, m2 K/W, as a Quantity.
func Resistance(r float64) Quantity { return Quantity{r, KResistance} }

// Energy returns kWh as a Quantity.
func Energy(kWh float64) Quantity { return Quantity{kWh, KEnergy} }

// What one unit of SI is in inch-pound units: the international Btu, 1055.056 J, and the foot of 0.3048 m.
const (
	btuPerHourF    = 1.895634 // Btu/(h F) in a W/K
	btuPerHourFt2F = 0.176110 // Btu/(h ft2 F) in a W/(m2 K)
	btuPerHourFtF  = 0.577789 // Btu/(h ft F) in a W/(m K)
	hourFt2FPerBtu = 5.678263 // h ft2 F/Btu in a m2 K/W
)
