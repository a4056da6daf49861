package geom

import (
	"cmp"
	"math"
	"slices"
)

// builder turns one solid into the wires and faces of a scene.
type builder struct {
	sc    *scene
	s     Solid
	solid int32
	slab
	clear bool
}

// piece is a stretch of a ring of a profile whose side, drawn out, looks one way: toward the viewer
// (front is positive), away (negative), or across (0).
type piece struct {
	curve
	front int
	sharp bool // the ring has a corner where the piece starts
}

// smooth is the turn in radians up to which two pieces of a ring join without a corner.
const smooth = 1e-4

// pieces cuts a ring where its side turns out of sight. The viewer is in the direction n of the plane of
// the ring, which has its area on the left.
//
//	n ^     .-------.
//	  |    /  front  \     the arcs are cut where their side is seen from the edge
//	      (           )
//	       \  back   /
func pieces(ring Path, n Vec) []piece {
	ring.Closed = true
	ks := dropShort(ring)
	var ps []piece
	for i, k := range ks {
		before := ks[(i+len(ks)-1)%len(ks)]
		u, v := before.end(), k.start()
		sharp := math.Abs(math.Atan2(u.Cross(v), u.Dot(v))) > smooth
		for _, m := range k.turningOut(n) {
			ps = append(ps, piece{m, m.facing(n), sharp})
			sharp = false
		}
	}
	return ps
}

// start and end return the directions in which k sets out and arrives.
func (k curve) start() Vec { return k.tangent(k.a) }
func (k curve) end() Vec   { return k.tangent(k.b) }

func (k curve) tangent(p Vec) Vec {
	if k.turn == 0 {
		return k.b.Sub(k.a)
	}
	return p.Sub(k.c).Perp().Mul(k.turn)
}

// facing returns the sign of the outward direction of a side, at the middle of k, along n.
func (k curve) facing(n Vec) int {
	t := k.tangent(k.at(0.5)).Unit()
	switch f := (Vec{t.Y, -t.X}).Dot(n); {
	case f > edgeOn:
		return 1
	case f < -edgeOn:
		return -1
	}
	return 0
}

// turningOut cuts an arc where it runs along the direction n.
func (k curve) turningOut(n Vec) []curve {
	if k.turn == 0 || n.Len() < edgeOn {
		return []curve{k}
	}
	r := n.Unit().Perp().Mul(k.r)
	ts := []float64{1}
	for _, p := range [2]Vec{k.c.Add(r), k.c.Sub(r)} {
		if t := k.fraction(p); t > 0 && t < 1 && !p.Near(k.a) && !p.Near(k.b) {
			ts = append(ts, t)
		}
	}
	slices.Sort(ts)
	var ks []curve
	lo := 0.0
	for _, t := range ts {
		ks = append(ks, k.part(lo, t))
		lo = t
	}
	return ks
}

// build adds the wires and faces of the solid.
func (b *builder) build() {
	if len(b.s.Bores) > 0 {
		b.bored()
		return
	}
	s, n := b.s, b.sc.view.N
	for _, f := range s.ends() {
		if !b.clear && f.N.Dot(n) > 0 {
			b.sc.addFace(f, s.Profile, 0, b.near)
		}
	}
	for _, ring := range s.Profile {
		ps := pieces(ring, s.seen(n))
		b.endWires(ps)
		b.sideWires(ps)
		if !b.clear {
			b.sideFaces(ps)
		}
	}
}

// seen returns the direction n as it lies in the plane of the profile.
func (s Solid) seen(n Vec3) Vec { return Vec{s.U.Dot(n), s.V.Dot(n)} }

// ends returns the frames of the two end faces, looking outward.
func (s Solid) ends() [2]View {
	return [2]View{
		{O: s.O, U: s.U, V: s.V, N: s.W.Mul(-1)},
		{O: s.at(Vec{}, s.Length), U: s.U, V: s.V, N: s.W},
	}
}

// endWires adds the outlines of both ends. Where one would be drawn exactly over another part of the
// solid that is nearer, it is left out.
func (b *builder) endWires(ps []piece) {
	n := b.sc.view.N
	endOn := b.s.seen(n).Len() < edgeOn
	sideOn := math.Abs(b.s.W.Dot(n)) < edgeOn
	tol := ChordTol
	if sideOn {
		tol = depthTol
	}
	for _, f := range b.s.ends() {
		facing := f.N.Dot(n)
		if endOn && facing < 0 {
			continue
		}
		for _, p := range ps {
			if sideOn && p.front <= 0 {
				continue
			}
			b.curve(f, p.curve, tol, facing <= edgeOn && p.front <= 0)
		}
	}
}

// sideWires adds the lines along the solid: at the corners of the profile, and where its side turns out
// of sight. Seen square from the side, only the nearest of several lines at one place is kept.
func (b *builder) sideWires(ps []piece) {
	s, v := b.s, b.sc.view
	if s.seen(v.N).Len() < edgeOn {
		return
	}
	sideOn := math.Abs(s.W.Dot(v.N)) < edgeOn
	type post struct {
		at, depth float64
		p         Vec
		hidden    bool
	}
	var posts []post
	across := Vec{s.W.Dot(v.U), s.W.Dot(v.V)}.Perp()
	for i, p := range ps {
		before := ps[(i+len(ps)-1)%len(ps)]
		if !p.sharp && (p.front > 0) == (before.front > 0) {
			continue
		}
		q, d := v.To(s.at(p.a, 0))
		if sideOn && d > b.near+Tol {
			continue
		}
		posts = append(posts, post{q.Dot(across), d, p.a, p.front <= 0 && before.front <= 0})
	}
	if sideOn {
		slices.SortStableFunc(posts, func(p, q post) int { return cmp.Compare(p.at, q.at) })
	}
	for lo := 0; lo < len(posts); {
		best, hi := posts[lo], lo+1
		for ; sideOn && hi < len(posts) && posts[hi].at-posts[lo].at <= Tol; hi++ {
			if posts[hi].depth > best.depth {
				best = posts[hi]
			}
		}
		b.line(s.at(best.p, 0), s.at(best.p, s.Length), best.hidden, false)
		lo = hi
	}
}

