package contour

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"standclear/geom"
)

// edge runs from one vertex to the next, what it bounds on its left.
type edge struct{ from, to int32 }

// crossing is where a level passes between two corners of a triangle, the first the lower in number.
type crossing struct {
	a, b  int32
	level int
}

// ringer gathers the borders of the bands. Vertices are the nodes of the mesh, then the crossings as they
// come.
type ringer struct {
	*mesh
	levels []float64
	bands  []int16 // of each node
	whole  []int16 // of each quarter that lies in one band; mixed, or outside where it is empty
	cross  map[crossing]int32
	extra  []geom.Vec     // of the crossings
	open   map[edge]int16 // band on the left of each edge that no edge of the same band has met yet
}

// What whole holds beside bands; outside is also the neighbour of an edge with no band behind it.
const (
	outside = -1
	mixed   = -2
)

// sort finds the band of each node, and of each quarter where its nodes agree.
func (r *ringer) sort() {
	for _, v := range r.v {
		r.bands = append(r.bands, bandOf(r.levels, v))
	}
	for q, full := range r.full {
		if !full {
			r.whole = append(r.whole, outside)
			continue
		}
		ring := r.ring(q%r.nx(), q/r.nx())
		band := r.bands[ring[0]]
		for _, c := range ring {
			if r.bands[c] != band && band != mixed {
				band = mixed
			}
		}
		r.whole = append(r.whole, band)
	}
}

// ring returns the nodes of a quarter, counter-clockwise from the lower left.
func (r *ringer) ring(i, j int) [4]int32 {
	k, up := int32(j*len(r.x)+i), int32(len(r.x))
	return [4]int32{k, k + 1, k + 1 + up, k + up}
}

// wholeAt returns what whole holds for a quarter, and outside beyond the mesh.
func (r *ringer) wholeAt(i, j int) int16 {
	if i < 0 || j < 0 || i >= r.nx() || j >= r.ny() {
		return outside
	}
	return r.whole[j*r.nx()+i]
}

func (r *ringer) at(v int32) geom.Vec {
	if k := int(v); k < len(r.v) {
		return geom.Vec{X: r.x[k%len(r.x)].at, Y: r.y[k/len(r.x)].at}
	}
	return r.extra[int(v)-len(r.v)]
}

// quarter adds the bands of one quarter of a cell: whole where it lies in one, else in two triangles that
// meet along the line from the cell's middle to its corner.
func (r *ringer) quarter(i, j int) {
	ring := r.ring(i, j)
	switch band := r.wholeAt(i, j); {
	case band == outside:
	case band != mixed:
		for n, d := range [4][2]int{{0, -1}, {1, 0}, {0, 1}, {-1, 0}} {
			if r.wholeAt(i+d[0], j+d[1]) != band { // else the two edges would take each other away
				r.edge(edge{ring[n], ring[(n+1)%4]}, band)
			}
		}
	case r.x[i].odd == r.y[j].odd: // the middle is at the lower left or the upper right
		r.triangle([3]int32{ring[0], ring[1], ring[2]})
		r.triangle([3]int32{ring[0], ring[2], ring[3]})
	default:
		r.triangle([3]int32{ring[1], ring[2], ring[3]})
		r.triangle([3]int32{ring[1], ring[3], ring[0]})
	}
}

// triangle cuts a triangle at the levels and adds what lies in each band.
func (r *ringer) triangle(t [3]int32) {
	type stop struct {
		v      int32
		lo, hi int16 // the bands it belongs to
	}
	var round []stop
	low, high := int16(len(r.levels)), int16(0)
	for n, a := range t {
		b := t[(n+1)%3]
		p, q := r.bands[a], r.bands[b]
		round = append(round, stop{a, p, p})
		low, high = min(low, p), max(high, p)
		for k := p; k < q; k++ {
			round = append(round, stop{r.crossing(a, b, int(k)), k, k + 1})
		}
		for k := p; k > q; k-- {
			round = append(round, stop{r.crossing(a, b, int(k)-1), k - 1, k})
		}
	}
	for band := low; band <= high; band++ {
		var ring []int32
		for _, s := range round {
			if s.lo <= band && band <= s.hi && (len(ring) == 0 || ring[len(ring)-1] != s.v) {
				ring = append(ring, s.v)
			}
		}
		for len(ring) > 1 && ring[0] == ring[len(ring)-1] {
			ring = ring[:len(ring)-1]
		}
		for n := range ring {
			if len(ring) > 2 {
				r.edge(edge{ring[n], ring[(n+1)%len(ring)]}, band)
			}
		}
	}
}

// crossing returns the vertex where level k passes between a and b.
func (r *ringer) crossing(a, b int32, k int) int32 {
	if a > b {
		a, b = b, a
	}
	va, vb := r.v[a], r.v[b]
	switch r.levels[k] {
	case va:
		return a
	case vb:
		return b
	}
	key := crossing{a, b, k}
	v, ok := r.cross[key]
	if !ok {
		v = int32(len(r.v) + len(r.extra))
		r.cross[key] = v
		r.extra = append(r.extra, r.at(a).Lerp(r.at(b), (r.levels[k]-va)/(vb-va)))
	}
	return v
}

// edge adds an edge of a polygon of the band. It and that of a polygon it touches take each other away.
func (r *ringer) edge(e edge, band int16) {
	back := edge{e.to, e.from}
	if b, ok := r.open[back]; ok && b == band {
		delete(r.open, back)
		return
	}
	r.open[e] = band
}

