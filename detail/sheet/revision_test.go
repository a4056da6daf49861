package sheet_test

import (
	"strings"
	"testing"
)

// The revision block holds the newest changes, newest on top, and the title strip states the last one; without
// revisions there is no block and the strip says 0.
func TestRevisions(t *testing.T) {
	first := func(sets ...string) string {
		return text(t, compose(t, "deck", sets...).sheets[0])
	}
	if got := first(); strings.Contains(got, "REVISIONS") || !strings.Contains(got, "2026-11-02 / 0") {
		t.Error("a first issue shows a revision")
	}
	got := first("project.revisions=[{mark: 1, date: 2026-11-03, by: A.B., text: FIRST}, {mark: 2, date: 2026-11-09, by: C.D., text: GAP DEEPER}]")
	for _, want := range []string{"REVISIONS", "2026-11-09  C.D.", "2026-11-03  A.B.", "2026-11-02 / 2"} {
		if !strings.Contains(got, want) {
			t.Errorf("lacks %q", want)
		}
	}
}
