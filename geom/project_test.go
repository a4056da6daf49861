package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// drawn returns the total length of the visible and of the hidden edges.
func drawn(es []Edge) (visible, hidden float64) {
	for _, e := range es {
		if e.Hidden {
			hidden += e.Path.Length()
		} else {
			visible += e.Path.Length()
		}
	}
	return visible, hidden
}

func box3(x0, y0, z0, x1, y1, z1 float64) Solid {
	return BoxSolid(Box3{Vec3{x0, y0, z0}, Vec3{x1, y1, z1}})
}

func TestProjectByHand(t *testing.T) {
	const pi = math.Pi
	front := AxisView(Y, 1, 0)
	iso := Isometric(Vec3{}, 1, 1)
	k := math.Sqrt(2.0 / 3) // how an isometric view shortens the axes
	board := box3(0, 0, 0, 100, 10, 40)
	bored := board.Bore(Cylinder(Vec3{50, -5, 20}, Y, 8, 50))
	for _, tt := range []struct {
		name            string
		v               View
		solids          []Solid
		o               ProjectOptions
		visible, hidden float64
	}{
		{"nothing", front, nil, ProjectOptions{}, 0, 0},
		{"empty solids", front, []Solid{{}, {}}, ProjectOptions{}, 0, 0},
		{"box, front", front, []Solid{board}, ProjectOptions{}, 280, 0},
		{"box, side", AxisView(X, -1, 0), []Solid{board}, ProjectOptions{}, 100, 0},
		{"box, plan", AxisView(Z, 1, 0), []Solid{board}, ProjectOptions{}, 220, 0},
		// Nine of the twelve edges are seen, three of each kind; the three at the far corner are hidden.
		{"box, isometric", iso, []Solid{board}, ProjectOptions{}, 450 * k, 150 * k},
		{"box, isometric, clear", iso, []Solid{board}, ProjectOptions{Clear: func(int) bool { return true }}, 600 * k, 0},
		{"box, isometric, no hidden", iso, []Solid{board}, ProjectOptions{NoHidden: true}, 450 * k, 0},
		{"one before the other", front, []Solid{board, box3(20, -50, 10, 60, -40, 30)}, ProjectOptions{}, 280, 120},
		{"one sticking out", front, []Solid{board, box3(80, -50, 10, 120, -40, 30)}, ProjectOptions{}, 280 + 40 + 20, 40 + 20},
		{"the front one clear", front, []Solid{board, box3(20, -50, 10, 60, -40, 30)},
			ProjectOptions{Clear: func(i int) bool { return i == 0 }}, 280 + 120, 0},
		// Flush boards side by side: the joint is drawn once.
		{"joint", front, []Solid{board, box3(100, 0, 0, 200, 10, 40)}, ProjectOptions{}, 480 + 40, 0},
		{"joint, one recessed", front, []Solid{board, box3(100, -5, 0, 200, 5, 40)}, ProjectOptions{}, 520, 0},
		{"stacked in depth", front, []Solid{board, board.Move(Vec3{Y: -10})}, ProjectOptions{}, 280, 0},
		{"bar, end on", front, []Solid{Cylinder(Vec3{}, Y, 5, 20)}, ProjectOptions{}, 10 * pi, 0},
		{"bar, from the side", AxisView(Z, 1, 0), []Solid{Cylinder(Vec3{}, Y, 5, 20)}, ProjectOptions{}, 60, 0},
		{"bored, front", front, []Solid{bored}, ProjectOptions{}, 280 + 16*pi, 0},
		{"bored, side", AxisView(X, 1, 0), []Solid{bored}, ProjectOptions{}, 100, 20},
		{"seen through a bore", front, []Solid{bored, box3(40, -50, 18, 60, -40, 22)}, ProjectOptions{},
			280 + 16*pi + 4*math.Sqrt(64-4), 48 - 4*math.Sqrt(64-4)},
		{"bolt in a bore", front, []Solid{bored, Cylinder(Vec3{50, -5, 20}, Y, 7, 30)}, ProjectOptions{}, 280 + 30*pi, 0},
		{"bolt in a solid", front, []Solid{board, Cylinder(Vec3{50, -5, 20}, Y, 7, 10)}, ProjectOptions{}, 280, 14 * pi},
		// A blind bore from the back is hidden from the front, with its floor.
		{"blind bore", front, []Solid{board.Bore(Cylinder(Vec3{50, -5, 20}, Y, 8, 10))}, ProjectOptions{}, 280, 16 * pi},
		{"blind bore, side", AxisView(X, 1, 0), []Solid{board.Bore(Cylinder(Vec3{50, -5, 20}, Y, 8, 10))}, ProjectOptions{}, 100, 5 + 5 + 16},
		// Cut down the middle: the plane at x = 50 shows the half beyond, and no outline of the cut.
		{"cut", AxisView(X, 1, 50), []Solid{board}, ProjectOptions{Cut: true}, 0, 0},
		{"cut, and one beyond", AxisView(X, 1, 50), []Solid{board, box3(0, 5, 30, 20, 30, 60)}, ProjectOptions{Cut: true},
			110 - 5 - 10, 15},
		{"cut through a bore", AxisView(X, 1, 50), []Solid{bored}, ProjectOptions{Cut: true}, 32, 0},
		{"in front of the cut", AxisView(X, 1, 50), []Solid{box3(50, 0, 0, 60, 10, 10)}, ProjectOptions{Cut: true}, 0, 0},
		{"whole bolt in a cut", AxisView(X, 1, 50), []Solid{bored, Cylinder(Vec3{50, -5, 20}, Y, 7, 30)},
			ProjectOptions{Cut: true, Whole: func(i int) bool { return i == 1 }}, 32 - 28 + 60 + 28, 28},
		// Nearer than 5: the slice at 5 is drawn, the front face at 10 is not.
		{"near", front, []Solid{board}, ProjectOptions{Near: 5}, 280, 0},
		{"far", front, []Solid{board, board.Move(Vec3{0, -100, 50})}, ProjectOptions{Far: 50}, 280, 0},
		{"far enough", front, []Solid{board, board.Move(Vec3{0, -100, 50})}, ProjectOptions{Far: 500}, 560, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			es := Project(tt.v, tt.solids, tt.o)
			visible, hidden := drawn(es)
			near(t, "visible", visible, tt.visible, 1e-4)
			near(t, "hidden", hidden, tt.hidden, 1e-4)
			if t.Failed() {
				for _, e := range es {
					t.Log(e)
				}
			}
		})
	}
}

