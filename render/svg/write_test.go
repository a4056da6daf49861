package svg

import (
	"bytes"
	"errors"
	"io"
	"math"
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
