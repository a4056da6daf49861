// Command standclear turns a project file about a deck or balcony ledger, held off an
// outside-insulated wall by short blocks, into checked and dimensioned drawings.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"

	"github.com/spf13/pflag"
)

// version is printed on every sheet and in every report.
const version = "0.1.0"

// Exit codes, the same for every command.
const (
	exitOK    = 0 // done; no check fails
	exitFails = 1 // done, but something fails or cannot be built (or, with --strict, is open)
	exitInput = 2 // bad input or usage; nothing written
	exitWrite = 3 // could not write
)

// command is one verb of the program.
type command struct {
	name, args, about string
	run               func(e env, args []string) int
}

// env is what a command may touch of the world.
type env struct {
	in       io.Reader
	out, err io.Writer
}

// interruptible returns a context that ends when the user breaks off.
func (e env) interruptible() (context.Context, context.CancelFunc) {
	return signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
}

func commands() []command {
	return []command{
		{"draw", "[PROJECT.yaml]", "draw and check a project, write its set", draw},
		{"check", "[PROJECT.yaml]", "print the checks alone", checkProject},
		{"sweep", "[PROJECT.yaml]", "check it over values of its parameters", sweepProject},
		{"size", "[PROJECT.yaml]", "find the sizes that keep the checks and ask for least", sizeProject},
		{"new", "", "write a commented starter project file", newProject},
		{"layers", "[NAME]", "print a map of the DXF layers, to change", printLayers},
		{"fastener", "", "print the design values of one fastener", fastener},
		{"heat", "CASE.yaml", "find the heat flow through an assembly of boxes", solveHeat},
	}
}

func main() {
	os.Exit(run(os.Args[1:], env{os.Stdin, os.Stdout, os.Stderr}))
}

func run(args []string, e env) (code int) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintf(e.err, "standclear: a fault of the program, not of your input: %v\nnothing was written; please report it with the project file\n", r)
			code = exitInput
		}
	}()
	if len(args) == 0 || args[0] == "-h" || args[0] == "--help" || args[0] == "help" {
		usage(e.out)
		return exitOK
	}
	if args[0] == "--version" {
		fmt.Fprintln(e.out, "standclear", version)
		return exitOK
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(e, args[1:])
		}
	}
	fmt.Fprintf(e.err, "standclear: there is no command %q; the commands are draw, check, sweep, size, new, layers, fastener, heat (standclear --help)\n", args[0])
	return exitInput
}

func usage(w io.Writer) {
	fmt.Fprint(w, `standclear draws and checks a deck or balcony ledger that stands off an
outside-insulated wall on short blocks.

usage: standclear COMMAND [PROJECT.yaml] [flags]

`)
	for _, c := range commands() {
		fmt.Fprintf(w, "  %-8s %-15s %s\n", c.name, c.args, c.about)
	}
	fmt.Fprint(w, `
standclear COMMAND --help lists the flags. Without a project the embedded demo is used.
Exit codes: 0 no check fails; 1 drawn, but something fails or cannot be built;
2 bad input or usage, nothing written; 3 could not write.

A calculation aid, not a permit drawing: local code and a licensed engineer decide.
`)
}

// parse reads the flags of a command; ok is false when the command is already answered.
func parse(e env, f *pflag.FlagSet, about, example string, args []string) (code int, ok bool) {
	f.SetOutput(e.err)
	f.SortFlags = false
	f.Usage = func() {}
	err := f.Parse(args)
	switch {
	case errors.Is(err, pflag.ErrHelp):
		fmt.Fprintf(e.out, "%s\n\nflags:\n%s\nexample:\n%s", about, f.FlagUsages(), example)
		return exitOK, false
	case err != nil:
		fmt.Fprintf(e.err, "standclear %s: %v (standclear %s --help lists the flags)\n", f.Name(), err, f.Name())
		return exitInput, false
	}
	return 0, true
}
