package strength

import (
	"testing"

	"standclear/detail/unit"
)

// At the face of the ledger the weaker of block and ledger decides: 400 x 0.67 psi of a soft ledger, 378.55 of a hard one.
func TestFootAgainstASoftLedger(t *testing.T) {
	for strength, want := range map[unit.Pressure]float64{400: 268, 700: 378.55} {
		m := lagged()
		m.Ledger.Wood.FcPerp = strength * unit.PSI
		r, _ := Run(m)
		wants(t, r, map[string]float64{"foot_peak_stress_ledger@limit": want})
	}
}

// The inner end governs pull and shear where the backing is soft: 60.298 psi of 100 x 1.125 is 0.536, beside the whole dowel's
// 0.79906, which holds at that end as at the other.
func TestSoftBackingPullsAndShears(t *testing.T) {
	m := scenarioB()
	m.Backing.Wood.FcPerp = 100 * unit.PSI
	r, _ := Run(m)
	wants(t, r, map[string]float64{"linear_interaction_top_bolt": 1.3350})
}

// A lag from the ledger bears in the block as deep as it stands there less half its tip: 4 - 0.25 - 1.5 - 7/64 = 2.1406 in of 3.
func TestLagBearsInTheBlockAsDeepAsItStands(t *testing.T) {
	m := lagged()
	front := *m.Fasteners.ToRim
	front.Length, front.Columns = 4*in, lengths(-1.75, 1.75)
	m.Fasteners.ToBlock = &front
	r, _ := Run(m)
	wants(t, r, map[string]float64{"plane2_block_from_ledger_to_block[lm]": 2.1406})
}
