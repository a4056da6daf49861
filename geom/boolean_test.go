package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

// near reports an error unless got is within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %g", what, got, want, tol)
	}
}

// wellFormed fails the test unless r has the properties promised at Union.
func wellFormed(t *testing.T, r Region) {
	t.Helper()
	for i, p := range r {
		if !p.Closed || !p.finite() {
			t.Fatalf("ring %d open or not finite: %v", i, p)
		}
		for j, s := range p.Segs() {
			if s.Len() <= Tol {
				t.Errorf("ring %d segment %d has length %g", i, j, s.Len())
			}
		}
		for _, v := range p.V[1:] {
			if below(v.Vec, p.V[0].Vec) {
				t.Errorf("ring %d starts at %v, not at its lowest vertex %v", i, p.V[0].Vec, v.Vec)
			}
		}
		if c := p.Clean(); len(c.V) < len(p.V) {
			t.Errorf("ring %d has needless vertices: %v, clean %v", i, p, c)
		}
	}
}

// disc returns a disc as a region, centre on the grid.
func disc(x, y, r float64) Region { return Circle(Vec{x, y}, r) }

func TestBooleanByHand(t *testing.T) {
	const pi = math.Pi
	// lens is the area two discs of radius 1 share at a distance of 1 between centres:
	// 2 acos(1/2) - (1/2) sqrt(4-1) = 2 pi/3 - sqrt(3)/2.
	lens := 2*pi/3 - math.Sqrt(3)/2
	sq := Rect(0, 0, 10, 10)
	frame := Subtract(sq, Rect(3, 3, 7, 7))
	tests := []struct {
		name  string
		got   Region
		area  float64
		rings int
	}{
		{"apart", Union(sq, Rect(20, 0, 30, 10)), 200, 2},
		{"touching along an edge", Union(sq, Rect(10, 0, 20, 10)), 200, 1},
		{"touching along part of an edge", Union(sq, Rect(10, 4, 20, 6)), 120, 1},
		{"touching at a corner", Union(sq, Rect(10, 10, 20, 20)), 200, 2},
		{"overlapping collinear edges", Union(sq, Rect(5, 0, 15, 10)), 150, 1},
		{"the same twice", Union(sq, sq), 100, 1},
		{"less itself", Subtract(sq, sq), 0, 0},
		{"and itself", Intersect(sq, sq), 100, 1},
		{"and one that only touches", Intersect(sq, Rect(10, 0, 20, 10)), 0, 0},
		{"less nothing", Subtract(sq), 100, 1},
		{"nothing", Union(), 0, 0},
		{"hole", frame, 84, 2},
		{"hole exactly filled", Union(frame, Rect(3, 3, 7, 7)), 100, 1},
		{"island in a hole", Union(frame, Rect(4, 4, 6, 6)), 88, 3},
		{"island in an island filled", Union(frame, Rect(4, 4, 6, 6), Rect(2, 2, 8, 8)), 100, 1},
		{"hole that reaches the edge", Subtract(sq, Rect(3, 0, 7, 4)), 84, 1},
		{"hole that touches the edge at a corner", Subtract(sq, Region{Polygon(Vec{5, 0}, Vec{7, 2}, Vec{5, 4}, Vec{3, 2})}), 92, 2},
		{"cut in two", Subtract(sq, Rect(4, -1, 6, 11)), 80, 2},
		{"disc in a square", Subtract(sq, disc(5, 5, 3)), 100 - 9*pi, 2},
		{"disc that touches two sides", Subtract(sq, disc(5, 5, 5)), 100 - 25*pi, 4},
		{"half disc", Intersect(disc(0, 0, 4), Rect(-5, 0, 5, 5)), 8 * pi, 1},
		{"disc put together", Union(Intersect(disc(0, 0, 4), Rect(-5, 0, 5, 5)), Intersect(disc(0, 0, 4), Rect(-5, -5, 5, 0))), 16 * pi, 1},
		{"lens", Intersect(disc(0, 0, 1), disc(1, 0, 1)), lens, 1},
		{"two discs", Union(disc(0, 0, 1), disc(1, 0, 1)), 2*pi - lens, 1},
		{"crescent", Subtract(disc(0, 0, 1), disc(1, 0, 1)), pi - lens, 1},
		{"discs touching outside", Union(disc(0, 0, 1), disc(2, 0, 1)), 2 * pi, 2},
		{"disc touching inside", Subtract(disc(0, 0, 2), disc(1, 0, 1)), 3 * pi, 2},
		{"ring of discs", Subtract(disc(0, 0, 5), disc(0, 0, 4)), 9 * pi, 2},
		{"ring filled", Union(Subtract(disc(0, 0, 5), disc(0, 0, 4)), disc(0, 0, 4)), 25 * pi, 1},
		{"clip", frame.Clip(Box{Vec{-1, -1}, Vec{5, 20}}), 42, 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			near(t, "area", tt.got.Area(), tt.area, 1e-7)
			if len(tt.got) != tt.rings {
				t.Errorf("%d rings, want %d: %v", len(tt.got), tt.rings, tt.got)
			}
			wellFormed(t, tt.got)
		})
	}
}

func TestArcsStayArcs(t *testing.T) {
	// A square with two corners rounded off by one disc: the arc is one segment of radius 5.
	r := Intersect(Rect(0, 0, 20, 10), disc(15, 5, 5*math.Sqrt2))
	arcs := 0
	for _, s := range r.Segs() {
		if s.IsArc() {
			arcs++
			_, radius, _, _ := s.Arc()
			near(t, "radius", radius, 5*math.Sqrt2, 1e-9)
		}
	}
	if arcs != 1 {
		t.Errorf("%d arcs, want 1: %v", arcs, r)
	}
	if c := Union(disc(3, 4, 2)); len(c) != 1 || len(c[0].V) != 2 || c[0].V[0].Vec != (Vec{3, 2}) {
		t.Errorf("circle = %v, want two vertices from (3,2)", c)
	}
}

