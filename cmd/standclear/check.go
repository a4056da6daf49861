package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/pflag"

	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

func checkProject(e env, args []string) int {
	f := pflag.NewFlagSet("check", pflag.ContinueOnError)
	var src source
	asJSON := f.Bool("json", false, "print the report as JSON, every quantity in both unit systems")
	strict := f.Bool("strict", false, "exit with 1 also when a check is left to the engineer or not checked")
	src.flags(f)
	if code, ok := parse(e, f, "standclear check [PROJECT.yaml]\nprints the checks of a project and writes nothing.", "  standclear check deck.yaml --set fasteners.through.diameter=3/4in\n", args); !ok {
		return code
	}
	j, code := src.load(e, f.Args())
	if code != exitOK {
		return code
	}
	var err error
	if *asJSON {
		err = j.report.WriteJSON(e.out, check.Header{Project: j.title(), Parameters: j.spec.Hash, Program: "standclear " + version, Defaults: j.defaults()})
	} else {
		err = j.table(e.out, false)
	}
	if err != nil {
		fmt.Fprintf(e.err, "standclear check: could not write: %v\n", err)
		return exitWrite
	}
	return j.code(*strict)
}

func newProject(e env, args []string) int {
	f := pflag.NewFlagSet("new", pflag.ContinueOnError)
	out := f.StringP("out", "o", "", "file to write; standard output when left out")
	units := f.String("units", "inch", "inch or metric")
	if code, ok := parse(e, f, "standclear new\nwrites a commented starter project file; what a survey must supply is marked SURVEY.", "  standclear new --units metric --out deck.yaml\n", args); !ok {
		return code
	}
	sys, ok := map[string]unit.System{"inch": unit.IP, "metric": unit.SI}[*units]
	if len(f.Args()) > 0 {
		fmt.Fprintf(e.err, "standclear new: %q is one argument too many; the file to write is named by --out\n", f.Args()[0])
		return exitInput
	}
	if !ok {
		fmt.Fprintf(e.err, "standclear new: --units: given %q; inch or metric is needed\n", *units)
		return exitInput
	}
	text := spec.Starter(sys)
	if *out == "" {
		if _, err := fmt.Fprint(e.out, text); err != nil {
			return exitWrite
		}
		return exitOK
	}
	err := writeFile(*out, []byte(text))
	switch {
	case errors.Is(err, fs.ErrExist):
		fmt.Fprintf(e.err, "standclear new: %s is already there and was left as it is; name another file\n", *out)
		return exitInput
	case err != nil:
		_ = os.Remove(*out)
		fmt.Fprintf(e.err, "standclear new: could not write: %v\n", err)
		return exitWrite
	}
	return exitOK
}
