package unit

import (
	"math"
	"strconv"
	"strings"
)

// Text writes f for a reader of sys: whole pounds with thousands commas, or kN to three figures.
func (f Force) Text(sys System) string { return f.Q().Text(sys) }

// Text writes m for a reader of sys: whole lb-in with thousands commas, or kN m to three figures.
func (m Moment) Text(sys System) string { return m.Q().Text(sys) }

// Text writes w for a reader of sys: plf or kN/m.
func (w LineLoad) Text(sys System) string { return w.Q().Text(sys) }

// Text writes t for a reader of sys: 68 F or 20 C, to a tenth.
func (t Temp) Text(sys System) string { return t.Q().Text(sys) }

// Text writes p for a reader of sys: below 20 kPa as a load on an area (psf, kPa), else as a stress
// (psi, MPa). Use Stress or AreaLoad where the kind is known.
func (p Pressure) Text(sys System) string {
	if math.Abs(float64(p)) < 20e3 {
		return p.AreaLoad().Text(sys)
	}
	return p.Stress().Text(sys)
}

// Text writes d for a reader of sys: whole F.d or K.d.
func (d DegreeDays) Text(sys System) string {
	if sys == SI {
		return trimmed(float64(d), 0) + " K.d"
	}
	return trimmed(d.FahrenheitDays(), 0) + " F.d"
}

// Text writes v for a reader of sys: mph or m/s, to a tenth.
func (v Speed) Text(sys System) string {
	if sys == SI {
		return trimmed(float64(v), 1) + " m/s"
	}
	return trimmed(v.MPH(), 1) + " mph"
}

// Text writes c for a reader of sys: W/(m K), or Btu in/(h ft2 F), of which there are 6.933472 to one
// W/(m K).
func (c Conductivity) Text(sys System) string {
	if sys == SI {
		return figures(float64(c), 3) + " W/(m K)"
	}
	return figures(float64(c)*6.933472, 3) + " Btu in/(h ft2 F)"
}

// String returns the name of the system as the project file writes it: inch or metric.
func (s System) String() string {
	if s == SI {
		return "metric"
	}
	return "inch"
}

// thousands writes v as a whole number with a comma before every three digits.
func thousands(v float64) string {
	s := trimmed(v, 0)
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "-", s[1:]
	}
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return sign + s
}

// figures writes v to n significant figures without an exponent, trailing zeros kept: 0.306, 12.3, 123.
func figures(v float64, n int) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return trimmed(v, 0)
	}
	s := strconv.FormatFloat(v, 'e', n-1, 64)
	rounded, _ := strconv.ParseFloat(s, 64)
	exp, _ := strconv.Atoi(s[strings.IndexByte(s, 'e')+1:])
	return strconv.FormatFloat(rounded, 'f', min(max(n-1-exp, 0), 12), 64)
}

// ratio writes a pure number: three decimals below 2, where verdicts turn, two to 100, none above.
func ratio(v float64) string {
	decimals := 3
	switch a := math.Abs(v); {
	case a >= 100:
		decimals = 0
	case a >= 2:
		decimals = 2
	}
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return "0"
	}
	return s
}

// engineering writes v as a multiple of 10^exp once it reaches that, to four figures: 41.18e6.
func engineering(v float64, exp int) string {
	unit := math.Pow10(exp)
	if math.Abs(v) < unit {
		return trimmed(v, 0)
	}
	return figures(v/unit, 4) + "e" + strconv.Itoa(exp)
}
