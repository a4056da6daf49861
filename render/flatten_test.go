package render

import (
	"fmt"
	"math"
	"testing"

	"standclear/geom"
)

func v(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

// page is a sheet of 200 x 100 mm with the items on paper.
func page(items ...Item) *Sheet {
	return &Sheet{ID: "A-1", Size: Size{W: 200, H: 100}, Unit: Millimetre, Items: items}
}

// viewed is the same sheet with the items in a view at 1:5, its origin at (20, 10) on paper.
func viewed(items ...Item) *Sheet {
	s := page()
	s.Views = []View{{ID: "1", Scale: Scale{K: 5}, At: v(20, 10), Window: geom.Box{Min: v(-50, -25), Max: v(500, 400)}, Items: items}}
	return s
}

// inkOf flattens a sheet and returns the ink of its first frame.
func inkOf(t *testing.T, s *Sheet) []Ink {
	t.Helper()
	frames, err := s.Flatten()
	if err != nil {
		t.Fatal(err)
	}
	return frames[0].Ink
}

// of picks the ink of one kind.
func of[T Ink](all []Ink) []T {
	var some []T
	for _, k := range all {
		if k, ok := k.(T); ok {
			some = append(some, k)
		}
	}
	return some
}

func near(a, b geom.Vec) bool { return a.Dist(b) < 1e-9 }

// At 1:5 with the origin at (20, 10), the model point (100, 50) is at 20 + 100/5, 10 + 50/5.
func TestViewScale(t *testing.T) {
	arc := geom.Path{V: []geom.Vertex{{Vec: v(0, 0), Bulge: 0.5}, {Vec: v(100, 50)}}}
	s := viewed(Stroke{Pen: Visible, Path: arc})
	frames, err := s.Flatten()
	if err != nil {
		t.Fatal(err)
	}
	if len(frames) != 2 || frames[0].View != &s.Views[0] || frames[1].View != nil {
		t.Fatalf("frames: %+v", frames)
	}
	// -50/5+20, -25/5+10, 500/5+20, 400/5+10
	if b := frames[0].Box; !near(b.Min, v(10, 5)) || !near(b.Max, v(120, 90)) {
		t.Errorf("opening %v", b)
	}
	l := frames[0].Ink[0].(Line)
	if !near(l.Path.V[0].Vec, v(20, 10)) || !near(l.Path.V[1].Vec, v(40, 20)) || l.Path.V[0].Bulge != 0.5 {
		t.Errorf("path %v", l.Path)
	}
	if l.Weight != Visible.Def().Weight {
		t.Errorf("weight %d", l.Weight)
	}
}

// Three lines of 2.5 mm capitals at the pitch 1.6: baselines 4 mm apart, the block 2.5 + 2 x 4 =
// 10.5 mm from the first cap line to the last baseline. From the attachment point up, the first
// baseline is at -2.5 (top), 10.5/2 - 2.5 = 2.75 (middle), 10.5 - 2.5 = 8 (bottom).
func TestTextPlaces(t *testing.T) {
	tests := []struct {
		name  string
		align Align
		first float64
		side  Side
	}{
		{"top left", TopLeft, -2.5, Start},
		{"top centre", TopCentre, -2.5, Middle},
		{"top right", TopRight, -2.5, End},
		{"middle left", MiddleLeft, 2.75, Start},
		{"middle centre", MiddleCentre, 2.75, Middle},
		{"middle right", MiddleRight, 2.75, End},
		{"bottom left", BottomLeft, 8, Start},
		{"bottom centre", BottomCentre, 8, Middle},
		{"bottom right", BottomRight, 8, End},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			text := Text{Pen: Note, At: v(100, 50), Height: 2.5, Align: tt.align, Lines: []string{"A", "B", "C"}}
			for i, w := range of[Words](inkOf(t, page(text))) {
				want := v(100, 50+tt.first-4*float64(i))
				if !near(w.At, want) || w.Side != tt.side || w.Height != 2.5 {
					t.Errorf("line %d at %v on side %d, want %v on %d", i, w.At, w.Side, want, tt.side)
				}
			}
			text.Rot = 90 // up is now left
			for i, w := range of[Words](inkOf(t, page(text))) {
				want := v(100-(tt.first-4*float64(i)), 50)
				if !near(w.At, want) || w.Rot != 90 {
					t.Errorf("upright line %d at %v, want %v", i, w.At, want)
				}
			}
		})
	}
}