// sideFaces adds the sides that look at the viewer.
func (b *builder) sideFaces(ps []piece) {
	for _, p := range ps {
		if p.front <= 0 {
			continue
		}
		slack := 0.0
		if p.turn != 0 {
			slack = depthTol
		}
		for _, k := range p.buried(depthTol, p.turn > 0) {
			b.side(b.s, k, 0, b.s.Length, slack)
		}
	}
}

// side adds the side of s over a straight piece of the profile, between two heights. It hides what lies
// behind it by more than slack, measured square to the side.
func (b *builder) side(s Solid, k curve, h0, h1, slack float64) {
	f := s.sideFrame(k)
	if math.Abs(f.N.Dot(b.sc.view.N)) < edgeOn {
		return
	}
	var q [4]Vec
	for i, c := range [4]Vec3{s.at(k.a, h0), s.at(k.b, h0), s.at(k.b, h1), s.at(k.a, h1)} {
		q[i], _ = b.sc.view.To(c)
	}
	b.sc.fileQuad(q, f, slack, b.near)
}

// sideFrame returns the frame of the side over a straight piece of the profile, looking outward, with U
// along the piece and V along the solid.
func (s Solid) sideFrame(k curve) View {
	d := k.b.Sub(k.a).Unit()
	return View{
		O: s.at(k.a, 0),
		U: s.U.Mul(d.X).Add(s.V.Mul(d.Y)),
		V: s.W,
		N: s.U.Mul(d.Y).Sub(s.V.Mul(d.X)),
	}
}

// chords returns k as straight lines that stray at most tol from it.
func (k curve) chords(tol float64) []curve {
	if k.turn == 0 {
		return []curve{k}
	}
	s := k.seg()
	n := s.chords(tol)
	ks := make([]curve, n)
	at := k.a
	for i := range ks {
		ks[i].a, ks[i].b = at, k.at(float64(i+1)/float64(n))
		at = ks[i].b
	}
	return ks
}

// buried returns k as straight lines that lie on the side of the material and stray at most tol from it, so
// that flat strips in place of a round side leave no gap to the faces they meet: chords where the material
// lies inside the circle, and else pieces of tangents.
//
//	chords     ,-`-.            tangents     .---.
//	         /_______\  material             /,-`-.\  material
func (k curve) buried(tol float64, inside bool) []curve {
	if k.turn == 0 || inside {
		return k.chords(tol)
	}
	n := k.seg().chords(tol)
	half := k.sweep() / float64(2*n) // of one chord
	ks := make([]curve, n+1)
	at := k.a
	for i := range n {
		corner := k.c.Add(k.at((float64(i) + 0.5) / float64(n)).Sub(k.c).Mul(1 / math.Cos(half)))
		ks[i] = curve{a: at, b: corner}
		at = corner
	}
	ks[n] = curve{a: at, b: k.b}
	return ks
}

// curve adds a line or arc of the plane frame f as a wire. An arc stays one only where the plane faces
// the viewer; else it becomes chords that stray at most tol.
func (b *builder) curve(f View, k curve, tol float64, hidden bool) {
	v := b.sc.view
	if k.turn != 0 && math.Abs(f.N.Dot(v.N)) > 1-1e-12 {
		_, d := v.To(f.O)
		if d > b.near+Tol || d < b.far-Tol {
			return
		}
		p := pathOf([]Seg{k.seg()}, false).Transform(v.map2(f))
		b.sc.wires = append(b.sc.wires, wire{curve: p.curves()[0], d0: d, d1: d, solid: b.solid, hidden: hidden && !b.clear})
		return
	}
	bent := k.turn != 0 && math.Abs(f.N.Dot(v.N)) > edgeOn // from the edge a curve is straight
	for _, m := range k.turningOut(Vec{f.U.Dot(v.N), f.V.Dot(v.N)}) {
		for _, c := range m.chords(tol) {
			b.line(f.From(c.a, 0), f.From(c.b, 0), hidden, bent)
		}
	}
}

// line adds a straight wire, which may be a chord of a curve, cut down to the depth that is drawn.
func (b *builder) line(p, q Vec3, hidden, bent bool) {
	w := wire{solid: b.solid, hidden: hidden && !b.clear, bent: bent}
	w.a, w.d0 = b.sc.view.To(p)
	w.b, w.d1 = b.sc.view.To(q)
	if w.a.Near(w.b) {
		return
	}
	in := span{0, 1}.where(b.near-w.d0+Tol, b.near-w.d1+Tol).where(w.d0-b.far+Tol, w.d1-b.far+Tol)
	if in.lo >= in.hi {
		return
	}
	d0, rise := w.d0, w.d1-w.d0
	w.curve = w.part(in.lo, in.hi)
	w.d0, w.d1 = d0+rise*in.lo, d0+rise*in.hi
	b.sc.wires = append(b.sc.wires, w)
}
