package fit

import (
	"fmt"
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/geom"
)

// touch is how far two bodies may reach into each other and still only touch, mm.
const touch = 0.3

// clashes looks at the built parts themselves: what is in the place of something else cannot be built.
func (c *fitter) clashes() {
	c.hardware()
	c.screws()
	c.devices()
}

// hard are the roles a head, nut or washer may not stand in.
var hard = []detail.Role{
	detail.HouseJoist, detail.Squash, detail.Ledger, detail.BlockPly, detail.FootPiece, detail.Sheathing, detail.Rim, detail.Backing, detail.Plate,
}

// hardware: heads, nuts and washers clear of wood and of each other.
func (c *fitter) hardware() {
	solid := c.a.Find(hard...)
	metal := c.a.Find(detail.Bolt, detail.Nut, detail.Washer)
	var hit []string
	heads := false
	whole := make([]geom.Box3, len(solid))
	for i, s := range solid {
		whole[i] = s.Bounds()
	}
	heart := make([]geom.Box3, len(metal)) // the head of a bolt, all of the others
	for i, m := range metal {
		heart[i] = m.Solids[0].Bounds()
	}
	for i, m := range metal {
		box := heart[i]
		for k, s := range solid {
			if c.mayTouch(m, s) && overlap(box, whole[k]) && meet(box, s) {
				hit = append(hit, fmt.Sprintf("%s of %s in the %s", lower(m.Name), c.mark(m.Block), lower(s.Name)))
				heads = heads || s.Role == detail.Ledger
			}
		}
		for k, o := range metal[i+1:] {
			if o.Block == m.Block && o.Mark[2:] != m.Mark[2:] && overlap(box, heart[i+1+k]) {
				hit = append(hit, fmt.Sprintf("%s and %s of %s in one place", lower(m.Name), lower(o.Name), c.mark(m.Block)))
			}
		}
	}
	step := check.Step{ID: "clash_hardware", Group: check.Fit, Name: "heads, nuts and washers clear of wood and of each other", Clause: "geometry of the parts", Where: "all blocks", Reason: few(hit)}
	if heads {
		s := c.a.Spec.Fasteners.Sets()[0]
		step.Fix = fmt.Sprintf("blocks.spacer: at least %s, or heads let into the ledger by an engineer's detail", c.text(s.Washer.Thickness.MM()+detail.Hex(s.Diameter).Head.MM()))
	}
	c.holds(step, len(hit) == 0)
}

// mayTouch leaves out what belongs together: a wood that the set is bored through is met only by what is
// not on its face, so all pairs are looked at but the joists of other bays.
func (c *fitter) mayTouch(m, s *detail.Part) bool {
	return s.Block < 0 || s.Block == m.Block || s.Role == detail.Backing
}

func meet(b geom.Box3, p *detail.Part) bool {
	return slices.ContainsFunc(p.Solids, func(s geom.Solid) bool { return overlap(b, s.Bounds()) })
}

func overlap(a, b geom.Box3) bool {
	return min(a.Max.X, b.Max.X)-max(a.Min.X, b.Min.X) > touch &&
		min(a.Max.Y, b.Max.Y)-max(a.Min.Y, b.Min.Y) > touch &&
		min(a.Max.Z, b.Max.Z)-max(a.Min.Z, b.Min.Z) > touch
}

// screws: clear of the bolt holes and of each other, and not longer than what they stand in.
func (c *fitter) screws() {
	all := c.a.Find(detail.PlyScrew)
	if len(all) == 0 {
		return
	}
	const beside = 3.0 // wood left between a screw and a hole or another screw, mm
	least := math.Inf(1)
	var hit []string
	for _, p := range all {
		rod := &p.Solids[0]
		least = min(least, rod.O.Y, rod.O.Y+rod.W.Y*rod.Length)
	}
	all = slices.DeleteFunc(all, func(p *detail.Part) bool { return p.Block > 0 }) // every block has the same pattern
	boxes := make([]geom.Box3, len(all))
	for i, p := range all {
		boxes[i] = p.Bounds()
	}
	heads := c.a.Find(detail.Washer, detail.Bolt)
	for i, p := range all {
		at, r := boxes[i].Center(), p.Size[0].MM()/2
		for _, h := range c.a.Holes(p.Block) {
			if math.Hypot(at.X-h.X, at.Z-h.Z) < h.Dia/2+r+beside {
				hit = append(hit, fmt.Sprintf("screw %s in a bolt hole", p.ID))
			}
		}
		if p.Mark == "LS1" {
			for _, w := range heads {
				if w.Block != p.Block {
					continue
				}
				if b := w.Solids[0].Bounds(); b.Max.Y > c.a.Frame.LedgerFront && at.X > b.Min.X-r && at.X < b.Max.X+r && at.Z > b.Min.Z-r && at.Z < b.Max.Z+r {
					hit = append(hit, fmt.Sprintf("screw %s under a %s", p.ID, lower(w.Name)))
				}
			}
		}
		for k, o := range all[i+1:] {
			other := boxes[i+1+k]
			if other.Min.Y > boxes[i].Max.Y+beside || other.Max.Y < boxes[i].Min.Y-beside {
				continue // one ends before the other begins
			}
			if q := other.Center(); math.Hypot(at.X-q.X, at.Z-q.Z) < r+o.Size[0].MM()/2+beside {
				hit = append(hit, fmt.Sprintf("screws %s and %s in one place", p.ID, o.ID))
			}
		}
	}
	c.screwPitch()
	c.holds(check.Step{ID: "clash_screws", Group: check.Fit, Name: "screws of the block clear of bolt holes and of each other", Clause: "geometry of the parts; judgement: 1/8 in (3 mm) of wood between", Where: "all blocks",
		Reason: few(hit), Fix: "fewer screws, or a wider block"}, len(hit) == 0)
	c.atLeast(check.Step{ID: "screw_point", Group: check.Fit, Symbol: "y", Name: "points of the screws stay inside the block", Formula: "block - screw", Clause: "judgement: 1/8 in (3 mm)", Where: "all blocks",
		Reason: fmt.Sprintf("the screws reach %s from the sheathing face", c.text(least)), Fix: "shorter screws"}, least, c.round(0.125, 3))
}

