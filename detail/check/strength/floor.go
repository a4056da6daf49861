package strength

import (
	"math"

	"standclear/detail/check"
)

// floor adds the path of push, pull and load behind the wall: rim, plate, backing and ties.
func (c *calc) floor() {
	c.attachable()
	c.rimStands()
	c.blocking()
	c.rimBends()
	c.rimBears()
	c.backingFixed()
	c.backingHolds()
	c.tied()
	c.floorCouple()
	c.lateral()
}

// pullOf is the pull behind the rim at block i under one combination, lb.
func (c *calc) pullOf(k solution, i int) float64 {
	return c.whole(c.rimFace(c.groups[0]), k.reaction[i]).t
}

// mostPull is the pull behind the rim at the most loaded block.
func (c *calc) mostPull(k solution) float64 { return c.whole(c.rimFace(c.groups[0]), k.most()).t }

// verdictOf adds a step that is OK or has the given verdict and reason.
func (c *calc) verdictOf(s check.Step, bad bool, v check.Verdict, reason string) {
	s.Verdict = check.OK
	if bad {
		s.Verdict, s.Reason = v, reason
	}
	c.add(s)
}

// attachable stops a design fastened to something no fastener may go into.
func (c *calc) attachable() {
	for _, p := range []struct {
		name, why string
		there     bool
	}{{"rim", c.m.Rim.NotAttachable, true}, {"backing", c.m.Backing.NotAttachable, c.backed()}} {
		if p.there {
			fix := ""
			if p.why != "" {
				fix = "a " + p.name + " of lumber or rim board (floor." + p.name + ".material), or a deck standing free of the house"
			}
			c.verdictOf(check.Step{ID: p.name + "_attachable", Group: check.Floor, Name: "the " + p.name + " may be fastened to",
				Clause: "judgement", Where: "all blocks", Fix: fix},
				p.why != "", check.Fails, "STOP: not attachable here, the "+p.name+": "+p.why)
		}
	}
}

func (c *calc) rimStands() {
	s := check.Step{ID: "rim_on_plate", Group: check.Floor, Name: "the rim bears on a plate along its whole length",
		Clause: "IRC 2021 R507.9.1.2", Where: "all blocks", Verdict: check.OK}
	lack := missing(given{"thickness of the plate", c.m.Plate.Thickness.Inches()}, given{"width of the plate", c.m.Plate.Width.Inches()})
	switch on := c.m.Rim.Bearing; {
	case on == UnknownBearing:
		s.Verdict, s.Reason = check.NotChecked, "what the rim stands on (floor.bearing) is not stated"
	case on != OnPlate:
		s.Verdict, s.Reason = check.Fails, "the rim stands on "+on.String()+": the block's load has no way down"
	case lack != "":
		s.Verdict, s.Reason = check.NotChecked, lack+": whether the rim stands on one is not known"
	}
	c.add(s)
}

// alongRim is why a check that rests on house joists behind the rim is not done where they run along it.
const alongRim = "the house joists run along the rim and hold nothing there: blocking from the rim to the joists is an engineer's detail"

// blocking: a rim between plate and subfloor rolls under the couple unless something solid stands behind
// it at every block, and joists hold that.
func (c *calc) blocking() {
	s := check.Step{ID: "rim_blocking", Group: check.Floor, Name: "blocking behind the rim at every block",
		Clause: "judgement", Where: "all blocks"}
	if c.m.Backing.Kind == LooseBacking {
		s.Note = "full depth and tight; loose blocking adds nothing to the bolts"
	}
	along := c.m.HouseJoists.Parallel
	switch {
	case c.m.Backing.Kind == NoBacking && along:
		s.Fix = "blocking as deep as the rim (floor.backing.kind: carried or loose), held by an engineer's detail"
	case c.m.Backing.Kind == NoBacking:
		s.Fix = "blocking as deep as the rim between the joists (floor.backing.kind: carried or loose)"
	case along:
		s.Fix = "blocking from the rim across several joists, fixed to each and to the floor, by an engineer"
		c.verdictOf(s, true, check.Engineer, "blocking behind the rim rolls with it unless joists hold it; "+alongRim)
		return
	}
	c.verdictOf(s, c.m.Backing.Kind != LooseBacking && c.m.Backing.Kind != CarriedBacking, check.Fails,
		"no blocking behind the rim: the block's couple rolls the rim between plate and subfloor; set solid blocking behind every block")
}

