package sheet_test

import (
	"math"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/demo"
	"standclear/render"
)

// The deck of the demo by hand: the first house joist stands at 7.2 in with a flange of 2 5/16 in, and the
// rod 1 1/4 in off its side: 7.2 - 1.15625 - 1.25 = 4.79 in, printed 4 13/16 in. Block B1 is centred at
// 12 1/2 in and 8 3/4 in wide: its side is at 8 1/8 in, 8 1/8 - 4 13/16 = 3 5/16 in from the rod. Sheathing
// to ledger is 3 3/4 in, rim and sheathing 1 3/4 in, ledger 1 1/2 in: 7 in from rim to ledger face.
func TestTensionDeviceByHand(t *testing.T) {
	all := text(t, sheetOf(t, compose(t, "deck"), "S-504"))
	for _, want := range []string{`4 13/16"`, `3 5/16" TO B1`, `RIM TO LEDGER 7"`, "1,500 lb", "CHECKS OF THE LATERAL PATH"} {
		if !strings.Contains(all, want) {
			t.Errorf("S-504 does not say %s", want)
		}
	}
}

// The rod as dimensioned is the rod of the parts, for every demo, and the sheet counts as many devices.
func TestTensionMeasuresParts(t *testing.T) {
	for _, d := range demo.Names() {
		s := compose(t, d)
		sh := sheetOf(t, s, "S-504")
		rods := s.a.Find(detail.TensionRod)
		b := rods[0].Bounds()
		found := false
		for _, it := range sh.Views[0].Items {
			if dim, ok := it.(render.Dim); ok && dim.Text == "ROD AS DRAWN <>" {
				found = true
				if math.Abs(dim.Value()-(b.Max.Y-b.Min.Y)) > 25.4/16 {
					t.Errorf("%s: the rod is dimensioned %.2f mm and is %.2f mm long", d, dim.Value(), b.Max.Y-b.Min.Y)
				}
			}
		}
		if !found {
			t.Errorf("%s: the rod has no dimension", d)
		}
		marks := 0
		for _, it := range sh.Views[2].Items {
			if in, ok := it.(render.Insert); ok && in.Symbol.Name == "SC-MARK" && strings.HasPrefix(in.Fields[0].Value, "LT") {
				marks++
			}
		}
		if marks != len(rods) {
			t.Errorf("%s: %d devices marked, %d built", d, marks, len(rods))
		}
	}
}

// What the report finds wrong with the devices stands on the sheet: with none stated it says so; four near
// the ends do not all find a joist.
func TestTensionConflicts(t *testing.T) {
	none := text(t, sheetOf(t, compose(t, "deck", "tie.lateral.count=0"), "S-504"))
	if !strings.Contains(none, "NO LATERAL TENSION DEVICE IS STATED") || !strings.Contains(none, "FAILS") {
		t.Error("without a device the sheet does not say that the path is missing")
	}
	four := strings.ReplaceAll(text(t, sheetOf(t, compose(t, "deck", "tie.lateral.count=4", "tie.lateral.rating=750lb"), "S-504")), "\n", " ")
	if !strings.Contains(four, "NO HOUSE JOIST BESIDE LT4") {
		t.Error("the device without a house joist is not listed")
	}
}
