package geom

import (
	"math"
	"testing"
)

// A box 10 x 20 x 30 cut by a box that leaves 4 x 5 x 6 of it, drawn along each axis and against it.
func TestWithinByHand(t *testing.T) {
	keep := Box3{Min: Vec3{6, 15, 24}, Max: Vec3{99, 99, 99}}
	against := Extrude(Rect(0, 0, 10, 20), Vec3{Z: 30}, X.Unit(), Y.Unit(), Z.Unit(), -30)
	turned := Extrude(Rect(-10, 0, 0, 30), Vec3{}, Vec3{X: -1}, Z.Unit(), Y.Unit(), 20)
	for name, s := range map[string]Solid{
		"along x": Prism(Rect(0, 0, 20, 30), X, 0, 10), "along y": Prism(Rect(0, 0, 10, 30), Y, 0, 20), "along z": Prism(Rect(0, 0, 10, 20), Z, 0, 30), "against z": against, "mirrored": turned,
	} {
		got := s.Within(keep)
		if len(got) != 1 || math.Abs(got[0].Volume()-4*5*6) > 1e-9 || !got[0].Bounds().Min.Near(keep.Min) || !got[0].Bounds().Max.Near(Vec3{10, 20, 30}) {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// A frame 10 wide about a hole of 10, cut across the hole, leaves two posts; off the body it leaves nothing.
func TestWithinParts(t *testing.T) {
	frame := Prism(Subtract(Rect(0, 0, 30, 30), Rect(10, 10, 20, 20)), Y, 0, 2)
	posts := frame.Within(Box3{Min: Vec3{-1, -1, 12}, Max: Vec3{31, 3, 18}})
	if len(posts) != 2 || math.Abs(posts[0].Volume()+posts[1].Volume()-2*10*6*2) > 1e-9 {
		t.Errorf("%d parts: %+v", len(posts), posts)
	}
	if got := frame.Within(Box3{Min: Vec3{-1, 5, -1}, Max: Vec3{31, 9, 31}}); len(got) != 0 {
		t.Errorf("a box in front of the body keeps %+v", got)
	}
}