func TestProjectOwner(t *testing.T) {
	// The joint between two flush boards belongs to the first of them.
	boards := []Solid{box3(0, 0, 0, 10, 10, 40), box3(10, 0, 0, 20, 10, 40)}
	for _, e := range Project(AxisView(Y, 1, 0), boards, ProjectOptions{}) {
		a, b := e.Path.V[0], e.Path.V[1]
		if a.X == 10 && b.X == 10 && e.Solid != 0 {
			t.Errorf("the joint belongs to %d", e.Solid)
		}
	}
}

func TestProjectKeepsArcs(t *testing.T) {
	es := Project(AxisView(Y, 1, 0), []Solid{Cylinder(Vec3{3, 0, 4}, Y, 5, 20)}, ProjectOptions{})
	if len(es) != 1 || !es[0].Path.Closed || len(es[0].Path.V) != 2 {
		t.Fatalf("bar end on: %v, want one circle", es)
	}
	at(t, "centre", Region{es[0].Path}.Centroid(), Vec{3, 4})
}

func TestProjectMirrored(t *testing.T) {
	solids := deck()[:60]
	v := AxisView(X, 1, 500)
	a := Project(v, solids, ProjectOptions{})
	v.U = v.U.Mul(-1)
	b := Project(v, solids, ProjectOptions{})
	av, ah := drawn(a)
	bv, bh := drawn(b)
	near(t, "visible", bv, av, 1e-6)
	near(t, "hidden", bh, ah, 1e-6)
}

