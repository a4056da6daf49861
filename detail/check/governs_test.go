package check

import (
	"testing"

	"standclear/detail/unit"
)

// Of shear at 0.8, a fit that fails at 3 and bending that fails at 1.2, bending governs: strength that fails comes
// first; without it the fit, without that the shear. A count that is just reached governs nothing.
func TestGoverns(t *testing.T) {
	at := func(id string, g Group, ratio float64) Step {
		return Step{ID: id, Group: g, Value: unit.Ratio(ratio), Limit: Limit(unit.Ratio(1))}
	}
	count := at("ties", Floor, 1)
	count.Sense = AtLeast
	for _, c := range []struct {
		steps []Step
		want  string
	}{
		{[]Step{count, at("shear", Connection, 0.8), at("fit", Fit, 3), at("bending", Beam, 1.2)}, "bending"},
		{[]Step{count, at("shear", Connection, 0.8), at("fit", Fit, 3)}, "fit"},
		{[]Step{count, at("shear", Connection, 0.8), at("block", Block, 0.5)}, "shear"},
	} {
		var r Report
		for _, s := range c.steps {
			r.Add(s)
		}
		if g := r.Governs(); g == nil || g.ID != c.want {
			t.Errorf("%v governs, want %s", g, c.want)
		}
	}
	var none Report
	none.Add(count)
	if g := none.Governs(); g != nil {
		t.Errorf("%s governs", g.ID)
	}
}
