package moisture

import (
	"fmt"
	"math"

	"standclear/detail/spec"
	"standclear/detail/unit"
)

// mend returns the smallest changes after which good holds for a place, each judged anew before it is named.
func (c *checker) mend(p Place, good func(*checker, Place) bool) string {
	var all []string
	if p.Behind == Cavity && !p.AtBlock && !p.Room {
		if t, ok := c.thicken(func(with *checker) bool {
			q := p
			q.F += with.series() - c.series()
			return good(with, q)
		}); ok {
			all = append(all, t+" (by the ratio of the layers)")
		}
		if t, ok := c.retard(p, good); ok {
			all = append(all, t)
		}
	}
	if t, ok := c.pad(p, good); ok {
		all = append(all, t)
	}
	if t, ok := c.drier(p, good); ok {
		all = append(all, t)
	}
	if len(all) == 0 {
		return ""
	}
	return or(all)
}

// thicken finds the least thickness of the outermost outside insulation after which good holds, in steps of
// 1/2 in or 10 mm, up to 12 in or 300 mm more.
func (c *checker) thicken(good func(*checker) bool) (string, bool) {
	at := -1
	for i, l := range c.layers {
		if i > c.sheathing() && l.Role == "cavity" {
			break
		}
		if i > c.sheathing() && l.Role == "insulation" {
			at = i
		}
	}
	if at < 0 {
		return "", false
	}
	step, most := unit.Inch/2, 24
	if c.sys == unit.SI {
		step, most = 10*unit.MM, 30
	}
	for n := 1; n <= most; n++ {
		with := *c
		with.layers = append([]spec.Layer{}, c.layers...)
		t := (math.Floor(float64(c.layers[at].Thickness/step)+1e-9) + float64(n)) * float64(step)
		with.layers[at].Thickness = unit.Length(t)
		if good(&with) {
			text := fmt.Sprintf("wall.layers.%d.thickness: %s in place of %s", at, unit.Length(t).Text(c.sys), c.layers[at].Thickness.Text(c.sys))
			return text + with.deeper(), true
		}
	}
	return "", false
}

// deeper says how much the stand-off must grow so that the gap behind the ledger stays as deep as asked for.
func (c *checker) deeper() string {
	need := c.s.Water.GapMin - c.s.Standoff()
	for _, l := range c.outside() {
		if l.Role == "insulation" {
			need += l.Thickness
		}
	}
	if need <= 0 {
		return ""
	}
	return ", with a stand-off " + need.Text(c.sys) + " deeper"
}

// Surface resistances of the clear wall, m2 K/W: ISO 6946:2017, the outer one behind a ventilated cavity as
// in still air.
const (
	rsInside  = 0.13
	rsOutside = 0.04
	rsVented  = 0.13
)

// series is the factor of the sheathing's inner face in the clear wall between studs, one layer after the
// other: the share of the resistance that lies outside it.
func (c *checker) series() float64 {
	in, out := unit.Resistance(rsInside), unit.Resistance(rsOutside)
	for i, l := range c.layers {
		switch {
		case i < c.sheathing():
			in += resistance(l.Material, l.Thickness)
		case l.Role == "cavity":
			return float64((out - rsOutside + rsVented) / (in + out - rsOutside + rsVented))
		default:
			out += resistance(l.Material, l.Thickness)
		}
	}
	return float64(out / (in + out))
}

// retard tries a retarder of class II.
func (c *checker) retard(p Place, good func(*checker, Place) bool) (string, bool) {
	if c.retarded() {
		return "", false
	}
	with := *c
	with.retarder = "class-2"
	return "wall.retarder: class-2, joints sealed", good(&with, p)
}

// pad finds the thinnest pad that heat was solved for with which the place passes.
func (c *checker) pad(p Place, good func(*checker, Place) bool) (string, bool) {
	best := unit.Length(math.Inf(1))
	for _, pad := range c.heat.Pads {
		for _, q := range pad.Places {
			q.Room, q.Bolt, q.Behind, q.AtBlock = p.Room, p.Bolt, p.Behind, p.AtBlock
			if q.Key == p.Key && pad.Thickness > c.s.Blocks.Pad.Thickness && pad.Thickness < best && q.sure() && good(c, q) {
				best = pad.Thickness
			}
		}
	}
	return "blocks.pad.thickness: " + best.Text(c.sys) + " (strength to be checked anew)", !math.IsInf(float64(best), 1)
}

// drier finds the greatest humidity of the room, in whole per cent, with which the place passes.
func (c *checker) drier(p Place, good func(*checker, Place) bool) (string, bool) {
	most := 0.0
	for _, m := range c.climate.months {
		most = math.Max(most, m.rh())
	}
	for rh := math.Ceil(100*most) - 1; rh >= 5; rh-- {
		with := *c
		with.climate, _ = climateOf(c.s, rh/100)
		if good(&with, p) {
			return fmt.Sprintf("%s: %.0f %% at most", c.humidityKey(), rh), true
		}
	}
	return "", false
}

// humidityKey names where the humidity of the room is stated.
func (c *checker) humidityKey() string {
	for _, m := range c.s.Site.Months {
		if m.InsideHumidity != nil {
			return "inside_humidity of every month"
		}
	}
	return "site.inside_humidity"
}
