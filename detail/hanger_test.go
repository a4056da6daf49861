package detail_test

import (
	"fmt"
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
)

// A hanger keeps its outer flanges where the ledger has wood for both: worked by hand for joists of 1 1/2 in with
// flanges of 1 1/4 in, which reach 3/4 + 1 1/4 = 2 in either way of the axis, 3/4 in with the flanges turned in. The
// ledger of the demo is 14'-8" long.
func TestHangerSpan(t *testing.T) {
	const in = 25.4
	for _, c := range []struct {
		name, splices       string
		at, lo, hi, room    float64 // in; room is the least one of this joist and one at 10 ft
		turned              bool
		marks, other, least int
	}{
		{"flush with the end", "[]", 0.75, 0, 1.5, 0, true, 1, 1, 0},
		{"one sixteenth too near", "[]", 1.9375, 1.1875, 2.6875, 1.1875, true, 1, 1, 0},
		{"just wood enough", "[]", 2, 0, 4, 0, false, 0, 2, 0},
		{"half past the end", "[]", 0.25, -0.5, 1, -0.5, true, 1, 1, 0},
		{"beside a splice at 5 ft", "[5ft]", 61.5, 60.75, 62.25, 0.75, true, 1, 1, 0},
		{"astride a splice at 5 ft", "[5ft]", 60, 59.25, 60.75, -0.75, true, 1, 1, 0},
	} {
		a := detailtest.Demo(t, "deck", "ledger.splices="+c.splices, fmt.Sprintf("deck.joists.positions=[%gin, 10ft]", c.at))
		lo, hi, turned := a.HangerSpan(0)
		if math.Abs(lo-c.lo*in) > 1e-6 || math.Abs(hi-c.hi*in) > 1e-6 || turned != c.turned {
			t.Errorf("%s: %.4f to %.4f in, turned in %v; want %.4f to %.4f, %v", c.name, lo/in, hi/in, turned, c.lo, c.hi, c.turned)
		}
		if room, j := a.HangerRoom(); math.Abs(room-c.room*in) > 1e-6 || j != c.least {
			t.Errorf("%s: room %.4f in at joist %d, want %.4f at %d", c.name, room/in, j, c.room, c.least)
		}
		if n, m := a.CountMark(detail.Concealed), a.CountMark("HG1"); n != c.marks || m != c.other {
			t.Errorf("%s: %d concealed and %d other hangers, want %d and %d", c.name, n, m, c.marks, c.other)
		}
		if b := a.Find(detail.Hanger)[0].Bounds(); math.Abs(b.Min.X-c.lo*in) > 1.3 { // the sheet of its side is 1.2 mm
			t.Errorf("%s: drawn from %.4f in", c.name, b.Min.X/in)
		}
	}
}
