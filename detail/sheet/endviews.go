package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// endWindow is the height of wall that the views of an end show.
func (w *writer) endWindow() span {
	f := w.a.Frame
	return span{math.Min(f.BandBottom, f.LedgerBottom) - 90, math.Max(f.BandTop, f.DeckTop) + 150}
}

// firstBlock is the block at the left end, false when there is none.
func (w *writer) firstBlock() (detail.Block, bool) {
	if len(w.a.Blocks) == 0 {
		return detail.Block{}, false
	}
	return w.a.Blocks[0], true
}

// endElevation is the left end of the ledger from outside: end dam, cladding stop, first block.
func (w *writer) endElevation(k float64) *composer {
	f, c := w.a.Frame, w.composer(k)
	b, some := w.firstBlock()
	reach := 320.0
	if some {
		reach = math.Min(b.Box.Max.X+50, 560)
	}
	h := w.endWindow()
	win := geom.Box{Min: geom.Vec{X: -150, Y: h.lo}, Max: geom.Vec{X: reach, Y: h.hi}}
	show := map[detail.Role]bool{detail.Cladding: true, detail.Flashing: true, detail.Ledger: true, detail.BlockPly: true, detail.Bolt: true, detail.Washer: true}
	p := w.once("ledger end from outside", func() view.Picture {
		return view.Look(w.a, view.FromOutside(0), view.Options{Window: win, Behind: map[detail.Role]bool{detail.BlockPly: true}, Only: func(p *detail.Part) bool { return show[p.Role] }})
	})
	c.ruled, c.split = true, f.LedgerTop
	c.add(p.Draw(k, w.a.Spec.Project.System), win)
	for s := left; s <= top; s++ {
		lo, hi := win.Min.Y, win.Max.Y
		if s == top {
			lo, hi = win.Min.X, win.Max.X
		}
		c.breakLine(s, win, span{lo, hi})
	}
	clear := w.a.Spec.Wall.Cladding.AboveFlash.MM()
	path := w.a.FlashingPath()
	stops := !w.a.Spec.Wall.Cladding.BehindLedger
	foot := win.Min.Y
	if stops {
		c.dims(bottom, []tick{{-clear, f.BandBottom}, {0, f.LedgerBottom}}, "CLEAR <>")
		c.dims(left, []tick{{f.BandBottom, -clear}, {f.LedgerBottom, 0}, {path.V[1].Y, 0}, {f.BandTop, -clear}}, "", "-", "")
	}
	if some && b.Box.Max.X < win.Max.X+1 {
		c.centres(b.Bolts, c.mm(6))
		c.dims(bottom, []tick{{0, f.LedgerBottom}, {b.Box.Min.X, f.BlockBottom}, {b.Box.Max.X, f.BlockBottom}})
		c.dims(bottom, []tick{{0, foot}, {b.X, foot}}, "CENTRE OF "+b.Mark+" <>")
	}
	if up := w.a.Spec.Water.Flashing.EndDam.MM(); up > 0 {
		c.dims(left, alone(c.sys, tick{path.V[1].Y, 0}, tick{path.V[1].Y + up, 0}), "DAM <>")
	}
	c.dims(right, []tick{{f.LedgerBottom, win.Max.X}, {f.LedgerTop, win.Max.X}})
	w.endNotes(c, win, clear)
	c.finish()
	return c
}

// endNotes name what the end shows from outside.
func (w *writer) endNotes(c *composer, win geom.Box, clear float64) {
	f, s := w.a.Frame, w.a.Spec
	path := w.a.FlashingPath()
	if up := s.Water.Flashing.EndDam.MM(); up > 0 {
		c.call(left, geom.Vec{X: 0, Y: path.V[1].Y + up*0.7}, render.Arrow, caps("END DAM OF F1 "+w.text(up)+" HIGH: THE TOP FOLDED UP, CORNERS SEALED; THE SAME AT THE RIGHT END"))
	} else {
		c.call(left, geom.Vec{X: 0, Y: path.V[1].Y}, render.Arrow, "NO END DAM (WATER.FLASHING.END_DAM): WATER RUNS OFF THE END INTO THE WALL")
	}
	if !s.Wall.Cladding.BehindLedger {
		c.call(left, geom.Vec{X: -clear, Y: (f.LedgerTop + f.LedgerBottom) / 2}, render.Arrow, caps("CLADDING "+w.marksOf("cladding")+" ENDS ON A STOP, CLEAR OF LEDGER AND F1 AS DIMENSIONED; CAVITY BEHIND IT OPEN TO THE GAP"))
	}
	c.call(left, geom.Vec{X: win.Min.X + 50, Y: win.Min.Y + 40}, render.Dot, caps(w.marksOf("cladding")+" CLADDING"))
	c.call(right, geom.Vec{X: win.Max.X - 30, Y: path.V[2].Y - 6}, render.Arrow, "F1 LEDGER FLASHING")
	c.call(right, geom.Vec{X: win.Max.X - 25, Y: f.LedgerBottom + 0.3*(f.LedgerTop-f.LedgerBottom)}, render.Dot, "L1 LEDGER, END CUT TREATED; DECK AND JOISTS LEFT OUT")
	if b, ok := w.firstBlock(); ok {
		n := len(w.a.Blocks) - 1
		up := either(w.sparse, 0.85, 0.15) // of the block, off what stands below it
		c.call(right, geom.Vec{X: math.Min(b.Box.Max.X, win.Max.X-5), Y: b.Box.Min.Z + up*(b.Box.Max.Z-b.Box.Min.Z)}, render.Arrow, fmt.Sprintf("%s BEHIND (DASHED). RIGHT END MIRRORED: %s CENTRE %s FROM IT", b.Mark, w.a.Blocks[n].Mark, w.text(s.Ledger.Length.MM()-w.a.Blocks[n].X)))
	}
}

