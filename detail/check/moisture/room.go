package moisture

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail/check"
	"standclear/detail/unit"
)

const (
	clauseMould = "ISO 13788:2012 clause 5 (from memory, confirm): at most 80 % RH at the surface in every month, Rsi 0.25"
	clauseWater = "ISO 13788:2012 clause 5 (from memory, confirm): below 100 % RH at the surface; judgement: on the design day as well"
)

// roomAir states what the room air asks of every surface, and how moist it is for a dwelling.
func (c *checker) roomAir() {
	_, at := c.climate.need(1)
	m := c.climate.months[at]
	excess := m.p - m.pOut
	class := humidityClass(m.out, excess)
	c.add(check.Step{
		ID: "room_dew_point", Symbol: "T_dew", Name: "dew point of the room air, " + m.name, Formula: "dew point of RH p_sat(Ti)",
		With:  []check.Arg{{Symbol: "Ti", Value: unit.Temp(m.in).Q()}, {Symbol: "RH", Value: unit.Percent(m.rh()).Q()}, {Symbol: "T at 80 % RH", Value: unit.Temp(dewPoint(m.p / wettestRoomShare)).Q()}},
		Value: unit.Temp(dewPoint(m.p)).Q(), Clause: "ISO 13788:2012 annex E (from memory, confirm)",
		Note: fmt.Sprintf("the room holds %.0f Pa (%.2f in Hg) of vapour more than the air outside: %s", excess, excess/3386.389, class),
	})
}

// humidityClass names the class of a room by the vapour it holds more than the air outside: ISO 13788:2012
// annex A (from memory, confirm), 270 Pa a class up to 0 C outside, falling in a straight line to nothing at
// 20 C.
func humidityClass(out, excess float64) string {
	step := 270 * math.Min(1, math.Max(0, (20-out)/20))
	names := []string{"class 1, unoccupied or dry", "class 2, a dwelling with few people and much air", "class 3, a usual dwelling",
		"class 4, a crowded or little aired dwelling", "class 5, a wet room or pool"}
	if step == 0 {
		return "no class in so warm a month"
	}
	n := int(math.Min(math.Max(excess, 0)/step, float64(len(names)-1)))
	return "humidity " + names[n] + " (ISO 13788:2012 annex A, from memory, confirm)"
}

// room checks the coldest surface of the room.
func (c *checker) room() {
	p, others, ok := coldest(c.heat.Places)
	if !ok {
		for _, s := range []check.Step{
			{ID: "mould_room", Name: "surfaces of the room: mould", Clause: clauseMould}, {ID: "surface_water_room", Name: "surfaces of the room: surface water", Clause: clauseWater},
		} {
			s.Verdict, s.Reason = check.NotChecked, "the heat solution names no surface of the room"
			c.add(s)
		}
		return
	}
	c.mould(p, others)
	c.surfaceWater(p)
}

func (c *checker) mould(p Place, others string) {
	s := c.factor(p, wettestRoomShare)
	s.ID, s.Name, s.Clause, s.Note = "mould_room", p.Name+", the coldest surface of the room: mould", clauseMould, "f needed: "+c.byMonth(wettestRoomShare)+others
	if n := c.climate.below(p.least(), wettestRoomShare); n > 0 {
		s.Verdict, s.Reason = check.Fails, fmt.Sprintf("room air at the surface is above 80 %% RH %s: mould grows there", c.count(n))
		s.Fix = c.mend(p, func(c *checker, p Place) bool { return c.climate.below(p.least(), wettestRoomShare) == 0 })
	}
	c.add(s)
}

// surfaceWater takes the design day as one month more.
func (c *checker) surfaceWater(p Place) {
	dry := func(c *checker, p Place) bool { return c.withDesignDay().climate.below(p.least(), 1) == 0 }
	day := c.withDesignDay()
	s := day.factor(p, 1)
	_, at := day.climate.need(1)
	s.ID, s.Name, s.Clause = "surface_water_room", p.Name+", the coldest surface of the room: surface water, "+day.climate.months[at].name, clauseWater
	if !dry(c, p) {
		s.Verdict, s.Reason = check.Fails, "water stands on the surface: it is colder than the dew point of the room air, "+day.climate.months[at].name
		s.Fix = c.mend(p, dry)
	}
	if c.s.Site.Outside == nil {
		s.Note = "site.design_temperature is not stated: the monthly means alone were looked at"
	}
	c.add(s)
}

// withDesignDay adds the design day, with the room of the coldest month.
func (c *checker) withDesignDay() *checker {
	if c.s.Site.Outside == nil {
		return c
	}
	day := c.climate.months[c.climate.coldest()]
	day.name, day.out = "design day", float64(*c.s.Site.Outside)
	with := *c
	with.climate.months = append(c.climate.months[:len(c.climate.months):len(c.climate.months)], day)
	return &with
}

// coldest returns the surface of the room with the lowest factor, and the others in words.
func coldest(places []Place) (p Place, others string, ok bool) {
	for _, q := range places {
		if q.Room && (!ok || q.least() < p.least() || math.IsNaN(q.F)) {
			p, ok = q, true
		}
	}
	var rest []string
	for _, q := range places {
		if q.Room && q.Key != p.Key {
			rest = append(rest, fmt.Sprintf("%s %.3f", q.Name, q.least()))
		}
	}
	if len(rest) > 0 {
		others = "; f less its error of the other surfaces: " + strings.Join(rest, ", ")
	}
	return p, others, ok
}

// byMonth lists the factor each month asks for.
func (c *checker) byMonth(rh float64) string {
	var all []string
	for _, m := range c.climate.months {
		name := m.name
		if len(c.climate.months) == 12 {
			name = name[:3]
		}
		all = append(all, fmt.Sprintf("%s %.3f", name, m.need(rh)))
	}
	return strings.Join(all, ", ")
}
