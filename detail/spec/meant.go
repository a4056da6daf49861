package spec

import (
	"math"
	"slices"
	"strings"

	"standclear/detail/unit"
)

// otherUnit tries the figure of text in the other units of its kind and names the one that is in range
// and changes the value least: 89 mm would be 3 1/2 in. Otherwise it asks to look again.
func (k key) otherUnit(text string, v float64, sys unit.System) string {
	m, n := k.kind.measure(), figureOf(text)
	best, meant, factor := "", 0.0, math.Inf(1)
	for _, u := range m.units {
		w, err := m.parse(n + u)
		far := math.Abs(math.Log(math.Abs(w / v)))
		if n != "" && err == nil && w != v && w >= k.lo && w <= k.hi && (best == "" || far < factor) {
			best, meant, factor = n+" "+strings.TrimSpace(u), w, far
		}
	}
	switch said := k.said(meant, sys); best {
	case "":
		return "look at the figure and its unit"
	case said:
		return "did you mean " + said + "?"
	default:
		return best + " would be " + said
	}
}

// withUnit offers a bare number with the units that bring it into range; otherwise the help there was.
func (k key) withUnit(text, help string) string {
	var fit []string
	n := strings.ReplaceAll(text, ",", "")
	m := k.kind.measure()
	for _, u := range m.units {
		if v, err := m.parse(n + u); k.ranged && err == nil && v >= k.lo && v <= k.hi {
			fit = append(fit, n+u)
		}
	}
	if len(fit) == 0 {
		return help
	}
	return "write " + strings.Join(fit, " or ")
}

// figureOf returns the number at the head of a text with one unit; "" when there is more to it, as in
// feet and inches.
func figureOf(text string) string {
	rest := strings.TrimLeft(text, "+-0123456789./ ")
	if strings.ContainsAny(strings.TrimSuffix(rest, "2"), "0123456789") { // kN/m2 has one unit
		return ""
	}
	return strings.TrimSpace(strings.TrimSuffix(text, rest))
}

// said writes a value in running text: 3 1/2 in rather than 3 1/2", which would end a quote.
func (k key) said(v float64, sys unit.System) string {
	s := k.kind.measure().print(v, sys)
	if strings.HasSuffix(s, `"`) && !strings.Contains(s, "'") {
		return strings.TrimSuffix(s, `"`) + " in"
	}
	return s
}

// spaced puts a space between a figure and its unit.
func spaced(text string) string {
	n := figureOf(text)
	if n == "" {
		return text
	}
	return n + " " + strings.TrimSpace(strings.TrimPrefix(text, n))
}

// meantKey says where a mistyped or misplaced name belongs.
func meantKey(keys []key, name string) string {
	var here []string
	for _, k := range keys {
		here = append(here, k.name)
	}
	if help := meant(name, here); help != "" {
		return help
	}
	var there []string
	for _, p := range paths(keysOf(unit.IP), "") {
		if strings.HasSuffix(p, "."+name) {
			there = append(there, p)
		}
	}
	if len(there) != 1 {
		return ""
	}
	return "did you mean " + there[0] + "?"
}

// meant offers the word nearest to s, when one is near enough.
func meant(s string, words []string) string {
	best, far := "", 0
	s = loose(s[:min(len(s), longText)])
	for _, w := range words {
		d := distance(s, loose(w))
		if best == "" || d < far {
			best, far = w, d
		}
	}
	if best == "" || len(s) > 40 || far > (len(best)+2)/4 || far >= len(best) {
		return ""
	}
	return "did you mean " + best + "?"
}

// distance counts the characters to add, drop, change or swap with the next to turn a into b. Texts
// past 64 bytes are cut.
func distance(a, b string) int {
	a, b = a[:min(len(a), 64)], b[:min(len(b), 64)]
	var before, last []int
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		before, last, row = last, row, make([]int, len(b)+1)
		row[0] = i
		for j := 1; j <= len(b); j++ {
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+boolInt(a[i-1] != b[j-1]))
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return row[len(b)]
}

func has(keys []key, name string) bool {
	for i := range keys {
		if keys[i].name == name {
			return true
		}
	}
	return false
}

func names(keys []key) string {
	var all []string
	for _, k := range keys {
		all = append(all, k.name)
	}
	return strings.Join(all, ", ")
}

// Nearest returns up to n of the words that are most like s: those that hold it or are held by it first, then those
// with the fewest characters to change.
func Nearest(s string, words []string, n int) []string {
	s = loose(s[:min(len(s), longText)])
	far := func(w string) int {
		w = loose(w)
		if s != "" && (strings.Contains(w, s) || strings.Contains(s, w)) {
			return len(w) - len(s) - longText
		}
		return distance(s, w)
	}
	all := slices.Clone(words)
	slices.SortStableFunc(all, func(a, b string) int { return far(a) - far(b) })
	return all[:min(n, len(all))]
}
