package sheet

import (
	"standclear/geom"
	"standclear/render"
)

// freeBody draws one block with the forces on it: load on the hangers, pull in the upper bolts,
// bearing at the foot, shear at the rim.
func (w *writer) freeBody(width float64) *composer {
	c, _ := w.choose(0, 4, 10, geom.Vec{X: width, Y: 170}, func(k float64) *composer {
		c := w.composer(k)
		c.noteWidth = 34
		w.freeBodyLines(c)
		c.finish()
		c.title("1", "FREE BODY OF ONE BLOCK", w.scale(k).Text)
		return c
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
	c.object = geom.Box{Min: geom.Vec{X: f.BackingIn - c.mm(26), Y: f.BlockBottom - c.mm(6)}, Max: geom.Vec{X: f.LoadLine + c.mm(16), Y: f.LedgerTop + c.mm(16)}}
	value := func(id string) string {
		if st := w.report.Find(id); st != nil {
			return st.Value.Text(sys)
		}
		return "NOT CHECKED"
	}
	load := geom.Vec{X: f.LoadLine, Y: f.LedgerTop - 40}
	c.force(load, load.Add(geom.Vec{Y: c.mm(16)}))
	c.call(right, load.Add(geom.Vec{Y: c.mm(11)}), render.NoEnd, "V "+value("block_reaction_max")+" AT THE HANGER SEATS")
	if len(w.a.Rows) > 0 {
		t := geom.Vec{X: f.RimIn, Y: w.a.Rows[0].Z}
		c.force(t.Sub(geom.Vec{X: c.mm(16)}), t)
		c.call(left, t.Sub(geom.Vec{X: c.mm(10)}), render.NoEnd, "T "+value("top_row_tension")+" IN THE UPPER BOLTS")
	}
	foot := geom.Vec{X: 0, Y: f.BlockBottom + (f.BlockTop-f.BlockBottom)/12}
	c.force(foot, foot.Sub(geom.Vec{X: c.mm(16)}))
	c.call(left, foot.Sub(geom.Vec{X: c.mm(10)}), render.NoEnd, "C "+value("top_row_tension")+" BEARING AT THE FOOT")
	c.dims(bottom, []tick{{f.RimOut, f.RimBottom}, {f.LoadLine, f.BlockBottom}}, "e <>")
	c.dims(right, []tick{{f.BlockBottom, f.LedgerFront}, {f.LedgerTop, f.LedgerFront}})
}

// force draws an arrow of force from tail to tip.
func (c *composer) force(tip, tail geom.Vec) {
	u := tip.Sub(tail).Unit()
	neck := tip.Sub(u.Mul(c.mm(4)))
	side := u.Perp().Mul(c.mm(1))
	c.put(render.Stroke{Pen: render.Load, Path: geom.Polyline(tail, neck)}, render.Fill{Pen: render.Load, Region: geom.Region{geom.Polygon(tip, neck.Add(side), neck.Sub(side))}})
}
