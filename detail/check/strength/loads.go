package strength

import (
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// combo is one load combination on the ledger, in lb per in of ledger.
type combo struct {
	id, name string
	dead     float64
	live     float64 // may be absent from any span
	snow     float64 // may be half absent from any span, ASCE 7-16 7.5
	cd       float64
}

func (k combo) total() float64 { return k.dead + k.live + k.snow }

// vari is the load deflections under live load count.
func (k combo) vari() float64 { return k.live + k.snow }

// on is the load of a span the pattern loads fully or not.
func (k combo) on(full bool) float64 {
	if full {
		return k.total()
	}
	return k.dead + k.snow/2
}

// moving is k without its dead load.
func (k combo) moving() combo {
	k.dead = 0
	return k
}

// factor is how a combination of ASCE 7-16 2.4.1 takes the loads, and what its duration allows.
type factor struct {
	id, name   string
	live, snow float64
	cd         float64
}

// factors are the gravity combinations; those with wind and earthquake put a design out of scope.
func factors() []factor {
	return []factor{
		{"combination_d", "D", 0, 0, cdDead},
		{"combination_dl", "D + L", 1, 0, cdLive},
		{"combination_ds", "D + S", 0, 1, cdSnow},
		{"combination_dls", "D + 0.75L + 0.75S", 0.75, 0.75, cdSnow},
	}
}

// loads adds the combinations and the loads they put on the ledger.
func (c *calc) loads() {
	l := c.m.Loads
	c.partial = missing(given{"loads.dead", stated(l.Dead)}, given{"loads.live", stated(l.Live)}, given{"loads.snow", stated(l.Snow)})
	tributary := c.tributary()
	for _, f := range factors() {
		c.combination(f, tributary)
	}
	c.loadFloors()
	c.snow()
	if len(c.combos) > 0 {
		c.lineLoads(tributary)
	}
}

// tributary is the width of deck the ledger carries, in inches: half the span and the strip over the ledger.
// A cantilever past the beam would take load off the ledger and is not counted.
func (c *calc) tributary() float64 { return c.m.Joists.Span.Inches()/2 + c.m.Joists.Strip.Inches() }

func (c *calc) combination(f factor, tributary float64) {
	l := c.m.Loads
	step := check.Step{ID: f.id, Group: check.Loads, Symbol: "q", Name: "combination " + f.name, Formula: f.name,
		Clause: "ASCE 7-16 2.4.1; NDS 2018 table 2.3.2"}
	lack := missing(given{"loads.dead", stated(l.Dead)}, given{"loads.live", statedIf(f.live > 0, l.Live)}, given{"loads.snow",
		statedIf(f.snow > 0, l.Snow)})
	if lack != "" {
		c.notChecked(step, lack)
		return
	}
	vari := f.live*value(l.Live) + f.snow*value(l.Snow)
	step.Value = psf(value(l.Dead) + vari)
	step.With = []check.Arg{arg("D", psf(value(l.Dead))), arg("CD", num(f.cd))}
	if f.live > 0 {
		step.With = append(step.With, arg("L", psf(value(l.Live))))
	}
	if f.snow > 0 {
		step.With = append(step.With, arg("S", psf(value(l.Snow))))
	}
	c.add(step)
	perInch := tributary / 144 // psf to lb per in of ledger
	c.combos = append(c.combos, combo{f.id, f.name, value(l.Dead) * perInch, f.live * value(l.Live) * perInch,
		f.snow * value(l.Snow) * perInch, f.cd})
}

// stated is 1 for a load that was given, nothing included, else 0.
func stated(p *unit.Pressure) float64 {
	if p == nil {
		return 0
	}
	return 1
}

func statedIf(needed bool, p *unit.Pressure) float64 {
	if !needed {
		return 1
	}
	return stated(p)
}

// value is a load in psf, nothing when not stated.
func value(p *unit.Pressure) float64 {
	if p == nil {
		return 0
	}
	return p.PSF()
}

// lineLoads adds what the heaviest combination puts on ledger and hangers.
func (c *calc) lineLoads(tributary float64) {
	h := c.combos[0]
	for _, k := range c.combos {
		if k.total() > h.total() {
			h = k
		}
	}
	c.res.Combination = h.name
	c.res.LineLoad = unit.LineLoad(12*h.total()) * unit.PLF
	g, q, t := check.Loads, psf(h.total()*144/tributary), inch(tributary)
	c.add(check.Step{ID: "total_load", Group: g, Symbol: "q", Name: "load on the deck", Value: q, Note: h.name})
	c.add(check.Step{ID: "tributary_width", Group: g, Symbol: "b", Name: "width of deck the ledger carries", Formula: "L/2 + strip",
		With: []check.Arg{arg("L", c.m.Joists.Span.Q()), arg("strip", c.m.Joists.Strip.Q())}, Value: t})
	c.add(check.Step{ID: "ledger_line_load", Group: g, Symbol: "w", Name: "load along the ledger", Formula: "q b",
		With: []check.Arg{arg("q", q), arg("b", t)}, Value: perFoot(h.total()), Note: h.name})
	c.add(check.Step{ID: "ledger_live_line_load", Group: g, Symbol: "wL", Name: "live and snow part of it",
		Value: perFoot(h.vari()), Note: h.name})
	spacing := c.joistSpacing()
	c.add(check.Step{ID: "joist_reaction", Group: g, Symbol: "Rj", Name: "load of one joist on its hanger", Formula: "w s",
		With:  []check.Arg{arg("w", perFoot(h.total())), arg("s", inch(spacing))},
		Value: lb(h.total() * spacing), Note: h.name})
}

// joistSpacing is the greatest length of ledger one joist loads, in.
func (c *calc) joistSpacing() float64 {
	spacing := c.m.Joists.Spacing.Inches()
	for _, w := range c.shares() {
		spacing = math.Max(spacing, w)
	}
	return spacing
}

// shares returns the length of ledger each joist loads: to half way to its neighbours, the outer ones
// to the ends of the ledger.
func (c *calc) shares() []float64 {
	at := c.m.Joists.At
	out := make([]float64, len(at))
	for i := range at {
		left, right := 0.0, c.m.Ledger.Length.Inches()
		if i > 0 {
			left = (at[i-1] + at[i]).Inches() / 2
		}
		if i < len(at)-1 {
			right = (at[i] + at[i+1]).Inches() / 2
		}
		out[i] = right - left
	}
	return out
}
