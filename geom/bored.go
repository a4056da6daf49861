package geom

import "math"

// slice closes the cut that the near limit makes through the solid: it hides what is behind it. Its
// outline is drawn, or else noted as not to be drawn.
func (b *builder) slice(draw bool) {
	v := b.sc.view
	plane := v
	plane.O = v.O.Add(v.N.Mul(b.near))
	r := b.s.Cut(plane)
	if r.Empty() {
		return
	}
	if !b.clear {
		b.sc.file(r, plane, 0, math.Inf(1))
	}
	for _, k := range r.curves() {
		if draw {
			b.sc.wires = append(b.sc.wires, wire{curve: k, d0: b.near, d1: b.near, solid: b.solid})
		} else {
			b.sc.slices = append(b.sc.slices, stroke{k, class{rank: rankCut, owner: b.solid}})
		}
	}
}

// bored adds the wires and faces of a solid with bores.
//
// Its faces are those of the body with the mouths of the bores cut out, front and back: what is seen
// through a bore is not hidden, and what is seen into a bore past its edge is hidden by the back, or by
// the floor in which the bore ends. The sides of bores hide nothing of their own.
//
//	 ____ mouth ____
//	|    |     |    |     Wires are the outlines of the holed ends, the lines along the body,
//	|    |bore |    |     the mouths in its sides, the lines along the bores as far as they are
//	|    |_____|    |     inside the body and outside other bores, and the floors.
//	|     floor     |
func (b *builder) bored() {
	s := b.s
	for _, f := range s.ends() {
		r := subtractInside(s.Profile, s.cutBores(f))
		b.flat(f, r, 0)
		for _, k := range r.curves() {
			b.curve(f, k, ChordTol, false)
		}
	}
	for _, ring := range s.Profile {
		ps := pieces(ring, s.seen(b.sc.view.N))
		b.boredSides(ps)
		for _, l := range s.linesAlong(ps) {
			b.lineBetween(l, spans{{0, 1}}, s.Bores)
		}
	}
	for i, bore := range s.Bores {
		if !bore.Empty() {
			others := append(append([]Solid(nil), s.Bores[:i]...), s.Bores[i+1:]...)
			b.boreWires(bore, others)
		}
	}
}

// flat adds a face of a bored solid.
func (b *builder) flat(f View, r Region, slack float64) {
	if !b.clear {
		b.sc.addFace(f, r, slack, b.near)
	}
}

// boredSides adds the sides of the body with the mouths of bores in them.
func (b *builder) boredSides(ps []piece) {
	s := b.s
	for _, p := range ps {
		slack := 0.0
		if p.turn != 0 {
			slack = ChordTol
		}
		for _, k := range p.chords(ChordTol) {
			f, side := s.sideFrame(k), Rect(0, 0, k.length(), s.Length)
			r := subtractInside(side, s.cutBores(f))
			b.flat(f, r, slack)
			for _, m := range r.curves() {
				switch {
				case onBorder(m, side.Bounds()):
				case m.turn == 0:
					b.line(f.From(m.a, 0), f.From(m.b, 0), false, p.turn != 0)
				default:
					b.curve(f, m, ChordTol, false)
				}
			}
		}
	}
}

// onBorder reports whether k is a line along a side of the box.
func onBorder(k curve, b Box) bool {
	same := func(p, q, at float64) bool { return math.Abs(p-at) <= 2*Tol && math.Abs(q-at) <= 2*Tol }
	return k.turn == 0 && (same(k.a.X, k.b.X, b.Min.X) || same(k.a.X, k.b.X, b.Max.X) ||
		same(k.a.Y, k.b.Y, b.Min.Y) || same(k.a.Y, k.b.Y, b.Max.Y))
}

// line3 is a straight line in space.
type line3 struct{ a, b Vec3 }

func (l line3) at(t float64) Vec3 { return l.a.Add(l.b.Sub(l.a).Mul(t)) }

// linesAlong returns the lines along a body at the corners of its profile, and where its side turns out
// of sight.
func (s Solid) linesAlong(ps []piece) []line3 {
	var ls []line3
	for i, p := range ps {
		before := ps[(i+len(ps)-1)%len(ps)]
		if p.sharp || (p.front > 0) != (before.front > 0) {
			ls = append(ls, line3{s.at(p.a, 0), s.at(p.a, s.Length)})
		}
	}
	return ls
}

// lineBetween adds the stretches of a line that are given and lie outside the bores.
func (b *builder) lineBetween(l line3, on spans, bores []Solid) {
	slack := Tol / math.Max(l.b.Sub(l.a).Len(), Tol)
	for _, o := range bores {
		on = on.less(o.inside(l), slack)
	}
	for _, t := range on {
		b.line(l.at(t.lo), l.at(t.hi), false, false)
	}
}

// boreWires adds the lines along a bore and the floors in which it ends.
func (b *builder) boreWires(bore Solid, others []Solid) {
	for _, ring := range bore.Profile {
		ps := pieces(ring, bore.seen(b.sc.view.N))
		for _, l := range bore.linesAlong(ps) {
			b.lineBetween(l, b.s.inside(l), others)
		}
		if !b.clear {
			b.boreSides(bore, ps, others)
		}
	}
	for _, f := range bore.ends() {
		f.N = f.N.Mul(-1) // looks into the bore; behind it is what the bore ends in
		r := b.s.cutBody(f)
		if r.Empty() {
			continue
		}
		r = Intersect(bore.Profile, r)
		for _, o := range others {
			if h := o.cutBody(f); !h.Empty() {
				r = Subtract(r, h)
			}
		}
		b.flat(f, r, 0)
		for _, k := range r.curves() {
			b.curve(f, k, ChordTol, false)
		}
	}
}

// boreSides adds the far sides of a bore, strip by strip, each as far as its middle runs inside the body and
// outside other bores.
func (b *builder) boreSides(bore Solid, ps []piece, others []Solid) {
	for _, p := range ps {
		if p.front >= 0 {
			continue
		}
		slack := 0.0
		if p.turn != 0 {
			slack = depthTol
		}
		for _, k := range p.buried(depthTol, p.turn < 0) {
			mid := k.at(0.5)
			l := line3{bore.at(mid, 0), bore.at(mid, bore.Length)}
			on := b.s.inside(l)
			for _, o := range others {
				on = on.less(o.inside(l), Tol/bore.Length)
			}
			for _, t := range on {
				b.side(bore, k, t.lo*bore.Length, t.hi*bore.Length, slack)
			}
		}
	}
}

// inside returns the stretches of a line that lie inside the body of s, not on its surface.
func (s Solid) inside(l line3) spans {
	if s.Empty() {
		return nil
	}
	p, h0 := s.local(l.a)
	q, h1 := s.local(l.b)
	between := span{0, 1}.where(h0-Tol, h1-Tol).where(s.Length-Tol-h0, s.Length-Tol-h1)
	if between.lo >= between.hi {
		return nil
	}
	o := newOutline(s.Profile)
	if p.Dist(q) <= Tol {
		if o.touches(p) || o.winding(p) <= 0 {
			return nil
		}
		return spans{between}
	}
	return o.within(curve{a: p, b: q}).common(spans{between}, 0)
}
