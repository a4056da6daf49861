package strength

import (
	"math"
	"testing"

	"standclear/detail/unit"
)

// By hand from the percentages of NDS 2018 12.1.4.3 and 12.1.5.3: a 1/2 in lag in pine of 0.55, 0.30 to
// 0.375 in under a 1/2 in shank; a No. 10 screw, 0.190 over a root of 0.152 in, in the same: 0.16625 and 0.133.
func TestLeadHoles(t *testing.T) {
	for _, c := range []struct {
		kind               Kind
		d, g               float64
		shank, least, most float64
		ok                 bool
	}{
		{Lag, 0.5, 0.43, 0.5, 0.20, 0.35, true},
		{Lag, 0.5, 0.55, 0.5, 0.30, 0.375, true},
		{Lag, 0.5, 0.67, 0.5, 0.325, 0.425, true},
		{Screw, 0.190, 0.55, 0.16625, 0.133, 0.133, true},
		{Screw, 0.190, 0.67, 0.190, 0.152, 0.152, true},
		{Bolt, 0.5, 0.5, 0, 0, 0, false},
		{Lag, 0.45, 0.5, 0, 0, 0, false},
	} {
		shank, least, most, ok := LeadHoles(c.kind, unit.Length(c.d)*unit.Inch, c.g)
		for i, got := range []unit.Length{shank, least, most} {
			if want := []float64{c.shank, c.least, c.most}[i]; ok != c.ok || ok && math.Abs(got.Inches()-want) > 1e-9 {
				t.Errorf("%v of %g in, G %g: %v %g, want %v %g", c.kind, c.d, c.g, ok, got.Inches(), c.ok, want)
			}
		}
	}
}
