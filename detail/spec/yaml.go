package spec

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// Bounds that keep the reading of any file short.
const (
	manyBytes = 10 << 20
	manyMarks = 200000 // line ends and commas: no value comes without one
)

// plant reads src as one YAML document and returns its root, blank when there is nothing in it. With
// problems there is no root.
func plant(file string, src []byte) (*node, Problems) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	if p, bad := unreadable(file, src); bad {
		return nil, Problems{p}
	}
	dec := yaml.NewDecoder(bytes.NewReader(src))
	var doc yaml.Node
	err := dec.Decode(&doc)
	if errors.Is(err, io.EOF) {
		return &node{at: place{file, 1, 1}}, nil
	}
	if err != nil {
		return nil, Problems{syntaxProblem(file, src, err)}
	}
	var second yaml.Node
	if err := dec.Decode(&second); !errors.Is(err, io.EOF) {
		at := place{file, max(second.Line, 1), max(second.Column, 1)}
		return nil, Problems{at.problem("", "a second document begins after ---", "one file is one project", "put it in a file of its own")}
	}
	g := &grower{file: file, within: map[*yaml.Node]bool{}}
	root := g.grow(doc.Content[0], under{}, 0)
	if len(g.problems) == 0 && root.form != table && root.form != blank {
		g.fail(doc.Content[0], "", root.form.String()+" stands where the sections should", "a project file begins with project:", "")
	}
	if root.form != table && root.form != blank {
		return nil, g.problems
	}
	return root, g.problems
}

// unreadable finds what makes a file no text at all, before the YAML reader sees it.
func unreadable(file string, src []byte) (Problem, bool) {
	top := place{file, 1, 1}
	switch {
	case len(src) > manyBytes:
		return top.problem("", fmt.Sprintf("the file has %d bytes", len(src)), fmt.Sprintf("at most %d are read", manyBytes), ""), true
	case bytes.HasPrefix(src, []byte("\xff\xfe")) || bytes.HasPrefix(src, []byte("\xfe\xff")):
		return top.problem("", "the file is UTF-16", "", "save it as UTF-8"), true
	case bytes.Count(src, []byte("\n"))+bytes.Count(src, []byte(",")) > manyMarks:
		return top.problem("", fmt.Sprintf("the file has more than %d lines and commas", manyMarks), "", "a project file has a few hundred"), true
	}
	return badCharacter(file, src)
}

// badCharacter finds the first byte that is not UTF-8, the first control character, and the first tab
// at the head of a line.
func badCharacter(file string, src []byte) (Problem, bool) {
	at, indent := place{file, 1, 1}, true
	for i := 0; i < len(src); {
		r, size := rune(src[i]), 1
		if r >= utf8.RuneSelf {
			r, size = utf8.DecodeRune(src[i:])
		}
		switch {
		case r == utf8.RuneError && size == 1:
			return at.problem("", "this is not UTF-8 text", "", "save the file as UTF-8"), true
		case r == '\t' && indent:
			return at.problem("", "a tab indents this line", "", "indent with spaces"), true
		case r < ' ' && r != '\n' && r != '\r' && r != '\t' || r == 0x7f:
			return at.problem("", fmt.Sprintf("control character %#02x", r), "", "delete it"), true
		}
		at.col++
		if r == '\n' {
			at.line, at.col, indent = at.line+1, 1, true
		} else if r != ' ' && r != '\t' {
			indent = false
		}
		i += size
	}
	return Problem{}, false
}

// syntaxProblem puts an error of the YAML reader into our words.
func syntaxProblem(file string, src []byte, err error) Problem {
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	at := place{file, 1, 1}
	if m := regexp.MustCompile(`^line (\d+): `).FindStringSubmatch(text); m != nil {
		at.line, _ = strconv.Atoi(m[1])
		text = strings.TrimPrefix(text, m[0])
	}
	if strings.HasPrefix(text, "did not find expected") {
		at.line++ // its parser counts from 0, its scanner from 1
	}
	if m := regexp.MustCompile(`^unknown anchor '(.*)'`).FindStringSubmatch(text); m != nil {
		at = placeOf(file, src, "*"+m[1])
	}
	at.line = min(max(at.line, 1), 1+bytes.Count(src, []byte("\n")))
	return at.problem("", "not readable as YAML: "+text, "", syntaxHelp(text))
}

// placeOf returns where text first stands in src, the top when it does not.
func placeOf(file string, src []byte, text string) place {
	i := max(bytes.Index(src, []byte(text)), 0)
	head := src[:i]
	start := bytes.LastIndexByte(head, '\n') + 1
	return place{file, 1 + bytes.Count(head, []byte("\n")), 1 + utf8.RuneCount(head[start:])}
}

// syntaxHelp says what usually lies behind an error of the YAML reader.
func syntaxHelp(text string) string {
	for _, h := range []struct{ part, do string }{
		{"mapping values are not allowed", "one name: value stands on a line; put the value in quotes if it has a colon and a space in it"},
		{"did not find expected ',' or ']'", "close the bracket [ ] or put a comma between the values"},
		{"did not find expected ',' or '}'", "close the brace { } or put a comma between the values"},
		{"could not find expected ':'", "put a colon and a space after the name, and look at the indent of the lines around"},
		{"did not find expected key", "look at the indent of this line and the one before, and at quotes left open"},
		{"did not find expected '-' indicator", "begin each item of the list with - at the same indent"},
		{"cannot start any token", "put the value in quotes"},
		{"found unexpected end of stream", "a quote is left open"},
		{"unknown anchor", "write the value out in place of *name"},
		{"found unknown escape character", "use single quotes around a text with \\"},
		{"exceeded max depth", "close the brackets"},
	} {
		if strings.Contains(text, h.part) {
			return h.do
		}
	}
	return "look at the indent, the quotes and the brackets near this line"
}
