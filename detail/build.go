package detail

import (
	"fmt"
	"math"
	"slices"

	"standclear/detail/layout"
	"standclear/detail/spec"
	"standclear/detail/together"
	"standclear/geom"
)

// Build puts the attachment together. It fails only when the geometry cannot be drawn at all; a
// detail that can be drawn but must not be built is built, and the checks say so.
func Build(s *spec.Spec) (*Assembly, error) {
	a, err := Lay(s)
	if err != nil {
		return nil, err
	}
	a.fill(together.Each)
	return a, nil
}

// Lay begins an assembly: its heights and depths, and where blocks and house joists stand; parts it has none. It
// fails as Build does.
func Lay(s *spec.Spec) (*Assembly, error) {
	a := &Assembly{Spec: s, Frame: NewFrame(s)}
	if err := a.drawable(); err != nil {
		return nil, err
	}
	if s.Floor.Joists.Direction != "parallel" {
		a.HouseJoists = axes(s.Floor.Joists.First.MM(), s.Floor.Joists.Spacing.MM(), math.Min(a.Frame.Left, -s.Floor.Joists.Spacing.MM()), math.Max(a.Frame.Right, (s.Ledger.Length+s.Floor.Joists.Spacing).MM()))
	}
	a.layOut()
	return a, nil
}

// Fill puts the parts into an assembly that was laid, on the goroutine it is called on: for many designs at once.
func (a *Assembly) Fill() {
	a.fill(func(n int, f func(i int)) {
		for i := range n {
			f(i)
		}
	})
}

// fill builds the house with the blocks beside what is hung on them: they know of each other by the places alone.
func (a *Assembly) fill(each func(n int, f func(i int))) {
	a.placeBlocks()
	house := *a
	house.Blocks = slices.Clone(a.Blocks)
	each(2, func(i int) {
		if i == 0 {
			house.interior()
			house.floor()
			house.below()
			house.backings()
			house.outside()
			house.blocks()
			return
		}
		a.placeTension()
		a.placeDeckJoists()
		a.ledger()
		a.fasteners()
		a.hangers()
		a.deck()
		a.water()
		a.tension()
		a.obstacles()
	})
	a.Parts = append(house.Parts, a.Parts...)
	for i := range a.Blocks {
		a.Blocks[i].Parts = append(house.Blocks[i].Parts, a.Blocks[i].Parts...)
	}
	a.room, a.rods, a.hexes = nil, nil, nil
	a.index()
}

func (a *Assembly) drawable() error {
	s, f := a.Spec, a.Frame
	switch {
	case f.SheathIn >= 0:
		return fmt.Errorf("%s: wall.layers: there is no sheathing layer; the ledger is placed from its outer face", s.Source)
	case f.BlockOut <= 0:
		return fmt.Errorf("%s: blocks.plies: the block has no thickness; give at least one ply", s.Source)
	case s.Ledger.Length.MM() < s.Blocks.Width.MM():
		return fmt.Errorf("%s: ledger.length: the ledger is shorter than one block is wide; it must be longer than %s", s.Source, s.Blocks.Width.Text(s.Project.System))
	case f.BlockTopFront <= f.BlockBottom:
		return fmt.Errorf("%s: blocks.top_slope: the slope eats the whole block; use a flatter slope or a higher block", s.Source)
	case f.LedgerTopFront <= f.LedgerBottom:
		return fmt.Errorf("%s: ledger.top_slope: the bevel eats the whole ledger; use a flatter bevel", s.Source)
	case len(a.Spec.Fasteners.Sets()) == 0:
		return fmt.Errorf("%s: fasteners: no set is given; give through, or to_rim and to_block", s.Source)
	}
	return nil
}

// axes returns first, first+step ... and the axes before it, within [lo, hi].
func axes(first, step, lo, hi float64) []float64 {
	if step <= 0 {
		return nil
	}
	var out []float64
	for k := math.Ceil((lo - first) / step); first+k*step <= hi; k++ {
		out = append(out, first+k*step)
	}
	return out
}

