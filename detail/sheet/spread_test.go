package sheet

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestSpreadByHand(t *testing.T) {
	// Three texts 4 high that all want height 10 stand at 6, 10 and 14: together as near as they can be.
	s := []slot{{want: 10, before: 2, after: 2}, {want: 10, before: 2, after: 2}, {want: 10, before: 2, after: 2}}
	spread(s)
	for i, want := range []float64{6, 10, 14} {
		if math.Abs(s[i].at-want) > 1e-9 {
			t.Errorf("slot %d at %g, want %g", i, s[i].at, want)
		}
	}
	// A text far from the others stays where it wants to be.
	s = []slot{{want: 0, before: 2, after: 2}, {want: 1, before: 2, after: 2}, {want: 50, before: 2, after: 2}}
	spread(s)
	if s[2].at != 50 || math.Abs(s[0].at+1.5) > 1e-9 || math.Abs(s[1].at-2.5) > 1e-9 {
		t.Errorf("slots at %g, %g, %g, want -1.5, 2.5, 50", s[0].at, s[1].at, s[2].at)
	}
}

func TestSpreadNeverOverlaps(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		s := make([]slot, 1+r.IntN(12))
		w := 0.0
		for i := range s {
			w += r.Float64() * 5
			s[i] = slot{want: w, before: r.Float64() * 3, after: r.Float64() * 3}
		}
		spread(s)
		for i := 1; i < len(s); i++ {
			if s[i].at-s[i].before < s[i-1].at+s[i-1].after-1e-9 {
				t.Fatalf("slots %d and %d overlap: %+v", i-1, i, s)
			}
		}
	}
}

func TestGaps(t *testing.T) {
	got := gaps([]span{{5, 8}, {1, 3}, {2, 4}}, 0, 10)
	want := []span{{0, 1}, {4, 5}, {8, 10}}
	if len(got) != len(want) {
		t.Fatalf("gaps %v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("gap %d is %v, want %v", i, got[i], want[i])
		}
	}
}

// Lane texts keep off the extension lines that pass further out.
func TestLaneKeepsOffWalls(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	c := &composer{k: 1}
	for range 500 {
		l := make([]slot, 1+r.IntN(6))
		x := 0.0
		for i := range l {
			x += 4 + r.Float64()*10
			l[i] = slot{want: x, before: 3, after: 3}
		}
		var walls []float64
		for range r.IntN(4) {
			walls = append(walls, r.Float64()*60)
		}
		c.lane(l, walls)
		for i, s := range l {
			for _, w := range walls {
				if w > s.at-s.before+1e-9 && w < s.at+s.after-1e-9 {
					t.Fatalf("text %d at %g is crossed at %g", i, s.at, w)
				}
			}
			if i > 0 && s.at-s.before < l[i-1].at+l[i-1].after-1e-9 {
				t.Fatalf("texts %d and %d overlap", i-1, i)
			}
		}
	}
}

func TestWords(t *testing.T) {
	for in, want := range map[string]string{
		"1 1/2 x 9 1/4, 1,500 lb at 40 psf, 6.7 kN": "1 1/2 x 9 1/4, 1,500 lb AT 40 psf, 6.7 kN",
		"lvl 45 mm thick": "LVL 45 mm THICK",
	} {
		if got := caps(in); got != want {
			t.Errorf("caps(%q) = %q, want %q", in, got, want)
		}
	}
	for _, l := range wrap(`LEDGER 1 1/2" x 9 1/4" TREATED`, 2.5, 20, false) {
		if l == "1" || l == "9" || l == `1/2"` || l == `1/4"` {
			t.Errorf("a fraction is parted from its whole: %q", l)
		}
	}
}
