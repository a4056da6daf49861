package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
)

// distance is one end, edge or spacing a set of dowels must keep, in inches: the least allowed, and
// the least at which the full value counts (0: no reduction applies).
type distance struct {
	id, name, rule string
	where          string
	provided       float64
	least, full    float64
	clause         string
}

const (
	clauseEdge = "NDS 2018 table 12.5.1C"
	clauseEnd  = "NDS 2018 table 12.5.1A"
	clausePace = "NDS 2018 table 12.5.1B"
	clauseRows = "NDS 2018 table 12.5.1D"
)

// places checks where the fasteners of a set stand in every piece and returns C-delta.
func (c *calc) places(g *group) float64 {
	if g.d() < quarter {
		c.notChecked(check.Step{ID: "distances" + g.id, Group: check.Connection, Name: "distances of the fasteners"},
			"the standard gives no distances for screws under 1/4 in; follow the maker's")
		return 1
	}
	all := append(c.spacings(g), c.blockPlaces(g)...)
	if g.rim {
		all = append(all, c.rimPlaces(g)...)
	}
	if g.ledge {
		all = append(all, c.ledgerPlaces(g)...)
	}
	cdelta := 1.0
	for _, d := range all {
		c.add(check.Step{ID: d.id + g.id, Group: check.Connection, Name: d.name, Formula: "at least " + d.rule,
			With:  []check.Arg{arg("D", g.Diameter.Q())},
			Value: inch(d.provided), Limit: check.Limit(inch(d.least)), Sense: check.AtLeast, Clause: d.clause, Where: d.where})
		if d.full > 0 {
			cdelta = math.Min(cdelta, geometryFactor(d.provided, d.full))
		}
	}
	c.add(check.Step{ID: "c_delta" + g.id, Group: check.Connection, Symbol: "Cd", Name: "geometry factor of the set",
		Formula: "least of provided over full distance", Value: num(cdelta), Clause: "NDS 2018 12.5.1"})
	c.depthOfGroup(g)
	c.hungDepth(g)
	return cdelta
}

// spacings are the distances between the fasteners of a set.
func (c *calc) spacings(g *group) []distance {
	var out []distance
	d := g.d()
	if len(g.rows) > 1 {
		out = append(out, distance{"spacing_in_row", "spacing of rows, one over the other", "3 D, full value from 4 D",
			"all blocks", closest(g.rows), 3 * d, 4 * d, clausePace})
	}
	if len(g.cols) > 1 {
		l := math.Inf(1)
		for _, p := range g.parts {
			l = math.Min(l, p.thick)
		}
		least := rowSpacing(l, d)
		out = append(out, distance{"row_spacing", "spacing of columns, side by side",
			fmt.Sprintf("%.3g D at l/D %.2f", least/d, l/d), "all blocks", closest(g.cols), least, 0, clauseRows})
	}
	return out
}

// rimPlaces: the block's load pushes the rim's wood down, so its bottom edge is the loaded one.
func (c *calc) rimPlaces(g *group) []distance {
	r, d := c.m.Rim, g.d()
	return []distance{
		{"edge_rim_loaded", "lowest row to the loaded bottom edge of the rim", "4 D", "all blocks",
			g.low() - r.Bottom.Inches(), 4 * d, 0, clauseEdge},
		{"edge_rim_unloaded", "highest row to the top edge of the rim", "1.5 D", "all blocks", r.Top.Inches() - g.top(),
			1.5 * d, 0, clauseEdge},
	}
}

