package design_test

import (
	"math"
	"testing"
)

// The inch deck by hand, wet treated softwood of 37.46 lb/ft3: boards of 1 in, 5 1/2 in wide in 5.618 in, 3.06 psf;
// fifteen joists of 1 1/2 x 7 1/4 in over 14 2/3 ft: 0.07552 x 15/14.667 x 37.46 = 2.89 psf, less the 1 1/2 in of ledger
// they do not cross, 2.86; a ledger of 1 1/2 x 9 1/4 (9 1/16 at the face) on 65 in: 0.0954 x 37.46/5.417 = 0.66 psf.
func TestDeadLoadOfTheParts(t *testing.T) {
	_, r := demoReport(t, "deck")
	s := r.Find("dead_buildup")
	if s == nil {
		t.Fatal("no weight of the parts")
	}
	const psf = 47.880259
	for i, want := range []float64{3.06, 2.86, 0.66} {
		if got := s.With[i].Value.V / psf; math.Abs(got-want) > 0.02 {
			t.Errorf("%s weigh %.3f psf, want %.2f", s.With[i].Symbol, got, want)
		}
	}
	if got := s.Value.V / psf; math.Abs(got-6.58) > 0.03 {
		t.Errorf("%.3f psf in all, want 6.58", got)
	}
}

// A dead load less than what is drawn weighs fails, with the load to state.
func TestDeadLoadTooSmall(t *testing.T) {
	_, r := demoReport(t, "deck", "loads.dead=5psf")
	if s := r.Find("dead_buildup"); s.Verdict.String() != "FAILS" || s.Fix == "" || s.Reason == "" {
		t.Errorf("5 psf: %v, %q", s.Verdict, s.Fix)
	}
}

// A No. 10 screw, 0.190 in over a root of 0.152: 7/8 of each in pine of 0.55.
func TestLeadHolesOfTheBlock(t *testing.T) {
	_, r := demoReport(t, "deck")
	s := r.Find("lead_hole_screws")
	if s == nil || math.Abs(s.With[0].Value.V/25.4-0.16625) > 1e-6 || math.Abs(s.Value.V/25.4-0.133) > 1e-6 {
		t.Errorf("%+v", s)
	}
	if r.Find("lead_hole_rim") != nil {
		t.Error("a bolt has a lead hole")
	}
}
