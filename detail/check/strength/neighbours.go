package strength

import (
	"math"

	"standclear/detail/check"
)

// Two sets at one block share its wood: a fastener of one stands beside those of the other.
//
//	   o     o      to the rim
//	   x     x      to the ledger      dz between rows, dx between columns
//	   o     o

// pair is a fastener of each of two sets: how far apart, and the share of the least spacing that is.
type pair struct{ dx, dz, share float64 }

// nearestPair finds the two fasteners of different sets that stand nearest by the rule: far enough apart
// one over the other or side by side.
func nearestPair(a, b *group) pair {
	d := math.Max(a.d(), b.d())
	column := math.Max(a.columnSpacing(), b.columnSpacing())
	least := pair{share: math.Inf(1)}
	for _, za := range a.rows {
		for _, zb := range b.rows {
			for _, xa := range a.cols {
				for _, xb := range b.cols {
					p := pair{dx: math.Abs(xa - xb), dz: math.Abs(za - zb)}
					p.share = math.Max(p.dz/(3*d), p.dx/column)
					if p.share < least.share {
						least = p
					}
				}
			}
		}
	}
	return least
}

// setsApart checks the fasteners of two sets against each other.
func (c *calc) setsApart() {
	if len(c.groups) < 2 {
		return
	}
	a, b := c.groups[0], c.groups[1]
	p := nearestPair(a, b)
	c.add(check.Step{ID: "sets_spacing", Group: check.Connection, Symbol: "a",
		Name:    "fasteners of the two sets apart from each other",
		Formula: "the greater of dz/3 D and dx over the least spacing of columns >= 1",
		With: []check.Arg{arg("dz", inch(p.dz)), arg("dx", inch(p.dx)), arg("D", inch(math.Max(a.d(), b.d()))),
			arg("spacing of columns", inch(math.Max(a.columnSpacing(), b.columnSpacing())))},
		Value: num(p.share), Limit: check.Limit(num(1)), Sense: check.AtLeast, Clause: clausePace + ", " + clauseRows,
		Where: "all blocks"})
	c.platesApart(a, b)
}

// platesApart checks that the washer of one set clears the fasteners and washers of the other. Plates are
// square to the rows; of two round ones the distance between centres counts.
func (c *calc) platesApart(a, b *group) {
	need := (a.Washer.Size.Inches() + b.Washer.Size.Inches()) / 2
	step := check.Step{ID: "sets_washers", Group: check.Connection, Symbol: "a", Name: "washers of the two sets clear of each other",
		Formula: "distance of centres >= half of each", Clause: "fit", Where: "all blocks", Sense: check.AtLeast}
	if lack := missing(given{"size of the washers to the rim", a.Washer.Size.Inches()},
		given{"size of the washers to the block", b.Washer.Size.Inches()}); lack != "" {
		c.notChecked(step, lack)
		return
	}
	least := math.Inf(1)
	for _, za := range a.rows {
		for _, zb := range b.rows {
			for _, xa := range a.cols {
				for _, xb := range b.cols {
					away := math.Max(math.Abs(xa-xb), math.Abs(za-zb))
					if a.Washer.Round && b.Washer.Round {
						away = math.Hypot(xa-xb, za-zb)
					}
					least = math.Min(least, away)
				}
			}
		}
	}
	step.Value, step.Limit = inch(least), check.Limit(inch(need))
	c.add(step)
}

// neighbours is the geometry factor the other set at the block leaves: full value from 4 D one over the
// other where the two stand nearer side by side than columns may.
func (c *calc) neighbours(g *group) float64 {
	factor := 1.0
	for _, o := range c.groups {
		if o == g {
			continue
		}
		d, column := math.Max(g.d(), o.d()), math.Max(g.columnSpacing(), o.columnSpacing())
		for _, za := range g.rows {
			for _, zb := range o.rows {
				for _, xa := range g.cols {
					for _, xb := range o.cols {
						if math.Abs(xa-xb) < column {
							factor = math.Min(factor, geometryFactor(math.Abs(za-zb), 4*d))
						}
					}
				}
			}
		}
	}
	return factor
}

// depthOfGroup: fasteners far apart across the grain of wet wood split it as it shrinks. The grain of rim
// and ledger runs along the wall, so their rows count; that of an upright block runs up, so its columns do.
func (c *calc) depthOfGroup(g *group) {
	wet, spread := false, 0.0
	for _, p := range g.parts {
		across := g.top() - g.low()
		if p.upright {
			across = g.wide()
		}
		for _, m := range p.moisture {
			if m.Service != Dry || m.Assembly != Dry {
				wet, spread = true, math.Max(spread, across)
			}
		}
	}
	s := check.Step{ID: "scope_group" + g.id, Group: check.Scope, Name: "spread of fasteners across the grain of wet wood",
		Clause: "NDS 2018 12.5.1.3; judgement", Where: "all blocks"}
	if !wet {
		s.Verdict, s.Note = check.OK, "all wood dry when fastened and in service"
		c.add(s)
		return
	}
	s.Value, s.Limit = inch(spread), check.Limit(c.a.MaxGroup.Q())
	c.engineer(s, "fasteners "+c.say(s.Value)+" apart across the grain of wet wood split it as it shrinks; at most "+c.say(c.a.MaxGroup.Q()))
}

// engineer adds a step whose failure puts the design outside this program instead of failing it.
func (c *calc) engineer(s check.Step, reason string) {
	s = s.Settled()
	if s.Verdict == check.Fails {
		s.Verdict, s.Reason = check.Engineer, reason
	}
	c.add(s)
}
