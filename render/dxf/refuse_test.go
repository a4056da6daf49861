package dxf

import (
	"bytes"
	"errors"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// Nothing that would be drawn wrongly is drawn, and the error says what and where.
func TestRefusedItems(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	pattern := func(l render.PatternLine) render.Item {
		return render.Fill{Pen: render.Pattern, Region: geom.Rect(0, 0, 9, 9), Pattern: &render.HatchPattern{Name: "SC-A", Lines: []render.PatternLine{l}}}
	}
	text := func(change func(*render.Text)) render.Item {
		n := note("A")
		change(&n)
		return n
	}
	dim := func(change func(*render.Dim)) render.Item {
		d := render.Dim{Pen: render.Dimension, P: xy(0, 0), Q: xy(9, 0), Line: xy(0, 20)}
		change(&d)
		return d
	}
	symbol := func(items ...render.Item) render.Item {
		return render.Insert{Pen: render.Mark, Symbol: &render.Symbol{Name: "SC-A", Items: items}}
	}
	round := &render.Symbol{Name: "SC-ROUND"}
	round.Items = []render.Item{render.Insert{Pen: render.Mark, Symbol: round}}
	long := strings.Repeat("x", 300)
	for _, c := range []struct {
		name string
		item render.Item
		want string
	}{
		{"pen", render.Stroke{Pen: 99}, "pen 99"},
		{"negative pen", render.Stroke{Pen: -1}, "pen -1"},
		{"stroke", stroke(render.Cut, xy(0, 0), xy(nan, 1)), "not finite"},
		{"endless stroke", stroke(render.Cut, xy(0, 0), xy(1, -inf)), "not finite"},
		{"huge stroke", stroke(render.Cut, xy(0, 0), xy(1e13, 0)), "not finite"},
		{"bulge", render.Stroke{Pen: render.Cut, Path: bent(false, []float64{nan}, xy(0, 0), xy(1, 0))}, "bulge"},
		{"huge arc", render.Stroke{Pen: render.Cut, Path: bent(true, []float64{1e11, 1e-11}, xy(0, 0), xy(1e11, 0), xy(0, 5))}, ""},
		{"region", render.Fill{Pen: render.Cut, Region: geom.Region{geom.Polygon(xy(0, 0), xy(nan, 0), xy(1, 1))}}, "not finite"},
		{"origin", render.Fill{Pen: render.Cut, Origin: xy(inf, 0)}, "not finite"},
		{"turn", render.Fill{Pen: render.Cut, Turn: nan}, "turn"},
		{"pattern without lines", render.Fill{Pen: render.Cut, Pattern: &render.HatchPattern{Name: "SC-A"}}, "no lines"},
		{"pattern without name", render.Fill{Pen: render.Cut, Pattern: &render.HatchPattern{Lines: []render.PatternLine{{Spacing: 1}}}}, "no lines or no name"},
		{"pattern named solid", render.Fill{Pen: render.Cut, Pattern: &render.HatchPattern{Name: "Solid", Lines: []render.PatternLine{{Spacing: 1}}}}, "name of its own"},
		{"spacing", pattern(render.PatternLine{}), "without spacing"},
		{"dash", pattern(render.PatternLine{Spacing: 1, Dashes: []float64{nan}}), "not finite"},
		{"text place", text(func(n *render.Text) { n.At.Y = nan }), "not finite"},
		{"text height", text(func(n *render.Text) { n.Height = 0 }), "height 0"},
		{"text turn", text(func(n *render.Text) { n.Rot = inf }), "not finite"},
		{"text alignment", text(func(n *render.Text) { n.Align = 0 }), "no alignment"},
		{"dimension point", dim(func(d *render.Dim) { d.Q.X = nan }), "not finite"},
		{"dimension kind", dim(func(d *render.Dim) { d.Kind = 17 }), "kind 17"},
		{"dimension angle", dim(func(d *render.Dim) { d.Angle = nan }), "angle"},
		{"dimension text place", dim(func(d *render.Dim) { d.TextAt = &geom.Vec{X: nan} }), "text at"},
		{"typed over", dim(func(d *render.Dim) { d.Text = "12" }), "hides the measured value"},
		{"blank", dim(func(d *render.Dim) { d.Text = " " }), "hides the measured value"},
		{"twice", dim(func(d *render.Dim) { d.Text = "<> <>" }), "hides the measured value"},
		{"long words", dim(func(d *render.Dim) { d.Text = long + "<>" }), "302 bytes"},
		{"angle without side", dim(func(d *render.Dim) { d.Kind = render.Angular }), "span an angle"},
		{"leader", render.Leader{Pen: render.Note, Points: []geom.Vec{xy(0, 0), xy(nan, 0)}}, "not finite"},
		{"no symbol", render.Insert{Pen: render.Mark}, "no symbol"},
		{"insert place", render.Insert{Pen: render.Mark, Symbol: bubble(), At: xy(nan, 0)}, "not finite"},
		{"insert scale", render.Insert{Pen: render.Mark, Symbol: bubble(), Scale: -1}, "scale -1"},
		{"unknown field", render.Insert{Pen: render.Mark, Symbol: bubble(), Fields: []render.Field{{Name: "X"}}}, `no field "X"`},
		{"long field", render.Insert{Pen: render.Mark, Symbol: bubble(), Fields: []render.Field{{Name: "no", Value: long}}}, "field NO of 300 bytes"},
		{"symbol without name", render.Insert{Pen: render.Mark, Symbol: &render.Symbol{}}, "without a name"},
		{"empty symbol", symbol(), "nothing to draw"},
		{"symbol of nothing", symbol(stroke(render.Cut, xy(1, 1), xy(1, 1))), "nothing to draw"},
		{"symbol in itself", render.Insert{Pen: render.Mark, Symbol: round}, "holds itself"},
		{"dimension in a symbol", symbol(dim(func(*render.Dim) {})), "dimension"},
		{"bad line in a symbol", symbol(stroke(render.Cut, xy(0, 0), xy(nan, 0))), `symbol "SC-A": item 1, Stroke`},
		{"field twice", symbol(text(func(n *render.Text) { n.Attr = "a b" }), text(func(n *render.Text) { n.Attr = "A_B" })), "stands twice"},
		{"long tag", render.Stroke{Pen: render.Cut, Path: geom.Polyline(xy(0, 0), xy(1, 0)), Tag: &render.Tag{Mark: strings.Repeat("x", 9000)}}, "longer than"},
		{"no item", nil, "kind"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.want == "" {
				draw(t, c.item)
				return
			}
			s := view(render.Millimetre, 1, stroke(render.Cut, xy(0, 0), xy(5, 0)), c.item)
			var b bytes.Buffer
			err := Write(&b, s, Options{})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Fatalf("error %v, want %q in it", err, c.want)
			}
			if w := `dxf: sheet A-1: view "1": item 2, `; !strings.HasPrefix(err.Error(), w) && !strings.Contains(err.Error(), "symbol") {
				t.Errorf("error %q does not say where", err)
			}
			if b.Len() > 0 {
				t.Errorf("%d bytes were written", b.Len())
			}
		})
	}
}

