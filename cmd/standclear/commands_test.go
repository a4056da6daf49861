package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/pflag"
)

// typed runs the program as typed, with what it printed.
func typed(in string, args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = run(args, env{strings.NewReader(in), &o, &e})
	return code, o.String(), e.String()
}

// full is a place that cannot be written to.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// Every command says how it is used, lists its flags and shows examples; help that cannot be written is code 3, an
// unknown flag 2.
func TestEveryCommandHelps(t *testing.T) {
	_, usage, _ := typed("", "--help")
	for _, c := range commands() {
		code, out, _ := typed("", c.name, "--help")
		for _, want := range []string{"standclear " + c.name, "\nflags:\n", "\nexamples:\n  standclear "} {
			if code != exitOK || !strings.Contains(out, want) {
				t.Errorf("%s --help: code %d, no %q in\n%s", c.name, code, want, out)
			}
		}
		if !strings.Contains(usage, "  "+c.name+" ") || !strings.Contains(usage, c.about) {
			t.Errorf("%s is not in the usage", c.name)
		}
		if _, same, _ := typed("", "help", c.name); same != out {
			t.Errorf("help %s is not %s --help", c.name, c.name)
		}
		if code, _, errs := typed("", c.name, "--no-such-flag"); code != exitInput || !strings.Contains(errs, "standclear "+c.name) {
			t.Errorf("%s --no-such-flag: code %d: %s", c.name, code, errs)
		}
		if code := run([]string{c.name, "--help"}, env{strings.NewReader(""), full{}, io.Discard}); code != exitWrite {
			t.Errorf("%s --help to a full disk: code %d", c.name, code)
		}
	}
}

// Every example of the help names its command and has flags the command knows, with values for those that take one.
func TestExamplesCanBeTyped(t *testing.T) {
	for _, d := range declared() {
		if len(d.examples) == 0 || !strings.HasPrefix(d.usage, "standclear "+d.name) || d.text == "" {
			t.Errorf("%s: usage %q, examples %q", d.name, d.usage, d.examples)
		}
		own := false
		for _, x := range d.examples {
			line, _, _ := strings.Cut(x, " | ")
			words := fields(line)
			if len(words) < 2 || words[0] != "standclear" {
				t.Errorf("%s: example %q", d.name, x)
				continue
			}
			own = own || words[1] == d.name
			for _, other := range declared() {
				if other.name != words[1] {
					continue
				}
				if err := other.flags.Parse(words[2:]); err != nil {
					t.Errorf("%s: example %q: %v", d.name, x, err)
				}
			}
		}
		if !own {
			t.Errorf("%s: no example of its own", d.name)
		}
	}
}

// fields splits a line at blanks outside double quotes and leaves out what is redirected.
func fields(line string) []string {
	var out []string
	quoted := false
	for _, w := range strings.FieldsFunc(line, func(r rune) bool {
		if r == '"' {
			quoted = !quoted
		}
		return r == ' ' && !quoted
	}) {
		if !strings.HasPrefix(w, ">") && !strings.HasPrefix(w, "<") {
			out = append(out, strings.Trim(w, `"`))
		}
	}
	return out
}

// The scripts name every command and every flag, and their shells read them where they are there.
func TestCompletionListsAll(t *testing.T) {
	for _, shell := range shellNames() {
		code, script, _ := typed("", "completion", shell)
		if code != exitOK {
			t.Fatalf("%s: code %d", shell, code)
		}
		for _, d := range declared() {
			want := []string{d.name}
			d.each(func(f *pflag.Flag) {
				want = append(want, map[bool]string{true: "-l " + f.Name, false: "--" + f.Name}[shell == "fish"])
			})
			for _, w := range want {
				if !strings.Contains(script, w) {
					t.Errorf("%s: no %q of %s", shell, w, d.name)
				}
			}
		}
		if bin, err := exec.LookPath(shell); err == nil {
			c := exec.Command(bin, "-n")
			c.Stdin = strings.NewReader(script)
			if shell == "fish" {
				name := filepath.Join(t.TempDir(), "s.fish")
				if err := os.WriteFile(name, []byte(script), 0o666); err != nil {
					t.Fatal(err)
				}
				c = exec.Command(bin, "-n", name)
			}
			if out, err := c.CombinedOutput(); err != nil || len(out) > 0 {
				t.Errorf("%s -n: %v\n%s", shell, err, out)
			}
		}
	}
}

