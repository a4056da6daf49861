package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// detailMark names the view that shows a part of another one larger: number over sheet.
var detailMark = &render.Symbol{Name: "SC-DETAIL", Items: []render.Item{
	render.Stroke{Pen: render.Mark, Path: geom.Circle(pt(0, 0), 6)[0]},
	render.Stroke{Pen: render.Mark, Path: geom.Polyline(pt(-6, 0), pt(6, 0))},
	render.Text{Pen: render.Mark, At: pt(0, 2.9), Height: 2.5, Align: render.MiddleCentre, Lines: []string{"3"}, Attr: "VIEW_NO"},
	render.Text{Pen: render.Mark, At: pt(0, -2.7), Height: 2, Align: render.MiddleCentre, Lines: []string{"A-301"}, Attr: "SHEET_NO"},
}}

// larger is the next larger usual scale at which a stretch of a view opens up: at least twice as large; 0 where
// there is none.
func (w *writer) larger(k float64) float64 {
	best := 0.0
	for _, d := range unit.Scales(w.a.Spec.Project.System) {
		if d <= k/2 {
			best = d
		}
	}
	return best
}

// headWindow is the stretch of the section where the water layers lie on each other: the top of the block with the
// flashing over it, or with all of the block down to the foot of the patch behind it.
func (w *writer) headWindow(b int, whole bool) geom.Box {
	f := w.a.Frame
	path := w.a.FlashingPathAt(w.cutAtBlock(b))
	top := math.Max(path.V[0].Y, f.BlockTop+w.a.Spec.Water.WrapLap.MM())
	low := math.Min(f.BlockTopFront, f.LedgerTopFront) - 42
	if whole {
		low = math.Min(f.BlockBottom, f.LedgerBottom) - 24
		if box := w.a.PatchBox(b); !box.Empty() {
			low = math.Min(low, box.Min.Y-24)
		}
	}
	return geom.Box{
		Min: geom.Vec{X: f.SheathIn - 14, Y: low},
		Max: geom.Vec{X: math.Max(f.LedgerFront, f.CladOut) + 58, Y: top + 34},
	}
}

// headView is the section at a block about the flashing, larger, with its laps measured and named.
func (w *writer) headView(p view.Picture, b int, k float64) *composer {
	c := w.composer(k)
	c.ruled = true
	c.noteWidth = 42 // few words, and a row of three views
	c.add(p.Draw(k, w.a.Spec.Project.System), p.Window)
	c.breaks(p)
	f, s, win := w.a.Frame, w.a.Spec, p.Window
	c.split = f.LedgerTop + 12
	c.corners(win)
	path := w.a.FlashingPathAt(w.cutAtBlock(b))
	c.dims(left, alone(c.sys, tick{path.V[1].Y, win.Min.X}, tick{path.V[0].Y, win.Min.X}), "LEG OF F1 <>")
	if t := s.Water.WrapLap.MM(); t > 0 {
		c.dims(left, alone(c.sys, tick{f.BlockTop, win.Min.X}, tick{f.BlockTop + t, win.Min.X}), "M2 TURNED UP <>")
	}
	c.dims(right, alone(c.sys, tick{f.FlashAt(f.CavityOut), f.CladOut}, tick{f.BandTop, f.CladOut}), "CLEAR <>")
	if n := len(path.V); n > 3 {
		c.dims(right, alone(c.sys, tick{path.V[n-1].Y, path.V[n-1].X}, tick{path.V[2].Y, path.V[2].X}), "DRIP OF F1 <>")
	}
	if box := w.a.PatchBox(b); !box.Empty() && box.Min.Y > win.Min.Y {
		c.dims(left, alone(c.sys, tick{box.Min.Y, win.Min.X}, tick{f.BlockBottom, win.Min.X}), "M1 BELOW THE BLOCK <>")
	}
	if win.Min.Y < f.BlockBottom {
		w.boltLines(c, win.Min.X)
	}
	low := win.Min.Y
	c.dims(bottom, []tick{{f.SheathIn, low}, {0, low}, {f.BlockOut, low}, {f.LedgerBack, low}, {f.LedgerFront, low}})
	w.headNotes(c, p, b)
	c.finish()
	return c
}

