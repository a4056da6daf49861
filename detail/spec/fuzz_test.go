package spec_test

import (
	"os"
	"strings"
	"testing"

	"standclear/detail/spec"
	"standclear/detail/unit"
)

// files are texts for the reader: none of them a project, each odd in its own way.
var files = []string{
	"", "a", "a: b", "- a", "floor: {rim: {thickness: 89in}}", "a: &a [*a]", "a: &a 1\nb: *a", "wall: {layers: [{role: sheathing}, ~, 3]}",
	"fasteners: {through: 3, to_rim: {rows: 3}}", "ledger: {size: 2x10, height: 3in}", "project: {units: metric}", "\xff", "\t", "? a", "---\n---\n",
	"doors: [{from: 3in, to: 2in}]", "blocks: {plies: [[1in]], pad: {after: -1}}", "{", "a: |\n  b\n", "a: \"\\x00\"",
}

// FuzzRead feeds any file: it must be read or refused with a reason, alike each time, never panic.
func FuzzRead(f *testing.F) {
	for _, name := range []string{"deck.yaml", "deck-metric.yaml", "mistakes.yaml"} {
		f.Add(read(f, name))
	}
	f.Add([]byte(spec.Starter(unit.IP)))
	for _, s := range files {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		s, problems := spec.Read("fuzz.yaml", src, nil)
		checkRead(t, s, problems)
		checkPlaces(t, src, problems)
		again, problems2 := spec.Read("fuzz.yaml", src, nil)
		parsed, problems3 := spec.Parse("fuzz.yaml", src).Read(nil)
		if problems.Error() != problems2.Error() || problems.Error() != problems3.Error() || s != nil && (s.Hash() != again.Hash() || s.Hash() != parsed.Hash()) {
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
		if s == nil {
			return
		}
		if once, _ := spec.Read("deck.yaml", deck, []string{a, b, b}); once == nil || once.Hash() != s.Hash() {
			if !inList(b) {
				t.Fatalf("%q twice reads otherwise", b)
			}
		}
	})
}

// inList tells whether a change names a place in a list, which may then take a further one in or out.
func inList(set string) bool {
	key, _, _ := strings.Cut(set, "=")
	return strings.ContainsAny(key, "0123456789")
}

// FuzzEdit changes a value in the text of a file: the file then reads as it did with the change beside it, or the
// change is refused.
func FuzzEdit(f *testing.F) {
	deck, metric := read(f, "deck.yaml"), read(f, "deck-metric.yaml")
	for _, set := range []string{"blocks.width=8in", "blocks.plies=[3in]", "ledger.grade=No.1", "blocks.pad.thickness=1/2in", "deck.joists.width=3in", "project.name=A: B", "a=b #c", "doors.0.from=5ft", "blocks.plies.0=3/4in"} {
		f.Add(deck, set)
		f.Add(metric, set)
	}
	for _, s := range files {
		f.Add([]byte(s), "blocks.width=8in")
	}
	f.Add([]byte("ledger: {length: 14'-8\", grade: 'No.2'} # {"), "ledger.grade=No.1")
	f.Add([]byte("\ufeffblocks: {plies: [1in, 'a]']}\r\nledger:\r\n  length: \"14'-8\\\"\"\r\n"), "ledger.length=12ft")
	f.Fuzz(func(t *testing.T, src []byte, set string) {
		edited, err := spec.Edit(src, []string{set})
		if err != nil {
			if err.Error() == "" || strings.ContainsAny(err.Error(), "\n\r") {
				t.Fatalf("refused as %q", err)
			}
			return
		}
		if len(edited) > len(src)+4*len(set)+200 {
			t.Fatalf("%d bytes and a change of %d became %d", len(src), len(set), len(edited))
		}
		want, _ := spec.Read("a", src, []string{set})
		got, problems := spec.Read("a", edited, nil)
		if want != nil && got != nil && got.Hash() != want.Hash() && plain(set) {
			t.Fatalf("with %q the text\n%s\nbecame\n%s\nand reads otherwise: %v", set, src, edited, problems)
		}
	})
}

// plain tells whether a change is one of a figure, as standclear itself writes them.
func plain(set string) bool {
	_, value, _ := strings.Cut(set, "=")
	return value != "" && !strings.ContainsFunc(value, func(r rune) bool {
		return (r < '0' || r > '9') && (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') && !strings.ContainsRune("./- ", r)
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
	if (s == nil) != problems.Fatal() || s != nil && (len(problems) > 0 || len(s.Hash()) != 8 || s.Warnings.Fatal()) {
		t.Fatalf("spec %v with problems %q", s != nil, problems.Error())
	}
	if len(problems) > 101 {
		t.Fatalf("%d problems", len(problems))
	}
	for _, p := range problems {
		if p.File == "" || p.Given == "" || p.File != "--set" && (p.Line < 1 || p.Col < 1) {
			t.Fatalf("%#v", p)
		}
		if text := p.Error(); strings.ContainsFunc(text, func(r rune) bool { return r < ' ' || r == 0x7f }) || len(text) > 2000 {
			t.Fatalf("%d bytes: %q", len(text), text)
		}
	}
	if s != nil && (s.Ledger.Length <= 0 || len(s.Wall.Layers) == 0 || s.Floor.Rim.Thickness <= 0) {
		t.Fatalf("read without what is never defaulted: %+v", s)
	}
}

// checkPlaces holds that a problem lies in the file.
func checkPlaces(t *testing.T, src []byte, problems spec.Problems) {
	t.Helper()
	lines := 1 + strings.Count(strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n").Replace(string(src)), "\n")
	for _, p := range problems {
		if p.Line > lines {
			t.Fatalf("line %d of %d: %v", p.Line, lines, p)
		}
	}
}
