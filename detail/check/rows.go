package check

import (
	"strings"

	"standclear/detail/unit"
)

// Row is one printed line of a step under its name. Head is "" for the formula, the numbers put in and
// the result, and ends in ": " for what is said about them.
type Row struct{ Head, Text string }

// Rows returns the lines of a step in the order an engineer follows: formula, numbers put in, result
// against its limit, clause, and what is said about it.
func (s *Step) Rows(sys unit.System) []Row {
	var out []Row
	add := func(head, text string) {
		if text != "" {
			out = append(out, Row{head, text})
		}
	}
	if s.Formula != "" {
		add("", orDash(s.Symbol)+" = "+s.Formula)
	}
	var in []string
	for _, a := range s.With {
		in = append(in, a.Symbol+" = "+a.Value.Text(sys))
	}
	add("", strings.Join(in, "; "))
	add("", s.result(sys))
	add("clause: ", s.Clause)
	add("why: ", s.Reason)
	add("smallest change: ", s.Fix)
	add("note: ", s.Note)
	return out
}

// result is the value against its limit, with the verdict.
func (s *Step) result(sys unit.System) string {
	var t []string
	if !s.Bare() {
		t = append(t, "= "+s.Value.Text(sys))
	}
	if s.Limit != nil {
		t = append(t, s.LimitText(sys)+" ratio "+s.RatioText()+s.CapText())
	}
	if s.Verdict != Info {
		t = append(t, s.Verdict.String())
	}
	return strings.Join(t, "  ")
}
