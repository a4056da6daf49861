package sheet

import (
	"fmt"
	"strings"

	"standclear/detail"
	"standclear/geom"
	"standclear/render"
)

// seqStep is one step of the flashing sequence: what it says and what its panel measures and names.
type seqStep struct {
	title, text string
	dims        []seqDim
	notes       []seqNote
}

// seqDim is one chain of the section.
type seqDim struct {
	side  side
	ticks []tick
	text  []string
}

// seqNote names something in the axonometric.
type seqNote struct {
	at    geom.Vec3
	end   render.LeaderEnd
	words string
}

// chainAt measures heights on the right of the section, from the depth where the thing is.
func chainAt(depth float64, words []string, heights ...float64) seqDim {
	d := seqDim{side: right, text: words}
	for _, z := range heights {
		d.ticks = append(d.ticks, tick{z, depth})
	}
	return d
}

// upAt measures one height by itself, as chainAt does; see alone.
func (q *sequence) upAt(depth float64, words string, from, to float64) seqDim {
	return seqDim{side: right, text: []string{words}, ticks: alone(q.a.Spec.Project.System, tick{from, depth}, tick{to, depth})}
}

// depthAt measures depths below the section.
func (q *sequence) depthAt(words []string, depths ...float64) seqDim {
	d := seqDim{side: bottom, text: words}
	for _, y := range depths {
		d.ticks = append(d.ticks, tick{y, q.window.Min.Y})
	}
	return d
}

// words are the eight steps.
func (q *sequence) words() []seqStep {
	return []seqStep{q.stepMark(), q.stepOpen(), q.stepPatch(), q.stepBlock(), q.stepWrap(), q.stepBoard(), q.stepLedger(), q.stepFlash()}
}

// marksOf joins the marks of the wall's layers with the role.
func (w *writer) marksOf(role string) string {
	var m []string
	for i, l := range w.a.Spec.Wall.Layers {
		if l.Role == role {
			m = append(m, detail.LayerMark(i))
		}
	}
	return strings.Join(m, ", ")
}

func (q *sequence) stepMark() seqStep {
	f, off := q.a.Frame, q.stripped()
	blk := q.a.Blocks[q.block]
	b := blk.Box
	return seqStep{
		title: "CLADDING OFF, MARK",
		text: fmt.Sprintf("CLADDING %s AND FURRING %s OFF FROM %s TO %s (A NEW WALL: NOT YET ON). MARK EVERY BLOCK AND ITS BOLTS BY THE RUNNING DIMENSIONS OF A-201: %s AT %s, TOP AT %s. PROBE FOR JOISTS, WIRES AND PIPES.",
			q.marksOf("cladding"), q.marksOf("cavity"), q.signed(off.lo), q.signed(off.hi), blk.Mark, q.text(blk.X), q.signed(f.BlockTop)),
		dims: []seqDim{
			chainAt(f.InsulOut, nil, off.lo, b.Min.Z, b.Max.Z, off.hi),
			chainAt(f.CladOut, []string{"OFF <>"}, off.lo, off.hi),
		},
		notes: []seqNote{
			{geom.Vec3{X: b.Min.X, Y: f.InsulOut, Z: b.Min.Z + 0.7*(b.Max.Z-b.Min.Z)}, render.Arrow, "PLACE OF BLOCK " + blk.Mark + " AND ITS BOLTS"},
			{geom.Vec3{X: b.Min.X - 40, Y: f.InsulOut, Z: b.Min.Z - 60}, render.Dot, caps(strings.TrimSpace(q.marksOf("insulation") + " OUTSIDE INSULATION"))},
		},
	}
}

