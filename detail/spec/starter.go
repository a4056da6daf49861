package spec

import (
	"fmt"
	"strings"

	"standclear/detail/unit"
)

// Starter returns a project file to begin from, with every key and a word on each. What must be surveyed, asked or
// looked up reads SURVEY and is a problem until it is filled in; a first design that holds with the samples is written
// out; everything else is commented out and shows its default, or a sample where it has none.
func Starter(sys unit.System) string {
	s := starter{sys: sys}
	s.b.WriteString(`# A deck ledger on blocks.
#
# 1. Put your own value for every SURVEY; "such as" shows how one is written, and is no advice. What the
#    house is, measure; climate and loads, ask the building department; what one piece of hardware may
#    carry (rating, hanger, fixing), take from its maker. Where unknown is allowed, it may stand, and a
#    line of site, loads or ground may be taken out: checks that need it are then NOT CHECKED.
# 2. Values written out are a design to begin from, which holds with the samples. Change them as
#    standclear check says.
# 3. The rest has a default or a sample, shown behind #; take the # away to change it. Defaults are common
#    practice where nothing else is said.
#
# Every value carries its unit: 7 1/2in, 14'-8", 80mm. x runs right from the left end of the ledger as seen
# from outside, y outward from the sheathing, z up from the finished floor.

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
	case k.begins.of(s.sys) != "":
		return k.name + ": " + k.begins.of(s.sys)
	case k.asks(s.sys):
		return k.name + ": " + placeholder
	}
	return "#" + k.name + ": " + either(k.usual.of(s.sys) != "", k.usual.of(s.sys), k.sample.of(s.sys))
}

// asks reports whether the starter file asks for the key.
func (k key) asks(sys unit.System) bool {
	return k.asked.of(sys) != "" || k.need && k.when == nil && k.begins.of(sys) == ""
}

// remark says what a key is, what it may be and why its default is what it is.
func (s *starter) remark(k key) string {
	parts := []string{k.about}
	if k.ranged || k.kind == aWord && len(k.words) <= 12 {
		parts = append(parts, k.allowed(s.sys))
	}
	if k.asks(s.sys) {
		parts = append(parts, "such as "+k.example(s.sys))
	}
	if k.why != "" && k.begins.of(s.sys) == "" && !k.asks(s.sys) && k.why != usual && k.why != notSaid {
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
	case k.begins.of(s.sys) != "":
		s.line(depth, s.row(k), k.about)
	case k.series.each != nil && k.series.short == "":
		s.line(depth, "#"+k.name+":", k.about)
		for _, row := range k.series.rows() {
			s.line(depth, "#- "+row.of(s.sys), "")
		}
	default:
		s.line(depth, "#"+k.name+": "+k.example(s.sys), k.about)
	}
}
