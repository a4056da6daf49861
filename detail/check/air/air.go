// Package air checks the gap behind the ledger: whether air passes through it from its foot to its top,
// and whether what rain gets in can dry. The way of the air is measured on the parts of the assembly.
//
//	p := air.PathOf(assembly)
//	fmt.Println(p.Throat(), p.Closed)
//	air.Run(assembly, &report)
package air

import (
	"fmt"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/unit"
)

// noPath is the reason of every cavity that no air passes through.
const noPath = "no air path: cannot dry or be inspected"

// checker is one run: the assembly, the path through its gap, and the report it fills.
type checker struct {
	a    *detail.Assembly
	path Path
	r    *check.Report
	sys  unit.System
}

// Run adds the steps about the gap, its air and its drying to the report, group Water, and what they rest on to its
// assumptions.
func Run(a *detail.Assembly, r *check.Report) {
	c := checker{a: a, path: PathOf(a), r: r, sys: a.Spec.Words()}
	c.gap()
	c.ends()
	c.areas()
	c.sills()
	c.cavities()
	c.drying()
}

// text prints a length as a drafter writes it.
func (c *checker) text(mm float64) string { return unit.Length(mm).Text(c.sys) }

func length(mm float64) unit.Quantity { return unit.Length(mm).Q() }

// least is the depth that water does not bridge, mm.
func (c *checker) least() float64 { return leastGap(c.a.Spec) }

// orNoPath returns the reason when something is left open, and that there is no air path when nothing is.
func orNoPath(open float64, format string, args ...any) string {
	if open <= touch {
		return noPath
	}
	return fmt.Sprintf(format, args...)
}
