package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// plyScrews checks the screws that make the plies of a block one piece, and those that make ledger and front
// of the block one: each joint takes the block's whole load, or more where the bolts turning in the piece
// push it apart there.
func (c *calc) plyScrews() {
	b := c.m.Blocks
	if joints := c.joints(); b.PliesFastened && len(joints) > 0 {
		step := check.Step{ID: "ply_screws", Name: "screws between the plies of a block"}
		if c.driven(&step, b.PlyScrews, "blocks.ply_screws") {
			for n, j := range joints {
				step.ID = fmt.Sprintf("ply_screws_%d", n+1)
				step.Name = fmt.Sprintf("screws between plies %d and %d of a block", j.ply-1, j.ply)
				c.plyJoint(step, j)
			}
		}
	}
	if b.LedgerScrews.Count > 0 {
		c.ledgerScrews()
	}
}

// ledgerScrews checks the screws from the face of the ledger into the front of each block.
func (c *calc) ledgerScrews() {
	step := check.Step{ID: "ledger_screws", Name: "screws from the ledger into the front ply of a block"}
	if !c.driven(&step, c.m.Blocks.LedgerScrews, "blocks.ledger_screws") {
		return
	}
	if c.apart() {
		step.Verdict, step.Reason = check.Fails, "a gap or a pad keeps ledger and block apart: the screws would bend in the open, and are not counted"
		c.add(step)
		return
	}
	c.plyJoint(step, c.ledgerJoint())
}

// driven completes a step about screws; ok is false when the screws are not known, which it says.
func (c *calc) driven(step *check.Step, s PlyScrews, key string) (ok bool) {
	step.Group, step.Symbol, step.Formula, step.Cap, step.Where = check.Connection, "R", "k R <= n Z CD CM", c.a.Cap, c.worstMark()
	step.Clause = "NDS 2018 12.3, table 12L; judgement: full load across each joint"
	_, listed := DowelOf(Screw, s.Diameter, 0)
	switch {
	case s.Count == 0:
		c.notChecked(*step, "the plies are said to be fastened to each other, but the screws ("+key+") are not stated")
	case !listed:
		c.notChecked(*step, "no table lists a wood screw of "+c.say(s.Diameter.Q()))
	default:
		return true
	}
	return false
}

// plyJoint is where two plies of one piece meet, or ledger and front ply: what lies outside of the joint for
// the screws to pass, and what inside of it they hold in.
type plyJoint struct {
	PlyScrews
	key          string
	outer, inner part
	ply          int     // number of the outer ply
	name         string  // of the piece
	layers       int     // layers of the piece inside the joint
	fromInside   float64 // from the piece's inner face to the joint, in
	fromOutside  float64
}

// joints lists the joints between plies of the same piece.
func (c *calc) joints() []plyJoint {
	var out []plyJoint
	for _, p := range c.piles() {
		for i := p.from + 1; i < p.to; i++ {
			j := plyJoint{PlyScrews: c.m.Blocks.PlyScrews, key: "blocks.ply_screws", outer: c.plyPart(i), inner: c.plyPart(p.from), ply: i + 1,
				name: p.name, layers: i - p.from}
			for k := p.from + 1; k < i; k++ {
				j.inner = j.inner.with(c.plyPart(k))
			}
			j.fromInside, j.fromOutside = j.inner.thick, 0
			for k := i; k < p.to; k++ {
				j.fromOutside += c.m.Blocks.Plies[k].Thickness.Inches()
			}
			if p.to == len(c.m.Blocks.Plies) && c.fixed() {
				j.name, j.fromOutside = j.name+withLedger, j.fromOutside+c.m.Ledger.Thickness.Inches()
			}
			out = append(out, j)
		}
	}
	return out
}

