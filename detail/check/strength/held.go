package strength

import (
	"math"

	"standclear/detail/check"
)

// boltTension is the allowable tension of an ASTM A307 bolt on its nominal area, psi: 45 ksi over 2.
// AISC 360-16 table J3.2 (from memory, confirm).
const boltTension = 45_000 / 2.0

// held checks the fasteners that hold a face back: their steel, what their washers or threads bear on,
// and pull and shear together.
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
	strength float64 // psi, with CM and Cb
	cb       float64
}

// bearingArea is Cb for a washer of length size that lies 3 in or more from the end of its member.
// NDS 2018 3.10.4.
func bearingArea(size, fromEnd float64) float64 {
	if size >= 6 || fromEnd < 3 {
		return 1
	}
	return (size + 0.375) / size
}

// seats lists what the washers of the set press on: inside, the rim or the backing, dry unless stated
// otherwise; outside, the ledger; the block where a set ends at it.
func (c *calc) seats(g *group) []seat {
	size := g.Washer.Size.Inches()
	inBlock := func(ply int) seat {
		return seat{"block_washer_bearing", "block", across(c.m.Blocks.Plies[ply].FcPerp, c.blockWet()), 1}
	}
	var inner, outer seat
	if g.rim {
		cb := bearingArea(size, 3)
		inner = seat{"rim_washer_bearing", "rim", c.nutSide() * cb, cb}
		outer = inBlock(len(c.m.Blocks.Plies) - 1)
	}
	if g.ledge {
		end, _ := c.ledgerEnd(g)
		cb := bearingArea(size, end-size/2)
		outer = seat{"ledger_washer_bearing", "ledger", across(c.m.Ledger.Wood.FcPerp, c.ledgerWet()) * cb, cb}
	}
	if !g.rim {
		inner = inBlock(0)
	}
	return []seat{inner, outer}
}

// nutSide is the bearing strength across the grain where the nuts sit inside, psi.
func (c *calc) nutSide() float64 {
	wood := c.m.Rim.Wood.FcPerp
	if b := c.m.Backing; b.Kind != NoBacking && b.Thickness > 0 {
		wood = b.Wood.FcPerp
	}
	return across(wood, c.m.Rim.Service != Dry)
}

// heldByBolts checks bolt steel and washers, then pull and shear added.
func (c *calc) heldByBolts(f face) {
	g := f.g
	area := g.washerArea()
	seats := c.seats(g)
	steel := boltTension * math.Pi / 4 * g.d() * g.d()
	c.worst(func(k solution) check.Step {
		p := c.couple(f, k.most())
		return check.Step{ID: "bolt_tension" + f.suffix(), Group: check.Block, Symbol: "T1", Name: "pull on one top bolt",
			Formula: "T1 <= 22,500 psi pi D^2/4", Cap: c.a.Cap,
			With: []check.Arg{arg("D", g.Diameter.Q())}, Value: lb(p.bolt), Limit: check.Limit(lb(steel)),
			Clause: "AISC 360-16 J3.6, ASTM A307 (from memory, confirm)", Where: c.worstMark()}
	})
	inner, outer := c.washerHolds(f, seats[0], area), c.washerHolds(f, seats[1], area)
	c.boltPullAndShear(f, math.Min(steel, inner), math.Min(steel, outer))
}

// washerHolds checks one washer seat and returns the pull it holds, lb; not a number when unknown.
func (c *calc) washerHolds(f face, s seat, area float64) float64 {
	if !c.washerBears(f, s, area) {
		return math.NaN()
	}
	return s.strength * area
}

// washerBears checks one washer seat; false when it could not.
func (c *calc) washerBears(f face, s seat, area float64) bool {
	step := check.Step{ID: s.id + f.suffix(), Group: check.Block, Symbol: "fc", Name: "washer pressing on the " + s.name,
		Formula: "T1/A <= Fc-perp CM Cb", Cap: c.a.Cap,
		Clause: "NDS 2018 3.10.2, 3.10.4", Where: c.worstMark()}
	lack := missing(given{"bearing strength across the grain of the " + s.name, s.strength},
		given{"washer of a size and spacing that bears", area})
	if lack != "" {
		c.notChecked(step, lack)
		return false
	}
	c.worst(func(k solution) check.Step {
		p := c.couple(f, k.most())
		step.Value, step.Limit = psi(p.bolt/area), check.Limit(psi(s.strength))
		step.With = []check.Arg{arg("T1", lb(p.bolt)), arg("A", square(area)), arg("Cb", num(s.cb))}
		return step
	})
	return true
}

