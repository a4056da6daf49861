package sheet

import (
	"fmt"
	"math"
	"sort"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

const frontOrigin = "left end of ledger x finished floor"

// elevationSheet draws the wall from outside with the ledger transparent, one block face larger, and
// the block table.
func (w *writer) elevationSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	t := w.blockTable()
	p := view.Look(w.a, view.FromOutside(0), w.elevationOptions())
	c, fits := w.choose(w.a.Spec.Sheets.Elevation, 8, 24, geom.Vec{X: room.W(), Y: room.H() * 0.62}, func(k float64) *composer { return w.elevation(p, k) })
	box := c.paper()
	below := room.H() - box.H() - 12
	face, ok := w.choose(0, 4, 10, geom.Vec{X: room.W() - t.total() - 20, Y: below}, w.blockFace)
	fp := face.paper()
	spare := math.Max(0, below-math.Max(fp.H(), t.height()))
	w.place(s, c, "1", "EXTERIOR ELEVATION", frontOrigin, pt(room.Min.X+(room.W()-box.W())/2-box.Min.X, room.Max.Y-spare/3-box.Max.Y))
	gap := math.Max(6, (room.W()-fp.W()-t.total())/3)
	top := room.Max.Y - spare*2/3 - box.H() - 12
	w.place(s, face, "2", "BLOCK FACE", frontOrigin, pt(room.Min.X+gap-fp.Min.X, top-fp.Max.Y))
	items, _, _ := t.draw(room.Max.X-gap-t.total(), top, top-room.Min.Y)
	s.Items = append(s.Items, items...)
	return w.scale(c.k).Text, fits && ok && t.height() <= below
}

// blockFace is one block from outside, with the bolts measured against ledger and rim.
func (w *writer) blockFace(k float64) *composer {
	c := w.composer(k)
	f, b := w.a.Frame, w.sectionBlock()
	if b < 0 {
		return c
	}
	blk := w.a.Blocks[b]
	o := w.elevationOptions()
	half := (blk.Box.Max.X-blk.Box.Min.X)/2 + 130
	o.Window = geom.Box{Min: geom.Vec{X: blk.X - half, Y: math.Min(f.RimBottom, f.LedgerBottom) - 50}, Max: geom.Vec{X: blk.X + half, Y: math.Max(f.RimTop, f.LedgerTop) + 40}}
	show := map[detail.Role]bool{detail.Ledger: true, detail.BlockPly: true, detail.Bolt: true, detail.Washer: true, detail.Rim: true, detail.HouseJoist: true}
	o.Only = func(p *detail.Part) bool { return show[p.Role] }
	o.Dashed, o.Behind = nil, map[detail.Role]bool{detail.Rim: true, detail.HouseJoist: true}
	p := view.Look(w.a, view.FromOutside(0), o)
	c.add(p.Draw(k, w.a.Spec.Project.System), o.Window)
	c.centres(blk.Bolts, c.mm(6))
	led, rim := []tick{{f.LedgerTop, o.Window.Max.X}}, []tick{{f.RimTop, o.Window.Min.X}}
	var cols []tick
	cols = append(cols, tick{blk.Box.Min.X, f.BlockBottom})
	for _, h := range blk.Bolts {
		led, rim = append(led, tick{h.Y, o.Window.Max.X}), append(rim, tick{h.Y, o.Window.Min.X})
		cols = append(cols, tick{h.X, o.Window.Min.Y})
	}
	c.dims(right, append(led, tick{f.LedgerBottom, o.Window.Max.X}))
	c.dims(left, append(rim, tick{f.RimBottom, o.Window.Min.X}))
	c.dims(bottom, append(cols, tick{blk.Box.Max.X, f.BlockBottom}))
	c.finish()
	c.title("2", "BLOCK "+blk.Mark+", LEDGER AND RIM", w.scale(k).Text)
	return c
}

