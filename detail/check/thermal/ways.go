package thermal

import (
	"fmt"
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/heat"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/geom"
)

// variant is a way with the boxes that make it.
type variant struct {
	Way
	boxes []heat.Box
}

// ways returns the drawn attachment, and the usual ways that are compared with it.
func (b *bay) ways(mark string) (drawn variant, others []variant) {
	s := b.a.Spec
	sys := s.Project.System
	pad := s.Blocks.Pad.Thickness.MM()
	drawn = variant{Way{Key: "drawn", Name: "BLOCKS AS DRAWN", Note: "all parts of the assembly in the bay of " + mark, Drawn: true, Blocks: true, Pad: pad}, slices.Concat(b.blocks, b.metal)}
	off := s.Pick(12.7, 12)
	others = []variant{
		{Way{Key: "tight", Name: "LEDGER TIGHT TO THE SHEATHING", Note: "insulation stopped at the ledger, a bolt every " + unit.Length(b.plainSpacing()).Text(sys)}, b.cover(0)},
		{Way{Key: "spacers", Name: "LEDGER ON THIN SPACERS IN THE INSULATION", Note: "a pocket of " + unit.Length(off).Text(sys) + " behind it, taken as still air: it cannot dry"}, b.cover(off)},
	}
	if pad > 0 {
		others = append(others, variant{Way{Key: "solid", Name: "BLOCKS OF SOLID WOOD", Note: "wood in place of the pad, same stand-off", Blocks: true}, b.padded(0)})
	}
	for _, t := range Pads(b.a) {
		others = append(others, variant{Way{Key: fmt.Sprintf("pad_%.0f", t), Name: "BLOCKS WITH A PAD OF " + unit.Length(t).Text(sys), Note: "foam in place of wood, same stand-off; its strength is not checked here", Blocks: true, Pad: t}, b.padded(t)})
	}
	if steel := stainless(drawn.boxes); steel != nil {
		m := conductor("stainless")
		b.mix.add(heat.Isotropic(m.Key, float64(m.Across)))
		others = append(others, variant{Way{Key: "stainless", Name: "BLOCKS AS DRAWN, STAINLESS FASTENERS", Note: "stainless steel conducts a third of plain steel; its strength is not checked here", Blocks: true, Pad: pad}, steel})
	}
	return drawn, others
}

// stainless returns the boxes with their steel made stainless, or nil when there is none.
func stainless(boxes []heat.Box) []heat.Box {
	out, any := slices.Clone(boxes), false
	for i := range out {
		if out[i].Material == "steel" {
			out[i].Material, any = "stainless", true
		}
	}
	if !any {
		return nil
	}
	return out
}

// cover is the way of attaching a ledger before blocks: all along the wall.
//
//	tight     |rim|sheathing|ledger|
//	spacers   |rim|sheathing|pocket|ledger|      insulation stops above and below
func (b *bay) cover(off float64) []heat.Box {
	s, f := b.a.Spec, b.a.Frame
	t := s.Ledger.Thickness.MM()
	l := s.Ledger.Length.MM()
	at := func(y0, y1 float64) heat.Box {
		return heat.Box{Lo: heat.Point{0, y0, f.LedgerBottom}, Hi: heat.Point{l, y1, f.LedgerTop}}
	}
	var out []heat.Box
	cut := at(0, f.LedgerFront)
	cut.Env, cut.Rs = outside, rsVented
	b.put(&out, cut)
	if m, ok := heat.AirLayer(fmt.Sprintf("air %.1f", off), off, heat.Sideways); ok && off > 0 {
		pocket := at(0, off)
		pocket.Material = b.mix.add(m)
		b.put(&out, pocket)
	}
	wood := at(off, off+t)
	wood.Material = b.mix.of(&detail.Part{Material: s.Ledger.Species}, 0)
	b.put(&out, wood)
	for _, q := range b.blocks { // deck joists, moved to the ledger's face
		if q.Lo[1] >= f.LedgerFront-0.01 {
			q.Hi[1] += off + t - q.Lo[1]
			q.Lo[1] = off + t
			b.put(&out, q)
		}
	}
	steel := conductor("steel")
	name := b.mix.add(heat.Isotropic(steel.Key, float64(steel.Across)))
	for _, at := range b.plainBolts() {
		q := heat.RodBox(heat.Y, heat.Point{at[0], 0, at[1]}, f.RimIn-20, off+t+15, at[2], name)
		b.put(&out, q)
	}
	return out
}

