package spec

import "standclear/detail/unit"

// Key describes one key of a project file, for help and documentation.
type Key struct {
	Path     string // dotted; N stands for a place in a list
	About    string
	Form     string // "a length", "yes or no", "a word", ...
	Allowed  string // range or words; "" for any
	Default  string // as it would be typed; "" for none
	Why      string // what the default rests on
	Sample   string
	Required bool // never defaulted; below a section or list that may be left out, needed once it is there
}

// Keys returns every key of a project file in its order, as a project of the given units sees them.
func Keys(sys unit.System) []Key {
	var all []Key
	describe(keysOf(sys), "", func(path string, k key) {
		if k.kind != aSection && k.kind != anOption {
			all = append(all, k.help(path, sys))
		}
	})
	return all
}

// keysOf returns the table bound to an empty Spec of the given units.
func keysOf(sys unit.System) []key {
	s := &Spec{}
	s.Project.System = sys
	return keys(s)
}

// describe visits every key, sections before what they hold, lists with one item.
func describe(keys []key, path string, visit func(path string, k key)) {
	for _, k := range keys {
		at := join(path, k.name)
		visit(at, k)
		switch k.kind {
		case aSection:
			describe(k.keys, at, visit)
		case anOption:
			describe(k.option.open(), at, visit)
		case aList:
			if k.series.each != nil {
				k.series.grow(1)
				describe(k.series.each(0), at+".N", visit)
				k.series.grow(0)
			}
		}
	}
}

// paths returns the dotted path of every key and section.
func paths(keys []key, path string) []string {
	var all []string
	describe(keys, path, func(path string, _ key) { all = append(all, path) })
	return all
}

func (k key) help(path string, sys unit.System) Key {
	h := Key{
		Path: path, About: k.about, Form: k.kind.measure().name, Default: k.usual.of(sys), Why: k.why,
		Sample: k.sample.of(sys), Required: k.need,
	}
	if k.ranged || k.kind == aWord {
		h.Allowed = k.allowed(sys)
	}
	if k.follow != nil {
		h.Default = either(k.kind == aList, "", h.Sample)
	}
	if k.kind == aList || k.asked.of(sys) != "" || k.begins.of(sys) != "" {
		h.Sample = k.example(sys)
	}
	return h
}
