package air

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/geom"
)

// Path is the way of the air through the gap behind the ledger, measured on the parts as they stand, in
// millimetres. Each throat is the least over the stretches between blocks.
//
//	     |#|  |cladding
//	     |#|  |____         head: wall to F1
//	     |#|  ^\___F1
//	wall |#| ^ |ledger|     gap
//	     |#| ^ |______|
//	     |#|::^ <---        screen; foot: ledger to the cladding below
//	     |#|  |cladding
type Path struct {
	Foot, Gap, Head float64   // the throats; none or less: closed
	Height          float64   // of the gap, underside of the ledger to F1
	Screen          float64   // free share of the screens at the open ends, 1 where there is none
	Length          float64   // of the ledger
	Open            []Stretch // stretches between blocks with the cavity of the wall above them
	Sills           []Stretch // stretches between blocks under doors: their air leaves under the sill
	Sill            float64   // clear height there, sill to the cladding below it
	Blocked         float64   // share of the ledger's length that blocks, and what stands on the wall, fill
	Strips          float64   // share of the cavity above that furring fills
	Wall            string    // what the gap is measured from, by mark and name
	Closed          string    // what closes the path; "" when air can pass
}

// Stretch is a piece of the ledger, from the left end of it.
type Stretch struct{ From, To float64 }

// Long is the length of the stretch.
func (s Stretch) Long() float64 { return s.To - s.From }

// Throat is the least depth that is open to the air: foot, gap less its screen, head.
func (p *Path) Throat() float64 { return math.Min(p.foot(), p.Head) }

// foot is the opening at the lower end with the screen in it.
func (p *Path) foot() float64 { return math.Min(p.Foot, p.Gap*p.Screen) }

// vent is the opening under the sill of a door with a screen in it, and no more than the cavity behind it.
func (p *Path) vent() float64 { return math.Min(p.Head, p.Sill*p.Screen) }

// FootArea is the free area at the foot for a metre of ledger, blocks and screen taken off.
func (p *Path) FootArea() unit.Quantity { return area(p.foot() * (1 - p.Blocked)) }

// HeadArea is the same at the top, the furring of the cavity taken off.
func (p *Path) HeadArea() unit.Quantity {
	return area(math.Min(p.Head, p.Gap) * (1 - p.Blocked) * (1 - p.Strips))
}

// area is that of an opening so many millimetres high, along a metre.
func area(high float64) unit.Quantity {
	return unit.Quantity{V: math.Max(0, high*1000), Kind: unit.KFreeArea}
}

// PathOf measures the way of the air behind the ledger of a.
func PathOf(a *detail.Assembly) Path {
	p := Path{Screen: 1, Length: a.Spec.Ledger.Length.MM(), Foot: math.Inf(1), Gap: math.Inf(1), Head: math.Inf(1), Height: math.Inf(1), Sill: math.Inf(1)}
	if a.Spec.Water.Screen {
		p.Screen = float64(a.Spec.Water.ScreenFree)
	}
	m := measure(a)
	free := 0.0
	for _, s := range m.between() {
		free += s.Long()
		m.throats(&p, (s.From+s.To)/2)
		p.sort(s, m.doors)
	}
	for _, s := range p.Sills {
		p.Sill = math.Min(p.Sill, m.sill((s.From+s.To)/2))
	}
	p.Strips = m.strips(p.Length)
	p.Blocked = 1
	if p.Length > 0 {
		p.Blocked = 1 - free/p.Length
	}
	if free == 0 {
		p.Foot, p.Gap, p.Head, p.Height = 0, 0, 0, 0
	}
	p.Closed = p.closed(m.least)
	return p
}

// sort files a stretch between blocks: what lies under a door ends at its sill.
func (p *Path) sort(s Stretch, doors []Stretch) {
	at := s.From
	for _, d := range doors {
		lo, hi := math.Max(d.From, s.From), math.Min(d.To, s.To)
		if lo >= hi {
			continue
		}
		p.open(Stretch{at, lo})
		p.Sills = append(p.Sills, Stretch{lo, hi})
		at = math.Max(at, hi)
	}
	p.open(Stretch{at, s.To})
}

