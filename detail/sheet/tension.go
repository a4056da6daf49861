package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// tensionSheet shows how a lateral pull goes from a deck joist through a rod into a house joist: the section
// and the plan at one device, where the devices stand along the ledger, and what the report says of them.
func (w *writer) tensionSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	d, ok := w.shownDevice()
	if !ok {
		return w.noTension(s, room)
	}
	sec, plan := w.devicePicture(d, "section at a device"), w.devicePicture(d, "plan at a device")
	tables := w.tensionTables(math.Max(150, room.W()*0.48))
	high := -4.0
	for _, t := range tables {
		high += t.height() + 4
	}
	wide := room.W() - tables[0].total() - 13
	one, fits := w.choose(w.a.Spec.Sheets.Section, 4, 8, geom.Vec{X: room.W(), Y: room.H()}, func(k float64) *composer { return w.tensionSection(sec, d, k) })
	box := one.paper()
	var two, three *composer
	var pbox, ebox geom.Box
	below, fitsAll := 0.0, false
	for _, tall := range []float64{room.H() - 13 - math.Max(high, 90), box.H() * 1.1} { // the plan as large as what stands below lets it
		var ok2, ok3 bool
		two, ok2 = w.choose(0, one.k, 2*one.k, geom.Vec{X: room.W() - box.W() - 13, Y: tall}, func(k float64) *composer { return w.tensionPlan(plan, d, k) })
		pbox = two.paper()
		below = room.H() - math.Max(box.H(), pbox.H()) - 13
		three, ok3 = w.choose(0, 8, 50, geom.Vec{X: wide, Y: below}, w.tensionElevation)
		ebox = three.paper()
		if fitsAll = fits && ok2 && ok3 && high <= below; fitsAll {
			break
		}
	}
	x, y := math.Max(0, room.W()-box.W()-13-pbox.W())/3, math.Max(0, below-math.Max(ebox.H(), high))/3
	top := room.Max.Y - y
	w.place(s, one, "1", "SECTION AT DEVICE", origin, pt(room.Min.X+x-box.Min.X, top-box.Max.Y))
	w.place(s, two, "2", "PLAN AT DEVICE", planOrigin, pt(room.Min.X+2*x+box.W()+13-pbox.Min.X, top-pbox.Max.Y))
	low := room.Min.Y + y + math.Max(ebox.H(), high)
	w.place(s, three, "3", "POSITIONS", frontOrigin, pt(room.Min.X+math.Max(0, wide-ebox.W())/2-ebox.Min.X, low-ebox.Max.Y))
	w.tablesDown(s, tables, room.Max.X-tables[0].total(), low)
	return w.scale(one.k).Text, fitsAll
}

// devicePicture cuts the assembly at a device, along the rod or at its level.
func (w *writer) devicePicture(d detail.Device, name string) view.Picture {
	return w.once(fmt.Sprint(name, ", ", w.tight), func() view.Picture {
		if name == "section at a device" {
			return view.Cut(w.a, view.AcrossWall(d.X), w.deviceOptions(d, w.deviceSection(d)))
		}
		return view.Cut(w.a, view.FromAbove(w.rodLevel()), w.deviceOptions(d, w.devicePlan(d)))
	})
}

// tensionSizes are those of the set, which hold three views and the tables; without a device a shop sheet does.
func (w *writer) tensionSizes() []string {
	if len(w.a.Tension) == 0 {
		return w.shopSizes()
	}
	return w.setSizes()
}

// tablesDown sets tables one under the other.
func (w *writer) tablesDown(s *render.Sheet, tables []*table, x, y float64) {
	for _, t := range tables {
		items, used, _ := t.draw(x, y, t.height()+1)
		s.Items = append(s.Items, items...)
		y -= used + 4
	}
}

