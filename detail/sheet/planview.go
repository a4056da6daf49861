package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/together"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

const planOrigin = "left end of ledger x outer face of sheathing, outside down"

// planSheet draws the plan of the whole ledger and, larger, the plan at one block with the force
// path behind the rim, and the parts of the work.
func (w *writer) planSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	v := view.FromAbove(w.planCut())
	b := w.sectionBlock()
	var whole, part view.Picture
	together.Each(2, func(i int) {
		p, name, win := &whole, "plan", w.planWindow()
		if i > 0 {
			p, name, win = &part, "plan at a block", w.blockWindow(b)
		}
		*p = w.once(name, func() view.Picture { return view.Cut(w.a, v, w.planOptions(win)) })
		p.Ready(w.a.Spec.Project.System)
	})
	c, fits := w.choose(w.a.Spec.Sheets.Plan, 8, 24, geom.Vec{X: room.W(), Y: room.H() * 0.52}, func(k float64) *composer { return w.plan(whole, k) })
	t := w.partTable()
	below := room.H() - c.paper().H() - 14
	d, ok := w.choose(0, 4, 10, geom.Vec{X: room.W() - t.total() - 20, Y: below}, func(k float64) *composer { return w.blockPlan(part, b, k) })
	upper, low := c.paper(), d.paper()
	spare := math.Max(0, below-math.Max(low.H(), t.height()))
	w.place(s, c, "1", "PLAN AT LEDGER", planOrigin, pt(room.Min.X+(room.W()-upper.W())/2-upper.Min.X, room.Max.Y-spare/3-upper.Max.Y))
	gap := math.Max(6, (room.W()-low.W()-t.total())/3)
	top := room.Max.Y - spare*2/3 - upper.H() - 14
	w.place(s, d, "2", "PLAN AT BLOCK", planOrigin, pt(room.Min.X+gap-low.Min.X, top-low.Max.Y))
	items, _, _ := t.draw(room.Max.X-gap-t.total(), top, top-room.Min.Y)
	s.Items = append(s.Items, items...)
	ok = ok && t.height() <= below
	return w.scale(c.k).Text, fits && ok
}

// planCut is the height of the upper bolt row.
func (w *writer) planCut() float64 {
	if len(w.a.Rows) > 0 {
		return w.a.Rows[0].Z
	}
	return (w.a.Frame.LedgerTop + w.a.Frame.LedgerBottom) / 2
}

func (w *writer) planWindow() geom.Box {
	f := w.a.Frame
	return geom.Box{
		Min: geom.Vec{X: w.offJoist(f.Left + 300), Y: -(f.LedgerFront + 330)},
		Max: geom.Vec{X: w.offJoist(f.Right - 300), Y: -(f.BackingIn - 330)},
	}
}

// offJoist moves the edge of a window off a house joist it would cut lengthwise, away from the ledger.
func (w *writer) offJoist(x float64) float64 {
	room := w.a.Spec.Floor.Joists.Flange.MM()/2 + 25
	for _, j := range w.a.HouseJoists {
		if math.Abs(j-x) < room {
			if x < 0 {
				return j - room
			}
			return j + room
		}
	}
	return x
}

// blockWindow is one bay about block b, with the ends of the ties in it.
func (w *writer) blockWindow(b int) geom.Box {
	f := w.a.Frame
	x := w.a.Spec.Ledger.Length.MM() / 2
	half := 420.0
	if b >= 0 {
		x = w.a.Blocks[b].X
	}
	if j := w.a.Spec.Floor.Joists.Spacing.MM(); j > 0 {
		half = math.Max(300, math.Min(j*0.85, 520))
	}
	return geom.Box{Min: geom.Vec{X: x - half, Y: -(f.LedgerFront + 260)}, Max: geom.Vec{X: x + half, Y: -(f.BackingIn - 330)}}
}

func (w *writer) planOptions(win geom.Box) view.Options {
	return view.Options{Window: win, Depth: 400, Leave: map[detail.Role]bool{
		detail.Subfloor: true, detail.FloorBoard: true, detail.Finish: true, detail.Decking: true, detail.Plate: true, detail.Footing: true, detail.GroundIns: true, detail.DrainBoard: true,
		detail.Earth: true, detail.Base: true, detail.Screen: true, detail.Stud: true, detail.Cavity: true, detail.Patch: true, detail.PlyScrew: true,
	}, Above: map[detail.Role]bool{detail.TieStrap: true}}
}

