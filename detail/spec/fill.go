package spec

import "standclear/detail/unit"

// fillIn gives every absent key its default and notes it, or says that it is missing. It runs once
// all given values are read: first the defaults that stand alone, then those that follow from other
// keys, in the order of the table, and last those that follow from such.
func (r *reader) fillIn() {
	filled := make([]Default, len(r.absent))
	for round := range 3 {
		for i, a := range r.absent {
			switch {
			case a.round() != round || a.when != nil && !a.when():
			case a.need:
				r.missing(a)
			case a.fill(r.sys()):
				filled[i] = Default{Key: a.path, Value: a.printed(r.sys()), Why: a.why}
			}
		}
	}
	for _, d := range filled {
		if d.Why != "" {
			r.spec.Defaults = append(r.spec.Defaults, d)
		}
	}
}

// round says when the default of k can be worked out.
func (k *key) round() int { return boolInt(k.follow != nil) + boolInt(k.late) }

// missing says that a needed key is not there.
func (r *reader) missing(a absent) {
	why := "it has no default"
	if a.leads != nil {
		why = "the rest of its section means nothing without it"
	}
	r.fail(a.at, a.path, "missing", a.wanted(r.sys()), why+": write for instance "+a.name+": "+a.example(r.sys()))
}

// fill sets k to its default; false when it has none and stays as it is.
func (k *key) fill(sys unit.System) bool {
	typed := k.usual.of(sys)
	switch {
	case k.follow != nil:
		k.follow()
	case typed == "":
		return false
	case k.text != nil:
		k.text.write(typed)
	case k.auto && typed == "auto":
		k.number.put(0)
	default:
		v, _ := k.kind.measure().parse(typed) // the defaults of the table all parse; a test holds it
		k.number.put(v)
	}
	return true
}

// printed writes what k holds, items of a list with commas between.
func (k key) printed(sys unit.System) string {
	if k.series == nil {
		return k.shown(sys)
	}
	s := ""
	for i := range k.series.count() {
		for _, part := range k.series.parts(i) {
			if t := part.shown(sys); t != "" {
				s += t + ", "
			}
		}
	}
	return s[:max(len(s)-2, 0)]
}

// parts returns the keys of item i: those of a section, or the one of a value.
func (s *series) parts(i int) []key {
	if s.item != nil {
		return []key{s.item(i)}
	}
	return s.each(i)
}
