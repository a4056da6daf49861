package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"text/tabwriter"

	"standclear/detail/demo"
)

// Verdicts are coloured where a terminal can, and nowhere else; the word stays whole.
func TestColour(t *testing.T) {
	device, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0) // a character device, as a terminal is
	if err != nil {
		t.Fatal(err)
	}
	defer device.Close()
	for _, c := range []struct {
		term, no string
		want     bool
	}{{"xterm", "", true}, {"xterm", "1", false}, {"dumb", "", false}, {"", "", false}} {
		t.Setenv("TERM", c.term)
		t.Setenv("NO_COLOR", c.no)
		if got := coloured(device); got != c.want {
			t.Errorf("TERM %q, NO_COLOR %q: %v", c.term, c.no, got)
		}
	}
	t.Setenv("TERM", "xterm")
	t.Setenv("NO_COLOR", "")
	if coloured(&strings.Builder{}) {
		t.Error("a pipe is coloured")
	}
	for v, want := range map[string]string{"FAILS": "\x1b[31mFAILS\x1b[0m", "FAILS, was OK": "\x1b[31mFAILS, was OK\x1b[0m", "NOT CHECKED": "\x1b[33mNOT CHECKED\x1b[0m", "OK": "\x1b[32mOK\x1b[0m", "-": "-"} {
		if got := tintIf(true, v); got != want {
			t.Errorf("%q", got)
		}
		if tintIf(false, v) != v {
			t.Errorf("%s is coloured", v)
		}
	}
}

type shownCheck struct {
	ID, Verdict, Unit string
	Value             float64
	ValueSI           *float64 `json:"value_si"`
	UnitSI            string   `json:"unit_si"`
	Reason            string
}

// checksOf returns the checks a command printed as JSON.
func checksOf(t *testing.T, args ...string) []shownCheck {
	t.Helper()
	_, out, errs := typed("", append([]string{"check", "--no-heat", "--json"}, args...)...)
	var r struct{ Checks []shownCheck }
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatalf("%v: %v: %s", args, err, errs)
	}
	return r.Checks
}

// --units changes units and words, never a verdict or a value. SI alone is what stands second without it.
func TestUnits(t *testing.T) {
	for _, name := range demo.Names() {
		both, si, ip := checksOf(t, "--demo", name), checksOf(t, "--demo", name, "--units", "si"), checksOf(t, "--demo", name, "--units", "ip")
		if len(both) < 100 || len(si) != len(both) || len(ip) != len(both) {
			t.Fatalf("%s: %d, %d, %d checks", name, len(both), len(si), len(ip))
		}
		for i, b := range both {
			s, p := si[i], ip[i]
			if s.ID != b.ID || s.Verdict != b.Verdict || p.Verdict != b.Verdict || s.Value != *b.ValueSI || s.Unit != b.UnitSI || p.Value != b.Value || p.Unit != b.Unit || s.ValueSI != nil || p.ValueSI != nil {
				t.Errorf("%s: %+v, si %+v, ip %+v", name, b, s, p)
			}
		}
	}
	inches := regexp.MustCompile(`\d"|\d'-|\d in\b| lb\b| psi\b| psf\b| plf\b`)
	failing := filepath.Join("..", "..", "testdata", "projects", "deck-as-listed.yaml")
	_, out, _ := typed("", "check", "--no-heat", "--units", "si", failing)
	for _, l := range strings.Split(out, "\n") {
		if inches.MatchString(l) && !strings.Contains(l, "smallest change") && !strings.Contains(l, "2 in nominal") { // a change is in the words of the file
			t.Errorf("in SI alone: %s", l)
		}
	}
	if !strings.Contains(out, " kN") || !strings.Contains(out, " mm") {
		t.Error("nothing is in SI")
	}
	_, out, _ = typed("", "check", "--no-heat", "--units", "ip", "--demo", "deck-metric")
	if strings.Contains(out, " kN") || strings.Contains(out, " mm ") || !strings.Contains(out, " plf") {
		t.Error("a metric project in inch-pound units")
	}
}

// --quiet prints nothing where nothing is wrong with the input, and the code says the rest.
func TestQuiet(t *testing.T) {
	for _, args := range [][]string{{"check", "--no-heat"}, {"draw", "--no-heat", "--only", "svg", "--sheet", "G-001", "--out", filepath.Join(t.TempDir(), "a")}} {
		code, out, errs := typed("", append(args, "--quiet")...)
		if code != exitOK || out != "" || errs != "" {
			t.Errorf("%v: %d %q %q", args, code, out, errs)
		}
	}
}

// draw --json says what was written.
func TestDrawJSON(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "set")
	code, out, errs := typed("", "draw", "--no-heat", "--only", "svg", "--sheet", "A-201", "--out", dir, "--json", "--units", "si")
	var r struct {
		Folder, Verdict string
		Sheets, Files   []string
		Counts          map[string]int
	}
	if err := json.Unmarshal([]byte(out), &r); err != nil || code != exitOK {
		t.Fatalf("%d %v %s", code, err, errs)
	}
	if r.Folder != dir || len(r.Sheets) != 1 || r.Sheets[0] != "A-201" || r.Verdict != "NOT CHECKED" || r.Counts["fails"] != 0 || r.Counts["ok"] < 100 {
		t.Errorf("%+v", r)
	}
	for _, f := range r.Files {
		if _, err := os.Stat(filepath.Join(dir, f)); err != nil {
			t.Error(err)
		}
	}
}

// Columns stand as the standard library's tabwriter sets them.
func TestColumnsStandAsATabwriterSetsThem(t *testing.T) {
	for _, rows := range [][][]string{
		nil,
		{{"CHECK", "WHERE", "VERDICT"}, {"gap clear", "", "OK"}, {"fläche", "B1 to B9, all", "FAILS"}, {"", "x", ""}},
		{{"one cell"}, {"another"}},
	} {
		var got, want bytes.Buffer
		if err := columns(&got, rows); err != nil {
			t.Fatal(err)
		}
		tab := tabwriter.NewWriter(&want, 2, 4, 2, ' ', 0)
		for _, r := range rows {
			fmt.Fprintln(tab, strings.Join(r, "\t"))
		}
		if err := tab.Flush(); err != nil {
			t.Fatal(err)
		}
		if got.String() != want.String() {
			t.Errorf("columns gives\n%swant\n%s", &got, &want)
		}
	}
}
