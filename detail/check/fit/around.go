package fit

import (
	"fmt"
	"math"

	"standclear/detail/check"
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
			Where: fmt.Sprintf("door %d", i+1), Reason: fmt.Sprintf("water and step conflict: the deck stands %s the lower of floor and sill, and at least %s below it is needed; the threshold stands %s the floor", c.over(-below), c.text(c.round(1, 25)), c.over(d.Threshold.MM())),
			Fix: "deck.below_floor: " + c.text(s.Deck.Below.MM()+c.round(1, 25)-below)}, below, c.round(1, 25))
	}
}

// over says how far above or below something a height is.
func (c *fitter) over(mm float64) string {
	if mm < 0 {
		return c.text(-mm) + " below"
	}
	return c.text(mm) + " above"
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
		c.r.Add(check.Step{ID: "grade_clearance", Group: check.Fit, Name: "ground to the underside of block and ledger", Verdict: check.NotChecked, Where: "highest ground", Clause: "project: foundation.grade", Reason: "height of the ground (foundation.grade) not stated"})
		return
	}
	clear := math.Min(f.BlockBottom, f.LedgerBottom) - g.MM()
	step := check.Step{ID: "grade_clearance", Group: check.Fit, Symbol: "h", Name: "ground to the underside of block and ledger", Formula: "z foot - z ground", Where: "highest ground",
		Clause: "IRC R317.1 (from memory, confirm): 8 in, wood near the ground; R318 where termites are likely", Value: length(clear), Limit: check.Limit(length(c.round(8, 200))), Sense: check.AtLeast}
	if clear < c.round(8, 200)-1e-6 {
		step.Verdict = check.Engineer
		step.Reason = fmt.Sprintf("%s between ground and wood, less than %s (termite hazard stated: %s): inspection gap and treatment need a decision", c.text(clear), c.text(c.round(8, 200)), s.Site.Termites)
		step.Fix = "lower the ground, or raise the deck, by " + c.text(c.round(8, 200)-clear)
	}
	c.r.Add(step)
}
