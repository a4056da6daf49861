package heat

import (
	"fmt"
	"math"
	"slices"
)

// layout is a case cut by the planes of all faces of its boxes: every region between planes holds one
// thing. Along z a case in two dimensions is one region of a metre.
type layout struct {
	c      *Case
	planes [3][]float64 // mm, rising
	owner  []int        // box that fills each region, x running fastest; -1: none
	kind   []kind       // what fills each region
	k      [][3]float64 // conductivity of each box's material, W/(m K)
	env    []int        // environment of each box
	rs     []float64    // surface resistance of each box of an environment, m2 K/W
	empty  [3][]bool    // intervals between planes that hold no material at all
}

// kind is what fills a region.
type kind int8

const (
	gap kind = iota
	solid
	air
	void
)

// depth is how deep a case in two dimensions is taken, mm, so that its flows are W per metre.
const depth = 1000

// newLayout cuts and paints c, whose parts are valid one by one.
func newLayout(c *Case, most int) (*layout, error) {
	l := &layout{c: c}
	if len(c.Boxes) == 0 {
		return nil, Faults{{Part: InCase, Given: "there is no box", Do: "give the boxes of the materials and of each environment"}}
	}
	for a := range l.planes {
		l.planes[a] = l.cuts(Axis(a))
	}
	n := 1
	for a := range l.planes {
		if n *= l.regions(Axis(a)); n > most {
			return nil, Faults{{Part: InCase, Given: fmt.Sprintf("the faces of the boxes cut it into more than %d regions", most), Do: "line faces up, or leave out small parts"}}
		}
	}
	l.owner, l.kind = make([]int, n), make([]kind, n)
	for i := range l.owner {
		l.owner[i] = -1
	}
	for _, b := range c.Boxes {
		l.know(b)
	}
	var fs Faults
	for i := range c.Boxes {
		l.paint(i, &fs)
	}
	if len(fs) == 0 {
		l.whole(&fs)
	}
	if len(fs) == 0 {
		l.reached(&fs)
		l.probed(&fs)
	}
	return l, fs.err()
}

// cuts returns the planes of all box faces along a, those nearer than thinnest as one.
func (l *layout) cuts(a Axis) []float64 {
	if int(a) >= l.c.Dim {
		return []float64{0, depth}
	}
	var all []float64
	for _, b := range l.c.Boxes {
		all = append(all, b.Lo[a], b.Hi[a])
	}
	slices.Sort(all)
	out := all[:1]
	for _, v := range all[1:] {
		if v-out[len(out)-1] >= thinnest {
			out = append(out, v)
		}
	}
	return out
}

func (l *layout) regions(a Axis) int { return len(l.planes[a]) - 1 }

// at returns the place of region i, j, k.
func (l *layout) at(i, j, k int) int { return i + l.regions(X)*(j+l.regions(Y)*k) }

// know notes what box b is filled with.
func (l *layout) know(b Box) {
	var k [3]float64
	env, rs := -1, 0.0
	switch {
	case b.Material != "":
		k = l.c.Materials[l.c.material(b.Material)].K
	case b.Env != "":
		env = l.c.env(b.Env)
		if rs = b.Rs; rs == 0 {
			rs = l.c.Envs[env].Rs
		}
	}
	l.k, l.env, l.rs = append(l.k, k), append(l.env, env), append(l.rs, rs)
}

// plane returns the number of the plane at v along a, which is one of them.
func (l *layout) plane(a Axis, v float64) int {
	p, exact := slices.BinarySearch(l.planes[a], v)
	if !exact {
		p-- // v was taken as one with the plane before
	}
	return p
}