// endSide is the left end of the ledger seen from its side, the wall cut just beside it.
func (w *writer) endSide(k float64) *composer {
	f, s, c := w.a.Frame, w.a.Spec, w.composer(k)
	h := w.endWindow()
	win := geom.Box{Min: geom.Vec{X: f.RimIn - 70, Y: h.lo}, Max: geom.Vec{X: math.Max(f.LedgerFront, f.CladOut) + 150, Y: h.hi}}
	at := -math.Max(2, s.Wall.Cladding.AboveFlash.MM()/2)
	p := w.once("ledger end from its side", func() view.Picture {
		return view.Cut(w.a, view.AcrossWall(at), view.Options{Window: win, Depth: 250, Leave: map[detail.Role]bool{
			detail.Obstacle: true, detail.Outside: true, detail.PlyScrew: true, detail.TensionRod: true, detail.Finish: true, detail.TieStrap: true, detail.Backing: true, detail.Hanger: true, detail.DeckJoist: true,
			detail.Threshold: true, detail.HouseJoist: true, detail.Screen: true,
		}})
	})
	c.ruled, c.split = true, f.LedgerTop
	c.add(p.Draw(k, s.Project.System), p.Window)
	c.breaks(p)
	c.corners(p.Window)
	foot := p.Window.Min.Y
	c.dims(bottom, []tick{{0, foot}, {f.InsulOut, foot}, {f.LedgerBack, f.LedgerBottom}, {f.LedgerFront, f.LedgerBottom}}, "INSULATION <>", "GAP <>", "")
	if up := s.Water.Flashing.EndDam.MM(); up > 0 {
		c.call(right, geom.Vec{X: f.LedgerFront - 8, Y: f.FlashAt(f.LedgerFront) + up*0.6}, render.Dot, "END DAM OF F1")
	}
	c.dims(right, []tick{{f.LedgerBottom, f.LedgerFront}, {f.LedgerTopFront, f.LedgerFront}, {f.DeckTop, p.Window.Max.X}})
	w.say(c, left, p, detail.Rim, 0.5, 0.3)
	w.say(c, left, p, detail.Sheathing, 0.5, 0.85)
	w.filmNote(c, p, detail.Barrier, w.atLedger(c, 0.7), w.layerName("wrb")+" RUNS ON")
	w.sayOf(c, right, p, detail.Cladding, 0.5, 0.5, w.overDeck)
	w.insulationNote(c, p, "RUNS ON PAST THE LEDGER")
	c.call(right, geom.Vec{X: (f.LedgerBack + f.LedgerFront) / 2, Y: f.LedgerBottom + 0.35*(f.LedgerTop-f.LedgerBottom)}, render.Dot, "L1 END OF LEDGER")
	c.call(right, geom.Vec{X: p.Window.Max.X - 40, Y: (f.LedgerTop + f.DeckTop) / 2}, render.Dot, "DK2 DECKING, BY OTHERS")
	if f.Gap() > 0 {
		words := fmt.Sprintf("OPEN END OF THE GAP %s, BLOCK BEYOND", w.text(f.Gap()))
		if s.Water.Screen {
			words += "; MESH OVER IT AS SC1, NOT IN THE SCHEDULE"
		}
		c.call(right, geom.Vec{X: (f.InsulOut + f.LedgerBack) / 2, Y: f.LedgerBottom + 0.15*(f.LedgerTop-f.LedgerBottom)}, render.Dot, words)
	}
	c.finish()
	return c
}

