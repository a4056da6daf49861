package sheet

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/geom"
)

// extra is what is bought beyond the net area of sheet goods for offcuts, 10 % (judgement).
const extra = 1.1

// ceilTo rounds up to a step, leaving rounding noise aside.
func ceilTo(v, step float64) float64 { return math.Ceil(v/step-1e-6) * step }

// sheetGoods lists membrane pieces, tape and screen: pieces as cut, laps in them, and what to buy.
func (w *writer) sheetGoods(width float64) *table {
	t := &table{title: "SHEET GOODS, LAPS IN THE PIECES, 10 % MORE", head: []string{"MARK", "WHAT", "QTY", "NET", "BUY"}, width: shares(width, 14, 60, 11, 24, 24)}
	sum := 0.0
	for _, l := range w.a.Schedule() {
		if l.Existing || l.Material != "membrane" {
			continue
		}
		net := float64(l.Qty) * l.Size[1].MM() * l.Size[2].MM()
		sum += net
		t.rows = append(t.rows, []string{l.Mark, caps(l.Name) + " " + w.text(l.Size[1].MM()) + " x " + w.text(l.Size[2].MM()), fmt.Sprint(l.Qty), w.area(net), ""})
	}
	if sum > 0 {
		t.rows = append(t.rows, []string{"", "SELF-ADHERED MEMBRANE, ALL PIECES", "", w.area(sum), w.area(sum * extra)})
	}
	if run := w.tapeRun(); run > 0 {
		t.rows = append(t.rows, []string{"", "BARRIER TAPE: BOTH SIDES AND TOP OF EACH M1; THE FOOT STAYS OPEN", "", w.up(run), w.up(run * extra)})
	}
	run, n := 0.0, 0
	for _, p := range w.a.Find(detail.Screen) {
		run, n = run+p.Size[2].MM(), n+1
	}
	if n > 0 {
		p := w.a.Find(detail.Screen)[0]
		t.rows = append(t.rows, []string{p.Mark, "INSECT SCREEN, STRIP " + w.text(p.Size[1].MM()) + " WIDE, BENT", fmt.Sprint(n), w.up(run), w.up(run * extra)})
	}
	return w.plySheets(t)
}

// plySheets adds the plies that come from a sheet.
func (w *writer) plySheets(t *table) *table {
	for _, l := range w.a.CutList() {
		if !l.Sheet {
			continue
		}
		for _, c := range l.Sticks[0].Cuts {
			net := float64(len(c.IDs)) * c.Each.MM() * l.Height.MM()
			t.rows = append(t.rows, []string{c.Mark, fmt.Sprintf("%s %s, %s x %s", caps(materialName(l.Material)), w.text(l.Thickness.MM()), w.text(l.Height.MM()), w.text(c.Each.MM())), fmt.Sprint(len(c.IDs)), w.area(net), w.area(net * extra)})
		}
	}
	return t
}

// tapeRun is the length of the barrier's edges on the patches, their feet apart.
func (w *writer) tapeRun() float64 {
	sum := 0.0
	for i := range w.a.Blocks {
		if p := w.a.PatchBox(i); !p.Empty() {
			sum += p.W() + 2*(p.Max.Y-w.a.Blocks[i].Box.Min.Z)
		}
	}
	return sum
}

// handRoom is how far beyond patches and flashing the layers come off, for the hand and the lap, mm (common
// practice, no source).
const handRoom = 50.8

// opened is the stretch of wall that is stripped while membranes and flashing go in, in x and z.
func (w *writer) opened() geom.Box {
	f, s := w.a.Frame, w.a.Spec
	side := s.Wall.Cladding.AboveFlash.MM()
	b := geom.Box{Min: geom.Vec{X: -side, Y: f.BandBottom}, Max: geom.Vec{X: s.Ledger.Length.MM() + side, Y: f.BandTop + s.Water.Flashing.Up.MM()}}
	for i := range w.a.Blocks {
		if p := w.a.PatchBox(i); !p.Empty() {
			b = b.Union(p)
		}
	}
	return b.Grow(handRoom)
}

// openedTable gives the layers that come off round the ledger and go back, measured from their parts.
func (w *writer) openedTable(width float64) *table {
	o := w.opened()
	t := &table{title: "WALL LAYERS OPENED AND PUT BACK", head: []string{"MARK", "LAYER", "NET", "BUY"}, width: shares(width, 14, 71, 24, 24)}
	for i, l := range w.a.Spec.Wall.Layers {
		net, run := 0.0, 0.0
		for _, p := range w.a.Find(detail.OuterInsul, detail.Furring, detail.Cladding) {
			if p.Mark != detail.LayerMark(i) {
				continue
			}
			a := facing(p, o)
			net += a
			if p.Role == detail.Furring && p.Size[1] > 0 {
				run += a / p.Size[1].MM()
			}
		}
		name := caps(strings.TrimSpace(l.Name + " " + w.exact(l.Thickness)))
		switch {
		case run > 0:
			t.rows = append(t.rows, []string{detail.LayerMark(i), name, w.up(run), w.up(run * extra)})
		case net > 0:
			t.rows = append(t.rows, []string{detail.LayerMark(i), name, w.area(net), w.area(net * extra)})
		}
	}
	if len(t.rows) > 0 {
		t.rows = append(t.rows, []string{"", fmt.Sprintf("OPENED FROM %s TO %s ABOUT THE FLOOR, %s BEYOND THE ENDS OF THE LEDGER", w.signed(o.Min.Y), w.signed(o.Max.Y), w.up(math.Max(-o.Min.X, o.Max.X-w.a.Spec.Ledger.Length.MM()))), "", ""})
	}
	return t
}

// facing is the area of a part within a box of the wall, seen from outside.
func facing(p *detail.Part, o geom.Box) float64 {
	sum := 0.0
	for _, s := range p.Solids {
		if math.Abs(s.W.Y) > 0.5 { // drawn through the wall: its profile is the outline
			sum += geom.Intersect(s.Profile, geom.Rect(o.Min.X, o.Min.Y, o.Max.X, o.Max.Y)).Area()
			continue
		}
		b := s.Bounds()
		if in := o.Intersect(geom.Box{Min: geom.Vec{X: b.Min.X, Y: b.Min.Z}, Max: geom.Vec{X: b.Max.X, Y: b.Max.Z}}); !in.Empty() {
			sum += in.W() * in.H()
		}
	}
	return sum
}

// flashingTable lists the bent metal of this work.
func (w *writer) flashingTable(width float64) *table {
	t := &table{title: "FLASHING", head: []string{"MARK", "WHAT", "RUN", "STICKS"}, width: shares(width, 14, 60, 20, 34)}
	for _, p := range w.a.Find(detail.Flashing) {
		dam := w.a.Spec.Water.Flashing.EndDam
		if !w.a.Dammed() {
			dam = 0
		}
		run := p.Size[2] + 2*dam
		words := fmt.Sprintf("%s, %s, %s THICK, GIRTH %s", p.Name, p.Material, w.exact(p.Size[0]), w.up(p.Size[1].MM()))
		if dam > 0 {
			words += fmt.Sprintf(", AN END DAM OF %s AT EACH END", w.text(dam.MM()))
		}
		t.rows = append(t.rows, []string{p.Mark, caps(words), w.text(run.MM()), fmt.Sprintf("%d x %s, LAP %s", len(w.a.FlashingPieces()), w.text(w.a.MetalStick().MM()), w.text(w.a.MetalLap().MM()))})
	}
	return t
}
