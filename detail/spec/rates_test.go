package spec_test

import (
	"math"
	"testing"

	"standclear/detail/spec"
)

// A foot is 0.3048 m exactly: 1.50 a foot is 1.50/0.3048 = 4.9213 a metre.
func TestRates(t *testing.T) {
	s := readDeck(t, "rates={currency: thalers, block: 20, lumber: 1.50/ft, hour: 60}")
	r := s.Rates
	if r == nil || *r.Block != 20 || *r.Hour != 60 || math.Abs(*r.Lumber-4.92126) > 1e-5 || r.Currency != "thalers" {
		t.Fatalf("%+v", r)
	}
	if r.Fastener != nil || r.BlockHours != nil {
		t.Error("a rate that was not stated has a value")
	}
	for _, e := range s.Entries() {
		if want, ok := map[string]string{"rates.lumber": "1.50/ft", "rates.hour": "60", "rates.fastener": ""}[e.Key]; ok && e.Value != want {
			t.Errorf("%s prints %q; want %q", e.Key, e.Value, want)
		}
	}
}

// No price is built in: a file without rates has none, and its hash is what it was before there were rates (TestHashValue).
func TestNoRates(t *testing.T) {
	if s := readDeck(t); s.Rates != nil {
		t.Errorf("rates out of nowhere: %+v", s.Rates)
	}
	for _, bad := range []string{"rates.lumber=4", "rates.lumber=4/yd", "rates.block=$4", "rates.block=-1", "rates.lumber=1e3/m"} {
		if s, _ := spec.Read("deck.yaml", deckFile(t), []string{bad}); s != nil {
			t.Errorf("%s was read", bad)
		}
	}
}
