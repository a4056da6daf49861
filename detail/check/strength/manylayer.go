package strength

import (
	"math"

	"standclear/detail/unit"
)

// Hold says what a layer along a dowel does for the joint.
type Hold int

// A Void bears nothing: sheathing not counted, pad, air, a loose ply. Main and Side are the two groups
// that pull against each other. Loose is a ply between them that takes no net load but may hold the
// dowel's couple, where something else keeps the ply from turning.
const (
	Void Hold = iota
	Main
	Side
	Loose
)

// Bed is one layer along a dowel, from the main group outward.
type Bed struct {
	Name   string
	Hold   Hold
	Length unit.Length
	Fe     unit.Pressure // dowel bearing strength; not read in a Void
	Angle  float64       // degrees from load to grain
}

// Transfer is the greatest load a dowel carries from the side group to the main group, by limit
// analysis (lower bound, exact for these layers).
type Transfer struct {
	P, Crush, Rigid unit.Force // with hinges; bearing alone; the dowel as a stiff bar
	Z               unit.Force // reference design value
	Governs         string     // "crushing", "turning" or "hinges"
	MainHinge       float64    // distance of the hinge in the main group from its face, mm; -1 none
	SideHinge       float64
	Couple          unit.Moment // what the loose layers hold together, at P
}

// Transfer solves the dowel through any stack of layers. Wood bears at most q = Fe D per length, the
// dowel carries at most its plastic moment, every layer is in balance, voids bear nothing:
//
//	  main group        between             side group
//	|####|  |######|............|::loose::|.....|######|
//	==============================================  dowel
//	  p <= q            V = -P                p <= q
//
// At load P a group holds the dowel at its face with a moment of at most
//
//	f(P) = min( rigid: bearing turns over once, hinge: Mp less the moment of the wood crushed by P )
//
// From +f of the main group the moment falls by P over every length between the faces and is lifted by
// q t^2/4 in a loose layer, never past the plastic moment, and must end above -f of the side group.
// What is left falls as P rises, so the greatest P is its one root. With one layer a side these are the
// six yield modes; Z carries their reductions: Z = min(Crush/4, Rigid/3.6, P/3.2)/Kt, and one
// common reduction under 1/4 in. Z is 0 when a group bears nothing.
func (d Dowel) Transfer(beds []Bed) Transfer {
	b := d.bench(beds)
	crush := math.Min(b.main.total(), b.side.total())
	t := Transfer{MainHinge: -1, SideHinge: -1, Crush: pounds(crush)}
	if !(crush > 0) {
		return t
	}
	rigid := b.solve(math.Inf(1), crush)
	p := b.solve(d.Plastic().PoundInches(), crush)
	t.Rigid, t.P = pounds(rigid), pounds(p)
	my := d.Plastic().PoundInches()
	t.MainHinge, t.SideHinge = b.main.hingeAt(p, my), b.side.hingeAt(p, my)
	t.Couple = unit.Moment(math.Max(0, p*b.gap()-b.main.hold(p, my)-b.side.hold(p, my))) * unit.PoundInch
	rc, rr, rh := d.reductions(b.angle)
	t.Z, t.Governs = pounds(crush/rc), "crushing"
	if z := pounds(rigid / rr); z < t.Z {
		t.Z, t.Governs = z, "turning"
	}
	if z := pounds(p / rh); z < t.Z && p < rigid*(1-1e-9) {
		t.Z, t.Governs = z, "hinges"
	}
	return t
}

// bench is the stack in inches and pounds.
type bench struct {
	main, side bedding // from their faces inward
	between    bedding // from the main face outward: q of loose layers, 0 of voids
	angle      float64 // the widest to grain
}

// gap is the distance between the faces.
func (b bench) gap() float64 {
	g := 0.0
	for _, s := range b.between {
		g += s.l
	}
	return g
}

// bedding is the layers of one group from its face inward: q in lb per in, 0 where it is void.
type bedding []struct{ q, l float64 }

