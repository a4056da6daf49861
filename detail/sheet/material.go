package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/geom"
	"standclear/render"
)

// materialSheet lists what is bought, cut and bored: every part by mark, lumber with its cutting plan,
// fasteners with spares, sheet goods, flashing, connectors by required load, tools. The cutting plan stands
// along the foot of the sheet, the lumber beside it, all else in columns above.
func (w *writer) materialSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	const gap, apart = 6, 10
	least := []float64{132, 132, 106, 106}[w.tight]
	c, fits := w.choose(0, 8, 48, geom.Vec{X: room.W() * 0.6, Y: room.H() * 0.45}, w.cuttingPlan)
	p := c.paper()
	beside := room
	beside.Min.X += p.W() + apart
	beside.Max.Y = room.Min.Y + math.Max(p.H(), stackHeight(w.lumberBlocks(beside.W())))
	w.place(s, c, "1", "CUTTING PLAN", stickOrigin, pt(room.Min.X-p.Min.X, beside.Max.Y-p.Max.Y))
	fits = columns(s, beside, 1, 0, w.lumberBlocks) && fits
	room.Min.Y = beside.Max.Y + apart
	n := max(1, int((room.W()+gap)/(least+gap)))
	return w.scale(c.k).Text, columns(s, room, n, gap, w.materialBlocks) && fits
}

// lumberBlocks stand beside the cutting plan.
func (w *writer) lumberBlocks(width float64) []*table {
	return tables(w.lumberTable(width), w.cuttingNotes(width))
}

func (w *writer) materialBlocks(width float64) []*table {
	parts := w.partTable()
	parts.width = shares(width, 14, 11, 34, 34, 40)
	out := tables(parts, w.fastenerTable(width), w.sheetGoods(width), w.openedTable(width), w.flashingTable(width), w.connectorTable(width), w.toolTable(width), w.existingTable(width), w.notCounted(width))
	for _, t := range out {
		t.text = []float64{2.5, 2.4, 2.4, 2.2}[w.tight]
	}
	return out
}

// cuttingNotes say how the plan is to be read.
func (w *writer) cuttingNotes(width float64) *table {
	st := w.a.Spec.Stock
	return &table{title: "CUTTING", width: []float64{width}, rows: [][]string{
		{fmt.Sprintf("NET SIZES, LENGTHS ALONG THE GRAIN. TRIM %s OFF THE LEFT END, KERF %s BETWEEN PIECES. STICKS OF %s; A LONGER PIECE FROM THE SHORTEST STICK THAT HOLDS IT, IN STEPS OF %s.", w.text(st.Trim.MM()), w.text(st.Kerf.MM()), w.text(st.Length.MM()), w.text(w.a.LongStick(1).MM()))},
		{"FEWEST, PROVED: EVERY WAY TO FILL THE STICKS WAS SEARCHED OR RULED OUT. WASTE COUNTS TRIM, KERF AND OFFCUT."},
		{"CUT THE LONGEST PIECES FIRST, CLEAR OF SPLITS AND LARGE KNOTS; TREAT EVERY CUT."},
	}}
}

// existingTable lists what stands there, is a layer of the wall or is built by others: a row a mark.
func (w *writer) existingTable(width float64) *table {
	t := &table{title: "EXISTING, WALL LAYERS, BY OTHERS", head: []string{"MARK", "PART", "SIZE", "MATERIAL"}, width: shares(width, 14, 50, 34, 34)}
	seen := map[string]bool{}
	for _, l := range w.a.Schedule() {
		if !l.Existing || seen[l.Mark] {
			continue
		}
		seen[l.Mark] = true
		l.Size[2] = 0 // runs on, or is cut on site
		size := w.sizeText(l)
		if size == "BY RATING" {
			size = "-"
		}
		t.rows = append(t.rows, []string{l.Mark, caps(l.Name), size, caps(materialName(l.Material))})
	}
	return t
}

// notCounted says what the parts of the assembly do not hold.
func (w *writer) notCounted(width float64) *table {
	t := &table{title: "NOT COUNTED HERE", width: []float64{width}}
	add := func(f string, v ...any) { t.rows = append(t.rows, []string{fmt.Sprintf(f, v...)}) }
	add("NAILS AND SCREWS OF HANGERS, TIES AND DEVICES: AS THEIR MAKER STATES, OF ONE METAL WITH THEM.")
	if w.a.Count(detail.Nut) > 0 {
		add("SECOND NUTS: NT ARE LOCK NUTS. WITH JAM NUTS BUY AS MANY AGAIN AND CHECK THE BOLT LENGTH.")
	}
	add("SEALANT AT THE BOLTS, PRESERVATIVE FOR CUTS AND HOLES, FIXINGS OF CLADDING, FURRING AND FLASHING, SEALS AT DOORS.")
	add("DECK JOISTS, DECKING, BEAM, POSTS, GUARDS, FOOTINGS: BY OTHERS.")
	return t
}
