package moisture

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

const (
	clauseDew  = "ISO 13788:2012 clause 6, IRC R702.7 (from memory, confirm); judgement on what protects it"
	clauseDamp = "ASHRAE 160 (from memory, confirm): 30-day mean RH at the surface below 80 %; judgement on what protects it"
)

// Water that the sheathing may take up in a winter, as shares of its mass. At 80 % RH wood holds about 16 %
// and is safe to 18 %, which leaves 2; from saturation DIN 4108-3 lets wood-based panels have 3 (from memory,
// confirm).
const (
	uptakeDamp = 0.02
	uptakeDew  = 0.03
)

// inside judges every place inside the wall: its temperature against the dew point of the room air and
// against 80 % RH, and where it is colder, what protects it.
func (c *checker) inside() {
	any := false
	for _, p := range c.heat.Places {
		if p.Room {
			continue
		}
		any = true
		dew := c.dew(p)
		c.add(dew)
		c.add(c.damp(p, dew.Verdict))
	}
	if !any {
		for _, s := range []check.Step{{ID: "dew_inside_wall", Name: "sheathing, rim and bolt ends: dew point of the room air", Clause: clauseDew},
			{ID: "damp_inside_wall", Name: "sheathing, rim and bolt ends: 80 % RH of the room air", Clause: clauseDamp}} {
			s.Verdict, s.Reason = check.NotChecked, "the heat solution names no place inside the wall"
			c.add(s)
		}
	}
}

// dew judges a place against the dew point of the room air.
func (c *checker) dew(p Place) check.Step {
	s := c.factor(p, 1)
	s.ID, s.Name, s.Clause, s.Note = "dew_"+p.Key, p.Name+": dew point of the room air", clauseDew, c.state(p)
	if n := c.climate.below(p.least(), 1); n > 0 {
		c.say(&s, p, 1, "below dew point "+c.count(n), (*checker).judgeDew)
	}
	return s
}

// damp judges a place against 80 % RH of the room air. Where the dew point decides it says no more.
func (c *checker) damp(p Place, dew check.Verdict) check.Step {
	s := c.factor(p, wettestRoomShare)
	s.ID, s.Name, s.Clause = "damp_"+p.Key, p.Name+": 80 % RH of the room air", clauseDamp
	n := c.climate.below(p.least(), wettestRoomShare)
	switch {
	case n == 0:
	case dew != check.OK && dew != check.Info:
		s.Limit, s.Verdict, s.Reason = nil, check.Info, ""
		s.Note = "above 80 % RH " + c.count(n) + ", if room air reached it; decided by its dew point"
	default:
		c.say(&s, p, wettestRoomShare, "room air there would be above 80 % RH "+c.count(n), (*checker).judgeDamp)
	}
	return s
}

// judgement is what becomes of a place that room air would make wet or damp.
type judgement struct {
	verdict check.Verdict
	why     string
	by      *check.Step // symbol, formula, value and limit that decide, where f does not
}

// say puts a judgement of a place into its step, with the changes that would make it good.
func (c *checker) say(s *check.Step, p Place, rh float64, head string, judge func(*checker, Place) judgement) {
	j := judge(c, p)
	if j.verdict == check.OK && !p.sure() {
		return // stays not checked
	}
	s.Verdict, s.Reason = j.verdict, head+"; "+j.why
	s.Note = join(s.Note, c.behind(p))
	if j.by != nil {
		s.Symbol, s.Formula, s.Value, s.Limit, s.Sense = j.by.Symbol, j.by.Formula, j.by.Value, j.by.Limit, j.by.Sense
		s.With = append(s.With, j.by.With...)
	}
	if j.verdict != check.OK {
		s.Fix = c.mend(p, func(c *checker, p Place) bool { return p.sure() && judge(c, p).verdict == check.OK })
	}
}

