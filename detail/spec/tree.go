package spec

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"
)

// form is what a node is.
type form int

const (
	blank  form = iota // nothing given: empty, null or ~
	scalar             // one value
	list
	table // a section: names and values
)

// String returns the form as a message calls it.
func (f form) String() string { return [...]string{"nothing", "one value", "a list", "a section"}[f] }

// node is one value of the file, or of the command line, with its place.
type node struct {
	form  form
	text  string
	items []*node
	rows  []row // in the order of the file, names unique
	at    place
}

// row is one name of a section with its value.
type row struct {
	name string
	at   place
	val  *node
}

// find returns the row of that name, or nil.
func (n *node) find(name string) *row {
	if n == nil {
		return nil
	}
	for i := range n.rows {
		if n.rows[i].name == name {
			return &n.rows[i]
		}
	}
	return nil
}

// given reports whether the section n has a value that is not blank under name.
func (n *node) given(name string) bool {
	r := n.find(name)
	return r != nil && r.val.form != blank
}

// holds reports whether the section n has any value that is not blank, the name apart left aside.
func (n *node) holds(apart string) bool {
	if n == nil {
		return false
	}
	for _, r := range n.rows {
		if r.name != apart && r.val.form != blank {
			return true
		}
	}
	return false
}

// clone returns a copy of n and all within it; single values, which nothing changes, are shared.
func (n *node) clone() *node {
	if n.form == scalar {
		return n
	}
	c := *n
	c.items, c.rows = slices.Clone(n.items), slices.Clone(n.rows)
	for i, item := range c.items {
		c.items[i] = item.clone()
	}
	for i := range c.rows {
		c.rows[i].val = c.rows[i].val.clone()
	}
	return &c
}

// put sets the value under name, replacing the row there is.
func (n *node) put(name string, at place, val *node) {
	if r := n.find(name); r != nil {
		r.at, r.val = at, val
		return
	}
	n.rows = append(n.rows, row{name, at, val})
}

// Bounds of a project file; one that goes past them is something else.
const (
	deepest  = 12    // sections within sections
	manyNode = 20000 // values, aliases written out
)

// grower turns the nodes of the YAML reader into ours.
type grower struct {
	file     string
	count    int
	full     bool                // manyNode was passed and said so
	within   map[*yaml.Node]bool // anchored nodes being grown
	problems Problems
}

func (g *grower) place(y *yaml.Node) place { return place{g.file, y.Line, y.Column} }

func (g *grower) fail(y *yaml.Node, key, given, allowed, do string) *node {
	g.problems = append(g.problems, g.place(y).problem(key, given, allowed, do))
	return &node{form: blank, at: g.place(y)}
}

// under is where a value stands: in a section, by its name there.
type under struct{ section, name string }

// key is the dotted path of the value.
func (u under) key() string {
	if u == (under{}) {
		return ""
	}
	return join(u.section, cut(u.name))
}

// grow returns y as a node; depth counts the sections around it.
func (g *grower) grow(y *yaml.Node, in under, depth int) *node {
	g.count++
	switch {
	case g.full:
		return &node{at: g.place(y)}
	case g.count > manyNode:
		g.full = true
		return g.fail(y, "", fmt.Sprintf("the file holds more than %d values", manyNode), "", "a project file has a few hundred")
	case depth > deepest:
		return g.fail(y, in.key(), fmt.Sprintf("sections are nested more than %d deep", deepest), "", "close the brackets before this place")
	case y.Style&yaml.TaggedStyle != 0 && y.Kind != yaml.AliasNode:
		return g.fail(y, in.key(), fmt.Sprintf("the tag %s is not read here", cut(y.Tag)), "", "write the value alone")
	}
	if y.Anchor != "" {
		g.within[y] = true
		defer delete(g.within, y)
	}
	switch y.Kind {
	case yaml.AliasNode:
		return g.alias(y, in, depth)
	case yaml.SequenceNode:
		n, key := &node{form: list, at: g.place(y)}, in.key()
		for i, item := range y.Content {
			n.items = append(n.items, g.grow(item, under{key, strconv.Itoa(i)}, depth+1))
		}
		return n
	case yaml.MappingNode:
		return g.section(y, in.key(), depth)
	}
	return g.scalar(y)
}

// scalar returns one value; an empty one, null and ~ are blank unless quoted.
func (g *grower) scalar(y *yaml.Node) *node {
	n := &node{form: scalar, text: strings.TrimSpace(y.Value), at: g.place(y)}
	quoted := y.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0
	if n.text == "" || !quoted && (n.text == "~" || strings.EqualFold(n.text, "null")) {
		n.form, n.text = blank, ""
	}
	return n
}

// alias writes out what an alias stands for, at the place of the alias.
func (g *grower) alias(y *yaml.Node, in under, depth int) *node {
	if g.within[y.Alias] {
		return g.fail(y, in.key(), fmt.Sprintf("*%s stands inside the value it names", cut(y.Value)), "", "write the value out")
	}
	n := g.grow(y.Alias, in, depth)
	n.at = g.place(y)
	return n
}

func (g *grower) section(y *yaml.Node, key string, depth int) *node {
	n := &node{form: table, at: g.place(y), rows: make([]row, 0, min(len(y.Content)/2, manyNode))}
	for i := 0; i+1 < len(y.Content); i += 2 {
		name, val := y.Content[i], y.Content[i+1]
		switch first := n.find(name.Value); {
		case name.Kind != yaml.ScalarNode:
			g.fail(name, key, "the name of a value is not plain text", "", "write name: value")
		case name.Value == "<<":
			g.fail(name, key, "<< is not read here", "", "write the values out")
		case first != nil:
			g.fail(name, under{key, name.Value}.key(), fmt.Sprintf("given twice, first in line %d", first.at.line), "", "keep one of the two")
		default:
			n.rows = append(n.rows, row{name.Value, g.place(name), g.grow(val, under{key, name.Value}, depth+1)})
		}
	}
	return n
}

func join(key, name string) string {
	if key == "" {
		return name
	}
	return key + "." + name
}
