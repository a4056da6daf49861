package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestSegByHand(t *testing.T) {
	half := Seg{Vec{10, 0}, Vec{-10, 0}, 1} // the upper half circle about the origin
	c, r, start, sweep := half.Arc()
	at(t, "centre", c, Vec{})
	near(t, "radius", r, 10, 1e-12)
	near(t, "start", start, 0, 1e-12)
	near(t, "sweep", sweep, math.Pi, 1e-12)
	near(t, "length", half.Len(), 10*math.Pi, 1e-9)
	at(t, "middle", half.Mid(), Vec{0, 10})
	at(t, "third", half.At(1.0/3), Vec{5, 5 * math.Sqrt(3)})
	if b := half.Bounds(); b.Min.Dist(Vec{-10, 0}) > 1e-9 || b.Max.Dist(Vec{10, 10}) > 1e-9 {
		t.Errorf("bounds %v", b)
	}
	down := half.Reverse()
	at(t, "middle reversed", down.Mid(), Vec{0, 10})
	if _, _, _, s := down.Arc(); s >= 0 {
		t.Errorf("reversed sweep %g", s)
	}
	line := Seg{A: Vec{0, 0}, B: Vec{3, 4}}
	near(t, "line length", line.Len(), 5, 0)
	at(t, "line middle", line.Mid(), Vec{1.5, 2})
	if line.IsArc() || !half.IsArc() {
		t.Error("IsArc")
	}
	if (Seg{Vec{}, Vec{1, 0}, 1e-8}).IsArc() {
		t.Error("an arc that rises 5e-9 mm counts as an arc")
	}
}

func TestSegSplitKeepsTheArc(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 1))
	for range 500 {
		s := Seg{Vec{rnd.Float64() * 100, rnd.Float64() * 100}, Vec{rnd.Float64() * 100, rnd.Float64() * 100}, rnd.NormFloat64()}
		u := 0.1 + 0.8*rnd.Float64()
		a, b := s.Split(u)
		near(t, "length of the parts", a.Len()+b.Len(), s.Len(), 1e-8*s.Len())
		if d := a.At(0.5).Dist(s.At(u / 2)); d > 1e-7 {
			t.Errorf("middle of the first part %g off, %v at %g", d, s, u)
		}
		box := s.Bounds().Grow(1e-9)
		for i := range 33 {
			if p := s.At(float64(i) / 32); !box.Holds(p) {
				t.Errorf("%v leaves its bounds at %v", s, p)
			}
		}
	}
}

func TestPathMeasures(t *testing.T) {
	const pi = math.Pi
	// A stadium: 20 long between the centres, radius 5.
	stadium := Path{V: []Vertex{{Vec{0, -5}, 0}, {Vec{20, -5}, 1}, {Vec{20, 5}, 0}, {Vec{0, 5}, 1}}, Closed: true}
	near(t, "area", stadium.Area(), 200+25*pi, 1e-9)
	near(t, "length", stadium.Length(), 40+10*pi, 1e-9)
	near(t, "area reversed", stadium.Reverse().Area(), -200-25*pi, 1e-9)
	if b := stadium.Bounds(); b.Min.Dist(Vec{-5, -5}) > 1e-9 || b.Max.Dist(Vec{25, 5}) > 1e-9 {
		t.Errorf("bounds %v", b)
	}
	open := Polyline(Vec{0, 0}, Vec{3, 0}, Vec{3, 4})
	near(t, "open length", open.Length(), 7, 0)
	near(t, "open area, closed by a line", open.Area(), 6, 0)
	if n := len(open.Segs()); n != 2 {
		t.Errorf("open path has %d segments, want 2", n)
	}
	if n := len(Polygon(Vec{0, 0}, Vec{3, 0}, Vec{3, 4}).Segs()); n != 3 {
		t.Errorf("closed path has %d segments, want 3", n)
	}
	if (Path{}).Area() != 0 || !(Path{}).Bounds().Empty() || (Path{}).Length() != 0 || len((Path{}).Flatten(1)) != 0 {
		t.Error("the empty path measures something")
	}
}

