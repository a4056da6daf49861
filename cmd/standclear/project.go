package main

import (
	"fmt"
	"io"
	"os"
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
)

// source says which project a command works on.
type source struct {
	demo string
	sets []string
	heat warmth
}

func (s *source) flags(f *pflag.FlagSet) {
	f.StringVar(&s.demo, "demo", "", "use an embedded demo: "+strings.Join(demo.Names(), ", "))
	f.StringArrayVar(&s.sets, "set", nil, "change one parameter, as KEY=VALUE with the keys of the project file (may be repeated)")
	s.heat.flags(f)
}

// job is a project read, built and checked.
type job struct {
	spec     *spec.Spec
	assembly *detail.Assembly
	report   check.Report
	results  strength.Results
	heat     *thermal.Result // nil when it was not found
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
	sp, problems := spec.Read(name, src, s.sets)
	if len(problems) > 0 {
		for _, p := range problems {
			fmt.Fprintln(e.err, p)
		}
		fmt.Fprintf(e.err, "standclear: %s; nothing was written\n", count(len(problems), "problem"))
		return nil, exitInput
	}
	for _, w := range sp.Warnings {
		fmt.Fprintln(e.err, w)
	}
	a, err := detail.Build(sp)
	if err != nil {
		fmt.Fprintf(e.err, "standclear: %s: %v\n", name, err)
		return nil, exitInput
	}
	j := &job{spec: sp, assembly: a}
	j.report, j.results = design.Check(a)
	design.Mend(a, &j.report, func(changes ...string) (*spec.Spec, bool) {
		again, problems := spec.Read(name, src, slices.Concat(s.sets, changes))
		return again, len(problems) == 0
	})
	var why string
	if j.heat, why, err = s.heat.find(e, a); err != nil {
		fmt.Fprintln(e.err, "standclear: broken off; nothing was written")
		return nil, exitWrite
	}
	design.Heat(a, j.heat, why, &j.report)
	return j, exitOK
}

func (s *source) read(e env, args []string) (string, []byte, error) {
	switch {
	case len(args) > 1:
		return "", nil, fmt.Errorf("one project at a time, not %s", count(len(args), "file"))
	case len(args) == 1 && s.demo != "":
		return "", nil, fmt.Errorf("give a project file or --demo, not both")
	case len(args) == 1 && args[0] == "-":
		b, err := io.ReadAll(io.LimitReader(e.in, 16<<20))
		return "standard input", b, err
	case len(args) == 1:
		b, err := os.ReadFile(args[0])
		if err != nil {
			err = fmt.Errorf("the project file cannot be read: %w", err)
		}
		return args[0], b, err
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
