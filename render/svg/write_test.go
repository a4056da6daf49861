package svg

import (
	"bytes"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

func TestSameBytes(t *testing.T) {
	first := write(t, sample(), Options{})
	if second := write(t, sample(), Options{}); first != second {
		t.Error("two runs differ")
	}
}

func TestRefusesBeforeWriting(t *testing.T) {
	var b bytes.Buffer
	err := Write(&b, page(render.Stroke{Path: geom.Polyline(v(0, 0), v(math.NaN(), 0))}), Options{})
	if err == nil || b.Len() > 0 {
		t.Errorf("error %v after %d bytes", err, b.Len())
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
	size := len(write(t, sample(), Options{}))
	for n := range size {
		if err := Write(&full{n}, sample(), Options{}); !errors.Is(err, errFull) {
			t.Fatalf("room for %d of %d bytes: %v", n, size, err)
		}
	}
	if err := Write(&full{size}, sample(), Options{}); err != nil {
		t.Errorf("room for all: %v", err)
	}
}

// FuzzText puts any text everywhere a user's text can go: the drawing must parse, and say what was
// said, as far as it can be lettered.
func FuzzText(f *testing.F) {
	for _, s := range []string{"", "BLOCK B3", `<&>"'`, "]]>", "\x00\x1b\ufffe\uffff", "a\xff\xc3(", "\u202e\u00ad\U0001f600", " two  spaces ", "%s%!d", "a\tb\nc\r", "--></svg><script>"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		tag := &render.Tag{Mark: s, Material: s, Size: s, Role: s}
		text := render.Text{Pen: render.Note, At: v(10, 10), Height: 2.5, Align: render.TopLeft, Lines: []string{s}}
		sheet := page(text, render.Stroke{Pen: render.Cut, Path: geom.Polyline(v(0, 0), v(9, 9)), Tag: tag})
		sheet.ID, sheet.Title, sheet.Desc, sheet.Props = s, s, s, [][2]string{{s, s}}
		sheet.Views = []render.View{{ID: s, Title: s, Scale: render.Scale{K: 1, Text: s}, Window: geom.Box{Max: v(50, 50)}, Items: []render.Item{text}}}
		for _, o := range []Options{{}, {Inline: true, Prefix: s}} {
			var b bytes.Buffer
			if err := Write(&b, sheet, o); err != nil {
				t.Fatal(err)
			}
			n := read(t, b.String())
			want := render.Clean(s)
			texts := n.all("text")
			if blank := strings.TrimSpace(want) == ""; blank != (len(texts) == 0) {
				t.Fatalf("%d texts for %q", len(texts), want)
			}
			for _, x := range texts {
				if x.Text != want {
					t.Errorf("%q came back as %q", want, x.Text)
				}
			}
			if len(n.all("script")) != 0 {
				t.Error("text became an element")
			}
		}
	})
}

func BenchmarkWrite(b *testing.B) {
	s := page()
	for i := range 20000 {
		x, y := float64(i%200), float64(i/200)
		s.Items = append(s.Items, render.Stroke{Pen: render.Fine, Path: geom.Polyline(v(x, y), v(x+0.7, y+0.3))})
	}
	for b.Loop() {
		if err := Write(io.Discard, s, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
