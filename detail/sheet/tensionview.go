package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// tensionSection composes the section along the rod of device d.
func (w *writer) tensionSection(p view.Picture, d detail.Device, k float64) *composer {
	c := w.composer(k)
	c.ruled, c.keys = w.keyed, w.keyed
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	c.breaks(p)
	f, rod, low := w.a.Frame, w.rod(d), p.Window.Min.Y
	z := rod.Center().Z
	c.split = z
	c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: rod.Min.Y - c.mm(4), Y: z}, geom.Vec{X: rod.Max.Y + c.mm(4), Y: z})})
	c.corners(p.Window)
	c.grow(geom.Vec{X: p.Window.Min.X, Y: p.Window.Max.Y + c.mm(10)})
	t := func(ys ...float64) []tick {
		var out []tick
		for _, y := range ys {
			out = append(out, tick{y, low})
		}
		return out
	}
	if w.backed(p) {
		c.dims(bottom, t(f.BackingIn, f.RimIn, f.RimOut, 0, f.InsulOut, f.LedgerBack, f.LedgerFront))
	} else {
		c.dims(bottom, t(f.RimIn, f.RimOut, 0, f.InsulOut, f.LedgerBack, f.LedgerFront))
	}
	c.dims(bottom, t(rod.Min.Y, f.RimIn, f.LedgerFront, rod.Max.Y), "", "RIM TO LEDGER <>", "")
	c.dims(bottom, t(rod.Min.Y, rod.Max.Y), "ROD AS DRAWN <>")
	c.force(geom.Vec{X: rod.Max.Y + c.mm(16), Y: z}, geom.Vec{X: rod.Max.Y + c.mm(5), Y: z})
	c.force(geom.Vec{X: rod.Min.Y - c.mm(16), Y: z}, geom.Vec{X: rod.Min.Y - c.mm(5), Y: z})
	in, out := p.Window.Min.X, p.Window.Max.X
	c.dims(left, []tick{{0, in}, {f.RimTop, in}, {z, in}, {f.RimBottom, in}})
	c.dims(right, []tick{{0, out}, {f.LedgerTop, out}, {z, out}, {f.LedgerBottom, f.LedgerFront}})
	w.tensionNotes(c, p, d, rod)
	c.finish()
	c.title("1", "SECTION ALONG THE ROD OF "+w.deviceID(d), w.scale(k).Text)
	if w.keyed {
		c.legendBelow()
	}
	return c
}

// backed reports whether the picture cuts backing: the rod passes it too.
func (w *writer) backed(p view.Picture) bool {
	_, _, ok := spot(p, detail.Backing, 0.5, 0.5, nil)
	return ok
}

// deviceID names a device as the report does.
func (w *writer) deviceID(d detail.Device) string {
	for _, p := range w.a.Find(detail.TensionRod) {
		if math.Abs(p.Bounds().Center().X-d.X) < 1 {
			return p.ID
		}
	}
	return "LT1"
}

