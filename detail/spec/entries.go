package spec

import (
	"fmt"
	"slices"

	"standclear/detail/unit"
)

// Entry is one value of a project as it stands after reading.
type Entry struct {
	Key    string       // dotted; places of a list count from 0
	About  string       // what it is, as the starter file says
	Value  string       // as printed in the project's system; "" when nothing is stated
	Length *unit.Length // of a key that holds one, nil where a word stands for it
	Given  bool         // by the file; else a default, or nothing
	Survey bool         // never defaulted: what only a survey or a choice can know
}

// Entries lists every value that counts in this project, in the order of the file.
func (s *Spec) Entries() []Entry {
	var out []Entry
	s.visit(keys(s), "", func(path string, k key) {
		v := k.shown(s.Project.System)
		given := v != "" && !slices.ContainsFunc(s.Defaults, func(d Default) bool { return d.Key == path })
		e := Entry{Key: path, About: k.about, Value: v, Given: given, Survey: k.need}
		if (k.kind == aLength || k.kind == aDiameter) && v != "" && v != "auto" {
			mm, _ := k.number.take()
			l := unit.Length(mm)
			e.Length = &l
		}
		out = append(out, e)
	})
	return out
}

// visit calls f for every key that holds one value, sections, options and lists opened as far as they are
// there.
func (s *Spec) visit(keys []key, path string, f func(path string, k key)) {
	for _, k := range keys {
		if k.when != nil && !k.when() {
			continue
		}
		at := join(path, k.name)
		switch k.kind {
		case aSection:
			s.visit(k.keys, at, f)
		case anOption:
			s.visit(k.option.keys(), at, f)
		case aList:
			for i := range k.series.count() {
				item := fmt.Sprintf("%s.%d", at, i)
				if k.series.item == nil {
					s.visit(k.series.each(i), item, f)
					continue
				}
				one := k.series.item(i)
				one.about, one.need = k.about, k.need
				f(item, one)
			}
		case aSize: // stands for two others
		default:
			f(at, k)
		}
	}
}
