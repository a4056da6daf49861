package spec

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"standclear/detail/unit"
)

// Read turns a project file into a Spec.
//
// The name stands in messages only. The sets are key=value pairs that override the file, in order; the
// value is typed as in the file, a list in brackets. When anything is wrong the Spec is nil and all
// problems are returned at once, warnings among them; otherwise the problems are nil and the
// warnings stand in the Spec.
//
//	s, problems := spec.Read("deck.yaml", src, []string{"blocks.max_spacing=18in"})
func Read(name string, src []byte, sets []string) (*Spec, Problems) {
	return read(name, sets, func() (*node, Problems) { return plant(name, src) })
}

// File is a project file parsed once, to be read many times with other changes. It may be read by several
// goroutines at once.
type File struct {
	name     string
	root     *node
	problems Problems
}

// Parse parses a project file; what is wrong with it is told by Read.
func Parse(name string, src []byte) *File {
	root, problems := plant(name, src)
	return &File{name, root, problems}
}

// Read is the function Read for the file.
func (f *File) Read(sets []string) (*Spec, Problems) {
	return read(f.name, sets, func() (*node, Problems) {
		if f.root == nil {
			return nil, slices.Clone(f.problems)
		}
		return f.root.clone(), slices.Clone(f.problems)
	})
}

func read(name string, sets []string, tree func() (*node, Problems)) (*Spec, Problems) {
	root, problems := tree()
	if root == nil {
		return nil, problems.sorted()
	}
	problems = append(problems, override(root, sets)...)
	r := reader{
		spec: &Spec{Source: name}, problems: problems,
		absent: make([]absent, 0, 128), where: make([]stands, 0, 320), bad: map[string]bool{}, top: place{name, 1, 1},
	}
	r.spec.Project.System = unitsOf(root)
	table := keys(r.spec)
	r.section(table, root, "", r.top)
	r.fillIn()
	r.crossCheck()
	r.warn()
	if r.problems.Fatal() {
		return nil, r.problems.sorted()
	}
	r.spec.Warnings = r.problems.sorted()
	return r.spec, nil
}

// unitsOf looks ahead for the unit system, which decides the defaults and how messages print.
func unitsOf(root *node) unit.System {
	if p := root.find("project"); p != nil {
		if u := p.val.find("units"); u != nil && strings.EqualFold(u.val.text, unit.SI.String()) {
			return unit.SI
		}
	}
	return unit.IP
}

// reader fills a Spec from a tree.
type reader struct {
	spec     *Spec
	top      place
	problems Problems
	where    []stands         // of every key given
	places   map[string]place // the same by key, when there are many
	bad      map[string]bool  // keys that could not be read
	around   map[string]bool  // keys that hold a bad one
	absent   []absent         // in table order
}

// stands is where a key was given.
type stands struct {
	path string
	at   place
}

// fewKeys is how many keys are looked through one by one.
const fewKeys = 1000

// placeOf returns the place of a key that was given.
func (r *reader) placeOf(path string) (place, bool) {
	if len(r.where) > fewKeys {
		if r.places == nil { // nothing is added once places are asked for
			r.places = make(map[string]place, len(r.where))
			for _, s := range r.where {
				r.places[s.path] = s.at
			}
		}
		at, ok := r.places[path]
		return at, ok
	}
	for _, s := range slices.Backward(r.where) {
		if s.path == path {
			return s.at, true
		}
	}
	return place{}, false
}

// absent is a key the file did not give.
type absent struct {
	*key
	path string
	at   place // of the section it belongs in
}

func (r *reader) sys() unit.System { return r.spec.Project.System }

// spoil notes that a key cannot be used.
func (r *reader) spoil(path string) {
	r.bad[path] = true
	if r.around == nil {
		r.around = map[string]bool{}
	}
	for i := strings.LastIndexByte(path, '.'); i > 0; i = strings.LastIndexByte(path[:i], '.') {
		r.around[path[:i]] = true
	}
}

// fail notes a problem with the key at path, and that its value cannot be used.
func (r *reader) fail(at place, path, given, allowed, do string) {
	r.spoil(path)
	r.problems = append(r.problems, at.problem(path, given, allowed, do))
}

