package detail

import (
	"math"
	"testing"
)

// 178 in, 14'-8" and two dams of 1 in, from sticks of 120 in with laps of 4 in: two pieces of (178 + 4)/2 = 91 in.
// 240 in take ceil((240 - 4)/(120 - 4)) = 3 pieces of (240 + 8)/3 = 82.667 in. A lap moves to the good place beside
// it, but not where a piece would grow past its stick: 236 in are 2 pieces of just 120 in.
func TestDivide(t *testing.T) {
	for _, c := range []struct {
		long float64
		good []float64
		want []float64 // lengths
	}{
		{178, nil, []float64{91, 91}}, {240, nil, []float64{82.667, 82.667, 82.667}}, {120, nil, []float64{120}},
		{178, []float64{80, 160}, []float64{82, 100}}, {236, []float64{100}, []float64{120, 120}},
	} {
		got := divide(0, c.long, 120, 4, c.good)
		if len(got) != len(c.want) {
			t.Errorf("%.0f in: %d pieces, want %d", c.long, len(got), len(c.want))
			continue
		}
		for i, p := range got {
			if math.Abs(p[1]-p[0]-c.want[i]) > 0.01 {
				t.Errorf("%.0f in: piece %d is %.3f long, want %.3f", c.long, i+1, p[1]-p[0], c.want[i])
			}
		}
		if got[0][0] != 0 || math.Abs(got[len(got)-1][1]-c.long) > 1e-6 {
			t.Errorf("%.0f in: the pieces run from %.3f to %.3f", c.long, got[0][0], got[len(got)-1][1])
		}
	}
}
