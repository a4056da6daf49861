package sheet

import (
	"math"
	"sort"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

const frontOrigin = "left end of ledger x finished floor"

// elevationSheet draws the wall from outside with the ledger transparent, one block face larger, and
// the block table.
func (w *writer) elevationSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	t, zones := w.blockTable(), w.zoneTable()
	tables := t.height()
	if len(zones.rows) > 0 {
		tables += 5 + zones.height()
	}
	p := w.once("elevation", func() view.Picture { return view.Look(w.a, view.FromOutside(0), w.elevationOptions()) })
	c, fits := w.choose(w.a.Spec.Sheets.Elevation, 8, 24, geom.Vec{X: room.W(), Y: room.H() * 0.62}, func(k float64) *composer { return w.elevation(p, k) })
	box := c.paper()
	below := room.H() - box.H() - 12
	face, ok := w.choose(0, 4, 10, geom.Vec{X: room.W() - t.total() - 20, Y: below}, w.blockFace)
	fp := face.paper()
	spare := math.Max(0, below-math.Max(fp.H(), tables))
	w.place(s, c, "1", "EXTERIOR ELEVATION", frontOrigin, pt(room.Min.X+(room.W()-box.W())/2-box.Min.X, room.Max.Y-spare/3-box.Max.Y))
	gap := math.Max(6, (room.W()-fp.W()-t.total())/3)
	top := room.Max.Y - spare*2/3 - box.H() - 12
	w.place(s, face, "2", "BLOCK FACE", frontOrigin, pt(room.Min.X+gap-fp.Min.X, top-fp.Max.Y))
	items, used, _ := t.draw(room.Max.X-gap-t.total(), top, top-room.Min.Y)
	s.Items = append(s.Items, items...)
	if len(zones.rows) > 0 {
		items, _, _ = zones.draw(room.Max.X-gap-t.total(), top-used-5, top-used-5-room.Min.Y)
		s.Items = append(s.Items, items...)
	}
	return w.scale(c.k).Text, fits && ok && tables <= below
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
	p := w.once("block face", func() view.Picture { return view.Look(w.a, view.FromOutside(0), o) })
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
	c.call(left, geom.Vec{X: o.Window.Min.X + 20, Y: f.RimTop}, render.Arrow, "RIM BEHIND")
	c.call(right, geom.Vec{X: o.Window.Max.X - 20, Y: f.LedgerTop}, render.Arrow, "LEDGER L1")
	c.call(right, geom.Vec{X: blk.Box.Max.X, Y: f.BlockBottom + 0.3*(f.BlockTop-f.BlockBottom)}, render.Arrow, "BLOCK "+blk.Mark)
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
		detail.Bolt: true, detail.Washer: true, detail.OuterInsul: true, detail.Rim: true, detail.Backing: true, detail.Footing: true, detail.TensionRod: true, detail.Obstacle: true, detail.Outside: true,
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
	c.ruled, c.clear, c.split = true, true, w.a.Frame.LedgerTop
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	w.elevationBreaks(c, p)
	w.boltCentres(c)
	w.cutMarks(c)
	length := w.a.Spec.Ledger.Length.MM()
	run := []tick{{0, p.Window.Max.Y}}
	for _, b := range w.a.Blocks {
		run = append(run, tick{b.X, p.Window.Max.Y})
	}
	run = append(run, tick{length, p.Window.Max.Y})
	c.run(top, run)
	base := c.object.Min.Y
	c.dims(bottom, w.blockTicks(base))
	c.dims(bottom, []tick{{0, base}, {length, base}}, "LEDGER <>")
	w.elevationLevels(c, p)
	w.elevationNotes(c, p)
	c.finish()
	w.blockMarks(c)
	c.title("1", "EXTERIOR ELEVATION, LEDGER SHOWN TRANSPARENT", w.scale(k).Text)
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
	if !box.Empty() {
		c.extent = c.extent.Union(box.Grow(past))
	}
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
