package font

import "strings"

// Wrap breaks s into lines no wider than width, for capitals height tall: at spaces, as full as they
// go. A newline always breaks. A word wider than width is cut between characters; a line holds one
// character at least, however narrow the column. Runs of spaces become one; a no-break space does
// not break, and bytes that are no UTF-8 become U+FFFD. The empty string has no lines.
func Wrap(s string, height, width float64, bold bool) []string {
	if s == "" {
		return nil
	}
	var lines []string
	for par := range strings.SplitSeq(strings.ToValidUTF8(s, "\ufffd"), "\n") {
		lines = append(lines, wrapParagraph(par, height, width, bold)...)
	}
	return lines
}

func wrapParagraph(s string, height, width float64, bold bool) []string {
	fits := func(s string) bool { return Width(s, height, bold) <= width+1e-9 }
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(s, breaks) {
		if line != "" && fits(line+" "+word) {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		pieces := cut(word, fits)
		lines = append(lines, pieces[:len(pieces)-1]...)
		line = pieces[len(pieces)-1]
	}
	return append(lines, line)
}

// cut splits a valid UTF-8 word into the longest pieces that fit, one character each at least.
func cut(word string, fits func(string) bool) []string {
	var pieces []string
	start := 0
	for i, r := range word {
		if i > start && !fits(word[start:i+len(string(r))]) {
			pieces = append(pieces, word[start:i])
			start = i
		}
	}
	return append(pieces, word[start:])
}

func breaks(r rune) bool { return r == ' ' || r == '\t' || r == '\r' }
