package sheet_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/render"
)

// sheetOf returns the sheet with the ID.
func sheetOf(t *testing.T, s set, id string) *render.Sheet {
	t.Helper()
	for _, sh := range s.sheets {
		if sh.ID == id {
			return sh
		}
	}
	t.Fatalf("there is no sheet %s", id)
	return nil
}

// Laps and pieces of the inch deck by hand. The patch, 16 in about a block of 9 1/4, laps 3 3/8 in above and
// below; the cap turns 2 in up and 2 in down, the side pieces 2 in out. F1 stands 4 in up, 1/2 of it free
// under the cladding; its drip, 3 1/8 + 2 1/4 in out, passes the face at 5 1/4 by 1/8. The flap of the barrier
// is cut 16 in wide at the foot, nine times 12 ft, and 9 1/4 + 3 3/8 in up either side, eighteen times 18 ft 11 1/4.
func TestLapsAndPiecesByHand(t *testing.T) {
	all := text(t, sheetOf(t, compose(t, "deck"), "A-401"))
	for _, row := range [][]string{
		{"CLADDING W8", "F1 UPSTAND", "ABOVE THE LEDGER", `3 1/2"`, "-", "UPPER OUTSIDE", "OK"},
		{"F1 DRIP", "LEDGER L1", "PAST ITS FACE", `1/8"`, `0"`, "UPPER OUTSIDE", "OK"},
		{"W4 BARRIER", "M1 PATCH", "ABOVE THE BLOCK", `3 3/8"`, `2"`, "UPPER OUTSIDE", "OK"},
		{"W4 BARRIER", "M2 TURN-UP", "ABOVE THE BLOCK", `2"`, `2"`, "UPPER OUTSIDE", "OK"},
		{"M2 CAP", "M3 SIDE PIECES", "DOWN THE BLOCK", `2"`, "-", "UPPER OUTSIDE", "OK"},
		{"M3 SIDE PIECES", "M1 PATCH", "BESIDE THE BLOCK", `2"`, "-", "UPPER OUTSIDE", "OK"},
		{"M1 PATCH", "W4 BARRIER", "BELOW THE BLOCK", `3 3/8"`, `2"`, "UPPER OUTSIDE", "OK"},
		{"W4", "9", "LEVEL CUT AT THE FOOT", `12'-0" IN ALL`},
		{"W4", "18", "UPRIGHT CUT, TAPED", `18'-11 1/4" IN ALL`},
		{"M1", "9", "MEMBRANE PATCH", `1'-4" x 1'-4"`},
	} {
		if !strings.Contains(all, strings.Join(row, "\n")+"\n") {
			t.Errorf("no row %q", row)
		}
	}
}

// A lap turned round is said to be, and fails.
func TestReversedLapIsSaid(t *testing.T) {
	all := text(t, sheetOf(t, compose(t, "deck", "water.patch.under=no"), "A-401"))
	if !strings.Contains(all, "W4 BARRIER\nM1 PATCH\nABOVE THE BLOCK\n3 3/8\"\n2\"\nREVERSED\nFAILS\n") {
		t.Error("the barrier under M1 is not reported as reversed")
	}
}

// The eight steps and the counts of pieces follow the assembly, whatever the project.
func TestSequenceFollowsTheAssembly(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		sh := sheetOf(t, s, "A-401")
		if len(s.a.Blocks) == 0 {
			return
		}
		if len(sh.Views) != 8 {
			t.Errorf("%d panels, want 8", len(sh.Views))
		}
		all := text(t, sh)
		for _, want := range []string{
			fmt.Sprintf("M1\n%d\nMEMBRANE PATCH\n", s.a.Count(detail.Patch)),
			fmt.Sprintf("M2\n%d\nBLOCK CAP\n", len(s.a.Blocks)), fmt.Sprintf("M3\n%d\nBLOCK SIDE PIECE\n", 2*len(s.a.Blocks)),
		} {
			if !strings.Contains(all, want) {
				t.Errorf("no %q", want)
			}
		}
	})
}

// The step down at the door is the distance of threshold and decking; what is not drawn is said.
func TestDetailsFollowTheAssembly(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		sh := sheetOf(t, s, "A-303")
		all := text(t, sh)
		if !strings.Contains(all, "NOT DRAWN: CORNER NOT IN THE PROJECT") {
			t.Error("the missing corner is not said")
		}
		steps := 0
		for _, v := range sh.Views {
			for _, it := range v.Items {
				if d, ok := it.(render.Dim); ok && d.Text == "STEP <>" {
					steps++
					want := s.a.Spec.Doors[0].Threshold.MM() - s.a.Frame.DeckTop
					if math.Abs(d.Value()-want) > s.a.Spec.Pick(25.4/16, 0.5) {
						t.Errorf("step of %.2f mm drawn, the parts are %.2f apart", d.Value(), want)
					}
				}
			}
		}
		if doors := len(s.a.Spec.Doors); (doors > 0) != (steps == 1) || (doors == 0) != strings.Contains(all, "NOT DRAWN: NO DOOR") {
			t.Errorf("%d doors, %d steps drawn", doors, steps)
		}
	})
}

// A splice and a guard post are drawn where they are given, with what the report says of them.
func TestSpliceAndPostAreDrawn(t *testing.T) {
	s := compose(t, "deck", "ledger.splices=[80in]", "deck.guard_posts=[88in]")
	sh := sheetOf(t, s, "A-303")
	all := strings.ReplaceAll(text(t, sh), "\n", " ")
	for _, want := range []string{"SPLICE 1", "BUTT JOINT OF L1 AND L2 AT 6'-8\"", "GUARD POST GP1 AT LEDGER", "GP1 AXIS OF GUARD POST AT 7'-4\"", "ENGINEER"} {
		if !strings.Contains(all, want) {
			t.Errorf("A-303 does not say %q", want)
		}
	}
	st := s.report.Find("splice_1")
	if st == nil || !strings.Contains(all, "LIMIT >= 2, "+st.Verdict.String()) {
		t.Errorf("the verdict on the splice is not printed: %+v", st)
	}
}
