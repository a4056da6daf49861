package fit

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/unit"
	"standclear/geom"
)

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
		Reason: fmt.Sprintf("the drip ends %s behind the face of the ledger, and must stand past it", c.text(-reach)), Fix: fmt.Sprintf("water.flashing.out: %s", c.text(c.up(w.Out.MM()-reach+3)))}, reach, 0)
	c.atLeast(check.Step{ID: "flashing_upstand", Group: check.Water, Symbol: "u", Name: "upstand of the flashing", Formula: "leg behind the upper layer", Clause: "NBC 9.27.3.8 (from memory, confirm): 50 mm", Where: "F1",
		Reason: fmt.Sprintf("upstand %s where it is least (under a door: up to its sill); at least %s", c.text(c.a.Upstand()), c.text(c.round(2, 50)))}, c.a.Upstand(), c.round(2, 50))
	c.flashingEdges(path)
	c.atLeast(check.Step{ID: "flashing_metal", Group: check.Water, Symbol: "t", Name: "thickness of the flashing", Formula: "sheet", Clause: "IRC R507.2.4: 0.019 in", Where: "F1",
		Reason: fmt.Sprintf("sheet of %s; at least %s", c.metal(w.Thickness.MM()), c.metal(c.round(0.019, 0.48)))}, w.Thickness.MM(), c.round(0.019, 0.48))
	c.atLeast(check.Step{ID: "cladding_clearance", Group: check.Water, Symbol: "a", Name: "cladding clear of the flashing below it", Formula: "wall.cladding.above_flashing", Clause: "common practice, no source: 1/4 in", Where: "above F1",
		Reason: fmt.Sprintf("%s lets the cladding draw water; at least %s", c.text(s.Wall.Cladding.AboveFlash.MM()), c.text(c.round(0.25, 6)))}, s.Wall.Cladding.AboveFlash.MM(), c.round(0.25, 6))
	c.atLeast(check.Step{ID: "decking_gap", Group: check.Water, Symbol: "a", Name: "decking clear of the cladding", Formula: "deck.decking_gap", Clause: "common practice, no source: 1/4 in", Where: "first board",
		Reason: fmt.Sprintf("%s holds water and leaves; at least %s", c.text(s.Deck.DeckGap.MM()), c.text(c.round(0.25, 6)))}, s.Deck.DeckGap.MM(), c.round(0.25, 6))
}

// flashingEdges checks where F1 ends: under the layer above, over the face of the ledger, at the drip, at its ends.
func (c *fitter) flashingEdges(path geom.Path) {
	s, f := c.a.Spec, c.a.Frame
	w := s.Water.Flashing
	if lap, over := c.overUpstand(path); w.Lap != "outside" {
		c.atLeast(check.Step{ID: "flashing_over", Group: check.Water, Symbol: "l", Name: "upper layer over the upstand of the flashing", Formula: "z upstand - z upper layer", Clause: "IRC R703.2: 2 in horizontal lap", Where: over + " over F1",
			Reason: c.lapOf(lap), Fix: fmt.Sprintf("water.flashing.up: %s", c.text(w.Up.MM()+c.round(2, 50)-lap))}, lap, c.round(2, 50))
	}
	end := path.V[len(path.V)-1]
	cover := f.LedgerTopFront - end.Y
	c.atLeast(check.Step{ID: "flashing_cover", Group: check.Water, Symbol: "d", Name: "flashing down over the face of the ledger", Formula: "z ledger face - z drip", Clause: "common practice, no source: 1/2 in (12 mm); NBC 9.27.3.8 (from memory, confirm): 10 mm", Where: "F1 over the ledger",
		Reason: fmt.Sprintf("%s of the face covered; at least %s", c.text(cover), c.text(c.round(0.5, 12))), Fix: fmt.Sprintf("water.flashing.drip: %s", c.text(c.up(w.Drip.MM()+c.round(0.5, 12)-cover)))}, cover, c.round(0.5, 12))
	edge := end.X - f.LedgerFront
	c.atLeast(check.Step{ID: "flashing_edge", Group: check.Water, Symbol: "e", Name: "edge of the drip off the face of the ledger", Formula: "y edge - y face", Clause: "NBC 9.27.3.8 (from memory, confirm): 5 mm", Where: "F1",
		Reason: fmt.Sprintf("%s: water runs back on the wood; at least %s off it", c.offFace(edge), c.text(c.round(0.1875, 5))),
		Fix:    fmt.Sprintf("water.flashing.out: %s", c.text(c.up(w.Out.MM()+c.round(0.1875, 5)-edge)))}, edge, c.round(0.1875, 5))
	c.atLeast(check.Step{ID: "flashing_end_dam", Group: check.Water, Symbol: "h", Name: "end dams of the flashing", Formula: "water.flashing.end_dam", Clause: "NBC 9.27.3.8 (from memory, confirm): 25 mm", Where: "ends of F1",
		Reason: fmt.Sprintf("end dams of %s: water runs off the ends into the wall; at least %s", c.text(w.EndDam.MM()), c.text(c.round(1, 25))), Fix: "water.flashing.end_dam: " + either(c.words == unit.IP, "1in", "25mm")}, w.EndDam.MM(), c.round(1, 25))
	whole := geom.EmptyBox3()
	for _, p := range c.a.Find(detail.Flashing) {
		whole = whole.Union(p.Bounds())
	}
	short := math.Max(whole.Min.X, s.Ledger.Length.MM()-whole.Max.X)
	c.atMost(check.Step{ID: "flashing_whole", Group: check.Water, Symbol: "a", Name: "ledger past the ends of the flashing", Formula: "ledger - F1", Clause: "IRC R703.4: flashing where decks attach", Where: "ends of F1",
		Reason: "the flashing does not cover the ledger to its ends"}, math.Max(0, short), 0)
}

