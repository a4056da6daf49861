package strength

import (
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Every assumption moved to the light side is named, and none that is moved to the careful one.
func TestLightAssumptions(t *testing.T) {
	for _, c := range []struct {
		name  string
		a     Assume
		names string // the keys, in the order of the project file; "" = OK
	}{
		{"defaults", Assume{}, ""},
		{"defaults spelt out", Assume{FootDepth: 0.25, Cap: 0.9, MaxGroup: 5 * in, SupportSlip: in / 16}, ""},
		{"careful", Assume{FootDepth: 0.2, Cap: 0.8, MaxGroup: 4 * in}, ""},
		{"metric defaults", Assume{MaxGroup: 127 * unit.MM}, ""},
		{"lever arm", Assume{LeverArm: Plain}, "assume.lever_arm"},
		{"shallow foot that lengthens the arm", Assume{LeverArm: Plain, FootDepth: 0.2}, "assume.lever_arm, assume.foot_depth"},
		{"deep foot", Assume{FootDepth: 0.3}, "assume.foot_depth"},
		{"reaction", Assume{Reaction: Plain}, "assume.reaction"},
		{"gross section", Assume{GrossSection: true}, "assume.net_section"},
		{"twist left out", Assume{NoTorsion: true}, "assume.torsion"},
		{"cap", Assume{Cap: 0.91}, "assume.cap"},
		{"wide group", Assume{MaxGroup: 6 * in}, "assume.max_group"},
		{"rows", Assume{Rows: ByStiffness}, "assume.rows_in_tension"},
		{"several", Assume{Reaction: Plain, Cap: 1}, "assume.reaction, assume.cap"},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := scenarioB()
			m.Assume = c.a
			r, _ := Run(m)
			s := r.Find("scope_assumptions")
			switch {
			case s == nil:
				t.Fatal("no step")
			case c.names == "" && s.Verdict != check.OK:
				t.Errorf("%v, %s; want OK", s.Verdict, s.Reason)
			case c.names != "" && (s.Verdict != check.Engineer || !strings.Contains(s.Reason, ": "+c.names+";")):
				t.Errorf("%v, %q; want ENGINEER for %s", s.Verdict, s.Reason, c.names)
			}
		})
	}
}

// Twist left out is no light reading where the joists hold the ledger, and what is said of it is true.
func TestTwistIsSaidAsItIs(t *testing.T) {
	for _, c := range []struct {
		left, held bool
		want       string
		verdict    check.Verdict
	}{
		{false, false, "the hangers twist the ledger", check.OK},
		{false, true, "the joists hold it top and bottom, as stated", check.OK},
		{true, true, "the joists hold it top and bottom, as stated", check.OK},
		{true, false, "though the joists are not stated to hold it", check.Engineer},
	} {
		m := scenarioB()
		m.Assume.NoTorsion, m.Joists.Restrained = c.left, c.held
		r, _ := Run(m)
		for _, a := range r.Assumptions {
			if a.Key == "assume.torsion" && !strings.Contains(a.Text, c.want) {
				t.Errorf("left out %v, held %v: %q, want %q", c.left, c.held, a.Text, c.want)
			}
		}
		if s := r.Find("scope_assumptions"); s.Verdict != c.verdict {
			t.Errorf("left out %v, held %v: %v, want %v", c.left, c.held, s.Verdict, c.verdict)
		}
	}
}

// What is printed as assumed is the reading that was taken, not the other one.
func TestAssumptionsSayTheReading(t *testing.T) {
	taken := func(a Assume) map[string]string {
		m := scenarioB()
		m.Assume = a
		r, _ := Run(m)
		out := map[string]string{}
		for _, s := range r.Assumptions {
			out[s.Key] = s.Text
		}
		return out
	}
	careful := taken(Assume{})
	plain := taken(Assume{LeverArm: Plain, Reaction: Plain, GrossSection: true, Rows: ByStiffness, PlyCouple: true, NoTorsion: true})
	for _, c := range []struct{ key, careful, plain string }{
		{"assume.lever_arm", "the lesser of", "top row to the centre of the foot bearing"},
		{"assume.reaction", "the greatest of", "on rigid supports"},
		{"assume.net_section", "are taken out", "are not taken out"},
		{"assume.rows_in_tension", "only bolt rows in the top third", "every bolt row"},
		{"assume.ply_couple", "counted as a gap", "trusted not to turn"},
	} {
		if !strings.Contains(careful[c.key], c.careful) || strings.Contains(plain[c.key], c.careful) || !strings.Contains(plain[c.key], c.plain) {
			t.Errorf("%s is printed as %q by default and %q when plain", c.key, careful[c.key], plain[c.key])
		}
	}
}
