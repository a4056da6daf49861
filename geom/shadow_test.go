package geom

import (
	"math"
	"testing"
)

// The area a body covers is the sum of its faces that are seen, each by the cosine it is seen under. An
// isometric view sees three faces of a box by 1/sqrt(3) each.
func TestShadowCoversWhatIsSeen(t *testing.T) {
	iso := Isometric(Vec3{5, 6, 7}, -1, 1)
	for _, c := range []struct {
		name  string
		s     Solid
		v     View
		want  float64
		rings int
	}{
		{"cube, isometric", BoxSolid(Box3{Vec3{}, Vec3{10, 10, 10}}), iso, 300 / math.Sqrt(3), 1},
		{"board, isometric", BoxSolid(Box3{Vec3{}, Vec3{100, 2, 50}}), iso, (100*2 + 100*50 + 2*50) / math.Sqrt(3), 1},
		{"bar from its side", Cylinder(Vec3{}, Y, 4, 30), AxisView(X, 1, 0), 8 * 30, 1},
		{"bar from its end", Cylinder(Vec3{}, Y, 4, 30), AxisView(Y, 1, 0), math.Pi * 16, 1},
		// a thin frame: the hole of 40 x 40 stays open but for what 1 mm of depth covers: 1 mm each way of
		// two sides, by 1/sqrt(3)
		{"frame, isometric", Prism(Subtract(Rect(0, 0, 60, 60), Rect(10, 10, 50, 50)), Y, 0, 1), iso, (60*60 - 39*39 + 2*60) / math.Sqrt(3), 2},
	} {
		got := c.s.Shadow(c.v)
		if math.Abs(got.Area()-c.want) > 5e-3*c.want || len(got) != c.rings {
			t.Errorf("%s: %d rings of %.4f mm2, want %d of %.4f", c.name, len(got), got.Area(), c.rings, c.want)
		}
	}
}
