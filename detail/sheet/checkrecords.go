package sheet

import (
	"fmt"

	"standclear/detail"
)

func (w *writer) stepsWater(c *checklist) {
	c.section("WATER AND AIR")
	c.count(w.a.Count(detail.Flashing), "FLASHING F1 IN ITS PLACE, LAPS SEALED, END DAMS TURNED UP")
	for _, id := range []string{"flashing_upstand", "flashing_reach", "cladding_clearance", "decking_gap"} {
		c.measured(id)
	}
	c.step("", "", "EACH LAYER LAPS OVER THE ONE BELOW; NO LAP RELIES ON SEALANT")
	c.step("OPEN", "", "GAP BEHIND THE LEDGER: A LIGHT HELD BELOW IS SEEN ABOVE BETWEEN ALL BLOCKS")
	c.count(w.a.Count(detail.Screen), "PIECES OF SCREEN AT THE FOOT OF THE GAP")
	for i := range w.a.Spec.Doors {
		c.measured(fmt.Sprintf("door_%d_step", i+1))
		c.measured(fmt.Sprintf("door_%d_water", i+1))
	}
	c.measured("grade_clearance")
	c.sign("FLASHING OPEN TO VIEW, BEFORE THE CLADDING GOES BACK")
}

func (w *writer) stepsAfter(c *checklist) {
	c.section("DECK ON")
	c.step("", "", "NO HOT TUB, ROOF, PLANTERS OR GUARD POST ON THE LEDGER THAT G-001 DOES NOT LIST")
	if w.report.Find("ledger_drop") != nil {
		c.measured("ledger_drop")
		c.step("0", "", "TOP OF LEDGER AGAIN, DECK LOADED BY ITS OWN WEIGHT: CHANGE FROM THE FIRST READING")
	}
	c.step("", "", "NUTS AND THE GAP CAN STILL BE REACHED AND SEEN")
	c.sign("WORK COMPLETE")
}

// blockRecord has a line for every block: where it is drawn, and boxes for what was found there.
func (w *writer) blockRecord(width float64) *table {
	t := &table{title: "RECORD OF EVERY BLOCK", head: []string{"MARK", "CENTRE", "FOUND", "BOLT TO JOIST", "FOUND", "RIM %", "BLOCK %", "PHOTO"}, width: shares(width, 14, 28, 28, 28, 28, 20, 22, 24), least: 6.6}
	rules := w.a.Rules()
	for _, b := range w.a.Blocks {
		joist := "-"
		if k, ok := rules.Closest("house joist", b.X); ok {
			joist = w.down(k.Distance)
		}
		t.rows = append(t.rows, []string{b.Mark, w.text(b.X), "", joist, "", "", "", ""})
	}
	return t
}

// photoTable lists what is photographed before it is covered, with a scale in the picture.
func (w *writer) photoTable(width float64) *table {
	t := &table{title: "PHOTOGRAPHS, WITH MARK AND TAPE IN EACH", head: []string{"WHAT", "NUMBER", "TAKEN", "OK"}, width: shares(width, 130, 24, 24, 14), least: 6.6}
	add := func(n int, f string, a ...any) {
		if n > 0 {
			t.rows = append(t.rows, []string{fmt.Sprintf(f, a...), fmt.Sprint(n), "", ""})
		}
	}
	a := w.a
	add(1, "WALL BEFORE IT IS OPENED, WITH X 0 AND Z 0 MARKED")
	add(len(a.Blocks), "RIM AND SHEATHING AT EACH BLOCK, BARE")
	add(a.Count(detail.Backing), "%s", either(len(a.HouseJoists) > 0, "BACKING AND TIES IN EACH BAY, FROM INSIDE", "BACKING BEHIND EACH BLOCK AND WHAT HOLDS IT, FROM INSIDE"))
	add(a.Count(detail.Patch), "EACH PATCH M1 WITH ITS LAPS")
	add(len(a.Blocks), "EACH BLOCK WITH ITS WRAP, BEFORE THE INSULATION")
	add(len(a.Blocks), "HEADS OUTSIDE%s AT EACH BLOCK", either(a.Count(detail.Nut) > 0, " AND NUTS INSIDE", ""))
	add(a.Count(detail.TensionRod), "EACH DEVICE LT1, BOTH ENDS")
	add(2*a.Count(detail.Flashing), "ENDS OF F1 WITH THEIR DAMS")
	add(len(a.Spec.Doors), "EACH DOOR SILL WITH ITS FLASHING")
	add(2, "GAP FROM BELOW, BOTH ENDS")
	return t
}

// retightenTable has the dates of the first years. Wood shrinks, and bolts loosen.
func (w *writer) retightenTable(width float64) *table {
	t := &table{title: "AFTERWARDS", head: []string{"WHAT", "DUE", "DONE", "BY"}, width: shares(width, 100, 32, 32, 32), least: 8}
	add := func(what string) { t.rows = append(t.rows, []string{what, "", "", ""}) }
	add("DATE OF COMPLETION")
	if n := w.a.Count(detail.Nut); n > 0 {
		add(fmt.Sprintf("%s: ALL %d NUTS", retighten, n))
	}
	add("FIRST INSPECTION, ONE YEAR ON: GAP CLEAR, SCREEN WHOLE, FLASHING TIGHT, NO STAIN INSIDE")
	add("MOISTURE OF THE RIM AT TWO BLOCKS, ONE YEAR ON: " + dryLimit + " OR LESS")
	add("INSPECT EVERY YEAR AFTER")
	return t
}
