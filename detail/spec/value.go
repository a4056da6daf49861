package spec

import (
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"standclear/detail/unit"
)

// figure reads a number with its unit into k.
func (r *reader) figure(k *key, n *node, path string) {
	if k.auto && strings.EqualFold(n.text, "auto") {
		k.number.put(0)
		return
	}
	v, err := k.kind.measure().parse(n.text)
	var syntax *unit.SyntaxError
	if errors.As(err, &syntax) {
		r.fail(n.at, path, syntax.Given, syntax.Forms, k.withUnit(n.text, syntax.Do))
		return
	}
	if slack := 1e-9 * (1 + k.hi - k.lo); k.ranged && !(v >= k.lo-slack && v <= k.hi+slack) {
		given := fmt.Sprintf("%s is outside %s", cut(n.text), k.span(r.sys()))
		r.fail(n.at, path, given, "", k.otherUnit(n.text, v, r.sys()))
		return
	}
	k.number.put(v)
	if k.kind != aLength || !strings.Contains(n.text, ".") {
		return
	}
	if mistaken, ok := unit.DecimalFeet(n.text); ok {
		r.caution(n.at, path, fmt.Sprintf("%s is %s, not %s", spaced(n.text), unit.Length(v).FeetInches(unit.Sixteenth), mistaken.FeetInches(unit.Sixteenth)),
			"write feet and inches")
	}
}

// caution notes a warning.
func (r *reader) caution(at place, path, given, do string) {
	p := at.problem(path, given, "", do)
	p.Warning = true
	r.problems = append(r.problems, p)
}

// lettering reads a text, a word or a date into k.
func (r *reader) lettering(k *key, n *node, path string) {
	s := n.text
	switch k.kind {
	case aSize:
		// read by spreadSizes
	case aWord:
		w, ok := k.word(s)
		if !ok {
			r.fail(n.at, path, fmt.Sprintf("%q is not allowed", cut(s)), k.wanted(r.sys()), meant(s, k.words))
			return
		}
		s = w
	case aDate:
		if _, err := time.Parse(time.DateOnly, s); err != nil {
			r.fail(n.at, path, fmt.Sprintf("%q is not a date", cut(s)), "a date is written 2026-11-02", "")
			return
		}
	default:
		if wrong := unfitText(s); wrong != "" {
			r.fail(n.at, path, wrong, "", "write one line of plain text")
			return
		}
	}
	k.text.write(s)
}

// word finds what s means among the words of k, whatever its case, spaces and hyphens.
func (k *key) word(s string) (string, bool) {
	if len(s) > longText {
		return "", false
	}
	l := loose(s)
	for _, w := range k.words {
		if loose(w) == l {
			return w, true
		}
	}
	if k.means != nil {
		if w, ok := k.means(s); ok {
			return w, true
		}
	}
	return "", false
}

// loose leaves out what people write one way or another: case, spaces, hyphens.
func loose(s string) string {
	return strings.Map(func(c rune) rune {
		if c == ' ' || c == '-' || c == '_' {
			return -1
		}
		return unicode.ToLower(c)
	}, s)
}

// longText is the most characters a printed text may have.
const longText = 200

// unfitText says why a text cannot be printed on a sheet; "" when it can.
func unfitText(s string) string {
	if len([]rune(s)) > longText {
		return fmt.Sprintf("the text has more than %d characters", longText)
	}
	if strings.ContainsAny(s, "\n\r") {
		return "the text runs over more than one line"
	}
	if !utf8.ValidString(s) {
		return "the text is not UTF-8"
	}
	for _, c := range s {
		if !unicode.IsPrint(c) {
			return fmt.Sprintf("the text holds the character %U, which does not print", c)
		}
	}
	return ""
}

// wanted says what may stand under k.
func (k key) wanted(sys unit.System) string {
	switch {
	case k.kind == aWord:
		return k.allowed(sys)
	case k.kind == aDate:
		return "a date is written 2026-11-02"
	case k.ranged:
		return k.kind.measure().name + " of " + k.allowed(sys)
	}
	return k.kind.measure().name + " is wanted"
}

// allowed writes the words or the range of k.
func (k key) allowed(sys unit.System) string {
	if k.kind == aWord {
		return "one of " + strings.Join(k.words, ", ")
	}
	return k.span(sys)
}

// span writes the range of k.
func (k key) span(sys unit.System) string {
	m := k.kind.measure()
	if k.kind == aLength || k.kind == aDiameter {
		return lengthSpan(unit.Length(k.lo), unit.Length(k.hi), sys)
	}
	lo, hi := m.print(k.lo, sys), m.print(k.hi, sys)
	if n, u, ok := strings.Cut(lo, " "); ok && strings.HasSuffix(hi, u) {
		lo = n
	}
	return lo + ".." + hi
}

// lengthSpan writes a range of lengths in one unit that suits its upper end.
func lengthSpan(lo, hi unit.Length, sys unit.System) string {
	by, name := unit.Length(unit.MM), "mm"
	switch {
	case sys == unit.SI && hi >= 10*unit.Metre:
		by, name = unit.Metre, "m"
	case sys == unit.IP && hi >= 12*unit.Foot:
		by, name = unit.Foot, "ft"
	case sys == unit.IP:
		by, name = unit.Inch, "in"
	}
	return fmt.Sprintf("%.4g..%.4g %s", float64(lo/by), float64(hi/by), name)
}