func (q *sequence) stepOpen() seqStep {
	b, p := q.a.Blocks[q.block].Box, q.a.PatchBox(q.block)
	st := seqStep{
		title: "INSULATION OUT, BARRIER OPEN",
		notes: []seqNote{{geom.Vec3{X: b.Center().X, Z: b.Center().Z}, render.Dot, q.layerName("sheathing") + ": DRY, FLAT, SOUND; RIM BEHIND IT PROBED"}},
	}
	wrb := q.layerName("wrb")
	if len(q.overlaps()) == 0 {
		st.text = fmt.Sprintf("INSULATION %s OFF OVER THE SAME HEIGHT. CUT %s OUT FOR THE BLOCK ALONE. LOOK AT SHEATHING AND RIM: WHERE SOFT, STAINED OR NOT AS DRAWN, STOP AND ASK.", q.marksOf("insulation"), wrb)
		st.dims = []seqDim{chainAt(0, nil, b.Min.Z, b.Max.Z)}
		return st
	}
	top := q.flapTop()
	left := b.Min.X
	if !p.Empty() {
		left = p.Min.X
	}
	st.text = fmt.Sprintf("INSULATION %s OFF OVER THE SAME HEIGHT. CUT %s ALONG THE FOOT OF THE BLOCK AND UP BOTH SIDES, %s WIDE; TURN THE FLAP UP AND HOLD IT. LOOK AT SHEATHING AND RIM: WHERE SOFT, STAINED OR NOT AS DRAWN, STOP AND ASK.",
		q.marksOf("insulation"), wrb, q.text(2*(b.Center().X-left)))
	st.dims = []seqDim{chainAt(0, []string{"FLAP <>"}, b.Min.Z, top)}
	st.notes = append(st.notes,
		seqNote{geom.Vec3{X: left, Z: b.Min.Z + 0.8*(top-b.Min.Z)}, render.Arrow, "UPRIGHT CUT IN " + wrb},
		seqNote{geom.Vec3{X: left + 30, Z: b.Min.Z}, render.Arrow, "LEVEL CUT AT THE FOOT OF THE BLOCK"})
	return st
}

func (q *sequence) stepPatch() seqStep {
	b, p := q.a.Blocks[q.block].Box, q.a.PatchBox(q.block)
	wrb := q.layerName("wrb")
	st := seqStep{title: "PATCH M1"}
	if p.Empty() {
		st.text = "NO PATCH IS GIVEN (WATER.PATCH): THE SHEATHING STAYS BARE BEHIND THE BLOCK."
		st.dims = []seqDim{chainAt(0, nil, b.Min.Z, b.Max.Z)}
		return st
	}
	order := fmt.Sprintf("ON THE SHEATHING DOWN TO THE FOOT OF THE BLOCK, BELOW IT %s OVER %s", q.text(b.Min.Z-p.Min.Y), wrb)
	if !q.a.Spec.Water.Patch.Under {
		order = "OVER " + wrb + " AT ITS TOP EDGE TOO: REVERSED LAP, DO NOT BUILD"
	}
	st.text = fmt.Sprintf("M1 %s WIDE x %s HIGH, %s ON THE BLOCK'S CENTRE, %s. SURFACE CLEAN AND DRY; ROLL IT DOWN FROM THE MIDDLE; PRIMER AND TEMPERATURE AS ITS MAKER STATES.",
		q.text(p.W()), q.text(p.H()), either(p.H() < q.a.Spec.Water.Patch.Height.MM()-0.5, "CUT AT THE SILL,", "CENTRED"), order)
	st.dims = []seqDim{chainAt(0, []string{"OVER <>", "", "<>"}, p.Min.Y, b.Min.Z, b.Max.Z, p.Max.Y)}
	st.notes = []seqNote{
		{geom.Vec3{X: p.Min.X + 30, Y: detail.Film, Z: p.Max.Y - 35}, render.Dot, fmt.Sprintf("M1 MEMBRANE PATCH %s x %s", q.text(p.W()), q.text(p.H()))},
		{geom.Vec3{X: p.Min.X + 20, Y: 2 * detail.Film, Z: p.Min.Y}, render.Arrow, "FOOT OF M1 OVER " + wrb},
	}
	return st
}

