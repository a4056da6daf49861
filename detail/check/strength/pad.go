package strength

import (
	"math"

	"standclear/detail/check"
)

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
			Clause: padRule, Where: "all blocks"}, "pad strength (blocks.pad.strength) not stated")
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

// padRule is where the shares of its strength come from that a pad may carry.
const padRule = "common practice of foundation insulation, no standard"

// padStress prints the stress foam keeps up under load: a third of its strength when sustained, a fifth
// when repeated.
func (c *calc) padStress(strength float64) {
	b, rule := c.m.Blocks, padRule
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
	if !c.pulls(c.rimFace(c.groups[0])) {
		return
	}
	p := c.whole(c.rimFace(c.groups[0]), c.heaviest().most())
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
