package geom

import (
	"cmp"
	"slices"
)

// Merge returns the lines and arcs of ps with nothing drawn twice: what lies along one line, or on one
// circle, and overlaps or touches becomes one. Each result is one open straight line or arc (an arc of
// more than four fifths of a circle in two halves), or a closed circle. Lines run to the right, upright
// ones up, and arcs counter-clockwise; they come in order of their starts, bottom first, then left. Paths
// with coordinates that are not numbers, or beyond 1e9 mm, are passed over.
func Merge(ps []Path) []Path { return MergeAgainst(ps, nil) }

// MergeAgainst is Merge of ps without whatever lies along a line or arc of over.
//
//	ps    -------------   ---       over       -----
//	            -----               result  ---      -----   ---
func MergeAgainst(ps, over []Path) []Path {
	const first, second = 0, 1
	var ss []stroke
	add := func(ps []Path, rank int32) {
		for _, p := range ps {
			if !p.finite() {
				continue
			}
			for _, k := range p.curves() {
				ss = append(ss, stroke{k, class{rank: rank}})
			}
		}
	}
	add(over, first)
	add(ps, second)
	var out []Path
	for _, s := range overlay(ss) {
		if s.rank == second {
			out = append(out, s.path())
		}
	}
	return out
}

// Over is lines that are there already. The zero value holds none.
type Over struct {
	ps    []Path
	boxes []Box
}

// Add puts lines to those that are there.
func (o *Over) Add(ps ...Path) {
	for _, p := range ps {
		o.ps, o.boxes = append(o.ps, p), append(o.boxes, p.Bounds().Grow(1))
	}
}

// Less is MergeAgainst of one path and all of them, of which only those near it are looked at.
func (o *Over) Less(p Path) []Path {
	var near []Path
	box := p.Bounds()
	for i, b := range o.boxes {
		if b.Overlaps(box) {
			near = append(near, o.ps[i])
		}
	}
	return MergeAgainst([]Path{p}, near)
}

// stroke is a line or arc drawn for a reason. Where strokes lie on each other, that of the first class
// stays. A circle is a stroke whose ends are one point.
type stroke struct {
	curve
	class
}

// class tells strokes apart that must not become one. Classes come in order of rank, then of owner, and the
// chords of a curve (bent) after plain lines.
type class struct {
	rank, owner int32
	bent        bool
}

func (c class) compare(o class) int {
	if r := cmp.Or(cmp.Compare(c.rank, o.rank), cmp.Compare(c.owner, o.owner)); r != 0 || c.bent == o.bent {
		return r
	}
	if o.bent {
		return -1
	}
	return 1
}

// path returns the stroke as a path, a full circle closed.
func (s stroke) path() Path {
	if s.turn != 0 && s.a == s.b {
		return Arc(s.c, s.r, 0, fullTurn)
	}
	return pathOf(joinRun([]curve{s.curve}), false)
}

// claim is a class of strokes on one line or circle, with the stretches they cover.
type claim struct {
	class
	on []span
}

// settle gives every stretch of a line to the first class that claims it.
func settle(cs []claim) []claim {
	slices.SortStableFunc(cs, func(a, b claim) int { return a.compare(b.class) })
	var out []claim
	var taken spans
	for lo := 0; lo < len(cs); {
		c := cs[lo]
		for lo++; lo < len(cs) && cs[lo].class == c.class; lo++ {
			c.on = append(c.on, cs[lo].on...)
		}
		all := unite(c.on, Tol)
		c.on = all
		if len(taken) > 0 {
			c.on = all.less(taken, Tol)
		}
		if lo < len(cs) {
			taken = unite(append(taken, all...), Tol)
		}
		out = append(out, c)
	}
	return out
}

// mark is a place on a line or circle at which a stroke began or ended.
type mark struct {
	t float64
	p Vec
}

// marks gives the places back as the points they were, without the rounding of the way there and back.
type marks []mark

func (ms marks) sort() { slices.SortFunc(ms, func(a, b mark) int { return cmp.Compare(a.t, b.t) }) }

func (ms marks) at(t float64, otherwise func(float64) Vec) Vec {
	i, ok := slices.BinarySearchFunc(ms, t, func(m mark, t float64) int { return cmp.Compare(m.t, t) })
	if ok {
		return ms[i].p
	}
	return otherwise(t)
}