func (q *sequence) stepBlock() seqStep {
	f, blk := q.a.Frame, q.a.Blocks[q.block]
	b := blk.Box
	var holes []string
	for _, set := range q.a.Spec.Fasteners.Sets() {
		holes = append(holes, q.text(set.Hole.MM()))
	}
	st := seqStep{
		title: "BLOCK " + blk.Mark,
		text: fmt.Sprintf("BLOCK MADE UP AS ON S-501, HIGH SIDE OF ITS TOP TO THE WALL, SET TO THE MARKS ON M1 AND TACKED CLEAR OF THE BOLTS. DRILL %s THROUGH BLOCK AND RIM, SQUARE TO THE WALL, TEMPLATE ON THE FACE; TREAT HOLES AND CUTS.",
			strings.Join(holes, " AND ")),
		dims: []seqDim{
			chainAt(f.BlockOut, nil, b.Min.Z, f.BlockTopFront),
			chainAt(0, []string{"<> AT WALL"}, b.Min.Z, b.Max.Z),
			q.depthAt(nil, 0, f.BlockOut),
		},
		notes: []seqNote{{geom.Vec3{X: b.Min.X, Y: f.BlockOut / 2, Z: b.Min.Z + 0.3*(b.Max.Z-b.Min.Z)}, render.Dot, fmt.Sprintf("%s %s x %s HIGH, %s DEEP", blk.Mark, q.text(b.Max.X-b.Min.X), q.text(b.Max.Z-b.Min.Z), q.text(f.BlockOut))}},
	}
	if b := q.a.Blocks[q.block].Bolts; len(b) > 0 {
		st.notes = append(st.notes, seqNote{geom.Vec3{X: b[0].X, Y: f.BlockOut, Z: b[0].Y}, render.Arrow, fmt.Sprintf("%d HOLES", len(q.a.Holes(q.block)))})
	}
	return st
}

func (q *sequence) stepWrap() seqStep {
	f, b, p := q.a.Frame, q.a.Blocks[q.block].Box, q.a.PatchBox(q.block)
	wrb, top := q.layerName("wrb"), q.a.WrapTop(q.block)
	st := seqStep{
		title: "SIDES M3, CAP M2, BARRIER DOWN",
		dims:  []seqDim{q.upAt(0, "M2 UP <>", b.Max.Z, top)},
		notes: []seqNote{
			{geom.Vec3{X: b.Min.X, Y: f.BlockOut * 0.6, Z: b.Min.Z + 0.25*(b.Max.Z-b.Min.Z)}, render.Dot, "1ST: M3 SIDE PIECES, TURNED OUT ONTO M1"},
			{geom.Vec3{X: b.Min.X + 30, Y: f.BlockOut * 0.7, Z: b.Max.Z - f.BlockOut*0.7*float64(q.a.Spec.Blocks.TopSlope)}, render.Dot, "2ND: M2 CAP OVER THEM; FOOT STAYS BARE"},
		},
	}
	st.text = fmt.Sprintf("M3 ON BOTH SIDES OF THE BLOCK, THEN M2 OVER ITS TOP (FALLS %s), DOWN OVER M3 AND %s UP THE WALL.", q.a.Spec.Blocks.TopSlope.Text(q.a.Spec.Project.System), q.text(top-b.Max.Z))
	if len(q.overlaps()) == 0 {
		st.text += " " + wrb + " DOES NOT LAP OVER THEM: REVERSED LAP, DO NOT BUILD."
		return st
	}
	left := b.Min.X
	if !p.Empty() {
		st.dims = append(st.dims, q.upAt(0, wrbOver(wrb), b.Max.Z, p.Max.Y))
		left = p.Min.X
	}
	st.text += " FLAP OF " + wrb + " DOWN OVER M1 AND M2, CUT ROUND THE BLOCK; TAPE BOTH UPRIGHT CUTS OVER THEIR HEIGHT."
	st.notes = append(st.notes, seqNote{geom.Vec3{X: left + 25, Y: 3 * detail.Film, Z: q.flapTop() - 25}, render.Dot, "3RD: FLAP OF " + wrb + " OVER M1 AND M2"})
	return st
}

