package strength

import (
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// tied checks that the pull behind the rim goes into the floor: each piece of backing by two devices, each
// device by its own load.
func (c *calc) tied() {
	t := c.m.Tie
	step := check.Step{ID: "tie_rating", Group: check.Floor, Symbol: "N", Name: "load on the most loaded floor tie",
		Formula: "pulls of the top bolts by position on the backing <= rating", Cap: c.a.Cap,
		Clause: "the tie's allowable load as stated, not raised above CD 1; nails into end grain carry nothing (NDS 2018 12.2.3)",
		Where:  "all blocks"}
	if !c.pulls(c.rimFace(c.groups[0])) {
		c.notChecked(step, noPull)
		return
	}
	pull := c.mostPull(c.heaviest())
	if t.Kind != Strap && t.Kind != HoldDown {
		step.Value, step.Formula, step.Verdict = lb(pull), "", check.Fails
		step.Reason = "no floor tie is declared: the pull of " + c.say(lb(pull)) + " at each block has no way into the floor"
		step.Fix = "two straps or hold-downs at each piece of backing (tie.kind, tie.rating), together rated " + c.say(lb(pull/c.a.Cap)) + " or more"
		if c.m.HouseJoists.Parallel {
			step.Fix = "blocking from the rim across several joists with ties for the pull, by an engineer"
		}
		c.add(step)
		return
	}
	switch {
	case !c.backed():
		c.notChecked(step, "ties take the pull from backing, and there is none (rim_blocking)")
	case c.m.HouseJoists.Parallel:
		step.Value = lb(pull)
		c.notChecked(step, "no tie is built; "+alongRim+"; the pull at one block is "+c.say(lb(pull)))
	case len(c.m.Backing.Pieces) == 0 || len(t.At) == 0:
		step.Value = lb(pull)
		c.notChecked(step, "where the pieces of backing and their ties stand was not measured; the pull at one block is "+c.say(lb(pull)))
	default:
		c.twoTies()
		c.tieLoads(step)
	}
}

// twoTies checks that every piece that bolts pass stands between two devices.
func (c *calc) twoTies() {
	s := check.Step{ID: "backing_ties", Group: check.Floor, Symbol: "n", Name: "ties at each piece of backing",
		Limit: check.Limit(unit.Number(2)), Sense: check.AtLeast, Clause: "statics: one tie does not hold a piece the bolts pull beside it"}
	least := math.MaxInt
	for _, b := range c.bays() {
		marks := c.behind(b)
		if marks == "" {
			continue
		}
		n := b.ties
		if n >= 2 && b.b-b.a <= 0.5 {
			n = 1 // two at one place are one
		}
		if n < least {
			least, s.Value, s.Where = n, unit.Number(n), marks
			if n < 2 {
				s.Reason = "the backing from " + c.sayPiece(b) + " has fewer than two ties, one at each joist"
			}
		}
	}
	if least < math.MaxInt {
		c.add(s)
	}
}

func (c *calc) tieLoads(step check.Step) {
	bays := c.tiedBays()
	if len(bays) == 0 {
		c.notChecked(step, "no piece of backing stands between two ties")
		return
	}
	rating, need := c.m.Tie.Rating.Pounds(), 0.0
	of := func(k solution) check.Step {
		s := step
		s.Note = "for all of T: on the safe side of floor_couple where the ties stand higher over the foot than z"
		most := 0.0
		for _, b := range bays {
			pulls := c.pullsOn(b, k)
			left, right := b.reactions(pulls)
			if n := math.Max(left, right); n > most {
				most, s.Where = n, c.behind(b)
				s.With = []check.Arg{arg("T1", lb(pulls[0].p)), arg("bolts", unit.Number(len(pulls))), arg("A", lb(left)), arg("B", lb(right)),
					arg("span", inch(b.b-b.a))}
			}
		}
		cd := math.Min(1, k.cd)
		need = math.Max(need, most/cd/c.a.Cap)
		s.Value, s.Limit = lb(most), check.Limit(lb(rating*cd))
		return s
	}
	for _, k := range c.solved {
		of(k)
	}
	c.res.RequiredTie = pounds(need)
	if rating < 1e-3 {
		s := of(c.heaviest())
		s.Limit = nil
		c.notChecked(s, "allowable load of one tie (tie.rating) not stated; it must be at least "+c.say(lb(need)))
		return
	}
	c.worst(func(k solution) check.Step {
		s := of(k)
		s.Fix = c.fixIf(s, "ties rated "+c.say(lb(need))+" or more, each (tie.rating)")
		return s
	})
}

// Lateral hold-down of IRC 2021 R507.9.2: two devices of 1,500 lb, or four of 750 lb, the outermost
// within 24 in of the ends.
const (
	lateralTwo    = 1500.0 // lb each
	lateralFour   = 750.0  // lb each
	lateralFromIn = 24.0   // in
)

// lateral checks the tension devices that hold the deck to the floor apart from the blocks.
func (c *calc) lateral() {
	l := c.m.Tie.Lateral
	each, clause := l.Rating.Pounds(), "IRC 2021 R507.9.2 (from memory, confirm)"
	need := lateralTwo
	if l.Count >= 4 {
		need = lateralFour
	}
	count := check.Step{ID: "lateral_count", Group: check.Floor, Symbol: "n", Name: "lateral tension devices",
		Value: unit.Number(l.Count), Limit: check.Limit(unit.Number(2)), Sense: check.AtLeast, Clause: clause}
	if l.Count < 2 {
		count.Reason = "fewer than two lateral tension devices are declared (tie.lateral); friction and contact with the wall are lost at a stand-off"
		count.Fix = "two devices of 1,500 lb or four of 750 lb (tie.lateral.count, tie.lateral.rating)"
	}
	c.add(count)
	if l.Count < 2 {
		return
	}
	c.add(check.Step{ID: "lateral_rating", Group: check.Floor, Symbol: "N", Name: "rating of one lateral tension device",
		Value: lb(each), Limit: check.Limit(lb(need)), Sense: check.AtLeast, Clause: clause,
		Note: "bolts of the blocks are not counted"})
	s := check.Step{ID: "lateral_from_end", Group: check.Floor, Name: "outermost lateral device to the ledger end", Clause: clause}
	if l.FromEnd <= 0 {
		c.notChecked(s, "where the lateral tension devices stand was not measured")
		return
	}
	s.Value, s.Limit = l.FromEnd.Q(), check.Limit(inch(lateralFromIn))
	c.add(s)
}