func (w *writer) elevationOptions() view.Options {
	f := w.a.Frame
	low := f.Bottom - 150
	if g := w.a.Spec.Foundation.Grade; g != nil && w.a.Spec.Foundation.Kind != "wall" {
		low = g.MM() - 120
	}
	show := map[detail.Role]bool{
		detail.Cladding: true, detail.Threshold: true, detail.Earth: true, detail.Base: true, detail.GroundIns: true, detail.Ledger: true, detail.BlockPly: true,
		detail.Bolt: true, detail.Washer: true, detail.OuterInsul: true, detail.Rim: true, detail.Backing: true, detail.Footing: true, detail.TensionRod: true, detail.Obstacle: true,
	}
	return view.Options{
		Window: geom.Box{Min: geom.Vec{X: f.Left + 150, Y: low}, Max: geom.Vec{X: f.Right - 150, Y: 450}},
		Only: func(p *detail.Part) bool {
			return show[p.Role] || p.Role == detail.HouseJoist
		},
		Behind: map[detail.Role]bool{detail.Rim: true, detail.HouseJoist: true, detail.Backing: true, detail.Obstacle: true},
		Ghost:  map[detail.Role]bool{detail.Ledger: true},
	}
}

// elevation composes the view at one scale.
func (w *writer) elevation(p view.Picture, k float64) *composer {
	c := w.composer(k)
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	w.elevationBreaks(c, p)
	w.boltCentres(c)
	w.cutMarks(c)
	f := w.a.Frame
	length := w.a.Spec.Ledger.Length.MM()
	run := []tick{{0, p.Window.Max.Y}}
	for _, b := range w.a.Blocks {
		run = append(run, tick{b.X, p.Window.Max.Y})
	}
	run = append(run, tick{length, p.Window.Max.Y})
	c.run(top, run)
	base := c.object.Min.Y
	c.dims(bottom, w.blockTicks(base), w.spaceWords()...)
	c.dims(bottom, []tick{{0, base}, {length, base}}, "LEDGER <>")
	w.elevationLevels(c, p)
	w.elevationNotes(c, p)
	c.finish()
	w.blockMarks(c, p)
	c.title("1", "EXTERIOR ELEVATION, LEDGER SHOWN TRANSPARENT", w.scale(k).Text)
	_ = f
	return c
}

// blockTicks measures ends and block centres along the ledger.
func (w *writer) blockTicks(from float64) []tick {
	t := []tick{{0, from}}
	for _, b := range w.a.Blocks {
		t = append(t, tick{b.X, from})
	}
	return append(t, tick{w.a.Spec.Ledger.Length.MM(), from})
}

// spaceWords leaves the segments as they are: every space prints its own measure.
func (w *writer) spaceWords() []string { return nil }

// elevationBreaks closes the sides of the picture with break lines.
func (w *writer) elevationBreaks(c *composer, p view.Picture) {
	win := p.Window
	c.breakLine(left, win, span{win.Min.Y, win.Max.Y})
	c.breakLine(right, win, span{win.Min.Y, win.Max.Y})
	c.breakLine(top, win, span{win.Min.X, win.Max.X})
}

// boltCentres draws one centre line for every row and every column of bolts of a block.
func (w *writer) boltCentres(c *composer) {
	for _, b := range w.a.Blocks {
		c.centres(b.Bolts, c.mm(2.2))
	}
}

// centres draws the centre lines of a pattern of holes, running past the outer ones.
func (c *composer) centres(at []geom.Vec, past float64) {
	box := geom.BoxOf(at...)
	var xs, ys []float64
	for _, p := range at {
		xs, ys = append(xs, p.X), append(ys, p.Y)
	}
	for _, y := range distinct(ys) {
		c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: box.Min.X - past, Y: y}, geom.Vec{X: box.Max.X + past, Y: y})})
	}
	for _, x := range distinct(xs) {
		c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: x, Y: box.Min.Y - past}, geom.Vec{X: x, Y: box.Max.Y + past})})
	}
}

// distinct returns the values once each, ascending.
func distinct(v []float64) []float64 {
	s := append([]float64(nil), v...)
	sort.Float64s(s)
	var out []float64
	for _, x := range s {
		if n := len(out); n == 0 || x-out[n-1] > 0.01 {
			out = append(out, x)
		}
	}
	return out
}