// state says how a place lies to the dew point and to 80 % RH over the months, and in the coldest.
func (c *checker) state(p Place) string {
	cold := c.climate.months[c.climate.coldest()]
	t, dew := cold.at(p.least()), dewPoint(cold.p)
	where, d := "above", t-dew
	if d < 0 {
		where, d = "below", -d
	}
	dewText := "above dew point " + c.count(len(c.climate.months))
	if n := c.climate.below(p.least(), 1); n > 0 {
		dewText = "below dew point " + c.count(n)
	}
	damp := "at most 80 % RH " + c.count(len(c.climate.months))
	if n := c.climate.below(p.least(), wettestRoomShare); n > 0 {
		damp = "above 80 % RH " + c.count(n)
	}
	return fmt.Sprintf("%s, %s, of room air; %s: %s, %s %s dew point", dewText, damp, cold.name, c.temp(t), c.kelvins(d), where)
}

// judgeDew says what becomes of a place that may be colder than the dew point of the room air.
func (c *checker) judgeDew(p Place) judgement {
	switch {
	case c.climate.below(p.least(), 1) == 0:
		return judgement{verdict: check.OK}
	case p.Behind == RoomAir:
		return judgement{verdict: check.Fails, why: "water condenses on it from the air of the room"}
	case p.Behind == Cavity && !c.retarded():
		return c.judgeTable(p)
	}
	return c.judgeUptake(p, 1, uptakeDew, check.Fails)
}

// judgeDamp says what becomes of a place where room air may be above 80 % RH.
func (c *checker) judgeDamp(p Place) judgement {
	switch {
	case c.climate.below(p.least(), wettestRoomShare) == 0:
		return judgement{verdict: check.OK}
	case p.Behind == RoomAir:
		return judgement{verdict: check.Engineer, why: "not wet, but damp enough for mould"}
	case p.Behind == Cavity && !c.retarded():
		return judgement{verdict: check.Engineer, why: "not wet, but damp enough for mould, and no retarder of class I or II slows the vapour"}
	case p.AtBlock:
		return c.judgeUptake(p, wettestRoomShare, uptakeDamp, check.Engineer)
	}
	return c.judgeBalance(p)
}

// retarded reports whether a retarder of class I or II stands on the room side.
func (c *checker) retarded() bool { return c.retarder == "class-1" || c.retarder == "class-2" }

// judgeTable is for sheathing behind a class III retarder or none: the dew point of the room counts unless
// the code's table of outside insulation covers it, which it does for the clear wall where the mean of the
// three coldest months is above it. That mean is what the table was made with, for a room of 70 F and 35 % RH
// (from memory, confirm); here the room is the one stated.
func (c *checker) judgeTable(p Place) judgement {
	const relies = "a class III retarder relies on warm sheathing, and "
	switch {
	case c.retarder == "unknown":
		return judgement{verdict: check.Fails, why: "wall.retarder is not stated and counts as none: nothing slows the vapour of the room"}
	case c.retarder != "class-3":
		return judgement{verdict: check.Fails, why: "nothing slows the vapour of the room"}
	case p.AtBlock:
		return judgement{verdict: check.Fails, why: relies + "at a block the table of outside insulation does not hold"}
	case !c.zoneKnown():
		return judgement{verdict: check.Fails, why: relies + "site.zone is not stated, so that the table of outside insulation cannot cover it"}
	case !c.class3Met():
		return judgement{verdict: check.Fails, why: relies + "the outside insulation is less than the table asks for"}
	case len(c.climate.months) < 12:
		return judgement{verdict: check.Engineer, why: "the outside insulation meets the table for class III; whether the mean of the three coldest months is above the dew point takes the 12 months: fill in site.months"}
	}
	cold := c.climate.coldSeason()
	by := &check.Step{
		Symbol: "f", Formula: "f solved - its error, against the mean of the three coldest months", Value: unit.Ratio(p.least()), Limit: check.Limit(unit.Ratio(cold.need(1))), Sense: check.AtLeast,
		With: []check.Arg{{Symbol: "Te, three months", Value: unit.Temp(cold.out).Q()}, {Symbol: "T there, three months", Value: unit.Temp(cold.at(p.least())).Q()}},
	}
	if p.least() < cold.need(1)-1e-9 {
		return judgement{check.Engineer, "the outside insulation meets the table for class III, but that is made for a room of 35 % RH at 70 F (21 C), and in this one the mean of the three coldest months is below dew point", by}
	}
	return judgement{check.OK, "the outside insulation meets the table for class III, and the mean of the three coldest months is above dew point", by}
}

