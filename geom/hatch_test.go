package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

func TestHatchByHand(t *testing.T) {
	sq := Rect(0, 0, 10, 10)
	const quarter = math.Pi / 4
	for _, tt := range []struct {
		name    string
		r       Region
		angle   float64
		spacing float64
		origin  Vec
		dashes  []float64
		shift   float64
		length  float64
		strokes int
	}{
		// Lines at y = 2, 4, 6, 8; those at 0 and 10 lie on edges.
		{"level", sq, 0, 2, Vec{}, nil, 0, 40, 4},
		{"level, origin between", sq, 0, 2, Vec{3, 1}, nil, 0, 50, 5},
		{"upright", sq, math.Pi / 2, 2, Vec{}, nil, 0, 40, 4},
		{"backward", sq, math.Pi, 2, Vec{}, nil, 0, 40, 4},
		// At 45 degrees a line at the distance d from the diagonal is 2 (5 sqrt2 - d) long.
		{"diagonal", sq, quarter, 5 * math.Sqrt2 / 2, Vec{}, nil, 0, 20 * math.Sqrt2, 3},
		{"island", Subtract(sq, Rect(4, 3, 6, 7)), 0, 2, Vec{}, nil, 0, 36, 6},
		// The line at y = 5 runs along the step from x = 5: left of it the line stays.
		{"step", Union(Rect(0, 0, 10, 5), Rect(0, 5, 5, 10)), 0, 5, Vec{}, nil, 0, 5, 1},
		// Level chords of a circle of radius 5 at heights 0 and +-3.
		{"disc", Circle(Vec{}, 5), 0, 3, Vec{}, nil, 0, 10 + 8 + 8, 3},
		{"disc touched at the top", Circle(Vec{}, 5), 0, 5, Vec{}, nil, 0, 10, 1},
		// One line at y = 5: dashes at 0-3, 4-7, 8-10.
		{"dashed", sq, 0, 5, Vec{}, []float64{3, -1}, 0, 8, 3},
		// The first line over the origin starts 2 further along: 0-1, 2-5, 6-9.
		{"dashed and shifted", sq, 0, 5, Vec{}, []float64{3, -1}, 2, 7, 3},
		{"dots", sq, 0, 5, Vec{}, []float64{0, -2.5}, 0, 4 * 0.05, 4},
		{"gaps only", sq, 0, 5, Vec{}, []float64{-1}, 0, 0, 0},
		{"no period", sq, 0, 5, Vec{}, []float64{0}, 0, 10, 1},
		{"no spacing", sq, 0, 0, Vec{}, nil, 0, 0, 0},
		{"spacing not a number", sq, 0, math.NaN(), Vec{}, nil, 0, 0, 0},
		{"too fine", sq, 0, 1e-6, Vec{}, nil, 0, 0, 0},
		{"too finely dashed", sq, 0, 5, Vec{}, []float64{1e-9, -1e-9}, 0, 0, 0},
		{"nothing", nil, 0, 1, Vec{}, nil, 0, 0, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			ps := Hatch(tt.r, tt.angle, tt.spacing, tt.origin, tt.dashes, tt.shift)
			near(t, "length", total(ps), tt.length, 1e-9)
			if len(ps) != tt.strokes {
				t.Errorf("%d strokes, want %d: %v", len(ps), tt.strokes, ps)
			}
		})
	}
}

func TestHatchPhase(t *testing.T) {
	// Two halves of one plate hatched from one origin draw what the whole plate draws.
	dashes := []float64{7, -2, 0, -2}
	hatch := func(r Region) []Path { return Hatch(r, 0.3, 1.7, Vec{1, 2}, dashes, 0.9) }
	whole := hatch(Rect(0, 0, 40, 20))
	halves := append(hatch(Rect(0, 0, 18, 20)), hatch(Rect(18, 0, 40, 20))...)
	near(t, "halves", total(halves), total(whole), 1e-6)
	near(t, "halves merged with the whole", total(Merge(append(halves, whole...))), total(whole), 1e-6)
}

func TestHatchLaws(t *testing.T) {
	for seed := range uint64(300) {
		rnd := rand.New(rand.NewPCG(seed, 4))
		grid := 4 + rnd.IntN(8)
		r := Union(shapes(rnd, 1+rnd.IntN(5), grid)...)
		angle := []float64{0, math.Pi / 4, math.Pi / 2, rnd.Float64() * 7}[rnd.IntN(4)]
		checkHatch(t, r, angle, 0.05+rnd.Float64(), Vec{rnd.Float64(), rnd.Float64()}, nil, 0)
		// Close lines add up to the area: half a spacing of error at most along the outline.
		const fine = 0.01
		got := total(Hatch(r, angle, fine, Vec{0.003, 0.004}, nil, 0)) * fine
		near(t, "length times spacing", got, r.Area(), fine*perimeter(r)/2)
		if t.Failed() {
			t.Fatalf("seed %d angle %g: %v", seed, angle, r)
		}
	}
}

// checkHatch fails the test when a stroke leaves the region or runs along its outline.
func checkHatch(t *testing.T, r Region, angle, spacing float64, origin Vec, dashes []float64, shift float64) {
	t.Helper()
	o := newOutline(r)
	for _, p := range Hatch(r, angle, spacing, origin, dashes, shift) {
		s := p.Segs()[0]
		if !(s.Len() > 0) || s.IsArc() {
			t.Fatalf("stroke %v", p)
		}
		for _, u := range []float64{0, 0.27, 0.5, 1} {
			if !o.contains(s.At(u)) && o.clearance(s.At(u)) > 10*Tol {
				t.Fatalf("stroke %v leaves the region at %v", p, s.At(u))
			}
		}
	}
}

// clearance returns the distance from p to the outline.
func (o *outline) clearance(p Vec) float64 {
	d := math.Inf(1)
	for _, k := range o.ks {
		for i := range 65 {
			d = math.Min(d, k.at(float64(i)/64).Dist(p))
		}
		if k.turn == 0 {
			u := clamp(k.fraction(p), 0, 1)
			d = math.Min(d, k.at(u).Dist(p))
		}
	}
	return d
}

func ExampleHatch() {
	plate := Subtract(Rect(0, 0, 100, 40), Circle(Vec{50, 20}, 10))
	for _, p := range Hatch(plate, 0, 10, Vec{}, nil, 0) {
		fmt.Printf("%.2f,%.0f to %.2f,%.0f\n", p.V[0].X, p.V[0].Y, p.V[1].X, p.V[1].Y)
	}
	// Output:
	// 0.00,10 to 100.00,10
	// 0.00,20 to 40.00,20
	// 60.00,20 to 100.00,20
	// 0.00,30 to 100.00,30
}
