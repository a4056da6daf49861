package sheet_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/render"
)

func sheetOf(t *testing.T, s set, id string) *render.Sheet {
	t.Helper()
	for _, sh := range s.sheets {
		if sh.ID == id {
			return sh
		}
	}
	t.Fatalf("no sheet %s", id)
	return nil
}

// rowsOf returns the lines of a sheet's tables by their first word: the texts of one height, left to right.
func rowsOf(sh *render.Sheet) map[string][][]string {
	var at []geomRow
	for _, it := range sh.Items {
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
		rows := rowsOf(sheetOf(t, s, "S-701"))
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
