package sheet_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/sheet"
	"standclear/detail/sheet/judge"
	"standclear/detail/spec"
	"standclear/geom"
	"standclear/render"
)

// pagesOf are the sheets of the set whose id is id or starts with it and a dash.
func pagesOf(s set, id string) []*render.Sheet {
	var out []*render.Sheet
	for _, sh := range s.sheets {
		if sh.ID == id || strings.HasPrefix(sh.ID, id+"-") {
			out = append(out, sh)
		}
	}
	return out
}

// A template is printed at full size on letter or A4, every hole of the block is on it where the assembly has it,
// and pages that meet show the same ringed crosses in the face's own datum.
func TestTemplate(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		pages := pagesOf(s, "S-502")
		b := s.a.Blocks[0].Box.Min
		drilled := map[geom.Vec]bool{}
		rings := map[string]int{}
		for _, sh := range pages {
			short, long := math.Min(sh.Size.W, sh.Size.H), math.Max(sh.Size.W, sh.Size.H)
			letter, a4 := math.Abs(short-215.9)+math.Abs(long-279.4) < 0.1, math.Abs(short-210)+math.Abs(long-297) < 0.1 // ANSI A, ISO 216
			if !letter && !a4 {
				t.Errorf("%s is %.1f x %.1f mm", sh.ID, sh.Size.W, sh.Size.H)
			}
			v := sh.Views[0]
			if v.Scale.K != 1 {
				t.Errorf("%s is at 1:%g", sh.ID, v.Scale.K)
			}
			for _, it := range v.Items {
				st, ok := it.(render.Stroke)
				if !ok || !st.Path.Closed || len(st.Path.V) != 2 {
					continue
				}
				c, d := st.Path.Bounds().Center(), st.Path.Bounds().W()
				for _, h := range s.a.Holes(0) {
					if at := (geom.Vec{X: h.X - b.X, Y: h.Z - b.Z}); at.Dist(c) < 1e-6 && math.Abs(d-h.Dia) < 1e-3 {
						drilled[at] = true
					}
				}
				if st.Pen == render.Mark {
					rings[fmt.Sprintf("%.3f %.3f", c.X, c.Y)]++
				}
			}
		}
		if len(drilled) != len(s.a.Holes(0)) {
			t.Errorf("%d holes on the template, the block has %d", len(drilled), len(s.a.Holes(0)))
		}
		if len(pages) > 1 && len(rings) < 2 {
			t.Errorf("%d registration crosses on %d pages", len(rings), len(pages))
		}
		for at, n := range rings {
			if n < 2 {
				t.Errorf("the cross at %s is on one page alone", at)
			}
		}
	})
}

// The square to measure is 1 in, 50 mm.
func TestTemplateSquare(t *testing.T) {
	for name, side := range map[string]float64{"deck": 25.4, "deck-metric": 50} {
		found := false
		for _, it := range pagesOf(compose(t, name), "S-502")[0].Items {
			if st, ok := it.(render.Stroke); ok && st.Pen == render.Mark {
				b := st.Path.Bounds()
				found = found || math.Abs(b.W()-side) < 1e-6 && math.Abs(b.H()-side) < 1e-6
			}
		}
		if !found {
			t.Errorf("%s: no square of %.1f mm", name, side)
		}
	}
}

// Every column of holes and every joist has its running dimension, measured from the datum end.
func TestLedgerOrdinates(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		stepMM := 25.4 / 16
		if s.a.Spec.Pick(0, 1) == 1 {
			stepMM = 0.5
		}
		var got []float64
		for _, v := range pagesOf(s, "S-503")[0].Views {
			for _, it := range v.Items {
				if d, ok := it.(render.Dim); ok && d.Kind == render.OrdinateX {
					got = append(got, d.Value())
				}
			}
		}
		has := func(x float64) bool {
			for _, g := range got {
				if math.Abs(g-x) < stepMM/2+1e-6 {
					return true
				}
			}
			return false
		}
		for _, p := range s.a.Find(detail.Ledger) {
			for _, h := range s.a.LedgerHoles(p) {
				if !has(h.X) {
					t.Errorf("%s: no dimension to the hole at %.1f mm", p.Mark, h.X)
				}
			}
			for _, j := range s.a.DeckJoists {
				if x := j - p.Bounds().Min.X; x > 0 && j < p.Bounds().Max.X && !has(x) {
					t.Errorf("%s: no dimension to the joist at %.1f mm", p.Mark, x)
				}
			}
		}
	})
}

