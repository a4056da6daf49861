package strength

import (
	"strings"
	"testing"

	"standclear/detail/check"
)

// The numbers of scenario B stand in scenario_b.txt. Here what speaks and what does not.
func TestFloorCouple(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Model)
		want   check.Verdict
		says   string
	}{
		{"ties at the rim's top", func(*Model) {}, check.Info, ""},
		{"ties as high as the arm", func(m *Model) { m.Tie.Height = -3 * in }, check.Info, ""},            // -7.6875 + 4.6875
		{"ties lower than that", func(m *Model) { m.Tie.Height = -3.5 * in }, check.Engineer, "1,165 lb"}, // 4877.8/4.1875
		{"ties under the foot", func(m *Model) { m.Tie.Height = -9 * in }, check.Engineer, "more than"},
		{"height not measured", func(m *Model) { m.Tie.Height = 0 }, check.NotChecked, "not measured"},
		{"no tie", func(m *Model) { m.Tie.Kind = NoTie }, check.NotChecked, "no floor tie"},
		{"no row pulls", lowRows, check.NotChecked, "no bolt row"},
	} {
		m := scenarioB()
		c.change(&m)
		r, _ := Run(m)
		if s := r.Find("floor_couple"); s == nil || s.Verdict != c.want || !strings.Contains(s.Reason, c.says) {
			t.Errorf("%s: %+v, want %v with %q", c.name, s, c.want, c.says)
		}
	}
	m := scenarioB()
	r, _ := Run(m)
	if s := r.Find("tie_rating"); !strings.Contains(s.Note, "all of T") {
		t.Errorf("the note of the tie's rating does not say what it is checked for: %q", s.Note)
	}
	m.HouseJoists.Parallel = true
	r, _ = Run(m)
	if r.Find("floor_couple") != nil || r.Find("scope_joist_direction").Verdict != check.Engineer {
		t.Error("joists along the rim: the couple has no such path, and an engineer must find one")
	}
}
