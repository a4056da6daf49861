package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strings"
	"sync"
	"testing"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
	"standclear/render/svg"
)

func v(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

// page200 is a sheet of 200 x 100 mm with the items on paper.
func page200(items ...render.Item) *render.Sheet {
	return &render.Sheet{ID: "A-301", Title: "SECTION", Size: render.Size{W: 200, H: 100}, Items: items}
}

// sample is a sheet with a little of everything.
func sample() *render.Sheet {
	diag := &render.HatchPattern{Name: "SC-45", Lines: []render.PatternLine{{Angle: 45, Spacing: 3}}}
	items := []render.Item{
		render.Fill{Pen: render.Pattern, Region: geom.Rect(0, 0, 100, 200), Pattern: diag},
		render.Fill{Pen: render.Pattern, Region: geom.Rect(20, 80, 80, 120), White: true},
		render.Stroke{Pen: render.CutMain, Path: geom.Rect(0, 0, 100, 200)[0]},
		render.Stroke{Pen: render.Centre, Path: geom.Polyline(v(-20, 50), v(120, 50))},
		render.Stroke{Pen: render.Visible, Path: geom.Circle(v(50, 50), 12)[0]},
		render.Text{Pen: render.Note, At: v(50, 100), Height: 2.5, Align: render.MiddleCentre, Lines: []string{"BLOCK", "B3 (x)"}},
		render.Dim{Pen: render.Dimension, Kind: render.Linear, P: v(0, 0), Q: v(0, 200), Line: v(-30, 0), Angle: 90},
		render.Leader{Pen: render.Note, Points: []geom.Vec{v(100, 150), v(150, 180)}},
	}
	s := page200(render.Text{Pen: render.Heading, At: v(190, 10), Height: 5, Align: render.BottomRight, Lines: []string{"A-301"}, Bold: true})
	s.Views = []render.View{{ID: "1", Title: "AT B3", Scale: render.Scale{K: 5}, At: v(60, 30), Window: geom.Box{Min: v(-100, -50), Max: v(200, 250)}, Items: items}}
	return s
}

func write(t testing.TB, o Options, sheets ...*render.Sheet) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, sheets, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// content returns what the page draws: the first stream of a document of one page, unpacked.
func content(t *testing.T, doc []byte) string {
	t.Helper()
	_, rest, ok := bytes.Cut(doc, []byte("stream\n"))
	if !ok {
		t.Fatal("no stream")
	}
	z, err := zlib.NewReader(bytes.NewReader(rest))
	if err != nil {
		t.Fatal(err)
	}
	all, err := io.ReadAll(z)
	if err != nil {
		t.Fatal(err)
	}
	return string(all)
}

func utf16(s string) string {
	var b strings.Builder
	for _, r := range s {
		b.WriteByte(byte(r >> 8))
		b.WriteByte(byte(r))
	}
	return b.String()
}

var mediaBox = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)

// Points of 1/72 inch: ARCH D is 36 x 24 in, A3 420 x 297 mm = 1190.55 x 841.89, letter upright.
// The box that follows the pages is that of the first sheet, which holds for pages without one.
func TestPageSizes(t *testing.T) {
	archD, a3, letter := page200(), page200(), page200()
	archD.Size = render.Size{W: 914.4, H: 609.6}
	a3.Size = render.Size{W: 420, H: 297}
	letter.Size = render.Size{W: 215.9, H: 279.4}
	doc := write(t, Options{}, archD, a3, letter, archD)
	var got []string
	for _, m := range mediaBox.FindAllSubmatch(doc, -1) {
		got = append(got, string(m[1])+"x"+string(m[2]))
	}
	want := "1190.55x841.89 612.00x792.00 2592.00x1728.00"
	if all := strings.Join(got, " "); all != want {
		t.Errorf("boxes %s, want %s", all, want)
	}
	if n := bytes.Count(doc, []byte("/Type /Page\n")); n != 4 {
		t.Errorf("%d pages", n)
	}
}

