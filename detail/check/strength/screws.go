package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// embedded is how much of the fastener stands beyond the pieces in front of its tip, in.
func (g *group) embedded() float64 { return g.Length.Inches() - g.tip }

// holding returns, for a lag or wood screw, the penetration without the tip and the length that bears,
// in a piece of the given thickness. NDS 2018 12.1.4, 12.3.5.3.
func (g *group) holding(thick float64) (penetration, bearing float64) {
	t, _ := threadOf(g.Kind, g.Diameter)
	past := g.embedded()
	return math.Max(0, math.Min(thick, past-t.tip)), math.Max(1e-3, math.Min(thick, past-t.tip/2))
}

// anchor is the piece the tip of a screw stands in: the rim, or the front part of the block, which is the
// first part of what the set passes.
func (g *group) anchor() part { return g.parts[0] }

// embedment checks the penetration of lag and wood screws.
func (c *calc) embedment(g *group) {
	if g.Kind == Bolt {
		return
	}
	least, clause := 4*g.d(), "NDS 2018 12.1.4.6"
	if g.Kind == Screw {
		least, clause = 6*g.d(), "NDS 2018 12.1.5.6 (from memory, confirm)"
	}
	in := g.anchor()
	p, _ := g.holding(in.thick)
	s := check.Step{ID: "penetration" + g.id, Group: check.Connection, Symbol: "p",
		Name:    "penetration of the " + g.Kind.String() + " without its tip, in " + the(in.name),
		Formula: fmt.Sprintf("L - before - tip >= %.0f D", least/g.d()),
		With:    []check.Arg{arg("D", g.Diameter.Q()), arg("L", g.Length.Q()), arg("before", inch(g.tip))},
		Value:   inch(p), Limit: check.Limit(inch(least)), Sense: check.AtLeast, Clause: clause, Where: "all blocks"}
	if in.thick < least {
		s.Reason = fmt.Sprintf("a %s of %s must hold over %s, but %s is only %s thick; use through bolts", g.Kind,
			c.say(g.Diameter.Q()), c.say(inch(least)), the(in.name), c.say(inch(in.thick)))
		s.Verdict = check.Fails
	}
	c.add(s)
}

// heldByScrews checks lag and wood screws by withdrawal and the combined rule, their steel and what their
// heads press on.
func (c *calc) heldByScrews(f face) {
	g := f.g
	step := check.Step{ID: "screw_pull_and_shear" + f.suffix(), Group: check.Block, Symbol: "F",
		Name: "shear and pull together on a top screw", Cap: c.a.Cap,
		Formula: "sqrt(V^2 + T1^2) <= Wp Z'/(Wp cos^2 + Z' sin^2)", Clause: "NDS 2018 12.2.1, 12.4.1"}
	if !g.known || math.IsNaN(g.shear[0]) {
		c.notChecked(step, "shear of the screws could not be checked")
		return
	}
	wp := c.withdrawal(g)
	c.worstDuty(g, func(d duty) check.Step {
		v, t := d.v/math.Max(1, float64(d.n)), c.couple(f, d).bolt
		z, w := v/math.Max(g.shear[d.place], 1e-9), wp*d.cd
		s := step
		s.Value, s.Limit = lb(math.Hypot(v, t)), check.Limit(lb(0))
		if w > 0 && z > 0 {
			s.Limit = check.Limit(CombinedScrew(pounds(w), pounds(z), math.Atan2(t, v)*180/math.Pi).Q())
		}
		s.With = []check.Arg{arg("V", lb(v)), arg("T1", lb(t)), arg("Wp", lb(w)), arg("Z'", lb(z))}
		return s
	})
	c.rootHolds(f)
	c.headHolds(f)
}

// withdrawal is the adjusted withdrawal value of one screw without CD, lb. Any wet piece in the set
// counts it as wet.
func (c *calc) withdrawal(g *group) float64 {
	p, _ := g.holding(g.anchor().thick)
	wood := g.anchor().gravity()
	w := LagWithdrawal(wood, g.Diameter)
	if g.Kind == Screw {
		w = ScrewWithdrawal(wood, g.Diameter)
	}
	return w.PLF() / 12 * p * when(g.wet(), 0.7)
}

