// Package spec is the project file: what a surveyor measured and a designer chose.
//
// Read turns a YAML file into a Spec or into a list of Problems, each with its position. One table of
// keys drives the reading, the defaults, the starter file, the help and the hash.
//
//	s, problems := spec.Read("deck.yaml", src, []string{"blocks.max_spacing=18in"})
//	if s == nil {
//		fmt.Fprintln(os.Stderr, problems.Error())
//	}
//
// Frame of the job, seen from outside: x runs right from the left end of the ledger, y outward
// from the outer face of the sheathing, z up from the finished floor of the storey served.
package spec

import "standclear/detail/unit"

// Spec is one attachment: a wall, what hangs on it, and how. Fields are in the order of the file.
type Spec struct {
	Project    Project
	Site       Site
	Floor      Floor
	Wall       Wall
	Foundation Foundation
	Deck       Deck
	Ledger     Ledger
	Blocks     Blocks
	Fasteners  Fasteners
	Tie        Tie
	Water      Water
	Doors      []Door
	Obstacles  []Obstacle
	Loads      Loads
	Sheets     Sheets
	Stock      Stock
	Rates      *Rates // nil when none are given
	Assume     Assume

	Defaults []Default    // what the file left to the program, in file order
	Warnings Problems     // what reads but may not be meant, by position
	Wording  *unit.System // what reasons of checks are worded in; nil is the project's own system
	Source   string       // name of the file, for messages
}

// Default is a parameter the file did not give.
type Default struct {
	Key, Value string
	Why        string // what it rests on
}

// Project is what the title block says.
type Project struct {
	Name      string
	Element   string // "REAR DECK LEDGER"
	Number    string
	Date      string // ISO date as given; never the clock
	Drawn     string
	Checked   string
	Reviewer  Reviewer
	Code      string // code edition as the user states it
	System    unit.System
	Notes     []string   // the project's own notes, printed after the general ones
	Revisions []Revision // of the drawings, oldest first
}

// Revision is one change of the drawings after their first issue.
type Revision struct{ Mark, Date, By, Text string }

// Reviewer is the licensed professional who took responsibility; empty until then.
type Reviewer struct{ Name, Licence, Date string }

// Site is the climate and the ground.
type Site struct {
	Inside        *unit.Temp
	Humidity      *unit.Percent
	Outside       *unit.Temp // design temperature
	ColdMonth     *unit.Temp // mean of the coldest month
	DegreeDays    *unit.DegreeDays
	Rain          *unit.Length // per year
	GroundSnow    *unit.Pressure
	Wind          *unit.Speed // ultimate, 3 s gust
	Seismic       string      // "low", design category A to F, or unknown
	Termites      string      // none, slight, moderate, heavy, unknown
	FireInterface bool
	Frost         *unit.Length
	RoofAbove     string // none, roof, wall, unknown: what can shed or drift snow onto the deck
	Zone          string // climate zone 1 to 8, 4C for marine, or unknown
	Months        []Month
}

// Month is the mean climate of a month; a Site has twelve, January first, or none.
type Month struct {
	Outside        unit.Temp
	Humidity       unit.Percent  // outside
	Inside         *unit.Temp    // room air, where it differs from the winter's
	InsideHumidity *unit.Percent // room air
}

// Floor is the house side at the ledger: the rim and what stands behind it.
type Floor struct {
	Finish, Subfloor unit.Length
	Rim              Rim
	Joists           HouseJoists
	Backing          Backing
	Bearing          string      // what the rim stands on: plate, hangers, nothing, unknown
	Plate            unit.Length // thickness of the plate(s) below the rim
	PlateWidth       unit.Length
	Access           string      // open, finished, strip: can the nuts be reached from inside
	Strip            unit.Length // width of the ceiling strip to open, when Access is strip
	Ceiling          unit.Length // thickness of the finished ceiling, 0 when open
}

// Rim is the band the blocks are bolted to.
type Rim struct {
	Material  string // key of stock.Rims
	Thickness unit.Length
	Depth     unit.Length
	Gravity   float64 // equivalent specific gravity for bolts, from the maker's report; 0 = not stated
	Moisture  string  // dry, wet in service
}

// HouseJoists are the floor joists behind the rim.
type HouseJoists struct {
	Kind      string // sawn, i-joist, truss, parallel
	First     unit.Length
	Spacing   unit.Length
	Flange    unit.Length // flange (or joist) width
	Web       unit.Length // i-joist only
	Depth     unit.Length
	FlangeH   unit.Length // i-joist flange depth
	Clearance unit.Length // least distance, bolt axis to joist axis
	Squash    bool        // squash blocks at the bearing, needed by i-joists
	Direction string      // perpendicular or parallel to the rim
}

