package geom

import (
	"cmp"
	"math"
	"slices"
)

// arrangement is a set of outlines cut up until no two of its edges cross, overlap or touch except
// at common vertices. The first step of every boolean operation.
//
//	a---------b              a----p----b
//	|    c----|----d   ==>   |    |    |     where two outlines share a stretch it is there
//	|    |    |    |         |    q    |     once, and knows how often each runs along it
//	...                      ...
//
// Edges are cut at every crossing and at every vertex that lies on them. Moving a cut onto a vertex
// nearby bends an edge by up to Tol, so the cutting is done again until nothing is left to cut.
type arrangement struct {
	*vertices
	edges   []edge
	circles []curve // the distinct circles, as arcs of any extent
}

// edge is a line or an arc of at most a quarter circle between two vertices. The centre of an arc
// is its own: it may lie a little off that of the circle it came from.
type edge struct {
	curve
	from, to int32
	circle   int32    // index of the circle, -1 for a line
	w        [2]int32 // how often the rings of each of the two groups run from from to to, less back
}

// rounds is how often the cutting is repeated. Two rounds do for nearly all drawings; the limit
// only keeps rounding from going round in circles.
const rounds = 12

// arrange cuts up the rings of two groups of regions.
func arrange(groups [2][]Region) *arrangement {
	ar := &arrangement{vertices: newVertices(64)}
	for g, rs := range groups {
		for _, r := range rs {
			for _, p := range r {
				if p.finite() {
					ar.addRing(p, g)
				}
			}
		}
	}
	ar.merge()
	for i := 0; i < rounds; i++ {
		cuts, any := ar.cuts()
		if !any {
			break
		}
		ar.split(cuts)
		ar.merge()
	}
	return ar
}

// addRing adds the edges of one ring to group g.
func (ar *arrangement) addRing(p Path, g int) {
	p.Closed = true
	for _, k := range p.curves() {
		circle := ar.circleOf(k)
		if circle >= 0 {
			k.c, k.r = ar.circles[circle].c, ar.circles[circle].r
		}
		for _, m := range k.monotone(true) {
			e := edge{curve: m, circle: circle}
			e.w[g] = 1
			ar.add(e)
		}
	}
}

// circleOf returns the index of the circle of k, so that arcs of one circle given twice with
// different rounding become arcs of one circle. Lines give -1.
func (ar *arrangement) circleOf(k curve) int32 {
	if k.turn == 0 {
		return -1
	}
	for i, c := range ar.circles {
		if c.c.Near(k.c) && math.Abs(c.r-k.r) <= Tol {
			return int32(i)
		}
	}
	ar.circles = append(ar.circles, k)
	return int32(len(ar.circles) - 1)
}

// add puts the ends of e on vertices and keeps it if it still has length.
func (ar *arrangement) add(e edge) {
	e.from, e.to = ar.at(e.a), ar.at(e.b)
	if e.from == e.to {
		return
	}
	e.a, e.b = ar.pts[e.from], ar.pts[e.to]
	e.recentre()
	ar.edges = append(ar.edges, e)
}

// recentre moves the centre of an arc whose ends were moved onto vertices so that it passes through
// them again with the same radius.
func (e *edge) recentre() {
	if e.turn == 0 {
		return
	}
	d := e.b.Sub(e.a)
	half := d.Len() / 2
	depth := math.Sqrt(math.Max(0, (e.r-half)*(e.r+half)))
	e.c = e.a.Lerp(e.b, 0.5).Add(d.Perp().Unit().Mul(e.turn * depth))
}

// cuts finds, for every edge, the vertices at which it has to be cut.
func (ar *arrangement) cuts() (cuts [][]int32, any bool) {
	cuts = make([][]int32, len(ar.edges))
	var meets []Vec
	ar.pairs(func(i, j int) {
		e, f := &ar.edges[i], &ar.edges[j]
		meets = meets[:0]
		if !e.joinsLine(f) {
			meets = e.meet(f.curve, meets)
		}
		for _, p := range meets {
			v := ar.at(p)
			cuts[i], cuts[j] = e.cutAt(v, ar.pts[v], cuts[i]), f.cutAt(v, ar.pts[v], cuts[j])
		}
		cuts[i] = ar.endsOn(e, f, cuts[i])
		cuts[j] = ar.endsOn(f, e, cuts[j])
	})
	for _, c := range cuts {
		any = any || len(c) > 0
	}
	return cuts, any
}

