package spec

import (
	"fmt"
	"strings"

	"standclear/detail/unit"
)

// Starter returns a project file to begin from, with every key and a word on each. What must be
// surveyed reads SURVEY and is a problem until it is filled in; everything else is commented out and
// shows its default, or a sample where it has none.
func Starter(sys unit.System) string {
	s := starter{sys: sys}
	s.b.WriteString(`# A deck ledger on blocks.
#
# Fill in every SURVEY. The rest has a default or a sample, shown behind #; take the # away to
# change it. Defaults are common practice where nothing else is said.
# Every value carries its unit: 7 1/2in, 14'-8", 80mm. x runs right from the left end of the
# ledger as seen from outside, y outward from the sheathing, z up from the finished floor.

`)
	s.keys(keysOf(sys), 0)
	return s.b.String()
}

type starter struct {
	b   strings.Builder
	sys unit.System
}

// line writes one line with its comment at a common column.
func (s *starter) line(depth int, text, comment string) {
	text = strings.Repeat("  ", depth) + text
	if comment == "" {
		s.b.WriteString(text + "\n")
		return
	}
	fmt.Fprintf(&s.b, "%-42s # %s\n", text, comment)
}

func (s *starter) keys(keys []key, depth int) {
	for _, k := range keys {
		switch {
		case k.kind == aSection:
			s.line(depth, k.name+":", k.about)
			s.keys(k.keys, depth+1)
		case k.kind == anOption && k.name == "through":
			s.line(depth, k.name+":", k.about)
			s.keys(k.option.open(), depth+1)
		case k.kind == anOption && k.name == "rates":
			s.line(depth, "#"+k.name+":", k.about)
			s.keys(k.option.open(), depth+1)
		case k.kind == anOption:
			s.line(depth, "# "+k.name+": "+k.about+"; it has the keys of through", "")
		case k.kind == aList:
			s.list(k, depth)
		default:
			s.line(depth, s.row(k), s.remark(k))
		}
		if depth == 0 {
			s.b.WriteString("\n")
		}
	}
}

// row writes one key: to be filled in, or commented out.
func (s *starter) row(k key) string {
	switch {
	case k.need && k.when == nil:
		return k.name + ": " + placeholder
	case k.shows:
		return k.name + ": " + k.usual.of(s.sys)
	}
	return "#" + k.name + ": " + either(k.usual.of(s.sys) != "", k.usual.of(s.sys), k.sample.of(s.sys))
}

// remark says what a key is, what it may be and why its default is what it is.
func (s *starter) remark(k key) string {
	parts := []string{k.about}
	if k.ranged || k.kind == aWord && len(k.words) <= 12 {
		parts = append(parts, k.allowed(s.sys))
	}
	if k.need && k.when == nil {
		parts = append(parts, "such as "+k.sample.of(s.sys))
	}
	if k.why != "" && k.why != usual && k.why != notSaid {
		parts = append(parts, k.why)
	}
	return strings.Join(parts, "; ")
}

// list writes a list: the layers of the wall with their thickness to be filled in, another needed list
// to be filled in as a whole, any other commented out.
func (s *starter) list(k key, depth int) {
	switch {
	case k.need && k.series.each != nil:
		s.line(depth, k.name+":", k.about)
		for _, row := range k.series.rows() {
			t := row.of(s.sys)
			cut := strings.LastIndex(t, ": ")
			s.line(depth+1, "- "+t[:cut+2]+placeholder+"}", "such as"+strings.TrimSuffix(t[cut+1:], "}"))
		}
	case k.need:
		s.line(depth, k.name+": "+placeholder, k.about+"; such as "+k.example(s.sys))
	case k.series.each != nil && k.series.short == "":
		s.line(depth, "#"+k.name+":", k.about)
		for _, row := range k.series.rows() {
			s.line(depth, "#- "+row.of(s.sys), "")
		}
	default:
		s.line(depth, "#"+k.name+": "+k.example(s.sys), k.about)
	}
}
