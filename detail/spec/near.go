package spec

import (
	"strconv"
	"strings"

	"standclear/detail/unit"
)

// Near is a number of a project with what it may be set to a little below and a little above.
type Near struct {
	Entry
	Number     float64 // as it stands, in the base unit
	Diameter   bool    // of a fastener: it comes in sizes
	Less, More Typed   // Sets is nil where the range of the key leaves nothing
}

// Typed is one other value of a key.
type Typed struct {
	Number float64    // in the base unit
	Value  string     // as printed in the project's system
	Sets   [][]string // ways to set it, as KEY=VALUE: the first that the file takes
}

// Nears lists the numbers of a project that count in it, in the order of the file: a count one less and one more,
// a temperature by 1 K, anything else by a share of it. What is 0, auto or not stated is left out.
func (s *Spec) Nears(share float64) []Near {
	var out []Near
	entries := map[string]Entry{}
	for _, e := range s.Entries() {
		entries[e.Key] = e
	}
	s.visit(keys(s), "", func(path string, k key) {
		if k.number == nil || k.kind == aYesNo || k.kind == aScale {
			return
		}
		v, stated := k.number.take()
		if !stated || v == 0 {
			return
		}
		step := share * v
		switch k.kind {
		case aCount, aTemp:
			step = 1
		}
		sys := s.Project.System
		out = append(out, Near{Entry: entries[path], Number: v, Diameter: k.kind == aDiameter, Less: k.typed(path, v-step, sys), More: k.typed(path, v+step, sys)})
	})
	return out
}

// Set returns a length of the project at another value, in millimetres.
func (n Near) Set(mm float64, sys unit.System) Typed {
	return key{kind: aLength}.typed(n.Key, mm, sys)
}

// typed is the value v of the key at path; nothing when its range leaves v out.
func (k key) typed(path string, v float64, sys unit.System) Typed {
	if k.ranged && (v < k.lo || v > k.hi) {
		return Typed{Number: v}
	}
	text := k.kind.typed(v)
	shown := k.kind.measure().print(v, sys)
	if k.kind == aLength || k.kind == aDiameter { // no digit lost
		shown = unit.Length(v).Q().Text(sys)
	}
	t := Typed{Number: v, Value: shown, Sets: [][]string{{path + "=" + text}}}
	section, name, _ := cutLast(path)
	switch name {
	case "thickness", "depth", "width", "height": // a size beside it must not contradict
		t.Sets = append(t.Sets, []string{section + ".size=", path + "=" + text})
	}
	if name == "thickness" { // an item of a list written as one value
		t.Sets = append(t.Sets, []string{section + "=" + text})
	}
	return t
}

func cutLast(path string) (section, name string, ok bool) {
	i := strings.LastIndexByte(path, '.')
	if i < 0 {
		return "", path, false
	}
	return path[:i], path[i+1:], true
}

// typed writes a number of the kind in its base unit, as a project file has it.
func (k kind) typed(v float64) string {
	base := map[kind]string{aLength: "mm", aDiameter: "mm", aTemp: "C", someDegreeDays: " K.d", aSpeed: "m/s", aForce: "N", anAreaLoad: "Pa", aStress: "Pa", aPrice: "/m"}
	switch k {
	case aShare, aSlope:
		v, base[k] = 100*v, "%"
	}
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 12, 64), 64)
	return plainNumber(v) + base[k]
}
