package unit

import (
	"strconv"
	"strings"
)

// number is what scanNumber found at the head of a text.
type number struct {
	v       float64
	text    string // as typed, without sign
	decimal bool   // written with a point
	commas  bool   // written with thousands commas
}

// longest is the most bytes a quantity may have; a longer text is not one.
const longest = 80

// tidy trims s and turns the signs word processors put in into plain ones: primes and curly quotes
// into ' and ", minus and dash into -, one-character fractions into 1/2, wide spaces into a space.
func tidy(s string) string {
	if len(s) > 4*longest {
		s = s[:4*longest]
	}
	if keyboard(s) {
		return strings.TrimSpace(strings.ReplaceAll(s, "''", `"`))
	}
	s = vulgar(s)
	s = strings.NewReplacer(
		"′", "'", "’", "'", "‘", "'", "″", `"`, "”", `"`, "“", `"`,
		"−", "-", "–", "-", "⁄", "/", "∕", "/", "\u00a0", " ", "\u2009", " ", "\u202f", " ",
		"²", "2", "^", "", "°", "", "·", ".", "×", "x", "\t", " ",
	).Replace(s)
	s = strings.ReplaceAll(s, "''", `"`)
	return strings.TrimSpace(s)
}

// keyboard reports whether s holds nothing but plain characters that tidy would leave alone.
func keyboard(s string) bool {
	for i := range len(s) {
		if s[i] >= 0x80 || s[i] == '^' || s[i] == '\t' {
			return false
		}
	}
	return true
}

// vulgar writes one-character fractions out, apart from a digit before them: 7½ is 7 1/2.
func vulgar(s string) string {
	var b strings.Builder
	digit := false
	for _, r := range s {
		f, ok := vulgarFraction(r)
		switch {
		case ok && digit:
			b.WriteString(" " + f)
		case ok:
			b.WriteString(f)
		default:
			b.WriteRune(r)
		}
		digit = isDigit(byte(r)) && r < 0x80
	}
	return b.String()
}

func vulgarFraction(r rune) (string, bool) {
	switch r {
	case '½':
		return "1/2", true
	case '¼':
		return "1/4", true
	case '¾':
		return "3/4", true
	case '⅛':
		return "1/8", true
	case '⅜':
		return "3/8", true
	case '⅝':
		return "5/8", true
	case '⅞':
		return "7/8", true
	case '⅓':
		return "1/3", true
	case '⅔':
		return "2/3", true
	}
	return "", false
}

// scanSign takes a leading + or - off s; the sign is 1 or -1.
func scanSign(s string) (sign float64, rest string) {
	if s != "" && s[0] == '-' {
		return -1, s[1:]
	}
	return 1, strings.TrimPrefix(s, "+")
}

// scanNumber reads the unsigned number at the head of s: 7, 7.5, .5, 1/2, 7 1/2, 7-1/2, 1,500.
// The rest follows it, trimmed. The reason is empty when the number is good.
func scanNumber(s string) (n number, rest, reason string) {
	whole := digits(s)
	rest = s[len(whole):]
	switch {
	case strings.HasPrefix(rest, "."):
		n, rest = decimal(whole, rest)
	case strings.HasPrefix(rest, ",") && whole != "":
		n, rest, reason = grouped(whole, rest)
	case strings.HasPrefix(rest, "/") && whole != "":
		n, rest, reason = fraction(whole, rest)
	default:
		n, rest, reason = mixed(whole, rest)
	}
	if reason != "" {
		return number{}, "", reason
	}
	if n.text == "" {
		return number{}, "", "no number in it"
	}
	if n.v > 1e15 {
		return number{}, "", "the number is too large"
	}
	return n, strings.TrimSpace(rest), ""
}

// decimal reads the point and the digits after whole.
func decimal(whole, rest string) (number, string) {
	part := digits(rest[1:])
	if part == "" {
		return number{}, rest
	}
	text := whole + "." + part
	return number{v: float(text), text: text, decimal: true}, rest[1+len(part):]
}

// grouped reads the groups of three after whole: 1,500. Any other comma is refused, because it may
// be a decimal comma, a thousand times less.
func grouped(whole, rest string) (number, string, string) {
	const unclear = "a comma can be read two ways"
	text := whole
	if len(whole) > 3 {
		return number{}, "", unclear
	}
	for strings.HasPrefix(rest, ",") {
		group := digits(rest[1:])
		if len(group) != 3 {
			return number{}, "", unclear
		}
		text += group
		rest = rest[4:]
	}
	return number{v: float(text), text: text, commas: true}, rest, ""
}

// fraction reads the denominator after the numerator.
func fraction(top, rest string) (number, string, string) {
	bottom := digits(rest[1:])
	v := float(bottom)
	if bottom == "" || v == 0 {
		return number{}, "", "a fraction has nothing or zero below the line"
	}
	return number{v: float(top) / v, text: top + "/" + bottom}, rest[1+len(bottom):], ""
}

// mixed reads a whole number and, when one follows after a space or hyphen, its fraction.
func mixed(whole, rest string) (number, string, string) {
	n := number{v: float(whole), text: whole}
	if whole == "" {
		return n, rest, ""
	}
	tail := strings.TrimLeft(rest, " ")
	if tail == rest {
		tail = strings.TrimPrefix(rest, "-")
	}
	top := digits(tail)
	if tail == rest || top == "" || !strings.HasPrefix(tail[len(top):], "/") {
		return n, rest, ""
	}
	f, rest, reason := fraction(top, tail[len(top):])
	if reason == "" && f.v >= 1 {
		reason = f.text + " after a whole number is not less than 1"
	}
	return number{v: n.v + f.v, text: whole + " " + f.text}, rest, reason
}

// float reads digits with at most one point; too many digits read as more than any limit.
func float(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64) // only ErrRange can happen, and then v is +Inf
	return v
}

func digits(s string) string {
	i := 0
	for i < len(s) && isDigit(s[i]) {
		i++
	}
	return s[:i]
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
