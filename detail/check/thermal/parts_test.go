package thermal

import (
	"context"
	"math"
	"slices"
	"testing"

	"standclear/detail"
	"standclear/detail/demo"
	"standclear/detail/detailtest"
	"standclear/detail/heat"
	"standclear/detail/spec"
	"standclear/detail/spec/spectest"
	"standclear/geom"
)

// A panel with a hole becomes boxes of the same volume; a sloped top stands at its mean height.
func TestBoxesKeepVolume(t *testing.T) {
	outline := geom.Subtract(geom.Rect(0, 0, 1000, 600), geom.Rect(300, 200, 500, 400))
	sloped := geom.Region{geom.Polygon(geom.Vec{X: 0, Y: 0}, geom.Vec{X: 100, Y: 0}, geom.Vec{X: 100, Y: 90}, geom.Vec{X: 0, Y: 110})}
	for _, tt := range []struct {
		s      geom.Solid
		n      int
		volume float64
	}{
		{geom.Prism(outline, geom.Y, 10, 30), 4, (600000 - 40000) * 20},
		{geom.Prism(sloped, geom.X, 0, 50), 1, 100 * 100 * 50},
	} {
		boxes, sum := boxesOf(tt.s), 0.0
		for _, b := range boxes {
			sum += (b[1][0] - b[0][0]) * (b[1][1] - b[0][1]) * (b[1][2] - b[0][2])
		}
		if len(boxes) != tt.n || math.Abs(sum-tt.volume) > 1e-6*tt.volume {
			t.Errorf("%d boxes of %.0f mm3, want %d of %.0f", len(boxes), sum, tt.n, tt.volume)
		}
	}
}

// Faces nearer than 3 mm become one, on a face of steel where there is one; steel itself stays.
func TestAlign(t *testing.T) {
	steel := []heat.Box{{Lo: heat.Point{10, 0, 0}, Hi: heat.Point{24, 1, 1}}}
	wood := []heat.Box{{Lo: heat.Point{9, 0, 0}, Hi: heat.Point{100, 1, 1}}, {Lo: heat.Point{102, 0, 0}, Hi: heat.Point{200, 1, 1}}}
	align(heat.X, steel, wood, steel)
	if wood[0].Lo[0] != 10 || wood[0].Hi[0] != 101 || wood[1].Lo[0] != 101 || steel[0].Lo[0] != 10 || steel[0].Hi[0] != 24 {
		t.Errorf("%v %v", wood, steel)
	}
}

// The share of a short screw's conduction, against a solution in three dimensions: a screw of 4.8 mm, 70 long, in
// a prism of softwood 51 by 51 by 114 with its ends held at 1 and 0 degrees. What the screw adds to the flow is
// what the added conductivity over the length of the screw gives, in series with the wood before and behind.
func TestScrewShare(t *testing.T) {
	const side, long, d, length, kw, ks = 51.0, 114.3, 4.826, 69.85, 0.13, 50.0
	c := heat.Case{Name: "screw", Dim: 3, Materials: []heat.Material{heat.Isotropic("wood", kw), heat.Isotropic("steel", ks)},
		Envs: []heat.Env{{Name: "warm", T: 1}, {Name: "cold", T: 0}}}
	at := heat.Point{side / 2, 0, side / 2}
	c.Boxes = []heat.Box{
		{Lo: heat.Point{0, -10, 0}, Hi: heat.Point{side, 0, side}, Env: "warm"},
		{Lo: heat.Point{0, 0, 0}, Hi: heat.Point{side, long, side}, Material: "wood"},
		{Lo: heat.Point{0, long, 0}, Hi: heat.Point{side, long + 10, side}, Env: "cold"},
		heat.RodBox(heat.Y, at, long/2-length/2, long/2+length/2, d, "steel"),
	}
	r, err := heat.Solve(context.Background(), c, heat.Options{Error: 0.01, Temps: -1, Limit: true})
	if err != nil {
		t.Fatal(err)
	}
	area := side * side / 1e6
	bare := area * kw / (long / 1e3)
	k := kw + screwed(1, d, length, side*side, kw, ks)
	smeared := area / ((long-length)/1e3/kw + length/1e3/k)
	got, want := smeared/bare-1, r.Envs[0].Flow.V/bare-1
	if want < 0.05 || math.Abs(got-want) > 0.2*want {
		t.Errorf("a screw adds %.3f of the wood's flow, solved %.3f", got, want)
	}
	if screwed(0, d, length, 1e4, kw, ks) != 0 || screwed(1, d, 1e6, 1e4, kw, ks) < 0.99*ks*math.Pi*d*d/4/1e4 {
		t.Error("no screw adds nothing, an endless one its whole section")
	}
}

