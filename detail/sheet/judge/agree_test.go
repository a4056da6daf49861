package judge_test

import (
	"fmt"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/demo"
	"standclear/detail/sheet/judge"
	"standclear/detail/spec"
	"standclear/render"
)

// onSheet is the sheet with the ID, its views and items copied so that it can be made wrong.
func onSheet(sheets []*render.Sheet, id string) (*render.Sheet, []*render.Sheet) {
	out := append([]*render.Sheet(nil), sheets...)
	for i, s := range out {
		if s.ID != id {
			continue
		}
		c := *s
		c.Items = append([]render.Item(nil), s.Items...)
		c.Views = append([]render.View(nil), s.Views...)
		for j := range c.Views {
			c.Views[j].Items = append([]render.Item(nil), c.Views[j].Items...)
		}
		out[i] = &c
		return &c, out
	}
	return nil, out
}

// change replaces a text wherever it stands among items, one line for another.
func change(items []render.Item, from, to string) {
	for i, it := range items {
		switch it := it.(type) {
		case render.Text:
			for j, l := range it.Lines {
				if strings.Contains(l, from) {
					it.Lines = append([]string(nil), it.Lines...)
					it.Lines[j] = strings.Replace(l, from, to, 1)
					items[i] = it
				}
			}
		case render.Insert:
			for j, f := range it.Fields {
				if f.Value == from {
					it.Fields = append([]render.Field(nil), it.Fields...)
					it.Fields[j].Value = to
					items[i] = it
				}
			}
		}
	}
}

// Each way in which sheets may contradict each other is seen to be found on the deck made wrong.
func TestEachContradictionIsFound(t *testing.T) {
	src, _ := demo.File("deck")
	s, _ := spec.Read("deck", src, nil)
	a, sheets, _, err := drawn(s)
	if err != nil {
		t.Fatal(err)
	}
	place := "" // of A-101 in the set
	for i, sh := range sheets {
		if sh.ID == "A-101" {
			place = fmt.Sprintf("%d OF %d", i+1, len(sheets))
		}
	}
	for _, c := range []struct {
		rule, says, sheet string
		wrong             func(s *render.Sheet, a *detail.Assembly)
	}{
		{"L9", "BT9 is in no schedule", "A-301", func(s *render.Sheet, _ *detail.Assembly) { change(s.Views[0].Items, "BT1", "BT9") }},
		{"L9", "B12 is in no schedule", "A-201", func(s *render.Sheet, _ *detail.Assembly) { change(s.Views[0].Items, "B3", "B12") }},
		{"L9", "named on no view", "A-301", func(_ *render.Sheet, a *detail.Assembly) {
			a.Parts = append(a.Parts, &detail.Part{Mark: "ZZ1", Name: "NEW PART", Role: detail.Bolt})
		}},
		{"L10", "the assembly counts 9", "A-201", func(s *render.Sheet, _ *detail.Assembly) {
			change(s.Views[0].Items, "COUNT: 9 BLOCKS", "COUNT: 8 BLOCKS")
		}},
		{"L10", "the assembly counts 72", "S-501", func(s *render.Sheet, _ *detail.Assembly) { change(s.Items, "72", "71") }},
		{"C1", "STAND-OFF", "A-301", nil},
		{"C2", "points at a view", "A-201", func(s *render.Sheet, _ *detail.Assembly) { change(s.Views[0].Items, "A-301", "A-399") }},
		{"C2", "numbered otherwise", "A-201", func(s *render.Sheet, _ *detail.Assembly) { s.Views[1].ID = "7" }},
		{"C2", "two views", "A-201", func(s *render.Sheet, _ *detail.Assembly) { s.Views[1].ID = "1" }},
		{"C3", "parameters", "A-101", func(_ *render.Sheet, a *detail.Assembly) {
			other := *a.Spec
			other.Deck.Span++
			a.Spec = &other
		}},
		{"C3", "datum", "A-101", func(s *render.Sheet, _ *detail.Assembly) {
			change(s.Items, "A-101", "A-101")
			for i, it := range s.Items {
				if in, ok := it.(render.Insert); ok && len(in.Fields) > 3 {
					in.Fields = append([]render.Field(nil), in.Fields...)
					for j := range in.Fields {
						if strings.HasPrefix(in.Fields[j].Name, "DATUM") {
							in.Fields[j].Value = "ELSEWHERE"
						}
					}
					s.Items[i] = in
				}
			}
		}},
		{"C3", "review status", "A-101", func(s *render.Sheet, _ *detail.Assembly) {
			change(s.Items, "NOT FOR CONSTRUCTION UNTIL", "READY")
		}},
		{"C4", place, "A-101", func(s *render.Sheet, _ *detail.Assembly) { change(s.Items, place, "3 OF 5") }},
		{"C5", "another unit", "A-301", func(s *render.Sheet, _ *detail.Assembly) { s.Unit = render.Millimetre }},
	} {
		sheet, all := onSheet(sheets, c.sheet)
		copied := *a
		if c.wrong != nil {
			c.wrong(sheet, &copied)
		} else { // the same words over another length
			for i, it := range sheet.Views[1].Items {
				if d, ok := it.(render.Dim); ok {
					d.Text = "STAND-OFF <>"
					sheet.Views[1].Items[i] = d
					break
				}
			}
		}
		found, err := judge.Agree(all, &copied)
		if err != nil {
			t.Fatal(err)
		}
		ok := false
		for _, v := range found {
			ok = ok || v.Rule == c.rule && strings.Contains(v.String(), c.says)
		}
		if !ok {
			t.Errorf("no %s that says %q in %v", c.rule, c.says, found)
		}
	}
}
