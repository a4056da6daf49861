package geom

import "math"

// face is a flat part of the surface of a solid as it is drawn, and the depth it lies at there.
type face struct {
	box   Box
	poly  []Vec    // a convex outline run counter-clockwise, or nil
	sides []Vec    // unit vectors along the sides of poly
	area  *outline // any other outline
	d     float64  // the depth at the origin of the drawing
	g     Vec      // how much the depth grows along x and y
	dmax  float64  // the greatest depth
	slack float64  // how far behind it a wire must lie to be hidden
	near  float64  // the part of the face in front of this depth is cut away
}

// depth returns the depth of the face at a point of the drawing.
func (f *face) depth(p Vec) float64 { return f.d + f.g.Dot(p) }

// edgeOn is the cosine under which a face counts as seen from its edge.
const edgeOn = 1e-6

// addFace files the region of the plane frame p as a face, unless it is seen from its edge. From both
// sides a face hides alike.
func (sc *scene) addFace(p View, r Region, slack, near float64) {
	slope := p.N.Dot(sc.view.N)
	if r.Empty() || math.Abs(slope) < edgeOn {
		return
	}
	x := sc.view.map2(p)
	if math.Abs(slope) < 1-1e-12 {
		r = r.Flatten(ChordTol)
	}
	sc.file(r.Transform(x), p, slack, near)
}

// file files a face given by its outline in the drawing and the plane it lies in.
func (sc *scene) file(r Region, p View, slack, near float64) {
	f := planeFace(sc.view, p, slack, near)
	f.box = r.Bounds()
	if len(r) == 1 && isConvex(r[0]) {
		f.setPoly(r[0].Flatten(Tol))
	} else {
		f.area = newOutline(r)
		c := corners(f.box)
		f.dmax = f.greatest(c[:])
	}
	sc.faces = append(sc.faces, f)
}

// fileQuad files a face given by its four corners in the drawing, in either sense.
func (sc *scene) fileQuad(q [4]Vec, p View, slack, near float64) {
	if q[1].Sub(q[0]).Cross(q[2].Sub(q[0])) < 0 {
		q[1], q[3] = q[3], q[1]
	}
	f := planeFace(sc.view, p, slack, near)
	f.box = BoxOf(q[:]...)
	f.setPoly(q[:])
	sc.faces = append(sc.faces, f)
}

// setPoly gives the face a convex outline.
func (f *face) setPoly(pts []Vec) {
	f.poly, f.sides = pts, make([]Vec, len(pts))
	for i, p := range pts {
		f.sides[i] = pts[(i+1)%len(pts)].Sub(p).Unit()
	}
	f.dmax = f.greatest(pts)
}

// planeFace returns a face without outline that has the depth of the plane of p seen in v. It hides what lies
// behind the plane by more than slack, measured square to it. What of it lies in front of the depth near, by
// more than slack, is cut away.
//
// The point v.From(q, depth) lies in the plane when n . (O + x U + y V + depth N - p.O) = 0.
func planeFace(v, p View, slack, near float64) face {
	slope := p.N.Dot(v.N)
	g := Vec{p.N.Dot(v.U), p.N.Dot(v.V)}.Mul(-1 / slope)
	return face{
		d:     p.N.Dot(v.O.Sub(p.O)) * (-1 / slope),
		g:     g,
		slack: slack/math.Abs(slope) + Tol + 1e-9*g.Len(),
		near:  near + slack + Tol,
	}
}

// greatest returns the greatest depth at any of the points.
func (f *face) greatest(pts []Vec) float64 {
	hi := math.Inf(-1)
	for _, p := range pts {
		hi = math.Max(hi, f.depth(p))
	}
	return hi
}

// isConvex reports whether p has straight sides only and turns left at every corner.
func isConvex(p Path) bool {
	n := len(p.V)
	var turn float64
	for i, v := range p.V {
		w, x := p.V[(i+1)%n], p.V[(i+2)%n]
		if v.Bulge != 0 {
			return false
		}
		a, b := w.Vec.Sub(v.Vec), x.Vec.Sub(w.Vec)
		t := math.Atan2(a.Cross(b), a.Dot(b))
		if t < 0 {
			return false
		}
		turn += t
	}
	return turn < 3*math.Pi
}

// hides appends to out the stretches of a wire that lie behind the face.
func (f *face) hides(w *wire, out []span) []span {
	if w.turn != 0 {
		area := f.area
		if area == nil {
			area = newOutline(Region{Polygon(f.poly...)})
		}
		return append(out, area.along(w.curve).common(f.deeperArc(w), 0)...)
	}
	s := f.deeper(w)
	switch {
	case s.lo >= s.hi:
		return out
	case f.area != nil:
		return append(out, f.area.along(w.curve).common(spans{s}, 0)...)
	}
	if s = f.coverLine(w.a, w.b, s); s.lo >= s.hi {
		return out
	}
	return append(out, s)
}

// coverLine cuts a stretch of the line from a to b down to what lies in a convex outline, side by side. A
// line that runs along a side lies inside.
func (f *face) coverLine(a, b Vec, s span) span {
	for i, p := range f.poly {
		side := f.sides[i]
		da, db := side.Cross(a.Sub(p)), side.Cross(b.Sub(p)) // distance to the left: inside
		switch {
		case da >= -Tol && db >= -Tol:
		case da <= Tol && db <= Tol:
			return span{}
		case da < db:
			s.lo = math.Max(s.lo, da/(da-db))
		default:
			s.hi = math.Min(s.hi, da/(da-db))
		}
	}
	return s
}

// deeper returns the stretch of a straight wire on which it lies deeper than the face, and the face is not
// cut away.
func (f *face) deeper(w *wire) span {
	s := span{0, 1}
	d0, d1 := f.depth(w.a), f.depth(w.b)
	s = s.where(d0-w.d0-f.slack, d1-w.d1-f.slack)
	if f.dmax > f.near {
		s = s.where(f.near-d0, f.near-d1)
	}
	return s
}

// where cuts s down to where a value that runs evenly from v0 at 0 to v1 at 1 is positive.
func (s span) where(v0, v1 float64) span {
	switch {
	case v0 > 0 && v1 > 0:
	case v0 <= 0 && v1 <= 0:
		s.hi = s.lo
	case v0 > 0:
		s.hi = math.Min(s.hi, v0/(v0-v1))
	default:
		s.lo = math.Max(s.lo, v0/(v0-v1))
	}
	return s
}

// deeperArc is deeper for an arc: it is cut where it crosses the lines at which the face has the depth of
// the arc, or of the plane of cut.
func (f *face) deeperArc(w *wire) spans {
	if f.g.Len() < 1e-12 {
		if d := f.depth(w.a); d > w.d0+f.slack && d <= f.near {
			return spans{{0, 1}}
		}
		return nil
	}
	ts := []float64{0, 1}
	reach := f.g.Unit().Perp().Mul(2 * w.r)
	for _, d := range [2]float64{w.d0 + f.slack, f.near} {
		if math.IsInf(d, 0) {
			continue
		}
		foot := w.c.Add(f.g.Mul((d - f.depth(w.c)) / f.g.Dot(f.g)))
		level := curve{a: foot.Sub(reach), b: foot.Add(reach)}
		for _, p := range w.meet(level, nil) {
			ts = append(ts, clamp(w.fraction(p), 0, 1))
		}
	}
	return piecesWhere(ts, func(t float64) bool {
		d := f.depth(w.at(t))
		return d > w.d0+f.slack && d <= f.near
	})
}
