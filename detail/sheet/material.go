package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// materialPages: what is bought for this work, then how it is cut and what is there.
func (w *writer) materialPages() int { return 2 }

// materialSheet lists what is bought, cut and bored: every part by mark, fasteners with spares, sheet goods,
// flashing, connectors by required load; on the next page lumber with its cutting plan along the head of the
// sheet, tools, and what is of others.
func (w *writer) materialSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	const gap, apart = 6, 10
	least := []float64{112, 112, 106, 106}[w.tight]
	n := max(1, int((room.W()+gap)/(least+gap)))
	if w.page == 0 {
		room.Min.Y += underView
		fits := columns(s, room, n, gap, w.materialBlocks)
		w.asView(s, "SCHEDULES")
		return "NTS", fits
	}
	for _, k := range unit.Scales(w.a.Spec.Project.System) {
		on := &render.Sheet{}
		if k >= 8 && k <= 50 && w.cutAndOthers(on, room, w.cuttingPlan(k), n, gap, apart) {
			s.Views, s.Items = append(s.Views, on.Views...), append(s.Items, on.Items...)
			return w.scale(k).Text, true
		}
	}
	return "NTS", false
}

// cutAndOthers sets the cutting plan along the head of the room, the lumber beside it where it leaves room for
// that, and the tables that are left in n columns under them.
func (w *writer) cutAndOthers(s *render.Sheet, room geom.Box, c *composer, n int, gap, apart float64) bool {
	const least = 110
	p := c.paper()
	beside := room
	beside.Min.X += p.W() + apart
	under, high := w.otherBlocks, p.H()
	if beside.W() >= least {
		high = math.Max(high, stackHeight(w.lumberBlocks(beside.W())))
	} else {
		under = func(width float64) []*table { return append(w.lumberBlocks(width), w.otherBlocks(width)...) }
	}
	beside.Min.Y = room.Max.Y - high
	if p.W() > room.W() || high > room.H()*0.8 || beside.W() >= least && !columns(s, beside, 1, 0, w.lumberBlocks) {
		return false
	}
	w.place(s, c, "1", "CUTTING PLAN", stickOrigin, pt(room.Min.X-p.Min.X, room.Max.Y-p.Max.Y))
	room.Max.Y = beside.Min.Y - apart
	return columns(s, room, n, gap, under)
}

// lumberBlocks stand beside the cutting plan.
func (w *writer) lumberBlocks(width float64) []*table {
	return tables(w.lumberTable(width), w.cuttingNotes(width))
}

func (w *writer) materialBlocks(width float64) []*table {
	parts := w.partTable()
	parts.width = shares(width, 14, 11, 34, 34, 40)
	return w.lettered(tables(parts, w.fastenerTable(width), w.sheetGoods(width), w.openedTable(width), w.flashingTable(width), w.connectorTable(width)))
}

// otherBlocks stand under the cutting plan.
func (w *writer) otherBlocks(width float64) []*table {
	return w.lettered(tables(w.toolTable(width), w.existingTable(width), w.notCounted(width)))
}

// lettered sets the text of the schedules.
func (w *writer) lettered(out []*table) []*table {
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
