package render

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"standclear/geom"
)

func TestLeftOut(t *testing.T) {
	dot := geom.Polyline(v(5, 5), v(5, 5))
	tests := []struct {
		name string
		item Item
		want int
	}{
		{"on the sheet", Stroke{Pen: Visible, Path: geom.Polyline(v(5, 5), v(50, 5))}, 1},
		{"reaches in", Stroke{Pen: Visible, Path: geom.Polyline(v(-5, 5), v(5, 5))}, 1},
		{"off the sheet", Stroke{Pen: Visible, Path: geom.Polyline(v(5, -5), v(50, -5))}, 0},
		{"fill off the sheet", Fill{Pen: Visible, Region: geom.Rect(201, 0, 210, 10)}, 0},
		{"no length", Stroke{Pen: Visible, Path: dot}, 0},
		{"no points", Stroke{Pen: Visible}, 0},
		{"no region", Fill{Pen: Visible}, 0},
		{"pattern on no region", Fill{Pen: Visible, Pattern: &HatchPattern{Lines: []PatternLine{{Spacing: 1}}}}, 0},
		{"not plotted", Stroke{Pen: NoPlot, Path: geom.Polyline(v(5, 5), v(50, 5))}, 0},
		{"text not plotted", Text{Pen: NoPlot, Height: 2, Align: TopLeft, Lines: []string{"x"}}, 0},
		{"text off the sheet is for the checks to see", Text{Pen: Note, At: v(-50, 0), Height: 2, Align: TopLeft, Lines: []string{"x"}}, 1},
		{"blank text", Text{Pen: Note, Height: 2, Align: TopLeft, Lines: []string{"", "  ", "\x00"}}, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := len(inkOf(t, page(tt.item))); got != tt.want {
				t.Errorf("%d marks, want %d", got, tt.want)
			}
		})
	}
}

func TestRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	loop := &Symbol{Name: "SC-LOOP"}
	loop.Items = []Item{Insert{Symbol: loop}}
	fine := &HatchPattern{Name: "SC-FINE", Lines: []PatternLine{{Spacing: 1e-9}}}
	still := &HatchPattern{Name: "SC-STILL", Lines: []PatternLine{{Spacing: 1, Dashes: []float64{0}}}}
	tests := []struct {
		name string
		item Item
		say  string
	}{
		{"stroke", Stroke{Path: geom.Polyline(v(nan, 0), v(1, 1))}, "Stroke"},
		{"stroke to infinity", Stroke{Path: geom.Polyline(v(0, 0), v(1, -inf))}, "Stroke"},
		{"bulge", Stroke{Path: geom.Path{V: []geom.Vertex{{Bulge: nan}, {Vec: v(1, 1)}}}}, "Stroke"},
		{"fill", Fill{Region: geom.Region{geom.Polygon(v(0, 0), v(1, 0), v(inf, inf))}}, "Fill"},
		{"hatched fill", Fill{Region: geom.Region{geom.Polygon(v(0, 0), v(1, 0), v(nan, 1))}, Pattern: fine}, "Fill"},
		{"hatch origin", Fill{Region: geom.Rect(0, 0, 9, 9), Pattern: &HatchPattern{Name: "SC-1", Lines: []PatternLine{{Spacing: 1}}}, Origin: v(nan, 0)}, "SC-1"},
		{"hatch too fine", Fill{Region: geom.Rect(0, 0, 9, 9), Pattern: fine}, "SC-FINE"},
		{"hatch without end", Fill{Region: geom.Rect(0, 0, 9, 9), Pattern: still}, "SC-STILL"},
		{"hatch spacing zero", Fill{Region: geom.Rect(0, 0, 9, 9), Pattern: &HatchPattern{Lines: []PatternLine{{}}}}, "Fill"},
		{"text", Text{At: v(0, nan), Height: 2, Align: TopLeft, Lines: []string{"x"}}, "Text"},
		{"text height", Text{Height: 0, Align: TopLeft, Lines: []string{"x"}}, "text height 0"},
		{"text alignment", Text{Height: 2, Lines: []string{"x"}}, "alignment 0"},
		{"dimension", Dim{Pen: Dimension, P: v(nan, 0)}, "Dim"},
		{"dimension kind", Dim{Pen: Dimension, Kind: 9}, "kind 9"},
		{"leader", Leader{Points: []geom.Vec{v(0, 0), v(nan, 0)}}, "Leader"},
		{"leader of one point", Leader{Points: []geom.Vec{v(0, 0)}}, "two points"},
		{"symbol in itself", Insert{Symbol: loop}, "SC-LOOP"},
		{"no symbol", Insert{}, "no symbol"},
		{"symbol scale", Insert{Symbol: &Symbol{Name: "SC-X"}, Scale: nan}, "SC-X"},
		{"symbol turned over", Insert{Symbol: &Symbol{Name: "SC-X"}, Scale: -1}, "SC-X"},
		{"pen", Stroke{Pen: penCount, Path: geom.Polyline(v(0, 0), v(1, 1))}, fmt.Sprintf("pen %d", penCount)},
		{"pen below", Text{Pen: -1, Height: 2, Align: TopLeft, Lines: []string{"x"}}, "pen -1"},
		{"no item", nil, "item 0"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for _, s := range []*Sheet{page(tt.item), viewed(tt.item)} {
				_, err := s.Flatten()
				if err == nil {
					t.Fatal("taken")
				}
				if !strings.Contains(err.Error(), tt.say) || !strings.Contains(err.Error(), "A-1") {
					t.Errorf("%q does not name %q and the sheet", err, tt.say)
				}
			}
		})
	}
	if _, err := page(tests[0].item).Flatten(); !errors.Is(err, errNotFinite) {
		t.Errorf("%v does not wrap its cause", err)
	}
}

func TestRefusedSheets(t *testing.T) {
	item := Stroke{Pen: Visible, Path: geom.Polyline(v(0, 0), v(1, 1))}
	tests := []struct {
		name string
		bend func(*Sheet)
	}{
		{"no size", func(s *Sheet) { s.Size.W = 0 }},
		{"size none", func(s *Sheet) { s.Size.H = math.NaN() }},
		{"no scale", func(s *Sheet) { s.Views[0].Scale.K = 0 }},
		{"scale below zero", func(s *Sheet) { s.Views[0].Scale.K = -4 }},
		{"scale without end", func(s *Sheet) { s.Views[0].Scale.K = math.Inf(1) }},
		{"placed nowhere", func(s *Sheet) { s.Views[0].At.X = math.NaN() }},
		{"no window", func(s *Sheet) { s.Views[0].Window = geom.Box{} }},
		{"empty window", func(s *Sheet) { s.Views[0].Window = geom.EmptyBox() }},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := viewed(item)
			tt.bend(s)
			if _, err := s.Flatten(); err == nil {
				t.Error("taken")
			}
		})
	}
}

func TestClean(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"plain", "\u00d8 1/2\" \u00b1 <&>", "\u00d8 1/2\" \u00b1 <&>"},
		{"breaks", "a\tb\r\nc\u2028d", "a b  c d"},
		{"control", "a\x00\x1b\x7f\u0085b", "ab"},
		{"turned about", "B\u202e3\u2066\u00ad", "B3"},
		{"no UTF-8", "a\xffb", "a\ufffdb"},
		{"no character", "a\uffffb\U0001fffe", "ab"},
		{"beyond the first plane", "\U0001f600", "\U0001f600"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Clean(tt.in); got != tt.want {
				t.Errorf("Clean(%q) = %q, want %q", tt.in, got, tt.want)
			}
		})
	}
}
