package geom

import "math"

// mitreLimit is how far, in units of the offset, a mitred corner may reach before it is cut off
// square: common practice for folded sheet drawn at scale.
const mitreLimit = 10

// Offset returns the parallel path at the distance d, to the left of p when d is positive. Straight
// corners are mitred, arcs keep their centre and change radius; an arc that would shrink to nothing
// becomes a corner. Loops that arise where p turns tighter than d are left as they are.
//
//	 p  ------.        at d > 0 the path to the left of travel
//	          |
//	d   ---.  |
//	       |  v
func (p Path) Offset(d float64) Path {
	ks := dropShort(p)
	if d == 0 || len(ks) == 0 {
		return p
	}
	moved := make([]curve, 0, len(ks))
	var at []Vec // the corner of p before each moved curve
	for _, k := range ks {
		if m, ok := k.offset(d); ok {
			moved, at = append(moved, m), append(at, k.a)
		}
	}
	if len(moved) == 0 {
		return Path{Closed: p.Closed}
	}
	return pathOf(mitre(moved, at, math.Abs(d), p.Closed), p.Closed)
}

// offset returns k moved d to its left, false when nothing is left of it.
func (k curve) offset(d float64) (curve, bool) {
	if k.turn == 0 {
		n := k.b.Sub(k.a).Unit().Perp().Mul(d)
		return curve{a: k.a.Add(n), b: k.b.Add(n)}, true
	}
	r := k.r - k.turn*d // the centre of a counter-clockwise arc lies to its left
	if r <= Tol {
		return curve{}, false
	}
	k.a, k.b = k.c.Add(k.a.Sub(k.c).Mul(r/k.r)), k.c.Add(k.b.Sub(k.c).Mul(r/k.r))
	k.r = r
	return k, true
}

// mitre joins moved curves at their corners and returns the segments.
func mitre(ks []curve, corners []Vec, d float64, closed bool) []Seg {
	n := len(ks)
	var links []Seg // a straight link after curve i, where no mitre can be made
	has := make([]bool, n)
	links = make([]Seg, n)
	for i := range ks {
		j := (i + 1) % n
		if j == 0 && (!closed || n == 1) {
			break
		}
		if ks[i].b.Near(ks[j].a) {
			ks[j].a = ks[i].b
			continue
		}
		if q, ok := corner(ks[i], ks[j], corners[j], d); ok {
			ks[i].b, ks[j].a = q, q
			continue
		}
		links[i], has[i] = Seg{A: ks[i].b, B: ks[j].a}, true
	}
	var ss []Seg
	for i, k := range ks {
		ss = append(ss, k.seg())
		if has[i] {
			ss = append(ss, links[i])
		}
	}
	return ss
}

// corner returns where the curves, drawn on beyond their ends, meet nearest to the corner they were
// moved from; false when they do not, or too far away.
func corner(k, o curve, from Vec, d float64) (Vec, bool) {
	ps, n := k.crossings(o)
	best, least := Vec{}, mitreLimit*d
	for _, q := range ps[:n] {
		if l := q.Dist(from); l <= least {
			best, least = q, l
		}
	}
	return best, n > 0 && least < mitreLimit*d
}

// Fillet returns p with every corner between two straight segments rounded to the radius r, in
// millimetres. A corner whose rounding would use up more than half of a segment that has a corner at
// its other end, or more than all of an end segment, stays sharp.
func (p Path) Fillet(r float64) Path {
	ks := dropShort(p)
	if r <= 0 || len(ks) < 2 {
		return p
	}
	n := len(ks)
	cut := make([]float64, n) // how much the rounding takes of each side of the corner before curve i
	for i := range ks {
		if i > 0 || p.Closed {
			cut[i] = filletCut(ks, i, r, p.Closed)
		}
	}
	var ss []Seg
	for i, k := range ks {
		j := (i + 1) % n
		if cut[i] > 0 {
			k.a = k.a.Add(k.b.Sub(k.a).Unit().Mul(cut[i]))
		}
		end := k.b
		if cut[j] > 0 {
			end = k.b.Sub(ks[i].b.Sub(ks[i].a).Unit().Mul(cut[j]))
		}
		k.b = end
		ss = append(ss, k.seg())
		if cut[j] > 0 {
			u, v := ks[i].b.Sub(ks[i].a), ks[j].b.Sub(ks[j].a)
			turn := math.Atan2(u.Cross(v), u.Dot(v))
			ss = append(ss, Seg{end, ks[j].a.Add(v.Unit().Mul(cut[j])), math.Tan(turn / 4)})
		}
	}
	return pathOf(dropEmpty(ss), p.Closed)
}

