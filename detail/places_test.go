package detail_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
	"standclear/geom"
)

func shared(a, b geom.Box3) bool {
	const touch = 0.3
	return math.Min(a.Max.X, b.Max.X)-math.Max(a.Min.X, b.Min.X) > touch && math.Min(a.Max.Y, b.Max.Y)-math.Max(a.Min.Y, b.Min.Y) > touch &&
		math.Min(a.Max.Z, b.Max.Z)-math.Max(a.Min.Z, b.Min.Z) > touch
}

// No rod runs through the flange of a hanger.
func TestRodsClearOfHangers(t *testing.T) {
	eachDemo(t, func(t *testing.T, a *detail.Assembly) {
		for _, rod := range a.Find(detail.TensionRod) {
			for _, h := range a.Find(detail.Hanger) {
				for _, s := range h.Solids {
					if shared(rod.Bounds(), s.Bounds()) {
						t.Errorf("%s through %s", rod.ID, h.ID)
					}
				}
			}
		}
	})
}

// No rod runs through a duct.
func TestRodsClearOfObstacles(t *testing.T) {
	a := detailtest.Demo(t, "deck", "obstacles.0.from=3in", "obstacles.0.to=6in")
	if shared(a.Find(detail.TensionRod)[0].Bounds(), a.Find(detail.Obstacle)[0].Bounds()) {
		t.Error("LT1 through the duct")
	}
}

// A device stands beside a deck joist that is there, or says that it has none.
func TestDeviceDeckJoistIsThere(t *testing.T) {
	for _, c := range []struct {
		name string
		sets []string
	}{{"deck-metric", nil}, {"deck", []string{"deck.joists.positions=[3/4in, 20in, 40in, 60in, 80in, 100in, 120in, 140in, 175 1/4in]"}}} {
		a := detailtest.Demo(t, c.name, c.sets...)
		for i, d := range a.Tension {
			if !math.IsNaN(d.Deck) && !among(d.Deck, a.DeckJoists) {
				t.Errorf("%s %v: LT%d at %.1f beside a deck joist at %.1f: %.1f", c.name, c.sets, i+1, d.X, d.Deck, a.DeckJoists)
			}
		}
	}
}

// Devices never put two deck joists into one place.
func TestDeckJoistsDoNotShareAPlace(t *testing.T) {
	a := detailtest.Demo(t, "deck-metric", "floor.joists.first=1mm", "tie.lateral.count=4", "tie.lateral.from_end=700mm")
	for i := 1; i < len(a.DeckJoists); i++ {
		if d := a.DeckJoists[i] - a.DeckJoists[i-1]; d < a.Spec.Deck.Joists.Width.MM() {
			t.Errorf("J%d and J%d are %.1f mm apart", i, i+1, d)
		}
	}
}

// Devices without a house joist stand apart all the same.
func TestLooseDevicesApart(t *testing.T) {
	a := detailtest.Demo(t, "deck", "floor.joists.direction=parallel", "tie.lateral.count=4")
	if a.Tension[0].X == a.Tension[2].X {
		t.Errorf("LT1 and LT3 both at %.1f", a.Tension[0].X)
	}
}

// The barrier laps over a wrap that turns up farther than the patch reaches.
func TestLongWrapSheds(t *testing.T) {
	a := detailtest.Demo(t, "deck", "water.wrap_lap=5in")
	for _, w := range shed(filmsAt(a, a.Blocks[1].X), 50.8) {
		t.Error(w)
	}
}

// No patch stands up into the opening of a door.
func TestPatchNotInTheDoor(t *testing.T) {
	eachDemo(t, func(t *testing.T, a *detail.Assembly) {
		for i, b := range a.Blocks {
			for _, d := range a.Spec.Doors {
				if b.X > d.From.MM() && b.X < d.To.MM() && a.PatchBox(i).Max.Y > a.Frame.SubTop {
					t.Errorf("%s: patch to %.1f, subfloor at %.1f", b.Mark, a.PatchBox(i).Max.Y, a.Frame.SubTop)
				}
			}
		}
	})
}

// A bolt near the end of the ledger has its backing, however far apart the house joists are.
func TestBackingPastTheLastJoist(t *testing.T) {
	a := detailtest.Demo(t, "deck", "floor.joists.spacing=48in", "floor.joists.first=14in", "blocks.end_max=10in")
	x := a.Blocks[0].Bolts[0].X
	for _, p := range a.Find(detail.Backing) {
		if x > p.Bounds().Min.X && x < p.Bounds().Max.X {
			return
		}
	}
	t.Errorf("no backing at the bolt at %.1f; house joists %.1f", x, a.HouseJoists)
}

// With the patch over the barrier (under: no) the order shows: they are not built in one place.
func TestReversedPatchIsBuiltOverTheBarrier(t *testing.T) {
	a := detailtest.Demo(t, "deck", "water.patch.under=no")
	for _, f := range filmsAt(a, a.Blocks[1].Box.Min.X-5) {
		for _, g := range filmsAt(a, a.Blocks[1].Box.Min.X-5) {
			if f.role == detail.Patch && g.role == detail.Barrier && math.Min(f.z1, g.z1)-math.Max(f.z0, g.z0) > 1 && math.Min(f.y1, g.y1)-math.Max(f.y0, g.y0) > 0.1 {
				t.Errorf("%+v and %+v", f, g)
			}
		}
	}
}

// A hanger whose flanges are turned in is as wide as its joist.
func TestConcealedHanger(t *testing.T) {
	a := detailtest.Demo(t, "deck", "deck.joists.hanger_flange=0in")
	if w := a.Find(detail.Hanger)[3].Bounds().Size().X; w > 38.1+5 {
		t.Errorf("%.1f mm wide on the ledger", w)
	}
}

// The patch hangs over a barrier thicker than a film, too.
func TestThickBarrierUnderThePatch(t *testing.T) {
	a := detailtest.Demo(t, "deck-metric", "wall.layers.3.thickness=1mm")
	b := a.Blocks[1]
	if f, _ := outermost(filmsAt(a, b.X), b.Box.Min.Z-5); f.role != detail.Patch {
		t.Errorf("outermost under the foot: %+v", f)
	}
}

// Two blocks in one bay share its backing and its two ties.
func TestTwoBlocksInABay(t *testing.T) {
	a := detailtest.Demo(t, "deck", "floor.joists.spacing=38.4in")
	if n, b, ties := len(a.Blocks), a.Count(detail.Backing), a.Count(detail.TieStrap); b >= n || ties != 2*b {
		t.Errorf("%d blocks, %d backings, %d ties", n, b, ties)
	}
}
