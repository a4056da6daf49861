package strength

import (
	"fmt"
	"math"

	"standclear/detail/unit"
)

// part is one solid piece of the stack the fasteners pass: the rim, a ply or plies fixed together, the
// ledger.
type part struct {
	name     string // "rim", "block", "inner", "outer", "ply 2", "ledger"
	thick    float64
	woods    []wood // of the layers in it
	e        float64
	moisture []Moisture
}

// wood is what a dowel bears on: specific gravity and angle of the load to the grain.
type wood struct{ g, angle float64 }

// stack is the parts from inside to outside and the void between each and the next, inches.
//
//	rim | void 0 (sheathing) | part 1 | void 1 (pad) | part 2 | void 2 (gap) | ledger
type stack struct {
	parts []part
	voids []float64
}

// panelG is the highest specific gravity counted for bolts of 1/4 in and more in panels and in
// engineered rim without a maker's value: NDS 2018 table 12.3.3 has none for them.
const panelG = 0.42

// stack lays the model out along the fasteners.
func (c *calc) stack() stack {
	s := stack{parts: []part{c.rimPart()}, voids: []float64{c.m.Sheathing.Thickness.Inches()}}
	plies := c.m.Blocks.Plies
	for i := range plies {
		pad := c.m.Blocks.Pad.Thickness.Inches() > 0 && c.m.Blocks.Pad.After == i
		if pad {
			s.voids[len(s.voids)-1] += c.m.Blocks.Pad.Thickness.Inches()
		}
		p := c.plyPart(i)
		if i > 0 && !pad && c.m.Blocks.PliesFastened {
			s.parts[len(s.parts)-1] = s.parts[len(s.parts)-1].with(p)
			continue
		}
		s.parts, s.voids = append(s.parts, p), append(s.voids, 0)
	}
	if c.m.Blocks.Pad.Thickness > 0 && c.m.Blocks.Pad.After >= len(plies) {
		s.voids[len(s.voids)-1] += c.m.Blocks.Pad.Thickness.Inches()
	}
	s.voids[len(s.voids)-1] += c.m.Blocks.FrontGap.Inches()
	s.nameBlock()
	s.parts = append(s.parts, c.ledgerPart())
	return s
}

// depth is the whole thickness of the stack, in.
func (s stack) depth() float64 {
	sum := 0.0
	for _, p := range s.parts {
		sum += p.thick
	}
	for _, v := range s.voids {
		sum += v
	}
	return sum
}

// nameBlock names the parts of the block by how many there are.
func (s stack) nameBlock() {
	switch n := len(s.parts) - 1; n {
	case 1:
		s.parts[1].name = "block"
	case 2:
		s.parts[1].name, s.parts[2].name = "inner", "outer"
	default:
		for i := 1; i <= n; i++ {
			s.parts[i].name = fmt.Sprintf("ply%d", i)
		}
	}
}

func (c *calc) rimPart() part {
	r := c.m.Rim
	p := part{name: "rim", thick: r.Thickness.Inches(), e: r.Wood.E.PSI(), moisture: []Moisture{{Dry, r.Service}},
		woods: []wood{{bandG(r.Wood.G, r.Kind != SawnRim, r.Reported), 90}}}
	if b := c.m.Backing; b.Kind == CarriedBacking && b.Thickness > 0 {
		p = p.with(part{thick: b.Thickness.Inches(), e: b.Wood.E.PSI(), woods: []wood{{bandG(b.Wood.G, b.Panel, b.Reported),
			90}}})
	}
	return p
}

// bandG is the specific gravity counted for a band.
func bandG(g float64, engineered, reported bool) float64 {
	if engineered && !reported {
		return math.Min(g, panelG)
	}
	return g
}

func (c *calc) plyPart(i int) part {
	p := c.m.Blocks.Plies[i]
	out := part{thick: p.Thickness.Inches(), e: p.E.PSI(), moisture: []Moisture{c.m.Blocks.Moisture}}
	w := wood{p.G, c.blockAngle()}
	if p.Panel {
		w = wood{math.Min(p.G, panelG), 90}
	}
	out.woods = []wood{w}
	return out
}

// blockAngle is the angle of a vertical load to the grain of the block, degrees.
func (c *calc) blockAngle() float64 {
	if c.m.Blocks.VerticalGrain {
		return 0
	}
	return 90
}

func (c *calc) ledgerPart() part {
	l := c.m.Ledger
	return part{name: "ledger", thick: l.Thickness.Inches(), e: l.Wood.E.PSI(), woods: []wood{{l.Wood.G, 90}},
		moisture: []Moisture{l.Moisture}}
}

// with returns p and o as one piece.
func (p part) with(o part) part {
	p.thick += o.thick
	p.woods = append(append([]wood{}, p.woods...), o.woods...)
	p.moisture = append(append([]Moisture{}, p.moisture...), o.moisture...)
	p.e = math.Min(p.e, o.e)
	return p
}

