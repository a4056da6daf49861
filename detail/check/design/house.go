package design

import (
	"math"

	"standclear/detail"
	"standclear/detail/check/strength"
	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// plateBearing is the bearing value of the softest common plate lumber: the species of a plate that stands
// already is not known.
func plateBearing() unit.Pressure {
	least := unit.Pressure(math.Inf(1))
	for _, species := range []string{"hem-fir", "spruce-pine-fir", "douglas fir-larch", "southern pine"} {
		if v, ok := stock.Lumber(species, "No.2", 5.5*unit.Inch); ok {
			least = min(least, v.FcPerp)
		}
	}
	return least
}

func sheathing(s *spec.Spec) strength.Sheathing {
	for _, l := range s.Wall.Layers {
		if l.Role != "sheathing" {
			continue
		}
		out := strength.Sheathing{Thickness: l.Thickness}
		if p, ok := stock.PanelOf(l.Material); ok {
			out.Structural, out.FcPerp = p.Bears, p.FcPerp
		}
		if l.Material == "softwood" { // boards
			v, _ := stock.Lumber("spruce-pine-fir", "No.2", 5.5*unit.Inch)
			out.Structural, out.FcPerp = true, v.FcPerp
		}
		return out
	}
	return strength.Sheathing{}
}

func rim(s *spec.Spec, f detail.Frame) strength.Rim {
	r := strength.Rim{Thickness: s.Floor.Rim.Thickness, Top: unit.Length(f.RimTop), Bottom: unit.Length(f.RimBottom), Service: state(s.Floor.Rim.Moisture), Reported: s.Floor.Rim.Gravity > 0}
	b, ok := stock.Rim(s.Floor.Rim.Material, s.Floor.Rim.Depth)
	if !ok {
		return r
	}
	r.Wood = wood(b.Values, false)
	if s.Floor.Rim.Gravity > 0 {
		r.Wood.G = s.Floor.Rim.Gravity
	}
	if !b.Attachable {
		r.NotAttachable = b.Reason
	}
	r.Unlisted = unlisted(s, "floor.rim", b)
	_, sawn := stock.SpeciesOf(b.Key)
	switch {
	case sawn:
		r.Kind = strength.SawnRim
	case b.Key == "i-joist closure":
		r.Kind = strength.IJoistRim
	case b.Attachable:
		r.Kind = strength.EngineeredRim
	}
	switch s.Floor.Bearing {
	case "plate":
		r.Bearing = strength.OnPlate
	case "hangers":
		r.Bearing = strength.OnHangers
	case "nothing":
		r.Bearing = strength.OnNothing
	}
	return r
}

// unlisted says why a sawn rim, or backing of the rim's depth, has no values; "" when it has.
func unlisted(s *spec.Spec, key string, b stock.Board) string {
	if _, sawn := stock.SpeciesOf(b.Key); !sawn || b.Values.E > 0 {
		return ""
	}
	return b.Key + " (" + key + ".material) " + s.Floor.Rim.Depth.Q().Text(s.Words()) +
		" deep (floor.rim.depth) is no listed size of sawn lumber, so its values are not known; an engineered rim of that depth is another material"
}

func backing(a *detail.Assembly) strength.Backing {
	s := a.Spec
	b := strength.Backing{Thickness: s.Floor.Backing.Thickness, Reported: s.Floor.Backing.Gravity > 0, Fixing: s.Floor.Backing.Fixing}
	switch s.Floor.Backing.Kind {
	case "loose":
		b.Kind = strength.LooseBacking
	case "carried":
		b.Kind = strength.CarriedBacking
	}
	for _, p := range a.Find(detail.Backing) {
		box := p.Bounds()
		b.Pieces = append(b.Pieces, strength.Span{From: unit.Length(box.Min.X), To: unit.Length(box.Max.X)})
	}
	v, ok := stock.Rim(s.Floor.Backing.Material, s.Floor.Rim.Depth)
	switch {
	case !ok:
		b.NotAttachable = s.Floor.Backing.Material + " is not a listed material"
		return b
	case !v.Attachable:
		b.NotAttachable = v.Reason
	}
	b.Wood, b.Unlisted = wood(v.Values, false), unlisted(s, "floor.backing", v)
	_, sawn := stock.SpeciesOf(v.Key)
	b.Panel = !sawn
	if s.Floor.Backing.Gravity > 0 {
		b.Wood.G = s.Floor.Backing.Gravity
	}
	return b
}
