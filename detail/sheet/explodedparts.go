package sheet

import (
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
)

// apart is what moves together when the parts are drawn apart.
type apart struct {
	parts []view.Moved
	near  bool // follows the one before it at a third of the distance
}

// depth is from where to where the parts of a group reach in y, as built.
func (p apart) depth() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, m := range p.parts {
		for _, s := range m.Solids {
			b := s.Bounds()
			lo, hi = math.Min(lo, b.Min.Y), math.Max(hi, b.Max.Y)
		}
	}
	return lo, hi
}

// neighbourhood is what of the wall the pictorial views show round a block: the block with its patch, the
// nearest house joist, deck joist and furring strip, and some of each layer above and below.
type neighbourhood struct {
	block int
	room  geom.Box3
}

// stub is how much of the joists is drawn, mm.
const stub = 300.0

// neighbourhoodOf returns the room about block b.
func (w *writer) neighbourhoodOf(b int) neighbourhood {
	f, a := w.a.Frame, w.a
	blk, patch := a.Blocks[b].Box, a.PatchBox(b)
	const side, above, below = 45.0, 130.0, 45.0
	r := geom.Box3{
		Min: geom.Vec3{X: blk.Min.X - side, Y: f.BackingIn - stub, Z: math.Min(f.BlockBottom, math.Min(f.LedgerBottom, f.RimBottom)) - below},
		Max: geom.Vec3{X: blk.Max.X + side, Y: f.LedgerFront + stub, Z: above},
	}
	if !patch.Empty() {
		r.Min.X, r.Max.X = math.Min(r.Min.X, patch.Min.X-side/2), math.Max(r.Max.X, patch.Max.X+side/2)
		r.Min.Z, r.Max.Z = math.Min(r.Min.Z, patch.Min.Y-below), math.Max(r.Max.Z, patch.Max.Y+above)
	}
	r.Max.Z = math.Max(r.Max.Z, a.FlashingPath().V[0].Y+above)
	include := func(x, half float64) {
		if math.Abs(x-a.Blocks[b].X) < 500 {
			r.Min.X, r.Max.X = math.Min(r.Min.X, x-half), math.Max(r.Max.X, x+half)
		}
	}
	include(nearestOf(a.HouseJoists, a.Blocks[b].X), w.a.Spec.Floor.Joists.Flange.MM()/2+side/2)
	j := w.a.Spec.Deck.Joists
	include(nearestOf(a.DeckJoists, a.Blocks[b].X), (j.Width/2+j.HangerFlange).MM()+side/2)
	strip := math.Inf(1)
	for _, p := range a.Find(detail.Furring) {
		if x := p.Bounds().Center().X; math.Abs(x-a.Blocks[b].X) < math.Abs(strip-a.Blocks[b].X) {
			strip = x
		}
	}
	include(strip, w.a.Spec.Pick(2.5*25.4, 60)/2+side/2)
	return neighbourhood{b, r}
}

// explodedBlock picks the block whose neighbourhood is narrowest, outside the doors if any is.
func (w *writer) explodedBlock() neighbourhood {
	var best neighbourhood
	least := math.Inf(1)
	for i := range w.a.Blocks {
		n := w.neighbourhoodOf(i)
		wide := n.room.Size().X
		if w.inDoor(n.room.Min.X) || w.inDoor(n.room.Max.X) || w.inDoor(w.a.Blocks[i].X) {
			wide += 1e4
		}
		if l := w.a.Spec.Ledger.Length.MM(); n.room.Min.X < 0 || n.room.Max.X > l {
			wide += 1e3 // past the ledger's end
		}
		if wide < least-geom.Tol {
			best, least = n, wide
		}
	}
	return best
}

// groups returns the parts at a block in building order, each cropped to its neighbourhood; equal orders go
// together.
func (w *writer) groups(n neighbourhood) []apart {
	var out []apart
	add := func(near bool, match func(*detail.Part) bool) {
		var ms []view.Moved
		for _, p := range w.a.Parts {
			if w.stands(p, n.block) && match(p) {
				if m := n.cropped(p); len(m.Solids) > 0 {
					ms = append(ms, m)
				}
			}
		}
		if len(ms) > 0 {
			out = append(out, apart{parts: ms, near: near})
		}
	}
	role := func(roles ...detail.Role) func(*detail.Part) bool {
		return func(p *detail.Part) bool { return slices.Contains(roles, p.Role) }
	}
	within := func(lo, hi float64, roles ...detail.Role) func(*detail.Part) bool {
		return func(p *detail.Part) bool {
			y := p.Bounds().Center().Y
			return y > lo && y <= hi && slices.Contains(roles, p.Role)
		}
	}
	f := w.a.Frame
	back := f.SheathIn - 1
	add(false, within(math.Inf(-1), back, detail.Nut))
	add(true, within(math.Inf(-1), back, detail.Washer))
	add(false, role(detail.HouseJoist, detail.TieStrap))
	add(false, role(detail.Backing))
	add(false, role(detail.Rim))
	add(false, role(detail.Sheathing))
	add(false, role(detail.Barrier))
	add(false, role(detail.Patch))
	add(true, within(back, 1, detail.Nut, detail.Washer))
	w.pullBlock(n.block, add)
	add(false, role(detail.Wrap))
	w.pullBolts(add, true)
	for i := range w.a.Spec.Wall.Layers {
		mark := detail.LayerMark(i)
		add(i > 0 && w.a.Spec.Wall.Layers[i-1].Role == "insulation", func(p *detail.Part) bool { return p.Role == detail.OuterInsul && p.Mark == mark })
	}
	add(false, role(detail.Furring))
	add(false, role(detail.Cladding))
	add(false, role(detail.Screen))
	add(false, role(detail.SpacerRing))
	add(false, role(detail.Ledger))
	w.pullBolts(add, false)
	add(false, role(detail.Flashing))
	add(false, role(detail.Hanger))
	add(false, role(detail.DeckJoist))
	add(true, role(detail.Decking))
	return out
}