func TestTextKeepsHeightInView(t *testing.T) {
	text := Text{Pen: Note, At: v(100, 50), Height: 2.5, Align: TopLeft, Lines: []string{"A", "", "C"}}
	got := of[Words](inkOf(t, viewed(text)))
	if len(got) != 2 {
		t.Fatalf("%d lines, want 2: the blank one only takes room", len(got))
	}
	// 20 + 100/5, 10 + 50/5 - 2.5, and two pitches of 4 mm below
	if !near(got[0].At, v(40, 17.5)) || !near(got[1].At, v(40, 9.5)) || got[0].Height != 2.5 {
		t.Errorf("%+v", got)
	}
}

// Lines at 45 degrees, 2 mm apart on paper whatever the scale, one through the origin of the fill.
func TestHatchIsPlottedSize(t *testing.T) {
	diag := &HatchPattern{Name: "SC-45", Lines: []PatternLine{{Angle: 45, Spacing: 2}}}
	tests := []struct {
		name   string
		sheet  *Sheet
		origin geom.Vec // on paper
		across geom.Vec // unit vector across the lines
	}{
		{"paper", page(Fill{Pen: Pattern, Region: geom.Rect(10, 10, 60, 40), Pattern: diag, Origin: v(10, 10)}), v(10, 10), v(-1, 1)},
		{"view", viewed(Fill{Pen: Pattern, Region: geom.Rect(0, 0, 200, 100), Pattern: diag, Origin: v(7, 0)}), v(20+7.0/5, 10), v(-1, 1)},
		{"turned", page(Fill{Pen: Pattern, Region: geom.Rect(10, 10, 60, 40), Pattern: diag, Turn: 90, Origin: v(11, 10)}), v(11, 10), v(1, 1)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			lines := of[Line](inkOf(t, tt.sheet))
			if len(lines) < 10 {
				t.Fatalf("%d lines", len(lines))
			}
			seen := map[int]bool{}
			for _, l := range lines {
				if !l.Hatch || l.Pen != Pattern {
					t.Fatalf("%+v", l)
				}
				for _, p := range l.Path.V {
					n := p.Sub(tt.origin).Dot(tt.across.Unit()) / 2
					if math.Abs(n-math.Round(n)) > 1e-6 {
						t.Errorf("%v is %v spacings from the origin", p.Vec, n)
					}
					seen[int(math.Round(n))] = true
				}
			}
			if !seen[0] || !seen[1] {
				t.Errorf("families %v", seen)
			}
		})
	}
}

// A pattern's base point turns with it, about the origin of the fill. Level lines 4 mm apart with
// their base at (5, 1) become plumb lines when turned by 90 degrees, their base at (-1, 5): one line
// is 1 mm left of the origin. Plumb lines not turned have one 5 mm right of it.
func TestHatchBase(t *testing.T) {
	tests := []struct {
		name        string
		angle, turn float64
		x           float64
	}{{"turned", 0, 90, 19}, {"plumb", 90, 0, 25}}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := &HatchPattern{Lines: []PatternLine{{Angle: tt.angle, Base: v(5, 1), Spacing: 4}}}
			s := page(Fill{Pen: Pattern, Region: geom.Rect(10, 10, 32, 30), Pattern: p, Turn: tt.turn, Origin: v(20, 20)})
			lines := of[Line](inkOf(t, s))
			if len(lines) == 0 {
				t.Fatal("no lines")
			}
			for _, l := range lines {
				a, b := l.Path.V[0], l.Path.V[1]
				if n := (a.X - tt.x) / 4; math.Abs(n-math.Round(n)) > 1e-6 || math.Abs(a.X-b.X) > 1e-6 {
					t.Errorf("line %v, want x = %v and every 4 mm", l.Path.V, tt.x)
				}
			}
		})
	}
}

