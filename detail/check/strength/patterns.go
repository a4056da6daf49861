package strength

import (
	"cmp"
	"math"
	"slices"

	"standclear/detail/unit"
)

// solution is the ledger under one combination, worst over where live and snow load stand; pounds and
// inches.
type solution struct {
	combo
	n        int          // its place among the combinations
	reaction []float64    // design value of each block
	uniform  []float64    // load on all spans
	least    []float64    // least favourable spans
	hog, sag float64      // greatest hogging (negative) and sagging moment anywhere
	support  float64      // greatest moment at a block, either way
	shear    float64      // greatest shear anywhere
	sides    [][2]float64 // greatest shear left and right of each block
	bent     bent         // load on all spans, smeared
}

// deflection is the greatest deflection in proportion to its span, in, and the combination that brings it.
type deflection struct {
	y, span float64
	under   string
}

// deflections are the greatest between blocks and at the overhangs.
type deflections struct{ between, overhang deflection }

// alike is how near, in proportion, two results count as the same: the first is then the one that is named.
const alike = 1e-9

// wider returns the deflection that is larger for its span.
func (d deflection) wider(o deflection) deflection {
	if d.span == 0 || o.y*d.span > d.y*o.span*(1+alike) {
		return o
	}
	return d
}

// merge takes in the ledger under one more arrangement of the load.
func (s *solution) merge(b *sum) {
	for i := range s.reaction {
		at := b.at(i)
		s.reaction[i] = max(s.reaction[i], at.reaction)
		s.least[i] = min(s.least[i], at.reaction)
		s.support = max(s.support, math.Abs(at.moment))
		s.sides[i][0] = max(s.sides[i][0], math.Abs(at.left))
		s.sides[i][1] = max(s.sides[i][1], math.Abs(at.right))
	}
	for i := range b.spans() {
		if least, most, shear := b.beyond(i); least >= s.hog && most <= s.sag && shear <= s.shear {
			continue
		}
		least, most, shear := b.span(i).moments()
		s.hog, s.sag = min(s.hog, least), max(s.sag, most)
		s.shear = max(s.shear, shear)
	}
}

// take widens the deflections to those of the beam in proportion to its spans under a combination; an overhang
// counts as half a span.
func (d *deflections) take(b *sum, under string) {
	last := b.spans() - 1
	for i := range b.spans() {
		length := b.length(i)
		of, span := &d.between, length
		if i == 0 || i == last {
			of, span = &d.overhang, 2*length
		}
		if length <= near {
			continue
		}
		floor := 0.0 // what the widest so far would be over this span
		if of.span > 0 {
			floor = of.y * span / of.span
		}
		if b.dropsLess(i, floor*(1-1e-9)) {
			continue
		}
		*of = of.wider(deflection{b.span(i).drop(b.ei(), floor), span, under})
	}
}

// patterns lists the arrangements of live load over n+1 segments of a beam on n supports: everywhere;
// beside each support and then every other segment, which is the most that support can get; the
// complement of each; every other segment, both ways.
func patterns(n int) [][]bool {
	all := make([]bool, n+1)
	for i := range all {
		all[i] = true
	}
	out := [][]bool{all}
	for i := range n {
		most, least := make([]bool, n+1), make([]bool, n+1)
		for k := range most {
			most[k] = k <= i && (i-k)%2 == 0 || k > i && (k-i-1)%2 == 0
			least[k] = !most[k]
		}
		out = append(out, most, least)
	}
	odd, even := make([]bool, n+1), make([]bool, n+1)
	for k := range odd {
		odd[k], even[k] = k%2 == 1, k%2 == 0
	}
	return append(out, odd, even)
}

// solve works the ledger out under every combination.
func (c *calc) solve() {
	b := c.beam()
	c.solved = make([]solution, len(c.combos))
	for i, k := range c.combos {
		c.solved[i] = newSolution(i, k, b.solve(c.smeared(b, k.total())))
	}
	c.arrangements(b)
	if c.a.Reaction == Audited {
		c.floorReactions(b)
	}
	h := c.heaviest()
	c.res.Diagram = h.bent.stations()
	for i, p := range c.m.Blocks.At {
		c.res.Reactions = append(c.res.Reactions, Reaction{p.Mark, p.X, pounds(h.reaction[i]), pounds(h.uniform[i]),
			pounds(h.least[i])})
		if h.reaction[i] > h.reaction[c.res.Worst]*(1+1e-9) {
			c.res.Worst = i
		}
	}
}

