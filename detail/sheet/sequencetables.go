package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// lap is one pair of the lap check: which sheet lies over which, where, and by how much.
type lap struct {
	upper, lower, where string
	over                float64 // overlap, mm
	step                string  // of the report that judges it, "" where none does
	order               string  // of the report that judges the direction, "" where none does
	out, in             float64 // depths of the outer faces of upper and lower where they lap
	stated              bool    // the project states the direction, the parts do not show it
}

// laps are the pairs at block b, from above down, measured on the parts.
func (w *writer) laps(b int) []lap {
	f, s := w.a.Frame, w.a.Spec
	blk, p := w.a.Blocks[b], w.a.PatchBox(b)
	x, wrb := blk.Box.Center().X, w.marksOf("wrb")+" BARRIER"
	path := w.a.FlashingPath()
	clad := f.BandTop + 0.5*math.Max(1, path.V[0].Y-f.BandTop)
	over := lap{upper: "CLADDING " + w.marksOf("cladding"), lower: "F1 UPSTAND", where: "ABOVE THE LEDGER", over: path.V[0].Y - f.BandTop, order: "flashing_lap",
		out: w.outer(detail.Cladding, -1, x, clad), in: w.outer(detail.Flashing, -1, x, clad)}
	if s.Water.Flashing.Lap == "wrb" {
		over.upper, over.over, over.stated = wrb, s.Water.Flashing.Up.MM(), true
	}
	out := []lap{over, {upper: "F1 DRIP", lower: "LEDGER L1", where: "PAST ITS FACE", over: path.V[3].X - f.LedgerFront, step: "flashing_reach", out: path.V[3].X, in: f.LedgerFront}}
	if !p.Empty() {
		z := p.Max.Y - 2
		out = append(out, lap{upper: wrb, lower: "M1 PATCH", where: "ABOVE THE BLOCK", over: p.Max.Y - blk.Box.Max.Z, step: "patch_lap", order: "patch_order", out: w.outer(detail.Barrier, -1, x, z), in: w.outer(detail.Patch, b, x, z)})
	}
	up := w.a.WrapTop(b)
	out = append(out, lap{upper: wrb, lower: "M2 TURN-UP", where: "ABOVE THE BLOCK", over: up - blk.Box.Max.Z, step: "wrap_turn_up", out: w.outer(detail.Barrier, -1, x, up-2), in: w.outer(detail.Wrap, b, x, up-2)})
	out = append(out, w.sideLaps(b)...)
	if !p.Empty() {
		z := p.Min.Y + 2
		out = append(out, lap{upper: "M1 PATCH", lower: wrb, where: "BELOW THE BLOCK", over: blk.Box.Min.Z - p.Min.Y, step: "patch_foot", out: w.outer(detail.Patch, b, x, z), in: w.outer(detail.Barrier, -1, x, z)})
	}
	return out
}

// sideLaps are the laps of cap and side pieces beside the block.
func (w *writer) sideLaps(b int) []lap {
	blk := w.a.Blocks[b]
	var cap, side *detail.Part
	for _, p := range blk.Parts {
		switch p.Mark {
		case "M2":
			cap = p
		case "M3":
			if side == nil {
				side = p
			}
		}
	}
	if cap == nil || side == nil || len(cap.Solids) < 2 || len(side.Solids) < 2 {
		return nil
	}
	flap, upright, flange := cap.Solids[1].Bounds(), side.Solids[0].Bounds(), side.Solids[1].Bounds()
	out := []lap{{upper: "M2 CAP", lower: "M3 SIDE PIECES", where: "DOWN THE BLOCK", over: math.Min(upright.Max.Z, flap.Max.Z) - flap.Min.Z, out: blk.Box.Min.X - flap.Min.X, in: blk.Box.Min.X - upright.Min.X}}
	if p := w.a.PatchBox(b); !p.Empty() {
		x, z := flange.Center().X, flange.Center().Z
		out = append(out, lap{upper: "M3 SIDE PIECES", lower: "M1 PATCH", where: "BESIDE THE BLOCK", over: flange.Max.X - math.Max(flange.Min.X, p.Min.X), out: w.outer(detail.Wrap, b, x, z), in: w.outer(detail.Patch, b, x, z)})
	}
	return out
}

