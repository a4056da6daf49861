package sheet

import (
	"math"

	"standclear/detail/check"
	"standclear/render"
)

// lateralSteps are the checks of the lateral path, in the order of the path.
var lateralSteps = []string{"lateral_count", "lateral_rating", "lateral_from_end", "lateral_joists", "clash_rods"}

// tensionTables list the devices, then what the report says of them, then the links of the path.
func (w *writer) tensionTables(width float64) []*table {
	return []*table{w.deviceTable(width), w.lateralTable(width), w.pathTable(width)}
}

// deviceTable says where each device stands and what is beside it.
func (w *writer) deviceTable(width float64) *table {
	t := &table{title: "LATERAL TENSION DEVICES, MARK LT1, FROM THE LEFT END OF THE LEDGER",
		head: []string{"NO.", "ROD AXIS", "TO NEARER END", "HOUSE JOIST AXIS", "DECK JOIST AXIS", "CLEAR TO BLOCK"}, width: shares(width, 0.8, 1.3, 1.5, 1.6, 1.5, 1.7)}
	or := func(x float64) string {
		if math.IsNaN(x) {
			return "NONE"
		}
		return w.apart(x, 0)
	}
	for _, d := range w.a.Tension {
		block := "-"
		if i, edge := w.blockBeside(d.X); i >= 0 {
			block = w.apart(d.X, edge) + " TO " + w.a.Blocks[i].Mark
		}
		end := 0.0
		if l := w.a.Spec.Ledger.Length.MM(); d.X > l/2 {
			end = l
		}
		t.rows = append(t.rows, []string{w.deviceID(d), or(d.X), w.apart(d.X, end), or(d.House), or(d.Deck), block})
	}
	return t
}

// apart prints the distance of two places along the ledger as a chain does: between running positions that are
// rounded to the printed step.
func (w *writer) apart(a, b float64) string {
	u := step(w.a.Spec.Project.System)
	return w.text(math.Abs(math.Round(a/u)-math.Round(b/u)) * u)
}

// lateralTable prints the checks, with the reason and the change where one does not hold.
func (w *writer) lateralTable(width float64) *table {
	t := &table{title: "CHECKS OF THE LATERAL PATH; CONFLICTS", head: []string{"CHECK", "VALUE", "LIMIT", "VERDICT", "CONFLICT, SMALLEST CHANGE"}, width: shares(width, 3.4, 1, 1.1, 1.1, 1.8), text: 2.2}
	sys := w.a.Spec.Project.System
	for _, id := range lateralSteps {
		st := w.report.Find(id)
		if st == nil {
			continue
		}
		value, why := "-", "NONE"
		if st.Limit != nil {
			value = st.Value.Text(sys)
		}
		pen := render.Note
		if st.Verdict != check.OK {
			pen, why = render.Status, caps(st.Reason)
			if st.Fix != "" {
				why += "; " + caps(st.Fix)
			}
		}
		t.rows = append(t.rows, []string{caps(st.Name), value, st.LimitText(sys), st.Verdict.String(), why})
		t.pens = append(t.pens, pen)
	}
	return t
}

// pathTable says link by link how the pull goes into the floor, and who answers for the link.
func (w *writer) pathTable(width float64) *table {
	s, f := w.a.Spec, w.a.Frame
	t := &table{title: "LOAD PATH, LINK BY LINK", head: []string{"LINK", "WHAT IT MUST DO", "BY"}, width: shares(width, 1.5, 5.6, 1.1), text: 2.2}
	inside, nailed := []string{"HOUSE JOIST", "SOUND, FULL LENGTH INTO THE FLOOR", "SURVEY"}, "THIS JOIST"
	if len(w.a.HouseJoists) == 0 {
		inside, nailed = []string{"BLOCKING", "FROM THE ROD ACROSS THE HOUSE JOISTS, WHICH RUN ALONG THE RIM", "ENGINEER"}, "THE BLOCKING"
	}
	t.rows = [][]string{
		{"DECK JOIST", "BRINGS THE PULL OF THE DECK TO ITS END", "OTHERS"},
		{"HOLDERS", w.requiredWords() + "; ON THE SIDE OF THE JOIST, NOT ITS END GRAIN", "ENGINEER"},
		{"ROD", "RIM TO LEDGER FACE " + w.text(f.LedgerFront-f.RimIn) + ", OF IT " + w.text(f.LedgerBack) + " IN INSULATION AND GAP; PAST BOTH FACES AS THE HOLDERS NEED", "MAKER"},
		{"LEDGER, GAP", "NOTHING: THE ROD PASSES, SNUG; PUSH GOES THROUGH THE BLOCKS", "BUILDER"},
		inside,
		{"SUBFLOOR", "NAILED TO " + nailed + " AT " + w.text(s.Pick(6*25.4, 150)) + " AT MOST (IRC 2021 FIGURE R507.9.2(1), FROM MEMORY, CONFIRM)", "SURVEY"},
	}
	return t
}
