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

// blockTables are the plies, holes, distances, screws and quantities of the shop sheet; pieceTables what its
// page of pieces adds.
func (w *writer) blockTables(width float64) []*table {
	out := []*table{w.plyTable(width), w.holeTable(width), w.distanceTable(width)}
	if len(w.a.Joints()) > 0 {
		out = append(out, w.screwTable(width))
	}
	return append(out, w.hardwareTable(width))
}

func (w *writer) pieceTables(width float64) []*table {
	return tables(w.cutTable(width), w.blockNotes(width))
}

func shares(width float64, parts ...float64) []float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	out := make([]float64, len(parts))
	for i, p := range parts {
		out[i] = width * p / sum
	}
	return out
}

func (w *writer) plyTable(width float64) *table {
	n := len(w.a.Blocks)
	t := &table{title: fmt.Sprintf("BLOCK %s TO %s, %d REQUIRED", w.a.Blocks[0].Mark, w.a.Blocks[n-1].Mark, n),
		head: []string{"PIECE", "THICK x HIGH x WIDE", "MATERIAL", "QTY"}, width: shares(width, 0.9, 2.5, 3, 0.7)}
	for _, p := range w.a.Blocks[0].Parts {
		if p.Role != detail.BlockPly && p.Role != detail.BlockPad && p.Role != detail.FootPiece {
			continue
		}
		words := materialName(p.Material) + " " + p.Note
		if p.Role != detail.BlockPad {
			words += ", " + either(w.a.Spec.Blocks.Treated, "treated", "not treated")
		}
		t.rows = append(t.rows, []string{p.Mark, w.text(p.Size[0].MM()) + " x " + w.text(p.Size[1].MM()) + " x " + w.text(p.Size[2].MM()), caps(words), fmt.Sprint(n)})
	}
	return t
}

func (w *writer) holeTable(width float64) *table {
	t := &table{title: "HOLES THROUGH, FROM LOWER LEFT", head: []string{"HOLE", "X", "Y", "DIA", "FOR"}, width: shares(width, 0.9, 1.1, 1.1, 1, 2)}
	b := w.a.Blocks[0].Box
	for i, h := range w.a.Holes(0) {
		t.rows = append(t.rows, []string{holeName(i), w.text(h.X - b.Min.X), w.text(h.Z - b.Min.Z), w.text(h.Dia), w.holeFor(h)})
	}
	return t
}

// holeFor names the fastener of a hole and, where sets are apart, the wood it goes on into.
func (w *writer) holeFor(h detail.Hole) string {
	t := caps(boltWord(h.Set.Kind)) + " " + w.diameter(h.Set.Diameter)
	switch f := w.a.Spec.Fasteners; h.Set {
	case f.ToRim:
		t += ", TO THE RIM"
	case f.ToBlock:
		t += ", TO THE LEDGER"
	}
	return t
}

// distanceTable sets the distances measured beside the least that the checks ask for.
func (w *writer) distanceTable(width float64) *table {
	t := &table{title: "DISTANCES IN THE BLOCK", head: []string{"DISTANCE", "DRAWN", "LEAST"}, width: shares(width, 3.6, 1, 1)}
	for _, st := range w.report.Steps {
		in := strings.HasPrefix(st.ID, "edge_block") || strings.HasPrefix(st.ID, "end_block") || strings.HasPrefix(st.ID, "spacing_in_row") || strings.HasPrefix(st.ID, "row_spacing")
		if in && st.Limit != nil && st.Value.Kind == unit.KLength {
			t.rows = append(t.rows, []string{caps(st.Name), w.down(st.Value.V), w.up(st.Limit.V)})
		}
	}
	if len(t.rows) == 0 {
		t.rows = append(t.rows, []string{"NOT CHECKED", "-", "-"})
	}
	return t
}

// screwTable says where the screws of every joint go.
func (w *writer) screwTable(width float64) *table {
	t := &table{title: "SCREWS PS1 OF ONE BLOCK", head: []string{"JOINT", "QTY", "SIZE", "AT X", "AT Y"}, width: shares(width, 1.4, 0.8, 1.7, 1.8, 2.2)}
	b := w.a.Blocks[0].Box.Min
	for j, joint := range w.a.Joints() {
		var xs, ys []float64
		for _, at := range w.a.ScrewSpots(0, j, joint.Screws.Count) {
			xs, ys = append(xs, at.X-b.X), append(ys, at.Y-b.Z)
		}
		xs, ys = distinct(xs), distinct(ys)
		rows := w.text(ys[0])
		if n := len(ys); n > 1 {
			rows += " TO " + w.text(ys[n-1]) + fmt.Sprintf(", %d EQ SP", n-1)
		}
		var cols []string
		for _, x := range xs {
			cols = append(cols, w.text(x))
		}
		t.rows = append(t.rows, []string{joint.Outer + " TO " + joint.Inner, fmt.Sprint(joint.Screws.Count), w.exact(joint.Screws.Diameter) + " x " + w.text(joint.Screws.Length.MM()), strings.Join(cols, ", "), rows})
	}
	return t
}

func (w *writer) hardwareTable(width float64) *table {
	t := &table{title: "HARDWARE, ALL BLOCKS", head: []string{"MARK", "ITEM", "SIZE", "QTY"}, width: shares(width, 0.9, 2.6, 2.6, 0.8)}
	for _, l := range w.a.Schedule() {
		switch l.Name {
		case "HEX BOLT", "LAG SCREW", "WOOD SCREW", "NUT", "WASHER", "PLATE WASHER", "SPACER", "PLY SCREW", "LEDGER SCREW", "USER-SUPPLIED FASTENER WITH EVALUATED VALUES":
			t.rows = append(t.rows, []string{l.Mark, l.Name, w.sizeText(l), fmt.Sprint(l.Qty)})
		}
	}
	return t
}

