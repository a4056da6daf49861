package sheet

import (
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/detail/stock"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

const blockOrigin = "lower left corner of the block, outside face"

// blockSheet is the shop drawing of the block assembly: front, left side and top in third-angle
// arrangement, with its tables.
func (w *writer) blockSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	if len(w.a.Blocks) == 0 {
		return "NTS", true
	}
	v, fits := w.blockViews(room)
	w.thirdAngle(s, room, shopArea(room), v)
	x, y := room.Max.X-shopTables, room.Max.Y
	for _, t := range w.blockTables(shopTables) {
		items, used, rest := t.draw(x, y, y-room.Min.Y)
		s.Items = append(s.Items, items...)
		y -= used + 4
		fits = fits && len(rest) == 0 && y >= room.Min.Y-4
	}
	return w.scale(v.front.k).Text, fits
}

// shopTables is the plotted width of the tables of a shop sheet.
const shopTables = 112

func shopArea(room geom.Box) geom.Vec { return geom.Vec{X: room.W() - shopTables - 8, Y: room.H()} }

// shopViews are the three views of the block.
type shopViews struct{ front, side, up *composer }

// room returns what the views take in third-angle arrangement, plotted.
func (v shopViews) room() geom.Vec {
	f, sd, u := v.front.paper(), v.side.paper(), v.up.paper()
	low, high := math.Min(f.Min.Y, sd.Min.Y), math.Max(f.Max.Y, sd.Max.Y)
	return geom.Vec{X: sd.W() + 12 + math.Max(f.Max.X, u.Max.X) - math.Min(f.Min.X, u.Min.X), Y: high - low + 12 + u.H()}
}

func (w *writer) blockViews(room geom.Box) (v shopViews, fits bool) {
	_, fits = w.choose(w.a.Spec.Sheets.Shop, 2, 5, shopArea(room), func(k float64) *composer {
		v = shopViews{w.blockFront(k), w.blockSide(k), w.blockTop(k)}
		whole := *v.front
		r := v.room()
		whole.extent = geom.Box{Max: geom.Vec{X: r.X * k, Y: r.Y * k}}
		return &whole
	})
	return v, fits
}

// thirdAngle sets the top view over the front and the left side beside it, heights and widths in line.
func (w *writer) thirdAngle(s *render.Sheet, room geom.Box, area geom.Vec, v shopViews) {
	f, sd, u := v.front.paper(), v.side.paper(), v.up.paper()
	need := v.room()
	x := room.Min.X + math.Max(0, (area.X-need.X)/2)
	fx := x + sd.W() + 12 - math.Min(f.Min.X, u.Min.X)
	fy := room.Min.Y + math.Max(0, (area.Y-need.Y)/2) - math.Min(f.Min.Y, sd.Min.Y)
	w.place(s, v.front, "1", "FRONT", blockOrigin, pt(fx, fy))
	w.place(s, v.side, "2", "LEFT SIDE", blockOrigin, pt(x-sd.Min.X, fy))
	w.place(s, v.up, "3", "TOP", blockOrigin, pt(fx, fy+math.Max(f.Max.Y, sd.Max.Y)+12-u.Min.Y))
}

// blockOnly shows the wood and the pad of the first block, with its holes.
func (w *writer) blockOnly() view.Options {
	return view.Options{Window: geom.EmptyBox(), Bored: true,
		Only: func(p *detail.Part) bool {
			return p.Block == 0 && (p.Role == detail.BlockPly || p.Role == detail.BlockPad || p.Role == detail.FootPiece || p.Role == detail.PlyScrew)
		},
		Dashed: map[detail.Role]bool{detail.BlockPly: true, detail.BlockPad: true},
	}
}

// local moves a view to the block's own datum: its lower left corner on the outside face.
func (w *writer) local(v geom.View) geom.View {
	b := w.a.Blocks[0].Box
	v.O = geom.Vec3{X: b.Min.X, Y: b.Min.Y, Z: b.Min.Z}
	return v
}

// blockFront is the outside face with its holes.
func (w *writer) blockFront(k float64) *composer {
	v := w.local(view.FromOutside(0))
	c := w.blockView(v, k)
	b := w.a.Blocks[0]
	width, high := b.Box.Max.X-b.Box.Min.X, b.Box.Max.Z-b.Box.Min.Z
	faceTop := w.a.Frame.BlockTopFront - b.Box.Min.Z
	xs, zs := []tick{{0, 0}}, []tick{{0, width}}
	var centres []geom.Vec
	past := 0.0
	for _, h := range w.a.Holes(0) {
		w.holeMark(c, h)
		centres = append(centres, geom.Vec{X: h.X - b.Box.Min.X, Y: h.Z - b.Box.Min.Z})
		past = math.Max(past, h.Dia/2+c.mm(3))
	}
	c.centres(centres, past)
	group := geom.BoxOf(centres...)
	for _, p := range centres {
		xs = append(xs, tick{p.X, group.Min.Y - past})
		zs = append(zs, tick{p.Y, group.Max.X + past})
	}
	c.grain(clearOf(centres, width), w.a.Spec.Blocks.Grain == "vertical")
	c.dims(bottom, append(xs, tick{width, 0}))
	c.dims(bottom, []tick{{0, 0}, {width, 0}})
	c.dims(right, append(zs, tick{faceTop, width}))
	c.dims(right, []tick{{0, width}, {high, width}}, "<> AT WALL")
	c.finish()
	c.caption("FRONT (OUTSIDE FACE)", w.scale(k).Text)
	return c
}

