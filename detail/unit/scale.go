package unit

import (
	"math"
	"strings"
)

// Scales returns the denominators a view may be drawn at, largest view first: for IP the usual inch
// scales of building drawings (12" to 1/8" = 1'-0"; common practice, no source), for SI the
// reductions of ISO 5455 (from memory, confirm).
func Scales(sys System) []float64 {
	if sys == SI {
		return []float64{1, 2, 5, 10, 20, 50, 100}
	}
	return []float64{1, 2, 4, 8, 12, 16, 24, 48, 96}
}

// ScaleText writes a scale denominator for the drawing: 4 is 3" = 1'-0" in IP and 1:4 in SI. A
// denominator that is not positive is NTS, not to scale.
func ScaleText(den float64, sys System) string {
	switch {
	case !(den > 0) || math.IsInf(den, 0):
		return "NTS"
	case sys == SI:
		return "1:" + trimmed(den, 3)
	}
	return paperInches(Foot/Length(den)) + ` = 1'-0"`
}

// paperInches writes what a foot is on paper: in inches even when it is the whole foot, and in
// decimals when it is no sixteenth.
func paperInches(l Length) string {
	if l < Foot && math.Abs(float64(l-l.Round(Inch/Sixteenth))) < 1e-6 {
		return l.FeetInches(Sixteenth)
	}
	return trimmed(l.Inches(), 3) + `"`
}

// ParseScale reads a drawing scale and returns its denominator: 3" = 1'-0" is 4, 1:5 is 5. Only the
// scales of Scales are accepted: the inch list for the form with =, the metric list for the form
// with a colon; the error names the nearest.
func ParseScale(s string) (float64, error) {
	t := tidy(s)
	left, right, inch := strings.Cut(t, "=")
	if !inch {
		left, right, _ = strings.Cut(t, ":")
	}
	den, ok := scaleRatio(left, right, inch)
	if !ok {
		return 0, scaleError(s, "is not a scale", "")
	}
	sys := SI
	if inch {
		sys = IP
	}
	near := nearestScale(den, sys)
	if math.Abs(near-den) > 1e-6*near {
		return 0, scaleError(s, "is not a usual scale", "the nearest is "+ScaleText(near, sys))
	}
	return near, nil
}

// scaleRatio returns how many times larger the right side is than the left.
func scaleRatio(left, right string, inch bool) (float64, bool) {
	if inch {
		a, err1 := ParseLength(left)
		b, err2 := ParseLength(right)
		return float64(b / a), err1 == nil && err2 == nil && a > 0 && b > 0
	}
	a, rest1, bad1 := scanNumber(strings.TrimSpace(left))
	b, rest2, bad2 := scanNumber(strings.TrimSpace(right))
	return b.v / a.v, bad1+bad2+rest1+rest2 == "" && a.v > 0 && b.v > 0
}

// nearestScale returns the listed denominator whose ratio to den is closest to 1.
func nearestScale(den float64, sys System) float64 {
	best := 0.0
	for _, d := range Scales(sys) {
		if best == 0 || math.Abs(math.Log(d/den)) < math.Abs(math.Log(best/den)) {
			best = d
		}
	}
	return best
}

func scaleError(s, wrong, do string) error {
	return &SyntaxError{
		What: "scale", Given: quote(s) + " " + wrong, Forms: "a scale is one of " + scaleList(), Do: do,
	}
}

// scaleList names every scale, the inch list first.
func scaleList() string {
	var all []string
	for _, sys := range []System{IP, SI} {
		for _, d := range Scales(sys) {
			all = append(all, ScaleText(d, sys))
		}
	}
	return strings.Join(all, ", ")
}