// wrbOver labels the lap of the barrier by its mark.
func wrbOver(name string) string {
	mark, _, _ := strings.Cut(name, " ")
	return mark + " OVER <>"
}

func (q *sequence) stepBoard() seqStep {
	f, b := q.a.Frame, q.a.Blocks[q.block].Box
	s := q.a.Spec
	st := seqStep{
		title: "INSULATION BACK, FURRING, SCREEN",
		text: fmt.Sprintf("INSULATION %s BACK, CUT CLOSE ROUND THE BLOCK, JOINTS STAGGERED. FURRING %s STOPS OVER AND UNDER THE LEDGER FROM %s TO %s: NOTHING STANDS IN THE GAP.",
			q.marksOf("insulation"), q.marksOf("cavity"), q.signed(f.BandBottom), q.signed(f.BandTop)),
		notes: []seqNote{{geom.Vec3{X: b.Min.X - 35, Y: f.InsulOut, Z: b.Center().Z}, render.Dot, q.marksOf("insulation") + " BACK"}},
	}
	if s.Wall.Cladding.BehindLedger {
		st.text = fmt.Sprintf("INSULATION %s BACK, CUT CLOSE ROUND THE BLOCK, JOINTS STAGGERED. FURRING AND CLADDING RUN ON BEHIND THE LEDGER: THEY FILL THE GAP, DO NOT BUILD.", q.marksOf("insulation"))
	}
	if f.InsulOut > 0 {
		st.dims = append(st.dims, q.depthAt(nil, 0, f.InsulOut))
	}
	if !s.Wall.Cladding.BehindLedger && q.a.Count(detail.Furring) > 0 {
		st.dims = append(st.dims, q.upAt(f.CavityOut, "NO FURRING <>", f.BandBottom, f.BandTop))
	}
	if s.Water.Screen && f.Gap() > 0 {
		st.text += fmt.Sprintf(" SCREEN SC1 BETWEEN THE BLOCKS, %d PIECES.", q.a.Count(detail.Screen))
		st.notes = append(st.notes, seqNote{geom.Vec3{X: b.Min.X - 30, Y: f.LedgerBack, Z: f.LedgerBottom + 10}, render.Arrow, "SC1 INSECT SCREEN"})
	}
	return st
}

func (q *sequence) stepLedger() seqStep {
	f, s := q.a.Frame, q.a.Spec
	sets := s.Fasteners.Sets()
	set := sets[len(sets)-1]
	st := seqStep{
		title: "LEDGER AND BOLTS",
		text: fmt.Sprintf("LEDGER ON THE BLOCKS, CROWN UP, BEVEL OUTWARD%s. %s %s x %s, WASHERS UNDER HEAD AND NUT, TIGHT BUT NOT CRUSHING; SEAL EACH AT THE BARRIER. LOOK THROUGH THE GAP: IT IS OPEN FROM END TO END.",
			either(s.Ledger.TopSlope > 0, "", " (NONE IS GIVEN)"), boltWord(set.Kind), q.diameter(set.Diameter), q.bought(q.a.BoltLength(set))),
		dims:  []seqDim{chainAt(f.LedgerFront, nil, f.LedgerBottom, f.LedgerTop)},
		notes: []seqNote{{geom.Vec3{X: q.a.Blocks[q.block].Box.Min.X - 30, Y: f.LedgerFront, Z: f.LedgerBottom + 0.3*(f.LedgerTop-f.LedgerBottom)}, render.Dot, "L1 LEDGER " + q.text(s.Ledger.Thickness.MM()) + " x " + q.text(s.Ledger.Height.MM())}},
	}
	if set.Kind != "bolt" {
		st.text = strings.Replace(st.text, "UNDER HEAD AND NUT", "UNDER THE HEAD", 1)
	}
	if f.Gap() > 0 {
		st.dims = append(st.dims, q.depthAt([]string{"GAP <>"}, f.InsulOut, f.LedgerBack))
	} else {
		st.text = strings.Replace(st.text, "LOOK THROUGH THE GAP: IT IS OPEN FROM END TO END.", "THERE IS NO GAP: DO NOT BUILD.", 1)
	}
	for _, h := range q.a.Holes(q.block) {
		if h.Set == set {
			st.notes = append(st.notes, seqNote{geom.Vec3{X: h.X, Y: q.a.Grip(set).Outer + set.Washer.Thickness.MM(), Z: h.Z}, render.Arrow, fmt.Sprintf("BT%d, %d AT EACH BLOCK", len(sets), len(set.Rows)*max(1, set.Columns))})
			break
		}
	}
	return st
}