// sizeText prints the bought size of a schedule line; "BY RATING" for a device that has none.
func (w *writer) sizeText(l detail.Line) string {
	var parts []string
	for i, v := range l.Size {
		if v <= 0 || i == 1 && v == l.Size[0] {
			continue
		}
		if strings.HasPrefix(l.Mark, "BT") && i == 0 {
			parts = append(parts, w.diameter(v))
			continue
		}
		if i == 2 && l.Mark == "BT1" || i == 2 && l.Mark == "BT2" {
			parts = append(parts, w.bought(v))
			continue
		}
		if v < unit.Inch/4 { // thin metal and screws
			parts = append(parts, w.exact(v))
			continue
		}
		parts = append(parts, w.text(v.MM()))
	}
	if len(parts) == 0 {
		return "BY RATING"
	}
	return strings.Join(parts, " x ")
}

// cutTable lists the sticks that hold pieces of blocks, as they are cut on S-701.
func (w *writer) cutTable(width float64) *table {
	t := &table{title: "CUT LIST OF THE BLOCKS, AS S-701", head: []string{"NO.", "STOCK", "PIECES", "LEFT"}, width: shares(width, 0.9, 3, 2.3, 1)}
	for _, r := range w.stickRows() {
		if r.holds(func(c detail.Cut) bool {
			return c.Mark != "L1" && !strings.HasPrefix(c.Mark, "L") && !strings.HasPrefix(c.Mark, "BK")
		}) {
			t.rows = append(t.rows, []string{r.numbers(), w.sectionWords(r.lumber) + ", " + w.stickLength(r), w.cutWords(r.stick), w.leftText(r)})
		}
	}
	return t
}

// blockNotes are the steps and limits a builder needs at the bench.
func (w *writer) blockNotes(width float64) *table {
	s := w.a.Spec
	t := &table{title: "ASSEMBLY", width: []float64{width}}
	n := 0
	add := func(f string, a ...any) {
		n++
		t.rows = append(t.rows, []string{caps(fmt.Sprintf("%d. %s", n, fmt.Sprintf(f, a...)))})
	}
	dry := map[string]string{"dry": "19 % moisture or less", "wet": "wet stock", "unknown": "moisture not stated"}[s.Blocks.Moisture.Assembly]
	add("Cut the pieces to size, heights at the wall side, grain %s; %s.", s.Blocks.Grain, dry)
	if st := w.report.Find("lead_hole_screws"); st != nil {
		add("Bore for the screws: shank %s, thread %s.", w.fine(st.With[0].Value), w.fine(st.With[2].Value))
	}
	add("Cut every top to fall %s outward. Treat every cut and hole.", s.Blocks.TopSlope.Text(s.Project.System))
	for _, j := range w.a.Joints() {
		if j.Ledger() {
			continue
		}
		add("Lay %s on %s, flush at foot and ends; drive %d screws %s x %s from the face of %s.", j.Outer, j.Inner, j.Screws.Count, w.exact(j.Screws.Diameter), w.text(j.Screws.Length.MM()), j.Outer)
	}
	if len(w.a.Joints()) == 0 {
		add("Stack the pieces flush at foot and ends and clamp.")
	}
	if s.Fasteners.Through != nil {
		add("Drill square through from the outside face with a board behind, holes within %s of place. Drill ledger, sheathing and rim through the block as the template.", w.tolerance())
	} else {
		add("Drill square through from the outside face with a board behind, holes within %s of place. Holes marked for the rim: bore the rim through them, the ledger not; holes marked for the ledger: the ledger alone.", w.tolerance())
	}
	for _, id := range []string{"lead_hole_rim", "lead_hole_block"} {
		if st := w.report.Find(id); st != nil {
			add("%s: shank %s, thread %s to %s.", strings.Replace(st.Name, "holes to bore", "Bore", 1), w.fine(st.With[0].Value), w.fine(st.With[1].Value), w.fine(st.With[2].Value))
		}
	}
	if wrap := w.a.Find(detail.Wrap); len(wrap) > 2 {
		side, cap := wrap[0], wrap[2]
		add("At the wall: side pieces M3, %s x %s, two a block, turned out onto M1; cap M2, %s x %s, over them, up the wall, down both sides. Leave the foot bare.",
			w.text(side.Size[1].MM()), w.text(side.Size[2].MM()), w.text(cap.Size[1].MM()), w.text(cap.Size[2].MM()))
	}
	t.rows = append(t.rows, []string{caps(fmt.Sprintf("One block weighs about %s. Third-angle projection.", w.blockWeight()))})
	return t
}

// tolerance is how near to its place a hole must be drilled.
func (w *writer) tolerance() string {
	t := w.text(check.HoleTolerance(w.a.Spec.Project.System).MM())
	if w.unit() == render.Millimetre {
		return t + " mm"
	}
	return t
}

func (w *writer) blockWeight() string {
	mass := w.a.BlockMass(func(m string) float64 {
		if v, ok := stock.MaterialOf(m); ok {
			return v.Density
		}
		return 550 // treated softwood, common practice, no source
	})
	if w.unit() == render.Millimetre {
		return fmt.Sprintf("%.1f kg", mass)
	}
	return fmt.Sprintf("%.1f lb", mass*2.20462)
}