func TestReverseTwice(t *testing.T) {
	for _, p := range []Path{
		{V: []Vertex{{Vec{0, 0}, 0.3}, {Vec{5, 0}, 0}, {Vec{5, 5}, -0.7}}, Closed: true},
		{V: []Vertex{{Vec{0, 0}, 0.3}, {Vec{5, 0}, 0}, {Vec{5, 5}, 0}}},
		{V: []Vertex{{Vec{1, 1}, 0}}}, {},
	} {
		q := p.Reverse().Reverse()
		for i := range p.V {
			if q.V[i] != p.V[i] {
				t.Errorf("vertex %d of %v became %v", i, p, q.V[i])
			}
		}
		near(t, "area", p.Reverse().Area(), -p.Area(), 1e-12)
	}
}

func TestCentroid(t *testing.T) {
	tests := []struct {
		name string
		r    Region
		want Vec
	}{
		{"square", Rect(0, 0, 10, 4), Vec{5, 2}},
		{"disc", Circle(Vec{3, -2}, 5), Vec{3, -2}},
		// Half disc of radius 3: 4 r / (3 pi) above the diameter.
		{"half disc", Intersect(Circle(Vec{}, 3), Rect(-5, 0, 5, 5)), Vec{0, 4 / math.Pi}},
		// A 10 x 10 square less its right upper quarter: (100*5 - 25*7.5)/75.
		{"L", Subtract(Rect(0, 0, 10, 10), Rect(5, 5, 10, 10)), Vec{12.5 / 3, 12.5 / 3}},
		{"far from the origin", Rect(1e6, 1e6, 1e6+2, 1e6+2), Vec{1e6 + 1, 1e6 + 1}},
		{"no area", Region{Polygon(Vec{0, 0}, Vec{4, 2})}, Vec{2, 1}},
		{"nothing", nil, Vec{}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { at(t, "centroid", tt.r.Centroid(), tt.want) })
	}
}

func TestFlattenStaysWithin(t *testing.T) {
	for _, tol := range []float64{1, 0.1, 0.01, 1e-3} {
		circle := Circle(Vec{7, 7}, 50)[0]
		pts := circle.Flatten(tol)
		worst := 0.0
		for i, p := range pts {
			mid := p.Lerp(pts[(i+1)%len(pts)], 0.5)
			worst = math.Max(worst, math.Abs(mid.Dist(Vec{7, 7})-50))
		}
		if worst > tol || worst < tol/10 {
			t.Errorf("tol %g: chords stray %g with %d points", tol, worst, len(pts))
		}
	}
	if n := len(Polyline(Vec{}, Vec{1, 0}).Flatten(0.1)); n != 2 {
		t.Errorf("open line has %d points", n)
	}
}

func TestArcPaths(t *testing.T) {
	const pi = math.Pi
	for _, tt := range []struct {
		name         string
		p            Path
		from, to     Vec
		length, turn float64 // turn: area between arc and chord, sign only
	}{
		{"quarter", Arc(Vec{1, 1}, 2, 0, pi/2), Vec{3, 1}, Vec{1, 3}, pi, 1},
		{"quarter clockwise", Arc(Vec{1, 1}, 2, 0, -pi/2), Vec{3, 1}, Vec{1, -1}, pi, -1},
		{"three quarters", Arc(Vec{}, 2, 0, 1.5*pi), Vec{2, 0}, Vec{0, -2}, 3 * pi, 1},
		{"circle", Arc(Vec{}, 2, pi/2, 2*pi), Vec{0, 2}, Vec{0, -2}, 4 * pi, 1},
		{"circle clockwise", Arc(Vec{}, 2, 0, -7), Vec{2, 0}, Vec{-2, 0}, 4 * pi, -1},
		{"through three points", ArcThrough(Vec{2, 0}, Vec{0, 2}, Vec{-2, 0}), Vec{2, 0}, Vec{-2, 0}, 2 * pi, 1},
		{"through three points clockwise", ArcThrough(Vec{-2, 0}, Vec{0, 2}, Vec{2, 0}), Vec{-2, 0}, Vec{2, 0}, 2 * pi, -1},
		{"the long way", ArcThrough(Vec{2, 0}, Vec{-2, 0}, Vec{0, -2}), Vec{2, 0}, Vec{0, -2}, 3 * pi, 1},
		{"three points in line", ArcThrough(Vec{0, 0}, Vec{1, 1}, Vec{2, 2}), Vec{0, 0}, Vec{2, 2}, 2 * math.Sqrt2, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			at(t, "start", tt.p.V[0].Vec, tt.from)
			at(t, "end", tt.p.V[len(tt.p.V)-1].Vec, tt.to)
			near(t, "length", tt.p.Length(), tt.length, 1e-9)
			if a := tt.p.Area(); math.Abs(tt.turn) > 0 && a*tt.turn <= 0 {
				t.Errorf("area %g, want sign %g", a, tt.turn)
			}
		})
	}
}