// Everything in a symbol is in its own units. At half scale lines 4 apart with dashes of 2, gaps of
// 2 and a shift of 1 from line to line come out 2, 1, 1 and 0.5 mm.
func TestHatchInSymbol(t *testing.T) {
	brick := &HatchPattern{Lines: []PatternLine{{Spacing: 4, Dashes: []float64{2, -2}, Shift: 1}}}
	sym := &Symbol{Items: []Item{Fill{Pen: Pattern, Region: geom.Rect(0, 0, 40, 40), Pattern: brick}}}
	lines := of[Line](inkOf(t, page(Insert{Symbol: sym, At: v(50, 50), Scale: 0.5})))
	if len(lines) < 80 { // 9 or more lines of 10 dashes
		t.Fatalf("%d dashes", len(lines))
	}
	for _, l := range lines {
		a, b := l.Path.V[0].Vec, l.Path.V[1].Vec
		if a.X > b.X {
			a, b = b, a
		}
		row := math.Round((a.Y - 50) / 2)
		along := math.Mod(a.X-50-0.5*row+100, 2)
		whole := a.X > 50+1e-6 && b.X < 70-1e-6
		if math.Abs(a.Y-50-2*row) > 1e-6 || whole && (math.Abs(b.X-a.X-1) > 1e-6 || min(along, 2-along) > 1e-6) {
			t.Errorf("dash %v to %v", a, b)
		}
	}
}

func TestGround(t *testing.T) {
	r := geom.Rect(10, 10, 20, 20)
	areas := of[Area](inkOf(t, page(Fill{Pen: Pattern, Region: r, White: true}, Fill{Pen: Pattern, Region: r})))
	if len(areas) != 2 || !areas[0].White || areas[1].White || math.Abs(areas[0].Region[0].Area()-100) > 1e-9 {
		t.Errorf("%+v", areas)
	}
}

// At half scale in a symbol the letters of a dimension are 1.25 mm tall and 0.6 mm over the line;
// what it measures is the symbol's own length.
func TestDimensionInSymbol(t *testing.T) {
	sym := &Symbol{Items: []Item{Dim{Pen: Dimension, Kind: Linear, P: v(0, 0), Q: v(40, 0), Line: v(0, 20)}}}
	words := of[Words](inkOf(t, page(Insert{Symbol: sym, At: v(50, 50), Scale: 0.5})))
	if len(words) != 1 || words[0].Text != "40" || words[0].Height != 1.25 || !near(words[0].At, v(60, 60.6)) {
		t.Errorf("%+v", words)
	}
}

func TestDimension(t *testing.T) {
	d := Dim{Pen: Dimension, Kind: Linear, P: v(0, 0), Q: v(100, 0), Line: v(0, 60), Text: "<> CLR"}
	s := viewed(d)
	s.Number = func(mm float64) string { return fmt.Sprintf("%.0f", mm) }
	ink := inkOf(t, s)
	words := of[Words](ink)
	if len(words) != 1 || words[0].Text != "100 CLR" || words[0].Height != 2.5 || words[0].Side != Middle {
		t.Fatalf("words %+v", words)
	}
	// The line is at 10 + 60/5 = 22 on paper, the middle of the text 1.2 + 2.5/2 over it, its
	// baseline 1.2 over it; the middle of the measured length at 20 + 50/5.
	if !near(words[0].At, v(30, 23.2)) {
		t.Errorf("text at %v", words[0].At)
	}
	ticks := 0
	for _, l := range of[Line](ink) {
		if l.Weight == tickWeight {
			ticks++
			if got := l.Path.Length(); math.Abs(got-3) > 1e-9 {
				t.Errorf("tick %v mm long, want twice 1.5", got)
			}
		}
	}
	if ticks != 2 || len(of[Line](ink)) != 5 {
		t.Errorf("%d ticks in %d lines, want 2 and one dimension line, two extension lines", ticks, len(of[Line](ink)))
	}
}

func TestNumberDefaultsToMillimetres(t *testing.T) {
	d := Dim{Pen: Dimension, Kind: Aligned, P: v(0, 0), Q: v(30, 40.0006), Line: v(0, 10)}
	if got := of[Words](inkOf(t, page(d)))[0].Text; got != "50" {
		t.Errorf("label %q", got)
	}
}

