package strength

import "standclear/detail/unit"

// Sheathing is the panel between rim and block. FcPerp is its dry bearing strength across the face;
// 0 with Structural set takes the value in assume.go.
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
	Unlisted      string // why no values of its wood are known; "" = they are
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
	At       []unit.Length // x of each axis
	Flange   unit.Length   // width of the joist, or of its flange
	Squash   bool          // squash blocks at the bearing of I-joists
	Parallel bool          // the joists run along the rim, not onto it
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
	Kind          BackingKind
	Wood          Lumber
	NotAttachable string // why nothing may be fastened to it; "" = it may
	Unlisted      string // why no values of its wood are known; "" = they are
	Reported      bool   // engineered: G is the maker's published value for bolts
	Panel         bool   // engineered or panel product
	Thickness     unit.Length
	Pieces        []Span     // where each piece stands; empty = not measured
	Fixing        unit.Force // allowable vertical load, up or down, of its own fixings to joists or rim, per block; 0 = not stated
}

// Span is a stretch along the ledger.
type Span struct{ From, To unit.Length }

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

// Tie is the devices that tie the backing to the house joists, and the lateral devices apart from them.
type Tie struct {
	Kind    TieKind
	Rating  unit.Force    // allowable, of one device, at a load duration of CD = 1
	At      []unit.Length // x of each device; empty = not measured
	Height  unit.Length   // z of the lowest of them, at mid-width; 0 = not measured
	Lateral Lateral
}

// Lateral is the tension hardware of IRC R507.9.2.
type Lateral struct {
	Count   int
	Rating  unit.Force  // allowable, each
	FromEnd unit.Length // of the outermost devices from the ledger ends; 0 = not measured
}