// cutMarks shows where the sections are cut, below the object.
func (w *writer) cutMarks(c *composer) {
	b := w.sectionBlock()
	low := c.object.Min.Y
	cuts, names := []float64{w.cutAtBlock(b), w.cutBetween()}, []string{"1", "2"}
	if cuts[0] > cuts[1] {
		cuts[0], cuts[1], names[0], names[1] = cuts[1], cuts[0], names[1], names[0]
	}
	slots := []slot{{want: cuts[0] / c.k, before: 7, after: 10}, {want: cuts[1] / c.k, before: 7, after: 10}}
	spread(slots)
	for i, x := range cuts {
		at := geom.Vec{X: slots[i].at * c.k, Y: low - c.mm(14)}
		c.put(
			render.Stroke{Pen: render.Cut, Path: geom.Polyline(geom.Vec{X: x, Y: low - c.mm(1)}, geom.Vec{X: x, Y: low - c.mm(5)}, at.Add(geom.Vec{Y: c.mm(6)}))},
			render.Insert{Pen: render.Mark, Symbol: sectionMark, At: at, Scale: c.k, Fields: []render.Field{{Name: "VIEW_NO", Value: names[i]}, {Name: "SHEET_NO", Value: "A-301"}}},
		)
	}
	c.object.Min.Y = low - c.mm(20)
}

// blockMarks sets the marks of the blocks in a row over the running dimensions.
func (w *writer) blockMarks(c *composer, p view.Picture) {
	y := c.extent.Max.Y + c.mm(6)
	slots := make([]slot, len(w.a.Blocks))
	for i, b := range w.a.Blocks {
		slots[i] = slot{want: b.X / c.k, before: 4.5, after: 4.5}
	}
	spread(slots)
	for i, b := range w.a.Blocks {
		at := geom.Vec{X: slots[i].at * c.k, Y: y}
		c.put(render.Insert{Pen: render.Mark, Symbol: partMark, At: at, Scale: c.k, Fields: []render.Field{{Name: "MARK", Value: b.Mark}}})
	}
	c.grow(geom.Vec{X: c.extent.Min.X, Y: y + c.mm(5)})
}

// elevationLevels names the levels on the right.
func (w *writer) elevationLevels(c *composer, p view.Picture) {
	f, s := w.a.Frame, w.a.Spec
	edge := p.Window.Max.X
	lv := func(z float64, name string) {
		sign := map[bool]string{true: "+"}[z > 0]
		c.level(right, geom.Vec{X: edge, Y: z}, name+" "+sign+w.text(z))
	}
	lv(0, "FINISHED FLOOR")
	lv(f.RimTop, "T.O. RIM")
	lv(f.DeckTop, "T.O. DECKING")
	lv(f.LedgerTop, "T.O. LEDGER")
	if f.BlockTop != f.LedgerTop {
		lv(f.BlockTop, "T.O. BLOCK")
	}
	for i, r := range w.a.Rows {
		lv(r.Z, fmt.Sprintf("BOLT ROW %d", i+1))
	}
	lv(f.RimBottom, "B.O. RIM")
	lv(f.LedgerBottom, "B.O. LEDGER")
	if f.BlockBottom != f.LedgerBottom {
		lv(f.BlockBottom, "B.O. BLOCK")
	}
	for i, d := range s.Doors {
		lv(d.Threshold.MM(), fmt.Sprintf("THRESHOLD %d", i+1))
	}
	if s.Foundation.Kind != "wall" {
		if g := s.Foundation.Grade; g != nil {
			lv(g.MM(), "GROUND, LOW END")
		}
	}
}

