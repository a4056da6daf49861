package detail

import (
	"fmt"

	"standclear/detail/unit"
	"standclear/geom"
)

// obstacles puts what must be missed where it is: behind the rim, or on the wall outside.
func (a *Assembly) obstacles() {
	f := a.Frame
	for i, o := range a.Spec.Obstacles {
		name := o.Name
		if name == "" {
			name = o.Kind
		}
		role := Obstacle
		y0, y1, z0, z1 := f.BackingIn-350, f.BackingIn-50, f.RimBottom+50, f.RimTop-75
		if !o.Inside {
			role = Outside
			y0, y1, z0, z1 = f.InsulOut, f.CladOut+50, f.BlockBottom, f.BlockTop
		}
		a.add(Part{ID: fmt.Sprintf("OB%d", i+1), Mark: fmt.Sprintf("OB%d", i+1), Name: name, Role: role, Material: "obstacle", Block: -1, Existing: true,
			Solids: []geom.Solid{box(o.From.MM(), o.To.MM(), y0, y1, z0, z1)}})
	}
	for i, d := range a.Spec.Doors {
		a.add(Part{ID: fmt.Sprintf("TH%d", i+1), Mark: "EX13", Name: "DOOR THRESHOLD", Role: Threshold, Material: "softwood", Block: -1, Existing: true, Grain: geom.X,
			Size:   [3]unit.Length{d.Threshold, 0, d.To - d.From},
			Solids: []geom.Solid{box(d.From.MM(), d.To.MM(), f.StudIn, f.CladOut, f.SubTop, d.Threshold.MM())}})
	}
}
