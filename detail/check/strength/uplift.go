package strength

import (
	"math"

	"standclear/detail/check"
)

// uplift checks the least load on a block. Load on other spans may lift a block a little; then push and
// pull of its couple change ends and the loaded edges are the other ones. That is accepted where every
// member keeps the loaded edge distance at both edges, the lowest bolts have a lever arm, and the pull is
// no more than the one downward.
func (c *calc) uplift() {
	least, at := math.Inf(1), ""
	for _, s := range c.solved {
		for i, r := range s.least {
			if r < least-1e-9*math.Abs(least) || at == "" { // alike but for rounding: the first
				least, at = r, c.m.Blocks.At[i].Mark
			}
		}
	}
	s := check.Step{ID: "uplift", Group: check.Block, Symbol: "R least", Name: "least load on a block", Value: lb(least),
		Clause: "statics, load on the least favourable spans; judgement", Where: at, Verdict: check.OK}
	if least < -1e-6 {
		s.Note = "only the bolts and the block turned over are looked at and found as strong as upright; ties, backing and plate pulled the other way are not"
		if reason := c.turnedOver(-least); reason != "" {
			s.Note, s.Verdict = "", check.Engineer
			s.Reason = "load on other spans lifts block " + at + " by " + c.say(lb(-least)) + ", and " + reason
		}
	}
	c.add(s)
}

// turnedOver says why a block may not be lifted by load; "" when it may.
func (c *calc) turnedOver(load float64) string {
	b := c.m.Blocks
	for _, g := range c.groups {
		if c.leastEdge(g) < 4*g.d()-1e-6 {
			return "an edge of the wood is nearer than 4 D to its bolts on the side the lift loads"
		}
	}
	f := c.rimFace(c.groups[0])
	height := (b.Top - b.Bottom).Inches()
	low := b.Top.Inches() - f.g.low()
	arm := math.Min(low-float64(c.a.FootDepth)*height/3, 0.75*low)
	if low < height*2/3-1e-6 || load*f.arm/arm > c.res.Tension.Pounds() {
		return "its lowest bolts do not hold the couple turned over"
	}
	return ""
}

// leastEdge is the least distance of a set's bolts from an edge, top or bottom, of any member, in.
func (c *calc) leastEdge(g *group) float64 {
	b, l, r := c.m.Blocks, c.m.Ledger, c.m.Rim
	least := math.Min(b.Top.Inches()-g.top(), g.low()-b.Bottom.Inches())
	if g.ledge {
		least = math.Min(least, math.Min(l.Top.Inches()-g.top(), g.low()-l.Bottom.Inches()))
	}
	if g.rim {
		least = math.Min(least, math.Min(r.Top.Inches()-g.top(), g.low()-r.Bottom.Inches()))
	}
	return least
}
