package check

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"standclear/detail/unit"
)

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

// WriteText writes the calculation as text in one system of units: group by group, each step with
// its formula, the numbers put in, its result, limit, clause and verdict. Of the header it names project,
// parameters and program.
func (r *Report) WriteText(w io.Writer, h Header, sys unit.System) error {
	p := &printer{w: w}
	p.f("%s\n%s\nParameters %s, %s\n\n", h.Project, strings.Repeat("=", len(h.Project)), h.Parameters, h.Program)
	for _, c := range r.Cautions {
		p.f("%s\n", wrap("! ", c, 96))
	}
	p.f("\nVerdicts: %d FAIL, %d ENGINEER, %d NOT CHECKED, %d OK.\n", r.Count(Fails), r.Count(Engineer), r.Count(NotChecked), r.Count(OK))
	for g := Loads; g <= Scope; g++ {
		r.group(p, g, sys)
	}
	p.f("\nASSUMPTIONS\n-----------\n")
	for _, a := range r.Assumptions {
		key := a.Key
		if key == "" {
			key = "fixed"
		}
		p.f("%s\n", wrap("- ", fmt.Sprintf("%s [%s; %s]", a.Text, key, a.Source), 96))
	}
	return p.err
}

func (r *Report) group(p *printer, g Group, sys unit.System) {
	first := true
	for _, s := range r.Steps {
		if s.Group != g {
			continue
		}
		if first {
			name := strings.ToUpper(g.String())
			p.f("\n%s\n%s\n", name, strings.Repeat("-", len(name)))
			first = false
		}
		s.text(p, sys)
	}
}

func (s *Step) text(p *printer, sys unit.System) {
	p.f("\n%s", s.Name)
	if s.Where != "" {
		p.f(" (%s)", s.Where)
	}
	p.f("  [%s]\n", s.ID)
	for _, r := range s.Rows(sys) {
		p.f("%s\n", wrap("    "+r.Head, r.Text, 96))
	}
}

// RatioText prints the ratio, to a third place where two would hide on which side of the cap it
// lies; a capacity of nothing has none.
func (s *Step) RatioText() string {
	if s.Ratio >= Beyond {
		return "none"
	}
	limit := s.Cap
	if limit == 0 {
		limit = 1
	}
	if text := fixed(s.Ratio, 2); math.Abs(s.Ratio-limit) < 1e-6 || text != fixed(limit, 2) {
		return text
	}
	return fixed(s.Ratio, 3)
}

// fixed prints a number to so many places.
func fixed(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }

// CapText prints the greatest ratio that is still good where that is not 1: " of 0.90".
func (s *Step) CapText() string {
	if s.Cap == 0 || s.Cap == 1 || s.Limit == nil {
		return ""
	}
	return " of " + fixed(s.Cap, 2)
}

func orDash(s string) string {
	if s == "" {
		return "value"
	}
	return s
}

// wrap breaks text at spaces and indents every further line to the head.
func wrap(head, text string, width int) string {
	var b strings.Builder
	b.WriteString(head)
	at := len(head)
	pad := strings.Repeat(" ", min(len(head), 20))
	for i, word := range strings.Fields(text) {
		if i > 0 && at+1+len(word) > width {
			b.WriteString("\n" + pad)
			at = len(pad)
		} else if i > 0 {
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at += len(word)
	}
	return b.String()
}
