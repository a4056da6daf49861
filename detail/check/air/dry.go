package air

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// The judgements on what drives the air: how much warmer the gap is than the air outside, from a dull day to a sunny
// one, and the wind, as the difference of its pressure coefficients between foot and top of one face of a house.
// Pressure is rho/2 x the coefficient x the square of windBy.
var drives = [3]struct {
	name   string
	warmer float64 // K
	cp     float64
}{{"low", 0.5, 0}, {"likely", 1, 0.05}, {"high", 3, 0.2}}

const (
	windBy      = 2.0  // mean speed of the wind near the wall, m/s: judgement, a sheltered house
	assumedRH   = 0.85 // outside in the cold months where the months are not stated: judgement, common in a humid climate
	deposit     = 0.2  // rain on a wall for rain on the ground and wind, s/m: ASHRAE 160 (from memory, confirm)
	windInRain  = 4.0  // m/s: judgement
	penetration = 0.01 // of the rain on the wall gets in: ASHRAE 160 default (from memory, confirm)
	good        = 3.0  // times what gets in: judgement
)

// driven is the share of the rain on the ground that strikes a wall: wind from every side alike strikes it with the
// mean of the cosine over the circle, 1/pi. Exposure and deposition factors of ASHRAE 160 are 1.
const driven = deposit * windInRain / math.Pi

// Range is a computed value with its honest spread.
type Range struct{ Low, Likely, High float64 }

// Drying is what the air of the gap does in the design month.
type Drying struct {
	Changes Range   // of the air in the gap, an hour
	Rate    Range   // grams a day carried off a metre of open gap
	Run     Range   // grams a day carried off the whole run, under doors by way of their sills
	Rain    float64 // grams a day that get in on a metre of wall; NaN when the rain is not stated
	Wet     float64 // grams a day that get in along the ledger; NaN likewise
}

// Ratio is what can dry for what gets in, where anything does.
func (d *Drying) Ratio() Range {
	return Range{d.Run.Low / d.Wet, d.Run.Likely / d.Wet, d.Run.High / d.Wet}
}

// dry computes the drying of the gap at t C outside.
func (c *checker) dry(t float64) Drying {
	var d Drying
	k := c.channel(c.path.Head)
	under := c.channel(c.path.vent())
	for i, to := range []struct{ changes, rate, run *float64 }{{&d.Changes.Low, &d.Rate.Low, &d.Run.Low}, {&d.Changes.Likely, &d.Rate.Likely, &d.Run.Likely}, {&d.Changes.High, &d.Rate.High, &d.Run.High}} {
		w := weather{outside: t, humidity: c.humidity(), warmer: drives[i].warmer, wind: density(t) / 2 * drives[i].cp * windBy * windBy}
		*to.changes, *to.rate = k.changes(w), k.dries(w)
		*to.run = (*to.rate*long(c.path.Open) + under.dries(w)*long(c.path.Sills)) / 1000
	}
	d.Rain, d.Wet = math.NaN(), math.NaN()
	if r := c.a.Spec.Site.Rain; r != nil {
		d.Rain = r.MM() * driven * penetration / 365 * c.strip() / 1000 * 1000 // 1 mm of rain is 1 kg/m2
		d.Wet = d.Rain * c.path.Length / 1000
	}
	return d
}

// channel is the gap as the air sees it, an end as open as its throat; head is that of the upper end, mm.
func (c *checker) channel(head float64) channel {
	p := c.path
	return channel{depth: p.Gap / 1000, height: p.Height / 1000, foot: p.foot() / 1000, head: head / 1000}
}

// strip is the height of wall whose rain can get in behind the ledger: what the cladding leaves free, mm.
func (c *checker) strip() float64 { return c.a.Frame.BandTop - c.a.Frame.BandBottom }

const ranks = "it ranks ways to build the gap and is no moisture simulation"

