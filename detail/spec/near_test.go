package spec_test

import (
	"math"
	"slices"
	"testing"

	"standclear/detail/spec"
	"standclear/detail/unit"
)

// What a number is set to a little below and above is what is read back, by one of the ways to set it, and it is 5 %
// away, one for a count, 1 K for a temperature.
func TestNearsAreReadBack(t *testing.T) {
	src := deckFile(t)
	s := readDeck(t)
	all := s.Nears(0.05)
	if len(all) < 80 {
		t.Fatalf("%d numbers", len(all))
	}
	tried := 0
	for _, n := range all {
		for _, to := range []spec.Typed{n.Less, n.More} {
			if to.Sets == nil {
				continue
			}
			if d := math.Abs(to.Number - n.Number); math.Abs(d-0.05*math.Abs(n.Number)) > 1e-9*math.Abs(n.Number) && math.Abs(d-1) > 1e-9 {
				t.Errorf("%s: %v from %v", n.Key, to.Number, n.Number)
			}
			for _, sets := range to.Sets {
				again, _ := spec.Read("deck.yaml", src, sets)
				if again == nil {
					continue // out of step with another value, or another way is meant
				}
				tried++
				i := slices.IndexFunc(again.Nears(0.05), func(m spec.Near) bool { return m.Key == n.Key })
				if i < 0 {
					t.Errorf("%v: %s is gone", sets, n.Key)
				} else if got := again.Nears(0.05)[i].Number; math.Abs(got-to.Number) > 1e-6*math.Max(1, math.Abs(to.Number)) {
					t.Errorf("%v: %s is %v; want %v", sets, n.Key, got, to.Number)
				}
				break
			}
		}
	}
	if tried < 150 {
		t.Errorf("%d of %d changes were read", tried, 2*len(all))
	}
}

// A length set in millimetres is printed in the project's units: 15.875 mm is 5/8 in.
func TestNearSet(t *testing.T) {
	n := spec.Near{Entry: spec.Entry{Key: "fasteners.through.diameter"}}
	if to := n.Set(15.875, unit.IP); to.Value != `5/8"` || to.Sets[0][0] != "fasteners.through.diameter=15.875mm" {
		t.Errorf("%+v", to)
	}
}

func TestNearest(t *testing.T) {
	words := []string{"ledger_fb", "ledger_fv", "tie_rating", "top_row_tension", "gap_clear"}
	for _, c := range []struct{ given, first string }{{"ledger_fbb", "ledger_fb"}, {"tie", "tie_rating"}, {"tpo_row_tension", "top_row_tension"}, {"GAP-CLEAR", "gap_clear"}} {
		if got := spec.Nearest(c.given, words, 2); len(got) != 2 || got[0] != c.first {
			t.Errorf("%s: %v; want %s first", c.given, got, c.first)
		}
	}
	if got := spec.Nearest("x", words[:1], 3); len(got) != 1 {
		t.Errorf("%v", got)
	}
}