// The deck by hand: first column of holes 12 1/2 - 3 1/4 / 2 = 10 7/8 in from the end, the second 1'-2 1/8"; the rows
// 9 1/4 - 6 5/8 = 2 5/8 and 9 1/4 - 2 13/16 = 6 7/16 in up.
func TestLedgerTableByHand(t *testing.T) {
	all := text(t, pagesOf(compose(t, "deck"), "S-503")[0])
	want := "B1\n10 7/8\", 1'-2 1/8\"\n2 5/8\", 6 7/16\"\n11/16\"\nNO\n"
	if !strings.Contains(all, want) {
		t.Errorf("S-503 has no row %q", want)
	}
}

// A joist on a bolt axis is flagged, and said so in the head of the table: J1 takes the two holes of its column and the
// 3 in washers of the next, 3 1/4 in away; the hanger of J2 starts 58 in from the end and the two washers of the column
// at 57 3/8 in reach to 58 7/8 in.
func TestLedgerFlagsHoles(t *testing.T) {
	all := strings.ReplaceAll(text(t, pagesOf(compose(t, "deck", "deck.joists.positions=[10 7/8in, 5ft]"), "S-503")[0]), "\n", " ")
	if !strings.Contains(all, "HOLE UNDER HG1") || !strings.Contains(all, "6 MEET A HANGER") {
		t.Error("S-503 does not flag the holes under the hanger of J1")
	}
}

// Legs of the deck's F1 by hand: 4 in up; 2 1/4 in out with a fall of 1:8 is 2.268 in along the sheet; the drip of 3/4 in
// is 0.514 in straight and a kick of 6 mm by 6 mm, 0.334 in. Ends on sixteenths from the lower edge: 5/16, 7/8 (0.848),
// 3 1/8 (3.116), 7 1/8 (7.116), so the legs print 4, 2 1/4, 9/16 and 5/16. Bends: 90 + atan(1/8) = 97 and 180 - 45.
func TestFlashingLegsByHand(t *testing.T) {
	all := text(t, pagesOf(compose(t, "deck"), "A-402")[0])
	for _, want := range []string{
		`4" | UP 97° | 2 1/4" | DOWN 97° | 9/16" | UP 135° | 5/16"`,
		"LENGTH\nLAP\nF1.1\n-1\"", // the left dam is laid flat before the datum
		"AREA\n",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("A-402 does not say %q", want)
		}
	}
}

// Pieces printed for every mark are those of the assembly.
func TestBentPiecesCounted(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		all := text(t, pagesOf(s, "A-402")[0])
		if n := s.a.Count(detail.Screen); n > 0 {
			total := 0
			if m := regexp.MustCompile(`SC1\nINSECT SCREEN(?s:.*?)\n(\d+)\n[\d.]+ (?:SQ FT|m²)`).FindStringSubmatch(all); m != nil {
				fmt.Sscan(m[1], &total)
			}
			if total != n {
				t.Errorf("A-402 counts %d screens, the assembly has %d", total, n)
			}
		}
		if s.a.Count(detail.Flashing) > 0 && !strings.Contains(all, fmt.Sprintf("F1 IN %d PIECE", len(s.a.FlashingPieces()))) {
			t.Error("A-402 does not count the pieces of F1")
		}
	})
}

// Where no usual scale holds a view on a page of letter size, the page says which sheet shows it, and keeps the rules:
// the marks of 50 blocks and more, each 9 mm wide, are wider than any such page.
func TestShopPageNamesTheSheet(t *testing.T) {
	src, _ := demo.File("deck")
	s, problems := spec.Read("deck", src, []string{"ledger.length=80ft", "doors=", "obstacles="})
	if s == nil {
		t.Fatal(problems)
	}
	a, err := detail.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(a.Blocks); n < 50 {
		t.Fatalf("%d blocks", n)
	}
	r, res := design.Check(a)
	all := ""
	for _, p := range sheet.Plan(a, &r, res, sheet.Options{Version: "test", Sheet: "S-504"}).ShopPages(nil) {
		all += text(t, p)
		if found, err := judge.Layout(p); err != nil || len(found) > 0 {
			t.Errorf("%s: %v %v", p.ID, err, found)
		}
	}
	if !strings.Contains(all, "POSITIONS\nTOO MUCH FOR A PAGE OF THIS SIZE: SEE SHEET S-504") {
		t.Error("no page names S-504 for the positions")
	}
}
