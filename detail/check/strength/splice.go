package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// splices checks that every joint of the ledger stands over a block with two fasteners on each side.
func (c *calc) splices() {
	set := c.ledgerSet()
	for n, x := range c.m.Ledger.Splices {
		step := check.Step{ID: fmt.Sprintf("splice_%d", n+1), Group: check.Beam, Symbol: "n",
			Name:  "fasteners on each side of the ledger joint",
			Limit: check.Limit(unit.Number(2)), Sense: check.AtLeast, Clause: "common practice, no source"}
		i, ok := c.blockUnder(x.Inches())
		if !ok || i == 0 || i == len(c.m.Blocks.At)-1 {
			step.Value, step.Verdict = unit.Number(0), check.Fails
			step.Reason = "the ledger joint at " + c.say(x.Q()) + " is not over an inner block"
			step.Fix = c.overBlock(x)
			c.add(step)
			continue
		}
		left, right := 0, 0
		for _, o := range set.Columns {
			switch at := c.m.Blocks.At[i].X + o; {
			case at < x:
				left += len(set.Rows)
			case at > x:
				right += len(set.Rows)
			}
		}
		step.Value, step.Where = unit.Number(min(left, right)), c.m.Blocks.At[i].Mark
		step.Fix = c.fixIf(step, "the joint at the middle of "+step.Where+", "+c.say(c.m.Blocks.At[i].X.Q())+
			" (ledger.splices), with two fasteners or more on each side of it (columns of the fasteners through the ledger)")
		c.add(step)
	}
}

// overBlock says where a ledger joint at x belongs: over the nearest inner block.
func (c *calc) overBlock(x unit.Length) string {
	at := c.m.Blocks.At
	if len(at) < 3 {
		return "a ledger in one piece, or a block under the joint with another on each side of it"
	}
	best := at[1]
	for _, p := range at[1 : len(at)-1] {
		if math.Abs(float64(p.X-x)) < math.Abs(float64(best.X-x)) {
			best = p
		}
	}
	return "the joint over " + best.Mark + ", at " + c.say(best.X.Q()) + " (ledger.splices), the nearest inner block"
}
