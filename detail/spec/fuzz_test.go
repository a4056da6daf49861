package spec_test

import (
	"os"
	"strings"
	"testing"

	"standclear/detail/spec"
	"standclear/detail/unit"
)

// FuzzRead feeds any file: it must be read or refused with a reason, alike each time, never panic.
func FuzzRead(f *testing.F) {
	for _, name := range []string{"deck.yaml", "deck-metric.yaml", "mistakes.yaml"} {
		f.Add(read(f, name))
	}
	f.Add([]byte(spec.Starter(unit.IP)))
	for _, s := range []string{
		"", "a", "a: b", "- a", "floor: {rim: {thickness: 89in}}", "a: &a [*a]", "a: &a 1\nb: *a", "wall: {layers: [{role: sheathing}, ~, 3]}",
		"fasteners: {through: 3, to_rim: {rows: 3}}", "ledger: {size: 2x10, height: 3in}", "project: {units: metric}", "\xff", "\t", "? a", "---\n---\n",
		"doors: [{from: 3in, to: 2in}]", "blocks: {plies: [[1in]], pad: {after: -1}}", "{", "a: |\n  b\n", "a: \"\\x00\"",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		s, problems := spec.Read("fuzz.yaml", src, nil)
		checkRead(t, s, problems)
		again, problems2 := spec.Read("fuzz.yaml", src, nil)
		if problems.Error() != problems2.Error() || s != nil && s.Hash != again.Hash {
			t.Fatalf("%q reads two ways", src)
		}
	})
}

// FuzzSet feeds any pair of overrides to a good file.
func FuzzSet(f *testing.F) {
	deck := read(f, "deck.yaml")
	for _, s := range []string{
		"ledger.length=14.8ft", "doors.0.from=5ft", "doors.1={from: 1in, to: 2in}", "doors.9=3", "a.b.c=d", "=", "x", "blocks.plies.0=",
		"blocks.plies=[1in, {thickness: 2in}]", "fasteners=", "fasteners.to_rim.rows.0=3in", "wall.layers.0.thickness=89", "floor.rim=3",
		"project.notes.0=a", "deck.guard_posts.0=[1]", "a=[", "a={b: &c [*c]}", "floor.joists.size=45x220mm", "ledger.length.0=1", "...=1",
	} {
		f.Add(s, "blocks.width=7in")
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		s, problems := spec.Read("deck.yaml", deck, []string{a, b})
		checkRead(t, s, problems)
	})
}

func read(f *testing.F, name string) []byte {
	f.Helper()
	src, err := os.ReadFile("testdata/" + name)
	if err != nil {
		f.Fatal(err)
	}
	return src
}

// checkRead holds what is true of every reading.
func checkRead(t *testing.T, s *spec.Spec, problems spec.Problems) {
	t.Helper()
	if (s == nil) != problems.Fatal() || s != nil && (len(problems) > 0 || len(s.Hash) != 8 || s.Warnings.Fatal()) {
		t.Fatalf("spec %v with problems %q", s != nil, problems.Error())
	}
	for _, p := range problems {
		if p.File == "" || p.Given == "" || p.File != "--set" && (p.Line < 1 || p.Col < 1) || strings.ContainsAny(p.Error(), "\n\r") {
			t.Fatalf("%#v", p)
		}
	}
	if s != nil && (s.Ledger.Length <= 0 || len(s.Wall.Layers) == 0 || s.Floor.Rim.Thickness <= 0) {
		t.Fatalf("read without what is never defaulted: %+v", s)
	}
}
