package heat

import "slices"

// Heading is the way heat runs through a layer of air.
type Heading int

// Headings of the heat.
const (
	Sideways Heading = iota
	Upward
	Downward
)

// Thicknesses of air layers, mm, and their thermal resistances, m2 K/W: ISO 6946:2017 table 8,
// unventilated, both faces of high emissivity; from memory, confirm.
var (
	airThickness = [...]float64{0, 5, 7, 10, 15, 25, 50, 100, 300}
	airSideways  = [...]float64{0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18}
	airUpward    = [...]float64{0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16}
	airDownward  = [...]float64{0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23}
)

// AirResistance returns the thermal resistance, m2 K/W, of a closed layer of air so many millimetres
// thick along the flow, between the values of the table in straight lines. It is ok from 0 to 300 mm.
func AirResistance(thickness float64, h Heading) (r float64, ok bool) {
	if !within(thickness, 0, 300) {
		return 0, false
	}
	table := map[Heading][9]float64{Sideways: airSideways, Upward: airUpward, Downward: airDownward}[h]
	n, exact := slices.BinarySearch(airThickness[:], thickness)
	if exact {
		return table[n], true
	}
	part := (thickness - airThickness[n-1]) / (airThickness[n] - airThickness[n-1])
	return table[n-1] + part*(table[n]-table[n-1]), true
}

// AirLayer returns the material that stands for a closed layer of air, so many millimetres thick along
// the flow: its equivalent conductivity is thickness over resistance, ISO 6946:2017. It is ok above 0
// up to 300 mm. Air that is vented to the outside is no material but a box of that environment.
func AirLayer(name string, thickness float64, h Heading) (m Material, ok bool) {
	r, ok := AirResistance(thickness, h)
	if !ok || r == 0 {
		return Material{}, false
	}
	return Isotropic(name, thickness/1e3/r), true
}