func TestClean(t *testing.T) {
	p := Polygon(Vec{0, 0}, Vec{5, 0}, Vec{5, 0}, Vec{10, 0}, Vec{10, 5}, Vec{10, 10}, Vec{0, 10}, Vec{0, 10 - 1e-8}).Clean()
	if len(p.V) != 4 || p.Area() != 100 {
		t.Errorf("square = %v", p)
	}
	open := Polyline(Vec{0, 0}, Vec{0, 1e-9}, Vec{1, 0}, Vec{2, 0}, Vec{2, 1}).Clean()
	if len(open.V) != 3 || open.V[0].Vec != (Vec{}) || open.V[2].Vec != (Vec{2, 1}) {
		t.Errorf("open path = %v", open)
	}
	eighth := math.Tan(math.Pi / 16)
	arcs := Path{V: []Vertex{{Polar(Vec{}, 3, 0), eighth}, {Polar(Vec{}, 3, math.Pi/4), eighth}, {Polar(Vec{}, 3, math.Pi/2), 0}}}.Clean()
	if len(arcs.V) != 2 {
		t.Errorf("two eighths of a circle = %v", arcs)
	}
	near(t, "quarter", arcs.Length(), 1.5*math.Pi, 1e-9)
	if c := Circle(Vec{1, 2}, 3)[0].Clean(); len(c.V) != 2 || math.Abs(c.Area()-9*math.Pi) > 1e-9 {
		t.Errorf("circle = %v", c)
	}
	for _, p := range []Path{{}, {Closed: true}, Polygon(Vec{1, 1}), Polygon(Vec{1, 1}, Vec{1, 1})} {
		if q := p.Clean(); len(q.V) > 1 {
			t.Errorf("%v cleaned is %v", p, q)
		}
	}
}

func TestContains(t *testing.T) {
	r := Subtract(Rect(0, 0, 10, 10), Circle(Vec{5, 5}, 2))
	for _, tt := range []struct {
		p    Vec
		want bool
	}{
		{Vec{1, 1}, true}, {Vec{5, 5}, false}, {Vec{-1, 5}, false}, {Vec{11, 10}, false},
		{Vec{0, 0}, true}, {Vec{10, 4}, true}, {Vec{5, 7}, true}, {Vec{5, 7 - 1e-7}, true}, {Vec{5, 7 - 1e-5}, false},
		{Vec{10 + 1e-7, 5}, true}, {Vec{10 + 1e-5, 5}, false},
		{Vec{1, 5}, true}, {Vec{-1, 0}, false}, {Vec{-1, 10}, false}, // level with vertices
	} {
		if got := r.Contains(tt.p); got != tt.want {
			t.Errorf("Contains(%v) = %v", tt.p, got)
		}
	}
	if Region(nil).Contains(Vec{}) {
		t.Error("the empty region holds a point")
	}
}

func TestParts(t *testing.T) {
	frame := Subtract(Rect(0, 0, 10, 10), Rect(1, 1, 9, 9))
	inner := Subtract(Rect(2, 2, 8, 8), Rect(3, 3, 5, 5), Rect(6, 6, 7, 7))
	got := Union(Rect(20, -5, 30, 5), frame, inner).Parts()
	want := []struct {
		area  float64
		rings int
	}{{100, 1}, {36, 2}, {36 - 4 - 1, 3}}
	if len(got) != len(want) {
		t.Fatalf("%d parts, want %d", len(got), len(want))
	}
	for i, w := range want {
		if len(got[i]) != w.rings || math.Abs(got[i].Area()-w.area) > 1e-9 {
			t.Errorf("part %d: %d rings, area %g, want %d and %g", i, len(got[i]), got[i].Area(), w.rings, w.area)
		}
	}
}