// rimBends checks the rim as a flat beam between house joists under the pull of one block. Carried backing
// takes the pull to the ties instead (backing_bending).
func (c *calc) rimBends() {
	if c.m.Backing.Kind == CarriedBacking {
		return
	}
	r, g := c.m.Rim, c.groups[0]
	f := c.rimFace(g)
	step := check.Step{ID: "rim_out_of_plane", Group: check.Floor, Symbol: "fb",
		Name: "rim bending outward between house joists", Cap: c.a.Cap,
		Formula: "T (s/4 - spread/8)/S <= Fb CF Cfu CD CM", Clause: "NDS 2018 3.3; judgement: simple span",
		Where: c.worstMark()}
	switch {
	case c.m.HouseJoists.Parallel:
		c.notChecked(step, alongRim)
		return
	case !c.pulls(f):
		c.notChecked(step, noPull)
		return
	}
	depth, t := (r.Top - r.Bottom).Inches(), r.Thickness.Inches()
	if !c.a.GrossSection {
		depth -= g.hole() * float64(max(1, len(c.levers(f, float64(c.a.FootDepth)*f.height))))
	}
	span, spread := c.m.HouseJoists.Spacing.Inches(), g.wide()
	lack := missing(given{"bending strength of the rim", r.Wood.Fb.PSI()}, given{"spacing of the house joists", span},
		given{"rim left by the bolt holes", depth})
	if lack != "" {
		c.notChecked(step, c.unlisted("rim", lack))
		return
	}
	cfu := 1.0
	if r.Kind == SawnRim {
		cfu = flatUse((r.Top - r.Bottom).Inches())
	}
	s := depth * t * t / 6
	c.worst(func(k solution) check.Step {
		pull := c.mostPull(k)
		step.Value = psi(pull * math.Max(0, span/4-spread/8) / s)
		step.Limit = check.Limit(psi(r.Wood.bending(r.Service != Dry) * cfu * k.cd))
		step.With = []check.Arg{arg("T", lb(pull)), arg("s", inch(span)), arg("spread", inch(spread)), arg("S", modulus(s)),
			arg("Cfu", num(cfu)), arg("CD", num(k.cd))}
		step.Fix = c.fixIf(step, "carried backing behind the rim, with its ties (floor.backing.kind, tie)")
		return step
	})
}

// fixIf is the fix of a step that fails; "" for one that does not.
func (c *calc) fixIf(s check.Step, fix string) string {
	if s.Settled().Verdict != check.Fails {
		return ""
	}
	return fix
}

// rimBears checks the plate and the rim under one block, over the block's width. Where a backing bears the
// other way the rim gets more than the block's load; the plate under the backing is not counted.
func (c *calc) rimBears() {
	r := c.m.Rim
	step := check.Step{ID: "rim_bearing", Group: check.Floor, Symbol: "fc", Name: "rim bearing on its plate under one block",
		Cap:     c.a.Cap,
		Formula: "max(R, share R)/(b t) <= least Fc-perp CM", Clause: "NDS 2018 3.10.2; judgement: over the block's width",
		Where: c.worstMark(), Note: "the rim alone; what the house puts on the rim is not in it"}
	t := r.Thickness.Inches()
	least := math.Min(c.m.Plate.FcPerp.PSI(), r.Wood.FcPerp.PSI())
	t = math.Min(t, c.m.Plate.Width.Inches())
	if lack := missing(given{"bearing strength across the grain of plate or rim", least}, given{"width of the plate", t}); lack != "" {
		c.notChecked(step, c.unlisted("rim", lack))
		return
	}
	share, _, known := c.bandShares()
	if !known {
		c.notChecked(step, "what the rim and what the backing bears of the block's load is not known for these fasteners")
		return
	}
	c.worst(func(k solution) check.Step {
		s := step
		force := k.most() * math.Max(1, share)
		s.Value = psi(force / (c.m.Blocks.Width.Inches() * t))
		s.Limit = check.Limit(psi(least * when(r.Service != Dry, wetFcPerp)))
		s.With = []check.Arg{arg("R", lb(k.most())), arg("rim", lb(share*k.most())), arg("b", c.m.Blocks.Width.Q()), arg("t", inch(t))}
		s.Fix = c.fixIf(s, "wider blocks (blocks.width) or blocks nearer each other (blocks.max_spacing)")
		return s
	})
}