// outer is how far out the parts of the role, of block b or of no block, reach on the line across the wall at
// (x, z); minus infinity where there is none.
func (w *writer) outer(role detail.Role, b int, x, z float64) float64 {
	y := math.Inf(-1)
	v := view.AcrossWall(x)
	for _, p := range w.a.Find(role) {
		if box := p.Bounds(); p.Block != b || box.Min.X > x || box.Max.X < x || box.Min.Z > z || box.Max.Z < z {
			continue
		}
		for _, s := range p.Solids {
			if r := s.Cut(v).Clip(geom.Box{Min: geom.Vec{X: -1e4, Y: z - 0.5}, Max: geom.Vec{X: 1e4, Y: z + 0.5}}); !r.Empty() {
				y = math.Max(y, r.Bounds().Max.X)
			}
		}
	}
	return y
}

// direction says which of the two lies outside where they lap, judged on the parts; NOT CHECKED where one of
// them is not there.
func (l lap) direction() string {
	switch {
	case l.stated:
		return "AS STATED"
	case math.IsInf(l.out, -1) || math.IsInf(l.in, -1):
		return "NOT CHECKED"
	case l.out > l.in-1e-6:
		return "UPPER OUTSIDE"
	}
	return "REVERSED"
}

// lapTable checks every lap: overlap and direction as built, limit and verdict as reported.
func (w *writer) lapTable(b int, width float64) *table {
	t := &table{title: "LAP CHECK AT BLOCK " + w.a.Blocks[b].Mark, head: []string{"UPPER", "OVER LOWER", "WHERE", "LAP", "LEAST", "DIRECTION", "VERDICT"},
		width: shares(width, 0.19, 0.17, 0.18, 0.1, 0.1, 0.14, 0.12), right: []bool{false, false, false, true, true, false, false}}
	for _, l := range w.laps(b) {
		limit, verdict := "-", w.lapVerdict(l)
		if st := w.report.Find(l.step); st != nil && st.Limit != nil {
			limit = w.text(st.Limit.V)
		}
		pen := render.Note
		if verdict == check.Fails.String() || verdict == check.NotChecked.String() {
			pen = render.Status
		}
		t.rows = append(t.rows, []string{caps(l.upper), caps(l.lower), l.where, w.text(math.Max(0, l.over)), limit, l.direction(), verdict})
		t.pens = append(t.pens, pen)
	}
	return t
}

// lapVerdict is the worst of what the report says of the lap and its direction and of what the parts show;
// a pair that no check of the report covers is judged by its direction alone.
func (w *writer) lapVerdict(l lap) string {
	worst := check.OK
	switch l.direction() {
	case "REVERSED":
		worst = check.Fails
	case "NOT CHECKED":
		worst = check.NotChecked
	}
	for _, id := range []string{l.step, l.order} {
		if id == "" {
			continue
		}
		v := check.NotChecked
		if st := w.report.Find(id); st != nil {
			v = st.Verdict
		}
		worst = max(worst, v)
	}
	return worst.String()
}

// sequencePieces lists the membranes, strips and sheets of the whole ledger, with what is cut in the barrier.
func (w *writer) sequencePieces(b int, width float64) *table {
	n := len(w.a.Blocks)
	t := &table{title: fmt.Sprintf("PIECES AND STRIPS FOR %d BLOCKS, IN ORDER", n), head: []string{"MARK", "QTY", "PIECE", "SIZE", "NOTE"}, width: shares(width, 0.08, 0.07, 0.24, 0.28, 0.33)}
	lines := w.a.Schedule()
	for _, mark := range []string{"M1", "M3", "M2", "SC1", "F1"} {
		if mark == "M1" {
			t.rows = append(t.rows, w.cutRows()...)
		}
		var of []detail.Line
		for _, l := range lines {
			if l.Mark == mark {
				of = append(of, l)
			}
		}
		if len(of) > 0 {
			t.rows = append(t.rows, w.partRow(of))
		}
	}
	return t
}

// cutRows are the cuts in the barrier and the tape over them: of all blocks together.
func (w *writer) cutRows() [][]string {
	level, upright := 0.0, 0.0
	for _, p := range w.a.Find(detail.Barrier) {
		_, over := w.flaps(p)
		for _, s := range over {
			box := s.Bounds()
			level += box.Max.X - box.Min.X
			upright += 2 * (box.Max.Z - box.Min.Z)
		}
	}
	if upright == 0 {
		return nil
	}
	n := len(w.a.Blocks)
	mark := w.marksOf("wrb")
	return [][]string{
		{mark, fmt.Sprint(n), "LEVEL CUT AT THE FOOT", w.text(level) + " IN ALL", "UNDER M1: NO TAPE"},
		{mark, fmt.Sprint(2 * n), "UPRIGHT CUT, TAPED", w.text(upright) + " IN ALL", "TAPE OF THE BARRIER'S SYSTEM OVER EACH"},
	}
}
