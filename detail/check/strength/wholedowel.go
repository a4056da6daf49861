package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// wholeDowel adds both readings of a set that passes parts of the block hanging on nothing else. Each shear
// plane alone may count on all of such a part; the whole dowel may not. The reading that counts goes into
// pull and shear together as well.
func (c *calc) wholeDowel(g *group) {
	if g.side < 2 {
		return
	}
	for _, r := range []*reading{&g.void, &g.held} {
		step := func(d duty) check.Step { return c.readingStep(g, r, d) }
		with := func(d duty) []check.Arg { return g.readingArgs(r, d) }
		if r != g.counts {
			c.inform(g, step, "for information: "+g.counts.id+" counts, "+g.why, with)
			continue
		}
		for i, d := range g.duties {
			g.transferred(i, step(d).Settled().Ratio)
		}
		worst := c.worstDuty(g, func(d duty) check.Step {
			s := step(d)
			s.Note = join(s.Note, "counts, "+g.why)
			return s
		}, with)
		c.notePlane(Plane{worst.ID, r.name, nil, unit.Force(g.adjust()) * r.transfer.Z, worst.Ratio})
	}
}

func (c *calc) readingStep(g *group, r *reading, d duty) check.Step {
	t := r.transfer
	return check.Step{ID: r.id + g.id, Group: check.Connection, Symbol: "R", Name: r.name, Cap: c.a.Cap,
		Formula: "load of the block <= n Z CD CM Cg Cd, Z = least of crushing/4, turning/3.6, hinges/3.2, over Kt",
		Clause:  "limit analysis of the dowel on ideal-plastic wood, as TR12-2015 table 1-1 for two members; judgement",
		Value:   lb(d.v), Limit: check.Limit(lb(t.Z.Pounds() * d.cd * g.adjustFor(d))), Note: t.Governs + " " + governs(t.Governs)}
}

// readingArgs are the numbers put into the check of a reading.
func (g *group) readingArgs(r *reading, d duty) []check.Arg {
	t := r.transfer
	with := []check.Arg{arg("crushing", t.Crush.Q()), arg("turning", t.Rigid.Q()), arg("hinges", t.P.Q())}
	if t.MainHinge >= 0 && t.Governs != "turning" {
		with = append(with, arg("hinge in "+g.parts[0].name, unit.Length(t.MainHinge).Q()))
	}
	if t.SideHinge >= 0 && t.Governs != "turning" {
		with = append(with, arg("hinge in "+g.parts[len(g.parts)-1].name, unit.Length(t.SideHinge).Q()))
	}
	with = append(with, arg("longest void", inch(r.open())), arg("Z", t.Z.Q()))
	return append(with, g.factorArgs(d)...)
}

// governs is the verb of what governs a dowel: hinges are two.
func governs(what string) string {
	if what == "hinges" {
		return "govern"
	}
	return "governs"
}

// heldCounts checks whether every loose part is kept from turning by the wood at its faces, and says why the
// reading that counts does.
//
//	     |------|<-- T at ho      The bolts turn the part with n m. What presses on its faces is the pull T of
//	     | part |                 the top bolts, at both: the inner push stands where the free body at the rim
//	T -->|------|                 puts it, hi over the foot, and the outer one must stand n m/T higher. It
//	hi    foot                    can as long as the faces touch there, up to c/3 below their top. T is what is left
//	                              of R e after the moment with which the bolts themselves hold the load.
func (c *calc) heldCounts(g *group) bool {
	f := c.rimFace(c.groups[0])
	r := c.heaviest().most()
	p := c.whole(f, r)
	lack := ""
	for k := 1; k < g.side; k++ {
		if why := c.contactLack(g, k); why != "" && lack == "" {
			lack = why
		}
	}
	if lack == "" && p.lever == 0 {
		lack = noPull
	}
	if lack == "" {
		lack = c.faceCouples(g, f, p, r)
	} else {
		c.coupleStep(g, check.Step{ID: "block_couple" + g.id, Note: lack})
	}
	switch {
	case lack == "":
		g.why = "the faces of the block hold its couple (block_couple)"
	case c.a.PlyCouple:
		g.why = "assumed by assume.ply_couple, not shown: " + lack
	default:
		g.why = lack
	}
	return lack == "" || c.a.PlyCouple
}

// contactLack says why loose part k of a set has no wood against one of its faces; "" when it has.
func (c *calc) contactLack(g *group, k int) string {
	name := the(g.parts[k].name)
	ts := c.m.Sheathing.Thickness.Inches()
	inner := g.stack.voids[k-1]
	if k == 1 {
		if ts > 0 && !c.m.Sheathing.Structural {
			return "the sheathing behind " + name + " is no wood panel"
		}
		inner -= ts
	}
	switch {
	case inner > 1e-6:
		return "a pad lies against the inner face of " + name
	case g.stack.voids[k] > 1e-6:
		return "a pad or a gap lies against the outer face of " + name
	}
	return ""
}

// faceCouples compares the couple of the bolts on each loose part with what its faces hold, from the rim
// outward, and says what is wanting; "" when nothing is.
func (c *calc) faceCouples(g *group, f face, p pull, load float64) string {
	lack := ""
	hi := f.g.top() - f.foot - c.armOver(f, p.depth)
	t := c.contact(g, f) // per pound of load
	top := math.Min(c.m.Blocks.Top.Inches(), c.m.Ledger.Top.Inches()) - f.foot - p.depth/3
	for i, couple := range g.held.couples() {
		name := the(g.parts[i+1].name)
		m, holds := load*couple, load*t*math.Max(0, top-hi)
		s := check.Step{ID: g.partID("block_couple", g.parts[i+1]), Value: lbin(m), Limit: check.Limit(lbin(holds)),
			With: []check.Arg{arg("R", lb(load)), arg("n m", lbin(m)), arg("T", lb(load*t)), arg("hi", inch(hi)), arg("ho most", inch(top)),
				arg("ho", inch(hi+couple/t))}}
		if couple > t*(top-hi)*(1+1e-9) {
			s.Note = fmt.Sprintf("the bolts turn %s with %s and its faces hold %s", name, c.say(lbin(m)), c.say(lbin(holds)))
		}
		if lack == "" {
			lack = s.Note
		}
		c.coupleStep(g, s)
		hi += couple / t
	}
	return lack
}

// coupleStep adds what is known of the couple on a loose part. Its note says what is wanting: then the part
// does not hold, which is for an engineer where it was assumed to.
func (c *calc) coupleStep(g *group, s check.Step) {
	s.Group, s.Symbol, s.Where = check.Connection, "n m", c.worstMark()
	s.Name = "couple of the bolts on a loose part of the block, and what its faces hold"
	s.Formula = "R m/Z at the limit <= T (ho - hi), ho at most the top of the faces less c/3"
	s.Clause = "statics of the part; judgement: couple in proportion to the load"
	if s.Note == "" {
		c.add(s)
		return
	}
	s.Limit = nil
	if c.a.PlyCouple {
		s.Verdict = check.Engineer
		s.Reason = "assume.ply_couple trusts loose parts not to turn, but " + s.Note + "; a professional must show what stops them"
		s.Note = ""
	} else {
		s.Note += ": the part is counted as a void"
	}
	if s.Value == (unit.Quantity{}) {
		s.Formula = ""
	}
	c.add(s)
}
