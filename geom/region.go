package geom

import (
	"cmp"
	"math"
	"slices"
)

// Empty reports whether r has no rings.
func (r Region) Empty() bool { return len(r) == 0 }

// Area returns the area in square millimetres, islands taken off, arcs exact.
func (r Region) Area() float64 {
	var a float64
	for _, p := range r {
		a += p.Area()
	}
	return a
}

// Bounds returns the smallest box that holds r; empty for an empty region.
func (r Region) Bounds() Box {
	b := EmptyBox()
	for _, p := range r {
		b = b.Union(p.Bounds())
	}
	return b
}

// Centroid returns the centre of area. For a region of no area it is the middle of the bounds, and
// the origin for an empty one.
func (r Region) Centroid() Vec {
	b := r.Bounds()
	if b.Empty() {
		return Vec{}
	}
	o := b.Center()
	var area float64
	var m Vec
	for _, p := range r {
		a, pm := p.moment(o)
		area, m = area+a, m.Add(pm)
	}
	if math.Abs(area) < minRing {
		return o
	}
	return o.Add(m.Mul(1 / area))
}

// Contains reports whether p lies in r. The boundary, within Tol, counts as inside.
func (r Region) Contains(p Vec) bool { return newOutline(r).contains(p) }

// Segs returns the segments of all rings in order.
func (r Region) Segs() []Seg {
	var ss []Seg
	for _, p := range r {
		ss = append(ss, p.Segs()...)
	}
	return ss
}

// Parts returns the separate pieces of r as regions of one outer ring followed by its islands.
// They come bottom first, then left first. An island in no outer ring is left out.
func (r Region) Parts() []Region {
	if len(r) == 1 && r[0].Area() > 0 {
		return []Region{r}
	}
	var outer, islands []Path
	for _, p := range r {
		switch a := p.Area(); {
		case a > 0:
			outer = append(outer, p)
		case a < 0:
			islands = append(islands, p)
		}
	}
	slices.SortStableFunc(outer, byStart)
	slices.SortStableFunc(islands, byStart)
	parts := make([]Region, len(outer))
	for i, p := range outer {
		parts[i] = Region{p}
	}
	h := holders{rings: outer}
	for _, p := range islands {
		if i := h.of(p); i >= 0 {
			parts[i] = append(parts[i], p)
		}
	}
	return parts
}

// byStart orders rings by their first vertex, bottom first, then left first, and rings that share
// it by size.
func byStart(p, q Path) int {
	if c := cmp.Or(cmp.Compare(p.V[0].Y, q.V[0].Y), cmp.Compare(p.V[0].X, q.V[0].X)); c != 0 {
		return c
	}
	return cmp.Compare(math.Abs(p.Area()), math.Abs(q.Area()))
}

// holders are outer rings that may have islands, measured when the first one is looked at.
type holders struct {
	rings []Path
	areas []float64
	boxes []Box
	lines []*outline // nil until they are needed
}

// of returns the index of the smallest ring round an island, -1 for none.
func (h *holders) of(island Path) int {
	if h.lines == nil {
		n := len(h.rings)
		h.areas, h.boxes, h.lines = make([]float64, n), make([]Box, n), make([]*outline, n)
		for i, p := range h.rings {
			h.areas[i], h.boxes[i] = p.Area(), p.Bounds().Grow(Tol)
		}
	}
	best, least := -1, math.Inf(1)
	box := island.Bounds()
	for i, p := range h.rings {
		if h.areas[i] >= least || !h.boxes[i].Holds(box.Min) || !h.boxes[i].Holds(box.Max) {
			continue
		}
		if h.lines[i] == nil {
			h.lines[i] = newOutline(Region{p})
		}
		if h.lines[i].holds(island) {
			best, least = i, h.areas[i]
		}
	}
	return best
}

// holds reports whether a ring that may touch the outline, but does not cross it, lies inside.
func (o *outline) holds(ring Path) bool {
	for _, s := range ring.Segs() {
		for _, t := range [...]float64{0.5, 0.31} {
			p := s.At(t)
			if !o.touches(p) {
				return o.winding(p) > 0
			}
		}
	}
	return false
}

// inOrder returns r with each outer ring followed by its islands, in the order of Parts.
func (r Region) inOrder() Region {
	if len(r) < 2 {
		return r
	}
	q := make(Region, 0, len(r))
	for _, part := range r.Parts() {
		q = append(q, part...)
	}
	return q
}

// Flatten returns r with its arcs replaced by chords that stray at most tol millimetres.
func (r Region) Flatten(tol float64) Region {
	q := make(Region, len(r))
	for i, p := range r {
		q[i] = Polygon(p.Flatten(tol)...)
	}
	return q
}

// curves returns the curves of all rings.
func (r Region) curves() []curve {
	var ks []curve
	for _, p := range r {
		p.Closed = true
		ks = append(ks, p.curves()...)
	}
	return ks
}

// finite reports whether p has only coordinates a drawing can hold: under a thousand kilometres.
func (p Path) finite() bool {
	for _, v := range p.V {
		if !(math.Abs(v.X) < 1e9 && math.Abs(v.Y) < 1e9 && math.Abs(v.Bulge) < 1e9) {
			return false
		}
	}
	return true
}