// tensionNotes names the links of the path, from the house joist on the left to the deck joist on the right.
func (w *writer) tensionNotes(c *composer, p view.Picture, d detail.Device, rod geom.Box3) {
	f, s := w.a.Frame, w.a.Spec
	z := rod.Center().Z
	w.say(c, left, p, detail.Subfloor, 0.25, 0.5, "NAILED TO "+either(math.IsNaN(d.House), "THE BLOCKING", "THIS HOUSE JOIST")+" AT "+w.text(s.Pick(6*25.4, 150))+" AT MOST (IRC 2021 FIGURE R507.9.2(1), FROM MEMORY, CONFIRM)")
	holder := w.requiredWords() + "; ITS FIXINGS AND END DISTANCE BY ITS MAKER"
	if !math.IsNaN(d.House) {
		c.call(left, geom.Vec{X: rod.Min.Y + 25, Y: z}, render.Arrow, "HOLDER ON THE SIDE OF THE HOUSE JOIST, "+holder)
		c.call(left, geom.Vec{X: rod.Min.Y + 60, Y: f.RimTop - 0.5*s.Floor.Joists.FlangeH.MM() - 8}, render.Dot, "EX7 HOUSE JOIST"+w.sideWords(d.House, d.X)+", SOUND AND FULL DEPTH: VERIFY")
	} else {
		c.call(left, geom.Vec{X: rod.Min.Y + 25, Y: z}, render.Arrow, "NO HOUSE JOIST BESIDE THE ROD: BLOCKING BY THE ENGINEER")
	}
	w.say(c, left, p, detail.Rim, 0.5, 0.2, "HOLE "+w.text(s.Pick(9.0/16*25.4, 13.5))+" THROUGH "+either(w.backed(p), "BACKING, ", "")+"RIM, SHEATHING AND LEDGER")
	if !math.IsNaN(d.Deck) {
		c.call(right, geom.Vec{X: rod.Max.Y - 25, Y: z}, render.Arrow, "HOLDER ON THE SIDE OF THE DECK JOIST, "+holder)
		c.call(right, geom.Vec{X: rod.Max.Y - 60, Y: f.LedgerTop - 18}, render.Dot, "DK1 DECK JOIST"+w.sideWords(d.Deck, d.X)+", BY OTHERS")
	} else {
		c.call(right, geom.Vec{X: rod.Max.Y - 25, Y: z}, render.Arrow, "NO DECK JOIST BESIDE THE ROD: ADD ONE")
	}
	w.say(c, right, p, detail.Ledger, 0.5, 0.2)
	c.call(right, geom.Vec{X: f.InsulOut / 2, Y: rod.Max.Z}, render.Arrow, fmt.Sprintf("LT1 ROD %s, CROSSES %s OF INSULATION AND OPEN GAP; SNUG, NEVER DRAWN UP: THE LEDGER STANDS FREE BETWEEN BLOCKS", w.diameter(unit.Length(rod.Max.Z-rod.Min.Z)), w.text(f.LedgerBack)))
	w.filmNote(c, p, detail.Barrier, near(z), w.layerName("wrb")+", SEALED ROUND THE ROD")
}

// requiredWords give the load one device must carry and what was stated for it.
func (w *writer) requiredWords() string {
	if len(w.a.Tension) == 0 {
		return "NONE STATED: SEE THE CHECKS"
	}
	sys := w.a.Spec.Project.System
	t := "STATED " + w.a.Spec.Tie.Lateral.Rating.Text(sys)
	if st := w.report.Find("lateral_rating"); st != nil && st.Limit != nil {
		t = "REQUIRED " + st.Limit.Text(sys) + " ALLOWABLE, " + t
	}
	return t
}

// sideWords say on which side of a rod at x the axis of a joist stands, seen from outside, and how far.
func (w *writer) sideWords(joist, x float64) string {
	side := " RIGHT"
	if joist < x {
		side = " LEFT"
	}
	return ", AXIS " + w.apart(joist, x) + side + " OF THE ROD"
}

// tensionPlan composes the plan at the level of the rod.
func (w *writer) tensionPlan(p view.Picture, d detail.Device, k float64) *composer {
	c := w.composer(k)
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	c.breaks(p)
	f, rod := w.a.Frame, w.rod(d)
	up, low := p.Window.Max.Y, p.Window.Min.Y
	c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: d.X, Y: -rod.Min.Y + c.mm(3)}, geom.Vec{X: d.X, Y: -rod.Max.Y - c.mm(3)})})
	inside, outside := []tick{{d.X, -rod.Min.Y}}, []tick{{d.X, -rod.Max.Y}}
	if !math.IsNaN(d.House) {
		inside = append(inside, tick{d.House, up})
	}
	if !math.IsNaN(d.Deck) {
		outside = append(outside, tick{d.Deck, low})
	}
	if i, edge := w.blockBeside(d.X); i >= 0 {
		c.dims(bottom, []tick{{d.X, -rod.Max.Y}, {edge, -f.BlockOut}}, "<> TO "+w.a.Blocks[i].Mark)
	}
	if len(inside) > 1 {
		c.dims(top, inside)
	}
	if len(outside) > 1 {
		c.dims(bottom, outside)
	}
	edge := p.Window.Max.X
	var depth []tick
	for _, y := range []float64{f.RimIn, f.RimOut, 0, f.InsulOut, f.LedgerBack, f.LedgerFront} {
		depth = append(depth, tick{-y, edge})
	}
	c.dims(right, depth)
	w.say(c, left, p, detail.Rim, 0.06, 0.5)
	w.say(c, left, p, detail.Ledger, 0.06, 0.5)
	c.call(left, geom.Vec{X: d.X, Y: -(rod.Min.Y + 40)}, render.Arrow, "LT1 ROD, HOLDERS BY THEIR MAKER")
	for _, j := range []struct {
		x, y  float64
		words string
	}{{d.House, rod.Min.Y + 90, "EX7 HOUSE JOIST"}, {d.Deck, rod.Max.Y - 60, "DK1 DECK JOIST"}} {
		if !math.IsNaN(j.x) {
			c.call(either(j.x > d.X, right, left), geom.Vec{X: j.x, Y: -j.y}, render.Dot, j.words)
		}
	}
	c.finish()
	c.title("2", "PLAN AT THE ROD OF "+w.deviceID(d), w.scale(k).Text)
	return c
}

