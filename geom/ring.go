package geom

import "math"

// joins reports whether the curves, each starting where the one before ends, can be drawn as one
// line or one arc.
func joins(run []curve) bool {
	first := run[0]
	for _, k := range run[1:] {
		if k.turn != first.turn {
			return false
		}
	}
	if first.turn == 0 {
		return inLine(run)
	}
	long, sum := longest(run), 0.0
	for _, k := range run {
		sum += k.sweepAbout(long)
		if math.Abs(k.a.Dist(long.c)-long.r) > Tol || math.Abs(k.b.Dist(long.c)-long.r) > Tol ||
			math.Abs(k.at(0.5).Dist(long.c)-long.r) > Tol {
			return false
		}
	}
	return sum < 2*math.Pi-1e-9
}

// inLine reports whether straight pieces end to end stray nowhere from the chord over them.
func inLine(run []curve) bool {
	chord := curve{a: run[0].a, b: run[len(run)-1].b}
	u := chord.b.Sub(chord.a).Unit()
	for _, k := range run {
		if k.b.Sub(k.a).Dot(u) <= 0 || math.Abs(k.b.Sub(chord.a).Cross(u)) > Tol {
			return false
		}
	}
	return true
}

// sweepAbout returns the angle from the start of k to its end about the centre of an arc o that it
// continues. It is that of k itself but for rounding, and may be less than nothing for the shortest.
func (k curve) sweepAbout(o curve) float64 {
	p, q := k.a.Sub(o.c), k.b.Sub(o.c)
	a := k.turn * math.Atan2(p.Cross(q), p.Dot(q))
	if a < 0 && k.length()/o.r > math.Pi/2 {
		a += 2 * math.Pi
	}
	return a
}

func longest(run []curve) curve {
	best := run[0]
	for _, k := range run[1:] {
		if k.length() > best.length() {
			best = k
		}
	}
	return best
}

// startAtCorner returns a ring of curves turned so that it starts where two of them do not join.
func startAtCorner(ring []curve) []curve {
	n := len(ring)
	for i := range ring {
		if !joins([]curve{ring[(i+n-1)%n], ring[i]}) {
			return append(append([]curve(nil), ring[i:]...), ring[:i]...)
		}
	}
	return ring
}

// joinRuns returns the curves as segments, with every run that is one line or one arc made one. A
// whole circle becomes two halves that start at its lowest point; an arc of more than four fifths of it
// becomes two as well, for the bulge of an almost closed circle says little about its radius.
func joinRuns(ks []curve) []Seg {
	var ss []Seg
	for i := 0; i < len(ks); {
		j := i + 1
		for j < len(ks) && joins(ks[i:j+1]) {
			j++
		}
		ss = append(ss, joinRun(ks[i:j])...)
		i = j
	}
	if c, r, turn, ok := wholeCircle(ks); ok {
		low, high := Vec{c.X, c.Y - r}, Vec{c.X, c.Y + r}
		return []Seg{{low, high, turn}, {high, low, turn}}
	}
	return ss
}

func joinRun(run []curve) []Seg {
	a, b := run[0].a, run[len(run)-1].b
	if run[0].turn == 0 {
		return []Seg{{A: a, B: b}}
	}
	long, sum := longest(run), 0.0
	for _, k := range run {
		sum += k.sweepAbout(long)
	}
	if sum <= 1.6*math.Pi {
		return []Seg{{a, b, long.turn * math.Tan(sum/4)}}
	}
	out := a.Sub(long.c)
	mid := Polar(long.c, long.r, math.Atan2(out.Y, out.X)+long.turn*sum/2)
	bulge := long.turn * math.Tan(sum/8)
	return []Seg{{a, mid, bulge}, {mid, b, bulge}}
}

// wholeCircle reports whether the ring is one circle and nothing else.
func wholeCircle(ks []curve) (c Vec, r, turn float64, ok bool) {
	k := longest(ks)
	if k.turn == 0 || !ks[0].a.Near(ks[len(ks)-1].b) {
		return c, 0, 0, false
	}
	var sum float64
	for _, o := range ks {
		if o.turn != k.turn || o.c.Dist(k.c) > 2*Tol || math.Abs(o.r-k.r) > 2*Tol {
			return c, 0, 0, false
		}
		sum += o.sweep()
	}
	return k.c, k.r, k.turn, math.Abs(sum-2*math.Pi) < 1e-6
}

// minRing is the area in square millimetres below which a ring is rounding, not shape.
const minRing = 1e-9

// tidyRing turns a ring of curves into a closed path without needless vertices that starts at its
// lowest vertex, the leftmost of them if there are several. It reports false for a ring of no area.
func tidyRing(ks []curve) (Path, bool) {
	p := pathOf(joinRuns(startAtCorner(ks)), true)
	if math.Abs(p.Area()) < minRing {
		return Path{}, false
	}
	best := 0
	for i, v := range p.V {
		if below(v.Vec, p.V[best].Vec) {
			best = i
		}
	}
	p.V = append(append([]Vertex(nil), p.V[best:]...), p.V[:best]...)
	return p, true
}

// below orders points from the bottom up and, at one height, from left to right.
func below(p, q Vec) bool {
	if math.Abs(p.Y-q.Y) > Tol {
		return p.Y < q.Y
	}
	return p.X < q.X
}

// leaveThrough picks, among the curves out of a vertex, the one that keeps the area to the left of
// the curve in by which the vertex was reached: the first met when turning clockwise from the way
// back.
//
//	  area  ^ outside    Coming in from the left with the area above, the way up is taken:
//	 --in-->o<------     the way down would run round the corner of another area that only
//	outside v  area      touches here.
func leaveThrough(in curve, outs []curve) int {
	near := in.length()
	for _, o := range outs {
		near = math.Min(near, o.length())
	}
	back := in.reverse().heading(near / 2)
	best, least := 0, math.Inf(1)
	for i, o := range outs {
		turn := math.Mod(back-o.heading(near/2)+4*math.Pi, 2*math.Pi)
		if turn < least {
			best, least = i, turn
		}
	}
	return best
}
