package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestCutByHand(t *testing.T) {
	const pi = math.Pi
	box := BoxSolid(Box3{Vec3{0, 0, 0}, Vec3{100, 40, 200}})
	bored := box.Bore(Cylinder(Vec3{50, -5, 100}, Y, 8, 60))
	bar := Cylinder(Vec3{0, 0, 0}, X, 10, 100)
	flashing := Sheet(Polyline(Vec{0, 100}, Vec{0, 0}, Vec{50, 0}), 1, 0, X, 0, 300)
	slant := Axonometric(Vec3{50, 20, 100}, Vec3{0, 1, 1})
	for _, tt := range []struct {
		name  string
		s     Solid
		v     View
		area  float64
		rings int
	}{
		{"box across x", box, AxisView(X, 1, 30), 8000, 1},
		{"box across y", box, AxisView(Y, 1, 30), 20000, 1},
		{"box across z", box, AxisView(Z, 1, 30), 4000, 1},
		{"box missed", box, AxisView(X, 1, -1), 0, 0},
		{"front face in the plane", box, AxisView(Y, 1, 40), 20000, 1},
		{"back face in the plane", box, AxisView(Y, 1, 0), 0, 0},
		{"end in the plane, seen from there", box, AxisView(Z, 1, 200), 4000, 1},
		{"end in the plane, seen from the other side", box, AxisView(Z, -1, 200), 0, 0},
		{"bored, through the bore along it", bored, AxisView(X, 1, 50), 8000 - 16*40, 2},
		{"bored, beside the axis", bored, AxisView(X, 1, 50+4.8), 8000 - 12.8*40, 2},
		{"bored, past the bore", bored, AxisView(X, 1, 58.1), 8000, 1},
		{"bored, across the bore", bored, AxisView(Y, -1, 20), 20000 - 64*pi, 2},
		{"bar across", bar, AxisView(X, -1, 50), 100 * pi, 1},
		{"bar along", bar, AxisView(Z, 1, 6), 1600, 1},
		{"bar touched", bar, AxisView(Z, 1, 10), 0, 0},
		{"flashing across", flashing, AxisView(X, 1, 150), 149, 1},
		{"flashing through the flat leg", flashing, AxisView(Z, 1, 0.5), 300 * 50, 1},
		{"flashing through the upright leg", flashing, AxisView(Z, 1, 50), 300 * 1, 1},
		// At 45 degrees a section 40 deep is 40 sqrt 2 long.
		{"box at a slant", box, slant, 100 * 40 * math.Sqrt2, 1},
		// An ellipse of 10 by 10 sqrt 2, in chords within 0.01 mm.
		{"bar at a slant", bar, Axonometric(Vec3{50, 0, 0}, Vec3{1, 1, 0}), 100 * pi * math.Sqrt2, 1},
		{"nothing", Solid{}, AxisView(X, 1, 0), 0, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := tt.s.Cut(tt.v)
			tol := 1e-9 * (1 + tt.area)
			if tt.name == "bar at a slant" {
				tol = 0.01 * 2 * pi * 15
			}
			near(t, "area", r.Area(), tt.area, tol)
			if len(r) != tt.rings {
				t.Errorf("%d rings, want %d: %v", len(r), tt.rings, r)
			}
			for _, p := range r.Parts() {
				if p.Area() <= 0 {
					t.Errorf("part of area %g", p.Area())
				}
			}
		})
	}
}

func TestCutPlace(t *testing.T) {
	// Seen from -x a wall section has y to the right: the box lies at 5 to 43, and 0 to 235 up.
	s := BoxSolid(Box3{Vec3{0, 5, 0}, Vec3{100, 43, 235}})
	if b := s.Cut(AxisView(X, -1, 50)).Bounds(); b != (Box{Vec{5, 0}, Vec{43, 235}}) {
		t.Errorf("seen from -x: %v", b)
	}
	if b := s.Cut(AxisView(X, 1, 50)).Bounds(); b != (Box{Vec{-43, 0}, Vec{-5, 235}}) {
		t.Errorf("seen from +x: %v", b)
	}
	mirrored := AxisView(X, 1, 50)
	mirrored.U = mirrored.U.Mul(-1)
	r := s.Cut(mirrored)
	if b := r.Bounds(); b != (Box{Vec{5, 0}, Vec{43, 235}}) || r.Area() <= 0 {
		t.Errorf("seen from +x, mirrored: %v, area %g", b, r.Area())
	}
}

