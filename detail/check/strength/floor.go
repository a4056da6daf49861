package strength

import (
	"math"

	"standclear/detail/check"
)

// floor adds the path of push, pull and load behind the wall: rim, plate, blocking and ties.
func (c *calc) floor() {
	c.attachable()
	c.rimStands()
	c.blocking()
	c.rimBends()
	c.rimBears()
	c.tied()
	c.lateral()
}

// pullOf is the pull behind the rim under one combination, lb.
func (c *calc) pullOf(k solution) float64 {
	return c.couple(c.rimFace(c.groups[0]), k.most()).t
}

// verdictOf adds a step that is OK or has the given verdict and reason.
func (c *calc) verdictOf(s check.Step, bad bool, v check.Verdict, reason string) {
	s.Verdict = check.OK
	if bad {
		s.Verdict, s.Reason = v, reason
	}
	c.add(s)
}

func (c *calc) attachable() {
	c.verdictOf(check.Step{ID: "rim_attachable", Group: check.Floor, Name: "the rim may be fastened to", Clause: "judgement",
		Where: "all blocks"},
		c.m.Rim.NotAttachable != "", check.Fails, "STOP: not attachable here: "+c.m.Rim.NotAttachable)
}

func (c *calc) rimStands() {
	s := check.Step{ID: "rim_on_plate", Group: check.Floor, Name: "the rim bears on a plate along its whole length",
		Clause: "IRC 2021 R507.9.1.2", Where: "all blocks", Verdict: check.OK}
	switch on := c.m.Rim.Bearing; on {
	case OnPlate:
	case UnknownBearing:
		s.Verdict, s.Reason = check.NotChecked, "what the rim stands on (floor.bearing) is not stated"
	default:
		s.Verdict, s.Reason = check.Fails, "the rim stands on "+on.String()+": the block's load has no way down"
	}
	c.add(s)
}

// blocking: a rim between plate and subfloor rolls under the couple unless something solid stands behind
// it at every block.
func (c *calc) blocking() {
	s := check.Step{ID: "rim_blocking", Group: check.Floor, Name: "blocking behind the rim at every block",
		Clause: "judgement", Where: "all blocks"}
	if c.m.Backing.Kind == LooseBacking {
		s.Note = "full depth and tight; loose blocking adds nothing to the bolts"
	}
	c.verdictOf(s, c.m.Backing.Kind != LooseBacking && c.m.Backing.Kind != CarriedBacking, check.Fails,
		"no blocking behind the rim: the block's couple rolls the rim between plate and subfloor; set solid blocking behind every block")
}

// rimBends checks the rim as a flat beam between house joists under the pull of one block.
func (c *calc) rimBends() {
	r, g := c.m.Rim, c.groups[0]
	step := check.Step{ID: "rim_out_of_plane", Group: check.Floor, Symbol: "fb",
		Name: "rim bending outward between house joists", Cap: c.a.Cap,
		Formula: "T (s/4 - spread/8)/S <= Fb CF Cfu CD CM", Clause: "NDS 2018 3.3; judgement: simple span",
		Where: c.worstMark()}
	if c.m.Backing.Kind == CarriedBacking {
		step.Cap, step.Formula, step.Verdict, step.Note = 0, "", check.OK,
			"carried blocking takes the pull to the tie; the rim does not span"
		c.add(step)
		return
	}
	depth, t := (r.Top - r.Bottom).Inches(), r.Thickness.Inches()
	if !c.a.GrossSection {
		depth -= g.hole() * float64(max(1, len(c.levers(c.rimFace(g), float64(c.a.FootDepth)*c.rimFace(g).height))))
	}
	span, spread := c.m.HouseJoists.Spacing.Inches(), g.wide()
	lack := missing(given{"bending strength of the rim", r.Wood.Fb.PSI()}, given{"spacing of the house joists", span},
		given{"rim left by the bolt holes", depth})
	if lack != "" {
		c.notChecked(step, lack)
		return
	}
	cfu := 1.0
	if r.Kind == SawnRim {
		cfu = flatUse((r.Top - r.Bottom).Inches())
	}
	s := depth * t * t / 6
	c.worst(func(k solution) check.Step {
		pull := c.pullOf(k)
		step.Value = psi(pull * math.Max(0, span/4-spread/8) / s)
		step.Limit = check.Limit(psi(r.Wood.bending(r.Service != Dry) * cfu * k.cd))
		step.With = []check.Arg{arg("T", lb(pull)), arg("s", inch(span)), arg("spread", inch(spread)), arg("S", modulus(s)),
			arg("Cfu", num(cfu)), arg("CD", num(k.cd))}
		return step
	})
}

