package sheet

import (
	"math"

	"standclear/detail"
	"standclear/detail/spec"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

const origin = "outer face of sheathing x finished floor"

func (w *writer) blockTitle(b int) string {
	if b < 0 {
		return "SECTION AT BLOCK"
	}
	return "SECTION AT BLOCK " + w.a.Blocks[b].Mark
}

// beside sets views in a row with their origins on one height, spread over the room.
func (w *writer) beside(s *render.Sheet, room geom.Box, cs []*composer, ids, titles []string) {
	total, lo, hi := 0.0, math.Inf(1), math.Inf(-1)
	for _, c := range cs {
		p := c.paper()
		total += p.W()
		if c.k == cs[0].k {
			lo, hi = math.Min(lo, p.Min.Y), math.Max(hi, p.Max.Y)
		}
	}
	gap := math.Max(12, (room.W()-total)/float64(len(cs)+1))
	x := room.Min.X + math.Min(gap, (room.W()-total-12*float64(len(cs)-1))/2)
	y := room.Min.Y + (room.H()-(hi-lo))/2 - lo
	for i, c := range cs {
		p := c.paper()
		at := y
		if c.k != cs[0].k { // of another scale: its own height, in the middle of the others
			at += (hi + lo - p.Max.Y - p.Min.Y) / 2
		}
		w.place(s, c, ids[i], titles[i], origin, pt(x-p.Min.X, at))
		x += p.W() + gap
	}
}

// sectionWindow is what the sections show: a stretch of wall above and below the ledger, of floor
// inside and of deck outside.
func (w *writer) sectionWindow() geom.Box {
	f := w.a.Frame
	reach := []float64{240, 220, 200, 180}[w.tight]
	high := []float64{400, 330, 260, 200}[w.tight]
	lowest := math.Min(math.Min(f.PlateBottom, f.LedgerBottom), f.BlockBottom)
	return geom.Box{
		Min: geom.Vec{X: math.Min(f.FinishIn, f.BackingIn) - reach*0.8, Y: lowest - high*0.9},
		Max: geom.Vec{X: f.LedgerFront + reach, Y: high * 1.1},
	}
}

func (w *writer) sectionOptions() view.Options {
	return view.Options{Window: w.sectionWindow(), Depth: 700, Leave: map[detail.Role]bool{
		detail.Obstacle: true, detail.Outside: true, detail.Cladding: false, detail.Threshold: true, detail.PlyScrew: true, detail.TensionRod: true,
	}}
}

// sectionBlock picks the block to cut: inside the row, away from doors and deck joists.
func (w *writer) sectionBlock() int {
	best, score := -1, math.Inf(-1)
	for i := range w.a.Blocks {
		sc := 0.0
		if i > 0 && i+1 < len(w.a.Blocks) {
			sc += 4
		}
		if !w.inDoor(w.a.Blocks[i].X) {
			sc += 8
		}
		sc += math.Min(w.spaceAbout(i), 400) / 100
		sc -= math.Abs(float64(i)-float64(len(w.a.Blocks))/3) * 0.1
		if sc > score {
			best, score = i, sc
		}
	}
	return best
}

// spaceAbout is the smaller of the two distances from block i to its neighbours or the ledger's ends.
func (w *writer) spaceAbout(i int) float64 {
	b := w.a.Blocks
	left, right := b[i].X, w.a.Spec.Ledger.Length.MM()-b[i].X
	if i > 0 {
		left = b[i].X - b[i-1].X
	}
	if i+1 < len(b) {
		right = b[i+1].X - b[i].X
	}
	return math.Min(left, right)
}

func (w *writer) inDoor(x float64) bool {
	for _, d := range w.a.Spec.Doors {
		if x > d.From.MM()-50 && x < d.To.MM()+50 {
			return true
		}
	}
	return false
}

// cutAtBlock is the plane through the first bolt column of block b.
func (w *writer) cutAtBlock(b int) float64 {
	if b < 0 {
		return w.a.Spec.Ledger.Length.MM() / 2
	}
	blk := w.a.Blocks[b]
	for _, h := range blk.Bolts {
		if h.X > blk.Box.Min.X && h.X < blk.Box.Max.X { // a bolt may miss a block that is too narrow
			return h.X
		}
	}
	return blk.X
}

// cutBetween is the plane between blocks: in the widest space outside the doors, off studs and joists,
// so that the cut shows the wall and not a stick.
func (w *writer) cutBetween() float64 {
	at := w.widestSpace()
	mid, half := (at[0]+at[1])/2, math.Min(150, (at[1]-at[0])/2-15)
	best, score := mid, math.Inf(-1)
	for d := -half; d <= half; d += 5 {
		x := mid + d
		near := math.Min(math.Abs(x-nearestOf(w.a.DeckJoists, x)), math.Abs(x-nearestOf(w.a.HouseJoists, x)))
		near = math.Min(near, math.Abs(x-w.nearestStud(x)))
		if sc := math.Min(near, 60) - math.Abs(d)/20; sc > score {
			best, score = x, sc
		}
	}
	return best
}

// widestSpace is the longest stretch without a block, one outside the doors before one inside.
func (w *writer) widestSpace() [2]float64 {
	best, score := [2]float64{0, w.a.Spec.Ledger.Length.MM()}, math.Inf(-1)
	for _, sp := range w.a.Between() {
		sc := sp[1] - sp[0]
		if w.inDoor((sp[0] + sp[1]) / 2) {
			sc -= 1e5
		}
		if sp[0] <= 0 || sp[1] >= w.a.Spec.Ledger.Length.MM() {
			sc -= 1e4 // beyond the last block
		}
		if b := w.sectionBlock(); b >= 0 && math.Abs((sp[0]+sp[1])/2-w.cutAtBlock(b)) < 450 {
			sc -= 1e3 // so near that the marks of the two sections crowd each other
		}
		if sc > score {
			best, score = sp, sc
		}
	}
	return best
}

func (w *writer) nearestStud(x float64) float64 {
	s := w.a.Spec.Wall
	if s.StudSpacing <= 0 {
		return math.Inf(1)
	}
	k := math.Round((x - s.StudFirst.MM()) / s.StudSpacing.MM())
	return s.StudFirst.MM() + k*s.StudSpacing.MM()
}

func nearestOf(xs []float64, x float64) float64 {
	best := math.Inf(1)
	for _, v := range xs {
		if math.Abs(v-x) < math.Abs(best-x) {
			best = v
		}
	}
	return best
}

// sectionAt composes the section through the bolts of block b, with the outline of what another view shows larger.
func (w *writer) sectionAt(p view.Picture, b int, k float64, larger *geom.Box) *composer {
	c := w.sectionBase(p, k)
	f := w.a.Frame
	c.dims(bottom, w.depthTicks(f.BackingIn, f.RimIn, f.RimOut, 0, f.BlockOut, f.LedgerBack, f.LedgerFront))
	c.dims(bottom, w.depthTicks(f.RimOut, 0, f.LedgerBack, f.LedgerFront), "-", "STAND-OFF <>", "-")
	g := w.a.Grip(w.a.Spec.Fasteners.Sets()[0])
	c.dims(bottom, w.depthTicks(g.Inner, g.Outer), "GRIP <>")
	w.boltLines(c, math.Inf(-1))
	w.heightChains(c, p)
	if larger != nil {
		c.around(*larger, "3", "A-301")
	}
	w.atNotes(c, p, b)
	c.finish()
	return c
}

// sectionBetween composes the section between blocks.
func (w *writer) sectionBetween(p view.Picture, k float64) *composer {
	c := w.sectionBase(p, k)
	f := w.a.Frame
	c.dims(bottom, w.depthTicks(f.SheathIn, 0, f.InsulOut, f.LedgerBack, f.LedgerFront), "", "INSULATION <>", "GAP <>")
	floor, ledger := tick{0, p.Window.Max.X}, tick{f.LedgerTop, p.Window.Max.X}
	c.dims(right, []tick{floor, {f.DeckTop, p.Window.Max.X}, ledger, {f.LedgerBottom, f.LedgerFront}})
	c.dims(left, []tick{{f.BandBottom, f.CavityOut}, {f.LedgerBottom, f.LedgerBack}}, "-")
	w.betweenNotes(c, p)
	c.finish()
	return c
}

// boltEnds returns where the fasteners of a set end in depth: the point and the outer face of the head.
func (w *writer) boltEnds(set *spec.Set) (tip, head float64) {
	under := w.a.Grip(set).Outer + set.Washer.Thickness.MM()
	return under - w.a.BoltLength(set).MM(), under + detail.Hex(set.Diameter).Head.MM()
}

// boltLines draws the axis of every row and the run of the thread, from a depth on outward.
func (w *writer) boltLines(c *composer, from float64) {
	for _, r := range w.a.Rows {
		tip, head := w.boltEnds(r.Set)
		c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: math.Max(tip, from) - c.mm(3), Y: r.Z}, geom.Vec{X: head + c.mm(3), Y: r.Z})})
		if r.Set.Kind != "bolt" || tip < from {
			continue
		}
		thread := r.Set.Thread.MM()
		if thread <= 0 {
			thread = detail.Hex(r.Set.Diameter).Thread(w.a.BoltLength(r.Set)).MM()
		}
		for _, side := range []float64{-1, 1} {
			z := r.Z + side*0.42*r.Set.Diameter.MM()
			c.put(render.Stroke{Pen: render.Fine, Path: geom.Polyline(geom.Vec{X: tip, Y: z}, geom.Vec{X: tip + thread, Y: z})})
		}
	}
}

