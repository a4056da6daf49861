package detail

import (
	"fmt"
	"math"

	"standclear/detail/unit"
	"standclear/geom"
)

// inward is how far the floor is modelled into the house.
const inward = 1200

// floor builds boards, rim, house joists and what the rim stands on.
func (a *Assembly) floor() {
	s, f := a.Spec, a.Frame
	in := f.FinishIn - inward
	boards := func(id, name string, r Role, mat string, y1, z0, z1 float64) {
		a.add(Part{ID: id, Mark: id, Name: name, Role: r, Material: mat, Block: -1, Existing: true, Grain: geom.X,
			Size: [3]unit.Length{unit.Length(z1 - z0)}, Solids: []geom.Solid{box(f.Left, f.Right, in, y1, z0, z1)}})
	}
	if s.Floor.Finish > 0 {
		boards("EX3", "FLOOR FINISH", FloorBoard, "softwood", f.FinishIn, f.SubTop, 0)
	}
	if s.Floor.Subfloor > 0 {
		boards("EX4", "SUBFLOOR", Subfloor, "plywood", f.RimOut, f.RimTop, f.SubTop)
	}
	a.add(Part{ID: "RIM", Mark: "EX5", Name: "RIM", Role: Rim, Material: s.Floor.Rim.Material, Grain: geom.X, Block: -1, Existing: true,
		Size:   [3]unit.Length{s.Floor.Rim.Thickness, s.Floor.Rim.Depth},
		Solids: []geom.Solid{box(f.Left, f.Right, f.RimIn, f.RimOut, f.RimBottom, f.RimTop)}, Bores: a.bores(f.RimIn-1, f.RimOut+1)})
	if s.Floor.Plate > 0 {
		a.add(Part{ID: "PLATE", Mark: "EX6", Name: "PLATE", Role: Plate, Material: "softwood", Grain: geom.X, Block: -1, Existing: true,
			Size:   [3]unit.Length{s.Floor.Plate, s.Floor.PlateWidth},
			Solids: []geom.Solid{box(f.Left, f.Right, f.RimOut-s.Floor.PlateWidth.MM(), f.RimOut, f.PlateBottom, f.RimBottom)}})
	}
	if s.Floor.Ceiling > 0 {
		a.add(Part{ID: "CEIL", Mark: "EX8", Name: "CEILING", Role: Finish, Material: "gypsum", Block: -1, Existing: true,
			Size: [3]unit.Length{s.Floor.Ceiling}, Solids: []geom.Solid{box(f.Left, f.Right, in, f.FinishIn, f.RimBottom-s.Floor.Ceiling.MM(), f.RimBottom)}})
	}
	if s.Floor.Joists.Direction != "parallel" {
		a.houseJoists(in)
	}
}

// houseJoists builds the joists behind the rim, i-joists as two flanges and a web.
func (a *Assembly) houseJoists(in float64) {
	s, f := a.Spec, a.Frame
	j := s.Floor.Joists
	depth := math.Min(j.Depth.MM(), f.RimTop-f.RimBottom)
	for i, x := range a.HouseJoists {
		h := j.Flange.MM() / 2
		top, bottom := f.RimTop, f.RimTop-depth
		var solids []geom.Solid
		if j.Kind == "i-joist" && j.FlangeH > 0 && j.Web > 0 {
			t, w := j.FlangeH.MM(), j.Web.MM()/2
			solids = []geom.Solid{
				box(x-h, x+h, in, f.RimIn, top-t, top), box(x-w, x+w, in, f.RimIn, bottom+t, top-t), box(x-h, x+h, in, f.RimIn, bottom, bottom+t),
			}
		} else {
			solids = []geom.Solid{box(x-h, x+h, in, f.RimIn, bottom, top)}
		}
		a.add(Part{ID: fmt.Sprintf("HJ%d", i+1), Mark: "EX7", Name: "HOUSE JOIST", Role: HouseJoist, Material: "softwood", Grain: geom.Y, Block: -1, Existing: true,
			Size: [3]unit.Length{j.Flange, unit.Length(depth)}, Solids: solids})
	}
}

