// Package layout finds where the blocks go along the ledger.
//
// The search takes the fewest blocks that keep the greatest spacing and the end ranges, miss the
// house joists and the obstacles, and then lets them carry as evenly as they can. Lengths are
// millimetres from the left end of the ledger, seen from outside.
//
//	r := layout.Find(layout.Rules{Length: 4470.4, MaxSpacing: 609.6, ...})
//	fmt.Println(r.X, r.Why)
package layout

import (
	"math"
	"sort"

	"standclear/detail/kept"
	"standclear/detail/same"
)

// Zone is a stretch along the ledger, ends included.
type Zone struct {
	Name     string
	From, To float64
	Room     float64 // a bolt axis keeps this far from it: half a washer, or the wrench
}

// Axes is a row of joists that a bolt must keep away from.
type Axes struct {
	Kind  string // "house joist", "deck joist"
	At    []float64
	Clear float64 // least distance, bolt axis to joist axis
}

// Rules is what a layout must keep.
type Rules struct {
	Length         float64   // of the ledger
	Width          float64   // of a block
	Columns        []float64 // bolt columns from the block centre, to be kept off joists and inside zones
	MaxSpacing     float64   // centre to centre
	MinSpacing     float64   // the same; 0 is the width of a block
	EndMin, EndMax float64   // block centre from either end
	Grid           float64   // step of the search
	Avoid          []Axes    // joists the bolts must stay off
	Inside         []Zone    // bolts may not pass here
	Outside        []Zone    // blocks may not stand here
}

// Clash is one rule a position breaks.
type Clash struct {
	Block    int // index along the row
	X        float64
	Kind     string  // of the joist row, or "inside", "outside", "spacing", "end"
	Name     string  // of the zone, or "house joist 3"
	At       float64 // joist axis, or the near edge of the zone
	Distance float64 // bolt axis to joist axis (joist); the space (spacing); 0 else
	Need     float64 // what the rule asks
}

// Row is one set of block centres and what it breaks.
type Row struct {
	X       []float64
	Clashes []Clash
}

// Result is the layout found and how it was come by.
type Result struct {
	Row
	Equal    bool    // equal spaces
	FirstTry Row     // equal division, tried first
	Limit    float64 // the greatest spacing used by the search: MaxSpacing, or more when that was impossible
	Feasible bool    // the rules as given can be kept
	Tried    []int   // block counts for which no row was found
	Forced   bool    // positions were given, not searched
	Unplaced bool    // no row exists at any spacing
}

// Spaces returns the distances between neighbours.
func (r Row) Spaces() []float64 {
	s := make([]float64, 0, len(r.X))
	for i := 1; i < len(r.X); i++ {
		s = append(s, r.X[i]-r.X[i-1])
	}
	return s
}

// Rows and joists lately found: of many designs most keep the same rules.
var (
	foundRows   = kept.New(1<<20, func(r Result) int { return 400 + 120*(len(r.Clashes)+len(r.FirstTry.Clashes)+len(r.X)) })
	foundJoists = kept.New(1<<18, func(x []float64) int { return 100 + 8*len(x) })
	fixedJoists = kept.New(4<<20, func(f *FixedJoists) int { return 200 + 64*len(f.left.at) }) // spots and runs both ways
)

// Find returns the best layout. When the rules cannot be kept it returns the row at the smallest
// greater spacing that can, with Feasible false and Limit saying which. The lists of the result are shared with
// others who keep the same rules and must not be changed.
func Find(r Rules) Result { return foundRows.Get(same.Of(r), r.find) }

func (r Rules) find() Result {
	first := r.Judge(r.EqualRow())
	if len(first.Clashes) == 0 {
		return Result{Row: first, Equal: true, FirstTry: first, Limit: r.MaxSpacing, Feasible: true}
	}
	free := r.free()
	if x, tried := r.search(free, r.MaxSpacing); x != nil {
		row := r.Judge(x)
		return Result{Row: row, Equal: even(x), FirstTry: first, Limit: r.MaxSpacing, Feasible: true, Tried: tried}
	}
	limit, x := r.relax(free)
	if x == nil {
		return Result{Row: first, FirstTry: first, Limit: r.MaxSpacing, Unplaced: true}
	}
	return Result{Row: r.Judge(x), FirstTry: first, Limit: limit}
}

// Force judges given positions as they stand.
func Force(r Rules, x []float64) Result {
	x = append([]float64(nil), x...)
	sort.Float64s(x)
	row := r.Judge(x)
	return Result{Row: row, Equal: even(x), FirstTry: row, Limit: r.MaxSpacing, Feasible: len(row.Clashes) == 0, Forced: true}
}

// EqualRow divides the ledger into the fewest equal spaces that keep the greatest spacing. The end
// blocks stand with about 75 mm of ledger beyond them (common practice, no source), held to the
// end range.
func (r Rules) EqualRow() []float64 {
	const beyond = 75
	e := r.Width/2 + beyond
	if r.Grid > 0 {
		e = math.Round(e/r.Grid) * r.Grid
	}
	e = math.Min(math.Max(e, r.EndMin), r.EndMax)
	e = math.Min(e, r.Length/2)
	run := r.Length - 2*e
	n := int(math.Ceil(run/r.MaxSpacing - 1e-9))
	if n < 1 {
		n = 1
	}
	x := make([]float64, n+1)
	for i := range x {
		x[i] = e + run*float64(i)/float64(n)
	}
	return x
}

func even(x []float64) bool {
	for i := 2; i < len(x); i++ {
		if math.Abs((x[i]-x[i-1])-(x[1]-x[0])) > 1e-6 {
			return false
		}
	}
	return len(x) > 1
}
