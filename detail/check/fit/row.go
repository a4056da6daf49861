package fit

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/layout"
)

// layout reports the row of blocks: spacing, ends, joists, obstacles, overlap.
func (c *fitter) layout() {
	s, l := c.a.Spec, c.a.Layout
	worst, at := 0.0, 0
	for i, d := range l.Spaces() {
		if d > worst {
			worst, at = d, i
		}
	}
	c.atMost(check.Step{ID: "block_spacing_max", Group: check.Fit, Symbol: "s", Name: "greatest block spacing", Formula: "x(i+1) - x(i)",
		Clause: "project: blocks.max_spacing", Where: c.mark(at) + " to " + c.mark(at+1), Reason: c.whySpacing(worst), Note: c.Story(),
		Fix: "blocks.max_spacing: " + c.text(l.Limit)}, worst, s.Blocks.MaxSpacing.MM())
	c.ends()
	c.clearOf("house joist", "bolt_joist_clearance", "bolt axis to house joist axis", math.Max(s.Floor.Joists.Clearance.MM(), c.a.JoistClear(false)))
	c.zones("inside", "bolt_obstacle", "bolts clear of obstacles behind the rim")
	c.zones("outside", "block_obstacle", "blocks clear of obstacles on the wall")
	c.overlap()
}

func (c *fitter) whySpacing(worst float64) string {
	l := c.a.Layout
	if l.Forced || l.Unplaced {
		return fmt.Sprintf("%s is more than the %s allowed", c.text(worst), c.text(c.a.Spec.Blocks.MaxSpacing.MM()))
	}
	return fmt.Sprintf("no row of blocks keeps %s: a blocked bay must carry a block, or the spacing must rise to %s",
		c.text(c.a.Spec.Blocks.MaxSpacing.MM()), c.text(l.Limit))
}

// Story tells how the row came about.
func (c *fitter) Story() string { return Story(c.a.Layout, c.text, c.fine) }

// Story explains a layout in one sentence or two: equal where it can be, else why not.
func Story(l layout.Result, text, fine func(float64) string) string {
	row := describe(l.X, text)
	switch {
	case l.Forced:
		return "positions as given: " + row
	case l.Equal && len(l.FirstTry.Clashes) == 0:
		return row
	case len(l.FirstTry.Clashes) > 0:
		return fmt.Sprintf("%s clash at %s; %s", describe(l.FirstTry.X, text), clashes(l.FirstTry.Clashes, fine), row)
	}
	return row
}

func describe(x []float64, text func(float64) string) string {
	r := layout.Row{X: x}
	sp := r.Spaces()
	if len(sp) == 0 {
		return fmt.Sprintf("%d block", len(x))
	}
	lo, hi := sp[0], sp[0]
	for _, d := range sp {
		lo, hi = math.Min(lo, d), math.Max(hi, d)
	}
	if hi-lo < 1e-6 {
		return fmt.Sprintf("%d blocks at %d equal spaces of %s", len(x), len(sp), text(lo))
	}
	return fmt.Sprintf("%d blocks at spaces of %s to %s", len(x), text(lo), text(hi))
}

func clashes(cs []layout.Clash, fine func(float64) string) string {
	var out []string
	for _, k := range cs {
		b := fmt.Sprintf("B%d", k.Block+1)
		switch k.Kind {
		case "inside", "outside":
			out = append(out, fmt.Sprintf("%s (%s from the left end, in the %s)", b, fine(k.X), k.Name))
		case "spacing", "end":
			out = append(out, fmt.Sprintf("%s (%s %s)", b, k.Kind, fine(k.Distance)))
		default:
			out = append(out, fmt.Sprintf("%s (%s off %s)", b, fine(k.Distance), k.Name))
		}
	}
	return list(out)
}

func (c *fitter) ends() {
	s, x := c.a.Spec, c.a.Layout.X
	if len(x) == 0 {
		return
	}
	d := []float64{x[0], s.Ledger.Length.MM() - x[len(x)-1]}
	for i, end := range []string{"left", "right"} {
		step := check.Step{ID: "block_end_" + end, Group: check.Fit, Symbol: "e", Name: "end block to " + end + " end of ledger", Formula: "centre to end",
			Clause: "project: blocks.end_min, end_max", Where: c.mark(i * (len(x) - 1))}
		if d[i] < s.Blocks.EndMin.MM()-1e-6 {
			step.Reason = fmt.Sprintf("%s is under the %s asked for", c.text(d[i]), c.text(s.Blocks.EndMin.MM()))
			c.atLeast(step, d[i], s.Blocks.EndMin.MM())
			continue
		}
		step.Reason = fmt.Sprintf("%s of ledger stand beyond the last block; %s allowed", c.text(d[i]), c.text(s.Blocks.EndMax.MM()))
		c.atMost(step, d[i], s.Blocks.EndMax.MM())
	}
}

