package sheet_test

import (
	"math"
	"strings"
	"testing"

	"standclear/detail/demo"
	"standclear/geom"
	"standclear/render"
)

// Office practice of keynotes: each is used at least once in its view, none is missing from the list, and the
// leaders of a side run at one angle to one column.
func TestKeynotesOfTheSections(t *testing.T) {
	for _, name := range demo.Names() {
		s := compose(t, name)
		for _, sh := range s.sheets {
			if sh.ID != "A-301" {
				continue
			}
			if len(sh.Views) < 2 {
				t.Fatalf("%s: %d views", name, len(sh.Views))
			}
			for _, v := range sh.Views[:2] {
				checkKeys(t, name+" view "+v.ID, v)
			}
		}
	}
}

func checkKeys(t *testing.T, name string, v render.View) {
	t.Helper()
	used, columns := map[string]bool{}, map[int]int{}
	rows := map[string]bool{}
	var ruled, all int
	for _, it := range v.Items {
		switch it := it.(type) {
		case render.Insert:
			for _, f := range it.Fields {
				if f.Name == "KEY" {
					if used[f.Value] {
						t.Errorf("%s: key %s stands twice", name, f.Value)
					}
					used[f.Value] = true
					columns[int(math.Round(it.At.X/v.Scale.K*10))]++
				}
			}
		case render.Text:
			if it.Bold && it.Pen == render.Note && len(it.Lines) == 1 {
				first, _, _ := strings.Cut(it.Lines[0], ",")
				rows[first] = true
			}
		case render.Leader:
			if it.Pen == render.Note && len(it.Points) == 3 && it.End != render.NoEnd {
				all++
				if slope(it.Points[0], it.Points[1]) {
					ruled++
				}
			}
		}
	}
	for k := range used {
		if !rows[k] {
			t.Errorf("%s: key %s is not in the list", name, k)
		}
	}
	for k := range rows {
		if !used[k] && k != "INSIDE" && k != "OUTSIDE" {
			t.Errorf("%s: %s is listed and leads nowhere", name, k)
		}
	}
	if len(used) < 10 || len(columns) > 2 || ruled < all*9/10 {
		t.Errorf("%s: %d keys in %d columns, %d of %d leaders at 30, 45 or 60 degrees", name, len(used), len(columns), ruled, all)
	}
}

// slope reports whether a leader runs level or at 30, 45 or 60 degrees.
func slope(a, b geom.Vec) bool {
	d := b.Sub(a)
	at := math.Atan2(math.Abs(d.Y), math.Abs(d.X)) * 180 / math.Pi
	for _, v := range []float64{0, 30, 45, 60} {
		if math.Abs(at-v) < 0.5 {
			return true
		}
	}
	return false
}
