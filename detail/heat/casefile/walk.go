package casefile

import (
	"fmt"
	"strings"

	"go.yaml.in/yaml/v3"
)

// row is one name of a section with its value.
type row struct {
	name     string
	key, val *yaml.Node
}

// section returns the rows of a section in the order of the file, names unique; none when n is not one.
func (r *reader) section(n *yaml.Node, path, holds string) []row {
	if n.Kind != yaml.MappingNode {
		r.fail(n, path, form(n)+" stands where a section should", holds, "")
		return nil
	}
	var rows []row
	seen := map[string]int{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		name := k.Value
		switch line, twice := seen[name]; {
		case k.Kind != yaml.ScalarNode || name == "":
			r.fail(k, path, "the name of a value is not plain text", "", "write name: value")
		case twice:
			r.fail(k, join(path, cut(name)), fmt.Sprintf("given twice, first in line %d", line), "", "keep one of the two")
		case v.Kind == yaml.AliasNode || v.Anchor != "" || name == "<<":
			r.fail(v, join(path, cut(name)), "anchors are not read here", "", "write the value out")
		default:
			seen[name] = k.Line
			rows = append(rows, row{name, k, v})
		}
	}
	return rows
}

// keyed returns the values of a section by name, and refuses names that are not among keys.
func (r *reader) keyed(n *yaml.Node, path string, keys ...string) map[string]*yaml.Node {
	holds := "it holds " + strings.Join(keys, ", ")
	out := map[string]*yaml.Node{}
	for _, row := range r.section(n, path, holds) {
		known := false
		for _, k := range keys {
			known = known || k == row.name
		}
		if !known {
			r.fail(row.key, join(path, cut(row.name)), fmt.Sprintf("%q is not a key of %s", cut(row.name), orCase(path)), holds, "")
			continue
		}
		if !blank(row.val) {
			out[row.name] = row.val
		}
	}
	return out
}

// list returns the items of a list; none when n is not one.
func (r *reader) list(n *yaml.Node, path, wanted string) []*yaml.Node {
	if n.Kind != yaml.SequenceNode {
		r.fail(n, path, form(n)+" stands where a list should", wanted, "")
		return nil
	}
	for _, item := range n.Content {
		if item.Kind == yaml.AliasNode || item.Anchor != "" {
			r.fail(item, path, "anchors are not read here", "", "write the value out")
			return nil
		}
	}
	return n.Content
}

// one returns the text of a single value.
func (r *reader) one(n *yaml.Node, path, wanted string) (string, bool) {
	if n.Kind != yaml.ScalarNode || blank(n) {
		r.fail(n, path, form(n)+" stands where one value should", wanted, "")
		return "", false
	}
	return strings.TrimSpace(n.Value), true
}

func blank(n *yaml.Node) bool {
	return n.Kind == yaml.ScalarNode && (strings.TrimSpace(n.Value) == "" || n.Tag == "!!null")
}

func form(n *yaml.Node) string {
	switch {
	case blank(n):
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

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func orCase(path string) string {
	if path == "" {
		return "a case"
	}
	return path
}

// cut shortens a text for a message.
func cut(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:37]) + "..."
	}
	return s
}