// A bolt and its nut, their faces 2 mm apart, keep both their sections.
func TestAlignKeepsSteel(t *testing.T) {
	steel := []heat.Box{{Lo: heat.Point{12, 0, 0}, Hi: heat.Point{24, 9, 1}}, {Lo: heat.Point{10, 9, 0}, Hi: heat.Point{26, 12, 1}}}
	align(heat.X, slices.Clone(steel), steel)
	if steel[0].Lo[0] != 12 || steel[0].Hi[0] != 24 || steel[1].Lo[0] != 10 || steel[1].Hi[0] != 26 {
		t.Errorf("%v", steel)
	}
}

// A stud whose face lies 0.3 mm inside the end of the bay does not draw that end away from the places half-way
// between two blocks.
func TestAlignKeepsTheWindow(t *testing.T) {
	a := detailtest.Demo(t, "deck", "blocks.max_spacing=28in")
	b := newBay(a, typical(a))
	r := &run{b: b}
	drawn, _ := b.ways("")
	for _, q := range r.align([]variant{drawn}).wall {
		if math.Abs(q.Hi[0]-b.hi[0]) < near && q.Hi[0] != b.hi[0] || math.Abs(q.Lo[0]-b.lo[0]) < near && q.Lo[0] != b.lo[0] {
			t.Errorf("%v to %v in a bay from %v to %v", q.Lo, q.Hi, b.lo, b.hi)
		}
	}
}

// Bringing faces together leaves all steel as it is, and nearly all of the other volume, in every demo and in random
// projects.
func TestAlignKeepsVolume(t *testing.T) {
	var all []*spec.Spec
	for _, name := range demo.Names() {
		src, _ := demo.File(name)
		s, problems := spec.Read(name, src, nil)
		if s == nil {
			t.Fatal(problems)
		}
		all = append(all, s)
	}
	for n := range uint64(60) {
		all = append(all, spectest.Random(n).Spec)
	}
	for n, s := range all {
		a, err := detail.Build(s)
		if err != nil {
			t.Fatal(err)
		}
		b := newBay(a, typical(a))
		drawn, others := b.ways("")
		ways := append([]variant{drawn}, others...)
		g := (&run{b: b}).align(ways)
		for i, w := range ways {
			steel, rest := volumes(w.boxes)
			steelThen, restThen := volumes(g.ways[i].boxes)
			if math.Abs(steelThen-steel) > 1e-6*steel || math.Abs(restThen-rest) > 0.05*rest {
				t.Errorf("%d, %s: %.0f mm3 of steel become %.0f, %.0f of the rest %.0f", n, w.Key, steel, steelThen, rest, restThen)
			}
		}
	}
}

// volumes adds up the boxes of metal and those of everything else.
func volumes(boxes []heat.Box) (steel, rest float64) {
	for _, q := range boxes {
		v := (q.Hi[0] - q.Lo[0]) * (q.Hi[1] - q.Lo[1]) * (q.Hi[2] - q.Lo[2])
		if metal(q) {
			steel += v
		} else {
			rest += v
		}
	}
	return steel, rest
}

// The least of a value is it less its error, or itself where the error could not be told.
func TestLeast(t *testing.T) {
	for v, want := range map[Value]float64{{0.5, 0.02}: 0.48, {0.5, 0}: 0.5, {0.5, -1}: 0.5} {
		if got := v.Least(); !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("%+v: %g, want %g", v, got, want)
		}
	}
}

// Every place is kept that the heat solution looked at, but of several bolts the coldest alone, and none of the room where the
// surface of the mould criterion was not solved.
func TestEveryPlaceIsKept(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	b := newBay(a, typical(a))
	places := b.places()
	bolts, want := 0, 0
	for _, p := range places {
		if p.Bolt {
			bolts++
		} else {
			want++
		}
	}
	if bolts < 2 {
		t.Fatalf("%d bolts", bolts)
	}
	for cold := range bolts {
		r := &heat.Result{Probes: make([]heat.ProbeResult, len(places))}
		n := 0
		for i, p := range places {
			r.Probes[i].T.V = 0.9
			if p.Bolt {
				if r.Probes[i].T.V = 0.5; n == cold {
					r.Probes[i].T.V = 0.4
				}
				n++
			}
		}
		got := b.spots(r, r)
		seen := map[string]bool{}
		for _, s := range got {
			seen[s.Key] = true
			if s.Bolt && s.F.V != 0.4 {
				t.Errorf("bolt of %g kept, the coldest is the one of 0.4", s.F.V)
			}
		}
		for _, p := range places {
			if !seen[p.Key] {
				t.Errorf("%s is lost", p.Key)
			}
		}
		if len(got) != want+1 {
			t.Errorf("%d places of %d and a bolt", len(got), want)
		}
		if room := b.spots(r, nil); len(room) >= len(got) {
			t.Errorf("%d places without the surface of the mould criterion, %d with it", len(room), len(got))
		}
	}
}