// Bash offers what may stand there.
func TestBashOffers(t *testing.T) {
	bin, err := exec.LookPath("bash")
	if err != nil {
		t.Fatal("the tests of this program run where bash is: ", err)
	}
	_, script, _ := typed("", "completion", "bash")
	for _, c := range []struct{ line, want string }{
		{"standclear dr", "draw"},
		{"standclear ver", "verify"},
		{"standclear check --demo deck", "deck deck-metric"},
		{"standclear draw --only p", "pdf"},
		{"standclear draw --qu", "--quiet"},
		{"standclear verify --m", "--measured"},
		{"standclear completion z", "zsh"},
		{"standclear layers i", "iso13567"},
		{"standclear draw -o o", ""},
	} {
		w := strings.Fields(c.line)
		c2 := exec.Command(bin, "-c", script+"\nCOMP_WORDS=("+c.line+")\nCOMP_CWORD="+string(rune('0'+len(w)-1))+"\n_standclear\necho \"${COMPREPLY[*]}\"")
		out, err := c2.CombinedOutput()
		if got := strings.TrimSpace(string(out)); err != nil || got != c.want {
			t.Errorf("%s: %q, want %q (%v)", c.line, got, c.want, err)
		}
	}
}

// The manual has every command with every flag and example, every exit code, and no line roff would take for a request.
func TestManual(t *testing.T) {
	_, page, _ := typed("", "man")
	for _, want := range []string{".TH STANDCLEAR 1", ".SH NAME", ".SH SYNOPSIS", ".SH DESCRIPTION", ".SH COMMANDS", ".SH EXIT STATUS", ".SH ENVIRONMENT", "NO_COLOR"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q", want)
		}
	}
	for _, d := range declared() {
		want := []string{".SS " + roff(d.name), ".B " + roff(d.usage)}
		for _, x := range d.examples {
			want = append(want, roff(x))
		}
		d.each(func(f *pflag.Flag) { want = append(want, `\fB\-\-`+roff(f.Name)+`\fR`) })
		for _, w := range want {
			if !strings.Contains(page, w) {
				t.Errorf("%s: no %q", d.name, w)
			}
		}
	}
	known := map[string]bool{".TH": true, ".SH": true, ".SS": true, ".B": true, ".I": true, ".TP": true, ".PP": true, ".RS": true, ".RE": true, ".nf": true, ".fi": true}
	for i, l := range strings.Split(page, "\n") {
		if word, _, _ := strings.Cut(l, " "); (strings.HasPrefix(l, ".") || strings.HasPrefix(l, "'")) && !known[word] {
			t.Errorf("line %d: %q", i+1, l)
		}
	}
	if bin, err := exec.LookPath("groff"); err == nil {
		c := exec.Command(bin, "-ww", "-man", "-z")
		c.Stdin = strings.NewReader(page)
		if out, err := c.CombinedOutput(); err != nil || len(out) > 0 {
			t.Errorf("groff: %v\n%s", err, out)
		}
	}
}

