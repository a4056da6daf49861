package sheet

import (
	"math"
	"testing"
)

func TestSparesAreRoundedUp(t *testing.T) {
	// 5 % of 36 is 1.8, of 360 is 18, of 1 is 0.05, of 0 is none
	for n, want := range map[int]int{0: 0, 1: 1, 20: 1, 21: 2, 36: 2, 360: 18, 361: 19} {
		if got := spares(n); got != want {
			t.Errorf("%d spares of %d, want %d", got, n, want)
		}
	}
}

func TestFlashingSticks(t *testing.T) {
	// Sticks of 10 ft that lap 4 in: one covers 120 in, two 236, three 352.
	for run, want := range map[float64]int{0: 0, 8.5: 1, 120: 1, 120.1: 2, 178: 2, 236: 2, 236.1: 3} {
		if got := flashingSticks(run, 120, 4); got != want {
			t.Errorf("%d sticks for %.1f in, want %d", got, run, want)
		}
	}
}

func TestCeilTo(t *testing.T) {
	if got := ceilTo(27.31, 0.1); math.Abs(got-27.4) > 1e-9 {
		t.Errorf("%v, want 27.4", got)
	}
	if got := ceilTo(0.3, 0.1); math.Abs(got-0.3) > 1e-9 {
		t.Errorf("%v, want 0.3: it is on the step", got)
	}
}
