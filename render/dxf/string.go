package dxf

import (
	"strings"
	"unicode"

	"standclear/render"
)

// Strings of the format. A value stands on one line and holds no control characters; render.Clean
// sees to that, for all formats alike. These have a meaning inside it and are made harmless:
//
//	^X       a control character      written "^ " for a caret
//	%%X      a sign or a switch       two per cent signs in a row are kept apart by a blank
//	\U+XXXX  a character by number    kept apart by a blank
//	\ { }    paragraph text only      escaped with a backslash
//
// Three signs have codes that every reader knows, and are written so in drawn text.

const (
	maxString = 255 // bytes in one value
	chunk     = 250 // bytes of paragraph text in one value
	maxKey    = 64  // bytes in the name of a property

	// Bytes of extended data from one source; an entity may hold about twice that (from memory, confirm).
	maxRemember = 8000
)

// sign returns the code of a sign that has one, else "".
func sign(r rune) string {
	switch r {
	case '\u00b0': // degree
		return "%%d"
	case '\u00b1': // plus-minus
		return "%%p"
	case '\u00d8', '\u2300': // diameter, as a letter and as a sign
		return "%%c"
	}
	return ""
}

// clean makes user text safe for a value that is not drawn: names in it, extended data.
func clean(s string) string {
	if simple(s) {
		return s
	}
	return strings.Join(atoms(s, nil), "")
}

// plain makes user text safe for single-line text.
func plain(s string) string {
	if simple(s) {
		return s
	}
	return strings.Join(atoms(s, sign), "")
}

// simple reports whether every character of s stands for itself wherever it is written.
func simple(s string) bool {
	for i := range len(s) {
		switch c := s[i]; {
		case c < ' ', c > '~', c == '^', c == '%', c == '\\', c == '{', c == '}':
			return false
		}
	}
	return true
}

// paragraph makes user text safe for paragraph text, in pieces that must not be cut.
func paragraph(s string) []string {
	if simple(s) {
		return strings.Split(s, "")
	}
	return atoms(s, func(r rune) string {
		switch r {
		case '\\', '{', '}':
			return `\` + string(r)
		}
		return sign(r)
	})
}

// atoms splits s into the written forms of its characters. own gives the form of a character that
// the kind of drawn text writes in its own way, "" for the others; it is nil for what is not drawn.
func atoms(s string, own func(rune) string) []string {
	var out []string
	prev, before := ' ', ' ' // the last two characters read
	for _, r := range render.Clean(s) {
		a := ""
		if own != nil {
			a = own(r)
		}
		percent := own != nil && prev == '%' && (r == '%' || strings.HasPrefix(a, "%%"))
		number := before == '\\' && r == '+' && strings.ContainsRune("UuMm", prev)
		if percent || number {
			out = append(out, " ")
		}
		switch {
		case a == "" && r == '^':
			a = "^ "
		case a == "":
			a = string(r)
		}
		out = append(out, a)
		before, prev = prev, r
	}
	return out
}

// pack joins atoms to values of at most n bytes each, at least one.
func pack(atoms []string, n int) []string {
	out := []string{""}
	for _, a := range atoms {
		last := len(out) - 1
		if len(out[last])+len(a) > n {
			out = append(out, "")
			last++
		}
		out[last] += a
	}
	return out
}

// name makes a string fit to name a layer, block, style or layout, at most render.MaxName bytes of it.
func name(s string) string {
	s = strings.Map(func(r rune) rune {
		if r == unicode.ReplacementChar || strings.ContainsRune(render.NotInNames, r) {
			return '-'
		}
		return r
	}, strings.TrimSpace(render.Clean(s)))
	return strings.TrimSpace(pack(strings.Split(s, ""), render.MaxName)[0])
}

// field makes a string fit to name an attribute: upper case, without blanks.
func field(s string) string {
	return strings.ToUpper(strings.ReplaceAll(name(s), " ", "_"))
}
