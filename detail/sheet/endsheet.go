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

// detailView is one view of the sheet of details: its title, where its origin lies, and what draws it.
type detailView struct {
	title, origin string
	draw          func(k float64) *composer
}

// endSheet draws what the sections of A-301 do not show: the door sill, an end of the ledger from outside
// and from its side, splices and guard posts, in rows on one floor line each, with their checks.
func (w *writer) endSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	views := w.detailViews()
	t, absent := w.detailTable(), w.absentTable()
	tables := t.height() + 5 + absent.height()
	var rows [][]*composer
	c, fits := w.choose(w.a.Spec.Sheets.Section, 2, 8, geom.Vec{X: room.W(), Y: room.H()}, func(k float64) *composer {
		var cs []*composer
		for i, v := range views {
			c := v.draw(k)
			c.title(fmt.Sprint(i+1), v.title, w.scale(k).Text)
			cs = append(cs, c)
		}
		rows = inRows(cs, room.W(), t.total())
		size := geom.Vec{Y: -between}
		for i, r := range rows {
			b := rowBox(r)
			if i == len(rows)-1 {
				b.X += between + t.total()
				b.Y = math.Max(b.Y, tables)
			}
			size = geom.Vec{X: math.Max(size.X, b.X), Y: size.Y + b.Y + between}
		}
		return &composer{k: k, extent: geom.Box{Max: size.Mul(k)}}
	})
	spare := math.Max(0, room.H()-c.paper().H()) / float64(len(rows)+1)
	y, n := room.Max.Y-spare, 0
	for i, r := range rows {
		b := rowBox(r)
		wide := room.W()
		if i == len(rows)-1 {
			wide -= between + t.total()
			items, used, _ := t.draw(room.Max.X-t.total(), y, tables)
			more, _, _ := absent.draw(room.Max.X-t.total(), y-used-5, tables)
			s.Items = append(append(s.Items, items...), more...)
		}
		gap := math.Max(0, wide-b.X) / float64(len(r)+1)
		x, high := room.Min.X+gap, rowTop(r)
		for _, d := range r {
			p := d.paper()
			w.place(s, d, fmt.Sprint(n+1), views[n].title, views[n].origin, pt(x-p.Min.X, y-high))
			x += p.W() + between + gap
			n++
		}
		y -= b.Y + between + spare
	}
	return w.scale(c.k).Text, fits
}

// between is the plotted distance between views of one sheet.
const between = 14.0

// inRows shares the views out to rows of a width, in order; the last leaves room for a table.
func inRows(cs []*composer, width, table float64) [][]*composer {
	var rows [][]*composer
	var row []*composer
	for i, c := range cs {
		need := rowBox(append(row, c)).X
		if i == len(cs)-1 {
			need += between + table
		}
		if len(row) > 0 && need > width {
			rows, row = append(rows, row), nil
		}
		row = append(row, c)
	}
	return append(rows, row)
}

// rowBox is the plotted size of a row whose origins lie on one line.
func rowBox(cs []*composer) geom.Vec {
	x, lo := -between, math.Inf(1)
	for _, c := range cs {
		p := c.paper()
		x, lo = x+p.W()+between, math.Min(lo, p.Min.Y)
	}
	return geom.Vec{X: x, Y: rowTop(cs) - lo}
}

// rowTop is how far a row reaches over its origins, plotted.
func rowTop(cs []*composer) float64 {
	hi := math.Inf(-1)
	for _, c := range cs {
		hi = math.Max(hi, c.paper().Max.Y)
	}
	return hi
}

// detailViews lists the views this project has.
func (w *writer) detailViews() []detailView {
	var out []detailView
	if d, x, ok := w.doorCut(); ok {
		out = append(out, detailView{fmt.Sprintf("SECTION AT SILL OF DOOR %d", d+1), origin, func(k float64) *composer { return w.doorSection(d, x, k) }})
	}
	out = append(out,
		detailView{"LEFT END OF LEDGER, FROM OUTSIDE", frontOrigin, w.endElevation},
		detailView{"LEFT END OF LEDGER, FROM THE LEFT", origin, w.endSide})
	for i, x := range w.a.Spec.Ledger.Splices {
		if i < most {
			out = append(out, detailView{fmt.Sprintf("SPLICE %d", i+1), frontOrigin, func(k float64) *composer { return w.spliceView(i, x.MM(), k) }})
		}
	}
	for i, x := range w.a.Spec.Deck.GuardPosts {
		if i < most {
			out = append(out, detailView{fmt.Sprintf("GUARD POST GP%d AT LEDGER", i+1), frontOrigin, func(k float64) *composer { return w.postView(i, x.MM(), k) }})
		}
	}
	return out
}

// most is how many splices and how many posts are drawn; the others are in the table.
const most = 2