// rimBears checks the plate and the rim under one block, over the block's width.
func (c *calc) rimBears() {
	r := c.m.Rim
	step := check.Step{ID: "rim_bearing", Group: check.Floor, Symbol: "fc", Name: "rim bearing on its plate under one block",
		Cap:     c.a.Cap,
		Formula: "R/(b t) <= least Fc-perp CM", Clause: "NDS 2018 3.10.2; judgement: over the block's width",
		Where: c.worstMark(), Note: "what the house puts on the rim is not in it"}
	t := r.Thickness.Inches()
	least := math.Min(c.m.Plate.FcPerp.PSI(), r.Wood.FcPerp.PSI())
	if b := c.m.Backing; b.Kind == CarriedBacking {
		t += b.Thickness.Inches()
		least = math.Min(least, b.Wood.FcPerp.PSI())
	}
	if w := c.m.Plate.Width.Inches(); w > 0 {
		t = math.Min(t, w)
	}
	if lack := missing(given{"bearing strength across the grain of plate, rim and blocking", least}); lack != "" {
		c.notChecked(step, lack)
		return
	}
	c.worst(func(k solution) check.Step {
		s := step
		s.Value = psi(k.most() / (c.m.Blocks.Width.Inches() * t))
		s.Limit = check.Limit(psi(least * when(r.Service != Dry, wetFcPerp)))
		s.With = []check.Arg{arg("R", lb(k.most())), arg("b", c.m.Blocks.Width.Q()), arg("t", inch(t))}
		return s
	})
}

// tied checks that the pull behind the rim goes into the floor.
func (c *calc) tied() {
	t := c.m.Tie
	step := check.Step{ID: "tie_rating", Group: check.Floor, Symbol: "T", Name: "pull on the floor tie at each block",
		Formula: "T <= rating", Cap: c.a.Cap,
		Clause: "the tie's allowable load as stated; nails into end grain carry nothing (NDS 2018 12.2.3)", Where: "all blocks"}
	pull := c.pullOf(c.heaviest())
	need := c.say(lb(pull / c.a.Cap))
	if t.Kind != Strap && t.Kind != HoldDown || t.Rating <= 0 {
		step.Value, step.Limit, step.Verdict = lb(pull), check.Limit(lb(0)), check.Fails
		step.Reason = "no floor tie is declared: the pull of " + c.say(lb(pull)) + " at each block has no way into the floor"
		step.Fix = "a strap or hold-down at each block, rated " + need + " or more"
		c.add(step)
		return
	}
	step.Value, step.Limit, step.Note = lb(pull), check.Limit(t.Rating.Q()), c.heaviest().name
	if settle(step).Verdict == check.Fails {
		step.Fix = "a tie rated " + need + " or more at each block"
	}
	c.add(step)
}

// Lateral hold-down of IRC 2021 R507.9.2: two devices of 1,500 lb, or four of 750 lb, the outermost
// within 24 in of the ends.
const (
	lateralTwo    = 1500.0 // lb each
	lateralFour   = 750.0  // lb each
	lateralFromIn = 24.0   // in
)

// lateral checks the tension devices that hold the deck to the floor apart from the blocks.
func (c *calc) lateral() {
	l := c.m.Tie.Lateral
	each, clause := l.Rating.Pounds(), "IRC 2021 R507.9.2 (from memory, confirm)"
	need := lateralTwo
	if l.Count >= 4 {
		need = lateralFour
	}
	c.verdictOf(check.Step{ID: "lateral_count", Group: check.Floor, Symbol: "n", Name: "lateral tension devices",
		Value: num(float64(l.Count)), Clause: clause},
		l.Count < 2, check.Fails,
		"fewer than two lateral tension devices are declared (tie.lateral); friction and contact with the wall are lost at a stand-off")
	if l.Count < 2 {
		return
	}
	c.add(check.Step{ID: "lateral_rating", Group: check.Floor, Symbol: "N", Name: "rating of one lateral tension device",
		Value: lb(each), Limit: check.Limit(lb(need)), Sense: check.AtLeast, Clause: clause,
		Note: "bolts of the blocks are not counted"})
	c.add(check.Step{ID: "lateral_from_end", Group: check.Floor, Name: "outermost lateral device to the ledger end",
		Value: l.FromEnd.Q(), Limit: check.Limit(inch(lateralFromIn)), Clause: clause})
}
