package geom

import (
	"math"
	"testing"
)

// at reports an error unless two points are one within 1e-9.
func at(t *testing.T, what string, got, want Vec) {
	t.Helper()
	if !(got.Dist(want) <= 1e-9) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

func TestXformByHand(t *testing.T) {
	p := Vec{3, 1}
	tests := []struct {
		name string
		x    Xform
		want Vec
	}{
		{"identity", Identity(), Vec{3, 1}},
		{"translate", Translate(Vec{10, -2}), Vec{13, -1}},
		{"quarter turn about (1,1)", Rotate(math.Pi/2, Vec{1, 1}), Vec{1, 3}},
		{"half turn about (1,1)", Rotate(math.Pi, Vec{1, 1}), Vec{-1, 1}},
		{"scale", Scale(2), Vec{6, 2}},
		{"mirror in x axis", Mirror(Vec{}, Vec{5, 0}), Vec{3, -1}},
		{"mirror in x = 1", Mirror(Vec{1, 0}, Vec{1, 7}), Vec{-1, 1}},
		{"mirror in the diagonal", Mirror(Vec{}, Vec{1, 1}), Vec{1, 3}},
		{"mirror in nothing", Mirror(Vec{2, 2}, Vec{2, 2}), Vec{3, 1}},
		{"scale, then move", Scale(2).Then(Translate(Vec{1, 1})), Vec{7, 3}},
		{"move, then scale", Translate(Vec{1, 1}).Then(Scale(2)), Vec{8, 4}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { at(t, "image", tt.x.Apply(p), tt.want) })
	}
}

func TestTransformKeepsShape(t *testing.T) {
	r := Subtract(Union(Rect(0, 0, 30, 10), Circle(Vec{30, 5}, 5)), Circle(Vec{30, 5}, 2))
	for _, tt := range []struct {
		name  string
		x     Xform
		scale float64
	}{
		{"turn", Rotate(0.7, Vec{4, 4}), 1},
		{"mirror", Mirror(Vec{1, 2}, Vec{5, -3}), 1},
		{"mirror, turn, enlarge", Mirror(Vec{}, Vec{1, 0}).Then(Rotate(2, Vec{9, 9})).Then(Scale(3)), 3},
		{"shrink and turn half", Scale(-0.5), 0.5},
	} {
		t.Run(tt.name, func(t *testing.T) {
			q := r.Transform(tt.x)
			near(t, "area", q.Area(), r.Area()*tt.scale*tt.scale, 1e-9)
			near(t, "perimeter", perimeter(q), perimeter(r)*tt.scale, 1e-9)
			at(t, "centroid", q.Centroid(), tt.x.Apply(r.Centroid()))
			if q[0].Area() < 0 || q[1].Area() > 0 {
				t.Errorf("ring areas %g and %g: outer rings run counter-clockwise, islands clockwise", q[0].Area(), q[1].Area())
			}
		})
	}
	if q := r.Move(Vec{5, 7}); q.Bounds() != r.Bounds().Move(Vec{5, 7}) {
		t.Errorf("moved bounds %v", q.Bounds())
	}
	if Region(nil).Transform(Scale(2)) != nil {
		t.Error("the empty region did not stay empty")
	}
}

func TestMirroredArc(t *testing.T) {
	// A quarter circle up from (1,0) about the origin; mirrored in the x axis it runs down.
	p := Arc(Vec{}, 1, 0, math.Pi/2).Transform(Mirror(Vec{}, Vec{1, 0}))
	at(t, "end", p.V[1].Vec, Vec{0, -1})
	at(t, "middle", p.Segs()[0].Mid(), Vec{math.Sqrt2 / 2, -math.Sqrt2 / 2})
}
