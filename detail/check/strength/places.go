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
	floor          float64 // in diameters: under it no report goes
}

const (
	clauseEdge = "NDS 2018 table 12.5.1C"
	clauseEnd  = "NDS 2018 table 12.5.1A"
	clausePace = "NDS 2018 table 12.5.1B"
	clauseRows = "NDS 2018 table 12.5.1D"
)

// The least distances in diameters of any dowel, for fasteners that bring their own report.
const (
	floorEdge = 1.5
	floorEnd  = 2.0
	floorPace = 3.0
)

// places checks where the fasteners of a set stand in every piece and fills in C-delta.
func (c *calc) places(g *group) {
	if g.d() < quarter {
		c.notChecked(check.Step{ID: "distances" + g.id, Group: check.Connection, Name: "distances of the fasteners"},
			"the standard gives no distances for screws under 1/4 in; follow the maker's")
		return
	}
	common := 1.0
	for _, d := range c.distances(g) {
		c.add(d.step(g, "distance >= "+d.rule, d.least))
		if d.full > 0 {
			common = math.Min(common, geometryFactor(d.provided, d.full))
		}
	}
	c.endDistances(g, math.Min(common, c.neighbours(g)))
	c.depthOfGroup(g)
	c.hungDepth(g)
}

// floorPlaces holds evaluated fasteners to the least any dowel must keep. What their own report asks is not
// known here.
func (c *calc) floorPlaces(g *group) {
	c.notChecked(check.Step{ID: "distances" + g.id, Group: check.Connection, Name: "distances by the report of the fasteners",
		Clause: "the report as stated: " + g.Report, Where: "all blocks"},
		"end and edge distances and spacings are by the report, which is not read here; only the least for any dowel is held below")
	for _, d := range c.distances(g) {
		c.add(d.step(g, fmt.Sprintf("distance >= %.3g D, the least for any dowel", d.floor), d.floor*g.d()))
	}
}

func (d distance) step(g *group, formula string, least float64) check.Step {
	return check.Step{ID: d.id + g.id, Group: check.Connection, Symbol: "a", Name: d.name, Formula: formula,
		With:  []check.Arg{arg("D", g.Diameter.Q())},
		Value: inch(d.provided), Limit: check.Limit(inch(least)), Sense: check.AtLeast, Clause: d.clause, Where: d.where}
}

// distances lists everything a set must keep clear of.
func (c *calc) distances(g *group) []distance {
	all := append(c.spacings(g), c.blockPlaces(g)...)
	ledger, cut, backing := c.nearestEnds(g)
	if g.rim {
		all = append(all, c.rimPlaces(g)...)
		if c.counted() && backing.there() {
			all = append(all, distance{"end_backing", "outermost column to the end of the backing", "2 D, full value from 4 D",
				backing.mark, backing.away, 2 * g.d(), 0, clauseEnd, floorEnd})
		}
	}
	if g.ledge {
		all = append(all, c.ledgerPlaces(g, ledger, cut)...)
	}
	return all
}

// spacings are the distances between the fasteners of a set.
func (c *calc) spacings(g *group) []distance {
	var out []distance
	d := g.d()
	if len(g.rows) > 1 {
		out = append(out, distance{"spacing_in_row", "spacing of rows, one over the other", "3 D, full value from 4 D",
			"all blocks", closest(g.rows), 3 * d, 4 * d, clausePace, floorPace})
	}
	if len(g.cols) > 1 {
		least := g.columnSpacing()
		out = append(out, distance{"row_spacing", "spacing of columns, side by side",
			fmt.Sprintf("%.3g D at l/D %.2f", least/d, g.thinnest()/d), "all blocks", closest(g.cols), least, 0, clauseRows, floorPace})
	}
	return out
}

// thinnest is the thickness of the thinnest part the set passes, in.
func (g *group) thinnest() float64 {
	l := math.Inf(1)
	for _, p := range g.parts {
		l = math.Min(l, p.thick)
	}
	return l
}

// columnSpacing is the least distance of columns of the set, in.
func (g *group) columnSpacing() float64 { return rowSpacing(g.thinnest(), g.d()) }