func TestLeader(t *testing.T) {
	l := Leader{Pen: Note, Points: []geom.Vec{v(0, 0), v(100, 0), v(130, 0)}}
	ink := inkOf(t, viewed(l))
	areas := of[Area](ink)
	if len(of[Line](ink)) != 1 || len(areas) != 1 {
		t.Fatalf("%+v", ink)
	}
	// an arrow 2.5 mm long and a third of that wide: 2.5 x 2.5/3 / 2
	if a := math.Abs(areas[0].Region[0].Area()); math.Abs(a-2.5*2.5/6) > 1e-9 {
		t.Errorf("arrow of %v mm2", a)
	}
}

func TestSymbol(t *testing.T) {
	bubble := &Symbol{Name: "SC-BUBBLE", Items: []Item{
		Stroke{Pen: Mark, Path: geom.Polyline(v(0, 0), v(7, 0))},
		Text{Pen: Mark, At: v(0, 10), Height: 5, Align: BottomLeft, Lines: []string{"?"}, Attr: "NO"},
		Text{Pen: Mark, At: v(0, 0), Height: 2, Align: BottomLeft, Lines: []string{"FIXED"}},
	}}
	tag := &Tag{Mark: "B3"}
	in := Insert{Symbol: bubble, At: v(100, 50), Fields: []Field{{Name: "NO", Value: "4"}}, Tag: tag}
	tests := []struct {
		name string
		ink  func(in Insert) *Sheet
		at   geom.Vec
		k    float64 // paper mm per symbol mm
	}{
		{"on paper", func(in Insert) *Sheet { return page(in) }, v(100, 50), 1},
		{"half size", func(in Insert) *Sheet { in.Scale = 0.5; return page(in) }, v(100, 50), 0.5},
		{"in a view, plotted size", func(in Insert) *Sheet { in.Scale = 5; return viewed(in) }, v(40, 20), 1},
		{"in a view, model size", func(in Insert) *Sheet { return viewed(in) }, v(40, 20), 0.2},
		{"in a symbol", func(in Insert) *Sheet {
			return page(Insert{Symbol: &Symbol{Items: []Item{in}}, Scale: 0.5, At: v(50, 25)})
		}, v(100, 50), 0.5},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			ink := inkOf(t, tt.ink(in))
			line, words := of[Line](ink)[0], of[Words](ink)
			if !near(line.Path.V[0].Vec, tt.at) || math.Abs(line.Path.Length()-7*tt.k) > 1e-9 || line.Tag != tag {
				t.Errorf("line %+v", line)
			}
			if words[0].Text != "4" || math.Abs(words[0].Height-5*tt.k) > 1e-9 || !near(words[0].At, tt.at.Add(v(0, 10*tt.k))) {
				t.Errorf("field %+v", words[0])
			}
			if words[1].Text != "FIXED" {
				t.Errorf("own text %+v", words[1])
			}
		})
	}
}

func TestFields(t *testing.T) {
	tests := []struct {
		name   string
		fields []Field
		want   string
	}{
		{"no value keeps the text", []Field{{Name: "OTHER", Value: "x"}}, "NOT STATED"},
		{"value", []Field{{Name: "DATE", Value: "2026-01-05"}}, "2026-01-05"},
		{"small letters are the same name", []Field{{Name: "date", Value: "2026-01-05"}}, "2026-01-05"},
		{"the last value counts", []Field{{Name: "DATE", Value: "1"}, {Name: "DATE", Value: "2", Height: 4}}, "2"},
		{"one line", []Field{{Name: "DATE", Value: "1\n2"}}, "1 2"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			date := Text{Pen: Mark, Height: 5, Align: BottomLeft, Lines: []string{"NOT", "STATED"}, Attr: "DATE"}
			got := of[Words](inkOf(t, page(Insert{Symbol: &Symbol{Items: []Item{date}}, Fields: tt.fields})))
			height := 5.0
			if tt.want == "2" { // the value that counts brings its own
				height = 4
			}
			if len(got) != 1 || got[0].Text != tt.want || got[0].Height != height {
				t.Errorf("%+v, want %q, %g high", got, tt.want, height)
			}
		})
	}
}
