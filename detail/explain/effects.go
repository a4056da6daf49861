package explain

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Effect is what one number of the project does to one check.
type Effect struct {
	Key, Now   string
	Less, More Side
	Most       float64 // the greatest change of the ratio, or of the value over itself
	Power      float64 // of the number that the ratio goes with; NaN where that cannot be told
}

// Side is one direction: what was tried and what came out.
type Side struct {
	Value string // of the number
	To    float64
	Text  string // ratio or value, with a verdict that turned
}

// measure is what is compared of a step: its ratio, else its value.
func measure(s *check.Step) float64 {
	switch {
	case s == nil || s.Verdict == check.NotChecked:
		return math.NaN()
	case s.Limit != nil && s.Ratio < check.Beyond:
		return s.Ratio
	case s.Limit == nil && !s.Bare():
		return s.Value.V
	}
	return math.NaN()
}

// differs reports whether a step came out otherwise.
func differs(was, now *check.Step) bool {
	if now == nil || now.Verdict != was.Verdict {
		return true
	}
	a, b := measure(was), measure(now)
	return math.Abs(a-b) > 1e-6*math.Max(1e-3, math.Abs(a))
}

// Effects ranks what moves a check of the report, most first.
func (sw *Sweep) Effects(was *check.Step, sys unit.System) []Effect {
	var out []Effect
	v0 := measure(was)
	scale := 1.0
	if was.Limit == nil && v0 != 0 {
		scale = math.Abs(v0)
	}
	for _, r := range sw.rows {
		e := Effect{Key: r.near.Key, Now: r.near.Value, Power: math.NaN()}
		moved := false
		for _, d := range []struct {
			t *tried
			s *Side
		}{{&r.less, &e.Less}, {&r.more, &e.More}} {
			d.s.To = math.NaN()
			if d.t.report == nil {
				continue
			}
			now := d.t.report.Find(was.ID)
			d.s.Value, d.s.Text = d.t.typed.Value, "gone"
			if now == nil {
				moved, e.Most = true, max(e.Most, 1)
				continue
			}
			d.s.To = measure(now)
			d.s.Text = outcome(was, now, sys)
			if differs(was, now) {
				moved = true
				if m := math.Abs(d.s.To-v0) / scale; m > e.Most {
					e.Most = m
				} else if now.Verdict != was.Verdict {
					e.Most = max(e.Most, 1)
				}
			}
		}
		if !moved {
			continue
		}
		a, b, x := e.Less.To, e.More.To, r.more.typed.Number/r.less.typed.Number
		if a > 0 && b > 0 && x > 0 && x != 1 && (a-v0)*(b-v0) <= 0 { // none where it turns about
			e.Power = math.Log(b/a) / math.Log(x)
		}
		out = append(out, e)
	}
	slices.SortStableFunc(out, func(a, b Effect) int {
		switch {
		case a.Most > b.Most:
			return -1
		case a.Most < b.Most:
			return 1
		}
		return 0
	})
	return out
}

// outcome prints the ratio or value of a step, and its verdict where that turned.
func outcome(was, now *check.Step, sys unit.System) string {
	t := "-"
	switch {
	case now.Limit != nil:
		t = now.RatioText()
		if now.Ratio < check.Beyond {
			t = fmt.Sprintf("%.3f", now.Ratio)
		}
	case !now.Bare():
		t = now.Value.Text(sys)
	}
	if now.Verdict != was.Verdict {
		t += " " + now.Verdict.String()
	}
	return t
}

// writeMoves writes what moves the check most.
func (j *Job) writeMoves(p *printer, s *check.Step, sw *Sweep, top int) {
	p.f("\nWHAT MOVES IT MOST\n")
	if sw == nil {
		p.f("  not asked for\n")
		return
	}
	all := sw.Effects(s, j.sys())
	what := "ratio"
	if s.Limit == nil {
		what = "value"
	}
	if len(all) == 0 {
		p.f("  no number of the project, %.0f %% less or more, moves it (%d tried)\n", 100*share, len(sw.rows))
	} else {
		p.f("%s\n", wrap("  ", fmt.Sprintf("one number at a time, %.0f %% less and more (a count by one, a temperature by 1 K, a bolt to the next size), the design checked anew%s; %d of %d move it. Power n: the %s goes with the number to the n.", 100*share, either(sw.held, ", blocks held where they stand", ""), len(all), len(sw.rows), what)))
		t := tabwriter.NewWriter(writerOf{p}, 0, 0, 2, ' ', 0)
		fmt.Fprintf(t, "  NUMBER\tNOW\tLESS\t%[1]s\tMORE\t%[1]s\tPOWER\n", strings.ToUpper(what))
		for _, e := range all[:min(top, len(all))] {
			power := "-"
			if !math.IsNaN(e.Power) {
				power = fmt.Sprintf("%+.2f", e.Power)
			}
			fmt.Fprintf(t, "  %s\t%s\t%s\t%s\t%s\t%s\t%s\n", e.Key, e.Now, dash(e.Less.Value), dash(e.Less.Text), dash(e.More.Value), dash(e.More.Text), power)
		}
		if err := t.Flush(); err != nil && p.err == nil {
			p.err = err
		}
	}
	if s.Group == check.Heat || s.Group == check.Moisture {
		j.writeWays(p)
	}
}

// writeWays lists what other ways to hang the deck would give.
func (j *Job) writeWays(p *printer) {
	p.f("%s\n", wrap("  ", "what changes the wall or the blocks needs a heat solve of its own: standclear compare --variant"))
	if j.Heat == nil {
		return
	}
	for _, w := range j.Heat.Ways {
		p.f("  %-42s %s, lowest factor f %.3f\n", strings.ToLower(w.Name), unit.Conductance(w.Run.V).Q().Text(j.sys()), w.Low.V)
	}
}

func dash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// writerOf lets a tabwriter write through a printer.
type writerOf struct{ p *printer }

func (w writerOf) Write(b []byte) (int, error) {
	w.p.f("%s", b)
	return len(b), w.p.err
}