// judgeUptake is for a place behind a retarder or wood: what diffusion brings in a winter with the face at rh
// must be little and leave again within the year.
func (c *checker) judgeUptake(p Place, rh, share float64, bad check.Verdict) judgement {
	w := c.pathsOf(p)
	unsure := func(why string) judgement {
		return judgement{verdict: check.Engineer, why: "vapour is slowed, but " + why}
	}
	switch {
	case !w.known:
		return unsure("how much leaves through the outer layers is not known: their maker states it")
	case w.in == 0 || w.sheath == 0:
		return unsure("by how much, or what the sheathing weighs, is not known")
	}
	most, leaves := w.uptake(c.climate, p.least(), rh)
	by := &check.Step{
		Symbol: "u", Formula: fmt.Sprintf("water that diffusion brings in a winter at %.0f %% RH / mass of the sheathing", 100*rh), With: c.resistances(w),
		Value: unit.Percent(most / w.sheath).Q(), Limit: check.Limit(unit.Percent(share).Q()),
	}
	const rests = "; this rests on the air seal before it"
	amount := fmt.Sprintf("diffusion brings %.0f g/m2 (%.4f lb/ft2) in a winter", 1e3*most, 0.204816*most)
	switch {
	case most == 0:
		return judgement{check.OK, fmt.Sprintf("with what diffusion lets through it stays below %.0f %% RH", 100*rh) + rests, by}
	case len(c.climate.months) < 12:
		return unsure("it condenses, and whether it all leaves again takes the 12 months: fill in site.months")
	case !leaves:
		return judgement{bad, amount + " and it does not all leave within the year", by}
	case most > share*w.sheath:
		return judgement{bad, amount, by}
	}
	return judgement{check.OK, amount + " and it leaves within the year" + rests, by}
}

// judgeBalance looks at the humidity that diffusion settles at a place that dries outward.
func (c *checker) judgeBalance(p Place) judgement {
	w := c.pathsOf(p)
	if !w.known {
		return judgement{verdict: check.Engineer, why: "how much leaves through the outer layers is not known: their maker states it"}
	}
	worst, at := 0.0, 0
	for i, m := range c.climate.months {
		if rh := w.balance(m) / saturation(m.at(p.least())); m.heated() && rh > worst {
			worst, at = rh, i
		}
	}
	by := &check.Step{
		Symbol: "RH", Formula: "(p_i/s_i + p_e/s_e)/(1/s_i + 1/s_e) / p_sat(T)", With: c.resistances(w),
		Value: unit.Percent(worst).Q(), Limit: check.Limit(unit.Percent(wettestRoomShare).Q()),
	}
	why := fmt.Sprintf("between the vapour resistances inside and outside it diffusion settles at %.0f %% RH, %s", 100*worst, c.climate.months[at].name)
	if worst > wettestRoomShare {
		return judgement{check.Engineer, why + ": damp enough for mould", by}
	}
	return judgement{check.OK, why + "; this rests on the air seal before it", by}
}

// resistances are the vapour resistances inside and outside a place, as thicknesses of still air.
func (c *checker) resistances(w paths) []check.Arg {
	out := []check.Arg{{Symbol: "s_i", Value: unit.Length(1e3 * w.in).Q()}}
	if !math.IsInf(w.out, 1) {
		out = append(out, check.Arg{Symbol: "s_e", Value: unit.Length(1e3 * w.out).Q()})
	}
	return out
}
