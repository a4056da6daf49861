package thermal

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/heat"
	"standclear/detail/spec"
)

// Surface resistances, m2 K/W.
const (
	rsInside  = 0.13 // ISO 6946:2017 table 7, heat sideways
	rsMould   = 0.25 // room surfaces, for the mould criterion: ISO 13788:2012 (from memory, confirm)
	rsOutside = 0.04 // ISO 6946:2017 table 7
	rsVented  = 0.13 // face of a well ventilated layer: ISO 6946:2017 6.9.4 (from memory, confirm)
)

// Extent of the model beyond the attachment, mm: cut planes at least 1 m away (ISO 10211:2017 table 1, from
// memory, confirm); deck joists are cut off nearer, as fins they have done their work there.
const (
	beyond = 1000
	joists = 300
)

const (
	room    = "room"
	outside = "outside"
)

// bay is the stretch of wall of one block: half-way to its neighbours.
type bay struct {
	a      *detail.Assembly
	block  int
	lo, hi heat.Point
	mix    palette

	wall   []heat.Box // air, wall and floor as they are without the attachment
	blocks []heat.Box // what the attachment adds, as drawn
	metal  []heat.Box // its fasteners
	voids  []heat.Box // doors: nothing is solved there
}

// newBay takes block i with half the space to either side.
func newBay(a *detail.Assembly, i int) *bay {
	f := a.Frame
	b := &bay{a: a, block: i}
	x := a.Blocks[i].X
	half := a.Spec.Blocks.MaxSpacing.MM() / 2
	left, right := x-half, x+half
	if i > 0 {
		left = (a.Blocks[i-1].X + x) / 2
	}
	if i+1 < len(a.Blocks) {
		right = (a.Blocks[i+1].X + x) / 2
	}
	low := math.Min(f.LedgerBottom, f.BlockBottom) - beyond
	if g := a.Spec.Foundation.GradeHigh; g != nil && a.Spec.Foundation.Kind != "wall" {
		low = math.Max(low, g.MM())
	}
	b.lo = heat.Point{math.Max(left, f.Left), f.FinishIn - beyond, math.Min(low, f.PlateBottom-100)}
	b.hi = heat.Point{math.Min(right, f.Right), f.LedgerFront + joists, f.Top}
	b.surroundings()
	b.house()
	b.attachment()
	b.doors()
	return b
}

// surroundings are the room and the outside, parted at the inner face of the sheathing. Outside air stands in
// the gap and the ventilated cavity as it does in front of the ledger, but stiller.
func (b *bay) surroundings() {
	f := b.a.Frame
	front := f.LedgerFront
	still := rsVented
	if !b.vented() {
		still = rsOutside
	}
	lo, hi := b.lo, b.hi
	b.wall = append(b.wall,
		heat.Box{Lo: lo, Hi: heat.Point{hi[0], f.SheathIn, hi[2]}, Env: room},
		heat.Box{Lo: heat.Point{lo[0], f.SheathIn, lo[2]}, Hi: heat.Point{hi[0], front, hi[2]}, Env: outside, Rs: still},
		heat.Box{Lo: heat.Point{lo[0], front, lo[2]}, Hi: hi, Env: outside})
	if b.a.Spec.Foundation.Kind == "none" {
		b.voids = append(b.voids, heat.Box{Lo: lo, Hi: heat.Point{hi[0], math.Max(f.InsulOut, 0), f.PlateBottom}, Void: true})
	}
}

// house are the parts that conduct whether there is a deck or not; outside insulation runs through.
func (b *bay) house() {
	for _, p := range b.a.Parts {
		switch p.Role {
		case detail.Finish, detail.FloorBoard, detail.Subfloor, detail.Plate, detail.Stud, detail.Cavity, detail.HouseJoist,
			detail.Rim, detail.Sheathing, detail.Footing, detail.GroundIns:
			name := b.mix.of(p, 0)
			for _, s := range p.Solids {
				for _, q := range boxesOf(s) {
					b.put(&b.wall, heat.Box{Lo: q[0], Hi: q[1], Material: name})
				}
			}
		case detail.OuterInsul:
			q := whole(p)
			b.put(&b.wall, heat.Box{Lo: q[0], Hi: q[1], Material: b.mix.of(p, 0)})
		}
	}
	b.trapped()
	if !b.vented() {
		for _, p := range b.a.Find(detail.Cladding) {
			q := whole(p)
			b.put(&b.wall, heat.Box{Lo: q[0], Hi: q[1], Material: b.mix.of(p, 0)})
		}
	}
}

