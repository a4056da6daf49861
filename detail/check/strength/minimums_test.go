package strength

import (
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// 3 in of boards over the ledger: (66 + 3)/12 x 64.5 = 370.9 plf.
func TestStripOverTheLedger(t *testing.T) {
	m := scenarioB()
	m.Joists.Strip = 3 * in
	r, _ := Run(m)
	wants(t, r, map[string]float64{"tributary_width": 69, "ledger_line_load": 370.875})
}

// A tail of 36 in past a span of 132 in under 0.75 x 40 + 0.75 x 30 = 52.5 psf: 52.5 x 36^2/(2 x 132 x 12) = 21.48
// plf lift, and 0.6 x 12 x (132^2 - 36^2)/(2 x 132 x 12) = 36.65 plf hold. At 60 in 59.66 against 31.42. The
// load of the ledger stays 354.75 plf.
func TestTail(t *testing.T) {
	for _, c := range []struct {
		past, lift, hold float64
		want             check.Verdict
	}{{36, 21.477, 36.654, check.OK}, {60, 59.659, 31.418, check.Engineer}} {
		m := scenarioB()
		m.Joists.Cantilever = unit.Length(c.past) * in
		r, _ := Run(m)
		wants(t, r, map[string]float64{"scope_joist_cantilever": c.lift, "scope_joist_cantilever@limit": c.hold, "ledger_line_load": 354.75})
		if s := r.Find("scope_joist_cantilever"); s.Verdict != c.want {
			t.Errorf("%v in past the beam: %v, want %v", c.past, s.Verdict, c.want)
		}
	}
}

// While a load is not stated nothing that rests on the loads is OK.
func TestNothingIsOKOnPartOfTheLoads(t *testing.T) {
	for name, leave := range map[string]func(*Loads){
		"live": func(l *Loads) { l.Live = nil }, "snow": func(l *Loads) { l.Snow = nil },
	} {
		m := scenarioB()
		leave(&m.Loads)
		full, _ := Run(scenarioB())
		r, _ := Run(m)
		heavier := scenarioB()
		heavier.Loads = Loads{Dead: psfp(24), Live: psfp(80), Snow: psfp(60), GroundSnow: psfp(60)}
		twice, _ := Run(heavier)
		n := 0
		for _, s := range r.Steps {
			one, two := full.Find(s.ID), twice.Find(s.ID)
			if one == nil || two == nil || one.Limit == nil || one.Value == two.Value || s.Group == check.Loads && s.ID != "hanger" || s.ID == "scope_live" {
				continue
			}
			if n++; s.Verdict == check.OK && s.ID != "block_couple" { // whose ratio no load changes
				t.Errorf("%s not stated: %s is OK", name, s.ID)
			}
			if s.Verdict == check.NotChecked && !strings.Contains(s.Reason, "loads."+name) {
				t.Errorf("%s not stated: %s says %q", name, s.ID, s.Reason)
			}
		}
		if n < 20 {
			t.Errorf("%s: only %d steps follow the loads", name, n)
		}
	}
}
