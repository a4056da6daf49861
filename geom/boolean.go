package geom

import (
	"math"
	"slices"
)

// Union returns the area that lies in at least one of the regions. Pieces that touch along an edge
// become one; pieces that touch at a corner stay apart.
//
// The result of a boolean operation has no segments shorter than Tol, no vertex in the middle of a
// line or arc, and no ring of less than 1e-9 mm2. Arcs stay arcs of the same circles. Each ring
// starts at its lowest vertex, the leftmost of several; an outer ring is followed by its islands,
// and outer rings run from bottom to top, then from left to right. Rings with coordinates that are
// not numbers, or beyond 1e9 mm, are passed over.
func Union(rs ...Region) Region {
	return combine([2][]Region{rs}, func(a, b int32) bool { return a > 0 })
}

// Intersect returns the area that lies in both regions, with the properties described at Union.
func Intersect(a, b Region) Region {
	if !touch(a.Bounds(), b.Bounds()) {
		return nil
	}
	return combine([2][]Region{{a}, {b}}, func(a, b int32) bool { return a > 0 && b > 0 })
}

// Subtract returns the area of a that lies in none of bs, with the properties described at Union.
func Subtract(a Region, bs ...Region) Region {
	return combine([2][]Region{{a}, bs}, func(a, b int32) bool { return a > 0 && b <= 0 })
}

func touch(a, b Box) bool {
	return a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y
}

// combine is all boolean operations. It works on the arrangement of both groups of regions:
//
//  1. For each edge, count how often the rings of each group run round the points just left and
//     just right of it. The counts differ by how often the edge itself is run along, so one count,
//     at the middle of the edge, gives both.
//
//  2. An edge that has the wanted area on one side only is part of the outline. It is turned to
//     have the area on its left.
//
//  3. The kept edges are strung into rings, staying with the area at every vertex where several
//     rings touch.
//
//     ____________              union keeps the edges with a count on one side only;
//     | A=1 B=0    |             the edge of B inside A has A=1 on both sides: dropped
//     |      ______|____
//     |     | A=1  | A=0|        intersection keeps those with A>0 and B>0 on one side
//     |     | B=1  | B=1|
//     |_____|______|    |        difference keeps those with A>0 and B=0 on one side
//     |___________|
//
// Regions whose edges all run along the axes are combined on a lattice (squared).
func combine(groups [2][]Region, wanted func(a, b int32) bool) Region {
	if r, ok := combineSquared(groups, wanted); ok {
		return r
	}
	return combineAny(groups, wanted)
}

// combineAny is combine for regions of any edges.
func combineAny(groups [2][]Region, wanted func(a, b int32) bool) Region {
	ar := arrange(groups)
	var kept []edge
	level, upright := newCounter(ar.edges, false), newCounter(ar.edges, true)
	for i, e := range ar.edges {
		c := level
		if math.Abs(e.b.X-e.a.X) > math.Abs(e.b.Y-e.a.Y) {
			c = upright
		}
		left, right := c.sides(i)
		switch in, out := wanted(left[0], left[1]), wanted(right[0], right[1]); {
		case in && !out:
			kept = append(kept, e)
		case out && !in:
			e.turnRound()
			kept = append(kept, e)
		}
	}
	return ar.rings(kept).inOrder()
}

// counter counts the rings round a point by what a ray from it crosses. An upright counter looks
// upward instead of to the right: its edges have x and y exchanged, which turns left into right.
type counter struct {
	edges   []edge
	upright bool
	strips  [][]int32
	lo, h   float64
}

