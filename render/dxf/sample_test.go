package dxf

import (
	"os"
	"path/filepath"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// sample returns a sheet with every kind of item at least once: a block with two holes between
// neighbours, dimensioned all round, a title bubble, and a title block on the paper.
func sample(u render.Unit) *render.Sheet {
	m, k, size := 25.0, 5.0, render.Size{Name: "ISO A2", W: 594, H: 420}
	if u == render.Inch {
		m, k, size = 25.4, 4.0, render.Size{Name: "ARCH D", W: 914.4, H: 609.6}
	}
	p := func(x, y float64) geom.Vec { return geom.Vec{X: x * m, Y: y * m} }
	s := &render.Sheet{ID: "A-301", Title: "SECTION", Size: size, Unit: u, Props: [][2]string{{"project", "REAR DECK"}, {"hash", "0123abcd"}}}
	s.Views = []render.View{
		{ID: "1", Scale: render.Scale{K: k}, At: geom.Vec{X: 150, Y: 200}, Window: geom.BoxOf(p(-16, -20), p(60, 26)), Items: sampleItems(p, k)},
		{ID: "2", Scale: render.Scale{K: 2 * k}, At: geom.Vec{X: 480, Y: 80}, Place: p(120, 0), Window: geom.BoxOf(p(-4, -10), p(30, 16)), Items: []render.Item{
			stroke(render.CutMain, p(0, 0), p(24, 0), p(24, 12)),
			render.Dim{Pen: render.Dimension, P: p(0, 0), Q: p(24, 0), Line: p(0, -6)},
		}},
	}
	s.Items = []render.Item{
		render.Stroke{Pen: render.Border, Path: geom.Rect(10, 10, size.W-10, size.H-10)[0]},
		render.Insert{Pen: render.Border, Symbol: titleBlock(), At: geom.Vec{X: size.W - 172, Y: 12}, Fields: []render.Field{{Name: "title", Value: "SECTION AT BLOCK"}, {Name: "sheet no", Value: "A-301"}}},
		render.Text{Pen: render.Note, At: geom.Vec{X: 20, Y: size.H - 20}, Height: 2.5, Align: render.TopLeft, Lines: []string{"GENERAL NOTES", "", "1. DO NOT SCALE."}},
	}
	return s
}

func xy(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

func stroke(p render.Pen, pts ...geom.Vec) render.Stroke {
	return render.Stroke{Pen: p, Path: geom.Polyline(pts...)}
}

func sampleItems(p func(x, y float64) geom.Vec, k float64) []render.Item {
	outer := geom.Polygon(p(0, 0), p(24, 0), p(24, 12), p(0, 12))
	hole := geom.Path{V: []geom.Vertex{{Vec: p(8, 6), Bulge: -1}, {Vec: p(12, 6), Bulge: -1}}, Closed: true}
	slot := geom.Path{V: []geom.Vertex{{Vec: p(16, 8)}, {Vec: p(20, 8), Bulge: -1}, {Vec: p(20, 4)}, {Vec: p(16, 4), Bulge: -1}}, Closed: true}
	next := geom.Polygon(p(24, 0), p(28, 0), p(28, 12), p(24, 12))
	cross := &render.HatchPattern{Name: "SC-CROSS", Lines: []render.PatternLine{{Angle: 45, Spacing: 2}, {Angle: 135, Spacing: 2, Dashes: []float64{2, -1}}}}
	moved := p(12, -9)
	return []render.Item{
		render.Text{Pen: render.Note, At: p(36, 16), Height: 2.5, Align: render.MiddleLeft, Lines: []string{"2x10 LEDGER", "\u00d85/8 HOLES, 30\u00b0 MAX"}},
		render.Text{Pen: render.Heading, At: p(0, 24), Height: 5, Align: render.BottomCentre, Lines: []string{"BLOCK"}, Bold: true},
		render.Fill{Pen: render.Pattern, Region: geom.Region{outer, hole, slot}, Pattern: cross, Origin: p(0, 0)},
		render.Fill{Pen: render.Pattern, Region: geom.Region{next}},
		render.Stroke{Pen: render.Cut, Path: outer, Tag: &render.Tag{Mark: "B1", Material: "wood", Size: "24 x 12", Role: "block"}},
		render.Stroke{Pen: render.Cut, Path: hole},
		render.Stroke{Pen: render.Cut, Path: slot},
		render.Stroke{Pen: render.Cut, Path: next},
		stroke(render.Hidden, p(0, -2), p(24, -2)),
		stroke(render.Centre, p(10, 1), p(10, 11)),
		render.Stroke{Pen: render.Visible, Path: geom.Path{V: []geom.Vertex{{Vec: p(0, 15), Bulge: 0.5}, {Vec: p(-3, 12)}}}},
		render.Insert{Pen: render.Mark, Symbol: bubble(), At: p(0, -16), Scale: k, Fields: []render.Field{{Name: "no", Value: "1"}}},
		render.Dim{Pen: render.Dimension, P: p(0, 0), Q: p(24, 0), Line: p(0, -6)},
		render.Dim{Pen: render.Dimension, P: p(0, 0), Q: p(28, 0), Line: p(0, -8), TextAt: &moved, Text: "<> OVERALL"},
		render.Dim{Pen: render.Dimension, P: p(28, 0), Q: p(28, 12), Line: p(32, 0), Angle: 90},
		render.Dim{Pen: render.Dimension, Kind: render.Aligned, P: p(0, 0), Q: p(4, 3), Line: p(-3, 5)},
		render.Dim{Pen: render.Dimension, Kind: render.Angular, Centre: p(0, 0), P: p(24, 0), Q: p(24, 24), Line: p(6, 0)},
		render.Dim{Pen: render.Dimension, Kind: render.Diameter, P: p(8, 6), Q: p(12, 6)},
		render.Dim{Pen: render.Dimension, Kind: render.OrdinateX, P: p(0, 0), Q: p(16, 12), Line: p(16, 20)},
		render.Dim{Pen: render.Dimension, Kind: render.OrdinateY, P: p(0, 0), Q: p(0, 6), Line: p(-14, 6)},
		render.Leader{Pen: render.Note, Points: []geom.Vec{p(25, 10), p(34, 16), p(35, 16)}},
		render.Leader{Pen: render.Note, Points: []geom.Vec{p(26, 4), p(34, 10), p(35, 10)}, End: render.Dot},
	}
}

func bubble() *render.Symbol {
	return &render.Symbol{Name: "SC-BUBBLE", Items: []render.Item{
		render.Stroke{Pen: render.Mark, Path: geom.Circle(geom.Vec{}, 6.5)[0]},
		stroke(render.Heading, geom.Vec{X: 6.5}, geom.Vec{X: 60}),
		render.Text{Pen: render.Mark, Height: 5, Align: render.MiddleCentre, Lines: []string{"?"}, Attr: "no", Bold: true},
		render.Text{Pen: render.Note, At: geom.Vec{X: 10, Y: -2}, Height: 2.5, Align: render.TopLeft, Lines: []string{"FULL", "SIZE"}, Attr: "scale"},
	}}
}

func titleBlock() *render.Symbol {
	return &render.Symbol{Name: "SC-TITLE", Items: []render.Item{
		render.Stroke{Pen: render.Border, Path: geom.Rect(0, 0, 160, 40)[0]},
		render.Text{Pen: render.TitleText, At: geom.Vec{X: 5, Y: 24}, Height: 5, Align: render.BottomLeft, Lines: []string{"-"}, Attr: "title"},
		render.Text{Pen: render.TitleText, At: geom.Vec{X: 155, Y: 10}, Height: 10, Align: render.MiddleRight, Lines: []string{"-"}, Attr: "sheet no"},
		render.Text{Pen: render.TitleText, At: geom.Vec{X: 5, Y: 16}, Height: 1.8, Align: render.TopLeft, Lines: []string{"SHEET TITLE"}},
	}}
}

// writeSamples writes the samples into a directory that goes when the test ends, one file per
// unit, as an outside reader takes them.
func writeSamples(t *testing.T) []string {
	t.Helper()
	dir := t.TempDir()
	var out []string
	for u, n := range []string{"inch.dxf", "mm.dxf"} {
		path := filepath.Join(dir, n)
		f, err := os.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := Write(f, sample(render.Unit(u)), Options{}); err != nil {
			t.Fatal(err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		out = append(out, path)
	}
	return out
}
