package sheet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"

	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/render"
	"standclear/render/font"
)

// caps writes drawing capitals: the sign between sizes stays a small x, a unit keeps its case.
func caps(s string) string {
	return capitals.of(s, func() string {
		t := strings.ReplaceAll(strings.ToUpper(s), " X ", " x ")
		return units().ReplaceAllStringFunc(t, func(u string) string {
			return u[:len(u)-len(strings.TrimLeft(u, "0123456789. "))] + unitCase[strings.TrimLeft(u, "0123456789. ")]
		})
	})
}

var (
	units    = pattern(`\d ?(LB|KG|KN|MM|PSF|PSI|KPA)\b`)
	unitCase = map[string]string{"LB": "lb", "KG": "kg", "KN": "kN", "MM": "mm", "PSF": "psf", "PSI": "psi", "KPA": "kPa"}
	withUnit = pattern(`(\d) (mm|m|C|F|W|Btu)\b`)
	couple   = pattern(`\bkN m\b`)
	measure  = pattern(`(\d) (%|(?:mm|kN|kPa|MPa|lb|psf|psi|plf|kg)\b)`)
	mixed    = pattern(`(\d) (\d+/\d+)`)
)

// pattern compiles a regular expression when it is first asked for: a program that draws nothing starts sooner.
func pattern(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}

// sized keeps a number and its unit on one line when the text is wrapped.
func sized(s string) string { return withUnit().ReplaceAllString(s, "$1\u00a0$2") }

// held keeps a whole number and its fraction, and a number and its unit, in one word.
func held(s string) string {
	return heldWords.of(s, func() string {
		t := mixed().ReplaceAllString(s, "$1\u00a0$2")
		t = couple().ReplaceAllString(t, "kN\u00a0m")
		return measure().ReplaceAllString(t, "$1\u00a0$2")
	})
}

// wrap breaks text to a plotted width without parting a whole number from its fraction.
func wrap(s string, h, width float64, bold bool) []string {
	return slices.Clone(wrapped.of(wrapping{s, h, width, bold}, func() []string {
		lines := font.Wrap(held(s), h, width, bold)
		for i := range lines {
			lines[i] = strings.ReplaceAll(lines[i], "\u00a0", " ")
		}
		return lines
	}))
}

// wrapping is a text to wrap.
type wrapping struct {
	words    string
	h, width float64
	bold     bool
}

var (
	capitals  memo[string, string]
	heldWords memo[string, string]
	wrapped   memo[wrapping, []string]
)

// diameter writes a bolt's size as the trade does, 5/8" or M16, in drawings of either system: by that name it is
// bought.
func (w *writer) diameter(d unit.Length) string {
	b, ok := stock.BoltOf(d)
	switch {
	case ok && b.Metric || !ok && w.unit() == render.Millimetre:
		return "M" + d.Metric(1)
	case ok:
		return d.Text(unit.IP)
	}
	return w.text(d.MM())
}

// exact writes a length on the drafting step as dimensions do, and any other in decimals.
func (w *writer) exact(l unit.Length) string {
	if s := step(w.a.Spec.Project.System); w.unit() == render.Inch && math.Abs(l.MM()-math.Round(l.MM()/s)*s) > 0.01 {
		return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.3f", l.Inches()), "0"), ".") + "\""
	}
	return w.text(l.MM())
}

// fine writes a small bore in decimals.
func (w *writer) fine(q unit.Quantity) string {
	if w.unit() == render.Millimetre {
		return fmt.Sprintf("%.1f", q.V)
	}
	return fmt.Sprintf("%.2f\"", q.V/25.4)
}

// bought writes the length of a bolt as it is sold: in inches alone, or millimetres.
func (w *writer) bought(l unit.Length) string {
	if w.unit() == render.Millimetre {
		return w.text(l.MM())
	}
	whole := unit.Length(math.Floor(l.Inches()+1e-9)) * unit.Inch
	part := strings.TrimSuffix(w.text((l - whole).MM()), "\"")
	if part == "0" {
		return fmt.Sprintf("%.0f\"", whole.Inches())
	}
	return fmt.Sprintf("%.0f %s\"", whole.Inches(), part)
}

// signed writes a level: feet and inches, or metres to three places.
func (w *writer) signed(z float64) string {
	metric := w.unit() == render.Millimetre
	v := w.text(math.Abs(z))
	if metric {
		v = fmt.Sprintf("%.3f", math.Abs(z)/1000)
	}
	switch {
	case math.Abs(z) < 0.05:
		return "±0" + either(metric, ".000", "\"")
	case z > 0:
		return "+" + v
	}
	return "-" + v
}
