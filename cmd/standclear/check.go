package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"

	"github.com/spf13/pflag"

	"standclear/detail/spec"
)

func checkProject(e env, args []string) int {
	f := pflag.NewFlagSet("check", pflag.ContinueOnError)
	var src source
	var how printing
	how.flags(f)
	how.unitFlag(f)
	strict := f.Bool("strict", false, "exit with 1 also when a check is left to the engineer or not checked")
	src.flags(f)
	if code, ok := parse(e, f, "standclear check [PROJECT.yaml]\nprints the checks of a project and writes nothing.", "  standclear check deck.yaml --set fasteners.through.diameter=3/4in\n  standclear check deck.yaml --units si --no-heat\n  standclear check - --json <deck.yaml\n", args); !ok {
		return code
	}
	e, units, ok := how.read(e, "check")
	if !ok {
		return exitInput
	}
	j, code := src.load(e, f.Args())
	if code != exitOK {
		return code
	}
	if err := j.in(units); err != nil {
		fmt.Fprintf(e.err, "standclear check: %v\n", err)
		return exitInput
	}
	if code := written(e, "check", func(w io.Writer) error {
		if how.json {
			return j.shown().WriteJSON(w, j.header(units))
		}
		return j.table(w, false)
	}); code != exitOK {
		return code
	}
	return j.code(*strict)
}

func newProject(e env, args []string) int {
	f := pflag.NewFlagSet("new", pflag.ContinueOnError)
	out := f.StringP("out", "o", "", "`FILE` to write; standard output when left out")
	units := f.String("units", "inch", "`SYSTEM` of the project: inch or metric")
	holds(f, "units", "inch", "metric")
	if code, ok := parse(e, f, "standclear new\nwrites a commented starter project file of a deck. What must be measured, asked or looked up is marked SURVEY, with a\nsample beside it; the rest is a first design that holds with the samples, and defaults. For a balcony, change deck.kind.", "  standclear new >deck.yaml\n  standclear new --units metric --out deck.yaml\n", args); !ok {
		return code
	}
	sys, ok := systemOf(*units)
	if len(f.Args()) > 0 {
		fmt.Fprintf(e.err, "standclear new: %q is one argument too many; the file to write is named by --out\n", f.Args()[0])
		return exitInput
	}
	if !ok || sys == nil {
		fmt.Fprintf(e.err, "standclear new: --units: given %q; inch or metric is needed\n", *units)
		return exitInput
	}
	text := spec.Starter(*sys)
	if *out == "" {
		return written(e, "new", func(w io.Writer) error {
			_, err := io.WriteString(w, text)
			return err
		})
	}
	err := createFile(*out, []byte(text))
	switch {
	case errors.Is(err, fs.ErrExist):
		fmt.Fprintf(e.err, "standclear new: %s is already there and was left as it is; name another file\n", *out)
		return exitInput
	case err != nil:
		fmt.Fprintf(e.err, "standclear new: could not write: %v\n", err)
		return exitWrite
	}
	fmt.Fprintf(e.out, "%s is written; next: put a value for each of its %d SURVEY, then standclear check %s\n", *out, strings.Count(text, ": SURVEY"), *out)
	return exitOK
}
