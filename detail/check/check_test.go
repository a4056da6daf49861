package check

import (
	"io"
	"math"
	"testing"

	"standclear/detail/unit"
)

func TestVerdictOfAStep(t *testing.T) {
	for _, c := range []struct {
		name         string
		value, limit float64
		sense        Sense
		cap          float64
		ratio        float64
		verdict      Verdict
	}{
		{"half of the limit", 5, 10, AtMost, 0, 0.5, OK},
		{"at the limit", 10, 10, AtMost, 0, 1, OK},
		{"over the limit", 11, 10, AtMost, 0, 1.1, Fails},
		{"over the cap only", 9.5, 10, AtMost, 0.9, 0.95, Fails},
		{"no capacity at all", 1, 0, AtMost, 0, Beyond, Fails},
		{"nothing asked, no capacity", 0, 0, AtMost, 0, 0, OK},
		{"twice what is needed", 10, 5, AtLeast, 0, 0.5, OK},
		{"half of what is needed", 5, 10, AtLeast, 0, 2, Fails},
		{"nothing there", 0, 10, AtLeast, 0, Beyond, Fails},
		{"less than nothing there", -2, 10, AtLeast, 0, Beyond, Fails},
		{"less than nothing against zero", -2, 0, AtLeast, 0, Beyond, Fails},
		{"zero against zero", 0, 0, AtLeast, 0, 0, OK},
		{"more than zero against zero", 3, 0, AtLeast, 0, 0, OK},
		{"a small negative against a larger", -2, -1, AtLeast, 0, Beyond, Fails},
	} {
		var r Report
		q := unit.Ratio(c.limit)
		r.Add(Step{ID: "x", Value: unit.Ratio(c.value), Limit: &q, Sense: c.sense, Cap: c.cap})
		if got := r.Steps[0]; got.Ratio != c.ratio || got.Verdict != c.verdict {
			t.Errorf("%s: ratio %g %v, want %g %v", c.name, got.Ratio, got.Verdict, c.ratio, c.verdict)
		}
	}
}

func TestStatedVerdictStays(t *testing.T) {
	var r Report
	q := unit.Ratio(1)
	r.Add(Step{ID: "a", Value: unit.Ratio(5), Limit: &q, Verdict: Engineer})
	r.Add(Step{ID: "b", Verdict: NotChecked})
	r.Add(Step{ID: "c"})
	if r.Steps[0].Verdict != Engineer || r.Steps[1].Verdict != NotChecked || r.Steps[2].Verdict != Info {
		t.Errorf("verdicts %v %v %v", r.Steps[0].Verdict, r.Steps[1].Verdict, r.Steps[2].Verdict)
	}
	if r.Worst() != Engineer || r.Count(NotChecked) != 1 || r.Find("b") == nil || r.Find("z") != nil {
		t.Error("worst, count or find is wrong")
	}
}

// What holds has no reason and no fix; what does not keeps both. A value that misses by rounding holds.
func TestReasonsOnlyWhereItFails(t *testing.T) {
	said := Step{ID: "x", Reason: "why", Fix: "how"}
	for _, c := range []struct {
		name string
		step Step
		good bool
	}{
		{"reaches", said.NotUnder(unit.Length(10).Q(), unit.Length(10).Q()), true},
		{"reaches but for rounding", said.NotUnder(unit.Length(10-1e-9).Q(), unit.Length(10).Q()), true},
		{"reaches nothing but for rounding", said.NotUnder(unit.Length(-1e-13).Q(), unit.Length(0).Q()), true},
		{"stays at nothing but for rounding", said.NotOver(unit.Length(1e-13).Q(), unit.Length(0).Q()), true},
		{"falls short", said.NotUnder(unit.Length(9.9).Q(), unit.Length(10).Q()), false},
		{"stays within", said.NotOver(unit.Length(10).Q(), unit.Length(10).Q()), true},
		{"goes beyond", said.NotOver(unit.Length(10.1).Q(), unit.Length(10).Q()), false},
		{"is kept", said.Holds(true), true},
		{"is not kept", said.Holds(false), false},
	} {
		var r Report
		r.Add(c.step)
		s := r.Steps[0]
		if (s.Verdict == OK) != c.good || (s.Verdict == Fails) == c.good || (s.Reason == "") != c.good || (s.Fix == "") != c.good {
			t.Errorf("%s: %v, %q, %q", c.name, s.Verdict, s.Reason, s.Fix)
		}
	}
}

// A number that is none is never within its limit, and the report can still be written.
func TestNoNumberIsNotChecked(t *testing.T) {
	for _, v := range []float64{math.Inf(1), math.Inf(-1), math.NaN()} {
		for _, s := range []Step{
			{Value: unit.Ratio(v), Limit: Limit(unit.Ratio(1)), Sense: AtLeast}, {Value: unit.Ratio(1), Limit: Limit(unit.Ratio(v))},
			{Value: unit.Ratio(v)}, {Value: unit.Ratio(1), With: []Arg{{"x", unit.Ratio(v)}}},
		} {
			var r Report
			r.Add(s)
			if got := r.Steps[0]; got.Verdict != NotChecked || got.Reason != NoNumber {
				t.Errorf("%v: %v, %q", v, got.Verdict, got.Reason)
			}
			if err := r.WriteJSON(io.Discard, Header{}); err != nil {
				t.Error(err)
			}
		}
	}
}

// What was not checked and has no value prints none, formula or not; a value of nothing that was worked out is one.
func TestBare(t *testing.T) {
	limit := unit.Quantity{V: 1}
	for name, c := range map[string]struct {
		step Step
		want bool
	}{
		"a fact":                          {Step{Verdict: OK}, true},
		"not checked":                     {Step{Verdict: NotChecked, Formula: "M/S"}, true},
		"not checked, its value known":    {Step{Verdict: NotChecked, Formula: "M/S", Value: unit.Quantity{V: 2}}, false},
		"worked out to nothing":           {Step{Verdict: OK, Formula: "M/S"}, false},
		"a limit, and not checked for it": {Step{Verdict: NotChecked, Limit: &limit}, false},
	} {
		if got := c.step.Bare(); got != c.want {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}