// bearing returns the weakest dowel bearing strength of its layers and the widest angle to grain.
func (p part) bearing(d unit.Length) (fe unit.Pressure, angle float64) {
	fe = unit.Pressure(math.Inf(1))
	for _, w := range p.woods {
		fe = min(fe, DowelBearing(w.g, d, w.angle))
		angle = math.Max(angle, w.angle)
	}
	return fe, angle
}

// gravity returns the least specific gravity in the part.
func (p part) gravity() float64 {
	g := math.Inf(1)
	for _, w := range p.woods {
		g = math.Min(g, w.g)
	}
	return g
}

// member returns the part as one side of a shear plane of dowel d, with length of dowel bearing in it.
func (p part) member(d Dowel, length float64) Member {
	fe, angle := p.bearing(d.Nominal)
	return Member{unit.Length(length) * unit.Inch, fe, angle}
}

// layer is one shear plane to be checked.
type layer struct {
	id, name   string
	main, side part
	gap        float64
	anchor     bool // the tip of a lag stands in main
	floating   bool // loose plies counted as gap
	informal   bool // left out of the verdict by assume.ply_couple
}

// through lists the planes of fasteners that pass from ledger to rim.
func (c *calc) through(s stack) []layer {
	last := len(s.parts) - 1
	out := c.blockPlanes(s)
	out = append(out, s.plane(last-1, s.parts[last]))
	if last > 2 {
		side, from := s.parts[last], last
		if c.fixed() {
			side, from = s.outerWithLedger(), last-1
		}
		out = append(out, c.floating(s, side, from))
	}
	return out
}

// fixed tells whether the front of the block may be counted with the ledger.
func (c *calc) fixed() bool {
	return c.m.Blocks.FixedToLedger && c.m.Blocks.FrontGap == 0
}

// toRim lists the planes of fasteners that pass from the block into the rim.
func (c *calc) toRim(s stack) []layer {
	last := len(s.parts) - 2
	out := c.blockPlanes(stack{s.parts[:last+1], s.voids[:last]})
	if last > 1 {
		out = append(out, c.floating(s, s.parts[last], last))
	}
	return out
}

// toBlock is the plane of fasteners that pass from the ledger into the block.
func (c *calc) toBlock(s stack) []layer {
	last := len(s.parts) - 1
	l := s.plane(last-1, s.parts[last])
	l.anchor = true
	return []layer{l}
}

// blockPlanes lists the planes between rim and front of the block. The front of the block is counted
// with the ledger where it is fixed to it and the fasteners reach there.
func (c *calc) blockPlanes(s stack) []layer {
	var out []layer
	whole := s.parts[len(s.parts)-1].name == "ledger"
	n := len(s.parts) - 1
	if whole {
		n--
	}
	for k := 0; k < n; k++ {
		side := s.parts[k+1]
		if whole && k+1 == n && n > 1 && c.fixed() {
			side = s.outerWithLedger()
		}
		out = append(out, s.plane(k, side))
	}
	out[0].anchor = true
	return out
}

// outerWithLedger is the front part of the block and the ledger as one piece.
func (s stack) outerWithLedger() part {
	last := len(s.parts) - 1
	p := s.parts[last-1].with(s.parts[last])
	p.name = s.parts[last-1].name + "_ledger"
	return p
}

// plane is the shear plane between part k and side.
func (s stack) plane(k int, side part) layer {
	main := s.parts[k]
	return layer{
		id:   fmt.Sprintf("plane%d_%s_from_%s", k+1, main.name, side.name),
		name: side.name + " to " + main.name, main: main, side: side, gap: s.voids[k],
	}
}

// stiffBolt is the design value per bolt before Rd's crushing and hinge modes are looked at, of a block in
// one piece that hangs on the same bolts as the ledger: the bolt turns as a stiff bar in rim, block and
// ledger, and the block, whose own load is nothing, bears half its depth one way and half the other.
//
//	P D + P^2/(4 qr) + P^2/(4 ql) = (qr lr^2 + qb lb^2 + ql ll^2)/4, D from middle of rim to middle of ledger
//
// With the block away this is mode II.
func (s stack) stiffBolt(d Dowel) (z float64) {
	rim, block, ledger := s.parts[0], s.parts[1], s.parts[2]
	q := func(p part) float64 { fe, _ := p.bearing(d.Nominal); return fe.PSI() * d.Root.Inches() }
	couple := func(p part) float64 { return q(p) * p.thick * p.thick / 4 }
	arm := rim.thick/2 + s.voids[0] + block.thick + s.voids[1] + ledger.thick/2
	p := root(1/(4*q(rim))+1/(4*q(ledger)), arm, -couple(rim)-couple(block)-couple(ledger))
	_, rigid, _ := d.reductions(90)
	return p / rigid
}

// floating is the bound for parts held by nothing but these fasteners: everything between rim and part
// from counts as a gap.
func (c *calc) floating(s stack, side part, from int) layer {
	gap := 0.0
	for i := range from {
		gap += s.voids[i]
		if i > 0 {
			gap += s.parts[i].thick
		}
	}
	return layer{id: "floating_rim_from_" + side.name, name: side.name + " to rim, loose plies counted as gap",
		main: s.parts[0], side: side, gap: gap, anchor: true, floating: true, informal: c.a.PlyCouple}
}
