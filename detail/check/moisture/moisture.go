// Package moisture judges the temperatures that heat found at an attachment: mould on the surfaces of the
// room, and dew inside the wall, month by month.
//
// It solves no heat. A place is known by its temperature factor f = (T - Te)/(Ti - Te), which serves every
// climate (ISO 10211); the project file gives the climate and the humidity of the room.
//
//	moisture.Run(s, &moisture.Solved{Places: places, Pads: pads}, &report)
package moisture

import (
	"fmt"
	"math"

	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// Place is a spot of the assembly whose temperature the heat solution found.
type Place struct {
	Key     string  // stable, lower case with underscores: "sheathing_behind_block"
	Name    string  // "sheathing behind the block, inner face"
	Where   string  // part marks: "B3"
	F       float64 // temperature factor (T - Te)/(Ti - Te)
	Err     float64 // of F, left by the grid; negative when it could not be told
	Room    bool    // a surface of the room, solved with Rsi 0.25: mould criterion; else inside the wall: dew point
	Bolt    bool    // the inner end of a bolt
	Behind  Behind  // what stands between the room and a place inside the wall
	AtBlock bool    // at the footprint of a block: membrane and pad stop drying outward there
}

// Behind is what stands between the room and a place inside the wall.
type Behind int

// RoomAir is the zero value, the careful side.
const (
	RoomAir Behind = iota // air of the room reaches it: rim in a joist bay, end of a bolt
	Cavity                // finish, retarder and the insulated stud bays
	Rim                   // the wood of the rim
)

// Solved is what heat found; nil means it was not computed.
type Solved struct {
	Places []Place
	Pads   []Padded // the same places with a foam pad of that thickness in the block
}

// Padded is the assembly with another pad.
type Padded struct {
	Thickness unit.Length
	Places    []Place
}

// checker is one run; a changed copy of it judges a change before it is offered.
type checker struct {
	s        *spec.Spec
	heat     *Solved
	r        *check.Report
	sys      unit.System
	climate  climate
	layers   []spec.Layer // inside to outside
	retarder string
}

// Run adds the steps of group Moisture to the report.
func Run(s *spec.Spec, heat *Solved, r *check.Report) {
	c := checker{s: s, heat: heat, r: r, sys: s.Words(), layers: s.Wall.Layers, retarder: s.Wall.Retarder}
	c.class3()
	c.atBlock()
	var lacking []string
	if c.climate, lacking = climateOf(s, 1); len(lacking) > 0 {
		c.notChecked(lacking)
		return
	}
	c.rest()
	c.roomAir()
	if heat == nil {
		c.notChecked([]string{"no temperatures: the heat flow was not solved"})
		return
	}
	c.room()
	c.inside()
}

// notChecked says for each criterion why it was not judged.
func (c *checker) notChecked(lacking []string) {
	if c.heat == nil && len(c.climate.months) == 0 {
		lacking = append(lacking, "no temperatures: the heat flow was not solved")
	}
	for _, s := range []check.Step{
		{ID: "mould_room", Name: "surfaces of the room: mould", Clause: clauseMould},
		{ID: "surface_water_room", Name: "surfaces of the room: surface water", Clause: clauseWater},
		{ID: "dew_inside_wall", Name: "sheathing, rim and bolt ends: dew point of the room air", Clause: clauseDew},
		{ID: "damp_inside_wall", Name: "sheathing, rim and bolt ends: 80 % RH of the room air", Clause: clauseDamp},
	} {
		s.Verdict, s.Reason = check.NotChecked, list(lacking)
		c.add(s)
	}
}

func (c *checker) add(s check.Step) {
	s.Group = check.Moisture
	c.r.Add(s)
}

// least is the factor of a place less its error.
func (p Place) least() float64 {
	if p.Err > 0 && finite(p.Err) {
		return p.F - p.Err
	}
	return p.F
}

// sure reports whether the error of the factor is known.
func (p Place) sure() bool { return p.Err >= 0 && finite(p.Err) && finite(p.F) }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// factor states f of a place against what a criterion asks: the step without its words.
func (c *checker) factor(p Place, rh float64) check.Step {
	need, at := c.climate.need(rh)
	m := c.climate.months[at]
	s := check.Step{
		Symbol: "f", Formula: "f solved - its error", Where: p.Where,
		With: []check.Arg{
			{Symbol: "f solved", Value: unit.Ratio(p.F)}, {Symbol: "error", Value: unit.Ratio(p.F - p.least())},
			{Symbol: "Te", Value: unit.Temp(m.out).Q()}, {Symbol: "Ti", Value: unit.Temp(m.in).Q()}, {Symbol: "room RH", Value: unit.Percent(m.rh()).Q()},
			{Symbol: fmt.Sprintf("T at %.0f %% RH", 100*rh), Value: unit.Temp(dewPoint(m.p / rh)).Q()}, {Symbol: "T there", Value: unit.Temp(m.at(p.least())).Q()},
		},
		Value: unit.Ratio(p.least()), Limit: check.Limit(unit.Ratio(need)), Sense: check.AtLeast,
	}
	if !finite(p.F) {
		s.With, s.Value, s.Limit, s.Formula = nil, unit.Quantity{}, nil, ""
	}
	if !p.sure() {
		s.Verdict, s.Reason = check.NotChecked, "the error that the grid leaves in f could not be told: solve on finer grids"
	}
	return s
}
