package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func total(ps []Path) float64 {
	var l float64
	for _, p := range ps {
		l += p.Length()
	}
	return l
}

func TestClipPathByHand(t *testing.T) {
	const pi = math.Pi
	sq := Rect(0, 0, 10, 10)
	frame := Subtract(sq, Rect(4, 4, 6, 6))
	for _, tt := range []struct {
		name                string
		p                   Path
		r                   Region
		in, out             float64
		inPieces, outPieces int
	}{
		{"through", Polyline(Vec{-5, 5}, Vec{15, 5}), sq, 10, 10, 1, 2},
		{"through a hole", Polyline(Vec{-5, 5}, Vec{15, 5}), frame, 8, 12, 2, 3},
		{"along an edge", Polyline(Vec{-5, 10}, Vec{15, 10}), sq, 10, 10, 1, 2},
		{"along the edge of a hole", Polyline(Vec{-5, 6}, Vec{15, 6}), frame, 10, 10, 1, 2},
		{"past a corner", Polyline(Vec{5, 15}, Vec{15, 5}), sq, 0, 10 * math.Sqrt2, 0, 1},
		{"inside", Polyline(Vec{1, 1}, Vec{2, 1}, Vec{2, 2}), sq, 2, 0, 1, 0},
		{"outside", Polyline(Vec{20, 1}, Vec{22, 1}), sq, 0, 2, 0, 1},
		{"bent, in and out and in", Polyline(Vec{5, 5}, Vec{15, 5}, Vec{15, 8}, Vec{5, 8}), sq, 10, 13, 2, 1},
		{"closed, start outside", Polygon(Vec{15, 5}, Vec{5, 5}, Vec{5, 8}, Vec{15, 8}), sq, 13, 13, 1, 1},
		{"closed, start inside", Polygon(Vec{5, 5}, Vec{15, 5}, Vec{15, 8}, Vec{5, 8}), sq, 13, 13, 1, 1},
		{"its own outline", sq[0], sq, 40, 0, 1, 0},
		{"circle about a corner", Circle(Vec{}, 4)[0], sq, 2 * pi, 6 * pi, 1, 1},
		{"arc through a hole", Arc(Vec{5, 0}, 5, 0, pi), frame, 5*pi - 10*math.Asin(0.2), 10 * math.Asin(0.2), 2, 1},
		{"nothing", Path{}, sq, 0, 0, 0, 0},
		{"in nothing", Polyline(Vec{1, 1}, Vec{2, 1}), nil, 0, 1, 0, 1},
	} {
		t.Run(tt.name, func(t *testing.T) {
			in, out := ClipPath(tt.p, tt.r, true), ClipPath(tt.p, tt.r, false)
			near(t, "length inside", total(in), tt.in, 1e-9)
			near(t, "length outside", total(out), tt.out, 1e-9)
			if len(in) != tt.inPieces || len(out) != tt.outPieces {
				t.Errorf("%d pieces inside and %d outside, want %d and %d\n%v\n%v", len(in), len(out), tt.inPieces, tt.outPieces, in, out)
			}
		})
	}
	if ps := ClipPath(sq[0], sq, true); !ps[0].Closed {
		t.Error("a closed path kept whole was opened")
	}
}

func TestClipPathLaws(t *testing.T) {
	for seed := range uint64(1000) {
		rnd := rand.New(rand.NewPCG(seed, 3))
		grid := 4 + rnd.IntN(6)
		r := Union(shapes(rnd, 1+rnd.IntN(5), grid)...)
		p := shape(rnd, grid)[0]
		p.Closed = rnd.IntN(2) == 0
		in, out := ClipPath(p, r, true), ClipPath(p, r, false)
		near(t, "inside + outside", total(in)+total(out), p.Length(), 1e-4)
		for _, q := range in {
			for _, s := range q.Segs() {
				if !r.Contains(s.At(0.4137)) {
					t.Errorf("piece %v of the inside lies outside", q)
				}
			}
		}
		for _, q := range out {
			for _, s := range q.Segs() {
				if r.Contains(s.At(0.4137)) {
					t.Errorf("piece %v of the outside lies inside", q)
				}
			}
		}
		near(t, "clipped again", total(clipAll(in, r)), total(in), 1e-4)
		if t.Failed() {
			t.Fatalf("seed %d: %v in %v", seed, p, r)
		}
	}
}

// clipAll clips each of the paths.
func clipAll(ps []Path, r Region) []Path {
	var out []Path
	for _, p := range ps {
		out = append(out, ClipPath(p, r, true)...)
	}
	return out
}