// plainBolts returns x, z and diameter of the bolts a ledger along the wall has in this bay: as many as the
// prescriptive table asks, at places where the drawn ones stand.
func (b *bay) plainBolts() [][3]float64 {
	width := b.hi[0] - b.lo[0]
	n := int(math.Max(1, math.Round(width/b.plainSpacing())))
	var out [][3]float64
	for _, h := range b.a.Holes(b.block) {
		if len(out) < n {
			out = append(out, [3]float64{h.X, h.Z, h.Set.Diameter.MM()})
		}
	}
	return out
}

// plainSpacing is the bolt spacing of a plain ledger; where the table ends, 16 in.
func (b *bay) plainSpacing() float64 {
	s := b.a.Spec
	load := unit.Pressure(0)
	for _, p := range []*unit.Pressure{s.Loads.Live, s.Site.GroundSnow} {
		if p != nil {
			load = max(load, *p)
		}
	}
	if rows := stock.PlainLedger(load, s.Deck.Span); len(rows) > 1 {
		return s.Pick(rows[1].Spacing.MM(), math.Round(rows[1].Spacing.MM()))
	}
	return s.Pick(16*25.4, 400)
}

// padded returns the block with foam of that thickness in place of wood behind its outermost ply, or none.
func (b *bay) padded(t float64) []heat.Box {
	f := b.a.Frame
	blk := b.a.Blocks[b.block].Box
	wood := b.mix.of(&detail.Part{Material: b.a.Spec.Blocks.Species, Grain: b.grain()}, 0)
	pad := b.a.Spec.Blocks.Pad.Material
	if t <= 0 || pad == "" {
		pad = "xps"
	}
	var out []heat.Box
	body := heat.Box{Lo: heat.Point{blk.Min.X, 0, blk.Min.Z}, Hi: heat.Point{blk.Max.X, f.BlockOut, b.meanTop()}, Material: wood}
	b.put(&out, body)
	if t > 0 {
		from := b.padFrom(t)
		q := body
		q.Lo[1], q.Hi[1], q.Material = from, from+t, b.mix.of(&detail.Part{Material: pad}, 0)
		b.put(&out, q)
	}
	for _, q := range b.blocks {
		if q.Lo[1] >= f.BlockOut-0.01 || q.Hi[1] <= 0.01 {
			out = append(out, q)
		}
	}
	return append(out, b.metal...)
}

// padFrom is where a pad of thickness t begins: behind an outermost ply as thick as the drawn one.
func (b *bay) padFrom(t float64) float64 {
	plies := b.a.Spec.Blocks.Plies
	last := 38.0
	if n := len(plies); n > 0 {
		last = plies[n-1].MM()
	}
	return math.Max(0, b.a.Frame.BlockOut-last-t)
}

func (b *bay) grain() (g geom.Axis) {
	for _, p := range b.a.Blocks[b.block].Parts {
		if p.Role == detail.BlockPly {
			return p.Grain
		}
	}
	return g
}

// Pads are the thicknesses of foam that are compared with the drawn blocks, mm: what leaves wood in the block, and not
// the drawn one.
func Pads(a *detail.Assembly) (out []float64) {
	all := []float64{12.7, 25.4, 38.1}
	if a.Spec.Project.System == unit.SI {
		all = []float64{12, 25, 40}
	}
	for _, t := range all {
		if math.Abs(t-a.Spec.Blocks.Pad.Thickness.MM()) > 1 && t < a.Frame.BlockOut-20 {
			out = append(out, t)
		}
	}
	return out
}