// ledgerJoint is the joint of ledger and front of the block.
func (c *calc) ledgerJoint() plyJoint {
	s := c.stack()
	front := s.parts[len(s.parts)-2]
	return plyJoint{PlyScrews: c.m.Blocks.LedgerScrews, key: "blocks.ledger_screws", outer: c.ledgerPart(), inner: front,
		name: front.name + withLedger, layers: len(front.layers), fromInside: front.thick, fromOutside: c.m.Ledger.Thickness.Inches()}
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

func (c *calc) plyJoint(step check.Step, j plyJoint) {
	d, _ := DowelOf(Screw, j.Diameter, 0)
	if lack := c.unknownPlies(j); lack != "" {
		c.notChecked(step, lack)
		return
	}
	past := j.Length.Inches() - j.outer.thick
	pen := math.Min(past, j.inner.thick)
	c.screwsReach(step.ID, j, pen)
	if pen <= d.Nominal.Inches() {
		step.Limit, step.Value = check.Limit(lb(0)), lb(c.heaviest().most())
		step.Reason, step.Verdict = "the screws hardly reach the ply behind the joint", check.Fails
		c.add(step)
		return
	}
	bearing := math.Min(past-d.Nominal.Inches(), j.inner.thick) // the tip is two diameters long, half of it counts
	modes := d.Yield(j.outer.member(d, j.outer.thick), j.inner.member(d, bearing), 0)
	least := Least(modes)
	cm, n, factor := 1.0, float64(j.Count), c.spread(j)
	for _, m := range append(append([]Moisture{}, j.outer.moisture...), j.inner.moisture...) {
		cm = math.Min(cm, wetFastener(m, 1, d.Nominal))
	}
	c.worst(func(k solution) check.Step {
		s := step
		one := least.Z.Pounds() * k.cd * cm
		s.Value, s.Limit = lb(factor*k.most()), check.Limit(lb(n*one))
		s.With = []check.Arg{arg("k", num(factor)), arg("R", lb(k.most())), arg("n", unit.Number(j.Count)),
			arg("Z", least.Z.Q()), arg("CD", num(k.cd)), arg("CM", num(cm))}
		s.Note = "mode " + least.Name
		s.Fix = c.fixIf(s, fmt.Sprintf("%.0f screws in each joint (%s.count)", math.Ceil(factor*k.most()/one/c.a.Cap-1e-9), j.key))
		return s
	})
}

// screwsReach checks the penetration of the screws of a joint.
func (c *calc) screwsReach(id string, j plyJoint, pen float64) {
	need := 6 * j.Diameter.Inches()
	c.add(check.Step{ID: id + "_penetration", Group: check.Connection, Symbol: "p", Name: "penetration of the screws past the joint",
		Formula: "L - layers outside the joint >= 6 D",
		With:    []check.Arg{arg("L", j.Length.Q()), arg("D", j.Diameter.Q())}, Value: inch(math.Max(0, pen)),
		Limit: check.Limit(inch(need)), Sense: check.AtLeast,
		Clause: "NDS 2018 12.1.5.6 (from memory, confirm)", Where: "all blocks",
		Note: "driven from " + the(j.outer.name) + " inward"})
}

// unknownPlies says what of the pieces at a joint is not stated.
func (c *calc) unknownPlies(j plyJoint) string {
	for _, p := range []part{j.outer, j.inner} {
		if g := p.gravity(); g < 0.3 || g > 0.8 {
			return "specific gravity of " + the(p.name) + " not stated, or outside 0.30 to 0.80 (NDS 2018 table 12.3.3)"
		}
	}
	return ""
}

// spread is the force across a joint of a piece over the block's load. It is 1, or more where a bolt turns
// in the piece as a stiff bar, bears up on one part of its length and down on the rest, and the joint between
// passes the difference; but never more than the bolts can bear on the plies of one side. Both the planes
// and the state of the whole dowel are looked at.
func (c *calc) spread(j plyJoint) float64 {
	most, least := 1.0, math.Inf(1)
	for _, g := range c.groups {
		if g.counts == nil {
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
		most = math.Max(most, g.counts.across(j))
		if p := g.counts.state.p; p > 0 {
			least = math.Min(least, p)
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

// across is the force across a joint in the state of the whole dowel, over the load: in the group the load
// comes from, what the layers inside the joint bear; in a loose part, its bearing on one side of the joint.
func (r reading) across(j plyJoint) float64 {
	s := r.state
	if s.p <= 0 {
		return 0
	}
	first, last := groupOf(r.beds)
	for i, b := range r.beds[last+1 : max(first, last+1)] {
		if b.Hold == Loose && b.Name == j.name {
			l := s.between[i]
			return l.q * min(grips(l.q, l.l, s.gives[i]), j.fromInside, j.fromOutside) / s.p
		}
	}
	if last < 0 || first >= len(r.beds) || r.beds[first].Name != j.inner.layers[0].name {
		return 0
	}
	sum := 0.0
	for i, f := range s.side.nets(s.side.pressing(s.p, s.my)) {
		if i < j.layers {
			sum += f
		}
	}
	return math.Abs(sum) / s.p
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
