package strength

import (
	"fmt"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// layer is one shear plane to be checked.
type layer struct {
	id, name   string
	main, side part
	gap        float64
	anchor     bool // the tip of a lag stands in main
	floating   bool // loose plies counted as gap
	informal   bool // printed only: another reading of the same bolt counts
}

// through lists the planes of fasteners that pass from ledger to rim.
func (c *calc) through(s stack) []layer {
	last := len(s.parts) - 1
	out := c.blockPlanes(s)
	out = append(out, s.plane(last-1, s.parts[last]))
	if last > 2 {
		side, from := s.parts[last], last
		if c.fixed() {
			side, from = s.outerWithLedger(), last-1
		}
		out = append(out, s.floating(side, from))
	}
	return out
}

// fixed tells whether the front of the block is counted with the ledger: it is screwed to it, and nothing
// keeps the two apart.
func (c *calc) fixed() bool {
	b := c.m.Blocks
	return b.LedgerScrews.Count > 0 && !c.apart()
}

// apart tells whether block and ledger do not touch, for a gap or a pad between.
func (c *calc) apart() bool {
	b := c.m.Blocks
	return b.FrontGap > 0 || b.Pad.Thickness > 0 && b.Pad.After >= len(b.Plies)
}

// toRim lists the planes of fasteners that pass from the block into the rim.
func (c *calc) toRim(s stack) []layer {
	last := len(s.parts) - 2
	out := c.blockPlanes(stack{s.parts[:last+1], s.voids[:last]})
	if last > 1 {
		out = append(out, s.floating(s.parts[last], last))
	}
	return out
}

// toBlock is the plane of fasteners that pass from the ledger into the block. What of the block lies
// behind its front part is not counted.
func (c *calc) toBlock(s stack) []layer {
	last := len(s.parts) - 1
	l := s.plane(last-1, s.parts[last])
	l.anchor = true
	return []layer{l}
}

// blockPlanes lists the planes between rim and front of the block. The front of the block is counted
// with the ledger where it is fixed to it and the fasteners reach there.
func (c *calc) blockPlanes(s stack) []layer {
	var out []layer
	whole := s.parts[len(s.parts)-1].name == "ledger"
	n := len(s.parts) - 1
	if whole {
		n--
	}
	for k := 0; k < n; k++ {
		side := s.parts[k+1]
		if whole && k+1 == n && c.fixed() {
			side = s.outerWithLedger()
		}
		out = append(out, s.plane(k, side))
	}
	out[0].anchor = true
	return out
}

// outerWithLedger is the front part of the block and the ledger as one piece.
func (s stack) outerWithLedger() part {
	last := len(s.parts) - 1
	p := s.parts[last-1].with(s.parts[last])
	p.name = s.parts[last-1].name + withLedger
	return p
}

// withLedger ends the name of a part that is fixed to the ledger.
const withLedger = "_ledger"

// plane is the shear plane between part k and side.
func (s stack) plane(k int, side part) layer {
	main := s.parts[k]
	return layer{
		id:   fmt.Sprintf("plane%d_%s_from_%s", k+1, main.name, side.name),
		name: said(side.name) + " to " + main.name, main: main, side: side, gap: s.voids[k],
	}
}

// floating is the bound for parts held by nothing but these fasteners: everything between rim and part
// from counts as a gap.
func (s stack) floating(side part, from int) layer {
	gap := 0.0
	for i := range from {
		gap += s.voids[i]
		if i > 0 {
			gap += s.parts[i].thick
		}
	}
	return layer{id: "floating_rim_from_" + side.name, name: said(side.name) + " to rim, loose plies counted as gap",
		main: s.parts[0], side: side, gap: gap, anchor: true, floating: true}
}

// modes returns the yield modes of the set at one plane.
func (g *group) modes(l layer) []Mode {
	return g.dowel.Yield(l.side.member(g.dowel, l.side.thick), l.main.member(g.dowel, g.mainLength(l)), unit.Length(l.gap)*unit.Inch)
}

// mainLength is the length of dowel that bears in the main member of a plane, in.
func (g *group) mainLength(l layer) float64 {
	if l.anchor && g.Kind != Bolt {
		_, length := g.holding(l.main.thick)
		return length
	}
	return l.main.thick
}

// plane checks one shear plane: the block's whole load over the fasteners of the set.
func (c *calc) plane(g *group, l layer) {
	modes := g.modes(l)
	step := func(d duty) check.Step { return c.planeStep(g, l, modes, d) }
	with := func(d duty) []check.Arg { return g.planeArgs(l, modes, d) }
	for i, d := range g.duties {
		g.sheared(l, i, step(d).Settled().Ratio)
	}
	if l.informal {
		c.inform(g, step, "not counted: many_layer_held is the reading that counts", with)
		return
	}
	worst := c.worstDuty(g, step, with)
	c.notePlane(Plane{worst.ID, l.name, modes, unit.Force(g.adjust()) * Least(modes).Z, worst.Ratio})
}

// notePlane takes a plane into the results.
func (c *calc) notePlane(p Plane) {
	c.res.Planes = append(c.res.Planes, p)
	if p.Ratio > c.res.Plane.Ratio {
		c.res.Plane = p
	}
}

func (c *calc) planeStep(g *group, l layer, modes []Mode, d duty) check.Step {
	least := Least(modes)
	return check.Step{ID: l.id + g.id, Group: check.Connection, Symbol: "R", Name: "shear, " + l.name,
		Formula: "load of the block <= n Z CD CM Cg Cd", Cap: c.a.Cap,
		Clause: "NDS 2018 11.3, 12.3; TR12-2015 table 1-1 with gap", Value: lb(d.v),
		Limit: check.Limit(lb(least.Z.Pounds() * d.cd * g.adjustFor(d))), Note: "mode " + least.Name}
}

// planeArgs are the numbers put into the check of a plane.
func (g *group) planeArgs(l layer, modes []Mode, d duty) []check.Arg {
	var with []check.Arg
	for _, m := range modes {
		with = append(with, arg(m.Name, m.Z.Q()))
	}
	with = append(with, arg("gap", inch(l.gap)), arg("Z", Least(modes).Z.Q()))
	return append(append(with, g.factorArgs(d)...), g.memberArgs(l, modes)...)
}

// factorArgs are the number of fasteners and the factors on their reference value.
func (g *group) factorArgs(d duty) []check.Arg {
	return []check.Arg{arg("n", unit.Number(d.n)), arg("CD", num(d.cd)), arg("CM", num(g.cm)), arg("Cg", num(g.cg)),
		arg("Cd", num(d.cdelta))}
}

// memberArgs are what the yield equations of a plane are fed with.
func (g *group) memberArgs(l layer, modes []Mode) []check.Arg {
	fem, _ := l.main.bearing(g.Diameter)
	fes, _ := l.side.bearing(g.Diameter)
	return []check.Arg{
		arg("lm", inch(g.mainLength(l))), arg("ls", inch(l.side.thick)), arg("Fe m", fem.Stress()), arg("Fe s", fes.Stress()),
		arg("D bearing", g.dowel.Root.Q()), arg("Fyb", g.dowel.Fyb.Stress()),
		arg("Rd I", num(modes[0].Rd)), arg("Rd II", num(modes[2].Rd)), arg("Rd III, IV", num(modes[3].Rd)),
	}
}
