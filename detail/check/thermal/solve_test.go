package thermal

import (
	"context"
	"errors"
	"math"
	"reflect"
	"sync"
	"testing"

	"standclear/detail"
	"standclear/detail/demo"
	"standclear/detail/detailtest"
	"standclear/detail/spec"
)

// rough is an error that small grids meet.
const rough = 0.08

func solve(t testing.TB, a *detail.Assembly, opt Options) *Result {
	t.Helper()
	r, err := Solve(context.Background(), a, opt)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

var deckOnce = sync.OnceValues(func() (*Result, error) {
	src, _ := demo.File("deck")
	s, _ := spec.Read("deck", src, nil)
	a, err := detail.Build(s)
	if err != nil {
		return nil, err
	}
	return Solve(context.Background(), a, Options{Error: rough})
})

func deck(t *testing.T) *Result {
	t.Helper()
	r, err := deckOnce()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func nearly(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s %.6g, want %.6g within %.2g", what, got, want, tol)
	}
}

// The clear wall lies between the two bounds of ISO 6946:2017 6.7.2, worked by hand: half-inch gypsum 0.25,
// 139.7 mm cellulose 0.040 with 38.1 mm of softwood 0.13 every 609.6, 12.7 plywood 0.13, 2 x 30.16 wood fibre
// 0.043, 0.13 inside and 0.13 behind the ventilated cladding (m2 K/W, W/(m K)).
func TestClearWallWithinBounds(t *testing.T) {
	const share = 38.1 / 609.6
	rest := 0.13 + 0.0127/0.25 + 0.0127/0.13 + 2*0.0301625/0.043 + 0.13
	upper := 1 / (share/(rest+0.1397/0.13) + (1-share)/(rest+0.1397/0.040))
	lower := rest + 0.1397/(share*0.13+(1-share)*0.040)
	nearly(t, "upper bound of R", upper, 5.040, 0.001)
	nearly(t, "lower bound of R", lower, 4.873, 0.001)
	r := deck(t)
	if got := 1 / r.Wall.V; got > upper || got < lower {
		t.Errorf("R of the clear wall %.3f, want %.3f to %.3f", got, lower, upper)
	}
}

// Short doubled blocks every 5 to 6 ft cut the extra heat of a continuous ledger by a quarter at least (common
// practice, no source). With two half-inch bolts in each it is about three quarters.
func TestFarBlocksSaveAQuarter(t *testing.T) {
	a := detailtest.Demo(t, "deck", "blocks.max_spacing=70in", "blocks.end_max=28in", "fasteners.through.diameter=1/2in", "fasteners.through.hole=9/16in", "fasteners.through.columns=1",
		"floor.backing.kind=none", "obstacles=")
	if got := a.Blocks[1].X - a.Blocks[0].X; got < 60*25.4 || got > 72*25.4 {
		t.Fatalf("blocks %.0f mm apart", got)
	}
	r := solve(t, a, Options{Error: rough})
	saved := r.Saved(r.Drawn())
	if saved < 0.25 {
		t.Errorf("%.0f %% saved", 100*saved)
	}
	nearly(t, "saved", saved, 0.76, 0.08)
}

// What more conducts costs more: tight before spacers before blocks, wood before pads, steel before stainless.
// All temperatures lie between the room and the outside; fasteners are most of a block's heat.
func TestWaysInOrder(t *testing.T) {
	r := deck(t)
	last := math.Inf(1)
	for _, key := range []string{"tight", "spacers", "drawn", "pad_13", "pad_25", "pad_38", "freestanding"} {
		w := r.Way(key)
		if w == nil {
			t.Fatalf("no way %q", key)
		}
		if w.Run.V >= last {
			t.Errorf("%s adds %v, the way before %.4g", key, w.Run, last)
		}
		last = w.Run.V
	}
	if s := r.Way("stainless"); s.Run.V > 0.7*r.Drawn().Run.V || s.Low.V < r.Drawn().Low.V {
		t.Errorf("stainless %v, f %v", s.Run, s.Low)
	}
	if b := r.Bolts.V; b < 0.5*r.Drawn().Bay.V || b > 1.05*r.Drawn().Bay.V {
		t.Errorf("fasteners %v of %v", r.Bolts, r.Drawn().Bay)
	}
	for _, f := range []Field{r.AtBlock, r.Between} {
		for _, row := range f.F {
			for _, v := range row {
				if v != -1 && (v < 0 || v > 1) {
					t.Fatalf("temperature factor %g at x %.0f", v, f.X)
				}
			}
		}
	}
	if r.Balance > 1e-6 || r.Error > rough {
		t.Errorf("balance %g, error %g", r.Balance, r.Error)
	}
}

// Whole run, metre, area and season from the bay by hand: 9 blocks, 14 ft 8 in, 3830 K d.
func TestSumsOfTheRun(t *testing.T) {
	r := deck(t)
	w := r.Drawn()
	nearly(t, "run", w.Run.V, 9*w.Bay.V, 1e-12)
	nearly(t, "a metre", r.PerMetre(w).V, 9*w.Bay.V/4.4704, 1e-9)
	nearly(t, "area", r.Area(), 4.4704*2.44, 1e-9)
	nearly(t, "effective U", r.Effective(w).V, r.Wall.V+9*w.Bay.V/(4.4704*2.44), 1e-9)
	nearly(t, "season", w.Season(3830).V, w.Run.V*91.92, 1e-9) // 24 h of 3830 K d, in kWh
	tight := r.Way("tight")
	nearly(t, "tight run", tight.Run.V, tight.Bay.V*4470.4/(r.Bay[1]-r.Bay[0]), 1e-9)
	nearly(t, "saved", r.Saved(w), 1-w.Run.V/tight.Run.V, 1e-12)
}

// The result rests on neither the number of threads nor the run.
func TestThreadsChangeNothing(t *testing.T) {
	one := solve(t, detailtest.Demo(t, "deck"), Options{Error: rough, Threads: 1})
	if !reflect.DeepEqual(one, deck(t)) {
		t.Error("one thread gives another result")
	}
}

func TestBrokenOff(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	steps := 0
	_, err := Solve(ctx, detailtest.Demo(t, "deck"), Options{Error: rough, Progress: func(step, of int, what string) {
		if steps = step; step == 2 {
			cancel()
		}
		if of < 10 || what == "" {
			t.Errorf("step %d of %d: %q", step, of, what)
		}
	}})
	if !errors.Is(err, context.Canceled) || steps > 3 {
		t.Errorf("%v after %d steps", err, steps)
	}
}

// The key follows what is solved and printed, and nothing else.
func TestKey(t *testing.T) {
	key := func(sets ...string) string {
		k, err := Key(detailtest.Demo(t, "deck", sets...), Options{})
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	base := key()
	if len(base) != 64 || key("project.name=OTHER", "loads.dead=11psf", "site.inside_humidity=40%") != base {
		t.Error("the key changes with what no heat depends on")
	}
	for _, set := range []string{"blocks.plies.0=1 3/4in", "fasteners.through.coating=stainless", "wall.layers.4.material=xps", "wall.layers.4.thickness=1 1/4in", "floor.rim.thickness=1 1/8in"} {
		if key(set) == base {
			t.Errorf("%s does not change the key", set)
		}
	}
}