func (p *Path) open(s Stretch) {
	if s.Long() > 0 {
		p.Open = append(p.Open, s)
	}
}

// long adds up stretches.
func long(all []Stretch) float64 {
	sum := 0.0
	for _, s := range all {
		sum += s.Long()
	}
	return sum
}

// closed says what is in the way: what is narrower than water bridges counts as closed to the air.
func (p *Path) closed(least float64) string {
	switch {
	case p.Blocked >= 1-1e-9:
		return "blocks fill the whole length"
	case p.Gap <= touch:
		return p.Wall + " fills the gap"
	case p.Gap < least:
		return "gap narrower than water bridges"
	case p.Head < least:
		return "F1 or the cladding above closes the top against " + p.Wall
	case p.Foot < least:
		return "the cladding below stands against the ledger"
	case p.foot() < least:
		return "the screen at the foot is not open enough"
	}
	return ""
}

// touch is how far apart two bodies may stand and still count as touching, mm.
const touch = 0.3

// bounds is what keeps the air in: an assembly, and the openings above its ledger.
type bounds struct {
	a     *detail.Assembly
	doors []Stretch
	least float64 // depth that water does not bridge
	found map[string][]body
}

func measure(a *detail.Assembly) *bounds {
	b := &bounds{a: a, least: leastGap(a.Spec), found: map[string][]body{}}
	for _, d := range a.Spec.Doors {
		b.doors = append(b.doors, Stretch{d.From.MM(), d.To.MM()})
	}
	slices.SortFunc(b.doors, func(p, q Stretch) int { return cmp.Compare(p.From, q.From) })
	return b
}

// between returns the stretches free of blocks and of what stands on the wall outside.
func (b *bounds) between() []Stretch {
	var out []Stretch
	for _, s := range b.a.Between() {
		out = append(out, Stretch{s[0], s[1]})
	}
	for _, o := range b.a.Find(detail.Outside) {
		box := o.Bounds()
		var left []Stretch
		for _, s := range out {
			for _, part := range []Stretch{{s.From, math.Min(s.To, box.Min.X)}, {math.Max(s.From, box.Max.X), s.To}} {
				if part.Long() > touch {
					left = append(left, part)
				}
			}
		}
		out = left
	}
	return out
}

// piece is what the plane across the wall cuts of a part.
type piece struct {
	part *detail.Part
	box  geom.Box // y and z
}

// cut returns the pieces of the parts with the roles at x.
func (b *bounds) cut(x float64, roles ...detail.Role) []piece {
	v := geom.View{O: geom.Vec3{X: x}, U: geom.Y.Unit(), V: geom.Z.Unit(), N: geom.X.Unit()}
	var out []piece
	for _, s := range b.bodies(roles) {
		if s.box.Min.X > x || s.box.Max.X < x {
			continue
		}
		for _, r := range s.part.Solids[s.n].Cut(v).Parts() {
			out = append(out, piece{s.part, r.Bounds()})
		}
	}
	return out
}

// body is the n-th solid of a part and the box it fills.
type body struct {
	part *detail.Part
	n    int
	box  geom.Box3
}

// bodies lists the solids of the parts with the roles; the first and the number of the roles tell them apart here.
func (b *bounds) bodies(roles []detail.Role) []body {
	key := string(roles[0]) + strconv.Itoa(len(roles))
	if all, ok := b.found[key]; ok {
		return all
	}
	var all []body
	for _, p := range b.a.Find(roles...) {
		for n := range p.Solids {
			all = append(all, body{p, n, p.Solids[n].Bounds()})
		}
	}
	b.found[key] = all
	return all
}

