package sheet

import (
	"fmt"
	"strings"

	"standclear/detail/check"
	"standclear/render"
)

// checkTables are the checks and what stands around them: what is wrong first, then every line with a
// limit, what holds without one, and what the program assumed.
func (w *writer) checkTables(width float64) []*table {
	var out []*table
	if t := w.openTable(width); len(t.rows) > 0 {
		out = append(out, t)
	}
	return append(out, w.checkTable(width), w.heldTable(width), w.assumedTable(width))
}

// restTables are what the program leaves to others, and what the project file left to the program.
func (w *writer) restTables(width float64) []*table {
	out := []*table{w.leftTable(width)}
	if t := w.defaultsTable(width); len(t.rows) > 0 {
		out = append(out, t)
	}
	return out
}

// openTable says of everything that is not OK why, and what would mend it.
func (w *writer) openTable(width float64) *table {
	t := &table{title: "FAILS, GOES TO THE ENGINEER, OR WAS NOT CHECKED", head: []string{"VERDICT", "CHECK", "WHY", "SMALLEST CHANGE"}, width: shares(width, 1.2, 2.2, 4, 2.6), text: 2.4}
	for v := check.Fails; v >= check.NotChecked; v-- {
		for _, st := range w.report.Steps {
			if st.Verdict != v {
				continue
			}
			why := st.Reason
			if why == "" && st.Limit != nil {
				why = fmt.Sprintf("%s, must be %s", st.Value.Text(w.a.Spec.Project.System), st.LimitText(w.a.Spec.Project.System))
			}
			t.rows = append(t.rows, []string{v.String(), caps(st.Name), caps(why), caps(st.Fix)})
			t.pens = append(t.pens, render.Status)
		}
	}
	return t
}

// checkTable lists every check with a limit.
func (w *writer) checkTable(width float64) *table {
	t := &table{title: "DESIGN CHECKS", head: []string{"CHECK", "WHERE", "VALUE", "LIMIT", "RATIO", "CLAUSE", "VERDICT"},
		width: shares(width, 4.3, 1.5, 1.4, 1.7, 1.35, 3.4, 1.5), text: 2.2, right: []bool{false, false, true, true, true, false, false}}
	sys := w.a.Spec.Project.System
	for _, st := range w.report.Steps {
		if st.Verdict == check.Info || st.Limit == nil {
			continue
		}
		ratio := strings.ToUpper(st.RatioText()) + strings.Replace(st.CapText(), " of", " /", 1)
		t.rows = append(t.rows, []string{caps(st.Name), caps(st.Where), st.Value.Text(sys), st.LimitText(sys), ratio, caps(clause(st.Clause)), st.Verdict.String()})
		pen := render.Note
		if st.Verdict != check.OK {
			pen = render.Status
		}
		t.pens = append(t.pens, pen)
	}
	return t
}

// clause leaves the remark about where a clause was read to the calculation.
func clause(s string) string {
	s = strings.ReplaceAll(s, " (from memory, confirm)", "")
	return strings.ReplaceAll(s, ", from memory, confirm", "")
}

// heldTable lists what holds without a number, three to a row.
func (w *writer) heldTable(width float64) *table {
	var names []string
	for _, st := range w.report.Steps {
		if st.Verdict == check.OK && st.Limit == nil {
			names = append(names, st.Name)
		}
	}
	t := &table{title: "ALSO HELD, AS DRAWN OR AS STATED", width: shares(width, 1, 1, 1), text: 2.2}
	for i := 0; i < len(names); i += 3 {
		var row []string
		for _, n := range names[i:min(i+3, len(names))] {
			row = append(row, caps(n))
		}
		t.rows = append(t.rows, row)
	}
	return t
}

// leftTable lists what no check of this set looks at.
func (w *writer) leftTable(width float64) *table {
	t := &table{title: "NOT CHECKED BY THIS PROGRAM", width: []float64{width}, text: 2.2}
	if w.heat == nil {
		t.rows = append(t.rows, []string{"HEAT LOSS, SURFACE TEMPERATURE AND MOISTURE OF THE DETAIL"})
	}
	for _, s := range []string{
		"DECK JOISTS, BEAM, POSTS, FOOTINGS, STAIRS AND GUARDS: BY OTHERS",
		"HANGERS, FLOOR TIES, TENSION DEVICES AND BACKING CLIPS BEYOND THE RATING STATED FOR THEM, AND THEIR FIXINGS: BY THEIR MAKERS",
		"SNOW DRIFT AND SLIDING; WIND AND SEISMIC FORCES ON THE DECK",
		"THE HOUSE BELOW THE RIM'S PLATE, ITS FLOOR AS A DIAPHRAGM, THE CONDITION OF EXISTING WOOD",
		"FIRE, DECAY AND CORROSION IN SERVICE",
	} {
		t.rows = append(t.rows, []string{s})
	}
	return t
}

// assumedTable lists the judgements the calculation rests on.
func (w *writer) assumedTable(width float64) *table {
	t := &table{title: "JUDGEMENTS THE CHECKS REST ON; THE CALCULATION NAMES THE KEY THAT CHANGES EACH", head: []string{"ASSUMED", "RESTS ON"}, width: shares(width, 6.5, 1.6), text: 2.2}
	for _, a := range w.report.Assumptions {
		t.rows = append(t.rows, []string{caps(a.Text), caps(clause(a.Source))})
	}
	return t
}

// defaultsTable lists what the project file left to its default.
func (w *writer) defaultsTable(width float64) *table {
	t := &table{title: "LEFT TO ITS DEFAULT IN THE PROJECT FILE", head: []string{"KEY", "VALUE", "WHY"}, width: shares(width, 2.6, 2.2, 3.3), text: 2.2}
	for _, d := range w.a.Spec.Defaults {
		if strings.HasPrefix(d.Key, "assume.") {
			continue // listed with the judgements
		}
		t.rows = append(t.rows, []string{d.Key, d.Value, d.Why})
	}
	return t
}