// paint fills the regions of box b. An environment may not paint over another.
func (l *layout) paint(b int, fs *Faults) {
	box := l.c.Boxes[b]
	lo, hi := [3]int{}, [3]int{1, 1, 1}
	for a := range l.c.Dim {
		lo[a], hi[a] = l.plane(Axis(a), box.Lo[a]), l.plane(Axis(a), box.Hi[a])
	}
	what := l.what(b)
	other := -1
	for k := lo[2]; k < hi[2]; k++ {
		for j := lo[1]; j < hi[1]; j++ {
			for i := lo[0]; i < hi[0]; i++ {
				n := l.at(i, j, k)
				if what == air && l.kind[n] == air && l.env[l.owner[n]] != l.env[b] {
					other = l.owner[n]
				}
				l.owner[n], l.kind[n] = b, what
			}
		}
	}
	if other >= 0 {
		fs.add(InBox, b, fmt.Sprintf("environment %q overlaps %q of box %d", box.Env, l.c.Boxes[other].Env, other+1), "", "air has one temperature at a place; make one of the boxes smaller")
	}
}

func (l *layout) what(b int) kind {
	switch box := l.c.Boxes[b]; {
	case box.Material != "":
		return solid
	case box.Env != "":
		return air
	}
	return void
}

// whole finds a region that no box fills, and notes the intervals where no box holds material, not even one
// that others paint over: cases of the same boxes have the same cells.
func (l *layout) whole(fs *Faults) {
	for a := range l.empty {
		l.empty[a] = slices.Repeat([]bool{true}, l.regions(Axis(a)))
	}
	for n, b := range l.owner {
		if b < 0 {
			lo, hi := l.bounds(n)
			fs.add(InCase, 0, fmt.Sprintf("there is a gap in the material: nothing fills %s to %s mm", l.words(lo), l.words(hi)), "",
				"fill it with a material, an environment or a void box")
			return
		}
	}
	for b, box := range l.c.Boxes {
		for a := range l.c.Dim {
			for i := l.plane(Axis(a), box.Lo[a]); l.what(b) == solid && i < l.plane(Axis(a), box.Hi[a]); i++ {
				l.empty[a][i] = false
			}
		}
	}
	for a := l.c.Dim; a < 3; a++ {
		l.empty[a][0] = false
	}
}

// bounds returns the corners of region n.
func (l *layout) bounds(n int) (lo, hi Point) {
	for a := range lo {
		r := l.regions(Axis(a))
		lo[a], hi[a] = l.planes[a][n%r], l.planes[a][n%r+1]
		n /= r
	}
	return lo, hi
}

// words writes a point as a message does.
func (l *layout) words(p Point) string {
	if l.c.Dim == 2 {
		return fmt.Sprintf("(%g, %g)", p[0], p[1])
	}
	return fmt.Sprintf("(%g, %g, %g)", p[0], p[1], p[2])
}

// probed finds probes that lie in no material.
func (l *layout) probed(fs *Faults) {
	for i, p := range l.c.Probes {
		if len(l.touching(p.At)) == 0 {
			fs.add(InProbe, i, fmt.Sprintf("%q at %s mm is outside every material", p.Name, l.words(p.At)), "", "move it into or onto a material")
		}
	}
}

// touching returns the solid regions that p lies in or on, in order.
func (l *layout) touching(p Point) []int {
	var span [3][]int
	for a := range span {
		span[a] = beside(l.planes[a], p[a])
		if a >= l.c.Dim {
			span[a] = []int{0}
		}
	}
	var out []int
	for _, k := range span[2] {
		for _, j := range span[1] {
			for _, i := range span[0] {
				if n := l.at(i, j, k); l.kind[n] == solid {
					out = append(out, n)
				}
			}
		}
	}
	return out
}

// beside returns the intervals between planes that v lies in: two when it is on a plane between, none
// when it is outside.
func beside(planes []float64, v float64) []int {
	var out []int
	first, _ := slices.BinarySearch(planes, v-thinnest)
	for i := max(first-1, 0); i+1 < len(planes) && planes[i] <= v+thinnest; i++ {
		if v <= planes[i+1]+thinnest && !math.IsNaN(v) {
			out = append(out, i)
		}
	}
	return out
}
