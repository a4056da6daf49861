package keyfile_test

import (
	"slices"
	"strings"
	"testing"
	"unicode"

	"go.yaml.in/yaml/v3"

	"standclear/detail/keyfile"
)

// FuzzReader walks any file as its readers do: each problem has its place and one line of words, what is read is no
// alias and no name comes twice, and problems come in the order of the file.
func FuzzReader(f *testing.F) {
	for _, s := range []string{"", "a: 1\nb: [1, {a: 2}]", "a: &x [1]\nb: *x", "a: 1\na: 2", "? [a]\n: b", "<<: {a: 1}", "---\n---\n", "\xff", "\ufeffa: ~", "a: !!set {b}", "a: |\n  b\n  c", "a: [[[[[1]]]]]", "\"a\\nb\": 1", "a: \"\\e[31m\"", "a: 1 # b", "b: [\"x\\0y\"]"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		r := &keyfile.Reader{File: "f.yaml", What: "a case", Begins: "a:"}
		root := r.Root(src)
		if (root == nil) == (len(r.Problems) == 0) {
			t.Fatalf("root %v with %v", root, r.Problems)
		}
		if root != nil {
			walk(t, r, root, "", 0)
		}
		problems := slices.Clone(r.Sorted())
		for i, p := range problems {
			text := p.Error()
			if p.File != "f.yaml" || p.Line < 1 || p.Col < 1 || p.Given == "" || len(text) > 2000 || strings.ContainsFunc(text, unicode.IsControl) {
				t.Errorf("%d bytes: %+v", len(text), p)
			}
			if i > 0 && p.Line < problems[i-1].Line {
				t.Errorf("line %d after line %d", p.Line, problems[i-1].Line)
			}
		}
	})
}

// walk reads a section, a list or a value, and what is in it.
func walk(t *testing.T, r *keyfile.Reader, n *yaml.Node, path string, deep int) {
	t.Helper()
	if deep > 20 {
		return
	}
	switch n.Kind {
	case yaml.MappingNode:
		seen := map[string]bool{}
		for _, row := range r.Section(n, path, "it holds anything") {
			if seen[row.Name] || row.Name == "" || row.Val.Kind == yaml.AliasNode {
				t.Errorf("%q twice, or an alias", row.Name)
			}
			seen[row.Name] = true
			walk(t, r, row.Val, keyfile.Join(path, keyfile.Cut(row.Name)), deep+1)
		}
		for name := range r.Keyed(n, path, "a", "b") {
			if name != "a" && name != "b" {
				t.Errorf("%q was not asked for", name)
			}
		}
	case yaml.SequenceNode:
		for _, item := range r.List(n, path, "a list") {
			if item.Kind == yaml.AliasNode {
				t.Error("an alias")
			}
			walk(t, r, item, keyfile.Join(path, "0"), deep+1)
		}
	default:
		if s, ok := r.One(n, path, "a value"); ok && (s == "" || s != strings.TrimSpace(n.Value)) {
			t.Errorf("%q is read as %q", n.Value, s)
		}
	}
}
