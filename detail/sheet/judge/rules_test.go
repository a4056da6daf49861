package judge_test

import (
	"strings"
	"testing"

	"standclear/detail/sheet/judge"
	"standclear/geom"
	"standclear/render"
)

func at(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

func line(p render.Pen, pts ...geom.Vec) render.Stroke {
	return render.Stroke{Pen: p, Path: geom.Polyline(pts...)}
}

func words(x, y, h float64, s string) render.Text {
	return render.Text{Pen: render.Note, At: at(x, y), Height: h, Align: render.BottomLeft, Lines: []string{s}}
}

// good is a small sheet that keeps every rule: a frame, and one view at 1:2 with a cut part, a chain of two
// with its overall, and a note.
func good() *render.Sheet {
	part := &render.Tag{Mark: "L1", Role: "ledger"}
	box := geom.Rect(0, 0, 80, 40)
	dim := func(x0, x1, y float64) render.Dim {
		return render.Dim{Pen: render.Dimension, P: at(x0, 0), Q: at(x1, 0), Line: at(x0, y)}
	}
	return &render.Sheet{ID: "A-1", Size: render.Size{Name: "A4", W: 297, H: 210}, Unit: render.Millimetre,
		Items: []render.Item{render.Stroke{Pen: render.Border, Path: geom.Rect(10, 10, 287, 200)[0]}},
		Views: []render.View{{ID: "1", Title: "VIEW", Origin: "corner", Scale: render.Scale{K: 2, Text: "1:2"}, At: at(60, 100), Window: geom.Box{Min: at(-60, -160), Max: at(180, 120)},
			Items: []render.Item{
				render.Stroke{Pen: render.Cut, Path: box[0], Tag: part},
				line(render.Pattern, at(0, 0), at(80, 40)),
				dim(0, 30, -30), dim(30, 80, -30), dim(0, 80, -50),
				render.Leader{Pen: render.Note, Points: []geom.Vec{at(60, 20), at(94, 40), at(104, 40)}, End: render.Dot},
				words(106, 38, 2.5, "LEDGER"), words(0, -120, 2.5, "SCALE 1:2"),
			}}}}
}

// put adds items to the view of a sheet.
func put(s *render.Sheet, it ...render.Item) {
	s.Views[0].Items = append(s.Views[0].Items, it...)
}

// Every rule is seen to fail on the small sheet made wrong in one way, and names the texts it is about; the
// sheet as it is keeps them all.
func TestEachRuleFails(t *testing.T) {
	second := func(s *render.Sheet, x float64) {
		v := s.Views[0]
		v.ID, v.At = "2", at(x, 100)
		s.Views = append(s.Views, v)
	}
	for _, c := range []struct {
		name, rule, says string
		wrong            func(s *render.Sheet)
	}{
		{"as it is", "", "", func(*render.Sheet) {}},
		{"text over text", "L1", "LEDGER", func(s *render.Sheet) { put(s, words(108, 40, 2.5, "OVER")) }},
		{"text over text of the sheet", "L1", "STRIP", func(s *render.Sheet) {
			s.Items = append(s.Items, words(220, 30, 3, "STRIP"), words(225, 31, 3, "TWICE"))
		}},
		{"upright text over level text", "L1", "UP", func(s *render.Sheet) {
			s.Items = append(s.Items, words(220, 30, 3, "LEVEL TEXT"), render.Text{Pen: render.Note, At: at(230, 28), Height: 3, Align: render.BottomLeft, Rot: 90, Lines: []string{"UP"}})
		}},
		{"line through text", "L2", "LEDGER", func(s *render.Sheet) { put(s, line(render.Visible, at(100, 41), at(120, 41))) }},
		{"its weight counts", "L2", "LEDGER", func(s *render.Sheet) { put(s, line(render.Ground, at(100, 37.4), at(140, 37.4))) }},
		{"a weight off", "", "", func(s *render.Sheet) { put(s, line(render.Ground, at(107, 36), at(118, 36))) }},
		{"arc through text", "L2", "LEDGER", func(s *render.Sheet) {
			put(s, render.Stroke{Pen: render.Visible, Path: geom.Circle(at(112, 46), 6)[0]})
		}},
		{"hatch under text", "L2", "hatch", func(s *render.Sheet) {
			p := &render.HatchPattern{Name: "T", Lines: []render.PatternLine{{Angle: 45, Spacing: 1}}}
			put(s, render.Fill{Pen: render.Pattern, Region: geom.Rect(104, 34, 140, 46), Pattern: p})
		}},
		{"hatch masked", "", "", func(s *render.Sheet) {
			p := &render.HatchPattern{Name: "T", Lines: []render.PatternLine{{Angle: 45, Spacing: 1}}}
			put(s, render.Fill{Pen: render.Pattern, Region: geom.Rect(0, 50, 80, 70), Pattern: p}, render.Fill{Pen: render.Pattern, Region: geom.Rect(8, 54, 75, 66), White: true}, words(10, 56, 2.5, "IN THE HATCH"))
		}},
		{"fill under text", "L2", "unreadable", func(s *render.Sheet) {
			s.Items = append(s.Items, render.Fill{Pen: render.Note, Region: geom.Rect(220, 28, 260, 36)}, words(222, 30, 3, "DARK"))
		}},
		{"fill over text", "L2", "covers", func(s *render.Sheet) { put(s, render.Fill{Pen: render.Note, Region: geom.Rect(108, 38, 116, 43)}) }},
		{"text out of the frame", "L3", "FAR OUT", func(s *render.Sheet) { s.Items = append(s.Items, words(280, 30, 2.5, "FAR OUT")) }},
		{"text cut by its view", "L3", "FAR OUT", func(s *render.Sheet) { put(s, words(170, 60, 2.5, "FAR OUT")) }},
		{"leader cut by its view", "L3", "cut off", func(s *render.Sheet) {
			put(s, render.Leader{Pen: render.Note, Points: []geom.Vec{at(10, 30), at(10, 130)}})
		}},
		{"small text", "L4", "SMALL", func(s *render.Sheet) { put(s, words(0, 80, 1.9, "SMALL")) }},
		{"leaders cross", "L5", "leaders cross", func(s *render.Sheet) {
			put(s, render.Leader{Pen: render.Note, Points: []geom.Vec{at(60, 50), at(80, 22)}, End: render.Dot})
		}},
		{"leaders meet at an end", "", "", func(s *render.Sheet) {
			put(s, render.Leader{Pen: render.Note, Points: []geom.Vec{at(60, 20), at(40, 60)}, End: render.Dot})
		}},
		{"leader through a dimension line", "L6", "a leader", func(s *render.Sheet) {
			put(s, render.Leader{Pen: render.Note, Points: []geom.Vec{at(5, 10), at(5, -42)}, End: render.Dot})
		}},
		{"extension line through a dimension line", "L6", "extension", func(s *render.Sheet) {
			put(s, render.Dim{Pen: render.Dimension, P: at(60, 0), Q: at(80, 0), Line: at(0, -70)})
		}},
		{"chain that does not add up", "L7", "80.5", func(s *render.Sheet) {
			s.Number = func(mm float64) string { return map[float64]string{30: "30.4", 50: "50.4", 80: "80.5"}[mm] }
		}},
		{"dimension without its value", "L7", "ABOUT 50", func(s *render.Sheet) {
			d := s.Views[0].Items[3].(render.Dim)
			d.Text = "ABOUT 50"
			s.Views[0].Items[3] = d
		}},
		{"wrong scale", "L8", "1:2", func(s *render.Sheet) { s.Views[0].Scale.K = 2.01 }},
		{"scale not printed", "L8", "1:2", func(s *render.Sheet) { s.Views[0].Items = s.Views[0].Items[:7] }},
		{"strip of another scale", "L8", "1:5", func(s *render.Sheet) {
			s.Items = append(s.Items, render.Insert{Symbol: &render.Symbol{Name: "T"}, Fields: []render.Field{{Name: "SCALE", Value: "1:5"}}})
		}},
		{"cut part empty", "L11", "L1", func(s *render.Sheet) {
			s.Views[0].Items = append(s.Views[0].Items[:1:1], s.Views[0].Items[6:]...)
		}},
		{"views too near", "L12", "apart", func(s *render.Sheet) { second(s, 132) }},
		{"cloud over a view", "", "", func(s *render.Sheet) {
			s.Items = append(s.Items, render.Stroke{Pen: render.Revision, Path: geom.Rect(70, 112, 76, 118)[0]})
		}},
		{"table in a view", "L12", "of the sheet", func(s *render.Sheet) { s.Items = append(s.Items, words(70, 112, 2.5, "ROW")) }},
	} {
		s := good()
		c.wrong(s)
		found, err := judge.Layout(s)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if c.rule == "" {
			if len(found) > 0 {
				t.Errorf("%s: %v", c.name, found)
			}
			continue
		}
		ok := false
		for _, v := range found {
			ok = ok || v.Rule == c.rule && strings.Contains(v.String(), c.says) && v.Sheet == "A-1"
		}
		if !ok {
			t.Errorf("%s: no %s that says %q in %v", c.name, c.rule, c.says, found)
		}
	}
}

func TestUnreadableSheet(t *testing.T) {
	s := good()
	s.Views[0].Scale.K = 0
	if _, err := judge.Layout(s); err == nil {
		t.Error("a view at no scale was judged")
	}
	if _, err := judge.Soft(s); err == nil {
		t.Error("a view at no scale was scored")
	}
}

// Each soft rule loses by what breaks it, and by nothing else named here.
func TestEachSoftRuleLoses(t *testing.T) {
	was, err := judge.Soft(good())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		rule  int
		worse func(s *render.Sheet)
	}{
		{1, func(s *render.Sheet) { put(s, line(render.Visible, at(100, 44.2), at(120, 44.2))) }},
		{2, func(s *render.Sheet) {
			d := s.Views[0].Items[3].(render.Dim)
			p := at(100, -30)
			d.TextAt = &p
			s.Views[0].Items[3] = d
		}},
		{3, func(s *render.Sheet) {
			put(s, render.Leader{Pen: render.Note, Points: []geom.Vec{at(60, 30), at(90, 60), at(101, 60)}})
		}},
		{4, func(s *render.Sheet) {
			put(s, render.Leader{Pen: render.Note, Points: []geom.Vec{at(2, 30), at(94, 90), at(144, 90)}})
		}},
		{5, func(s *render.Sheet) {
			put(s, render.Leader{Pen: render.Note, Points: []geom.Vec{at(60, 30), at(94, 37), at(104, 37)}})
		}},
		{6, func(s *render.Sheet) {
			v := s.Views[0]
			v.ID, v.At = "2", at(180, 105)
			s.Views = append(s.Views, v)
		}},
		{8, func(s *render.Sheet) {
			put(s, render.Dim{Pen: render.Dimension, P: at(0, 0), Q: at(80, 0), Line: at(0, -76)})
		}},
		{9, func(s *render.Sheet) { s.Views[0].Items = s.Views[0].Items[5:] }},
		{10, func(s *render.Sheet) {
			p := &render.HatchPattern{Name: "T", Lines: []render.PatternLine{{Angle: 45, Spacing: 1}}}
			put(s, render.Fill{Pen: render.Pattern, Region: geom.Rect(0, 50, 20, 60), Pattern: p}, render.Fill{Pen: render.Pattern, Region: geom.Rect(20, 50, 40, 60), Pattern: p})
		}},
		{11, func(s *render.Sheet) {
			put(s, line(render.Visible, at(0, 60), at(40, 60)), line(render.Visible, at(0, 61), at(40, 61)))
		}},
		{12, func(s *render.Sheet) {
			for i := range 12 {
				put(s, render.Leader{Pen: render.Note, Points: []geom.Vec{at(60, 20), at(94, float64(40+8*i)), at(104, float64(40+8*i))}})
			}
		}},
		{13, func(s *render.Sheet) {
			put(s, render.Text{Pen: render.Note, At: at(0, 80), Height: 2.5, Align: render.TopLeft, Lines: []string{"LEFT ALL", "ALONE"}})
		}},
		{15, func(s *render.Sheet) {
			put(s, render.Dim{Pen: render.Dimension, P: at(0, 0), Q: at(80, 0), Line: at(0, 20)})
		}},
		{16, func(s *render.Sheet) {
			put(s, render.Dim{Pen: render.Dimension, P: at(0, 0), Q: at(4, 0), Line: at(0, -70)})
		}},
	} {
		s := good()
		c.worse(s)
		got, err := judge.Soft(s)
		if err != nil {
			t.Fatal(err)
		}
		if got.Rules[c.rule-1] >= was.Rules[c.rule-1] {
			t.Errorf("S%d stays at %.2f: %v", c.rule, got.Rules[c.rule-1], got)
		}
	}
	// S7: a sheet with ink in one quarter alone; S14: no title at all
	if was.Rules[6] >= 1 || was.Rules[13] != 0 {
		t.Errorf("S7 %.2f, S14 %.2f: the small sheet is empty and has no title", was.Rules[6], was.Rules[13])
	}
}
