package dxf

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"standclear/geom"
	"standclear/render"
)

// ring is a boundary as a reader sees it.
type ring struct {
	flags, bulged string
	v             []geom.Vertex
}

// rings reads the boundaries of a hatch and checks that each holds as many vertices as it says.
func rings(t *testing.T, r record) []ring {
	t.Helper()
	var out []ring
	n := 0
	for _, g := range r.tags {
		v, _ := strconv.ParseFloat(g.value, 64)
		k := len(out) - 1
		switch {
		case g.code == 92:
			out = append(out, ring{flags: g.value})
		case k < 0 || g.code == 75:
			continue
		case g.code == 72:
			out[k].bulged = g.value
		case g.code == 93:
			n = int(v)
		case g.code == 10:
			out[k].v = append(out[k].v, geom.Vertex{Vec: geom.Vec{X: v}})
		case g.code == 20:
			out[k].v[len(out[k].v)-1].Y = v
		case g.code == 42:
			out[k].v[len(out[k].v)-1].Bulge = v
		case g.code == 97 && len(out[k].v) != n:
			t.Errorf("boundary of %d vertices says %d", len(out[k].v), n)
		}
	}
	return out
}

func TestHatchBoundaries(t *testing.T) {
	outer := geom.Polygon(xy(0, 0), xy(20, 0), xy(20, 10), xy(0, 10))
	hole := geom.Path{V: []geom.Vertex{{Vec: xy(4, 5), Bulge: -1}, {Vec: xy(8, 5), Bulge: -1}}, Closed: true}
	second := geom.Polygon(xy(30, 0), xy(40, 0), xy(40, 10))
	sliver := geom.Polygon(xy(50, 0), xy(60, 0), xy(55, 0))
	r := draw(t, render.Fill{Pen: render.Cut, Region: geom.Region{outer, hole, second, sliver}}).one(t, "HATCH")
	if r.get(2) != "SOLID" || r.get(70) != "1" || r.get(71) != "0" || r.get(91) != "3" || r.get(98) != "0" || r.get(47) != "" {
		t.Errorf("record %v", r.tags)
	}
	got := rings(t, r)
	want := []ring{{"3", "0", outer.V}, {"18", "1", hole.V}, {"3", "0", second.V}}
	if !slices.EqualFunc(got, want, func(a, b ring) bool { return a.flags == b.flags && a.bulged == b.bulged && slices.Equal(a.v, b.v) }) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
}

// The lines of a pattern stand in the file turned, scaled and at their place.
func TestHatchPattern(t *testing.T) {
	p := &render.HatchPattern{Name: "SC-BOND", Lines: []render.PatternLine{
		{Angle: 45, Spacing: 2},
		{Angle: 0, Spacing: 3, Shift: 1.5, Base: xy(1, 0), Dashes: []float64{4, -1, 0}},
	}}
	f := render.Fill{Pen: render.Pattern, Region: geom.Rect(10, 20, 90, 80), Pattern: p, Turn: 90, Origin: xy(10, 20)}
	r := write(t, view(render.Millimetre, 5, f)).one(t, "HATCH")
	if r.get(2) != "SC-BOND" || r.get(70) != "0" || r.get(76) != "2" || r.get(77) != "0" || r.get(78) != "2" || r.get(52) != "90.0" || r.get(41) != "5.0" {
		t.Errorf("record %v", r.tags)
	}
	number := func(code int) []float64 {
		var out []float64
		for _, s := range r.all(code) {
			v, _ := strconv.ParseFloat(s, 64)
			out = append(out, v)
		}
		return out
	}
	// Second line: along 90 degrees, (0, 1); across, to its left, (-1, 0). Step 5 x (3 across + 1.5
	// along) = (-15, 7.5). Base 5 x (1, 0) turned by 90 = (0, 5) from (10, 20).
	// First line: along 135 degrees; step 10 to its left, direction 225: -10/sqrt(2) each.
	d := 10 / math.Sqrt2
	for code, want := range map[int][]float64{53: {135, 90}, 43: {10, 10}, 44: {20, 25}, 45: {-d, -15}, 46: {-d, 7.5}, 79: {0, 3}, 49: {20, -5, 0}} {
		got := number(code)
		if !slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-8 }) {
			t.Errorf("group %d: %v, want %v", code, got, want)
		}
	}
}

func TestWhiteFillIsLeftOut(t *testing.T) {
	f := draw(t, stroke(render.Cut, xy(0, 0), xy(1, 0)), render.Fill{Pen: render.Cut, Region: geom.Rect(0, 0, 9, 9), White: true})
	if n := len(f.kind("HATCH", "")); n != 0 {
		t.Errorf("%d hatches", n)
	}
}

// The signed area of a ring with arcs: a disc, and a square with a half disc bitten out of a side.
func TestArea(t *testing.T) {
	for _, c := range []struct {
		name string
		path geom.Path
		want float64
	}{
		{"square", geom.Rect(0, 0, 4, 4)[0], 16},
		{"disc", geom.Circle(xy(3, 1), 2)[0], 4 * math.Pi},
		{"disc run clockwise", bent(true, []float64{-1, -1}, xy(0, 0), xy(4, 0)), -4 * math.Pi},
		{"bitten square", bent(true, []float64{-1}, xy(0, 0), xy(4, 0), xy(4, 4), xy(0, 4)), 16 - 2*math.Pi},
		{"quarter disc", bent(true, []float64{0, math.Sqrt2 - 1, 0}, xy(0, 0), xy(4, 0), xy(0, 4)), 4 * math.Pi},
	} {
		if got := area(c.path); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}
