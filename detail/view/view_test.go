package view_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
	"standclear/detail/unit"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

func window() geom.Box {
	return geom.Box{Min: geom.Vec{X: -400, Y: -600}, Max: geom.Vec{X: 400, Y: 300}}
}

// The section at the bolts cuts the ledger to its profile less the two bolts that lie in the plane.
func TestSectionCutsTheLedger(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	b := a.Blocks[2]
	p := view.Cut(a, view.AcrossWall(b.Bolts[0].X), view.Options{Window: window()})
	f, s := a.Frame, a.Spec
	profile := s.Ledger.Thickness.MM() * ((f.LedgerTop - f.LedgerBottom) + (f.LedgerTopFront - f.LedgerBottom)) / 2
	bolts := float64(len(a.Rows)) * s.Fasteners.Through.Diameter.MM() * s.Ledger.Thickness.MM()
	for _, c := range p.Pieces {
		if c.Part.Role == detail.Ledger {
			if math.Abs(c.Whole.Area()-profile) > 1e-3 {
				t.Errorf("ledger cut to %.3f mm2, its profile has %.3f", c.Whole.Area(), profile)
			}
			if math.Abs(c.Region.Area()-(profile-bolts)) > 1e-3 {
				t.Errorf("ledger drawn with %.3f mm2, want %.3f less the bolts", c.Region.Area(), profile-bolts)
			}
			return
		}
	}
	t.Error("the ledger is not cut")
}

// Whatever the plane, cut pieces never cover the same ground, and every part of wood, board or
// insulation that the plane meets inside the window is a piece.
func TestPiecesShareNothing(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	for _, x := range []float64{a.Blocks[0].X, a.Blocks[1].X + 200, a.Blocks[4].Bolts[1].X, 2222} {
		v := view.AcrossWall(x)
		p := view.Cut(a, v, view.Options{Window: window()})
		for i := range p.Pieces {
			for j := range i {
				if area := geom.Intersect(p.Pieces[i].Region, p.Pieces[j].Region).Area(); area > 0.5 {
					t.Errorf("x %.0f: %s and %s share %.2f mm2", x, p.Pieces[i].Part.ID, p.Pieces[j].Part.ID, area)
				}
			}
		}
		there := map[*detail.Part]bool{}
		for _, c := range p.Pieces {
			there[c.Part] = true
		}
		for _, part := range a.Parts {
			if part.Thin || part.Role == detail.Bolt || part.Role == detail.Nut || part.Role == detail.Washer || part.Role == detail.TensionRod || part.Role == detail.PlyScrew {
				continue
			}
			var r geom.Region
			for _, s := range part.Solids {
				r = append(r, s.Cut(v).Clip(window())...)
			}
			if r.Area() > 1 && !there[part] {
				t.Errorf("x %.0f: %s is cut and not drawn", x, part.ID)
			}
		}
	}
}

// Nothing is drawn twice: no straight line lies along another on the same pen.
func TestNoLineTwice(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	p := view.Cut(a, view.AcrossWall(a.Blocks[2].Bolts[0].X), view.Options{Window: window(), Depth: 700})
	byPen := map[render.Pen][]geom.Path{}
	for _, it := range p.Draw(4, unit.IP) {
		if s, ok := it.(render.Stroke); ok && len(s.Path.V) == 2 && s.Path.V[0].Bulge == 0 && s.Pen != render.Pattern && s.Pen != render.Insulation {
			byPen[s.Pen] = append(byPen[s.Pen], s.Path)
		}
	}
	for pen, ps := range byPen {
		sum, merged := 0.0, 0.0
		for _, q := range ps {
			sum += q.Length()
		}
		for _, q := range geom.Merge(ps) {
			merged += q.Length()
		}
		if sum-merged > 0.01 {
			t.Errorf("%s: %.2f mm of line lie over each other", pen.Def().Layer, sum-merged)
		}
	}
}

func TestJoin(t *testing.T) {
	v := func(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }
	got := view.Join([]geom.Path{geom.Polyline(v(0, 0), v(1, 0)), geom.Polyline(v(1, 0), v(1, 1)), geom.Polyline(v(5, 5), v(6, 5)), geom.Polyline(v(0, 3), v(0, 0))})
	if len(got) != 2 || len(got[0].V) != 4 || !got[0].V[0].Near(v(0, 3)) {
		t.Errorf("joined to %v", got)
	}
}
