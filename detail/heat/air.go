package heat

// Heading is the way heat runs through a layer of air.
type Heading int

// Headings of the heat.
const (
	Sideways Heading = iota
	Upward
	Downward
)

// airRow is one thickness of an air layer, mm, with its thermal resistances, m2 K/W, by heading.
type airRow struct {
	thickness float64
	r         [3]float64
}

// airTable is ISO 6946:2017 table 8, unventilated, both faces of high emissivity; from memory, confirm.
func airTable() []airRow {
	return []airRow{
		{0, [3]float64{0, 0, 0}},
		{5, [3]float64{Sideways: 0.11, Upward: 0.11, Downward: 0.11}},
		{7, [3]float64{Sideways: 0.13, Upward: 0.13, Downward: 0.13}},
		{10, [3]float64{Sideways: 0.15, Upward: 0.15, Downward: 0.15}},
		{15, [3]float64{Sideways: 0.17, Upward: 0.16, Downward: 0.17}},
		{25, [3]float64{Sideways: 0.18, Upward: 0.16, Downward: 0.19}},
		{50, [3]float64{Sideways: 0.18, Upward: 0.16, Downward: 0.21}},
		{100, [3]float64{Sideways: 0.18, Upward: 0.16, Downward: 0.22}},
		{300, [3]float64{Sideways: 0.18, Upward: 0.16, Downward: 0.23}},
	}
}

// AirResistance returns the thermal resistance, m2 K/W, of a closed layer of air so many millimetres
// thick along the flow, between the values of the table in straight lines. It is ok from 0 to 300 mm.
func AirResistance(thickness float64, h Heading) (r float64, ok bool) {
	if h < Sideways || h > Downward || !within(thickness, 0, 300) {
		return 0, false
	}
	table := airTable()
	n := 1
	for table[n].thickness < thickness {
		n++
	}
	a, b := table[n-1], table[n]
	part := (thickness - a.thickness) / (b.thickness - a.thickness)
	return a.r[h] + part*(b.r[h]-a.r[h]), true
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
