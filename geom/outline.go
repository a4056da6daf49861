package geom

import (
	"cmp"
	"math"
	"slices"
)

// outline is a region made ready for questions: its arcs are cut so that every curve runs only
// upward or only downward, and the curves are filed in level strips.
type outline struct {
	ks     []curve
	boxes  []Box // of the curves
	box    Box
	strips [][]int32
	height float64 // of one strip
}

func newOutline(r Region) *outline {
	o := &outline{box: EmptyBox()}
	n := 0
	for _, p := range r {
		n += len(p.V)
	}
	o.ks, o.boxes = make([]curve, 0, n), make([]Box, 0, n)
	for _, p := range r {
		p.Closed = true
		if !p.finite() {
			continue
		}
		for i := range p.V {
			s, ok := p.seg(i)
			switch {
			case !ok || s.A == s.B:
			case !s.IsArc():
				o.add(curve{a: s.A, b: s.B})
			default:
				for _, m := range s.curve().monotone(false) {
					o.add(m)
				}
			}
		}
	}
	o.file()
	return o
}

func (o *outline) add(k curve) {
	b := k.box()
	o.ks, o.boxes = append(o.ks, k), append(o.boxes, b)
	o.box = o.box.Union(b)
}

// file puts each curve into the strips it passes through.
func (o *outline) file() {
	n := 1 + len(o.ks)/8
	o.height = max(o.box.H()/float64(n), Tol)
	o.strips = make([][]int32, n)
	if n == 1 {
		all := make([]int32, len(o.ks))
		for i := range all {
			all[i] = int32(i)
		}
		o.strips[0] = all
		return
	}
	for i := range o.ks {
		k := &o.ks[i]
		lo, hi := o.strip(min(k.a.Y, k.b.Y)-Tol), o.strip(max(k.a.Y, k.b.Y)+Tol)
		for s := lo; s <= hi; s++ {
			o.strips[s] = append(o.strips[s], int32(i))
		}
	}
}

// strip returns the index of the strip at height y; heights beyond the outline take the end strips.
func (o *outline) strip(y float64) int {
	return int(max(0, min(float64(len(o.strips)-1), math.Floor((y-o.box.Min.Y)/o.height))))
}

// near returns the curves that may pass the height y.
func (o *outline) near(y float64) []int32 {
	if len(o.ks) == 0 {
		return nil
	}
	return o.strips[o.strip(y)]
}

// contains reports whether p lies inside or, within Tol, on the outline.
func (o *outline) contains(p Vec) bool {
	if !o.box.Grow(Tol).Holds(p) {
		return false
	}
	return o.touches(p) || o.winding(p) > 0
}

// touches reports whether p lies on the outline, within Tol.
func (o *outline) touches(p Vec) bool {
	for _, i := range o.near(p.Y) {
		if o.ks[i].has(p) {
			return true
		}
	}
	return false
}

// winding returns how often the outline runs counter-clockwise round p, which must not lie on it.
// It counts what a ray to the right crosses; an end at the height of p belongs to what is above.
func (o *outline) winding(p Vec) int {
	var n int
	for _, i := range o.near(p.Y) {
		k := &o.ks[i]
		if (k.a.Y <= p.Y) != (k.b.Y <= p.Y) && k.xAt(p.Y) > p.X {
			n += k.rise()
		}
	}
	return n
}

// rise returns +1 for a curve that runs upward and -1 for one that runs downward.
func (k curve) rise() int {
	if k.a.Y < k.b.Y {
		return 1
	}
	return -1
}

// xAt returns where a curve that runs only upward or only downward passes the height y, which lies
// between its ends.
func (k curve) xAt(y float64) float64 {
	lo, hi := min(k.a.X, k.b.X), max(k.a.X, k.b.X)
	if k.turn == 0 {
		if lo == hi {
			return lo
		}
		return clamp(k.a.X+(k.b.X-k.a.X)*(y-k.a.Y)/(k.b.Y-k.a.Y), lo, hi)
	}
	h := y - k.c.Y
	half := math.Sqrt(math.Max(0, (k.r-h)*(k.r+h)))
	// Counter-clockwise runs upward on the right-hand half of the circle, downward on the left.
	if k.turn*float64(k.rise()) > 0 {
		return k.c.X + half
	}
	return k.c.X - half
}

func clamp(v, lo, hi float64) float64 { return max(lo, min(hi, v)) }

// side says which of the two limits of a level line is meant: just above it, or just below.
type side int

const (
	above side = 1
	under side = -1
)

// crossing is where a level line passes through an outline: going right, the count of rings that
// hold the point changes by step.
type crossing struct {
	x    float64
	step int
}

// scan returns the stretches of the level line at y that lie inside the outline, taken just above
// or just under it. Vertices within Tol of the line count as on it, so that a line along an edge
// has the area on one side of the edge only.
//
//	 ______
//	|      |          above  y:  nothing
//	|______| ____y    under  y:  the width of the square
func (o *outline) scan(y float64, from side) spans {
	var cs []crossing
	for _, i := range o.near(y) {
		cs = o.ks[i].cross(y, from, cs)
	}
	return inside(cs)
}

// cross appends where the level line at y passes through k, which runs only upward or only downward.
func (k curve) cross(y float64, from side, cs []crossing) []crossing {
	ya, yb := snap(k.a.Y, y), snap(k.b.Y, y)
	ain, bin := ya <= y, yb <= y
	if from == under {
		ain, bin = ya < y, yb < y
	}
	if ain == bin {
		return cs
	}
	return append(cs, crossing{k.scanX(ya, yb, y), -k.rise()})
}

// snap returns y for a height within Tol of it.
func snap(h, y float64) float64 {
	if math.Abs(h-y) <= Tol {
		return y
	}
	return h
}

func (k curve) scanX(ya, yb, y float64) float64 {
	switch y {
	case ya:
		return k.a.X
	case yb:
		return k.b.X
	}
	return k.xAt(y)
}

// inside returns the stretches between crossings that at least one ring holds.
func inside(cs []crossing) spans {
	slices.SortFunc(cs, func(a, b crossing) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(b.step, a.step)) })
	var ss []span
	n := 0
	for i, c := range cs {
		n += c.step
		if n > 0 && i+1 < len(cs) {
			ss = append(ss, span{c.x, cs[i+1].x})
		}
	}
	return unite(ss, Tol)
}
