package strength

import (
	"fmt"
	"math"
	"reflect"
	"strings"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Inside the package numbers are inches and pounds; these turn them into quantities.

func lb(v float64) unit.Quantity   { return (unit.Force(v) * unit.Pound).Q() }
func inch(v float64) unit.Quantity { return (unit.Length(v) * unit.Inch).Q() }
func lbin(v float64) unit.Quantity { return (unit.Moment(v) * unit.PoundInch).Q() }
func psi(v float64) unit.Quantity  { return (unit.Pressure(v) * unit.PSI).Stress() }
func psf(v float64) unit.Quantity  { return (unit.Pressure(v) * unit.PSF).AreaLoad() }
func num(v float64) unit.Quantity  { return unit.Ratio(v) }

func pounds(v float64) unit.Force { return unit.Force(v) * unit.Pound }

// perFoot turns lb/in into a line load.
func perFoot(v float64) unit.Quantity { return (unit.LineLoad(12*v) * unit.PLF).Q() }

// springs turns lb/in into a stiffness.
func springs(v float64) unit.Quantity {
	return unit.Quantity{V: v * unit.Pound.Newtons() / 25.4, Kind: unit.KForcePerLength}
}

func square(v float64) unit.Quantity {
	return unit.Quantity{V: v * 25.4 * 25.4, Kind: unit.KArea}
}

func modulus(v float64) unit.Quantity {
	return unit.Quantity{V: v * math.Pow(25.4, 3), Kind: unit.KSection}
}

func inertia(v float64) unit.Quantity {
	return unit.Quantity{V: v * math.Pow(25.4, 4), Kind: unit.KInertia}
}

func arg(symbol string, q unit.Quantity) check.Arg { return check.Arg{Symbol: symbol, Value: q} }

// say writes a quantity in the units of the project.
func (c *calc) say(q unit.Quantity) string { return q.Text(c.m.System) }

// word is the i-th of words; a kind no list knows is "unknown".
func word(i int, words ...string) string {
	if i < 0 || i >= len(words) {
		return "unknown"
	}
	return words[i]
}

// given is a value a check needs and its name as the reader knows it.
type given struct {
	name string
	v    float64
}

// missing names the values that are not stated: zero or less. It is empty when all are there.
func missing(values ...given) string {
	var names []string
	for _, g := range values {
		if g.v < 1e-3 {
			names = append(names, g.name)
		}
	}
	if names == nil {
		return ""
	}
	return strings.Join(names, ", ") + " not stated"
}

// unlisted is what is wanting of a part: why no values of rim or backing are known, where that is the reason.
func (c *calc) unlisted(name, lack string) string {
	why := map[string]string{"rim": c.m.Rim.Unlisted, "backing": c.m.Backing.Unlisted}[name]
	if lack == "" || why == "" {
		return lack
	}
	return why
}

// faults lists what keeps the model from being worked out at all.
func (m Model) faults() []string {
	out := oddNumbers(reflect.ValueOf(m), "model", beyondBuilt)
	if out != nil {
		return out
	}
	for _, d := range m.dimensions() {
		if d.v < 1e-3 || d.v > 1e4 {
			out = append(out, d.name+" is missing, not positive or beyond anything built")
		}
	}
	for _, l := range []struct {
		name string
		p    *unit.Pressure
	}{{"loads.dead", m.Loads.Dead}, {"loads.live", m.Loads.Live}, {"loads.snow", m.Loads.Snow}} {
		if l.p != nil && *l.p < 0 {
			out = append(out, l.name+" is negative")
		}
	}
	return append(append(out, m.placeFaults()...), m.setFaults()...)
}

// dimensions are the lengths in inches no check can do without.
func (m Model) dimensions() []given {
	d := []given{
		{"joist span", m.Joists.Span.Inches()}, {"ledger length", m.Ledger.Length.Inches()},
		{"ledger thickness", m.Ledger.Thickness.Inches()}, {"ledger height", (m.Ledger.Top - m.Ledger.Bottom).Inches()},
		{"block width", m.Blocks.Width.Inches()}, {"block height", (m.Blocks.Top - m.Blocks.Bottom).Inches()},
		{"rim thickness", m.Rim.Thickness.Inches()}, {"rim depth", (m.Rim.Top - m.Rim.Bottom).Inches()},
		{"number of plies", float64(len(m.Blocks.Plies))},
	}
	for i, p := range m.Blocks.Plies {
		d = append(d, given{fmt.Sprintf("thickness of ply %d", i+1), p.Thickness.Inches()})
	}
	return d
}

// placeFaults lists blocks, joists and loads that do not stand on the ledger.
func (m Model) placeFaults() []string {
	var out []string
	if len(m.Blocks.At) < 2 {
		out = append(out, fmt.Sprintf("%d block: a ledger needs two at least to stand on", len(m.Blocks.At)))
	}
	for i, p := range m.Blocks.At {
		if p.X < 0 || p.X > m.Ledger.Length {
			out = append(out, "block "+p.Mark+" is not on the ledger")
		}
		if i > 0 && p.X < m.Blocks.At[i-1].X+unit.Inch/2 {
			out = append(out, "block "+p.Mark+" does not stand right of the one before it")
		}
	}
	for i, x := range m.Joists.At {
		if x < 0 || x > m.Ledger.Length || i > 0 && x <= m.Joists.At[i-1] {
			out = append(out, fmt.Sprintf("joist %d is not on the ledger or not right of the one before it", i+1))
		}
	}
	for _, p := range m.PointLoads {
		if p.X < 0 || p.X > m.Ledger.Length || p.Load < 0 {
			out = append(out, "point load "+p.Name+" is not on the ledger, or not downward")
		}
	}
	return out
}

// setFaults lists fastener sets that cannot be laid out.
func (m Model) setFaults() []string {
	f := m.Fasteners
	if f.Through == nil && (f.ToRim == nil || f.ToBlock == nil) {
		return []string{"no fasteners through everything, and not both sets from block to rim and from ledger to block"}
	}
	var out []string
	for _, s := range []*Set{f.Through, f.ToRim, f.ToBlock} {
		if s != nil && (s.Count() == 0 || s.Diameter < unit.Inch/16) {
			out = append(out, "a fastener set has no rows, no columns or no diameter")
		}
	}
	return out
}

// beyondBuilt is more than any length in mm, force in N or strength in Pa of anything built.
const beyondBuilt = 1e12

// oddNumbers finds the numbers in v that are not finite or further from nothing than most.
func oddNumbers(v reflect.Value, path string, most float64) []string {
	var out []string
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.Abs(x) > most {
			out = append(out, path+" is not a usable number")
		}
	case reflect.Pointer:
		if !v.IsNil() {
			out = oddNumbers(v.Elem(), path, most)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			out = append(out, oddNumbers(v.Field(i), path+"."+v.Type().Field(i).Name, most)...)
		}
	case reflect.Slice:
		for i := range v.Len() {
			out = append(out, oddNumbers(v.Index(i), fmt.Sprintf("%s[%d]", path, i), most)...)
		}
	}
	return out
}

// the names a part in a sentence: a numbered ply without an article, one of two as what it is of.
func the(name string) string {
	switch {
	case name == "inner" || name == "outer":
		return "the " + name + " part of the block"
	case strings.HasPrefix(name, "ply"):
		return "ply " + strings.TrimSpace(name[len("ply"):])
	}
	return "the " + name
}

// said is the name of a part as printed.
func said(name string) string {
	if front, ok := strings.CutSuffix(name, withLedger); ok {
		return front + " with the ledger"
	}
	return name
}
