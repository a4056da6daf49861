package unit

import (
	"math"
	"strconv"
	"strings"
)

// Denominators for FeetInches.
const (
	Whole        = 1
	Half         = 2
	Quarter      = 4
	Eighth       = 8
	Sixteenth    = 16 // general dimensions
	ThirtySecond = 32 // drill sheets
	SixtyFourth  = 64
)

// FeetInches writes l as a drafter does, to the nearest 1/den inch, halves away from zero: inches
// alone under a foot, feet and inches from there, fractions reduced.
//
//	3/8"   7 1/2"   1'-4 1/2"   8'-0"   -4 1/2"
//
// A den below 1 counts as 1. A length that is not finite prints as a float with its unit.
func (l Length) FeetInches(den int) string {
	if den < 1 {
		den = 1
	}
	n := l.Inches() * float64(den)
	n = math.Round(n + math.Copysign(1e-9, n)) // 3/32 in millimetres falls a hair short of a half step
	if math.IsNaN(n) || math.Abs(n) > 1e15 {
		return strconv.FormatFloat(float64(l), 'g', -1, 64) + " mm"
	}
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	inches, parts := int64(n)/int64(den), int64(n)%int64(den)
	if inches < 12 {
		return sign + inchText(inches, parts, int64(den)) + `"`
	}
	return sign + strconv.FormatInt(inches/12, 10) + "'-" + wholeInchText(inches%12, parts, int64(den)) + `"`
}

// inchText writes whole and part inches, leaving out a zero whole before a fraction.
func inchText(whole, top, bottom int64) string {
	if whole == 0 && top > 0 {
		return fractionText(top, bottom)
	}
	return wholeInchText(whole, top, bottom)
}

// wholeInchText writes whole and part inches, the whole always: 0 3/8 after feet.
func wholeInchText(whole, top, bottom int64) string {
	s := strconv.FormatInt(whole, 10)
	if top > 0 {
		s += " " + fractionText(top, bottom)
	}
	return s
}

// fractionText writes top over bottom in lowest terms.
func fractionText(top, bottom int64) string {
	a, b := top, bottom
	for b != 0 {
		a, b = b, a%b
	}
	return strconv.FormatInt(top/a, 10) + "/" + strconv.FormatInt(bottom/a, 10)
}

// Metric writes l in millimetres to at most the given decimals, trailing zeros dropped, no unit:
// 419, 38.1. Fewer than 0 decimals count as 0.
func (l Length) Metric(decimals int) string { return trimmed(float64(l), max(decimals, 0)) }

// Text writes l for a reader of sys, with its unit: 7 1/2" to the nearest 1/16, or 38.1 mm. Below a
// quarter inch a length that is not on a 1/32 is written in decimals, 0.024", so that sheet metal and
// membranes do not print as nothing.
func (l Length) Text(sys System) string {
	if sys == SI {
		if math.Abs(float64(l)) < 1 {
			return l.Metric(2) + " mm"
		}
		return l.Metric(1) + " mm"
	}
	off := math.Abs(float64(l - l.Round(Inch/ThirtySecond)))
	switch {
	case math.Abs(l.Inches()) >= 0.25:
		return l.FeetInches(Sixteenth)
	case off < 1e-6:
		return l.FeetInches(ThirtySecond)
	}
	return trimmed(l.Inches(), 3) + `"`
}

// trimmed writes v to at most the given decimals without trailing zeros, and never -0.
func trimmed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
