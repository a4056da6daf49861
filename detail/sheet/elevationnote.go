package sheet

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"standclear/detail"
	"standclear/detail/unit"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
	"strings"
)

// cutMarks shows where the sections are cut: a chain line through the ledger with heavy ends, its mark
// below the object.
func (w *writer) cutMarks(c *composer) {
	b := w.sectionBlock()
	low, high := c.object.Min.Y, w.a.Frame.DeckTop+c.mm(12)
	cuts, names := []float64{w.cutAtBlock(b), w.cutBetween()}, []string{"1", "2"}
	if cuts[0] > cuts[1] {
		cuts[0], cuts[1], names[0], names[1] = cuts[1], cuts[0], names[1], names[0]
	}
	slots := []slot{{want: cuts[0] / c.k, before: 7, after: 10}, {want: cuts[1] / c.k, before: 7, after: 10}}
	spread(slots)
	for i, x := range cuts {
		at := geom.Vec{X: slots[i].at * c.k, Y: low - c.mm(15)}
		foot := geom.Vec{X: x, Y: low - c.mm(1)}
		c.put(
			render.Stroke{Pen: render.Heading, Path: geom.Polyline(geom.Vec{X: x, Y: high}, geom.Vec{X: x, Y: high - c.mm(8)})},
			render.Stroke{Pen: render.CutLine, Path: geom.Polyline(geom.Vec{X: x, Y: high - c.mm(8)}, foot)},
			render.Stroke{Pen: render.Heading, Path: geom.Polyline(foot, geom.Vec{X: x, Y: low - c.mm(6)}, at.Add(geom.Vec{Y: c.mm(6)}))},
			render.Insert{Pen: render.Mark, Symbol: sectionMark, At: at, Scale: c.k, Fields: []render.Field{{Name: "VIEW_NO", Value: names[i]}, {Name: "SHEET_NO", Value: "A-301"}}},
		)
	}
	c.object.Min.Y = low - c.mm(21)
}

// marks lists the marks of the blocks, of what stands in the way and of posts and point loads, from the left.
func (w *writer) marks() (names []string, at []float64) {
	for _, b := range w.a.Blocks {
		names, at = append(names, b.Mark), append(at, b.X)
	}
	type mark struct {
		name string
		x    float64
	}
	var more []mark
	for _, o := range w.a.Find(detail.Obstacle, detail.Outside) {
		more = append(more, mark{o.Mark, o.Bounds().Center().X})
	}
	for i, x := range w.a.Spec.Deck.GuardPosts {
		more = append(more, mark{fmt.Sprintf("GP%d", i+1), x.MM()})
	}
	for i, p := range w.a.Spec.Deck.PointLoads {
		more = append(more, mark{fmt.Sprintf("PL%d", i+1), p.X.MM()})
	}
	for _, m := range more {
		x := m.x
		if x < w.a.Frame.Left || x > w.a.Frame.Right {
			continue // past what is drawn
		}
		i := sort.SearchFloat64s(at, x)
		names, at = slices.Insert(names, i, m.name), slices.Insert(at, i, x)
	}
	return names, at
}

// blockMarks sets the marks of the blocks in a row over everything else.
func (w *writer) blockMarks(c *composer) {
	y := c.extent.Max.Y + c.mm(7)
	names, at := w.marks()
	slots := make([]slot, len(names))
	for i := range names {
		slots[i] = slot{want: at[i] / c.k, before: 4.5, after: 4.5}
	}
	spread(slots)
	for i, name := range names {
		c.put(render.Insert{Pen: render.Mark, Symbol: partMark, At: geom.Vec{X: slots[i].at * c.k, Y: y}, Scale: c.k, Fields: []render.Field{{Name: "MARK", Value: name}}})
	}
	c.grow(geom.Vec{X: c.extent.Min.X, Y: y + c.mm(5)})
}

