package strength

import (
	"standclear/detail/check"
	"standclear/detail/unit"
)

// evaluated checks fasteners that bring their own allowable load at this stand-off.
func (c *calc) evaluated(g *group) {
	c.floorPlaces(g)
	c.depthOfGroup(g)
	c.hungDepth(g)
	c.washers(g)
	c.reaches(g)
	c.notEvaluated(g)
	s := check.Step{ID: "evaluated_shear" + g.id, Group: check.Connection, Symbol: "R", Name: "shear on " + g.name,
		Formula: "load of the block <= n Z", Cap: c.a.Cap,
		Clause: "allowable load as stated: " + g.Report, Note: "no factor is put on a stated value"}
	if lack := missing(given{"allowable lateral load of the evaluated fastener at this stand-off", g.Lateral.Pounds()}); lack != "" {
		c.notChecked(s, lack)
		g.unchecked()
		return
	}
	step := func(d duty) check.Step {
		t := s
		t.Value, t.Limit = lb(d.v), check.Limit(lb(g.Lateral.Pounds()*float64(d.n)))
		t.With = []check.Arg{arg("n", unit.Number(d.n)), arg("Z", g.Lateral.Q())}
		return t
	}
	for i, d := range g.duties {
		g.transferred(i, step(d).Settled().Ratio)
	}
	if g.Report == "" {
		s.Verdict, s.Reason = check.Engineer, "the evaluated fastener's values are stated without what they rest on"
	}
	c.worstDuty(g, step)
}

// reaches checks that evaluated fasteners are as long as what they must pass. How far beyond it they must hold is
// by their report.
//
//	through   washer, ledger, gap, block, sheathing, rim and what is counted with it
//	to rim    washer, block, sheathing, rim
//	to block  washer, ledger, gap
func (c *calc) reaches(g *group) {
	step := check.Step{ID: "evaluated_length" + g.id, Group: check.Connection, Symbol: "L", Name: "length of the " + g.name + ", at least what they pass",
		Formula: "length stated >= washer + layers passed", Sense: check.AtLeast, Clause: "fit; " + g.Report, Where: "all blocks"}
	past := g.tip
	if g.rim {
		past += g.parts[0].thick
	}
	step.With = []check.Arg{arg("washer", g.Washer.Thickness.Q()), arg("layers passed", inch(past-g.Washer.Thickness.Inches()))}
	if g.Length <= 0 {
		c.notChecked(step, "length of the evaluated fasteners not stated; it must be at least "+c.say(inch(past)))
		return
	}
	step.Value, step.Limit = g.Length.Q(), check.Limit(inch(past))
	if step.Settled().Verdict == check.Fails {
		step.Reason = "the evaluated fasteners are " + c.say(step.Value) + " long and end before they have passed " + c.say(*step.Limit) + " of washer and wood"
		step.Fix = "fasteners " + c.say(*step.Limit) + " long or more (fasteners." + g.key() + ".length), and as their report says"
	}
	c.add(step)
}

// key is the name of the set in the project file.
func (g *group) key() string {
	switch g.id {
	case "_to_rim":
		return "to_rim"
	case "_to_block":
		return "to_block"
	}
	return "through"
}

// notEvaluated names what is computed of other fasteners and not of these.
func (c *calc) notEvaluated(g *group) {
	for _, l := range []struct {
		id, name, reason string
		held             bool // by what is checked
	}{
		{"evaluated_factors", "duration, wet service, group and geometry factors of the stated values",
			"the stated values are used as they are: the report must hold for wet wood and for this load and spacing", false},
		{"evaluated_steel", "steel of the " + g.name + " in tension and bending", "by their report, which is not read here", false},
		{"evaluated_head", "heads of the " + g.name + " drawn into the wood", "no washer is stated; by their report, which is not read here", g.Washer.Size > 0},
		{"evaluated_tip", "hold of the " + g.name + " beyond what they pass", "by their report, which is not read here", g.id == ""},
		{"evaluated_block", "block turned and bent across its grain by the " + g.name,
			"where the fasteners bear in the block is not known, so block_couple, block_rolling_shear and block_across_grain are not worked out", false},
	} {
		if !l.held {
			c.notChecked(check.Step{ID: l.id + g.id, Group: check.Connection, Name: l.name, Clause: "allowable load as stated: " + g.Report, Where: "all blocks"}, l.reason)
		}
	}
}

// heldByEvaluated adds the ratios of shear and pull by the stated values.
func (c *calc) heldByEvaluated(f face) {
	g := f.g
	if g.Washer.Size > 0 {
		inner, outer := c.seats(g)
		if g.id == "" {
			c.washerBears(f, inner)
		}
		c.washerBears(f, outer)
		c.washerBends(f)
	}
	if lack := missing(given{"allowable withdrawal load of the evaluated fastener", g.Withdrawal.Pounds()}); lack != "" {
		c.notChecked(check.Step{ID: "evaluated_pull" + f.suffix(), Group: check.Block,
			Name: "pull on an evaluated fastener"}, lack)
		return
	}
	stated := func(duty) float64 { return g.Withdrawal.Pounds() }
	c.pullAndShear(f, stated, stated)
}
