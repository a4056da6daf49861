package moisture

import (
	"fmt"
	"strings"

	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// zoneRow is what a climate zone asks of the outside insulation when the retarder is class III, h ft2 F/Btu:
// IRC table R702.7, 2018 edition, confirm against the edition in force. Zone 4 that is not marine is asked by
// the 2021 edition, from memory.
type zoneRow struct {
	zones    string
	r24, r26 float64 // over 2x4 studs with R-13, over 2x6 with R-20
}

var class3Rows = []zoneRow{{"4C 4", 2.5, 3.75}, {"5", 5, 7.5}, {"6", 7.5, 11.25}, {"7 8", 10, 15}}

const clauseClass3 = "IRC R702.7, table of class III retarders (read in a trade note, confirm in the edition in force); for other cavity insulation the same share: judgement"

// class3Need returns the resistance the table asks for over a stud bay of depth and resistance as given; false
// where the zone asks for none.
func class3Need(zone string, depth unit.Length, bay unit.Resistance) (unit.Resistance, bool) {
	for _, row := range class3Rows {
		for _, z := range strings.Fields(row.zones) {
			if z != zone {
				continue
			}
			r, of := row.r26, 20.0
			if depth <= 4*unit.Inch {
				r, of = row.r24, 13
			}
			return rValue(r * max(1, bay.RValue()/of)), true
		}
	}
	return 0, false
}

// rValue turns h ft2 F/Btu into m2 K/W.
func rValue(r float64) unit.Resistance { return unit.Resistance(r / unit.Resistance(1).RValue()) }

// resistance of a layer, across its grain.
func resistance(material string, t unit.Length) unit.Resistance {
	m, ok := stock.MaterialOf(material)
	if !ok || m.Across <= 0 {
		return 0
	}
	return unit.Resistance(t.MM() / 1e3 / float64(m.Across))
}

// outsideR is the resistance of the insulation outside the sheathing.
func (c *checker) outsideR() (r unit.Resistance) {
	for _, l := range c.outside() {
		if l.Role == "insulation" {
			r += resistance(l.Material, l.Thickness)
		}
	}
	return r
}

// bay is the stud layer; none where the wall has no studs.
func (c *checker) bay() (l spec.Layer) {
	for _, l := range c.layers {
		if l.Role == "studs" {
			return l
		}
	}
	return spec.Layer{}
}

// table returns what the zone asks of the outside insulation behind a class III retarder.
func (c *checker) table() (unit.Resistance, bool) {
	b := c.bay()
	return class3Need(c.s.Site.Zone, b.Thickness, resistance(b.Material, b.Thickness))
}

func (c *checker) zoneKnown() bool { return c.s.Site.Zone != "" && c.s.Site.Zone != "unknown" }

// class3Met reports whether the outside insulation is known to suit a class III retarder.
func (c *checker) class3Met() bool {
	need, asked := c.table()
	return c.zoneKnown() && (!asked || c.outsideR() >= need-1e-9)
}

// class3 checks the outside insulation of the clear wall against the code's table.
func (c *checker) class3() {
	need, asked := c.table()
	have := c.outsideR()
	b := c.bay()
	s := check.Step{
		ID: "class3_exterior_r", Symbol: "R_ext", Name: "outside insulation of the clear wall, for a class III vapour retarder", Formula: "sum of thickness / conductivity outside the sheathing",
		With:  []check.Arg{{Symbol: "R stud bay", Value: resistance(b.Material, b.Thickness).Q()}},
		Value: have.Q(), Clause: clauseClass3, Where: "clear wall",
	}
	if asked {
		s.Limit, s.Sense = check.Limit(need.Q()), check.AtLeast
		total := have + resistance(b.Material, b.Thickness)
		s.Note = fmt.Sprintf("zone %s; %.0f %% of the insulation is outside the sheathing", c.s.Site.Zone, 100*float64(have/max(total, 1e-9)))
	}
	c.class3Verdict(&s, asked)
	c.add(s)
}

// class3Verdict says what the table means for the retarder there is.
func (c *checker) class3Verdict(s *check.Step, asked bool) {
	met := c.class3Met()
	switch {
	case !c.zoneKnown():
		s.Verdict, s.Reason = check.NotChecked, "site.zone is not stated: fill in the climate zone"+c.zoneHint()
	case !asked:
		s.Verdict, s.Note = check.OK, "zone "+c.s.Site.Zone+" asks for none"
	case c.retarder == "class-3":
		if !met {
			s.Reason = fmt.Sprintf("zone %s asks for %s outside a class III retarder", c.s.Site.Zone, s.Limit.Text(c.sys))
			s.Fix = or(c.tableFixes())
		}
	case c.retarded() && !met && c.closedOutside() != "":
		s.Verdict, s.Reason = check.Engineer, "a retarder of "+class(c.retarder)+" inside and "+c.closedOutside()+" outside: what gets in between leaves neither way, and the outside insulation is less than keeps the sheathing warm"
		s.Fix = or(c.tableFixes())
	case c.retarded():
		s.Limit, s.Verdict = nil, check.Info
		s.Note += "; a retarder of " + class(c.retarder) + " does not need the table"
	case c.retarder == "none" && c.s.Site.Zone != "4":
		s.Verdict, s.Reason = check.Fails, "zone "+c.s.Site.Zone+" asks for a vapour retarder on the room side; wall.retarder is none"
		s.Fix = "wall.retarder: class-2"
		if met {
			s.Fix = "wall.retarder: class-3"
		}
	case c.retarder == "none":
		s.Limit, s.Verdict = nil, check.Info
		s.Note += "; no retarder is asked for"
	default:
		s.Limit, s.Verdict, s.Reason = nil, check.NotChecked, "wall.retarder is not stated: fill in its class"
	}
}

// closedOutside names an insulation outside that is nearly tight to vapour.
func (c *checker) closedOutside() string {
	for _, l := range c.outside() {
		if m, _ := stock.MaterialOf(l.Material); l.Role == "insulation" && m.Vapour == "nearly vapour tight" {
			return lower(l.Name)
		}
	}
	return ""
}

// tableFixes are changes after which the table is met, or not needed.
func (c *checker) tableFixes() (all []string) {
	if t, ok := c.thicken(func(c *checker) bool { return c.class3Met() }); ok {
		all = append(all, t)
	}
	if !c.retarded() && c.closedOutside() == "" {
		all = append(all, "wall.retarder: class-2")
	}
	return all
}

// zoneHint says which zone the degree-days speak for: IECC by heating degree-days below 65 F (from memory,
// confirm).
func (c *checker) zoneHint() string {
	d := c.s.Site.DegreeDays
	if d == nil {
		return ""
	}
	zone := "3 or less"
	for _, z := range []struct {
		from float64
		zone string
	}{{3600, "4"}, {5400, "5"}, {7200, "6"}, {9000, "7"}, {12600, "8"}} {
		if d.FahrenheitDays() > z.from {
			zone = z.zone
		}
	}
	return fmt.Sprintf("; %s of heating speak for %s", d.Text(c.sys), zone)
}

// atBlock states the resistance outside the sheathing at a block, where its solved temperature decides.
func (c *checker) atBlock() {
	b := c.s.Blocks
	var r unit.Resistance
	for i, t := range b.Plies {
		material := "softwood"
		if i < len(b.Material) && b.Material[i] == "plywood" {
			material = "plywood"
		}
		r += resistance(material, t)
	}
	r += resistance(b.Pad.Material, b.Pad.Thickness)
	s := check.Step{
		ID: "block_exterior_r", Symbol: "R_block", Name: "resistance outside the sheathing at a block", Formula: "sum of thickness / conductivity of plies and pad",
		Value: r.Q(), Clause: clauseClass3, Where: "all blocks", Note: "for information: at a block the solved temperature decides",
	}
	if need, asked := c.table(); asked {
		s.With = []check.Arg{{Symbol: "R of the table for the clear wall", Value: need.Q()}}
	}
	c.add(s)
}
