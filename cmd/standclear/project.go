package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/check/strength"
	"standclear/detail/check/thermal"
	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// source says which project a command works on.
type source struct {
	demo string
	sets []string
	heat warmth
}

// flags declares what names and changes a project, and how its heat is found.
func (s *source) flags(f *pflag.FlagSet) {
	s.plainFlags(f)
	s.heat.flags(f)
}

// plainFlags declares what names and changes a project, for a command that finds no heat.
func (s *source) plainFlags(f *pflag.FlagSet) {
	f.StringVar(&s.demo, "demo", "", "use an embedded `DEMO`: "+strings.Join(demo.Names(), ", "))
	holds(f, "demo", demo.Names()...)
	f.StringArrayVar(&s.sets, "set", nil, "change one parameter, as `KEY=VALUE` with the keys of the project file (may be repeated)")
	holds(f, "set")
}

// job is a project read, built and checked.
type job struct {
	spec     *spec.Spec
	assembly *detail.Assembly
	report   check.Report
	best     design.Best // of single changes, where something fails
	results  strength.Results
	heat     *thermal.Result // nil when it was not found
	why      string          // it was not
	again    design.Reread
	said     *check.Report // worded for the terminal in another system of units, nil for the project's
	sys      *unit.System  // that system
}

// load reads the project, builds it and checks it; everything wrong with the input is printed.
func (s *source) load(e env, args []string) (*job, int) {
	name, src, err := s.read(e, args)
	if err != nil {
		fmt.Fprintf(e.err, "standclear: %v\n", err)
		return nil, exitInput
	}
	return s.build(e, name, src)
}

// build is load for what was read.
func (s *source) build(e env, name string, src []byte) (*job, int) {
	j, code := s.cold(e, name, src)
	if code != exitOK {
		return nil, code
	}
	done := e.busy("looking for the smallest change that mends what fails")
	j.mend(context.Background())
	done()
	heat, why, err := s.heat.find(e, j.assembly)
	if err != nil {
		fmt.Fprintln(e.err, "standclear: broken off; nothing was written")
		return nil, exitWrite
	}
	j.warm(heat, why)
	return j, exitOK
}

// open reads the project, builds it and checks everything but its heat.
func (s *source) open(e env, args []string) (*job, int) {
	name, src, err := s.read(e, args)
	if err != nil {
		fmt.Fprintf(e.err, "standclear: %v\n", err)
		return nil, exitInput
	}
	return s.cold(e, name, src)
}

// cold is open for what was read.
func (s *source) cold(e env, name string, src []byte) (*job, int) {
	j, problems, err := s.start(name, src)
	if !said(e, problems) {
		return nil, exitInput
	}
	for _, w := range j.spec.Warnings {
		fmt.Fprintln(e.err, w)
	}
	if err != nil {
		fmt.Fprintf(e.err, "standclear: %s: %v\n", name, err)
		return nil, exitInput
	}
	return j, exitOK
}

// start makes a job of a project file, its report without the heat. What is wrong with the file comes back as
// problems and no job; an error says why it cannot be built, and the job then holds the spec alone.
func (s *source) start(name string, src []byte) (*job, spec.Problems, error) {
	file := spec.Parse(name, src)
	sp, problems := file.Read(s.sets)
	if len(problems) > 0 {
		return nil, problems, nil
	}
	a, err := detail.Build(sp)
	if err != nil {
		return &job{spec: sp}, nil, err
	}
	j := &job{spec: sp, assembly: a, again: func(changes ...string) (*spec.Spec, bool) {
		again, problems := file.Read(slices.Concat(s.sets, changes))
		return again, len(problems) == 0
	}}
	j.report, j.results = design.Check(a)
	return j, nil, nil
}

// mend writes into every failing check the smallest change that mends it. It gives up when ctx ends.
func (j *job) mend(ctx context.Context) {
	j.best = design.Mend(j.assembly, &j.report, func(changes ...string) (*spec.Spec, bool) {
		if ctx.Err() != nil {
			return nil, false
		}
		return j.again(changes...)
	})
}

