// Package detail builds one attachment in space: every physical part once, in place, with what a
// drawing, a check or a schedule needs to know of it. Nothing else is drawn and nothing else is
// counted.
//
// Frame, in millimetres: x right from the left end of the ledger seen from outside, y outward from
// the outer face of the sheathing, z up from the finished floor.
//
//	a, err := detail.Build(s)
//	fmt.Println(len(a.Blocks), "blocks", a.Count(detail.Bolt), "bolts")
package detail

import (
	"slices"

	"standclear/detail/layout"
	"standclear/detail/spec"
	"standclear/detail/unit"
	"standclear/geom"
)

// Role is what a part does.
type Role string

// The roles, from inside to outside.
const (
	Finish     Role = "interior finish"
	FloorBoard Role = "floor finish"
	Subfloor   Role = "subfloor"
	Plate      Role = "plate"
	Stud       Role = "stud"
	Cavity     Role = "cavity insulation"
	HouseJoist Role = "house joist"
	Squash     Role = "squash block"
	Rim        Role = "rim"
	Backing    Role = "backing"
	TieStrap   Role = "floor tie"
	Sheathing  Role = "sheathing"
	Barrier    Role = "water barrier"
	OuterInsul Role = "outside insulation"
	Furring    Role = "furring"
	Cladding   Role = "cladding"
	Threshold  Role = "threshold"
	Footing    Role = "foundation wall"
	GroundIns  Role = "foundation insulation"
	DrainBoard Role = "drainage board"
	Base       Role = "base flashing"
	Earth      Role = "earth"
	BlockPly   Role = "block ply"
	BlockPad   Role = "block pad"
	FootPiece  Role = "pad foot spacer"
	PlyScrew   Role = "ply screw"
	Patch      Role = "membrane patch"
	Wrap       Role = "block wrap"
	SpacerRing Role = "spacer"
	Ledger     Role = "ledger"
	Bolt       Role = "fastener"
	Nut        Role = "nut"
	Washer     Role = "washer"
	Hanger     Role = "joist hanger"
	DeckJoist  Role = "deck joist"
	Decking    Role = "decking"
	Flashing   Role = "flashing"
	Screen     Role = "insect screen"
	TensionRod Role = "lateral tension device"
	Obstacle   Role = "obstacle"         // behind the rim
	Outside    Role = "obstacle outside" // on the wall
)

// Part is one physical piece.
type Part struct {
	ID       string // unique: "B3/P1"
	Mark     string // as drawn and scheduled; equal marks are equal parts
	Name     string // "BLOCK PLY"
	Role     Role
	Material string         // key of stock.Materials or of a lumber species
	Note     string         // grade, treatment, coating: what the schedule adds
	Size     [3]unit.Length // thickness, width, length as bought; zero where it makes no sense
	Solids   []geom.Solid   // the body, holes left out
	Bores    []geom.Solid   // holes through it
	Grain    geom.Axis      // direction of the fibres of wood
	Block    int            // index of the block it belongs to, -1 for none
	Existing bool           // stands there already, or is built by others
	Thin     bool           // a sheet so thin that a section shows it as a line
	Bends    []Bend         // Thin parts bent from a sheet: its paths
}

// Bend is the path of a bent sheet in the plane across Axis, in the coordinates of geom.Prism: (y, z)
// across X, (x, z) across Y, (x, y) across Z.
type Bend struct {
	Axis geom.Axis
	Path geom.Path
}

// At returns the point of space that stands for point p of the bend's plane.
func (b Bend) At(p geom.Vec) geom.Vec3 {
	switch b.Axis {
	case geom.X:
		return geom.Vec3{Y: p.X, Z: p.Y}
	case geom.Y:
		return geom.Vec3{X: p.X, Z: p.Y}
	}
	return geom.Vec3{X: p.X, Y: p.Y}
}

// Bored returns the solids with the holes taken out.
func (p *Part) Bored() []geom.Solid {
	if len(p.Bores) == 0 {
		return p.Solids
	}
	out := make([]geom.Solid, len(p.Solids))
	for i, s := range p.Solids {
		out[i] = s.Bore(p.Bores...)
	}
	return out
}

// Bounds returns the box that holds the part.
func (p *Part) Bounds() geom.Box3 {
	b := geom.EmptyBox3()
	for _, s := range p.Solids {
		b = b.Union(s.Bounds())
	}
	return b
}

// Block is one block assembly: where it stands and what bolts it.
type Block struct {
	Mark  string
	X     float64    // centre along the ledger
	Box   geom.Box3  // plies and pad, without spacers
	Bolts []geom.Vec // axes as (x, z), top row first, left to right
	Parts []*Part    // plies, pad, foot, wrap, patch and its fasteners
}

// Assembly is the whole attachment.
type Assembly struct {
	Spec        *spec.Spec
	Frame       Frame
	Layout      layout.Result
	Blocks      []Block
	HouseJoists []float64 // axes along x
	DeckJoists  []float64 // axes along x
	Tension     []Device  // lateral tension devices
	Rows        []Row     // fastener rows of every set
	Parts       []*Part

	room  []Part       // for the next parts
	rods  []geom.Solid // one of each radius
	hexes []geom.Solid // one of each width across flats

	byRole map[Role][]int32 // places in Parts, while they are those from first to last
	first  *Part
	last   *Part
	many   int
}

// Row is one row of one set of fasteners.
type Row struct {
	Set *spec.Set
	Z   float64
}

// Find returns the parts with the role, in the order they were built.
func (a *Assembly) Find(roles ...Role) []*Part {
	var out []*Part
	if !a.indexed() {
		for _, p := range a.Parts {
			if slices.Contains(roles, p.Role) {
				out = append(out, p)
			}
		}
		return out
	}
	var at []int32
	for i, r := range roles {
		if !slices.Contains(roles[:i], r) {
			at = append(at, a.byRole[r]...)
		}
	}
	if len(at) == 0 {
		return nil
	}
	if len(roles) > 1 {
		slices.Sort(at)
	}
	out = make([]*Part, len(at))
	for i, k := range at {
		out[i] = a.Parts[k]
	}
	return out
}

// index notes where the parts of every role stand.
func (a *Assembly) index() {
	a.byRole = map[Role][]int32{}
	for i, p := range a.Parts {
		a.byRole[p.Role] = append(a.byRole[p.Role], int32(i))
	}
	if a.many = len(a.Parts); a.many > 0 {
		a.first, a.last = a.Parts[0], a.Parts[a.many-1]
	}
}

// indexed reports whether the parts are still those that were indexed.
func (a *Assembly) indexed() bool {
	n := len(a.Parts)
	return n > 0 && n == a.many && a.first == a.Parts[0] && a.last == a.Parts[n-1]
}

// RolesOf lists the roles that are set, in a fixed order.
func RolesOf(set map[Role]bool) []Role {
	var out []Role
	for r, on := range set {
		if on {
			out = append(out, r)
		}
	}
	slices.Sort(out)
	return out
}

// Count returns how many parts have the role.
func (a *Assembly) Count(r Role) int { return len(a.Find(r)) }

// CountMark returns how many parts bear the mark.
func (a *Assembly) CountMark(mark string) int {
	n := 0
	for _, p := range a.Parts {
		if p.Mark == mark {
			n++
		}
	}
	return n
}

func (a *Assembly) add(p Part) *Part {
	if len(a.room) == 0 {
		a.room = make([]Part, 32)
	}
	q := &a.room[0]
	a.room = a.room[1:]
	*q = p
	a.Parts = append(a.Parts, q)
	return q
}
