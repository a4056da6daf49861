package asbuilt

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"go.yaml.in/yaml/v3"

	"standclear/detail"
	"standclear/detail/keyfile"
	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// Read returns what was measured on the assembly, or all problems with the file. The name stands in messages only.
func Read(name string, src []byte, a *detail.Assembly) (*Field, spec.Problems) {
	r := &reader{Reader: keyfile.Reader{File: name, What: "a field sheet", Begins: "rim:"}, a: a, field: Field{whole: map[string]Value{}}}
	if root := r.Root(src); root != nil {
		if r.read(root); len(r.Problems) == 0 && r.field.Measured() == 0 {
			r.Fail(root, "", "nothing is measured in it", "write at least one value beside its key", "")
		}
	}
	if problems := r.Sorted(); problems != nil {
		return nil, problems
	}
	return &r.field, nil
}

// reader fills a field sheet from a tree.
type reader struct {
	keyfile.Reader
	a     *detail.Assembly
	field Field
}

func (r *reader) read(root *yaml.Node) {
	all := measures(r.a)
	known := []string{"parameters", "measured_by", "date"}
	bySection := map[string][]measure{}
	for _, m := range all {
		if bySection[m.section] == nil {
			known = append(known, m.section)
		}
		bySection[m.section] = append(bySection[m.section], m)
	}
	keys := r.Keyed(root, "", append(known, "blocks")...)
	for _, t := range []struct {
		key string
		to  *string
	}{{"parameters", &r.field.Parameters}, {"measured_by", &r.field.By}, {"date", &r.field.Date}} {
		if n := keys[t.key]; n != nil {
			*t.to, _ = r.One(n, t.key, "a text of one line is wanted")
		}
	}
	for _, section := range known[3:] {
		if n := keys[section]; n != nil {
			r.section(n, section, bySection[section])
		}
	}
	if n := keys["blocks"]; n != nil {
		r.blocks(n)
	}
}

// section reads the measures of one section.
func (r *reader) section(n *yaml.Node, section string, of []measure) {
	var names []string
	for _, m := range of {
		names = append(names, m.key)
	}
	keys := r.Keyed(n, section, names...)
	for _, m := range of {
		if v := keys[m.key]; v != nil {
			r.value(v, m)
		}
	}
}

// value reads one measured value.
func (r *reader) value(n *yaml.Node, m measure) {
	switch {
	case len(m.words) > 0:
		if w, ok := r.word(n, m); ok {
			r.field.whole[m.path()] = Value{Word: w}
		}
	case m.kind == unit.Count:
		if v, ok := r.number(n, m.path(), int(m.hi)); ok {
			r.field.whole[m.path()] = Value{V: float64(v)}
		}
	case m.kind == unit.KPercent:
		text, ok := r.One(n, m.path(), "a share is written 17%")
		if !ok {
			return
		}
		v, err := unit.ParsePercent(text)
		if r.parsed(n, m.path(), err) && r.within(n, m.path(), float64(v), m.lo, m.hi, "0% to 200%") {
			r.field.whole[m.path()] = Value{V: float64(v)}
		}
	default:
		if v, ok := r.length(n, m.path(), m.lo, m.hi, unit.ParseLength); ok {
			r.field.whole[m.path()] = Value{V: v.MM()}
		}
	}
}

func (r *reader) word(n *yaml.Node, m measure) (string, bool) {
	allowed := "one of " + strings.Join(m.words, ", ")
	text, ok := r.One(n, m.path(), allowed)
	if !ok {
		return "", false
	}
	w := strings.ToLower(text)
	if s, is := stock.SpeciesOf(text); is {
		w = s.Key
	}
	if !slices.Contains(m.words, w) {
		r.Fail(n, m.path(), fmt.Sprintf("%q is not allowed", keyfile.Cut(text)), allowed, "")
		return "", false
	}
	return w, true
}

func (r *reader) number(n *yaml.Node, path string, most int) (int, bool) {
	allowed := fmt.Sprintf("a whole number of 0 to %d is wanted", most)
	text, ok := r.One(n, path, allowed)
	if !ok {
		return 0, false
	}
	v, err := strconv.Atoi(text)
	if err != nil || v < 0 || v > most {
		r.Fail(n, path, fmt.Sprintf("%q", keyfile.Cut(text)), allowed, "")
		return 0, false
	}
	return v, true
}

func (r *reader) length(n *yaml.Node, path string, lo, hi float64, parse func(string) (unit.Length, error)) (unit.Length, bool) {
	text, ok := r.One(n, path, "one length is wanted")
	if !ok {
		return 0, false
	}
	v, err := parse(text)
	sys := r.a.Spec.Project.System
	return v, r.parsed(n, path, err) && r.within(n, path, v.MM(), lo, hi, unit.Length(lo).Text(sys)+" to "+unit.Length(hi).Text(sys))
}

// parsed puts an error of a parser to its place.
func (r *reader) parsed(n *yaml.Node, path string, err error) bool {
	if err != nil {
		r.Fail(n, path, err.Error(), "", "")
	}
	return err == nil
}

func (r *reader) within(n *yaml.Node, path string, v, lo, hi float64, allowed string) bool {
	if v >= lo-1e-9 && v <= hi+1e-9 {
		return true
	}
	r.Fail(n, path, fmt.Sprintf("%q is outside %s", keyfile.Cut(strings.TrimSpace(n.Value)), allowed), "", "look at the figure and its unit")
	return false
}