// rimPlaces: the block's load pushes the rim's wood down, so its bottom edge is the loaded one.
func (c *calc) rimPlaces(g *group) []distance {
	r, d := c.m.Rim, g.d()
	return []distance{
		{"edge_rim_loaded", "lowest row to the loaded bottom edge of the rim", "4 D", "all blocks",
			g.low() - r.Bottom.Inches(), 4 * d, 0, clauseEdge, floorEdge},
		{"edge_rim_unloaded", "highest row to the top edge of the rim", "1.5 D", "all blocks", r.Top.Inches() - g.top(),
			1.5 * d, 0, clauseEdge, floorEdge},
	}
}

// ledgerPlaces: the bolts push the ledger's wood up, so its top edge is the loaded one.
func (c *calc) ledgerPlaces(g *group, end, cut placeAt) []distance {
	l, d := c.m.Ledger, g.d()
	out := []distance{
		{"edge_ledger_loaded", "highest row to the loaded top edge of the ledger", "4 D", "all blocks",
			l.Top.Inches() - g.top(), 4 * d, 0, clauseEdge, floorEdge},
		{"edge_ledger_unloaded", "lowest row to the bottom edge of the ledger", "1.5 D", "all blocks",
			g.low() - l.Bottom.Inches(), 1.5 * d, 0, clauseEdge, floorEdge},
	}
	const rule = "2 D, full value from 4 D"
	if end.there() {
		out = append(out, distance{"end_ledger", "outermost column to the end of the ledger", rule, end.mark, end.away,
			2 * d, 0, clauseEnd, floorEnd})
	}
	if cut.there() {
		out = append(out, distance{"end_splice", "fasteners to the cut ends at a ledger joint", rule, cut.mark, cut.away,
			2 * d, 0, clauseEnd, floorEnd})
	}
	return out
}

// blockPlaces: fasteners into the rim push the block's wood up, fasteners from the ledger push it down.
// With the grain upright the top and bottom of the block are its ends.
func (c *calc) blockPlaces(g *group) []distance {
	b, d := c.m.Blocks, g.d()
	top, bottom := b.Top.Inches()-g.top(), g.low()-b.Bottom.Inches()
	side := b.Width.Inches()/2 - g.outer()
	if b.VerticalGrain {
		return c.uprightPlaces(g, top, bottom, side)
	}
	up, upRule := edgeRule(g.rim)
	down, downRule := edgeRule(g.ledge)
	return []distance{
		{"edge_block_top", "highest row to the top edge of the block", upRule, "all blocks", top, up * d, 0, clauseEdge, floorEdge},
		{"edge_block_bottom", "lowest row to the bottom edge of the block", downRule, "all blocks", bottom, down * d, 0,
			clauseEdge, floorEdge},
		{"end_block", "outermost column to the end of the block", "2 D, full value from 4 D", "all blocks", side,
			2 * d, 4 * d, clauseEnd, floorEnd},
	}
}

func (c *calc) uprightPlaces(g *group, top, bottom, side float64) []distance {
	d := g.d()
	edge := 1.5 * d
	if c.thinnest()/d > 6 && len(g.cols) > 1 {
		edge = math.Max(edge, closest(g.cols)/2)
	}
	return []distance{
		{"end_block_top", "highest row to the top end of the block", "3.5 D, full value from 7 D", "all blocks", top,
			3.5 * d, 7 * d, clauseEnd, floorEnd},
		{"end_block_bottom", "lowest row to the bottom end of the block", "3.5 D, full value from 7 D", "all blocks",
			bottom, 3.5 * d, 7 * d, clauseEnd, floorEnd},
		{"edge_block", "outermost column to the side of the block", "1.5 D", "all blocks", side, edge, 0, clauseEdge, floorEdge},
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

// hungDepth: a load hung on bolts below mid-height splits the ledger along them.
func (c *calc) hungDepth(g *group) {
	if !g.ledge {
		return
	}
	l := c.m.Ledger
	d := (l.Top - l.Bottom).Inches()
	de := l.Top.Inches() - g.low()
	c.add(check.Step{ID: "ledger_de_over_d" + g.id, Group: check.Connection, Symbol: "r",
		Name: "depth of ledger above its lowest bolts", Formula: "de/d >= 0.6",
		With: []check.Arg{arg("de", inch(de)), arg("d", inch(d))}, Value: num(de / d), Limit: check.Limit(num(0.6)),
		Sense:  check.AtLeast,
		Clause: "NDS 2018 3.8.2; judgement: 0.6", Where: "all blocks",
		Note: "the rim stands on its plate and does not hang on its bolts"})
}
