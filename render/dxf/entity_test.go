package dxf

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// bent returns a path whose segments have the bulges in turn.
func bent(closed bool, bulges []float64, pts ...geom.Vec) geom.Path {
	p := geom.Polyline(pts...)
	p.Closed = closed
	for i, b := range bulges {
		p.V[i].Bulge = b
	}
	return p
}

func TestStrokeBecomesTheSimplestEntity(t *testing.T) {
	for _, c := range []struct {
		name string
		path geom.Path
		kind string
		want string // the tags after the first subclass marker, markers left out
	}{
		{"line", geom.Polyline(xy(1, 2), xy(3.5, -4)), "LINE", "10=1.0 20=2.0 30=0.0 11=3.5 21=-4.0 31=0.0"},
		{"there and back", geom.Polygon(xy(0, 0), xy(3, 0)), "LINE", "10=0.0 20=0.0 30=0.0 11=3.0 21=0.0 31=0.0"},
		{"pieces of no length", geom.Polyline(xy(0, 0), xy(0, 1e-8), xy(3, 0), xy(3, 0)), "LINE", "10=0.0 20=0.0 30=0.0 11=3.0 21=0.0 31=0.0"},
		// a quarter circle about (0, 0), bulge tan(90/4) = sqrt(2) - 1
		{"arc", bent(false, []float64{math.Sqrt2 - 1}, xy(10, 0), xy(0, 10)), "ARC", "10=0.0 20=0.0 30=0.0 40=10.0 50=0.0 51=90.0"},
		// the same quarter run the other way: the record is counter-clockwise all the same
		{"clockwise arc", bent(false, []float64{1 - math.Sqrt2}, xy(0, 10), xy(10, 0)), "ARC", "10=0.0 20=0.0 30=0.0 40=10.0 50=0.0 51=90.0"},
		// the long way round: 270 degrees, bulge tan(270/4) = sqrt(2) + 1
		{"long arc", bent(false, []float64{math.Sqrt2 + 1}, xy(10, 0), xy(0, -10)), "ARC", "10=0.0 20=0.0 30=0.0 40=10.0 50=0.0 51=270.0"},
		{"circle", geom.Circle(xy(4, 5), 2)[0], "CIRCLE", "10=4.0 20=5.0 30=0.0 40=2.0"},
		{"circle from unequal arcs", bent(true, []float64{math.Sqrt2 - 1, math.Sqrt2 + 1}, xy(10, 0), xy(0, 10)), "CIRCLE", "10=0.0 20=0.0 30=0.0 40=10.0"},
		{"circle not flagged closed", bent(false, []float64{1, 1, 0}, xy(2, 5), xy(6, 5), xy(2, 5)), "CIRCLE", "10=4.0 20=5.0 30=0.0 40=2.0"},
		{"open chain", bent(false, []float64{0, 0.5, 9}, xy(0, 0), xy(4, 0), xy(4, 2)), "LWPOLYLINE", "90=3 70=0 43=0.0 10=0.0 20=0.0 10=4.0 20=0.0 42=0.5 10=4.0 20=2.0"},
		{"ring", geom.Rect(0, 0, 4, 2)[0], "LWPOLYLINE", "90=4 70=1 43=0.0 10=0.0 20=0.0 10=4.0 20=0.0 10=4.0 20=2.0 10=0.0 20=2.0"},
		{"ring that repeats its start", geom.Polyline(xy(0, 0), xy(4, 0), xy(4, 2), xy(0, 0)), "LWPOLYLINE", "90=3 70=1 43=0.0 10=0.0 20=0.0 10=4.0 20=0.0 10=4.0 20=2.0"},
		{"half disc", bent(true, []float64{1, 0}, xy(0, 0), xy(4, 0)), "LWPOLYLINE", "90=2 70=1 43=0.0 10=0.0 20=0.0 42=1.0 10=4.0 20=0.0"},
		{"arc of a far centre", bent(false, []float64{1e-4}, xy(0, 0), xy(10, 0)), "LWPOLYLINE", "90=2 70=0 43=0.0 10=0.0 20=0.0 42=0.0001 10=10.0 20=0.0"},
		{"never a negative nothing", geom.Polyline(xy(-1e-12, math.Copysign(0, -1)), xy(1, -1e-11)), "LINE", "10=0.0 20=0.0 30=0.0 11=1.0 21=0.0 31=0.0"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := draw(t, render.Stroke{Pen: render.Cut, Path: c.path}).one(t, c.kind)
			var got []string
			for _, g := range r.tags {
				if !slices.Contains([]int{5, 8, 100, 330}, g.code) {
					got = append(got, fmt.Sprintf("%d=%s", g.code, g.value))
				}
			}
			if strings.Join(got, " ") != c.want {
				t.Errorf("got  %s\nwant %s", strings.Join(got, " "), c.want)
			}
		})
	}
}