// warmed is a job beside it with the heat in its report, or with why that is not known.
func (j *job) warmed(h *thermal.Result, why string) *job {
	w := *j
	w.report.Steps = slices.Clone(j.report.Steps)
	w.report.Assumptions = slices.Clone(j.report.Assumptions)
	w.report.Cautions = slices.Clone(j.report.Cautions)
	w.warm(h, why)
	return &w
}

// warm puts the heat into the report, or why it is not known.
func (j *job) warm(h *thermal.Result, why string) {
	j.heat, j.why = h, why
	design.Heat(j.assembly, h, why, &j.report)
}

// in words the report for the terminal in another system of units; drawings and files keep the project's. Verdicts
// and values are the same.
func (j *job) in(sys *unit.System) error {
	if sys == nil || *sys == j.spec.Project.System {
		return nil
	}
	s := *j.spec
	s.Wording = sys
	a, err := detail.Build(&s)
	if err != nil {
		return err
	}
	r, _ := design.Check(a)
	design.Heat(a, j.heat, j.why, &r)
	for i := range r.Steps {
		if was := j.report.Find(r.Steps[i].ID); was != nil && was.Verdict == check.Fails {
			r.Steps[i].Fix = was.Fix // in the words of the project file
		}
	}
	j.said, j.sys = &r, sys
	return nil
}

// shown is the report as the terminal has it.
func (j *job) shown() *check.Report {
	if j.said != nil {
		return j.said
	}
	return &j.report
}

// words is the system of units the terminal has.
func (j *job) words() unit.System {
	if j.sys != nil {
		return *j.sys
	}
	return j.spec.Project.System
}

// header says whose report it is; units is the one system asked for, nil for both.
func (j *job) header(units *unit.System) check.Header {
	return check.Header{Project: j.title(), Parameters: j.spec.Hash(), Program: "standclear " + version, Defaults: j.defaults(), Units: units}
}

// said prints the problems of a file; true when there are none.
func said(e env, problems spec.Problems) bool {
	if len(problems) == 0 {
		return true
	}
	fmt.Fprintln(e.err, problems.Error())
	fmt.Fprintf(e.err, "standclear: %s; nothing was written\n", count(len(problems), "problem"))
	if slices.ContainsFunc(problems, func(p spec.Problem) bool { return p.Given == spec.NotSurveyed }) {
		fmt.Fprintln(e.err, "next: put a value for every SURVEY, in the file or by --set, then check again; what a value is, stands behind it in the file of standclear new")
	}
	return false
}

func (s *source) read(e env, args []string) (string, []byte, error) {
	switch {
	case len(args) > 1:
		return "", nil, fmt.Errorf("one project at a time, not %s", count(len(args), "file"))
	case len(args) == 1 && s.demo != "":
		return "", nil, fmt.Errorf("give a project file or --demo, not both")
	case len(args) == 1:
		name, b, err := e.file(args[0])
		if err != nil {
			err = fmt.Errorf("the project file cannot be read: %w", err)
		}
		return name, b, err
	}
	name := s.demo
	if name == "" {
		name = demo.Names()[0]
	}
	b, ok := demo.File(name)
	if !ok {
		return "", nil, fmt.Errorf("there is no demo %q; the demos are %s", name, strings.Join(demo.Names(), ", "))
	}
	return "demo " + name, b, nil
}

// code returns the exit code a report asks for.
func (j *job) code(strict bool) int {
	switch {
	case j.report.Count(check.Fails) > 0:
		return exitFails
	case strict && j.report.Count(check.Engineer)+j.report.Count(check.NotChecked) > 0:
		return exitFails
	}
	return exitOK
}

func count(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

func (j *job) defaults() []check.Assumption {
	var out []check.Assumption
	for _, d := range j.spec.Defaults {
		out = append(out, check.Assumption{Key: d.Key, Text: d.Value, Source: d.Why})
	}
	return out
}