// sectionBase draws the picture, its break lines and the inside and outside tags.
func (w *writer) sectionBase(p view.Picture, k float64) *composer {
	c := w.composer(k)
	c.ruled, c.keys = true, true
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	c.breaks(p)
	f := w.a.Frame
	c.split = f.LedgerTop
	c.corners(p.Window)
	c.dims(top, w.topTicks(p, f))
	return c
}

// corners tags the sides of a section over its upper corners.
func (c *composer) corners(win geom.Box) {
	top := win.Max.Y + c.mm(5.5)
	c.tags = append(c.tags, tag{geom.Vec{X: win.Min.X, Y: top}, 1, "INSIDE"}, tag{geom.Vec{X: win.Max.X, Y: top}, -1, "OUTSIDE"})
}

// topTicks measures the layers of the wall above.
func (w *writer) topTicks(p view.Picture, f detail.Frame) []tick {
	y := []float64{f.FinishIn, f.StudIn, f.SheathIn, 0, f.InsulOut, f.CavityOut, f.CladOut}
	var t []tick
	for _, v := range y {
		t = append(t, tick{v, p.Window.Max.Y})
	}
	return t
}

// depthTicks measures depths from below the section.
func (w *writer) depthTicks(ys ...float64) []tick {
	from := w.sectionWindow().Min.Y
	var t []tick
	for _, y := range ys {
		t = append(t, tick{y, from})
	}
	return t
}

// heightChains measures the levels: floor and rim on the left, deck, ledger and bolts on the right.
func (w *writer) heightChains(c *composer, p view.Picture) {
	f := w.a.Frame
	edge, in := p.Window.Max.X, p.Window.Min.X
	ticks := []tick{{0, edge}, {f.DeckTop, edge}, {f.LedgerTop, edge}}
	for _, r := range w.a.Rows {
		_, end := w.boltEnds(r.Set)
		ticks = append(ticks, tick{r.Z, end + c.mm(4)})
	}
	ticks = append(ticks, tick{f.LedgerBottom, f.LedgerFront})
	c.dims(right, ticks)
	c.dims(right, []tick{{0, edge}, {f.LedgerTop, edge}, {f.LedgerBottom, f.LedgerFront}}, "-")
	c.dims(left, []tick{{0, in}, {f.SubTop, in}, {f.RimTop, in}, {f.RimBottom, in}, {f.PlateBottom, in}})
}