// clearOf returns the middle of the widest strip of the face between its holes and its ends, half way
// between the rows, or under a single row.
func clearOf(holes []geom.Vec, width float64) geom.Vec {
	xs, ys := []float64{0, width}, []float64{}
	for _, h := range holes {
		xs, ys = append(xs, h.X), append(ys, h.Y)
	}
	xs, ys = distinct(xs), distinct(ys)
	at := geom.Vec{X: width / 2}
	for i, gap := 1, 0.0; i < len(xs); i++ {
		if g := xs[i] - xs[i-1]; g > gap+0.01 || g > gap-0.01 && math.Abs((xs[i]+xs[i-1])/2-width/2) < math.Abs(at.X-width/2) {
			at.X, gap = (xs[i]+xs[i-1])/2, g
		}
	}
	switch n := len(ys); {
	case n > 1:
		at.Y = (ys[n-2] + ys[n-1]) / 2
	case n == 1:
		at.Y = ys[0] / 2
	}
	return at
}

// grain draws the double-headed arrow that shows the way of the fibres.
func (c *composer) grain(at geom.Vec, upright bool) {
	half := geom.Vec{X: c.mm(9)}
	if upright {
		half = geom.Vec{Y: c.mm(9)}
	}
	c.put(render.Leader{Pen: render.Note, Points: []geom.Vec{at.Sub(half), at}, End: render.Arrow}, render.Leader{Pen: render.Note, Points: []geom.Vec{at.Add(half), at}, End: render.Arrow})
	c.text(render.Note, at.Add(geom.Vec{X: c.mm(1), Y: c.mm(1)}), 2.5, render.BottomCentre, 0, "GRAIN")
}

// holeMark writes the letter of a hole, up and right of it.
func (w *writer) holeMark(c *composer, h detail.Hole) {
	b := w.a.Blocks[0].Box
	at := geom.Vec{X: h.X - b.Min.X, Y: h.Z - b.Min.Z}
	d := h.Dia/2*0.71 + c.mm(1)
	c.text(render.Note, at.Add(geom.Vec{X: d, Y: d}), 2.5, render.BottomLeft, 0, holeName(w.holeIndex(h)))
}

func (w *writer) holeIndex(h detail.Hole) int {
	for i, q := range w.a.Holes(0) {
		if q == h {
			return i
		}
	}
	return 0
}

func holeName(i int) string { return fmt.Sprintf("H%d", i+1) }

// blockSide is the left side: plies, pad, fall of the top.
func (w *writer) blockSide(k float64) *composer {
	v := w.local(view.FromLeft(0))
	c := w.blockView(v, k)
	var t []tick
	y := 0.0
	t = append(t, tick{0, 0})
	for _, p := range w.a.Blocks[0].Parts {
		if p.Role == detail.BlockPly || p.Role == detail.BlockPad {
			y = math.Max(y, p.Bounds().Max.Y)
			t = append(t, tick{p.Bounds().Max.Y, 0})
		}
	}
	c.dims(bottom, t)
	c.dims(bottom, []tick{{0, 0}, {y, 0}})
	high := w.a.Blocks[0].Box.Max.Z - w.a.Blocks[0].Box.Min.Z
	face := w.a.Frame.BlockTopFront - w.a.Blocks[0].Box.Min.Z
	c.dims(right, []tick{{0, y}, {face, y}, {high, 0}})
	c.finish()
	c.caption("LEFT SIDE", w.scale(k).Text)
	return c
}

// blockTop is the view from above.
func (w *writer) blockTop(k float64) *composer {
	v := w.local(view.FromAbove(0))
	c := w.blockView(v, k)
	width := w.a.Spec.Blocks.Width.MM()
	d := w.a.Frame.BlockOut
	c.dims(right, []tick{{-d, width}, {0, width}})
	c.put(render.Text{Pen: render.Note, At: geom.Vec{X: width / 2, Y: c.mm(2)}, Height: 2.5, Align: render.BottomCentre, Lines: []string{"WALL SIDE"}})
	c.grow(geom.Vec{X: width / 2, Y: c.mm(5)})
	c.finish()
	c.caption("TOP", w.scale(k).Text)
	return c
}

func (w *writer) blockView(v geom.View, k float64) *composer {
	c := w.composer(k)
	p := view.Look(w.a, v, w.blockOnly())
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Box())
	return c
}