// drying reports air change, drying and rain in the design month, and judges them.
func (c *checker) drying() {
	verdict := check.Step{ID: "drying_ratio", Group: check.Water, Symbol: "r", Name: "what the gap can dry for the rain that gets in", Formula: "drying of the run / rain that gets in", Where: "behind the ledger",
		Clause: "judgement: 3 times is good, less than once fails", Note: ranks}
	t := c.a.Spec.Site.ColdMonth
	switch {
	case c.path.Closed != "":
		verdict.Verdict, verdict.Reason, verdict.Note = check.Fails, noPath, c.path.Closed+c.stillText()+"; "+ranks
		verdict.Fix = "an open gap: see the steps on it"
	case t == nil:
		verdict.Verdict, verdict.Reason = check.NotChecked, "site.cold_month_temperature is not stated"
	default:
		c.assume()
		d := c.dry(float64(*t))
		c.rates(d, *t)
		verdict = c.judge(verdict, d)
	}
	c.r.Add(verdict)
}

// humidity is that of the coldest month outside, or what is assumed for it.
func (c *checker) humidity() float64 {
	rh, coldest := assumedRH, math.Inf(1)
	for _, m := range c.a.Spec.Site.Months {
		if t := float64(m.Outside); t < coldest {
			rh, coldest = float64(m.Humidity), t
		}
	}
	return rh
}

// stillText says how little a closed gap dries.
func (c *checker) stillText() string {
	t := c.a.Spec.Site.ColdMonth
	if t == nil || c.path.Gap <= touch || c.path.Height <= 0 {
		return ""
	}
	g := c.channel(0).still(weather{outside: float64(*t), humidity: c.humidity()})
	return "; by diffusion alone some " + unit.Quantity{V: g, Kind: unit.KDayMassPerLength}.Text(c.sys) + " leave"
}

// rates reports the numbers behind the verdict.
func (c *checker) rates(d Drying, t unit.Temp) {
	hydraulics := "friction of a channel, 1.5 velocity heads at its ends, openings at 0.6 (handbook hydraulics, from memory, confirm)"
	gap := []check.Arg{{Symbol: "outside", Value: t.Q()}, {Symbol: "gap", Value: length(c.path.Gap)}, {Symbol: "height", Value: length(c.path.Height)}, {Symbol: "foot", Value: length(c.path.foot())}, {Symbol: "top", Value: length(c.path.Head)}}
	rate := func(v float64) unit.Quantity { return unit.Quantity{V: v, Kind: unit.KDayMassPerLength} }
	run := func(v float64) unit.Quantity { return unit.Quantity{V: v, Kind: unit.KDayMass} }
	c.r.Add(check.Step{ID: "gap_air_change", Group: check.Water, Symbol: "n", Name: "air changes an hour in the gap, cold month", Formula: "3600 speed / height", With: gap, Value: unit.Ratio(math.Round(d.Changes.Likely)),
		Clause: hydraulics, Where: "between blocks", Note: fmt.Sprintf("from %.0f on a dull still day (0.5 K, no wind) to %.0f in sun and wind (3 K, 0.2)", d.Changes.Low, d.Changes.High)})
	c.r.Add(check.Step{ID: "drying_rate", Group: check.Water, Symbol: "m", Name: "water the air carries off along the open gap", Formula: "flow x (saturated - outside) x (1 - exp(-NTU)), NTU = Sh D height / (2 gap flow)", Value: rate(d.Rate.Likely),
		With:   []check.Arg{{Symbol: "outside", Value: t.Q()}, {Symbol: "humidity", Value: unit.Percent(c.humidity()).Q()}, {Symbol: "Sh", Value: unit.Ratio(sherwood)}},
		Clause: "heat and mass transfer between flat plates, one wet (handbooks, from memory, confirm)", Where: "between blocks", Note: spread(d.Rate, rate, c.sys)})
	c.r.Add(check.Step{ID: "drying_run", Group: check.Water, Symbol: "M", Name: "water the air carries off in the whole run", Formula: "m x open length, under doors by the opening at the sill", Value: run(d.Run.Likely),
		With: []check.Arg{{Symbol: "open length", Value: length(long(c.path.Open))}, {Symbol: "under doors", Value: length(long(c.path.Sills))}}, Clause: "geometry", Where: "between blocks", Note: spread(d.Run, run, c.sys)})
	if math.IsNaN(d.Rain) {
		return
	}
	c.r.Add(check.Step{ID: "rain_entry", Group: check.Water, Symbol: "w", Name: "rain that gets in along the wall", Formula: "0.01 x rain x 0.2 x wind / pi x strip / 365", Value: rate(d.Rain),
		With:   []check.Arg{{Symbol: "rain", Value: c.a.Spec.Site.Rain.Q()}, {Symbol: "strip", Value: length(c.strip())}},
		Clause: "ASHRAE 160: 1 % of the rain on the wall gets in, 0.2 s/m of wind (from memory, confirm); judgement: wind of 4 m/s in rain, from all sides alike, the year's rain spread evenly", Where: "behind the ledger"})
}