// alone takes the load off every block but the one that is checked by itself.
func (c *calc) alone() {
	if c.m.Blocks.Alone == "" {
		return
	}
	for i, p := range c.m.Blocks.At {
		if p.Mark == c.m.Blocks.Alone {
			c.res.Worst = i
			continue
		}
		for k := range c.solved {
			c.solved[k].reaction[i], c.solved[k].least[i], c.solved[k].sides[i] = 0, 0, [2]float64{}
		}
	}
}

// beam is the ledger on its blocks. A splice over an inner block ends continuity there.
func (c *calc) beam() beam {
	n := len(c.m.Blocks.At)
	b := beam{length: c.m.Ledger.Length.Inches(), at: make([]float64, n), cut: make([]bool, n)}
	for i, p := range c.m.Blocks.At {
		b.at[i] = p.X.Inches()
	}
	for _, x := range c.m.Ledger.Splices {
		if i, ok := c.blockUnder(x.Inches()); ok {
			b.cut[i] = i > 0 && i < n-1
		}
	}
	b.ei = c.stiffness()
	return b
}

// stiffness returns E' I of the ledger in lb in2. A ledger of unstated modulus is solved with any
// stiffness, for forces only.
func (c *calc) stiffness() float64 {
	l := c.m.Ledger
	d := (l.Top - l.Bottom).Inches()
	ei := l.Wood.elastic(l.Moisture.Service != Dry) * l.Thickness.Inches() * d * d * d / 12
	if missing(given{"", l.Wood.E.PSI()}) != "" {
		return 1e8
	}
	return ei
}

// blockUnder returns the block whose width holds x.
func (c *calc) blockUnder(x float64) (int, bool) {
	for i, p := range c.m.Blocks.At {
		if math.Abs(p.X.Inches()-x) <= c.m.Blocks.Width.Inches()/2 {
			return i, true
		}
	}
	return 0, false
}

// newSolution begins the solution of the n-th combination with the ledger under all of its load, smeared.
func newSolution(n int, k combo, uniform bent) solution {
	supports := len(uniform.at)
	s := solution{combo: k, n: n, reaction: make([]float64, supports), least: make([]float64, supports), sides: make([][2]float64, supports), bent: uniform, uniform: uniform.reaction}
	for i := range s.least {
		s.least[i] = math.Inf(1)
	}
	return s
}

// arrangements takes into every solution, and into the deflections of all, the load on all spans, and for the audited
// reading every pattern, both smeared along the ledger and joist by joist. A beam is linear: each arrangement of a
// combination is the sum of a load on all spans, one on those of the pattern, and the point loads, which are solved once.
func (c *calc) arrangements(b beam) {
	var ways []func(on []bool) action // by joist first: it bends the ledger most, and the other need not be looked into
	if c.a.Reaction == Audited && len(c.m.Joists.At) > 0 {
		at := c.joistLoads(b)
		ways = append(ways, func(on []bool) action { return c.byJoist(b, at, on) })
	}
	ways = append(ways, func(on []bool) action { return c.smearedOn(b, on) })
	all := patterns(len(b.at))
	var everywhere, pattern, points measured
	var work []piece
	order := c.heaviestFirst()
	for _, way := range ways {
		everywhere.solve(b, way(all[0]))
		points.solve(b, c.pointsAlone(way(all[0])))
		for i, on := range all {
			pattern.solve(b, way(on))
			for _, n := range order { // the heaviest bends most, and the rest need not be looked into
				s := &c.solved[n]
				if i > 0 && (c.a.Reaction == Plain || s.on(true) == s.on(false)) {
					continue // the same as on all spans
				}
				of := func(k combo) sum {
					return sum{[3]*measured{&everywhere, &pattern, &points}, [3]float64{k.on(false), k.on(true) - k.on(false), 1}, &work}
				}
				all, live := of(s.combo), of(s.moving())
				s.merge(&all)
				c.all.take(&all, s.name)
				c.live.take(&live, s.name)
			}
		}
	}
}

// heaviestFirst lists the combinations by their load, those of the same in their order.
func (c *calc) heaviestFirst() []int {
	order := make([]int, len(c.solved))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		a, b := c.solved[i].total(), c.solved[j].total()
		if math.Abs(a-b) <= alike*math.Max(a, b) {
			return 0
		}
		return cmp.Compare(b, a)
	})
	return order
}

