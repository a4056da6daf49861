package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// places are where the assembly has an edge, an axis or a hole, along x, y and z, ascending.
type places [3][]float64

func placesOf(a *detail.Assembly) *places {
	var p places
	add := func(v geom.Vec3) {
		for k, x := range [3]float64{v.X, v.Y, v.Z} {
			p[k] = append(p[k], x)
		}
	}
	add(geom.Vec3{})
	for _, part := range a.Parts {
		for _, s := range slices.Concat(part.Solids, part.Bores) {
			b := s.Bounds()
			add(b.Min)
			add(b.Max)
			add(geom.Vec3{X: (b.Min.X + b.Max.X) / 2, Y: (b.Min.Y + b.Max.Y) / 2, Z: (b.Min.Z + b.Max.Z) / 2})
			for _, ring := range s.Profile {
				for _, v := range ring.V {
					at := s.O.Add(s.U.Mul(v.X)).Add(s.V.Mul(v.Y))
					add(at)
					add(at.Add(s.W.Mul(s.Length)))
				}
			}
		}
		for _, b := range part.Bends {
			for _, v := range b.Path.V {
				add(b.At(v.Vec))
			}
		}
	}
	p[0] = append(p[0], slices.Concat(a.HouseJoists, a.DeckJoists)...)
	for _, b := range a.Blocks {
		p[0] = append(p[0], b.X)
	}
	for _, x := range a.Spec.Deck.GuardPosts {
		p[0] = append(p[0], x.MM())
	}
	p[2] = append(p[2], a.Frame.BandBottom, a.Frame.BandTop, a.Frame.FlashAt(a.Frame.CavityOut)) // where the cladding ends, and the flashing below it
	for k := range p {
		slices.Sort(p[k])
		p[k] = slices.Compact(p[k])
	}
	return &p
}

// near reports whether there is a place within reach of x.
func (p *places) near(axis int, x, reach float64) bool {
	i, _ := slices.BinarySearch(p[axis], x-reach)
	return i < len(p[axis]) && p[axis][i] <= x+reach
}

// stand is how the coordinates of a view lie in space: axis, sign and where the view has its origin.
type stand struct {
	axis   [2]int
	sign   [2]float64
	origin geom.Vec3
}

// standOf reads from a view's stated origin how it lies in space, false where it is no plain view of the whole.
func standOf(a *detail.Assembly, v *render.View) (stand, bool) {
	front, side, plan := stand{[2]int{0, 2}, [2]float64{1, 1}, geom.Vec3{}}, stand{[2]int{1, 2}, [2]float64{1, 1}, geom.Vec3{}}, stand{[2]int{0, 1}, [2]float64{1, -1}, geom.Vec3{}}
	switch v.Origin {
	case "left end of ledger x finished floor":
		return front, true
	case "outer face of sheathing x finished floor":
		return side, true
	case "left end of ledger x outer face of sheathing, outside down":
		return plan, true
	case "lower left corner of the block, outside face":
		if len(a.Blocks) == 0 {
			return stand{}, false
		}
		s := map[string]stand{"FRONT": front, "OUTSIDE FACE": front, "LEFT SIDE": side, "TOP": plan}[v.Title]
		s.origin = a.Blocks[0].Box.Min
		return s, s.sign[0] != 0
	}
	return stand{}, false
}

// wrongDims: what the sheets measure stands where the assembly has it, to the printed step: what stands by itself is
// rounded to half a step twice.
func wrongDims(a *detail.Assembly, sheets []*render.Sheet, count *tally) (wrong []string) {
	at := placesOf(a)
	step := 25.4 / 16
	if a.Spec.Project.System == unit.SI {
		step = 0.5
	}
	for _, s := range sheets {
		for i := range s.Views {
			v := &s.Views[i]
			st, ok := standOf(a, v)
			if !ok || v.Title == "CLADDING OFF, MARK" || v.Title == "FREE BODY OF ONE BLOCK" { // they measure no part
				continue
			}
			for _, it := range v.Items {
				d, ok := it.(render.Dim)
				if !ok {
					continue
				}
				along, ok := 0, true
				switch {
				case d.Kind == render.Linear && d.Angle == 0, d.Kind == render.OrdinateX:
				case d.Kind == render.Linear && d.Angle == 90, d.Kind == render.OrdinateY:
					along = 1
				default:
					ok = false
				}
				if !ok {
					continue
				}
				k := st.axis[along]
				o := [3]float64{st.origin.X, st.origin.Y, st.origin.Z}[k]
				for _, q := range []geom.Vec{d.P, d.Q} {
					c := [2]float64{q.X, q.Y}[along]
					if !at.near(k, o+st.sign[along]*c, step+0.01) {
						wrong = append(wrong, fmt.Sprintf("%s view %s: %s is measured at %s = %.2f mm, where the assembly has nothing", s.ID, v.ID, d.Label(s.Number), "xyz"[k:k+1], o+st.sign[along]*c))
					}
				}
				count.add("dimensions held against the assembly", 1)
			}
		}
	}
	return append(wrong, wrongRows(a, sheets, step)...)
}

// wrongRows: the elevation has a running dimension for every block and none else, and the whole ledger; the shop
// drawing of the ledger one for every column of holes and every joist.
func wrongRows(a *detail.Assembly, sheets []*render.Sheet, step float64) (wrong []string) {
	var ledger, columns []float64
	long := a.Spec.Ledger.Length.MM()
	blocks := []float64{long}
	for _, b := range a.Blocks {
		blocks = append(blocks, b.X)
	}
	for _, p := range a.Find(detail.Ledger) {
		b := p.Bounds()
		ledger = append(ledger, b.Max.X-b.Min.X)
		for _, h := range a.LedgerHoles(p) {
			ledger, columns = append(ledger, h.X), append(columns, h.X)
		}
		for _, j := range a.DeckJoists {
			if j > b.Min.X && j < b.Max.X {
				ledger, columns = append(ledger, j-b.Min.X), append(columns, j-b.Min.X)
			}
		}
	}
	var strips []float64
	seen := false
	for _, s := range sheets {
		for i, v := range s.Views {
			var run []float64
			for _, it := range v.Items {
				if d, ok := it.(render.Dim); ok && d.Kind == render.OrdinateX {
					run = append(run, d.Value())
				} else if ok && strings.HasPrefix(d.Text, "LEDGER <>") && math.Abs(d.Value()-long) > step/2+0.01 {
					wrong = append(wrong, fmt.Sprintf("%s: the ledger is %s, not %.1f mm", s.ID, d.Label(s.Number), long))
				}
			}
			switch {
			case s.ID == "A-201" && i == 0:
				wrong = append(wrong, unlike(s.ID, run, blocks, blocks, step)...)
			case v.Title == "LEDGER FROM OUTSIDE":
				strips, seen = append(strips, run...), true
			}
		}
	}
	if seen {
		wrong = append(wrong, unlike("S-503", strips, columns, ledger, step)...)
	}
	return wrong
}

// unlike compares running dimensions with those that must be there and those that may.
func unlike(on string, got, must, may []float64, step float64) (wrong []string) {
	in := func(all []float64, x float64) bool {
		return slices.ContainsFunc(all, func(y float64) bool { return math.Abs(x-y) <= step/2+0.01 })
	}
	for _, x := range must {
		if !in(got, x) {
			wrong = append(wrong, fmt.Sprintf("%s: no running dimension to %.1f mm", on, x))
		}
	}
	for _, x := range got {
		if !in(may, x) {
			wrong = append(wrong, fmt.Sprintf("%s: a running dimension to %.1f mm, where nothing is", on, x))
		}
	}
	return wrong
}