// Backing is the blocking between the house joists behind the rim at each block.
type Backing struct {
	Kind      string // none, loose, carried
	Material  string // key of stock.Rims
	Thickness unit.Length
	Gravity   float64    // as for the rim
	Fixing    unit.Force // allowable vertical load of its own fixings, either way, at one block
}

// Tie takes the pull behind the rim into the floor at each block, by allowable load and no product.
type Tie struct {
	Kind    string     // none, strap, hold-down
	Rating  unit.Force // allowable, each; two at a bay
	Length  unit.Length
	Lateral Lateral
}

// Lateral is the tension hardware that holds the deck to the floor, apart from the blocks.
type Lateral struct {
	Count   int
	Rating  unit.Force // allowable, each
	FromEnd unit.Length
}

// Wall is the build-up from inside to outside.
type Wall struct {
	Layers      []Layer
	StudSpacing unit.Length
	StudWidth   unit.Length
	StudFirst   unit.Length
	Cladding    Cladding
	Storey      unit.Length // wall height drawn above the floor, 0 = as the sheet needs
	Retarder    string      // vapour retarder on the room side: class-1, class-2, class-3, none, unknown
}

// Layer is one sheet of the wall.
type Layer struct {
	Role      string // finish, studs, sheathing, wrb, insulation, cavity, cladding, other
	Name      string // as printed
	Material  string // key of stock.Materials
	Thickness unit.Length
	Line      int // where it stands in the file
}

// Cladding is how the siding meets the ledger.
type Cladding struct {
	Exposure     unit.Length // course height, 0 = flat
	BehindLedger bool        // siding runs on behind the ledger
	AboveFlash   unit.Length // clearance, siding to the flashing below it
	BelowLedger  unit.Length // clearance, ledger to the siding below it
	BelowSill    unit.Length // clearance, sill of a door to the siding below it: lets the cavity breathe
}

// Foundation is what the wall stands on below the floor.
type Foundation struct {
	Kind       string // concrete, masonry, wall (a storey below), none
	Thickness  unit.Length
	Insulation unit.Length // outside, below grade and up to the sill
	Material   string
	Board      unit.Length  // drainage board
	Grade      *unit.Length // z of the ground at the wall (negative), lowest
	GradeHigh  *unit.Length // z of the ground where it is highest along the ledger
}

// Deck is what hangs outside.
type Deck struct {
	Kind       string      // deck or balcony
	Support    string      // posts, braces, hung, cantilever
	Projection unit.Length // sheathing face to outer edge
	Span       unit.Length // ledger face to beam
	Joists     DeckJoists
	Decking    unit.Length
	DeckGap    unit.Length   // decking to cladding
	Below      unit.Length   // top of decking below finished floor
	Storey     string        // ground or upper
	Beam, Post string        // as printed
	GuardPosts []unit.Length // x of guard posts fastened to the ledger
	PointLoads []PointLoad
}

// PointLoad is a load at one place of the ledger: stair stringer, doubled joist, post.
type PointLoad struct {
	Name string
	X    unit.Length
	Load unit.Force
}

// DeckJoists are the joists hung on the ledger.
type DeckJoists struct {
	Width, Depth unit.Length
	Spacing      unit.Length
	First        unit.Length   // centre of the first from x = 0
	Seat         unit.Length   // length of the hanger seat; the load line is half of it outside the ledger face
	Hanger       unit.Force    // allowable load of one hanger, 0 = not given
	Positions    []unit.Length // axes given one by one; none = from First and Spacing, moved off the bolts
	HangerFlange unit.Length   // how far the hanger's flanges run along the ledger; bolts keep clear, 0 = concealed
	HangerDepth  string        // full or lower: how high the hanger fastens into the ledger
	Restrained   bool          // each joist held top and bottom so that the ledger cannot twist
	Species      string
}

// Ledger is the beam on the blocks.
type Ledger struct {
	Length            unit.Length
	Thickness, Height unit.Length
	Nominal           string // "2x10" when given so
	Species, Grade    string
	Treated, Incised  bool
	TopSlope          unit.Slope // bevel of the top edge, falling outward
	Splices           []unit.Length
	Moisture          Moisture
}

// Moisture is the state of the wood at assembly and in service.
type Moisture struct {
	Assembly string // dry (<= 19 %), wet, unknown
	Service  string // dry, wet
}

