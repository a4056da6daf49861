package strength

import (
	"fmt"
	"math"
	"slices"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// group is one fastener set with what follows from where it stands.
type group struct {
	*Set
	id    string // suffix of step ids: "", "_to_rim", "_to_block"
	name  string // as printed: "through bolts"
	rim   bool   // it passes the rim
	ledge bool   // it passes the ledger
	dowel Dowel
	known bool      // the dowel is a listed size
	rows  []float64 // z, highest first, in
	cols  []float64 // from the block centre, left to right, in
	parts []part    // the solid pieces it passes
	tip   float64   // thickness before the piece its tip stands in, washer included, in
	plane []layer

	cm, cg, cdelta float64
	shear          []float64 // ratio of the worst plane, per combination
	inside         []float64 // of the worst plane but the outermost; the outermost when there is no other
	outside        []float64 // of the outermost plane
}

// fasteners adds the checks of every fastener set: places, then planes.
func (c *calc) fasteners() {
	c.groups = c.fastenerGroups()
	for _, g := range c.groups {
		n := len(c.solved)
		g.shear, g.inside, g.outside = make([]float64, n), make([]float64, n), make([]float64, n)
		if g.Kind == Evaluated {
			c.evaluated(g)
			continue
		}
		if lack := c.unknown(g); lack != "" {
			c.notChecked(check.Step{ID: "fasteners" + g.id, Group: check.Connection, Name: g.name}, lack)
			g.unchecked()
			continue
		}
		g.cdelta = c.places(g)
		c.factors(g)
		c.embedment(g)
		c.washers(g)
		for _, l := range g.plane {
			c.plane(g, l)
		}
		c.wholeBolt(g)
	}
	c.plyScrews()
}

// unchecked marks the shear of a set as not known.
func (g *group) unchecked() {
	for i := range g.shear {
		g.shear[i], g.inside[i], g.outside[i] = math.NaN(), math.NaN(), math.NaN()
	}
}

// sheared notes the ratio of one plane under combination i.
func (g *group) sheared(l layer, i int, ratio float64) {
	if l.informal {
		return
	}
	g.shear[i] = math.Max(g.shear[i], ratio)
	outermost := l.side.name == g.parts[len(g.parts)-1].name && !l.floating
	if outermost {
		g.outside[i] = math.Max(g.outside[i], ratio)
	}
	if !outermost || len(g.parts) == 2 {
		g.inside[i] = math.Max(g.inside[i], ratio)
	}
}

// fastenerGroups lays the stated sets out.
func (c *calc) fastenerGroups() []*group {
	s, f := c.stack(), c.m.Fasteners
	last := len(s.parts) - 1
	ledger, gap := s.parts[last].thick, c.m.Blocks.FrontGap.Inches()
	block := s.depth() - s.parts[0].thick - ledger - gap // sheathing, plies and pad
	if f.Through != nil {
		return []*group{c.group(f.Through, "", true, true, s.parts, c.through(s), block+gap+ledger)}
	}
	return []*group{
		c.group(f.ToRim, "_to_rim", true, false, s.parts[:last], c.toRim(s), block),
		c.group(f.ToBlock, "_to_block", false, true, s.parts[1:], c.toBlock(s), gap+ledger),
	}
}

func (c *calc) group(s *Set, id string, rim, ledge bool, parts []part, planes []layer, before float64) *group {
	g := &group{Set: s, id: id, rim: rim, ledge: ledge, parts: parts, plane: planes, tip: before + s.Washer.Thickness.Inches()}
	g.name = map[string]string{"": "fasteners from ledger to rim", "_to_rim": "fasteners from block to rim",
		"_to_block": "fasteners from ledger to block"}[id]
	for _, z := range s.Rows {
		g.rows = append(g.rows, z.Inches())
	}
	for _, x := range s.Columns {
		g.cols = append(g.cols, x.Inches())
	}
	slices.Sort(g.rows)
	slices.Reverse(g.rows)
	slices.Sort(g.cols)
	g.dowel, g.known = DowelOf(s.Kind, s.Diameter, s.Yield)
	return g
}

func (g *group) d() float64    { return g.Diameter.Inches() }
func (g *group) top() float64  { return g.rows[0] }
func (g *group) low() float64  { return g.rows[len(g.rows)-1] }
func (g *group) wide() float64 { return g.cols[len(g.cols)-1] - g.cols[0] }

// outer is the distance of the outermost column from the block centre.
func (g *group) outer() float64 {
	return math.Max(math.Abs(g.cols[0]), math.Abs(g.cols[len(g.cols)-1]))
}

// closest returns the least distance between neighbours of a sorted list, infinite for one.
func closest(at []float64) float64 {
	least := math.Inf(1)
	for i := 1; i < len(at); i++ {
		least = math.Min(least, math.Abs(at[i]-at[i-1]))
	}
	return least
}

// unknown says why the yield equations cannot be used for a set; "" when they can.
func (c *calc) unknown(g *group) string {
	if !g.known {
		return fmt.Sprintf("no table lists a %s of %s", g.Kind, c.say(g.Diameter.Q()))
	}
	for _, p := range g.parts {
		if s := missing(given{"thickness of the " + p.name, p.thick}, given{"modulus of elasticity of the " + p.name, p.e}); s != "" {
			return s
		}
		if v := p.gravity(); v < 0.3 || v > 0.8 {
			return fmt.Sprintf("specific gravity of the %s not stated, or outside 0.30 to 0.80 (NDS 2018 table 12.3.3)", p.name)
		}
	}
	if g.Kind != Bolt && g.embedded() <= 0 {
		return fmt.Sprintf("length of the %s not stated, or too short to reach the wood it is to hold in (%s lie before it)",
			g.Kind, c.say(inch(g.tip)))
	}
	return ""
}

// factors fills in CM and Cg, one value for the whole set: the least of its members and planes.
func (c *calc) factors(g *group) {
	g.cm, g.cg = 1, 1
	rows := len(g.rows)
	if c.m.Blocks.VerticalGrain {
		rows = max(rows, len(g.cols))
	}
	for _, p := range g.parts {
		for _, m := range p.moisture {
			g.cm = math.Min(g.cm, wetFastener(m, rows, g.Diameter))
		}
	}
	width := g.wide()
	if width < 3*g.d() {
		width = 3 * g.d()
	}
	for _, l := range g.plane {
		pitch := unit.Length(math.Min(closest(g.rows), 1e3)) * unit.Inch
		g.cg = math.Min(g.cg, GroupAction(len(g.rows), pitch, g.Diameter, l.main.e*l.main.thick*width,
			l.side.e*l.side.thick*width))
	}
}

// embedded is how much of the fastener stands beyond the pieces in front of its tip, in.
func (g *group) embedded() float64 { return g.Length.Inches() - g.tip }

// holding returns, for a lag or wood screw, the penetration without the tip and the length that bears,
// in a piece of the given thickness. NDS 2018 12.1.4, 12.3.5.3.
func (g *group) holding(thick float64) (penetration, bearing float64) {
	t, _ := threadOf(g.Kind, g.Diameter)
	past := g.embedded()
	return math.Max(0, math.Min(thick, past-t.tip)), math.Max(1e-3, math.Min(thick, past-t.tip/2))
}

// anchorThick is the thickness of the piece the tip stands in.
func (g *group) anchorThick() float64 { return g.parts[0].thick }

// embedment checks the penetration of lag and wood screws.
func (c *calc) embedment(g *group) {
	if g.Kind == Bolt {
		return
	}
	least, clause := 4*g.d(), "NDS 2018 12.1.4.6"
	if g.Kind == Screw {
		least, clause = 6*g.d(), "NDS 2018 12.1.5.6 (from memory, confirm)"
	}
	p, _ := g.holding(g.anchorThick())
	s := check.Step{ID: "penetration" + g.id, Group: check.Connection, Symbol: "p",
		Name:    "penetration of the " + g.Kind.String() + " without its tip",
		Formula: fmt.Sprintf("p >= %.0f D", least/g.d()), With: []check.Arg{arg("D", g.Diameter.Q()), arg("L", g.Length.Q())},
		Value: inch(p), Limit: check.Limit(inch(least)), Sense: check.AtLeast, Clause: clause, Where: "all blocks"}
	if g.anchorThick() < least {
		s.Reason = fmt.Sprintf("a %s of %s must hold over %s, but the %s is only %s thick; use through bolts", g.Kind,
			c.say(g.Diameter.Q()),
			c.say(inch(least)), g.parts[0].name, c.say(inch(g.anchorThick())))
		s.Verdict = check.Fails
	}
	c.add(s)
}

// modes returns the yield modes of the set at one plane.
func (g *group) modes(l layer) []Mode {
	length := l.main.thick
	if l.anchor && g.Kind != Bolt {
		_, length = g.holding(l.main.thick)
	}
	return g.dowel.Yield(l.side.member(g.dowel, l.side.thick), l.main.member(g.dowel, length), unit.Length(l.gap)*unit.Inch)
}

// plane checks one shear plane: the block's whole load over the fasteners of the set.
func (c *calc) plane(g *group, l layer) {
	modes := g.modes(l)
	var worst check.Step
	for i, k := range c.solved {
		s := settle(c.planeStep(g, l, modes, k))
		s.Note = join(s.Note, k.name)
		g.sheared(l, i, s.Ratio)
		if i == 0 || s.Ratio > worst.Ratio {
			worst = s
		}
	}
	if l.informal {
		worst.Verdict = check.Engineer
		worst.Reason = "assume.ply_couple trusts loose plies not to turn; a professional must show what stops them"
	}
	worst = c.add(worst)
	p := Plane{worst.ID, l.name, modes, unit.Force(g.adjust()) * Least(modes).Z, worst.Ratio}
	c.res.Planes = append(c.res.Planes, p)
	if !l.informal && p.Ratio > c.res.Plane.Ratio {
		c.res.Plane = p
	}
}

// wholeBolt looks at a block in one piece between rim and ledger on the same bolts. Each shear plane
// alone may count on all of the block; both at once may not. What the bolt holds as a stiff bar is an
// upper bound, so less than the load is a matter for an engineer. A block with its own fixings to the
// ledger is one piece with it and is judged by its plane.
func (c *calc) wholeBolt(g *group) {
	s := c.stack()
	if !g.rim || !g.ledge || len(s.parts) != 3 || c.fixed() || g.Kind != Bolt {
		return
	}
	z := s.stiffBolt(g.dowel)
	var worst check.Step
	for i, k := range c.solved {
		step := settle(check.Step{ID: "whole_bolt", Group: check.Connection, Symbol: "R",
			Name: "bolts turning as stiff bars in rim, block and ledger at once", Cap: c.a.Cap,
			Formula: "R <= n Z CD CM Cg Cd, Z = P/3.6Kt",
			Clause:  "statics of TR12-2015 mode II with a third member; judgement", Where: c.worstMark(),
			With:  []check.Arg{arg("Z", lb(z)), arg("n", unit.Number(g.Count())), arg("CD", num(k.cd)), arg("CM", num(g.cm))},
			Value: lb(k.most()), Limit: check.Limit(lb(z * k.cd * g.adjust())), Note: k.name})
		if i == 0 || step.Ratio > worst.Ratio {
			worst = step
		}
	}
	if worst.Verdict == check.Fails {
		worst.Verdict = check.Engineer
		worst.Reason = "each shear plane counts on the whole block; both together hold " + c.say(*worst.Limit) +
			" against " + c.say(worst.Value) + ", a ratio up to " + c.say(num(c.a.Cap)) +
			"; fasten the block to the ledger with its own screws, or use larger or more bolts"
	}
	c.add(worst)
}

// adjust is the number of fasteners at a block times every factor but CD.
func (g *group) adjust() float64 { return float64(g.Count()) * g.cm * g.cg * g.cdelta }

func (c *calc) planeStep(g *group, l layer, modes []Mode, k solution) check.Step {
	least := Least(modes)
	s := check.Step{ID: l.id + g.id, Group: check.Connection, Symbol: "R", Name: "shear, " + l.name,
		Formula: "R <= n Z CD CM Cg Cd", Cap: c.a.Cap,
		Clause: "NDS 2018 11.3, 12.3; TR12-2015 table 1-1 with gap", Where: c.worstMark(), Value: lb(k.most()),
		Limit: check.Limit(lb(least.Z.Pounds() * k.cd * g.adjust())), Note: "mode " + least.Name}
	for _, m := range modes {
		s.With = append(s.With, arg(m.Name, m.Z.Q()))
	}
	s.With = append(s.With, arg("gap", inch(l.gap)), arg("Z", least.Z.Q()), arg("n", unit.Number(g.Count())),
		arg("CD", num(k.cd)), arg("CM", num(g.cm)), arg("Cg", num(g.cg)), arg("Cd", num(g.cdelta)))
	return s
}

// most is the greatest design reaction of the combination, lb.
func (s solution) most() float64 { return slices.Max(s.reaction) }

func (c *calc) worstMark() string { return c.m.Blocks.At[c.res.Worst].Mark }

// evaluated checks fasteners that bring their own allowable load at this stand-off.
func (c *calc) evaluated(g *group) {
	s := check.Step{ID: "evaluated_shear" + g.id, Group: check.Connection, Symbol: "R", Name: "shear on " + g.name,
		Formula: "R <= n Z", Cap: c.a.Cap,
		Clause: "allowable load as stated: " + g.Report, Where: c.worstMark(), Note: "no factor is put on a stated value"}
	if lack := missing(given{"allowable lateral load of the evaluated fastener", g.Lateral.Pounds()}); lack != "" {
		c.notChecked(s, lack)
		g.unchecked()
		return
	}
	if g.Report == "" {
		s.Verdict, s.Reason = check.Engineer, "the evaluated fastener's values are stated without what they rest on"
	}
	z := g.Lateral.Pounds() * float64(g.Count())
	for i, k := range c.solved {
		g.shear[i], g.inside[i], g.outside[i] = k.most()/z, k.most()/z, k.most()/z
	}
	c.worst(func(k solution) check.Step {
		s.Value, s.Limit = lb(k.most()), check.Limit(lb(z))
		s.With = []check.Arg{arg("n", unit.Number(g.Count())), arg("Z", g.Lateral.Q())}
		return s
	})
}