// backings builds the blocking behind the rim, one piece in every bay that a bolt to the rim enters,
// and the two ties that take the pull from it into the joists; where the joists run along the rim and make
// no bays, a piece behind each block and no ties.
func (a *Assembly) backings() {
	bores := a.bores(a.Frame.BackingIn-1, a.Frame.RimIn+1) // the same list for every piece
	if len(a.HouseJoists) == 0 {
		for k, p := range a.stretches() {
			a.backing(p.block, k+1, p.from, p.to, bores)
		}
		return
	}
	half := a.Spec.Floor.Joists.Flange.MM() / 2
	done := map[int]bool{}
	for i := range a.Blocks {
		for _, at := range a.Blocks[i].Bolts {
			b := a.bay(at.X)
			if b < 0 || b+1 >= len(a.HouseJoists) || done[b] {
				continue
			}
			done[b] = true
			x0, x1 := a.HouseJoists[b]+half, a.HouseJoists[b+1]-half
			a.backing(i, b+1, x0, x1, bores)
			if s := a.Spec.Tie.Kind; s != "none" && s != "" {
				a.tie(i, b, 1, x0)
				a.tie(i, b, 2, x1)
			}
		}
	}
}

// stretch is where a piece of backing stands along x, and the first block it stands behind.
type stretch struct {
	block    int
	from, to float64
}

// stretches are the pieces of backing that no joists end: behind each block as wide as it, or wider where its
// outermost bolts into the rim need their end distance, no farther than the wall is drawn. What meets is one.
//
//	   rim  ==========================
//	backing   [o    o]     [o        o]
//	block    [  B1  ]     [B2][B3  ]
func (a *Assembly) stretches() []stretch {
	half := a.Spec.Blocks.Width.MM() / 2
	for _, c := range a.rimSet().Offsets() {
		half = math.Max(half, math.Abs(c)+a.backingEnd())
	}
	var out []stretch
	for i, b := range a.Blocks { // from the left
		p := stretch{i, math.Max(b.X-half, a.Frame.Left), math.Min(b.X+half, a.Frame.Right)}
		if p.to-p.from < geom.Tol {
			continue
		}
		if n := len(out); n > 0 && p.from <= out[n-1].to+geom.Tol {
			out[n-1].to = math.Max(out[n-1].to, p.to)
			continue
		}
		out = append(out, p)
	}
	return out
}

// backing builds the n-th piece from x0 to x1, first entered by block i, with the holes through all of them.
func (a *Assembly) backing(i, n int, x0, x1 float64, bores []geom.Solid) {
	s, f := a.Spec, a.Frame
	if s.Floor.Backing.Kind == "none" {
		return
	}
	a.add(Part{ID: fmt.Sprintf("BK/%d", n), Mark: "BK1", Name: "BACKING", Role: Backing, Material: s.Floor.Backing.Material, Grain: geom.X, Block: i,
		Note: s.Floor.Backing.Kind, Size: [3]unit.Length{s.Floor.Backing.Thickness, s.Floor.Rim.Depth, unit.Length(x1 - x0)},
		Solids: []geom.Solid{box(x0, x1, f.BackingIn, f.RimIn, f.RimBottom, f.RimTop)}, Bores: bores})
}

// tie builds one tie, a device by its rating: a leg on the inner face of the backing, a leg along the
// joist, below the subfloor. The piece drawn stands for any device of that rating.
func (a *Assembly) tie(i, b, k int, edge float64) {
	s, f := a.Spec, a.Frame
	const wide, thick, leg = 32, 1.5, 75
	side, l, r := 1.0, float64(thick), 0.0
	if k == 2 {
		side, l, r = -1, 0, thick
	}
	z := f.RimTop - 3
	path := geom.Polyline(geom.Vec{X: edge + side*leg, Y: f.BackingIn}, geom.Vec{X: edge, Y: f.BackingIn}, geom.Vec{X: edge, Y: f.BackingIn - s.Tie.Length.MM()})
	a.add(Part{ID: fmt.Sprintf("TS/%d-%d", b+1, k), Mark: "TS1", Name: "FLOOR TIE", Role: TieStrap, Material: "steel", Block: i,
		Note: s.Tie.Kind + ", " + s.Tie.Rating.Q().Text(s.Project.System) + " allowable, fixings as its maker states, no nails", Solids: []geom.Solid{geom.Sheet(path, l, r, geom.Z, z-wide, z)}})
}

