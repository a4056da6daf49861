package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"
)

// printManual prints the manual page, made from the table of commands.
func printManual(e env, args []string) int {
	f := pflag.NewFlagSet("man", pflag.ContinueOnError)
	if code, ok := parse(e, f, "standclear man\nprints the manual page in roff, for man and groff.", "  standclear man | man -l -\n  standclear man >/usr/local/share/man/man1/standclear.1\n", args); !ok {
		return code
	}
	if f.NArg() > 0 {
		fmt.Fprintf(e.err, "standclear man: %q is one argument too many; the page has all commands\n", f.Arg(0))
		return exitInput
	}
	return written(e, "man", manual)
}

func manual(w io.Writer) error {
	p := &printed{w: w}
	p.f(".TH STANDCLEAR 1 \"\" \"standclear %s\" \"User Commands\"\n", roff(version))
	p.f(".SH NAME\nstandclear \\- checked drawings of a deck ledger that stands off an outside\\-insulated wall\n")
	p.f(".SH SYNOPSIS\n.B standclear\n.I COMMAND\n[\\fIPROJECT.yaml\\fR] [\\fIflags\\fR]\n")
	p.f(".SH DESCRIPTION\nstandclear turns a project file about a deck or balcony ledger, held off an outside\\-insulated wall by short blocks, into checked and dimensioned drawings, schedules and a calculation.\n.PP\nWithout a project the embedded demo is used; \\- in place of a file is standard input.\n.PP\n.B A falling deck kills. This is a calculation aid, not a permit drawing: local code and a licensed engineer decide.\n")
	p.f(".SH COMMANDS\n")
	all := declared()
	for i := range all {
		all[i].manual(p)
	}
	p.f(".SH EXIT STATUS\n")
	for _, x := range exitCodes {
		p.f(".TP\n.B %d\n%s\n", x.code, roff(x.means))
	}
	p.f(".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nWhen set, verdicts are not coloured. They are only on a terminal, never where TERM is dumb or not set, and every verdict is a word.\n.TP\n.B XDG_CACHE_HOME\nThe results of heat flow are kept below it, in standclear/heat.\n")
	return p.err
}

// manual writes the section of one command.
func (d *declaration) manual(p *printed) {
	p.f(".SS %s\n.B %s\n.PP\n", roff(d.name), roff(d.usage))
	for _, l := range strings.Split(strings.TrimSpace(d.text), "\n") {
		p.f("%s\n", roff(l))
	}
	d.each(func(f *pflag.Flag) {
		name := `\fB\-\-` + roff(f.Name) + `\fR`
		if f.Shorthand != "" {
			name = `\fB\-` + f.Shorthand + `\fR, ` + name
		}
		value, usage := pflag.UnquoteUsage(f)
		if takes(f) {
			name += ` \fI` + roff(value) + `\fR`
		}
		p.f(".TP\n%s\n%s", name, roff(usage))
		if takes(f) && f.DefValue != "" && f.DefValue != "[]" && f.DefValue != "0" {
			p.f(" (%s when left out)", roff(f.DefValue))
		}
		p.f("\n")
	})
	p.f(".PP\nExamples:\n.PP\n.RS 4\n.nf\n")
	for _, x := range d.examples {
		p.f("%s\n", roff(x))
	}
	p.f(".fi\n.RE\n")
}

// roff makes a text safe: no escape, no request at the head of a line, hyphens that can be typed again.
func roff(s string) string {
	s = strings.NewReplacer(`\`, `\e`, "-", `\-`, "~", `\(ti`, "^", `\(ha`, "`", `\(ga`, "'", `\(aq`).Replace(s)
	if strings.HasPrefix(s, ".") || strings.HasPrefix(s, `\(aq`) {
		s = `\&` + s
	}
	return s
}