// joinsLine reports whether e and f are lines with a common vertex: they meet nowhere else.
func (e *edge) joinsLine(f *edge) bool {
	return e.turn == 0 && f.turn == 0 &&
		(e.from == f.from || e.from == f.to || e.to == f.from || e.to == f.to)
}

// cutAt adds v to the cuts of e unless e ends there or before.
func (e *edge) cutAt(v int32, p Vec, cuts []int32) []int32 {
	if v == e.from || v == e.to {
		return cuts
	}
	if t := e.fraction(p); t <= 0 || t >= 1 {
		return cuts
	}
	return append(cuts, v)
}

// onEdge is how far a vertex may lie off an edge that is to be cut there. Since vertices are more than
// Tol apart, an edge bent to a vertex that near makes an obtuse corner, and the vertex it came from
// can never lie on the new edge in turn: the cutting comes to an end.
const onEdge = 0.7 * Tol

// endsOn adds the ends of f that lie on e to the cuts of e.
func (ar *arrangement) endsOn(e, f *edge, cuts []int32) []int32 {
	for _, v := range [2]int32{f.from, f.to} {
		if p := ar.pts[v]; e.within(p, onEdge) {
			cuts = e.cutAt(v, p, cuts)
		}
	}
	return cuts
}

// pairs calls f for every two edges whose boxes touch.
func (ar *arrangement) pairs(f func(i, j int)) {
	boxes := make([]Box, len(ar.edges))
	order := make([]int, len(ar.edges))
	for i := range ar.edges {
		boxes[i] = ar.edges[i].box().Grow(Tol)
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(cmp.Compare(boxes[i].Min.X, boxes[j].Min.X), cmp.Compare(i, j))
	})
	for n, i := range order {
		b := boxes[i]
		for _, j := range order[n+1:] {
			c := boxes[j]
			if c.Min.X > b.Max.X {
				break
			}
			if c.Min.Y <= b.Max.Y && b.Min.Y <= c.Max.Y {
				f(i, j)
			}
		}
	}
}

// split replaces every edge by its parts between cuts.
func (ar *arrangement) split(cuts [][]int32) {
	old := ar.edges
	ar.edges = make([]edge, 0, 2*len(old))
	for i, e := range old {
		if len(cuts[i]) == 0 {
			ar.edges = append(ar.edges, e)
			continue
		}
		for _, v := range e.inTurn(cuts[i], ar.pts) {
			first := e
			first.b = ar.pts[v]
			ar.add(first)
			e.a = ar.pts[v]
		}
		ar.add(e)
	}
}

// inTurn sorts vertices on e by the order in which e passes them.
func (e *edge) inTurn(vs []int32, pts []Vec) []int32 {
	slices.SortFunc(vs, func(v, w int32) int {
		return cmp.Or(cmp.Compare(e.fraction(pts[v]), e.fraction(pts[w])), cmp.Compare(v, w))
	})
	return slices.Compact(vs)
}

// merge makes one edge of those that lie on each other, adding up how often each group runs along
// it, and drops the edges along which every group runs as often forth as back.
func (ar *arrangement) merge() {
	for i := range ar.edges {
		if ar.edges[i].from > ar.edges[i].to {
			ar.edges[i].turnRound()
		}
	}
	slices.SortStableFunc(ar.edges, func(e, f edge) int {
		return cmp.Or(cmp.Compare(e.from, f.from), cmp.Compare(e.to, f.to))
	})
	out := ar.edges[:0]
	for lo := 0; lo < len(ar.edges); {
		hi := lo + 1
		for hi < len(ar.edges) && ar.edges[hi].from == ar.edges[lo].from && ar.edges[hi].to == ar.edges[lo].to {
			hi++
		}
		out = appendMerged(out, ar.edges[lo:hi])
		lo = hi
	}
	ar.edges = out
}

// appendMerged merges edges between the same two vertices.
func appendMerged(out, same []edge) []edge {
	for i := range same {
		e := same[i]
		if e.w == [2]int32{} {
			continue
		}
		mid := e.at(0.5)
		for j := i + 1; j < len(same); j++ {
			if same[j].at(0.5).Near(mid) {
				e.w[0] += same[j].w[0]
				e.w[1] += same[j].w[1]
				same[j].w = [2]int32{}
			}
		}
		if e.w != [2]int32{} {
			out = append(out, e)
		}
	}
	return out
}

func (e *edge) turnRound() {
	e.curve = e.reverse()
	e.from, e.to = e.to, e.from
	e.w[0], e.w[1] = -e.w[0], -e.w[1]
}