// Blocks are the short doubled pieces that carry the ledger.
type Blocks struct {
	Plies          []unit.Length // thickness of each, from the sheathing outward
	Material       []string      // of each ply: lumber (default) or plywood
	Height, Width  unit.Length
	Nominal        string
	Grain          string // horizontal or vertical
	Species, Grade string
	Treated        bool
	Incised        bool
	TopSlope       unit.Slope
	Pad            Pad
	Spacer         unit.Length // open gap in front of the block, kept by spacers on the bolts
	PliesFastened  bool        // plies fixed to each other by their own screws for the full shear
	PlyScrews      Screws      // across each joint between plies
	LedgerScrews   Screws      // from the face of the ledger into the outermost ply, apart from the fasteners
	Below          unit.Length // block top below ledger top
	MaxSpacing     unit.Length
	EndMin, EndMax unit.Length   // block centre from the ledger end
	Positions      []unit.Length // forced centres; none = searched
	Equal          bool          // force equal division, clashes and all
	Grid           unit.Length   // search step
	Moisture       Moisture
}

// Pad is the stiff foam in the sandwich.
type Pad struct {
	Thickness unit.Length // 0 = no pad
	Material  string
	Strength  *unit.Pressure // compressive, 10 % or yield; nil = not stated
	After     int            // number of plies between it and the sheathing
	Foot      bool           // a solid spacer at the foot takes the compression past the pad
}

// Screws are the wood screws across one joint of one block.
type Screws struct {
	Count            int
	Diameter, Length unit.Length
}

// Fasteners are either one set of through-bolts or two sets.
type Fasteners struct {
	Through *Set // ledger to rim in one
	ToRim   *Set // block to rim
	ToBlock *Set // ledger to block
}

// Set is one pattern of fasteners, the same at every block.
type Set struct {
	Kind       string // bolt, lag, screw, evaluated
	Diameter   unit.Length
	Length     unit.Length   // 0 = the shortest stock length that fits
	Rows       []unit.Length // below the top of the ledger (the block, for a set to the rim)
	Columns    int
	ColumnStep unit.Length // between columns
	Hole       unit.Length
	Washer     Washer
	Grade      string
	Coating    string
	Thread     unit.Length   // 0 = by the standard
	Yield      unit.Pressure // 0 = by kind and diameter
	Lateral    unit.Force    // evaluated only: allowable per fastener at this stand-off
	Withdrawal unit.Force    // evaluated only
	Report     string        // evaluated only: what the values rest on, as the user states it
}

// Washer is the plate under head and nut.
type Washer struct {
	Kind      string // round, plate
	Size      unit.Length
	Thickness unit.Length
}

// Water is the flashing and the membrane.
type Water struct {
	Flashing   Flashing
	Patch      Patch
	WrapLap    unit.Length  // block wrap onto the patch
	GapMin     unit.Length  // clear gap asked for behind the ledger
	Screen     bool         // insect screen at the open ends
	ScreenFree unit.Percent // net free share of the screen
}

// Flashing is F1, the cap over the ledger.
type Flashing struct {
	Up, Out, Drip unit.Length
	Thickness     unit.Length
	Material      string
	Lap           string // cladding, wrb, outside: which layer laps over its upstand
	EndDam        unit.Length
}

// Patch is the membrane piece on the sheathing behind each block.
type Patch struct {
	Width, Height unit.Length
	Under         bool // its top edge runs under the barrier above
}

// Door opens onto the deck.
type Door struct {
	From, To  unit.Length
	Swing     string      // in, out, slide
	Threshold unit.Length // top above finished floor
}

// Obstacle is something in the wall or floor that a block or bolt must miss.
type Obstacle struct {
	Kind     string // duct, pipe, box, beam, other
	Name     string
	From, To unit.Length
	Inside   bool // behind the rim (blocks bolt positions); else outside on the wall
}

// Loads on the deck.
type Loads struct {
	Dead, Live *unit.Pressure
	Snow       *unit.Pressure // on the deck; nil = not stated
	Basis      string         // IRC or ASCE
	Wind       string         // is wind or seismic to be resisted here: yes, no, unknown
}

// Sheets is how the set is printed.
type Sheets struct {
	Size                           string  // name of a sheet size
	Section, Elevation, Plan, Shop float64 // scale denominators; 0 = chosen
}

// Stock is what can be bought, for the cut list.
type Stock struct {
	Length, Kerf, Trim unit.Length
	BoltStep           unit.Length // step of stock bolt lengths
}

// Rates are what things cost to whoever builds this, in one currency; nil is not stated.
type Rates struct {
	Currency      string   // as printed
	Block         *float64 // one block beside its wood
	Lumber        *float64 // a metre of the sticks bought
	Fastener      *float64 // one, with washers and nut
	Hour          *float64 // an hour of work
	BlockHours    *float64 // of work at one block
	FastenerHours *float64 // of work at one fastener
}
