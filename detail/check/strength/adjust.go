package strength

import (
	"math"

	"standclear/detail/unit"
)

// Load duration factors, NDS 2018 table 2.3.2.
const (
	cdDead = 0.9
	cdLive = 1.0
	cdSnow = 1.15
)

// Wet service factors of sawn lumber in service above 19 %, NDS 2018 Supplement table 4A.
const (
	wetBending       = 0.85 // 1 when Fb CF <= 1,150 psi
	wetBendingExempt = 1150 // psi
	wetShear         = 0.97
	wetFcPerp        = 0.67
	wetE             = 0.9
)

// Incising factors, NDS 2018 table 4.3.8 (from memory, confirm). Fc-perp is not reduced.
const (
	incisedStrength = 0.80
	incisedE        = 0.95
)

// when returns v if the condition holds, else 1.
func when(yes bool, v float64) float64 {
	if yes {
		return v
	}
	return 1
}

// bending returns Fb' in psi without CD.
func (w Lumber) bending(wet bool) float64 {
	cf := w.sizeFactor()
	fb := w.Fb.PSI() * cf
	return fb * when(wet && fb > wetBendingExempt, wetBending) * when(w.Incised, incisedStrength)
}

func (w Lumber) sizeFactor() float64 {
	if w.CF == 0 {
		return 1
	}
	return w.CF
}

// shear returns Fv' in psi without CD.
func (w Lumber) shear(wet bool) float64 {
	return w.Fv.PSI() * when(wet, wetShear) * when(w.Incised, incisedStrength)
}

// elastic returns E' in psi.
func (w Lumber) elastic(wet bool) float64 {
	return w.E.PSI() * when(wet, wetE) * when(w.Incised, incisedE)
}

// across returns Fc-perp' in psi. It takes no CD.
func across(fcPerp unit.Pressure, wet bool) float64 { return fcPerp.PSI() * when(wet, wetFcPerp) }

// flatUse returns Cfu for a 2x member of the given depth in inches bent about its weak axis, NDS 2018
// Supplement table 4A.
func flatUse(depth float64) float64 {
	for _, s := range []struct{ upto, cfu float64 }{{3.2, 1.0}, {4.6, 1.1}, {5.1, 1.1}, {6.1, 1.15}, {8.1, 1.15}} {
		if depth < s.upto {
			return s.cfu
		}
	}
	return 1.2
}

// wetFastener returns CM of a dowel fastener in one member, NDS 2018 table 11.3.3. rows counts the rows
// along the grain: with two and more, wood fastened wet or in an unknown state may shrink between them when
// it dries, as wood outdoors does at times, and 0.4 is taken; that it never dries is not relied on.
func wetFastener(m Moisture, rows int, d unit.Length) float64 {
	wet := m.Service != Dry
	switch {
	case d.Inches() < quarter:
		return when(wet || m.Assembly != Dry, 0.7)
	case m.Assembly == Dry || rows < 2:
		return when(wet, 0.7)
	}
	return 0.4
}

// GroupAction returns Cg for n fasteners of diameter d in a row along the load, s apart, between
// members of axial stiffness em·am and es·as in pounds (modulus in psi times area in square inches).
// NDS 2018 11.3.6, wood to wood. It is 1 below 1/4 in.
func GroupAction(n int, s, d unit.Length, emAm, esAs float64) float64 {
	if n < 2 || d.Inches() < quarter {
		return 1
	}
	gamma := slipModulus(d.Inches())
	u := 1 + gamma*s.Inches()/2*(1/emAm+1/esAs)
	if u-1 < 1e-12 {
		return 1
	}
	m := 1 / (u + math.Sqrt(u*u-1))
	r := math.Min(emAm/esAs, esAs/emAm)
	mn := math.Pow(m, float64(n))
	return m * (1 - mn*mn) / (float64(n) * ((1+r*mn)*(1+m) - 1 + mn*mn)) * (1 + r) / (1 - m)
}

// slipModulus is the load per slip of one dowel of d inches between two wood members, lb/in.
// NDS 2018 11.3.6.
func slipModulus(d float64) float64 { return 180_000 * math.Pow(d, 1.5) }

// geometry returns C-delta for a distance: 1 from full on, in proportion below. A distance under the
// least allowed is the business of its own check.
func geometryFactor(provided, full float64) float64 {
	return math.Max(0.01, math.Min(1, provided/full))
}

// rowSpacing returns the least distance between rows of dowels that run along the load, across the
// grain, in inches: NDS 2018 table 12.5.1D, for a dowel of d inches bearing over l.
func rowSpacing(l, d float64) float64 {
	switch r := l / d; {
	case r <= 2:
		return 2.5 * d
	case r < 6:
		return (5*l + 10*d) / 8
	}
	return 5 * d
}
