package detail_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
)

func lumberOf(t *testing.T, a *detail.Assembly, mark string) detail.Lumber {
	t.Helper()
	for _, l := range a.CutList() {
		for _, s := range l.Sticks {
			for _, c := range s.Cuts {
				if c.Mark == mark {
					return l
				}
			}
		}
	}
	t.Fatalf("no stick holds %s", mark)
	return detail.Lumber{}
}

func TestCutListByHand(t *testing.T) {
	// Nine blocks of two plies of 7 in from the 2x10 of the ledger: 18 plies. The ledger, 176 in, does not come
	// from a 10 ft stick: 176 1/2 with the trim, so 16 ft. Left of that 192 - 1/2 - 176 = 15 1/2, which holds
	// two plies of 7 with a kerf before each, 14 1/4: 1 1/4 is left. Of the other 16 a 10 ft stick holds
	// floor((120 - 1/2 + 1/8)/7 1/8) = 16, and 120 - 1/2 - 112 - 15/8 = 5 5/8 is left. Two sticks.
	a := detailtest.Demo(t, "deck", "blocks.width=7in", "stock.length=10ft", "blocks.plies=[1 1/2in, 1 1/2in]")
	l := lumberOf(t, a, "L1")
	if len(l.Sticks) != 2 || !l.Exact || l.Least != 2 {
		t.Fatalf("%d sticks, at least %d, exact %t; want 2, proved", len(l.Sticks), l.Least, l.Exact)
	}
	want := []struct {
		length, left float64
		pieces       int
	}{{192, 1.25, 3}, {120, 5.625, 16}}
	for i, s := range l.Sticks {
		if w := want[i]; math.Abs(s.Length.Inches()-w.length) > 1e-9 || s.Pieces() != w.pieces || math.Abs(s.Left.Inches()-w.left) > 1e-9 {
			t.Errorf("stick %d: %.3f in, %d pieces, %.4f left; want %+v", i+1, s.Length.Inches(), s.Pieces(), s.Left.Inches(), w)
		}
	}
	// 312 in bought, 176 + 18 x 7 = 302 in used
	if got := 100 * float64(l.Waste()); math.Abs(got-100*10.0/312) > 1e-9 {
		t.Errorf("waste %.3f %%, want 3.205", got)
	}
}

func TestUprightGrainIsRippedAndCutByHeight(t *testing.T) {
	// Grain upright: plies 8 3/4 in wide are ripped from a 9 1/4 in board and cut 9 1/4 in long; with a fall of
	// 1:12 the second is 1 1/2/12 = 1/8 in shorter.
	a := detailtest.Demo(t, "deck", "blocks.grain=vertical", "blocks.plies=[1 1/2in, 1 1/2in]")
	l := lumberOf(t, a, "P2")
	if l.Ripped.Inches() != 8.75 || l.Height.Inches() != 9.25 {
		t.Errorf("%.3f in ripped from %.3f, want 8.75 from 9.25", l.Ripped.Inches(), l.Height.Inches())
	}
	each := map[string]float64{}
	for _, s := range l.Sticks {
		for _, c := range s.Cuts {
			each[c.Mark] = c.Each.Inches()
		}
	}
	if math.Abs(each["P1"]-9.25) > 1e-9 || math.Abs(each["P2"]-9.125) > 1e-9 {
		t.Errorf("pieces %v, want P1 9.25 and P2 9.125", each)
	}
}

func TestEveryPieceOfWoodIsCutOnce(t *testing.T) {
	eachDemo(t, func(t *testing.T, a *detail.Assembly) {
		seen := map[string]int{}
		for _, l := range a.CutList() {
			for _, s := range l.Sticks {
				for _, c := range s.Cuts {
					for _, id := range c.IDs {
						seen[id]++
					}
				}
			}
			if !l.Exact {
				t.Errorf("%s: %d sticks are not proved", l.Material, len(l.Sticks))
			}
		}
		for _, p := range a.Find(detail.BlockPly, detail.FootPiece, detail.Ledger, detail.Backing) {
			if seen[p.ID] != 1 {
				t.Errorf("%s is cut %d times", p.ID, seen[p.ID])
			}
			delete(seen, p.ID)
		}
		if len(seen) > 0 {
			t.Errorf("cut and not built: %v", seen)
		}
	})
}
