package strength_test

import (
	"fmt"

	"standclear/detail/check/strength"
	"standclear/detail/unit"
)

// A 5/8 in bolt from a 1 1/2 in Southern Pine ledger into a 1 1/2 in Hem-Fir rim, across the grain of both,
// with 1/2 in of sheathing between.
func ExampleDowel_Yield() {
	bolt, _ := strength.DowelOf(strength.Bolt, 0.625*unit.Inch, 0)
	side := strength.Member{Bearing: 1.5 * unit.Inch, Fe: strength.DowelBearing(0.55, bolt.Nominal, 90), Angle: 90}
	main := strength.Member{Bearing: 1.5 * unit.Inch, Fe: strength.DowelBearing(0.43, bolt.Nominal, 90), Angle: 90}
	for _, m := range bolt.Yield(side, main, 0.5*unit.Inch) {
		fmt.Printf("%-4s %4.0f lb\n", m.Name, m.Z.Pounds())
	}
	// Output:
	// Im    422 lb
	// Is    609 lb
	// II    190 lb
	// IIIm  354 lb
	// IIIs  377 lb
	// IV    522 lb
}
