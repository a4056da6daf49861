package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/render"
)

// ledgerTables are the pieces of the ledger, its holes and how to make it; detailTables its distances and its joists.
func (w *writer) ledgerTables(width float64) []*table {
	return []*table{w.pieceTable(width), w.ledgerHoleTable(width), w.ledgerNotes(width)}
}

func (w *writer) detailTables(width float64) []*table {
	return []*table{w.ledgerDistances(width), w.joistTable(width)}
}

// pieceTable lists the pieces of the ledger.
func (w *writer) pieceTable(width float64) *table {
	t := &table{title: "PIECES", head: []string{"MARK", "THICK x HIGH x LONG", "MATERIAL", "MASS", "ENDS"}, width: shares(width, 1.1, 1.9, 2.1, 1.05, 1.5)}
	pieces := w.a.Find(detail.Ledger)
	for i, p := range pieces {
		ends := "SQUARE, FREE"
		if len(pieces) > 1 {
			ends = strings.Join([]string{w.endWords(p.Bounds().Min.X, i > 0), w.endWords(p.Bounds().Max.X, i+1 < len(pieces))}, "; ")
		}
		size := w.text(p.Size[0].MM()) + " x " + w.text(p.Size[1].MM()) + " x " + w.text(p.Size[2].MM())
		t.pens = append(t.pens, either(strings.Contains(ends, "NO BLOCK"), render.Status, render.Note))
		t.rows = append(t.rows, []string{p.Mark, size, caps(materialName(p.Material) + " " + p.Note + ", " + either(w.a.Spec.Ledger.Treated, "treated", "not treated")), w.mass(p), ends})
	}
	return t
}

// endWords say what is at an end of a piece: nothing, or a splice and what it stands over.
func (w *writer) endWords(x float64, splice bool) string {
	if !splice {
		return "FREE"
	}
	for _, b := range w.a.Blocks {
		if x > b.Box.Min.X && x < b.Box.Max.X {
			return "SPLICE OVER " + b.Mark
		}
	}
	return "SPLICE OVER NO BLOCK"
}

// mass is what a part weighs, as text.
func (w *writer) mass(p *detail.Part) string {
	density := 550.0 // treated softwood, common practice, no source
	if m, ok := stock.MaterialOf(p.Material); ok {
		density = m.Density
	}
	kg := 0.0
	for _, s := range p.Solids {
		kg += s.Volume() * 1e-9 * density
	}
	if w.unit() == render.Millimetre {
		return fmt.Sprintf("%.0f kg", kg)
	}
	return fmt.Sprintf("%.0f lb", kg*2.20462)
}

// ledgerHoleTable lists the holes, those of one block and one size a row; a row with a hole under a hanger is in
// the colour of the verdicts.
func (w *writer) ledgerHoleTable(width float64) *table {
	t := &table{title: "HOLES, FROM LOWER LEFT", head: []string{"AT", "X", "Y", "DIA", "MEETS A HANGER"}, width: shares(width, 1, 2.5, 2, 1, 1.7)}
	flagged := 0
	for _, p := range w.a.Find(detail.Ledger) {
		for _, of := range byBlock(w.ledgerHoles(p)) {
			var xs, ys []float64
			flag := ""
			for _, h := range of {
				xs, ys = append(xs, h.X), append(ys, h.Z)
				if f := hangerWords(h); f != "" {
					flagged++
					if flag == "" || strings.HasPrefix(f, "HOLE") {
						flag = f
					}
				}
			}
			at := w.onPiece(p, w.a.Blocks[of[0].Block].Mark)
			t.rows = append(t.rows, []string{at, w.list(xs), w.list(ys), w.text(of[0].Dia), either(flag == "", "NO", flag)})
			t.pens = append(t.pens, either(flag == "", render.Note, render.Status))
		}
	}
	if flagged > 0 {
		t.title = fmt.Sprintf("HOLES: %d MEET A HANGER, MOVE THE JOISTS", flagged)
	}
	if len(t.rows) == 0 {
		t.rows = append(t.rows, []string{"-", "-", "-", "-", "-"})
	}
	return t
}

// onPiece names a thing on a piece of the ledger; where there is one piece alone it goes without saying.
func (w *writer) onPiece(p *detail.Part, name string) string {
	if len(w.a.Find(detail.Ledger)) == 1 {
		return name
	}
	return p.Mark + ", " + name
}

// byBlock parts holes into those of one block and one size.
func byBlock(holes []detail.LedgerHole) [][]detail.LedgerHole {
	var out [][]detail.LedgerHole
	for _, h := range holes {
		i := slices.IndexFunc(out, func(of []detail.LedgerHole) bool { return of[0].Block == h.Block && of[0].Dia == h.Dia })
		if i < 0 {
			out = append(out, nil)
			i = len(out) - 1
		}
		out[i] = append(out[i], h)
	}
	return out
}

