package sheet

import (
	"fmt"
	"math"

	"standclear/geom"
	"standclear/render"
)

// freeBody draws one block with the forces on it: load on the hangers, pull in the upper bolts,
// bearing at the foot, shear at the rim.
func (w *writer) freeBody(width float64) *composer {
	c, _ := w.choose(0, 4, 10, geom.Vec{X: width, Y: 170}, func(k float64) *composer {
		return w.composed(fmt.Sprint("free body", k), func() *composer {
			c := w.composer(k)
			c.noteWidth = 34
			w.freeBodyLines(c)
			c.finish()
			c.title("1", "FREE BODY OF ONE BLOCK", w.scale(k).Text)
			return c
		})
	})
	return c
}

func (w *writer) freeBodyLines(c *composer) {
	f := w.a.Frame
	sys := w.a.Spec.Project.System
	outline := geom.Polygon(geom.Vec{X: 0, Y: f.BlockBottom}, geom.Vec{X: f.BlockOut, Y: f.BlockBottom}, geom.Vec{X: f.BlockOut, Y: f.BlockTopFront}, geom.Vec{X: 0, Y: f.BlockTop})
	ledger := geom.Polygon(geom.Vec{X: f.LedgerBack, Y: f.LedgerBottom}, geom.Vec{X: f.LedgerFront, Y: f.LedgerBottom}, geom.Vec{X: f.LedgerFront, Y: f.LedgerTopFront}, geom.Vec{X: f.LedgerBack, Y: f.LedgerTop})
	rim := geom.Rect(f.RimIn, f.RimBottom, f.RimOut, f.RimTop)[0]
	c.put(render.Stroke{Pen: render.CutMain, Path: outline}, render.Stroke{Pen: render.Visible, Path: ledger}, render.Stroke{Pen: render.Existing, Path: rim})
	for _, r := range w.a.Rows {
		g := w.a.Grip(r.Set)
		c.put(render.Stroke{Pen: render.Centre, Path: geom.Polyline(geom.Vec{X: g.Inner - 20, Y: r.Z}, geom.Vec{X: g.Outer + 20, Y: r.Z})})
	}
	c.object = geom.Box{Min: geom.Vec{X: f.BackingIn - c.mm(26), Y: math.Min(f.BlockBottom, f.RimBottom) - c.mm(18)}, Max: geom.Vec{X: f.LoadLine + c.mm(16), Y: f.LedgerTop + c.mm(16)}}
	value := func(id string) string {
		if st := w.report.Find(id); st != nil {
			return st.Value.Text(sys)
		}
		return "NOT CHECKED"
	}
	load := geom.Vec{X: f.LoadLine, Y: f.LedgerTop - 40}
	c.force(load, load.Add(geom.Vec{Y: c.mm(16)}))
	c.call(right, load.Add(geom.Vec{Y: c.mm(11)}), render.NoEnd, "V "+value("block_reaction_max")+" AT THE HANGER SEATS")
	held := geom.Vec{X: f.RimOut, Y: f.RimBottom} // the body is cut at the rim's face: shear along the bolts
	c.force(held, held.Sub(geom.Vec{Y: c.mm(16)}))
	c.call(left, held.Sub(geom.Vec{Y: c.mm(10)}), render.NoEnd, "V "+value("block_reaction_max")+" AT THE RIM'S FACE, BY THE BOLTS")
	if len(w.a.Rows) > 0 {
		w.couple(c, value("top_row_tension"))
	}
	c.dims(bottom, []tick{{f.RimOut, f.RimBottom - c.mm(17)}, {f.LoadLine, f.BlockBottom}}, "e <>")
}

// couple draws pull and push at the lever arm the checks use.
func (w *writer) couple(c *composer, pull string) {
	f := w.a.Frame
	t := geom.Vec{X: f.RimIn, Y: w.a.Rows[0].Z}
	c.force(t.Sub(geom.Vec{X: c.mm(16)}), t)
	c.call(left, t.Sub(geom.Vec{X: c.mm(10)}), render.NoEnd, "T "+pull+" IN THE UPPER BOLTS")
	z := w.results.LeverArm.MM()
	if z <= 0 {
		return
	}
	foot := geom.Vec{X: 0, Y: t.Y - z}
	c.force(foot, foot.Sub(geom.Vec{X: c.mm(16)}))
	c.call(left, foot.Sub(geom.Vec{X: c.mm(10)}), render.NoEnd, "C "+pull+" BEARING AT THE FOOT")
	c.dims(right, []tick{{foot.Y, f.LoadLine + c.mm(4)}, {t.Y, f.LoadLine + c.mm(4)}}, "z <>")
}

// force draws an arrow of force from tail to tip.
func (c *composer) force(tip, tail geom.Vec) {
	u := tip.Sub(tail).Unit()
	neck := tip.Sub(u.Mul(c.mm(4)))
	side := u.Perp().Mul(c.mm(1))
	c.put(render.Stroke{Pen: render.Load, Path: geom.Polyline(tail, neck)}, render.Fill{Pen: render.Load, Region: geom.Region{geom.Polygon(tip, neck.Add(side), neck.Sub(side))}})
}