// filletCut returns the length that a rounding of radius r takes off both sides of the corner at the
// start of curve i, 0 when it stays sharp.
func filletCut(ks []curve, i int, r float64, closed bool) float64 {
	n := len(ks)
	in, out := ks[(i+n-1)%n], ks[i]
	if in.turn != 0 || out.turn != 0 {
		return 0
	}
	u, v := in.b.Sub(in.a), out.b.Sub(out.a)
	turn := math.Abs(math.Atan2(u.Cross(v), u.Dot(v)))
	if turn < 1e-9 || turn > math.Pi-1e-9 {
		return 0
	}
	cut := r * math.Tan(turn/2)
	room := func(k curve, end bool) float64 {
		if end {
			return k.length()
		}
		return k.length() / 2
	}
	if cut > room(in, !closed && i == 1) || cut > room(out, !closed && i == n-1) {
		return 0
	}
	return cut
}

// dropEmpty leaves out the segments of no length that a rounding which just fits leaves over.
func dropEmpty(ss []Seg) []Seg {
	var out []Seg
	for _, s := range ss {
		if s.Len() > Tol {
			out = append(out, s)
		}
	}
	return out
}

// Thicken returns the area of a thin sheet whose reference line is p, reaching left millimetres to its
// left and right to its right, with mitred corners and square ends. Either may be negative, for a
// sheet that lies wholly on one side; a sheet of no thickness is empty.
//
//	 left  +----------.
//	p - - -|- - - - . |
//	 right +------. | |
//	              |   |
func Thicken(p Path, left, right float64) Region {
	if !(left+right > Tol) || len(dropShort(p)) == 0 {
		return nil
	}
	if r, ok := thickenBent(p, left, right); ok {
		return r
	}
	near, far := p.Offset(-right), p.Offset(left).Reverse()
	if p.Closed {
		return Union(Region{near, far})
	}
	ring := Path{Closed: true, V: append(append([]Vertex(nil), near.V...), far.V...)}
	return Union(Region{ring})
}

// thickenBent is Thicken for a straight strip, or one bent once, whose legs are so long and whose bend is so
// open that its outline cannot meet itself.
func thickenBent(p Path, left, right float64) (Region, bool) {
	n := len(p.V)
	if p.Closed || n < 2 || n > 3 || left < 0 || right < 0 || !p.finite() {
		return nil, false
	}
	wide := max(left, right)
	for i := range n - 1 {
		if p.V[i].Bulge != 0 || p.V[i].Dist(p.V[i+1].Vec) < 4*wide+apart {
			return nil, false
		}
	}
	if n == 3 {
		u, v := p.V[1].Sub(p.V[0].Vec).Unit(), p.V[2].Sub(p.V[1].Vec).Unit()
		if u.Dot(v) < -0.5 || math.Abs(u.Cross(v)) < 0.01 { // sharper than 60 degrees, or hardly bent
			return nil, false
		}
	}
	near, far := p, p.Reverse()
	if right != 0 {
		near = p.Offset(-right)
	}
	if left != 0 {
		far = p.Offset(left).Reverse()
	}
	ring := make([]Vertex, 0, 2*n)
	ring = append(append(ring, near.V...), far.V...)
	if len(ring) != 2*n {
		return nil, false
	}
	first := 0
	for i, v := range ring {
		if below(v.Vec, ring[first].Vec) {
			first = i
		}
	}
	for i := range ring {
		ring[i].Bulge = 0 // not the negative one of a line turned about
	}
	out := make([]Vertex, 0, 2*n)
	return Region{{V: append(append(out, ring[first:]...), ring[:first]...), Closed: true}}, true
}
