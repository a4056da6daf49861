package geom

import (
	"math"
	"testing"
)

// deck returns about 800 solids as they stand in a deck: boards, joists and blocks, and 150 bolts with
// hexagon nuts.
func deck() []Solid {
	var ss []Solid
	box := func(x0, y0, z0, x1, y1, z1 float64) {
		ss = append(ss, BoxSolid(Box3{Vec3{x0, y0, z0}, Vec3{x1, y1, z1}}))
	}
	for i := range 50 { // blocks, pads, studs and the boards of the wall behind
		x := 200 * float64(i)
		box(x, 0, 0, x+140, 60, 235)
		box(x, 60, 0, x+140, 75, 235)
		box(x, -100, -300, x+38, -12, 2400)
		box(x+60, -150, -300, x+98, -62, 2400)
	}
	box(0, -12, -300, 10000, 0, 2400)
	box(0, 75, 0, 10000, 113, 235)
	box(0, 113, 0, 10000, 151, 235)
	for i := range 100 { // joists
		x := 100 * float64(i)
		box(x, 151, 0, x+38, 3000, 235)
	}
	for i := range 199 { // decking
		y := 100 + 14*float64(i)
		box(0, y, 235, 10000, y+13, 260)
	}
	for i := range 150 {
		x, z := 30+66*float64(i), 60+float64(i%3)*55
		ss = append(ss, Cylinder(Vec3{x, -60, z}, Y, 6.35, 240), hexNut(x, z, 151))
	}
	return ss
}

func hexNut(x, z, y float64) Solid {
	var pts []Vec
	for i := range 6 {
		pts = append(pts, Polar(Vec{x, z}, 11, float64(i)*math.Pi/3))
	}
	return Prism(Region{Polygon(pts...)}, Y, y, y+10)
}

func BenchmarkProject(b *testing.B) {
	solids := deck()
	b.Logf("%d solids", len(solids))
	for _, v := range []struct {
		name string
		view View
		o    ProjectOptions
	}{
		{"front", AxisView(Y, 1, 0), ProjectOptions{}},
		{"front visible", AxisView(Y, 1, 0), ProjectOptions{NoHidden: true}},
		{"side", AxisView(X, 1, 0), ProjectOptions{}},
		{"plan", AxisView(Z, 1, 0), ProjectOptions{}},
		{"section", AxisView(X, -1, 1030), ProjectOptions{Cut: true}},
		{"isometric", Isometric(Vec3{}, 1, 1), ProjectOptions{}},
	} {
		b.Run(v.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Project(v.view, solids, v.o)
			}
		})
	}
}

func BenchmarkUnion(b *testing.B) {
	var rs []Region
	for i := range 100 {
		x := float64(i)
		rs = append(rs, Rect(x*10, 0, x*10+12, 40+x), Circle(Vec{x * 10, 20}, 6))
	}
	for b.Loop() {
		Union(rs...)
	}
}

func BenchmarkSubtractDisc(b *testing.B) {
	x, y := Rect(0, 0, 100, 100), Circle(Vec{50, 50}, 8)
	for b.Loop() {
		Subtract(x, y)
	}
}