// An arc written by centre and angles must end where its path does.
func TestArcsEndWhereTheirPathsDo(t *testing.T) {
	for _, bulge := range []float64{0.01, 0.1, 0.3, 1, 2, -0.05, -0.7, -3} {
		a, b := xy(12.3, -4.5), xy(77.7, 31.25)
		r := draw(t, render.Stroke{Pen: render.Cut, Path: bent(false, []float64{bulge}, a, b)}).one(t, "ARC")
		c, rad := r.point(t, 10), r.num(t, 40)
		from := geom.Polar(c, rad, r.num(t, 50)*math.Pi/180)
		to := geom.Polar(c, rad, r.num(t, 51)*math.Pi/180)
		if bulge < 0 {
			from, to = to, from
		}
		if from.Dist(a) > 1e-6 || to.Dist(b) > 1e-6 {
			t.Errorf("bulge %g: ends %v %v, want %v %v", bulge, from, to, a, b)
		}
	}
}

// Inch fractions, given in millimetres as a model has them, stand in the file as themselves.
func TestInchFractionsSurvive(t *testing.T) {
	for _, den := range []int{16, 32, 64} {
		p := geom.Path{}
		for k := 1; k <= 5*den; k++ {
			v := float64(k) * 25.4 / float64(den)
			p.V = append(p.V, geom.Vertex{Vec: xy(v, -v+float64(k%2)*25.4)})
		}
		r := write(t, view(render.Inch, 4, render.Stroke{Pen: render.Cut, Path: p})).one(t, "LWPOLYLINE")
		xs, ys := r.all(10), r.all(20)
		for i := range xs {
			k := i + 1
			x, y := float64(k)/float64(den), -float64(k)/float64(den)+float64(k%2)
			if gx, _ := strconv.ParseFloat(xs[i], 64); gx != x {
				t.Errorf("%d/%d: x %s", k, den, xs[i])
			}
			if gy, _ := strconv.ParseFloat(ys[i], 64); gy != y {
				t.Errorf("%d/%d: y %s", k, den, ys[i])
			}
		}
	}
}

func TestViewsStandAtTheirPlace(t *testing.T) {
	s := view(render.Inch, 4, stroke(render.Cut, xy(0, 0), xy(25.4, 0)))
	s.Views[0].Place = xy(254, -127)
	if p := write(t, s).one(t, "LINE").point(t, 10); p != xy(10, -5) {
		t.Errorf("the origin stands at %v, want (10, -5)", p)
	}
}

