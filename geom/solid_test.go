package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func at3(t *testing.T, what string, got, want Vec3) {
	t.Helper()
	if !(got.Sub(want).Len() <= 1e-9) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

func TestAxisViews(t *testing.T) {
	// A point right (x 1), toward (y 2) and up (z 3) as each of the six views shows it.
	p := Vec3{1, 2, 3}
	for _, tt := range []struct {
		name  string
		axis  Axis
		sign  int
		want  Vec
		depth float64
	}{
		{"front", Y, 1, Vec{1, 3}, 2},
		{"back", Y, -1, Vec{-1, 3}, -2},
		{"from the right", X, 1, Vec{-2, 3}, 1},
		{"from the left", X, -1, Vec{2, 3}, -1},
		{"plan", Z, 1, Vec{1, -2}, 3},
		{"from below", Z, -1, Vec{1, 2}, -3},
	} {
		t.Run(tt.name, func(t *testing.T) {
			v := AxisView(tt.axis, tt.sign, 0)
			got, d := v.To(p)
			at(t, "point", got, tt.want)
			near(t, "depth", d, tt.depth, 0)
			at3(t, "and back", v.From(got, d), p)
			_, d = AxisView(tt.axis, tt.sign, 5).To(p)
			near(t, "depth from a plane at 5", d, tt.depth-5*float64(tt.sign), 0)
		})
	}
}

func TestViewsAreOfOneHand(t *testing.T) {
	// Turning the solid or walking round it must not mirror what is seen: U, V, N of every view made here
	// have the hand of the front view.
	hand := func(v View) float64 { return v.U.Cross(v.V).Dot(v.N) }
	want := hand(AxisView(Y, 1, 0))
	views := []View{Isometric(Vec3{}, 1, 1), Isometric(Vec3{}, -1, 1), Isometric(Vec3{}, 1, -1), Isometric(Vec3{}, -1, -1),
		Axonometric(Vec3{}, Vec3{2, 1, -0.5}), Axonometric(Vec3{}, Vec3{Z: 4}), Axonometric(Vec3{}, Vec3{Z: -1}), Axonometric(Vec3{}, Vec3{})}
	for _, a := range []Axis{X, Y, Z} {
		views = append(views, AxisView(a, 1, 0), AxisView(a, -1, 0))
	}
	for _, v := range views {
		near(t, "hand", hand(v), want, 1e-12)
		near(t, "U on V", v.U.Dot(v.V), 0, 1e-12)
		near(t, "U on N", v.U.Dot(v.N), 0, 1e-12)
	}
}

func TestIsometricShortensAlike(t *testing.T) {
	v := Isometric(Vec3{10, 20, 30}, 1, 1)
	o, _ := v.To(Vec3{10, 20, 30})
	at(t, "origin", o, Vec{})
	for _, a := range []Axis{X, Y, Z} {
		p, _ := v.To(v.O.Add(a.Unit()))
		near(t, "length of an axis", p.Len(), math.Sqrt(2.0/3), 1e-12)
	}
	up, _ := v.To(v.O.Add(Z.Unit()))
	near(t, "z upright", up.X, 0, 1e-12)
	right, _ := v.To(v.O.Add(X.Unit()))
	if right.X <= 0 {
		t.Errorf("x runs to %v, want to the right", right)
	}
	if _, d := v.To(v.O.Add(Y.Unit())); d <= 0 {
		t.Error("y runs away from a viewer who stands in front")
	}
}

func TestRigid(t *testing.T) {
	p := Vec3{1, 2, 3}
	at3(t, "about x", Turn(X, Vec3{}, math.Pi/2).Apply(p), Vec3{1, -3, 2})
	at3(t, "about y", Turn(Y, Vec3{}, math.Pi/2).Apply(p), Vec3{3, 2, -1})
	at3(t, "about z", Turn(Z, Vec3{}, math.Pi/2).Apply(p), Vec3{-2, 1, 3})
	at3(t, "about z at (1,0,0)", Turn(Z, Vec3{X: 1}, math.Pi/2).Apply(p), Vec3{-1, 0, 3})
	at3(t, "mirrored in x = 5", MirrorIn(X, 5).Apply(p), Vec3{9, 2, 3})
	at3(t, "mirrored in y = 5", MirrorIn(Y, 5).Apply(p), Vec3{1, 8, 3})
	at3(t, "mirrored in z = 5", MirrorIn(Z, 5).Apply(p), Vec3{1, 2, 7})
	at3(t, "still", Still().Apply(p), p)
}

func TestSolidBounds(t *testing.T) {
	for _, tt := range []struct {
		name string
		s    Solid
		want Box3
	}{
		{"box", BoxSolid(Box3{Vec3{1, 2, 3}, Vec3{4, 6, 8}}), Box3{Vec3{1, 2, 3}, Vec3{4, 6, 8}}},
		{"prism along x", Prism(Rect(1, 2, 3, 4), X, 9, 5), Box3{Vec3{5, 1, 2}, Vec3{9, 3, 4}}},
		{"prism along y", Prism(Rect(1, 2, 3, 4), Y, 5, 9), Box3{Vec3{1, 5, 2}, Vec3{3, 9, 4}}},
		{"prism along z", Prism(Rect(1, 2, 3, 4), Z, 5, 9), Box3{Vec3{1, 2, 5}, Vec3{3, 4, 9}}},
		{"bar along x", Cylinder(Vec3{1, 2, 3}, X, 2, 10), Box3{Vec3{1, 0, 1}, Vec3{11, 4, 5}}},
		{"bar against y", Cylinder(Vec3{1, 2, 3}, Y, 2, -10), Box3{Vec3{-1, -8, 1}, Vec3{3, 2, 5}}},
		{"sheet along x", Sheet(Polyline(Vec{0, 10}, Vec{0, 0}, Vec{20, 0}), 1, 0, X, 0, 100), Box3{Vec3{0, 0, 0}, Vec3{100, 20, 10}}},
		{"moved", BoxSolid(Box3{Vec3{}, Vec3{1, 1, 1}}).Move(Vec3{5, 6, 7}), Box3{Vec3{5, 6, 7}, Vec3{6, 7, 8}}},
		{"turned", BoxSolid(Box3{Vec3{}, Vec3{1, 2, 3}}).Transform(Turn(Z, Vec3{}, math.Pi/2)), Box3{Vec3{-2, 0, 0}, Vec3{0, 1, 3}}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			b := tt.s.Bounds()
			at3(t, "least", b.Min, tt.want.Min)
			at3(t, "greatest", b.Max, tt.want.Max)
		})
	}
	for _, s := range []Solid{{}, BoxSolid(EmptyBox3()), BoxSolid(Box3{Vec3{}, Vec3{1, 1, 0}}), Cylinder(Vec3{}, X, 0, 1), Prism(nil, Z, 0, 1)} {
		if !s.Empty() || !s.Bounds().Empty() || s.Volume() != 0 {
			t.Errorf("%v is not empty", s)
		}
	}
}