func TestCutKeepsArcs(t *testing.T) {
	r := BoxSolid(Box3{Vec3{}, Vec3{100, 40, 200}}).Bore(Cylinder(Vec3{50, -5, 100}, Y, 8, 60)).Cut(AxisView(Y, 1, 20))
	if len(r) != 2 || len(r[1].V) != 2 {
		t.Fatalf("section %v, want a rectangle with a circle of two vertices", r)
	}
	_, radius, _, _ := r[1].Segs()[0].Arc()
	near(t, "radius", radius, 8, 1e-12)
}

// TestTwoInContact checks the half-open rule: just one of two solids that touch in the plane is cut.
func TestTwoInContact(t *testing.T) {
	l := Region{Polygon(Vec{0, 0}, Vec{30, 0}, Vec{30, 10}, Vec{20, 10}, Vec{20, 20}, Vec{0, 20})}
	for _, axis := range []Axis{X, Y, Z} {
		for _, along := range []Axis{X, Y, Z} {
			a := Prism(l, along, 0, 20)
			at := 20.0
			if along != axis && (axis == X || along == X && axis == Y) {
				at = 30 // the long side of the L
			}
			b := a.Move(axis.Unit().Mul(at))
			for _, sign := range []int{1, -1} {
				v := AxisView(axis, sign, at)
				ra, rb := a.Cut(v), b.Cut(v)
				if ra.Empty() == rb.Empty() {
					t.Errorf("%v prism across %v, sign %d: sections %v and %v", along, axis, sign, ra, rb)
				}
			}
		}
	}
	// The plane through the step of the L seen from above shows what lies under it, from below above it.
	s := Prism(l, Y, 0, 100)
	near(t, "from above", s.Cut(AxisView(Z, 1, 10)).Area(), 3000, 1e-9)
	near(t, "from below", s.Cut(AxisView(Z, -1, 10)).Area(), 2000, 1e-9)
}

func TestCutLaws(t *testing.T) {
	for seed := range uint64(400) {
		rnd := rand.New(rand.NewPCG(seed, 6))
		s := randomSolid(rnd)
		axis := Axis(rnd.IntN(3))
		v := AxisView(axis, 1-2*rnd.IntN(2), float64(rnd.IntN(100)))
		if rnd.IntN(4) == 0 {
			v = Axonometric(Vec3{30, 30, 30}, Vec3{rnd.NormFloat64(), rnd.NormFloat64(), rnd.NormFloat64()})
		}
		want := s.Cut(v)
		d := Vec3{float64(rnd.IntN(50)), -13, 7}
		moved := v
		moved.O = v.O.Add(d)
		near(t, "area of the moved solid", s.Move(d).Cut(moved).Area(), want.Area(), 1e-6*(1+want.Area()))
		m := Turn(Z, Vec3{5, 5, 5}, 1)
		turned := View{m.Apply(v.O), m.Dir(v.U), m.Dir(v.V), m.Dir(v.N)}
		got := s.Transform(m).Cut(turned)
		near(t, "area of the turned solid", got.Area(), want.Area(), 1e-5*(1+want.Area()))
		if !want.Empty() && got.Centroid().Dist(want.Centroid()) > 1e-4 {
			t.Errorf("turned section at %v, was at %v", got.Centroid(), want.Centroid())
		}
		if t.Failed() {
			t.Fatalf("seed %d: %v cut by %v", seed, s, v)
		}
	}
}

func TestSumOfCutsIsVolume(t *testing.T) {
	for seed := range uint64(60) {
		rnd := rand.New(rand.NewPCG(seed, 7))
		s := randomSolid(rnd)
		b := s.Bounds()
		for _, axis := range []Axis{X, Y, Z} {
			lo, hi := b.Min.along(axis), b.Max.along(axis)
			const n = 400
			var sum float64
			for i := range n {
				sum += s.Cut(AxisView(axis, 1, lo+(hi-lo)*(float64(i)+0.5)/n)).Area()
			}
			sum *= (hi - lo) / n
			near(t, "sum of sections", sum, s.Volume(), 0.002*(hi-lo)*s.Volume()/math.Max(1, hi-lo)+1)
		}
		if t.Failed() {
			t.Fatalf("seed %d: %v", seed, s)
		}
	}
}

// along returns the coordinate along an axis.
func (a Vec3) along(x Axis) float64 { return a.Dot(x.Unit()) }