// elevationLevels names the levels on the right, the high end of the ground on the left.
func (w *writer) elevationLevels(c *composer, p view.Picture) {
	f, s := w.a.Frame, w.a.Spec
	lv := func(z float64, name string) { c.level(right, geom.Vec{X: p.Window.Max.X, Y: z}, name+" "+w.signed(z)) }
	joint := func(a, b float64, both, one, other string) {
		if math.Abs(a-b) < 0.5 {
			lv(a, both)
			return
		}
		lv(a, one)
		lv(b, other)
	}
	lv(0, "FIN. FLOOR")
	lv(f.RimTop, "T.O. RIM")
	lv(f.DeckTop, "T.O. DECKING")
	joint(f.LedgerTop, f.BlockTop, "T.O. LEDGER AND BLOCK", "T.O. LEDGER", "T.O. BLOCK")
	for i, z := range w.rowLevels() {
		lv(z, fmt.Sprintf("BOLT ROW %d", i+1))
	}
	lv(f.RimBottom, "B.O. RIM")
	joint(f.LedgerBottom, f.BlockBottom, "B.O. LEDGER AND BLOCK", "B.O. LEDGER", "B.O. BLOCK")
	for i, d := range s.Doors {
		lv(d.Threshold.MM(), fmt.Sprintf("DOOR %d, THRESHOLD", i+1))
	}
	if g := s.Foundation.Grade; g != nil && s.Foundation.Kind != "wall" {
		lv(g.MM(), "GROUND, LOW END")
		if h := s.Foundation.GradeHigh; h != nil && !w.sparse {
			c.level(left, geom.Vec{X: p.Window.Min.X, Y: h.MM()}, "GROUND, HIGH END "+w.signed(h.MM()))
		}
	}
}

// rowLevels are the heights of the fastener rows, highest first, each once.
func (w *writer) rowLevels() []float64 {
	var z []float64
	for _, r := range w.a.Rows {
		z = append(z, r.Z)
	}
	z = distinct(z)
	slices.Reverse(z)
	return z
}

// elevationNotes names what the elevation shows, on its left side.
func (w *writer) elevationNotes(c *composer, p view.Picture) {
	s, f := w.a.Spec, w.a.Frame
	edge := p.Window.Min.X
	if len(w.a.Blocks) > 0 {
		b := w.a.Blocks[0]
		c.call(left, geom.Vec{X: b.Box.Min.X, Y: (b.Box.Min.Z + b.Box.Max.Z) / 2}, render.Arrow, w.countLine())
	}
	var end []geom.Vec
	for _, t := range []float64{0.1, 0.3, 0.5, 0.7, 0.9} {
		end = append(end, geom.Vec{X: 0, Y: f.LedgerBottom + t*(f.LedgerTop-f.LedgerBottom)})
	}
	c.callOn(left, end, render.Arrow, "LEDGER L1, OUTLINE ONLY")
	if !w.sparse {
		c.call(left, geom.Vec{X: edge + 60, Y: f.RimBottom}, render.Arrow, "RIM BEHIND (DASHED): NO BOLT OUTSIDE IT")
	}
	if j, ok := firstAfter(w.a.HouseJoists, edge); ok {
		c.call(left, geom.Vec{X: j - s.Floor.Joists.Flange.MM()/2, Y: f.RimTop - 40}, render.Arrow, w.houseJoistWords()+fmt.Sprintf(" BEHIND (DASHED); LEAST DISTANCE OF A BOLT AXIS FROM A JOIST AXIS %s", w.text(w.leastToJoist())))
	}
	c.call(left, geom.Vec{X: edge + 40, Y: 200}, render.Dot, w.claddingWords())
	if v := s.Wall.Cladding.BelowSill.MM(); v > 0 && len(s.Doors) > 0 && w.a.Count(detail.Cladding) > 0 {
		c.call(left, geom.Vec{X: s.Doors[0].From.MM() + 30, Y: f.SubTop - v/2}, render.Arrow, fmt.Sprintf("CLADDING STOPS %s BELOW THE SILL: WAY OUT OF THE CAVITY OVER F1%s", w.text(v), either(s.Water.Screen, ", SCREENED", "")))
	}
	if s.Foundation.Kind != "wall" && s.Foundation.GradeHigh != nil {
		c.call(left, geom.Vec{X: edge + 30, Y: s.Foundation.GradeHigh.MM() - 60}, render.Dot, "GROUND, FALLS ALONG THE WALL; KEEP IT FALLING AWAY FROM THE WALL")
	}
	if w.a.Count(detail.Base) > 0 && !w.sparse {
		c.call(left, geom.Vec{X: edge + 20, Y: f.Bottom - 4}, render.Arrow, "F4 BASE FLASHING")
	}
	if rods := w.a.Find(detail.TensionRod); len(rods) > 0 {
		c.call(left, geom.Vec{X: rods[0].Bounds().Min.X, Y: rods[0].Bounds().Center().Z}, render.Arrow, w.deviceWords())
	}
}

