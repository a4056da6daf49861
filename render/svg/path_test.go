package svg

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"

	"standclear/geom"
	"standclear/render"
)

func TestNum(t *testing.T) {
	tests := []struct {
		v    float64
		want string
	}{
		{0, "0"}, {math.Copysign(0, -1), "0"}, {-0.0004, "0"}, {-0.0006, "-0.001"}, {12, "12"},
		{12.3456, "12.346"}, {0.1 + 0.2, "0.3"}, {-25.4, "-25.4"}, {1e6 + 0.0012, "1000000.001"}, {100, "100"},
	}
	for _, tt := range tests {
		if got := num(tt.v); got != tt.want {
			t.Errorf("num(%v) = %q, want %q", tt.v, got, tt.want)
		}
	}
}

func TestPathData(t *testing.T) {
	arc := func(closed bool, vs ...geom.Vertex) geom.Path { return geom.Path{V: vs, Closed: closed} }
	tests := []struct {
		name string
		path geom.Path
		want string // y down from 100
	}{
		{"line", geom.Polyline(v(1, 2), v(3, 4)), "M1 98 3 96"},
		{"chain", geom.Polyline(v(0, 0), v(10, 0), v(10, 10)), "M0 100 10 100 10 90"},
		{"ring", geom.Polygon(v(0, 0), v(10, 0), v(10, 10)), "M0 100 10 100 10 90Z"},
		// Half a turn counter-clockwise from the left end runs below, through (5, -5): sweep flag 0.
		{"half circle", arc(false, geom.Vertex{Vec: v(0, 0), Bulge: 1}, geom.Vertex{Vec: v(10, 0)}), "M0 100A5 5 0 0 0 5 105A5 5 0 0 0 10 100"},
		{"the other way", arc(false, geom.Vertex{Vec: v(0, 0), Bulge: -1}, geom.Vertex{Vec: v(10, 0)}), "M0 100A5 5 0 0 1 5 95A5 5 0 0 1 10 100"},
		// Quarter turn: bulge tan(22.5 degrees), radius 10 about (0, 10).
		{"line after an arc", arc(false, geom.Vertex{Vec: v(0, 0), Bulge: math.Tan(math.Pi / 8)}, geom.Vertex{Vec: v(10, 10)}, geom.Vertex{Vec: v(10, 20)}, geom.Vertex{Vec: v(0, 20)}),
			"M0 100A10 10 0 0 0 10 90L10 80 0 80"},
		{"closed by an arc", arc(true, geom.Vertex{Vec: v(0, 0)}, geom.Vertex{Vec: v(10, 0), Bulge: 1}), "M0 100 10 100A5 5 0 0 0 5 95A5 5 0 0 0 0 100Z"},
		{"arc that rises less than is written", arc(false, geom.Vertex{Vec: v(0, 0), Bulge: 1e-5}, geom.Vertex{Vec: v(10, 0)}), "M0 100 10 100"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := &drawing{sheet: &render.Sheet{Size: render.Size{W: 200, H: 100}}}
			d.path(tt.path)
			if got := string(d.buf); got != tt.want {
				t.Errorf("%s\nwant %s", got, tt.want)
			}
		})
	}
}

var arcCmd = regexp.MustCompile(`A([-.\d]+) [-.\d]+ 0 0 ([01]) ([-.\d]+) ([-.\d]+)`)

// What a reader makes of an arc, from its written numbers, keeps within 0.003 mm of the arc meant,
// also near half a turn, where radius and chord together fix the centre badly.
func TestArcsReadBack(t *testing.T) {
	for _, r := range []float64{0.5, 5, 80, 2000} {
		for _, deg := range []float64{10, 45, 90, 119, 121, 179.9, 180, 180.1, 270, 359} {
			for _, sign := range []float64{1, -1} {
				sweep := sign * deg * math.Pi / 180
				a := geom.Polar(geom.Vec{}, r, 0.3)
				b := geom.Polar(geom.Vec{}, r, 0.3+sweep)
				s := geom.Seg{A: a, B: b, Bulge: math.Tan(sweep / 4)}
				d := &drawing{sheet: &render.Sheet{}}
				d.path(geom.Path{V: []geom.Vertex{{Vec: a, Bulge: s.Bulge}, {Vec: b}}})
				checkArcs(t, fmt.Sprintf("r %v, %v degrees", r, sign*deg), string(d.buf), a, r)
			}
		}
	}
}

// checkArcs reads arcs about the origin and measures how far each strays from radius r half way.
func checkArcs(t *testing.T, name, data string, from geom.Vec, r float64) {
	t.Helper()
	n := 0
	for _, m := range arcCmd.FindAllStringSubmatch(data, -1) {
		rr, x, y := parse(m[1]), parse(m[3]), parse(m[4])
		to := v(x, -y)
		chord := to.Sub(from)
		rise := rr - math.Sqrt(max(0, rr*rr-chord.Dot(chord)/4)) // the small arc
		out := chord.Perp().Unit().Mul(-rise)                    // right of the chord: counter-clockwise seen
		if m[2] == "1" {
			out = out.Mul(-1)
		}
		if off := from.Lerp(to, 0.5).Add(out).Len() - r; math.Abs(off) > 0.003 {
			t.Errorf("%s: %s is %.4f mm off half way", name, m[0], off)
		}
		from = to
		n++
	}
	if n == 0 {
		t.Errorf("%s: no arc in %s", name, data)
	}
}

func parse(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(err)
	}
	return v
}
