package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"standclear/detail"
	"standclear/detail/check/thermal"
	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/sweep"
	"standclear/detail/trial"
)

// tries adds the flags that say which project many designs start from.
func (s *source) tries(f *pflag.FlagSet) {
	f.StringVar(&s.demo, "demo", "", "use an embedded demo: "+strings.Join(demo.Names(), ", "))
	f.StringArrayVar(&s.sets, "set", nil, "change one parameter before all else, as KEY=VALUE (may be repeated)")
}

// base reads the project the designs start from; it must read by itself. Everything wrong with it is printed.
func (s *source) base(e env, f *pflag.FlagSet) (trial.Base, *spec.Spec, int) {
	name, src, err := s.read(e, f.Args())
	if err != nil {
		fmt.Fprintf(e.err, "standclear %s: %v\n", f.Name(), err)
		return trial.Base{}, nil, exitInput
	}
	b := trial.Base{Name: name, Src: src, Sets: s.sets}.Parsed()
	sp, problems := b.Read()
	if len(problems) > 0 {
		for _, p := range problems {
			fmt.Fprintln(e.err, p)
		}
		fmt.Fprintf(e.err, "standclear %s: %s; nothing was written\n", f.Name(), count(len(problems), "problem"))
		return trial.Base{}, nil, exitInput
	}
	for _, w := range sp.Warnings {
		fmt.Fprintln(e.err, w)
	}
	return b, sp, exitOK
}

// solver finds the heat of a design without a word, with the results kept before.
func (h *warmth) solver() sweep.Solver {
	return func(ctx context.Context, a *detail.Assembly) (*thermal.Result, error) {
		r, _, err := h.solve(ctx, a, thermal.Options{})
		return r, err
	}
}
