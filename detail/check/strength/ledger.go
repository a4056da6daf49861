package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
)

// section is the ledger's cross-section in inches: b thick, d high at its least.
type section struct{ b, d float64 }

func (c *calc) section() section {
	l := c.m.Ledger
	return section{l.Thickness.Inches(), (l.Top - l.Bottom).Inches()}
}

func (s section) inertia() float64 { return s.b * s.d * s.d * s.d / 12 }
func (s section) modulus() float64 { return s.b * s.d * s.d / 6 }

// net returns inertia and modulus of the section less round holes of diameter hole at the heights
// above the bottom edge.
func (s section) net(heights []float64, hole float64) (inertia, modulus float64) {
	area, moment, second := s.b*s.d, s.b*s.d*s.d/2, s.b*s.d*s.d*s.d/3 // about the bottom edge
	for _, y := range heights {
		a := s.b * hole
		area -= a
		moment -= a * y
		second -= a*y*y + s.b*hole*hole*hole/12
	}
	centroid := moment / area
	inertia = second - area*centroid*centroid
	return inertia, inertia / math.Max(centroid, s.d-centroid)
}

// netAtBolts returns the ledger's inertia and modulus where the bolts pass through it.
func (c *calc) netAtBolts() (inertia, modulus float64) {
	s := c.section()
	if c.a.GrossSection {
		return s.inertia(), s.modulus()
	}
	set := c.ledgerSet()
	var heights []float64
	for _, z := range set.Rows {
		heights = append(heights, (z - c.m.Ledger.Bottom).Inches())
	}
	return s.net(heights, set.hole())
}

// ledgerSet is the fastener set that passes through the ledger.
func (c *calc) ledgerSet() *Set {
	if c.m.Fasteners.Through != nil {
		return c.m.Fasteners.Through
	}
	return c.m.Fasteners.ToBlock
}

// hole returns the diameter of the hole in inches.
func (s *Set) hole() float64 {
	if s.Hole > 0 {
		return s.Hole.Inches()
	}
	return s.Diameter.Inches() + 1./16
}

// ledger adds the checks of the ledger as a beam.
func (c *calc) ledger() {
	c.reactions()
	c.codeSizes()
	c.hanger()
	c.ledgerBending()
	c.ledgerShear()
	c.ledgerShearAtBolts()
	c.ledgerTwist()
	c.ledgerDeflection()
	c.splices()
	c.hangerDepth()
}

// reactions adds what each block carries under the heaviest combination.
func (c *calc) reactions() {
	h, g := c.heaviest(), check.Beam
	sum, worst := 0.0, c.res.Reactions[c.res.Worst]
	for i, r := range c.res.Reactions {
		sum += h.uniform[i]
		c.add(check.Step{ID: fmt.Sprintf("block_reaction_%d", i+1), Group: g, Symbol: "R", Name: "load on a block",
			Value: r.Design.Q(),
			With:  []check.Arg{arg("R solved", r.Solved.Q()), arg("R least", r.Least.Q())}, Where: r.Mark, Note: h.name})
	}
	s := c.section()
	c.add(check.Step{ID: "block_spacing", Group: g, Symbol: "s", Name: "greatest spacing of blocks",
		Value: inch(h.bent.widest())})
	c.add(check.Step{ID: "ledger_i", Group: g, Symbol: "I", Name: "ledger inertia", Formula: "b d^3/12",
		Value: inertia(s.inertia())})
	c.add(check.Step{ID: "ledger_s", Group: g, Symbol: "S", Name: "ledger section modulus", Formula: "b d^2/6",
		Value: modulus(s.modulus())})
	c.add(check.Step{ID: "sum_reactions", Group: g, Symbol: "sum R", Name: "sum of solved reactions", Value: lb(sum),
		Note: "equals w times the ledger length plus the point loads"})
	c.add(check.Step{ID: "block_reaction_max", Group: g, Symbol: "R", Name: "load on the most loaded block",
		Value: worst.Design.Q(), Where: worst.Mark,
		Clause: "statics; " + choose(c.a.Reaction == Plain, "judgement: the greater of pattern load and 1.25 w s",
			"uniform load"), Note: h.name})
	c.add(check.Step{ID: "reaction_over_wl", Group: g, Symbol: "R/(w s)", Name: "reaction over load of one spacing",
		Value: num(worst.Design.Pounds() / (h.total()*h.bent.widest() + 1e-9)), Where: worst.Mark})
}

