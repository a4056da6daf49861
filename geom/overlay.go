package geom

import (
	"cmp"
	"math"
	"slices"
)

const fullTurn = 2 * math.Pi

// overlay returns the strokes cut and joined so that none lies on another: the rule is that of stroke.
// They come in order of their starts, bottom first, then left.
func overlay(ss []stroke) []stroke {
	var arcs []stroke
	lines := make([]stroke, 0, len(ss))
	for _, s := range ss {
		switch {
		case s.turn != 0:
			arcs = append(arcs, s)
		case !s.a.Near(s.b):
			lines = append(lines, s)
		}
	}
	out := append(make([]stroke, 0, len(ss)), overlayArcs(arcs)...)
	for _, group := range inLineGroups(lines) {
		out = overlayLines(out, group)
	}
	slices.SortFunc(out, func(s, t stroke) int {
		return cmp.Or(cmp.Compare(s.a.Y, t.a.Y), cmp.Compare(s.a.X, t.a.X),
			cmp.Compare(s.b.Y, t.b.Y), cmp.Compare(s.b.X, t.b.X),
			cmp.Compare(s.turn, t.turn), cmp.Compare(s.r, t.r), cmp.Compare(s.c.X, t.c.X),
			s.compare(t.class))
	})
	return out
}

// overlayLines settles strokes that lie, nearly or exactly, along one line, and appends them to out. The
// longest gives the line; what strays from it is settled again among itself.
func overlayLines(out, ss []stroke) []stroke {
	if len(ss) == 1 {
		s := ss[0]
		if !rightward(s.b.Sub(s.a)) {
			s.a, s.b = s.b, s.a
		}
		return append(out, s)
	}
	slices.SortStableFunc(ss, func(a, b stroke) int { return cmp.Compare(b.a.Dist(b.b), a.a.Dist(a.b)) })
	for len(ss) > 0 {
		base := ss[0]
		u := base.b.Sub(base.a).Unit()
		if !rightward(u) {
			u = u.Mul(-1)
		}
		var cs []claim
		var ms marks
		var rest []stroke
		for _, s := range ss {
			a, b := s.a.Sub(base.a), s.b.Sub(base.a)
			if math.Abs(a.Cross(u)) > Tol || math.Abs(b.Cross(u)) > Tol {
				rest = append(rest, s)
				continue
			}
			ta, tb := a.Dot(u), b.Dot(u)
			ms = append(ms, mark{ta, s.a}, mark{tb, s.b})
			cs = append(cs, claim{s.class, []span{{min(ta, tb), max(ta, tb)}}})
		}
		ms.sort()
		at := func(t float64) Vec { return base.a.Add(u.Mul(t)) }
		for _, c := range settle(cs) {
			for _, s := range c.on {
				out = append(out, stroke{curve{a: ms.at(s.lo, at), b: ms.at(s.hi, at)}, c.class})
			}
		}
		ss = rest
	}
	return out
}

// rightward reports whether a direction runs to the right or, if upright within rounding, upward.
func rightward(d Vec) bool {
	if math.Abs(d.X) <= 1e-9*math.Abs(d.Y) {
		return d.Y > 0
	}
	return d.X > 0
}

// directions is the number of classes into which lines are sorted by direction, over half a turn.
const directions = 1024

// inLineGroups sorts lines into groups that may lie along one line and touch. Only lines of nearly one
// direction are compared, in the order of their distance from the origin.
func inLineGroups(ss []stroke) [][]stroke {
	class := make([][]int32, directions)
	for i, s := range ss {
		d := s.b.Sub(s.a)
		angle := math.Atan2(d.Y, d.X)
		// A short line is in doubt by what its ends may be off; one near the border of two
		// classes goes into both.
		doubt := math.Min(2*Tol/d.Len()+1e-9, 0.5/directions)
		lo, hi := directionClass(angle-doubt), directionClass(angle+doubt)
		class[lo] = append(class[lo], int32(i))
		if hi != lo {
			class[hi] = append(class[hi], int32(i))
		}
	}
	g := newGrouping(len(ss))
	for n, members := range class {
		if len(members) > 1 {
			g.joinClass(ss, members, float64(n)*math.Pi/directions)
		}
	}
	return g.collect(ss)
}

