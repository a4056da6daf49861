package strength

import (
	"math"
	"slices"

	"standclear/detail/check"
)

// duty is what one block asks of a set of fasteners under one combination. Where a ledger joint stands
// over the block, the fasteners on each side of it have a duty of their own:
//
//	 V left  | V right
//	=========|=========  ledger
//	   o o   |   o o     its own fasteners
type duty struct {
	solution
	block  int
	side   string    // "", "left of the joint", "right of the joint"
	v      float64   // load, lb
	cols   []float64 // the columns that carry it, from the block centre, in
	n      int       // fasteners
	cdelta float64   // least geometry factor of the members at this block
	place  int       // among the duties of its set
}

// duties lists the duties of a set, combination by combination, from left to right.
func (c *calc) duties(g *group) []duty {
	var out []duty
	for _, k := range c.solved {
		for i := range c.m.Blocks.At {
			x, joint := c.jointOver(i)
			if !joint || !g.ledge {
				out = append(out, g.duty(k, i, "", k.reaction[i], g.cols))
				continue
			}
			left, right := c.columnsBeside(g, i, x)
			// What load straight over the block and the floor of the reaction add may stand on either side.
			rest := math.Max(0, k.reaction[i]-k.sides[i][0]-k.sides[i][1])
			out = append(out, g.duty(k, i, "left of the joint", k.sides[i][0]+rest, left),
				g.duty(k, i, "right of the joint", k.sides[i][1]+rest, right))
		}
	}
	for i := range out {
		out[i].place = i
	}
	return out
}

func (g *group) duty(k solution, i int, side string, v float64, cols []float64) duty {
	return duty{solution: k, block: i, side: side, v: v, cols: cols, n: len(cols) * len(g.rows), cdelta: 1}
}

// jointOver returns the ledger joint over block i that ends the ledger's continuity, in.
func (c *calc) jointOver(i int) (x float64, ok bool) {
	if i == 0 || i == len(c.m.Blocks.At)-1 {
		return 0, false
	}
	for _, s := range c.m.Ledger.Splices {
		if b, over := c.blockUnder(s.Inches()); over && b == i {
			return s.Inches(), true
		}
	}
	return 0, false
}

// columnsBeside returns the columns of a set at block i left and right of x; one that stands at x is on
// neither side.
func (c *calc) columnsBeside(g *group, i int, x float64) (left, right []float64) {
	for _, o := range g.cols {
		switch at := c.m.Blocks.At[i].X.Inches() + o; {
		case at < x-near:
			left = append(left, o)
		case at > x+near:
			right = append(right, o)
		}
	}
	return left, right
}

// where names the block of a duty, and its side.
func (c *calc) where(d duty) string {
	mark := c.m.Blocks.At[d.block].Mark
	if d.side != "" {
		return mark + ", " + d.side
	}
	return mark
}

// at returns the columns of a duty along the ledger, in.
func (c *calc) at(d duty) []float64 {
	out := slices.Clone(d.cols)
	for i := range out {
		out[i] += c.m.Blocks.At[d.block].X.Inches()
	}
	return out
}

// nearest returns, of the steps f makes for each duty of a set, the one nearest its limit, with its block
// and combination. Of equal ones it is the first. What f leaves out of With is put in for that one alone.
func (c *calc) nearestLimit(g *group, f func(d duty) check.Step, with ...func(d duty) []check.Arg) check.Step {
	var most check.Step
	at := 0
	for i, d := range g.duties {
		step := f(d).Settled()
		if i == 0 || step.Ratio > most.Ratio*(1+1e-9) {
			most, at = step, i
		}
	}
	if len(g.duties) > 0 {
		d := g.duties[at]
		most.Note, most.Where = join(most.Note, d.name), c.where(d)
		for _, w := range with {
			most.With = w(d)
		}
	}
	return most
}

// worstDuty adds the step nearest its limit.
func (c *calc) worstDuty(g *group, f func(d duty) check.Step, with ...func(d duty) []check.Arg) check.Step {
	return c.addLoaded(c.nearestLimit(g, f, with...))
}

// inform adds the step nearest its limit as a number only, its capacity among the numbers put in.
func (c *calc) inform(g *group, f func(d duty) check.Step, why string, with ...func(d duty) []check.Arg) {
	s := c.nearestLimit(g, f, with...)
	s.With = append(s.With, arg("capacity", *s.Limit))
	s.Limit, s.Ratio, s.Cap, s.Verdict, s.Reason, s.Fix = nil, 0, 0, check.Info, "", ""
	s.Note = join(s.Note, why)
	c.add(s)
}
