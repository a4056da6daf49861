package geom

import (
	"math"
	"testing"
)

// A cropped box is the box that both have in common: its volume is worked by hand.
func TestCropKeepsWhatIsInside(t *testing.T) {
	room := Box3{Vec3{10, 20, 30}, Vec3{60, 70, 80}} // 50 x 50 x 50
	tri := Region{Polygon(Vec{0, 0}, Vec{100, 0}, Vec{0, 100})}
	for _, c := range []struct {
		name string
		s    Solid
		want float64
	}{
		{"box within", BoxSolid(Box3{Vec3{20, 30, 40}, Vec3{30, 40, 50}}), 1000},
		{"box over a corner", BoxSolid(Box3{Vec3{0, 0, 0}, Vec3{30, 40, 50}}), 20 * 20 * 20},
		{"box beside", BoxSolid(Box3{Vec3{70, 0, 0}, Vec3{90, 90, 90}}), 0},
		{"bar drawn against its axis", Extrude(Rect(0, 0, 100, 100), Vec3{0, 0, 100}, X.Unit(), Y.Unit(), Z.Unit(), -100), 50 * 50 * 50},
		// the triangle x + z <= 100 over 10..60 x 30..80 leaves the corner x + z > 100 out: legs 40
		{"wedge along y", Prism(tri, Y, 0, 100), (50*50 - 40*40/2) * 50},
		{"bar at a slant stays whole", Solid{Rect(0, 0, 10, 10), Vec3{}, Vec3{1, 0, 0}, Vec3{0, math.Sqrt2 / 2, -math.Sqrt2 / 2}, Vec3{0, math.Sqrt2 / 2, math.Sqrt2 / 2}, 100, nil}, 10000},
	} {
		got := c.s.Crop(room)
		v := 0.0
		if !got.Empty() {
			v = got.Volume()
		}
		if math.Abs(v-c.want) > 1e-6*(1+c.want) {
			t.Errorf("%s: %.4f mm3, want %.4f", c.name, v, c.want)
		}
		if b := got.Bounds(); c.name[0] != 'b' && v > 0 && (b.Min.X < room.Min.X-Tol || b.Max.Z > room.Max.Z+Tol) {
			t.Errorf("%s reaches out of the room: %v", c.name, b)
		}
	}
}

// A line in space that passes behind a box is seen up to the box and after it. Seen from the front, a line
// from x = -100 to 300 behind a box from 0 to 100 shows 100 + 200 = 300 mm.
func TestLinesHideBehindSolids(t *testing.T) {
	s := BoxSolid(Box3{Vec3{0, 0, -50}, Vec3{100, 40, 50}})
	es := Project(AxisView(Y, 1, 0), []Solid{s}, ProjectOptions{NoHidden: true, Lines: [][2]Vec3{
		{{-100, -20, 0}, {300, -20, 0}}, {{-100, 60, 10}, {300, 60, 10}},
	}})
	var l [3]float64
	for _, e := range es {
		l[e.Solid] += e.Path.Length()
	}
	if math.Abs(l[0]-400) > 1e-6 || math.Abs(l[1]-300) > 1e-6 || math.Abs(l[2]-400) > 1e-6 {
		t.Errorf("drawn are %v mm of the box, the line behind and the line in front; want 400, 300, 400", l)
	}
}