// materialBefore reports whether there is material of s between the point and the viewer, more than gap
// in front of the point. It uses nothing of the projection: it walks along the line of sight.
func (s Solid) materialBefore(v View, p Vec, depth, gap, near float64) bool {
	const reach = 1e4
	ray := line3{v.From(p, depth+gap), v.From(p, math.Min(depth+gap+reach, near))}
	l := ray.b.Sub(ray.a).Len()
	if near <= depth+gap {
		return false
	}
	in := s.inside(ray)
	for _, b := range s.Bores {
		in = in.less(b.inside(ray), 1e-9)
	}
	return in.total()*l > 1e-3
}

// certainly tells whether a place on the drawing at a depth is hidden, and whether it is so for all places
// round about, and for what is just in front as for what is further off: at the rim of a face one cannot
// tell. A wire of a round solid may lie a little deeper than the solid (depthTol).
func certainly(v View, solids []Solid, own int32, p Vec, depth, near float64) (hidden, sure bool) {
	const step = 0.02
	gaps := []float64{0.1, 0.4, 1e-4}
	for _, s := range solids[own].Profile.Segs() {
		if s.IsArc() {
			gaps = append(gaps, -0.06)
			break
		}
	}
	var yes, no int
	for _, d := range []Vec{{step, 0}, {-step, 0}, {0, step}, {0, -step}, {step, step}, {-step, step}, {step, -step}, {-step, -step}} {
		for _, gap := range gaps {
			h := false
			for i, s := range solids {
				if g := math.Max(gap, 0.1); int32(i) == own {
					h = h || s.materialBefore(v, p.Add(d), depth, g, near)
				} else {
					h = h || s.materialBefore(v, p.Add(d), depth, gap, near)
				}
			}
			if h {
				yes++
			} else {
				no++
			}
		}
	}
	return yes > 0, yes == 0 || no == 0
}

// TestProjectAgainstRays compares what is visible of every wire with lines of sight through the solids.
func TestProjectAgainstRays(t *testing.T) {
	compared := 0
	for seed := range uint64(100) {
		rnd := rand.New(rand.NewPCG(seed, 8))
		var solids []Solid
		for range 1 + rnd.IntN(6) {
			solids = append(solids, randomSolid(rnd))
		}
		v := AxisView(Axis(rnd.IntN(3)), 1-2*rnd.IntN(2), 30)
		if rnd.IntN(2) == 0 {
			v = Axonometric(Vec3{30, 30, 30}, Vec3{rnd.NormFloat64(), rnd.NormFloat64(), rnd.NormFloat64()})
			for i := range solids { // bores that cross are left to the square views
				solids[i].Bores = solids[i].Bores[:min(1, len(solids[i].Bores))]
			}
		}
		o := ProjectOptions{Cut: rnd.IntN(3) == 0}
		near := math.Inf(1)
		if o.Cut {
			near = 0
		}
		sc := &scene{view: v}
		for i, s := range solids {
			sc.add(i, s, o)
		}
		g := newFaceGrid(sc.faces)
		for _, w := range sc.wires {
			found := spans{{0, 1}}
			if !w.hidden {
				found = g.hidden(&w, 1e-9)
			}
			for range 4 {
				u := rnd.Float64()
				p, depth := w.at(u), w.d0+(w.d1-w.d0)*u
				if l := w.length(); depth > near-0.5 || math.Min(u, 1-u)*l < 0.3 {
					continue // at a corner a solid may be too thin in front
				}
				want, sure := certainly(v, solids, w.solid, p, depth, near)
				if !sure {
					continue
				}
				compared++
				got := false
				for _, s := range found {
					got = got || u >= s.lo && u <= s.hi
				}
				if got != want {
					t.Errorf("seed %d: wire %v of solid %d at %g, depth %g: hidden %v, line of sight says %v", seed, w.seg(), w.solid, u, depth, got, want)
				}
			}
		}
		if t.Failed() {
			for i, s := range solids {
				t.Logf("%d: %+v", i, s)
			}
			t.Fatalf("view %+v, options %+v", v, o)
		}
	}
	if compared < 2000 {
		t.Errorf("only %d places compared", compared)
	}
}

