package spec

import "standclear/detail/unit"

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
