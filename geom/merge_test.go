package geom

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

func line(x0, y0, x1, y1 float64) Path { return Polyline(Vec{x0, y0}, Vec{x1, y1}) }

func TestMergeByHand(t *testing.T) {
	const pi = math.Pi
	for _, tt := range []struct {
		name   string
		ps     []Path
		over   []Path
		length float64
		pieces int
	}{
		{"one", []Path{line(0, 0, 10, 0)}, nil, 10, 1},
		{"the same twice", []Path{line(0, 0, 10, 0), line(10, 0, 0, 0)}, nil, 10, 1},
		{"overlapping", []Path{line(0, 0, 10, 0), line(5, 0, 15, 0)}, nil, 15, 1},
		{"one in the other", []Path{line(0, 0, 10, 0), line(2, 0, 4, 0)}, nil, 10, 1},
		{"touching", []Path{line(0, 0, 10, 0), line(10, 0, 15, 0)}, nil, 15, 1},
		{"apart", []Path{line(0, 0, 10, 0), line(11, 0, 15, 0)}, nil, 14, 2},
		{"parallel", []Path{line(0, 0, 10, 0), line(0, 1e-3, 10, 1e-3)}, nil, 20, 2},
		{"parallel within Tol", []Path{line(0, 0, 10, 0), line(0, 5e-7, 10, 5e-7)}, nil, 10, 1},
		{"crossing", []Path{line(0, 0, 10, 0), line(5, -5, 5, 5)}, nil, 20, 2},
		{"upright", []Path{line(3, 0, 3, 9), line(3, 12, 3, 5)}, nil, 12, 1},
		{"slanting", []Path{line(0, 0, 3, 4), line(9, 12, 3, 4), line(1.5, 2, 6, 8)}, nil, 15, 1},
		{"squares side by side", []Path{Rect(0, 0, 10, 10)[0], Rect(10, 0, 20, 10)[0]}, nil, 70, 5},
		{"circle twice", []Path{Circle(Vec{}, 2)[0], Circle(Vec{}, 2)[0]}, nil, 4 * pi, 1},
		{"halves of a circle", []Path{Arc(Vec{}, 2, 1, pi), Arc(Vec{}, 2, 1, -pi)}, nil, 4 * pi, 1},
		{"overlapping arcs over the start", []Path{Arc(Vec{}, 2, -1, 1.5), Arc(Vec{}, 2, 0, 1)}, nil, 4, 1},
		{"arcs apart", []Path{Arc(Vec{}, 2, 0, 1), Arc(Vec{}, 2, 2, 1)}, nil, 4, 2},
		{"concentric circles", []Path{Circle(Vec{}, 2)[0], Circle(Vec{}, 3)[0]}, nil, 10 * pi, 2},
		{"against a part", []Path{line(0, 0, 10, 0)}, []Path{line(2, 0, 4, 0)}, 8, 2},
		{"against all", []Path{line(0, 0, 10, 0)}, []Path{line(-2, 0, 14, 0)}, 0, 0},
		{"against a crossing line", []Path{line(0, 0, 10, 0)}, []Path{line(2, -1, 2, 1)}, 10, 1},
		{"arc against its circle", []Path{Arc(Vec{}, 2, 0, 1)}, []Path{Circle(Vec{}, 2)[0]}, 0, 0},
		{"circle against an arc", []Path{Circle(Vec{}, 2)[0]}, []Path{Arc(Vec{}, 2, 0, 1)}, 4*pi - 2, 1},
		{"nothing", nil, []Path{line(0, 0, 1, 1)}, 0, 0},
		{"no length", []Path{line(1, 1, 1, 1), Polyline(Vec{1, 1})}, nil, 0, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got := MergeAgainst(tt.ps, tt.over)
			near(t, "length", total(got), tt.length, 1e-6)
			if len(got) != tt.pieces {
				t.Errorf("%d pieces, want %d: %v", len(got), tt.pieces, got)
			}
		})
	}
}

func TestMergeGivesBackPoints(t *testing.T) {
	// The ends are the points that went in, to the last bit, though the line slants.
	a, b, c := Vec{0.1, 0.2}, Vec{0.1 + 7.0/3, 0.2 + 11.0/3}, Vec{0.1 + 14.0/3, 0.2 + 22.0/3}
	got := Merge([]Path{Polyline(b, a), Polyline(b, c)})
	if len(got) != 1 || got[0].V[0].Vec != a || got[0].V[1].Vec != c {
		t.Errorf("got %v, want the line from %v to %v", got, a, c)
	}
}

// strokes draws random lines and arcs on a coarse grid.
func strokes(rnd *rand.Rand, n int) []Path {
	at := func() float64 { return float64(rnd.IntN(5)) }
	var ps []Path
	for range n {
		switch rnd.IntN(4) {
		case 0:
			ps = append(ps, Arc(Vec{at(), at()}, 1+at()/2, at(), 1+at()))
		case 1:
			ps = append(ps, Rect(at(), at(), at()+5, at()+5)[0])
		default:
			ps = append(ps, line(at(), at(), at(), at()))
		}
	}
	return ps
}

func TestMergeLaws(t *testing.T) {
	for seed := range uint64(500) {
		rnd := rand.New(rand.NewPCG(seed, 5))
		ps, over := strokes(rnd, 1+rnd.IntN(30)), strokes(rnd, rnd.IntN(10))
		if seed%2 == 1 {
			x := Rotate(rnd.Float64()*6, Vec{1, 1})
			for i := range ps {
				ps[i] = ps[i].Transform(x)
			}
			for i := range over {
				over[i] = over[i].Transform(x)
			}
		}
		m := Merge(ps)
		if l := total(m); l > total(ps)+1e-6 {
			t.Errorf("length grew from %g to %g", total(ps), l)
		}
		near(t, "merged again", total(Merge(m)), total(m), 1e-5)
		if n := len(Merge(m)); n != len(m) {
			t.Errorf("merged again: %d pieces, before %d", n, len(m))
		}
		near(t, "input against the result", total(MergeAgainst(ps, m)), 0, 1e-5)
		near(t, "the result against the input", total(MergeAgainst(m, ps)), 0, 1e-5)
		rest := MergeAgainst(ps, over)
		near(t, "what is left and over", total(Merge(append(slices.Clone(rest), over...))), total(Merge(append(slices.Clone(ps), over...))), 1e-4)
		near(t, "left over and over have nothing in common", total(MergeAgainst(rest, over)), total(rest), 1e-4)
		shuffled := slices.Clone(ps)
		rnd.Shuffle(len(shuffled), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
		near(t, "in another order", total(Merge(shuffled)), total(m), 1e-5)
		if t.Failed() {
			t.Fatalf("seed %d: %v\nover %v", seed, ps, over)
		}
	}
}

// Lines far away are passed over, and change nothing.
func TestOverIsMergeAgainst(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	whole := func(n int) float64 { return float64(rnd.IntN(n)) }
	for range 300 {
		var all []Path
		var over Over
		for range 12 {
			x, y, w, h := whole(40), whole(40), 1+whole(9), 1+whole(9)
			p := Rect(x, y, x+w, y+h)[0]
			all = append(all, p)
			over.Add(p)
		}
		x, y := whole(40), whole(40)
		p := Polyline(Vec{X: x, Y: y}, Vec{X: x + whole(20), Y: y}, Vec{X: x + 20, Y: y + whole(20)})
		if got, want := over.Less(p), MergeAgainst([]Path{p}, all); !reflect.DeepEqual(got, want) {
			t.Fatalf("%v less %v is %v, want %v", p, all, got, want)
		}
	}
}
