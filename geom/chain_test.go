package geom

import (
	"math"
	"testing"
)

// TestEllipsesAreRuns: a round bar standing upright shows a whole ellipse on top, the near half of one below,
// its hidden half, and two sides.
func TestEllipsesAreRuns(t *testing.T) {
	const r, h = 20.0, 50.0
	es := Project(Isometric(Vec3{}, 1, 1), []Solid{Cylinder(Vec3{}, Z, r, h)}, ProjectOptions{})
	var closed, runs, hidden, lines int
	for _, e := range es {
		switch {
		case e.Path.Closed:
			closed++
			// Half axes r and r/sqrt(3): area pi r^2 / sqrt(3), less what chords within 0.01 leave out.
			near(t, "area of the ellipse", math.Abs(e.Path.Area()), math.Pi*r*r/math.Sqrt(3), 1.5)
		case len(e.Path.V) == 2:
			lines++
			near(t, "side", e.Path.Length(), h*math.Sqrt(2.0/3), 1e-9)
		case e.Hidden:
			hidden++
		default:
			runs++
		}
	}
	if closed != 1 || runs != 1 || hidden != 1 || lines != 2 {
		t.Errorf("%d closed, %d runs, %d hidden runs, %d lines; want 1, 1, 1, 2", closed, runs, hidden, lines)
	}
}

func TestChainByHand(t *testing.T) {
	chord := func(x0, y0, x1, y1 float64, owner int32) stroke {
		return stroke{curve{a: Vec{x0, y0}, b: Vec{x1, y1}}, class{owner: owner, bent: true}}
	}
	plain := chord(3, 1, 4, 1, 0)
	plain.bent = false
	for _, tt := range []struct {
		name string
		ss   []stroke
		runs []int // vertices of each
	}{
		{"end to end", []stroke{chord(0, 0, 1, 0, 0), chord(1, 0, 2, 0.3, 0)}, []int{3}},
		{"end to end, one turned about", []stroke{chord(1, 0, 0, 0, 0), chord(1, 0, 2, 0.3, 0)}, []int{3}},
		{"middle first", []stroke{chord(1, 0, 2, 0, 0), chord(2, 0, 3, 0.2, 0), chord(0, 0.2, 1, 0, 0)}, []int{4}},
		{"a corner", []stroke{chord(0, 0, 1, 0, 0), chord(1, 0, 1, 1, 0)}, []int{2, 2}},
		{"two owners", []stroke{chord(0, 0, 1, 0, 0), chord(1, 0, 2, 0, 1)}, []int{2, 2}},
		{"three at a point", []stroke{chord(0, 0, 1, 0, 0), chord(1, 0, 2, 0.1, 0), chord(1, 0, 2, -0.1, 0)}, []int{2, 2, 2}},
		{"a plain line", []stroke{chord(2, 1, 3, 1, 0), plain}, []int{2, 2}},
		{"nothing", nil, nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			runs := chain(tt.ss)
			if len(runs) != len(tt.runs) {
				t.Fatalf("%d runs, want %d", len(runs), len(tt.runs))
			}
			for i, run := range runs {
				if p := runPath(run); len(p.V) != tt.runs[i] || p.Closed {
					t.Errorf("run %d: %v, want %d vertices", i, p, tt.runs[i])
				}
			}
		})
	}
}
