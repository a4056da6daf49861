package strength

import (
	"fmt"
	"math"
	"slices"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// group is one fastener set with what follows from where it stands.
type group struct {
	*Set
	id     string // suffix of step ids: "", "_to_rim", "_to_block"
	name   string // as printed: "fasteners from ledger to rim"
	rim    bool   // it passes the rim
	ledge  bool   // it passes the ledger
	dowel  Dowel
	known  bool      // the dowel is a listed size
	rows   []float64 // z, highest first, in
	cols   []float64 // from the block centre, left to right, in
	stack  stack     // what it passes, from its main member outward
	parts  []part    // the solid pieces of it
	side   int       // first part of the group the load comes from
	tip    float64   // thickness before the piece its tip stands in, washer included, in
	plane  []layer
	duties []duty

	cm, cg  float64
	shear   []float64 // ratio of the worst plane or of the whole bolt, per duty
	inside  []float64 // of the worst but the outermost plane; the outermost when there is no other
	outside []float64 // of the outermost plane, or of the whole bolt
	void    reading   // loose parts bear nothing
	held    reading   // each loose part holds a couple
	counts  *reading  // the one the verdict rests on
	why     string    // it does
}

// fasteners adds the checks of every fastener set: places, then planes, then the whole bolt.
func (c *calc) fasteners() {
	c.groups = c.fastenerGroups()
	c.setsApart()
	for _, g := range c.groups {
		g.duties = c.duties(g)
		n := len(g.duties)
		g.shear, g.inside, g.outside = make([]float64, n), make([]float64, n), make([]float64, n)
		if g.Kind == Evaluated {
			c.evaluated(g)
			continue
		}
		if lack := c.unknown(g); lack != "" {
			c.notChecked(check.Step{ID: "fasteners" + g.id, Group: check.Connection, Name: g.name, Clause: "NDS 2018 12.3"}, lack)
			g.unchecked()
			continue
		}
		c.places(g)
		c.threads(g)
		c.factors(g)
		c.embedment(g)
		c.washers(g)
		c.readings(g)
		for _, l := range g.plane {
			c.plane(g, l)
		}
		c.wholeDowel(g)
	}
	c.plyScrews()
}

// unchecked marks the shear of a set as not known.
func (g *group) unchecked() {
	for i := range g.shear {
		g.shear[i], g.inside[i], g.outside[i] = math.NaN(), math.NaN(), math.NaN()
	}
}

// sheared notes the ratio of one plane under duty i.
func (g *group) sheared(l layer, i int, ratio float64) {
	if l.informal {
		return
	}
	g.shear[i] = math.Max(g.shear[i], ratio)
	outermost := l.side.name == g.parts[len(g.parts)-1].name && !l.floating
	if outermost {
		g.outside[i] = math.Max(g.outside[i], ratio)
	}
	if !outermost || len(g.parts) == 2 {
		g.inside[i] = math.Max(g.inside[i], ratio)
	}
}

// transferred notes the ratio of the whole dowel under duty i: it holds at both of its ends.
func (g *group) transferred(i int, ratio float64) {
	g.shear[i] = math.Max(g.shear[i], ratio)
	g.inside[i] = math.Max(g.inside[i], ratio)
	g.outside[i] = math.Max(g.outside[i], ratio)
}

// fastenerGroups lays the stated sets out.
func (c *calc) fastenerGroups() []*group {
	s, f := c.stack(), c.m.Fasteners
	last := len(s.parts) - 1
	ledger, gap := s.parts[last].thick, c.m.Blocks.FrontGap.Inches()
	block := s.depth() - s.parts[0].thick - ledger - gap // sheathing, plies and pad
	if f.Through != nil {
		g := c.group(f.Through, "", s, c.through(s), block+gap+ledger)
		g.rim, g.ledge = true, true
		if c.fixed() {
			g.side = last - 1
		}
		return []*group{g}
	}
	rim := c.group(f.ToRim, "_to_rim", stack{s.parts[:last], s.voids[:last-1]}, c.toRim(s), block)
	rim.rim = true
	front := c.group(f.ToBlock, "_to_block", stack{s.parts[last-1:], s.voids[last-1:]}, c.toBlock(s), gap+ledger)
	front.ledge = true
	return []*group{rim, front}
}

func (c *calc) group(s *Set, id string, passed stack, planes []layer, before float64) *group {
	g := &group{Set: s, id: id, stack: passed, parts: passed.parts, side: len(passed.parts) - 1, plane: planes,
		tip: before + s.Washer.Thickness.Inches()}
	g.name = map[string]string{"": "fasteners from ledger to rim", "_to_rim": "fasteners from block to rim",
		"_to_block": "fasteners from ledger to block"}[id]
	for _, z := range s.Rows {
		g.rows = append(g.rows, z.Inches())
	}
	for _, x := range s.Columns {
		g.cols = append(g.cols, x.Inches())
	}
	slices.Sort(g.rows)
	slices.Reverse(g.rows)
	slices.Sort(g.cols)
	g.dowel, g.known = DowelOf(s.Kind, s.Diameter, s.Yield)
	return g
}

func (g *group) d() float64    { return g.Diameter.Inches() }
func (g *group) top() float64  { return g.rows[0] }
func (g *group) low() float64  { return g.rows[len(g.rows)-1] }
func (g *group) wide() float64 { return g.cols[len(g.cols)-1] - g.cols[0] }

// outer is the distance of the outermost column from the block centre.
func (g *group) outer() float64 {
	return math.Max(math.Abs(g.cols[0]), math.Abs(g.cols[len(g.cols)-1]))
}

// closest returns the least distance between neighbours of a sorted list, infinite for one.
func closest(at []float64) float64 {
	least := math.Inf(1)
	for i := 1; i < len(at); i++ {
		least = math.Min(least, math.Abs(at[i]-at[i-1]))
	}
	return least
}

// unknown says why the yield equations cannot be used for a set; "" when they can.
func (c *calc) unknown(g *group) string {
	if !g.known {
		return fmt.Sprintf("no table lists a %s of %s", g.Kind, c.say(g.Diameter.Q()))
	}
	for _, p := range g.parts {
		for _, l := range p.layers {
			if s := missing(given{"thickness of " + the(l.name), l.thick}, given{"modulus of elasticity of " + the(l.name), l.e}); s != "" {
				return c.unlisted(l.name, s)
			}
			if l.g < 0.3 || l.g > 0.8 {
				return fmt.Sprintf("specific gravity of %s not stated, or outside 0.30 to 0.80 (NDS 2018 table 12.3.3)", the(l.name))
			}
		}
	}
	if g.Kind != Bolt && g.embedded() <= 0 {
		return fmt.Sprintf("length of the %s not stated, or too short to reach the wood it is to hold in (%s lie before it)",
			g.Kind, c.say(inch(g.tip)))
	}
	return ""
}

// factors fills in CM and Cg, one value for the whole set: the least of its members and planes.
func (c *calc) factors(g *group) {
	g.cm, g.cg = 1, 1
	rows := len(g.rows)
	if c.m.Blocks.VerticalGrain {
		rows = max(rows, len(g.cols))
	}
	for _, p := range g.parts {
		for _, m := range p.moisture {
			g.cm = math.Min(g.cm, wetFastener(m, rows, g.Diameter))
		}
	}
	width := g.wide()
	if width < 3*g.d() {
		width = 3 * g.d()
	}
	for _, l := range g.plane {
		pitch := unit.Length(math.Min(closest(g.rows), 1e3)) * unit.Inch
		g.cg = math.Min(g.cg, GroupAction(len(g.rows), pitch, g.Diameter, l.main.e*l.main.thick*width,
			l.side.e*l.side.thick*width))
	}
}

// adjust is the number of fasteners at a block times every factor but CD, the geometry factor of the block
// where it is least; adjustFor is the same for one duty.
func (g *group) adjust() float64 {
	cdelta := 1.0
	for _, d := range g.duties {
		cdelta = math.Min(cdelta, d.cdelta)
	}
	return float64(g.Count()) * g.cm * g.cg * cdelta
}

func (g *group) adjustFor(d duty) float64 { return float64(d.n) * g.cm * g.cg * d.cdelta }

// most is the greatest design reaction of the combination, lb.
func (s solution) most() float64 { return slices.Max(s.reaction) }

func (c *calc) worstMark() string { return c.m.Blocks.At[c.res.Worst].Mark }