// floorReactions raises each reaction to 1.25 w s between blocks and w (s/2 + overhang) at the ends, for
// fit-up, plus what the point loads bring. Slack holes may do more on a short span (support_slip).
func (c *calc) floorReactions(b beam) {
	points := b.solve(action{spread: make([]float64, len(b.at)+1), points: c.points()}).reaction
	for _, s := range c.solved {
		for i := range b.at {
			floor := s.total()*b.share(i) + math.Max(0, points[i])
			s.reaction[i] = math.Max(s.reaction[i], floor)
		}
	}
}

// share is the length of ledger a block is taken to carry at least, in.
func (b beam) share(i int) float64 {
	n := len(b.at)
	switch i {
	case 0:
		return b.at[0] + (b.at[1]-b.at[0])/2
	case n - 1:
		return b.length - b.at[i] + (b.at[i]-b.at[i-1])/2
	}
	return 1.25 * (b.at[i+1] - b.at[i-1]) / 2
}

// smeared is a load spread along the whole ledger, and the point loads.
func (c *calc) smeared(b beam, w float64) action {
	a := action{spread: make([]float64, len(b.at)+1), points: c.points()}
	for i := range a.spread {
		a.spread[i] = w
	}
	return a
}

// smearedOn is 1 lb/in spread along the segments where on, and the places of the point loads without their loads.
func (c *calc) smearedOn(b beam, on []bool) action {
	a := action{spread: make([]float64, len(b.at)+1), points: c.points()}
	for i := range a.points {
		a.points[i].p = 0
	}
	for i, full := range on {
		if full {
			a.spread[i] = 1
		}
	}
	return a
}

// joistLoad is where a joist loads the ledger, the segment it stands in and the length of ledger it carries.
type joistLoad struct {
	x, share float64
	segment  int
}

// joistLoads lists the joists. One between the outermost bolts of a block loads that block straight.
func (c *calc) joistLoads(b beam) []joistLoad {
	shares := c.shares()
	out := make([]joistLoad, len(shares))
	left, right := c.ledgerSet().left(), c.ledgerSet().right()
	for i, share := range shares {
		x := c.m.Joists.At[i].Inches()
		out[i] = joistLoad{x, share, b.segment(x)}
		for _, s := range b.at {
			if off := (unit.Length(x-s) * unit.Inch); off >= left && off <= right {
				out[i].x = s
			}
		}
	}
	return out
}

// byJoist is smearedOn as forces at the joists.
func (c *calc) byJoist(b beam, at []joistLoad, on []bool) action {
	a := c.smearedOn(b, nil)
	a.points = slices.Grow(a.points, len(at))
	for _, j := range at {
		p := 0.0
		if on[j.segment] {
			p = j.share
		}
		a.points = append(a.points, point{j.x, p})
	}
	return a
}

// pointsAlone is an action that loads the same places with the point loads and nothing else.
func (c *calc) pointsAlone(a action) action {
	a = action{spread: make([]float64, len(a.spread)), points: slices.Clone(a.points)}
	copy(a.points, c.points())
	for i := len(c.m.PointLoads); i < len(a.points); i++ {
		a.points[i].p = 0
	}
	return a
}

// segment returns the segment x stands in.
func (b beam) segment(x float64) int {
	for i, s := range b.at {
		if x < s {
			return i
		}
	}
	return len(b.at)
}

func (c *calc) points() []point {
	var out []point
	for _, p := range c.m.PointLoads {
		out = append(out, point{p.X.Inches(), p.Load.Pounds()})
	}
	return out
}

// stations samples the beam for a sketch: every end of a piece and eight points within it.
func (b bent) stations() []Station {
	var out []Station
	for _, s := range b.spans {
		for _, p := range s.pieces {
			for i := 0; i <= 8 && p.l > near; i++ {
				x := p.l * float64(i) / 8
				out = append(out, Station{
					X: unit.Length(p.x+x) * unit.Inch, Shear: pounds(p.v - p.w*x),
					Moment:     unit.Moment(p.momentAt(x)) * unit.PoundInch,
					Deflection: unit.Length(p.dropAt(x, b.ei)) * unit.Inch,
				})
			}
		}
	}
	return out
}
