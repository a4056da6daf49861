package strength

import (
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// face is one joint the block can turn at, cut free: the load stands arm outside it, the top bolts pull
// and the foot pushes.
//
//	T <--|            T z = C z = M = R e
//	     |
//	   z |---- e ----| R
//	     |           v
//	C -->|
//
// Each joint is its own free body, so sets of different fasteners each take the whole load.
type face struct {
	id, name string  // id is the suffix of step ids: "" at the rim
	arm      float64 // e, in
	g        *group  // fasteners that pull
	foot     float64 // z of the foot, in
	height   float64 // over which the two sides touch, in
	limit    float64 // bearing strength at the foot, psi
	of       string  // what it belongs to
	lack     string  // why limit is not known
	spacers  bool    // nothing touches but spacers on the bolts
}

// suffix is what the ids of the steps about its fasteners end in.
func (f face) suffix() string {
	if f.g.id != "" {
		return f.g.id
	}
	return f.id
}

// pull is the couple at a face for one block load.
type pull struct {
	moment, lever float64 // lb-in, in
	t             float64 // pull of all rows, and push at the foot, lb
	bolt          float64 // pull on one bolt of the top row
	depth, peak   float64 // foot bearing, in and psi
}

// offsets returns the distances in inches from the rim face to the ledger's inner face and to the load
// line.
func (c *calc) offsets() (standoff, loadLine float64) {
	b := c.m.Blocks
	standoff = (b.Pad.Thickness + b.FrontGap).Inches()
	for _, p := range b.Plies {
		standoff += p.Thickness.Inches()
	}
	return standoff, standoff + c.m.Sheathing.Thickness.Inches() + c.outside()
}

// outside is the distance from the ledger's inner face to the load line, in.
func (c *calc) outside() float64 {
	return c.m.Ledger.Thickness.Inches() + c.m.Joists.Seat.Inches()/2
}

// faces lists the joints to cut.
func (c *calc) faces() []face {
	rim := c.groups[0]
	out := []face{c.rimFace(rim)}
	if b := c.m.Blocks; b.Pad.Thickness > 0 && b.Pad.Foot {
		out = append(out, c.padFace(rim))
	}
	if len(c.groups) > 1 || c.m.Blocks.FrontGap > 0 {
		out = append(out, c.ledgerFace(c.groups[len(c.groups)-1]))
	}
	return out
}

func (c *calc) blockWet() bool { return c.m.Blocks.Moisture.Service != Dry }

// weakest keeps the least bearing strength of a joint; one not stated makes the joint unknown.
func (c *calc) weakest(f *face, name string, strength float64) {
	switch {
	case strength < 1e-3:
		f.lack = c.unlisted(name, "bearing strength across the grain of the "+name+" not stated")
	case f.of == "" || strength < f.limit:
		f.limit, f.of = strength, name
	}
}

func (c *calc) rimFace(g *group) face {
	b := c.m.Blocks
	_, e := c.offsets()
	f := face{name: "rim face", arm: e, g: g, foot: b.Bottom.Inches(), height: (b.Top - b.Bottom).Inches()}
	c.weakest(&f, "block", across(b.Plies[0].FcPerp, c.blockWet()))
	c.weakest(&f, "rim", across(c.m.Rim.Wood.FcPerp, c.blockWet()))
	if s := c.m.Sheathing; s.Thickness > 0 && s.Structural {
		c.weakest(&f, "sheathing", c.sheathingBearing())
	}
	if b.Bottom < c.m.Rim.Bottom {
		c.weakest(&f, "plate below the rim", across(c.m.Plate.FcPerp, c.blockWet()))
	}
	return f
}

// sheathingBearing is the strength of the sheathing across its face, wet where the block is, psi.
func (c *calc) sheathingBearing() float64 {
	dry := c.m.Sheathing.FcPerp.PSI()
	if dry < 1e-3 {
		dry = panelBearing
	}
	return dry * when(c.blockWet(), panelBearingWet/panelBearing)
}

// padFace cuts at the inner side of the pad; the spacer at its foot is of the block's wood.
func (c *calc) padFace(g *group) face {
	b := c.m.Blocks
	arm := (b.Pad.Thickness + b.FrontGap).Inches() + c.outside()
	for i := b.Pad.After; i >= 0 && i < len(b.Plies); i++ {
		arm += b.Plies[i].Thickness.Inches()
	}
	f := face{id: "_pad", name: "pad", arm: arm, g: g, foot: b.Bottom.Inches(), height: (b.Top - b.Bottom).Inches()}
	c.weakest(&f, "foot spacer", across(b.Wood.FcPerp, c.blockWet()))
	return f
}

func (c *calc) ledgerFace(g *group) face {
	b, l := c.m.Blocks, c.m.Ledger
	foot := math.Max(b.Bottom.Inches(), l.Bottom.Inches())
	f := face{id: "_ledger", name: "ledger face", arm: b.FrontGap.Inches() + c.outside(), g: g, foot: foot,
		height: math.Min(b.Top.Inches(), l.Top.Inches()) - foot, spacers: b.FrontGap > 0}
	c.weakest(&f, "block", across(b.Plies[len(b.Plies)-1].FcPerp, c.blockWet()))
	c.weakest(&f, "ledger", across(l.Wood.FcPerp, c.ledgerWet()))
	return f
}

// couple is the free body of a face under one duty. A lever arm of nothing means no row can pull.
func (c *calc) couple(f face, d duty) pull { return c.coupleOf(f, d.v, len(d.cols)) }

// whole is the free body of a face under the whole load of a block.
func (c *calc) whole(f face, load float64) pull { return c.coupleOf(f, load, len(f.g.cols)) }

// coupleOf is the free body under a load whose pull so many columns share.
func (c *calc) coupleOf(f face, load float64, columns int) pull {
	p := pull{moment: load * f.arm, depth: float64(c.a.FootDepth) * f.height}
	levers := c.levers(f, p.depth)
	if len(levers) == 0 {
		return p
	}
	sum, squares := 0.0, 0.0
	for _, z := range levers {
		sum += z
		squares += z * z
	}
	pulling := float64(len(levers))
	p.lever, p.bolt = sum/pulling, 1/pulling
	if c.a.Rows == ByStiffness || f.spacers {
		p.lever, p.bolt = squares/sum, levers[0]/sum
	}
	columns = max(1, columns)
	p.t = p.moment / p.lever
	p.bolt *= p.t / float64(columns)
	p.peak = 2 * p.t / (p.depth * c.m.Blocks.Width.Inches())
	if f.spacers {
		p.peak = p.t / math.Max(1e-9, float64(columns)*f.g.washerArea())
	}
	return p
}

// pulls tells whether any row can pull at a face.
func (c *calc) pulls(f face) bool { return c.whole(f, 1).lever > 0 }

// levers returns the lever arm of every row that pulls, top row first, in inches.
func (c *calc) levers(f face, depth float64) []float64 {
	if f.spacers {
		return leversOver(f.g.rows[:len(f.g.rows)-1], f.g.low())
	}
	arm := c.armOver(f, depth)
	var out []float64
	for _, z := range f.g.rows {
		lever := arm - (f.g.top() - z)
		if lever > 0.1 && (c.a.Rows == ByStiffness || z-f.foot >= c.topThird(f)-1e-6) {
			out = append(out, lever)
		}
	}
	return out
}

// armOver is the height of the top row over the force at the foot, in.
func (c *calc) armOver(f face, depth float64) float64 {
	top := f.g.top() - f.foot
	arm := top - depth/3
	if c.a.LeverArm == Audited {
		arm = math.Min(arm, 0.75*top)
	}
	return arm
}

// leversOver returns the heights of rows over a pivot.
func leversOver(rows []float64, pivot float64) []float64 {
	var out []float64
	for _, z := range rows {
		if z-pivot > 0.1 {
			out = append(out, z-pivot)
		}
	}
	return out
}

// topThird is the height over the foot from which a row counts as in the top third.
func (c *calc) topThird(f face) float64 {
	height := f.height
	if b := c.m.Blocks; f.id != "_ledger" && b.TopAtWall > b.Top {
		height = (b.TopAtWall - b.Bottom).Inches()
	}
	return height * 2 / 3
}

// block adds the checks of the eccentric block.
func (c *calc) block() {
	standoff, e := c.offsets()
	g, s := check.Block, c.m.Sheathing.Thickness.Inches()
	c.res.Eccentricity, c.res.LoadLine = unit.Length(e)*unit.Inch, unit.Length(e-s)*unit.Inch
	c.add(check.Step{ID: "standoff_sheathing_to_ledger", Group: g, Name: "sheathing to ledger", Value: inch(standoff)})
	c.add(check.Step{ID: "eccentricity_rim_face_to_ledger_front", Group: g, Symbol: "e", Name: "rim face to load line",
		Formula: "sheathing + standoff + ledger + a",
		With: []check.Arg{arg("sheathing", inch(s)), arg("standoff", inch(standoff)), arg("ledger", c.m.Ledger.Thickness.Q()),
			arg("a", (c.m.Joists.Seat / 2).Q())}, Value: inch(e),
		Note: "a is half the hanger seat"})
	for _, f := range c.faces() {
		c.turn(f)
	}
	c.footStands()
	c.pad()
	c.blockShear()
	c.onGrain()
	c.movement()
}

// turn adds the couple at one face and everything that resists it.
func (c *calc) turn(f face) {
	h := c.heaviest()
	p := c.whole(f, h.most())
	g, mark := check.Block, c.worstMark()
	id := func(rim, other string) string {
		if f.id == "" {
			return rim
		}
		return other + f.id
	}
	c.add(check.Step{ID: id("moment_at_rim_face", "moment_at"), Group: g, Symbol: "M", Name: "moment at the " + f.name,
		Formula: "R e",
		With:    []check.Arg{arg("R", lb(h.most())), arg("e", inch(f.arm))}, Value: lbin(p.moment), Where: mark, Note: h.name})
	if p.lever == 0 {
		c.noRowPulls(f)
		return
	}
	c.add(check.Step{ID: "foot_bearing_depth" + f.id, Group: g, Symbol: "c", Name: "depth of bearing at the foot",
		Formula: "share h", With: []check.Arg{arg("h", inch(f.height))}, Value: inch(p.depth), Clause: "judgement"})
	c.add(check.Step{ID: "lever_arm" + f.id, Group: g, Symbol: "z", Name: "lever arm at the " + f.name,
		Formula: choose(c.a.LeverArm == Plain, "min(y - c/3, 0.75 y)", "y - c/3"),
		With:    []check.Arg{arg("y", inch(f.g.top()-f.foot)), arg("c", inch(p.depth))}, Value: inch(p.lever),
		Clause: "judgement", Note: c.armNote(f)})
	c.add(check.Step{ID: "top_row_tension" + f.id, Group: g, Symbol: "T", Name: "pull of the top bolts at the " + f.name,
		Formula: "M/z",
		With:    []check.Arg{arg("M", lbin(p.moment)), arg("z", inch(p.lever))}, Value: lb(p.t), Where: mark,
		Note: h.name + "; the foot pushes as much"})
	c.add(check.Step{ID: "tension_per_top_bolt" + f.id, Group: g, Symbol: "T1", Name: "pull on one top bolt",
		With: []check.Arg{arg("T", lb(p.t)), arg("columns", unit.Number(len(f.g.cols)))}, Value: lb(p.bolt), Where: mark})
	if f.id == "" {
		c.res.Moment, c.res.LeverArm = unit.Moment(p.moment)*unit.PoundInch, unit.Length(p.lever)*unit.Inch
		c.res.Tension, c.res.PerBolt, c.res.RequiredTie = pounds(p.t), pounds(p.bolt), pounds(p.t/c.a.Cap)
	}
	c.footStress(f)
	if f.id != "_pad" {
		c.held(f)
	}
}

// armNote says how the two pictures of the foot go together.
func (c *calc) armNote(f face) string {
	switch {
	case f.spacers:
		return "from the pulling rows to the lowest bolts, whose spacers push"
	case c.a.LeverArm == Plain:
		return "one picture of the foot for pull and bearing; the lesser arm of 0.75 y is left out by assume.lever_arm"
	}
	return "two pictures of the foot that do not agree, z = 0.75 y (where that is less) and bearing over c = share h: the shorter arm raises T, and all of that T presses on c alone; both err on the safe side"
}

// noRowPulls says what is left open when nothing holds a block back at a face.
func (c *calc) noRowPulls(f face) {
	c.add(check.Step{ID: "lever_arm" + f.id, Group: check.Block, Symbol: "z", Name: "lever arm at the " + f.name, Value: inch(0),
		Where: "all blocks", Verdict: check.Fails, Clause: "statics",
		Reason: "no bolt row stands high enough to hold the block back at the " + f.name +
			"; put one in the top third of the block, " + c.say(inch(c.topThird(f))) + " or more over its foot"})
	open := []check.Step{{ID: "top_row_tension" + f.id, Name: "pull of the top bolts at the " + f.name, Symbol: "T"},
		{ID: "foot_peak_stress" + f.id, Name: "bearing at the foot, " + f.name}}
	if f.id != "_pad" {
		open = append(open, check.Step{ID: "linear_interaction_top_bolt" + f.suffix(), Name: "shear and pull together on a top bolt"})
	}
	for _, s := range open {
		s.Group, s.Where = check.Block, "all blocks"
		c.notChecked(s, noPull)
	}
}

// noPull is why everything that rests on the pull behind the rim is left open.
const noPull = "no bolt row can pull, so nothing balances the couple of the block (lever_arm)"