// BetweenBlocks is the least clear room between neighbouring blocks, 2 in in millimetres: to wrap each
// and to bring insulation in between (a judgement).
const BetweenBlocks = 50.8

// Rules returns what the block layout must keep.
func (a *Assembly) Rules() layout.Rules {
	s := a.Spec
	r := layout.Rules{
		Length: s.Ledger.Length.MM(), Width: s.Blocks.Width.MM(), MaxSpacing: s.Blocks.MaxSpacing.MM(), MinSpacing: s.Blocks.Width.MM() + BetweenBlocks,
		EndMin: s.Blocks.EndMin.MM(), EndMax: s.Blocks.EndMax.MM(), Grid: s.Blocks.Grid.MM(),
		Columns: a.rimSet().Offsets(),
	}
	if len(a.HouseJoists) > 0 {
		r.Avoid = append(r.Avoid, layout.Axes{Kind: "house joist", At: a.HouseJoists, Clear: math.Max(s.Floor.Joists.Clearance.MM(), a.JoistClear(true))})
	}
	for _, o := range s.Obstacles {
		z := layout.Zone{Name: o.Name, From: o.From.MM(), To: o.To.MM()}
		if o.Inside {
			z.Room = a.nutRoom()
			r.Inside = append(r.Inside, z)
		} else {
			r.Outside = append(r.Outside, z)
		}
	}
	return r
}

// JoistClear is the least distance from the axis of a bolt into the rim to a house joist's axis: half the
// joist or flange and half the inner washer; with end, also the end distance in the backing between the joists.
func (a *Assembly) JoistClear(end bool) float64 {
	set := a.rimSet()
	room := 0.0
	if set.Kind == "bolt" {
		room = set.Washer.Size.MM() / 2
	}
	if end && a.Spec.Floor.Backing.Kind != "none" {
		room = math.Max(room, a.backingEnd())
	}
	return a.Spec.Floor.Joists.Flange.MM()/2 + room
}

// backingEnd is the end distance that gives a bolt its full value in the backing: 4 D across the grain (NDS
// 2018 table 12.5.1A from memory, confirm).
func (a *Assembly) backingEnd() float64 { return 4 * a.rimSet().Diameter.MM() }

// nutRoom is the least distance from a bolt axis to what stands behind the rim: half the washer, or
// a wrench on the nut (its width across flats again on either side, a judgement).
func (a *Assembly) nutRoom() float64 {
	set := a.rimSet()
	if set.Kind != "bolt" {
		return 0
	}
	return math.Max(set.Washer.Size.MM()/2, Hex(set.Diameter).NutFlats.MM())
}

// rimSet is the set that enters the rim.
func (a *Assembly) rimSet() *spec.Set {
	if t := a.Spec.Fasteners.Through; t != nil {
		return t
	}
	if t := a.Spec.Fasteners.ToRim; t != nil {
		return t
	}
	return a.Spec.Fasteners.Sets()[0]
}

// layOut finds the places of the blocks.
func (a *Assembly) layOut() {
	s, r := a.Spec, a.Rules()
	switch {
	case len(s.Blocks.Positions) > 0:
		x := make([]float64, len(s.Blocks.Positions))
		for i, p := range s.Blocks.Positions {
			x[i] = p.MM()
		}
		a.Layout = layout.Force(r, x)
	case s.Blocks.Equal:
		a.Layout = layout.Force(r, r.EqualRow())
	default:
		a.Layout = layout.Find(r)
	}
}

func (a *Assembly) placeBlocks() {
	s := a.Spec
	a.rows()
	f := a.Frame
	for i, x := range a.Layout.X {
		b := Block{Mark: fmt.Sprintf("B%d", i+1), X: x}
		h := s.Blocks.Width.MM() / 2
		b.Box = geom.Box3{Min: geom.Vec3{X: x - h, Y: 0, Z: f.BlockBottom}, Max: geom.Vec3{X: x + h, Y: f.BlockOut, Z: f.BlockTop}}
		for _, row := range a.Rows {
			if row.Set != a.rimSet() {
				continue
			}
			for _, c := range row.Set.Offsets() {
				b.Bolts = append(b.Bolts, geom.Vec{X: x + c, Y: row.Z})
			}
		}
		a.Blocks = append(a.Blocks, b)
	}
}

