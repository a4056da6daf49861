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
	Lateral    bool         // wind or seismic force is to be resisted by this ledger
	Seismic    string       // seismic design category, "low" or "A" to "F"; "" = not stated
	SnowShed   bool         // a roof or wall above can shed or drift snow onto the deck
}

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
	Cantilever  unit.Length // past the beam
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

// Sheathing is the panel between rim and block. FcPerp is its dry bearing strength across the face;
// 0 with Structural set takes the value of assumption.go.
type Sheathing struct {
	Thickness  unit.Length
	FcPerp     unit.Pressure
	Structural bool // a wood structural panel or lumber; false: gypsum, fibreboard, foam
}

// RimKind is what the band behind the sheathing is made of.
type RimKind int

// The rim kinds; only sawn lumber and engineered rim board are within this package.
const (
	UnknownRim RimKind = iota
	SawnRim
	EngineeredRim
	IJoistRim
	TrussRim
)

// String returns the rim kind as printed.
func (k RimKind) String() string {
	return word(int(k), "unknown", "sawn lumber", "engineered rim board", "I-joist", "truss")
}

// Bearing is what a rim stands on.
type Bearing int

// The bearings; only OnPlate carries a block.
const (
	UnknownBearing Bearing = iota
	OnPlate
	OnHangers
	OnNothing
)

// String returns the bearing as printed.
func (b Bearing) String() string {
	return word(int(b), "not stated", "plate", "hangers", "nothing (opening)")
}

// Rim is the band the blocks are bolted to.
type Rim struct {
	Kind          RimKind
	Wood          Lumber
	NotAttachable string // why nothing may be fastened to it; "" = it may
	Reported      bool   // engineered rim: G is the maker's published value for bolts
	Thickness     unit.Length
	Top, Bottom   unit.Length // z
	Service       State
	Bearing       Bearing
}

// JoistKind is the kind of the house's floor joists.
type JoistKind int

// The kinds of house joist.
const (
	UnknownJoist JoistKind = iota
	SawnJoist
	IJoist
	Truss
)

// HouseJoists are the floor joists behind the rim.
type HouseJoists struct {
	Kind     JoistKind
	Spacing  unit.Length
	Squash   bool // squash blocks at the bearing of I-joists
	Parallel bool // the joists run along the rim, not onto it
}

// BackingKind is the blocking behind the rim at each block.
type BackingKind int

// Loose blocking is squeezed by the bolts only; carried blocking stands on the plate or is fastened
// for its share of the load, full depth and tight.
const (
	NoBacking BackingKind = iota
	LooseBacking
	CarriedBacking
)

// Backing is the solid blocking between house joists, behind the rim at each block.
type Backing struct {
	Kind      BackingKind
	Wood      Lumber
	Reported  bool // engineered: G is the maker's published value for bolts
	Panel     bool // engineered or panel product
	Thickness unit.Length
}

// Plate is the sill or top plate below the rim. FcPerp is its dry reference value.
type Plate struct {
	Thickness, Width unit.Length
	FcPerp           unit.Pressure
}

// TieKind is the hardware that takes the pull behind the rim into the floor.
type TieKind int

// The ties.
const (
	NoTie TieKind = iota
	Strap
	HoldDown
)

// Tie is the floor tie at each block and the lateral devices apart from the blocks.
type Tie struct {
	Kind    TieKind
	Rating  unit.Force // allowable, per block
	Lateral Lateral
}

// Lateral is the tension hardware of IRC R507.9.2.
type Lateral struct {
	Count   int
	Rating  unit.Force  // allowable, each
	FromEnd unit.Length // of the outermost devices from the ledger ends
}
