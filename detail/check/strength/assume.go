package strength

import (
	"fmt"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Assume holds the judgements the calculation rests on. The zero value is the conservative reading
// of each; every one is printed with the project-file key that changes it.
type Assume struct {
	LeverArm     Reading      // of the couple's lever arm
	FootDepth    unit.Percent // bearing depth at the foot as a share of the block height; 0 is 25 %
	Reaction     Reading      // of the block reaction
	GrossSection bool         // holes are not taken out of ledger and rim
	NoTorsion    bool         // twist of the ledger by the hangers is not counted
	Cap          float64      // largest strength ratio accepted; 0 is 0.9
	MaxGroup     unit.Length  // greatest spread of bolt rows in wet wood; 0 is 5 in
	Rows         Tension      // which rows take the pull
	PlyCouple    bool         // a loose ply is trusted not to turn
	SupportSlip  unit.Length  // one support higher than the others by this; 0 is 1/16 in
}

// Reading says how far a judgement leans to the safe side.
type Reading int

// Audited is the conservative reading; Plain is the textbook one.
const (
	Audited Reading = iota
	Plain
)

// Tension says which bolt rows take the pull of the couple.
type Tension int

// TopRows: the rows in the top third share the pull. ByStiffness: every row above the foot bearing
// pulls in proportion to its height.
const (
	TopRows Tension = iota
	ByStiffness
)

// filled returns a with its zeros replaced by what they stand for.
func (a Assume) filled() Assume {
	if a.FootDepth == 0 {
		a.FootDepth = 0.25
	}
	if a.Cap == 0 {
		a.Cap = 0.9
	}
	if a.MaxGroup == 0 {
		a.MaxGroup = 5 * unit.Inch
	}
	if a.SupportSlip == 0 {
		a.SupportSlip = unit.Inch / 16
	}
	return a
}

// panelBearing is the strength of plywood or OSB pressed across its face, psi: 360 dry, and 210 wet.
// From memory of the panel association's design values, confirm.
const (
	panelBearing    = 360.0
	panelBearingWet = 210.0
)

// assumptions writes down what the numbers rest on.
func (c *calc) assumptions() {
	c.rep.Assumptions = append(c.judgements(), c.statements()...)
}

// choose returns the text of the reading taken.
func choose(plain bool, audited, other string) string {
	if plain {
		return other
	}
	return audited
}

func (c *calc) judgements() []check.Assumption {
	a, j := c.a, "judgement"
	return []check.Assumption{
		{Key: "assume.lever_arm", Source: j, Text: choose(a.LeverArm == Plain,
			"lever arm of the couple: the lesser of top row to the centre of the foot bearing and 0.75 of the top row's height over the foot",
			"lever arm of the couple: top row to the centre of the foot bearing")},
		{Key: "assume.foot_depth", Source: j,
			Text: fmt.Sprintf("the foot bears over %.0f %% of the block height, stress falling to zero upward",
				100*float64(a.FootDepth))},
		{Key: "assume.reaction", Source: j, Text: choose(a.Reaction == Plain,
			"block reaction: the greatest of the beam with live load on the worst spans, the joists in place, and 1.25 w s (w times spacing/2 plus overhang at the ends), a quarter for fit-up that is not shown to cover slack holes",
			"block reaction: uniform load on all spans of a beam on rigid supports")},
		{Key: "assume.net_section", Source: j, Text: choose(a.GrossSection,
			"bolt holes are taken out of ledger and rim where they bend", "bolt holes are not taken out of ledger and rim")},
		{Key: "assume.torsion", Source: j, Text: c.twistText()},
		{Key: "assume.cap", Source: j,
			Text: fmt.Sprintf("a strength ratio up to %.2f is accepted, because a ledger has no second load path", a.Cap)},
		{Key: "assume.max_group", Source: j,
			Text: "bolt rows in wet wood spread no more than " + a.MaxGroup.Q().Text(c.m.System)},
		{Key: "assume.rows_in_tension", Source: j, Text: choose(a.Rows == ByStiffness,
			"only bolt rows in the top third of the block take the pull",
			"every bolt row above the foot bearing takes pull in proportion to its height")},
		{Key: "assume.ply_couple", Source: j, Text: choose(a.PlyCouple,
			"a part of the block held by nothing but the same bolts is counted as a gap, unless the wood at both its faces is shown to hold its couple (block_couple)",
			"a loose part is trusted not to turn: outside this calculation where block_couple does not show it")},
		{Key: "assume.support_slip", Source: j,
			Text: "fit-up: the loads of the blocks are those of blocks in one line, or 1.25 w s, whichever is more; what a block gets that stands higher by " +
				a.SupportSlip.Q().Text(c.m.System) + " is printed with the give of fasteners and block (support_slip) and not checked"},
	}
}

// twistText says whether twist of the ledger is counted, and why not.
func (c *calc) twistText() string {
	switch {
	case c.m.Joists.Restrained:
		return "no twist of the ledger is counted: the joists hold it top and bottom, as stated"
	case c.a.NoTorsion:
		return "no twist of the ledger is counted, though the joists are not stated to hold it top and bottom (deck.joists.restrained)"
	}
	return "the hangers twist the ledger between blocks"
}

// statements are what the model says or leaves unsaid that the numbers rest on.
func (c *calc) statements() []check.Assumption {
	m, j := c.m, "judgement"
	out := []check.Assumption{
		{Key: "deck.joists.hanger_seat", Source: j,
			Text: "the load line is at half the hanger seat, " + (m.Joists.Seat / 2).Q().Text(m.System) +
				" outside the ledger face"},
		{Key: "ledger.moisture.assembly", Source: "NDS 2018 table 11.3.3",
			Text: "ledger " + m.Ledger.Moisture.Assembly.String() + " when fastened, " + m.Ledger.Moisture.Service.String() +
				" in service; dry means 19 % or less, and must be checked on site"},
		{Key: "blocks.moisture.assembly", Source: "NDS 2018 table 11.3.3",
			Text: "blocks " + m.Blocks.Moisture.Assembly.String() + " when fastened, " + m.Blocks.Moisture.Service.String() +
				" in service; dry means 19 % or less, and must be checked on site"},
		{Key: "floor.rim.moisture", Source: j,
			Text: "rim, backing and plate " + m.Rim.Service.String() + " in service, behind the water barrier"},
		{Key: "loads.snow", Source: j,
			Text: "live load may be absent from any span and half the snow too (ASCE 7-16 7.5); point loads are taken whole in every combination"},
		{Text: "temperature up to 100 F (38 C); no fire-retardant treatment", Source: "NDS 2018 2.3.3"},
		{Text: "the joists hold the ledger sideways, so it does not buckle", Source: "NDS 2018 4.4.1"},
		{Text: "bolt clamping and friction carry nothing", Source: j},
		{Text: "foam gives a bolt no bearing and turns no block", Source: j},
	}
	return append(out, c.unsaid()...)
}

// unsaid are the assumptions only some models need.
func (c *calc) unsaid() []check.Assumption {
	m, j := c.m, "judgement"
	var out []check.Assumption
	out = append(out, c.gravities()...)
	if m.Sheathing.Structural && m.Sheathing.FcPerp == 0 {
		out = append(out, check.Assumption{Source: "from memory, confirm", Text: "sheathing bears across its face " +
			c.say(psi(panelBearing)) + " dry, " + c.say(psi(panelBearingWet)) + " wet"})
	}
	if m.Backing.Kind == CarriedBacking {
		out = append(out, check.Assumption{Key: "floor.backing.kind", Source: j,
			Text: "backing is as deep as the rim, tight, and carried up and down by its own fixings (floor.backing.fixing)"})
	}
	return out
}

// gravities print the specific gravity the dowels bear in, part by part, and where it is from.
func (c *calc) gravities() []check.Assumption {
	band := func(key, name string, engineered, reported bool, g float64) check.Assumption {
		a := check.Assumption{Key: key, Source: "NDS 2018 table 12.3.3A, by species", Text: gravityText(name, g)}
		switch {
		case engineered && reported:
			a.Source = "as stated from the maker's report"
		case engineered:
			a.Text, a.Source = gravityText(name, bandG(g, true, false)), "judgement: the table has none for bolts in it, and no maker's value is stated"
		}
		return a
	}
	m := c.m
	out := []check.Assumption{band("floor.rim.gravity", "rim", m.Rim.Kind != SawnRim, m.Rim.Reported, m.Rim.Wood.G)}
	if c.counted() {
		out = append(out, band("floor.backing.gravity", "backing", m.Backing.Panel, m.Backing.Reported, m.Backing.Wood.G))
	}
	for i, p := range m.Blocks.Plies {
		out = append(out, band("blocks.species", fmt.Sprintf("ply %d", i+1), p.Panel, false, p.G))
	}
	return append(out, band("ledger.species", "ledger", false, false, m.Ledger.Wood.G))
}

func gravityText(name string, g float64) string {
	return fmt.Sprintf("specific gravity for dowels, %s: %.2f", name, g)
}
