package unit

import (
	"fmt"
	"math"
	"strings"
	"sync"
)

// lengths is how a length with a single unit is typed.
var lengths = sync.OnceValue(func() dimension {
	return dimension{
		what: "length", forms: `a length is written 7 1/2in, 14'-8", 80mm or 1.2m`, likely: []string{"in", "mm"},
		units: []scaled{
			{`"`, 25.4, 0, false}, {"in", 25.4, 0, false}, {"inch", 25.4, 0, false}, {"inches", 25.4, 0, false},
			{"'", 304.8, 0, false}, {"ft", 304.8, 0, false}, {"foot", 304.8, 0, false}, {"feet", 304.8, 0, false},
			{"mm", 1, 0, false}, {"cm", 10, 0, false}, {"m", 1000, 0, false},
			{"metre", 1000, 0, false}, {"metres", 1000, 0, false}, {"meter", 1000, 0, false}, {"meters", 1000, 0, false},
		},
	}
})

// ParseLength reads a length with its unit:
//
//	7 1/2"   7-1/2in   3.5 in   14'-8"   14' 8 1/2"   14ft 8in   8'   80mm   8cm   1.2m
//
// A leading sign is allowed. A bare number, a comma, feet with a fraction before inches, and inches
// of 12 and more after feet are refused. The result is finite, at most 1e12 mm either way.
func ParseLength(s string) (Length, error) {
	t := tidy(s)
	feet, inches, ok := splitFeet(t)
	if !ok || len(t) > longest {
		v, err := lengths().parse(s)
		return Length(v), err
	}
	sign, feet := scanSign(feet)
	f, rest, reason := scanNumber(feet)
	if reason != "" || rest != "" {
		return 0, lengths().fail(s, "is not a length: the feet cannot be read", "")
	}
	in, err := inchesAfterFeet(s, f, inches)
	if err != nil {
		return 0, err
	}
	return checkLength(s, Length(sign)*(Length(f.v)*Foot+in))
}

// splitFeet cuts a text such as 14'-8" after the feet mark; ok when something follows it.
func splitFeet(t string) (feet, rest string, ok bool) {
	low := strings.ToLower(t)
	for _, mark := range []string{"'", "feet", "foot", "ft"} {
		if feet, rest, ok := strings.Cut(low, mark); ok {
			rest = strings.TrimSpace(rest)
			return feet, rest, rest != ""
		}
	}
	return "", "", false
}

// inchesAfterFeet reads the second half of feet and inches: -8", 8 1/2in, - 0 3/8".
func inchesAfterFeet(s string, feet number, t string) (Length, error) {
	d := lengths()
	if feet.decimal || strings.Contains(feet.text, "/") {
		return 0, d.fail(s, "is not a length: feet before inches are whole", "")
	}
	t = strings.TrimSpace(strings.TrimPrefix(t, "-"))
	n, mark, reason := scanNumber(t)
	switch {
	case reason != "":
		return 0, d.fail(s, "is not a length: the inches cannot be read", "")
	case mark == "":
		return 0, d.fail(s, "has no inch mark", fmt.Sprintf(`write %s'-%s"`, feet.text, n.text))
	case mark != `"` && mark != "in" && mark != "inch" && mark != "inches":
		return 0, d.fail(s, fmt.Sprintf("is not a length: %q is not a unit after feet", mark), "")
	case n.v >= 12:
		return 0, d.fail(s, "is not a length: inches after feet are less than 12", "")
	}
	return Length(n.v) * Inch, nil
}

func checkLength(s string, l Length) (Length, error) {
	if math.Abs(float64(l)) > most {
		return 0, lengths().fail(s, "is too large", "")
	}
	return l, nil
}

// DecimalFeet reports whether s gives feet with a decimal part that could be taken for inches, as in
// 14.8ft, and returns the feet and inches so mistaken: 14'-8". The text must parse as a length.
func DecimalFeet(s string) (mistaken Length, ok bool) {
	if _, err := ParseLength(s); err != nil {
		return 0, false
	}
	sign, t := scanSign(tidy(s))
	n, mark, _ := scanNumber(t)
	mark = strings.ToLower(mark)
	if !n.decimal || (mark != "'" && mark != "ft" && mark != "feet" && mark != "foot") {
		return 0, false
	}
	whole, part, _ := strings.Cut(n.text, ".")
	inches := float(part)
	if inches == 0 || inches >= 12 {
		return 0, false
	}
	return Length(sign) * (Length(float(whole))*Foot + Length(inches)*Inch), true
}

// Round returns l to the nearest whole step, halves away from zero; l itself when step is not positive.
func (l Length) Round(step Length) Length {
	if step <= 0 {
		return l
	}
	return Length(math.Round(float64(l/step))) * step
}
