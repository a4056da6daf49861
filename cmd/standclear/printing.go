package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"github.com/spf13/pflag"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// printing says how a command prints its result.
type printing struct {
	quiet, json bool
	units       string
}

// flags declares --json and --quiet.
func (p *printing) flags(f *pflag.FlagSet) {
	f.BoolVar(&p.json, "json", false, "print JSON, every quantity in both unit systems")
	f.BoolVar(&p.quiet, "quiet", false, "print nothing but problems; the exit code tells")
}

// unitFlag declares --units.
func (p *printing) unitFlag(f *pflag.FlagSet) {
	f.StringVar(&p.units, "units", "", "print in one `SYSTEM` alone, si or ip, whatever the project is in; files keep the project's")
	holds(f, "units", "si", "ip")
}

// read checks the flags against each other and returns the env to print to, and the system asked for, nil for the
// project's own.
func (p *printing) read(e env, command string) (env, *unit.System, bool) {
	sys, ok := systemOf(p.units)
	switch {
	case p.quiet && p.json:
		fmt.Fprintf(e.err, "standclear %s: --quiet and --json ask for opposite things; give one of them\n", command)
		return e, nil, false
	case !ok:
		fmt.Fprintf(e.err, "standclear %s: --units: given %q; si or ip is needed\n", command, p.units)
		return e, nil, false
	}
	if p.quiet {
		e.out, e.err = io.Discard, struct{ io.Writer }{e.err}
	}
	return e, sys, true
}

// systemOf reads the name of a system of units; "" is none.
func systemOf(name string) (*unit.System, bool) {
	if name == "" {
		return nil, true
	}
	sys, ok := map[string]unit.System{"si": unit.SI, "metric": unit.SI, "ip": unit.IP, "inch": unit.IP}[strings.ToLower(name)]
	return &sys, ok
}

// terminal reports whether a person reads what is written to w as it comes.
func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	st, err := f.Stat()
	return err == nil && st.Mode()&os.ModeCharDevice != 0
}

// page is output on its way to be written in one go: a table printed word by word takes longer than its checks.
type page struct {
	*bufio.Writer
	coloured bool
}

// inOne lets print write to w in one go.
func inOne(w io.Writer, print func(w io.Writer) error) error {
	p := &page{bufio.NewWriterSize(w, 1<<14), coloured(w)}
	if err := print(p); err != nil {
		return err
	}
	return p.Flush()
}

// coloured reports whether verdicts are coloured: on a terminal that can, unless NO_COLOR is set. The words are there
// all the same.
func coloured(w io.Writer) bool {
	if p, ok := w.(*page); ok {
		return p.coloured
	}
	t := os.Getenv("TERM")
	return terminal(w) && os.Getenv("NO_COLOR") == "" && t != "" && t != "dumb"
}

// columns prints rows of cells, each column as wide as its longest text and two spaces apart; the last cell of a row
// has no width. The table of checks takes a fifth of the time a tabwriter takes.
func columns(w io.Writer, rows [][]string) error {
	var wide []int
	for _, r := range rows {
		for i, cell := range r[:len(r)-1] {
			if i == len(wide) {
				wide = append(wide, 0)
			}
			wide[i] = max(wide[i], utf8.RuneCountInString(cell)+2)
		}
	}
	var b []byte
	for _, r := range rows {
		last := len(r) - 1
		b = b[:0]
		for i, cell := range r[:last] {
			b = append(b, cell...)
			for n := utf8.RuneCountInString(cell); n < wide[i]; n++ {
				b = append(b, ' ')
			}
		}
		b = append(append(b, r[last]...), '\n')
		if _, err := w.Write(b); err != nil {
			return err
		}
	}
	return nil
}

// tint colours a verdict at the end of a line of w, by the worst word in it.
func tint(w io.Writer, verdict string) string { return tintIf(coloured(w), verdict) }

func tintIf(on bool, verdict string) string {
	if !on {
		return verdict
	}
	for _, c := range []struct{ word, code string }{
		{check.Fails.String(), "31"}, {check.Engineer.String(), "35"}, {check.NotChecked.String(), "33"}, {check.OK.String(), "32"},
	} {
		if strings.HasPrefix(verdict, c.word) {
			return "\x1b[" + c.code + "m" + verdict + "\x1b[0m"
		}
	}
	return verdict
}

// busy tells a person at a terminal what goes on when it takes more than a second, until done is called.
func (e env) busy(what string) (done func()) {
	if !terminal(e.err) {
		return func() {}
	}
	stop := make(chan struct{})
	var ended sync.WaitGroup
	ended.Add(1)
	go func() {
		defer ended.Done()
		select {
		case <-stop:
		case <-time.After(time.Second):
			fmt.Fprintf(e.err, "\r%-78.78s", what+" ...")
			<-stop
			fmt.Fprintf(e.err, "\r%78s\r", "")
		}
	}()
	return func() { close(stop); ended.Wait() }
}
