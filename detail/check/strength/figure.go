package strength

import (
	"cmp"
	"slices"

	"standclear/detail/unit"
)

// DowelFigure is one fastener at its limit, for a diagram: what it passes, where the wood bears on it and
// which way, where it bends.
//
//	 backing  rim  sheathing  block   ledger
//	|-------|++++|..........|---++++|+++---|     - the wood pushes the dowel down, + up
//	0                                            lengths from the inner end, outward
type DowelFigure struct {
	Set     string      // "fasteners from ledger to rim"
	Reading string      // "many_layer_void", "many_layer_held"
	Counts  bool        // the verdict rests on this reading
	Load    unit.Force  // of one fastener in the state drawn
	Shank   unit.Length // nominal diameter
	Hinges  []unit.Length
	Beds    []BedFigure
	Transfer
}

// BedFigure is one layer of a DowelFigure.
type BedFigure struct {
	Bed
	From, To unit.Length
	Bears    []Bears
}

// Bears is a stretch over which the wood bears on the dowel.
type Bears struct {
	From, To unit.Length
	Up       bool    // the wood pushes the dowel up
	Share    float64 // of its full strength; 1 but where the other group is crushed first
}

// Figure draws the dowel through the layers in the state that governs it. A dowel that carries nothing has
// layers and no bearing.
func (d Dowel) Figure(beds []Bed) DowelFigure {
	f := DowelFigure{Transfer: d.Transfer(beds), Shank: d.Nominal}
	x := 0.0
	for _, b := range beds {
		l := b.Length.Inches()
		f.Beds = append(f.Beds, BedFigure{Bed: b, From: inches(x), To: inches(x + l)})
		x += l
	}
	if f.Z == 0 {
		return f
	}
	s := d.atLimit(beds, f.Transfer)
	f.Load = pounds(s.p)
	f.drawGroup(beds, s, Main)
	f.drawBetween(beds, s)
	f.drawGroup(beds, s, Side)
	for i := range f.Beds {
		slices.SortFunc(f.Beds[i].Bears, func(a, b Bears) int { return cmp.Compare(a.From, b.From) })
	}
	return f
}

// drawGroup lays the bearing of the main or of the side group into its layers and notes its hinge.
func (f *DowelFigure) drawGroup(beds []Bed, s state, hold Hold) {
	first, last := groupOf(beds)
	face, way, group, share := f.Beds[first].From.Inches(), 1.0, s.side, s.sdShare
	if hold == Main {
		face, way, group, share = f.Beds[last].To.Inches(), -1, s.main, s.mainShare
	}
	for _, p := range group.pressing(s.p, s.my) {
		a, b := face+way*p.from, face+way*p.to
		if b < a {
			a, b = b, a
		}
		f.bear(a, b, (p.sense > 0) == (hold == Main), share)
	}
	if at := group.hingeAt(s.p, s.my); at >= 0 {
		f.Hinges = append(f.Hinges, inches(face+way*at/25.4))
	}
}

// groupOf returns the first layer of the side group and the last of the main group.
func groupOf(beds []Bed) (first, last int) {
	first, last = len(beds), -1
	for i, b := range beds {
		if b.Hold == Main {
			last = i
		}
		if b.Hold == Side && i < first {
			first = i
		}
	}
	return first, last
}

// drawBetween lays the bearing of the loose layers in: down on the dowel at the inner face, up at the outer.
func (f *DowelFigure) drawBetween(beds []Bed, s state) {
	_, last := groupOf(beds)
	for i, l := range s.between {
		b := f.Beds[last+1+i]
		if grip := grips(l.q, l.l, s.gives[i]); grip > 0 {
			f.bear(b.From.Inches(), b.From.Inches()+grip, false, 1)
			f.bear(b.To.Inches()-grip, b.To.Inches(), true, 1)
		}
	}
}

// bear lays a stretch from a to b into every layer it crosses but the voids.
func (f *DowelFigure) bear(a, b float64, up bool, share float64) {
	for i := range f.Beds {
		bed := &f.Beds[i]
		from, to := max(a, bed.From.Inches()), min(b, bed.To.Inches())
		if bed.Hold == Void || to-from < 1e-9 {
			continue
		}
		if n := len(bed.Bears); n > 0 && bed.Bears[n-1].Up == up && touches(bed.Bears[n-1], from, to) {
			bed.Bears[n-1] = joined(bed.Bears[n-1], from, to)
			continue
		}
		bed.Bears = append(bed.Bears, Bears{inches(from), inches(to), up, share})
	}
}

func touches(b Bears, from, to float64) bool {
	return from <= b.To.Inches()+1e-9 && to >= b.From.Inches()-1e-9
}

func joined(b Bears, from, to float64) Bears {
	return Bears{inches(min(from, b.From.Inches())), inches(max(to, b.To.Inches())), b.Up, b.Share}
}

func inches(v float64) unit.Length { return unit.Length(v) * unit.Inch }
