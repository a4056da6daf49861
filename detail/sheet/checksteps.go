package sheet

import (
	"fmt"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/unit"
	"standclear/render"
)

// dryLimit is the moisture up to which wood counts as dry: 19 % (NDS 2018 Supplement, from memory, confirm).
const dryLimit = "19 %"

// checklist numbers steps and hold points as they are added.
type checklist struct {
	w        *writer
	width    float64
	tables   []*table
	no, hold int
}

// section begins a table of steps.
func (c *checklist) section(title string) {
	c.tables = append(c.tables, &table{title: title, head: []string{"NO.", "STEP", "DRAWN", "LIMIT", "FOUND", "OK"}, width: shares(c.width, 11.5, 91, 27, 28, 26, 11), least: 6.6})
}

// step adds a line to tick.
func (c *checklist) step(drawn, limit, f string, a ...any) {
	t := c.tables[len(c.tables)-1]
	c.no++
	t.rows = append(t.rows, []string{fmt.Sprint(c.no), fmt.Sprintf(f, a...), drawn, limit, "", ""})
}

// count adds a step that counts parts; none where there are none.
func (c *checklist) count(n int, f string, a ...any) {
	if n > 0 {
		c.step(fmt.Sprint(n), fmt.Sprint(n), f, a...)
	}
}

// measured adds a check of the report: its value as drawn beside its limit.
func (c *checklist) measured(id string) {
	st := c.w.report.Find(id)
	if st == nil || st.Limit == nil && st.Verdict != check.NotChecked {
		return
	}
	drawn, limit := "NOT CHECKED", "-"
	if st.Verdict != check.NotChecked {
		drawn, limit = c.w.bounded(*st)
	}
	c.step(drawn, limit, "%s", caps(st.Name))
}

// bounded prints value and limit of a check, lengths rounded to the unsafe side of neither.
func (w *writer) bounded(st check.Step) (drawn, limit string) {
	sys := w.a.Spec.Project.System
	drawn, limit = st.Value.Text(sys), st.Limit.Text(sys)
	if st.Value.Kind == unit.KLength && st.Sense == check.AtLeast {
		drawn, limit = w.down(st.Value.V), w.up(st.Limit.V)
	} else if st.Value.Kind == unit.KLength {
		drawn, limit = w.up(st.Value.V), w.down(st.Limit.V)
	}
	return drawn, limit + either(st.Sense == check.AtLeast, " OR MORE", " OR LESS")
}

// sign adds a hold point.
func (c *checklist) sign(what string) {
	c.hold++
	c.tables = append(c.tables, &table{head: []string{fmt.Sprintf("HOLD POINT %d", c.hold), "BUILDER", "INSPECTOR", "DATE"}, width: shares(c.width, 84, 40, 40, 30), least: 8.5,
		rows: [][]string{{what + ". DO NOT GO ON UNTIL SIGNED.", "", "", ""}}, pens: []render.Pen{render.Status}})
}

// checkSteps are the steps in the order of the work.
func (w *writer) checkSteps(width float64) []*table {
	c := &checklist{w: w, width: width}
	w.stepsBefore(c)
	w.stepsInside(c)
	w.stepsBlocks(c)
	c.tables = append(c.tables, w.blockRecord(width))
	c.sign("BLOCKS, PATCHES AND WRAPS OPEN TO VIEW")
	w.stepsLedger(c)
	w.stepsWater(c)
	w.stepsAfter(c)
	return append(c.tables, w.photoTable(width), w.retightenTable(width))
}

func (w *writer) stepsBefore(c *checklist) {
	s := w.a.Spec
	c.section("BEFORE ANYTHING IS CUT")
	c.step(w.hash, "", "ALL SHEETS CARRY ONE PARAMETER HASH; REVIEWED BY A LICENSED PROFESSIONAL")
	c.step(fmt.Sprintf("%d FAIL", w.report.Count(check.Fails)), "0", "CHECKS ON G-001; WHAT IS NOT CHECKED OR FOR THE ENGINEER IS DECIDED IN WRITING")
	c.step("", "", "SURVEY G-003 FILLED, FILE CORRECTED, SET DRAWN ANEW")
	c.step(caps(s.Ledger.Species+" "+s.Ledger.Grade), "", "LEDGER: SPECIES, GRADE MARK%s", either(s.Ledger.Treated, ", TREATMENT MARK", ""))
	c.step(caps(s.Blocks.Species+" "+s.Blocks.Grade), "", "BLOCKS: SPECIES, GRADE MARK%s", either(s.Blocks.Treated, ", TREATMENT MARK", ""))
	for _, l := range []struct{ name, state string }{{"LEDGER", s.Ledger.Moisture.Assembly}, {"BLOCK PLIES", s.Blocks.Moisture.Assembly}} {
		c.step(caps(l.state), either(l.state == "dry", dryLimit+" OR LESS", "AS STATED"), "MOISTURE OF THE %s, GREATEST OF FIVE READINGS", l.name)
	}
	for _, set := range s.Fasteners.Sets() {
		c.step(w.diameter(set.Diameter)+" x "+w.bought(w.a.BoltLength(set)), "", "%s: SIZE, %s, %s", boltWord(set.Kind), caps(set.Grade), caps(set.Coating))
	}
}