// elevationNotes names what the elevation shows on its left side.
func (w *writer) elevationNotes(c *composer, p view.Picture) {
	s, f := w.a.Spec, w.a.Frame
	n := len(w.a.Blocks)
	edge := p.Window.Min.X
	if n > 0 {
		b := w.a.Blocks[0]
		c.call(left, geom.Vec{X: b.Box.Min.X, Y: (b.Box.Min.Z + b.Box.Max.Z) / 2}, render.Arrow, w.countLine())
	}
	c.call(left, geom.Vec{X: 0, Y: f.LedgerTop - 20}, render.Arrow, "LEDGER L1, OUTLINE ONLY")
	c.call(left, geom.Vec{X: edge + 60, Y: f.RimBottom}, render.Arrow, "RIM BEHIND (DASHED): NO BOLT OUTSIDE IT")
	if len(w.a.HouseJoists) > 0 {
		j := w.a.HouseJoists[0]
		for _, v := range w.a.HouseJoists {
			if v > edge {
				j = v
				break
			}
		}
		c.call(left, geom.Vec{X: j - s.Floor.Joists.Flange.MM()/2, Y: f.RimTop - 40}, render.Arrow,
			fmt.Sprintf("HOUSE JOISTS AT %s BEHIND (DASHED): BOLT AXES AT LEAST %s OFF THEIR AXES", w.text(s.Floor.Joists.Spacing.MM()), w.text(s.Floor.Joists.Clearance.MM())))
	}
	c.call(left, geom.Vec{X: edge + 40, Y: 200}, render.Dot, "EXISTING CLADDING; REMOVE AND REFIT THE BAND ROUND THE LEDGER")
	if s.Foundation.Kind != "wall" && s.Foundation.GradeHigh != nil {
		c.call(left, geom.Vec{X: edge + 30, Y: s.Foundation.GradeHigh.MM() - 30}, render.Dot, "GROUND, FALLS AWAY FROM THE WALL")
	}
	for _, o := range w.a.Find(detail.Obstacle) {
		b := o.Bounds()
		c.call(left, geom.Vec{X: b.Min.X, Y: b.Min.Z}, render.Arrow, o.Mark+" "+caps(o.Name)+" BEHIND: NO BOLT FROM "+w.text(b.Min.X)+" TO "+w.text(b.Max.X))
	}
}

// countLine is what an inspector counts.
func (w *writer) countLine() string {
	set := w.a.Spec.Fasteners.Sets()
	t := fmt.Sprintf("%d BLOCKS", len(w.a.Blocks))
	for _, st := range set {
		n := 0
		for _, b := range w.a.Blocks {
			n += len(st.Rows) * len(st.Offsets())
			_ = b
		}
		t += fmt.Sprintf(", %d %s %s", n, boltWord(st.Kind), w.diameter(st.Diameter))
	}
	return t + fmt.Sprintf(", %d WASHERS", w.a.Count(detail.Washer))
}

// blockTable lists every block: where it stands and how far its bolts keep from the house joists.
func (w *writer) blockTable() *table {
	t := &table{title: "BLOCK SCHEDULE (RUNNING FROM THE LEFT END OF THE LEDGER)", head: []string{"MARK", "CENTRE", "TO LEFT EDGE", "TO NEXT", "BOLT TO HOUSE JOIST", "REACTION", "PULL ON TIE"},
		width: []float64{18, 28, 30, 26, 44, 30, 30}}
	sys := w.a.Spec.Project.System
	rules := w.a.Rules()
	for i, b := range w.a.Blocks {
		next, joist := "-", "-"
		if i+1 < len(w.a.Blocks) {
			next = w.text(w.a.Blocks[i+1].X - b.X)
		}
		if k, ok := rules.Closest("house joist", b.X); ok {
			joist = w.text(k.Distance)
		}
		re, pull := "NOT CHECKED", "NOT CHECKED"
		if i < len(w.results.Reactions) {
			re = w.results.Reactions[i].Design.Text(sys)
			pull = w.pull(i).Text(sys)
		}
		t.rows = append(t.rows, []string{b.Mark, w.text(b.X), w.text(b.Box.Min.X), next, joist, re, pull})
	}
	return t
}

// pull is the pull behind the rim at block i: in proportion to its reaction.
func (w *writer) pull(i int) unit.Force {
	r := w.results
	if i >= len(r.Reactions) || r.Worst >= len(r.Reactions) || r.Reactions[r.Worst].Design <= 0 {
		return 0
	}
	return r.Tension * r.Reactions[i].Design / r.Reactions[r.Worst].Design
}
