package air

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// leastGap is the depth that water does not bridge, as each system of units states it, mm.
func leastGap(s *spec.Spec) float64 { return s.Pick(0.375*25.4, 10) }

const drains = "IRC R703.1 drained cavity, 3/8 in; NBC capillary break 10 mm (from memory, confirm)"

// gap checks the open space behind the ledger: not under the gap asked for nor the cavity, deep enough to drain, and
// not walled up by blocks.
func (c *checker) gap() {
	s, f, g := c.a.Spec, c.a.Frame, c.path.Gap
	need, why := c.needed()
	face := f.LedgerBack - g
	reason := fmt.Sprintf("gap %s is less than the %s %s: a stand-off of %s is needed", c.text(g), c.text(need), why, c.text(face+need))
	switch {
	case f.Gap() < 0:
		reason = fmt.Sprintf("NOT BUILDABLE: the ledger is buried %s in the insulation; a stand-off of at least %s is needed for a gap of %s", c.text(-g), c.text(face+need), c.text(need))
	case f.Gap()-g > touch:
		reason = fmt.Sprintf("%s runs on behind the ledger and leaves %s of the %s gap", c.path.Wall, c.text(math.Max(0, g)), c.text(f.Gap()))
	}
	c.r.Add(check.Step{ID: "gap_clear", Group: check.Water, Symbol: "g", Name: "open gap behind the ledger", Formula: "stand-off - what stands in it",
		With:   []check.Arg{{Symbol: "stand-off", Value: length(f.LedgerBack)}, {Symbol: "in it", Value: length(face)}},
		Clause: "project: water.gap_min, and not under the cavity", Where: "between blocks", Reason: reason,
		Fix: fmt.Sprintf("a stand-off of %s (blocks.plies, blocks.pad or blocks.spacer)", c.text(face+need))}.NotUnder(length(g), length(need)))
	if s.Wall.Cladding.BehindLedger {
		deep := f.CladOut - f.InsulOut
		c.r.Add(check.Step{ID: "cladding_behind_ledger", Group: check.Water, Symbol: "d", Name: "cavity and cladding run on behind the ledger", Formula: "cavity + cladding",
			Where: "between blocks", Clause: "geometry", Reason: fmt.Sprintf("cladding %s deep does not fit in the %s gap", c.text(deep), c.text(f.Gap())),
			Fix: "wall.cladding.behind_ledger: no"}.NotOver(length(deep), length(f.Gap())))
	}
	c.r.Add(check.Step{ID: "gap_capillary", Group: check.Water, Symbol: "g", Name: "gap drains freely", Formula: "stand-off - what stands in it", Clause: drains, Where: "between blocks",
		Reason: orNoPath(g, "%s holds water between its faces", c.text(g)), Note: c.closedNote(g), Fix: fmt.Sprintf("a stand-off of %s or more", c.text(face+c.least()))}.NotUnder(length(g), length(c.least())))
	c.r.Add(c.blocked())
}

// needed is the gap asked for, or the cavity of the wall where that is deeper.
func (c *checker) needed() (need float64, why string) {
	need, cavity := c.a.Spec.Water.GapMin.MM(), 0.0
	for _, l := range c.a.Spec.Wall.Layers {
		if l.Role == "cavity" {
			cavity += l.Thickness.MM()
		}
	}
	if cavity >= need {
		return cavity, "cavity of the wall"
	}
	return need, "gap asked for"
}

// closedNote says what closes the path, where a throat leaves nothing open.
func (c *checker) closedNote(open float64) string {
	if open > touch || c.path.Closed == "" {
		return ""
	}
	return c.path.Closed
}

// blocked checks how much of the ledger's length the blocks wall up.
func (c *checker) blocked() check.Step {
	step := check.Step{ID: "gap_blocked_share", Group: check.Water, Symbol: "p", Name: "share of the gap's length that blocks fill", Formula: "sum of block widths / ledger",
		Clause: "judgement: half the length open", Where: "all blocks", Reason: fmt.Sprintf("air path blocked: %.0f %% of the length is wood, more than 50 %%", c.path.Blocked*100), Fix: c.narrower()}
	return step.NotOver(unit.Percent(c.path.Blocked).Q(), unit.Percent(0.5).Q())
}

