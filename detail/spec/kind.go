package spec

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"standclear/detail/unit"
)

// kind is what sort of value a key holds.
type kind int

const (
	aSection kind = iota
	anOption      // a section that may be left out as a whole
	aList
	aText
	aWord // one of a few
	aDate
	aSize // of lumber, nominal or dressed; spreads into two lengths
	aYesNo
	aCount
	aFactor
	aScale
	aLength
	aDiameter
	aSlope
	aShare
	aTemp
	someDegreeDays
	aSpeed
	aForce
	anAreaLoad
	aStress
	someMoney
	aPrice // money for a length, in money a metre
)

// measure is how values of one kind are read and printed.
type measure struct {
	name  string
	parse func(string) (float64, error) // in the base unit
	print func(float64, unit.System) string
	units []string // to try when a figure is out of range: the same number in another unit
}

// measures is what each kind of value is read and printed by.
var measures = func() (all [aPrice + 1]measure) {
	for k := range all {
		all[k] = kind(k).worked()
	}
	return all
}()

// measure returns how numbers of kind k are read; kinds of text have only a name.
func (k kind) measure() *measure { return &measures[k] }

func (k kind) worked() measure {
	switch k {
	case aSection, anOption:
		return measure{name: "a section"}
	case aList:
		return measure{name: "a list"}
	case aText:
		return measure{name: "a text"}
	case aWord:
		return measure{name: "a word"}
	case aDate:
		return measure{name: "a date"}
	case aSize:
		return measure{name: "a size"}
	case aYesNo:
		return measure{"yes or no", parseYesNo, printYesNo, nil}
	case aCount:
		return measure{"a whole number", parseCount, func(v float64, _ unit.System) string { return plainNumber(v) }, nil}
	case aFactor:
		return measure{"a number", parseFactor, func(v float64, _ unit.System) string { return plainNumber(v) }, nil}
	case someMoney:
		return measure{"an amount of money", parseMoney, printMoney, nil}
	case aPrice:
		return measure{"a price of a length", parsePrice, printPrice, []string{"/ft", "/m"}}
	case aScale:
		return measure{"a scale", unit.ParseScale, unit.ScaleText, nil}
	}
	return k.dimensioned()
}

// dimensioned is measure for the kinds that carry a unit.
func (k kind) dimensioned() measure {
	lengths := []string{"in", "mm", "ft", "m"}
	pressures := []string{"psf", "kPa", "psi", "MPa"}
	switch k {
	case aDiameter:
		return measure{"a diameter", numbers(ParseDiameter), printLength, lengths}
	case aSlope:
		return measure{"a slope", numbers(unit.ParseSlope), prints[unit.Slope], nil}
	case aShare:
		return measure{"a share in %", numbers(unit.ParsePercent), prints[unit.Percent], nil}
	case aTemp:
		return measure{"a temperature", numbers(unit.ParseTemp), prints[unit.Temp], []string{"C", "F"}}
	case someDegreeDays:
		return measure{"a sum of degree-days", numbers(unit.ParseDegreeDays), prints[unit.DegreeDays], []string{" K.d", " F.d"}}
	case aSpeed:
		return measure{"a speed", numbers(unit.ParseSpeed), prints[unit.Speed], []string{"mph", "m/s", "km/h"}}
	case aForce:
		return measure{"a force", numbers(unit.ParseForce), prints[unit.Force], []string{"lb", "kN", "N", "kip"}}
	case anAreaLoad:
		return measure{"a load on an area", numbers(unit.ParsePressure), printAreaLoad, pressures}
	case aStress:
		return measure{"a stress", numbers(unit.ParsePressure), printStress, pressures}
	}
	return measure{"a length", numbers(unit.ParseLength), printLength, lengths}
}

// numbers turns a parser of a quantity into one of its number.
func numbers[T ~float64](parse func(string) (T, error)) func(string) (float64, error) {
	return func(s string) (float64, error) {
		v, err := parse(s)
		return float64(v), err
	}
}

// prints writes a number as the quantity T.
func prints[T interface {
	~float64
	Text(unit.System) string
}](v float64, sys unit.System) string {
	return T(v).Text(sys)
}

func printLength(v float64, sys unit.System) string { return unit.Length(v).Text(sys) }

func printAreaLoad(v float64, sys unit.System) string { return unit.Pressure(v).AreaLoad().Text(sys) }

func printStress(v float64, sys unit.System) string { return unit.Pressure(v).Stress().Text(sys) }

// ParseDiameter reads a length, or M12 and the like.
func ParseDiameter(s string) (unit.Length, error) {
	if len(s) > 1 && (s[0] == 'M' || s[0] == 'm') {
		if d, err := strconv.Atoi(s[1:]); err == nil && d > 0 && d < 1000 {
			return unit.Length(d) * unit.MM, nil
		}
	}
	l, err := unit.ParseLength(s)
	var syntax *unit.SyntaxError
	if errors.As(err, &syntax) {
		syntax.Forms = "a diameter is written 1/2in, 16mm or M16"
	}
	return l, err
}

func parseYesNo(s string) (float64, error) {
	switch strings.ToLower(s) {
	case "yes", "true":
		return 1, nil
	case "no", "false":
		return 0, nil
	}
	return 0, &unit.SyntaxError{Given: fmt.Sprintf("%q is neither yes nor no", cut(s)), Forms: "write yes or no"}
}

func printYesNo(v float64, _ unit.System) string {
	if v != 0 {
		return "yes"
	}
	return "no"
}

func parseCount(s string) (float64, error) {
	n, err := strconv.Atoi(s)
	if err != nil || n < -1e6 || n > 1e6 {
		return 0, &unit.SyntaxError{Given: fmt.Sprintf("%q is not a whole number", cut(s)), Forms: "a number is written 4"}
	}
	return float64(n), nil
}

// parseFactor reads a pure number; 0x10, 1e3, nan and inf are not plain enough.
func parseFactor(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || strings.Trim(s, "+-.0123456789") != "" || math.IsInf(v, 0) {
		return 0, &unit.SyntaxError{Given: fmt.Sprintf("%q is not a number", cut(s)), Forms: "a number is written 0.9"}
	}
	return v, nil
}

// plainNumber writes v in the shortest way.
func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