// bench sorts the layers into groups. A void inside a group belongs to it.
func (d Dowel) bench(beds []Bed) bench {
	first, last := len(beds), -1
	for i, b := range beds {
		if b.Hold == Main {
			last = i
		}
		if b.Hold == Side && i < first {
			first = i
		}
	}
	var out bench
	for i := last; i >= 0; i-- {
		out.main = append(out.main, d.bed(beds[i]))
	}
	for i := first; i < len(beds); i++ {
		out.side = append(out.side, d.bed(beds[i]))
	}
	for i := last + 1; i < first; i++ {
		out.between = append(out.between, d.bed(beds[i]))
	}
	for _, b := range beds {
		if b.Hold != Void {
			out.angle = math.Max(out.angle, b.Angle)
		}
	}
	return out
}

func (d Dowel) bed(b Bed) struct{ q, l float64 } {
	q := 0.0
	if b.Hold != Void {
		q = b.Fe.PSI() * d.Root.Inches()
	}
	return struct{ q, l float64 }{q, b.Length.Inches()}
}

func (b bedding) total() float64 {
	sum := 0.0
	for _, s := range b {
		sum += s.q * s.l
	}
	return sum
}

// crushed returns how deep from the face the wood must yield to bear load p, and the moment of that
// bearing about the face.
func (b bedding) crushed(p float64) (depth, moment float64) {
	at := 0.0
	for _, s := range b {
		if s.q > 0 {
			l := math.Min(s.l, p/s.q)
			moment += s.q * l * (at + l/2)
			if p <= s.q*s.l {
				return at + l, moment
			}
			p -= s.q * l
		}
		at += s.l
	}
	return at, moment
}

// hold returns the moment with which the group can hold the dowel at its face under load p: as a
// stiff bar, the part next to the face bears one way and the rest the other; with a hinge of plastic
// moment my at the depth where the shear is spent.
func (b bedding) hold(p, my float64) float64 {
	total := b.total()
	_, all := b.crushed(total)
	_, near := b.crushed((total + p) / 2)
	_, spent := b.crushed(p)
	return math.Min(all-2*near, my-spent)
}

// hingeAt returns the depth of the hinge under load p in millimetres, -1 where the group turns stiff.
func (b bedding) hingeAt(p, my float64) float64 {
	total := b.total()
	_, all := b.crushed(total)
	_, near := b.crushed((total + p) / 2)
	depth, spent := b.crushed(p)
	if all-2*near <= my-spent {
		return -1
	}
	return depth * 25.4
}

// carry takes the moment from the main face to the side face under load p, as high as it can be kept;
// minus infinity where it passes the plastic moment on the way.
func (b bench) carry(p, my float64) float64 { return b.walk(p, my, nil) }

// walk is carry; give is told the couple each layer between the groups gives the dowel on the way. In a loose layer
// the shear swings from -p up and back; where it passes through zero the moment has its least, p^2/2q under
// that at the inner face, and its greatest, as much over that at the outer one.
func (b bench) walk(p, my float64, give func(layer int, couple float64)) float64 {
	m := b.main.hold(p, my)
	for i, s := range b.between {
		if s.q == 0 {
			m -= p * s.l
			continue
		}
		swing := 0.0
		if s.l >= 2*p/s.q {
			swing = p * p / (2 * s.q)
		}
		if m < swing-my {
			return math.Inf(-1)
		}
		next := math.Min(m+s.q*s.l*s.l/4-p*s.l, my-swing)
		if give != nil {
			give(i, next-m+p*s.l)
		}
		m = next
	}
	return m
}

// solve returns the load at which the groups just hold the dowel, at most crush.
func (b bench) solve(my, crush float64) float64 {
	spare := func(p float64) float64 { return b.carry(p, my) + b.side.hold(p, my) }
	lo, hi := 0.0, crush
	if spare(hi) >= 0 {
		return crush
	}
	for {
		mid := (lo + hi) / 2
		if mid <= lo || mid >= hi { // no number between
			return lo
		}
		if spare(mid) >= 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
}