// narrower is the width at which as many blocks fill half the length, or fewer of them.
func (c *checker) narrower() string {
	if c.path.Blocked <= 0 {
		return ""
	}
	return "blocks.width: at most " + c.text(math.Floor(c.a.Spec.Blocks.Width.MM()*0.5/c.path.Blocked/1.5875)*1.5875) + " for as many blocks, or fewer blocks"
}

// ends checks the openings of the gap: at its foot under the ledger, through the screen, and at its top past F1 into
// the cavity of the wall above.
func (c *checker) ends() {
	const clause = "IRC R703.1 drained and ventilated cavity; judgement: open at top and foot, 3/8 in (10 mm)"
	p := c.path
	c.r.Add(check.Step{ID: "gap_open_top", Group: check.Water, Symbol: "o", Name: "gap opens at the top into the cavity above", Formula: "F1 and cladding - wall", Clause: clause, Where: "over F1",
		Reason: noPath, Note: c.closedNote(min(p.Gap, p.Head)), Fix: c.openTop()}.NotUnder(length(min(p.Gap, p.Head)), length(c.least())))
	c.r.Add(check.Step{ID: "gap_open_foot", Group: check.Water, Symbol: "o", Name: "gap opens at its foot", Formula: "z ledger - z cladding below", Clause: clause, Where: "under the ledger",
		Reason: noPath, Note: c.closedNote(p.Foot), Fix: "wall.cladding.below_ledger: " + either(c.sys == unit.IP, "1/2in", "12mm") + " or more"}.NotUnder(length(p.Foot), length(c.least())))
	if c.a.Spec.Water.Screen {
		net := p.Gap * p.Screen
		c.r.Add(check.Step{ID: "gap_screen", Group: check.Water, Symbol: "g", Name: "open depth of the gap through its screen", Formula: "gap x free share", Where: "SC1, under the ledger",
			With:   []check.Arg{{Symbol: "gap", Value: length(p.Gap)}, {Symbol: "free share", Value: c.a.Spec.Water.ScreenFree.Q()}},
			Clause: "judgement: as much as a gap must have to drain, 3/8 in (10 mm)", Reason: orNoPath(net, "the screen closes the gap's foot to %s; at least %s", c.text(net), c.text(c.least())), Note: c.closedNote(net),
			Fix: "water.screen_free: a coarser mesh, or a deeper gap"}.NotUnder(length(net), length(c.least())))
	}
	c.r.Add(check.Step{ID: "gap_throat", Group: check.Water, Symbol: "t", Name: "least throat of the air path", Formula: "least of foot, gap through the screen, top", Where: "between blocks",
		With:   []check.Arg{{Symbol: "foot", Value: length(p.Foot)}, {Symbol: "gap", Value: length(p.Gap)}, {Symbol: "screen", Value: unit.Percent(p.Screen).Q()}, {Symbol: "top", Value: length(p.Head)}},
		Clause: "geometry", Value: length(p.Throat()), Note: p.Closed})
}

// openTop is what opens the top of the gap.
func (c *checker) openTop() string {
	s, f := c.a.Spec, c.a.Frame
	switch {
	case f.Gap() <= 0:
		return fmt.Sprintf("a stand-off of %s or more", c.text(f.InsulOut+s.Water.GapMin.MM()))
	case s.Wall.Cladding.BehindLedger:
		return "wall.cladding.behind_ledger: no"
	case s.Water.Flashing.Lap == "wrb" && f.CavityOut-f.InsulOut > touch:
		return "water.flashing.lap: cladding"
	}
	return "a layer of role cavity behind the cladding, outside all insulation"
}

