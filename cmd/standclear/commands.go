package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"
)

// command is one verb of the program.
type command struct {
	name, args, about string
	run               func(e env, args []string) int
}

// commands is the one table of commands. Each declares its flags and examples where it calls parse, before it does
// anything else; help, completion and manual come from there.
func commands() []command {
	return []command{
		{"draw", "[PROJECT.yaml]", "draw and check a project, write its set", draw},
		{"check", "[PROJECT.yaml]", "print the checks alone", checkProject},
		{"compare", "[PROJECT.yaml]", "set ways to hang the deck side by side", compareWays},
		{"explain", "[CHECK] [FILE]", "say what a check rests on and what moves it", explainCheck},
		{"sweep", "[PROJECT.yaml]", "check it over values of its parameters", sweepProject},
		{"size", "[PROJECT.yaml]", "find the sizes that keep the checks and ask for least", sizeProject},
		{"preview", "PROJECT.yaml", "show a project on a local page that follows the file", previewProject},
		{"verify", "[PROJECT.yaml]", "hold what was measured on site against the design", verify},
		{"new", "", "write a commented starter project file", newProject},
		{"layers", "[NAME]", "print a map of the DXF layers, to change", printLayers},
		{"fastener", "", "print the design values of one fastener", fastener},
		{"heat", "CASE.yaml", "find the heat flow through an assembly of boxes", solveHeat},
		{"completion", "SHELL", "print the completion script of a shell", printCompletion},
		{"man", "", "print the manual page", printManual},
	}
}

// names lists the commands.
func names() []string {
	var out []string
	for _, c := range commands() {
		out = append(out, c.name)
	}
	return out
}

// declaration is what a command says of itself.
type declaration struct {
	command
	usage    string // "standclear draw [PROJECT.yaml] --out DIR"
	text     string // what it does
	examples []string
	flags    *pflag.FlagSet
}

// declared returns what every command says of itself, in the order of the table.
func declared() []declaration {
	var out []declaration
	for _, c := range commands() {
		d := &declaration{command: c}
		c.run(env{in: strings.NewReader(""), out: d, err: io.Discard}, nil)
		out = append(out, *d)
	}
	return out
}

// Write is there so that a declaration can stand where a command prints to: parse takes it for the wish to declare.
func (d *declaration) Write(p []byte) (int, error) { return len(p), nil }

// set fills in what the command declares: the first line of about is its usage, the rest says what it does.
func (d *declaration) set(f *pflag.FlagSet, about, example string) {
	d.flags = f
	d.usage, d.text, _ = strings.Cut(about, "\n")
	for _, l := range strings.Split(strings.TrimSpace(example), "\n") {
		d.examples = append(d.examples, strings.TrimSpace(l))
	}
}

// parse reads the flags of a command; ok is false when the command is already answered.
func parse(e env, f *pflag.FlagSet, about, example string, args []string) (code int, ok bool) {
	f.SetOutput(e.err)
	f.SortFlags = false
	f.Usage = func() {}
	if d, is := e.out.(*declaration); is {
		d.set(f, about, example)
		return exitOK, false
	}
	err := f.Parse(args)
	switch {
	case errors.Is(err, pflag.ErrHelp):
		return written(e, f.Name(), func(w io.Writer) error {
			flags := "      (none)\n"
			if f.HasFlags() {
				flags = f.FlagUsages()
			}
			_, err := fmt.Fprintf(w, "%s\n\nflags:\n%s\nexamples:\n%s", about, flags, example)
			return err
		}), false
	case err != nil:
		fmt.Fprintf(e.err, "standclear %s: %v (standclear %s --help lists the flags)\n", f.Name(), err, f.Name())
		return exitInput, false
	}
	return 0, true
}

// holds marks a flag for completion: the words it may have; none for a flag whose value is free and no file.
func holds(f *pflag.FlagSet, flag string, words ...string) {
	if err := f.SetAnnotation(flag, "words", words); err != nil {
		panic(err) // a flag that is not declared
	}
}

// words returns the words a flag may have; free is true when its value is neither one of them nor a file.
func words(f *pflag.Flag) (of []string, free bool) {
	of, marked := f.Annotations["words"]
	return of, marked && len(of) == 0
}

// written runs a printer of a result and says when it could not write.
func written(e env, command string, write func(w io.Writer) error) int {
	if err := inOne(e.out, write); err != nil {
		fmt.Fprintf(e.err, "standclear %s: could not write: %v\n", command, err)
		return exitWrite
	}
	return exitOK
}
