package strength

import "standclear/detail/unit"

// LeadHoles returns the hole to bore for a lag or wood screw before it is driven, in wood of specific gravity
// g: for the shank, and the least and greatest for the thread. NDS 2018 12.1.4.3 for lag screws (read in
// part, confirm): 40 to 70 % of the diameter up to 0.50, 60 to 75 % up to 0.60, 65 to 85 % beyond. 12.1.5.3
// for wood screws across a shear plane (from memory, confirm): shank 7/8 of the diameter and thread 7/8 of
// the root up to 0.60, the whole of each beyond. ok is false for a bolt or a size no table lists.
func LeadHoles(kind Kind, d unit.Length, g float64) (shank, least, most unit.Length, ok bool) {
	dowel, ok := DowelOf(kind, d, 0)
	switch {
	case !ok || kind == Bolt:
		return 0, 0, 0, false
	case kind == Screw && g <= 0.6:
		return d * 7 / 8, dowel.Root * 7 / 8, dowel.Root * 7 / 8, true
	case kind == Screw:
		return d, dowel.Root, dowel.Root, true
	case g <= 0.5:
		return d, d * 40 / 100, d * 70 / 100, true
	case g <= 0.6:
		return d, d * 60 / 100, d * 75 / 100, true
	}
	return d, d * 65 / 100, d * 85 / 100, true
}