// clearOf reports the least distance to a row of joists, and every block that comes too near.
func (c *fitter) clearOf(kind, id, name string, need float64) {
	rules := c.a.Rules()
	worst, at := math.Inf(1), 0
	for i, x := range c.a.Layout.X {
		if k, ok := rules.Closest(kind, x); ok && k.Distance < worst {
			worst, at = k.Distance, i
		}
	}
	if math.IsInf(worst, 1) {
		return
	}
	var near []string
	for _, k := range c.a.Layout.Clashes {
		if k.Kind == kind && k.Distance < need-1e-6 {
			near = append(near, fmt.Sprintf("%s %s", c.mark(k.Block), c.fine(k.Distance)))
		}
	}
	c.atLeast(check.Step{ID: id, Group: check.Fit, Symbol: "c", Name: name, Formula: "least |x bolt - x joist|", Clause: "project: floor.joists.bolt_clearance; not under half the joist and half the washer",
		Where: c.mark(at), Reason: fmt.Sprintf("too near the %ss: %s; %s needed", kind, list(near), c.text(need)),
		Fix: "let the blocks be placed by search (leave out blocks.positions and blocks.equal)"}, worst, need)
}

func (c *fitter) zones(kind, id, name string) {
	any := false
	for _, o := range c.a.Spec.Obstacles {
		any = any || o.Inside == (kind == "inside")
	}
	if !any {
		return
	}
	var hit []string
	for _, k := range c.a.Layout.Clashes {
		if k.Kind == kind {
			hit = append(hit, fmt.Sprintf("%s at %s is in the zone of %s, %s to %s", c.mark(k.Block), c.fine(k.X), k.Name, c.text(k.At), c.text(k.Need)))
		}
	}
	c.holds(check.Step{ID: id, Group: check.Fit, Name: name, Clause: "project: obstacles", Where: "all blocks", Reason: list(hit)}, len(hit) == 0)
}

func (c *fitter) overlap() {
	gap, at := math.Inf(1), 0
	for i, d := range c.a.Layout.Spaces() {
		if d-c.a.Spec.Blocks.Width.MM() < gap {
			gap, at = d-c.a.Spec.Blocks.Width.MM(), i
		}
	}
	if math.IsInf(gap, 1) {
		return
	}
	c.atLeast(check.Step{ID: "block_clear_gap", Group: check.Fit, Symbol: "a", Name: "clear gap between neighbouring blocks", Formula: "s - w",
		Clause: "judgement: room to wrap and flash each block", Where: c.mark(at) + " to " + c.mark(at+1),
		Reason: fmt.Sprintf("%s between blocks leaves no room for wrap and insulation", c.text(gap))}, gap, c.round(2, detail.BetweenBlocks))
}

// deckJoists checks that hangers and bolt heads do not meet on the ledger.
func (c *fitter) deckJoists() {
	need := c.a.HangerClear()
	worst := math.Inf(1)
	var hit []string
	for j, x := range c.a.DeckJoists {
		for _, b := range c.a.Blocks {
			for _, at := range b.Bolts {
				d := math.Abs(at.X - x)
				worst = math.Min(worst, d)
				if d < need-1e-6 {
					hit = append(hit, fmt.Sprintf("J%d at %s", j+1, b.Mark))
					break
				}
			}
		}
	}
	if math.IsInf(worst, 1) {
		return
	}
	c.atLeast(check.Step{ID: "hanger_bolt_clearance", Group: check.Fit, Symbol: "c", Name: "bolt axis to deck joist axis", Formula: "b/2 + hanger flange + washer/2",
		Clause: "judgement: hanger flange and washer side by side", Where: "ledger face", Reason: fmt.Sprintf("hangers sit on bolt heads: %s; %s apart where it is least, %s needed", list(hit), c.text(worst), c.text(need)),
		Fix: "shift the joists named, or use hangers without outside flanges (deck.joists.hanger_flange: 0)"}, worst, need)
}

