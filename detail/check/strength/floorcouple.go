package strength

import (
	"math"

	"standclear/detail/check"
)

// floorCouple prints how the couple of a block leaves rim and backing: two equal forces, at the ties and
// where the foot of the rim stands against the ends of the joists.
//
//	  joist          rim
//	=========|<-F tie |-> T top bolts
//	=========|        |
//	=========|->F foot|<- C foot of the block      F h = T z = C z = M
//
// With joists along the rim there is no such path (scope_joist_direction).
func (c *calc) floorCouple() {
	if c.m.HouseJoists.Parallel {
		return
	}
	step := check.Step{ID: "floor_couple", Group: check.Floor, Symbol: "F", Name: "couple of a block into the floor, at ties and rim foot",
		Formula: "M/h, M = T z", Clause: "statics; judgement: the foot of the rim pushes where the foot of the block does", Where: c.worstMark()}
	f := c.rimFace(c.groups[0])
	k := c.heaviest()
	p := c.whole(f, k.most())
	t := c.m.Tie
	switch {
	case p.lever == 0:
		c.notChecked(step, noPull)
		return
	case t.Kind != Strap && t.Kind != HoldDown:
		c.notChecked(step, "no floor tie is declared (tie_rating)")
		return
	case t.Height == 0:
		c.notChecked(step, "the height of the ties was not measured")
		return
	}
	h := t.Height.Inches() - f.foot - (f.g.top() - f.foot - c.armOver(f, p.depth))
	force := p.moment / math.Max(h, 0.1)
	step.Value = lb(force)
	step.With = []check.Arg{arg("M", lbin(p.moment)), arg("T", lb(p.t)), arg("z", inch(p.lever)), arg("h", inch(h)), arg("F/2", lb(force/2))}
	step.Note = k.name + "; F/2 pulls each of two joists at its tie and presses its end at the rim's foot; the rim must stand tight against the joist ends"
	if h < p.lever*(1-1e-9) {
		step.Verdict = check.Engineer
		step.Reason = "the ties stand " + c.say(inch(h)) + " over the foot, lower than the pull of the top bolts: they hold " + c.say(lb(force)) +
			" at each block, more than the " + c.say(lb(p.t)) + " of tie_rating"
	}
	c.add(step)
}
