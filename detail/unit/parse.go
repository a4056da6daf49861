package unit

import (
	"fmt"
	"math"
	"strings"
)

// SyntaxError says why a text is not the quantity asked for, in words for the person who typed it.
type SyntaxError struct {
	What  string // "length"
	Given string // the text and what is wrong with it
	Forms string // how such a quantity is written
	Do    string // what was likely meant; may be empty
}

// Error joins the parts with semicolons.
func (e *SyntaxError) Error() string {
	s := e.Given + "; " + e.Forms
	if e.Do != "" {
		s += "; " + e.Do
	}
	return s
}

// dimension is one kind of quantity as it is typed: its names of units and how they scale.
type dimension struct {
	what   string
	forms  string
	likely []string // units to offer for a bare number
	units  []scaled
}

// scaled is one unit: base = number * by + add.
type scaled struct {
	name     string
	by, add  float64
	american bool // thousands commas are clear with this unit
}

// most is the largest magnitude accepted, in the base unit of any quantity.
const most = 1e12

// parse reads a signed number and one of the units of d.
func (d dimension) parse(s string) (float64, error) {
	t := tidy(s)
	if t == "" || len(t) > longest {
		return 0, d.fail(s, "is not a "+d.what, "")
	}
	sign, rest := scanSign(t)
	n, name, reason := scanNumber(rest)
	if reason != "" {
		return 0, d.fail(s, "is not a "+d.what+": "+reason, commaHelp(reason))
	}
	if name == "" {
		return 0, d.fail(s, "has no unit", d.offer(t))
	}
	u, ok := d.find(name)
	if !ok {
		return 0, d.fail(s, fmt.Sprintf("is not a %s: %q is not a unit of one", d.what, name), "")
	}
	if n.commas && !u.american {
		return 0, d.fail(s, "is not a "+d.what+": a comma can be read two ways", commaHelp("comma"))
	}
	v := sign*n.v*u.by + u.add
	if math.Abs(v) > most {
		return 0, d.fail(s, "is too large", "")
	}
	return v, nil
}

// find looks a unit up by name, whatever its case.
func (d dimension) find(name string) (scaled, bool) {
	for _, u := range d.units {
		if strings.EqualFold(u.name, name) && !(name == "mPa" && u.name == "MPa") {
			return u, true
		}
	}
	return scaled{}, false
}

// offer proposes the likely units for a bare number.
func (d dimension) offer(n string) string {
	n = strings.ReplaceAll(n, ",", "")
	var with []string
	for _, u := range d.likely {
		with = append(with, n+u)
	}
	return "write " + strings.Join(with, " or ")
}

func (d dimension) fail(given, wrong, do string) error {
	return &SyntaxError{What: d.what, Given: quote(given) + " " + wrong, Forms: d.forms, Do: do}
}

// quote shows a text as typed, cut when long.
func quote(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:37]) + "..."
	}
	return fmt.Sprintf("%q", s)
}

func commaHelp(reason string) string {
	if !strings.Contains(reason, "comma") {
		return ""
	}
	return "write 1500 without a comma, 1.5 with a point"
}

// ParseForce reads lb, lbf, kip, N or kN.
func ParseForce(s string) (Force, error) {
	v, err := dimension{
		what: "force", forms: "a force is written 1500lb, 1.5kip, 800N or 6.7kN", likely: []string{"lb", "kN"},
		units: []scaled{
			{"lb", float64(Pound), 0, true}, {"lbf", float64(Pound), 0, true}, {"lbs", float64(Pound), 0, true},
			{"kip", 1000 * float64(Pound), 0, true}, {"kips", 1000 * float64(Pound), 0, true},
			{"N", 1, 0, false}, {"kN", 1000, 0, false},
		},
	}.parse(s)
	return Force(v), err
}

// ParsePressure reads a stress or an area load: psf, psi, ksi, Pa, kPa, MPa, N/mm2 or kN/m2.
func ParsePressure(s string) (Pressure, error) {
	v, err := dimension{
		what: "pressure", forms: "a load or stress is written 45psf, 25psi, 2.15kPa, 2.15kN/m2 or 0.3MPa",
		likely: []string{"psf", "kPa"},
		units: []scaled{
			{"psf", float64(PSF), 0, true}, {"lb/ft2", float64(PSF), 0, true},
			{"psi", float64(PSI), 0, true}, {"lb/in2", float64(PSI), 0, true}, {"ksi", 1000 * float64(PSI), 0, true},
			{"Pa", 1, 0, false}, {"N/m2", 1, 0, false}, {"kPa", 1e3, 0, false}, {"kN/m2", 1e3, 0, false},
			{"MPa", 1e6, 0, false}, {"N/mm2", 1e6, 0, false},
		},
	}.parse(s)
	return Pressure(v), err
}

// ParseLineLoad reads plf, lb/ft, N/m, kN/m or N/mm.
func ParseLineLoad(s string) (LineLoad, error) {
	v, err := dimension{
		what: "line load", forms: "a line load is written 250plf, 250lb/ft or 3.6kN/m", likely: []string{"plf", "kN/m"},
		units: []scaled{
			{"plf", float64(PLF), 0, true}, {"lb/ft", float64(PLF), 0, true},
			{"N/m", 1e-3, 0, false}, {"kN/m", 1, 0, false}, {"N/mm", 1, 0, false},
		},
	}.parse(s)
	return LineLoad(v), err
}

// ParseTemp reads degrees Celsius or Fahrenheit: 20C, -18 C, 68F, with or without a degree sign.
func ParseTemp(s string) (Temp, error) {
	v, err := dimension{
		what: "temperature", forms: "a temperature is written 20C or 68F", likely: []string{"C", "F"},
		units: []scaled{
			{"C", 1, 0, false}, {"degC", 1, 0, false}, {"deg C", 1, 0, false},
			{"F", 5.0 / 9, -160.0 / 9, true}, {"degF", 5.0 / 9, -160.0 / 9, true}, {"deg F", 5.0 / 9, -160.0 / 9, true},
		},
	}.parse(s)
	return Temp(v), err
}

// ParseDegreeDays reads a heating sum: 3830 K.d or 6900 F.d.
func ParseDegreeDays(s string) (DegreeDays, error) {
	d := dimension{
		what: "sum of degree-days", forms: "degree-days are written 3830 K.d or 6900 F.d", likely: []string{" K.d", " F.d"},
	}
	for _, u := range []scaled{{"K", 1, 0, false}, {"C", 1, 0, false}, {"F", 5.0 / 9, 0, true}} {
		for _, join := range []string{".", " ", "", "*"} {
			d.units = append(d.units, scaled{u.name + join + "d", u.by, 0, u.american})
		}
	}
	v, err := d.parse(s)
	return DegreeDays(v), err
}

// ParseSpeed reads mph, m/s or km/h.
func ParseSpeed(s string) (Speed, error) {
	v, err := dimension{
		what: "speed", forms: "a speed is written 115mph, 51m/s or 185km/h", likely: []string{"mph", "m/s"},
		units: []scaled{
			{"mph", float64(MPH), 0, true}, {"m/s", 1, 0, false},
			{"km/h", 1 / 3.6, 0, false}, {"kph", 1 / 3.6, 0, false},
		},
	}.parse(s)
	return Speed(v), err
}