// boltPullAndShear adds the ratios of shear and pull on a top bolt, at its inner end and at its outer
// end, where it holds a pull of inner and outer pounds.
func (c *calc) boltPullAndShear(f face, inner, outer float64) {
	g := f.g
	step := check.Step{ID: "linear_interaction_top_bolt" + f.suffix(), Group: check.Block,
		Name: "shear and pull together on a top bolt", Formula: "V/Z' + T1/T'", Cap: c.a.Cap,
		Clause: "judgement: the standard gives no rule for bolts; the ratios are added", Where: c.worstMark()}
	if math.IsNaN(inner + outer + g.shear[0]) {
		c.notChecked(step, "shear or pull of the fasteners could not be checked")
		return
	}
	c.worst(func(k solution) check.Step {
		bolt := c.couple(f, k.most()).bolt
		s, shear, pull := step, g.inside[k.n], bolt/inner
		s.Note = "at the inner end"
		if v, t := g.outside[k.n], bolt/outer; v+t > shear+pull {
			s.Note, shear, pull = "at the outer end", v, t
		}
		s.Value, s.Limit = num(shear+pull), check.Limit(num(1))
		s.With = []check.Arg{arg("V/Z'", num(shear)), arg("T1/T'", num(pull))}
		return s
	})
}

// heldByScrews checks lag and wood screws by withdrawal and the combined rule.
func (c *calc) heldByScrews(f face) {
	g := f.g
	step := check.Step{ID: "screw_pull_and_shear" + f.suffix(), Group: check.Block, Symbol: "F",
		Name: "shear and pull together on a top screw", Cap: c.a.Cap,
		Formula: "sqrt(V^2 + T1^2) <= Wp Z'/(Wp cos^2 + Z' sin^2)", Clause: "NDS 2018 12.2.1, 12.4.1", Where: c.worstMark()}
	if !g.known || math.IsNaN(g.shear[0]) {
		c.notChecked(step, "shear of the screws could not be checked")
		return
	}
	wp := c.withdrawal(g)
	c.worst(func(k solution) check.Step {
		v, t := k.most()/float64(g.Count()), c.couple(f, k.most()).bolt
		z, w := v/math.Max(g.shear[k.n], 1e-9), wp*k.cd
		angle := math.Atan2(t, v) * 180 / math.Pi
		s := step
		s.Value = lb(math.Hypot(v, t))
		s.Limit = check.Limit(lb(0))
		if w > 0 && z > 0 {
			s.Limit = check.Limit(CombinedScrew(pounds(w), pounds(z), angle).Q())
		}
		s.With = []check.Arg{arg("V", lb(v)), arg("T1", lb(t)), arg("Wp", lb(w)), arg("Z'", lb(z))}
		return s
	})
}

// withdrawal is the adjusted withdrawal value of one screw without CD, lb. Any wet piece in the set
// counts it as wet.
func (c *calc) withdrawal(g *group) float64 {
	p, _ := g.holding(g.anchorThick())
	wood := g.parts[0].gravity()
	w := LagWithdrawal(wood, g.Diameter)
	if g.Kind == Screw {
		w = ScrewWithdrawal(wood, g.Diameter)
	}
	wet := false
	for _, part := range g.parts {
		for _, m := range part.moisture {
			wet = wet || m.Service != Dry
		}
	}
	return w.PLF() / 12 * p * when(wet, 0.7)
}

// heldByEvaluated adds the ratios of shear and pull by the stated values.
func (c *calc) heldByEvaluated(f face) {
	g := f.g
	if lack := missing(given{"allowable withdrawal load of the evaluated fastener", g.Withdrawal.Pounds()}); lack != "" {
		c.notChecked(check.Step{ID: "evaluated_pull" + f.suffix(), Group: check.Block,
			Name: "pull on an evaluated fastener"}, lack)
		return
	}
	c.boltPullAndShear(f, g.Withdrawal.Pounds(), g.Withdrawal.Pounds())
}

// blockShear checks the block as a short beam between a set from the ledger and a set to the rim. With
// one set through everything the load passes along the bolts and hardly bends the block.
func (c *calc) blockShear() {
	b := c.m.Blocks
	for _, g := range c.groups {
		d := (b.Top - b.Bottom).Inches()
		de := b.Top.Inches() - g.low()
		if !g.rim {
			de = g.top() - b.Bottom.Inches()
		}
		step := check.Step{ID: "block_connection_shear" + g.id, Group: check.Block, Symbol: "fv",
			Name: "shear in the block at its bolts", Cap: c.a.Cap,
			Formula: "3 (R/2)/(2 b de) (d/de)^2 <= Fv CD CM Ci", Clause: "NDS 2018 3.4.3.3 (from memory, confirm)",
			Where: c.worstMark()}
		fv := b.Wood.shear(c.blockWet())
		if lack := missing(given{"shear strength of the block", fv}, given{"block between its edge and the farthest bolts", de}); lack != "" {
			c.notChecked(step, lack)
			continue
		}
		if b.VerticalGrain {
			step.Note = "grain upright: the block is loaded along its grain"
			step.Formula = ""
			c.add(step)
			continue
		}
		c.blockShearOf(step, d, de, fv)
	}
}

