package strength

import (
	"math"
	"math/rand/v2"
	"testing"

	"standclear/detail/unit"
)

// What is added up of parts solved once is what each arrangement comes to when it is solved as a whole, by the beam
// that TestBeamAgainstStiffnessMatrix holds: with joists and without, with point loads and without, over splices.
func TestArrangementsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 0x50))
	for n := range 60 {
		m := scenarioB()
		m.Loads = Loads{Dead: psfp(5 + 10*r.Float64()), Live: psfp(40 + 60*r.Float64()), Snow: psfp(float64(n%3) * 20), GroundSnow: psfp(0)}
		m.Ledger.Length = unit.Length(100+100*r.Float64()) * in
		m.Ledger.Splices = nil
		length, x := m.Ledger.Length.Inches(), []float64{}
		for at := 3 + 15*r.Float64(); at < length; at += 10 + 20*r.Float64() {
			x = append(x, at)
		}
		m.Blocks.At = marks(x...)
		if n%4 == 1 {
			m.Ledger.Splices = lengths(x[len(x)/2])
		}
		m.Joists.At = nil
		if n%2 == 0 {
			for at := 0.75; at < length; at += 8 + 8*r.Float64() {
				m.Joists.At = append(m.Joists.At, unit.Length(at)*in)
			}
		}
		m.PointLoads = nil
		for range n % 3 {
			m.PointLoads = append(m.PointLoads, PointLoad{"stair", unit.Length(length*r.Float64()) * in, unit.Force(900*r.Float64()-200) * unit.Pound})
		}
		c := &calc{m: m, a: m.Assume.filled()}
		c.loads()
		c.solve()
		b := c.beam()
		live, all := map[string]deflections{}, map[string]deflections{} // of each combination
		for i, k := range c.combos {
			var l, a deflections
			got, want := c.solved[i], c.eachAlone(b, k, &l, &a)
			live[k.name], all[k.name] = l, a
			for j := range b.at {
				same(t, n, k.name, "reaction", got.reaction[j], want.reaction[j])
				same(t, n, k.name, "least reaction", got.least[j], want.least[j])
				same(t, n, k.name, "shear left", got.sides[j][0], want.sides[j][0])
				same(t, n, k.name, "shear right", got.sides[j][1], want.sides[j][1])
			}
			same(t, n, k.name, "hogging", got.hog, want.hog)
			same(t, n, k.name, "sagging", got.sag, want.sag)
			same(t, n, k.name, "moment at a block", got.support, want.support)
			same(t, n, k.name, "shear", got.shear, want.shear)
		}
		between := func(d deflections) deflection { return d.between }
		overhang := func(d deflections) deflection { return d.overhang }
		isWorst(t, n, "live between", c.live.between, live, between)
		isWorst(t, n, "live overhang", c.live.overhang, live, overhang)
		isWorst(t, n, "between", c.all.between, all, between)
		isWorst(t, n, "overhang", c.all.overhang, all, overhang)
	}
}

// isWorst holds a deflection to those of every combination alone: none is greater, and that of the one it names is as
// great.
func isWorst(t *testing.T, n int, name string, got deflection, alone map[string]deflections, of func(deflections) deflection) {
	t.Helper()
	for combo, all := range alone {
		if d := of(all); d.y*got.span > got.y*d.span*(1+1e-8) {
			t.Errorf("%d: deflection %s, %v, but under %s %v", n, name, got, combo, d)
		}
	}
	d := of(alone[got.under])
	same(t, n, got.under, "deflection in its span, "+name, got.y*d.span, d.y*got.span)
}

func same(t *testing.T, n int, combo, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*(1+math.Abs(want))) {
		t.Errorf("%d, %s: %s %.12g, alone %.12g", n, combo, what, got, want)
	}
}

// eachAlone solves every arrangement of a combination as a whole; live and all become its deflections.
func (c *calc) eachAlone(b beam, k combo, live, all *deflections) solution {
	s := newSolution(0, k, b.solve(c.smeared(b, k.total())))
	for _, on := range patterns(len(b.at)) {
		for part, load := range []combo{k, k.moving()} {
			smeared := c.smeared(b, 0)
			for i := range smeared.spread {
				smeared.spread[i] = load.on(on[i])
			}
			ways := []action{smeared}
			if len(c.m.Joists.At) > 0 {
				joists := c.smeared(b, 0)
				for _, j := range c.joistLoads(b) {
					joists.points = append(joists.points, point{j.x, load.on(on[j.segment]) * j.share})
				}
				ways = append(ways, joists)
			}
			for _, a := range ways {
				if one := alone(b.solve(a)); part == 0 {
					s.merge(one)
					all.take(one, k.name)
				} else {
					live.take(one, k.name)
				}
			}
		}
	}
	for i := range b.at {
		points := b.solve(c.smeared(b, 0)).reaction
		s.reaction[i] = math.Max(s.reaction[i], s.total()*b.share(i)+math.Max(0, points[i]))
	}
	return s
}

// alone is a beam under one action, as a sum.
func alone(b bent) *sum {
	m := measured{bent: b}
	m.measure()
	for i := range m.most { // nothing is passed over
		m.most[i] = extremes{math.Inf(-1), math.Inf(1), math.Inf(1), math.Inf(1), true}
	}
	none := m
	none.most = make([]extremes, len(b.spans))
	return &sum{[3]*measured{&m, &none, &none}, [3]float64{1, 0, 0}, &[]piece{}}
}
