package strength

import (
	"math"

	"standclear/detail/unit"
)

// DowelBearing returns the dowel bearing strength of wood of specific gravity g under a dowel of
// nominal diameter d, loaded at angle degrees to the grain, rounded to 50 psi along and across the
// grain as NDS 2018 table 12.3.3 prints it. Below 1/4 in the angle has no effect.
func DowelBearing(g float64, d unit.Length, angle float64) unit.Pressure {
	return bearingAt(g, d, angle, 50)
}

// ExactDowelBearing is DowelBearing by the equations below the table, not rounded.
func ExactDowelBearing(g float64, d unit.Length, angle float64) unit.Pressure {
	return bearingAt(g, d, angle, 0)
}

// bearingAt follows the equations in NDS 2018 12.3.3, table note, and Hankinson's of 12.3.4 between
// the two directions; step is the rounding in psi, 0 for none.
func bearingAt(g float64, d unit.Length, angle, step float64) unit.Pressure {
	if d.Inches() < quarter {
		return unit.Pressure(rounded(16600*math.Pow(g, 1.84), step)) * unit.PSI
	}
	along := rounded(11200*g, step)
	across := rounded(6100*math.Pow(g, 1.45)/math.Sqrt(d.Inches()), step)
	return unit.Pressure(Hankinson(along, across, angle)) * unit.PSI
}

func rounded(v, step float64) float64 {
	if step == 0 {
		return v
	}
	return step * math.Round(v/step)
}

// Hankinson returns the strength at angle degrees to the grain from those along and across it.
func Hankinson(along, across, angle float64) float64 {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	return along * across / (along*sin*sin + across*cos*cos)
}

// Bearing strengths of other materials under a dowel.
const (
	SteelBearing      = 87_000 * unit.PSI // ASTM A36 plate, 1/4 in and thicker; NDS 2018 table 12N note, from memory, confirm
	SheetSteelBearing = 61_850 * unit.PSI // ASTM A653 grade 33; NDS 2018 table 12N note, from memory, confirm
	ConcreteBearing   = 7_500 * unit.PSI  // fc' 2,500 psi and better; NDS 2018 table 12E note
)

// A thread is one size of screw: nominal and root diameter, and for lags the length of the tapered
// tip, in inches.
type thread struct{ nominal, root, tip float64 }

// lagThreads are full-body lag screws, NDS 2018 appendix L2 (from memory, confirm).
func lagThreads() []thread {
	return []thread{
		{0.25, 0.173, 5. / 32}, {0.3125, 0.227, 3. / 16}, {0.375, 0.265, 7. / 32}, {0.4375, 0.328, 9. / 32},
		{0.5, 0.371, 5. / 16}, {0.625, 0.471, 13. / 32}, {0.75, 0.579, 0.5}, {0.875, 0.683, 0.594}, {1, 0.780, 0.6875},
	}
}

// screwThreads are wood screws No. 6 to No. 24, NDS 2018 appendix L3 (from memory, confirm); the tip
// is taken as twice the diameter.
func screwThreads() []thread {
	return []thread{
		{0.138, 0.113, 0.276}, {0.151, 0.122, 0.302}, {0.164, 0.131, 0.328}, {0.177, 0.142, 0.354},
		{0.190, 0.152, 0.380}, {0.216, 0.171, 0.432}, {0.242, 0.196, 0.484}, {0.268, 0.209, 0.536},
		{0.294, 0.232, 0.588}, {0.320, 0.255, 0.640}, {0.372, 0.298, 0.744},
	}
}

// threadOf returns the thread of a screw of nominal diameter d; ok is false when no listed size is
// within 0.01 in.
func threadOf(kind Kind, d unit.Length) (t thread, ok bool) {
	list := lagThreads()
	if kind == Screw {
		list = screwThreads()
	}
	for _, t := range list {
		if math.Abs(t.nominal-d.Inches()) < 0.01 {
			return t, true
		}
	}
	return thread{}, false
}

// DowelOf returns the steel of a fastener of nominal diameter d. A bolt bears on its full diameter, a
// lag or wood screw on its root; fyb of 0 takes the value by kind and diameter. ok is false for a size
// no table lists: bolts over 1 in or under 1/4 in, lags and screws of unlisted diameter.
func DowelOf(kind Kind, d unit.Length, fyb unit.Pressure) (dowel Dowel, ok bool) {
	if fyb == 0 {
		fyb = bendingYield(kind, d.Inches())
	}
	dowel = Dowel{Kind: kind, Nominal: d, Root: d, Fyb: fyb}
	if kind == Bolt {
		return dowel, d.Inches() > quarter && d.Inches() < 1.001
	}
	t, ok := threadOf(kind, d)
	dowel.Root = unit.Length(t.root) * unit.Inch
	return dowel, ok
}

// bendingYield returns Fyb in psi for a nominal diameter in inches. NDS 2018 appendix I and the notes
// of tables 12A, 12J, 12L (from memory, confirm).
func bendingYield(kind Kind, d float64) unit.Pressure {
	steps := []struct{ upto, psi float64 }{{0.28, 70_000}, {0.33, 60_000}}
	switch kind {
	case Bolt:
		steps = nil
	case Screw:
		steps = []struct{ upto, psi float64 }{{0.142, 100_000}, {0.177, 90_000}, {0.236, 80_000}, {0.273, 70_000}, {0.344,
			60_000}}
	}
	for _, s := range steps {
		if d <= s.upto {
			return unit.Pressure(s.psi) * unit.PSI
		}
	}
	return 45_000 * unit.PSI
}
