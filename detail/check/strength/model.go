package strength

import "standclear/detail/unit"

// Model is all the checks need to know of one ledger, taken from the parts as they stand in place.
//
// Frame: x runs right from the left end of the ledger seen from outside, z up from the finished
// floor; thicknesses are along y, outward from the sheathing. A nil pointer, a zero strength and an
// empty kind mean "not stated" and lead to NOT CHECKED, never to a pass.
type Model struct {
	System      unit.System // the units reasons are worded in
	Use         Use
	Loads       Loads
	Joists      Joists
	PointLoads  []PointLoad
	GuardPosts  []unit.Length // x of guard posts fastened to the ledger or a block
	Ledger      Ledger
	Blocks      Blocks
	Sheathing   Sheathing
	Rim         Rim
	HouseJoists HouseJoists
	Backing     Backing
	Plate       Plate
	Fasteners   Fasteners
	Tie         Tie
	Assume      Assume
}

// Use says what hangs on the wall and where.
type Use struct {
	Balcony    bool // false: a deck
	Support    Support
	UpperFloor bool         // the storey served is not the lowest
	AboveGrade *unit.Length // greatest height of the walking surface above ground; nil = not stated
	Lateral    Answer       // wind or seismic force is to be resisted by this ledger
	Seismic    string       // seismic design category, "low" or "A" to "F"; "" or "unknown" = not stated
	Above      Above
}

// Answer is a yes or no that may not have been given.
type Answer int

// The answers.
const (
	NotSaid Answer = iota
	No
	Yes
)

// Above is what stands over the deck and can shed or drift snow onto it.
type Above int

// The surroundings.
const (
	UnknownAbove Above = iota
	OpenSky
	RoofOrWall
)

// Support is what carries the outer edge.
type Support int

// The supports; only Posts is within this package.
const (
	UnknownSupport Support = iota
	Posts
	Braces
	Hung
	Cantilever
)

// String returns the support as printed.
func (s Support) String() string {
	return word(int(s), "not stated", "posts", "braces", "hung", "cantilever")
}

// Loads are the area loads on the deck. Snow of 0 is stated and means none; nil is not stated.
type Loads struct {
	Dead, Live, Snow *unit.Pressure
	GroundSnow       *unit.Pressure // on the ground at the site, which a deck carries at least; nil = not stated
	Basis            Basis
}

// Basis is the document the live load is taken from.
type Basis int

// IRC asks 40 psf of a deck; ASCE asks one and a half times the area served, 60 psf at a dwelling.
const (
	IRC Basis = iota
	ASCE
)

// Joists are the deck joists hung on the ledger.
type Joists struct {
	Span        unit.Length // ledger face to beam
	Cantilever  unit.Length // past the beam; negative when the lengths given contradict each other
	Strip       unit.Length // width of deck between the joist ends and the house, over the ledger
	Spacing     unit.Length
	At          []unit.Length // x of each joist; empty: only the smeared load is used
	Seat        unit.Length   // length of the hanger seat; the load line is at half of it
	Hanger      unit.Force    // allowable load of one hanger; 0 = not stated
	HangerLower bool          // the hanger fastens only into the lower half of the ledger
	Restrained  bool          // each joist holds the ledger top and bottom, so that it cannot twist
}

// PointLoad is a force at one place of the ledger, at allowable-stress level, downward.
type PointLoad struct {
	Name string
	X    unit.Length
	Load unit.Force
}

// State is how wet a piece of wood is, the line drawn at 19 % moisture content.
type State int

// The states. Unknown is taken as the worse one.
const (
	Unknown State = iota
	Wet
	Dry
)

// String returns the state as printed.
func (s State) String() string { return word(int(s), "unknown", "wet", "dry") }

// Moisture is the state of a piece when it is fastened and while it is in use.
type Moisture struct{ Assembly, Service State }

// Lumber is a graded wood with its reference design values, before any factor. A panel or an
// engineered product fills in the values its maker or standard gives. Zero is not stated.
type Lumber struct {
	Name      string // as printed
	Fb, Fv    unit.Pressure
	FcPerp, E unit.Pressure
	G         float64 // specific gravity for fastening, oven dry
	CF        float64 // size factor for Fb; 0 is 1 (built into the value)
	Incised   bool
}

// Ledger is the beam on the blocks. Top is its lowest top edge when the top is bevelled.
type Ledger struct {
	Wood        Lumber
	Moisture    Moisture
	Length      unit.Length
	Thickness   unit.Length
	Top, Bottom unit.Length   // z
	Splices     []unit.Length // x
}
