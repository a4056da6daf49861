package sheet

import (
	"fmt"
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/check/air"
	"standclear/geom"
	"standclear/render"
)

// airPath is the way of the air through the gap, measured once.
func (w *writer) airPath() *air.Path {
	if w.air == nil {
		p := air.PathOf(w.a)
		w.air = &p
	}
	return w.air
}

// gapWords names the gap by what is open of it, or by what closes it.
func (w *writer) gapWords() string {
	p, sys := w.airPath(), w.a.Spec.Project.System
	if p.Closed != "" {
		return "GAP WITHOUT AN AIR PATH: CANNOT DRY OR BE INSPECTED"
	}
	foot, head := p.FootArea().Text(sys), p.HeadArea().Text(sys)
	return fmt.Sprintf("OPEN GAP %s, DRAINED AND AIRED: DO NOT FILL. AIR IN AT THE FOOT%s, %s FREE; OUT AT THE TOP INTO THE CAVITY, %s FREE; BLOCKS FILL %s OF THE LENGTH",
		w.text(p.Gap), either(w.a.Spec.Water.Screen, " THROUGH SC1", ""), foot, head, w.blockedShare())
}

// gapPlanWords says the same in the plan, where the ends are not seen.
func (w *writer) gapPlanWords() string {
	p := w.airPath()
	if p.Closed != "" {
		return "GAP BEHIND IT WITHOUT AN AIR PATH"
	}
	return fmt.Sprintf("GAP BEHIND IT %s, AIR RISES BETWEEN THE BLOCKS; BLOCKS FILL %s OF THE LENGTH", w.text(p.Gap), w.blockedShare())
}

// blockedShare is the share of the ledger's length that the blocks fill.
func (w *writer) blockedShare() string { return fmt.Sprintf("%.0f %%", w.airPath().Blocked*100) }

// airArrows shows the way of the air in the section between blocks: in under the ledger and up through the screen, up
// the gap, past F1 into the cavity. A closed gap has none.
func (w *writer) airArrows(c *composer) {
	if w.airPath().Closed != "" {
		return
	}
	f := w.a.Frame
	gap, cavity := w.inGap(), (f.InsulOut+f.CavityOut)/2
	h := f.LedgerTop - f.LedgerBottom
	under := f.LedgerBottom - w.airPath().Foot/2
	c.put(
		render.Leader{Pen: render.Water, End: render.Arrow, Points: []geom.Vec{{X: gap, Y: f.LedgerBottom + 0.3*h}, {X: gap, Y: under}, {X: f.LedgerFront + c.mm(6), Y: under}}},
		render.Leader{Pen: render.Water, End: render.Arrow, Points: []geom.Vec{{X: gap, Y: f.LedgerBottom + 0.8*h}, {X: gap, Y: f.LedgerBottom + 0.55*h}}},
		render.Leader{Pen: render.Water, End: render.Arrow, Points: []geom.Vec{{X: cavity, Y: f.LedgerTop + 0.5*h}, {X: cavity, Y: f.LedgerTop + 0.12*h}, {X: gap, Y: f.LedgerTop - 0.05*h}}},
	)
}

// airUp marks air that comes toward the viewer: a dot in a circle.
var airUp = &render.Symbol{Name: "SC-AIR-UP", Items: []render.Item{
	render.Stroke{Pen: render.Water, Path: geom.Circle(pt(0, 0), 1)[0]},
	render.Fill{Pen: render.Water, Region: geom.Circle(pt(0, 0), 0.35)},
}}

// inGap is the depth, in the gap, that is farthest from the joints of the block beyond.
func (w *writer) inGap() float64 {
	hi := w.a.Frame.LedgerBack
	lo := hi - w.airPath().Gap
	at := []float64{lo, hi}
	for _, p := range w.a.Find(detail.BlockPly, detail.BlockPad) {
		if y := p.Bounds().Max.Y; y > lo && y < hi {
			at = append(at, y)
		}
	}
	slices.Sort(at)
	best, mid := 0.0, (lo+hi)/2
	for i := 1; i < len(at); i++ {
		if d := at[i] - at[i-1]; d > best {
			best, mid = d, (at[i]+at[i-1])/2
		}
	}
	return mid
}

// airMarks sets the mark of rising air in the gap of a plan, in every stretch between blocks that holds it from lo to
// hi, clear of the tension devices.
func (w *writer) airMarks(c *composer, lo, hi float64) {
	const size = 2.0 // plotted, the circle
	f, p := w.a.Frame, w.airPath()
	if p.Closed != "" || p.Gap < c.mm(size+0.6) {
		return
	}
	var rods []float64
	for _, r := range w.a.Find(detail.TensionRod) {
		rods = append(rods, r.Bounds().Center().X)
	}
	for _, s := range w.a.Between() {
		from, to := max(s[0], lo), min(s[1], hi)
		if to-from < c.mm(2*size) {
			continue
		}
		x := (from + to) / 2
		if math.Abs(x-nearestOf(rods, x)) < c.mm(size) {
			x = (from + x) / 2
		}
		c.put(render.Insert{Pen: render.Water, Symbol: airUp, At: geom.Vec{X: x, Y: -(f.LedgerBack - p.Gap/2)}, Scale: c.k})
	}
}
