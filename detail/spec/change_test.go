package spec_test

import (
	"slices"
	"testing"

	"standclear/detail/demo"
	"standclear/detail/spec"
)

// Changes name each value that differs as it prints, in the order of the file, items that are there no longer
// last; the same value in another unit is none.
func TestChanges(t *testing.T) {
	src, _ := demo.File("deck")
	read := func(sets ...string) *spec.Spec {
		s, problems := spec.Read("deck.yaml", src, sets)
		if s == nil {
			t.Fatal(problems)
		}
		return s
	}
	old := read()
	if got := spec.Changes(old, read("blocks.max_spacing=558.8mm")); len(got) > 0 { // 22 in
		t.Errorf("%v", got)
	}
	got := spec.Changes(old, read("blocks.max_spacing=20in", "site.termites=heavy", "blocks.plies=[1 1/2in, 2 1/4in]", "blocks.pad.thickness="))
	want := []spec.Changed{
		{Key: "site.termites", Old: "moderate", New: "heavy"},
		{Key: "blocks.plies.1.thickness", Old: `1 1/2"`, New: `2 1/4"`},
		{Key: "blocks.max_spacing", Old: `1'-10"`, New: `1'-8"`},
		{Key: "blocks.plies.2.thickness", Old: `3/4"`},
	}
	i := slices.IndexFunc(got, func(c spec.Changed) bool { return c.Key == "blocks.plies.2.thickness" })
	if i < 0 || !slices.Equal(got[:i+1], want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
}