func (w *writer) stepsInside(c *checklist) {
	c.section("BEHIND THE RIM")
	c.step("SOUND", "", "RIM, PLATE, SHEATHING, JOIST ENDS PROBED: NO DECAY, NO STAIN")
	c.step("", dryLimit+" OR LESS", "MOISTURE OF THE RIM, GREATEST READING")
	c.measured("bolt_joist_clearance")
	c.count(w.a.Count(detail.Obstacle)+w.a.Count(detail.Outside), "OBSTACLES WHERE G-003 SAYS, NONE BESIDE THEM")
	c.count(w.a.Count(detail.Backing), "BACKING BK1 TIGHT TO THE RIM, FULL DEPTH, %s", either(len(w.a.HouseJoists) > 0, "FIXED AS ITS MAKER STATES", "HELD AS THE ENGINEER STATES"))
	c.count(w.a.Count(detail.TieStrap), "TIES TS1, EVERY HOLE FILLED AS THE MAKER STATES")
	c.sign("RIM, BACKING AND TIES OPEN TO VIEW")
}

func (w *writer) stepsBlocks(c *checklist) {
	a, s := w.a, w.a.Spec
	c.section("BLOCKS ON THE WALL")
	c.count(a.Count(detail.Patch), "PATCHES M1, ROLLED DOWN, %s", either(s.Water.Patch.Under, "TOP EDGE UNDER THE BARRIER", "TOP EDGE OVER THE BARRIER: REVERSED LAP"))
	for _, id := range []string{"patch_lap", "patch_foot", "patch_side"} {
		c.measured(id)
	}
	c.count(len(a.Blocks), "BLOCKS, GRAIN %s, TOPS FALLING OUTWARD %s, EVERY CUT TREATED", caps(s.Blocks.Grain), s.Blocks.TopSlope.Text(s.Project.System))
	c.step(w.text(s.Standoff().MM()), "± "+w.tolerance(), "STAND-OFF, SHEATHING TO LEDGER, AT EVERY BLOCK")
	if n := a.Count(detail.PlyScrew); n > 0 && len(a.Blocks) > 0 {
		c.count(n, "SCREWS OF THE BLOCKS, %d IN EACH", n/len(a.Blocks))
	}
	if limit, ok := w.blockPlay(); ok {
		c.step("TABLE BELOW", "± "+limit, "CENTRE OF EVERY BLOCK, FROM THE LEFT END OF THE LEDGER")
	}
	for _, id := range []string{"lowest_row_in_rim", "edge_rim_loaded", "edge_block_top", "edge_block_bottom", "bolt_hole"} {
		c.measured(id)
	}
	c.count(a.Count(detail.Wrap), "WRAP: SIDE PIECES M3 AND CAPS M2 OVER THEM, FEET BARE")
	c.measured("wrap_turn_up")
}

// blockPlay is how far a block may stand off its place.
func (w *writer) blockPlay() (string, bool) {
	return w.down(check.BlockTolerance(w.a.Spec.Project.System, w.report).MM()), len(w.a.Blocks) > 0
}

func (w *writer) stepsLedger(c *checklist) {
	a, s := w.a, w.a.Spec
	c.section("LEDGER AND BOLTS")
	c.step(w.signed(a.Frame.LedgerTop), "± "+w.tolerance(), "TOP OF LEDGER AT THE WALL SIDE, FROM THE FINISHED FLOOR, BOTH ENDS AND MIDDLE")
	for _, id := range []string{"edge_ledger_loaded", "end_ledger", "gap_clear"} {
		c.measured(id)
	}
	c.count(a.Count(detail.Bolt), "%s DRIVEN OR DRAWN UP", w.boltNames())
	c.count(a.Count(detail.Washer), "WASHERS, FLAT ON THE WOOD")
	if n := a.Count(detail.Nut); n > 0 {
		c.step(fmt.Sprint(n), fmt.Sprint(n), "NUTS VISIBLE INSIDE: COUNT ______ OF %d", n)
		c.step("3 THREADS", "3 OR MORE", "THREADS PAST EVERY NUT")
		c.step("", "", "TIGHT: WASHERS FLAT, WOOD NOT CRUSHED; %s. NO TORQUE IS STATED", either(s.Blocks.Spacer > 0, "BLOCK TIGHT TO THE SHEATHING, SPACERS TIGHT BETWEEN BLOCK AND LEDGER", "NO GAP BETWEEN BLOCK, SHEATHING AND LEDGER"))
	}
	c.count(a.Count(detail.TensionRod), "LATERAL TENSION DEVICES LT1, BESIDE %s AND A DECK JOIST, SEALED AT THE BARRIER", c.w.heldInside())
	concealed := a.CountMark(detail.Concealed)
	c.count(a.Count(detail.Hanger)-concealed, "HANGERS HG1, EVERY HOLE FILLED AS THE MAKER STATES, NONE OVER A BOLT HEAD")
	c.count(concealed, "HANGERS %s AT ENDS, FLANGES CONCEALED, EVERY HOLE FILLED AS THE MAKER STATES", detail.Concealed)
	c.step("", "", "NO NAIL OR SCREW IN PLACE OF A BOLT; EVERY CUT AND HOLE TREATED; %s", either(s.Fasteners.Through != nil, "BOLTS SEALED AT THE BARRIER", "FASTENERS SEALED AT THE BARRIER"))
	c.sign("ALL BOLTS AND NUTS OPEN TO VIEW, INSIDE AND OUTSIDE")
}

// boltNames lists the fasteners of every set.
func (w *writer) boltNames() string {
	var out []string
	for _, set := range w.a.Spec.Fasteners.Sets() {
		out = append(out, boltWord(set.Kind)+" "+w.diameter(set.Diameter))
	}
	return strings.Join(out, " AND ")
}
