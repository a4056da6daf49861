package spec

import (
	"strings"

	"standclear/detail/unit"
)

// Base units of the ranges in the tables.
const (
	inch = 25.4
	foot = 12 * inch
	psf  = 47.88025898
	psi  = 144 * psf
	lb   = 4.4482216152605
	mph  = 0.44704
)

// Why a default is what it is.
const (
	usual   = "common practice, no source"
	careful = "the careful side"
	notSaid = "nothing was stated"
	judged  = "judgement"
	derived = "follows from the rest"
)

// within bounds the value, in the base unit of its kind.
func (k key) within(lo, hi float64) key {
	k.lo, k.hi, k.ranged = lo, hi, true
	return k
}

// in bounds a length in inches.
func (k key) in(lo, hi float64) key { return k.within(lo*inch, hi*inch) }

// ft bounds a length in feet.
func (k key) ft(lo, hi float64) key { return k.within(lo*foot, hi*foot) }

// or gives the default as typed in an inch and in a metric project, and what it rests on.
func (k key) or(ip, si, why string) key {
	k.usual, k.why = pair{ip, si}, why
	return k
}

// orWord gives one default for both systems.
func (k key) orWord(w, why string) key { return k.or(w, w, why) }

// orAuto lets the word auto stand for 0 and makes it the default.
func (k key) orAuto(why string) key {
	k.auto = true
	return k.orWord("auto", why)
}

// from gives a default that set works out from other keys; ip and si show what it comes to in the
// starter file.
func (k key) from(set func(), ip, si, why string) key {
	k.follow, k.sample, k.why = set, pair{ip, si}, why
	return k
}

// last makes the default wait for all others.
func (k key) last() key {
	k.late = true
	return k
}

// survey marks a value that is never defaulted; ip and si show how one looks.
func (k key) survey(ip, si string) key {
	k.need, k.sample = true, pair{ip, si}
	return k
}

// lead marks the value without which the rest of its section means nothing, the key apart left aside.
func (k key) lead(apart string) key {
	k.leads = &apart
	return k
}

// eg gives a sample for the starter file to a key that has no default.
func (k key) eg(ip, si string) key {
	k.sample = pair{ip, si}
	return k
}

// begin writes the key out in the starter file, with a value of a design that holds with the samples beside it.
func (k key) begin(ip, si string) key {
	k.begins = pair{ip, si}
	return k
}

// ask asks for the key in the starter file although it may be left out; ip and si show how an answer looks, "" asks
// for none.
func (k key) ask(ip, si string) key {
	k.asked = pair{ip, si}
	return k
}

// like gives a sample that goes by what was read beside the key.
func (k key) like(sample func() pair) key {
	k.alike = sample
	return k
}

// only makes the key count under a condition, asked once all given values are read.
func (k key) only(when func() bool) key {
	k.when = when
	return k
}

// also lets a word be written in further ways.
func (k key) also(means func(string) (string, bool)) key {
	k.means = means
	return k
}

// example writes what k may look like: its sample, or its default.
func (k key) example(sys unit.System) string {
	if k.kind == aList {
		var items []string
		for _, p := range k.series.rows() {
			items = append(items, p.of(sys))
		}
		if len(items) > 2 {
			items = []string{items[0], "..."}
		}
		return "[" + strings.Join(items, ", ") + "]"
	}
	if k.alike != nil {
		return k.alike().of(sys)
	}
	for _, p := range []pair{k.asked, k.begins, k.sample} {
		if s := p.of(sys); s != "" {
			return s
		}
	}
	return k.usual.of(sys)
}

// shown returns the value the key holds as it is printed; "" when it holds none.
func (k key) shown(sys unit.System) string {
	if k.text != nil {
		return k.text.read()
	}
	if k.number == nil {
		return ""
	}
	v, stated := k.number.take()
	switch {
	case !stated:
		return ""
	case k.auto && v == 0:
		return "auto"
	}
	return k.kind.measure().print(v, sys)
}
