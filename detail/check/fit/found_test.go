package fit_test

import (
	"testing"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/detailtest"
	"standclear/geom"
)

func mustNotPass(t *testing.T, what, name string, sets ...string) {
	t.Helper()
	r := report(detailtest.Demo(t, name, sets...))
	if r.Worst() <= check.OK {
		t.Errorf("%s: every check of fit and water holds", what)
	}
}

// What cannot be built, or does not shed water, never passes.
func TestNothingPassesUnreported(t *testing.T) {
	mustNotPass(t, "no wrap lap at all", "deck", "water.wrap_lap=0in")
	mustNotPass(t, "patch narrower than its block", "deck", "water.patch.width=6in")
	mustNotPass(t, "ledger screws under the bolts' plates", "deck", "blocks.ledger_screws={count: 4, diameter: 0.19in, length: 2 3/4in}")
	mustNotPass(t, "a coating that is not stainless", "deck", "fasteners.through.coating=zinc, not stainless")
}

func TestLateralJoistsAreThere(t *testing.T) {
	r := report(detailtest.Demo(t, "deck", "deck.joists.positions=[3/4in, 20in, 40in, 60in, 80in, 100in, 120in, 140in, 175 1/4in]"))
	if s := r.Find("lateral_joists"); s.Verdict != check.Fails {
		t.Errorf("no deck joist beside LT1: %v", s.Verdict)
	}
}

// A head that stands in the ledger is reported for a through set too.
func TestHeadInTheLedgerOfAThroughSet(t *testing.T) {
	a := detailtest.Demo(t, "deck")
	shift(a.Find(detail.Bolt)[0], geom.Vec3{Y: -30})
	r := report(a)
	if s := r.Find("clash_hardware"); s.Verdict != check.Fails {
		t.Errorf("a head in the ledger: %v", s.Verdict)
	}
}
