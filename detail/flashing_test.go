package detail_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
)

// Under the door of the inch deck, 70 to 142 in, F1 ends at the subfloor's top, -3/4; it starts at the cavity's
// outer face, 2 3/8 + 3/4 = 3 1/8 out, 1/8 x (3 3/4 - 3 1/8) over the ledger's top at -4 1/4: 3.4219 in up. Beside
// the door it stands its 4 in. Its ends are folded up 1 in just past the ledger, 0 and 176 in.
func TestFlashingAtDoorAndEnds(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck")
	if got := a.Upstand() / in; math.Abs(got-3.421875) > 1e-9 {
		t.Errorf("least upstand %.6f in, want 3.421875", got)
	}
	f1 := a.Find(detail.Flashing)[0]
	left, right, over := false, false, math.Inf(-1)
	for _, s := range f1.Solids {
		b := s.Bounds()
		left, right = left || b.Max.X < 1e-9, right || b.Min.X > 176*in-1e-9
		if b.Min.X > 69*in && b.Max.X < 143*in {
			over = math.Max(over, b.Max.Z)
		}
	}
	if !left || !right {
		t.Errorf("end dams: left %v, right %v", left, right)
	}
	if math.Abs(over/in+0.75) > 1e-6 {
		t.Errorf("F1 under the door reaches %.4f in, want the sill at -0.75", over/in)
	}
	if b := f1.Bounds(); math.Abs(b.Min.X+0.024*in) > 1e-6 || math.Abs(b.Max.X-176.024*in) > 1e-6 {
		t.Errorf("F1 runs from %.4f to %.4f in", b.Min.X/in, b.Max.X/in)
	}
	up := detailtest.Demo(t, "deck", "doors=")
	if got := up.Upstand() / in; math.Abs(got-4) > 1e-9 {
		t.Errorf("without a door the upstand is %.4f in, want 4", got)
	}
}