// directionClass returns the class of a direction and its opposite; class n is about n/directions of
// half a turn.
func directionClass(angle float64) int {
	n := int(math.Round(angle*directions/math.Pi)) % directions
	if n < 0 {
		n += directions
	}
	return n
}

// grouping is a forest of parents: two strokes are of one group when they have the same root.
type grouping []int32

func newGrouping(n int) grouping {
	g := make(grouping, n)
	for i := range g {
		g[i] = int32(i)
	}
	return g
}

func (g grouping) root(i int32) int32 {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

func (g grouping) join(i, j int32) {
	i, j = g.root(i), g.root(j)
	g[max(i, j)] = min(i, j)
}

// lane is a line as it lies in a class: its distance to the left of the origin, which is counted in
// steps of Tol for sorting, and its stretch along the direction of the class.
type lane struct {
	i      int32
	step   float64
	lo, hi float64
	t      span
	next   int // the index of the first lane of a higher step
}

// lanes sorts the lines of a class by step, and those of one step by where they start.
func lanes(ss []stroke, members []int32, angle float64) []lane {
	sin, cos := sincos(angle)
	u := Vec{cos, sin}
	ls := make([]lane, len(members))
	for n, i := range members {
		a, b := ss[i].a, ss[i].b
		ha, hb, ta, tb := u.Cross(a), u.Cross(b), u.Dot(a), u.Dot(b)
		lo := min(ha, hb)
		ls[n] = lane{i, math.Floor(lo / Tol), lo, max(ha, hb), span{min(ta, tb), max(ta, tb)}, 0}
	}
	slices.SortFunc(ls, func(a, b lane) int {
		return cmp.Or(cmp.Compare(a.step, b.step), cmp.Compare(a.t.lo, b.t.lo), cmp.Compare(a.i, b.i))
	})
	next := len(ls)
	for n := len(ls) - 1; n >= 0; n-- {
		if n+1 < len(ls) && ls[n+1].step != ls[n].step {
			next = n + 1
		}
		ls[n].next = next
	}
	return ls
}

// joinClass joins the lines of one class of direction that lie along each other and touch.
func (g grouping) joinClass(ss []stroke, members []int32, angle float64) {
	ls := lanes(ss, members, angle)
	for n, a := range ls {
		for m := n + 1; m < len(ls); {
			b := &ls[m]
			switch {
			case b.step*Tol > a.hi+2*Tol:
				m = len(ls)
				continue
			case b.t.lo > a.t.hi+Tol: // and so do the rest of its step
				m = b.next
				continue
			}
			if a.t.lo <= b.t.hi+Tol && b.lo <= a.hi+2*Tol && inOneLine(&ss[a.i], &ss[b.i]) {
				g.join(a.i, b.i)
			}
			m++
		}
	}
}

// inOneLine reports whether the shorter of two lines lies along the longer, or its extension.
func inOneLine(k, o *stroke) bool {
	if o.a.Dist(o.b) > k.a.Dist(k.b) {
		k, o = o, k
	}
	u := k.b.Sub(k.a).Unit()
	return math.Abs(o.a.Sub(k.a).Cross(u)) <= Tol && math.Abs(o.b.Sub(k.a).Cross(u)) <= Tol
}

// collect returns the groups in the order of their first members.
func (g grouping) collect(ss []stroke) [][]stroke {
	place := make([]int32, len(ss)) // one more than the index of the group of a root
	var groups [][]stroke
	for i, s := range ss {
		r := g.root(int32(i))
		if place[r] == 0 {
			groups = append(groups, nil)
			place[r] = int32(len(groups))
		}
		groups[place[r]-1] = append(groups[place[r]-1], s)
	}
	return groups
}
