package detail

import (
	"fmt"
	"slices"

	"standclear/detail/unit"
	"standclear/geom"
)

// FlashingPath returns the profile of F1 in the plane across x: up behind the layer that laps over
// it, out over the ledger with its fall, down past the face, a kick at the edge.
func (a *Assembly) FlashingPath() geom.Path {
	s, f := a.Spec, a.Frame
	w := s.Water.Flashing
	y0 := f.CavityOut
	switch w.Lap {
	case "wrb":
		y0 = 0
	case "outside":
		y0 = f.CladOut
	}
	y1 := y0 + w.Out.MM()
	if w.Lap == "wrb" {
		y1 = max(y1, f.LedgerFront+3)
	}
	const kick = 6 // drip edge stands off the face
	return geom.Polyline(
		geom.Vec{X: y0, Y: f.FlashAt(y0) + w.Up.MM()}, geom.Vec{X: y0, Y: f.FlashAt(y0)},
		geom.Vec{X: y1, Y: f.FlashAt(y1)}, geom.Vec{X: y1, Y: f.FlashAt(y1) - w.Drip.MM() + kick}, geom.Vec{X: y1 + kick, Y: f.FlashAt(y1) - w.Drip.MM()})
}

// FlashingPathAt returns the profile of F1 at x along the ledger: under a door the upstand ends at the sill of
// the opening.
func (a *Assembly) FlashingPathAt(x float64) geom.Path {
	p := a.FlashingPath()
	for _, d := range a.Spec.Doors {
		if x > d.From.MM() && x < d.To.MM() {
			p.V[0].Y = max(p.V[1].Y, min(p.V[0].Y, a.Frame.SubTop))
		}
	}
	return p
}

// Upstand is the least height of F1 behind the layer that laps over it, mm: as given, or up to the sill of a
// door over the ledger.
func (a *Assembly) Upstand() float64 {
	up := a.Spec.Water.Flashing.Up.MM()
	for _, d := range a.Spec.Doors {
		if lo, hi := max(0, d.From.MM()), min(a.Spec.Ledger.Length.MM(), d.To.MM()); hi > lo {
			p := a.FlashingPathAt((lo + hi) / 2)
			up = min(up, p.V[0].Y-p.V[1].Y)
		}
	}
	return up
}

// water builds the flashing over the ledger, the screen at the foot of the gap and the base flashing.
func (a *Assembly) water() {
	s, f := a.Spec, a.Frame
	l := s.Ledger.Length.MM()
	w := s.Water.Flashing
	if w.Up > 0 || w.Out > 0 {
		path := a.FlashingPath()
		a.add(Part{ID: "F1", Mark: "F1", Name: "LEDGER FLASHING", Role: Flashing, Material: w.Material, Grain: geom.X, Block: -1, Thin: true, Bends: []Bend{{geom.X, path}},
			Note: "laps under " + w.Lap + ", leg notched at the joists", Size: [3]unit.Length{w.Thickness, unit.Length(path.Length()), s.Ledger.Length}, Solids: a.flashingSolids(path, w.Thickness.MM(), l)})
	}
	if s.Water.Screen && f.Gap() > 0 {
		z := f.LedgerBottom
		up := s.Pick(25.4, 25)
		path := geom.Polyline(geom.Vec{X: f.InsulOut, Y: z + up}, geom.Vec{X: f.InsulOut, Y: z}, geom.Vec{X: f.LedgerBack, Y: z}, geom.Vec{X: f.LedgerBack, Y: z + up})
		bent := geom.Thicken(path, 0.5, 0)
		for i, sp := range a.Between() {
			a.add(Part{ID: fmt.Sprintf("SC/%d", i+1), Mark: "SC1", Name: "INSECT SCREEN", Role: Screen, Material: "stainless mesh", Grain: geom.X, Block: -1, Thin: true, Bends: []Bend{{geom.X, path}},
				Size: [3]unit.Length{0, unit.Length(path.Length()), unit.Length(sp[1] - sp[0])}, Solids: []geom.Solid{geom.Prism(bent, geom.X, sp[0], sp[1])}})
		}
	}
	a.base()
}

// flashingSolids are the upstand and the top, piece by piece between the sides of doors, the drip leg between
// the deck joists, which stand against the ledger and notch it, and the end dams: the ends of the top folded
// up just past the ledger.
func (a *Assembly) flashingSolids(path geom.Path, t, l float64) []geom.Solid {
	cuts := []float64{0}
	for _, d := range a.Spec.Doors {
		cuts = append(cuts, min(l, max(0, d.From.MM())), min(l, max(0, d.To.MM())))
	}
	cuts = append(cuts, l)
	slices.Sort(cuts)
	var out []geom.Solid
	for i, x := range slices.Compact(cuts)[1:] {
		from := slices.Compact(cuts)[i]
		p := a.FlashingPathAt((from + x) / 2)
		out = append(out, geom.Sheet(geom.Path{V: p.V[:3]}, t, 0, geom.X, from, x))
	}
	leg := geom.Thicken(geom.Path{V: path.V[2:]}, t, 0)
	x, half := 0.0, a.Spec.Deck.Joists.Width.MM()/2+3
	for _, j := range append(append([]float64(nil), a.DeckJoists...), l+half) {
		if j-half > x+1 {
			out = append(out, geom.Prism(leg, geom.X, x, min(j-half, l)))
		}
		x = max(x, j+half)
	}
	if up := a.Spec.Water.Flashing.EndDam.MM(); up > 0 {
		in, front := path.V[1].Vec, path.V[2].Vec
		dam := geom.Region{geom.Polygon(in, front, front.Add(geom.Vec{Y: up}), in.Add(geom.Vec{Y: up}))}
		out = append(out, geom.Prism(dam, geom.X, -t, 0), geom.Prism(dam, geom.X, l, l+t))
	}
	return out
}

// Between returns the stretches of the gap free of blocks, from end to end of the ledger.
func (a *Assembly) Between() [][2]float64 {
	var out [][2]float64
	x := 0.0
	for _, b := range a.Blocks {
		if b.Box.Min.X > x {
			out = append(out, [2]float64{x, b.Box.Min.X})
		}
		x = max(x, b.Box.Max.X)
	}
	if l := a.Spec.Ledger.Length.MM(); l > x {
		out = append(out, [2]float64{x, l})
	}
	return out
}

// base closes the foot of the cladding where it ends above the ground.
func (a *Assembly) base() {
	s, f := a.Spec, a.Frame
	if s.Foundation.Kind == "wall" || s.Foundation.Kind == "none" || f.CladOut <= 0 {
		return
	}
	z := f.Bottom
	up, beyond, drip := s.Pick(76.2, 75), s.Pick(9.525, 10), s.Pick(12.7, 12)
	path := geom.Polyline(geom.Vec{X: 0, Y: z + up}, geom.Vec{X: 0, Y: z}, geom.Vec{X: f.CladOut + beyond, Y: z - 3}, geom.Vec{X: f.CladOut + beyond, Y: z - 3 - drip})
	a.add(Part{ID: "F4", Mark: "F4", Name: "BASE FLASHING", Role: Base, Material: s.Water.Flashing.Material, Grain: geom.X, Block: -1, Thin: true, Existing: true, Bends: []Bend{{geom.X, path}},
		Size: [3]unit.Length{s.Water.Flashing.Thickness, unit.Length(path.Length()), unit.Length(f.Right - f.Left)}, Solids: []geom.Solid{geom.Sheet(path, 0.6, 0, geom.X, f.Left, f.Right)}})
}
