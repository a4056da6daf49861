package fit

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// levels checks that the bolts meet the rim and reports where the foot of the block bears.
func (c *fitter) levels() {
	f := c.a.Frame
	low, high := math.Inf(1), math.Inf(-1)
	for _, r := range c.a.Rows {
		if r.Set == c.a.Spec.Fasteners.ToBlock {
			continue
		}
		low, high = math.Min(low, r.Z), math.Max(high, r.Z)
	}
	c.atLeast(check.Step{ID: "lowest_row_in_rim", Group: check.Fit, Symbol: "a", Name: "lowest bolt row above the underside of the rim", Formula: "z row - z rim",
		Clause: "geometry", Where: "all blocks", Reason: fmt.Sprintf("the lower bolts leave the rim: row at %s, rim from %s to %s", c.text(low), c.text(f.RimTop), c.text(f.RimBottom)),
		Fix: fmt.Sprintf("deck.below_floor: at most %s", c.text(c.down(-f.DeckTop-(f.RimBottom+c.loadedEdge()-low))))}, low-f.RimBottom, 0)
	c.atLeast(check.Step{ID: "highest_row_in_rim", Group: check.Fit, Symbol: "a", Name: "highest bolt row below the top of the rim", Formula: "z rim - z row",
		Clause: "geometry", Where: "all blocks", Reason: fmt.Sprintf("the upper bolts leave the rim: row at %s, rim from %s to %s", c.text(high), c.text(f.RimTop), c.text(f.RimBottom))}, f.RimTop-high, 0)
	below := f.RimBottom - f.BlockBottom
	note := "the foot bears on the rim alone"
	if below > 0 {
		note = fmt.Sprintf("%s of the foot bear below the rim, on the plate", c.text(below))
	}
	if f.BlockBottom < f.PlateBottom {
		note = "the foot reaches below the plate"
	}
	c.r.Add(check.Step{ID: "foot_below_rim", Group: check.Fit, Symbol: "d", Name: "foot of the block below the rim", Formula: "z rim - z foot", Value: length(below), Clause: "geometry", Where: "all blocks", Note: note})
	if f.LedgerBottom < f.RimBottom {
		c.r.Add(check.Step{ID: "ledger_below_rim", Group: check.Fit, Symbol: "d", Name: "underside of ledger below the rim", Formula: "z rim - z ledger", Value: length(f.RimBottom - f.LedgerBottom), Clause: "geometry", Where: "ledger"})
	}
}

// bolts checks length and hole of every set.
func (c *fitter) bolts() {
	for i, set := range c.a.Spec.Fasteners.Sets() {
		suffix := ""
		if i > 0 {
			suffix = fmt.Sprintf("_%d", i+1)
		}
		grip := c.a.Grip(set).Length()
		c.r.Add(check.Step{ID: "grip" + suffix, Group: check.Fit, Symbol: "G", Name: "grip of the fasteners", Formula: "faces under the washers", Value: grip.Q(), Clause: "geometry", Where: "all blocks"})
		if set.Kind != "bolt" {
			continue
		}
		need, have := c.a.BoltNeeds(set).MM(), c.a.BoltLength(set).MM()
		n := detail.Hex(set.Diameter)
		c.atLeast(check.Step{ID: "bolt_length" + suffix, Group: check.Fit, Symbol: "L", Name: "bolt length", Formula: "G + 2 washers + nut + 3 threads",
			With:   []check.Arg{{Symbol: "G", Value: grip.Q()}, {Symbol: "washer", Value: set.Washer.Thickness.Q()}, {Symbol: "nut", Value: n.Nut.Q()}, {Symbol: "pitch", Value: n.Pitch.Q()}},
			Clause: "ASME B18.2.2 nut; three threads beyond it: common practice, no source", Where: "all blocks",
			Reason: fmt.Sprintf("too short by %s: %s needed", c.fine(need-have), c.fine(need)), Fix: c.key(set) + ".length: leave it out, the stock length is chosen"}, have, need)
		c.thread(set, have, suffix)
		c.hole(set, suffix)
	}
}

// thread: the nut must come tight before it runs out of thread.
func (c *fitter) thread(set *spec.Set, long float64, suffix string) {
	t := set.Thread.MM()
	if t <= 0 {
		t = detail.Hex(set.Diameter).Thread(unit.Length(long)).MM()
	}
	room := (c.a.Grip(set).Length() + 2*set.Washer.Thickness).MM()
	c.atMost(check.Step{ID: "bolt_shank" + suffix, Group: check.Fit, Symbol: "L - T", Name: "bolt without its thread, against what it clamps", Formula: "L - T <= G + 2 washers",
		With:   []check.Arg{{Symbol: "L", Value: length(long)}, {Symbol: "T", Value: length(t)}},
		Clause: "ASME B18.2.1 thread length (from memory, confirm)", Where: "all blocks", Reason: "the bolt is too long: the nut runs out of thread before it is tight",
		Fix: c.key(set) + ".length: leave it out, the stock length is chosen"}, long-t, room)
}

// loadedEdge is the distance from a loaded edge that a bolt into the rim needs: 4 D.
func (c *fitter) loadedEdge() float64 { return 4 * c.a.Spec.Fasteners.Sets()[0].Diameter.MM() }

// hole: room for the bolt, not more than its value allows.
func (c *fitter) hole(set *spec.Set, suffix string) {
	hole, d := set.Hole.MM(), set.Diameter.MM()
	lo, hi := 25.4/32, 25.4/16
	clause := "NDS 2018 12.1.3.2: 1/32 to 1/16 in over the bolt"
	if c.sys == unit.SI {
		lo, hi = 1, 2 // NDS 2018 12.1.3.2 in hard metric: the drill sizes for M bolts are 1 to 2 mm over
		clause = "NDS 2018 12.1.3.2 in hard metric: 1 to 2 mm over the bolt (judgement)"
	}
	over := hole - d
	step := check.Step{ID: "bolt_hole" + suffix, Group: check.Fit, Symbol: "h - D", Name: "clearance of the bolt hole", Formula: "hole - diameter", Clause: clause, Where: "all blocks"}
	if over < lo-1e-6 {
		step.Reason = fmt.Sprintf("hole %s leaves %s round a %s bolt: at least %s", c.text(hole), c.fine(over), c.text(d), c.fine(lo))
		step.Fix = c.key(set) + ".hole: " + c.text(d+hi)
		c.atLeast(step, over, lo)
		return
	}
	step.Reason = fmt.Sprintf("hole %s is %s over the bolt: at most %s", c.text(hole), c.fine(over), c.fine(hi))
	step.Fix = c.key(set) + ".hole: " + c.text(d+hi)
	c.atMost(step, over, hi)
}

// access: nuts inside can only be set where a hand can reach them.
func (c *fitter) access() {
	s := c.a.Spec
	if s.Fasteners.Sets()[0].Kind != "bolt" {
		return
	}
	n := len(c.a.Blocks)
	step := check.Step{ID: "nut_access", Group: check.Fit, Name: "nuts can be reached from inside", Clause: "project: floor.access", Where: "all blocks",
		Reason: fmt.Sprintf("nuts unreachable at %d places: the ceiling inside is finished", n),
		Fix:    "floor.access: strip with floor.strip (open a strip of ceiling along the wall); or fasteners set from outside with evaluated values; or a deck standing free of the house"}
	c.holds(step, s.Floor.Access == "open" || s.Floor.Access == "strip" && s.Floor.Strip.MM() >= 300)
}