// noTension is the sheet of a project that states no device: what is missing, the ledger without any, and
// what the report says.
func (w *writer) noTension(s *render.Sheet, room geom.Box) (string, bool) {
	lines := wrap("NO LATERAL TENSION DEVICE IS STATED (tie.lateral): A PULL AWAY FROM THE HOUSE HAS NO PATH INTO THE FLOOR BUT THE BOLTS OF THE BLOCKS, WHICH ARE NOT COUNTED FOR IT.", 3.5, room.W()-4, true)
	s.Items = append(s.Items, render.Text{Pen: render.Status, At: pt(room.Min.X, room.Max.Y-4), Height: 3.5, Align: render.TopLeft, Bold: true, Lines: lines})
	top := room.Max.Y - 8 - float64(len(lines))*3.5*render.LinePitch
	c, fits := w.choose(0, 8, 50, geom.Vec{X: room.W(), Y: (top - room.Min.Y) * 0.6}, w.tensionElevation)
	p := c.paper()
	w.place(s, c, "1", "LEDGER", frontOrigin, pt(room.Min.X+(room.W()-p.W())/2-p.Min.X, top-p.Max.Y))
	w.tablesDown(s, w.tensionTables(room.W())[1:], room.Min.X, top-p.H()-8)
	return w.scale(c.k).Text, fits
}

// shownDevice is the first device that stands beside both joists, else the first.
func (w *writer) shownDevice() (detail.Device, bool) {
	for _, d := range w.a.Tension {
		if !math.IsNaN(d.House) && !math.IsNaN(d.Deck) {
			return d, true
		}
	}
	if len(w.a.Tension) == 0 {
		return detail.Device{}, false
	}
	return w.a.Tension[0], true
}

// rod is the rod of a device.
func (w *writer) rod(d detail.Device) geom.Box3 {
	for _, p := range w.a.Find(detail.TensionRod) {
		if b := p.Bounds(); math.Abs(b.Center().X-d.X) < 1 {
			return b
		}
	}
	return geom.EmptyBox3()
}

// deviceSection is the stretch of wall, floor and deck the section shows.
func (w *writer) deviceSection(d detail.Device) geom.Box {
	f, b := w.a.Frame, w.rod(d)
	past := []float64{110, 95, 80, 80}[w.tight]
	low := math.Min(math.Min(f.PlateBottom, f.LedgerBottom), f.BlockBottom)
	return geom.Box{Min: geom.Vec{X: b.Min.Y - past, Y: low - past*1.2}, Max: geom.Vec{X: b.Max.Y + past, Y: 60 + past*1.5}}
}

// devicePlan is what the plan shows: the device with its joists, and the nearest side of a block.
func (w *writer) devicePlan(d detail.Device) geom.Box {
	b := w.rod(d)
	past := []float64{60, 50, 40, 30}[w.tight]
	lo, hi := d.X-120, d.X+120
	for _, x := range []float64{d.House, d.Deck} {
		if !math.IsNaN(x) {
			lo, hi = math.Min(lo, x-70), math.Max(hi, x+70)
		}
	}
	if i, edge := w.blockBeside(d.X); i >= 0 {
		lo, hi = math.Min(lo, edge-90), math.Max(hi, edge+90)
	}
	return geom.Box{Min: geom.Vec{X: lo, Y: -(b.Max.Y + past)}, Max: geom.Vec{X: hi, Y: -(b.Min.Y - past)}}
}

// blockBeside returns the block whose side is nearest to x, and where that side is; -1 without blocks.
func (w *writer) blockBeside(x float64) (i int, edge float64) {
	best, least := -1, math.Inf(1)
	for i, b := range w.a.Blocks {
		for _, e := range []float64{b.Box.Min.X, b.Box.Max.X} {
			if d := math.Abs(e - x); d < least {
				best, least, edge = i, d, e
			}
		}
	}
	return best, edge
}

// deviceOptions shows what stands at the device: joists near it only, dashed where they stand before the
// plane.
func (w *writer) deviceOptions(d detail.Device, win geom.Box) view.Options {
	near := func(p *detail.Part) bool {
		switch p.Role {
		case detail.HouseJoist, detail.DeckJoist, detail.Hanger:
			x := p.Bounds().Center().X
			return math.Abs(x-d.House) < 1 || math.Abs(x-d.Deck) < 1 || win.Min.X < x && x < win.Max.X && win.Max.Y < 0
		}
		return true
	}
	return view.Options{Window: win, Depth: 400, Only: near,
		Leave: map[detail.Role]bool{
			detail.Obstacle: true, detail.Outside: true, detail.Threshold: true, detail.PlyScrew: true, detail.TieStrap: true, detail.Patch: true, detail.Wrap: true, detail.Screen: true,
		},
		Above: map[detail.Role]bool{detail.HouseJoist: true, detail.DeckJoist: true},
	}
}