// plan composes the whole plan.
func (w *writer) plan(p view.Picture, k float64) *composer {
	c := w.composer(k)
	c.ruled, c.clear, c.split = true, true, 0
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	c.breaks(p)
	length := w.a.Spec.Ledger.Length.MM()
	low := p.Window.Min.Y
	up := p.Window.Max.Y
	edges, words := []tick{{0, up}}, []string{""}
	for i, b := range w.a.Blocks {
		edges = append(edges, tick{b.Box.Min.X, up}, tick{b.Box.Max.X, up})
		words = append(words, either(i == 0, "<> TYP", "-"), "")
	}
	edges = append(edges, tick{length, up})
	c.dims(top, edges, words...)
	c.dims(top, []tick{{0, up}, {length, up}}, "LEDGER <>")
	joists := []tick{{0, low}}
	for _, x := range w.a.DeckJoists {
		joists = append(joists, tick{x, low})
	}
	c.run(bottom, joists)
	w.airMarks(c, 0, length)
	w.planNotes(c, p)
	c.finish()
	w.blockMarks(c)
	c.title("1", "PLAN AT LEDGER, CUT AT THE UPPER BOLT ROW", w.scale(k).Text)
	return c
}

// planNotes names what the whole plan shows.
func (w *writer) planNotes(c *composer, p view.Picture) {
	f, length, low := w.a.Frame, w.a.Spec.Ledger.Length.MM(), p.Window.Min.Y
	edge := p.Window.Min.X
	if j, ok := firstAfter(w.a.HouseJoists, edge+40); ok {
		c.call(left, geom.Vec{X: j, Y: -(f.BackingIn - 200)}, render.Dot, w.houseJoistWords()+" "+caps(w.a.Spec.Floor.Joists.Kind)+", EXISTING")
	}
	c.call(left, geom.Vec{X: edge + 30, Y: -(f.RimIn + f.RimOut) / 2}, render.Dot, "RIM, EXISTING"+either(len(w.a.HouseJoists) > 0, "", "; "+joistsAlong))
	c.call(left, geom.Vec{X: edge + 30, Y: -f.InsulOut / 2}, render.Dot, "OUTSIDE INSULATION, RUNS ON BETWEEN BLOCKS")
	c.call(right, geom.Vec{X: length - 10, Y: -(f.LedgerBack + f.LedgerFront) / 2}, render.Dot, fmt.Sprintf("LEDGER L1; %s; BLOCK CENTRES ON A-201", w.gapPlanWords()))
	if f.CladOut > f.CavityOut {
		c.call(right, geom.Vec{X: length + 90, Y: -(f.CavityOut + f.CladOut) / 2}, render.Dot, "CLADDING RUNS ON BEYOND THE LEDGER")
	}
	if n := len(w.a.DeckJoists); n > 0 {
		c.call(right, geom.Vec{X: w.a.DeckJoists[n-1], Y: low + 60}, render.Dot, fmt.Sprintf("%d DECK JOISTS, AT MOST %s APART, PLACED CLEAR OF BOLT HEADS AND BESIDE LT1; RUNNING DIMENSIONS TO THEIR AXES", n, w.text(w.a.Spec.Deck.Joists.Spacing.MM())))
	}
	if rods := w.a.Find(detail.TensionRod); len(rods) > 0 {
		r := rods[len(rods)-1].Bounds()
		c.call(right, geom.Vec{X: r.Center().X, Y: -(r.Min.Y + 60)}, render.Dot, w.deviceWords())
	}
}

