package spec

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// commandLine is the place of every value given by --set.
func commandLine() place { return place{file: "--set"} }

// override puts the key=value pairs into the tree, in order; a later pair wins over an earlier one. A
// key is dotted, a place in a list counts from 0, and the place after the last appends. An empty value
// takes the key out.
func override(root *node, sets []string) Problems {
	var ps Problems
	for _, set := range sets {
		key, text, ok := strings.Cut(set, "=")
		key = strings.TrimSpace(key)
		if !ok || key == "" {
			given := fmt.Sprintf("%q is not key=value", cut(set))
			ps = append(ps, commandLine().problem("", given, "write for instance ledger.length=14'-8\"", ""))
			continue
		}
		val, problems := setValue(key, strings.TrimSpace(text))
		if len(problems) == 0 {
			problems = root.set(key, val)
		}
		ps = append(ps, problems...)
	}
	return ps
}

// setValue reads the right side of a pair: a list or a section when it opens a bracket, else the text
// as it stands, quotes and all, so that inch marks need no care beyond the shell's.
func setValue(key, text string) (*node, Problems) {
	at := commandLine()
	if text == "" {
		return &node{at: at}, nil
	}
	if text[0] != '[' && text[0] != '{' {
		return &node{form: scalar, text: text, at: at}, nil
	}
	n, ps := plant(at.file, []byte("v: "+text))
	for i := range ps {
		ps[i].Line, ps[i].Col, ps[i].Key = 0, 0, cut(key)
	}
	if len(ps) > 0 || n.find("v") == nil {
		return nil, ps
	}
	n = n.find("v").val
	n.moveTo(at)
	return n, nil
}

// moveTo gives n and all within it one place.
func (n *node) moveTo(at place) {
	n.at = at
	for _, item := range n.items {
		item.moveTo(at)
	}
	for i := range n.rows {
		n.rows[i].at = at
		n.rows[i].val.moveTo(at)
	}
}

// set puts val at the dotted key below n, making the sections on the way.
func (n *node) set(key string, val *node) Problems {
	names := strings.Split(key, ".")
	if len(names) > deepest {
		return fail(key, fmt.Sprintf("the key has more than %d parts", deepest), "")
	}
	for i, name := range names[:len(names)-1] {
		next, ps := n.step(key, name, names[i+1])
		if ps != nil {
			return ps
		}
		n = next
	}
	return n.place(key, names[len(names)-1], val)
}

// step returns the section or list under name, new when there was none; after is the name that
// follows it, a number when it is to be a list.
func (n *node) step(key, name, after string) (*node, Problems) {
	fresh := &node{form: table, at: commandLine()}
	if _, isPlace := index(after); isPlace {
		fresh.form = list
	}
	switch old, ps := n.child(key, name); {
	case ps != nil:
		return nil, ps
	case old == nil || old.form == blank:
		return fresh, n.place(key, name, fresh)
	case old.form == scalar:
		return nil, fail(key, fmt.Sprintf("%s is one value, %q", name, cut(old.text)), "set it as a whole")
	default:
		return old, nil
	}
}

// child returns what stands under name, nil when nothing does.
func (n *node) child(key, name string) (*node, Problems) {
	if n.form != list {
		if r := n.find(name); r != nil {
			return r.val, nil
		}
		return nil, nil
	}
	i, ok := index(name)
	switch {
	case !ok:
		return nil, fail(key, fmt.Sprintf("%q is not a place in the list", cut(name)), "count places from 0")
	case i > len(n.items):
		return nil, fail(key, fmt.Sprintf("place %d is past the end of the list", i), fmt.Sprintf("the next place is %d", len(n.items)))
	case i == len(n.items):
		return nil, nil
	}
	return n.items[i], nil
}

// place puts val under name, appending to a list at the place after the last. A blank val takes a
// list's item out.
func (n *node) place(key, name string, val *node) Problems {
	if _, ps := n.child(key, name); ps != nil {
		return ps
	}
	if n.form != list {
		n.form = table
		n.put(name, val.at, val)
		return nil
	}
	i, _ := index(name)
	switch {
	case val.form == blank && i < len(n.items):
		n.items = append(n.items[:i:i], n.items[i+1:]...)
	case val.form == blank:
	case i == len(n.items):
		n.items = append(n.items, val)
	default:
		n.items[i] = val
	}
	return nil
}

// index reads a place in a list.
func index(name string) (int, bool) {
	i, err := strconv.Atoi(name)
	return i, err == nil && i >= 0
}

func fail(key, given, do string) Problems {
	return Problems{commandLine().problem(cut(key), given, "", do)}
}

// cut makes a text fit for a message of one line: short, and with a ? for what does not print.
func cut(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:37]) + "..."
	}
	return strings.Map(func(c rune) rune {
		if !unicode.IsPrint(c) {
			return '?'
		}
		return c
	}, s)
}
