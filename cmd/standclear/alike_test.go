package main

import (
	"encoding/json"
	"os"
	"path/filepath"
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
	for name, data := range first {
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
