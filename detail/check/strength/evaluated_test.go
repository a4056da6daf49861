package strength

import (
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// evaluated turns a set of scenario B into fasteners with stated values, with the washers of its bolts.
func evaluated(s *Set) {
	s.Kind, s.Lateral, s.Withdrawal, s.Report = Evaluated, 400*unit.Pound, 1600*unit.Pound, "test report as stated"
}

// Evaluated fasteners: 812.97/(4 x 400) = 0.508 in shear; 520.3/1600 = 0.325 of pull; together 0.833.
func TestEvaluated(t *testing.T) {
	m := scenarioB()
	through(&m, evaluated)
	r, _ := Run(m)
	wants(t, r, map[string]float64{"evaluated_shear@ratio": 0.5081, "linear_interaction_top_bolt": 0.8333})
	if s := r.Find("evaluated_shear"); s.Verdict != check.OK {
		t.Errorf("with a report: %v, want OK", s.Verdict)
	}
	through(&m, func(s *Set) { s.Report = "" })
	r, _ = Run(m)
	if s := r.Find("evaluated_shear"); s.Verdict != check.Engineer {
		t.Errorf("without a report: %v, want ENGINEER", s.Verdict)
	}
	through(&m, func(s *Set) { s.Lateral = 0 })
	r, _ = Run(m)
	if s := r.Find("evaluated_shear"); s.Verdict != check.NotChecked {
		t.Errorf("without a value: %v, want NOT CHECKED", s.Verdict)
	}
}

// Through everything: washer 0.25, ledger 1.5, block 3, sheathing 0.5, rim and carried blocking 3: 8.25 in. Into
// the rim from the block: all but the ledger, 6.75 in. Into the block: washer and ledger, 1.75 in.
func TestEvaluatedReach(t *testing.T) {
	for _, c := range []struct {
		id     string
		length float64
		want   check.Verdict
	}{
		{"", 8.25, check.OK}, {"", 8.2, check.Fails}, {"", 0, check.NotChecked},
		{"_to_rim", 6.75, check.OK}, {"_to_rim", 6.7, check.Fails},
		{"_to_block", 1.75, check.OK}, {"_to_block", 1.7, check.Fails},
	} {
		m := scenarioB()
		through(&m, func(s *Set) { evaluated(s); s.Length = unit.Length(c.length) * in })
		if c.id != "" {
			rim, block := *m.Fasteners.Through, *m.Fasteners.Through
			m.Fasteners = Fasteners{ToRim: &rim, ToBlock: &block}
		}
		r, _ := Run(m)
		s := r.Find("evaluated_length" + c.id)
		if s == nil || s.Verdict != c.want {
			t.Errorf("%g in: %+v, want %v", c.length, s, c.want)
		}
		if c.want == check.Fails && !strings.Contains(s.Fix, ".length") {
			t.Errorf("%g in: no fix", c.length)
		}
	}
}

// What holds of any fastener is checked of these too, and what is not is named.
func TestEvaluatedIsNotSilent(t *testing.T) {
	m := scenarioB()
	through(&m, evaluated)
	r, _ := Run(m)
	// T1 = 520.3 lb on 3 x 3 in less a hole of 11/16: 8.629 in2.
	wants(t, r, map[string]float64{"ledger_de_over_d": 0.6892, "rim_washer_bearing": 60.30, "ledger_washer_bearing": 60.30, "washer_clear": 3})
	for _, id := range []string{"scope_group", "washer_on_backing", "washer_bending"} {
		if s := r.Find(id); s == nil || s.Limit == nil {
			t.Errorf("%s is not checked", id)
		}
	}
	for _, id := range []string{"distances", "evaluated_factors", "evaluated_steel", "evaluated_block"} {
		if s := r.Find(id); s == nil || s.Verdict != check.NotChecked || s.Reason == "" {
			t.Errorf("%s: %+v, want NOT CHECKED with a reason", id, s)
		}
	}
	if r.Find("evaluated_head") != nil {
		t.Error("a washer holds the head")
	}
	through(&m, func(s *Set) { s.Washer = Washer{} })
	r, _ = Run(m)
	if s := r.Find("evaluated_head"); s == nil || s.Verdict != check.NotChecked {
		t.Errorf("no washer: %+v, want NOT CHECKED", s)
	}
	through(&m, func(s *Set) { s.Rows = lengths(-2.5, -7.6) })
	if r, _ = Run(m); r.Find("scope_group").Verdict != check.Engineer {
		t.Error("rows over 5 in apart: want ENGINEER")
	}
}