func TestOrderOfDrawing(t *testing.T) {
	f := draw(t,
		render.Text{Pen: render.Note, At: xy(0, 0), Height: 2.5, Align: render.TopLeft, Lines: []string{"A"}},
		render.Leader{Pen: render.Note, Points: []geom.Vec{xy(0, 0), xy(9, 9)}, End: render.NoEnd},
		render.Dim{Pen: render.Dimension, P: xy(0, 0), Q: xy(20, 0), Line: xy(0, 20)},
		render.Insert{Pen: render.Mark, Symbol: bubble(), At: xy(50, 50)},
		stroke(render.Cut, xy(0, 0), xy(20, 0)),
		stroke(render.Hidden, xy(0, 1), xy(20, 1)),
		stroke(render.Visible, xy(0, 2), xy(20, 2)),
		render.Fill{Pen: render.Pattern, Region: geom.Rect(0, 0, 9, 9), Pattern: &render.HatchPattern{Name: "SC-A", Lines: []render.PatternLine{{Spacing: 1}}}},
		render.Fill{Pen: render.Cut, Region: geom.Rect(0, 0, 9, 9)},
	)
	var got []string
	for _, r := range f.records {
		if r.section == "ENTITIES" && r.handle() != "" && r.get(67) != "1" {
			got = append(got, r.kind+" "+strings.TrimPrefix(r.get(8), "A-"))
		}
	}
	want := []string{"HATCH DETL-MCUT", "HATCH DETL-PATT", "LINE DETL-MBND", "LINE DETL-HIDD", "LINE DETL-MCUT", "INSERT ANNO-SYMB",
		"ATTRIB ANNO-SYMB", "ATTRIB ANNO-NOTE", "SEQEND ANNO-SYMB", "DIMENSION ANNO-DIMS", "LEADER ANNO-NOTE", "TEXT ANNO-NOTE"}
	if !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

func TestRepeatsAreDropped(t *testing.T) {
	rect := geom.Rect(0, 0, 9, 9)[0]
	turned := geom.Polygon(xy(9, 9), xy(9, 0), xy(0, 0), xy(0, 9))
	tag := &render.Tag{Mark: "B1"}
	fill := render.Fill{Pen: render.Pattern, Region: geom.Rect(0, 0, 9, 9)}
	note := render.Text{Pen: render.Note, At: xy(1, 1), Height: 2.5, Align: render.TopLeft, Lines: []string{"A"}}
	dim := render.Dim{Pen: render.Dimension, P: xy(0, 0), Q: xy(20, 0), Line: xy(0, 20)}
	for _, c := range []struct {
		name  string
		items []render.Item
		keep  string // layer or extended data of what stays
		gone  int
	}{
		{"line", []render.Item{stroke(render.Cut, xy(0, 0), xy(9, 0)), stroke(render.Cut, xy(9, 0), xy(0, 0))}, "A-DETL-MCUT", 1},
		{"lighter line", []render.Item{stroke(render.Hidden, xy(0, 0), xy(9, 0)), stroke(render.Visible, xy(0, 0), xy(9, 0))}, "A-DETL-MBND", 1},
		{"line that is not plotted", []render.Item{stroke(render.NoPlot, xy(0, 0), xy(9, 0)), stroke(render.Fine, xy(0, 0), xy(9, 0))}, "A-DETL-FINE", 1},
		{"line along a ring", []render.Item{stroke(render.Visible, xy(9, 9), xy(0, 9)), render.Stroke{Pen: render.Cut, Path: rect}}, "A-DETL-MCUT", 1},
		{"line along a ring of its layer", []render.Item{render.Stroke{Pen: render.Cut, Path: rect, Tag: tag}, stroke(render.Cut, xy(0, 0), xy(9, 0))}, "mark=B1", 1},
		{"heavy line along a ring", []render.Item{stroke(render.CutMain, xy(9, 9), xy(0, 9)), render.Stroke{Pen: render.Cut, Path: rect}}, "", 0},
		{"ring run otherwise", []render.Item{render.Stroke{Pen: render.Cut, Path: turned}, render.Stroke{Pen: render.Cut, Path: rect, Tag: tag}}, "mark=B1", 1},
		{"tagged ring first", []render.Item{render.Stroke{Pen: render.Cut, Path: turned, Tag: tag}, render.Stroke{Pen: render.Cut, Path: rect}}, "mark=B1", 1},
		{"ring on another layer", []render.Item{render.Stroke{Pen: render.Cut, Path: rect}, render.Stroke{Pen: render.Visible, Path: rect}}, "", 0},
		{"fill", []render.Item{fill, fill}, "A-DETL-PATT", 1},
		{"text", []render.Item{note, note}, "A-ANNO-NOTE", 1},
		{"dimension", []render.Item{dim, dim}, "A-ANNO-DIMS", 1},
		{"no length", []render.Item{stroke(render.Cut, xy(1, 1), xy(1, 1)), note}, "A-ANNO-NOTE", 1},
		{"no area", []render.Item{render.Fill{Pen: render.Cut, Region: geom.Region{geom.Polygon(xy(0, 0), xy(5, 5), xy(9, 9))}}, note}, "A-ANNO-NOTE", 1},
		{"dimension of nothing", []render.Item{render.Dim{Pen: render.Dimension, P: xy(0, 0), Q: xy(0, 9), Line: xy(0, 20)}, note}, "A-ANNO-NOTE", 1},
		{"leader of no length", []render.Item{render.Leader{Pen: render.Note, Points: []geom.Vec{xy(1, 1), xy(1, 1)}}, note}, "A-ANNO-NOTE", 1},
		{"blank text", []render.Item{render.Text{Pen: render.Note, At: xy(1, 1), Height: 2.5, Align: render.TopLeft, Lines: []string{" ", "\t"}}, note}, "A-ANNO-NOTE", 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := dropped(t, c.items...); len(got) != c.gone {
				t.Errorf("dropped %q, want %d things", got, c.gone)
			}
			var left []record
			for _, r := range draw(t, c.items...).records {
				if r.section == "ENTITIES" && r.handle() != "" && r.get(67) != "1" {
					left = append(left, r)
				}
			}
			if len(left) != len(c.items)-c.gone {
				t.Fatalf("%d entities left of %d", len(left), len(c.items))
			}
			if r := left[0]; c.keep != "" && r.get(8) != c.keep && r.get(1000) != c.keep {
				t.Errorf("%s on %s with %v stays, want %s", r.kind, r.get(8), r.all(1000), c.keep)
			}
		})
	}
}

