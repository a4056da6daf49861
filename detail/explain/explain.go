// Package explain says what one check rests on: its formula with the numbers put in, the clause, a sketch in
// characters, what moves it most, and the smallest change that mends it.
//
//	job := explain.Job{Base: base, Assembly: a, Report: &report, Results: results, Heat: heat}
//	sweep := job.Sweep(ctx, "ledger_fb", nil)
//	err := job.Write(os.Stdout, "ledger_fb", sweep, 8)
package explain

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/strength"
	"standclear/detail/check/thermal"
	"standclear/detail/trial"
	"standclear/detail/unit"
)

// Job is a design that was built and checked, with all that its checks can be explained from.
type Job struct {
	Base     trial.Base
	Assembly *detail.Assembly
	Report   *check.Report // with heat, moisture and the smallest changes
	Results  strength.Results
	Heat     *thermal.Result // nil when it is not known
	NoHeat   string          // since
}

func (j *Job) sys() unit.System { return j.Assembly.Spec.Project.System }

// IDs lists the checks of the design in the order of the report.
func (j *Job) IDs() []string {
	var out []string
	for _, s := range j.Report.Steps {
		out = append(out, s.ID)
	}
	return out
}

// WriteList writes every check by group: id, name, verdict.
func (j *Job) WriteList(w io.Writer) error {
	p := &printer{w: w}
	wide := 0
	for _, id := range j.IDs() {
		wide = max(wide, len(id))
	}
	for g := check.Loads; g <= check.Scope; g++ {
		head := strings.ToUpper(g.String()) + "\n"
		for _, s := range j.Report.Steps {
			if s.Group == g {
				p.f("%s  %-*s  %-11s  %s\n", head, wide, s.ID, s.Verdict, s.Name)
				head = ""
			}
		}
	}
	p.f("standclear explain CHECK says what one rests on.\n")
	return p.err
}

// Write explains one check, with at most top parameters that move it; sweep may be nil.
func (j *Job) Write(w io.Writer, id string, sweep *Sweep, top int) error {
	s := j.Report.Find(id)
	if s == nil {
		return fmt.Errorf("there is no check %q", id)
	}
	p := &printer{w: w}
	p.f("%s\n", wrap("", s.Name+" ["+s.ID+"]"))
	p.f("group: %s", s.Group)
	if s.Where != "" {
		p.f("; where: %s", s.Where)
	}
	p.f("\n\n")
	j.writeFormula(p, s)
	if title, lines := j.Sketch(s); len(lines) > 0 {
		p.f("\n%s\n", strings.ToUpper(title))
		for _, l := range lines {
			p.f("  %s\n", l)
		}
	}
	j.writeMoves(p, s, sweep, top)
	p.f("\nSMALLEST CHANGE THAT MENDS IT\n%s\n", wrap("  ", mends(s)))
	p.f("\nA calculation aid: local code and a licensed engineer decide.\n")
	return p.err
}

// writeFormula writes formula, numbers, result and clause.
func (j *Job) writeFormula(p *printer, s *check.Step) {
	sys := j.sys()
	put := PutIn(s, sys)
	for _, r := range s.Rows(sys) {
		if r.Head == "smallest change: " {
			continue // has a part of its own
		}
		p.f("%s\n", wrap("  "+r.Head, r.Text))
		if r.Head == "" && put != "" && strings.HasSuffix(r.Text, s.Formula) {
			p.f("%s\n", wrap("  put in: ", put))
			put = ""
		}
	}
	if s.Verdict == check.NotChecked {
		p.f("  It was not checked, and nothing here makes it so.\n")
	}
}

// mends is what the report offers, or what there is to spare.
func mends(s *check.Step) string {
	switch {
	case s.Verdict == check.Info:
		return "this is a value others rest on: it has no limit of its own"
	case s.Verdict == check.OK && s.Limit != nil:
		return fmt.Sprintf("none is needed: %.0f %% of what is allowed is used", 100*s.Used())
	case s.Verdict == check.OK:
		return "none is needed: it holds"
	case s.Fix != "":
		return s.Fix
	case s.Reason != "":
		return "none is known; what stands in the way: " + s.Reason
	}
	return "none is known"
}

// PutIn writes the formula of a step with its symbols replaced by the numbers put in; "" when there is nothing to
// replace.
func PutIn(s *check.Step, sys unit.System) string {
	args := slices.Clone(s.With)
	slices.SortStableFunc(args, func(a, b check.Arg) int { return len(b.Symbol) - len(a.Symbol) })
	var b strings.Builder
	any := false
	rest := s.Formula
	for len(rest) > 0 {
		before := s.Formula[:len(s.Formula)-len(rest)]
		i := slices.IndexFunc(args, func(a check.Arg) bool { return startsWith(rest, a.Symbol, before) })
		if i < 0 {
			b.WriteByte(rest[0])
			rest = rest[1:]
			continue
		}
		any = true
		t := args[i].Value.Text(sys)
		if strings.Trim(t, "0123456789.") != "" {
			t = "(" + t + ")"
		}
		b.WriteString(t)
		rest = rest[len(args[i].Symbol):]
	}
	if !any {
		return ""
	}
	return b.String()
}

const (
	lower = "abcdefghijklmnopqrstuvwxyz "
	signs = "=+-*/(),<>^"
)

// startsWith reports whether a symbol stands whole at the head of rest, given what stands before it.
func startsWith(rest, symbol, before string) bool {
	if symbol == "" || !strings.HasPrefix(rest, symbol) {
		return false
	}
	letter := func(c byte) bool {
		return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '\'' || c == '_'
	}
	if n := len(before); n > 0 && (letter(before[n-1]) && letter(symbol[0])) {
		return false
	}
	after := rest[len(symbol):]
	if len(symbol) > 3 && strings.Trim(symbol, lower) == "" { // words of a sentence, unless signs stand about it
		head, tail := strings.TrimRight(before, " "), strings.TrimLeft(after, " ")
		if !strings.ContainsAny(head[max(0, len(head)-1):], signs) && !strings.ContainsAny(tail[:min(1, len(tail))], signs) {
			return false
		}
	}
	if after == "" {
		return true
	}
	next := after[0]
	return !letter(next) && (next < '0' || next > '9') && next != '('
}

// printer keeps the first write error.
type printer struct {
	w   io.Writer
	err error
}

func (p *printer) f(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format, args...)
	}
}

// wrap breaks text at spaces to lines of 96 characters, further lines under the head.
func wrap(head, text string) string {
	var b strings.Builder
	b.WriteString(head)
	at, pad := len(head), strings.Repeat(" ", min(len(head), 12))
	for i, word := range strings.Fields(text) {
		switch {
		case i > 0 && at+1+len(word) > 96:
			b.WriteString("\n" + pad)
			at = len(pad)
		case i > 0:
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at += len(word)
	}
	return b.String()
}