// ledgerPlaces: the bolts push the ledger's wood up, so its top edge is the loaded one.
func (c *calc) ledgerPlaces(g *group) []distance {
	l, d := c.m.Ledger, g.d()
	end, where := c.ledgerEnd(g)
	out := []distance{
		{"edge_ledger_loaded", "highest row to the loaded top edge of the ledger", "4 D", "all blocks",
			l.Top.Inches() - g.top(), 4 * d, 0, clauseEdge},
		{"edge_ledger_unloaded", "lowest row to the bottom edge of the ledger", "1.5 D", "all blocks",
			g.low() - l.Bottom.Inches(), 1.5 * d, 0, clauseEdge},
		{"end_ledger", "outermost column to the end of the ledger", "2 D, full value from 4 D", where, end, 2 * d, 4 * d,
			clauseEnd},
	}
	if cut := c.nearestCut(g); !math.IsInf(cut, 1) {
		out = append(out, distance{"end_splice", "fasteners to the cut ends at a ledger joint", "2 D, full value from 4 D",
			"blocks under joints", cut, 2 * d, 4 * d, clauseEnd})
	}
	return out
}

// nearestCut is the least distance from a fastener to a ledger joint over its block, in; infinite without
// joints.
func (c *calc) nearestCut(g *group) float64 {
	least := math.Inf(1)
	for _, x := range c.m.Ledger.Splices {
		i, ok := c.blockUnder(x.Inches())
		if !ok {
			continue
		}
		for _, o := range g.cols {
			least = math.Min(least, math.Abs(c.m.Blocks.At[i].X.Inches()+o-x.Inches()))
		}
	}
	return least
}

// blockPlaces: fasteners into the rim push the block's wood up, fasteners from the ledger push it down.
// With the grain upright the top and bottom of the block are its ends.
func (c *calc) blockPlaces(g *group) []distance {
	b, d := c.m.Blocks, g.d()
	top, bottom := b.Top.Inches()-g.top(), g.low()-b.Bottom.Inches()
	side := b.Width.Inches()/2 - g.outer()
	if b.VerticalGrain {
		edge := 1.5 * d
		if c.thinnest()/d > 6 && len(g.cols) > 1 {
			edge = math.Max(edge, closest(g.cols)/2)
		}
		return []distance{
			{"end_block_top", "highest row to the top end of the block", "3.5 D, full value from 7 D", "all blocks", top,
				3.5 * d, 7 * d, clauseEnd},
			{"end_block_bottom", "lowest row to the bottom end of the block", "3.5 D, full value from 7 D", "all blocks",
				bottom, 3.5 * d, 7 * d, clauseEnd},
			{"edge_block", "outermost column to the side of the block", "1.5 D", "all blocks", side, edge, 0, clauseEdge},
		}
	}
	up, upRule := edgeRule(g.rim)
	down, downRule := edgeRule(g.ledge)
	return []distance{
		{"edge_block_top", "highest row to the top edge of the block", upRule, "all blocks", top, up * d, 0, clauseEdge},
		{"edge_block_bottom", "lowest row to the bottom edge of the block", downRule, "all blocks", bottom, down * d, 0,
			clauseEdge},
		{"end_block", "outermost column to the end of the block", "2 D, full value from 4 D", "all blocks", side,
			2 * d, 4 * d, clauseEnd},
	}
}

// edgeRule is the least edge distance across the grain in diameters: 4 where the load pushes toward the
// edge.
func edgeRule(loaded bool) (times float64, rule string) {
	if loaded {
		return 4, "4 D, loaded edge"
	}
	return 1.5, "1.5 D"
}

// thinnest is the thickness of the thinnest ply, in.
func (c *calc) thinnest() float64 {
	t := math.Inf(1)
	for _, p := range c.m.Blocks.Plies {
		t = math.Min(t, p.Thickness.Inches())
	}
	return t
}