// section reads the keys of one section; n is nil or blank when it was not given, and at is the place
// to name then.
func (r *reader) section(keys []key, n *node, path string, at place) {
	if n != nil && n.form != blank && n.form != table {
		r.fail(n.at, path, n.form.String()+" stands where a section should", "it holds "+names(keys), "")
		return
	}
	r.spreadSizes(keys, n, path)
	r.unknown(keys, n, path)
	for i := range keys {
		k := &keys[i]
		k.need = k.need || k.leads != nil && n.holds(*k.leads)
		r.key(k, n.find(k.name), join(path, k.name), at)
	}
}

// unknown names every row that is no key of the section.
func (r *reader) unknown(keys []key, n *node, path string) {
	if n == nil {
		return
	}
	for _, row := range n.rows {
		if !has(keys, row.name) {
			given := fmt.Sprintf("%q is not a key of %s", cut(row.name), orFile(path))
			r.problems = append(r.problems, row.at.problem(join(path, cut(row.name)), given, "it holds "+names(keys), meantKey(keys, row.name)))
		}
	}
}

func orFile(path string) string {
	if path == "" {
		return "a project file"
	}
	return path
}

// key reads one key; its row is nil when the section does not have it.
func (r *reader) key(k *key, found *row, path string, at place) {
	var n *node
	if found != nil {
		n = found.val
		given := n.at
		if n.form != scalar {
			at, given = found.at, found.at
		}
		r.where = append(r.where, stands{path, given})
	}
	switch {
	case k.kind == aSection:
		r.section(k.keys, n, path, at)
	case n == nil || n.form == blank:
		r.absent = append(r.absent, absent{k, path, at})
	case k.kind == anOption:
		r.section(k.option.open(), n, path, found.at)
	case k.kind == aList:
		r.list(k, n, path)
	default:
		r.one(k, n, path)
	}
}

// list reads the items of a list.
func (r *reader) list(k *key, n *node, path string) {
	if n.form == scalar && strings.EqualFold(n.text, placeholder) {
		r.fail(n.at, path, NotSurveyed, k.wanted(r.sys()), "write for instance "+k.example(r.sys()))
		return
	}
	if n.form != list {
		r.fail(n.at, path, n.form.String()+" stands where a list should", "", "put it in brackets: ["+cut(n.text)+"]")
		return
	}
	if k.need && len(n.items) == 0 {
		r.fail(n.at, path, "the list is empty", "it holds at least one item", "")
		return
	}
	k.series.grow(len(n.items))
	for i, item := range n.items {
		r.item(k.series, i, item, join(path, strconv.Itoa(i)))
	}
}

// item reads one item of a list: a value, a section, or a value that stands for a section.
func (r *reader) item(s *series, i int, n *node, path string) {
	r.where = append(r.where, stands{path, n.at})
	if s.mark != nil {
		s.mark(i, n.at.line)
	}
	switch {
	case n.form == blank:
		r.fail(n.at, path, "an item of the list is empty", "", "take it out or fill it in")
	case s.item != nil:
		k := s.item(i)
		r.one(&k, n, path)
	case n.form == scalar && s.short != "":
		wrapped := &node{form: table, at: n.at, rows: []row{{s.short, n.at, n}}}
		r.section(s.each(i), wrapped, path, n.at)
	default:
		r.section(s.each(i), n, path, n.at)
	}
}

// one reads a single value.
func (r *reader) one(k *key, n *node, path string) {
	switch {
	case n.form != scalar:
		r.fail(n.at, path, n.form.String()+" stands where one value should", k.wanted(r.sys()), "")
	case strings.EqualFold(n.text, placeholder):
		r.fail(n.at, path, NotSurveyed, k.wanted(r.sys()), "write for instance "+k.example(r.sys()))
	case k.number != nil:
		r.figure(k, n, path)
	default:
		r.lettering(k, n, path)
	}
}

// placeholder is what the starter file writes for a value that must be surveyed.
const placeholder = "SURVEY"

// NotSurveyed is what a Problem says was given where the placeholder still stands.
const NotSurveyed = "not surveyed yet"
