package sheet_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/render"
)

// rowsOf returns the lines of a sheet's tables by their first word: the texts of one height, left to right.
func rowsOf(sh *render.Sheet) map[string][][]string {
	var at []geomRow
	items := sh.Items
	for _, v := range sh.Views {
		if v.Scale.K == 1 { // tables that are a view of their own
			items = append(slices.Clone(items), v.Items...)
		}
	}
	for _, it := range items {
		if v, ok := it.(render.Text); ok && v.Pen == render.Note && !v.Bold {
			at = append(at, geomRow{v.At.X, v.At.Y, strings.Join(v.Lines, " ")})
		}
	}
	out := map[string][][]string{}
	for i, c := range at {
		row := []string{c.text}
		for _, d := range at[i+1:] {
			if math.Abs(d.y-c.y) > 1e-6 || d.x < c.x {
				break
			}
			row = append(row, d.text)
		}
		out[c.text] = append(out[c.text], row)
	}
	return out
}

type geomRow struct {
	x, y float64
	text string
}

// Every mark of the schedule stands on S-701, with its count where it is of this work (layout rules L9, L10).
func TestMaterialSheetHoldsTheSchedule(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		rows := map[string][][]string{}
		for _, sh := range pagesOf(s, "S-701") {
			for mark, r := range rowsOf(sh) {
				rows[mark] = append(rows[mark], r...)
			}
		}
		qty := map[string]int{}
		for _, l := range s.a.Schedule() {
			if rows[l.Mark] == nil {
				t.Errorf("%s %s is not on S-701", l.Mark, l.Name)
			}
			if !l.Existing {
				qty[l.Mark] += l.Qty
			}
		}
		for mark, n := range qty {
			if got := rows[mark][0][1]; got != fmt.Sprint(n) {
				t.Errorf("%s: %s on S-701, %d in the assembly", mark, got, n)
			}
		}
		for _, p := range s.a.Find(detail.Bolt, detail.Nut, detail.Washer, detail.PlyScrew) {
			last := rows[p.Mark][len(rows[p.Mark])-1]
			buy, err := strconv.Atoi(last[len(last)-1])
			if err != nil || float64(buy) < 1.05*float64(qty[p.Mark]) || float64(buy) >= 1.05*float64(qty[p.Mark])+1 {
				t.Errorf("%s: buy %v of %d, want 5 %% more, rounded up", p.Mark, last, qty[p.Mark])
			}
		}
	})
}

// A piece of backing behind two blocks takes the fixings of both: their rating is that at one block.
func TestBackingIsFixedAtEachBlock(t *testing.T) {
	s := compose(t, "deck", "floor.joists.spacing=40in", "floor.joists.first=10in")
	blocks, pieces := len(s.a.Blocks), s.a.Count(detail.Backing)
	if pieces >= blocks {
		t.Fatalf("%d blocks, %d pieces: none stands behind two", blocks, pieces)
	}
	for _, sh := range s.sheets {
		if sh.ID != "S-701" {
			continue
		}
		for _, r := range rowsOf(sh)["BK1"] {
			if strings.HasPrefix(r[1], "FIXINGS") {
				if want := strconv.Itoa(blocks); r[2] != want || !strings.Contains(r[1], "AT ONE BLOCK") {
					t.Errorf("%v, want %s", r, want)
				}
				return
			}
		}
	}
	t.Error("S-701 asks for no fixings of the backing")
}

// The check sheet asks for the counts of the assembly, and every block has its line (cross-sheet rule 2).
func TestCheckSheetCounts(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		var all strings.Builder
		for _, sh := range s.sheets {
			if strings.HasPrefix(sh.ID, "S-702") {
				all.WriteString(text(t, sh))
			}
		}
		words := strings.ReplaceAll(all.String(), "\n", " ")
		if n := s.a.Count(detail.Nut); n > 0 && !strings.Contains(words, fmt.Sprintf("COUNT ______ OF %d", n)) {
			t.Errorf("S-702 does not ask for %d nuts", n)
		}
		if n := s.a.Count(detail.Washer); !strings.Contains(words, fmt.Sprintf("WASHERS, FLAT ON THE WOOD %d %d", n, n)) {
			t.Errorf("S-702 does not ask for %d washers", n)
		}
		for _, b := range s.a.Blocks {
			if !strings.Contains(words, " "+b.Mark+" ") {
				t.Errorf("S-702 has no line for %s", b.Mark)
			}
		}
		for i := 1; i <= 5; i++ {
			if !strings.Contains(words, fmt.Sprintf("HOLD POINT %d", i)) {
				t.Errorf("S-702 has no hold point %d", i)
			}
		}
	})
}

// Every value that the table of keys never defaults stands on the survey sheet, but the roles, names and
// months that stand there with another.
func TestSurveyAsksForWhatIsNeverDefaulted(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		words := ""
		for _, sh := range pagesOf(s, "G-003") {
			words += strings.ReplaceAll(text(t, sh), "\n", " ") + " "
		}
		n := 0
		for _, e := range s.a.Spec.Entries() {
			if e.Survey && !strings.HasSuffix(e.Key, ".role") && !strings.HasSuffix(e.Key, ".material") && !strings.HasPrefix(e.Key, "site.months.") {
				n++
				first, _, _ := strings.Cut(strings.ToUpper(e.About), " ")
				if !strings.Contains(words, first) && !strings.HasPrefix(e.Key, "wall.layers.") {
					t.Errorf("%s (%s) is not on G-003", e.Key, e.About)
				}
			}
		}
		if got := strings.Count(words, "W"); n < 15 || got == 0 {
			t.Errorf("only %d values are asked for", n)
		}
		for i, l := range s.a.Spec.Wall.Layers {
			if !strings.Contains(words, detail.LayerMark(i)+" "+strings.ToUpper(strings.Fields(l.Name)[0])) {
				t.Errorf("layer %s is not on G-003", detail.LayerMark(i))
			}
		}
	})
}
