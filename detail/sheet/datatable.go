package sheet

import (
	"fmt"
	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/stock"
	"standclear/detail/unit"
	"standclear/render"
	"strings"
)

func (w *writer) dataTables(width float64) []*table {
	return []*table{w.indexTable(width), w.projectTable(width), w.wallTable(width), w.geometryTable(width), w.loadTable(width)}
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
	wind := "NOT STATED"
	if s.Site.Wind != nil {
		wind = s.Site.Wind.Text(sys)
	}
	return pair("PROJECT AND SITE", width,
		[]string{"PROJECT", strings.TrimSpace(s.Project.Name + "  " + s.Project.Element)},
		[]string{"CODE STATED", orNone(s.Project.Code)},
		[]string{"INSIDE / DESIGN OUTSIDE", temp(s.Site.Inside) + " / " + temp(s.Site.Outside)},
		[]string{"DEGREE-DAYS", hdd},
		[]string{"GROUND SNOW", snow},
		[]string{"WIND; TO BE RESISTED HERE", wind + "; " + caps(s.Loads.Wind)},
		[]string{"SEISMIC / TERMITES", caps(orNone(s.Site.Seismic) + " / " + orNone(s.Site.Termites))},
		[]string{"RIM, HOUSE JOISTS", caps(fmt.Sprintf("%s %s x %s; %s%s at %s", materialName(s.Floor.Rim.Material), w.text(s.Floor.Rim.Thickness.MM()), w.text(s.Floor.Rim.Depth.MM()), s.Floor.Joists.Kind, either(s.Floor.Joists.Direction == "parallel" && s.Floor.Joists.Kind != "parallel", " parallel", ""), w.exact(s.Floor.Joists.Spacing)))},
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
	head, per := "K, BTU in/(h ft2 F)", 6.933
	if w.unit() == render.Millimetre {
		head, per = "LAMBDA, W/(m K)", 1
	}
	t := &table{title: "WALL, INSIDE TO OUTSIDE", head: []string{"MARK", "LAYER", "THICK", head}, width: shares(width, 0.8, 3, 1.1, 1.5), text: 2.4}
	for i, l := range w.a.Spec.Wall.Layers {
		lambda := "-"
		if m, ok := stock.MaterialOf(l.Material); ok && l.Role != "wrb" && l.Role != "cavity" {
			lambda = fmt.Sprintf("%.3f", per*float64(m.Across))
		}
		t.rows = append(t.rows, []string{detail.LayerMark(i), caps(l.Name), w.exact(l.Thickness), lambda})
	}
	return t
}

func (w *writer) geometryTable(width float64) *table {
	f, a := w.a.Frame, w.a
	rows := [][]string{
		{"LEDGER", w.text(a.Spec.Ledger.Length.MM()) + " x " + w.text(a.Spec.Ledger.Height.MM()) + " x " + w.text(a.Spec.Ledger.Thickness.MM())},
		{"BLOCKS", fmt.Sprintf("%d, STAND-OFF %s", len(a.Blocks), w.text(f.Standoff()))},
		{"GAP BEHIND THE LEDGER", w.text(w.airPath().Gap)},
		{"SHEATHING TO LOAD LINE", w.text(f.LoadLine)},
	}
	for i, set := range a.Spec.Fasteners.Sets() {
		n := 0
		for _, p := range a.Find(detail.Bolt) {
			if p.Mark == fmt.Sprintf("BT%d", i+1) {
				n++
			}
		}
		rows = append(rows, []string{fmt.Sprintf("BT%d", i+1), caps(fmt.Sprintf("%s %s x %s, %s: %d; GRIP %s", boltWord(set.Kind), w.diameter(set.Diameter), w.bought(a.BoltLength(set)), set.Coating, n, w.text(a.Grip(set).Length().MM())))})
	}
	return pair("GEOMETRY, MEASURED FROM THE PARTS", width, rows...)
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
	for _, st := range w.report.Steps {
		if st.Group == check.Loads && strings.HasPrefix(st.Name, "combination ") {
			rows = append(rows, []string{strings.ToUpper(strings.TrimPrefix(st.Name, "combination ")), st.Value.Text(sys)})
		}
	}
	for _, id := range []string{"ledger_line_load", "block_reaction_max", "eccentricity_rim_face_to_ledger_front", "moment_at_rim_face", "lever_arm", "top_row_tension"} {
		if st := w.report.Find(id); st != nil && !st.Bare() {
			rows = append(rows, []string{caps(st.Name), st.Value.Text(sys)})
		}
	}
	return pair("LOADS AND FORCES", width, rows...)
}

// indexTable lists the sheets of the set.
func (w *writer) indexTable(width float64) *table {
	t := &table{title: "SHEETS", width: shares(width, 1, 4.5), text: 2.4}
	for _, p := range w.index() {
		t.rows = append(t.rows, []string{p.id, p.title})
	}
	return t
}
