package geom

import (
	"math"
	"testing"
)

func TestOffset(t *testing.T) {
	const pi = math.Pi
	l := Polyline(Vec{0, 0}, Vec{10, 0}, Vec{10, 10})
	square := Polygon(Vec{0, 0}, Vec{10, 0}, Vec{10, 10}, Vec{0, 10})
	stadium := Path{V: []Vertex{{Vec{0, -5}, 0}, {Vec{20, -5}, 1}, {Vec{20, 5}, 0}, {Vec{0, 5}, 1}}, Closed: true}
	for _, tt := range []struct {
		name   string
		p      Path
		d      float64
		length float64
		from   Vec
	}{
		{"left of a line", Polyline(Vec{0, 0}, Vec{10, 0}), 2, 10, Vec{0, 2}},
		{"right of a line", Polyline(Vec{0, 0}, Vec{10, 0}), -2, 10, Vec{0, -2}},
		{"inside of a corner", l, 2, 16, Vec{0, 2}},
		{"outside of a corner", l, -2, 24, Vec{0, -2}},
		{"inside of a square", square, 2, 24, Vec{2, 2}},
		{"outside of a square", square, -2, 56, Vec{-2, -2}},
		{"inside of a stadium", stadium, 2, 40 + 6*pi, Vec{0, -3}},
		{"arc shrunk away", stadium, 5, 40, Vec{0, 0}},
		{"no distance", l, 0, 20, Vec{0, 0}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			q := tt.p.Offset(tt.d)
			near(t, "length", q.Length(), tt.length, 1e-9)
			at(t, "start", q.V[0].Vec, tt.from)
		})
	}
}

func TestOffsetOfLineIntoArc(t *testing.T) {
	// A line that meets a half circle at a right angle; outside by 1 the line is met by the circle of
	// radius 6 at x = -sqrt(36-1).
	p := Path{V: []Vertex{{Vec{-20, 0}, 0}, {Vec{-5, 0}, -1}, {Vec{5, 0}, 0}}}
	q := p.Offset(1)
	at(t, "corner", q.V[1].Vec, Vec{-math.Sqrt(35), 1})
	_, r, _, _ := q.Segs()[1].Arc()
	near(t, "radius", r, 6, 1e-9)
}

func TestFillet(t *testing.T) {
	const pi = math.Pi
	p := Polyline(Vec{0, 0}, Vec{10, 0}, Vec{10, 10}).Fillet(3)
	near(t, "length", p.Length(), 7+1.5*pi+7, 1e-9)
	square := Polygon(Vec{0, 0}, Vec{10, 0}, Vec{10, 10}, Vec{0, 10})
	near(t, "area of a rounded square", square.Fillet(2).Area(), 100-4*4+4*pi, 1e-9)
	near(t, "area of a square rounded to a circle", square.Fillet(5).Area(), 25*pi, 1e-9)
	near(t, "area when nothing fits", square.Fillet(6).Area(), 100, 0)
	near(t, "clockwise", square.Reverse().Fillet(2).Area(), -100+4*4-4*pi, 1e-9)
	if q := Polyline(Vec{0, 0}, Vec{5, 0}, Vec{10, 0}).Fillet(1); len(q.V) != 3 {
		t.Errorf("straight run became %v", q)
	}
	// The end legs may be used up whole: 4 and 10 long, radius 4.
	near(t, "short leg", Polyline(Vec{0, 0}, Vec{4, 0}, Vec{4, 10}).Fillet(4).Length(), 2*pi+6, 1e-9)
}

func TestThicken(t *testing.T) {
	const pi = math.Pi
	z := Polyline(Vec{0, 100}, Vec{0, 0}, Vec{50, 0}, Vec{50, -20})
	for _, tt := range []struct {
		name        string
		p           Path
		left, right float64
		area        float64
		rings       int
	}{
		{"strip", Polyline(Vec{0, 0}, Vec{10, 0}), 1, 2, 30, 1},
		{"all to the right", Polyline(Vec{0, 0}, Vec{10, 0}), -1, 2, 10, 1},
		{"flashing, middle line", z, 0.5, 0.5, 170, 1},
		// One thick to the left: the inner corner saves 1, the outer adds 1.
		{"flashing, left", z, 1, 0, 170, 1},
		{"closed", Polygon(Vec{0, 0}, Vec{10, 0}, Vec{10, 10}, Vec{0, 10}), 1, 0, 36, 2},
		{"closed clockwise", Polygon(Vec{0, 0}, Vec{0, 10}, Vec{10, 10}, Vec{10, 0}), 1, 0, 44, 2},
		{"tube", Circle(Vec{}, 10)[0], 1, 1, pi * (121 - 81), 2},
		{"bend", Arc(Vec{}, 10, 0, pi/2), 1, 0, pi / 4 * (100 - 81), 1},
		{"no thickness", z, 0, 0, 0, 0},
		{"no path", Path{}, 1, 1, 0, 0},
		// Folded back on itself: 10 there and 10 back, one thick; the fold is cut off square.
		{"hem", Polyline(Vec{0, 0}, Vec{10, 0}, Vec{0, 0}), 0, 1, 20, 1},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := Thicken(tt.p, tt.left, tt.right)
			near(t, "area", r.Area(), tt.area, 1e-6)
			if len(r) != tt.rings {
				t.Errorf("%d rings, want %d: %v", len(r), tt.rings, r)
			}
			wellFormed(t, r)
		})
	}
}
