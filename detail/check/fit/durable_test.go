package fit_test

import (
	"testing"

	"standclear/detail/check"
	"standclear/detail/detailtest"
)

// Coatings that treated wood does not eat, and those it does: IRC R317.3.
func TestCoatings(t *testing.T) {
	for coating, want := range map[string]check.Verdict{
		"hot-dip galvanized": check.OK, "Hot-Dip Galvanized, ASTM F2329": check.OK, "hot dip galvanised": check.OK, "HDG": check.OK, "stainless steel": check.OK,
		"Stainless 316": check.OK, "A4": check.OK, "silicon bronze": check.OK, "copper": check.OK,
		"zinc": check.Fails, "electroplated zinc": check.Fails, "mechanically plated": check.Fails, "plain": check.Fails, "black": check.Fails, "painted": check.Fails, "none": check.Fails,
	} {
		r := report(detailtest.Demo(t, "deck", "fasteners.through.coating="+coating))
		if s := found(t, r, "coating"); s.Verdict != want {
			t.Errorf("%q: %v, want %v", coating, s.Verdict, want)
		}
	}
}

// Steels at least as strong in bending as A307 or 4.6, however they are written; another is not checked, for its
// strength is not known.
func TestGrades(t *testing.T) {
	for grade, known := range map[string]bool{
		"A307": true, "a307": true, "A 307": true, "A325": true, "A449": true, "SAE 5": true, "4.6": true, "8.8": true, "A4-70": true,
		"A30": false, "A3070": false, "3.6": false, "brass": false, "nylon": false,
	} {
		r := report(detailtest.Demo(t, "deck", "fasteners.through.grade="+grade))
		s := r.Find("steel")
		if known && s != nil || !known && (s == nil || s.Verdict != check.NotChecked) {
			t.Errorf("%q: %+v", grade, s)
		}
	}
	if r := report(detailtest.Demo(t, "deck", "fasteners.through.kind=evaluated", "fasteners.through.grade=own")); r.Find("steel") != nil {
		t.Error("an evaluated fastener stands on its report, not on its steel")
	}
}

// Ledger and blocks are treated each for itself.
func TestTreated(t *testing.T) {
	for _, c := range []struct {
		ledger, blocks string
		wantL, wantB   check.Verdict
	}{{"yes", "yes", check.OK, check.OK}, {"no", "yes", check.Fails, check.OK}, {"yes", "no", check.OK, check.Fails}, {"no", "no", check.Fails, check.Fails}} {
		r := report(detailtest.Demo(t, "deck", "ledger.treated="+c.ledger, "blocks.treated="+c.blocks))
		if l, b := found(t, r, "treated_ledger").Verdict, found(t, r, "treated_blocks").Verdict; l != c.wantL || b != c.wantB {
			t.Errorf("ledger %s, blocks %s: %v and %v", c.ledger, c.blocks, l, b)
		}
	}
	// Blocks not spoken of are as the ledger.
	if s := found(t, report(detailtest.Demo(t, "deck", "ledger.treated=no")), "treated_blocks"); s.Verdict != check.Fails {
		t.Errorf("blocks of an untreated ledger: %v", s.Verdict)
	}
}