// headNotes name the layers in the order water meets them, from outside in.
func (w *writer) headNotes(c *composer, p view.Picture, b int) {
	s, f := w.a.Spec, w.a.Frame
	w.sayOf(c, right, p, detail.Cladding, 0.5, 0.4, w.overDeck)
	if at, part, ok := spot(p, detail.Flashing, 0, 0.5, nil); ok {
		words := map[string]string{"cladding": "UNDER THE CLADDING", "wrb": "LEG UNDER THE BARRIER"}[s.Water.Flashing.Lap]
		if words == "" {
			words = "OUTSIDE THE CLADDING: REVERSED LAP"
		}
		c.callOn(right, c.spots(p, at, detail.Flashing, nil), render.Arrow, caps(part.Mark+" LEDGER FLASHING, "+words+", ON A FALL TO THE DRIP"))
	}
	w.say(c, right, p, detail.Ledger, 0.5, 0.5)
	w.say(c, right, p, detail.Decking, 0.6, 0.5)
	w.filmNote(c, p, detail.Wrap, func(v geom.Vec) bool { return v.X > f.BlockOut*0.75 }, "M2 CAP ON THE BLOCK, FALLS OUTWARD")
	w.say(c, left, p, detail.Sheathing, 0.5, 0.9)
	w.insulationNote(c, p, "CUT CLOSE ROUND THE BLOCK")
	if b < 0 || w.a.PatchBox(b).Empty() {
		return
	}
	w.filmNoteOn(c, left, p, detail.Patch, func(v geom.Vec) bool { return v.Y < f.BlockTop-4 }, "M1 MEMBRANE PATCH, BEHIND THE BLOCK")
	w.filmNoteOn(c, left, p, detail.Barrier, func(v geom.Vec) bool { return v.Y > f.BlockTop+6 }, w.layerName("wrb")+either(s.Water.Patch.Under, ", OVER M1 AND M2", ", UNDER M1: REVERSED LAP"))
	if at, _, ok := spot(p, detail.BlockPly, 0.5, 0.5, nil); ok {
		c.callOn(left, c.spots(p, at, detail.BlockPly, nil), render.Dot, fmt.Sprintf("%s BLOCK, TOP FALLS %s OUTWARD", w.a.Blocks[b].Mark, s.Blocks.TopSlope.Text(s.Project.System)))
	}
}

// around draws the dashed outline of the stretch that another view shows larger, with the mark of that view where
// there is room beside it.
func (c *composer) around(win geom.Box, view, sheet string) {
	path := geom.Rect(win.Min.X, win.Min.Y, win.Max.X, win.Max.Y)[0].Fillet(c.mm(4))
	c.put(render.Stroke{Pen: render.Hidden, Path: path})
	in := c.inkOf(10)
	r := c.mm(6)
	best, most := geom.Vec{}, math.MaxInt
	for _, at := range []geom.Vec{{X: win.Max.X + r, Y: win.Max.Y - r}, {X: win.Max.X - 2*r, Y: win.Max.Y + r}, {X: win.Max.X + r, Y: win.Min.Y + r}, {X: win.Max.X - 2*r, Y: win.Min.Y - r}, {X: win.Min.X - r, Y: win.Max.Y - r}, {X: win.Min.X - r, Y: win.Min.Y + r}} {
		if n := in.in(geom.BoxOf(at).Grow(r + c.mm(1))); n < most {
			best, most = at, n
		}
	}
	c.put(render.Insert{Pen: render.Mark, Symbol: detailMark, At: best, Scale: c.k, Fields: []render.Field{{Name: "VIEW_NO", Value: view}, {Name: "SHEET_NO", Value: sheet}}})
	c.grow(best.Sub(geom.Vec{X: r, Y: r}), best.Add(geom.Vec{X: r, Y: r}))
}
