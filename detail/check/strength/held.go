package strength

import (
	"math"

	"standclear/detail/check"
)

// boltTension is the allowable tension of an ASTM A307 bolt on its nominal area, psi: 45 ksi over 2.
// AISC 360-16 table J3.2 (from memory, confirm).
const boltTension = 45_000 / 2.0

// held checks the fasteners that hold a face back: their steel, what their washers, heads or threads bear
// on, and pull and shear together.
func (c *calc) held(f face) {
	switch f.g.Kind {
	case Bolt:
		c.heldByBolts(f)
	case Evaluated:
		c.heldByEvaluated(f)
	default:
		c.heldByScrews(f)
	}
}

// seat is one surface a washer presses on.
type seat struct {
	id, name string
	strength float64              // psi, with CM
	cb       func(d duty) float64 // bearing area factor at one block
}

// bearingArea is Cb for a washer of length size that lies 3 in or more from the end of its member.
// NDS 2018 3.10.4.
func bearingArea(size, fromEnd float64) float64 {
	if size >= 6 || fromEnd < 3 {
		return 1
	}
	return (size + 0.375) / size
}

// seats lists what the washers of the set press on: inside, the backing or the rim, dry unless stated
// otherwise; outside, the ledger; the block where a set ends at it.
func (c *calc) seats(g *group) (inner, outer seat) {
	inBlock := func(ply int) seat {
		return seat{"block_washer_bearing", "block", across(c.m.Blocks.Plies[ply].FcPerp, c.blockWet()),
			func(duty) float64 { return 1 }}
	}
	inner, outer = inBlock(0), inBlock(len(c.m.Blocks.Plies)-1)
	if g.rim {
		inner = seat{"rim_washer_bearing", c.nutWood(), c.nutSide(), func(d duty) float64 { return c.nutSideFactor(g, d) }}
	}
	if g.ledge {
		outer = seat{"ledger_washer_bearing", "ledger", across(c.m.Ledger.Wood.FcPerp, c.ledgerWet()), func(d duty) float64 {
			end, cut := c.ledgerEnds(c.at(d))
			return bearingArea(g.Washer.Size.Inches(), math.Min(end, cut)-g.Washer.Size.Inches()/2)
		}}
	}
	return inner, outer
}

// nutSide is the bearing strength across the grain where the nuts sit inside, psi.
func (c *calc) nutSide() float64 {
	wood := c.m.Rim.Wood.FcPerp
	if c.backed() {
		wood = c.m.Backing.Wood.FcPerp
	}
	return across(wood, c.m.Rim.Service != Dry)
}

// nutSideFactor is Cb of the washers inside: by the ends of the backing, 1 where those are not known. The
// rim has no end near a block.
func (c *calc) nutSideFactor(g *group, d duty) float64 {
	size := g.Washer.Size.Inches()
	if !c.backed() {
		return bearingArea(size, 3)
	}
	end := c.backingEnd(c.at(d))
	if math.IsInf(end, 1) {
		return 1
	}
	return bearingArea(size, end-size/2)
}

// heldByBolts checks bolt steel and washers, then pull and shear added.
func (c *calc) heldByBolts(f face) {
	g := f.g
	steel := boltTension * math.Pi / 4 * g.d() * g.d()
	c.worstDuty(g, func(d duty) check.Step {
		return check.Step{ID: "bolt_tension" + f.suffix(), Group: check.Block, Symbol: "T1", Name: "pull on one top bolt",
			Formula: "T/columns <= 22,500 psi pi D^2/4", Cap: c.a.Cap,
			With: []check.Arg{arg("D", g.Diameter.Q())}, Value: lb(c.couple(f, d).bolt), Limit: check.Limit(lb(steel)),
			Clause: "AISC 360-16 J3.6, ASTM A307 (from memory, confirm)"}
	})
	inner, outer := c.seats(g)
	c.washerBears(f, inner)
	c.washerBears(f, outer)
	c.washerBends(f)
	steel = math.Min(steel, g.plateHolds())
	c.pullAndShear(f, c.seatHolds(g, inner, steel), c.seatHolds(g, outer, steel))
}

// holds is the pull one end of a fastener holds under a duty, lb; not a number when it is not known.
type holds func(d duty) float64

// seatHolds is what a washer seat holds, at most the given steel.
func (c *calc) seatHolds(g *group, s seat, steel float64) holds {
	area := g.washerArea()
	if s.strength < 1e-3 || area < 1e-3 || steel < 1e-3 {
		return func(duty) float64 { return math.NaN() }
	}
	return func(d duty) float64 { return math.Min(steel, s.strength*s.cb(d)*area) }
}

// washerBears checks one washer seat.
func (c *calc) washerBears(f face, s seat) {
	area := f.g.washerArea()
	step := check.Step{ID: s.id + f.suffix(), Group: check.Block, Symbol: "fc", Name: "washer pressing on the " + s.name,
		Formula: "T1/A <= Fc-perp CM Cb", Cap: c.a.Cap, Clause: "NDS 2018 3.10.2, 3.10.4"}
	lack := missing(given{"bearing strength across the grain of the " + s.name, s.strength},
		given{"washer of a size and spacing that bears", area})
	if lack != "" {
		c.notChecked(step, c.unlisted(s.name, lack))
		return
	}
	c.worstDuty(f.g, func(d duty) check.Step {
		t, pull := step, c.couple(f, d).bolt
		t.Value, t.Limit = psi(pull/area), check.Limit(psi(s.strength*s.cb(d)))
		t.With = []check.Arg{arg("T1", lb(pull)), arg("A", square(area)), arg("Cb", num(s.cb(d)))}
		return t
	})
}

// pullAndShear adds the ratios of shear and pull on a top fastener, at its inner end and at its outer end.
// The shear is that of the worst plane there or of the whole dowel, whichever is nearer its limit.
func (c *calc) pullAndShear(f face, inner, outer holds) {
	g := f.g
	step := check.Step{ID: "linear_interaction_top_bolt" + f.suffix(), Group: check.Block,
		Name: "shear and pull together on a top bolt", Symbol: "sum", Formula: "V/Z' + T1/T'", Cap: c.a.Cap,
		Clause: "judgement: the standard gives no rule for bolts; the ratios are added"}
	if first := g.duties[0]; math.IsNaN(inner(first) + outer(first) + g.shear[0]) {
		c.notChecked(step, "shear or pull of the fasteners could not be checked")
		return
	}
	c.worstDuty(g, func(d duty) check.Step {
		bolt := c.couple(f, d).bolt
		s, shear, pull := step, g.inside[d.place], bolt/inner(d)
		s.Note = "at the inner end"
		if v, t := g.outside[d.place], bolt/outer(d); v+t > shear+pull {
			s.Note, shear, pull = "at the outer end", v, t
		}
		s.Value, s.Limit = num(shear+pull), check.Limit(num(1))
		s.With = []check.Arg{arg("V/Z'", num(shear)), arg("T1/T'", num(pull))}
		return s
	})
}