// trapped fills a cavity that insulation covers on its outer side with a layer of still air.
func (b *bay) trapped() {
	y, out := 0.0, false
	for i, l := range b.a.Spec.Wall.Layers {
		switch {
		case l.Role == "sheathing":
			out = true
			continue
		case !out || l.Role == "wrb":
			continue
		case l.Role == "cavity" && b.covered(i):
			t := l.Thickness.MM()
			if m, ok := heat.AirLayer(fmt.Sprintf("air %.1f", t), t, heat.Sideways); ok {
				b.put(&b.wall, heat.Box{Lo: heat.Point{b.lo[0], y, b.a.Frame.Bottom}, Hi: heat.Point{b.hi[0], y + t, b.hi[2]}, Material: b.mix.add(m)})
			}
		}
		y += l.Thickness.MM()
	}
}

// vented reports whether a cavity behind the cladding, outside all insulation, lets outside air through.
func (b *bay) vented() bool {
	for i, l := range b.a.Spec.Wall.Layers {
		if l.Role == "cavity" && !b.covered(i) {
			return true
		}
	}
	return false
}

// covered reports whether insulation lies outside layer i.
func (b *bay) covered(i int) bool {
	return slices.ContainsFunc(b.a.Spec.Wall.Layers[i+1:], func(o spec.Layer) bool { return o.Role == "insulation" })
}

// put adds a box cut to the bay; what ends at the foot of the modelled wall runs on to the cut plane.
func (b *bay) put(list *[]heat.Box, q heat.Box) {
	f := b.a.Frame
	if q.Lo[2] <= f.Bottom+1 && q.Material != "" && b.a.Spec.Foundation.Kind == "wall" {
		q.Lo[2] = b.lo[2]
	}
	if q, ok := clip(q, b.lo, b.hi); ok {
		*list = append(*list, q)
	}
}

// attachment are blocks, backing, ledger and joists, and the metal in them.
func (b *bay) attachment() {
	top := b.meanTop()
	extra := b.screwShare()
	for _, p := range b.a.Parts {
		switch p.Role {
		case detail.BlockPly, detail.BlockPad, detail.FootPiece:
			if p.Block != b.block {
				continue
			}
			q := whole(p)
			if q[1][2] > top-near*2 {
				q[1][2] = top
			}
			b.put(&b.blocks, heat.Box{Lo: q[0], Hi: q[1], Material: b.mix.of(p, extra[p.Mark])})
		case detail.Backing, detail.Ledger, detail.DeckJoist:
			name := b.mix.of(p, 0)
			for _, s := range p.Solids {
				for _, q := range boxesOf(s) {
					b.put(&b.blocks, heat.Box{Lo: q[0], Hi: q[1], Material: name})
				}
			}
		case detail.Bolt, detail.Washer, detail.SpacerRing:
			if p.Block == b.block {
				b.fastener(p)
			}
		case detail.Flashing:
			b.flashing(p)
		}
	}
}

// meanTop is the height of the block's sloped top half-way through it.
func (b *bay) meanTop() float64 {
	f := b.a.Frame
	return b.a.Blocks[b.block].Box.Max.Z - float64(b.a.Spec.Blocks.TopSlope)*f.BlockOut/2
}