// widest is the greatest span between blocks, in.
func (b bent) widest() float64 {
	w := 0.0
	for _, s := range b.spans[1:len(b.at)] {
		w = math.Max(w, s.length)
	}
	return w
}

// hanger compares the load of one joist with the hanger's rating, which is not raised for short loads.
func (c *calc) hanger() {
	s, rating := c.joistSpacing(), c.m.Joists.Hanger.Pounds()
	step := check.Step{ID: "hanger", Group: check.Loads, Symbol: "Rj", Name: "load of one joist on its hanger", Formula: "w s",
		Cap:    c.a.Cap,
		Clause: "the hanger's allowable load as stated; judgement: not raised above CD 1", Where: "every hanger",
		Value: lb(c.heaviest().total() * s)}
	if rating < 1e-3 {
		c.notChecked(step,
			"deck.joists.hanger, the allowable load of one hanger, not stated; it must be at least "+c.say(lb(c.heaviest().total()*s/c.a.Cap)))
		return
	}
	c.worst(func(k solution) check.Step {
		step.Value, step.Limit = lb(k.total()*s), check.Limit(lb(rating*math.Min(1, k.cd)))
		step.With = []check.Arg{arg("w", perFoot(k.total())), arg("s", inch(s)), arg("CD", num(math.Min(1, k.cd)))}
		return step
	})
}

func (c *calc) ledgerWet() bool { return c.m.Ledger.Moisture.Service != Dry }

// ledgerBending checks hogging at the blocks on the net section and sagging between them on the gross.
func (c *calc) ledgerBending() {
	w, s := c.m.Ledger.Wood, c.section()
	_, net := c.netAtBolts()
	step := check.Step{ID: "ledger_fb", Group: check.Beam, Symbol: "fb", Name: "bending stress in the ledger", Cap: c.a.Cap,
		Formula: "max(M block/S net, M span/S) <= Fb CD CM CF Ci", Clause: "NDS 2018 3.3"}
	if lack := missing(given{"bending strength of the ledger", w.Fb.PSI()}, given{"section left by the bolt holes", net}); lack != "" {
		c.notChecked(step, lack)
		return
	}
	h := c.heaviest()
	c.add(check.Step{ID: "ledger_m_neg_max", Group: check.Beam, Symbol: "M block", Name: "greatest hogging moment",
		Value: lbin(-h.hog), Note: h.name})
	c.add(check.Step{ID: "ledger_m_pos_max", Group: check.Beam, Symbol: "M span", Name: "greatest sagging moment",
		Value: lbin(h.sag), Note: h.name})
	c.worst(func(k solution) check.Step {
		at := math.Max(k.support, -k.hog)
		step.Value = psi(math.Max(at/net, k.sag/s.modulus()))
		step.Limit = check.Limit(psi(w.bending(c.ledgerWet()) * k.cd))
		step.With = []check.Arg{arg("M block", lbin(at)), arg("S net", modulus(net)), arg("M span", lbin(k.sag)),
			arg("S", modulus(s.modulus())),
			arg("Fb", w.Fb.Stress()), arg("CF", num(w.sizeFactor())), arg("CD", num(k.cd))}
		return step
	})
}

