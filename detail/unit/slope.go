package unit

import (
	"math"
	"strings"
)

const slopeForms = "a slope is written 1:8, 12%, 7deg or 0"

// ParseSlope reads a fall as rise over run (1:8, 1/4:12), in per cent (12%), as an angle (7deg) or 0.
// Other bare numbers are refused. The result is within tan 89 degrees either way.
func ParseSlope(s string) (Slope, error) {
	t := tidy(strings.ReplaceAll(s, "°", "deg"))
	fail := func(wrong, do string) (Slope, error) {
		return 0, &SyntaxError{What: "slope", Given: quote(s) + " " + wrong, Forms: slopeForms, Do: do}
	}
	sign, rest := scanSign(t)
	n, tail, reason := scanNumber(rest)
	low := strings.ToLower(tail)
	var v float64
	switch {
	case reason != "" || n.commas || len(t) > longest:
		return fail("is not a slope", "")
	case low == "" && n.v == 0:
	case low == "":
		return fail("has no unit", "write 1:"+n.text+" or "+n.text+"%")
	case strings.HasPrefix(low, ":"):
		run, after, bad := scanNumber(strings.TrimSpace(low[1:]))
		if bad != "" || after != "" || run.v == 0 || run.commas {
			return fail("is not a slope", "")
		}
		v = n.v / run.v
	case low == "%":
		v = n.v / 100
	case low == "deg" || low == "degrees":
		v = math.Tan(math.Min(n.v, 90) * math.Pi / 180)
	default:
		return fail("is not a slope", "")
	}
	if v > math.Tan(89*math.Pi/180) {
		return fail("is too steep", "")
	}
	return Slope(sign * v), nil
}

// Angle returns the slope as an angle in degrees.
func (s Slope) Angle() float64 { return math.Atan(float64(s)) * 180 / math.Pi }

// Text writes the slope as 1:n, whatever the system; level is 0.
func (s Slope) Text(System) string {
	switch {
	case math.Abs(float64(s)) < 5e-7:
		return "0"
	case s < 0:
		return "-1:" + trimmed(-1/float64(s), 2)
	}
	return "1:" + trimmed(1/float64(s), 2)
}

// ParsePercent reads a share with its sign: 60%, 12.5 %. A bare number is refused.
func ParsePercent(s string) (Percent, error) {
	d := dimension{
		what: "share", forms: "a share is written 60%", likely: []string{"%"},
		units: []scaled{{"%", 0.01, 0, false}, {"percent", 0.01, 0, false}, {"per cent", 0.01, 0, false}},
	}
	if n, rest, bad := scanNumber(tidy(s)); bad == "" && rest == "" && n.v <= 1 {
		return 0, d.fail(s, "has no unit", "write "+trimmed(100*n.v, 4)+"%")
	}
	v, err := d.parse(s)
	return Percent(v), err
}

// Text writes the share in per cent, whatever the system.
func (p Percent) Text(System) string { return trimmed(100*float64(p), 1) + " %" }
