package spec

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// Edit returns a project file with other values at some keys, given as KEY=VALUE with the value as it is typed.
// Only the text of those values changes; comments, order and all else stay. A key that is not there yet is put
// at the end of its section. It fails when a value cannot be changed in place: where it comes from an anchor,
// or stands in a list written line by line. The result reads as the file did with --set; a caller that doubts
// it compares the hashes.
func Edit(src []byte, sets []string) ([]byte, error) {
	for _, set := range sets {
		key, value, ok := strings.Cut(set, "=")
		if !ok {
			return nil, fmt.Errorf("%q is not key=value", cut(set))
		}
		var err error
		if src, err = edit(src, strings.Split(key, "."), value); err != nil {
			return nil, fmt.Errorf("%s cannot be written: %w", key, err)
		}
	}
	return src, nil
}

// edit changes one value.
func edit(src []byte, path []string, value string) ([]byte, error) {
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil || len(doc.Content) == 0 {
		return nil, fmt.Errorf("the file cannot be read as YAML")
	}
	n := doc.Content[0]
	for i, name := range path {
		if n.Anchor != "" || n.Kind == yaml.AliasNode {
			return nil, fmt.Errorf("the value comes from an anchor in line %d; write it out", n.Line)
		}
		next := child(n, name)
		if next == nil {
			return insert(src, n, path[i:], value)
		}
		n = next
	}
	from, to, err := extent(src, n)
	if err != nil {
		return nil, err
	}
	return slices.Concat(src[:from], []byte(value), src[to:]), nil
}

// child returns what stands under a name, nil when nothing does.
func child(n *yaml.Node, name string) *yaml.Node {
	switch n.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			if n.Content[i].Value == name {
				return n.Content[i+1]
			}
		}
	case yaml.SequenceNode:
		if i, ok := index(name); ok && i < len(n.Content) {
			return n.Content[i]
		}
	}
	return nil
}

// extent returns where the text of a value begins and ends.
func extent(src []byte, n *yaml.Node) (from, to int, err error) {
	from = offset(src, n.Line, n.Column)
	switch {
	case n.Anchor != "" || n.Kind == yaml.AliasNode:
		return 0, 0, fmt.Errorf("the value comes from an anchor in line %d; write it out", n.Line)
	case n.Kind != yaml.ScalarNode && n.Style&yaml.FlowStyle == 0:
		return 0, 0, fmt.Errorf("the value from line %d on is written line by line; put it in brackets", n.Line)
	case n.Kind != yaml.ScalarNode:
		to = closing(src, from)
	case n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0:
		to = quoteEnd(src, from)
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return 0, 0, fmt.Errorf("the value in line %d runs over more than one line", n.Line)
	default:
		if to = from + len(n.Value); to > len(src) || string(src[from:to]) != n.Value {
			return 0, 0, fmt.Errorf("the value in line %d runs over more than one line", n.Line)
		}
	}
	if to < 0 {
		return 0, 0, fmt.Errorf("the end of the value in line %d was not found", n.Line)
	}
	return from, to, nil
}

// offset returns the place of a line and column, which counts characters from 1.
func offset(src []byte, line, col int) int {
	at := 0
	for ; line > 1; line-- {
		at += bytes.IndexByte(src[at:], '\n') + 1
	}
	rest := string(src[at:])
	if at == 0 {
		rest = strings.TrimPrefix(rest, "\ufeff")
		at = len(src) - len(rest)
	}
	for i := range rest {
		if col--; col == 0 {
			return at + i
		}
	}
	return len(src)
}

// quoteEnd returns the place after the quote that closes the one at from, -1 when there is none.
func quoteEnd(src []byte, from int) int {
	q := src[from]
	for i := from + 1; i < len(src); i++ {
		switch {
		case q == '"' && src[i] == '\\':
			i++
		case src[i] == q && q == '\'' && i+1 < len(src) && src[i+1] == q:
			i++
		case src[i] == q:
			return i + 1
		}
	}
	return -1
}

// closing returns the place after the bracket that closes the one at from, quotes and comments passed over;
// -1 when there is none.
func closing(src []byte, from int) int {
	depth := 0
	for i := from; i < len(src); i++ {
		switch c := src[i]; {
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			if depth--; depth == 0 {
				return i + 1
			}
		case (c == '"' || c == '\'') && strings.IndexByte("[{,: ", src[i-1]) >= 0: // inch and foot marks follow a figure
			if i = quoteEnd(src, i) - 1; i < 0 {
				return -1
			}
		case c == '#' && (src[i-1] == ' ' || src[i-1] == '\n'):
			for i < len(src) && src[i] != '\n' {
				i++
			}
		}
	}
	return -1
}

// insert puts the rest of a path with its value at the end of section n.
func insert(src []byte, n *yaml.Node, path []string, value string) ([]byte, error) {
	if n.Kind != yaml.MappingNode {
		return nil, fmt.Errorf("what stands in line %d has no place for %s", n.Line, strings.Join(path, "."))
	}
	if n.Style&yaml.FlowStyle != 0 {
		end := closing(src, offset(src, n.Line, n.Column))
		if end < 0 {
			return nil, fmt.Errorf("the end of the section in line %d was not found", n.Line)
		}
		text := flow(path, value)
		if len(n.Content) > 0 {
			text = ", " + text
		}
		at := end - 1
		for at > 0 && src[at-1] == ' ' {
			at--
		}
		return slices.Concat(src[:at], []byte(text), src[at:]), nil
	}
	last := n.Content[len(n.Content)-1]
	indent := strings.Repeat(" ", n.Content[0].Column-1)
	text := indent + path[0] + ": "
	if len(path) > 1 {
		text += "{" + flow(path[1:], value) + "}"
	} else {
		text += value
	}
	at := lineEnd(src, lastLine(src, last))
	if at == len(src) && at > 0 && src[at-1] != '\n' {
		text = "\n" + text
	}
	return slices.Concat(src[:at], []byte(text+"\n"), src[at:]), nil
}

// flow writes a path and its value as they stand within braces.
func flow(path []string, value string) string {
	if len(path) == 1 {
		return path[0] + ": " + value
	}
	return path[0] + ": {" + flow(path[1:], value) + "}"
}

// lastLine returns the last line that a value takes up.
func lastLine(src []byte, n *yaml.Node) int {
	if n.Kind != yaml.ScalarNode && n.Style&yaml.FlowStyle == 0 && len(n.Content) > 0 {
		return lastLine(src, n.Content[len(n.Content)-1])
	}
	if _, to, err := extent(src, n); err == nil {
		return 1 + bytes.Count(src[:to], []byte("\n"))
	}
	return n.Line
}

// lineEnd returns the place after a line.
func lineEnd(src []byte, line int) int {
	at := 0
	for ; line > 0; line-- {
		i := bytes.IndexByte(src[at:], '\n')
		if i < 0 {
			return len(src)
		}
		at += i + 1
	}
	return at
}