// ledgerShear checks the full section.
func (c *calc) ledgerShear() {
	w, s := c.m.Ledger.Wood, c.section()
	step := check.Step{ID: "ledger_fv", Group: check.Beam, Symbol: "fv", Name: "shear stress in the ledger", Cap: c.a.Cap,
		Formula: "3V/(2 b d) <= Fv CD CM Ci", Clause: "NDS 2018 3.4.2"}
	if lack := missing(given{"shear strength of the ledger", w.Fv.PSI()}); lack != "" {
		c.notChecked(step, lack)
		return
	}
	h := c.heaviest()
	c.add(check.Step{ID: "ledger_v_max", Group: check.Beam, Symbol: "V", Name: "greatest shear in the ledger",
		Value: lb(h.shear), Note: h.name})
	c.worst(func(k solution) check.Step {
		step.Value, step.Limit = psi(3*k.shear/(2*s.b*s.d)), check.Limit(psi(w.shear(c.ledgerWet())*k.cd))
		step.With = []check.Arg{arg("V", lb(k.shear)), arg("b", inch(s.b)), arg("d", inch(s.d)), arg("CD", num(k.cd))}
		return step
	})
}

// shearAtBolts returns the shear stress of a member of b by d that hangs on dowels, de being the depth
// from the dowel nearest the unloaded edge to the loaded edge. NDS 2018 3.4.3.3: within five depths of
// the end the stress is raised by (d/de)^2.
func shearAtBolts(v, b, d, de, fromEnd float64) float64 {
	fv := 3 * v / (2 * b * de)
	if fromEnd < 5*d {
		fv *= d / de * d / de
	}
	return fv
}

// ledgerShearAtBolts checks the ledger as hung on its bolts: the part above the lowest row carries.
func (c *calc) ledgerShearAtBolts() {
	w, s := c.m.Ledger.Wood, c.section()
	low := math.Inf(1)
	for _, z := range c.ledgerSet().Rows {
		low = math.Min(low, (z - c.m.Ledger.Bottom).Inches())
	}
	de := s.d - low
	step := check.Step{ID: "ledger_fv_connection", Group: check.Beam, Symbol: "fv",
		Name: "shear stress in the ledger at its bolts", Cap: c.a.Cap,
		Formula: "3V/(2 b de) <= Fv CD CM Ci, times (d/de)^2 within 5 d of an end",
		Clause:  "NDS 2018 3.4.3.3 (from memory, confirm)"}
	if lack := missing(given{"shear strength of the ledger", w.Fv.PSI()}, given{"ledger above its lowest bolt row", de}); lack != "" {
		c.notChecked(step, lack)
		return
	}
	c.worst(func(k solution) check.Step {
		most := 0.0
		for i, at := range k.bent.at {
			for _, v := range k.sides[i] {
				if fv := shearAtBolts(v, s.b, s.d, de, c.fromEnd(at)); fv > most*(1+1e-9) {
					most = fv
					step.Where = c.m.Blocks.At[i].Mark
					step.With = []check.Arg{arg("V", lb(v)), arg("b", inch(s.b)), arg("d", inch(s.d)), arg("de", inch(de)),
						arg("CD", num(k.cd))}
				}
			}
		}
		step.Value, step.Limit = psi(most), check.Limit(psi(w.shear(c.ledgerWet())*k.cd))
		return step
	})
}

// fromEnd is the distance of x from the nearest end of a ledger piece, in.
func (c *calc) fromEnd(x float64) float64 {
	d := math.Min(x, c.m.Ledger.Length.Inches()-x)
	for _, s := range c.m.Ledger.Splices {
		d = math.Min(d, math.Abs(x-s.Inches()))
	}
	return d
}

// twistFactor is the torsion constant of a thin rectangle, stress = T/(0.30 b^2 h).
const twistFactor = 0.30