func newCounter(edges []edge, upright bool) *counter {
	c := &counter{edges: edges, upright: upright}
	if upright {
		c.edges = slices.Clone(edges)
		for i := range c.edges {
			c.edges[i].exchange()
		}
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for i := range c.edges {
		lo = min(lo, c.edges[i].a.Y, c.edges[i].b.Y)
		hi = max(hi, c.edges[i].a.Y, c.edges[i].b.Y)
	}
	n := 1 + len(edges)/8
	c.lo, c.h = lo, math.Max((hi-lo)/float64(n), Tol)
	c.strips = make([][]int32, n)
	for i := range c.edges {
		e := &c.edges[i]
		for s := c.strip(min(e.a.Y, e.b.Y)); s <= c.strip(max(e.a.Y, e.b.Y)); s++ {
			c.strips[s] = append(c.strips[s], int32(i))
		}
	}
	return c
}

func (c *counter) strip(y float64) int {
	return min(max(int((y-c.lo)/c.h), 0), len(c.strips)-1)
}

// exchange swaps x and y.
func (k *curve) exchange() {
	k.a, k.b, k.c = Vec{k.a.Y, k.a.X}, Vec{k.b.Y, k.b.X}, Vec{k.c.Y, k.c.X}
	k.turn = -k.turn
}

// sides returns the counts of both groups just left and just right of edge i. The ray starts from
// the middle of the edge, or from another point of it if the first ray starts too near another edge
// to tell on which side that lies.
func (c *counter) sides(i int) (left, right [2]int32) {
	e := &c.edges[i]
	var far [2]int32 // on the side of the edge towards which the ray runs
	widest := -1.0
	for _, t := range [...]float64{0.5, 0.31, 0.73, 0.12, 0.91} {
		n, clear := c.count(i, e.at(t))
		if clear > widest {
			far, widest = n, clear
		}
		if clear > Tol/2 {
			break
		}
	}
	nearer := [2]int32{far[0] + e.w[0]*int32(e.rise()), far[1] + e.w[1]*int32(e.rise())}
	// Going up, the far side (to the right) is the right-hand side.
	if (e.rise() > 0) == !c.upright {
		left, right = nearer, far
	} else {
		left, right = far, nearer
	}
	if c.upright {
		// Exchanged axes count clockwise rings.
		for g := range left {
			left[g], right[g] = -left[g], -right[g]
		}
	}
	return left, right
}

// count returns the rings round p, which lies on edge i, on the far side of that edge, and how clear
// the ray keeps of having to be started on another edge.
func (c *counter) count(i int, p Vec) (n [2]int32, clear float64) {
	clear = math.Inf(1)
	for _, j := range c.strips[c.strip(p.Y)] {
		f := &c.edges[j]
		if int(j) == i || (f.a.Y <= p.Y) == (f.b.Y <= p.Y) {
			continue
		}
		x := f.xAt(p.Y)
		clear = min(clear, math.Abs(x-p.X))
		if x > p.X {
			n[0] += f.w[0] * int32(f.rise())
			n[1] += f.w[1] * int32(f.rise())
		}
	}
	return n, clear
}

// rings strings edges, each with the area on its left, into tidy rings.
func (ar *arrangement) rings(es []edge) Region {
	outs := make([][]int32, len(ar.pts)) // the edges out of each vertex
	for i, e := range es {
		outs[e.from] = append(outs[e.from], int32(i))
	}
	place := make([]int32, len(ar.pts)) // one more than where the vertex stands in the chain
	used := make([]bool, len(es))
	var r Region
	for i := range es {
		var chain []edge
		for n := int32(i); n >= 0 && !used[n]; {
			e := es[n]
			used[n] = true
			place[e.from] = int32(len(chain)) + 1
			chain = append(chain, e)
			if at := place[e.to]; at > 0 {
				r = ar.appendRing(r, chain[at-1:])
				for _, f := range chain[at-1:] {
					place[f.from] = 0
				}
				chain = chain[:at-1]
			}
			n = next(e, es, outs[e.to], used)
		}
		for _, f := range chain {
			place[f.from] = 0
		}
	}
	return r
}

// appendRing adds a ring to r, its arcs put back on the circles they came from, save the shortest:
// vertices are not exact enough to tell which way those run round a circle that is not their own.
func (ar *arrangement) appendRing(r Region, chain []edge) Region {
	ks := make([]curve, len(chain))
	for i, e := range chain {
		ks[i] = e.curve
		if e.circle >= 0 && e.a.Dist(e.b) > 100*Tol {
			ks[i].c, ks[i].r = ar.circles[e.circle].c, ar.circles[e.circle].r
		}
	}
	if p, ok := tidyRing(ks); ok {
		r = append(r, p)
	}
	return r
}

// next returns the unused edge by which the ring goes on after e, -1 at the end.
func next(e edge, es []edge, outs []int32, used []bool) int32 {
	var free []int32
	var ks []curve
	for _, n := range outs {
		if !used[n] {
			free, ks = append(free, n), append(ks, es[n].curve)
		}
	}
	switch len(free) {
	case 0:
		return -1
	case 1:
		return free[0]
	}
	return free[leaveThrough(e.curve, ks)]
}
