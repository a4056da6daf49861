package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"standclear/detail/demo"
)

var update = flag.Bool("update", false, "rewrite the golden files; look at each before you commit it")

// kept says which files of a demo's set are golden: the calculation and the schedule of each, the
// drawings of the inch deck.
func kept(demo, name string) bool {
	switch filepath.Ext(name) {
	case ".txt", ".csv":
		return true
	case ".svg":
		return demo == "deck"
	case ".dxf":
		return demo == "deck" && name == "S-501.dxf"
	}
	return false
}

func TestGolden(t *testing.T) {
	if *update && os.Getenv("CI") != "" {
		t.Fatal("golden files are not rewritten in CI")
	}
	for _, name := range demo.Names() {
		t.Run(name, func(t *testing.T) {
			out := t.TempDir()
			var text, errs bytes.Buffer
			if code := run([]string{"draw", "--demo", name, "--out", out}, env{strings.NewReader(""), &text, &errs}); code != exitOK {
				t.Fatalf("left with %d: %s", code, errs.String())
			}
			golden := filepath.Join("..", "..", "testdata", "golden", name)
			files, err := os.ReadDir(out)
			if err != nil {
				t.Fatal(err)
			}
			n := 0
			for _, f := range files {
				if kept(name, f.Name()) {
					n++
					same(t, filepath.Join(golden, f.Name()), filepath.Join(out, f.Name()))
				}
			}
			if was, err := os.ReadDir(golden); err != nil || len(was) != n {
				t.Errorf("%d golden files for %d drawn (%v)", len(was), n, err)
			}
		})
	}
}

// same compares a drawn file with its golden one and names the first line that differs.
func same(t *testing.T, golden, drawn string) {
	t.Helper()
	got, err := os.ReadFile(drawn)
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.MkdirAll(filepath.Dir(golden), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(golden, got, 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Equal(got, want) {
		return
	}
	g, w := strings.Split(string(got), "\n"), strings.Split(string(want), "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			old := "(end of file)"
			if i < len(w) {
				old = w[i]
			}
			t.Errorf("%s differs from line %d on:\n got %.160s\nwant %.160s\n(go test ./cmd/standclear -update rewrites it)", golden, i+1, g[i], old)
			return
		}
	}
	t.Errorf("%s is longer than what is drawn", golden)
}
