package spectest

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"standclear/detail/spec"
	"standclear/detail/unit"
)

// Broken returns the broken project of a number, the same every time: a random project of which some things are
// spoilt. In half of them values are set that are allowed and stand in each other's way, of which many still read; in
// the others the text of the file is spoilt, or what is set makes no sense. Spec is nil.
func Broken(n uint64) Project {
	p := Random(n)
	p.Spec = nil
	b := &breaker{maker: &maker{Rand: rand.New(rand.NewPCG(n, 0xbad)), metric: strings.HasSuffix(p.Demo, "metric")}, lines: strings.Split(string(p.Source), "\n"), sets: p.Sets}
	if b.yes(30) {
		b.sets = nil // what is set would hide what is spoilt in the file
	}
	if n := 1 + b.IntN(3); b.yes(50) {
		for range n {
			if b.yes(15) {
				b.lists()
			} else {
				b.extreme()
			}
		}
	} else {
		for range n {
			spoilt[b.IntN(len(spoilt))](b)
		}
	}
	p.Source, p.Sets = []byte(strings.Join(b.lines, "\n")), b.sets
	if b.cut > 0 {
		p.Source = p.Source[:b.IntN(len(p.Source))]
	}
	return p
}

// breaker spoils a project.
type breaker struct {
	*maker
	lines []string
	sets  []string
	cut   int
}

// spoilt are the ways to break a project but for its geometry.
var spoilt = []func(b *breaker){
	(*breaker).value, (*breaker).value, (*breaker).number, (*breaker).number, (*breaker).number, (*breaker).unit, (*breaker).unknown, (*breaker).twice, (*breaker).indent,
	(*breaker).swapped, (*breaker).without, (*breaker).stray, func(b *breaker) { b.cut++ }, (*breaker).anyKey, (*breaker).anyKey,
}

// words stand where another kind of value should: of a wrong type, out of every range, hostile.
var words = []string{
	"", "~", "yes", "no", "nothing", "unknown", "SURVEY", "[]", "{}", "[1in, 2in]", "{a: b}", "[[1in]]", "3", "-3", "0", "1e9", "x", "???", "in", "3 in in", "3/0in", "1/2/3in", "2x", "2x10x3",
	`"../../etc"`, `"</text><script>"`, `'%s%d%n'`, "\u202eright to left", "\u00e9\u00df\u4e2d", "&a b", "*a", "!!int 3", "|", ">-", "- a", "? a", "@", "`", "%", "a: b", "#",
}

// numbers are sizes nobody builds: none, tiny, huge, below nothing, no numbers at all.
var numbers = []string{
	"NaN", "nan", ".nan", "Inf", "+Inf", "-Inf", ".inf", "1e308", "1e400", "-1e400", "1e-400", "0", "-0", "0in", "0mm", "-1in", "-25mm", "-0in", "0.0001mm", "1e-9in", "1e9in", "1e300mm", "1e308ft",
	"99999999999999999999in", "0x10in", "1_000mm", "1,5mm", "NaNin", "Infmm", "nan mm", "1e", "1e5", "100%", "-5%", "1e9%", "1e9C", "-400C", "-1lb", "1e12lb", "0lb", "1e9psf", "1:0", "0:1", "1:1e9", "-1:8", "1e6kPa", "12000mm", "40ft", "0.5in", "3000mm",
}

var pair = regexp.MustCompile(`^(\s*(?:- )?)([a-z_]+):( *)([^#{\[]*[^#{\[\s])`)

// some is a line of the file that holds a plain pair.
func (b *breaker) some() (at int, m []string) {
	for range 200 {
		at = b.IntN(len(b.lines))
		if m = pair.FindStringSubmatch(b.lines[at]); m != nil {
			return at, m
		}
	}
	return 0, nil // all of them are spoilt already
}

func (b *breaker) put(v string) {
	if at, m := b.some(); m != nil {
		b.lines[at] = m[1] + m[2] + ": " + v
	}
}

func (b *breaker) value() { b.put(b.one(words...)) }

func (b *breaker) number() { b.put(b.one(numbers...)) }

var figure = regexp.MustCompile(`[0-9][0-9./' -]*("|in|mm|ft|lb|psf|kPa|C|%|kN|mph)`)

// unit takes the unit of a figure away or gives it that of something else.
func (b *breaker) unit() {
	at := b.IntN(len(b.lines))
	wrong := b.one("", "lb", "C", "kg", "in3", "inn", "″")
	b.lines[at] = figure.ReplaceAllStringFunc(b.lines[at], func(s string) string { return strings.TrimRight(s, `"'inmftlbpskPaC%Nh`) + wrong })
}

func (b *breaker) unknown() {
	at, m := b.some()
	if m == nil {
		return
	}
	k := b.IntN(len(m[2]))
	name := b.one(m[2][:k]+m[2][k+1:], m[2]+"s", m[2][:k]+"x"+m[2][k:], strings.ToUpper(m[2]), "thing", strings.ReplaceAll(m[2], "_", "-"))
	b.lines[at] = m[1] + name + ": " + m[4]
}

// twice repeats a line, at its place or elsewhere.
func (b *breaker) twice() {
	at, to := b.IntN(len(b.lines)), b.IntN(len(b.lines))
	if b.yes(60) {
		to = at
	}
	rest := append([]string{b.lines[at]}, b.lines[to:]...)
	b.lines = append(b.lines[:to:to], rest...)
}