func TestADroppedDimensionLeavesNoPicture(t *testing.T) {
	dim := render.Dim{Pen: render.Dimension, P: xy(0, 0), Q: xy(20, 0), Line: xy(0, 20)}
	n := 0
	for _, r := range draw(t, dim, dim).kind("BLOCK", "BLOCKS") {
		if strings.HasPrefix(r.get(2), "*D") {
			n++
		}
	}
	if n != 1 {
		t.Errorf("%d pictures for one dimension", n)
	}
}

func TestExtentHoldsArcsAndText(t *testing.T) {
	// upper half circle from (20, 0) to (0, 0): its crown is at (10, 10)
	f := draw(t, render.Stroke{Pen: render.Cut, Path: bent(false, []float64{1}, xy(20, 0), xy(0, 0))})
	if lo, hi := f.header["$EXTMIN"], f.header["$EXTMAX"]; lo[0].value != "0.0" || lo[1].value != "0.0" || hi[0].value != "20.0" || hi[1].value != "10.0" {
		t.Errorf("extent %v to %v", lo, hi)
	}
	// one letter of 2 mm: 0.9 x 2 wide, turned upright about its lower left corner, so it lies left of it
	f = draw(t, render.Text{Pen: render.Note, At: xy(5, 5), Height: 2, Rot: 90, Align: render.BottomLeft, Lines: []string{"A"}})
	if lo, hi := f.header["$EXTMIN"], f.header["$EXTMAX"]; lo[0].value != "3.0" || lo[1].value != "5.0" || hi[0].value != "5.0" || hi[1].value != "6.8" {
		t.Errorf("extent %v to %v", lo, hi)
	}
}
