package detail_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
)

// rodBeside is the distance from a house joist's face to a rod's axis, 1 1/4 in.
const rodBeside = 31.75

// deckBeside is that at a deck joist: the hanger's flange, half the rod and 1/8 in.
func deckBeside(a *detail.Assembly) float64 {
	return a.Spec.Deck.Joists.HangerFlange.MM() + a.Spec.Pick(12.7, 12)/2 + 3.175
}

// The rod of the inch deck at its left end, worked by hand: the second house joist stands at 7.2 in, half its
// flange is 1 5/32, and 1 1/4 beside it to the left is 7.2 - 1.15625 - 1.25 = 4.79375 in; to the right block B1
// stands, 8 3/8 to 16 5/8 in. The deck joist outside lies half of 1 1/2, the hanger's flange of 1 1/4, half the
// 1/2 in rod and 1/8 in farther: 4.79375 + 0.75 + 1.25 + 0.25 + 0.125 = 7.16875 in.
func TestDeviceByHand(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck")
	d := a.Tension[0]
	if math.Abs(d.X-4.79375*in) > 1e-6 || math.Abs(d.House-7.2*in) > 1e-6 || math.Abs(d.Deck-7.16875*in) > 1e-6 {
		t.Errorf("device at %.4f in, house joist %.4f, deck joist %.4f", d.X/in, d.House/in, d.Deck/in)
	}
	if got := d.FromEnd(176 * in); math.Abs(got-4.79375*in) > 1e-6 {
		t.Errorf("%.4f in from the end", got/in)
	}
	if got := (detail.Device{X: 170 * in}).FromEnd(176 * in); math.Abs(got-6*in) > 1e-6 {
		t.Errorf("a rod at 170 of 176 in is %.4f in from the nearer end, want 6", got/in)
	}
}

// deviceCases are the demos as they stand, and with more devices and other rules for the ends.
func deviceCases() []struct {
	name string
	sets []string
} {
	return []struct {
		name string
		sets []string
	}{
		{"deck", nil}, {"balcony", nil}, {"deck-metric", nil}, {"balcony-metric", nil},
		{"deck", []string{"tie.lateral.count=1"}}, {"deck", []string{"tie.lateral.count=4", "tie.lateral.from_end=60in"}},
		{"deck", []string{"tie.lateral.from_end=48in"}}, {"deck", []string{"deck.joists.spacing=12in"}},
		{"balcony", []string{"tie.lateral.count=3", "tie.lateral.from_end=48in"}}, {"deck-metric", []string{"ledger.length=5200mm"}},
	}
}

// Every device asked for is built: left and right end in turn, within its distance from the end, with its
// axis 1 1/4 in off the face of a house joist, off the blocks, and apart from the other rods.
func TestDevicesBesideHouseJoists(t *testing.T) {
	for _, c := range deviceCases() {
		t.Run(fmt.Sprint(c.name, c.sets), func(t *testing.T) {
			a := detailtest.Demo(t, c.name, c.sets...)
			s := a.Spec
			rule, l, flange := s.Tie.Lateral.FromEnd.MM(), s.Ledger.Length.MM(), s.Floor.Joists.Flange.MM()/2
			if len(a.Tension) != s.Tie.Lateral.Count || a.Count(detail.TensionRod) != s.Tie.Lateral.Count {
				t.Fatalf("%d devices and %d rods of %d", len(a.Tension), a.Count(detail.TensionRod), s.Tie.Lateral.Count)
			}
			for i, d := range a.Tension {
				if from := math.Abs(d.X - float64(i%2)*l); from > rule+1e-6 {
					t.Errorf("LT%d stands %.1f from its end, at most %.1f", i+1, from, rule)
				}
				if off := math.Abs(d.X - d.House); math.Abs(off-flange-rodBeside) > 1e-6 {
					t.Errorf("LT%d is %.3f off its house joist's axis, want %.3f", i+1, off, flange+rodBeside)
				}
				if !among(d.House, a.HouseJoists) {
					t.Errorf("LT%d: no house joist at %.1f", i+1, d.House)
				}
				for _, b := range a.Blocks {
					if d.X > b.Box.Min.X && d.X < b.Box.Max.X {
						t.Errorf("LT%d runs through %s", i+1, b.Mark)
					}
				}
				for j := range i {
					if math.Abs(a.Tension[j].X-d.X) < 3*rodBeside-1e-6 {
						t.Errorf("LT%d and LT%d are %.1f apart", j+1, i+1, math.Abs(a.Tension[j].X-d.X))
					}
				}
			}
		})
	}
}