// list prints values once each, ascending.
func (w *writer) list(v []float64) string {
	var out []string
	for _, x := range distinct(v) {
		out = append(out, w.at(x))
	}
	return strings.Join(out, ", ")
}

// hangerWords say what of a hole lies under a hanger; "" when nothing does.
func hangerWords(h detail.LedgerHole) string {
	switch {
	case h.Hanger != "":
		return "HOLE UNDER " + h.Hanger
	case h.Washer != "":
		return "WASHER ON " + h.Washer
	}
	return ""
}

// joistTable lists the joists with their hangers and where these have their hold along the piece they hang on.
func (w *writer) joistTable(width float64) *table {
	t := &table{title: "JOISTS, FROM LEFT END", head: []string{"JOIST", "AXIS", "HANGER", "ON LEDGER FROM", "TO"}, width: shares(width, 1, 1.4, 1.1, 2, 1.7)}
	hangers := w.a.Find(detail.Hanger)
	for i, x := range w.a.DeckJoists {
		p := w.pieceAt(x)
		b := p.Bounds()
		lo, hi, _ := w.a.HangerSpan(i)
		from, to, pen := lo-b.Min.X, hi-b.Min.X, render.Note
		row := []string{w.onPiece(p, fmt.Sprintf("J%d", i+1)), w.at(x - b.Min.X), hangers[i].Mark, w.past(from), w.past(to)}
		if long := b.Max.X - b.Min.X; from < -0.5 || to > long+0.5 {
			pen = render.Status
			row[either(from < -0.5, 3, 4)] += ", PAST THE END"
		}
		t.rows, t.pens = append(t.rows, row), append(t.pens, pen)
	}
	if len(t.rows) == 0 {
		t.rows = append(t.rows, []string{"-", "-", "-", "-", "-"})
	}
	return t
}

// past prints a place that may lie before the datum.
func (w *writer) past(x float64) string {
	if x < -0.5 {
		return "-" + w.at(-x)
	}
	return w.at(x)
}

// at prints a place as a running dimension does: on the drafting step.
func (w *writer) at(x float64) string {
	return w.text(w.onStep(x))
}

// onStep rounds to the drafting step.
func (w *writer) onStep(x float64) float64 {
	u := step(w.a.Spec.Project.System)
	return math.Round(x/u) * u
}

// ledgerDistances sets the distances measured beside the least that the checks ask for.
func (w *writer) ledgerDistances(width float64) *table {
	t := &table{title: "DISTANCES IN THE LEDGER", head: []string{"DISTANCE", "DRAWN", "LEAST"}, width: shares(width, 3.6, 1, 1)}
	for _, id := range []string{"edge_ledger_loaded", "edge_ledger_unloaded", "end_ledger", "hanger_bolt_clearance"} {
		st := w.report.Find(id)
		if st == nil || st.Limit == nil || st.Value.Kind != unit.KLength {
			continue
		}
		t.rows = append(t.rows, []string{caps(st.Name), w.down(st.Value.V), w.up(st.Limit.V)})
	}
	if len(t.rows) == 0 {
		t.rows = append(t.rows, []string{"NOT CHECKED", "-", "-"})
	}
	return t
}

// ledgerNotes say how to make it.
func (w *writer) ledgerNotes(width float64) *table {
	s := w.a.Spec
	t := &table{title: "MAKING", width: []float64{width}}
	add := func(f string, a ...any) {
		t.rows = append(t.rows, []string{caps(fmt.Sprintf("%d. %s", len(t.rows)+1, fmt.Sprintf(f, a...)))})
	}
	add("Crown up; measure from the datum end, never from mark to mark. Blocks behind are dashed.")
	if s.Ledger.TopSlope > 0 {
		add("Bevel the top edge %s, low at the outer face.", s.Ledger.TopSlope.Text(s.Project.System))
	}
	if s.Fasteners.Through != nil {
		add("Drill through the holes of the blocks as the template; positions here are to check, within %s.", w.tolerance())
	} else {
		add("Drill square through, holes within %s of place.", w.tolerance())
	}
	add("Treat ends, bevel and holes.%s", either(len(s.Ledger.Splices) > 0, " Splices stand over a block, each end with its own bolts.", ""))
	for _, j := range w.a.Joints() {
		if j.Ledger() {
			add("Drive %d screws LS1 %s x %s a block through the ledger, before the bolts; places on S-501.", j.Screws.Count, w.exact(j.Screws.Diameter), w.text(j.Screws.Length.MM()))
		}
	}
	if w.a.CountMark(detail.Concealed) > 0 {
		add("%s: a hanger with concealed flanges, turned in behind the joist, at ends where an outer flange has no wood behind it.", detail.Concealed)
	}
	return t
}
