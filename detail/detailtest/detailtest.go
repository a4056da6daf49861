// Package detailtest builds assemblies for tests.
package detailtest

import (
	"testing"

	"standclear/detail"
	"standclear/detail/demo"
	"standclear/detail/spec"
)

// Demo reads and builds a demo, with changes.
func Demo(t testing.TB, name string, sets ...string) *detail.Assembly {
	t.Helper()
	src, ok := demo.File(name)
	if !ok {
		t.Fatalf("no demo %q", name)
	}
	return Build(t, name, src, sets...)
}

// Build reads and builds a project file, with changes.
func Build(t testing.TB, name string, src []byte, sets ...string) *detail.Assembly {
	t.Helper()
	s, problems := spec.Read(name, src, sets)
	if s == nil {
		t.Fatalf("%s %v: %v", name, sets, problems)
	}
	a, err := detail.Build(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}