// seats: every block whole behind the ledger, every joist hung on wood, no piece longer than it is sold.
func (c *fitter) seats() {
	s, f := c.a.Spec, c.a.Frame
	l := s.Ledger.Length.MM()
	if n := len(c.a.Blocks); n > 0 {
		out := math.Min(c.a.Blocks[0].Box.Min.X, l-c.a.Blocks[n-1].Box.Max.X)
		c.atLeast(check.Step{ID: "block_behind_ledger", Group: check.Fit, Symbol: "a", Name: "end blocks whole behind the ledger", Formula: "ledger end - block end", Clause: "geometry", Where: "end blocks",
			Reason: fmt.Sprintf("a block stands %s out past the ledger", c.text(-out)), Fix: "blocks.end_min: at least half the block's width"}, out, 0)
	}
	c.atLeast(check.Step{ID: "joist_on_ledger", Group: check.Fit, Symbol: "a", Name: "hangers whole on the ledger", Formula: "z joist - z ledger", Clause: "common practice, no source: ledger as deep as the joists", Where: "ledger",
		Reason: fmt.Sprintf("joists and hangers end %s below the ledger", c.text(f.LedgerBottom-(f.LedgerTop-s.Deck.Joists.Depth.MM()))), Fix: "ledger.height: at least the depth of the deck joists"},
		f.LedgerTop-s.Deck.Joists.Depth.MM()-f.LedgerBottom, 0)
	if room, j := c.a.HangerRoom(); j >= 0 {
		c.atLeast(check.Step{ID: "hanger_on_ledger", Group: check.Fit, Symbol: "a", Name: "hanger flanges whole on the ledger", Formula: "end of the piece - edge of the hanger's hold", Clause: "judgement: wood behind the whole flange; nails and their edges by its maker", Where: fmt.Sprintf("J%d", j+1),
			Reason: fmt.Sprintf("the hanger of J%d stands %s past the end of its piece, its flanges turned in already", j+1, c.text(-room)), Fix: "deck.joists.first: at least half the joist; joists clear of ledger.splices"}, room, 0)
	}
	if s.Floor.Backing.Kind != "none" && len(c.a.HouseJoists) > 0 {
		c.atLeast(check.Step{ID: "joist_behind_rim", Group: check.Fit, Symbol: "h", Name: "house joists as deep as the backing they hold", Formula: "floor.joists.depth", Clause: "judgement: ties and clips need a joist over the backing's height, less 1/2 in (12 mm)", Where: "floor",
			Reason: fmt.Sprintf("the joists are %s deep, the backing %s: nothing holds its foot", c.text(s.Floor.Joists.Depth.MM()), c.text(s.Floor.Rim.Depth.MM())), Fix: "an engineer's detail for the foot of the backing"},
			s.Floor.Joists.Depth.MM(), s.Floor.Rim.Depth.MM()-c.round(0.5, 12))
	}
	if s.Floor.Bearing == "plate" && s.Floor.PlateWidth > 0 {
		step := check.Step{ID: "rim_on_plate_width", Group: check.Fit, Symbol: "b", Name: "rim and its backing whole on the plate", Formula: "rim + backing", Clause: "geometry", Where: "floor"}
		deep := c.a.Frame.RimOut - c.a.Frame.BackingIn
		if deep > s.Floor.PlateWidth.MM()+1e-6 {
			step.Verdict, step.Reason = check.Engineer, fmt.Sprintf("rim and backing are %s deep on a plate of %s: what is past it hangs on its fixings alone", c.text(deep), c.text(s.Floor.PlateWidth.MM()))
		}
		c.atMost(step, deep, s.Floor.PlateWidth.MM())
	}
	long := 0.0
	for _, p := range c.a.Find(detail.Ledger) {
		long = math.Max(long, p.Size[2].MM())
	}
	c.atMost(check.Step{ID: "ledger_piece", Group: check.Fit, Symbol: "L", Name: "longest piece of the ledger", Formula: "between splices", Clause: "common practice, no source: lumber is sold to 20 ft (6 m)", Where: "ledger",
		Reason: fmt.Sprintf("a piece of %s cannot be bought", c.text(long)), Fix: "ledger.splices: " + c.overBlock()}, long, c.round(240, 6000))
}

// overBlock names the axis of the block nearest the middle of the ledger, as a joint.
func (c *fitter) overBlock() string {
	mid, near := c.a.Spec.Ledger.Length.MM()/2, math.Inf(1)
	for _, b := range c.a.Blocks {
		if math.Abs(b.X-mid) < math.Abs(near-mid) {
			near = b.X
		}
	}
	if math.IsInf(near, 1) {
		return "a joint over a block"
	}
	return "[" + c.text(near) + "], over the block nearest the middle, or over others"
}