// blockName is how a block is named that the drawings do not have.
var blockName = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Za-z][A-Za-z0-9]{0,7}$`) })

func (r *reader) blocks(n *yaml.Node) {
	var drawn []string
	for _, b := range r.a.Blocks {
		drawn = append(drawn, b.Mark)
	}
	holds := "it holds the marks of the blocks, " + strings.Join(drawn, ", ")
	for _, row := range r.Section(n, "blocks", holds) {
		path := keyfile.Join("blocks", keyfile.Cut(row.Name))
		extra := !slices.Contains(drawn, row.Name)
		if extra && !blockName().MatchString(row.Name) {
			r.Fail(row.Key, path, fmt.Sprintf("%q is no mark of a block", keyfile.Cut(row.Name)), holds+"; a block that is not drawn has a name such as X1", "")
			continue
		}
		if keyfile.Blank(row.Val) {
			continue
		}
		b := r.block(row.Val, path, extra)
		b.mark = row.Name
		if extra && b.at == nil && row.Val.Kind == yaml.MappingNode {
			r.Fail(row.Key, keyfile.Join(path, "at"), "it is not given", "a block that is not drawn needs its place, at: 40in", holds)
		}
		r.field.blocks = append(r.field.blocks, b)
	}
	r.distinct(n)
}

func (r *reader) block(n *yaml.Node, path string, extra bool) fieldBlock {
	b := fieldBlock{sets: map[string]fieldSet{}}
	if n.Kind == yaml.ScalarNode {
		if b.missing = n.Value == "missing" && !extra; !b.missing {
			r.Fail(n, path, fmt.Sprintf("%q stands where a section should", keyfile.Cut(n.Value)), "write missing for a block that is not there, else at, gap, "+strings.Join(setNames(r.a.Spec), ", "), "")
		}
		return b
	}
	keys := r.Keyed(n, path, append([]string{"at", "gap"}, setNames(r.a.Spec)...)...)
	far := r.a.Spec.Ledger.Length.MM()
	if v := keys["at"]; v != nil {
		b.at = r.some(v, keyfile.Join(path, "at"), 0, far, unit.ParseLength)
	}
	if v := keys["gap"]; v != nil {
		b.gap = r.some(v, keyfile.Join(path, "gap"), 0, 100, unit.ParseLength)
	}
	for _, name := range setNames(r.a.Spec) {
		if v := keys[name]; v != nil {
			b.sets[name] = r.set(v, keyfile.Join(path, name), name)
		}
	}
	return b
}

// some is length as a pointer, nil when it cannot be read.
func (r *reader) some(n *yaml.Node, path string, lo, hi float64, parse func(string) (unit.Length, error)) *unit.Length {
	if v, ok := r.length(n, path, lo, hi, parse); ok {
		return &v
	}
	return nil
}

func (r *reader) set(n *yaml.Node, path, name string) fieldSet {
	var s fieldSet
	keys := r.Keyed(n, path, "count", "diameter", "rows", "end")
	if v := keys["count"]; v != nil {
		if c, ok := r.number(v, keyfile.Join(path, "count"), 100); ok {
			s.count = &c
		}
	}
	if v := keys["diameter"]; v != nil {
		s.diameter = r.some(v, keyfile.Join(path, "diameter"), 3, 40, spec.ParseDiameter)
	}
	if v := keys["end"]; v != nil {
		s.end = r.some(v, keyfile.Join(path, "end"), 1, 1000, unit.ParseLength)
	}
	if v := keys["rows"]; v != nil {
		s.rows = r.rows(v, keyfile.Join(path, "rows"), len(setOf(r.a.Spec, name).Rows))
	}
	return s
}

func (r *reader) rows(n *yaml.Node, path string, want int) []unit.Length {
	wanted := fmt.Sprintf("%d lengths from the top down are wanted, as [3in, 6 3/8in]", want)
	var out []unit.Length
	items := r.List(n, path, wanted)
	if n.Kind == yaml.SequenceNode && len(items) != want {
		r.Fail(n, path, fmt.Sprintf("a list of %d", len(items)), wanted, "")
		return nil
	}
	for i, item := range items {
		v, ok := r.length(item, keyfile.Join(path, strconv.Itoa(i)), 0, 600, unit.ParseLength)
		if !ok {
			return nil
		}
		if i > 0 && v <= out[i-1] {
			r.Fail(item, keyfile.Join(path, strconv.Itoa(i)), "it does not pass the one before it", wanted, "")
			return nil
		}
		out = append(out, v)
	}
	return out
}

// distinct refuses two blocks at one place and a wall with fewer than two of them.
func (r *reader) distinct(n *yaml.Node) {
	if len(r.Problems) > 0 {
		return
	}
	at := places(r.a, &r.field)
	if len(at) < 2 {
		r.Fail(n, "blocks", fmt.Sprintf("%d of the blocks are there", len(at)), "at least two carry a ledger", "")
	}
	for i := 1; i < len(at); i++ {
		if math.Abs(at[i].x-at[i-1].x) < 1 {
			r.Fail(n, keyfile.Join("blocks", at[i].mark), "it stands where "+at[i-1].mark+" stands", "", "measure both again")
		}
	}
}
