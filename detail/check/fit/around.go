package fit

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// doors checks the step down to the deck, and that water cannot stand against the door.
func (c *fitter) doors() {
	s, f := c.a.Spec, c.a.Frame
	for i, d := range s.Doors {
		id := fmt.Sprintf("door_%d", i+1)
		drop := d.Threshold.MM() - f.DeckTop
		limit, clause := 7.75*25.4, "IRC R311.3.1 (from memory, confirm): 7 3/4 in where the door does not swing over the deck"
		if d.Swing == "out" {
			limit, clause = 1.5*25.4, "IRC R311.3.1 (from memory, confirm): 1 1/2 in where the door swings over the deck"
		}
		c.atMost(check.Step{ID: id + "_step", Group: check.Fit, Symbol: "h", Name: "step from threshold to deck", Formula: "z threshold - z deck", Clause: clause, Where: fmt.Sprintf("door %d", i+1),
			Reason: fmt.Sprintf("step of %s; at most %s", c.text(drop), c.text(limit))}, drop, limit)
		below := math.Min(0, d.Threshold.MM()) - f.DeckTop // to the floor, or to a sill below it
		c.atLeast(check.Step{ID: id + "_water", Group: check.Water, Symbol: "h", Name: "deck below floor and sill at the door", Formula: "lesser of z floor and z threshold - z deck", Clause: "judgement: 1 in (25 mm) least, snow and splash kept off the sill",
			Where: fmt.Sprintf("door %d", i+1), Reason: fmt.Sprintf("water and step conflict: the deck stands %s below the lower of floor and sill (negative: above it); the threshold stands %s above the floor (negative: below)", c.text(below), c.text(d.Threshold.MM())),
			Fix: "deck.below_floor: more"}, below, c.round(1, 25))
	}
}

// ground checks how far the lowest wood of the attachment stays off the ground.
func (c *fitter) ground() {
	s, f := c.a.Spec, c.a.Frame
	g := s.Foundation.GradeHigh
	if g == nil {
		g = s.Foundation.Grade
	}
	if s.Foundation.Kind == "wall" {
		return
	}
	if g == nil {
		c.r.Add(check.Step{ID: "grade_clearance", Group: check.Fit, Name: "ground to the underside of block and ledger", Verdict: check.NotChecked, Where: "highest ground", Clause: "project: foundation.grade", Reason: "height of the ground not stated"})
		return
	}
	clear := math.Min(f.BlockBottom, f.LedgerBottom) - g.MM()
	step := check.Step{ID: "grade_clearance", Group: check.Fit, Symbol: "h", Name: "ground to the underside of block and ledger", Formula: "z foot - z ground", Where: "highest ground",
		Clause: "IRC R317.1 (from memory, confirm): 8 in, wood near the ground; R318 where termites are likely", Value: length(clear), Limit: check.Limit(length(c.round(8, 200))), Sense: check.AtLeast}
	if clear < c.round(8, 200)-1e-6 {
		step.Verdict = check.Engineer
		step.Reason = fmt.Sprintf("%s between ground and wood (termite hazard stated: %s): inspection gap and treatment need a decision", c.text(clear), s.Site.Termites)
		step.Fix = "lower the ground, or raise the deck"
	}
	c.r.Add(step)
}

