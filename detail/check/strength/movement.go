package strength

import (
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

const (
	steelE      = 29e6    // psi, modulus of steel
	acrossE     = 20.     // modulus along the grain over that across it; judgement
	bedLength   = 1.5     // in of bearing that has the standard's slip modulus; judgement
	creep       = 2.      // slip under lasting load in wet wood over first slip; NDS 2018 3.5.2, Kcr
	tolerable   = 1. / 8. // in a ledger edge may go down; judgement
	saidOfDrop  = "twice the slip under full load, the play of the holes of each set passed as drilled, and the turning of the block"
	dropTooMuch = "the ledger edge goes down more than a flashing joint follows, and the yield equations take the movement for granted"
)

// movement adds how far the ledger goes down: bolts tilting in their holes, the block turning, and the
// play of the holes at first load. It is an estimate, not a strength.
func (c *calc) movement() {
	h := c.heaviest()
	slip := 0.0
	for _, g := range c.groups {
		if g.Kind == Evaluated || c.unknown(g) != "" {
			c.notChecked(check.Step{ID: "ledger_drop", Group: check.Block,
				Name: "how far the ledger edge goes down", Clause: "judgement"}, "slip of the fasteners is not known")
			return
		}
		slip += c.slip(g, h.most()/float64(g.Count()))
	}
	g := c.groups[0]
	per := h.most() / float64(g.Count())
	c.add(check.Step{ID: "slip_contact_estimate", Group: check.Block, Symbol: "y", Name: "slip of two planes in contact",
		Formula: "2 V/(180000 D^1.5)", With: []check.Arg{arg("V", lb(per)), arg("D", g.Diameter.Q())},
		Value: inch(2 * per / slipModulus(g.d())), Clause: "NDS 2018 11.3.6", Note: "least possible: no gap"})
	if pad := c.m.Blocks.Pad.Thickness.Inches(); pad > 0 {
		length := pad + c.thinnest()
		c.add(check.Step{ID: "bolt_bending_slip_pad", Group: check.Block, Symbol: "y", Name: "bolt bending across the pad, ends held",
			Formula: "V l^3/(12 E I)", With: []check.Arg{arg("V", lb(per)), arg("l", inch(length))},
			Value: inch(per * length * length * length / (12 * steelE * math.Pi / 64 * math.Pow(g.d(), 4))), Clause: "statics",
			Note: "least possible: nothing turns"})
	}
	play := 0.0
	for _, g := range c.groups {
		play += math.Max(0, g.hole()-g.d())
	}
	c.drops(h, slip, play)
}

// drops adds the turning of the block and the whole movement of the ledger's edge.
func (c *calc) drops(h solution, slip, play float64) {
	step := check.Step{ID: "ledger_drop", Group: check.Block, Symbol: "y", Name: "how far the ledger edge goes down",
		Formula: "2 slip + play + turning", Clause: "judgement", Where: c.worstMark(), Note: saidOfDrop}
	if !c.pulls(c.rimFace(c.groups[0])) {
		c.notChecked(step, noPull)
		return
	}
	angle := c.turning(h.most())
	c.add(check.Step{ID: "block_rotation", Group: check.Block, Symbol: "t", Name: "turning of the block under full load",
		Formula: "(bolt stretch + washer and foot crushing)/z",
		Value:   unit.Quantity{V: angle * 180 / math.Pi, Kind: unit.KAngle}, Clause: "judgement: modulus across the grain 1/20",
		Where: c.worstMark()})
	_, e := c.offsets()
	turn := creep * angle * e
	c.add(check.Step{ID: "rotation_drop", Group: check.Block, Symbol: "yt", Name: "the load line goes down by the turning",
		Formula: "2 t e", With: []check.Arg{arg("t e", inch(angle*e))},
		Value: inch(turn), Clause: "judgement: twice for creep", Where: c.worstMark()})
	drop := creep*slip + play
	c.res.Drop, c.res.Turn = unit.Length(drop)*unit.Inch, unit.Length(turn)*unit.Inch
	step.With = []check.Arg{arg("slip", inch(slip)), arg("play", inch(play)), arg("turning", inch(turn))}
	step.Value, step.Limit = inch(drop+turn), check.Limit(inch(tolerable))
	c.engineerLoaded(step, dropTooMuch+"; estimated "+c.say(step.Value)+", tolerable "+c.say(*step.Limit))
}

// slip is the slip of one fastener of a set under load v, in: the sum over its planes, or over the void
// of loose plies when that is more.
func (c *calc) slip(g *group, v float64) float64 {
	sum, loose := 0.0, 0.0
	for _, l := range g.plane {
		s := tilt(l, g.d(), v)
		if l.floating {
			loose = s
			continue
		}
		sum += s
	}
	return math.Max(sum, loose)
}

// tilt is the slip of a stiff dowel on springy wood in two members with a gap between:
//
//	v/(k lm) + v/(k ls) + angle times arm, angle = v arm/(k (lm^3 + ls^3)/12)
//
// with the arm from middle to middle and k such that two members of bedLength in contact have the
// standard's slip modulus.
func tilt(l layer, d, v float64) float64 {
	k := 2 * slipModulus(d) / bedLength
	lm, ls := l.main.thick, l.side.thick
	arm := l.gap + (lm+ls)/2
	angle := v * arm / (k * (lm*lm*lm + ls*ls*ls) / 12)
	return v/(k*lm) + v/(k*ls) + angle*arm
}

// turning is the angle in radians the block turns through at the rim face under a load. Wood is crushed as deep as a
// washer is wide and as twice the foot's bearing is high.
func (c *calc) turning(load float64) float64 {
	f := c.rimFace(c.groups[0])
	p := c.whole(f, load)
	if p.lever == 0 {
		return 0
	}
	g, e := f.g, math.Min(c.m.Rim.Wood.E.PSI(), c.groups[0].parts[1].e)*wetE/acrossE
	stretch := p.bolt * (g.tip + g.parts[0].thick) / (steelE * math.Pi / 4 * g.d() * g.d())
	size := math.Min(3, g.Washer.Size.Inches())
	washer := p.bolt / math.Max(0.1, g.washerArea()) * (math.Min(size, g.parts[0].thick) + math.Min(size,
		g.parts[len(g.parts)-1].thick)) / e
	foot := p.t / (p.depth * c.m.Blocks.Width.Inches()) * math.Min(2*p.depth, g.tip+g.parts[0].thick) / e
	return (stretch + washer + foot) / p.lever
}
