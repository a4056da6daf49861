package strength

import (
	"fmt"
	"math"

	"standclear/detail/unit"
)

// part is one solid piece of the stack the fasteners pass: the rim and what is counted with it, a ply or
// plies fixed together, the ledger.
type part struct {
	name     string // "rim", "block", "inner", "outer", "ply2", "ledger"
	thick    float64
	layers   []lamina // from inside to outside
	e        float64  // psi, of the softest layer
	moisture []Moisture
	upright  bool // grain vertical
}

// lamina is one layer of a part: one board, ply or panel.
type lamina struct {
	name     string
	thick, e float64 // in, psi
	wood
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

// backed tells whether there is blocking behind the rim, and counted whether it bears with it.
func (c *calc) backed() bool { return c.m.Backing.Kind != NoBacking && c.m.Backing.Thickness > 0 }

func (c *calc) counted() bool { return c.m.Backing.Kind == CarriedBacking && c.m.Backing.Thickness > 0 }

func (c *calc) rimPart() part {
	r := c.m.Rim
	p := onePart("rim", r.Thickness, wood{bandG(r.Wood.G, r.Kind != SawnRim, r.Reported), 90}, r.Wood.E, Moisture{Dry, r.Service})
	if !c.counted() {
		return p
	}
	b := c.m.Backing
	back := onePart("backing", b.Thickness, wood{bandG(b.Wood.G, b.Panel, b.Reported), 90}, b.Wood.E, Moisture{Dry, r.Service})
	back = back.with(p)
	back.name = "rim"
	return back
}

// onePart is a part of one layer.
func onePart(name string, thick unit.Length, w wood, e unit.Pressure, m Moisture) part {
	return part{name: name, thick: thick.Inches(), layers: []lamina{{name, thick.Inches(), e.PSI(), w}}, e: e.PSI(), moisture: []Moisture{m}}
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
	w := wood{p.G, c.blockAngle()}
	if p.Panel {
		w = wood{math.Min(p.G, panelG), 90}
	}
	out := onePart(fmt.Sprintf("ply %d", i+1), p.Thickness, w, p.E, c.m.Blocks.Moisture)
	out.upright = c.m.Blocks.VerticalGrain
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
	return onePart("ledger", l.Thickness, wood{l.Wood.G, 90}, l.Wood.E, l.Moisture)
}

// with returns p and, outside it, o as one piece.
func (p part) with(o part) part {
	p.thick += o.thick
	p.layers = append(append([]lamina{}, p.layers...), o.layers...)
	p.moisture = append(append([]Moisture{}, p.moisture...), o.moisture...)
	p.e = math.Min(p.e, o.e)
	return p
}

// bearing returns the weakest dowel bearing strength of its layers and the widest angle to grain.
func (p part) bearing(d unit.Length) (fe unit.Pressure, angle float64) {
	fe = unit.Pressure(math.Inf(1))
	for _, w := range p.layers {
		fe = min(fe, DowelBearing(w.g, d, w.angle))
		angle = math.Max(angle, w.angle)
	}
	return fe, angle
}

// gravity returns the least specific gravity in the part.
func (p part) gravity() float64 {
	g := math.Inf(1)
	for _, w := range p.layers {
		g = math.Min(g, w.g)
	}
	return g
}

// member returns the part as one side of a shear plane of dowel d, with length of dowel bearing in it.
func (p part) member(d Dowel, length float64) Member {
	fe, angle := p.bearing(d.Nominal)
	return Member{unit.Length(length) * unit.Inch, fe, angle}
}
