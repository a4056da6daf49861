package detail_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
	"standclear/geom"
)

// film is one membrane where an upright line at x on the wall meets it: depths y0 to y1, heights z0 to z1.
type film struct {
	role           detail.Role
	y0, y1, z0, z1 float64
}

// filmsAt lists the membranes that lie flat on the wall at x; of a block's cap and side pieces that is what turns onto the wall.
func filmsAt(a *detail.Assembly, x float64) []film {
	v := geom.View{O: geom.Vec3{X: x}, U: geom.Vec3{Y: 1}, V: geom.Vec3{Z: 1}, N: geom.Vec3{X: -1}}
	var out []film
	for _, p := range a.Find(detail.Patch, detail.Wrap, detail.Barrier) {
		if p.Role == detail.Wrap {
			if f, ok := upturn(a, p, x); ok {
				out = append(out, f)
			}
			continue
		}
		for _, s := range p.Solids {
			for _, r := range s.Cut(v).Parts() {
				b := r.Bounds()
				out = append(out, film{p.Role, b.Min.X, b.Max.X, b.Min.Y, b.Max.Y})
			}
		}
	}
	return out
}

// upturn is what of a block's cap stands on the wall above it, or of a side piece beside it.
func upturn(a *detail.Assembly, p *detail.Part, x float64) (film, bool) {
	b := a.Blocks[p.Block].Box
	if p.Mark == "M3" {
		w := p.Solids[1].Bounds()
		return film{detail.Wrap, w.Min.Y, w.Max.Y, w.Min.Z, w.Max.Z}, x > w.Min.X && x < w.Max.X
	}
	if x < b.Min.X || x > b.Max.X {
		return film{}, false
	}
	v := p.Bends[0].Path.V
	return film{detail.Wrap, v[1].X - detail.Film/2, v[1].X + detail.Film/2, v[1].Y, v[0].Y}, true
}

// outermost returns the film that lies over all others at height z.
func outermost(films []film, z float64) (film, bool) {
	best, ok := film{y1: math.Inf(-1)}, false
	for _, f := range films {
		if z > f.z0 && z < f.z1 && f.y1 > best.y1 {
			best, ok = f, true
		}
	}
	return best, ok
}

const thin = 0.02 // mm: the membrane of the file is not quite as thick as a film

// shed walks down the wall over every edge of a film and says where water gets behind one: where the next
// sheet starts outside the one the water runs on, or does not reach up behind it by the lap.
func shed(films []film, lap float64) []string {
	var edges []float64
	for _, f := range films {
		edges = append(edges, f.z0, f.z1)
	}
	slices.Sort(edges)
	slices.Reverse(edges)
	var wet []string
	for _, z := range slices.Compact(edges) {
		up, ok1 := outermost(films, z+0.05)
		down, ok2 := outermost(films, z-0.05)
		if !ok1 || !ok2 || up.role == down.role {
			continue // an end of the wall, a block, or one sheet that runs on
		}
		if down.y1 > up.y1+thin {
			wet = append(wet, fmt.Sprintf("at z %.1f the %s starts %.2f outside the %s above it", z, down.role, down.y1-up.y1, up.role))
		}
		behind := 0.0
		for _, f := range films {
			if f.role == down.role && f.z1 > z+0.05 && f.z0 < z+0.05 {
				behind = f.z1 - z
			}
		}
		if behind < lap-1e-6 {
			wet = append(wet, fmt.Sprintf("at z %.1f the %s reaches %.1f up behind the %s, want %.1f", z, down.role, behind, up.role, lap))
		}
	}
	return wet
}

// underDoors leaves out what stands in a door's opening, which has no wall over the subfloor.
func underDoors(a *detail.Assembly, films []film, x float64) []film {
	for _, d := range a.Spec.Doors {
		if x < d.From.MM() || x > d.To.MM() {
			continue
		}
		for i := range films {
			films[i].z1 = math.Min(films[i].z1, a.Frame.SubTop)
		}
	}
	return films
}

// Down the wall every upper sheet laps over, that is outside, the next lower one by 2 in (50 mm) at least:
// beside the blocks and over them, at the patches' edges and between.
func TestMembranesShedWater(t *testing.T) {
	cases := map[string][][]string{
		"deck":    {nil, {"water.patch.height=14in"}, {"blocks.top_slope=1:8"}, {"blocks.below=1in"}, {"water.wrap_lap=3in"}},
		"balcony": {nil}, "deck-metric": {nil, {"water.patch.height=400mm"}}, "balcony-metric": {nil},
	}
	for name, all := range cases {
		for _, sets := range all {
			a := detailtest.Demo(t, name, sets...)
			lap := a.Spec.Pick(50.8, 50)
			for i, b := range a.Blocks {
				p := a.PatchBox(i)
				for _, x := range []float64{p.Min.X - 1, p.Min.X + 1, b.Box.Min.X - 1, b.Box.Min.X + 1, b.X, b.Box.Max.X + 1, p.Max.X - 1, p.Max.X + 1} {
					films := underDoors(a, filmsAt(a, x), x)
					if len(films) == 0 {
						t.Fatalf("%s: no membrane at %.1f", name, x)
					}
					for _, w := range shed(films, lap) {
						t.Errorf("%s %v: x %.1f: %s", name, sets, x, w)
					}
				}
			}
		}
	}
}