func (b *breaker) indent() {
	at := b.IntN(len(b.lines))
	b.lines[at] = b.one(" ", "  ", "\t", "   ", "      ") + b.lines[at]
	if b.yes(40) {
		b.lines[at] = strings.TrimLeft(b.lines[at], " \t")
	}
}

// swapped puts two lines, or two stretches of lines, in the place of each other.
func (b *breaker) swapped() {
	n := 1 + b.IntN(12)
	if len(b.lines) < 2*n+2 {
		return
	}
	i := b.IntN(len(b.lines) - 2*n)
	j := i + n + b.IntN(len(b.lines)-i-2*n)
	for k := range n {
		b.lines[i+k], b.lines[j+k] = b.lines[j+k], b.lines[i+k]
	}
}

// without takes lines out.
func (b *breaker) without() {
	at := b.IntN(len(b.lines))
	to := min(len(b.lines), at+1+b.IntN(6))
	b.lines = append(b.lines[:at:at], b.lines[to:]...)
}

// stray puts a sign where none belongs.
func (b *breaker) stray() {
	at := b.IntN(len(b.lines))
	k := b.IntN(len(b.lines[at]) + 1)
	b.lines[at] = b.lines[at][:k] + b.one("\x00", "\x07", "\xff", "\t", ":", "[", "]", "{", "}", `"`, "'", ",", "- ", "&", "*", "\r", "\ufeff", "\u2028") + b.lines[at][k:]
}

var everyKey = sync.OnceValue(func() []spec.Key { return spec.Keys(unit.IP) })

// anyKey sets any key there is to something it should not be.
func (b *breaker) anyKey() {
	all := everyKey()
	name := strings.ReplaceAll(all[b.IntN(len(all))].Path, ".N", fmt.Sprint(".", b.IntN(3)))
	if b.yes(10) {
		name = b.one(name+".", "."+name, name+".0", name+".x", "", "a=b", strings.ToUpper(name))
	}
	v := b.one(numbers...)
	if b.yes(40) {
		v = b.one(words...)
	}
	b.sets = append(b.sets, name+"="+v)
}

// ranged reads what is allowed of a number: 4..60 in.
var ranged = regexp.MustCompile(`^(-?[0-9.]+)\.\.(-?[0-9.]+) ?([a-z%]*)$`)

// extreme sets any key to what is allowed of it, the ends of its range as often as what lies between: values that
// are good by themselves and stand in each other's way.
func (b *breaker) extreme() {
	for range 50 {
		all := everyKey()
		k := all[b.IntN(len(all))]
		if strings.HasPrefix(k.Path, "fasteners.to_") || strings.HasPrefix(k.Path, "rates.") {
			continue // two sets beside the one, no geometry
		}
		name := strings.ReplaceAll(k.Path, ".N", fmt.Sprint(".", b.IntN(8)))
		words, isWord := strings.CutPrefix(k.Allowed, "one of ")
		m := ranged.FindStringSubmatch(strings.ReplaceAll(k.Allowed, ",", ""))
		switch {
		case isWord:
			b.sets = append(b.sets, name+"="+b.one(strings.Split(words, ", ")...))
		case k.Form == "yes or no":
			b.sets = append(b.sets, name+"="+b.one("yes", "no"))
		case m != nil:
			lo, _ := strconv.ParseFloat(m[1], 64)
			hi, _ := strconv.ParseFloat(m[2], 64)
			v := lo + (hi-lo)*math.Pow(b.Float64(), 3)
			switch b.IntN(3) {
			case 0:
				v = lo
			case 1:
				v = hi
			}
			if k.Form == "a whole number" {
				v = math.Round(v)
			}
			b.sets = append(b.sets, fmt.Sprintf("%s=%.4g%s", name, v, m[3]))
		default:
			continue
		}
		return
	}
}

// lists of places and thicknesses, doors, obstacles, sizes.
var lists = []string{
	"blocks.plies", "blocks.positions", "ledger.splices", "fasteners.through.rows", "deck.guard_posts", "deck.joists.positions", "doors", "obstacles", "deck.point_loads", "ledger.size", "blocks.size", "deck.joists.size",
}

// list sets a list to lengths that hardly fit, or far too many.
func (b *breaker) lists() {
	key := lists[b.IntN(len(lists))]
	wide := func() string {
		return b.one(b.length(0, 12), b.length(0, 12), b.length(0, 200), "0in", "0.2in", "-1in", "0.2mm", "90in", "20ft")
	}
	v := wide()
	switch name := key[strings.LastIndex(key, ".")+1:]; name {
	case "size":
		v = b.one("2x4", "2x12", "6x12", "1x1", "45x95mm", "2x400", v)
	case "doors":
		v = "[{from: " + wide() + ", to: " + wide() + ", threshold: " + wide() + "}]"
	case "obstacles":
		v = "[{kind: duct, name: DUCT, from: " + wide() + ", to: " + wide() + ", inside: " + b.one("yes", "no") + "}]"
	case "point_loads":
		v = "[{name: STAIR, x: " + wide() + ", load: " + b.one("1lb", "50000lb", "0lb") + "}]"
	default:
		for range b.IntN(4) + 30*b.IntN(2)*b.IntN(2)*b.IntN(2) {
			v += ", " + wide()
		}
		v = "[" + v + "]"
	}
	b.sets = append(b.sets, key+"="+v)
}
