package detail

import (
	"fmt"
	"math"

	"standclear/detail/unit"
	"standclear/geom"
)

// tension builds the devices that hold the deck to the floor across the gap: a rod beside a deck
// joist near each end, through ledger, gap, wall and rim into the floor. No product.
func (a *Assembly) tension() {
	s, f := a.Spec, a.Frame
	t := s.Tie.Lateral
	if t.Count <= 0 {
		return
	}
	const dia, reach = 12.7, 300
	z := f.LedgerTop - s.Deck.Joists.Depth.MM()/2
	for i, x := range a.tensionX() {
		a.add(Part{ID: fmt.Sprintf("LT%d", i+1), Mark: "LT1", Name: "LATERAL TENSION DEVICE", Role: TensionRod, Material: "steel", Block: -1,
			Size:   [3]unit.Length{dia, dia, unit.Length(f.LedgerFront - f.RimIn + 2*reach)},
			Solids: []geom.Solid{geom.Cylinder(geom.Vec3{X: x, Y: f.RimIn - reach, Z: z}, geom.Y, dia/2, f.LedgerFront-f.RimIn+2*reach)}})
	}
}

// tensionX places the devices: shared out to both ends, each beside the deck joist nearest its
// distance from the end, on the side away from the nearest block.
func (a *Assembly) tensionX() []float64 {
	t, l := a.Spec.Tie.Lateral, a.Spec.Ledger.Length.MM()
	beside := a.Spec.Deck.Joists.Width.MM()/2 + 30
	var out []float64
	for i := range t.Count {
		k := float64(i / 2)
		want := t.FromEnd.MM() + k*400
		if i%2 == 1 {
			want = l - want
		}
		x := nearest(a.DeckJoists, want)
		left, right := x-beside, x+beside
		if math.Abs(left-nearest(a.Layout.X, left)) > math.Abs(right-nearest(a.Layout.X, right)) {
			x = left
		} else {
			x = right
		}
		out = append(out, min(max(x, beside), l-beside))
	}
	return out
}

func nearest(xs []float64, x float64) float64 {
	best := x
	d := math.Inf(1)
	for _, v := range xs {
		if math.Abs(v-x) < d {
			d, best = math.Abs(v-x), v
		}
	}
	return best
}

// obstacles puts what must be missed where it is: behind the rim, or on the wall outside.
func (a *Assembly) obstacles() {
	f := a.Frame
	for i, o := range a.Spec.Obstacles {
		name := o.Name
		if name == "" {
			name = o.Kind
		}
		y0, y1, z0, z1 := f.BackingIn-350, f.BackingIn-50, f.RimBottom+50, f.RimTop-75
		if !o.Inside {
			y0, y1, z0, z1 = f.InsulOut, f.CladOut+50, f.BlockBottom, f.BlockTop
		}
		a.add(Part{ID: fmt.Sprintf("OB%d", i+1), Mark: fmt.Sprintf("OB%d", i+1), Name: name, Role: Obstacle, Material: "obstacle", Block: -1, Existing: true,
			Solids: []geom.Solid{box(o.From.MM(), o.To.MM(), y0, y1, z0, z1)}})
	}
	for i, d := range a.Spec.Doors {
		a.add(Part{ID: fmt.Sprintf("TH%d", i+1), Mark: "EX13", Name: "DOOR THRESHOLD", Role: Threshold, Material: "softwood", Block: -1, Existing: true, Grain: geom.X,
			Size:   [3]unit.Length{d.Threshold, 0, d.To - d.From},
			Solids: []geom.Solid{box(d.From.MM(), d.To.MM(), f.StudIn, f.CladOut, f.SubTop, d.Threshold.MM())}})
	}
}
