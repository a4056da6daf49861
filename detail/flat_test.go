package detail_test

import (
	"math"
	"testing"

	"standclear/detail"
	"standclear/detail/detailtest"
	"standclear/geom"
)

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.01 {
		t.Errorf("%s is %.3f, want %.3f", what, got, want)
	}
}

// A channel 1 in up, 2 in across and, by 45 degrees, 1 in out and 1 in down, worked by hand: the legs are 1, 2 and
// the diagonal of 1 by 1, 1.41421 in; the first bend is square and toward the weather, the second half of that
// away from it, so that its legs stand at 180 - 45 = 135 degrees.
func TestUnfold(t *testing.T) {
	const in = 25.4
	p := detail.Part{Bends: []detail.Bend{{Axis: geom.X, Path: geom.Polyline(geom.Vec{Y: in}, geom.Vec{}, geom.Vec{X: 2 * in}, geom.Vec{X: 3 * in, Y: -in})}}}
	legs, folds := p.Unfold()
	if len(legs) != 3 || len(folds) != 2 {
		t.Fatalf("%d legs and %d bends", len(legs), len(folds))
	}
	for i, want := range []float64{1, 2, 1.41421} {
		near(t, "leg", legs[i]/in, want)
	}
	near(t, "first bend", folds[0].At/in, 1)
	near(t, "second bend", folds[1].At/in, 3)
	near(t, "angle of the first", folds[0].Included, 90)
	near(t, "angle of the second", folds[1].Included, 135)
	if !folds[0].Up || folds[1].Up {
		t.Errorf("bends up: %v, %v; want the first alone", folds[0].Up, folds[1].Up)
	}
}

// The blanks of the demos agree with the parts: the girth of F1 is its size in the schedule, its legs between the
// notches are its solids; area of the cap: bed and flaps, and the turn-up over the block alone.
func TestBlanksAgree(t *testing.T) {
	for _, name := range []string{"deck", "balcony", "deck-metric", "balcony-metric"} {
		a := detailtest.Demo(t, name)
		f1 := a.Find(detail.Flashing)[0]
		b := a.FlashingBlank(-1e4, 1e5)
		box := b.Outline.Bounds()
		near(t, name+": girth", box.H(), f1.Size[1].MM())
		dam := a.Spec.Water.Flashing.EndDam.MM()
		near(t, name+": length", box.W(), a.Spec.Ledger.Length.MM()+2*dam)
		legs, folds := f1.Unfold()
		want := (legs[0]+legs[1])*a.Spec.Ledger.Length.MM() + 2*dam*(legs[1]+dam)
		for _, r := range detail.FlashingLegs(f1) {
			want += (r[1] - r[0]) * (legs[2] + legs[3])
		}
		up := a.Spec.Water.Flashing.Up.MM()
		for _, d := range a.Spec.Doors { // cut down to the sill
			lo, hi := math.Max(0, d.From.MM()), math.Min(a.Spec.Ledger.Length.MM(), d.To.MM())
			want -= math.Max(0, hi-lo) * (up - a.Upstand())
		}
		if got := b.Outline.Area(); math.Abs(got-want) > 1 {
			t.Errorf("%s: F1 has %.1f mm2, its legs, dams and tabs %.1f", name, got, want)
		}
		if len(folds) != 3 || !folds[0].Up || folds[1].Up || !folds[2].Up {
			t.Errorf("%s: bends of F1 are %v", name, folds)
		}
		pieces := a.FlashingPieces()
		for i, p := range pieces {
			if p[1]-p[0] > a.MetalStick().MM()+0.01 {
				t.Errorf("%s: piece %d of F1 is %.0f mm long", name, i+1, p[1]-p[0])
			}
			if i > 0 {
				near(t, name+": lap", pieces[i-1][1]-p[0], a.MetalLap().MM())
			}
		}
		const sideFlap = 50.8 // 2 in, IRC R703.2
		w, turn := a.Spec.Blocks.Width.MM(), a.Spec.Water.WrapLap.MM()
		near(t, name+": cap", a.CapBlank(0).Outline.Area()/1000, ((w+2*sideFlap)*a.Frame.BlockOut+w*turn)/1000)
		near(t, name+": side piece", a.SideBlank(0).Outline.Bounds().W(), a.Frame.BlockOut+sideFlap)
	}
}