func TestRefusedSheets(t *testing.T) {
	other := bubble()
	other.Items = other.Items[:2]
	for _, c := range []struct {
		name   string
		change func(*render.Sheet)
		want   string
	}{
		{"unit", func(s *render.Sheet) { s.Unit = 7 }, "unit 7"},
		{"size", func(s *render.Sheet) { s.Size.H = 0 }, "no sheet"},
		{"scale", func(s *render.Sheet) { s.Views[0].Scale.K = 0 }, "scale"},
		{"scale that is no number", func(s *render.Sheet) { s.Views[0].Scale.K = math.NaN() }, "scale"},
		{"place", func(s *render.Sheet) { s.Views[0].Place.X = math.NaN() }, "not finite"},
		{"paper place", func(s *render.Sheet) { s.Views[0].At.Y = math.Inf(1) }, "not finite"},
		{"window", func(s *render.Sheet) { s.Views[0].Window = geom.Box{} }, "shows nothing"},
		{"no window", func(s *render.Sheet) { s.Views[0].Window = geom.EmptyBox() }, "not finite"},
		{"place and scale", func(s *render.Sheet) {
			s.Views[0].Scale.K, s.Views[0].Window = 1e-3, geom.BoxOf(xy(9e11, 0), xy(9e11+1, 1))
		}, "too far out"},
		{"paper item", func(s *render.Sheet) { s.Items = append(s.Items, stroke(render.Cut, xy(math.NaN(), 0))) }, "item 4, Stroke"},
		{"nameless property", func(s *render.Sheet) { s.Props = [][2]string{{"", "x"}} }, "its name"},
		{"long property", func(s *render.Sheet) { s.Props = [][2]string{{"x", strings.Repeat("x", 9000)}} }, "9001 bytes"},
		{"two symbols of one name", func(s *render.Sheet) {
			s.Items = append(s.Items, render.Insert{Pen: render.Mark, Symbol: other})
		}, "two symbols"},
		{"number no style prints", func(s *render.Sheet) { s.Number = func(float64) string { return "ABOUT 2'" } }, "the usual one prints \"2'-0"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := sample(render.Inch)
			c.change(s)
			var b bytes.Buffer
			if err := Write(&b, s, Options{}); err == nil || !strings.Contains(err.Error(), c.want) || b.Len() > 0 {
				t.Errorf("error %v after %d bytes, want %q in it", err, b.Len(), c.want)
			}
		})
	}
	if err := Write(&bytes.Buffer{}, nil, Options{}); err == nil {
		t.Error("no sheet, no error")
	}
}

