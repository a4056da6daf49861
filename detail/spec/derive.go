package spec

import (
	"math"

	"standclear/detail/unit"
)

// Pick returns the size usual in the project's system of units, in millimetres.
func (s *Spec) Pick(ip, si float64) float64 {
	if s.Project.System == unit.SI {
		return si
	}
	return ip
}

// Depth returns the thickness of the block in millimetres: all plies and the pad.
func (b Blocks) Depth() float64 {
	d := b.Pad.Thickness.MM()
	for _, t := range b.Plies {
		d += t.MM()
	}
	return d
}

// flashingOut is how far the flashing goes out from behind the cladding to drip 3 mm past the face of the ledger, up
// to the next 1/8 in or 5 mm; 2 in or 55 mm at least.
func (s *Spec) flashingOut() unit.Length {
	out, beyond := s.Standoff()+s.Ledger.Thickness+3*unit.MM, false
	for _, l := range s.Wall.Layers {
		switch {
		case l.Role == "sheathing":
			beyond = true
		case beyond && (l.Role == "insulation" || l.Role == "cavity" || l.Role == "other" || l.Role == "cladding" && s.Water.Flashing.Lap == "outside"):
			out -= l.Thickness
		}
	}
	step, least := unit.Length(s.Pick(3.175, 5)), unit.Length(s.Pick(50.8, 55))
	return max(least, step*unit.Length(math.Ceil(float64(out/step)-1e-9)))
}

// Words returns the system of units that reasons and notes of checks are worded in. Limits go by Project.System.
func (s *Spec) Words() unit.System {
	if s.Wording != nil {
		return *s.Wording
	}
	return s.Project.System
}

// Sets returns the fastener sets in use: one through set, or the set to the rim and the set to the
// block.
func (f Fasteners) Sets() []*Set {
	if f.Through != nil {
		return []*Set{f.Through}
	}
	var out []*Set
	for _, s := range []*Set{f.ToRim, f.ToBlock} {
		if s != nil {
			out = append(out, s)
		}
	}
	return out
}

// Offsets returns the columns of the set from the block centre, left to right, in millimetres.
func (s *Set) Offsets() []float64 {
	n := max(1, s.Columns)
	out := make([]float64, n)
	for i := range out {
		out[i] = (float64(i) - float64(n-1)/2) * s.ColumnStep.MM()
	}
	return out
}
