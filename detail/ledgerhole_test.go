package detail_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
)

// The first hole of the deck by hand: block B1 stands 12 1/2 in from the end, its columns 3 1/4 in apart: 10 7/8 in.
// The rows lie 2 13/16 and 6 5/8 in below the top of the 9 1/4 in ledger: 6 7/16 and 2 5/8 in above its foot.
func TestLedgerHolesByHand(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	got := a.LedgerHoles(a.Find(detail.Ledger)[0])
	if len(got) != 36 {
		t.Fatalf("%d holes for 36 bolts", len(got))
	}
	near(t, "x", got[0].X/25.4, 10.875)
	near(t, "lower row", got[0].Z/25.4, 2.625)
	near(t, "upper row", got[1].Z/25.4, 6.4375)
	for _, h := range got {
		if h.Hanger != "" || h.Washer != "" {
			t.Errorf("hole at %.1f mm lies under %s%s, though the check of the demo holds", h.X, h.Hanger, h.Washer)
		}
	}
}

// A joist set on the first bolt axis is found at both holes of that column; one whose hanger ends 1 in beside the axis
// takes no hole but the 3 in washers.
func TestLedgerHolesUnderHangers(t *testing.T) {
	for _, c := range []struct {
		at            string
		hole, washers int
	}{{"10 7/8in", 2, 4}, {"7 7/8in", 0, 2}} {
		a := detailtest.Demo(t, "deck", "deck.joists.positions=["+c.at+", 5ft]")
		hole, washers := 0, 0
		for _, h := range a.LedgerHoles(a.Find(detail.Ledger)[0]) {
			if h.Hanger == "HG1" {
				hole++
			}
			if h.Washer == "HG1" {
				washers++
			}
		}
		if hole != c.hole || washers != c.washers {
			t.Errorf("joist at %s: %d holes and %d washers under its hanger, want %d and %d", c.at, hole, washers, c.hole, c.washers)
		}
	}
}

// Every bolt has its hole in one piece of the ledger, whatever the splices.
func TestLedgerHolesCount(t *testing.T) {
	for _, name := range []string{"deck", "balcony", "deck-metric", "balcony-metric"} {
		a := detailtest.Demo(t, name)
		n := 0
		for _, p := range a.Find(detail.Ledger) {
			n += len(a.LedgerHoles(p))
			for _, h := range a.LedgerHoles(p) {
				if math.Abs(h.X+p.Bounds().Min.X-a.Blocks[h.Block].X) > a.Spec.Blocks.Width.MM()/2 {
					t.Errorf("%s: a hole at %.0f mm is not at its block", name, h.X)
				}
			}
		}
		if n != a.Count(detail.Bolt) {
			t.Errorf("%s: %d holes for %d bolts", name, n, a.Count(detail.Bolt))
		}
	}
}
