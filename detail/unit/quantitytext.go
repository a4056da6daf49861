package unit

import (
	"math"
	"strconv"
)

// In returns the quantity as a number in the unit a reader of sys expects, and that unit in plain
// ASCII; the unit is "" for a pure number, a count and a slope (rise over run).
func (q Quantity) In(sys System) (value float64, unit string) {
	if sys == SI {
		return q.metric()
	}
	switch v := q.V; q.Kind {
	case KLength:
		return v / 25.4, "in"
	case KArea:
		return v / (25.4 * 25.4), "in2"
	case KSection:
		return v / (25.4 * 25.4 * 25.4), "in3"
	case KInertia:
		return v / (25.4 * 25.4 * 25.4 * 25.4), "in4"
	case KForce:
		return Force(v).Pounds(), "lb"
	case KMoment:
		return Moment(v).PoundInches(), "lb-in"
	case KStress:
		return Pressure(v).PSI(), "psi"
	case KAreaLoad:
		return Pressure(v).PSF(), "psf"
	case KLineLoad:
		return LineLoad(v).PLF(), "plf"
	case KTemp:
		return Temp(v).Fahrenheit(), "F"
	case KForcePerLength:
		return Force(v).Pounds() * 25.4, "lb/in"
	case KResistance:
		return Resistance(v).RValue(), "h ft2 F/Btu"
	case KTransmittance:
		return v * btuPerHourFt2F, "Btu/(h ft2 F)"
	case KConductance:
		return v * btuPerHourF, "Btu/(h F)"
	case KLineConductance:
		return v * btuPerHourFtF, "Btu/(h ft F)"
	case KFreeArea:
		return v * 0.3048 / (25.4 * 25.4), "in2/ft"
	case KDayMass:
		return v / ounce, "oz/day"
	case KDayMassPerLength:
		return v / ounce * 0.3048, "oz/(ft day)"
	}
	return q.neutral()
}

// ounce is the avoirdupois ounce in grams.
const ounce = 28.349523125

// metric is In for SI.
func (q Quantity) metric() (float64, string) {
	switch v := q.V; q.Kind {
	case KLength:
		return v, "mm"
	case KArea:
		return v, "mm2"
	case KSection:
		return v, "mm3"
	case KInertia:
		return v, "mm4"
	case KForce:
		return v / 1e3, "kN"
	case KMoment:
		return v / 1e6, "kN m"
	case KStress:
		return v / 1e6, "MPa"
	case KAreaLoad:
		return v / 1e3, "kPa"
	case KLineLoad:
		return v, "kN/m"
	case KTemp:
		return v, "C"
	case KForcePerLength:
		return v, "N/mm"
	case KResistance:
		return v, "m2 K/W"
	case KTransmittance:
		return v, "W/(m2 K)"
	case KConductance:
		return v, "W/K"
	case KLineConductance:
		return v, "W/(m K)"
	case KFreeArea:
		return v, "mm2/m"
	case KDayMass:
		return v, "g/day"
	case KDayMassPerLength:
		return v, "g/(m day)"
	}
	return q.neutral()
}

// neutral is In for the kinds that are alike in both systems.
func (q Quantity) neutral() (float64, string) {
	switch q.Kind {
	case KAngle:
		return q.V, "deg"
	case KPercent:
		return 100 * q.V, "%"
	case KEnergy:
		return q.V, "kWh"
	}
	return q.V, ""
}

// Text writes the quantity for a reader of sys in plain ASCII, with as many digits as the trade uses:
// a length on a 1/16 as a fraction, any other length in decimals; pounds, psi and lb-in whole;
// kilonewtons to three figures; MPa to two decimals; ratios to two or three.
func (q Quantity) Text(sys System) string {
	v, unit := q.In(sys)
	switch q.Kind {
	case Pure:
		return ratio(v)
	case Count:
		return strconv.FormatFloat(math.Round(v), 'f', 0, 64)
	case KSlope:
		return Slope(v).Text(sys)
	case KLength:
		return lengthText(Length(q.V), sys)
	case KTemp, KAngle, KPercent:
		return trimmed(v, 1) + " " + unit
	}
	return q.digits(v, sys) + " " + unit
}

// digits writes the number of the kinds whose digits depend on the system.
func (q Quantity) digits(v float64, sys System) string {
	switch q.Kind {
	case KForce, KMoment:
		if sys == SI {
			return figures(v, 3)
		}
		return thousands(v)
	case KStress:
		if sys == SI {
			return small(v, 2, strconv.FormatFloat(v, 'f', 2, 64))
		}
		return short(v, 1)
	case KAreaLoad, KLineLoad:
		if sys == SI {
			return short(v, 2)
		}
		return short(v, 1)
	case KForcePerLength:
		return short(v, 1)
	case KTransmittance, KConductance, KLineConductance, KEnergy:
		return figures(v, 3)
	case KResistance:
		return figures(v, 3)
	case KFreeArea:
		return figures(v, 3)
	case KDayMass, KDayMassPerLength:
		return figures(v, 2)
	}
	return q.sectionDigits(v, sys)
}

// sectionDigits writes areas, section moduli and moments of inertia.
func (q Quantity) sectionDigits(v float64, sys System) string {
	switch {
	case sys == IP:
		return figures(v, 4)
	case q.Kind == KArea:
		return trimmed(v, 0)
	case q.Kind == KSection:
		return engineering(v, 3)
	}
	return engineering(v, 6)
}

// lengthText is Text for a length in a calculation: exact sixteenths as fractions, the rest in
// decimals so that no digit is lost.
func lengthText(l Length, sys System) string {
	switch {
	case sys == SI && math.Abs(float64(l)) < 10:
		return l.Metric(2) + " mm"
	case sys == SI:
		return l.Metric(1) + " mm"
	case math.Abs(float64(l-l.Round(Inch/Sixteenth))) < 1e-6:
		return l.FeetInches(Sixteenth)
	}
	return trimmed(l.Inches(), 3) + " in"
}

// short writes v whole with commas from 100 up, below that with at most the given decimals.
func short(v float64, decimals int) string {
	if math.Abs(v) >= 100 {
		return thousands(v)
	}
	return small(v, decimals, trimmed(v, decimals))
}

// small returns text, unless v would print as nothing at the given decimals: then two figures.
func small(v float64, decimals int, text string) string {
	if v != 0 && math.Abs(v) < math.Pow10(-decimals) {
		return figures(v, 2)
	}
	return text
}
