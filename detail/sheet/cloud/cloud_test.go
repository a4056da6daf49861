package cloud

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"standclear/geom"
	"standclear/render"
)

func at(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

func line(pen render.Pen, pts ...geom.Vec) render.Stroke {
	return render.Stroke{Pen: pen, Path: geom.Polyline(pts...)}
}

// sheetOf is an A3 sheet with a frame, a title strip from x 340 on, and one view at 1:5 whose origin lies at
// (100, 100).
func sheetOf(items ...render.Item) *render.Sheet {
	return &render.Sheet{ID: "A-301", Size: render.Size{W: 420, H: 297}, Unit: render.Millimetre,
		Number: func(mm float64) string { return fmt.Sprintf("%.0f", mm) },
		Views: []render.View{{ID: "1", Title: "SECTION", Scale: render.Scale{K: 5, Text: "1:5"}, At: at(100, 100),
			Window: geom.Box{Min: at(-400, -400), Max: at(1000, 800)}, Items: items}},
		Items: []render.Item{render.Stroke{Pen: render.Border, Path: geom.Rect(10, 10, 410, 287)[0]}, line(render.Heading, at(340, 10), at(340, 287))}}
}

func wantsOf(now, was *render.Sheet) []want {
	return compare(now, was, []*render.Sheet{now}, []*render.Sheet{was}).wants
}

// A board 100 x 200 that grows to 120 wide: 20 mm of its lower and upper edge and the new right side are new, the
// old right side is gone. On paper, at 1:5 from (100, 100), that is x 120 to 124, y 100 to 140.
func TestChangedLinework(t *testing.T) {
	board := func(w float64) render.Item {
		return render.Stroke{Pen: render.Cut, Path: geom.Rect(0, 0, w, 200)[0], Tag: &render.Tag{Mark: "P1"}}
	}
	now, was := sheetOf(board(120)), sheetOf(board(100))
	all := geom.EmptyBox()
	wants := wantsOf(now, was)
	for _, w := range wants {
		all = all.Union(w.box)
	}
	if want := (geom.Box{Min: at(120, 100), Max: at(124, 140)}); len(wants) != 4 || !near(all.Min, want.Min) || !near(all.Max, want.Max) {
		t.Errorf("%d differences in %v, want 4 in %v", len(wants), all, want)
	}
	c := compare(now, was, nil, nil)
	if !reflect.DeepEqual(c.change.Marks, []string{"P1"}) {
		t.Errorf("marks %v", c.change.Marks)
	}
}

// What is drawn alike by other means is no difference: a line in two pieces, a circle begun elsewhere, a view at
// another scale and place, a note that moved, a part on a texture pen, an arrow.
func TestNoChange(t *testing.T) {
	whole := []render.Item{line(render.Visible, at(0, 0), at(300, 0)), render.Stroke{Pen: render.Fastener, Path: geom.Arc(at(50, 50), 20, 0, 2*math.Pi)}}
	pieces := []render.Item{line(render.Visible, at(300, 0), at(120, 0)), line(render.Visible, at(120, 0), at(0, 0)),
		render.Stroke{Pen: render.Fastener, Path: geom.Arc(at(50, 50), 20, 1, math.Pi)}, render.Stroke{Pen: render.Fastener, Path: geom.Arc(at(50, 50), 20, 1+math.Pi, math.Pi)}}
	text := func(x float64) render.Item {
		return render.Text{Pen: render.Note, At: at(x, 300), Height: 2.5, Align: render.BottomLeft, Lines: []string{"LEDGER L1"}}
	}
	if w := wantsOf(sheetOf(append(whole, text(0))...), sheetOf(append(pieces, text(90))...)); len(w) > 0 {
		t.Errorf("%v", w)
	}
	moved := sheetOf(whole...)
	moved.Views[0].Scale, moved.Views[0].At = render.Scale{K: 10, Text: "1:10"}, at(60, 200)
	if w := wantsOf(moved, sheetOf(pieces...)); len(w) > 0 {
		t.Errorf("at another scale: %v", w)
	}
	if w := wantsOf(sheetOf(line(render.Pattern, at(0, 0), at(9, 9))), sheetOf()); len(w) > 0 {
		t.Errorf("texture: %v", w)
	}
}

// A view of one block stands where the block stands: all of it moved along by 75 is no difference, a bolt that
// moved within it by 10 is one.
func TestViewFollowsItsBlock(t *testing.T) {
	block := func(x, bolt float64) *render.Sheet {
		return sheetOf(render.Stroke{Pen: render.Cut, Path: geom.Rect(x, 0, x+200, 240)[0]}, render.Stroke{Pen: render.Cut, Path: geom.Rect(x+40, 30, x+160, 200)[0]}, line(render.Hidden, at(x+bolt, 0), at(x+bolt, 40)))
	}
	if w := wantsOf(block(75, 80), block(0, 80)); len(w) > 0 {
		t.Errorf("%v", w)
	}
	if w := wantsOf(block(75, 90), block(0, 80)); len(w) != 2 || !near(w[0].box.Min, at(133, 100)) || !near(w[1].box.Min, at(131, 100)) {
		t.Errorf("bolt moved: %v", w) // (75 + 90)/5 and, where it was, (75 + 80)/5
	}
}

// Where a picture is broken off its lines may end elsewhere; a part that grows elsewhere is a difference.
func TestBrokenOff(t *testing.T) {
	joist := func(to float64) *render.Sheet {
		return sheetOf(line(render.Visible, at(0, 0), at(to, 0)), line(render.Visible, at(0, 50), at(to, 50)), line(render.Break, at(to, -10), at(to, 20), at(to+5, 30), at(to, 60)))
	}
	if w := wantsOf(joist(320), joist(300)); len(w) > 0 {
		t.Errorf("%v", w)
	}
}

// A picture that is not to scale is compared by the shapes of its lines.
func TestPictures(t *testing.T) {
	picture := func(x, k, depth float64) *render.Sheet {
		s := sheetOf(line(render.Profile, at(x, 0), at(x+k*400, 0), at(x+k*400, k*100)), line(render.Profile, at(x, k*50), at(x+depth, k*50)))
		s.Views[0].Scale.Text = noScale
		return s
	}
	if w := wantsOf(picture(30, 1.05, 105), picture(0, 1, 100)); len(w) > 0 {
		t.Errorf("moved and enlarged: %v", w)
	}
	if w := wantsOf(picture(30, 1, 140), picture(0, 1, 100)); len(w) != 1 {
		t.Errorf("one line longer: %v", w)
	}
}

func dim(p, q float64) render.Dim {
	return render.Dim{Pen: render.Dimension, P: at(p, 0), Q: at(q, 0), Line: at(0, -100)}
}

// A chain 0 | 40 | 100 | 150 whose second mark moves to 45 with all beyond it: 40 became 45; 60 and 50 moved along
// and stay. The running total 150 became 155. A value that stands elsewhere by chance does not hide a change: in
// the last case 40 became 60, and the 60 that was beyond became 90.
func TestChangedDimensions(t *testing.T) {
	for _, c := range []struct {
		now, was []render.Item
		want     []string
	}{
		{[]render.Item{dim(0, 45), dim(45, 105), dim(105, 155), dim(0, 155)}, []render.Item{dim(0, 40), dim(40, 100), dim(100, 150), dim(0, 150)}, []string{"45", "155"}},
		{[]render.Item{dim(10, 50)}, []render.Item{dim(0, 40)}, nil},
		{[]render.Item{dim(0, 60), dim(60, 150)}, []render.Item{dim(0, 40), dim(40, 100)}, []string{"60", "90"}},
	} {
		now, was := sheetOf(c.now...), sheetOf(c.was...)
		var got []string
		for _, d := range otherDims(dimsOf(&now.Views[0], now), dimsOf(&was.Views[0], was)) {
			got = append(got, d.label)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v, want %v", got, c.want)
		}
	}
}

// tableOf has rows 8 high from y 200 down, x 20 to 120.
func tableOf(rows ...[2]string) *render.Sheet {
	s := sheetOf()
	y := 200.0
	s.Items = append(s.Items, line(render.Mark, at(20, y), at(120, y)))
	for _, r := range rows {
		for i, t := range r {
			s.Items = append(s.Items, render.Text{Pen: render.Note, At: at(22+50*float64(i), y-4), Height: 2.5, Align: render.MiddleLeft, Lines: []string{t}})
		}
		y -= 8
		s.Items = append(s.Items, line(render.Grid, at(20, y), at(120, y)))
	}
	return s
}

// Rows that moved are none; the row that reads otherwise is wanted from edge to edge of its table, as high as its
// letters: the second of rows 8 high lies about y 188. A row that is gone is told.
func TestRows(t *testing.T) {
	was := tableOf([2]string{"L1", "1"}, [2]string{"B1", "9"}, [2]string{"N1", "36"})
	now := tableOf([2]string{"N1", "36"}, [2]string{"B1", "8"})
	c := compare(now, was, []*render.Sheet{now}, []*render.Sheet{was})
	if want := (geom.Box{Min: at(20, 186.75), Max: at(120, 189.25)}); len(c.wants) != 1 || !c.wants[0].row || !near(c.wants[0].box.Min, want.Min) || !near(c.wants[0].box.Max, want.Max) {
		t.Errorf("%v, want %v", c.wants, want)
	}
	if !slices.Equal(c.change.Lost, []string{"L1 | 1"}) {
		t.Errorf("lost %v", c.change.Lost)
	}
}

// Two boxes become one when their clouds, margin and rise outside each, would come nearer than 6 mm: 6 + 2 x 2.8.
func TestMerge(t *testing.T) {
	box := func(x float64, group int) want {
		return want{box: geom.Box{Min: at(x, 0), Max: at(x+10, 10)}, group: group}
	}
	got := merge([]want{box(0, 0), box(100, 0), box(10+11.5, 0), box(10+11.5, 1), box(10+11.5+10+11.7, 0)}, between)
	var xs []geom.Vec
	for _, w := range got {
		xs = append(xs, at(w.box.Min.X, w.box.Max.X))
	}
	if want := []geom.Vec{{X: 100, Y: 110}, {X: 0, Y: 31.5}, {X: 21.5, Y: 31.5}, {X: 43.2, Y: 53.2}}; !slices.Equal(xs, want) {
		t.Errorf("%v, want %v", xs, want)
	}
}

// Arcs swell outward by 1.3 mm, are some 6 mm wide, and close; a point becomes a cloud 8 mm wide.
func TestArcs(t *testing.T) {
	p := arcs(geom.Box{Min: at(10, 10), Max: at(40, 28)})
	if len(p.V) != 2*(5+3) || !p.Closed {
		t.Errorf("%d arcs, want 5 and 3 twice", len(p.V))
	}
	if b := p.Bounds(); !near(b.Min, at(8.7, 8.7)) || !near(b.Max, at(41.3, 29.3)) {
		t.Errorf("bounds %v", b)
	}
	q, err := read(sheetOf())
	if err != nil {
		t.Fatal(err)
	}
	if b := q.fit(want{box: geom.BoxOf(at(200, 200))}).Grow(rise); b.W() < small-1e-9 || b.H() < small-1e-9 || b.W() > 1.3*small {
		t.Errorf("round a point: %v", b)
	}
}

// A cloud goes round the texts in its way; where it cannot, it breaks. Its triangle stands on free paper within the
// frame and left of the title strip.
func TestCloudKeepsOffTexts(t *testing.T) {
	text := func(x, y float64, s string) render.Item {
		return render.Text{Pen: render.Note, At: at(x, y), Height: 2.5, Align: render.MiddleLeft, Lines: []string{s}}
	}
	clear := sheetOf(render.Stroke{Pen: render.Cut, Path: geom.Rect(0, 0, 100, 100)[0]})
	clear.Items = append(clear.Items, text(118, 110, "NEAR"))
	full := sheetOf(render.Stroke{Pen: render.Cut, Path: geom.Rect(0, 0, 100, 100)[0]})
	for i := range 15 {
		full.Items = append(full.Items, text(121, 92+4*float64(i), "A TEXT LONGER THAN A CLOUD MAY MOVE OUT"))
	}
	for name, s := range map[string]*render.Sheet{"clear": clear, "full": full} {
		p, err := read(s)
		if err != nil {
			t.Fatal(err)
		}
		before := len(s.Items)
		if n := p.draw([]want{{box: geom.Box{Min: at(100, 100), Max: at(120, 120)}}}, "7"); n != 1 {
			t.Errorf("%s: %d clouds", name, n)
		}
		closed, letters := 0, 0
		for _, it := range s.Items[before:] {
			switch k := it.(type) {
			case render.Stroke:
				if k.Path.Closed {
					closed++
				}
				for _, g := range k.Path.Segs() {
					for i := range 21 {
						v := g.At(float64(i) / 20)
						if !p.field.Holds(v) || v.X > 340 {
							t.Errorf("%s: off the field at %v", name, v)
						}
						for _, b := range p.texts[:len(p.texts)-1] {
							if b.Grow(0.25).Holds(v) {
								t.Errorf("%s: through a text at %v", name, v)
							}
						}
					}
				}
			case render.Text:
				letters++
				if !slices.Equal(k.Lines, []string{"7"}) || k.Pen != render.Revision {
					t.Errorf("%s: %v", name, k)
				}
			}
		}
		if want := map[string]int{"clear": 2, "full": 1}[name]; closed != want || letters != 1 {
			t.Errorf("%s: %d closed outlines, want %d; %d marks", name, closed, want, letters)
		}
	}
}

// A view that is new is wanted whole; one that is gone is told.
func TestViewsThatComeAndGo(t *testing.T) {
	one, two := sheetOf(), sheetOf()
	v := one.Views[0]
	v.ID, v.Title, v.Items = "2", "PLAN", []render.Item{line(render.Cut, at(0, 0), at(50, 100))}
	two.Views = append(two.Views, v)
	if w := wantsOf(two, one); len(w) != 1 || w[0].group != 1 || !near(w[0].box.Max, at(110, 120)) {
		t.Errorf("%v", w)
	}
	if c := compare(one, two, nil, nil); len(c.wants) > 0 || !slices.Equal(c.change.Lost, []string{"VIEW 2 PLAN"}) {
		t.Errorf("%v, %v", c.wants, c.change.Lost)
	}
}

// The letters of any mark stand clear of their triangle.
func TestTriangle(t *testing.T) {
	for _, mark := range []string{"1", "B", "12", Next} {
		p := Triangle(at(50, 50), mark)
		b := textBox(lettering(at(50, 50), mark), 1).Grow(0.4)
		for _, g := range p.Segs() {
			for i := range 101 {
				if b.Holds(g.At(float64(i) / 100)) {
					t.Errorf("%s: a side runs through the letters", mark)
					break
				}
			}
		}
		if !b.Overlaps(p.Bounds()) || math.Abs(p.Area()) < 20 {
			t.Errorf("%s: %v", mark, p)
		}
	}
}

// Sheets that only one set has are told; the same twice gives the same.
func TestDraw(t *testing.T) {
	set := func() []*render.Sheet {
		a := sheetOf(render.Stroke{Pen: render.Cut, Path: geom.Rect(0, 0, 120, 200)[0]}, dim(0, 120))
		b := sheetOf()
		b.ID = "A-302"
		return []*render.Sheet{a, b}
	}
	old := sheetOf(render.Stroke{Pen: render.Cut, Path: geom.Rect(0, 0, 100, 200)[0]}, dim(0, 100))
	gone := sheetOf()
	gone.ID = "A-303"
	one, two := set(), set()
	got, err := Draw(one, []*render.Sheet{old, gone}, "1")
	if err != nil {
		t.Fatal(err)
	}
	if want := []Change{{Sheet: "A-301", Clouds: 2}, {Sheet: "A-302", New: true}, {Sheet: "A-303", Gone: true}}; !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
	if _, err := Draw(two, []*render.Sheet{old, gone}, "1"); err != nil || !reflect.DeepEqual(one[0].Items, two[0].Items) {
		t.Error("twice the same is not the same")
	}
	if got, err := Draw(set(), set(), "1"); err != nil || len(got) > 0 {
		t.Errorf("against itself: %v, %v", got, err)
	}
}
