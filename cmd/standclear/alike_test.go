package main

import (
	"bytes"
	"compress/zlib"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The same project gives the same bytes whatever the number of processors, the language, the clock's zone and the
// folder; every sheet and file that can carry them says which program made it, of which parameters.
func TestSameBytesEverywhere(t *testing.T) {
	parent := t.TempDir()
	cache := filepath.Join(parent, "cache")
	if err := copyKept(cache); err != nil {
		t.Fatal(err)
	}
	var first map[string]string
	for i, envs := range [][]string{
		{"GOMAXPROCS=1", "LC_ALL=C", "LANG=C", "TZ=UTC"},
		{"GOMAXPROCS=2", "LC_ALL=de_DE.UTF-8", "LANG=tr_TR.UTF-8", "TZ=Pacific/Chatham", "GOGC=20"},
	} {
		dir := filepath.Join(parent, strings.Repeat("deeper/", i)+"set")
		out, err := itself(t, parent, append(envs, "XDG_CACHE_HOME="+cache), "draw", "--demo", "deck-metric", "--out", dir).CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %v\n%s", envs, err, out)
		}
		got := tree(t, dir)
		if first == nil {
			first = got
		}
		if ok, at := alike(first, got); !ok {
			t.Errorf("%v: %s differs", envs, at)
		}
	}
	var report struct{ Parameters, Program string }
	if err := json.Unmarshal([]byte(first["checks.json"]), &report); err != nil {
		t.Fatal(err)
	}
	if len(report.Parameters) != 8 || report.Program != "standclear "+version {
		t.Fatalf("checks.json is of %q by %q", report.Parameters, report.Program)
	}
	sheets := 0
	for _, stamp := range []string{report.Parameters, "standclear " + version} {
		if pages, stamped := stampedPages(first["set.pdf"], stamp); pages < 60 || stamped < pages {
			t.Errorf("%d of %d pages of set.pdf show %q", stamped, pages, stamp)
		}
	}
	for name, data := range first {
		if ext := filepath.Ext(name); ext == ".svg" || ext == ".dxf" && !strings.Contains(name, "details") {
			seen := unseen.ReplaceAllString(data, "")
			if !strings.Contains(seen, report.Parameters) || !strings.Contains(seen, "standclear "+version) {
				t.Errorf("%s does not show of which parameters and program it is", name)
			}
		}
		switch filepath.Ext(name) {
		case ".svg", ".dxf", ".html":
			sheets++
			if !strings.Contains(data, report.Parameters) || !strings.Contains(data, version) {
				t.Errorf("%s does not say of which parameters (%s) and program (%s) it is", name, report.Parameters, version)
			}
		}
	}
	if sheets < 40 {
		t.Errorf("%d drawings were looked at", sheets)
	}
	if _, err := os.Stat(filepath.Join(parent, "deeper", "set", "A-311.svg")); err != nil {
		t.Error(err)
	}
}

// unseen is what a drawing remembers and does not show.
var unseen = regexp.MustCompile(`(?s)<metadata>.*?</metadata>|1000\n[^\n]*\n`)

// stampedPages counts the pages of a PDF file, and those on which a text is drawn.
func stampedPages(doc, text string) (pages, stamped int) {
	drawn := ""
	for _, r := range text {
		drawn += "\x00" + string(r)
	}
	pages = strings.Count(doc, "/Type /Page\n")
	for _, rest := range strings.Split(doc, "\nstream\n")[1:] {
		z, err := zlib.NewReader(strings.NewReader(rest))
		if err != nil {
			continue // not of a page
		}
		if b, _ := io.ReadAll(z); strings.Contains(string(b), drawn) {
			stamped++
		}
	}
	return pages, stamped
}

// What the other commands print is the same, whatever the processors, the language, the zone and the width of the
// terminal.
func TestSameWordsEverywhere(t *testing.T) {
	cache := filepath.Join(t.TempDir(), "cache")
	if err := copyKept(cache); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"check", "--json"}, {"explain", "ledger_fb"}, {"compare", "--csv"}, {"verify", "--form"}, {"man"},
		{"sweep", "--vary", "blocks.width=7in,9in", "--json"}, {"size", "--free", "blocks.max_spacing", "--least", "blocks"},
	} {
		var first []byte
		for i, envs := range [][]string{
			{"GOMAXPROCS=1", "LC_ALL=C", "LANG=C", "TZ=UTC"},
			{"GOMAXPROCS=3", "LC_ALL=tr_TR.UTF-8", "LANG=de_DE.UTF-8", "LC_NUMERIC=de_DE.UTF-8", "TZ=Pacific/Chatham", "COLUMNS=40", "GOGC=20"},
		} {
			out, err := itself(t, t.TempDir(), append(envs, "XDG_CACHE_HOME="+cache), args...).Output()
			if len(out) == 0 {
				t.Fatalf("%v: %v", args, err)
			}
			if i == 0 {
				first = out
			} else if !bytes.Equal(out, first) {
				t.Errorf("%v prints otherwise with %v", args, envs)
			}
		}
	}
}