func (q *sequence) stepFlash() seqStep {
	f, s := q.a.Frame, q.a.Spec
	fl := s.Water.Flashing
	path := q.a.FlashingPath()
	over := map[string]string{"cladding": "UNDER CLADDING " + q.marksOf("cladding"), "wrb": "UNDER " + q.layerName("wrb")}[fl.Lap]
	if over == "" {
		over = "OUTSIDE THE CLADDING: REVERSED LAP, DO NOT BUILD"
	}
	left := q.a.Blocks[q.block].Box.Min.X - 30
	st := seqStep{
		title: "FLASHING F1, CLADDING BACK",
		text: fmt.Sprintf("F1 %s, LEG %s UP %s, %s OUT, DRIP %s CLEAR OF THE FACE, END DAMS %s UP AT BOTH ENDS (A-303). CLADDING BACK, %s CLEAR OF F1 AND %s OF THE LEDGER'S FOOT. HANGERS, JOISTS AND DECKING FOLLOW.",
			caps(fl.Material), q.text(fl.Up.MM()), over, q.text(fl.Out.MM()), q.text(fl.Drip.MM()), q.text(fl.EndDam.MM()), q.text(s.Wall.Cladding.AboveFlash.MM()), q.text(s.Wall.Cladding.BelowLedger.MM())),
		notes: []seqNote{
			{geom.Vec3{X: left, Y: path.V[2].X, Z: path.V[2].Y - 4}, render.Arrow, "F1 LEDGER FLASHING"},
			{geom.Vec3{X: left, Y: f.CladOut, Z: f.BandTop + 60}, render.Dot, q.marksOf("cladding") + " CLADDING OVER F1"},
		},
	}
	if fl.Up > 0 {
		st.dims = append(st.dims, q.upAt(path.V[0].X, "F1 UP <>", path.V[1].Y, path.V[0].Y))
	}
	if s.Wall.Cladding.BehindLedger {
		st.title = "FLASHING F1"
		st.text, _, _ = strings.Cut(st.text, " CLADDING BACK,")
		st.text += " HANGERS, JOISTS AND DECKING FOLLOW."
	} else {
		foot, head := q.upAt(f.CladOut, "", f.BandBottom, min(f.LedgerBottom, f.BlockBottom)), q.upAt(f.CladOut, "", f.FlashAt(f.CavityOut), f.BandTop)
		st.dims = append(st.dims, seqDim{side: right, text: []string{"FOOT CLEAR <>", "-", "CLEAR <>"}, ticks: append(foot.ticks, head.ticks...)})
	}
	return st
}

// overlaps are the flaps of the barrier that hang over patch and cap of the block.
func (q *sequence) overlaps() []geom.Solid {
	var out []geom.Solid
	for _, s := range q.all {
		if s.part.Role == detail.Barrier && s.from == stepWrap {
			out = append(out, s.part.Solids...)
		}
	}
	return out
}

// flapTop is how high the flap of the barrier reaches.
func (q *sequence) flapTop() float64 {
	top := q.a.Blocks[q.block].Box.Max.Z
	for _, s := range q.overlaps() {
		top = max(top, s.Bounds().Max.Z)
	}
	return top
}