// ledgerTwist adds the stress from the hangers, which pull outside the ledger, to the shear stress.
func (c *calc) ledgerTwist() {
	w, s, j := c.m.Ledger.Wood, c.section(), c.m.Joists
	step := check.Step{ID: "ledger_torsion", Group: check.Beam, Symbol: "fv + t", Name: "shear and twist in the ledger",
		Cap:     c.a.Cap,
		Formula: "V part + w (b/2 + a) l/(0.30 b^2 d) <= Fv CD CM Ci",
		Clause:  "judgement: the standard gives no torsion strength of sawn lumber"}
	if j.Restrained || c.a.NoTorsion {
		step.Name, step.Formula, step.Cap = "twist of the ledger", "", 0
		step.Note = choose(j.Restrained, "left out by assume.torsion", "each joist holds the ledger top and bottom")
		c.add(step)
		return
	}
	if missing(given{"", w.Fv.PSI()}) != "" {
		c.notChecked(step, "shear strength of the ledger not stated")
		return
	}
	c.worst(func(k solution) check.Step {
		arm, length := s.b/2+j.Seat.Inches()/2, k.bent.twistLength()
		torque := k.total() * arm * length
		tau, fv := torque/(twistFactor*s.b*s.b*s.d), 3*k.shear/(2*s.b*s.d)
		step.Value, step.Limit = psi(fv+tau), check.Limit(psi(w.shear(c.ledgerWet())*k.cd))
		step.With = []check.Arg{arg("fv", psi(fv)), arg("w", perFoot(k.total())), arg("b/2 + a", inch(arm)),
			arg("l", inch(length)), arg("T", lbin(torque)), arg("t", psi(tau))}
		return step
	})
}

// twistLength is the length of ledger that turns about one block: half the widest span or an overhang.
func (b bent) twistLength() float64 {
	n := len(b.at)
	return math.Max(b.widest()/2, math.Max(b.spans[0].length, b.spans[n].length))
}

// ledgerDeflection checks the live part and the whole; creep is not added.
func (c *calc) ledgerDeflection() {
	if lack := missing(given{"modulus of elasticity of the ledger", c.m.Ledger.Wood.E.PSI()}); lack != "" {
		c.notChecked(check.Step{ID: "ledger_defl_live", Group: check.Beam, Name: "deflection of the ledger"}, lack)
		return
	}
	type line struct {
		id, name string
		part     float64
		deflection
	}
	lines := []line{
		{"ledger_defl_live", "deflection under live and snow load", 360, c.live.between},
		{"ledger_defl_total", "deflection under all load", 240, c.all.between},
	}
	if c.all.overhang.span > 0 {
		lines = append(lines, line{"overhang_defl_live", "deflection of the overhang under live and snow load", 360, c.live.overhang},
			line{"overhang_defl_total", "deflection of the overhang under all load", 240, c.all.overhang})
	}
	for _, d := range lines {
		c.addLoaded(check.Step{ID: d.id, Group: check.Beam, Symbol: "y", Name: d.name,
			Formula: fmt.Sprintf("greatest for its span <= L/%.0f", d.part),
			With:    []check.Arg{arg("L", inch(d.span)), arg("E' I", num(c.stiffness()))},
			Value:   inch(d.y), Limit: check.Limit(inch(d.span / d.part)), Clause: "IRC 2021 table R301.7",
			Note: join("E' I in lb in2; the span of an overhang is twice its length; no creep", d.under)})
	}
}

// hangerDepth checks that the hangers do not hang the load on the lower half of the ledger only.
func (c *calc) hangerDepth() {
	s := check.Step{ID: "hanger_depth", Group: check.Beam, Name: "hangers fasten over the height of the ledger",
		Verdict: check.OK,
		Clause:  "NDS 2018 3.8.2; judgement", Where: "every hanger"}
	if c.m.Joists.HangerLower {
		s.Verdict, s.Reason = check.Fails,
			"hangers fastened only in the lower half hang their load below mid-height and split the ledger; use full-depth hangers or screws across the grain"
	}
	c.add(s)
}