// behind returns the band on the right of an edge.
func (r *ringer) behind(e edge) int16 {
	if b, ok := r.open[edge{e.to, e.from}]; ok {
		return b
	}
	return outside
}

// rings joins what is left to rings and to lines along the levels.
func (r *ringer) rings(tol float64) Map {
	out := Map{Bands: make([]geom.Region, len(r.levels)+1), Lines: make([][]geom.Path, len(r.levels))}
	edges := slices.SortedFunc(maps.Keys(r.open), func(a, b edge) int {
		return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
	})
	from, degree := map[int32][]edge{}, map[int32]int{}
	for _, e := range edges {
		from[e.from] = append(from[e.from], e)
		degree[e.from]++
		degree[e.to]++
		if r.behind(e) != outside { // seen from both sides, and counted twice
			degree[e.from]--
		}
	}
	used := map[edge]bool{}
	for _, e := range edges {
		if used[e] {
			continue
		}
		band := r.open[e]
		var ring []edge
		for at := e; !used[at]; at = r.next(at, band, from[at.to], used) {
			used[at] = true
			ring = append(ring, at)
		}
		path := geom.Path{Closed: true}
		for _, a := range r.arcs(ring, degree) {
			pts := r.thin(a, tol)
			path.V = append(path.V, pts[:len(pts)-1]...)
			if b := r.behind(a[0]); b == band-1 && b != outside {
				line := geom.Path{V: pts}
				if a[0].from == a[len(a)-1].to {
					line = geom.Path{V: pts[:len(pts)-1], Closed: true}
				}
				out.Lines[b] = append(out.Lines[b], line)
			}
		}
		if len(path.V) > 2 {
			out.Bands[band] = append(out.Bands[band], path)
		}
	}
	return out
}

// next returns the edge that goes on round the band; where bands meet in a point, the one most to the left.
func (r *ringer) next(e edge, band int16, all []edge, used map[edge]bool) edge {
	best, turn := e, math.Inf(-1)
	dir := r.at(e.to).Sub(r.at(e.from))
	for _, o := range all {
		if r.open[o] != band || used[o] {
			continue
		}
		d := r.at(o.to).Sub(r.at(o.from))
		if t := math.Atan2(dir.Cross(d), dir.Dot(d)); t > turn {
			best, turn = o, t
		}
	}
	return best
}

// arcs parts a ring where its neighbour changes or other borders join it. A ring without such a place
// starts at its vertex of least number, whichever band it is seen from.
func (r *ringer) arcs(ring []edge, degree map[int32]int) [][]edge {
	start, least := -1, 0
	n := len(ring)
	breaks := func(i int) bool {
		return r.behind(ring[i]) != r.behind(ring[(i+n-1)%n]) || degree[ring[i].from] > 2
	}
	for i := range ring {
		if start < 0 && breaks(i) {
			start = i
		}
		if ring[i].from < ring[least].from {
			least = i
		}
	}
	if start < 0 {
		start = least
	}
	ring = slices.Concat(ring[start:], ring[:start])
	var out [][]edge
	from := 0
	for i := 1; i <= n; i++ {
		if i == n || breaks(i) {
			out = append(out, ring[from:i])
			from = i
		}
	}
	return out
}

// thin returns the points of an arc without those that hardly leave the line between their neighbours:
// the same points from whichever end the arc is run.
func (r *ringer) thin(arc []edge, tol float64) []geom.Vertex {
	ids := []int32{arc[0].from}
	for _, e := range arc {
		ids = append(ids, e.to)
	}
	last := len(ids) - 1
	turned := ids[0] > ids[last] || ids[0] == ids[last] && ids[1] > ids[last-1]
	if turned {
		slices.Reverse(ids)
	}
	pts := make([]geom.Vec, len(ids))
	for i, v := range ids {
		pts[i] = r.at(v)
	}
	keep := make([]bool, len(ids))
	keep[0], keep[last] = true, true
	if ids[0] == ids[last] { // a closed arc needs a second place to hang between
		far := 0
		for i := range pts {
			if pts[i].Dist(pts[0]) > pts[far].Dist(pts[0]) {
				far = i
			}
		}
		keep[far] = true
		thinBetween(pts, keep, 0, far, tol)
		thinBetween(pts, keep, far, last, tol)
	} else {
		thinBetween(pts, keep, 0, last, tol)
	}
	var out []geom.Vertex
	for i, p := range pts {
		if keep[i] {
			out = append(out, geom.Vertex{Vec: p})
		}
	}
	if turned {
		slices.Reverse(out)
	}
	return out
}

// thinBetween keeps the point farthest from the line between two that are kept, and so on to either side
// (Douglas and Peucker 1973).
func thinBetween(pts []geom.Vec, keep []bool, a, b int, tol float64) {
	far, away := -1, tol
	for i := a + 1; i < b; i++ {
		if d := fromLine(pts[i], pts[a], pts[b]); d > away {
			far, away = i, d
		}
	}
	if far < 0 {
		return
	}
	keep[far] = true
	thinBetween(pts, keep, a, far, tol)
	thinBetween(pts, keep, far, b, tol)
}

// fromLine is the distance of p from the piece of line between a and b.
func fromLine(p, a, b geom.Vec) float64 {
	d := b.Sub(a)
	l := d.Dot(d)
	if l == 0 {
		return p.Dist(a)
	}
	t := max(0, min(1, p.Sub(a).Dot(d)/l))
	return p.Dist(a.Add(d.Mul(t)))
}
