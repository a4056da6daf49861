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

// ringer gathers the borders of the bands. Vertices are the corners of the mesh, then the middles, then
// the crossings as they come.
type ringer struct {
	*mesh
	levels []float64
	cross  map[crossing]int32
	extra  []geom.Vec     // of the crossings
	open   map[edge]int16 // band on the left of each edge that no edge of the same band has met yet
}

func (r *ringer) corners() int32 { return int32(len(r.x) * len(r.y)) }

func (r *ringer) at(v int32) geom.Vec {
	if n := r.corners(); v < n {
		return geom.Vec{X: r.x[int(v)%len(r.x)], Y: r.y[int(v)/len(r.x)]}
	} else if m := int(v - n); m < len(r.middle) {
		return geom.Vec{X: mid(r.x, m%r.nx()), Y: mid(r.y, m/r.nx())}
	} else {
		return r.extra[m-len(r.middle)]
	}
}

func (r *ringer) value(v int32) float64 {
	if n := r.corners(); v >= n {
		return r.middle[v-n]
	}
	return r.corner[v]
}

// cell adds the bands of one cell: whole where it lies in one, else triangle by triangle.
func (r *ringer) cell(i, j int) {
	m := r.corners() + int32(j*r.nx()+i)
	if math.IsNaN(r.value(m)) {
		return
	}
	k := int32(j*len(r.x) + i)
	ring := [4]int32{k, k + 1, k + 1 + int32(len(r.x)), k + int32(len(r.x))}
	band := bandOf(r.levels, r.value(m))
	same := true
	for _, c := range ring {
		same = same && bandOf(r.levels, r.value(c)) == band
	}
	if same {
		r.add(ring[:], band)
		return
	}
	for n, c := range ring {
		r.triangle([3]int32{m, c, ring[(n+1)%4]})
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
		p, q := bandOf(r.levels, r.value(a)), bandOf(r.levels, r.value(b))
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
		if len(ring) > 2 {
			r.add(ring, band)
		}
	}
}

// crossing returns the vertex where level k passes between a and b.
func (r *ringer) crossing(a, b int32, k int) int32 {
	if a > b {
		a, b = b, a
	}
	va, vb := r.value(a), r.value(b)
	switch r.levels[k] {
	case va:
		return a
	case vb:
		return b
	}
	key := crossing{a, b, k}
	v, ok := r.cross[key]
	if !ok {
		v = r.corners() + int32(len(r.middle)+len(r.extra))
		r.cross[key] = v
		r.extra = append(r.extra, r.at(a).Lerp(r.at(b), (r.levels[k]-va)/(vb-va)))
	}
	return v
}

// add puts a polygon to the band. Its edges and those of polygons it touches take each other away.
func (r *ringer) add(ring []int32, band int16) {
	for n, a := range ring {
		e := edge{a, ring[(n+1)%len(ring)]}
		if back := (edge{e.to, e.from}); r.has(back, band) {
			delete(r.open, back)
		} else {
			r.open[e] = band
		}
	}
}

func (r *ringer) has(e edge, band int16) bool {
	b, ok := r.open[e]
	return ok && b == band
}

// outside is the neighbour of an edge with no band behind it.
const outside = -1

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
