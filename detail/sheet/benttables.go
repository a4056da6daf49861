package sheet

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/render"
)

// bentTables are the pieces, legs and bends, sticks, notches, lengths and notes of what is bent.
func (w *writer) bentTables(width float64) []*table {
	out := []*table{w.bentPieces(width), w.legTable(width)}
	if len(w.a.Find(detail.Flashing)) > 0 {
		out = append(out, w.stickTable(width), w.notchTable(width))
	}
	if len(w.a.Find(detail.Screen)) > 0 {
		out = append(out, w.screenTable(width))
	}
	return append(out, w.bentNotes(width))
}

// bentPieces lists every mark with its metal, girth, length in all and area.
func (w *writer) bentPieces(width float64) *table {
	t := &table{title: "PIECES", head: []string{"MARK", "PIECE", "GIRTH x LENGTH", "NO.", "AREA"}, width: shares(width, 1.05, 2.7, 2.0, 0.8, 1.75)}
	for _, p := range w.bent() {
		legs, _ := p.Unfold()
		girth, long, n := sum(legs), 0.0, 0
		switch p.Role {
		case detail.Flashing:
			for _, q := range w.a.FlashingPieces() {
				long, n = long+q[1]-q[0], n+1
			}
		case detail.Screen:
			for _, q := range w.a.Find(detail.Screen) {
				long, n = long+q.Size[2].MM(), n+1
			}
		}
		what := caps(p.Name + ", " + p.Material)
		if p.Size[0] > 0 {
			what += " " + w.exact(p.Size[0])
		}
		row := []string{p.Mark, what, w.at(girth) + " x " + w.at(long), fmt.Sprint(n), w.area(girth * long)}
		if p.Existing {
			row = []string{p.Mark, what + ", BY OTHERS", w.at(girth) + " x WALL", "-", "-"}
		}
		t.rows = append(t.rows, row)
	}
	for _, mark := range []string{"M2", "M3"} {
		n := 0
		var p *detail.Part
		for _, q := range w.a.Find(detail.Wrap) {
			if q.Mark == mark {
				p, n = q, n+1
			}
		}
		if p != nil {
			a, b := p.Size[1].MM(), p.Size[2].MM()
			t.rows = append(t.rows, []string{mark, caps(p.Name + ", " + p.Material), w.at(a) + " x " + w.text(2*w.onStep(b/2)), fmt.Sprint(n), w.area(float64(n) * a * b)})
		}
	}
	return t
}

// area prints square millimetres in square feet or metres, a tenth over rather than under.
func (w *writer) area(mm2 float64) string {
	if w.unit() == render.Millimetre {
		return fmt.Sprintf("%.2f m²", math.Ceil(mm2/1e4-1e-9)/100)
	}
	return fmt.Sprintf("%.1f SQ FT", math.Ceil(mm2/304.8/304.8*10-1e-9)/10)
}

// legTable gives legs and bends in order from the upper edge.
func (w *writer) legTable(width float64) *table {
	t := &table{title: "LEGS AND BENDS, FROM THE UPPER EDGE", head: []string{"MARK", "LEG, BEND WITH THE ANGLE BETWEEN ITS LEGS, LEG"}, width: shares(width, 1, 6.6)}
	for _, p := range w.bent() {
		legs, folds := p.Unfold()
		legs = w.asDrawn(legs)
		out := []string{w.at(legs[0])}
		for i, f := range folds {
			out = append(out, fmt.Sprintf("%s %.0f°", either(f.Up, "UP", "DOWN"), f.Included), w.at(legs[i+1]))
		}
		t.rows = append(t.rows, []string{p.Mark, strings.Join(out, " | ")})
	}
	return t
}

// asDrawn rounds legs as the flat pattern prints them: their ends from the lower edge on the drafting step.
func (w *writer) asDrawn(legs []float64) []float64 {
	u := step(w.a.Spec.Project.System)
	at := sum(legs)
	out := make([]float64, len(legs))
	for i, l := range legs {
		out[i] = (math.Round(at/u) - math.Round((at-l)/u)) * u
		at -= l
	}
	return out
}

// stickTable lists the pieces of F1 along the ledger.
func (w *writer) stickTable(width float64) *table {
	pieces := w.a.FlashingPieces()
	t := &table{title: fmt.Sprintf("F1 IN %d %s, FROM THE LEFT END", len(pieces), either(len(pieces) == 1, "PIECE", "PIECES")), head: []string{"PIECE", "FROM", "TO", "LENGTH", "LAP"}, width: shares(width, 1, 1.4, 1.4, 1.4, 1)}
	for i, p := range pieces {
		lap := "-"
		if i+1 < len(pieces) {
			lap = w.at(p[1] - pieces[i+1][0])
		}
		t.rows = append(t.rows, []string{fmt.Sprintf("F1.%d", i+1), w.past(p[0]), w.past(p[1]), w.at(p[1] - p[0]), lap})
	}
	return t
}

