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

func TestCeilTo(t *testing.T) {
	if got := ceilTo(27.31, 0.1); math.Abs(got-27.4) > 1e-9 {
		t.Errorf("%v, want 27.4", got)
	}
	if got := ceilTo(0.3, 0.1); math.Abs(got-0.3) > 1e-9 {
		t.Errorf("%v, want 0.3: it is on the step", got)
	}
}