// The exit codes, command by command.
func TestExitCodes(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		name = filepath.Join(dir, name)
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		return name
	}
	file, good, bad := write("file", ""), write("good.yaml", "rim: {thickness: 1 1/4in}"), write("bad.yaml", "counted: {nuts: 1}")
	failing := filepath.Join("..", "..", "testdata", "projects", "deck-as-listed.yaml")
	wall := filepath.Join("..", "..", "testdata", "heat", "iso10211-case2.yaml")
	out := func(n string) string { return filepath.Join(dir, n) }
	for _, c := range []struct {
		code int
		full bool
		args []string
	}{
		{exitOK, false, []string{"draw", "--no-heat", "--only", "svg", "--sheet", "G-001", "--out", out("a")}},
		{exitFails, false, []string{"draw", "--no-heat", "--only", "svg", "--sheet", "G-001", "--out", out("b"), failing}},
		{exitFails, false, []string{"draw", "--no-heat", "--strict", "--quiet", "--only", "svg", "--sheet", "G-001", "--out", out("c")}},
		{exitInput, false, []string{"draw", "--no-heat"}},
		{exitInput, false, []string{"draw", "--no-heat", "--out", out("d"), "--quiet", "--json"}},
		{exitInput, false, []string{"draw", "--no-heat", "--out", out("d"), "--units", "furlong"}},
		{exitWrite, false, []string{"draw", "--no-heat", "--only", "svg", "--sheet", "G-001", "--out", filepath.Join(file, "x")}},
		{exitWrite, true, []string{"draw", "--no-heat", "--only", "svg", "--sheet", "G-001", "--out", out("e")}},
		{exitOK, false, []string{"check", "--no-heat"}},
		{exitOK, true, []string{"check", "--no-heat", "--quiet"}},
		{exitFails, false, []string{"check", "--no-heat", "--strict"}},
		{exitFails, false, []string{"check", "--no-heat", "--quiet", failing}},
		{exitInput, false, []string{"check", "--demo", "castle"}},
		{exitWrite, true, []string{"check", "--no-heat"}},
		{exitWrite, true, []string{"check", "--no-heat", "--json"}},
		{exitOK, false, []string{"verify", "--measured", good}},
		{exitOK, false, []string{"verify", "--form"}},
		{exitFails, false, []string{"verify", "--measured", good, "--strict"}},
		{exitFails, false, []string{"verify", "--measured", bad}},
		{exitFails, true, []string{"verify", "--measured", bad, "--quiet"}},
		{exitInput, false, []string{"verify", "--measured", file}},
		{exitWrite, true, []string{"verify", "--measured", good}},
		{exitWrite, true, []string{"verify", "--form"}},
		{exitOK, false, []string{"new", "--out", out("n.yaml")}},
		{exitInput, false, []string{"new", "--out", file}},
		{exitWrite, false, []string{"new", "--out", filepath.Join(file, "n.yaml")}},
		{exitWrite, true, []string{"new"}},
		{exitOK, false, []string{"layers"}},
		{exitInput, false, []string{"layers", "a", "b"}},
		{exitWrite, true, []string{"layers"}},
		{exitOK, false, []string{"fastener", "--kind", "lag", "--diameter", "1/2in", "--withdrawal", "--gravity", "0.43", "--thread", "1.5in"}},
		{exitInput, false, []string{"fastener"}},
		{exitWrite, true, []string{"fastener", "--kind", "lag", "--diameter", "1/2in", "--withdrawal", "--gravity", "0.43", "--thread", "1.5in"}},
		{exitOK, false, []string{"heat", wall}},
		{exitFails, false, []string{"heat", wall, "--error", "0.01%", "--cells", "3000"}},
		{exitFails, true, []string{"heat", wall, "--error", "0.01%", "--cells", "3000", "--quiet"}},
		{exitInput, false, []string{"heat"}},
		{exitWrite, true, []string{"heat", wall}},
		{exitOK, false, []string{"completion", "fish"}},
		{exitInput, false, []string{"completion"}},
		{exitInput, false, []string{"completion", "csh"}},
		{exitWrite, true, []string{"completion", "bash"}},
		{exitOK, false, []string{"man"}},
		{exitInput, false, []string{"man", "draw"}},
		{exitWrite, true, []string{"man"}},
		{exitOK, false, []string{}},
		{exitOK, false, []string{"--version"}},
		{exitWrite, true, []string{"--help"}},
		{exitInput, false, []string{"paint"}},
	} {
		var o io.Writer = &bytes.Buffer{}
		if c.full {
			o = full{}
		}
		var errs bytes.Buffer
		code := run(c.args, env{strings.NewReader(""), o, &errs})
		if code != c.code {
			t.Errorf("%q: code %d, want %d: %s", c.args, code, c.code, &errs)
		}
		if (code == exitInput || code == exitWrite) && errs.Len() == 0 {
			t.Errorf("%q: code %d and not a word why", c.args, code)
		}
	}
}
