package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// plyScrews checks the screws that make the plies of a block one piece: each joint between plies takes
// the block's whole load, or more where the bolts turning in the block push its plies apart.
func (c *calc) plyScrews() {
	b := c.m.Blocks
	joints := c.joints()
	if !b.PliesFastened || len(joints) == 0 {
		return
	}
	step := check.Step{ID: "ply_screws", Group: check.Connection, Symbol: "R", Name: "screws between the plies of a block",
		Formula: "k R <= n Z CD CM", Cap: c.a.Cap,
		Clause: "NDS 2018 12.3, table 12L; judgement: full load across each joint", Where: c.worstMark()}
	dowel, ok := DowelOf(Screw, b.PlyScrews.Diameter, 0)
	switch {
	case b.PlyScrews.Count == 0:
		c.notChecked(step, "the plies are said to be fastened to each other, but the screws (blocks.ply_screws) are not stated")
		return
	case !ok:
		c.notChecked(step, "no table lists a wood screw of "+c.say(b.PlyScrews.Diameter.Q()))
		return
	}
	for n, j := range joints {
		step.ID = fmt.Sprintf("ply_screws_%d", n+1)
		c.plyJoint(step, dowel, j)
	}
}

// plyJoint is where two plies of one piece meet: the outer ply, and what lies inside it.
type plyJoint struct {
	outer, inner part
	name         string  // of the piece
	fromInside   float64 // from the piece's inner face to the joint, in
	fromOutside  float64
}

// joints lists the joints between plies of the same piece.
func (c *calc) joints() []plyJoint {
	var out []plyJoint
	b := c.m.Blocks
	for _, p := range c.piles() {
		for i := p.from + 1; i < p.to; i++ {
			j := plyJoint{outer: c.plyPart(i), inner: c.plyPart(p.from), name: p.name}
			for k := p.from + 1; k < i; k++ {
				j.inner = j.inner.with(c.plyPart(k))
			}
			for k := p.from; k < p.to; k++ {
				if t := b.Plies[k].Thickness.Inches(); k < i {
					j.fromInside += t
				} else {
					j.fromOutside += t
				}
			}
			out = append(out, j)
		}
	}
	return out
}

// pile is plies from to (not included) that stand together on one side of the pad.
type pile struct {
	name     string
	from, to int
}

func (c *calc) piles() []pile {
	b := c.m.Blocks
	n := len(b.Plies)
	if at := b.Pad.After; b.Pad.Thickness > 0 && at > 0 && at < n {
		return []pile{{"inner", 0, at}, {"outer", at, n}}
	}
	return []pile{{"block", 0, n}}
}

func (c *calc) plyJoint(step check.Step, d Dowel, j plyJoint) {
	b := c.m.Blocks
	if lack := c.unknownPlies(j); lack != "" {
		c.notChecked(step, lack)
		return
	}
	past := b.PlyScrews.Length.Inches() - j.outer.thick
	pen := math.Min(past, j.inner.thick)
	need := 6 * d.Nominal.Inches()
	c.add(check.Step{ID: step.ID + "_penetration", Group: check.Connection, Symbol: "p", Name: "penetration of the ply screws",
		Formula: "p >= 6 D",
		With:    []check.Arg{arg("L", b.PlyScrews.Length.Q()), arg("D", d.Nominal.Q())}, Value: inch(math.Max(0, pen)),
		Limit: check.Limit(inch(need)), Sense: check.AtLeast,
		Clause: "NDS 2018 12.1.5.6 (from memory, confirm)", Where: "all blocks",
		Note: "driven from the outer ply of the joint"})
	if pen <= d.Nominal.Inches() {
		step.Limit, step.Value = check.Limit(lb(0)), lb(c.heaviest().most())
		step.Reason, step.Verdict = "the screws hardly reach the ply behind the joint", check.Fails
		c.add(step)
		return
	}
	bearing := math.Min(past-d.Nominal.Inches(), j.inner.thick) // the tip is two diameters long, half of it counts
	modes := d.Yield(j.outer.member(d, j.outer.thick), j.inner.member(d, bearing), 0)
	least := Least(modes)
	cm, n, factor := wetFastener(b.Moisture, 1, d.Nominal), float64(b.PlyScrews.Count), c.spread(j)
	c.worst(func(k solution) check.Step {
		s := step
		s.Value, s.Limit = lb(factor*k.most()), check.Limit(lb(n*least.Z.Pounds()*k.cd*cm))
		s.With = []check.Arg{arg("k", num(factor)), arg("R", lb(k.most())), arg("n", unit.Number(b.PlyScrews.Count)),
			arg("Z", least.Z.Q()), arg("CD", num(k.cd)), arg("CM", num(cm))}
		s.Note = "mode " + least.Name
		return s
	})
}

// unknownPlies says what of the plies at a joint is not stated.
func (c *calc) unknownPlies(j plyJoint) string {
	for _, p := range []part{j.outer, j.inner} {
		if g := p.gravity(); g < 0.3 || g > 0.8 {
			return "specific gravity of a ply not stated, or outside 0.30 to 0.80 (NDS 2018 table 12.3.3)"
		}
	}
	return ""
}

// spread is the force across a joint between plies over the block's load. It is 1, or more where a bolt
// turns in the block as a stiff bar, bears up on one part of its length and down on the rest, and the
// joint between passes the difference; but never more than the bolts can bear on the plies of one side.
func (c *calc) spread(j plyJoint) float64 {
	most, least := 1.0, math.Inf(1)
	for _, g := range c.groups {
		if !g.known || g.Kind == Evaluated || c.unknown(g) != "" {
			continue
		}
		for _, l := range g.plane {
			m := Least(g.modes(l))
			if l.side.name == j.name {
				most = math.Max(most, g.dowel.acrossJoint(l.side, m, "IIIs", j.fromInside))
			}
			if l.main.name == j.name {
				most = math.Max(most, g.dowel.acrossJoint(l.main, m, "IIIm", j.fromOutside))
			}
			least = math.Min(least, m.P.Pounds())
		}
		if s := c.stack(); len(s.parts) == 3 && g.rim && g.ledge && !c.fixed() {
			_, rigid, _ := g.dowel.reductions(90)
			least = math.Min(least, s.stiffBolt(g.dowel)*rigid)
		}
		thin := j.inner
		if j.fromOutside < j.fromInside {
			thin = j.outer
			thin.thick = j.fromOutside
		}
		fe, _ := thin.bearing(g.Diameter)
		most = math.Min(most, math.Max(fe.PSI()*g.dowel.Root.Inches()*thin.thick/least, 0.1))
	}
	return most
}

// acrossJoint is the net bearing beyond a joint at distance from the shear plane, over the load, for a
// dowel that turns as a stiff bar in a piece, in mode II or the other mode named: it bears one way up to
// a = (p/q + l)/2 and the other way past that. It is nothing in other modes.
func (d Dowel) acrossJoint(in part, m Mode, other string, at float64) float64 {
	if m.Name != "II" && m.Name != other {
		return 0
	}
	fe, _ := in.bearing(d.Nominal)
	q, load := fe.PSI()*d.Root.Inches(), m.P.Pounds()
	a := (load/q + in.thick) / 2
	beyond := load - q*math.Min(at, a) + q*math.Max(0, at-a)
	return math.Abs(beyond) / load
}
