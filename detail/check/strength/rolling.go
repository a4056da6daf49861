package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// rollingShare is the strength of lumber in rolling shear over that in shear along the grain, as ANSI/APA
// PRG 320 takes it for lumber layers (from memory, confirm).
const rollingShare = 1 / 3.

// onGrain adds what the couple of the bolts does to a loose part of the block while its faces hold it, the grain
// lying along the wall:
//
//	     |------|<-- T at ho     T travels down from ho to hi across the grain and rolls it;
//	     | part |                n m, put in by two rows of bolts, bends the part across the grain
//	T -->|------|                by n m/2
//	hi
//
// Where the couple does not count nothing is asked of the block, and nothing is added. With the grain upright
// both run along it, and the bolts may tear out of its ends instead.
func (c *calc) onGrain() {
	if c.m.Blocks.VerticalGrain {
		c.add(check.Step{ID: "scope_tear_out", Group: check.Scope, Name: "bolts tearing out along upright grain", Clause: "NDS 2018 appendix E",
			Where: "all blocks", Verdict: check.Engineer,
			Reason: "row and group tear-out (NDS 2018 appendix E) is not computed for a load along the grain"})
		return
	}
	for _, g := range c.groups {
		f := c.rimFace(c.groups[0])
		if g.counts == nil || g.counts != &g.held || !c.pulls(f) {
			continue
		}
		for i, couple := range g.held.couples() {
			c.rolls(g, g.parts[i+1], couple, c.contact(g, f))
			c.bendsAcross(g, g.parts[i+1], couple)
		}
	}
}

// contact is the force that passes between the faces of the loose parts over the load: the pull of the top
// bolts less what the bolts hold themselves.
func (c *calc) contact(g *group, f face) float64 {
	return math.Max(1e-6, c.whole(f, 1).t*(1-g.held.faceMoment()/f.arm))
}

// partID is the id of a step about one loose part of a set.
func (g *group) partID(id string, p part) string {
	if g.side > 2 {
		id += "_" + p.name
	}
	return id + g.id
}

// rolls checks a loose part in rolling shear; couple and t are over the load.
func (c *calc) rolls(g *group, p part, couple, t float64) {
	b := c.m.Blocks
	step := check.Step{ID: g.partID("block_rolling_shear", p), Group: check.Block, Symbol: "fs", Name: "rolling shear in " + the(p.name),
		Formula: "3 T/(2 b t) <= Fv/3 CD CM Ci", Cap: c.a.Cap, Where: c.worstMark(),
		Clause: "ANSI/APA PRG 320 for lumber layers (from memory, confirm); statics of block_couple; judgement: panel plies as lumber"}
	fv := rollingShare * b.Wood.shear(c.blockWet())
	if lack := missing(given{"shear strength of the block", fv}); lack != "" {
		c.notChecked(step, lack)
		return
	}
	if couple < 1e-9 {
		t = 0 // T passes straight through
	}
	void := c.nearestLimit(g, func(d duty) check.Step { return c.readingStep(g, &g.void, d) },
		func(d duty) []check.Arg { return g.readingArgs(&g.void, d) })
	c.worst(func(k solution) check.Step {
		s := step
		force := t * k.most()
		s.Value, s.Limit = psi(1.5*force/(b.Width.Inches()*p.thick)), check.Limit(psi(fv*k.cd))
		s.With = []check.Arg{arg("T", lb(force)), arg("b", b.Width.Q()), arg("t", inch(p.thick)), arg("Fv", b.Wood.Fv.Stress()), arg("CD", num(k.cd))}
		s.Note = "T passes from ho to hi of block_couple"
		if s.Settled().Verdict == check.Fails {
			s.Reason = fmt.Sprintf("%s; while it fails the faces hold no couple, and the loose parts are voids: %s, at %.2f of its limit",
				c.beyond(s.Settled()), void.ID, void.Ratio)
			s.Fix = c.rollingFix(p, 1.5*force/(p.thick*fv*k.cd*c.a.Cap))
		}
		return s
	})
}

// rollingFix says what mends rolling shear: a width in inches, rounded up to what is cut.
func (c *calc) rollingFix(p part, width float64) string {
	l := unit.Length(math.Ceil(width*4-1e-6)/4) * unit.Inch
	if c.m.System == unit.SI {
		l = unit.Length(math.Ceil(width*25.4/5-1e-6)*5) * unit.MM
	}
	fix := "blocks " + c.say(l.Q()) + " wide or more (blocks.width)"
	if !c.m.Blocks.PliesFastened && len(c.m.Blocks.Plies) > 1 && len(p.layers) == 1 {
		fix += "; plies fixed to one another (blocks.plies_fastened)"
	}
	return fix + "; blocks nearer each other (blocks.max_spacing)"
}

// bendsAcross prints the bending stress across the grain of a loose part, for which there is no limit.
func (c *calc) bendsAcross(g *group, p part, couple float64) {
	m := couple * c.heaviest().most()
	s := c.m.Blocks.Width.Inches() * p.thick * p.thick / 6
	c.add(check.Step{ID: g.partID("block_across_grain", p), Group: check.Block, Symbol: "ft", Name: "bending across the grain of " + the(p.name),
		Formula: "(n m/2)/(b t^2/6)", With: []check.Arg{arg("n m", lbin(m)), arg("b", c.m.Blocks.Width.Q()), arg("t", inch(p.thick))},
		Value: psi(m / 2 / s), Clause: "statics; NDS 2018 3.8.2", Where: c.worstMark(),
		Note: c.heaviest().name + "; no standard gives a strength for it, NDS 2018 3.8.2 says to avoid tension across the grain: an engineer must look at it; upright grain (blocks.grain) or a ply of plywood (blocks.plies) takes it"})
}
