package design

import (
	"fmt"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/strength"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// leadHoles states the holes to bore for lag and wood screws: those into the rim or the block, and those
// across the joints of a block.
func leadHoles(a *detail.Assembly, r *check.Report) {
	s := a.Spec
	block, _ := stock.Lumber(s.Blocks.Species, s.Blocks.Grade, s.Blocks.Height)
	f := s.Fasteners
	if f.ToRim != nil || f.Through != nil {
		set := f.ToRim
		if set == nil {
			set = f.Through
		}
		if rim, ok := stock.Rim(s.Floor.Rim.Material, s.Floor.Rim.Depth); ok {
			leadHole(r, "lead_hole_rim", "screws into the rim", kindOf(set.Kind), set.Diameter, max(rim.Values.G, s.Floor.Rim.Gravity))
		}
	}
	if f.ToBlock != nil {
		leadHole(r, "lead_hole_block", "screws into the block", kindOf(f.ToBlock.Kind), f.ToBlock.Diameter, block.G)
	}
	if len(a.Joints()) > 0 {
		leadHole(r, "lead_hole_screws", "screws of the block", strength.Screw, a.Joints()[0].Screws.Diameter, block.G)
	}
}

// leadHole adds the bore of one kind of screw; bolts and fasteners with evaluated values have none here.
func leadHole(r *check.Report, id, name string, kind strength.Kind, d unit.Length, g float64) {
	shank, least, most, ok := strength.LeadHoles(kind, d, g)
	if !ok {
		return
	}
	note := "into wood of specific gravity " + fmt.Sprintf("%.2f", g) + "; screws made to be driven without a hole: as their maker states"
	r.Add(check.Step{ID: id, Group: check.Fit, Name: "holes to bore for the " + name, Formula: "thread; shank beside it",
		With:  []check.Arg{{Symbol: "shank", Value: shank.Q()}, {Symbol: "thread, at least", Value: least.Q()}, {Symbol: "thread, at most", Value: most.Q()}},
		Value: most.Q(), Clause: "NDS 2018 12.1.4.3, 12.1.5.3 (from memory, confirm)", Note: note})
}
