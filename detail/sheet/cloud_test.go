package sheet_test

import (
	"reflect"
	"slices"
	"testing"

	"standclear/detail/sheet/cloud"
	"standclear/detail/sheet/judge"
	"standclear/render"
)

// revised counts the triangles' marks of a sheet and its items on the pen of revisions.
func revised(s *render.Sheet, mark string) (marks, items int) {
	for _, it := range s.Items {
		switch k := it.(type) {
		case render.Text:
			if k.Pen == render.Revision {
				items++
				if slices.Equal(k.Lines, []string{mark}) {
					marks++
				}
			}
		case render.Stroke:
			if k.Pen == render.Revision {
				items++
			}
		}
	}
	return marks, items
}

// Blocks set closer and a thicker board on the block: the set is clouded, every cloud has its mark, no hard rule
// that held before is broken, and sheets that say nothing of it stay clean.
func TestCloudsOnTheSet(t *testing.T) {
	for _, c := range []struct {
		sets          []string
		clouded, free []string
	}{
		{[]string{"blocks.max_spacing=20in"}, []string{"A-101", "A-201", "S-503"}, []string{"A-301", "S-501", "S-502-1"}},
		{[]string{"blocks.plies=[1 1/2in, 1 1/2in, 1in]"}, []string{"G-001", "A-101", "A-301", "A-401", "S-501", "S-701"}, []string{"S-503"}},
	} {
		if testing.Short() && c.clouded[0] == "G-001" {
			continue // the race detector is slow
		}
		old, now := compose(t, "deck"), composeAnew(t, "deck", c.sets...)
		broken := map[string]int{}
		for _, s := range now.sheets {
			broken[s.ID] = len(layout(t, s))
		}
		changes, err := cloud.Draw(now.sheets, old.sheets, "2")
		if err != nil {
			t.Fatal(err)
		}
		drawn := map[string]int{}
		for _, ch := range changes {
			drawn[ch.Sheet] = ch.Clouds
		}
		for _, s := range now.sheets {
			marks, items := revised(s, "2")
			if marks != drawn[s.ID] || items < 3*marks || marks == 0 && items > 0 {
				t.Errorf("%v: %s has %d marks and %d items for %d clouds", c.sets, s.ID, marks, items, drawn[s.ID])
			}
			if v := layout(t, s); len(v) > broken[s.ID] {
				t.Errorf("%v: %v", c.sets, v)
			}
		}
		for _, id := range c.clouded {
			if drawn[id] == 0 {
				t.Errorf("%v: no cloud on %s", c.sets, id)
			}
		}
		for _, id := range c.free {
			if drawn[id] > 0 {
				t.Errorf("%v: %d clouds on %s", c.sets, drawn[id], id)
			}
		}
	}
}

func layout(t *testing.T, s *render.Sheet) []judge.Violation {
	t.Helper()
	v, err := judge.Layout(s)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Against itself nothing is clouded, and the sheets stay as they are.
func TestNoCloudsAgainstItself(t *testing.T) {
	a, b := composeAnew(t, "balcony-metric"), compose(t, "balcony-metric")
	changes, err := cloud.Draw(a.sheets, b.sheets, "2")
	if err != nil || len(changes) > 0 {
		t.Errorf("%v, %v", changes, err)
	}
	for i, s := range a.sheets {
		if !reflect.DeepEqual(s.Items, b.sheets[i].Items) {
			t.Errorf("%s differs", s.ID)
		}
	}
}
