package stock_test

import (
	"fmt"

	"standclear/detail/stock"
	"standclear/detail/unit"
)

func ExampleLumber() {
	v, ok := stock.Lumber("southern pine", "No.2", 9.25*unit.Inch)
	fmt.Println(v.Fb.Text(unit.IP), v.FcPerp.Text(unit.IP), v.G, ok)
	// Output: 800 psi 565 psi 0.55 true
}

func ExampleRim() {
	rim, _ := stock.Rim("brick veneer", 11.25*unit.Inch)
	fmt.Println(rim.Attachable, rim.Reason)
	// Output: false veneer carries nothing but itself: IRC R507 lets no ledger hang on it
}

func ExampleBoltOf() {
	b, _ := stock.BoltOf(0.5 * unit.Inch)
	least, most := b.Hole()
	fmt.Println(b.Name, b.Flats.Text(unit.IP), least.FeetInches(unit.ThirtySecond), most.FeetInches(unit.ThirtySecond))
	// Output: 1/2 3/4" 17/32" 9/16"
}
