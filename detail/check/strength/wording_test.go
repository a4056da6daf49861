package strength

import (
	"strings"
	"testing"

	"standclear/detail/check"
)

// several are models that between them add nearly every step.
func several() map[string]Model {
	loose, pad, sets, screws, eval, long := scenarioB(), scenarioB(), scenarioB(), scenarioB(), scenarioB(), scenarioB()
	loose.Blocks.PliesFastened = false
	padded(psip(40))(&pad)
	rim, ledger := *sets.Fasteners.Through, *sets.Fasteners.Through
	rim.Columns = lengths(-4, 4)
	sets.Fasteners = Fasteners{ToRim: &rim, ToBlock: &ledger}
	through(&screws, func(s *Set) { s.Kind, s.Length = Lag, 9*in })
	through(&eval, evaluated)
	long.Joists.Cantilever, long.Backing.Kind = 3*in, LooseBacking
	return map[string]Model{"a": scenarioA(), "b": scenarioB(), "loose plies": loose, "pad": pad, "two sets": sets, "lags": screws, "evaluated": eval, "loose backing": long}
}

// A formula is printed as "symbol = formula <= limit": it has a symbol and does not begin with it again.
func TestFormulasDoNotRepeatTheirSymbol(t *testing.T) {
	for name, m := range several() {
		r, _ := Run(m)
		for _, s := range r.Steps {
			if s.Formula == "" {
				continue
			}
			left, _, _ := strings.Cut(strings.ReplaceAll(s.Formula, ">=", "<="), "<=")
			if s.Symbol == "" || strings.TrimSpace(left) == "" || strings.TrimSpace(left) == s.Symbol || strings.HasPrefix(s.Formula, s.Symbol+" = ") {
				t.Errorf("%s: %s prints %q = %q", name, s.ID, s.Symbol, s.Formula)
			}
		}
	}
}

// A name does not say the mark that stands beside it.
func TestNamesDoNotRepeatTheirMark(t *testing.T) {
	for name, m := range several() {
		r, _ := Run(m)
		for _, s := range r.Steps {
			if s.Where != "" && strings.Contains(" "+s.Name+" ", " "+s.Where+" ") {
				t.Errorf("%s: %s is named %q at %q", name, s.ID, s.Name, s.Where)
			}
		}
	}
}

func TestNotesAreGrammar(t *testing.T) {
	for what, want := range map[string]string{"hinges": "govern", "turning": "governs", "crushing": "governs"} {
		if got := governs(what); got != want {
			t.Errorf("%s %s, want %s", what, got, want)
		}
	}
	for name, want := range map[string]string{"ply 2": "ply 2", "ply3": "ply 3", "inner": "the inner part of the block", "rim": "the rim", "block": "the block"} {
		if got := the(name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
	r, _ := Run(scenarioB())
	for id, want := range map[string]string{
		"ply_screws_1_penetration": "driven from ply 2 inward",
		"threads":                  "the main member (rim and backing)",
		"lever_arm":                "on the safe side",
		"washer_on_backing":        "",
	} {
		if s := r.Find(id); s == nil || !strings.Contains(s.Note, want) {
			t.Errorf("%s: %+v, want a note with %q", id, s, want)
		}
	}
	m := scenarioB()
	m.Backing = Backing{}
	if r, _ = Run(m); r.Find("washer_on_rim") == nil || r.Find("washer_on_backing") != nil {
		t.Error("no backing: the washers lie on the rim")
	}
}

// What nobody checks here is said, and what lifts a block says how far it was looked at.
func TestCautionsNameWhatIsNotChecked(t *testing.T) {
	m := scenarioB()
	m.Blocks.At = marks(20, 34, 52)
	r, _ := Run(m)
	if s := r.Find("uplift"); s.Verdict != check.OK || !strings.Contains(s.Note, "ties, backing and plate") {
		t.Errorf("uplift: %v, %q", s.Verdict, s.Note)
	}
	all := strings.Join(r.Cautions, "\n")
	for _, want := range []string{"Deck joists", "beam", "posts", "stairs", "guards", "wall above", "tight against the ends of the floor joists", "across their grain"} {
		if !strings.Contains(all, want) {
			t.Errorf("no caution of %s", want)
		}
	}
}

// A ledger joint that fails says where it belongs: B2 at 30 in is the only inner block of three.
func TestSpliceFix(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Model)
		want   string
	}{
		{"off the blocks", func(m *Model) { m.Ledger.Splices = lengths(20) }, `the joint over B2, at 2'-6"`},
		{"over an end block", func(m *Model) { m.Ledger.Splices = lengths(52) }, `the joint over B2, at 2'-6"`},
		{"beside the columns", func(m *Model) { m.Ledger.Splices = lengths(33) }, `the joint at the middle of B2, 2'-6"`},
		{"no inner block", func(m *Model) { m.Blocks.At = marks(8, 52); m.Ledger.Splices = lengths(30) }, "a ledger in one piece"},
	} {
		m := scenarioB()
		c.change(&m)
		r, _ := Run(m)
		if s := r.Find("splice_1"); s == nil || s.Verdict != check.Fails || !strings.HasPrefix(s.Fix, c.want) {
			t.Errorf("%s: %+v, want the fix %q", c.name, s, c.want)
		}
	}
	m := scenarioB()
	m.Ledger.Splices = lengths(30)
	if r, _ := Run(m); r.Find("splice_1").Fix != "" {
		t.Error("a joint that holds needs no fix")
	}
}