// overUpstand is how far the upper layer laps over the upstand of F1, and that layer.
func (c *fitter) overUpstand(path geom.Path) (lap float64, over string) {
	if c.a.Spec.Water.Flashing.Lap == "wrb" {
		w, _ := c.marks("wrb")
		return c.a.Spec.Water.Flashing.Up.MM(), list(w)
	}
	low := math.Inf(1)
	for _, p := range c.a.Find(detail.Cladding) {
		if b := p.Bounds(); b.Min.Z > c.a.Frame.LedgerTop && b.Max.X > 0 && b.Min.X < c.a.Spec.Ledger.Length.MM() {
			low, over = math.Min(low, b.Min.Z), p.Mark
		}
	}
	if over == "" {
		return 0, "no cladding"
	}
	return path.V[0].Y - low, over
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
		Reason: c.lapOf(lap), Fix: fmt.Sprintf("water.patch.height: %s", c.text(s.Blocks.Height.MM()+2*50.8))}, lap, c.round(2, 50))
	c.atLeast(check.Step{ID: "patch_foot", Group: check.Water, Symbol: "l", Name: "patch over the water barrier, below the block", Formula: "z block foot - z patch", Clause: "IRC R703.2: 2 in horizontal lap", Where: "M1 over the barrier",
		Reason: c.lapOf(foot), Fix: fmt.Sprintf("water.patch.height: %s", c.text(s.Blocks.Height.MM()+2*50.8))}, foot, c.round(2, 50))
	c.atLeast(check.Step{ID: "patch_side", Group: check.Water, Symbol: "l", Name: "patch past the sides of the block", Formula: "(patch - block) / 2", Clause: "judgement: 2 in (50 mm), as for a horizontal lap", Where: "M1",
		Reason: c.lapOf(side), Fix: fmt.Sprintf("water.patch.width: %s", c.text(s.Blocks.Width.MM()+2*50.8))}, side, c.round(2, 50))
	c.atLeast(check.Step{ID: "wrap_turn_up", Group: check.Water, Symbol: "l", Name: "wrap turned up the wall under the barrier", Formula: "water.wrap_lap", Clause: "IRC R703.2: 2 in horizontal lap", Where: "barrier over M2",
		Reason: fmt.Sprintf("turn-up of %s; at least %s", c.text(turn), c.text(c.round(2, 50))), Fix: fmt.Sprintf("water.wrap_lap: %s", c.text(50.8))}, turn, c.round(2, 50))
}

// lapOf says how long a lap is that must be 2 in (50 mm); under 0 the two do not meet.
func (c *fitter) lapOf(mm float64) string {
	if mm < 0 {
		return fmt.Sprintf("no lap: %s short of meeting; a lap of at least %s is needed", c.text(-mm), c.text(c.round(2, 50)))
	}
	return fmt.Sprintf("lap of %s; at least %s", c.text(mm), c.text(c.round(2, 50)))
}

// offFace says where the edge of the drip stands from the face of the ledger.
func (c *fitter) offFace(mm float64) string {
	if mm < 0 {
		return fmt.Sprintf("the edge stands %s behind the face", c.fine(-mm))
	}
	return fmt.Sprintf("the edge stands %s off the face", c.fine(mm))
}

// metal prints the thickness of a sheet.
func (c *fitter) metal(mm float64) string {
	if c.words == unit.IP {
		return fmt.Sprintf("%.3f in", mm/25.4)
	}
	return fmt.Sprintf("%.2f mm", mm)
}
