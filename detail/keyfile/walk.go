package keyfile

import (
	"fmt"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v3"
)

// Row is one name of a section with its value.
type Row struct {
	Name     string
	Key, Val *yaml.Node
}

// Section returns the rows of a section in the order of the file, names unique; none when n is not one.
func (r *Reader) Section(n *yaml.Node, path, holds string) []Row {
	if n.Kind != yaml.MappingNode {
		r.Fail(n, path, form(n)+" stands where a section should", holds, "")
		return nil
	}
	var rows []Row
	seen := map[string]int{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		name := k.Value
		switch line, twice := seen[name]; {
		case k.Kind != yaml.ScalarNode || name == "":
			r.Fail(k, path, "the name of a value is not plain text", "", "write name: value")
		case twice:
			r.Fail(k, Join(path, Cut(name)), fmt.Sprintf("given twice, first in line %d", line), "", "keep one of the two")
		case v.Kind == yaml.AliasNode || v.Anchor != "" || name == "<<":
			r.Fail(v, Join(path, Cut(name)), "anchors are not read here", "", "write the value out")
		default:
			seen[name] = k.Line
			rows = append(rows, Row{name, k, v})
		}
	}
	return rows
}

// Keyed returns the values of a section by name, and refuses names that are not among keys.
func (r *Reader) Keyed(n *yaml.Node, path string, keys ...string) map[string]*yaml.Node {
	holds := "it holds " + strings.Join(keys, ", ")
	out := map[string]*yaml.Node{}
	for _, row := range r.Section(n, path, holds) {
		known := false
		for _, k := range keys {
			known = known || k == row.Name
		}
		if !known {
			r.Fail(row.Key, Join(path, Cut(row.Name)), fmt.Sprintf("%q is not a key of %s", Cut(row.Name), r.orWhole(path)), holds, "")
			continue
		}
		if !Blank(row.Val) {
			out[row.Name] = row.Val
		}
	}
	return out
}

// List returns the items of a list; none when n is not one.
func (r *Reader) List(n *yaml.Node, path, wanted string) []*yaml.Node {
	if n.Kind != yaml.SequenceNode {
		r.Fail(n, path, form(n)+" stands where a list should", wanted, "")
		return nil
	}
	for _, item := range n.Content {
		if item.Kind == yaml.AliasNode || item.Anchor != "" {
			r.Fail(item, path, "anchors are not read here", "", "write the value out")
			return nil
		}
	}
	return n.Content
}

// One returns the text of a single value.
func (r *Reader) One(n *yaml.Node, path, wanted string) (string, bool) {
	if n.Kind != yaml.ScalarNode || Blank(n) {
		r.Fail(n, path, form(n)+" stands where one value should", wanted, "")
		return "", false
	}
	return strings.TrimSpace(n.Value), true
}

// Blank reports whether n gives nothing.
func Blank(n *yaml.Node) bool {
	return n.Kind == yaml.ScalarNode && (strings.TrimSpace(n.Value) == "" || n.Tag == "!!null")
}

// form says what n is.
func form(n *yaml.Node) string {
	switch {
	case Blank(n):
		return "nothing"
	case n.Kind == yaml.ScalarNode:
		return "one value"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case n.Kind == yaml.MappingNode:
		return "a section"
	}
	return "an alias"
}

// Join returns the dotted path of a name in a section.
func Join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func (r *Reader) orWhole(path string) string {
	if path == "" {
		return r.What
	}
	return path
}

// Cut makes a text fit for a message of one line: short, and with a ? for what does not print.
func Cut(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:37]) + "..."
	}
	return Printed(s)
}

// Printed is a text as it may be printed on a terminal or a sheet: with a ? for what does not print.
func Printed(s string) string {
	return strings.Map(func(c rune) rune {
		if !unicode.IsPrint(c) {
			return '?'
		}
		return c
	}, s)
}
