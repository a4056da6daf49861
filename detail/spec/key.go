package spec

import "standclear/detail/unit"

// key is one row of the table that drives the reading of a project file, the check of its names, the
// starter file, the help and the hash. Rows are written with the functions below:
//
//	length("finish", &f.Finish, "thickness of the floor finish").in(0, 6).or("3/4in", "15mm", usual)
type key struct {
	name   string
	about  string // what it is, a few words
	kind   kind
	number number  // where a number goes
	text   letters // where a text goes

	lo, hi float64 // range in the base unit
	ranged bool
	auto   bool                        // the word auto stands for 0
	words  []string                    // what a word may be
	means  func(string) (string, bool) // further ways to write the words

	usual  pair        // default as typed
	follow func()      // default that follows from other keys: sets the value
	late   bool        // the default follows from other such defaults, and waits for them
	why    string      // what the default rests on
	need   bool        // never defaulted
	leads  *string     // needed once anything stands in its section but the key named here
	begins pair        // written out in the starter file, as a design to begin from
	asked  pair        // asked for in the starter file although it may be left out; how an answer looks
	when   func() bool // the key counts only then; nil is always
	sample pair        // for the starter file
	alike  func() pair // a better sample, by what stands beside the key

	keys    []key    // of a section
	option  *option  // of a section that may be left out
	series  *series  // of a list
	spreads []string // names of the two lengths a size stands for
}

// pair is a text as it is typed in an inch and in a metric project.
type pair struct{ ip, si string }

func (p pair) of(sys unit.System) string {
	if sys == unit.SI {
		return p.si
	}
	return p.ip
}

// option makes a section that may be left out.
type option struct {
	open func() []key // makes it and returns its keys
	keys func() []key // of the one there is, nil when it was left out
}

// series is a list: of sections when each is set, of single values when item is.
type series struct {
	grow  func(n int) // makes room for n items, once
	count func() int
	each  func(i int) []key
	item  func(i int) key
	short string            // name in each that an item written as one value stands for
	rows  func() []pair     // samples for the starter file
	mark  func(i, line int) // notes where item i stands; nil when nobody asks
}

// number is where a number goes: a field of the Spec.
type number interface {
	put(v float64)
	take() (v float64, stated bool)
}

type field[T ~float64] struct{ p *T }

func (f field[T]) put(v float64)         { *f.p = T(v) }
func (f field[T]) take() (float64, bool) { return float64(*f.p), true }

// maybe is a field that stays nil when nothing is stated.
type maybe[T ~float64] struct{ p **T }

func (m maybe[T]) put(v float64) { t := T(v); *m.p = &t }
func (m maybe[T]) take() (float64, bool) {
	if *m.p == nil {
		return 0, false
	}
	return float64(**m.p), true
}

type tally struct{ p *int }

func (t tally) put(v float64)         { *t.p = int(v) }
func (t tally) take() (float64, bool) { return float64(*t.p), true }

type flag struct{ p *bool }

func (f flag) put(v float64)         { *f.p = v != 0 }
func (f flag) take() (float64, bool) { return float64(boolInt(*f.p)), true }

// letters is where a text goes.
type letters interface {
	write(s string)
	read() string
}

type words struct{ p *string }

func (w words) write(s string) { *w.p = s }
func (w words) read() string   { return *w.p }

// system is the unit system, written inch or metric.
type system struct{ p *unit.System }

func (s system) read() string { return s.p.String() }
func (s system) write(t string) {
	*s.p = unit.IP
	if t == unit.SI.String() {
		*s.p = unit.SI
	}
}

func section(name, about string, keys ...key) key {
	return key{name: name, about: about, kind: aSection, keys: keys}
}

func text(name string, p *string, about string) key {
	return key{name: name, about: about, kind: aText, text: words{p}}
}

func date(name string, p *string, about string) key {
	return key{name: name, about: about, kind: aDate, text: words{p}, sample: pair{"2026-11-02", "2026-11-02"}}
}

func word(name string, p *string, about string, of ...string) key {
	return key{name: name, about: about, kind: aWord, text: words{p}, words: of}
}

// size is the size of lumber in one word, which stands for the keys t and d beside it; t may be "".
func size(p *string, t, d string, ip, si string) key {
	about := "stands for " + t + " and " + d
	if t == "" {
		about = "stands for " + d
	}
	return key{name: "size", about: about, kind: aSize, text: words{p}, spreads: []string{t, d}, sample: pair{ip, si}}
}

func value(k kind, name string, n number, about string) key {
	return key{name: name, about: about, kind: k, number: n}
}

func length(name string, p *unit.Length, about string) key {
	return value(aLength, name, field[unit.Length]{p}, about)
}

func maybeLength(name string, p **unit.Length, about string) key {
	return value(aLength, name, maybe[unit.Length]{p}, about)
}

func yesNo(name string, p *bool, about string) key { return value(aYesNo, name, flag{p}, about) }

func count(name string, p *int, about string) key { return value(aCount, name, tally{p}, about) }

func slope(name string, p *unit.Slope, about string) key {
	return value(aSlope, name, field[unit.Slope]{p}, about).within(0, 1)
}

func force(name string, p *unit.Force, about string) key {
	return value(aForce, name, field[unit.Force]{p}, about)
}

func load(name string, p **unit.Pressure, about string) key {
	return value(anAreaLoad, name, maybe[unit.Pressure]{p}, about)
}

func scale(name string, p *float64, about string) key {
	return value(aScale, name, field[float64]{p}, about).orAuto("the largest that fits the sheet")
}

// lengthList is a list of lengths.
func lengthList(name string, p *[]unit.Length, about string, lo, hi float64) key {
	return key{name: name, about: about, kind: aList, series: &series{
		grow:  func(n int) { *p = make([]unit.Length, n) },
		count: func() int { return len(*p) },
		item:  func(i int) key { return length("", &(*p)[i], about).in(lo, hi) },
	}}
}
