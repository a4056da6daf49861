package strength

import (
	"math"

	"standclear/detail/unit"
)

// LagWithdrawal returns the reference withdrawal value of a lag screw of nominal diameter d in the side
// grain of wood of specific gravity g, per length of thread without the tip. NDS 2018 12.2.1.
func LagWithdrawal(g float64, d unit.Length) unit.LineLoad {
	return perInch(1800 * math.Pow(g, 1.5) * math.Pow(d.Inches(), 0.75))
}

// ScrewWithdrawal is LagWithdrawal for a wood screw. NDS 2018 12.2.2.
func ScrewWithdrawal(g float64, d unit.Length) unit.LineLoad {
	return perInch(2850 * g * g * d.Inches())
}

// HeadPull returns the load at which a round head of diameter head is drawn through wood of specific
// gravity g and thickness t. NDS 2018 12.2.5 (from memory, confirm).
func HeadPull(g float64, head, t unit.Length) unit.Force {
	dh, ts := head.Inches(), math.Min(t.Inches(), 2.5*head.Inches())
	return unit.Force(690*math.Pi*dh*g*g*ts) * unit.Pound
}

// CombinedScrew returns the design value of a lag or wood screw pulled at angle degrees from the wood
// surface, from its withdrawal value over the whole thread and its lateral value. NDS 2018 12.4.1.
func CombinedScrew(withdrawal, lateral unit.Force, angle float64) unit.Force {
	return unit.Force(Hankinson(float64(lateral), float64(withdrawal), angle))
}

func perInch(lb float64) unit.LineLoad {
	return unit.LineLoad(unit.Force(lb)*unit.Pound) / unit.LineLoad(unit.Inch)
}

// BoltLength returns the least length under the head of a bolt of nominal diameter d: the grip, a
// washer at each end, the nut and three threads beyond it. ok is false for a diameter that is not in the
// tables below.
func BoltLength(grip, washer, d unit.Length) (length unit.Length, ok bool) {
	n, ok := nutOf(d)
	if !ok {
		return 0, false
	}
	return grip + 2*washer + unit.Length(n.height+3*n.pitch)*unit.MM, true
}

// nutOf finds the nut of a bolt of diameter d to within 0.02 mm.
func nutOf(d unit.Length) (nut, bool) {
	for _, n := range nuts() {
		if math.Abs(n.d-d.MM()) < 0.02 {
			return n, true
		}
	}
	return nut{}, false
}

// A nut is a hexagon nut: bolt diameter, height and thread pitch in mm.
type nut struct{ d, height, pitch float64 }

// nuts are coarse-thread hexagon nuts: inch sizes by ASME B18.2.2 and B1.1, metric by ISO 4032 and 262
// (from memory, confirm).
func nuts() []nut {
	const in = 25.4
	return []nut{
		{in / 4, in * 7 / 32, in / 20}, {in * 5 / 16, in * 17 / 64, in / 18}, {in * 3 / 8, in * 21 / 64, in / 16},
		{in * 7 / 16, in * 3 / 8, in / 14}, {in / 2, in * 7 / 16, in / 13}, {in * 5 / 8, in * 35 / 64, in / 11},
		{in * 3 / 4, in * 41 / 64, in / 10}, {in * 7 / 8, in * 3 / 4, in / 9}, {in, in * 55 / 64, in / 8},
		{8, 6.8, 1.25}, {10, 8.4, 1.5}, {12, 10.8, 1.75}, {16, 14.8, 2}, {20, 18, 2.5}, {24, 21.5, 3},
	}
}
