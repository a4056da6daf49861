package compare

import (
	"standclear/detail"
	"standclear/detail/unit"
)

// Parts counts what a way is made of and what it takes from the wall.
type Parts struct {
	Counted   bool // false: nothing is counted here
	Blocks    int
	Spacing   unit.Length // the greatest, axis to axis
	Standoff  unit.Length
	Fasteners int
	Washers   int
	Screws    int         // of the blocks
	Ledger    unit.Length // its length
	Bought    unit.Length // of all lumber, as sticks
	Cut       unit.Length // of all lumber, as pieces
	Pieces    int         // cut from lumber and boards
	Holes     int         // through the sheathing and the water barrier
	Inside    int         // nuts, or points of fasteners, to be reached from inside
	Bays      int         // places behind the rim where backing or ties go in
	NoBolts   string      // the fasteners are not counted, since
}

// partsOf counts an assembly.
func partsOf(a *detail.Assembly) Parts {
	p := Parts{
		Counted: true, Blocks: len(a.Blocks), Standoff: unit.Length(a.Frame.LedgerBack), Fasteners: a.Count(detail.Bolt), Washers: a.Count(detail.Washer),
		Screws: a.Count(detail.PlyScrew), Ledger: a.Spec.Ledger.Length,
	}
	for i := range a.Blocks[:max(0, len(a.Blocks)-1)] {
		p.Spacing = max(p.Spacing, unit.Length(a.Blocks[i+1].X-a.Blocks[i].X))
	}
	for _, l := range a.CutList() {
		for _, s := range l.Sticks {
			p.Pieces += s.Pieces()
			if l.Sheet {
				continue
			}
			p.Bought += s.Length
			for _, c := range s.Cuts {
				p.Cut += unit.Length(len(c.IDs)) * c.Each
			}
		}
	}
	for _, b := range a.Find(detail.Bolt, detail.PlyScrew, detail.TensionRod) {
		if at := b.Bounds(); at.Min.Y < -touch && at.Max.Y > touch {
			p.Holes++
		}
	}
	for _, n := range a.Find(detail.Nut) {
		if n.Bounds().Max.Y < 0 {
			p.Inside++
		}
	}
	if a.Count(detail.Backing)+a.Count(detail.TieStrap) > 0 {
		p.Bays = len(a.Blocks)
	}
	return p
}

// touch is how near two faces are the same, mm.
const touch = 0.01