func among(x float64, all []float64) bool {
	for _, v := range all {
		if math.Abs(v-x) < 1e-6 {
			return true
		}
	}
	return false
}

// Beside every rod a deck joist stands, 1 1/4 in off its face. Where the end joist takes the place of one
// asked for next to it, within 50 mm, it is that much farther.
func TestDevicesBesideDeckJoists(t *testing.T) {
	for _, c := range deviceCases() {
		t.Run(fmt.Sprint(c.name, c.sets), func(t *testing.T) {
			a := detailtest.Demo(t, c.name, c.sets...)
			for i, d := range a.Tension {
				near, k := math.Inf(1), 0
				for j, x := range a.DeckJoists {
					if off := math.Abs(x - d.X); off < near {
						near, k = off, j
					}
				}
				beside := a.Spec.Deck.Joists.Width.MM()/2 + deckBeside(a)
				if math.IsNaN(d.Deck) {
					continue // the check says so
				}
				if math.Abs(near-beside) > 1e-6 {
					t.Errorf("LT%d is %.2f off J%d, want %.2f", i+1, near, k+1, beside)
				}
			}
		})
	}
}

// The rod runs from behind the backing, through rim, gap and ledger, to beyond the ledger, and lies at half
// the depth of the deck joists: for 2x8 under a ledger top at -4 1/4 in, 4 1/4 + 3 5/8 = 7 7/8 in below the floor.
func TestRodsReachThrough(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck")
	for i, p := range a.Find(detail.TensionRod) {
		b := p.Bounds()
		if b.Min.Y >= a.Frame.BackingIn || b.Max.Y <= a.Frame.LedgerFront {
			t.Errorf("%s runs from %.1f to %.1f", p.ID, b.Min.Y, b.Max.Y)
		}
		if math.Abs(b.Center().Z+7.875*in) > 1e-6 || math.Abs(b.Center().X-a.Tension[i].X) > 1e-6 || p.ID != fmt.Sprintf("LT%d", i+1) {
			t.Errorf("%s at x %.1f, z %.4f in", p.ID, b.Center().X, b.Center().Z/in)
		}
		if !strings.HasPrefix(p.Note, "1,500 lb allowable") {
			t.Errorf("%s is noted %q", p.ID, p.Note)
		}
	}
}

// Along a wall whose joists run parallel to it there is none to stand beside: the devices are built at the
// farthest the rule lets them, 24 in from their ends, and say that they hold on nothing.
func TestDevicesWithoutHouseJoists(t *testing.T) {
	const in = 25.4
	for _, sets := range [][]string{{"floor.joists.direction=parallel"}, {"tie.lateral.from_end=3in"}} {
		a := detailtest.Demo(t, "deck", sets...)
		reach := a.Spec.Tie.Lateral.FromEnd.MM()
		for i, want := range []float64{reach, 176*in - reach} {
			if d := a.Tension[i]; math.Abs(d.X-want) > 1e-6 || !math.IsNaN(d.House) || !math.IsNaN(d.Deck) {
				t.Errorf("%v: %+v, want a loose one at %.1f", sets, d, want)
			}
		}
		if a.Count(detail.TensionRod) != 2 {
			t.Errorf("%v: %d rods", sets, a.Count(detail.TensionRod))
		}
	}
	if a := detailtest.Demo(t, "deck", "tie.lateral.count=0"); len(a.Tension) > 0 || a.Count(detail.TensionRod) > 0 {
		t.Errorf("none asked, %d built", len(a.Tension))
	}
}

// Within 20 in of the left end of the inch deck one place is free, beside the joist at 7.2 in: on its other side
// stands B1. The third of four devices has none left; two rods never share one place beside a joist.
func TestNoSecondDeviceInOnePlace(t *testing.T) {
	a := detailtest.Demo(t, "deck", "tie.lateral.count=4", "tie.lateral.from_end=20in")
	for i, want := range []bool{true, true, false, false} {
		if d := a.Tension[i]; math.IsNaN(d.House) == want {
			t.Errorf("LT%d: %+v, beside a house joist wanted: %v", i+1, d, want)
		}
	}
}
