package compare

import (
	"standclear/detail"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// Cost is what a way costs by the rates of the project, in their currency; a line whose rate is not given is nil and
// the sum then is nil too.
type Cost struct {
	Wood, Blocks, Fasteners, Work, Sum *float64
	Lacks                              []string // keys that would be needed
}

// Cost is what the design costs.
func (d *Design) Cost() Cost { return d.Parts.cost(d.Rates) }

// CostOf is what an assembly costs by the rates of its project.
func CostOf(a *detail.Assembly) Cost { return partsOf(a).cost(a.Spec.Rates) }

// cost multiplies the counts by the rates. No rate is built in.
func (p Parts) cost(r *spec.Rates) Cost {
	var c Cost
	if r == nil {
		c.Lacks = []string{"rates"}
		return c
	}
	line := func(count float64, rate *float64, key string) *float64 {
		v := 0.0
		switch {
		case rate != nil:
			v = count * *rate
		case count > 0:
			c.Lacks = append(c.Lacks, "rates."+key)
			return nil
		}
		return &v
	}
	c.Wood = line(float64(p.Bought/unit.Metre), r.Lumber, "lumber")
	c.Blocks = line(float64(p.Blocks), r.Block, "block")
	c.Fasteners = line(float64(p.Fasteners), r.Fastener, "fastener")
	if at, by := line(float64(p.Blocks), r.BlockHours, "block_hours"), line(float64(p.Fasteners), r.FastenerHours, "fastener_hours"); at != nil && by != nil {
		c.Work = line(*at+*by, r.Hour, "hour")
	}
	if len(c.Lacks) > 0 {
		return c
	}
	sum := *c.Wood + *c.Blocks + *c.Fasteners + *c.Work
	c.Sum = &sum
	return c
}
