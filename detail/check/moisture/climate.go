package moisture

import (
	"cmp"
	"math"
	"slices"

	"standclear/detail/check"
	"standclear/detail/spec"
)

// month is the air on both sides in one month.
type month struct {
	name    string
	out, in float64 // C
	p       float64 // vapour pressure of the room, Pa
	pOut    float64 // vapour pressure outside, Pa
}

// at returns the temperature, C, at a place of factor f.
func (m month) at(f float64) float64 { return m.out + f*(m.in-m.out) }

// rh is the relative humidity of the room.
func (m month) rh() float64 { return m.p / saturation(m.in) }

// heated reports whether the room is warmer than outside: else no face is colder than the room.
func (m month) heated() bool { return m.in > m.out+0.01 }

// need is the factor a place must have so that room air is at most at rh there; 0 when any will do.
func (m month) need(rh float64) float64 {
	if !m.heated() {
		return 0
	}
	return math.Max(0, (dewPoint(m.p/rh)-m.out)/(m.in-m.out))
}

// climate is a year, or the one month a project states.
type climate struct {
	months  []month
	assumed bool // the humidity outside was not stated
}

// outsideRH is taken outside where only the coldest month is stated.
const outsideRH = 0.85

// climateOf reads the climate of a project, its room no moister than most (a share of saturation), or says
// what it lacks. A month without inside values of its own has the room of the winter: in warm months as warm
// as EN 15026:2007 annex C has it, 15 + Te/2 up to 25 C (from memory, confirm), and never drier than the air
// outside.
func climateOf(s *spec.Spec, most float64) (c climate, lacking []string) {
	rows := s.Site.Months
	if len(rows) == 0 && s.Site.ColdMonth != nil {
		rows, c.assumed = []spec.Month{{Outside: *s.Site.ColdMonth, Humidity: outsideRH}}, true
	}
	if len(rows) == 0 {
		lacking = append(lacking, "the climate is not stated: fill in site.months, or site.cold_month_temperature")
	}
	noTemp, noHumidity := len(rows) == 0 && s.Site.Inside == nil, len(rows) == 0 && s.Site.Humidity == nil
	for i, row := range rows {
		m := month{name: months[i], out: float64(row.Outside), pOut: float64(row.Humidity) * saturation(float64(row.Outside))}
		if c.assumed {
			m.name = "coldest month"
		}
		switch {
		case row.Inside != nil:
			m.in = float64(*row.Inside)
		case s.Site.Inside != nil:
			m.in = math.Max(float64(*s.Site.Inside), math.Min(15+m.out/2, 25))
		default:
			noTemp = true
		}
		switch {
		case row.InsideHumidity != nil:
			m.p = math.Min(float64(*row.InsideHumidity), most) * saturation(m.in)
		case s.Site.Humidity != nil:
			m.p = math.Max(math.Min(float64(*s.Site.Humidity), most)*saturation(m.in), m.pOut)
		default:
			noHumidity = true
		}
		c.months = append(c.months, m)
	}
	if noTemp {
		lacking = append(lacking, "the temperature of the room is not stated: fill in site.inside_temperature")
	}
	if noHumidity {
		lacking = append(lacking, "the humidity of the room is not stated: fill in site.inside_humidity")
	}
	if len(lacking) > 0 {
		return climate{}, lacking
	}
	return c, nil
}

var months = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// need returns the factor the worst month asks for at rh, and that month.
func (c climate) need(rh float64) (f float64, at int) {
	at = c.coldest()
	f = c.months[at].need(rh)
	for i, m := range c.months {
		if n := m.need(rh); n > f {
			f, at = n, i
		}
	}
	return f, at
}

// coldest returns the month that is coldest outside.
func (c climate) coldest() int {
	at := 0
	for i, m := range c.months {
		if m.out < c.months[at].out {
			at = i
		}
	}
	return at
}

// coldSeason is the mean of the three months that are coldest outside; c has at least three.
func (c climate) coldSeason() month {
	cold := slices.Clone(c.months)
	slices.SortStableFunc(cold, func(a, b month) int { return cmp.Compare(a.out, b.out) })
	mean := month{name: "mean of the three coldest months"}
	for _, m := range cold[:3] {
		mean.out += m.out / 3
		mean.in += m.in / 3
		mean.p += m.p / 3
		mean.pOut += m.pOut / 3
	}
	return mean
}

// below returns in how many months a place of factor f has room air above rh.
func (c climate) below(f, rh float64) (n int) {
	for _, m := range c.months {
		if f < m.need(rh)-1e-9 {
			n++
		}
	}
	return n
}

// rest lists what the verdicts rest on.
func (c *checker) rest() {
	a := func(key, text, source string) {
		c.r.Assumptions = append(c.r.Assumptions, check.Assumption{Key: key, Text: text, Source: source})
	}
	if c.climate.assumed {
		a("site.months", "1 month stated, site.cold_month_temperature: moisture is judged for it alone, with 85 % RH outside", "judgement")
	} else {
		a("site.months", "room air where a month states none: 15 C + Te/2 up to 25 C in warm months, and no drier than the air outside", "EN 15026:2007 annex C (from memory, confirm); judgement")
	}
	a("wall.retarder", "a retarder passes as much vapour as its class may: 0.1, 1 or 10 perm; unknown counts as none", "IRC R202 (from memory, confirm); judgement")
	a("", "the water barrier passes 5 perm; a membrane patch or pad at a block passes nothing; other layers by their vapour factor when damp", "ASTM E2556, ISO 10456 (from memory, confirm); judgement")
	a("", "vapour moves by diffusion alone: air that leaks through the inner face carries far more and is not counted", "ISO 13788:2012 (from memory, confirm)")
}
