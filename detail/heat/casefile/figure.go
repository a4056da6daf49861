package casefile

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"standclear/detail/keyfile"
	"standclear/detail/unit"
)

// filmIP is one Btu/(h ft2 F) in W/(m2 K), with the Btu of the International Table, 1055.05585262 J.
const filmIP = 1055.05585262 / 3600 / (0.3048 * 0.3048) * 1.8

// measure is a quantity of heat flow as it is typed: its units without spaces, brackets and dots, in
// lower case, with what they are in SI.
type measure struct {
	name, forms string
	units       []scaled
}

type scaled struct {
	name string
	by   float64
}

func conductivity() measure {
	return measure{"conductivity", "a conductivity is written 0.12 W/mK or 0.83 Btu in/(h ft2 F)", []scaled{
		{"w/mk", 1}, {"btuin/hft2f", filmIP * 0.0254}, {"btuin/hrft2f", filmIP * 0.0254},
	}}
}

func resistance() measure {
	return measure{"surface resistance", "a surface resistance is written 0.13 m2K/W or 0.68 h ft2 F/Btu", []scaled{
		{"m2k/w", 1}, {"hft2f/btu", 1 / filmIP}, {"hrft2f/btu", 1 / filmIP},
	}}
}

func coefficient() measure {
	return measure{"surface coefficient", "a surface coefficient is written 25 W/m2K or 6 Btu/(h ft2 F)", []scaled{
		{"w/m2k", 1}, {"btu/hft2f", filmIP}, {"btu/hrft2f", filmIP},
	}}
}

// plain writes a unit without what people put in one way or another.
func plain(s string) string {
	return strings.ToLower(strings.NewReplacer(" ", "", "(", "", ")", "", ".", "", "·", "", "*", "", "²", "2", "^", "", "°", "").Replace(s))
}

// figure reads a number with a unit of m.
func (r *reader) figure(n *yaml.Node, path string, m measure) float64 {
	text, ok := r.One(n, path, m.forms)
	if !ok {
		return 0
	}
	end := strings.IndexFunc(text, func(c rune) bool { return !strings.ContainsRune("+-.0123456789", c) })
	if end < 0 {
		r.Fail(n, path, fmt.Sprintf("%q has no unit", keyfile.Cut(text)), m.forms, "")
		return 0
	}
	v, err := strconv.ParseFloat(text[:end], 64)
	if err != nil {
		r.Fail(n, path, fmt.Sprintf("%q is not a %s", keyfile.Cut(text), m.name), m.forms, "")
		return 0
	}
	for _, u := range m.units {
		if plain(text[end:]) == u.name {
			return v * u.by
		}
	}
	r.Fail(n, path, fmt.Sprintf("%q is not a %s: %q is not a unit of one", keyfile.Cut(text), m.name, keyfile.Cut(strings.TrimSpace(text[end:]))), m.forms, "")
	return 0
}

// length reads a length, mm.
func (r *reader) length(n *yaml.Node, path string) float64 {
	text, ok := r.One(n, path, "a length is written 38mm or 1.5in")
	if !ok {
		return 0
	}
	l, err := unit.ParseLength(text)
	r.typed(n, path, err)
	return l.MM()
}

// temperature reads a temperature, degrees C.
func (r *reader) temperature(n *yaml.Node, path string) float64 {
	text, ok := r.One(n, path, "a temperature is written 20C or 68F")
	if !ok {
		return 0
	}
	t, err := unit.ParseTemp(text)
	r.typed(n, path, err)
	return float64(t)
}

// typed notes what package unit could not read.
func (r *reader) typed(n *yaml.Node, path string, err error) {
	var syntax *unit.SyntaxError
	if errors.As(err, &syntax) {
		r.Fail(n, path, syntax.Given, syntax.Forms, syntax.Do)
	}
}
