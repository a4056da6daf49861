package contour

import (
	"math"
	"slices"
	"testing"

	"standclear/geom"
)

// gridOf samples a function in the middle of cells on lines x and y; where full is false there is nothing.
func gridOf(xs, ys []float64, f func(p geom.Vec) float64, full func(p geom.Vec) bool) Grid {
	g := Grid{X: xs, Y: ys}
	for j := range len(ys) - 1 {
		row := make([]float64, len(xs)-1)
		for i := range row {
			p := geom.Vec{X: mid(xs, i), Y: mid(ys, j)}
			row[i] = f(p)
			if full != nil && !full(p) {
				row[i] = math.NaN()
			}
		}
		g.V = append(g.V, row)
	}
	return g
}

// graded are n+1 lines from 0 to length, closer at the start.
func graded(n int, length float64) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		t := float64(i) / float64(n)
		out[i] = length * t * (1 + t) / 2
	}
	return out
}

func whole() geom.Box { return geom.EmptyBox() }

func area(bands []geom.Region) float64 {
	sum := 0.0
	for _, b := range bands {
		sum += b.Area()
	}
	return sum
}

// A field x/100 + y/400 has straight lines of level: that of 0.5 from (25, 100) to (50, 0), on cells of
// any size, to the very edge, and its bands are what plane geometry makes them: below it a trapezium of
// 100 (50 + 25)/2 = 3750.
func TestLinearField(t *testing.T) {
	g := gridOf(graded(13, 100), graded(7, 100), func(p geom.Vec) float64 { return p.X/100 + p.Y/400 }, nil)
	m := Of(g, whole(), []float64{0.5}, 0.01)
	if len(m.Lines[0]) != 1 {
		t.Fatalf("%d lines, want 1", len(m.Lines[0]))
	}
	l := m.Lines[0][0]
	a, b := l.V[0].Vec, l.V[len(l.V)-1].Vec
	if len(l.V) != 2 || a.Dist(geom.Vec{X: 25, Y: 100}) > 1e-9 || b.Dist(geom.Vec{X: 50}) > 1e-9 {
		t.Errorf("line %v, want from (25, 100) to (50, 0): the higher side on the left", l.V)
	}
	if got := m.Bands[0].Area(); math.Abs(got-3750) > 1e-6 {
		t.Errorf("below the level lie %.6f, want 3750", got)
	}
	if got := area(m.Bands); math.Abs(got-10000) > 1e-6 {
		t.Errorf("all bands have %.6f, want 10000", got)
	}
}

// A level that runs exactly along a line of the grid, or through corners, is one line all the same.
func TestLevelOnTheGrid(t *testing.T) {
	lines := []float64{0, 1, 2, 3, 4}
	for name, f := range map[string]func(geom.Vec) float64{
		"along":   func(p geom.Vec) float64 { return p.X },
		"across":  func(p geom.Vec) float64 { return p.Y },
		"corners": func(p geom.Vec) float64 { return (p.X + p.Y) / 2 },
	} {
		m := Of(gridOf(lines, lines, f, nil), whole(), []float64{2}, 1e-6)
		if len(m.Lines[0]) != 1 || len(m.Lines[0][0].V) != 2 {
			t.Errorf("%s: lines %v", name, m.Lines[0])
		}
		if a, b := m.Bands[0].Area(), m.Bands[1].Area(); math.Abs(a-8) > 1e-9 || math.Abs(b-8) > 1e-9 {
			t.Errorf("%s: bands of %g and %g, want 8 and 8", name, a, b)
		}
	}
}

// Material with a slot and a hole in it: the bands cover it and nothing else, each point in one.
func TestBandsCoverTheMaterial(t *testing.T) {
	full := func(p geom.Vec) bool {
		return !(p.X > 40 && p.X < 60 && p.Y > 30) && !(p.X > 10 && p.X < 20 && p.Y > 10 && p.Y < 20)
	}
	lines := make([]float64, 51)
	for i := range lines {
		lines[i] = 2 * float64(i)
	}
	f := func(p geom.Vec) float64 { return math.Sin(p.X/17) + math.Cos(p.Y/23) + p.X/90 }
	m := Of(gridOf(lines, lines, f, full), whole(), []float64{-0.3, 0.2, 0.7, 1.1, 1.6}, 0)
	if got, want := area(m.Bands), 10000-20*70-10*10.; math.Abs(got-want) > 1e-6 {
		t.Errorf("bands have %.6f, the material %.6f", got, want)
	}
	if over := geom.Union(m.Bands...).Area(); math.Abs(over-8500) > 1e-3 {
		t.Errorf("the bands together cover %.6f, want 8500", over)
	}
	for k, b := range m.Bands {
		for _, r := range b {
			if r.Area() == 0 || !r.Closed {
				t.Errorf("band %d: ring %v", k, r.V)
			}
		}
	}
}

