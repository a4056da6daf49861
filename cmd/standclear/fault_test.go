package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
)

// writeLoop is what the test binary does in place of tests when it is started with this variable, a folder: it writes
// generation 1, 2, 1, 2 ... of a set there, as fast as it can, until it is killed.
const writeLoop = "STANDCLEAR_WRITE_LOOP"

func writeForEver(dir string) {
	for n := 0; ; n++ {
		if err := writeAll(dir, generation(1+n%2)); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(exitWrite)
		}
		if n == 0 {
			fmt.Println("writing")
		}
	}
}

// generation is a set of eighty files that all hold one number.
func generation(n int) (out []file) {
	for i := range 80 {
		name := fmt.Sprintf("sheet-%02d", i)
		if i%3 == 0 {
			name = "details/" + name
		}
		out = append(out, file{name, bytes.Repeat([]byte(strconv.Itoa(n)), 1000)})
	}
	return out
}

// itself is the test binary started anew with an environment; args make it the command.
func itself(t *testing.T, dir string, env []string, args ...string) *exec.Cmd {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	return &exec.Cmd{Path: exe, Args: append([]string{"standclear"}, args...), Dir: dir, Env: append(os.Environ(), env...)}
}

// tree is what a folder holds, by name.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := os.ReadFile(path)
		rel, _ := filepath.Rel(dir, path)
		out[rel] = string(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// alike tells whether two folders hold the same, and else the first that differs.
func alike(a, b map[string]string) (bool, string) {
	for n := range a {
		if b[n] != a[n] {
			return false, n
		}
	}
	return len(a) == len(b), "number of files"
}

// Two runs write into one folder, over and over: it holds the whole set of one of them.
func TestTwoIntoOneFolder(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "set")
	done := make(chan error)
	for g := 1; g <= 2; g++ {
		go func() {
			var err error
			for range 25 {
				if err == nil {
					err = writeAll(dir, generation(g))
				}
			}
			done <- err
		}()
	}
	for range 2 {
		if err := <-done; err != nil {
			t.Error(err)
		}
	}
	got := tree(t, dir)
	g, _ := strconv.Atoi(got["sheet-01"][:1])
	want := map[string]string{}
	for _, f := range generation(g) {
		want[f.name] = string(f.data)
	}
	if ok, at := alike(got, want); !ok {
		t.Errorf("the folder is not whole: %s", at)
	}
	if all, _ := os.ReadDir(parent); len(all) != 1 {
		t.Errorf("%d entries beside the set", len(all)-1)
	}
}
