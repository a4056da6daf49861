package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	if dir := os.Getenv(writeLoop); dir != "" {
		writeForEver(dir)
	}
	testscript.Main(m, map[string]func(){
		"standclear": func() { os.Exit(run(os.Args[1:], env{os.Stdin, os.Stdout, os.Stderr})) },
	})
}

// TestScripts drives the command as users type it. $PROJECTS is the folder of the shared projects.
func TestScripts(t *testing.T) {
	projects, err := filepath.Abs(filepath.Join("..", "..", "testdata", "projects"))
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		UpdateScripts: *update,
		Dir:           "testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("PROJECTS", projects)
			e.Setenv("XDG_CACHE_HOME", filepath.Join(e.WorkDir, "cache"))
			return copyKept(filepath.Join(e.WorkDir, "cache"))
		},
	})
}