// A disc of warmth f = 1 - r/50: the level 0.4 is the circle of radius 30, to the height of a chord of one
// cell, 1/(8 r) = 0.004, and of the kinks of a field linear over triangles, some 0.02 on cells of 1.
func TestHotDisc(t *testing.T) {
	lines := make([]float64, 101)
	for i := range lines {
		lines[i] = float64(i) - 50
	}
	f := func(p geom.Vec) float64 { return 1 - p.Len()/50 }
	m := Of(gridOf(lines, lines, f, nil), whole(), []float64{0.4}, 0.02)
	if len(m.Lines[0]) != 1 || !m.Lines[0][0].Closed {
		t.Fatalf("lines %v", m.Lines[0])
	}
	for _, v := range m.Lines[0][0].V {
		if math.Abs(v.Len()-30) > 0.05 {
			t.Errorf("point %v at %.3f from the middle, want 30", v.Vec, v.Len())
		}
	}
	if got, want := m.Bands[1].Area(), math.Pi*900; math.Abs(got-want) > 0.003*want {
		t.Errorf("the disc has %.1f, want %.1f", got, want)
	}
	if n := len(m.Bands[0]); n != 2 {
		t.Errorf("the plate round the disc has %d rings, want 2", n)
	}
	if n := len(m.Lines[0][0].V); n > 160 { // a chord 0.02 high spans 2.2: 86 at least
		t.Errorf("%d points for a circle", n)
	}
}

// Neighbours share every point of their border, thinned or not.
func TestNeighboursShareTheirBorder(t *testing.T) {
	lines := graded(40, 100)
	f := func(p geom.Vec) float64 { return math.Sin(p.X/9)*math.Cos(p.Y/11) + p.Y/70 }
	m := Of(gridOf(lines, lines, f, nil), whole(), []float64{-0.2, 0.3, 0.8}, 0.8)
	if got := area(m.Bands); math.Abs(got-10000) > 1e-6 {
		t.Errorf("bands have %.6f of 10000: gaps or laps", got)
	}
	for k, ls := range m.Lines {
		for _, l := range ls {
			for _, v := range l.V {
				for _, b := range m.Bands[k : k+2] {
					if !has(b, v.Vec) {
						t.Fatalf("level %d passes %v, a band beside it does not", k, v.Vec)
					}
				}
			}
		}
	}
}

func has(r geom.Region, p geom.Vec) bool {
	return slices.ContainsFunc(r, func(q geom.Path) bool {
		return slices.ContainsFunc(q.V, func(v geom.Vertex) bool { return v.Vec == p })
	})
}

// A window that cuts through cells shows the field as it is there: x/100 in 33 to 71 by 12 to 55.
func TestWindow(t *testing.T) {
	g := gridOf(graded(9, 100), graded(6, 100), func(p geom.Vec) float64 { return p.X / 100 }, nil)
	m := Of(g, geom.Box{Min: geom.Vec{X: 33, Y: 12}, Max: geom.Vec{X: 71, Y: 55}}, []float64{0.5}, 0.001)
	if a, b := m.Bands[0].Area(), m.Bands[1].Area(); math.Abs(a-17*43) > 1e-6 || math.Abs(b-21*43) > 1e-6 {
		t.Errorf("bands of %g and %g, want %d and %d", a, b, 17*43, 21*43)
	}
	if b := m.Bands[0].Bounds(); b.Min.Dist(geom.Vec{X: 33, Y: 12}) > 1e-9 {
		t.Errorf("the picture begins at %v", b.Min)
	}
	none := Of(g, geom.Box{Min: geom.Vec{X: 200, Y: 200}, Max: geom.Vec{X: 300, Y: 300}}, []float64{0.5}, 0)
	if len(none.Bands) != 2 || area(none.Bands) != 0 {
		t.Errorf("beyond the grid stand %v", none.Bands)
	}
}

// One cell has no neighbour to tell a slope from: it is of one value.
func TestOneCell(t *testing.T) {
	m := Of(Grid{X: []float64{0, 2}, Y: []float64{0, 3}, V: [][]float64{{0.7}}}, whole(), []float64{0.5, 0.9}, 0)
	if a := m.Bands[1].Area(); a != 6 || len(m.Bands[0])+len(m.Bands[2]) > 0 {
		t.Errorf("bands %v", m.Bands)
	}
}

func BenchmarkOf(b *testing.B) {
	lines := graded(250, 1000)
	f := func(p geom.Vec) float64 { return math.Sin(p.X/190)*math.Cos(p.Y/110) + p.Y/700 }
	g := gridOf(lines, lines, f, nil)
	levels := []float64{-0.6, -0.3, 0, 0.3, 0.6, 0.9, 1.2}
	for b.Loop() {
		Of(g, whole(), levels, 0.25)
	}
}