// screwPitch: what the screws of each joint keep from each other down a column.
func (c *fitter) screwPitch() {
	least, where, d := math.Inf(1), "", 0.0
	for j, joint := range c.a.Joints() {
		spots := c.a.ScrewSpots(0, j, joint.Screws.Count)
		for i, p := range spots {
			for _, q := range spots[i+1:] {
				if gap := math.Abs(q.Y - p.Y); math.Abs(q.X-p.X) < 0.1 && gap < least {
					least, where, d = gap, joint.Outer+" to "+joint.Inner, joint.Screws.Diameter.MM()
				}
			}
		}
	}
	if math.IsInf(least, 1) {
		return // one screw in a column
	}
	c.atLeast(check.Step{ID: "screw_pitch", Group: check.Fit, Symbol: "s", Name: "screws of the block from each other, down a column", Formula: "5 D in bored wood", Clause: "NDS 2018 commentary table C12.1.5.7, load across the grain (from memory, confirm)", Where: where,
		Reason: fmt.Sprintf("%s apart", c.fine(least)), Fix: "fewer screws, or a higher or wider block"}, least, detail.ScrewPitch*d)
}

// devices: the tension devices beside a house joist and a deck joist, near the ends, clear of the rest.
func (c *fitter) devices() {
	a := c.a
	if len(a.Tension) == 0 {
		return
	}
	far, loose := 0.0, []string(nil)
	l := a.Spec.Ledger.Length.MM()
	for i, d := range a.Tension {
		far = math.Max(far, d.FromEnd(l))
		switch {
		case math.IsNaN(d.House):
			loose = append(loose, fmt.Sprintf("no house joist beside LT%d at %s", i+1, c.text(d.X)))
		case math.IsNaN(d.Deck):
			loose = append(loose, fmt.Sprintf("no deck joist beside LT%d at %s", i+1, c.text(d.X)))
		}
	}
	c.holds(check.Step{ID: "lateral_joists", Group: check.Fit, Name: "tension devices beside a house joist and a deck joist", Clause: "IRC 2021 R507.9.2 (from memory, confirm)", Where: "ends of the ledger",
		Reason: few(loose), Fix: "blocking between house joists by an engineer's detail, a deck joist beside each device, or blocks placed clear of the joists near the ends"}, len(loose) == 0)
	var hit []string
	rods := a.Find(detail.TensionRod)
	reach := geom.EmptyBox3()
	for _, rod := range rods {
		reach = reach.Union(rod.Bounds())
	}
	near := slices.DeleteFunc(a.Find(detail.HouseJoist, detail.BlockPly, detail.Bolt, detail.Washer, detail.Nut, detail.DeckJoist, detail.Hanger, detail.Obstacle, detail.Outside, detail.TensionRod), // the backing is bored on site
		func(p *detail.Part) bool { return !meet(reach, p) })
	for _, rod := range rods {
		box := rod.Bounds()
		for _, p := range near {
			if p.ID != rod.ID && meet(box, p) {
				hit = append(hit, fmt.Sprintf("%s through the %s", rod.ID, lower(p.Name)))
			}
		}
	}
	c.holds(check.Step{ID: "clash_rods", Group: check.Fit, Name: "tension rods clear of joists, hangers, blocks, bolts and obstacles", Clause: "geometry of the parts", Where: "ends of the ledger", Reason: few(hit)}, len(hit) == 0)
}

// few lists the first four of a list and counts the rest.
func few(items []string) string {
	items = slices.Compact(items)
	if len(items) > 4 {
		return fmt.Sprintf("%s and %d more", list(items[:4]), len(items)-4)
	}
	return list(items)
}
