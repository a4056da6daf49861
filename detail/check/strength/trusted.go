package strength

import (
	"fmt"
	"strings"

	"standclear/detail/unit"
)

// reportedG is the highest equivalent specific gravity taken from a report without a professional's eye: the
// usual published one of laminated strand and veneer lumber for bolts. Common practice, no source.
const reportedG = 0.50

// trusted puts values better than the standard's own, which only the user's word stands for, before a professional.
func (c *calc) trusted() {
	c.trust("scope_gravity", "specific gravity of engineered rim and backing", c.highGravity())
	c.trust("scope_fyb", "bending yield strength of the fasteners", c.highYield())
	c.trust("scope_dry", "wet service of ledger and blocks outdoors", c.dryOutdoors())
	c.lightAssumptions()
}

func (c *calc) trust(id, name string, why []string) {
	c.trigger(id, name, why != nil, strings.Join(why, "; "))
}

func (c *calc) highGravity() (why []string) {
	say := func(name string, g float64) {
		why = append(why, fmt.Sprintf("specific gravity %.2f is stated for the %s, over %.2f: a professional must see the report it is from", g, name, reportedG))
	}
	if r := c.m.Rim; r.Reported && r.Wood.G > reportedG+1e-9 {
		say("rim", r.Wood.G)
	}
	if b := c.m.Backing; c.counted() && b.Reported && b.Wood.G > reportedG+1e-9 {
		say("backing", b.Wood.G)
	}
	return why
}

func (c *calc) highYield() (why []string) {
	f := c.m.Fasteners
	for _, s := range []*Set{f.Through, f.ToRim, f.ToBlock} {
		if s == nil || s.Kind == Evaluated {
			continue
		}
		if most := bendingYield(s.Kind, s.Diameter.Inches()); s.Yield > most*(1+1e-9) {
			why = append(why, "bending yield strength "+c.say(s.Yield.Stress())+" is stated for a "+s.Kind.String()+", over the standard's "+
				c.say(most.Stress())+": a professional must see the test it is from")
		}
	}
	return why
}

func (c *calc) dryOutdoors() (why []string) {
	if c.m.Ledger.Moisture.Service == Dry {
		why = append(why, "the ledger is stated dry in service")
	}
	if c.m.Blocks.Moisture.Service == Dry {
		why = append(why, "the blocks are stated dry in service")
	}
	if why != nil {
		why = append(why, "outdoors wood is taken as wet: a professional must say why it is not")
	}
	return why
}

// lightAssumptions puts every assumption that was moved off its default toward a lighter reading before a
// professional. assume.ply_couple is answered for where it is used (block_couple), and assume.support_slip moves
// no verdict.
func (c *calc) lightAssumptions() {
	a, d := c.a, Assume{}.filled()
	var keys []string
	for _, l := range []struct {
		key   string
		light bool
	}{
		{"lever_arm", a.LeverArm != d.LeverArm},
		// A deeper foot is pressed less; a shallower one lengthens the lever arm where nothing else bounds it.
		{"foot_depth", a.FootDepth > d.FootDepth+1e-9 || a.FootDepth < d.FootDepth-1e-9 && a.LeverArm != d.LeverArm},
		{"reaction", a.Reaction != d.Reaction},
		{"net_section", a.GrossSection},
		{"torsion", a.NoTorsion && !c.m.Joists.Restrained},
		{"cap", a.Cap > d.Cap+1e-9},
		{"max_group", a.MaxGroup > d.MaxGroup+unit.MM/100},
		{"rows_in_tension", a.Rows != d.Rows},
	} {
		if l.light {
			keys = append(keys, "assume."+l.key)
		}
	}
	c.trigger("scope_assumptions", "assumptions at their careful readings", keys != nil,
		"moved toward a lighter reading: "+strings.Join(keys, ", ")+"; a professional must answer for each")
}