// doorCut picks the first door over the ledger and where to cut it: clear of blocks and joists.
func (w *writer) doorCut() (door int, x float64, ok bool) {
	const side = 60.0 // off the jambs
	for i, d := range w.a.Spec.Doors {
		lo, hi := math.Max(0, d.From.MM())+side, math.Min(w.a.Spec.Ledger.Length.MM(), d.To.MM())-side
		if hi <= lo {
			continue
		}
		best, score := (lo+hi)/2, math.Inf(-1)
		for at := lo; at <= hi; at += 5 {
			near := math.Min(math.Abs(at-nearestOf(w.a.DeckJoists, at)), math.Abs(at-nearestOf(w.a.HouseJoists, at)))
			for _, b := range w.a.Blocks {
				near = math.Min(near, math.Abs(at-b.X)-math.Max(w.a.Spec.Blocks.Width.MM(), w.a.Spec.Water.Patch.Width.MM())/2)
			}
			if sc := math.Min(near, 60); sc > score {
				best, score = at, sc
			}
		}
		return i, best, true
	}
	return 0, 0, false
}

// atDoor is the assembly with the profile of F1 as it is at x: its leg cut down to the sill.
func (w *writer) atDoor(x float64) *detail.Assembly {
	a := *w.a
	a.Parts = append([]*detail.Part(nil), w.a.Parts...)
	for i, p := range a.Parts {
		if p.Role == detail.Flashing {
			q := *p
			q.Bends = []detail.Bend{{Axis: geom.X, Path: w.a.FlashingPathAt(x)}}
			a.Parts[i] = &q
		}
	}
	return &a
}

// doorSection is the section through the sill of a door, between blocks.
func (w *writer) doorSection(n int, x, k float64) *composer {
	f, d := w.a.Frame, w.a.Spec.Doors[n]
	reach := []float64{230, 200, 170, 150}[w.tight]
	low := math.Min(math.Min(f.LedgerBottom, f.BlockBottom), f.PlateBottom) - 90
	win := geom.Box{Min: geom.Vec{X: math.Min(f.FinishIn, f.BackingIn) - 110, Y: low}, Max: geom.Vec{X: f.LedgerFront + reach, Y: math.Max(0, d.Threshold.MM()) + 60}}
	p := w.once(fmt.Sprint("door sill ", n, w.tight), func() view.Picture {
		return view.Cut(w.atDoor(x), view.AcrossWall(x), view.Options{Window: win, Depth: 300, Leave: map[detail.Role]bool{
			detail.Obstacle: true, detail.Outside: true, detail.PlyScrew: true, detail.TensionRod: true, detail.Wrap: true, detail.Patch: true, detail.Finish: true, detail.Stud: true, detail.Cavity: true,
			detail.BlockPly: true, detail.BlockPad: true, detail.FootPiece: true, detail.Bolt: true, detail.Nut: true, detail.Washer: true, detail.TieStrap: true, detail.Backing: true,
			detail.OuterInsul: false, detail.Furring: true,
		}})
	})
	c := w.composer(k)
	c.ruled, c.split = true, f.LedgerTop
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	c.breaks(p)
	c.corners(p.Window)
	path := w.a.FlashingPathAt(x)
	edge := p.Window.Max.X
	c.dims(right, []tick{{f.LedgerTop, edge}, {f.DeckTop, edge}, {0, f.CladOut}, {d.Threshold.MM(), f.CladOut}})
	c.dims(right, []tick{{f.DeckTop, edge}, {d.Threshold.MM(), f.CladOut}}, "STEP <>")
	c.dims(left, alone(c.sys, tick{path.V[1].Y, path.V[1].X}, tick{path.V[0].Y, path.V[0].X}), "F1 UP <>")
	from := p.Window.Min.Y
	c.dims(bottom, []tick{{f.SheathIn, from}, {0, from}, {f.InsulOut, from}, {f.LedgerBack, f.LedgerBottom}, {f.LedgerFront, f.LedgerBottom}}, "", "INSULATION <>", "GAP <>", "")
	w.doorNotes(c, p, n)
	c.finish()
	return c
}

