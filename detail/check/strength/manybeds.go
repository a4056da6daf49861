package strength

import (
	"math"
)

// reading is one way to look at a fastener through everything it passes.
type reading struct {
	id, name string
	beds     []Bed
	transfer Transfer
	state    state
}

// readings works out both ways to look at a set whose dowels pass parts of the block that hang on nothing
// else, and which of them counts. Without such parts there is one way, and it counts.
func (c *calc) readings(g *group) {
	g.void = c.reading(g, "many_layer_void", "shear, whole fastener, loose parts of the block bear nothing", Void)
	g.held = c.reading(g, "many_layer_held", "shear, whole fastener, the faces of each loose part hold its couple", Loose)
	g.counts = &g.void
	if g.side > 1 && c.heldCounts(g) {
		g.counts = &g.held
	}
	for i := range g.plane {
		g.plane[i].informal = g.plane[i].floating && g.counts == &g.held
	}
	for _, r := range []*reading{&g.void, &g.held} {
		if g.side < 2 && r == &g.held {
			continue
		}
		f := g.dowel.Figure(r.beds)
		f.Set, f.Reading, f.Counts = g.name, r.id, r == g.counts
		c.res.Dowels = append(c.res.Dowels, f)
	}
}

func (c *calc) reading(g *group, id, name string, loose Hold) reading {
	r := reading{id: id, name: name, beds: g.beds(loose)}
	r.transfer = g.dowel.Transfer(r.beds)
	r.state = g.dowel.atLimit(r.beds, r.transfer)
	return r
}

// beds are the layers along the dowel from inside to outside: the main part, what lies between, and the parts
// the load comes from. A part that is loose bears over its thickness with the weakest of its layers.
func (g *group) beds(loose Hold) []Bed {
	d := g.Diameter
	out := g.mainBeds()
	for k := 1; k < len(g.parts); k++ {
		if v := g.stack.voids[k-1]; v > 0 {
			out = append(out, Bed{Name: "void", Hold: Void, Length: inches(v)})
		}
		p := g.parts[k]
		if k < g.side {
			fe, angle := p.bearing(d)
			out = append(out, Bed{p.name, loose, inches(p.thick), fe, angle})
			continue
		}
		for _, l := range p.layers {
			out = append(out, Bed{l.name, Side, inches(l.thick), DowelBearing(l.g, d, l.angle), l.angle})
		}
	}
	return out
}

// mainBeds are the layers of the main part as far as the dowel bears in them.
func (g *group) mainBeds() []Bed {
	main := g.parts[0]
	past := 0.0 // what lies inside of the tip of a screw
	if g.Kind != Bolt {
		_, bearing := g.holding(main.thick)
		past = main.thick - bearing
	}
	var out []Bed
	for _, l := range main.layers {
		cut := math.Min(past, l.thick)
		past -= cut
		if l.thick-cut > 1e-9 {
			out = append(out, Bed{l.name, Main, inches(l.thick - cut), DowelBearing(l.g, g.Diameter, l.angle), l.angle})
		}
	}
	return out
}

// open is the longest stretch of dowel without bearing, in.
func (r reading) open() float64 {
	most, run := 0.0, 0.0
	for _, b := range r.beds {
		if b.Hold == Void {
			run += b.Length.Inches()
			most = math.Max(most, run)
		} else {
			run = 0
		}
	}
	return most
}

// share is the net force of the layers of the main group with a name, over the load: more than 1 where the
// others bear the other way, negative where these do.
func (r reading) share(name string) float64 {
	s := r.state
	if s.p <= 0 {
		return 0
	}
	nets := s.main.nets(s.main.pressing(s.p, s.my))
	_, last := groupOf(r.beds)
	sum := 0.0
	for i, f := range nets {
		if r.beds[last-i].Name == name {
			sum += f
		}
	}
	return sum / s.p
}

// couples are what the loose parts give the dowel over the load, in, by part from the main one outward.
func (r reading) couples() []float64 {
	var out []float64
	_, last := groupOf(r.beds)
	for i, b := range r.state.gives {
		if r.beds[last+1+i].Hold == Loose {
			out = append(out, b/math.Max(r.state.p, 1e-9))
		}
	}
	return out
}

// faceMoment is the moment in the dowel at the face of its main part over the load, in, where it holds the load
// up; else nothing.
func (r reading) faceMoment() float64 {
	s := r.state
	if s.p <= 0 {
		return 0
	}
	return math.Max(0, s.main.hold(s.p, s.my)/s.p)
}