// fastener adds a washer, or a fastener as the square bar of the section of its shank, as long as it is with
// its head. Nuts and heads are left out: they lie on washers much wider than they are.
func (b *bay) fastener(p *detail.Part) {
	key := p.Material
	if strings.Contains(p.Note, "stainless") {
		key = "stainless"
	}
	m := conductor(key)
	name := b.mix.add(heat.Isotropic(m.Key, float64(m.Across)))
	w := p.Bounds()
	c := w.Center()
	side := math.Sqrt(math.Abs(p.Solids[len(p.Solids)-1].Profile.Area()))
	lo, hi := heat.Point{c.X - side/2, w.Min.Y, c.Z - side/2}, heat.Point{c.X + side/2, w.Max.Y, c.Z + side/2}
	b.put(&b.metal, heat.Box{Lo: lo, Hi: hi, Material: name})
}

// sheetBy is how much thicker than it is a metal sheet stands in the model, its conductivity as much less: it
// conducts the same along itself and spares a grid of hair's breadth.
const sheetBy = 8

// flashing adds the part of the flashing that lies inside the outer face of the insulation.
func (b *bay) flashing(p *detail.Part) {
	f := b.a.Frame
	path := b.a.FlashingPath()
	y0, y1 := path.V[0].X, math.Min(path.V[2].X, f.InsulOut)
	if y0 >= y1 || p.Size[0] <= 0 {
		return
	}
	m := conductor(p.Material)
	t := p.Size[0].MM() * sheetBy
	name := b.mix.add(heat.Isotropic(m.Key+" sheet", float64(m.Across)/sheetBy))
	z := f.FlashAt((y0 + y1) / 2)
	b.put(&b.metal, heat.Box{Lo: heat.Point{0, y0, z}, Hi: heat.Point{b.a.Spec.Ledger.Length.MM(), y1, z + t}, Material: name})
	if y0 > 0 {
		b.put(&b.metal, heat.Box{Lo: heat.Point{0, y0, z}, Hi: heat.Point{b.a.Spec.Ledger.Length.MM(), y0 + t, z + b.a.Spec.Water.Flashing.Up.MM()}, Material: name})
	}
}

// screwShare returns what the screws of the joints add to the conductivity in depth of each ply, by its mark:
// to a ply in the measure in which they run through it.
func (b *bay) screwShare() map[string]float64 {
	a := b.a
	out := map[string]float64{}
	face := a.Spec.Blocks.Width.MM() * a.Spec.Blocks.Height.MM()
	wood, steel := conductor("softwood"), conductor("steel")
	for _, j := range a.Joints() {
		d, l := j.Screws.Diameter.MM(), j.Screws.Length.MM()
		add := screwed(j.Screws.Count, d, l, face, float64(wood.Across), float64(steel.Across))
		for _, p := range a.Blocks[b.block].Parts {
			if p.Role != detail.BlockPly {
				continue
			}
			box := p.Bounds()
			lap := math.Min(box.Max.Y, j.Face) - math.Max(box.Min.Y, j.Face-l)
			if lap > 0 {
				out[p.Mark] += add * lap / (box.Max.Y - box.Min.Y)
			}
		}
	}
	return out
}

// doors are left out: no heat is counted through them.
func (b *bay) doors() {
	f := b.a.Frame
	for _, d := range b.a.Spec.Doors {
		q := heat.Box{Lo: heat.Point{d.From.MM(), f.FinishIn, f.SubTop}, Hi: heat.Point{d.To.MM(), math.Max(f.CladOut, f.InsulOut), f.Top}, Void: true}
		if q, ok := clip(q, b.lo, b.hi); ok {
			b.voids = append(b.voids, q)
		}
	}
}

// typical returns the block whose bay stands for all: away from doors and ends where there is one.
func typical(a *detail.Assembly) int {
	best, least := 0, math.Inf(1)
	for i := range a.Blocks {
		b := a.Blocks[i]
		off := math.Abs(b.X - a.Spec.Ledger.Length.MM()/2)
		if i == 0 || i == len(a.Blocks)-1 {
			off += 1e6
		}
		for _, d := range a.Spec.Doors {
			if b.X+a.Spec.Blocks.MaxSpacing.MM()/2 > d.From.MM() && b.X-a.Spec.Blocks.MaxSpacing.MM()/2 < d.To.MM() {
				off += 1e5
			}
		}
		if off < least {
			best, least = i, off
		}
	}
	return best
}
