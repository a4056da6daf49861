package thermal

import (
	"math"

	"standclear/detail"
	"standclear/detail/heat"
)

// places are the points whose temperature decides, in the bay that is solved.
//
//	room |gypsum| bay |sheathing           1 wall at the floor   2 sheathing outside the cavity insulation
//	--1--+------+--2--+
//	     |  rim |  3  |[block]             3 sheathing            4 rim or backing      5 bolt end
//	   5-+  4   |     |
func (b *bay) places() []Spot {
	a, f := b.a, b.a.Frame
	blk := a.Blocks[b.block]
	x, z := blk.X, (f.BlockTop+f.BlockBottom)/2
	z = math.Min(math.Max(z, f.RimBottom+1), f.RimTop-1)
	between := b.hi[0]
	inner, what := f.RimIn, "rim"
	if a.Spec.Floor.Backing.Kind != "none" && a.Spec.Floor.Backing.Kind != "" {
		inner, what = f.BackingIn, "backing"
	}
	out := []Spot{
		{Key: "wall_at_floor", Name: "wall surface at the floor, behind the block", Where: blk.Mark, At: heat.Point{x, f.FinishIn, 0}, Room: true},
		{Key: "sheathing_behind_block", Name: "sheathing behind the block, inner face", Where: blk.Mark, At: heat.Point{x, f.SheathIn, z}},
		{Key: "rim_behind_block", Name: what + " behind the block, room face", Where: blk.Mark, At: heat.Point{x, inner, z}},
		{Key: "sheathing_between", Name: "sheathing between blocks, inner face", Where: "between", At: heat.Point{between, f.SheathIn, z}},
		{Key: "rim_between", Name: "rim between blocks, room face", Where: "between", At: heat.Point{between, f.RimIn, z}},
	}
	if s, ok := b.studBay(); ok {
		out = append(out, Spot{Key: "sheathing_outside_cavity", Name: "sheathing outside the cavity insulation, inner face", Where: "wall above", At: s})
	}
	for _, p := range blk.Parts {
		box := p.Bounds()
		if p.Role == detail.Bolt && box.Min.Y < f.RimIn-1 {
			c := box.Center()
			out = append(out, Spot{Key: "bolt_end", Name: "inner end of a bolt", Where: p.ID, At: heat.Point{c.X, box.Min.Y, c.Z}, Bolt: true})
		}
	}
	return out
}

// studBay returns a point at the inner face of the sheathing, between two studs, 600 mm above the floor.
func (b *bay) studBay() (heat.Point, bool) {
	f, w := b.a.Frame, b.a.Spec.Wall
	const up = 600
	first, step := w.StudFirst.MM(), w.StudSpacing.MM()
	if step <= 0 || f.SheathIn-f.StudIn < 1 {
		return heat.Point{}, false
	}
	n := math.Floor((b.a.Blocks[b.block].X - first) / step)
	p := heat.Point{first + (n+0.5)*step, f.SheathIn, up}
	p[0] = math.Min(math.Max(p[0], b.lo[0]+1), b.hi[0]-1)
	for _, d := range b.a.Spec.Doors {
		if p[0] > d.From.MM()-1 && p[0] < d.To.MM()+1 {
			return p, false
		}
	}
	return p, true
}

func (b *bay) probes() []heat.Probe {
	var out []heat.Probe
	for _, s := range b.places() {
		out = append(out, heat.Probe{Name: s.Key + " " + s.Where, At: s.At})
	}
	return out
}

// spots reads the places off a result; those of the room off one with the surface resistance of the mould
// criterion, and not at all without it. Of the bolts only the coldest is kept.
func (b *bay) spots(r, mould *heat.Result) []Spot {
	var out []Spot
	coldest := -1
	for i, s := range b.places() {
		from := r
		if s.Room {
			if from = mould; mould == nil {
				continue
			}
		}
		s.F = value(from.Probes[i].T)
		switch {
		case s.Bolt && coldest >= 0 && s.F.V >= out[coldest].F.V:
			continue
		case s.Bolt && coldest >= 0:
			out[coldest] = s
			continue
		case s.Bolt:
			coldest = len(out)
		}
		out = append(out, s)
	}
	return out
}
