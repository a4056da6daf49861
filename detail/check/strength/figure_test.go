package strength

import (
	"math"
	"math/rand/v2"
	"testing"
)

// pushes are the forces of the wood on a dowel, up positive, by layer, in lb and in.
func (f DowelFigure) pushes(d Dowel) (net []float64, sum, moment float64) {
	net = make([]float64, len(f.Beds))
	for i, b := range f.Beds {
		q := b.Fe.PSI() * d.Root.Inches()
		for _, s := range b.Bears {
			p := q * s.Share * (s.To - s.From).Inches()
			if !s.Up {
				p = -p
			}
			net[i] += p
			moment += p * (s.To + s.From).Inches() / 2
		}
		sum += net[i]
	}
	return net, sum, moment
}

// bends is the greatest moment in the dowel, either way.
func (f DowelFigure) bends(d Dowel) float64 {
	most := 0.0
	end := f.Beds[len(f.Beds)-1].To.Inches()
	for i := range 401 {
		at, m := end*float64(i)/400, 0.0
		for _, b := range f.Beds {
			q := b.Fe.PSI() * d.Root.Inches()
			for _, s := range b.Bears {
				from, to := s.From.Inches(), math.Min(at, s.To.Inches())
				if to <= from {
					continue
				}
				p := q * s.Share * (to - from)
				if !s.Up {
					p = -p
				}
				m += p * (at - (from+to)/2)
			}
		}
		most = math.Max(most, math.Abs(m))
	}
	return most
}

// The free body of every dowel drawn: the main group holds the load up, the side group pushes it down, loose
// parts net nothing, the moments close, and nowhere does the dowel carry more than its plastic moment.
func TestFigureIsInBalance(t *testing.T) {
	r := rand.New(rand.NewPCG(29, 31))
	for n := range 3000 {
		d, side, main, gap := anyJoint(r)
		beds := []Bed{{"back", Main, main.Bearing / 2, main.Fe, 90}, {"rim", Main, main.Bearing / 2, main.Fe, 90}, {"void", Void, gap, 0, 0}}
		if r.IntN(2) == 0 {
			beds = append(beds, Bed{"ply", Hold(3 * r.IntN(2)), inches(0.5 + 2*r.Float64()), psis(2900), 90})
		}
		beds = append(beds, Bed{"side", Side, side.Bearing, side.Fe, 90})
		f := d.Figure(beds)
		net, sum, moment := f.pushes(d)
		load, size := f.Load.Pounds(), f.Load.Pounds()*f.Beds[len(f.Beds)-1].To.Inches()
		mainNet, looseNet := net[0]+net[1], 0.0
		for i, b := range f.Beds {
			if b.Hold == Loose {
				looseNet += net[i]
			}
		}
		if math.Abs(mainNet-load) > 1e-6*load || math.Abs(sum) > 1e-6*load || math.Abs(looseNet) > 1e-6*load || math.Abs(moment) > 1e-5*size {
			t.Fatalf("case %d, %s: main %.4f of %.4f, sum %.6f, loose %.6f, moment %.6f", n, f.Governs, mainNet, load, sum, looseNet, moment)
		}
		if my := d.Plastic().PoundInches(); f.Governs != "turning" && f.bends(d) > my*1.001 {
			t.Fatalf("case %d, %s: the dowel bends with %.2f, plastic moment %.2f", n, f.Governs, f.bends(d), my)
		}
	}
}

