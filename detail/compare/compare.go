// Package compare sets ways to hang the deck side by side: what holds, what heat is lost, what dries, what is
// built, cut and paid, and what must be reached from inside.
//
//	job := compare.Job{Base: trial.Base{Name: name, Src: src}, Heat: find}
//	drawn, err := job.Design("drawn", "AS DRAWN")
//	all := append([]*compare.Design{drawn}, job.Usual(drawn)...)
//	table := compare.TableOf(all)
package compare

import (
	"fmt"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/check/thermal"
	"standclear/detail/spec"
	"standclear/detail/trial"
	"standclear/detail/unit"
)

// Heater finds the heat of an assembly, or says why it was not found. An error ends the comparison.
type Heater func(a *detail.Assembly) (r *thermal.Result, why string, err error)

// Job makes designs from one project file.
type Job struct {
	Base trial.Base
	Heat Heater
}

// Design is one way to hang the deck. What the program cannot check of it has a reason in place of a value.
type Design struct {
	Key     string // stable: "drawn", "tight", "pad_13", "variant_1"
	Name    string
	Changes []string // KEY=VALUE to the project file
	File    string   // the project file, as given

	Trial  *trial.Trial // built and checked; nil when its structure cannot be
	Report check.Report // of the trial, with heat and moisture
	Why    string       // the structure is not checked, since

	Heat   *thermal.Result // nil when it is not known
	Way    *thermal.Way    // of that result, the way that is meant here
	NoHeat string          // the heat is not known, since

	Parts Parts
	Rates *spec.Rates
	sys   unit.System
	site  *spec.Spec // whose climate, rates and stock count

	gap, throat float64 // of a way that is not built, mm; negative: there is none to speak of
	air         string  // its path, in words
	costs       string  // in one sentence, what a way that is not built fails or costs
	noCost      string  // its cost is not known, since
}

// Design builds and checks the project with changes and finds its heat. The error is a spec.Problems when a value
// is wrong, what keeps the parts from being built, or what broke the heat off.
func (j Job) Design(key, name string, changes ...string) (*Design, error) {
	t, err := j.Base.Try(changes...)
	if err != nil {
		return nil, err
	}
	d := &Design{Key: key, Name: name, Changes: slices.Concat(j.Base.Sets, changes), File: j.Base.Name}
	if key != "drawn" {
		d.Changes = changes
	}
	d.take(t)
	h, why, err := j.Heat(t.Assembly)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrBroken, err)
	}
	d.Heat, d.NoHeat = h, why
	if h != nil {
		d.Way = h.Drawn()
	}
	design.Heat(t.Assembly, h, why, &d.Report)
	return d, nil
}

// In prints the design in that system of units, for a table of designs from files of both.
func (d *Design) In(sys unit.System) *Design {
	d.sys = sys
	return d
}

// ErrBroken says that the search for heat was broken off.
var ErrBroken = fmt.Errorf("broken off")

// take fills in what a trial tells.
func (d *Design) take(t *trial.Trial) {
	d.Trial, d.Report, d.Parts = t, t.Report, partsOf(t.Assembly)
	d.Report.Steps = slices.Clone(t.Report.Steps)
	d.site, d.sys, d.Rates = t.Spec, t.Spec.Project.System, t.Spec.Rates
}

// Says is one sentence on what the way fails or costs.
func (d *Design) Says(drawn *Design) string {
	var out []string
	if d.Trial != nil {
		out = append(out, d.verdict())
	} else if d.costs != "" {
		out = append(out, d.costs)
	}
	if t := d.heatAgainst(drawn); t != "" && d != drawn {
		out = append(out, t)
	}
	return strings.Join(out, "; ")
}

// verdict says what fails, or what stays open.
func (d *Design) verdict() string {
	var fails []string
	for _, s := range d.Report.Steps {
		if s.Verdict == check.Fails {
			t := s.Name
			if s.Limit != nil {
				t += " (ratio " + s.RatioText() + s.CapText() + ")"
			}
			fails = append(fails, t)
		}
	}
	if n := len(fails); n > 0 {
		t := "FAILS: " + strings.Join(fails[:min(n, 3)], ", ")
		if n > 3 {
			t += fmt.Sprintf(" and %d more", n-3)
		}
		return t
	}
	open := d.Report.Count(check.NotChecked)
	if e := d.Report.Count(check.Engineer); e+open > 0 {
		return fmt.Sprintf("no check fails, %d for the engineer, %d not checked", e, open)
	}
	return "no check fails"
}

// heatAgainst compares the extra heat with that of the drawn way.
func (d *Design) heatAgainst(drawn *Design) string {
	if d.Way == nil || drawn.Way == nil || drawn.Way.Run.V <= 0 {
		return ""
	}
	share := d.Way.Run.V/drawn.Way.Run.V - 1
	least := (max(d.Way.Run.Err, 0) + max(drawn.Way.Run.Err, 0)) / drawn.Way.Run.V
	than := "the drawn way"
	if drawn.Key != "drawn" {
		than = drawn.Name
	}
	var t string
	switch {
	case share == 0:
		return "as much heat as " + than
	case share > least:
		t = fmt.Sprintf("%.0f %% more heat than %s", 100*share, than)
	case share < -least:
		t = fmt.Sprintf("%.0f %% less heat than %s", -100*share, than)
	default:
		t = "as much heat as " + than + ", within the error of the grid"
	}
	if days := d.site.Site.DegreeDays; days != nil {
		t += fmt.Sprintf(" (%+.0f kWh a season)", d.Way.Season(float64(*days)).V-drawn.Way.Season(float64(*days)).V+0)
	}
	return t
}