func TestUnionOrder(t *testing.T) {
	got := Union(Rect(20, 5, 30, 8), Subtract(Rect(0, 0, 10, 10), Rect(6, 6, 8, 8), Rect(2, 2, 4, 4)), Rect(-5, 20, 0, 30))
	want := []Vec{{0, 0}, {2, 2}, {6, 6}, {20, 5}, {-5, 20}}
	for i, p := range got {
		if p.V[0].Vec != want[i] {
			t.Errorf("ring %d starts at %v, want %v", i, p.V[0].Vec, want[i])
		}
	}
}

// shape draws a random rectangle, disc, ring or triangle on a coarse grid, so that edges coincide and
// touch all the time.
func shape(rnd *rand.Rand, n int) Region {
	at := func() float64 { return float64(rnd.IntN(n)) }
	x, y := at(), at()
	switch rnd.IntN(5) {
	case 0, 1:
		return Rect(x, y, x+1+at(), y+1+at())
	case 2:
		return disc(x, y, float64(1+rnd.IntN(3)))
	case 3:
		r := float64(2 + rnd.IntN(3))
		return Subtract(disc(x, y, r), disc(x, y, r-1))
	}
	r := Region{Polygon(Vec{x, y}, Vec{x + 1 + at(), y}, Vec{x + 1 + at(), y + 1 + at()})}
	return r
}

func shapes(rnd *rand.Rand, n, grid int) []Region {
	rs := make([]Region, n)
	for i := range rs {
		rs[i] = shape(rnd, grid)
	}
	return rs
}

func TestBooleanLaws(t *testing.T) {
	for seed := range uint64(1200) {
		rnd := rand.New(rand.NewPCG(seed, 1))
		grid := 3 + rnd.IntN(8)
		a, b := Union(shapes(rnd, 1+rnd.IntN(6), grid)...), Union(shapes(rnd, 1+rnd.IntN(6), grid)...)
		if seed%3 == 0 { // off the grid as well
			b = b.Transform(Rotate(rnd.Float64(), Vec{3, 3}))
		}
		checkLaws(t, a, b)
		if t.Failed() {
			t.Fatalf("seed %d\na = %v\nb = %v", seed, a, b)
		}
	}
}

func checkLaws(t *testing.T, a, b Region) {
	t.Helper()
	u, i, d, e := Union(a, b), Intersect(a, b), Subtract(a, b), Subtract(b, a)
	for _, r := range []Region{u, i, d, e} {
		wellFormed(t, r)
	}
	tol := 1e-5 * (1 + perimeter(a) + perimeter(b))
	near(t, "area of A and B + A less B", i.Area()+d.Area(), a.Area(), tol)
	near(t, "area of A or B", u.Area(), a.Area()+b.Area()-i.Area(), tol)
	near(t, "area of B or A", Union(b, a).Area(), u.Area(), tol)
	near(t, "the parts put together", Union(i, d, e).Area(), u.Area(), tol)
	near(t, "A less B and B", Intersect(d, b).Area(), 0, tol)
	near(t, "A or B less B", Subtract(u, b).Area(), d.Area(), tol)
	// De Morgan inside a box: what is outside A or B is outside A and outside B.
	box := Rect(-100, -100, 100, 100)
	near(t, "De Morgan", Intersect(Subtract(box, a), Subtract(box, b)).Area(), Subtract(box, u).Area(), tol)
	near(t, "A or nothing", Union(a).Area(), a.Area(), tol)
	for _, part := range u.Parts() {
		if part.Area() <= 0 {
			t.Errorf("part of area %g", part.Area())
		}
	}
}

func perimeter(r Region) float64 {
	var l float64
	for _, p := range r {
		l += p.Length()
	}
	return l
}

// TestBooleanGridCount compares with exact counting: rectangles on a grid cover whole cells.
func TestBooleanGridCount(t *testing.T) {
	const n = 12
	for seed := range uint64(500) {
		rnd := rand.New(rand.NewPCG(seed, 2))
		var cells [n][n]bool
		var r Region
		for range 12 {
			x, y := rnd.IntN(n-1), rnd.IntN(n-1)
			w, h := 1+rnd.IntN(min(4, n-x)), 1+rnd.IntN(min(4, n-y))
			add := rnd.IntN(3) > 0
			if q := Rect(float64(x), float64(y), float64(x+w), float64(y+h)); add {
				r = Union(r, q)
			} else {
				r = Subtract(r, q)
			}
			for i := x; i < x+w; i++ {
				for j := y; j < y+h && j < n; j++ {
					if i < n {
						cells[i][j] = add
					}
				}
			}
		}
		r = r.Clip(Box{Vec{0, 0}, Vec{n, n}})
		count := 0
		for i := range cells {
			for j := range cells[i] {
				if cells[i][j] {
					count++
				}
				if r.Contains(Vec{float64(i) + 0.5, float64(j) + 0.5}) != cells[i][j] {
					t.Fatalf("seed %d: cell %d,%d wrong", seed, i, j)
				}
			}
		}
		near(t, "area", r.Area(), float64(count), 1e-9)
		wellFormed(t, r)
		if t.Failed() {
			t.Fatalf("seed %d: %v", seed, r)
		}
	}
}