func (c *calc) blockShearOf(step check.Step, d, de, fv float64) {
	thick := c.shearThickness()
	of := func(k solution) check.Step {
		v := k.most() / 2
		step.Value = psi(shearAtBolts(v, thick, d, de, 0))
		step.With = []check.Arg{arg("R/2", lb(v)), arg("b", inch(thick)), arg("d", inch(d)), arg("de", inch(de)),
			arg("Fv'", psi(fv*k.cd))}
		if c.m.Fasteners.Through == nil {
			step.Limit = check.Limit(psi(fv * k.cd))
		}
		return step
	}
	if c.m.Fasteners.Through == nil {
		c.worst(of)
		return
	}
	h := of(c.heaviest())
	h.Note, h.Cap = "for information: one set through everything carries past the block", 0
	c.add(h)
}

// shearThickness is what of the block shears as one: all lumber plies when fixed together, else the
// thinnest, in.
func (c *calc) shearThickness() float64 {
	sum, least := 0.0, math.Inf(1)
	for _, p := range c.m.Blocks.Plies {
		if !p.Panel {
			sum += p.Thickness.Inches()
			least = math.Min(least, p.Thickness.Inches())
		}
	}
	switch {
	case sum == 0:
		return c.thinnest()
	case c.m.Blocks.PliesFastened && c.m.Blocks.Pad.Thickness == 0:
		return sum
	}
	return least
}

// pad adds what the foam may carry and whether it is asked to.
func (c *calc) pad() {
	b := c.m.Blocks
	if b.Pad.Thickness <= 0 {
		return
	}
	if b.Pad.Strength == nil || b.Pad.Strength.PSI() < 1e-3 {
		c.notChecked(check.Step{ID: "pad_long_term_limit", Group: check.Block, Name: "stress in the pad",
			Where: "all blocks"}, "pad strength (blocks.pad.strength) not stated")
	} else {
		c.padStress(b.Pad.Strength.PSI())
	}
	s := check.Step{ID: "pad_foot", Group: check.Block, Name: "solid spacer at the foot of the pad", Clause: "judgement",
		Where: "all blocks", Verdict: check.OK}
	if !b.Pad.Foot {
		s.Verdict, s.Reason = check.Fails,
			"the pad would be the foot: foam cannot push back, so nothing balances the pull of the bolts; put a solid spacer at its foot (blocks.pad.foot)"
	}
	c.add(s)
}

// padStress prints the stress foam keeps up under load: a third of its strength when sustained, a fifth
// when repeated.
func (c *calc) padStress(strength float64) {
	b, rule := c.m.Blocks, "common practice of foundation insulation, no standard"
	area := b.Width.Inches() * (b.Top - b.Bottom).Inches()
	c.add(check.Step{ID: "pad_area", Group: check.Block, Symbol: "A", Name: "area of the pad", Value: square(area)})
	c.add(check.Step{ID: "pad_long_term_limit", Group: check.Block, Symbol: "p3", Name: "sustained stress the pad may carry",
		Formula: "strength/3",
		With:    []check.Arg{arg("strength", psi(strength))}, Value: psi(strength / 3), Clause: rule})
	c.add(check.Step{ID: "pad_repeated_limit", Group: check.Block, Symbol: "p5", Name: "repeated stress the pad may carry",
		Formula: "strength/5", Value: psi(strength / 5), Clause: rule})
	c.add(check.Step{ID: "pad_max_clamp_total", Group: check.Block, Symbol: "N",
		Name: "clamping of all bolts the pad may carry", Formula: "A strength/3", Value: lb(area * strength / 3),
		Note: "tighten snug, no more, or sleeve the bolts through the pad"})
	p := c.couple(c.rimFace(c.groups[0]), c.heaviest().most())
	s := check.Step{ID: "pad_peak_if_used_as_foot", Group: check.Block, Symbol: "fc", Name: "stress in the pad as a foot",
		Formula: "2T/(c b) <= strength/3", Value: psi(p.peak),
		Clause: rule, Where: c.worstMark()}
	if !b.Pad.Foot {
		s.Limit = check.Limit(psi(strength / 3))
	} else {
		s.Note = "for information: the spacer at its foot carries instead"
	}
	c.add(s)
}
