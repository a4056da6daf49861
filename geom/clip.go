package geom

import "slices"

// Clip returns the part of r inside a box.
func (r Region) Clip(b Box) Region {
	if b.Empty() {
		return nil
	}
	return Intersect(r, Rect(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y))
}

// ClipPath returns the pieces of p that lie inside r, or with inside false those outside it, in the
// order in which p runs through them. What runs along the boundary counts as inside. Pieces shorter
// than Tol are left out. A closed path that is kept whole stays closed.
//
//	   ______
//	  |      |           inside:  --
//	--|------|----       outside: two pieces
//	  |______|
func ClipPath(p Path, r Region, inside bool) []Path {
	o := newOutline(r.near(p.Bounds()))
	var kept []curve
	whole := true
	for _, k := range p.curves() {
		l := k.length()
		in := o.along(k)
		if !inside {
			in = spans{{0, 1}}.less(in, Tol/l)
		}
		whole = whole && len(in) == 1 && in[0] == span{0, 1}
		for _, s := range in {
			kept = append(kept, k.part(s.lo, s.hi))
		}
	}
	if whole && len(kept) > 0 {
		return []Path{p}
	}
	return chains(kept, p.Closed)
}

// near returns the rings of r that reach a box; the others are neither around nor across anything in it.
func (r Region) near(b Box) Region {
	b = b.Grow(2 * Tol)
	var out Region
	for _, ring := range r {
		if ring.Bounds().Overlaps(b) {
			out = append(out, ring)
		}
	}
	return out
}

// chains strings together curves each of which may start where the one before ends. In a closed
// path the last may go on into the first.
func chains(ks []curve, closed bool) []Path {
	if len(ks) == 0 {
		return nil
	}
	if closed {
		for i := range ks {
			if before := ks[(i+len(ks)-1)%len(ks)]; !before.b.Near(ks[i].a) {
				ks = append(slices.Clone(ks[i:]), ks[:i]...)
				break
			}
		}
	}
	var ps []Path
	var run []Seg
	for i, k := range ks {
		run = append(run, k.seg())
		if i+1 == len(ks) || !k.b.Near(ks[i+1].a) {
			ps = append(ps, pathOf(run, false))
			run = nil
		}
	}
	return ps
}

// along returns the stretches of k, as fractions of it, that lie inside the outline or on it.
func (o *outline) along(k curve) spans { return o.stretches(k, o.contains) }

// within returns the stretches of k that lie inside the outline and not on it.
func (o *outline) within(k curve) spans {
	return o.stretches(k, func(p Vec) bool { return !o.touches(p) && o.winding(p) > 0 })
}

// stretches cuts k where it may enter or leave the outline and returns the parts whose middles satisfy in.
func (o *outline) stretches(k curve, in func(Vec) bool) spans {
	box := k.box().Grow(Tol)
	if !touch(box, o.box) {
		return nil
	}
	cuts := o.cuts(k, box)
	slack := Tol / k.length()
	var out []span
	lo := 0.0
	for _, t := range cuts {
		if t-lo <= slack {
			continue
		}
		if 1-t <= slack {
			t = 1
		}
		if in(k.at((lo + t) / 2)) {
			out = append(out, span{lo, t})
		}
		lo = t
	}
	return unite(out, 0)
}

// cuts returns the fractions of k at which it may enter or leave the outline, in order, and 1.
func (o *outline) cuts(k curve, box Box) []float64 {
	ts := []float64{1}
	var meets []Vec
	add := func(p Vec) {
		if t := k.fraction(p); t > 0 && t < 1 {
			ts = append(ts, t)
		}
	}
	for i, m := range o.ks {
		if !touch(box, o.boxes[i]) {
			continue
		}
		meets = k.meet(m, meets[:0])
		for _, p := range meets {
			add(p)
		}
		if k.has(m.a) { // m.b is the start of another
			add(m.a)
		}
	}
	slices.Sort(ts)
	return ts
}