// A line from (25.4, 25.4) to (127, 50.8) mm is one from (72, 72) to (360, 144) points, PDF's y up
// from the lower edge as ours; 0.50 mm is 1.42 points.
func TestTrueScale(t *testing.T) {
	got := content(t, write(t, Options{}, page200(render.Stroke{Pen: render.Cut, Path: geom.Polyline(v(25.4, 25.4), v(127, 50.8))})))
	for _, want := range []string{"1.42 w\n", "72.00 72.00 m\n360.00 144.00 l\nS\n", "1 J\n", "1 j\n"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

// Hidden lines are dashes of 3 mm and gaps of 1.5: 8.50 and 4.25 points, cut square; solid lines
// after them are solid again.
func TestDashes(t *testing.T) {
	line := geom.Polyline(v(0, 0), v(100, 0))
	got := content(t, write(t, Options{}, page200(render.Stroke{Pen: render.Hidden, Path: line}, render.Stroke{Pen: render.Visible, Path: line})))
	dash, solid := strings.Index(got, "0 J\n[8.50 4.25] 0.00 d"), strings.LastIndex(got, "1 J\n[] 0.00 d")
	if dash < 0 || solid < dash {
		t.Errorf("dashes at %d, solid at %d in\n%s", dash, solid, got)
	}
}

// A ring of 1 inch square with an island: both closed, filled by the even-odd rule.
func TestFills(t *testing.T) {
	r := geom.Region{geom.Rect(0, 0, 25.4, 25.4)[0], geom.Rect(6.35, 6.35, 12.7, 12.7)[0]}
	got := content(t, write(t, Options{}, page200(render.Fill{Pen: render.Load, Region: r}, render.Fill{Pen: render.Load, Region: r, White: true})))
	rings := "0.00 0.00 m\n72.00 0.00 l\n72.00 72.00 l\n0.00 72.00 l\nh\n" +
		"18.00 18.00 m\n36.00 18.00 l\n36.00 36.00 l\n18.00 36.00 l\nh\nf*\n"
	for _, want := range []string{"0.612 0.110 0.110 rg\n" + rings, "1.000 g\n" + rings} {
		if !strings.Contains(got, want) {
			t.Errorf("no\n%sin\n%s", want, got)
		}
	}
}

func TestViewIsClippedToItsWindow(t *testing.T) {
	got := content(t, write(t, Options{}, sample()))
	// window at 40..100 x 20..80 mm: from the upper left corner, 113.39, 226.77, 170.08 wide, down
	start, end := strings.Index(got, "q 113.39 226.77 170.08 -170.08 re W n\n"), strings.Index(got, "\nQ\n")
	if start < 0 || end < start {
		t.Errorf("clip from %d to %d in\n%s", start, end, got)
	}
}

// After a view everything is set anew: what it set went with its clip.
func TestStateAfterView(t *testing.T) {
	red := render.Stroke{Pen: render.Load, Path: geom.Polyline(v(0, 0), v(10, 10))}
	note := render.Text{Pen: render.Status, At: v(5, 5), Height: 2.5, Align: render.TopLeft, Lines: []string{"x"}}
	dot := render.Fill{Pen: render.Load, Region: geom.Circle(v(5, 5), 1)}
	s := page200(red, note, dot)
	s.Views = []render.View{{ID: "1", Scale: render.Scale{K: 1}, Window: geom.Box{Max: v(50, 50)}, Items: []render.Item{red, note, dot}}}
	got := content(t, write(t, Options{}, s))
	_, after, _ := strings.Cut(got, "re W n\n")
	view, after, ok := cutLast(after, "\nQ\n1 j")
	if !ok {
		t.Fatalf("no end of the view in\n%s", got)
	}
	for _, want := range []string{" RG\n", " w\n", " rg\n", " Tf ", "0.612 0.110 0.110 rg BT"} {
		if !strings.Contains(view, want) || !strings.Contains(after, want) {
			t.Errorf("%q: in the view %v, after it %v", want, strings.Contains(view, want), strings.Contains(after, want))
		}
	}
}

func cutLast(s, sep string) (before, after string, ok bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}

// The start of each line against the nine attachment points, upright and level.
func TestAnchors(t *testing.T) {
	const h = 2.5
	at := v(100, 40)
	wide := font.Width("HIGH", h, false)
	level := regexp.MustCompile(`BT ([\d.]+) ([\d.]+) Td`)
	for a := render.TopLeft; a <= render.BottomRight; a++ {
		for _, rot := range []float64{0, 90} {
			s := page200(render.Text{Pen: render.Note, At: at, Height: h, Align: a, Rot: rot, Lines: []string{"HIGH"}})
			got := content(t, write(t, Options{}, s))
			m := level.FindStringSubmatch(got)
			if m == nil {
				t.Fatalf("no text in\n%s", got)
			}
			var x, y float64
			fmt.Sscan(m[1]+" "+m[2], &x, &y)
			col, row := float64((a-1)%3)/2, float64((a-1)/3)/2
			along, up := -col*wide, row*h-h
			want := at.Add(v(along, up))
			if rot == 90 {
				want = at.Add(v(-up, along))
				if !strings.Contains(got, "0.00000 1.00000 -1.00000 0.00000") {
					t.Errorf("align %d: not turned", a)
				}
			}
			if d := v(x, y).Mul(25.4 / 72).Dist(want); d > 0.003 {
				t.Errorf("align %d, %v degrees: %.4f mm off", a, rot, d)
			}
		}
	}
}

func TestTextCanBeSearched(t *testing.T) {
	doc := write(t, Options{}, sample())
	got := content(t, doc)
	for _, s := range []string{"BLOCK", `B3 \(x\)`, "A-301"} {
		want := strings.ReplaceAll(utf16(strings.ReplaceAll(s, `\`, "")), "(", `\(`)
		if want = strings.ReplaceAll(want, ")", `\)`); !strings.Contains(got, "("+want+") Tj") {
			t.Errorf("no %q", s)
		}
	}
	if !bytes.Contains(doc, []byte("beginbfrange")) {
		t.Error("characters are not told in Unicode")
	}
}

func TestBoldComesInWhenUsed(t *testing.T) {
	plain, both := write(t, Options{}, page200()), write(t, Options{}, sample())
	if n, m := bytes.Count(plain, []byte("/FontFile2")), bytes.Count(both, []byte("/FontFile2")); n != 1 || m != 2 {
		t.Errorf("%d and %d faces, want 1 and 2", n, m)
	}
}

// Two sheets, the first 100 mm tall, the last 50: a bookmark leads to the top of its sheet, a view's
// to the top of its window, 30 + 250/5 = 80 mm up, 226.77 points.
func TestBookmarks(t *testing.T) {
	last := page200()
	last.ID, last.Size.H = "S-701", 50
	doc := write(t, Options{Title: "SET"}, sample(), last)
	dests := regexp.MustCompile(`/Dest \[(\d+) 0 R /XYZ 0 ([\d.]+) null\]`).FindAllSubmatch(doc, -1)
	want := []string{"3 283.46", "3 226.77", "5 141.73"}
	if len(dests) != len(want) {
		t.Fatalf("%d bookmarks", len(dests))
	}
	for i, d := range dests {
		if got := string(d[1]) + " " + string(d[2]); got != want[i] {
			t.Errorf("bookmark %d leads to %s, want %s", i, got, want[i])
		}
	}
	for _, s := range []string{"A-301 SECTION", "1 AT B3", "S-701 SECTION", "SET"} {
		if !bytes.Contains(doc, []byte(utf16(s))) {
			t.Errorf("no title %q", s)
		}
	}
}

// A chapter holds the sheets from its first on: of four bookmarks the chapter is at the top, the sheet under it. One
// without sheets, which begins where the next does, is left out.
func TestChapters(t *testing.T) {
	last := page200()
	last.ID = "C-001"
	doc := write(t, Options{Chapters: []Chapter{{"SHOP PAGES", 1}, {"CALCULATION", 1}}}, sample(), last)
	if bytes.Contains(doc, []byte(utf16("SHOP PAGES"))) {
		t.Error("a chapter without sheets has a bookmark")
	}
	parents := regexp.MustCompile(`(?s)/Title ([^\n]+)\n/Parent (\d+) 0 R`).FindAllSubmatch(doc, -1)
	if len(parents) != 4 {
		t.Fatalf("%d bookmarks, want the sheet, its view, the chapter and its sheet", len(parents))
	}
	top := string(parents[0][2])
	if chapter, sheet := parents[2], parents[3]; !bytes.Contains(chapter[1], []byte(utf16("CALCULATION"))) || string(chapter[2]) != top || string(sheet[2]) == top {
		t.Errorf("the chapter %q is under %s, its sheet under %s, the top being %s", chapter[1], chapter[2], sheet[2], top)
	}
}

func TestSameBytes(t *testing.T) {
	// a space and a no-break space share a glyph: an order that is not fixed would show
	s := sample()
	s.Items = append(s.Items, render.Text{Pen: render.Note, At: v(5, 5), Height: 2, Align: render.TopLeft, Lines: []string{"\u00a0a\u00ad-\u2010\u2011\u00e9\u03a9\u2126\u00b5\u03bc"}})
	want := sha256.Sum256(write(t, Options{}, s, s))
	for range 30 {
		if sha256.Sum256(write(t, Options{}, s, s)) != want {
			t.Fatal("two runs differ")
		}
	}
}

func TestConcurrentUse(t *testing.T) {
	regular, bold := sha256.Sum256(font.Regular()), sha256.Sum256(font.Bold())
	want := write(t, Options{}, sample())
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			var b bytes.Buffer
			if err := Write(&b, []*render.Sheet{sample()}, Options{}); err != nil || !bytes.Equal(b.Bytes(), want) {
				t.Errorf("differs, or %v", err)
			}
		})
	}
	wg.Wait()
	if sha256.Sum256(font.Regular()) != regular || sha256.Sum256(font.Bold()) != bold {
		t.Error("writing changed the faces")
	}
}

// Both writers put down the same strokes, fills and lines of text.
func TestSameInkAsSVG(t *testing.T) {
	s := sample()
	var b bytes.Buffer
	if err := svg.Write(&b, s, svg.Options{}); err != nil {
		t.Fatal(err)
	}
	drawn := content(t, write(t, Options{}, s))
	starts := 0
	for _, m := range regexp.MustCompile(` d="([^"]*)"`).FindAllStringSubmatch(b.String(), -1) {
		starts += strings.Count(m[1], "M")
	}
	if n := strings.Count(drawn, " m\n"); n != starts || n < 20 {
		t.Errorf("%d paths, %d in SVG", n, starts)
	}
	if n, m := strings.Count(drawn, " Tj"), strings.Count(b.String(), "<text "); n != m || n != 4 {
		t.Errorf("%d texts, %d in SVG", n, m)
	}
}

func TestRefused(t *testing.T) {
	bad := page200(render.Stroke{Path: geom.Polyline(v(0, 0), v(math.NaN(), 0))})
	for name, sheets := range map[string][]*render.Sheet{"no sheets": nil, "a number that is none": {sample(), bad}} {
		var b bytes.Buffer
		if err := Write(&b, sheets, Options{}); err == nil || b.Len() > 0 {
			t.Errorf("%s: error %v after %d bytes", name, err, b.Len())
		}
	}
}

var errFull = errors.New("disc full")

// full takes n bytes and then fails.
type full struct{ n int }

func (f *full) Write(p []byte) (int, error) {
	if len(p) > f.n {
		n := f.n
		f.n = 0
		return n, errFull
	}
	f.n -= len(p)
	return len(p), nil
}

func TestWriteErrors(t *testing.T) {
	size := len(write(t, Options{}, sample()))
	for n := 0; n < size; n += 997 {
		if err := Write(&full{n}, []*render.Sheet{sample()}, Options{}); !errors.Is(err, errFull) {
			t.Fatalf("room for %d of %d bytes: %v", n, size, err)
		}
	}
	if err := Write(&full{size}, []*render.Sheet{sample()}, Options{}); err != nil {
		t.Errorf("room for all: %v", err)
	}
}

func TestColoursCanBeRead(t *testing.T) {
	for p := range render.Pens {
		r, g, b := rgb(render.Pens[p].RGB)
		if got := fmt.Sprintf("#%02x%02x%02x", r, g, b); got != render.Pens[p].RGB {
			t.Errorf("pen %d: %s read as %s", p, render.Pens[p].RGB, got)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	s := page200()
	for i := range 20000 {
		x, y := float64(i%200), float64(i/200)
		s.Items = append(s.Items, render.Stroke{Pen: render.Fine, Path: geom.Polyline(v(x, y), v(x+0.7, y+0.3))})
	}
	for b.Loop() {
		write(b, Options{}, s)
	}
}
