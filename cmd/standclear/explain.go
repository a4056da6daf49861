package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"standclear/detail/explain"
	"standclear/detail/spec"
	"standclear/detail/trial"
)

const explainAbout = `standclear explain [CHECK] [PROJECT.yaml]
says what one check rests on: formula, numbers put in, clause, a sketch from the real numbers, which
numbers of the project move it most, and the smallest change that mends it.

CHECK is an id, as standclear explain PROJECT.yaml lists them all with their names: ledger_fb. Exit code 1
says that a check of the project fails, as for check.`

// explainCheck lists the checks of a project, or explains one.
func explainCheck(e env, args []string) int {
	f := pflag.NewFlagSet("explain", pflag.ContinueOnError)
	var src source
	top := f.Int("top", 10, "how many of the numbers that move the check are shown, 1 to 200")
	still := f.Bool("no-moves", false, "do not look for what moves the check")
	only := f.StringArray("move", nil, "move this number of the project alone, by its key (may be repeated)")
	src.flags(f)
	if code, ok := parse(e, f, explainAbout, "  standclear explain\n  standclear explain ledger_fb\n  standclear explain top_row_tension deck.yaml --set blocks.max_spacing=20in\n", args); !ok {
		return code
	}
	if *top < 1 || *top > 200 {
		fmt.Fprintf(e.err, "standclear explain: --top: given %d; 1 to 200 is allowed\n", *top)
		return exitInput
	}
	id, files := checkAndFile(f.Args())
	name, text, err := src.read(e, files)
	if err != nil {
		fmt.Fprintf(e.err, "standclear: %v\n", err)
		return exitInput
	}
	j, code := src.build(e, name, text)
	if code != exitOK {
		return code
	}
	x := explain.Job{Base: trial.Base{Name: name, Src: text, Sets: src.sets}.Parsed(), Assembly: j.assembly, Report: &j.report, Results: j.results, Heat: j.heat, NoHeat: j.why}
	write := x.WriteList
	if id != "" {
		if err := known(&x, id, *only); err != nil {
			fmt.Fprintf(e.err, "standclear explain: %v\n", err)
			return exitInput
		}
		sweep, broken := moves(e, &x, id, *still, *only)
		if broken {
			fmt.Fprintln(e.err, "standclear: broken off; nothing was written")
			return exitWrite
		}
		write = func(w io.Writer) error { return x.Write(w, id, sweep, *top) }
	}
	if code := written(e, "explain", write); code != exitOK {
		return code
	}
	return j.code(false)
}

// known says which name the project does not have, and the nearest that it has.
func known(x *explain.Job, id string, numbers []string) error {
	if ids := x.IDs(); !slices.Contains(ids, id) {
		return fmt.Errorf("there is no check %q in this project; the nearest are %s (standclear explain lists all %d)", id, strings.Join(spec.Nearest(id, ids, 3), ", "), len(ids))
	}
	all := x.Numbers()
	for _, n := range numbers {
		if !slices.Contains(all, n) {
			return fmt.Errorf("--move: %q is no number of this project; the nearest are %s", n, strings.Join(spec.Nearest(n, all, 3), ", "))
		}
	}
	return nil
}

// checkAndFile tells the id of a check from the name of a project: a lone argument that ends in .yaml or .yml, or is
// -, is a project.
func checkAndFile(args []string) (id string, files []string) {
	if len(args) == 0 {
		return "", nil
	}
	if a := args[0]; len(args) == 1 && (a == "-" || strings.HasSuffix(a, ".yaml") || strings.HasSuffix(a, ".yml")) {
		return "", args
	}
	return args[0], args[1:]
}

// moves finds what moves a check, unless that is not asked for.
func moves(e env, x *explain.Job, id string, still bool, only []string) (s *explain.Sweep, broken bool) {
	if still {
		return nil, false
	}
	ctx, done := e.interruptible()
	defer done()
	var tell func(step, of int)
	if line := progressOn(e.err); line != nil { // somebody looks
		start := time.Now()
		tell = func(step, of int) {
			if time.Since(start) > time.Second {
				fmt.Fprintf(e.err, "\rnumbers tried, %d of %d", step, of)
			}
		}
		defer clearProgress(line, e.err)
	}
	s = x.Sweep(ctx, id, tell, only...)
	return s, ctx.Err() != nil
}