// doorNotes name the layers at the sill in the order water meets them.
func (w *writer) doorNotes(c *composer, p view.Picture, n int) {
	f, s := w.a.Frame, w.a.Spec
	d := s.Doors[n]
	swing := map[string]string{"in": "DOOR SWINGS IN", "out": "DOOR SWINGS OUT OVER THE DECK", "slide": "SLIDING DOOR"}[d.Swing]
	w.say(c, left, p, detail.Threshold, 0.35, 0.6, "TOP "+w.signed(d.Threshold.MM()), swing)
	c.call(left, geom.Vec{X: f.CavityOut - 4, Y: f.SubTop}, render.Arrow, "SILL PAN OF THE DOOR: NOT IN THE PROJECT. BY THE DOOR'S DETAIL; IT DRAINS OUT OVER THE LEG OF F1, NEVER BEHIND IT")
	w.say(c, left, p, detail.Subfloor, 0.12, 0.5)
	w.say(c, left, p, detail.Rim, 0.5, 0.35)
	w.say(c, left, p, detail.Sheathing, 0.5, 0.3)
	path := w.a.FlashingPathAt((d.From.MM() + d.To.MM()) / 2)
	words := "F1 UNDER THE SILL, LEG AS BESIDE THE DOOR"
	if cut := s.Water.Flashing.Up.MM() - (path.V[0].Y - path.V[1].Y); cut > 0.5 {
		words = "F1, LEG CUT DOWN TO THE SILL OVER THE WIDTH OF THE OPENING"
	}
	c.call(right, path.V[1].Lerp(path.V[2].Vec, 0.6), render.Arrow, caps(words+"; FALLS OUTWARD OVER THE LEDGER"))
	w.say(c, right, p, detail.Decking, 0.6, 0.5, w.text(-f.DeckTop)+" BELOW THE FLOOR", "BY OTHERS")
	w.say(c, right, p, detail.Ledger, 0.5, 0.4)
	if !w.sparse { // A-301 has it
		w.insulationNote(c, p, "RUNS ON BEHIND THE LEDGER")
	}
	w.filmNote(c, p, detail.Barrier, w.atLedger(c, 0.6), w.layerName("wrb")+" UP TO THE SILL")
	if f.Gap() > 0 {
		c.call(right, geom.Vec{X: (f.InsulOut + f.LedgerBack) / 2, Y: f.LedgerBottom + 0.25*(f.LedgerTop-f.LedgerBottom)}, render.Dot, fmt.Sprintf("OPEN GAP %s: DO NOT FILL", w.text(f.Gap())))
		w.airArrows(c)
	}
	w.say(c, right, p, detail.Screen, 0.5, 0.5)
	c.mark(0, "FIN. FLOOR "+w.signed(0))
}

// detailTable lists the checks of these details and what is not drawn.
func (w *writer) detailTable() *table {
	t := &table{title: "CHECKS OF THESE DETAILS", head: []string{"WHAT", "VALUE", "LIMIT", "VERDICT"}, width: []float64{92, 28, 28, 32}}
	add := func(id string) {
		st := w.report.Find(id)
		if st == nil {
			return
		}
		value := "-"
		if !st.Bare() {
			value = st.Value.Text(w.a.Spec.Project.System)
		}
		pen := render.Note
		if st.Verdict != check.OK && st.Verdict != check.Info {
			pen = render.Status
		}
		t.rows = append(t.rows, []string{caps(st.Name + either(st.Where == "", "", ", "+st.Where)), value, st.LimitText(w.a.Spec.Project.System), st.Verdict.String()})
		t.pens = append(t.pens, pen)
	}
	for i := range w.a.Spec.Doors {
		add(fmt.Sprintf("door_%d_step", i+1))
		add(fmt.Sprintf("door_%d_water", i+1))
	}
	for _, id := range []string{"flashing_lap", "flashing_upstand", "flashing_reach", "cladding_clearance", "decking_gap", "gap_open_foot", "block_end_left", "block_end_right"} {
		add(id)
	}
	for i := range w.a.Spec.Ledger.Splices {
		add(fmt.Sprintf("splice_%d", i+1))
	}
	if len(w.a.Spec.Deck.GuardPosts) > 0 {
		add("scope_guard")
	}
	return t
}

// absentTable says which of the details of this sheet the project does not have, and why.
func (w *writer) absentTable() *table {
	t := &table{title: "NOT ON THIS SHEET", width: []float64{180}, rows: [][]string{{"NOT DRAWN: CORNER NOT IN THE PROJECT"}}}
	add := func(yes bool, words string) {
		if yes {
			t.rows = append(t.rows, []string{words})
		}
	}
	_, _, door := w.doorCut()
	add(!door, "NOT DRAWN: NO DOOR OVER THE LEDGER IN THE PROJECT")
	splices, posts := len(w.a.Spec.Ledger.Splices), len(w.a.Spec.Deck.GuardPosts)
	add(splices == 0, "NOT DRAWN: NO SPLICE IN THE PROJECT, LEDGER IN ONE PIECE")
	add(splices > most, fmt.Sprintf("NOT DRAWN: SPLICES %d TO %d, SEE THE CHECKS", most+1, splices))
	add(posts == 0, "NOT DRAWN: NO GUARD POST ON THE LEDGER IN THE PROJECT")
	add(posts > most, fmt.Sprintf("NOT DRAWN: GUARD POSTS GP%d TO GP%d, SEE A-201", most+1, posts))
	return t
}
