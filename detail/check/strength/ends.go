package strength

import (
	"math"
	"slices"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// endDistances fills in the geometry factor of every duty: the least of its members, each at its own block.
// common is what spacings and the block itself leave. A short end of the ledger, a ledger joint or an end of
// the backing cuts the fasteners there and no others.
func (c *calc) endDistances(g *group, common float64) {
	s := check.Step{ID: "c_delta" + g.id, Group: check.Connection, Symbol: "Cd", Name: "geometry factor of the set where it is least",
		Formula: "least of provided over full distance, by member and block", Value: num(common), Clause: "NDS 2018 12.5.1"}
	ledger, backing := 1.0, 1.0
	for i := range g.duties {
		d := &g.duties[i]
		l, b := c.ledgerFactor(g, *d), c.backingFactor(g, *d)
		ledger, backing = math.Min(ledger, l), math.Min(backing, b)
		d.cdelta = math.Min(common, math.Min(l, b))
		if d.cdelta < s.Value.V {
			s.Value, s.Where = num(d.cdelta), c.where(*d)
		}
	}
	s.With = []check.Arg{arg("block", num(common))}
	if g.ledge {
		s.With = append(s.With, arg("ledger", num(ledger)))
	}
	if g.rim && c.counted() {
		s.With = append(s.With, arg("backing", num(backing)))
	}
	c.add(s)
}

// ledgerFactor is the geometry factor of the ledger for one duty: full value at 4 D from an end, across
// the grain.
func (c *calc) ledgerFactor(g *group, d duty) float64 {
	if !g.ledge || len(d.cols) == 0 {
		return 1
	}
	end, cut := c.ledgerEnds(c.at(d))
	return geometryFactor(math.Min(end, cut), 4*g.d())
}

// backingFactor is the same for the piece of backing behind a duty, where the backing bears.
func (c *calc) backingFactor(g *group, d duty) float64 {
	end := c.backingEnd(c.at(d))
	if !g.rim || !c.counted() || math.IsInf(end, 1) {
		return 1
	}
	return geometryFactor(end, 4*g.d())
}

// ledgerEnds returns the least distance of columns at x from an end of the ledger and from the cut end at a
// joint over a block, in; infinite where there is none.
func (c *calc) ledgerEnds(x []float64) (end, cut float64) {
	end, cut = math.Inf(1), math.Inf(1)
	cuts := c.cuts()
	for _, at := range x {
		i, _ := slices.BinarySearch(cuts, at)
		i = min(max(i, 1), len(cuts)-1)
		for _, k := range []int{i - 1, i} {
			away := math.Abs(at - cuts[k])
			if outside := at < 0 || at > cuts[len(cuts)-1]; outside {
				away = -away
			}
			if k == 0 || k == len(cuts)-1 {
				end = math.Min(end, away)
			} else {
				cut = math.Min(cut, away)
			}
		}
	}
	return end, cut
}

// cuts are the ends of the ledger's pieces from left to right, in.
func (c *calc) cuts() []float64 {
	out := []float64{0, c.m.Ledger.Length.Inches()}
	for _, s := range c.m.Ledger.Splices {
		if s > 0 && s < c.m.Ledger.Length {
			out = append(out, s.Inches())
		}
	}
	slices.Sort(out)
	return out
}

// pieceAt returns the piece of backing that x stands on, in.
func (c *calc) pieceAt(x float64) (Span, bool) {
	at := unit.Length(x) * unit.Inch
	for _, p := range c.m.Backing.Pieces {
		if at >= p.From && at <= p.To {
			return p, true
		}
	}
	return Span{}, false
}

// backingEnd returns the least distance of columns at x from an end of the piece they stand on, in;
// infinite where none stands on one.
func (c *calc) backingEnd(x []float64) float64 {
	least := math.Inf(1)
	for _, at := range x {
		if p, ok := c.pieceAt(at); ok {
			least = math.Min(least, math.Min(at-p.From.Inches(), p.To.Inches()-at))
		}
	}
	return least
}

// nearestEnds returns the least distance of a set from an end of the ledger, from a cut end at a joint and
// from an end of the backing, each with the block it is at; infinite where there is none.
func (c *calc) nearestEnds(g *group) (ledger, cut, backing placeAt) {
	ledger, cut, backing = nowhere(), nowhere(), nowhere()
	for _, p := range c.m.Blocks.At {
		var x []float64
		for _, o := range g.cols {
			x = append(x, p.X.Inches()+o)
		}
		end, atCut := c.ledgerEnds(x)
		ledger.nearer(end, p.Mark)
		cut.nearer(atCut, p.Mark)
		backing.nearer(c.backingEnd(x), p.Mark)
	}
	return ledger, cut, backing
}

// placeAt is a distance in inches and the block it is at.
type placeAt struct {
	away float64
	mark string
}

func nowhere() placeAt { return placeAt{away: math.Inf(1)} }

func (p *placeAt) nearer(away float64, mark string) {
	if away < p.away*(1-1e-12) {
		*p = placeAt{away, mark}
	}
}

// there tells whether the distance is of anything.
func (p placeAt) there() bool { return !math.IsInf(p.away, 1) }
