package strength

import (
	"math"
	"math/rand/v2"
	"testing"

	"standclear/detail/unit"
)

func psis(v float64) unit.Pressure { return unit.Pressure(v) * unit.PSI }

// The figures of a stack of rim, sheathing, ply, pad, ply and ledger, worked apart from this code by
// linear program: 3/4 in bolt, rim 1.5 in at 2050 psi, plies and ledger 1.5 in at 2950 psi, 1/2 in
// sheathing and 1.5 in pad void, Fyb 45 ksi. With an inner ply that cannot turn 1125 lb, without it
// 877.5 lb; reference values 259 and 216 lb.
func TestStackByHand(t *testing.T) {
	d := Dowel{Kind: Bolt, Nominal: inches(0.75), Root: inches(0.75), Fyb: psis(45000)}
	stack := func(inner Hold) []Bed {
		return []Bed{
			{"rim", Main, inches(1.5), psis(2050), 90}, {"sheathing", Void, inches(0.5), 0, 0}, {"inner ply", inner, inches(1.5), psis(2950), 90},
			{"pad", Void, inches(1.5), 0, 0}, {"outer ply", Side, inches(1.5), psis(2950), 90}, {"ledger", Side, inches(1.5), psis(2950), 90},
		}
	}
	for _, c := range []struct {
		name string
		hold Hold
		p, z float64
	}{{"inner ply held", Loose, 1125, 259}, {"inner ply void", Void, 877.5, 216}} {
		got := d.Transfer(stack(c.hold))
		if math.Abs(got.P.Pounds()-c.p) > 0.005*c.p {
			t.Errorf("%s: P %.1f lb, want %.1f", c.name, got.P.Pounds(), c.p)
		}
		if math.Abs(got.Z.Pounds()-c.z) > 0.005*c.z {
			t.Errorf("%s: Z %.1f lb, want %.1f", c.name, got.Z.Pounds(), c.z)
		}
	}
}

// anyJoint is a two-member joint of bolts.
func anyJoint(r *rand.Rand) (Dowel, Member, Member, unit.Length) {
	d := []float64{0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1}[r.IntN(7)]
	dowel := Dowel{Kind: Bolt, Nominal: inches(d), Root: inches(d), Fyb: psis(30000 + 60000*r.Float64())}
	m := func() Member {
		angle := []float64{0, 90, 37}[r.IntN(3)]
		return Member{inches(0.5 + 5*r.Float64()), psis(1500 + 6000*r.Float64()), angle}
	}
	gap := inches(6 * r.Float64() * float64(r.IntN(2)))
	return dowel, m(), m(), gap
}

// With two layers the limit analysis is the yield equations, mode for mode, each with its reduction.
func TestTwoLayersAreTheYieldModes(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for range 5000 {
		d, side, main, gap := anyJoint(r)
		want := Least(d.Yield(side, main, gap)).Z.Pounds()
		got := d.Transfer([]Bed{{"main", Main, main.Bearing, main.Fe, main.Angle}, {"gap", Void, gap, 0, 0}, {"side", Side, side.Bearing, side.Fe, side.Angle}}).Z.Pounds()
		if math.Abs(got-want) > 1e-3*want {
			t.Fatalf("%+v %+v %+v gap %.2f in: %.3f lb, yield modes %.3f lb", d, side, main, gap.Inches(), got, want)
		}
	}
}

// More gap never helps, more bearing never hurts, a layer split in two is the same layer.
func TestTransferIsMonotone(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 17))
	for range 2000 {
		d, side, main, gap := anyJoint(r)
		beds := func(gap unit.Length, ls, lm, fe float64) []Bed {
			return []Bed{{"main", Main, main.Bearing * unit.Length(lm), main.Fe, main.Angle}, {"gap", Void, gap, 0, 0},
				{"side", Side, side.Bearing * unit.Length(ls), side.Fe * unit.Pressure(fe), side.Angle}}
		}
		base := d.Transfer(beds(gap, 1, 1, 1)).Z
		const e = 1 + 1e-9
		if z := d.Transfer(beds(gap+inches(0.3), 1, 1, 1)).Z; float64(z) > float64(base)*e {
			t.Fatalf("a wider gap helps: %v over %v", z, base)
		}
		for name, z := range map[string]unit.Force{
			"longer side": d.Transfer(beds(gap, 1.3, 1, 1)).Z, "longer main": d.Transfer(beds(gap, 1, 1.3, 1)).Z, "harder side": d.Transfer(beds(gap, 1, 1, 1.3)).Z,
		} {
			if float64(z)*e < float64(base) {
				t.Fatalf("%s hurts: %v under %v", name, z, base)
			}
		}
		b := beds(gap, 1, 1, 1)
		split := []Bed{b[0], b[0], b[1], b[2]}
		split[0].Length /= 3
		split[1].Length *= 2.0 / 3
		if z := d.Transfer(split).Z; math.Abs(float64(z-base)) > 1e-9*float64(base) {
			t.Fatalf("a split layer gives %v, the whole %v", z, base)
		}
	}
}

// A loose layer that may turn is a void; one that may not lies between the void and solid wood.
func TestLooseLayers(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 23))
	for range 1000 {
		d, side, main, gap := anyJoint(r)
		stack := func(h Hold) unit.Force {
			return d.Transfer([]Bed{{"main", Main, main.Bearing, main.Fe, 90}, {"gap", Void, gap, 0, 0}, {"ply", h, inches(1.5), psis(2900), 90}, {"side", Side, side.Bearing, side.Fe, 90}}).P
		}
		void, loose, solid := stack(Void), stack(Loose), stack(Side)
		if loose < void-1e-6 || solid < loose-1e-6 {
			t.Fatalf("void %v, loose %v, solid %v", void, loose, solid)
		}
	}
}

func TestTransferOfNothing(t *testing.T) {
	d := Dowel{Kind: Bolt, Nominal: inches(0.5), Root: inches(0.5), Fyb: psis(45000)}
	for name, beds := range map[string][]Bed{
		"no layer": nil, "no side": {{"main", Main, inches(1.5), psis(2000), 0}}, "no main": {{"side", Side, inches(1.5), psis(2000), 0}},
		"voids": {{"a", Void, inches(1), 0, 0}, {"b", Void, inches(1), 0, 0}},
	} {
		if got := d.Transfer(beds); got.Z != 0 || got.P != 0 {
			t.Errorf("%s carries %v", name, got.Z)
		}
	}
}

// Wood of no number bears nothing: there is no load to look for.
func TestNoNumberEnds(t *testing.T) {
	d := Dowel{Root: 0.5 * in, Fyb: 45000 * unit.PSI}
	for _, fe := range []float64{math.NaN(), 0, -1} {
		if got := d.Transfer([]Bed{{"main", Main, 1.5 * in, unit.Pressure(fe) * unit.PSI, 90}, {"side", Side, 1.5 * in, 5000 * unit.PSI, 90}}); got.Z != 0 || got.P != 0 {
			t.Errorf("main wood of %g psi: Z %v", fe, got.Z)
		}
	}
}