func TestVolume(t *testing.T) {
	const pi = math.Pi
	box := BoxSolid(Box3{Vec3{}, Vec3{100, 38, 235}})
	const whole = 100 * 38 * 235.0
	bolt := func(x, z, r float64) Solid { return Cylinder(Vec3{x, -5, z}, Y, r, 60) }
	for _, tt := range []struct {
		name string
		s    Solid
		want float64
		tol  float64
	}{
		{"box", box, whole, 0},
		{"tube", Prism(Subtract(Circle(Vec{}, 10), Circle(Vec{}, 8)), X, 0, 50), 50 * 36 * pi, 1e-8},
		{"bolt hole that sticks out", box.Bore(bolt(50, 50, 8)), whole - 38*64*pi, 1e-8},
		{"two bolt holes", box.Bore(bolt(50, 50, 8), bolt(50, 150, 6)), whole - 38*100*pi, 1e-8},
		{"blind hole", box.Bore(Cylinder(Vec3{50, 38, 50}, Y, 8, -25)), whole - 25*64*pi, 1e-8},
		{"hole along the box", box.Bore(Cylinder(Vec3{50, 19, -1}, Z, 8, 300)), whole - 235*64*pi, 1e-8},
		{"hole half out of the side", box.Bore(bolt(0, 50, 8)), whole - 38*32*pi, 1e-8},
		{"hole at a corner", box.Bore(bolt(0, 0, 8)), whole - 38*16*pi, 1e-8},
		{"hole that misses", box.Bore(bolt(-20, 50, 8)), whole, 1e-8},
		{"hole that only touches", box.Bore(bolt(-8, 50, 8)), whole, 1e-8},
		{"the same hole twice", box.Bore(bolt(50, 50, 8), bolt(50, 50, 8)), whole - 38*64*pi, 1e-2},
		{"square hole", box.Bore(BoxSolid(Box3{Vec3{40, -1, 40}, Vec3{60, 50, 60}})), whole - 38*400, 1e-8},
		{"an empty hole", box.Bore(Solid{}), whole, 0},
		// Bores of one radius that cross at right angles share 16 r^3 / 3.
		{"cross-drilled", box.Bore(bolt(50, 50, 8), Cylinder(Vec3{-1, 19, 50}, X, 8, 200)), whole - 138*64*pi + 16*512/3.0, 1e-2},
		{"bar drilled through", Cylinder(Vec3{}, Z, 10, 100).Bore(Cylinder(Vec3{-20, 0, 50}, X, 10, 40)), 1e4*pi - 16e3/3, 1e-6},
		{"slanting square hole", BoxSolid(Box3{Vec3{}, Vec3{100, 10, 100}}).Bore(
			BoxSolid(Box3{Vec3{-3, -50, -3}, Vec3{3, 50, 3}}).Transform(Turn(X, Vec3{}, math.Pi/6)).Move(Vec3{50, 5, 50})),
			1e5 - 6*10*6/math.Cos(math.Pi/6), 1e-3},
	} {
		t.Run(tt.name, func(t *testing.T) {
			near(t, "volume", tt.s.Volume(), tt.want, tt.tol)
			near(t, "volume moved", tt.s.Move(Vec3{11, -7, 5}).Volume(), tt.want, tt.tol+1e-6)
			near(t, "volume mirrored", tt.s.Transform(MirrorIn(Y, 3)).Volume(), tt.want, tt.tol+1e-6)
		})
	}
}

// randomSolid makes a box, bar, prism or bored box on a grid of 10 mm.
func randomSolid(rnd *rand.Rand) Solid {
	n := func(k int) float64 { return 10 * float64(rnd.IntN(k)) }
	axis := Axis(rnd.IntN(3))
	lo := Vec3{n(6), n(6), n(6)}
	box := BoxSolid(Box3{lo, lo.Add(Vec3{10 + n(4), 10 + n(4), 10 + n(4)})})
	switch rnd.IntN(6) {
	case 0:
		return Cylinder(lo, axis, 5+n(2), 10+n(5))
	case 1:
		return Prism(shape(rnd, 6).Transform(Scale(10)), axis, n(5), 50+n(3))
	case 2:
		c := lo.Add(Vec3{5, 5, 5})
		return box.Bore(Cylinder(c.Sub(axis.Unit().Mul(100)), axis, 4, 200))
	case 3:
		c := lo.Add(Vec3{5, 5, 5})
		other := Axis((int(axis) + 1) % 3)
		return box.Bore(Cylinder(c, axis, 3, 200), Cylinder(c.Sub(other.Unit().Mul(100)), other, 2, 200))
	}
	return box
}
