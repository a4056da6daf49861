package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/pflag"

	"standclear/detail/spec"
	"standclear/detail/sweep"
	"standclear/detail/trial"
	"standclear/render/svg"
)

// sweepProject tries a project over values of some parameters.
func sweepProject(e env, args []string) int {
	f := pflag.NewFlagSet("sweep", pflag.ContinueOnError)
	var src source
	var o sweepOptions
	f.StringArrayVar(&o.vary, "vary", nil, "a parameter and its values, KEY=FROM..TO/STEP or KEY=VALUE,VALUE (up to three times)")
	f.BoolVar(&o.csv, "csv", false, "print CSV, lengths in mm")
	f.BoolVar(&o.json, "json", false, "print JSON, each design as soon as it is there")
	f.StringVar(&o.plot, "plot", "", "also write a drawing to this SVG `file`: one parameter as a curve, two as a map")
	f.BoolVar(&o.heat, "heat", false, "also find the heat: solved at five designs along the numbers with the most values, between them with its error; all solved where there are no numbers")
	f.BoolVar(&o.exact, "exact", false, "with --heat: solve every design")
	src.tries(f)
	f.BoolVar(&src.heat.fresh, "no-cache", false, "solve the heat flow anew, neither reading nor keeping results in the user's cache folder")
	if code, ok := parse(e, f, "standclear sweep [PROJECT.yaml] --vary KEY=VALUES ...\nchecks a project over values of its parameters, heat apart unless asked for, and writes nothing but the plot.\nExit code 1 says that in every design a check fails or could not be done. Broken off, it prints the designs so far and exits with 3.",
		"  standclear sweep deck.yaml --vary blocks.max_spacing=24in..96in/4in\n  standclear sweep deck.yaml --vary blocks.width=6in..9in/1in --vary fasteners.through.diameter=1/2in,5/8in,3/4in --plot map.svg\n", args); !ok {
		return code
	}
	base, sp, code := src.base(e, f)
	if code != exitOK {
		return code
	}
	axes, ok := o.axes(e, sp)
	if !ok {
		return exitInput
	}
	return o.run(e, &src, base, sp, axes)
}

// sweepOptions are the flags of sweep.
type sweepOptions struct {
	vary                   []string
	csv, json, heat, exact bool
	plot                   string
}

// axes reads --vary and holds the flags against each other; everything wrong is printed.
func (o *sweepOptions) axes(e env, sp *spec.Spec) ([]sweep.Axis, bool) {
	good := true
	bad := func(format string, a ...any) {
		fmt.Fprintf(e.err, "standclear sweep: "+format+"\n", a...)
		good = false
	}
	var axes []sweep.Axis
	for _, v := range o.vary {
		a, err := sweep.Parse(v, sp.Project.System)
		if err != nil {
			bad("--vary: %v", err)
		}
		axes = append(axes, a)
	}
	if good {
		if _, err := sweep.Designs(axes); err != nil {
			bad("--vary: %v", err)
		} else if len(axes) > sweep.MostAxes {
			bad("--vary: given %d parameters; 1 to %d can vary at once", len(axes), sweep.MostAxes)
		}
	}
	if o.csv && o.json {
		bad("--csv and --json: give one of the two")
	}
	if o.exact && !o.heat {
		bad("--exact: is for --heat")
	}
	if o.plot != "" && len(axes) > 2 {
		bad("--plot: given %d parameters; one or two can be drawn", len(axes))
	}
	return axes, good
}

// run tries the designs and prints them.
func (o *sweepOptions) run(e env, src *source, base trial.Base, sp *spec.Spec, axes []sweep.Axis) int {
	ctx, done := e.interruptible()
	defer done()
	n, _ := sweep.Designs(axes)
	opt := sweep.Options{Progress: meter(e.err, "designs tried")}
	var stream *sweep.JSON
	var err error
	if o.json {
		if stream, err = sweep.NewJSON(e.out, sp.Project.Name, axes); err != nil {
			return o.unwritten(e, err)
		}
		if !o.heat {
			opt.Emit = stream.Row
		}
	}
	rows, err := sweep.Run(ctx, base, axes, opt)
	wipe(opt.Progress, e.err)
	broken := errors.Is(err, context.Canceled)
	if err != nil && !broken {
		return o.unwritten(e, err)
	}
	if o.heat && !broken {
		tell := meter(e.err, "designs solved for heat")
		err = sweep.Warm(ctx, base, axes, rows, o.exact, src.heat.solver(), tell)
		wipe(tell, e.err)
		broken = err != nil
	}
	if err := o.print(e, stream, axes, rows, !broken, sp); err != nil {
		return o.unwritten(e, err)
	}
	line := sweep.Summary(rows, n)
	if broken && len(rows) == n {
		line = "BROKEN OFF while solving for heat: " + line
	}
	if o.csv || o.json {
		fmt.Fprintln(e.err, line)
	} else if _, err := fmt.Fprintf(e.out, "%s.\n%sA calculation aid: local code and a licensed engineer decide.\n", line, outside); err != nil {
		return o.unwritten(e, err)
	}
	if o.plot != "" && len(rows) > 0 {
		if err := writePlot(o.plot, sp.Project.Name, axes, rows); err != nil {
			return o.unwritten(e, err)
		}
	}
	if broken {
		return exitWrite
	}
	for i := range rows {
		if rows[i].Feasible() {
			return exitOK
		}
	}
	return exitFails
}

func (o *sweepOptions) unwritten(e env, err error) int {
	fmt.Fprintf(e.err, "standclear sweep: could not write: %v\n", err)
	return exitWrite
}

// outside says what the verdicts leave out.
const outside = "Heat and moisture are not in these verdicts: standclear check judges them for one design.\n"

// print writes the rows in the form asked for.
func (o *sweepOptions) print(e env, stream *sweep.JSON, axes []sweep.Axis, rows []sweep.Row, complete bool, sp *spec.Spec) error {
	switch {
	case o.json:
		if o.heat {
			for i := range rows {
				if err := stream.Row(&rows[i]); err != nil {
					return err
				}
			}
		}
		return stream.End(complete)
	case o.csv:
		return inOne(e.out, func(w io.Writer) error { return sweep.WriteCSV(w, axes, rows, o.heat) })
	}
	return inOne(e.out, func(w io.Writer) error { return sweep.WriteTable(w, axes, rows, o.heat, sp.Project.System) })
}

// writePlot draws the rows beside the file and renames the drawing into its place.
func writePlot(name, project string, axes []sweep.Axis, rows []sweep.Row) error {
	s, err := sweep.Plot(project, axes, rows)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := svg.Write(&b, s, svg.Options{}); err != nil {
		return err
	}
	return replaceFile(name, b.Bytes())
}