// flashing checks F1: which layer laps over it, its fall, its reach and its metal.
func (c *fitter) flashing() {
	s, f := c.a.Spec, c.a.Frame
	w := s.Water.Flashing
	upper := "cladding over F1"
	if w.Lap == "wrb" {
		upper = "water barrier over F1"
	}
	c.holds(check.Step{ID: "flashing_lap", Group: check.Water, Name: "upper layer laps over the flashing", Clause: "IRC R703.4: shingle fashion", Where: upper,
		Reason: "reversed lap: F1 stands outside the cladding, water behind the cladding runs behind F1; pair F1 / cladding", Fix: "water.flashing.lap: cladding"}, w.Lap != "outside")
	slope := 0.0
	if d := f.LedgerFront - f.LedgerBack; d > 0 {
		slope = (f.LedgerTop - f.LedgerTopFront) / d
	}
	c.fall("flashing_fall", "fall of the flashing over the ledger", slope, "ledger.top_slope: 1:8", "flat ledger top: water stands on the flashing")
	c.fall("block_top_fall", "fall of the block top under its wrap", float64(s.Blocks.TopSlope), "blocks.top_slope: 1:8", "flat block top: water stands on the wrap")
	path := c.a.FlashingPath()
	reach := path.V[3].X - f.LedgerFront
	c.atLeast(check.Step{ID: "flashing_reach", Group: check.Water, Symbol: "r", Name: "drip of the flashing beyond the ledger face", Formula: "y drip - y face", Clause: "common practice, no source", Where: "F1",
		Reason: fmt.Sprintf("the drip ends %s behind the face", c.text(-reach)), Fix: fmt.Sprintf("water.flashing.out: %s", c.text(math.Ceil((w.Out.MM()-reach+3)/1.5875)*1.5875))}, reach, 0)
	c.atLeast(check.Step{ID: "flashing_upstand", Group: check.Water, Symbol: "u", Name: "upstand of the flashing", Formula: "leg behind the upper layer", Clause: "NBC 9.27.3.8 (from memory, confirm): 50 mm", Where: "F1",
		Reason: fmt.Sprintf("upstand %s where it is least (under a door: up to its sill)", c.text(c.a.Upstand()))}, c.a.Upstand(), c.round(2, 50))
	c.atLeast(check.Step{ID: "flashing_metal", Group: check.Water, Symbol: "t", Name: "thickness of the flashing", Formula: "sheet", Clause: "IRC R507.2.4: 0.019 in", Where: "F1",
		Reason: fmt.Sprintf("sheet of %s", c.fine(w.Thickness.MM()))}, w.Thickness.MM(), c.round(0.019, 0.48))
	c.atLeast(check.Step{ID: "cladding_clearance", Group: check.Water, Symbol: "a", Name: "cladding clear of the flashing below it", Formula: "wall.cladding.above_flashing", Clause: "common practice, no source: 1/4 in", Where: "above F1",
		Reason: fmt.Sprintf("%s lets the cladding draw water", c.text(s.Wall.Cladding.AboveFlash.MM()))}, s.Wall.Cladding.AboveFlash.MM(), c.round(0.25, 6))
	c.atLeast(check.Step{ID: "decking_gap", Group: check.Water, Symbol: "a", Name: "decking clear of the cladding", Formula: "deck.decking_gap", Clause: "common practice, no source: 1/4 in", Where: "first board",
		Reason: fmt.Sprintf("%s holds water and leaves", c.text(s.Deck.DeckGap.MM()))}, s.Deck.DeckGap.MM(), c.round(0.25, 6))
}

// fall checks a slope against 6 %.
func (c *fitter) fall(id, name string, v float64, fix, why string) {
	step := check.Step{ID: id, Group: check.Water, Symbol: "i", Name: name, Formula: "rise / run", Value: unit.Percent(v).Q(), Limit: check.Limit(unit.Percent(0.06).Q()), Sense: check.AtLeast,
		Clause: "NBC 9.27.3.8 (from memory, confirm): 6 %", Where: "all blocks"}
	if v < 0.06-1e-9 {
		step.Reason, step.Fix = fmt.Sprintf("%s: %.1f %%, at least 6 %%", why, v*100), fix
	}
	c.r.Add(step)
}

// membrane checks the laps of the patch behind each block.
func (c *fitter) membrane() {
	s := c.a.Spec
	p := s.Water.Patch
	lap, side, foot, turn := math.Inf(1), (p.Width-s.Blocks.Width).MM()/2, math.Inf(1), s.Water.WrapLap.MM()
	for i, b := range c.a.Blocks {
		box := c.a.PatchBox(i)
		if box.Empty() {
			lap, side, foot = 0, 0, 0
			break
		}
		lap, foot = math.Min(lap, box.Max.Y-b.Box.Max.Z), math.Min(foot, b.Box.Min.Z-box.Min.Y)
	}
	c.atLeast(check.Step{ID: "patch_lap", Group: check.Water, Symbol: "l", Name: "water barrier over the patch, above the block", Formula: "z patch - z block top", Clause: "IRC R703.2: 2 in horizontal lap", Where: "barrier over M1",
		Reason: fmt.Sprintf("lap of %s", c.text(lap)), Fix: fmt.Sprintf("water.patch.height: %s", c.text(s.Blocks.Height.MM()+2*50.8))}, lap, c.round(2, 50))
	c.atLeast(check.Step{ID: "patch_foot", Group: check.Water, Symbol: "l", Name: "patch over the water barrier, below the block", Formula: "z block foot - z patch", Clause: "IRC R703.2: 2 in horizontal lap", Where: "M1 over the barrier",
		Reason: fmt.Sprintf("lap of %s", c.text(foot)), Fix: fmt.Sprintf("water.patch.height: %s", c.text(s.Blocks.Height.MM()+2*50.8))}, foot, c.round(2, 50))
	c.atLeast(check.Step{ID: "patch_side", Group: check.Water, Symbol: "l", Name: "patch past the sides of the block", Formula: "(patch - block) / 2", Clause: "judgement: 2 in (50 mm), as for a horizontal lap", Where: "M1",
		Reason: fmt.Sprintf("lap of %s", c.text(side)), Fix: fmt.Sprintf("water.patch.width: %s", c.text(s.Blocks.Width.MM()+2*50.8))}, side, c.round(2, 50))
	c.atLeast(check.Step{ID: "wrap_turn_up", Group: check.Water, Symbol: "l", Name: "wrap turned up the wall under the barrier", Formula: "water.wrap_lap", Clause: "IRC R703.2: 2 in horizontal lap", Where: "barrier over M2",
		Reason: fmt.Sprintf("turn-up of %s", c.text(turn)), Fix: fmt.Sprintf("water.wrap_lap: %s", c.text(50.8))}, turn, c.round(2, 50))
	c.holds(check.Step{ID: "patch_order", Group: check.Water, Name: "top edge of the patch under the barrier above", Clause: "IRC R703.2: upper over lower", Where: "barrier over M1",
		Reason: "reversed lap: the patch laps over the barrier above it; pair M1 / water barrier", Fix: "water.patch.under: yes"}, p.Under)
}

