package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func content(t *testing.T, dir, name string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		return "-"
	}
	return string(b)
}

// A set that cannot be put in place whole leaves the old one whole, and nothing beside it.
func TestWriteAllOrNothing(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "set")
	old := []file{{"a", []byte("old a")}, {"b", []byte("old b")}}
	if err := writeAll(dir, old); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "c"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := writeAll(dir, []file{{"a", []byte("new a")}, {"b", []byte("new b")}, {"c", []byte("new c")}}); err == nil {
		t.Error("a folder was written over")
	}
	if a, b := content(t, dir, "a"), content(t, dir, "b"); a != "old a" || b != "old b" {
		t.Errorf("a is %q and b %q after a failed writing", a, b)
	}
	if left, _ := os.ReadDir(parent); len(left) != 1 {
		t.Errorf("%d entries beside the set", len(left))
	}
}

// When a rename fails midway everything is put back: here the second staged file is not there.
func TestSwapPutsBack(t *testing.T) {
	stage, dir := t.TempDir(), t.TempDir()
	for name, text := range map[string]string{filepath.Join(stage, "a"): "new a", filepath.Join(stage, "n"): "new n", filepath.Join(dir, "a"): "old a", filepath.Join(dir, "b"): "old b"} {
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := swap(stage, dir, []file{{name: "a"}, {name: "n"}, {name: "b"}}); err == nil {
		t.Error("no error for a file that is not there")
	}
	if a, b, n := content(t, dir, "a"), content(t, dir, "b"), content(t, dir, "n"); a != "old a" || b != "old b" || n != "-" {
		t.Errorf("a %q, b %q, n %q after a failed swap", a, b, n)
	}
}

// Files go into folders of the set, which are made where they are needed.
func TestWriteIntoFolders(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "set")
	for _, text := range []string{"old", "new"} {
		if err := writeAll(dir, []file{{"a", []byte(text)}, {"details/b", []byte(text)}}); err != nil {
			t.Fatal(err)
		}
		if a, b := content(t, dir, "a"), content(t, dir, "details/b"); a != text || b != text {
			t.Errorf("a is %q and b %q, want %q", a, b, text)
		}
	}
}

func TestLeftOver(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "details"), 0o777); err != nil {
		t.Fatal(err)
	}
	for _, n := range []string{"A-101.svg", "A-101.dxf", "set.pdf", "other.txt", "details/A-101-1.dxf", "details/A-101-2.dxf", "details/mine.dxf"} {
		if err := os.WriteFile(filepath.Join(dir, n), nil, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	got := strings.Join(leftOver(dir, []string{"A-101"}, []file{{name: "A-101.svg"}, {name: "details/A-101-1.dxf"}}), " ")
	if got != "set.pdf A-101.dxf details/A-101-2.dxf" {
		t.Errorf("left over: %s", got)
	}
}

// A file that is replaced keeps its mode and the link that leads to it; a folder is refused, and what someone else has
// changed since stays.
func TestReplaceFile(t *testing.T) {
	dir := t.TempDir()
	real, link := filepath.Join(dir, "deck.yaml"), filepath.Join(dir, "link.yaml")
	if err := os.WriteFile(real, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(real, link); err != nil {
		t.Fatal(err)
	}
	if err := replaceFile(link, []byte("new")); err != nil {
		t.Fatal(err)
	}
	if st, err := os.Lstat(link); err != nil || st.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is gone: %v, %v", st, err)
	}
	if st, err := os.Stat(real); err != nil || st.Mode().Perm() != 0o600 || content(t, dir, "deck.yaml") != "new" {
		t.Errorf("%v, %v, %q", st, err, content(t, dir, "deck.yaml"))
	}
	if err := rewriteFile(link, []byte("new"), []byte("newer")); err != nil || content(t, dir, "deck.yaml") != "newer" {
		t.Errorf("%v, %q", err, content(t, dir, "deck.yaml"))
	}
	if err := rewriteFile(link, []byte("new"), []byte("newest")); err == nil || content(t, dir, "deck.yaml") != "newer" {
		t.Errorf("changed by someone else: %v, %q", err, content(t, dir, "deck.yaml"))
	}
	if err := replaceFile(dir, nil); err == nil {
		t.Error("a folder was replaced")
	}
	if left, _ := os.ReadDir(dir); len(left) != 2 {
		t.Errorf("%d entries, want the file and its link", len(left))
	}
}

// A new file is there whole, alone, with the rights of any other, and never in the place of one.
func TestCreateFile(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "deck.yaml")
	if err := createFile(name, []byte("new")); err != nil || content(t, dir, "deck.yaml") != "new" {
		t.Fatal(err)
	}
	if err := createFile(name, []byte("newer")); !errors.Is(err, fs.ErrExist) || content(t, dir, "deck.yaml") != "new" {
		t.Errorf("over another: %v", err)
	}
	if err := createFile(filepath.Join(dir, "none", "deck.yaml"), nil); err == nil || strings.Contains(err.Error(), "standclear-file") {
		t.Errorf("into no folder: %v", err)
	}
	if err := os.WriteFile(filepath.Join(dir, "other"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	got, _ := os.Stat(name)
	want, _ := os.Stat(filepath.Join(dir, "other"))
	if got.Mode() != want.Mode() {
		t.Errorf("rights %v, of any other %v", got.Mode(), want.Mode())
	}
	if all, _ := os.ReadDir(dir); len(all) != 2 {
		t.Errorf("left in the folder: %v", all)
	}
}