// areas checks the free area at both ends of the gap.
func (c *checker) areas() {
	const clause = "ISO 6946: well ventilated from 1500 mm2 for a metre of length at each end (from memory, confirm)"
	limit := unit.Quantity{V: 1500, Kind: unit.KFreeArea}
	for _, e := range []struct {
		id, name, formula, where string
		area                     unit.Quantity
		with                     []check.Arg
	}{
		{"gap_area_foot", "free area at the foot of the gap", "least of foot and gap through the screen x open share", "under the ledger", c.path.FootArea(), []check.Arg{{Symbol: "foot", Value: length(c.path.Foot)}, {Symbol: "gap", Value: length(c.path.Gap)}, {Symbol: "screen", Value: unit.Percent(c.path.Screen).Q()}}},
		{"gap_area_top", "free area at the top of the gap", "least of top and gap x open share x share between furring", "over F1", c.path.HeadArea(), []check.Arg{{Symbol: "top", Value: length(c.path.Head)}, {Symbol: "furring", Value: unit.Percent(c.path.Strips).Q()}}},
	} {
		c.r.Add(check.Step{ID: e.id, Group: check.Water, Symbol: "A", Name: e.name, Formula: e.formula, Where: e.where, Clause: clause,
			With:   append(e.with, check.Arg{Symbol: "open share", Value: unit.Percent(1 - c.path.Blocked).Q()}),
			Reason: orNoPath(e.area.V/1000, "%s open, %s asked for", e.area.Text(c.sys), limit.Text(c.sys)), Fix: "a deeper gap and cavity, a coarser screen, or narrower blocks"}.NotUnder(e.area, limit))
	}
}

// sills checks the way out where the cavity over F1 ends at the sill of a door.
func (c *checker) sills() {
	p := c.path
	if len(p.Sills) == 0 {
		return
	}
	c.r.Add(check.Step{ID: "gap_under_door", Group: check.Water, Symbol: "o", Name: "cavity over the ledger opens under the sill of the door", Formula: "(z sill - z cladding below) x free share of the screen", Where: "under doors",
		With:   []check.Arg{{Symbol: "z sill - z cladding", Value: length(p.Sill)}, {Symbol: "free share", Value: unit.Percent(p.Screen).Q()}, {Symbol: "gap under doors", Value: length(long(p.Sills))}},
		Clause: "IRC R703.1 drained and ventilated cavity; judgement: open at top and foot, 3/8 in (10 mm)", Reason: orNoPath(p.vent(), "%s open under the sill", c.text(p.vent())),
		Fix: "wall.cladding.below_sill: " + either(c.sys == unit.IP, "3/4in", "20mm") + " or more"}.NotUnder(length(p.vent()), length(c.least())))
}

// cavities checks every cavity of the wall: one that insulation or a board stands outside of is closed all round.
func (c *checker) cavities() {
	layers := c.a.Spec.Wall.Layers
	beyond := false
	for i, l := range layers {
		beyond = beyond || l.Role == "sheathing"
		if l.Role != "cavity" || !beyond || l.Thickness <= 0 {
			continue
		}
		mark := detail.LayerMark(i)
		outside := ""
		for k := i + 1; k < len(layers); k++ {
			if r := layers[k].Role; (r == "insulation" || r == "other") && layers[k].Thickness.MM() > touch {
				outside = detail.LayerMark(k)
			}
		}
		c.r.Add(check.Step{ID: fmt.Sprintf("cavity_path_w%d", i+1), Group: check.Water, Name: "cavity outside all insulation, open to the air", Where: mark,
			Clause: "IRC R703.1 drained and ventilated cavity; judgement: a cavity inside the insulation has no opening", Reason: noPath,
			Note: either(outside == "", "", fmt.Sprintf("%s is closed at top and bottom by what stands outside it, %s", mark, outside)),
			Fix:  "wall.layers: the cavity outside all insulation"}.Holds(outside == ""))
	}
}

func either(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}