// depthOfGroup: rows far apart across the grain of wet wood split it as it shrinks.
func (c *calc) depthOfGroup(g *group) {
	wet := false
	for _, p := range g.parts {
		for _, m := range p.moisture {
			wet = wet || m.Service != Dry || m.Assembly != Dry
		}
	}
	s := check.Step{ID: "scope_group" + g.id, Group: check.Scope, Name: "spread of bolt rows in wet wood",
		Value: inch(g.top() - g.low()), Clause: "NDS 2018 12.5.1.3; judgement", Where: "all blocks"}
	if !wet {
		s.Verdict, s.Note = check.OK, "all wood dry when fastened and in service"
		c.add(s)
		return
	}
	s.Limit = check.Limit(c.a.MaxGroup.Q())
	c.engineer(s, "bolt rows "+c.say(s.Value)+" apart in wet wood split it as it shrinks; at most "+c.say(c.a.MaxGroup.Q()))
}

// hungDepth: a load hung on bolts below mid-height splits the ledger along them.
func (c *calc) hungDepth(g *group) {
	if !g.ledge {
		return
	}
	l := c.m.Ledger
	d := (l.Top - l.Bottom).Inches()
	de := l.Top.Inches() - g.low()
	c.add(check.Step{ID: "ledger_de_over_d" + g.id, Group: check.Connection, Symbol: "de/d",
		Name: "depth of ledger above its lowest bolts",
		With: []check.Arg{arg("de", inch(de)), arg("d", inch(d))}, Value: num(de / d), Limit: check.Limit(num(0.6)),
		Sense:  check.AtLeast,
		Clause: "NDS 2018 3.8.2; judgement: 0.6", Where: "all blocks",
		Note: "the rim stands on its plate and does not hang on its bolts"})
}

// engineer adds a step whose failure puts the design outside this program instead of failing it.
func (c *calc) engineer(s check.Step, reason string) {
	s = settle(s)
	if s.Verdict == check.Fails {
		s.Verdict, s.Reason = check.Engineer, reason
	}
	c.add(s)
}

// washers checks that plates lie whole on the rim and clear of one another.
func (c *calc) washers(g *group) {
	size := g.Washer.Size.Inches()
	if size < 1e-3 {
		c.notChecked(check.Step{ID: "washer_clear" + g.id, Group: check.Connection, Name: "washers"},
			"size of the washers not stated")
		return
	}
	if pace := math.Min(closest(g.rows), closest(g.cols)); !math.IsInf(pace, 1) {
		c.add(check.Step{ID: "washer_clear" + g.id, Group: check.Connection, Name: "washers clear of one another",
			Value: inch(size), Limit: check.Limit(inch(pace)),
			Formula: "washer size <= least spacing of fasteners", Clause: "fit", Where: "all blocks"})
	}
	if g.rim && g.Kind == Bolt {
		room := math.Min(c.m.Rim.Top.Inches()-g.top(), g.low()-c.m.Rim.Bottom.Inches())
		c.add(check.Step{ID: "washer_on_rim" + g.id, Group: check.Connection, Name: "washers lie whole on the rim",
			Formula: "edge distance >= washer size/2",
			Value:   inch(room), Limit: check.Limit(inch(size / 2)), Sense: check.AtLeast, Clause: "judgement",
			Where: "all blocks"})
	}
}

// washerArea is the bearing area of one washer in in2, cut where it would overlap its neighbours.
func (g *group) washerArea() float64 {
	size := g.Washer.Size.Inches()
	hole := math.Pi / 4 * g.hole() * g.hole()
	if g.Washer.Round {
		size = math.Min(size, math.Min(closest(g.rows), closest(g.cols)))
		return math.Max(0, math.Pi/4*size*size-hole)
	}
	return math.Max(0, math.Min(size, closest(g.rows))*math.Min(size, closest(g.cols))-hole)
}

// ledgerEnd is the shortest distance from an outermost column to an end of the ledger, in.
func (c *calc) ledgerEnd(g *group) (end float64, mark string) {
	at := c.m.Blocks.At
	first, last := at[0], at[len(at)-1]
	left := first.X.Inches() + g.cols[0]
	right := (c.m.Ledger.Length - last.X).Inches() - g.cols[len(g.cols)-1]
	if right < left {
		return right, last.Mark
	}
	return left, first.Mark
}
