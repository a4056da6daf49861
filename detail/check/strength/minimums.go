package strength

import (
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Least loads of a deck, psf.
const (
	leastDead     = 10 // IRC 2021 R507 tables
	leastLiveIRC  = 40 // IRC 2021 table R301.5 (from memory, confirm)
	leastLiveASCE = 60 // ASCE 7-16 table 4.3-1: 1.5 x 40 (from memory, confirm)
)

// loadFloors checks that the loads are not below what the code asks.
func (c *calc) loadFloors() {
	if p := c.m.Loads.Live; p != nil {
		least, clause := float64(leastLiveIRC), "IRC 2021 table R301.5"
		if c.m.Loads.Basis == ASCE {
			least, clause = leastLiveASCE, "ASCE 7-16 table 4.3-1"
		}
		s := check.Step{ID: "live_minimum", Group: check.Loads, Symbol: "L", Name: "live load", Value: psf(p.PSF()),
			Limit: check.Limit(psf(least)), Sense: check.AtLeast, Clause: clause}.Settled()
		if s.Verdict == check.Fails {
			s.Fix = "loads.live: " + c.say(psf(least))
		}
		c.add(s)
	}
	if p := c.m.Loads.Dead; p != nil {
		s := check.Step{ID: "dead_minimum", Group: check.Loads, Symbol: "D", Name: "dead load", Value: psf(p.PSF()),
			Limit: check.Limit(psf(leastDead)), Sense: check.AtLeast, Clause: "IRC 2021 R507, base of its tables"}.Settled()
		if s.Verdict == check.Fails {
			s.Verdict, s.Reason = check.Engineer,
				"a deck lighter than "+c.say(psf(leastDead))+" needs its weight shown piece by piece"
		}
		c.add(s)
	}
}

// snow checks the snow load against the ground's, and what stands over the deck.
func (c *calc) snow() {
	l := c.m.Loads
	s := check.Step{ID: "snow_minimum", Group: check.Loads, Symbol: "S", Name: "snow on the deck, at least that on the ground",
		Clause: "judgement: a deck lies open like the ground, and no roof factor lowers it; ASCE 7-16 7.2", Sense: check.AtLeast}
	if lack := missing(given{"loads.snow", stated(l.Snow)}, given{"site.ground_snow", stated(l.GroundSnow)}); lack != "" {
		c.notChecked(s, lack)
	} else {
		s.Value, s.Limit = psf(l.Snow.PSF()), check.Limit(psf(l.GroundSnow.PSF()))
		if s.Settled().Verdict == check.Fails {
			s.Reason = "at least the ground snow lies on a deck: " + c.say(*s.Limit) + ", and " + c.say(s.Value) + " is stated"
			s.Fix = "loads.snow: " + c.say(*s.Limit)
		}
		c.add(s)
	}
	d := check.Step{ID: "snow_drift", Group: check.Loads, Name: "snow drifting onto the deck or sliding from above",
		Clause: "ASCE 7-16 7.7 to 7.9", Verdict: check.OK}
	switch c.m.Use.Above {
	case OpenSky:
		d.Note = "nothing above sheds snow, as stated"
	case RoofOrWall:
		d.Verdict, d.Reason = check.Engineer, "a roof or wall above can shed or drift snow onto the deck: drift and sliding are not computed"
	default:
		d.Verdict, d.Reason = check.NotChecked, "what stands over the deck (site.above) is not stated: snow may drift or slide onto it"
	}
	c.add(d)
}

// twoByNominal is the least thickness of a ledger and the least seat of a joist: 1 1/2 in, or its metric size.
const twoByNominal = 38 * unit.MM

// codeSizes checks the sizes the code asks of any ledger and of any joist's seat.
func (c *calc) codeSizes() {
	for _, s := range []struct {
		id, symbol, name, clause, where, fix string
		value                                unit.Length
	}{
		{"ledger_thickness", "b", "thickness of the ledger, 2 in nominal or more", "IRC 2021 R507.9.1.1 (from memory, confirm)", "ledger",
			"a ledger 1 1/2 in (38 mm) thick or more (ledger.size)", c.m.Ledger.Thickness},
		{"hanger_seat", "l", "length of the hanger seat a joist bears on", "IRC 2021 R507.6, R502.6: 1 1/2 in on wood or metal (from memory, confirm)",
			"every hanger", "hangers with a seat of 1 1/2 in (38 mm) or more (deck.joists.hanger_seat)", c.m.Joists.Seat},
	} {
		step := check.Step{ID: s.id, Group: check.Beam, Symbol: s.symbol, Name: s.name, Value: s.value.Q(), Limit: check.Limit(twoByNominal.Q()),
			Sense: check.AtLeast, Clause: s.clause, Where: s.where}
		step.Fix = c.fixIf(step, s.fix)
		c.add(step)
	}
}

// tail checks joists that run past their beam. Load on the tail alone turns the joist over the beam and
// lifts it off the ledger:
//
//	ledger |<---- L ---->|<- c ->|     uplift v c^2/(2L), held by 0.6 D (L^2 - c^2)/(2L)
//	       ^             ^
func (c *calc) tail() {
	j := c.m.Joists
	l, past := j.Span.Inches(), j.Cantilever.Inches()
	s := check.Step{ID: "scope_joist_cantilever", Group: check.Scope, Name: "joists past their beam, loaded there alone", Symbol: "u",
		Formula: "v c^2/(2L) <= 0.6 D (L^2 - c^2)/(2L)", Clause: "statics; ASCE 7-16 2.4.1, 0.6 D; judgement: no load on the span"}
	switch {
	case past < -0.01:
		s.Formula = ""
		c.notChecked(s, "projection, ledger and span contradict each other: the joists would end "+c.say(inch(-past))+" before the beam")
		return
	case past < 0.01:
		s.Formula, s.Verdict, s.Note = "", check.OK, "the joists end at their beam"
		c.add(s)
		return
	}
	v := 0.0
	for _, k := range c.combos {
		v = math.Max(v, k.vari()*144/c.tributary())
	}
	perInch := 1 / (144 * 2 * l)
	hold := math.Max(0, 0.6*value(c.m.Loads.Dead)*(l*l-past*past)*perInch)
	s.Value, s.Limit = perFoot(v*past*past*perInch), check.Limit(perFoot(hold))
	s.With = []check.Arg{arg("v", psf(v)), arg("c", inch(past)), arg("L", inch(l)), arg("D", psf(value(c.m.Loads.Dead)))}
	s.Note = "the load of the ledger is not lowered for the tail"
	c.engineerLoaded(s, "load on the "+c.say(inch(past))+" of joist past the beam lifts the ledger by "+c.say(s.Value)+
		", and the deck's weight holds "+c.say(*s.Limit))
}