// open checks that the gap behind the ledger has a way out at its top: into the cavity of the wall
// above, past a flashing that starts at the cladding.
func (c *fitter) open() {
	f, lap := c.a.Frame, c.a.Spec.Water.Flashing.Lap
	reason := "no air path: cannot dry or be inspected; the wall above has no cavity that the gap could open into"
	fix := "a layer of role cavity behind the cladding"
	switch {
	case f.Gap() <= 0:
		reason, fix = "no air path: cannot dry or be inspected; the ledger stands in the insulation and leaves no gap", fmt.Sprintf("a stand-off of %s or more", c.text(f.InsulOut+c.a.Spec.Water.GapMin.MM()))
	case f.HasCavity:
		reason = "no air path: cannot dry or be inspected; F1 runs in to the water barrier and closes the cavity over the gap"
		fix = "water.flashing.lap: cladding"
	}
	c.holds(check.Step{ID: "gap_open_top", Group: check.Water, Name: "gap opens at the top into the cavity above", Clause: "IRC R703.1 drained and ventilated cavity; judgement: open at top and foot", Where: "over F1",
		Reason: reason, Fix: fix}, f.HasCavity && lap != "wrb" && f.Gap() > 0)
	c.holds(check.Step{ID: "gap_open_foot", Group: check.Water, Name: "gap opens at its foot", Clause: "IRC R703.1 drained and ventilated cavity; judgement: open at top and foot", Where: "under the ledger",
		Reason: "no air path: cannot dry or be inspected; the cladding below runs up to the ledger", Fix: "wall.cladding.below_ledger: 1/2 in (12 mm) or more"},
		c.a.Spec.Wall.Cladding.BelowLedger.MM() >= c.round(0.375, 10)-1e-6)
}

// air checks how much of the ledger's length the blocks wall up, and that the gap is deep enough.
func (c *fitter) air() {
	s := c.a.Spec
	blocked := 0.0
	free := 0.0
	for _, sp := range c.a.Between() {
		free += sp[1] - sp[0]
	}
	if l := s.Ledger.Length.MM(); l > 0 {
		blocked = 1 - free/l
	}
	step := check.Step{ID: "gap_blocked_share", Group: check.Water, Symbol: "p", Name: "share of the gap's length that blocks fill", Formula: "sum of block widths / ledger", Value: unit.Percent(blocked).Q(), Limit: check.Limit(unit.Percent(0.5).Q()),
		Clause: "judgement: half the length open", Where: "all blocks"}
	if blocked > 0.5 {
		step.Reason = fmt.Sprintf("air path blocked: %.0f %% of the length is wood", blocked*100)
		step.Fix = "narrower blocks, or fewer"
	}
	c.r.Add(step)
	g := c.clearGap()
	holds := fmt.Sprintf("%s holds water between its faces", c.text(g))
	if g <= 0 {
		holds = "there is no gap to drain"
	}
	c.atLeast(check.Step{ID: "gap_capillary", Group: check.Water, Symbol: "g", Name: "gap drains freely", Formula: "stand-off - insulation", Clause: "IRC R703.1 drained cavity, 3/8 in; NBC capillary break 10 mm (from memory, confirm)", Where: "between blocks",
		Reason: holds}, g, c.round(0.375, 10))
	if s.Water.Screen {
		c.atLeast(check.Step{ID: "gap_screen", Group: check.Water, Symbol: "g", Name: "open depth of the gap through its screen", Formula: "gap x free share", Where: "under the ledger",
			With:   []check.Arg{{Symbol: "gap", Value: length(g)}, {Symbol: "free share", Value: s.Water.ScreenFree.Q()}},
			Clause: "judgement: as much as a gap must have to drain, 3/8 in (10 mm)", Reason: "the screen closes the gap's foot", Fix: "water.screen_free: a coarser mesh, or a deeper gap"}, g*float64(s.Water.ScreenFree), c.round(0.375, 10))
	}
}