// below builds what carries the wall: a foundation and the ground, or the storey below.
func (a *Assembly) below() {
	s, f := a.Spec, a.Frame
	if s.Foundation.Kind == "wall" {
		a.storeyBelow()
		return
	}
	if s.Foundation.Kind == "none" {
		return
	}
	depth := f.Bottom - 600
	if g := s.Foundation.Grade; g != nil {
		depth = math.Min(depth, g.MM()-300)
	}
	t := s.Foundation.Thickness.MM()
	a.add(Part{ID: "FDN", Mark: "EX9", Name: "FOUNDATION WALL", Role: Footing, Material: s.Foundation.Kind, Block: -1, Existing: true,
		Size: [3]unit.Length{s.Foundation.Thickness}, Solids: []geom.Solid{box(f.Left, f.Right, -t, 0, depth, f.PlateBottom)}})
	y := 0.0
	if w := s.Foundation.Insulation.MM(); w > 0 {
		a.add(Part{ID: "FI", Mark: "EX10", Name: "FOUNDATION INSULATION", Role: GroundIns, Material: s.Foundation.Material, Block: -1, Existing: true,
			Size: [3]unit.Length{s.Foundation.Insulation}, Solids: []geom.Solid{box(f.Left, f.Right, y, y+w, depth, f.Bottom)}})
		y += w
	}
	if w := s.Foundation.Board.MM(); w > 0 && s.Foundation.GradeHigh != nil {
		a.add(Part{ID: "DB", Mark: "EX11", Name: "DRAINAGE BOARD", Role: DrainBoard, Material: "drainage", Block: -1, Existing: true,
			Size: [3]unit.Length{s.Foundation.Board}, Solids: []geom.Solid{box(f.Left, f.Right, y, y+w, depth, s.Foundation.GradeHigh.MM())}})
		y += w
	}
	a.ground(y, depth)
}

// ground is the earth outside, falling from its high to its low level along the wall.
func (a *Assembly) ground(y, depth float64) {
	s, f := a.Spec, a.Frame
	if s.Foundation.Grade == nil {
		return
	}
	lo, hi := s.Foundation.Grade.MM(), s.Foundation.Grade.MM()
	if s.Foundation.GradeHigh != nil {
		hi = s.Foundation.GradeHigh.MM()
	}
	p := geom.Region{geom.Polygon(geom.Vec{X: f.Left, Y: depth}, geom.Vec{X: f.Right, Y: depth}, geom.Vec{X: f.Right, Y: lo}, geom.Vec{X: f.Left, Y: hi})}
	a.add(Part{ID: "EARTH", Mark: "EX12", Name: "GROUND", Role: Earth, Material: "earth", Block: -1, Existing: true, Solids: []geom.Solid{panel(p, y, y+900)}})
}

// storeyBelow builds the wall of the storey that carries the plate.
func (a *Assembly) storeyBelow() {
	s, f := a.Spec, a.Frame
	y := f.SheathIn
	for i := len(s.Wall.Layers) - 1; i >= 0; i-- {
		l := s.Wall.Layers[i]
		t := l.Thickness.MM()
		if l.Role != "studs" && l.Role != "finish" {
			continue
		}
		role, top := Cavity, f.PlateBottom
		if l.Role == "finish" {
			role, top = Finish, f.RimBottom-s.Floor.Ceiling.MM()
		}
		a.add(Part{ID: LayerMark(i) + "/B", Mark: LayerMark(i), Name: l.Name, Role: role, Material: l.Material, Block: -1, Existing: true,
			Size: [3]unit.Length{l.Thickness}, Solids: []geom.Solid{box(f.Left, f.Right, y-t, y, f.Bottom, top)}})
		y -= t
	}
}
