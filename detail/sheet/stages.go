package sheet

import (
	"standclear/detail"
	"standclear/geom"
)

// stage is a part of the assembly, or a stretch of one, with the steps of the flashing sequence between
// which it stands there: from the first until before the last; until 0 is for good.
type stage struct {
	part        *detail.Part
	from, until int
}

// The steps of the flashing sequence, in which the layers go on.
const (
	stepMark = 1 + iota
	stepOpen
	stepPatch
	stepBlock
	stepWrap
	stepBoard
	stepLedger
	stepFlash
)

// stripped are the heights between which cladding, furring and insulation are off the wall while membranes
// and flashing go in.
func (w *writer) stripped() span {
	o := w.opened()
	return span{o.Min.Y, o.Max.Y}
}

// stages lists what stands about block b step by step, cut to the box.
func (w *writer) stages(b int, box geom.Box3) []stage {
	var out []stage
	zone := w.stripped()
	add := func(p *detail.Part, solids []geom.Solid, from, until int) {
		q := *p
		q.Solids, q.Bores = nil, nil
		for _, s := range p.Bores {
			if s.Bounds().Overlaps(box) {
				q.Bores = append(q.Bores, s)
			}
		}
		for _, s := range solids {
			q.Solids = append(q.Solids, s.Within(box)...)
		}
		if len(q.Solids) > 0 {
			out = append(out, stage{&q, from, until})
		}
	}
	for _, p := range w.a.Parts {
		if p.Block >= 0 && p.Block != b && p.Role != detail.Backing {
			continue
		}
		switch p.Role {
		case detail.OuterInsul:
			in, beyond := parted(p.Solids, zone)
			add(p, beyond, 0, 0)
			add(p, filled(in), stepMark, stepOpen)
			add(p, in, stepBoard, 0)
		case detail.Furring, detail.Cladding:
			in, beyond := parted(p.Solids, zone)
			add(p, beyond, 0, 0)
			add(p, in, either(p.Role == detail.Furring || w.a.Spec.Wall.Cladding.BehindLedger, stepBoard, stepFlash), 0)
		case detail.Barrier:
			on, over := w.flaps(p)
			in, beyond := parted(on, zone)
			all, _ := parted(p.Solids, zone)
			add(p, beyond, 0, 0)
			add(p, filled(all), 0, stepOpen)
			add(p, in, stepOpen, 0)
			add(p, over, stepWrap, 0)
		default:
			if from := w.stepOf(p); from >= 0 {
				add(p, p.Solids, from, 0)
			}
		}
	}
	return out
}

// stepOf is the step at which a part that is not a layer of the wall goes in, 0 for what stands there, -1
// for what is not shown.
func (w *writer) stepOf(p *detail.Part) int {
	switch p.Role {
	case detail.Patch:
		return stepPatch
	case detail.BlockPly, detail.BlockPad, detail.FootPiece:
		return stepBlock
	case detail.Wrap:
		return stepWrap
	case detail.Screen:
		return stepBoard
	case detail.Bolt, detail.Nut, detail.Washer:
		if w.a.Spec.Fasteners.ToRim != nil && p.Mark[len(p.Mark)-1] == '1' {
			return stepBlock
		}
		return stepLedger
	case detail.Ledger, detail.SpacerRing:
		return stepLedger
	case detail.Flashing:
		return stepFlash
	case detail.Rim, detail.Backing, detail.Sheathing, detail.Plate, detail.Subfloor, detail.Footing, detail.GroundIns, detail.Stud, detail.Base:
		return 0
	}
	return -1
}

// parted returns what of the solids lies between the heights of the zone, and what above and below.
func parted(solids []geom.Solid, zone span) (in, beyond []geom.Solid) {
	far := 1e6
	slab := func(lo, hi float64) geom.Box3 {
		return geom.Box3{Min: geom.Vec3{X: -far, Y: -far, Z: lo}, Max: geom.Vec3{X: far, Y: far, Z: hi}}
	}
	for _, s := range solids {
		in = append(in, s.Within(slab(zone.lo, zone.hi))...)
		beyond = append(beyond, s.Within(slab(-far, zone.lo))...)
		beyond = append(beyond, s.Within(slab(zone.hi, far))...)
	}
	return in, beyond
}

// filled closes the holes that blocks make in the boards and sheets: the outline without them, at the depth
// of the first.
func filled(solids []geom.Solid) []geom.Solid {
	if len(solids) == 0 {
		return nil
	}
	var all geom.Region
	first := solids[0]
	for _, s := range solids {
		for _, ring := range s.Profile {
			if ring.Area() > 0 {
				all = append(all, ring)
			}
		}
	}
	first.Profile = geom.Union(all)
	return []geom.Solid{first}
}

// flaps parts the water barrier into what lies on the sheathing and the flaps that hang over patch and cap.
func (w *writer) flaps(p *detail.Part) (on, over []geom.Solid) {
	for _, s := range p.Solids {
		if s.Bounds().Min.Y > detail.Film/2 {
			over = append(over, s)
			continue
		}
		on = append(on, s)
	}
	return on, over
}
