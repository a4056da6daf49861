// Command standclear turns a project file about a deck or balcony ledger, held off an
// outside-insulated wall by short blocks, into checked and dimensioned drawings.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"
	"syscall"
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

// exitCodes says what each code means, for the usage and the manual.
var exitCodes = []struct {
	code  int
	means string
}{
	{exitOK, "done, no check fails"},
	{exitFails, "done, but something fails or cannot be built, or with --strict is open"},
	{exitInput, "bad input or usage, nothing written"},
	{exitWrite, "could not write, or broken off"},
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

// How much the program may grow, in percent of what it uses, before it tidies its memory up: designs are checked and
// sheets drawn a quarter faster with room, while heat takes hundreds of megabytes as it is.
const (
	roomy   = 400
	thrifty = 100
)

// thriftily goes easy on memory until the function it returns is called.
func thriftily() (done func()) {
	was := debug.SetGCPercent(thrifty)
	return func() { debug.SetGCPercent(was) }
}

func main() {
	debug.SetGCPercent(roomy)
	os.Exit(run(os.Args[1:], env{os.Stdin, os.Stdout, os.Stderr}))
}

func run(args []string, e env) (code int) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintf(e.err, "standclear: a fault of the program, not of your input: %v\nnothing was written; please report it with the project file\n", r)
			code = exitInput
		}
	}()
	if len(args) == 2 && args[0] == "help" {
		args = []string{args[1], "--help"}
	}
	if len(args) == 0 || args[0] == "-h" || args[0] == "--help" || args[0] == "help" {
		return written(e, "--help", usage)
	}
	if args[0] == "--version" {
		return written(e, "--version", func(w io.Writer) error {
			_, err := fmt.Fprintln(w, "standclear", version)
			return err
		})
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(e, args[1:])
		}
	}
	fmt.Fprintf(e.err, "standclear: there is no command %q; the commands are %s (standclear --help)\n", args[0], strings.Join(names(), ", "))
	return exitInput
}

func usage(w io.Writer) error {
	p := &printed{w: w}
	p.f("standclear draws and checks a deck or balcony ledger that stands off an\noutside-insulated wall on short blocks.\n\nusage: standclear COMMAND [PROJECT.yaml] [flags]\n\n")
	for _, c := range commands() {
		p.f("  %-10s %-15s %s\n", c.name, c.args, c.about)
	}
	p.f("\nstandclear COMMAND --help lists the flags, with examples. Without a project the embedded demo is used;\n- in place of a file is standard input.\n\nExit codes, the same for every command:\n")
	for _, x := range exitCodes {
		p.f("  %d  %s\n", x.code, x.means)
	}
	p.f("\nA calculation aid, not a permit drawing: local code and a licensed engineer decide.\n")
	return p.err
}

// printed keeps the first write error.
type printed struct {
	w   io.Writer
	err error
}

func (p *printed) f(format string, a ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format, a...)
	}
}
