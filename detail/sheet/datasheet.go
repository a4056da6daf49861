package sheet

import (
	"fmt"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// dataSheet prints what the design rests on and what the checks say, with the free body of a block.
func (w *writer) dataSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	const gap = 6
	col := (room.W() - 2*gap) / 3
	c := w.freeBody(col)
	p := c.paper()
	x := room.Min.X
	y := room.Max.Y
	for _, t := range w.dataTables(col) {
		items, used, _ := t.draw(x, y, y-room.Min.Y)
		s.Items = append(s.Items, items...)
		y -= used + 4
	}
	w.place(s, c, "1", "FREE BODY OF ONE BLOCK", origin, pt(x+(col-p.W())/2-p.Min.X, y-4-p.Max.Y))
	fits := w.checkColumns(s, room, x+col+gap, col, gap)
	return "AS SHOWN", fits && y-4-p.H() >= room.Min.Y
}

// checkColumns runs the check table and what was assumed over two columns; it reports whether both
// fit whole.
func (w *writer) checkColumns(s *render.Sheet, room geom.Box, x, col, gap float64) bool {
	y, used := room.Max.Y, 1
	for _, t := range []*table{w.checkTable(col), w.defaultsTable(col)} {
		title := t.title
		for {
			if y-room.Min.Y < 40 {
				if used == 2 {
					return false
				}
				x, y, used = x+col+gap, room.Max.Y, used+1
			}
			items, high, rest := t.draw(x, y, y-room.Min.Y)
			s.Items = append(s.Items, items...)
			y -= high + 4
			if len(rest) == 0 {
				break
			}
			if len(t.pens) > 0 {
				t.pens = t.pens[len(t.rows)-len(rest):]
			}
			t.rows, t.title = rest, title+", CONTINUED"
			y = room.Min.Y
		}
	}
	return true
}

// checkTable lists every check with a limit, and everything that is not OK.
func (w *writer) checkTable(width float64) *table {
	t := &table{title: "DESIGN CHECKS", head: []string{"CHECK", "WHERE", "VALUE", "LIMIT", "RATIO", "VERDICT"}, width: shares(width, 4.4, 1.9, 1.7, 1.7, 1.05, 1.9), text: 2.4,
		right: []bool{false, false, true, true, true, false}}
	sys := w.a.Spec.Project.System
	for _, st := range w.report.Steps {
		if st.Verdict == check.Info {
			continue
		}
		limit, ratio := "-", "-"
		if st.Limit != nil {
			limit = st.Limit.Text(sys)
			ratio = strings.ToUpper(st.RatioText())
		}
		value := st.Value.Text(sys)
		if st.Limit == nil && st.Value.Kind == unit.Pure {
			value = "-"
		}
		t.rows = append(t.rows, []string{caps(st.Name), caps(st.Where), value, limit, ratio, st.Verdict.String()})
		pen := render.Note
		if st.Verdict != check.OK {
			pen = render.Status
		}
		t.pens = append(t.pens, pen)
	}
	return t
}

func (w *writer) dataTables(width float64) []*table {
	return []*table{w.projectTable(width), w.wallTable(width), w.geometryTable(width), w.loadTable(width)}
}

func pair(title string, width float64, rows ...[]string) *table {
	return &table{title: title, width: shares(width, 1, 1.5), rows: rows, text: 2.4}
}

func (w *writer) projectTable(width float64) *table {
	s := w.a.Spec
	sys := s.Project.System
	temp := func(t *unit.Temp) string {
		if t == nil {
			return "NOT STATED"
		}
		return t.Text(sys)
	}
	snow := "NOT STATED"
	if s.Site.GroundSnow != nil {
		snow = s.Site.GroundSnow.Text(sys)
	}
	hdd := "NOT STATED"
	if s.Site.DegreeDays != nil {
		hdd = s.Site.DegreeDays.Text(sys)
	}
	return pair("PROJECT AND SITE", width,
		[]string{"PROJECT", strings.TrimSpace(s.Project.Name + "  " + s.Project.Element)},
		[]string{"CODE STATED", orNone(s.Project.Code)},
		[]string{"INSIDE / DESIGN OUTSIDE", temp(s.Site.Inside) + " / " + temp(s.Site.Outside)},
		[]string{"DEGREE-DAYS", hdd},
		[]string{"GROUND SNOW", snow},
		[]string{"SEISMIC / TERMITES", caps(orNone(s.Site.Seismic) + " / " + orNone(s.Site.Termites))},
		[]string{"RIM, HOUSE JOISTS", caps(fmt.Sprintf("%s %s x %s; %s at %s", materialName(s.Floor.Rim.Material), w.text(s.Floor.Rim.Thickness.MM()), w.text(s.Floor.Rim.Depth.MM()), s.Floor.Joists.Kind, w.text(s.Floor.Joists.Spacing.MM())))},
		[]string{"ACCESS INSIDE", caps(s.Floor.Access)},
	)
}

func orNone(v string) string {
	if v == "" {
		return "NOT STATED"
	}
	return v
}

