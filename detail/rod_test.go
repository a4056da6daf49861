package detail_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
	"standclear/geom"
)

// Every round thing has its own diameter: the holes of plies, rim and ledger, bolts and screws.
func TestRoundThings(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	set, screws := a.Spec.Fasteners.Through, a.Spec.Blocks.PlyScrews
	round := func(what string, s geom.Solid, want float64) {
		if b := s.Bounds(); math.Abs(b.Max.X-b.Min.X-want) > 1e-9 || math.Abs(b.Max.Z-b.Min.Z-want) > 1e-9 {
			t.Errorf("%s: %.4f by %.4f, want %.4f", what, b.Max.X-b.Min.X, b.Max.Z-b.Min.Z, want)
		}
	}
	holes := 0
	for _, p := range a.Find(detail.BlockPly, detail.Rim, detail.Backing, detail.Sheathing, detail.Ledger) {
		for _, s := range p.Bores {
			holes++
			round(p.ID, s, set.Hole.MM())
		}
	}
	bolts, all := a.Find(detail.Bolt), a.Find(detail.PlyScrew)
	for _, p := range bolts {
		round(p.ID, p.Solids[1], set.Diameter.MM())
	}
	for _, p := range all {
		round(p.ID, p.Solids[0], screws.Diameter.MM())
	}
	if holes == 0 || len(bolts) == 0 || len(all) == 0 {
		t.Errorf("%d holes, %d bolts, %d screws", holes, len(bolts), len(all))
	}
}