// placeDeckJoists puts the joists at their spacing, moved where a hanger would sit on a bolt head.
func (a *Assembly) placeDeckJoists() {
	s := a.Spec
	j := s.Deck.Joists
	if len(j.Positions) > 0 {
		for _, p := range j.Positions {
			a.DeckJoists = append(a.DeckJoists, p.MM())
		}
	} else {
		a.DeckJoists = layout.Joists(a.joistRules())
	}
	a.settleTension()
}

func (a *Assembly) joistRules() layout.JoistRules {
	s := a.Spec
	j := s.Deck.Joists
	r := layout.JoistRules{
		First: j.First.MM(), Last: s.Ledger.Length.MM() - j.First.MM(), Spacing: j.Spacing.MM(), Grid: s.Blocks.Grid.MM(),
		Bolts: a.headAxes(), Clear: a.HangerClear(), Least: (j.Width + 2*j.HangerFlange).MM(),
	}
	for _, t := range a.Tension {
		if !math.IsNaN(t.Deck) {
			r.Fixed = append(r.Fixed, t.Deck)
		}
	}
	return r
}

// HangerClear is the least distance from a bolt axis to a deck joist axis: half the joist, the
// hanger's flange and half the washer.
func (a *Assembly) HangerClear() float64 {
	j := a.Spec.Deck.Joists
	set := a.Spec.Fasteners.Sets()
	return (j.Width/2 + j.HangerFlange + set[len(set)-1].Washer.Size/2).MM()
}

// headAxes returns the bolt columns whose heads stand on the ledger, from the left.
func (a *Assembly) headAxes() []float64 {
	sets := a.Spec.Fasteners.Sets()
	var out []float64
	for _, b := range a.Blocks {
		for _, c := range sets[len(sets)-1].Offsets() {
			out = append(out, b.X+c)
		}
	}
	slices.Sort(out) // blocks whose positions are given may overlap
	return out
}

// rows lists the heights of every fastener row, set by set from the top.
func (a *Assembly) rows() {
	for _, set := range a.Spec.Fasteners.Sets() {
		top := a.Frame.LedgerTop
		if set == a.Spec.Fasteners.ToRim {
			top = a.Frame.BlockTop
		}
		for _, r := range set.Rows {
			a.Rows = append(a.Rows, Row{Set: set, Z: top - r.MM()})
		}
	}
}

// bay returns the index of the house joist left of x, or -1.
func (a *Assembly) bay(x float64) int {
	b := -1
	for i, j := range a.HouseJoists {
		if j <= x {
			b = i
		}
	}
	return b
}

// box is a solid with faces on the axes, from two corners in any order.
func box(x0, x1, y0, y1, z0, z1 float64) geom.Solid {
	return geom.BoxSolid(geom.Box3{
		Min: geom.Vec3{X: math.Min(x0, x1), Y: math.Min(y0, y1), Z: math.Min(z0, z1)},
		Max: geom.Vec3{X: math.Max(x0, x1), Y: math.Max(y0, y1), Z: math.Max(z0, z1)},
	})
}

// rod is a round bar of radius r along y, from y0 to y1. Those of one radius share their profile.
func (a *Assembly) rod(x, z, r, y0, y1 float64) geom.Solid {
	i := slices.IndexFunc(a.rods, func(s geom.Solid) bool { return s.Profile[0].V[1].X == r }) // the circle's right end
	if i < 0 {
		one := geom.Cylinder(geom.Vec3{}, geom.Y, r, 1)
		if one.Empty() {
			return one
		}
		i, a.rods = len(a.rods), append(a.rods, one)
	}
	s := a.rods[i]
	s.O, s.Length = geom.Vec3{X: x, Y: y0, Z: z}, y1-y0
	return s
}

// panel is a board in the plane of the wall: an outline in x and z, from depth y0 to y1.
func panel(outline geom.Region, y0, y1 float64) geom.Solid {
	return geom.Prism(outline, geom.Y, math.Min(y0, y1), math.Max(y0, y1))
}
