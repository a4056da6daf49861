package main

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check/thermal"
	"standclear/detail/demo"
	"standclear/detail/spec"
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
	cache := t.TempDir()
	t.Setenv("XDG_CACHE_HOME", cache)
	if err := copyKept(cache); err != nil {
		t.Fatal(err)
	}
	defer keep(t, filepath.Join(cache, "standclear", "heat"))
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

// keptHeat holds the heat of the demos, solved once: a cache for the tests.
var keptHeat = filepath.Join("..", "..", "testdata", "golden", "heat")

// copyKept fills a cache folder with the heat of the demos.
func copyKept(cache string) error {
	return os.CopyFS(filepath.Join(cache, "standclear", "heat"), os.DirFS(keptHeat))
}

// keep says so when the heat of a demo had to be solved because the kept one is of another assembly; with
// -update what is in the cache is kept in its place.
func keep(t *testing.T, cache string) {
	t.Helper()
	had, err := os.ReadDir(keptHeat)
	if err != nil {
		t.Fatal(err)
	}
	have, err := os.ReadDir(cache)
	if err != nil {
		t.Fatal(err)
	}
	if len(had) == len(have) && len(had) == len(demo.Names()) {
		return
	}
	if !*update {
		t.Errorf("the heat of %d demos is kept, %d were solved anew (go test ./cmd/standclear -run Golden -update keeps them)", len(had), len(have)-len(had))
		return
	}
	for _, f := range had {
		if err := os.Remove(filepath.Join(keptHeat, f.Name())); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range demo.Names() {
		if err := keepResultOf(name, cache); err != nil {
			t.Fatal(err)
		}
	}
}

// keepResultOf copies the heat of a demo from the cache.
func keepResultOf(name, cache string) error {
	key, err := thermal.Key(demoAssembly(name), thermal.Options{})
	if err != nil {
		return err
	}
	b, err := os.ReadFile(filepath.Join(cache, key+".json"))
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(keptHeat, key+".json"), b, 0o666)
}

func demoAssembly(name string) *detail.Assembly {
	src, _ := demo.File(name)
	s, problems := spec.Read(name, src, nil)
	if s == nil {
		panic(problems.Error())
	}
	a, err := detail.Build(s)
	if err != nil {
		panic(err)
	}
	return a
}

// The kept heat of the deck is what is solved now, to the last digit. Under the race detector it is read alone:
// the grids are large.
func TestKeptHeat(t *testing.T) {
	a := demoAssembly("deck")
	key, err := thermal.Key(a, thermal.Options{})
	if err != nil {
		t.Fatal(err)
	}
	kept := readResult(filepath.Join(keptHeat, key+".json"))
	if kept == nil {
		t.Fatal("the heat of the deck is not kept")
	}
	if testing.Short() {
		return
	}
	now, err := thermal.Solve(context.Background(), a, thermal.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(kept, now) {
		t.Errorf("kept: chi %v; solved: %v", kept.Drawn().Bay, now.Drawn().Bay)
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