// faceAt draws a stretch of the ledger from outside with blocks dashed behind it, about x.
func (w *writer) faceAt(name string, x, half, k float64) (*composer, geom.Box) {
	f, c := w.a.Frame, w.composer(k)
	win := geom.Box{
		Min: geom.Vec{X: x - half, Y: math.Min(f.LedgerBottom, f.BlockBottom) - 40},
		Max: geom.Vec{X: x + half, Y: math.Max(f.LedgerTop, f.BlockTop) + 40},
	}
	show := map[detail.Role]bool{detail.Ledger: true, detail.BlockPly: true, detail.Bolt: true, detail.Washer: true}
	p := w.once(name, func() view.Picture {
		return view.Look(w.a, view.FromOutside(0), view.Options{Window: win, Behind: map[detail.Role]bool{detail.BlockPly: true}, Only: func(p *detail.Part) bool { return show[p.Role] }})
	})
	c.add(p.Draw(k, w.a.Spec.Project.System), win)
	ends := w.a.Spec.Ledger.Length.MM()
	if win.Min.X > 0 {
		c.breakLine(left, win, span{f.LedgerBottom, f.LedgerTop})
	}
	if win.Max.X < ends {
		c.breakLine(right, win, span{f.LedgerBottom, f.LedgerTop})
	}
	return c, win
}

// nearestBlock is the block whose centre is nearest to x, false when there is none.
func (w *writer) nearestBlock(x float64) (detail.Block, bool) {
	best, ok := detail.Block{}, false
	for _, b := range w.a.Blocks {
		if !ok || math.Abs(b.X-x) < math.Abs(best.X-x) {
			best, ok = b, true
		}
	}
	return best, ok
}

// spliceView is joint n of the ledger with the block it stands on.
func (w *writer) spliceView(n int, x, k float64) *composer {
	f := w.a.Frame
	b, ok := w.nearestBlock(x)
	half := w.a.Spec.Blocks.Width.MM()/2 + 140
	c, win := w.faceAt(fmt.Sprint("splice ", n), x, half, k)
	ticks := []tick{{x, f.LedgerBottom}}
	words := "NOT OVER A BLOCK"
	if ok && x > b.Box.Min.X && x < b.Box.Max.X {
		c.centres(b.Bolts, c.mm(6))
		words = "ON BLOCK " + b.Mark
		for _, h := range b.Bolts {
			ticks = append(ticks, tick{h.X, win.Min.Y})
		}
		c.dims(bottom, ticks)
		c.dims(bottom, []tick{{b.Box.Min.X, f.BlockBottom}, {x, f.LedgerBottom}, {b.Box.Max.X, f.BlockBottom}})
	} else {
		c.dims(right, []tick{{f.LedgerBottom, win.Max.X}, {f.LedgerTop, win.Max.X}})
	}
	if st := w.report.Find(fmt.Sprintf("splice_%d", n+1)); st != nil {
		words += fmt.Sprintf(": FASTENERS ON EACH SIDE %s, LIMIT %s, %s", st.Value.Text(w.a.Spec.Project.System), st.LimitText(w.a.Spec.Project.System), st.Verdict)
	} else {
		words += ": NOT CHECKED"
	}
	c.call(right, geom.Vec{X: x, Y: f.LedgerTop - 0.5*(f.LedgerTop-f.LedgerTopFront)}, render.Arrow, fmt.Sprintf("BUTT JOINT OF L%d AND L%d AT %s, %s; TREAT BOTH CUTS, F1 RUNS ON OVER IT", n+1, n+2, w.text(x), words))
	c.finish()
	return c
}

// postView is the place of guard post n on the ledger: its axis between blocks, nothing of the post itself.
func (w *writer) postView(n int, x, k float64) *composer {
	f := w.a.Frame
	half := math.Max(w.a.Spec.Blocks.Width.MM(), 300)
	if b, ok := w.nearestBlock(x); ok {
		half = math.Max(half, math.Abs(b.X-x)+w.a.Spec.Blocks.Width.MM()/2+60)
	}
	c, win := w.faceAt(fmt.Sprint("guard post ", n), x, math.Min(half, 700), k)
	c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: x, Y: win.Min.Y}, geom.Vec{X: x, Y: win.Max.Y + c.mm(8)})})
	if b, ok := w.nearestBlock(x); ok && math.Abs(b.X-x) > 1 {
		c.dims(bottom, []tick{{x, win.Min.Y}, {b.X, f.BlockBottom}}, "TO "+b.Mark+" <>")
	} else {
		c.dims(right, []tick{{f.LedgerBottom, win.Max.X}, {f.LedgerTop, win.Max.X}})
	}
	verdict := "NOT CHECKED"
	if st := w.report.Find("scope_guard"); st != nil {
		verdict = st.Verdict.String()
	}
	c.call(right, geom.Vec{X: x, Y: f.LedgerBottom + 0.7*(f.LedgerTop-f.LedgerBottom)}, render.Arrow, fmt.Sprintf("GP%d AXIS OF GUARD POST AT %s: POST AND FIXING BY ITS DESIGNER, NOT DRAWN; IT TWISTS THE LEDGER: %s", n+1, w.text(x), verdict))
	c.finish()
	return c
}
