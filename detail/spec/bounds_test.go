package spec

import (
	"strings"
	"testing"
)

func TestUnreadableFiles(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"not UTF-8", "project:\n  name: caf\xe9\n", "f.yaml:2:12: this is not UTF-8 text; save the file as UTF-8"},
		{"UTF-16", "\xff\xfea\x00", "f.yaml:1:1: the file is UTF-16; save it as UTF-8"},
		{"a tab", "floor:\n\tfinish: 3/4in\n", "f.yaml:2:1: a tab indents this line; indent with spaces"},
		{"a tab behind spaces", "floor:\n  \tfinish: 3/4in\n", "f.yaml:2:3: a tab indents this line; indent with spaces"},
		{"a control character", "a: b\x07", "f.yaml:1:5: control character 0x07; delete it"},
		{"a list", "- a\n", "f.yaml:1:1: a list stands where the sections should; a project file begins with project:"},
		{"a word", "hello\n", "f.yaml:1:1: one value stands where the sections should; a project file begins with project:"},
		{"two documents", "a: 1\n---\nb: 2\n", "f.yaml:2:1: a second document begins after ---; one file is one project; put it in a file of its own"},
		{"no document and one", "---\n---\nb: 2\n", "f.yaml:2:1: a second document begins after ---; one file is one project; put it in a file of its own"},
		{"open bracket", "blocks:\n  plies: [1in, 2in\n  width: 7in\n", "f.yaml:2:1: not readable as YAML: did not find expected ',' or ']'; close the bracket [ ] or put a comma between the values"},
		{"two on a line", "floor: finish: 3in\n", "f.yaml:1:1: not readable as YAML: mapping values are not allowed in this context; one name: value stands on a line; put the value in quotes if it has a colon and a space in it"},
		{"open quote", "a: \"b\n", "f.yaml:2:1: not readable as YAML: found unexpected end of stream; a quote is left open"},
		{"a percent sign", "%a: b\n", "f.yaml:1:1: not readable as YAML: found unexpected non-alphabetical character; look at the indent, the quotes and the brackets near this line"},
		{"list without -", "a:\n  - b\n  c: 3\n", "f.yaml:2:1: not readable as YAML: did not find expected '-' indicator; begin each item of the list with - at the same indent"},
		{"bracket too many", "a: 1\n\nb: [1, 2]]\n", "f.yaml:3:1: not readable as YAML: did not find expected key; look at the indent of this line and the one before, and at quotes left open"},
		{"no colon", "a: 1\nb\nc: 3\n", "f.yaml:2:1: not readable as YAML: could not find expected ':'; put a colon and a space after the name, and look at the indent of the lines around"},
		{"no such anchor", "c: 1\na: *b\n", "f.yaml:2:4: not readable as YAML: unknown anchor 'b' referenced; write the value out in place of *name"},
		{"a tag", "a: !!int 3\n", "f.yaml:1:4: a: the tag !!int is not read here; write the value alone"},
		{"merge", "a: &x {b: 1}\nc: {<<: *x}\n", "f.yaml:2:5: c: << is not read here; write the values out"},
		{"a name that is a list", "[a, b]: 3\n", "f.yaml:1:1: the name of a value is not plain text; write name: value"},
		{"twice", "site: {rain: 3in, rain: 4in}\n", "f.yaml:1:19: site.rain: given twice, first in line 1; keep one of the two"},
		{"inside itself", "site: &a {x: *a}\n", "f.yaml:1:14: site.x: *a stands inside the value it names; write the value out"},
		{"deep", strings.Repeat("a: {", 15) + strings.Repeat("}", 15), "sections are nested more than 12 deep; close the brackets before this place"},
		{"deeper than the YAML reader goes", strings.Repeat("[", 20000), "not readable as YAML: exceeded max depth of 10000; close the brackets"},
	} {
		_, problems := Read("f.yaml", []byte(c.src), nil)
		if got := problems.Error(); !strings.HasPrefix(got, c.want) && !strings.Contains(got, c.want) {
			t.Errorf("%s:\n got %.300s\nwant %s", c.name, got, c.want)
		}
	}
}

// A tab between a name, its value and a comment is no indent.
func TestHarmlessTabs(t *testing.T) {
	_, problems := plant("f.yaml", []byte("site:\n  rain:\t3in\t# another\n"))
	if len(problems) > 0 {
		t.Error(problems.Error())
	}
}

// An alias is read as the value it stands for, at its own place.
func TestAlias(t *testing.T) {
	root, problems := plant("f.yaml", []byte("a: &x 3in\nb: *x\n"))
	if len(problems) > 0 || root.find("b").val.text != "3in" || root.find("b").val.at.line != 2 {
		t.Errorf("%+v %v", root.find("b").val, problems)
	}
}

// Files made to waste time or memory are refused; a bomb that went off would not end before the test does.
func TestBombs(t *testing.T) {
	laughs := "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n"
	for i := range 9 {
		n := string(rune('1' + i))
		p := string(rune('0' + i))
		laughs += "a" + n + ": &a" + n + " [" + strings.TrimSuffix(strings.Repeat("*a"+p+", ", 10), ", ") + "]\n"
	}
	for _, c := range []struct{ name, src, want string }{
		{"alias bomb", laughs, "the file holds more than 20000 values"},
		{"too long", strings.Repeat("#", manyBytes+1), "at most 10485760 are read"},
		{"many lines", strings.Repeat("\n", manyMarks+1), "more than 200000 lines and commas"},
		{"many items", "a: [" + strings.Repeat("1,", 100000) + "]", "more than 20000 values"},
		{"many unknown keys", manyKeys(6000), "more problems from here on are not shown"},
		{"long line", "a: " + strings.Repeat("x", 9<<20), `"a" is not a key of a project file`},
		{"long name", strings.Repeat("x", 9<<20) + ": a", "not readable as YAML"},
		{"long value", "floor: {finish: " + strings.Repeat("9", 9<<20) + "in}", "is not a length"},
		{"long word", "site: {seismic: " + strings.Repeat("x", 9<<20) + "}", "is not allowed"},
		{"long text", "project: {name: " + strings.Repeat("x", 9<<20) + "}", "the text has more than 200 characters"},
		{"long number", "assume: {cap: " + strings.Repeat("9", 9<<20) + "}", "is not a number"},
		{"long count", "fasteners: {through: {columns: " + strings.Repeat("9", 9<<20) + "}}", "is not a whole number"},
		{"long size", "ledger: {size: " + strings.Repeat("2x", 4<<20) + "}", "is not a size of lumber"},
		{"open comments", strings.Repeat("# x\n", 190000), "missing"},
	} {
		s, problems := Read("f.yaml", []byte(c.src), nil)
		got := problems.Error()
		if s != nil || !strings.Contains(got, c.want) || len(problems) > most+1 || len(got) > 100000 {
			t.Errorf("%s: %d problems, %d bytes: %.300s", c.name, len(problems), len(got), got)
		}
	}
}

func manyKeys(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat("k", 1+i%7) + plainNumber(float64(i)) + ": 1\n")
	}
	return b.String()
}