// fullDisk takes so many bytes and fails for good.
type fullDisk struct{ left int }

var errFull = errors.New("disk full")

func (d *fullDisk) Write(p []byte) (int, error) {
	if len(p) > d.left {
		n := d.left
		d.left = 0
		return n, errFull
	}
	d.left -= len(p)
	return len(p), nil
}

func TestTheFirstWriteErrorIsReturned(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, sample(render.Inch), Options{}); err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{0, 1, 4096, 5000, b.Len() - 1} {
		if err := Write(&fullDisk{n}, sample(render.Inch), Options{}); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes: %v", n, err)
		}
	}
	if err := Write(&fullDisk{b.Len()}, sample(render.Inch), Options{}); err != nil {
		t.Errorf("a disk just large enough: %v", err)
	}
}

func TestDecimal(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0.0", math.Copysign(0, -1): "0.0", -1e-10: "0.0", 5: "5.0", -2.5: "-2.5", 1.0 / 3: "0.333333333", 2.0 / 3: "0.666666667",
		1e9: "1000000000.0", 123456.789012345: "123456.789012345", 1.0 / 64: "0.015625", 1e12: "1000000000000.0",
		1e13: notANumber, math.Inf(-1): notANumber,
	} {
		if got := decimal(v); got != want {
			t.Errorf("%g: %s, want %s", v, got, want)
		}
	}
	if got := decimal(math.NaN()); got != notANumber {
		t.Errorf("NaN: %s", got)
	}
}

// The short way prints what the shortest form of the rounded number is.
func TestBillionths(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		v := math.Round(math.Ldexp(rnd.Float64()-0.5, rnd.IntN(40)-20)*1e9) / 1e9
		want := strconv.FormatFloat(v+0, 'f', -1, 64)
		if v == 0 {
			want = "0"
		}
		if !strings.Contains(want, ".") {
			want += ".0"
		}
		if got := decimal(v); got != want {
			t.Fatalf("decimal(%v) = %s, want %s", v, got, want)
		}
	}
}

func TestSoundTellsRealsFromText(t *testing.T) {
	if !(tags{}.str(1, notANumber).real(40, 1)).sound() || (tags{}.real(40, math.NaN())).sound() {
		t.Error("a text is taken for a number, or a number for a text")
	}
}