func spread(r Range, q func(float64) unit.Quantity, sys unit.System) string {
	return "from " + q(r.Low).Text(sys) + " to " + q(r.High).Text(sys)
}

// judge compares drying with rain.
func (c *checker) judge(s check.Step, d Drying) check.Step {
	switch {
	case math.IsNaN(d.Wet):
		s.Verdict, s.Reason = check.NotChecked, "site.rain is not stated"
		return s
	case d.Wet <= 0:
		s.Verdict, s.Reason = check.NotChecked, "no rain gets in, by site.rain and the strip that the cladding leaves: nothing to hold the drying against"
		return s
	}
	r := d.Ratio()
	s.Value, s.Limit, s.Sense = unit.Ratio(r.Likely), check.Limit(unit.Ratio(good)), check.AtLeast
	s.With = []check.Arg{{Symbol: "dries", Value: unit.Quantity{V: d.Run.Likely, Kind: unit.KDayMass}}, {Symbol: "gets in", Value: unit.Quantity{V: d.Wet, Kind: unit.KDayMass}}}
	s.Note = fmt.Sprintf("from %.1f to %.1f; %s", r.Low, r.High, ranks)
	fix := c.openMore(d)
	switch {
	case r.Likely < 1:
		s.Verdict, s.Reason, s.Fix = check.Fails, fmt.Sprintf("the gap dries %.2f of the rain that gets in", r.Likely), fix
	case r.Likely < good || r.Low < 1:
		s.Verdict, s.Reason, s.Fix = check.Engineer, fmt.Sprintf("the gap dries %.1f times the rain that gets in, %.1f on dull still days: little to spare", r.Likely, r.Low), fix
	default:
		s.Verdict = check.OK
	}
	return s
}

// assume writes down what the numbers rest on.
func (c *checker) assume() {
	for _, text := range []string{
		fmt.Sprintf("air outside in the cold month: %.0f %% relative humidity; a wet face in the gap as cold as the air outside", c.humidity()*100),
		fmt.Sprintf("air in the gap %g K warmer than outside and wind of %g m/s with a pressure coefficient of %g between its ends; the range is %g K and none to %g K and %g", drives[1].warmer, windBy, drives[1].cp, drives[0].warmer, drives[2].warmer, drives[2].cp),
		"the cavity of the wall above the ledger is open at its head and carries the air on; of its height nothing is counted",
	} {
		c.r.Assumptions = append(c.r.Assumptions, check.Assumption{Text: text, Source: "judgement"})
	}
}

// openMore is how much of the ledger must be open for a good ratio: what dries grows with the open length, not with
// the depth of the gap, across which the vapour must diffuse.
func (c *checker) openMore(d Drying) string {
	free := long(c.path.Open) + long(c.path.Sills)
	need := free * good / d.Ratio().Likely
	if !(need <= c.path.Length) { // nothing dries: no number
		return "less rain on the wall: a roof over it, or cladding that keeps it out; the gap cannot do it alone"
	}
	return fmt.Sprintf("%s of open gap in all, now %s: narrower or fewer blocks", c.text(need), c.text(free))
}