func (w *writer) wallTable(width float64) *table {
	t := &table{title: "WALL, INSIDE TO OUTSIDE", head: []string{"MARK", "LAYER", "THICKNESS", "LAMBDA W/mK"}, width: shares(width, 0.7, 3, 1.2, 1.3), text: 2.4}
	for i, l := range w.a.Spec.Wall.Layers {
		lambda := "-"
		if m, ok := stock.MaterialOf(l.Material); ok && l.Role != "wrb" && l.Role != "cavity" {
			lambda = fmt.Sprintf("%.3f", float64(m.Across))
		}
		t.rows = append(t.rows, []string{detail.LayerMark(i), caps(l.Name), w.text(l.Thickness.MM()), lambda})
	}
	return t
}

func (w *writer) geometryTable(width float64) *table {
	f, a := w.a.Frame, w.a
	set := a.Spec.Fasteners.Sets()[0]
	return pair("GEOMETRY, MEASURED FROM THE PARTS", width,
		[]string{"LEDGER", w.text(a.Spec.Ledger.Length.MM()) + " x " + w.text(a.Spec.Ledger.Height.MM()) + " x " + w.text(a.Spec.Ledger.Thickness.MM())},
		[]string{"BLOCKS", fmt.Sprintf("%d, STAND-OFF %s", len(a.Blocks), w.text(f.Standoff()))},
		[]string{"GAP BEHIND THE LEDGER", w.text(f.Gap())},
		[]string{"SHEATHING TO LOAD LINE", w.text(f.LoadLine)},
		[]string{"GRIP / BOLT LENGTH", w.text(a.Grip(set).Length().MM()) + " / " + w.text(a.BoltLength(set).MM())},
		[]string{"FASTENERS", fmt.Sprintf("%d x %s, %s %s", a.Count(detail.Bolt), w.diameter(set.Diameter), caps(set.Kind), caps(set.Coating))},
	)
}

func (w *writer) loadTable(width float64) *table {
	s := w.a.Spec
	sys := s.Project.System
	load := func(p *unit.Pressure) string {
		if p == nil {
			return "NOT STATED"
		}
		return p.Text(sys)
	}
	rows := [][]string{{"DEAD / LIVE / SNOW", load(s.Loads.Dead) + " / " + load(s.Loads.Live) + " / " + load(s.Loads.Snow)}, {"JOIST SPAN", w.text(s.Deck.Span.MM())}}
	for _, id := range []string{"ledger_line_load", "block_reaction_max", "eccentricity", "moment_at_rim_face", "lever_arm", "top_row_tension"} {
		if st := w.report.Find(id); st != nil {
			rows = append(rows, []string{caps(st.Name), st.Value.Text(sys)})
		}
	}
	return pair("LOADS AND FORCES", width, rows...)
}

func (w *writer) defaultsTable(width float64) *table {
	t := &table{title: "ASSUMED: CHANGE IN THE PROJECT FILE", head: []string{"KEY", "ASSUMPTION", "RESTS ON"}, width: shares(width, 2.6, 4.4, 2.2), text: 2.4}
	for _, a := range w.report.Assumptions {
		t.rows = append(t.rows, []string{a.Key, a.Text, a.Source})
	}
	for _, d := range w.a.Spec.Defaults {
		t.rows = append(t.rows, []string{d.Key, d.Value, "default: " + d.Why})
	}
	return t
}

// generalNotes are the notes of every sheet: own wording, numbers from the project.
func (w *writer) generalNotes() []string {
	s := w.a.Spec
	n := []string{
		"LIFE-SAFETY CONNECTION. CALCULATION AID, NOT A PERMIT DRAWING. NOT THE PRESCRIPTIVE LEDGER OF IRC R507.",
		"LOCAL CODE AND A LICENSED ENGINEER DECIDE. SEE G-001 FOR CHECKS, ASSUMPTIONS AND WHAT WAS NOT CHECKED.",
		"VERIFY DIMENSIONS, JOISTS, RIM, SPECIES AND DECAY ON SITE BEFORE CUTTING. WHERE THEY DIFFER, STOP AND ASK.",
		"DESIGN LOADS AS ON G-001. NO HOT TUB, ROOF, PLANTERS OR CROWD.",
		"LEDGER AND BLOCKS PRESERVATIVE TREATED; TREAT EVERY CUT AND HOLE.",
		"FASTENERS AND CONNECTORS OF A COATING FIT FOR THE TREATMENT; DO NOT MIX METALS. NO NAILS IN THE LOAD PATH.",
		"EACH WATER LAYER LAPS OVER THE ONE BELOW. SEALANT IS NEVER THE ONLY DEFENCE.",
		"KEEP THE GAP CLEAR OVER ITS FULL HEIGHT AND LENGTH. SCREEN ITS OPEN ENDS.",
		"PHOTOGRAPH EACH LAYER BEFORE IT IS COVERED. DO NOT COVER UNTIL INSPECTED.",
		"RETIGHTEN BOLTS AFTER THE FIRST YEAR OF DRYING; INSPECT YEARLY; KEEP ACCESS.",
		"MEMBRANES AND SHEET METAL ARE DRAWN THICKER THAN THEY ARE, AND OFF THEIR FACE.",
	}
	if s.Project.System == unit.IP {
		n = append(n, `DIMENSIONS TO 1/16"; RUNNING DIMENSIONS FROM THE DATUM GOVERN.`)
	} else {
		n = append(n, "DIMENSIONS IN mm; RUNNING DIMENSIONS FROM THE DATUM GOVERN.")
	}
	for _, u := range s.Project.Notes {
		n = append(n, caps(u))
	}
	return n
}
