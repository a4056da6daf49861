package check

import (
	"math"

	"standclear/detail/unit"
)

// HoleTolerance is how near to its place a hole, an edge or a face must be: 1/16 in, 1 mm (site practice, no source).
func HoleTolerance(sys unit.System) unit.Length {
	if sys == unit.SI {
		return unit.MM
	}
	return unit.Inch / 16
}

// BlockTolerance is how far a block may stand off its place along the ledger: what bolts have to spare at the
// house joists by the report of the design, at most 1/4 in or 6 mm (judgement).
func BlockTolerance(sys unit.System, r *Report) unit.Length {
	most := unit.Inch / 4
	if sys == unit.SI {
		most = 6 * unit.MM
	}
	if s := r.Find("bolt_joist_clearance"); s != nil && s.Limit != nil {
		most = unit.Length(math.Min(float64(most), math.Max(0, s.Value.V-s.Limit.V)))
	}
	return most
}