// The walk down the wall finds a lap turned round, and one that is short.
func TestShedFindsAReversedLap(t *testing.T) {
	over := film{detail.Barrier, 1, 1.5, 0, 100}
	for name, c := range map[string]struct {
		lower film
		good  bool
	}{
		"under it": {film{detail.Patch, 0, 0.5, -100, 60}, true}, "over it": {film{detail.Patch, 2, 2.5, -100, 60}, false}, "under it by 20": {film{detail.Patch, 0, 0.5, -100, 20}, false},
	} {
		if wet := shed([]film{over, c.lower}, 50); (len(wet) == 0) != c.good {
			t.Errorf("a patch %s: %q", name, wet)
		}
	}
}

// Laps of the inch deck, by hand: patch 16 in on a block of 9 1/4 from -4 1/4 to -13 1/2 in, so from -7/8 to
// -16 7/8; 3 3/8 in stand over and under the block. The wrap turns 2 in up the wall, to -2 1/4. Over the block lie, from
// the sheathing, patch, wrap and barrier, each a film of 1/2 mm; under the block barrier, then patch.
func TestLapsByHand(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck")
	films := filmsAt(a, a.Blocks[1].X)
	want := []film{
		{detail.Barrier, 0, 0.5, -0.875 * in, 900},
		{detail.Wrap, 0.5, 1, -4.25 * in, -2.25 * in},
		{detail.Barrier, 1, 1.5, -4.25 * in, -0.875 * in},
		{detail.Patch, 0, 0.5, -13.5 * in, -0.875 * in},
		{detail.Barrier, 0, 0.5, -1324, -13.5 * in},
		{detail.Patch, 0.5, 1, -16.875 * in, -13.5 * in},
	}
	if len(films) != len(want) {
		t.Fatalf("%d films: %+v", len(films), films)
	}
	for _, w := range want {
		if !slices.ContainsFunc(films, func(f film) bool {
			return f.role == w.role && math.Abs(f.y0-w.y0) < 1e-6 && math.Abs(f.y1-w.y1) < 1e-6 && math.Abs(f.z0-w.z0) < 0.1 && math.Abs(f.z1-w.z1) < 1e-6
		}) {
			t.Errorf("no %+v in %+v", w, films)
		}
	}
}

// Beside the block, as far as the patch is wide, it lies on the sheathing under the barrier above the foot and
// over the barrier below it: 16 in wide about B4, whose block is 8 3/4.
func TestPatchBesideTheBlock(t *testing.T) {
	const in = 25.4
	a := detailtest.Demo(t, "deck")
	b := a.Blocks[3]
	for _, x := range []float64{b.X - 7.9*in, b.X - 4.5*in, b.X + 4.5*in, b.X + 7.9*in} {
		films := filmsAt(a, x)
		above, _ := outermost(films, b.Box.Min.Z+1)
		below, _ := outermost(films, b.Box.Min.Z-1)
		if above.role != detail.Barrier || below.role != detail.Patch {
			t.Errorf("x %.1f: %s lies outside over the foot, %s under it", x, above.role, below.role)
		}
	}
	for _, x := range []float64{b.X - 8.1*in, b.X + 8.1*in} {
		if f := filmsAt(a, x); len(f) != 1 || f[0].role != detail.Barrier {
			t.Errorf("x %.1f: past the patch there is %+v", x, f)
		}
	}
}

// The cap is as deep as the block and its 2 in on the wall, 3 3/4 + 2, and as wide as the block and 2 in down
// either side, 8 3/4 + 4; a side piece as deep and 2 in out on the wall, 5 3/4, and as high as the block. The
// foot of the block stays bare.
func TestWrapByHand(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	for _, p := range a.Find(detail.Wrap) {
		want := map[string][2]float64{"M2": {5.75, 12.75}, "M3": {5.75, 9.25}}[p.Mark]
		if math.Abs(p.Size[1].Inches()-want[0]) > 1e-9 || math.Abs(p.Size[2].Inches()-want[1]) > 1e-9 {
			t.Errorf("%s is cut %.3f by %.3f in, want %v", p.ID, p.Size[1].Inches(), p.Size[2].Inches(), want)
		}
		box, b := p.Bounds(), a.Blocks[p.Block].Box
		if box.Min.Z < b.Min.Z-1e-6 {
			t.Errorf("%s hangs below the foot: %+v about %+v", p.ID, box, b)
		}
		if p.Mark == "M2" && (math.Abs(box.Min.X-(b.Min.X-2*detail.Film)) > 1e-6 || math.Abs(box.Max.X-(b.Max.X+2*detail.Film)) > 1e-6) {
			t.Errorf("%s does not lie over both side pieces: %+v about %+v", p.ID, box, b)
		}
	}
	if n := len(a.Find(detail.Patch)); n != 9 || a.Count(detail.Wrap) != 27 {
		t.Errorf("%d patches and %d wraps on nine blocks", n, a.Count(detail.Wrap))
	}
}
