package pdf

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
)

var curve = regexp.MustCompile(`(?m)^([-.\d]+) ([-.\d]+) ([-.\d]+) ([-.\d]+) ([-.\d]+) ([-.\d]+) c$`)

// Curves, read back from the page, keep within 0.01 mm of the arc all along and end where it ends.
func TestArcsReadBack(t *testing.T) {
	const k = 25.4 / 72
	c := v(3000, 3000)
	for _, r := range []float64{0.5, 10, 300, 2500} {
		for _, deg := range []float64{1, 30, 90, 91, 180, 300, 359} {
			for _, sign := range []float64{1, -1} {
				sweep := sign * deg * math.Pi / 180
				a, b := geom.Polar(c, r, 0.3), geom.Polar(c, r, 0.3+sweep)
				s := page200(render.Stroke{Pen: render.Fine, Path: geom.Path{V: []geom.Vertex{{Vec: a, Bulge: math.Tan(sweep / 4)}, {Vec: b}}}})
				s.Size = render.Size{W: 6000, H: 6000}
				name := fmt.Sprintf("r %v, %v degrees", r, sign*deg)
				from, turned := a, 0.0
				for _, m := range curve.FindAllStringSubmatch(content(t, write(t, Options{}, s)), -1) {
					var p [6]float64
					fmt.Sscan(strings.Join(m[1:], " "), &p[0], &p[1], &p[2], &p[3], &p[4], &p[5])
					c1, c2, to := v(p[0], p[1]).Mul(k), v(p[2], p[3]).Mul(k), v(p[4], p[5]).Mul(k)
					for i := range 21 {
						q := bezier(from, c1, c2, to, float64(i)/20)
						if off := math.Abs(q.Dist(c) - r); off > 0.01 {
							t.Fatalf("%s: %.4f mm off", name, off)
						}
					}
					turned += math.Atan2(from.Sub(c).Cross(to.Sub(c)), from.Sub(c).Dot(to.Sub(c)))
					from = to
				}
				if from.Dist(b) > 0.003 || math.Abs(turned-sweep) > 0.01 {
					t.Errorf("%s: ends %.4f mm off after %v", name, from.Dist(b), turned)
				}
			}
		}
	}
}

func bezier(a, b, c, d geom.Vec, t float64) geom.Vec {
	ab, bc, cd := a.Lerp(b, t), b.Lerp(c, t), c.Lerp(d, t)
	return ab.Lerp(bc, t).Lerp(bc.Lerp(cd, t), t)
}

// A quarter turn of 10 mm strays by 0.0027 mm, one of 100 mm by 0.027: the first is one curve, the
// second is not.
func TestPieces(t *testing.T) {
	for _, tt := range []struct {
		r, sweep float64
		want     int
	}{{10, math.Pi / 2, 1}, {10, math.Pi, 2}, {10, 2 * math.Pi, 4}, {100, math.Pi / 2, 2}, {1e6, 1e-9, 1}} {
		if got := pieces(tt.r, tt.sweep); got != tt.want {
			t.Errorf("pieces(%v, %v) = %d, want %d", tt.r, tt.sweep, got, tt.want)
		}
	}
}
