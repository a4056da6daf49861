package detail

import (
	"math"
	"slices"
	"strconv"

	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/geom"
)

// Hex returns the head and nut of a bolt of diameter d; for a diameter that is not stocked, the usual
// proportions of a hexagon (judgement): flats 1.5 d, head 0.67 d, nut 0.875 d, pitch d/8.
func Hex(d unit.Length) stock.Bolt {
	if b, ok := stock.BoltOf(d); ok {
		return b
	}
	return stock.Bolt{D: d, Flats: 1.5 * d, Head: 0.67 * d, NutFlats: 1.5 * d, Nut: 0.875 * d, Pitch: d / 8}
}

// Grip is the thickness between head washer and nut washer of a set, and where it lies in depth.
type Grip struct {
	Outer, Inner float64 // y of the faces under the washers
}

// Length returns the clamped thickness.
func (g Grip) Length() unit.Length { return unit.Length(g.Outer - g.Inner) }

// Grip returns what set clamps: ledger to rim (or backing), block to rim, or ledger to block.
func (a *Assembly) Grip(set *spec.Set) Grip {
	f := a.Frame
	switch set {
	case a.Spec.Fasteners.ToRim:
		return Grip{f.BlockOut, f.BackingIn}
	case a.Spec.Fasteners.ToBlock:
		return Grip{f.LedgerFront, 0}
	}
	return Grip{f.LedgerFront, f.BackingIn}
}

// BoltNeeds returns the least bolt length under the head: grip, two washers, nut and three threads
// (common practice, no source, for the three threads; thread pitch by stock).
func (a *Assembly) BoltNeeds(set *spec.Set) unit.Length {
	n := Hex(set.Diameter)
	return a.Grip(set).Length() + 2*set.Washer.Thickness + n.Nut + 3*n.Pitch
}

// BoltLength returns the length of the set's fasteners: as given, or the shortest stock length that
// is long enough.
func (a *Assembly) BoltLength(set *spec.Set) unit.Length {
	if set.Length > 0 {
		return set.Length
	}
	if set.Kind != "bolt" {
		return a.Grip(set).Length()
	}
	step := a.Spec.Stock.BoltStep
	if step <= 0 {
		return a.BoltNeeds(set)
	}
	return unit.Length(math.Ceil(float64(a.BoltNeeds(set)/step)-1e-9)) * step
}

// fasteners builds every bolt, washer, nut and spacer of every block.
func (a *Assembly) fasteners() {
	for i := range a.Blocks {
		for k, h := range a.holes(i) {
			a.fastener(i, k, h)
		}
	}
}

// nut washer |rim|..|block|sp|ledger| washer head      y outward ->
func (a *Assembly) fastener(i, k int, h Hole) {
	b, g := &a.Blocks[i], a.Grip(h.Set)
	n := Hex(h.Set.Diameter)
	r, w := h.Set.Diameter.MM()/2, h.Set.Washer.Thickness.MM()
	id := func(m string) string { return b.Mark + "/" + m + "-" + strconv.Itoa(k+1) }
	set := a.setIndex(h.Set)
	length := a.BoltLength(h.Set).MM()
	head := g.Outer + w
	note := h.Set.Coating
	if h.Set.Grade != "" {
		note = h.Set.Grade + ", " + note
	}
	mark := func(m string) string { return m + strconv.Itoa(set+1) }
	add := func(p Part) {
		p.Block, p.Note = i, note
		b.Parts = append(b.Parts, a.add(p))
	}
	add(Part{ID: id("BT"), Mark: mark("BT"), Name: setName(h.Set), Role: Bolt, Material: "steel",
		Size: [3]unit.Length{h.Set.Diameter, h.Set.Diameter, a.BoltLength(h.Set)},
		Solids: []geom.Solid{
			a.hex(h.X, h.Z, n.Flats.MM(), head, head+n.Head.MM()),
			a.rod(h.X, h.Z, r, head-length, head),
		}})
	add(a.washer(id("WO"), mark("WS"), h, g.Outer, g.Outer+w))
	if h.Set.Kind == "bolt" {
		add(a.washer(id("WI"), mark("WS"), h, g.Inner-w, g.Inner))
		add(Part{ID: id("NT"), Mark: mark("NT"), Name: "NUT", Role: Nut, Material: "steel", Size: [3]unit.Length{h.Set.Diameter, n.Flats, n.Nut},
			Solids: []geom.Solid{a.hex(h.X, h.Z, n.Flats.MM(), g.Inner-w-n.Nut.MM(), g.Inner-w)}})
	}
	if sp := a.Spec.Blocks.Spacer.MM(); sp > 0 && h.Set != a.Spec.Fasteners.ToRim {
		add(Part{ID: id("SP"), Mark: mark("SP"), Name: "SPACER", Role: SpacerRing, Material: "stainless steel",
			Size: [3]unit.Length{a.Spec.Blocks.Spacer, h.Set.Washer.Size, h.Set.Washer.Size}, Solids: []geom.Solid{a.plate(h, a.Frame.BlockOut, a.Frame.LedgerBack)}})
	}
}

func setName(s *spec.Set) string {
	switch s.Kind {
	case "lag":
		return "LAG SCREW"
	case "screw":
		return "WOOD SCREW"
	case "evaluated":
		return "USER-SUPPLIED FASTENER WITH EVALUATED VALUES"
	}
	return "HEX BOLT"
}

func (a *Assembly) setIndex(set *spec.Set) int {
	for i, s := range a.Spec.Fasteners.Sets() {
		if s == set {
			return i
		}
	}
	return 0
}

func (a *Assembly) washer(id, mark string, h Hole, y0, y1 float64) Part {
	name := "WASHER"
	if h.Set.Washer.Kind == "plate" {
		name = "PLATE WASHER"
	}
	return Part{ID: id, Mark: mark, Name: name, Role: Washer, Material: "steel",
		Size: [3]unit.Length{h.Set.Washer.Thickness, h.Set.Washer.Size, h.Set.Washer.Size}, Solids: []geom.Solid{a.plate(h, y0, y1)}}
}

// plate is a round or square washer about the hole.
func (a *Assembly) plate(h Hole, y0, y1 float64) geom.Solid {
	r := h.Set.Washer.Size.MM() / 2
	if h.Set.Washer.Kind == "plate" {
		return box(h.X-r, h.X+r, y0, y1, h.Z-r, h.Z+r)
	}
	return a.rod(h.X, h.Z, r, y0, y1)
}

// hex is a hexagon prism about (x, z), a corner up, given its width across flats. Those of one width share their
// profile.
func (a *Assembly) hex(x, z, flats, y0, y1 float64) geom.Solid {
	r := flats / math.Sqrt(3)
	i := slices.IndexFunc(a.hexes, func(s geom.Solid) bool { return s.Profile[0].V[0].Y == r }) // the corner that is up
	if i < 0 {
		pts := []geom.Vec{{Y: r}}
		for k := 1; k < 6; k++ {
			pts = append(pts, geom.Polar(geom.Vec{}, r, math.Pi/2+float64(k)*math.Pi/3))
		}
		i, a.hexes = len(a.hexes), append(a.hexes, panel(geom.Region{geom.Polygon(pts...)}, 0, 1))
	}
	s := a.hexes[i]
	s.O, s.Length = geom.Vec3{X: x, Y: y0, Z: z}, y1-y0
	return s
}
