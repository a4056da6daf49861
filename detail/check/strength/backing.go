package strength

import (
	"math"
	"strings"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// bandShares returns what rim and backing bear of a block's load, each over it, in the state of the dowels
// the verdict rests on: in the stiff state the rim bears more than all of it and the backing the other way.
// known is false where the backing is counted and the fasteners have no such state.
func (c *calc) bandShares() (rim, backing float64, known bool) {
	g := c.groups[0]
	switch {
	case !c.counted():
		return 1, 0, true
	case g.counts == nil:
		return 0, 0, false
	}
	return g.counts.share("rim"), g.counts.share("backing"), true
}

// backingFixed checks what carries the backing: the force that passes between it and the rim goes into its
// own fixings, up or down.
func (c *calc) backingFixed() {
	if !c.counted() {
		return
	}
	fixing := c.m.Backing.Fixing.Pounds()
	step := check.Step{ID: "backing_fixing", Group: check.Floor, Symbol: "F", Cap: c.a.Cap,
		Name: "force across the joint of rim and backing, on the backing's own fixings", Formula: "share R <= rating, either way",
		Clause: "statics of the dowel at its limit; judgement: in proportion to the load, not raised above CD 1", Where: c.worstMark()}
	rim, backing, known := c.bandShares()
	if !known {
		c.notChecked(step, "what the backing bears of the block's load is not known for these fasteners")
		return
	}
	force := math.Abs(backing)
	if fixing < 1e-3 {
		step.Value = lb(force * c.heaviest().most())
		c.notChecked(step, "allowable load of the backing's fixings (floor.backing.fixing) not stated; it must be at least "+
			c.say(lb(force*c.heaviest().most()/c.a.Cap))+" at each block, up or down")
		return
	}
	c.worst(func(k solution) check.Step {
		s := step
		s.Value, s.Limit = lb(force*k.most()), check.Limit(lb(fixing*math.Min(1, k.cd)))
		s.With = []check.Arg{arg("R", lb(k.most())), arg("rim bears", lb(rim*k.most())), arg("backing bears", lb(backing*k.most()))}
		s.Fix = c.fixIf(s, "fixings of the backing rated "+c.say(lb(force*k.most()/math.Min(1, k.cd)/c.a.Cap))+" or more at each block (floor.backing.fixing)")
		if c.m.HouseJoists.Parallel && c.partial == "" && s.Settled().Verdict != check.Fails {
			s.Verdict, s.Fix = check.Engineer, "what holds the backing by an engineer's detail, for this force either way"
			s.Reason = "the backing's own fixings find no joist to go into; " + alongRim
		}
		return s
	})
}

// bay is a piece of backing on its two ties, in inches along the ledger.
//
//	joist |====================| joist
//	     A^     o     o        ^B       ties at the ends hold, top bolts pull
type bay struct {
	from, to float64
	a, b     float64 // the ties nearest its ends
	ties     int
}

// bays are the pieces of backing with the ties that stand at them.
func (c *calc) bays() []bay {
	var out []bay
	for _, p := range c.m.Backing.Pieces {
		b := bay{from: p.From.Inches(), to: p.To.Inches(), a: math.Inf(1), b: math.Inf(-1)}
		for _, t := range c.m.Tie.At {
			if x := t.Inches(); x > b.from-tieReach && x < b.to+tieReach {
				b.a, b.b, b.ties = math.Min(b.a, x), math.Max(b.b, x), b.ties+1
			}
		}
		out = append(out, b)
	}
	return out
}

// tieReach is how far past the end of a piece a tie may be measured and still hold it, in: the thickness of
// a strap on the joist's face.
const tieReach = 0.25

// pulls are the pulls of the top bolts that pass a piece.
func (c *calc) pullsOn(b bay, k solution) []point {
	var out []point
	g := c.groups[0]
	for i, p := range c.m.Blocks.At {
		for _, o := range g.cols {
			if x := p.X.Inches() + o; x >= b.from && x <= b.to {
				out = append(out, point{x, c.pullOf(k, i) / float64(len(g.cols))})
			}
		}
	}
	return out
}

// reactions returns what the two ties of a piece hold.
func (b bay) reactions(pulls []point) (a, z float64) {
	for _, p := range pulls {
		z += p.p * (p.x - b.a) / (b.b - b.a)
		a += p.p * (b.b - p.x) / (b.b - b.a)
	}
	return a, z
}

// moment returns the greatest bending moment of a piece, lb-in, either way.
func (b bay) moment(pulls []point) float64 {
	ra, rb := b.reactions(pulls)
	most := 0.0
	for _, x := range append([]point{{x: b.a}, {x: b.b}}, pulls...) {
		m := ra*math.Max(0, x.x-b.a) + rb*math.Max(0, x.x-b.b)
		for _, p := range pulls {
			m -= p.p * math.Max(0, x.x-p.x)
		}
		most = math.Max(most, math.Abs(m))
	}
	return most
}

// backingHolds checks that backing stands behind every bolt and bends no more than it may between its ties.
func (c *calc) backingHolds() {
	if !c.backed() {
		return
	}
	step := check.Step{ID: "backing_behind_bolts", Group: check.Floor, Name: "backing behind every fastener that enters the rim",
		Clause: "judgement"}
	if len(c.m.Backing.Pieces) == 0 {
		step.Where = "all blocks"
		c.notChecked(step, "where the pieces of backing stand was not measured")
		return
	}
	bare := c.bareBlocks()
	step.Where = strings.Join(bare, ", ")
	if bare == nil {
		step.Where = "all blocks"
	}
	c.verdictOf(step, bare != nil, check.Fails, "no backing stands behind a fastener at "+step.Where+
		": it would bear on the rim alone, and nothing takes its pull to the joists")
	c.backingBends()
}

// bareBlocks lists the blocks with a column that no piece of backing stands behind.
func (c *calc) bareBlocks() []string {
	var out []string
	for _, p := range c.m.Blocks.At {
		for _, o := range c.groups[0].cols {
			if _, ok := c.pieceAt(p.X.Inches() + o); !ok {
				out = append(out, p.Mark)
				break
			}
		}
	}
	return out
}

// backingBends checks the backing as a flat beam between its two ties.
func (c *calc) backingBends() {
	w, g, bays := c.m.Backing, c.groups[0], c.tiedBays()
	depth, t := (c.m.Rim.Top - c.m.Rim.Bottom).Inches(), w.Thickness.Inches()
	if !c.a.GrossSection {
		depth -= g.hole() * float64(len(g.rows))
	}
	step := check.Step{ID: "backing_bending", Group: check.Floor, Symbol: "fb", Name: "backing bending between its ties", Cap: c.a.Cap,
		Formula: "M/S <= Fb CF Cfu CD CM",
		Clause:  "NDS 2018 3.3; judgement: simple span from tie to tie, alone, as nothing holds the rim to the joists"}
	if c.m.HouseJoists.Parallel {
		c.notChecked(step, alongRim)
		return
	}
	lack := missing(given{"bending strength of the backing", w.Wood.Fb.PSI()}, given{"backing left by the bolt holes", depth})
	switch {
	case !c.pulls(c.rimFace(g)):
		lack = noPull
	case len(bays) == 0:
		lack = "no piece of backing stands between two ties"
	}
	if lack != "" {
		c.notChecked(step, c.unlisted("backing", lack))
		return
	}
	cfu := 1.0
	if !w.Panel {
		cfu = flatUse((c.m.Rim.Top - c.m.Rim.Bottom).Inches())
	}
	s := depth * t * t / 6
	c.worst(func(k solution) check.Step {
		most := step
		for _, b := range bays {
			pulls := c.pullsOn(b, k)
			m := b.moment(pulls)
			if m/s <= most.Value.V/psi(1).V {
				continue
			}
			most.Value, most.Where = psi(m/s), c.behind(b)
			most.With = []check.Arg{arg("M", lbin(m)), arg("S", modulus(s)), arg("span", inch(b.b-b.a)),
				arg("Cfu", num(cfu)), arg("CD", num(k.cd))}
		}
		most.Limit = check.Limit(psi(w.Wood.bending(c.m.Rim.Service != Dry) * cfu * k.cd))
		most.Fix = c.fixIf(most, "thicker backing (floor.backing.thickness): "+c.say(inch(t*math.Sqrt(most.Value.V/most.Limit.V/c.a.Cap))))
		return most
	})
}

// tiedBays are the pieces that bolts pass and that stand between two ties.
func (c *calc) tiedBays() []bay {
	var out []bay
	for _, b := range c.bays() {
		if b.ties >= 2 && b.b-b.a > 0.5 && c.behind(b) != "" {
			out = append(out, b)
		}
	}
	return out
}

// behind names the blocks with a fastener through a piece.
func (c *calc) behind(b bay) string {
	var marks []string
	for _, p := range c.m.Blocks.At {
		for _, o := range c.groups[0].cols {
			if x := p.X.Inches() + o; x >= b.from && x <= b.to {
				marks = append(marks, p.Mark)
				break
			}
		}
	}
	return strings.Join(marks, ", ")
}

// span of a piece as printed.
func (c *calc) sayPiece(b bay) string {
	at := func(x float64) string { return c.say((unit.Length(x) * unit.Inch).Q()) }
	return at(b.from) + " to " + at(b.to)
}
