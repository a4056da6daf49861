package spectest

import (
	"reflect"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/spec"
)

// Every project reads as it was made, builds, and is the same every time; every change is made to some.
func TestRandom(t *testing.T) {
	made := map[string]bool{}
	for n := range uint64(60) {
		p, again := Random(n), Random(n)
		if !reflect.DeepEqual(p.Sets, again.Sets) || p.Spec.Hash() != again.Spec.Hash() {
			t.Fatalf("project %d differs: %v, %v", n, p, again)
		}
		s, problems := spec.Read(p.Demo, p.Source, p.Sets)
		if len(problems) > 0 || s.Hash() != p.Spec.Hash() {
			t.Errorf("%v: %v", p, problems)
			continue
		}
		if _, err := detail.Build(s); err != nil {
			t.Errorf("%v: %v", p, err)
		}
		for _, v := range p.Sets {
			key, _, _ := strings.Cut(v, "=")
			made[key] = true
		}
	}
	for _, key := range []string{"ledger.length", "blocks.plies", "fasteners", "floor.joists.kind", "foundation", "doors", "obstacles", "project.units", "sheets.size"} {
		if !made[key] {
			t.Errorf("no project of sixty changes %s", key)
		}
	}
}

// Broken projects are the same every time; some read all the same and most are refused.
func TestBroken(t *testing.T) {
	reads := 0
	for n := range uint64(40) {
		p, again := Broken(n), Broken(n)
		if !reflect.DeepEqual(p, again) {
			t.Fatalf("broken project %d differs: %v, %v", n, p, again)
		}
		if s, _ := spec.Read(p.Demo, p.Source, p.Sets); s != nil {
			reads++
		}
	}
	if reads < 4 || reads > 36 {
		t.Errorf("%d of 40 read", reads)
	}
}