// wet tells whether any piece of the set is wet in service.
func (g *group) wet() bool {
	for _, part := range g.parts {
		for _, m := range part.moisture {
			if m.Service != Dry {
				return true
			}
		}
	}
	return false
}

// rootHolds checks the steel of a screw on its root. Lag screws are of steel like that of ASTM A307.
func (c *calc) rootHolds(f face) {
	g := f.g
	root := g.dowel.Root.Inches()
	c.worstDuty(g, func(d duty) check.Step {
		return check.Step{ID: "root_tension" + f.suffix(), Group: check.Block, Symbol: "T1", Name: "pull on the steel of one top screw",
			Formula: "T/columns <= 22,500 psi pi Dr^2/4", Cap: c.a.Cap, With: []check.Arg{arg("Dr", inch(root))},
			Value: lb(c.couple(f, d).bolt), Limit: check.Limit(lb(boltTension * math.Pi / 4 * root * root)),
			Clause: "NDS 2018 11.2.3; AISC 360-16 table J3.2, 45 ksi over 2 as for ASTM A307, on the root (from memory, confirm)"}
	})
}

// headHolds checks what keeps the head of a screw out of the wood: a washer, the hexagon of a lag, or the
// round head of a wood screw, which is drawn through.
func (c *calc) headHolds(f face) {
	g := f.g
	if g.Kind == Screw && g.Washer.Size <= 0 {
		c.headPulls(f)
		return
	}
	_, outer := c.seats(g)
	area, under := g.washerArea(), "washer"
	if g.Washer.Size <= 0 {
		area, under = g.headArea(), "head"
	}
	step := check.Step{ID: "head_bearing" + f.suffix(), Group: check.Block, Symbol: "fc",
		Name: under + " of a top screw pressing on the " + outer.name, Formula: "T1/A <= Fc-perp CM", Cap: c.a.Cap,
		Clause: "NDS 2018 3.10.2; judgement: no Cb"}
	if lack := missing(given{"bearing strength across the grain of the " + outer.name, outer.strength},
		given{under + " of a size and spacing that bears", area}); lack != "" {
		c.notChecked(step, lack)
		return
	}
	c.worstDuty(g, func(d duty) check.Step {
		s, pull := step, c.couple(f, d).bolt
		s.Value, s.Limit = psi(pull/area), check.Limit(psi(outer.strength))
		s.With = []check.Arg{arg("T1", lb(pull)), arg("A", square(area))}
		return s
	})
	if g.Washer.Size > 0 {
		c.washerBends(f)
	}
}

// screwHead is the head of a wood screw over its diameter: a flat head at its least, ASME B18.6.1 (from
// memory, confirm).
const screwHead = 1.75

// headPulls checks the head of a wood screw against being drawn through the piece it stands on.
func (c *calc) headPulls(f face) {
	g := f.g
	on := g.parts[len(g.parts)-1]
	head := screwHead * g.d()
	w := HeadPull(on.gravity(), unit.Length(head)*unit.Inch, unit.Length(on.thick)*unit.Inch).Pounds() * when(g.wet(), 0.7)
	c.worstDuty(g, func(d duty) check.Step {
		return check.Step{ID: "head_pull_through" + f.suffix(), Group: check.Block, Symbol: "T1",
			Name: "head of a top screw drawn through " + the(on.name), Formula: "T/columns <= W_H CD CM", Cap: c.a.Cap,
			With:  []check.Arg{arg("D_H", inch(head)), arg("t", inch(on.thick)), arg("W_H CM", lb(w)), arg("CD", num(d.cd))},
			Value: lb(c.couple(f, d).bolt), Limit: check.Limit(lb(w * d.cd)), Clause: "NDS 2018 12.2.5, 11.3.3 (from memory, confirm)"}
	})
}
