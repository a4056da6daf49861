package asbuilt

import (
	"math"
	"testing"
)

// Which columns count when fasteners are missing.
func TestWholeColumns(t *testing.T) {
	for _, c := range []struct{ n, lost, want int }{{1, 1, 0}, {2, 1, 1}, {2, 2, 0}, {3, 1, 1}, {3, 2, 0}, {4, 1, 2}, {4, 2, 0}, {5, 1, 3}} {
		if got := whole(c.n, c.lost); got != c.want {
			t.Errorf("%d columns, %d missing: %d count, want %d", c.n, c.lost, got, c.want)
		}
	}
}

// The load on three fasteners of a two by two group, by the elastic sum of a fastener group (statics): V/3 each and
// the moment V b/6 shared by distance from their centre. None takes more than half of V, whatever the proportions.
func TestThreeOfFour(t *testing.T) {
	for _, ratio := range []float64{0.01, 0.2, 0.5, 1, 1.17, 2, 10} {
		b, h := 1.0, ratio
		at := [][2]float64{{0, 0}, {b, 0}, {b, h}}
		cx, cz, polar, most := 2*b/3, h/3, 0.0, 0.0
		for _, p := range at {
			polar += (p[0]-cx)*(p[0]-cx) + (p[1]-cz)*(p[1]-cz)
		}
		moment := cx - b/2 // of V = 1 between the columns
		for _, p := range at {
			down := 1./3 - moment*(p[0]-cx)/polar
			side := moment * (p[1] - cz) / polar
			most = math.Max(most, math.Hypot(down, side))
		}
		if most > 0.5+1e-4 || most < 1./3 {
			t.Errorf("h/b %.2f: %.4f V on one", ratio, most)
		}
	}
}