// tensionElevation composes the positions along the ledger: running dimensions to the rods, and to the
// blocks beside them.
func (w *writer) tensionElevation(k float64) *composer {
	c := w.composer(k)
	f, l := w.a.Frame, w.a.Spec.Ledger.Length.MM()
	o := w.elevationOptions()
	o.Window = geom.Box{Min: geom.Vec{X: -60, Y: math.Min(f.RimBottom, f.LedgerBottom) - 40}, Max: geom.Vec{X: l + 60, Y: math.Max(f.RimTop, f.LedgerTop) + 30}}
	show := map[detail.Role]bool{detail.Ledger: true, detail.BlockPly: true, detail.TensionRod: true, detail.Rim: true, detail.HouseJoist: true}
	o.Only = func(p *detail.Part) bool { return show[p.Role] }
	o.Dashed, o.Behind = nil, map[detail.Role]bool{detail.Rim: true, detail.HouseJoist: true}
	p := w.once("tension elevation", func() view.Picture { return view.Look(w.a, view.FromOutside(0), o) })
	c.add(p.Draw(k, w.a.Spec.Project.System), o.Window)
	z, arm := w.rodLevel(), c.mm(3)
	for i, d := range w.a.Tension {
		for _, o := range w.a.Tension[:i] {
			arm = math.Min(arm, math.Abs(o.X-d.X)*0.4)
		}
	}
	up, low := o.Window.Max.Y, o.Window.Min.Y
	run := []tick{{0, up}}
	for _, d := range w.a.Tension {
		at := geom.Vec{X: d.X, Y: z}
		c.put(
			render.Stroke{Pen: render.Load, Path: geom.Polyline(at.Sub(geom.Vec{X: arm}), at.Add(geom.Vec{X: arm}))},
			render.Stroke{Pen: render.Load, Path: geom.Polyline(at.Sub(geom.Vec{Y: arm}), at.Add(geom.Vec{Y: arm}))},
		)
		run = append(run, tick{d.X, z + arm})
		if i, edge := w.blockBeside(d.X); i >= 0 {
			c.dims(bottom, []tick{{d.X, z - arm}, {edge, f.BlockBottom}})
		}
	}
	c.run(top, append(run, tick{l, up}))
	c.dims(bottom, []tick{{0, low}, {l, low}}, "LEDGER <>")
	c.finish()
	w.deviceMarks(c)
	if len(w.a.Tension) == 0 {
		c.title("1", "LEDGER WITHOUT TENSION DEVICES, FROM OUTSIDE", w.scale(k).Text)
		return c
	}
	c.title("3", "WHERE THE DEVICES STAND, FROM OUTSIDE", w.scale(k).Text)
	return c
}

// deviceMarks sets the marks of blocks and devices over the elevation.
func (w *writer) deviceMarks(c *composer) {
	y := c.extent.Max.Y + c.mm(7)
	type mark struct {
		name string
		x    float64
	}
	var all []mark
	for _, b := range w.a.Blocks {
		all = append(all, mark{b.Mark, b.X})
	}
	for _, d := range w.a.Tension {
		all = append(all, mark{w.deviceID(d), d.X})
	}
	slices.SortStableFunc(all, func(a, b mark) int { return cmp.Compare(a.x, b.x) })
	slots := make([]slot, len(all))
	for i, m := range all {
		slots[i] = slot{want: m.x / c.k, before: 4.5, after: 4.5}
	}
	spread(slots)
	if len(all) == 0 {
		return
	}
	for i, m := range all {
		c.put(render.Insert{Pen: render.Mark, Symbol: partMark, At: geom.Vec{X: slots[i].at * c.k, Y: y}, Scale: c.k, Fields: []render.Field{{Name: "MARK", Value: m.name}}})
	}
	c.grow(geom.Vec{X: slots[0].at*c.k - c.mm(5), Y: y + c.mm(5)}, geom.Vec{X: slots[len(slots)-1].at*c.k + c.mm(5), Y: y})
}