// notchTable lists where the drip leg of F1 is cut out for the joists.
func (w *writer) notchTable(width float64) *table {
	t := &table{title: "DRIP LEG OF F1, BETWEEN ITS NOTCHES", head: []string{"FROM", "TO", "FROM", "TO"}, width: shares(width, 1, 1, 1, 1)}
	runs := detail.FlashingLegs(w.a.Find(detail.Flashing)[0])
	half := (len(runs) + 1) / 2
	for i := range half {
		row := []string{w.at(runs[i][0]), w.at(runs[i][1]), "", ""}
		if j := i + half; j < len(runs) {
			row[2], row[3] = w.at(runs[j][0]), w.at(runs[j][1])
		}
		t.rows = append(t.rows, row)
	}
	return t
}

// screenTable counts the screens by length.
func (w *writer) screenTable(width float64) *table {
	t := &table{title: "SC1 BETWEEN THE BLOCKS", head: []string{"QTY", "LENGTH", "QTY", "LENGTH"}, width: shares(width, 0.6, 1.4, 0.6, 1.4)}
	type run struct {
		text string
		n    int
	}
	var runs []run
	for _, p := range w.a.Find(detail.Screen) {
		l := w.down(p.Size[2].MM())
		found := false
		for i := range runs {
			if runs[i].text == l {
				runs[i].n++
				found = true
			}
		}
		if !found {
			runs = append(runs, run{l, 1})
		}
	}
	for i := 0; i < len(runs); i += 2 {
		row := []string{fmt.Sprint(runs[i].n), runs[i].text, "", ""}
		if i+1 < len(runs) {
			row[2], row[3] = fmt.Sprint(runs[i+1].n), runs[i+1].text
		}
		t.rows = append(t.rows, row)
	}
	return t
}

// bentNotes say how to bend, lap and keep metals apart.
func (w *writer) bentNotes(width float64) *table {
	f := w.a.Spec.Water.Flashing
	t := &table{title: "BENDING", width: []float64{width}}
	add := func(pen render.Pen, s string, a ...any) {
		t.rows = append(t.rows, []string{caps(fmt.Sprintf("%d. %s", len(t.rows)+1, fmt.Sprintf(s, a...)))})
		t.pens = append(t.pens, pen)
	}
	add(render.Note, "Flat patterns with the weather face up; bend up on solid lines, down on dashed ones. Right ends and left pieces of M3 of opposite hand.")
	add(render.Note, "Legs on the line of the sheet, nothing taken off at bends: for metal to %s; thicker, bend a sample.", either(w.unit() == render.Inch, `0.03"`, "0.8 mm"))
	add(render.Note, "No hem is drawn; where an edge is hemmed add its width to the girth.")
	if len(w.a.Find(detail.Flashing)) > 0 {
		if w.a.Dammed() {
			d := w.text(f.EndDam.MM())
			add(render.Note, "End dam of F1: cut along the full line between tongue and tab, fold the tongue %s up, the tab %s x %s round its back; seal the corner.", d, d, d)
		} else {
			add(render.Status, "No end dam: water.flashing.end_dam is %s and the upstand %s.", w.text(f.EndDam.MM()), w.text(f.Up.MM()))
		}
		if len(w.a.FlashingPieces()) > 1 {
			add(render.Note, "Pieces to %s. Lap %s at least (common practice, no source), bedded in sealant, not at a joist.", w.text(w.a.MetalStick().MM()), w.text(w.a.MetalLap().MM()))
		}
		w.metalNote(add)
	}
	if len(w.a.Blocks) > 0 {
		add(render.Note, "M2: cut the two upper corners away as drawn; cover the points where the cuts end with a piece of the same membrane.")
	}
	return t
}

// metalNote prints the rule of metals on treated wood and what the checks say of the one chosen.
func (w *writer) metalNote(add func(pen render.Pen, s string, a ...any)) {
	words, pen := "not checked", render.Status
	if st := w.report.Find("flashing_material"); st != nil {
		words = st.Verdict.String()
		if st.Reason != "" {
			words += ": " + st.Reason
		}
		if w.passes("flashing_material") {
			pen = render.Note
		}
	}
	add(pen, "No bare aluminum on copper-treated wood (IRC 2021 R317.3, from memory, confirm). %s here: %s.", w.a.Spec.Water.Flashing.Material, words)
}
