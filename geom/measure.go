package geom

import "math"

// seg returns the segment that starts at vertex i, and false when there is none: the last vertex
// of an open path starts nothing.
func (p Path) seg(i int) (Seg, bool) {
	a := p.V[i]
	switch {
	case i+1 < len(p.V):
		return Seg{a.Vec, p.V[i+1].Vec, a.Bulge}, true
	case p.Closed && len(p.V) > 1:
		return Seg{a.Vec, p.V[0].Vec, a.Bulge}, true
	}
	return Seg{}, false
}

// Segs returns the segments of p in order; a closed path has as many as it has vertices.
func (p Path) Segs() []Seg {
	ss := make([]Seg, 0, len(p.V))
	for i := range p.V {
		if s, ok := p.seg(i); ok {
			ss = append(ss, s)
		}
	}
	return ss
}

// pathOf strings segments, each of which starts where the one before ends, into a path. A closed
// path leaves out the last end.
func pathOf(ss []Seg, closed bool) Path {
	p := Path{Closed: closed}
	for _, s := range ss {
		p.V = append(p.V, Vertex{s.A, s.Bulge})
	}
	if !closed && len(ss) > 0 {
		p.V = append(p.V, Vertex{Vec: ss[len(ss)-1].B})
	}
	return p
}

// Bounds returns the smallest box that holds p, arcs included; empty for a path of no vertices.
func (p Path) Bounds() Box {
	b := EmptyBox()
	for i, v := range p.V {
		b = b.Include(v.Vec)
		if v.Bulge == 0 {
			continue
		}
		if s, ok := p.seg(i); ok {
			b = b.Union(s.Bounds())
		}
	}
	return b
}

// Length returns the length in millimetres along lines and arcs.
func (p Path) Length() float64 {
	var l float64
	for _, s := range p.Segs() {
		l += s.Len()
	}
	return l
}

// Area returns the area inside p in square millimetres, arcs exact: positive when p runs
// counter-clockwise. An open path is measured as if a straight line closed it.
func (p Path) Area() float64 {
	if len(p.V) == 0 {
		return 0
	}
	o := p.V[0].Vec
	var a float64
	for i := range p.V {
		if s, ok := p.seg(i); ok {
			a += Seg{s.A.Sub(o), s.B.Sub(o), s.Bulge}.area()
		}
	}
	return a
}

// moment returns the area of a closed path and the integral of position over it, both about o.
func (p Path) moment(o Vec) (area float64, m Vec) {
	for _, s := range p.Segs() {
		s.A, s.B = s.A.Sub(o), s.B.Sub(o)
		tri := s.A.Cross(s.B) / 2
		area += tri
		m = m.Add(s.A.Add(s.B).Mul(tri / 3))
		if limb := s.capArea(); limb != 0 {
			area += limb
			m = m.Add(s.capCentroid().Mul(limb))
		}
	}
	return area, m
}

// Reverse returns p run the other way.
func (p Path) Reverse() Path {
	n := len(p.V)
	q := Path{V: make([]Vertex, n), Closed: p.Closed}
	for i := range p.V {
		q.V[i].Vec = p.V[n-1-i].Vec
		switch {
		case i < n-1:
			q.V[i].Bulge = -p.V[n-2-i].Bulge
		case p.Closed && n > 0:
			q.V[i].Bulge = -p.V[n-1].Bulge
		}
	}
	return q
}

// Flatten returns points along p such that straight lines through them stray from its arcs by at
// most tol millimetres; tol is taken as at least Tol. The start of a closed path is not repeated.
func (p Path) Flatten(tol float64) []Vec {
	var pts []Vec
	ss := p.Segs()
	for _, s := range ss {
		pts = append(pts, s.A)
		n := s.chords(tol)
		for i := 1; i < n; i++ {
			pts = append(pts, s.At(float64(i)/float64(n)))
		}
	}
	switch {
	case len(ss) == 0 && len(p.V) > 0:
		pts = append(pts, p.V[0].Vec)
	case !p.Closed && len(ss) > 0:
		pts = append(pts, ss[len(ss)-1].B)
	}
	return pts
}

// chords returns how many equal chords follow s within tol millimetres.
func (s Seg) chords(tol float64) int {
	if !s.IsArc() {
		return 1
	}
	_, r, _, sweep := s.Arc()
	step := math.Pi / 2 // of one chord, at most
	if tol = math.Max(tol, Tol); tol < r {
		step = math.Min(step, 2*math.Acos(1-tol/r))
	}
	return int(math.Ceil(math.Abs(sweep)/step - 1e-9))
}

// Arc returns the arc of radius r about c from the direction start through the angle sweep, both
// in radians, counter-clockwise positive. A sweep of a whole turn or more gives the closed circle.
// A radius or sweep of nothing gives the single point at the start.
func Arc(c Vec, r, start, sweep float64) Path {
	at := func(a float64) Vec {
		s, k := sincos(a)
		return Vec{c.X + r*k, c.Y + r*s}
	}
	const turn = 2 * math.Pi
	switch {
	case r == 0 || sweep == 0:
		return Polyline(at(start))
	case math.Abs(sweep) >= turn-1e-12:
		b := math.Copysign(1, sweep)
		return Path{V: []Vertex{{at(start), b}, {at(start + math.Pi), b}}, Closed: true}
	case math.Abs(sweep) > turn/2+1e-12:
		b := math.Tan(sweep / 8)
		return Path{V: []Vertex{{at(start), b}, {at(start + sweep/2), b}, {at(start + sweep), 0}}}
	}
	return Path{V: []Vertex{{at(start), math.Tan(sweep / 4)}, {at(start + sweep), 0}}}
}

// ArcThrough returns the arc from a through m to b; the straight line from a to b when the three
// points are in line.
func ArcThrough(a, m, b Vec) Path {
	// The angle at m that the chord is seen under is half the turn that is left of the circle.
	p, q := a.Sub(m), b.Sub(m)
	seen := math.Atan2(q.Cross(p), q.Dot(p))
	if seen == 0 {
		return Polyline(a, b)
	}
	half := math.Copysign(math.Pi, seen) - seen // half the sweep; clockwise is negative
	if math.Abs(half) < 1e-12 {
		return Polyline(a, b)
	}
	return Path{V: []Vertex{{a, math.Tan(half / 2)}, {b, 0}}}
}

// Clean returns p without segments shorter than Tol, with straight runs made one line and touching
// arcs of one circle made one arc. The ends of an open path stay; a closed path may start elsewhere.
func (p Path) Clean() Path {
	ks := dropShort(p)
	if len(ks) == 0 {
		return Path{V: append([]Vertex(nil), p.V[:min(1, len(p.V))]...), Closed: p.Closed}
	}
	if p.Closed {
		ks = startAtCorner(ks)
	}
	return pathOf(joinRuns(ks), p.Closed)
}

// dropShort returns the curves of p without those shorter than Tol, the gaps closed up.
func dropShort(p Path) []curve {
	if len(p.V) == 0 {
		return nil
	}
	all := p.curves()
	ks := all[:0]
	at := p.V[0].Vec
	for _, k := range all {
		if at.Near(k.b) && k.length() <= 2*Tol {
			continue
		}
		k.a, at = at, k.b
		ks = append(ks, k)
	}
	if len(ks) > 0 {
		ks[len(ks)-1].b = p.V[len(p.V)-1].Vec
		if p.Closed {
			ks[len(ks)-1].b = p.V[0].Vec
		}
	}
	return ks
}