// claddingWords give the opening in the finished cladding and how far the layers must be off the wall while
// membranes and flashing go in.
func (w *writer) claddingWords() string {
	f, s := w.a.Frame, w.a.Spec
	off := w.stripped()
	return fmt.Sprintf("CLADDING OPEN ROUND THE LEDGER FROM %s TO %s, %s BEYOND ITS ENDS; IN A CLAD WALL TAKE CLADDING, FURRING AND INSULATION OFF FROM %s TO %s AND PUT THEM BACK OVER MEMBRANES AND F1",
		w.signed(f.BandBottom), w.signed(f.BandTop), w.text(s.Wall.Cladding.AboveFlash.MM()), w.signed(off.lo), w.signed(off.hi))
}

// joistsAlong is said where house joists would be named and none are drawn.
const joistsAlong = "HOUSE JOISTS RUN ALONG THE RIM: NOT DRAWN, THE PROJECT DOES NOT PLACE THEM"

// houseJoistWords say where the house joists stand: the first right of the ledger's left end, and the spacing.
func (w *writer) houseJoistWords() string {
	t := "HOUSE JOISTS AT " + w.exact(w.a.Spec.Floor.Joists.Spacing)
	if x, ok := firstAfter(w.a.HouseJoists, 0); ok {
		t += ", ONE AT " + w.exact(unit.Length(x)) + " FROM THE LEFT END OF THE LEDGER,"
	}
	return t
}

// firstAfter returns the first of the ascending values past x.
func firstAfter(v []float64, x float64) (float64, bool) {
	for _, a := range v {
		if a > x {
			return a, true
		}
	}
	return 0, false
}

// down prints a length rounded down to the drafting step: a clearance is never printed larger than it is.
func (w *writer) down(mm float64) string {
	u := step(w.a.Spec.Project.System)
	return w.text(math.Floor(mm/u+1e-6) * u)
}

// up prints a length rounded up to the drafting step: a least distance is never printed smaller than it is.
func (w *writer) up(mm float64) string {
	u := step(w.a.Spec.Project.System)
	return w.text(math.Ceil(mm/u-1e-6) * u)
}

// leastToJoist is the least distance of a bolt axis from a house joist's axis.
func (w *writer) leastToJoist() float64 {
	rules, least := w.a.Rules(), math.Inf(1)
	for _, b := range w.a.Blocks {
		if k, ok := rules.Closest("house joist", b.X); ok {
			least = math.Min(least, k.Distance)
		}
	}
	return least
}

// deviceWords name the lateral tension devices and say where they stand.
func (w *writer) deviceWords() string {
	var at []string
	for _, d := range w.a.Tension {
		at = append(at, w.text(d.X))
	}
	return fmt.Sprintf("LT1 LATERAL TENSION DEVICE, EACH %s ALLOWABLE, %d: AXES AT %s FROM THE LEFT END, AT %s, BESIDE %s AND A DECK JOIST; HOLE %s; SEAL AT THE BARRIER", w.a.Spec.Tie.Lateral.Rating.Text(w.a.Spec.Project.System), len(at), strings.Join(at, ", "), w.signed(w.rodLevel()), w.heldInside(), w.text(w.rodHole()))
}

// heldInside names what holds a tension device inside.
func (w *writer) heldInside() string {
	return either(len(w.a.HouseJoists) > 0, "A HOUSE JOIST", "BLOCKING BY THE ENGINEER")
}

// rodHole is the hole for a tension rod: its size and 1/16 in or 1.5 mm.
func (w *writer) rodHole() float64 { return w.a.Spec.Pick(9.0/16*25.4, 13.5) }

// rodLevel is the height of the tension rods' axis.
func (w *writer) rodLevel() float64 {
	if rods := w.a.Find(detail.TensionRod); len(rods) > 0 {
		return rods[0].Bounds().Center().Z
	}
	return 0
}

// countLine is what an inspector counts.
func (w *writer) countLine() string {
	t := fmt.Sprintf("COUNT: %d BLOCKS", len(w.a.Blocks))
	for i, set := range w.a.Spec.Fasteners.Sets() {
		n := 0
		for _, p := range w.a.Find(detail.Bolt) {
			if p.Mark == fmt.Sprintf("BT%d", i+1) {
				n++
			}
		}
		t += fmt.Sprintf("; %s %s x %s: %d", boltWord(set.Kind), w.diameter(set.Diameter), w.bought(w.a.BoltLength(set)), n)
	}
	return t + fmt.Sprintf("; WASHERS: %d", w.a.Count(detail.Washer))
}