// stands reports whether a part belongs to the neighbourhood of block b: its own, those of no block, and
// backing and ties of its bay, which the block that entered the bay first counts as its own; where house joists
// make no bays, the backing behind it.
func (w *writer) stands(p *detail.Part, b int) bool {
	x := w.a.Blocks[b].X
	lo, hi := math.Inf(-1), math.Inf(1)
	for _, j := range w.a.HouseJoists {
		if j < x {
			lo = j
		} else if math.IsInf(hi, 1) {
			hi = j
		}
	}
	switch p.Role {
	case detail.Backing, detail.TieStrap:
		box := p.Bounds()
		if len(w.a.HouseJoists) == 0 {
			return box.Min.X < x && box.Max.X > x
		}
		at := box.Center().X
		return at > lo && at < hi
	}
	return p.Block < 0 || p.Block == b
}

// pullBlock adds the pieces of the block from inside, and the screws of its outermost joint.
func (w *writer) pullBlock(b int, add func(bool, func(*detail.Part) bool)) {
	y, face := math.Inf(-1), math.Inf(-1)
	for _, p := range w.a.Blocks[b].Parts {
		at := p.Bounds()
		if p.Mark == "PS1" {
			face = math.Max(face, at.Max.Y)
		}
		if p.Role != detail.BlockPly && p.Role != detail.BlockPad || at.Min.Y < y+geom.Tol {
			continue
		}
		add(!math.IsInf(y, -1), func(p *detail.Part) bool {
			return (p.Role == detail.BlockPly || p.Role == detail.BlockPad || p.Role == detail.FootPiece) && math.Abs(p.Bounds().Min.Y-at.Min.Y) < 0.1
		})
		y = at.Min.Y
	}
	add(true, func(p *detail.Part) bool { return p.Mark == "PS1" && p.Bounds().Max.Y > face-1 })
}

// pullBolts adds washers and bolts whose heads stand at the block's face, or those on the ledger.
func (w *writer) pullBolts(add func(bool, func(*detail.Part) bool), atBlock bool) {
	f := w.a.Frame
	of := func(role detail.Role, p *detail.Part) bool {
		y := p.Bounds().Max.Y
		return p.Role == role && y > 1 && (y < f.LedgerFront+0.5*(f.LedgerBack-f.LedgerFront)) == atBlock && (role == detail.Bolt || p.Bounds().Min.Y > f.BlockOut-1)
	}
	add(true, func(p *detail.Part) bool { return of(detail.Washer, p) })
	if !atBlock {
		add(true, func(p *detail.Part) bool { return p.Mark == "LS1" })
	}
	add(true, func(p *detail.Part) bool { return of(detail.Bolt, p) })
}

// cropped is the part with its holes as far as it lies in the neighbourhood; fasteners stay whole.
func (n neighbourhood) cropped(p *detail.Part) view.Moved {
	m := view.Moved{Part: p}
	if p.Block == n.block && p.Role != detail.Backing && p.Role != detail.TieStrap {
		m.Solids = p.Bored()
		return m
	}
	switch b := p.Bounds(); p.Role {
	case detail.HouseJoist, detail.Furring, detail.DeckJoist, detail.Hanger:
		if b.Min.X < n.room.Min.X || b.Max.X > n.room.Max.X {
			return m // no slivers
		}
	}
	var bores []geom.Solid
	for _, b := range p.Bores {
		if b.Bounds().Overlaps(n.room) {
			bores = append(bores, b)
		}
	}
	for _, s := range p.Solids {
		if c := n.jagged(s.Crop(n.room)); !c.Empty() {
			m.Solids = append(m.Solids, c.Bore(bores...))
		}
	}
	return m
}

// jagged breaks the sides of a layer that runs on past the neighbourhood as a break line does.
func (n neighbourhood) jagged(s geom.Solid) geom.Solid {
	if s.Empty() || math.Abs(s.W.Y) < 0.99 {
		return s
	}
	const jag = 12.0
	r := n.room
	z := r.Min.Z + 0.85*(r.Max.Z-r.Min.Z)
	side := func(x float64) []geom.Vec {
		return []geom.Vec{{X: x, Y: r.Min.Z - 1}, {X: x, Y: z - jag}, {X: x - jag, Y: z - jag/3}, {X: x + jag, Y: z + jag/3}, {X: x, Y: z + jag}, {X: x, Y: r.Max.Z + 1}}
	}
	far := side(r.Min.X + jag)
	slices.Reverse(far)
	outline := geom.Polygon(append(side(r.Max.X-jag), far...)...)
	s.Profile = geom.Intersect(s.Profile, geom.Region{outline})
	return s
}