// blockTables are the hole table, the plies, the quantities and the notes of the sheet.
func (w *writer) blockTables(width float64) []*table {
	return []*table{w.plyTable(width), w.holeTable(width), w.hardwareTable(width), w.cutTable(width), w.blockNotes(width)}
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
	t := &table{title: fmt.Sprintf("BLOCK %s TO %s, %d OFF", w.a.Blocks[0].Mark, w.a.Blocks[len(w.a.Blocks)-1].Mark, len(w.a.Blocks)),
		head: []string{"PIECE", "T x H x W", "MATERIAL", "QTY"}, width: shares(width, 1.1, 2.6, 2.6, 0.8)}
	n := len(w.a.Blocks)
	for _, p := range w.a.Blocks[0].Parts {
		if p.Role != detail.BlockPly && p.Role != detail.BlockPad && p.Role != detail.FootPiece {
			continue
		}
		t.rows = append(t.rows, []string{p.Mark, w.text(p.Size[0].MM()) + " x " + w.text(p.Size[1].MM()) + " x " + w.text(p.Size[2].MM()), caps(p.Material + " " + p.Note), fmt.Sprint(n)})
	}
	return t
}

func (w *writer) holeTable(width float64) *table {
	t := &table{title: "HOLES, FROM LOWER LEFT CORNER", head: []string{"HOLE", "X", "Y", "DIA", "FOR"}, width: shares(width, 0.9, 1.1, 1.1, 1, 2)}
	b := w.a.Blocks[0].Box
	for i, h := range w.a.Holes(0) {
		t.rows = append(t.rows, []string{holeName(i), w.text(h.X - b.Min.X), w.text(h.Z - b.Min.Z), w.text(h.Dia), caps(h.Set.Kind) + " " + w.diameter(h.Set.Diameter)})
	}
	return t
}

func (w *writer) hardwareTable(width float64) *table {
	t := &table{title: "HARDWARE, ALL BLOCKS", head: []string{"MARK", "ITEM", "SIZE", "QTY"}, width: shares(width, 0.9, 2.6, 2.6, 0.8)}
	for _, l := range w.a.Schedule() {
		switch l.Name {
		case "HEX BOLT", "LAG SCREW", "WOOD SCREW", "NUT", "WASHER", "PLATE WASHER", "SPACER", "PLY SCREW", "FLOOR TIE", "BACKING", "USER-SUPPLIED FASTENER WITH EVALUATED VALUES":
			t.rows = append(t.rows, []string{l.Mark, l.Name, w.sizeText(l), fmt.Sprint(l.Qty)})
		}
	}
	return t
}

// sizeText prints the bought size of a schedule line.
func (w *writer) sizeText(l detail.Line) string {
	var parts []string
	for i, v := range l.Size {
		if v <= 0 || i == 1 && v == l.Size[0] {
			continue
		}
		parts = append(parts, w.exact(v))
	}
	return strings.Join(parts, " x ")
}

func (w *writer) cutTable(width float64) *table {
	t := &table{title: "CUT LIST", head: []string{"STICK", "STOCK", "PIECES", "LEFT"}, width: shares(width, 0.9, 3, 1.6, 1.2)}
	sticks, why := w.a.CutList()
	if why != "" {
		t.rows = append(t.rows, []string{"-", caps(why), "", ""})
	}
	for i, s := range sticks {
		t.rows = append(t.rows, []string{fmt.Sprintf("S%d", i+1), caps(s.Section) + ", " + w.text(s.Length.MM()), fmt.Sprintf("%d @ %s", len(s.Pieces), w.text(s.Each.MM())), w.text(s.Left.MM())})
	}
	return t
}

// blockNotes are the steps and limits a builder needs at the bench.
func (w *writer) blockNotes(width float64) *table {
	s := w.a.Spec
	t := &table{title: "ASSEMBLY", width: []float64{width}}
	mass := w.a.BlockMass(func(m string) float64 {
		if v, ok := stock.MaterialOf(m); ok {
			return v.Density
		}
		return 550 // treated softwood, common practice, no source
	})
	weight := fmt.Sprintf("%.1f LB", mass*2.20462)
	if w.unit() == render.Millimetre {
		weight = fmt.Sprintf("%.1f kg", mass)
	}
	add := func(f string, a ...any) { t.rows = append(t.rows, []string{caps(fmt.Sprintf(f, a...))}) }
	add("1. Cut plies net size; grain %s. Moisture at assembly: %s.", s.Blocks.Grain, s.Blocks.Moisture.Assembly)
	if s.Blocks.PliesFastened && s.Blocks.PlyScrews.Count > 0 {
		add("2. Stack plies flush; drive %d ply screws %s x %s clear of the holes.", s.Blocks.PlyScrews.Count, w.exact(s.Blocks.PlyScrews.Diameter), w.text(s.Blocks.PlyScrews.Length.MM()))
	} else {
		add("2. Stack plies flush and clamp.")
	}
	add("3. Drill from the outside face with a backing board, location within %s.", w.text(step(s.Project.System)))
	add("4. Cut the top to fall %s outward; treat every cut and hole.", s.Blocks.TopSlope.Text(s.Project.System))
	add("5. Mass of one block about %s. Projection: third angle.", weight)
	return t
}