// blockPlan composes the plan at one block.
func (w *writer) blockPlan(p view.Picture, b int, k float64) *composer {
	c := w.composer(k)
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	c.breaks(p)
	f := w.a.Frame
	if b >= 0 {
		w.blockPlanDims(c, p, b)
	}
	atLeft := func(q view.Piece) bool { return q.Region.Bounds().Min.X < p.Window.Min.X+1 }
	w.say(c, left, p, detail.Backing, 0.2, 0.5, either(len(w.a.HouseJoists) > 0, "BETWEEN THE HOUSE JOISTS, FULL DEPTH", "BEHIND EACH BLOCK, FULL DEPTH"), w.backingWords())
	w.sayOf(c, left, p, detail.Rim, 0.08, 0.5, atLeft)
	w.sayOf(c, left, p, detail.Sheathing, 0.06, 0.5, atLeft)
	w.sayOf(c, left, p, detail.OuterInsul, 0.2, 0.5, atLeft)
	if b >= 0 && w.a.Count(detail.Wrap) > 0 {
		c.call(left, geom.Vec{X: w.a.Blocks[b].Box.Min.X, Y: -(f.InsulOut + f.LedgerBack) / 2}, render.Arrow, "M3 SIDE PIECES ON M1, CAP M2 OVER THEM")
	}
	w.tiePlanNote(c, b)
	w.sayOf(c, right, p, detail.BlockPly, 0.8, 0.5, func(q view.Piece) bool { return q.Part.Block == b })
	if f.Gap() > 0 && b >= 0 {
		c.call(right, geom.Vec{X: w.a.Blocks[b].Box.Max.X + 60, Y: -(f.InsulOut + f.LedgerBack) / 2}, render.Dot, either(w.airPath().Closed == "", "OPEN GAP "+w.text(w.airPath().Gap)+", AIR RISES IN IT: DO NOT FILL", "GAP WITHOUT AN AIR PATH"))
		w.airMarks(c, p.Window.Min.X, p.Window.Max.X)
	}
	atRight := func(q view.Piece) bool { return q.Region.Bounds().Max.X > p.Window.Max.X-1 }
	if _, _, ok := spot(p, detail.Ledger, 0.9, 0.5, atRight); !ok {
		atRight = nil // the ledger ends in the picture
	}
	w.sayOf(c, right, p, detail.Ledger, 0.9, 0.5, atRight)
	w.jointNote(c, p)
	c.finish()
	name := "PLAN AT A BLOCK"
	if b >= 0 {
		name = "PLAN AT BLOCK " + w.a.Blocks[b].Mark + ": " + either(w.a.Count(detail.Backing) > 0 && w.a.Count(detail.TieStrap) > 0, "FORCE PATH INTO THE FLOOR", "NO FORCE PATH INTO THE FLOOR STATED")
	}
	c.title("2", name, w.scale(k).Text)
	return c
}

func (w *writer) blockPlanDims(c *composer, p view.Picture, b int) {
	f, blk := w.a.Frame, w.a.Blocks[b]
	up, low := p.Window.Max.Y, p.Window.Min.Y
	var t []tick
	for _, j := range w.a.HouseJoists {
		if j > p.Window.Min.X+20 && j < p.Window.Max.X-20 {
			t = append(t, tick{j, up})
		}
	}
	for _, h := range blk.Bolts {
		if math.Abs(h.Y-w.planCut()) < 1 {
			t = append(t, tick{h.X, up})
		}
	}
	c.dims(top, t)
	var u []tick
	u = append(u, tick{blk.Box.Min.X, -f.BlockOut}, tick{blk.Box.Max.X, -f.BlockOut})
	for _, h := range blk.Bolts {
		if math.Abs(h.Y-w.planCut()) < 1 {
			u = append(u, tick{h.X, low})
		}
	}
	c.dims(bottom, u)
	r := p.Window.Max.X
	var depth []tick
	for _, y := range []float64{f.BackingIn, f.RimIn, f.RimOut, 0, f.InsulOut, f.LedgerBack, f.LedgerFront} {
		depth = append(depth, tick{-y, r})
	}
	c.dims(right, depth)
}

// tiePlanNote names the left tie of the bay of block b and what it must carry.
func (w *writer) tiePlanNote(c *composer, b int) {
	if b < 0 {
		return
	}
	var tie *detail.Part
	for _, p := range w.a.Find(detail.TieStrap) {
		if p.Bounds().Min.X > c.object.Min.X && p.Bounds().Min.X < w.a.Blocks[b].X && (tie == nil || p.Bounds().Min.X > tie.Bounds().Min.X) {
			tie = p
		}
	}
	if tie == nil {
		return
	}
	words := w.tieWords() + ", " + w.text(w.a.Spec.Tie.Length.MM()) + " ALONG THE JOIST"
	if w.results.RequiredTie > 0 {
		words += "; REQUIRED " + w.results.RequiredTie.Text(w.a.Spec.Project.System)
	}
	box := tie.Bounds()
	c.call(left, geom.Vec{X: box.Min.X + 1, Y: -(box.Max.Y - 150)}, render.Arrow, caps(words))
}

// jointNote names the right-most deck joist in the picture.
func (w *writer) jointNote(c *composer, p view.Picture) {
	most := math.Inf(-1)
	for _, q := range p.Pieces {
		if q.Part.Role == detail.DeckJoist {
			most = math.Max(most, q.Region.Bounds().Max.X)
		}
	}
	at, part, ok := spot(p, detail.DeckJoist, 0.5, 0.3, func(q view.Piece) bool { return q.Region.Bounds().Max.X == most })
	if !ok {
		return
	}
	on := "HG1"
	for i, h := range w.a.Find(detail.Hanger) {
		if math.Abs(w.a.DeckJoists[i]-part.Bounds().Center().X) < 1 {
			on = h.Mark
		}
	}
	c.call(right, at, render.Dot, w.label(part, "ON HANGER "+on))
}