// TestProjectLaws: nothing is lost between visible and hidden, nothing drawn twice, and boxes on a coarse
// grid, which share planes and edges all the time, are drawn whatever their order.
func TestProjectLaws(t *testing.T) {
	for seed := range uint64(200) {
		rnd := rand.New(rand.NewPCG(seed, 9))
		n := func(k int) float64 { return float64(rnd.IntN(k)) }
		var solids []Solid
		for range 1 + rnd.IntN(12) {
			lo := Vec3{n(5), n(5), n(5)}
			solids = append(solids, BoxSolid(Box3{lo, lo.Add(Vec3{1 + n(3), 1 + n(3), 1 + n(3)})}))
		}
		for _, v := range []View{AxisView(X, 1, 2), AxisView(Y, -1, 2), AxisView(Z, 1, 2), Isometric(Vec3{}, 1, 1)} {
			es := Project(v, solids, ProjectOptions{})
			visible, hidden := drawn(es)
			var ps []Path
			for _, e := range es {
				ps = append(ps, e.Path)
			}
			near(t, "drawn twice", total(Merge(ps)), visible+hidden, 1e-5)
			all, _ := drawn(Project(v, solids, ProjectOptions{Clear: func(int) bool { return true }}))
			near(t, "visible + hidden", visible+hidden, all, 1e-5)
			only, none := drawn(Project(v, solids, ProjectOptions{NoHidden: true}))
			near(t, "visible alone", only, visible, 1e-6)
			near(t, "hidden left out", none, 0, 0)
			back := make([]Solid, len(solids))
			for i, s := range solids {
				back[len(solids)-1-i] = s
			}
			bv, bh := drawn(Project(v, back, ProjectOptions{}))
			near(t, "visible in the other order", bv, visible, 1e-5)
			near(t, "hidden in the other order", bh, hidden, 1e-5)
		}
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// TestProjectOutline: a box seen along an axis shows the rectangle of its bounds and nothing else.
func TestProjectOutline(t *testing.T) {
	for seed := range uint64(100) {
		rnd := rand.New(rand.NewPCG(seed, 10))
		lo := Vec3{rnd.Float64(), rnd.Float64(), rnd.Float64()}
		s := BoxSolid(Box3{lo, lo.Add(Vec3{1 + rnd.Float64(), 1 + rnd.Float64(), 1 + rnd.Float64()})})
		for _, axis := range []Axis{X, Y, Z} {
			v := AxisView(axis, 1-2*rnd.IntN(2), 0)
			a, _ := v.To(s.Bounds().Min)
			b, _ := v.To(s.Bounds().Max)
			want := BoxOf(a, b)
			got := EmptyBox()
			es := Project(v, []Solid{s}, ProjectOptions{})
			for _, e := range es {
				got = got.Union(e.Path.Bounds())
			}
			if len(es) != 4 || got.Min.Dist(want.Min) > 1e-12 || got.Max.Dist(want.Max) > 1e-12 {
				t.Fatalf("seed %d axis %v: %d edges about %v, want 4 about %v", seed, axis, len(es), got, want)
			}
		}
	}
}

func TestProjectSameTwice(t *testing.T) {
	for _, v := range []View{AxisView(Y, 1, 0), Isometric(Vec3{}, 1, 1)} {
		a, b := Project(v, deck(), ProjectOptions{}), Project(v, deck(), ProjectOptions{})
		if fmt.Sprint(a) != fmt.Sprint(b) {
			t.Error("two projections of one deck differ")
		}
	}
}