// throats narrows the path to what the section at x leaves open.
func (b *bounds) throats(p *Path, x float64) {
	ledger := geom.EmptyBox()
	for _, l := range b.cut(x, detail.Ledger) {
		ledger = ledger.Union(l.box)
	}
	if ledger.Empty() {
		return
	}
	behind, above, below := b.cladding(x, ledger)
	wall := append(b.cut(x, detail.Sheathing, detail.OuterInsul), behind...) // a membrane has no depth here
	face, what := outermost(wall, ledger.Min.Y, ledger.Max.Y)
	if g := ledger.Min.X - face; g < p.Gap {
		p.Gap, p.Wall = g, what
	}
	foot := ledger.Min.Y - b.a.Frame.Bottom
	for _, c := range below {
		foot = math.Min(foot, ledger.Min.Y-c.box.Max.Y)
	}
	p.Foot = math.Min(p.Foot, foot)
	f1 := b.cut(x, detail.Flashing)
	top, inner := ledger.Max.Y+1, math.Inf(1)
	for _, c := range f1 {
		top = math.Max(top, c.box.Max.Y)
	}
	for _, c := range append(f1, above...) {
		inner = math.Min(inner, c.box.Min.X)
	}
	over, _ := outermost(wall, ledger.Max.Y, top)
	p.Head = math.Min(p.Head, inner-math.Max(face, over))
	p.Height = math.Min(p.Height, ledger.Max.Y-ledger.Min.Y)
}

// cladding sorts the courses at x: those that run on behind the ledger, those above and those below.
func (b *bounds) cladding(x float64, ledger geom.Box) (behind, above, below []piece) {
	mid := ledger.Center().Y
	for _, c := range b.cut(x, detail.Cladding) {
		switch {
		case c.box.Min.Y < ledger.Max.Y-touch && c.box.Max.Y > ledger.Min.Y+touch && b.a.Spec.Wall.Cladding.BehindLedger:
			behind = append(behind, c)
		case c.box.Min.Y > mid:
			above = append(above, c)
		default:
			below = append(below, c)
		}
	}
	return behind, above, below
}

// outermost returns how far out the pieces stand between two heights, and which one does; the face of the
// sheathing where none is there.
func outermost(all []piece, z0, z1 float64) (y float64, what string) {
	y = math.Inf(-1)
	for _, c := range all {
		if c.box.Min.Y < z1-touch && c.box.Max.Y > z0+touch && c.box.Max.X > y {
			y, what = c.box.Max.X, fmt.Sprintf("%s %s", c.part.Mark, strings.ToLower(c.part.Name))
		}
	}
	if what == "" {
		return 0, "the sheathing"
	}
	return y, what
}

// sill is how far the cladding under a door stops short of its sill at x, the ledger where there is no cladding.
func (b *bounds) sill(x float64) float64 {
	top, under := math.Inf(-1), b.a.Frame.SubTop
	for _, t := range b.cut(x, detail.Threshold) {
		under = t.box.Min.Y
	}
	for _, c := range b.cut(x, detail.Cladding) {
		if c.box.Max.Y <= under+touch {
			top = math.Max(top, c.box.Max.Y)
		}
	}
	if math.IsInf(top, -1) {
		top = math.Min(under, b.a.Frame.LedgerTop)
	}
	return under - top
}

// strips is the share of the ledger's length that furring fills in the cavity over it.
func (b *bounds) strips(length float64) float64 {
	if length <= 0 {
		return 0
	}
	var taken []Stretch
	for _, f := range b.a.Find(detail.Furring) {
		box := f.Bounds()
		if box.Max.Z > b.a.Frame.BandTop+touch && box.Min.Y >= b.a.Frame.InsulOut-touch && box.Max.X > 0 && box.Min.X < length {
			taken = append(taken, Stretch{math.Max(0, box.Min.X), math.Min(length, box.Max.X)})
		}
	}
	slices.SortFunc(taken, func(p, q Stretch) int { return cmp.Compare(p.From, q.From) })
	sum, at := 0.0, 0.0
	for _, s := range taken {
		sum += math.Max(0, s.To-math.Max(s.From, at))
		at = math.Max(at, s.To)
	}
	return sum / length
}
