package detail

import (
	"cmp"
	"math"
	"slices"

	"standclear/detail/spec"
	"standclear/geom"
)

// LedgerHole is one hole of a piece of the ledger, measured from its lower left corner seen from outside.
type LedgerHole struct {
	Block  int // index of the block behind it
	X, Z   float64
	Dia    float64
	Set    *spec.Set
	Hanger string // ID of the hanger that covers some of the hole, "" for none
	Washer string // ID of the hanger that lies under the washer of its bolt, "" for none
}

// LedgerHoles returns the holes of a piece of the ledger from its left end, those of one column from the foot up.
func (a *Assembly) LedgerHoles(piece *Part) []LedgerHole {
	at := piece.Bounds()
	var out []LedgerHole
	for i := range a.Blocks {
		for _, h := range a.holes(i) {
			if h.Set == a.Spec.Fasteners.ToRim || h.X <= at.Min.X || h.X >= at.Max.X {
				continue
			}
			hole := LedgerHole{Block: i, X: h.X - at.Min.X, Z: h.Z - at.Min.Z, Dia: h.Dia, Set: h.Set}
			hole.Hanger = a.hangerOver(h.X, h.Z, h.Dia/2)
			hole.Washer = a.hangerOver(h.X, h.Z, math.Max(h.Dia, h.Set.Washer.Size.MM())/2)
			out = append(out, hole)
		}
	}
	slices.SortStableFunc(out, func(p, q LedgerHole) int {
		if math.Abs(p.X-q.X) > geom.Tol {
			return cmp.Compare(p.X, q.X)
		}
		return cmp.Compare(p.Z, q.Z)
	})
	return out
}

// hangerOver returns the hanger that comes nearer than r to a place on the face of the ledger.
func (a *Assembly) hangerOver(x, z, r float64) string {
	for _, h := range a.Find(Hanger) {
		b := h.Bounds()
		dx := math.Max(0, math.Max(b.Min.X-x, x-b.Max.X))
		dz := math.Max(0, math.Max(b.Min.Z-z, z-b.Max.Z))
		if math.Hypot(dx, dz) < r-geom.Tol {
			return h.ID
		}
	}
	return ""
}
