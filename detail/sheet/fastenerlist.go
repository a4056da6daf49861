package sheet

import (
	"fmt"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// spares is one in twenty, rounded up (common practice, no source).
func spares(n int) int { return (n + 19) / 20 }

// fastenerTable counts bolts, nuts, washers, spacers and screws, with spares.
func (w *writer) fastenerTable(width float64) *table {
	t := &table{title: "FASTENERS, WITH 5 % SPARES ROUNDED UP", head: []string{"MARK", "ITEM", "SIZE", "NEED", "SPARE", "BUY"}, width: shares(width, 14, 43, 34, 13, 15.5, 13), right: []bool{5: true, 4: true, 3: true}}
	for _, l := range w.a.Schedule() {
		if !w.isFastener(l.Mark) {
			continue
		}
		n := spares(l.Qty)
		item := l.Name
		if l.Note != "" {
			item += ", " + l.Note
		}
		t.rows = append(t.rows, []string{l.Mark, caps(item), w.fastenerSize(l), fmt.Sprint(l.Qty), fmt.Sprint(n), fmt.Sprint(l.Qty + n)})
	}
	return t
}

// isFastener reports whether parts of the mark are bought by number from a box.
func (w *writer) isFastener(mark string) bool {
	for _, p := range w.a.Find(detail.Bolt, detail.Nut, detail.Washer, detail.SpacerRing, detail.PlyScrew) {
		if p.Mark == mark {
			return true
		}
	}
	return false
}

// fastenerSize names a nut by its thread; all others by their size.
func (w *writer) fastenerSize(l detail.Line) string {
	if strings.HasPrefix(l.Mark, "NT") {
		return w.diameter(l.Size[0]) + ", " + w.text(l.Size[1].MM()) + " ACROSS FLATS"
	}
	return w.sizeText(l)
}

// connectorTable asks for hangers, ties and devices by the allowable load they must have. No product.
func (w *writer) connectorTable(width float64) *table {
	t := &table{title: "CONNECTORS BY ALLOWABLE LOAD", head: []string{"MARK", "ITEM", "QTY", "REQUIRED", "FILE STATES"}, width: shares(width, 14, 56, 11, 26, 26)}
	s := w.a.Spec
	sys := s.Project.System
	stated := func(f unit.Force) string {
		if f <= 0 {
			return "NOT STATED"
		}
		return f.Text(sys)
	}
	add := func(mark, item string, qty int, need, have string) {
		if qty > 0 {
			t.rows = append(t.rows, []string{mark, item, fmt.Sprint(qty), need, have})
		}
	}
	j := s.Deck.Joists
	hanger := fmt.Sprintf("JOIST HANGER FOR %s x %s, SEAT %s, FLANGES ", w.text(j.Width.MM()), w.text(j.Depth.MM()), w.text(j.Seat.MM()))
	concealed := w.a.CountMark(detail.Concealed)
	add("HG1", hanger+either(j.HangerFlange > 0, w.text(j.HangerFlange.MM()), "TURNED IN"), w.a.Count(detail.Hanger)-concealed, w.valueOf("joist_reaction"), stated(j.Hanger))
	add(detail.Concealed, hanger+"CONCEALED, AT ENDS", concealed, w.valueOf("joist_reaction"), stated(j.Hanger))
	tie := "NOT CHECKED"
	if w.results.RequiredTie > 0 {
		tie = w.results.RequiredTie.Text(sys)
	}
	add("TS1", "FLOOR TIE, "+caps(s.Tie.Kind)+", "+w.text(s.Tie.Length.MM())+" ALONG THE JOIST, FIXINGS AS ITS MAKER STATES", w.a.Count(detail.TieStrap), tie, stated(s.Tie.Rating))
	lateral := "NOT CHECKED"
	if st := w.report.Find("lateral_rating"); st != nil && st.Limit != nil {
		lateral = st.Limit.Text(sys)
	}
	if n := w.a.Count(detail.TensionRod); n > 0 {
		add("LT1", "LATERAL TENSION DEVICE, ROD "+w.text(w.a.Find(detail.TensionRod)[0].Size[2].MM())+" OVER ALL", n, lateral, stated(s.Tie.Lateral.Rating))
	}
	if s.Floor.Backing.Kind == "carried" {
		add("BK1", "FIXINGS OF BACKING AT ONE BLOCK, UP OR DOWN", len(w.a.Blocks), w.valueOf("backing_fixing"), stated(s.Floor.Backing.Fixing))
	}
	return t
}

// valueOf prints the demand of a check, or that it was not checked.
func (w *writer) valueOf(id string) string {
	st := w.report.Find(id)
	if st == nil || st.Verdict == check.NotChecked || st.Value.V <= 0 {
		return "NOT CHECKED"
	}
	return st.Value.Text(w.a.Spec.Project.System)
}

// toolTable lists bits and sockets: what the holes and the heads ask for.
func (w *writer) toolTable(width float64) *table {
	t := &table{title: "DRILL BITS AND SOCKETS", head: []string{"TOOL", "SIZE", "FOR"}, width: shares(width, 40, 44, 50)}
	add := func(tool, size, use string) {
		row := []string{tool, size, caps(use)}
		if !slices.ContainsFunc(t.rows, func(r []string) bool { return slices.Equal(r, row) }) {
			t.rows = append(t.rows, row)
		}
	}
	for _, set := range w.a.Spec.Fasteners.Sets() {
		w.setTools(set, add)
	}
	if st := w.report.Find("lead_hole_screws"); st != nil && len(st.With) > 2 {
		add("TWIST BIT", w.fine(st.With[0].Value)+", "+w.fine(st.With[2].Value), "ply screws: shank, thread")
	}
	if w.a.Count(detail.TensionRod) > 0 {
		add("BIT", w.text(w.rodHole()), "rods LT1 through ledger, wall and rim")
	}
	return t
}

func (w *writer) setTools(set *spec.Set, add func(tool, size, use string)) {
	name := boltWord(set.Kind) + " " + w.diameter(set.Diameter)
	if set.Kind != "bolt" {
		for _, id := range []string{"lead_hole_rim", "lead_hole_block"} {
			if st := w.report.Find(id); st != nil && len(st.With) > 2 {
				add("TWIST BIT", w.fine(st.With[0].Value)+"; "+w.fine(st.With[1].Value)+" TO "+w.fine(st.With[2].Value), strings.Replace(st.Name, "holes to bore", "", 1)+": shank; thread")
			}
		}
		add("DRIVER", "AS ITS MAKER STATES", name)
		return
	}
	add("AUGER OR BRAD-POINT BIT", fmt.Sprintf("%s, REACH %s OR MORE", w.text(set.Hole.MM()), w.up(w.a.Grip(set).Length().MM())), name+": the whole grip from outside")
	hex := detail.Hex(set.Diameter)
	flats := w.text(hex.Flats.MM())
	if hex.NutFlats != hex.Flats {
		flats += " AND " + w.text(hex.NutFlats.MM())
	}
	add("SOCKET AND WRENCH", flats, name+": head outside, nut inside")
}
