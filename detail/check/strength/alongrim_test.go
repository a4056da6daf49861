package strength

import (
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// along is a model whose house joists run along its rim: pieces of backing 9 in long behind the blocks of scenario B,
// and no ties.
func along(m Model) Model {
	m.HouseJoists.Parallel, m.HouseJoists.At, m.Tie.At, m.Tie.Height = true, nil, nil, 0
	if m.Backing.Kind != NoBacking {
		m.Backing.Pieces = []Span{{3.5 * in, 12.5 * in}, {25.5 * in, 34.5 * in}, {47.5 * in, 56.5 * in}}
	}
	return m
}

// What joists hold is not OK where they run along the rim, and says why; what is measured on the pieces is as it is
// with joists onto the rim, for better and for worse.
func TestJoistsAlongTheRim(t *testing.T) {
	for _, c := range []struct {
		name       string
		change     func(*Model)
		id         string
		onto, rims string // verdicts, "" where there is no such step
		says       string // of the second, "joists run along the rim" where empty
	}{
		{"carried", nil, "rim_blocking", "OK", "ENGINEER", ""},
		{"carried", nil, "backing_fixing", "OK", "ENGINEER", ""},
		{"carried", nil, "backing_behind_bolts", "OK", "OK", "-"},
		{"carried", nil, "backing_bending", "OK", "NOT CHECKED", ""},
		{"carried", nil, "backing_ties", "OK", "", "-"},
		{"carried", nil, "tie_rating", "OK", "NOT CHECKED", ""},
		{"carried", nil, "floor_couple", "-", "", "-"},
		{"carried", nil, "rim_out_of_plane", "", "", "-"},
		{"carried", nil, "washer_on_backing", "OK", "OK", "-"},
		{"carried", nil, "end_backing", "OK", "OK", "-"},
		{"carried", nil, "scope_joist_direction", "OK", "ENGINEER", ""},
		{"weak fixing", func(m *Model) { m.Backing.Fixing = unit.Pound }, "backing_fixing", "FAILS", "FAILS", "must be at most"},
		{"no fixing", func(m *Model) { m.Backing.Fixing = 0 }, "backing_fixing", "NOT CHECKED", "NOT CHECKED", "not stated"},
		{"live load not stated", func(m *Model) { m.Loads.Live = nil }, "backing_fixing", "NOT CHECKED", "NOT CHECKED", "holds for the loads that are stated"},
		{"no tie", func(m *Model) { m.Tie.Kind = NoTie }, "tie_rating", "FAILS", "FAILS", "no way into the floor"},
		{"unlisted", func(m *Model) { m.Backing.Unlisted, m.Backing.Wood.Fb = "odd wood", 0 }, "backing_bending", "NOT CHECKED", "NOT CHECKED", ""},
		{"loose", func(m *Model) { m.Backing.Kind = LooseBacking }, "rim_blocking", "OK", "ENGINEER", ""},
		{"loose", func(m *Model) { m.Backing.Kind = LooseBacking }, "rim_out_of_plane", "OK", "NOT CHECKED", ""},
		{"loose", func(m *Model) { m.Backing.Kind = LooseBacking }, "backing_behind_bolts", "OK", "OK", "-"},
		{"loose", func(m *Model) { m.Backing.Kind = LooseBacking }, "backing_bending", "OK", "NOT CHECKED", ""},
		{"none", func(m *Model) { m.Backing = Backing{} }, "rim_blocking", "FAILS", "FAILS", "no blocking"},
		{"none", func(m *Model) { m.Backing = Backing{} }, "rim_out_of_plane", "OK", "NOT CHECKED", ""},
		{"none", func(m *Model) { m.Backing = Backing{} }, "tie_rating", "NOT CHECKED", "NOT CHECKED", "there is none"},
	} {
		m := scenarioB()
		if c.change != nil {
			c.change(&m)
		}
		r, _ := Run(m)
		if got := verdictAt(&r, c.id); got != c.onto {
			t.Errorf("%s, joists onto the rim: %s is %q, want %q", c.name, c.id, got, c.onto)
		}
		r, _ = Run(along(m))
		if got := verdictAt(&r, c.id); got != c.rims {
			t.Errorf("%s, joists along the rim: %s is %q, want %q", c.name, c.id, got, c.rims)
			continue
		}
		want := c.says
		if want == "" {
			want = "joists run along the rim"
		}
		if s := r.Find(c.id); want != "-" && !strings.Contains(s.Reason, want) {
			t.Errorf("%s, joists along the rim: %s says %q, want %q", c.name, c.id, s.Reason, want)
		}
	}
}

func verdictAt(r *check.Report, id string) string {
	if s := r.Find(id); s != nil {
		return s.Verdict.String()
	}
	return ""
}

// Backing behind the bolts is measured on the pieces: B3's bolts stand at 50.25 and 53.75 in, past a piece that ends at
// 53; without pieces nothing is known. The end of a piece at 31.75 + 1 in is under 2 D, 1.25 in.
func TestPiecesAlongTheRimAreMeasured(t *testing.T) {
	m := along(scenarioB())
	m.Backing.Pieces[2].To = 53 * in
	r, _ := Run(m)
	if s := r.Find("backing_behind_bolts"); s.Verdict != check.Fails || s.Where != "B3" {
		t.Errorf("%v at %s", s.Verdict, s.Where)
	}
	m = along(scenarioB())
	m.Backing.Pieces[1].To = 32.75 * in
	r, _ = Run(m)
	if s := r.Find("end_backing"); s.Verdict != check.Fails || s.Where != "B2" {
		t.Errorf("end of the backing: %v at %s", s.Verdict, s.Where)
	}
	m.Backing.Pieces = nil
	r, _ = Run(m)
	if s := r.Find("backing_behind_bolts"); s.Verdict != check.NotChecked {
		t.Errorf("without pieces: %v", s.Verdict)
	}
}

// The pull that an engineer's blocking must take is told: that of the tie's check with joists onto the rim before it is
// shared out, T of the top row.
func TestPullAlongTheRimIsTold(t *testing.T) {
	m := along(scenarioB())
	r, _ := Run(m)
	if tie, pull := r.Find("tie_rating"), r.Find("top_row_tension"); tie.Value != pull.Value || tie.Limit != nil {
		t.Errorf("%v of the tie's check, %v pulls", tie.Value, pull.Value)
	}
	m.Tie.Kind = NoTie
	r, _ = Run(m)
	if s := r.Find("tie_rating"); !strings.Contains(s.Fix, "engineer") {
		t.Errorf("ties are offered where no joist holds them: %q", s.Fix)
	}
}