// The whole bolt of scenario B turns stiff at 1436 lb: the rim bears over its 1.5 in, the backing on over
// (1436/1406.25 + 3)/2 - 1.5 = 0.5106 in and back over 0.9894; the block pushes down over its inner half and up
// over the outer; the ledger (1436/2031.25 + 1.5)/2 = 1.1035 in down and 0.3965 up.
func TestFigureByHand(t *testing.T) {
	_, res := Run(scenarioB())
	f := res.Dowels[1]
	if f.Reading != "many_layer_held" || !f.Counts || len(f.Hinges) != 0 {
		t.Fatalf("second figure is %s, counts %v, %d hinges", f.Reading, f.Counts, len(f.Hinges))
	}
	want := []struct {
		layer    string
		from, to float64
		up       bool
	}{
		{"backing", 0, 0.9894, false}, {"backing", 0.9894, 1.5, true}, {"rim", 1.5, 3, true},
		{"block", 3.5, 5, false}, {"block", 5, 6.5, true}, {"ledger", 6.5, 7.6035, false}, {"ledger", 7.6035, 8, true},
	}
	n := 0
	for _, b := range f.Beds {
		for _, s := range b.Bears {
			if n < len(want) {
				w := want[n]
				if b.Name != w.layer || s.Up != w.up || math.Abs(s.From.Inches()-w.from) > 1e-3 || math.Abs(s.To.Inches()-w.to) > 1e-3 {
					t.Errorf("%s from %.4f to %.4f up %v, by hand %+v", b.Name, s.From.Inches(), s.To.Inches(), s.Up, w)
				}
			}
			n++
		}
	}
	if n != len(want) {
		t.Errorf("%d stretches, want %d", n, len(want))
	}
}

// Over random models: a fastener whose loose parts hold a couple carries no less than one whose parts are voids,
// and what rim and backing bear sums to the load.
func TestReadingsOverModels(t *testing.T) {
	n := 0
	for seed := range uint64(300) {
		m := randomModel(seed, 0)
		c := &calc{m: m, a: m.Assume.filled()}
		if m.faults() != nil {
			continue
		}
		if c.loads(); len(c.combos) == 0 {
			continue
		}
		c.solve()
		c.fasteners()
		for _, g := range c.groups {
			if g.counts == nil {
				continue
			}
			n++
			if g.void.transfer.Z > g.held.transfer.Z*(1+1e-9) {
				t.Fatalf("seed %d%s: void %v, held %v", seed, g.id, g.void.transfer.Z, g.held.transfer.Z)
			}
			if !g.rim {
				continue
			}
			if rim, backing, _ := c.bandShares(); math.Abs(rim+backing-1) > 1e-6 {
				t.Fatalf("seed %d%s: rim bears %.6f, backing %.6f of the load", seed, g.id, rim, backing)
			}
		}
	}
	if n < 100 {
		t.Errorf("%d sets looked at", n)
	}
}

// The block as a free body between the two faces, over random models: with T and the heights of block_couple the
// ledger outside of it is in balance too, R e = T (h - ho) + n M, e from the outer face to the load line, M what
// the bolts carry there.
func TestBlockIsInBalance(t *testing.T) {
	n := 0
	for seed := range uint64(400) {
		m := randomModel(seed, 0)
		m.Blocks.Pad, m.Blocks.FrontGap, m.Blocks.LedgerScrews, m.Blocks.PliesFastened = Pad{}, 0, PlyScrews{}, true
		if m.faults() != nil || m.Fasteners.Through == nil || m.Sheathing.Thickness == 0 {
			continue
		}
		c := &calc{m: m, a: m.Assume.filled()}
		if c.loads(); len(c.combos) == 0 {
			continue
		}
		c.solve()
		c.fasteners()
		g, s := c.groups[0], c.rep.Find("block_couple")
		if s == nil || s.Limit == nil || g.held.state.main.hold(g.held.state.p, g.held.state.my) < 0 {
			continue
		}
		n++
		f := c.rimFace(g)
		arg := func(symbol string) float64 { v, _ := lookUp(c.rep, "block_couple["+symbol+"]"); return v }
		load, st := arg("R"), g.held.state
		height := f.g.top() - f.foot - c.armOver(f, c.whole(f, 1).depth) + c.whole(f, 1).lever // of T over the foot
		moment := -load * st.side.hold(st.p, st.my) / st.p
		if left, right := load*c.outside(), arg("T")*(height-arg("ho"))+moment; math.Abs(left-right) > 1e-6*left {
			t.Fatalf("seed %d: R e = %.4f, T (h - ho) + n M = %.4f", seed, left, right)
		}
	}
	if n < 30 {
		t.Errorf("%d blocks looked at", n)
	}
}
