package view

import (
	"math"

	"standclear/detail"
	"standclear/geom"
)

// Cut takes the section of the assembly by the plane of v and what is seen beyond it.
func Cut(a *detail.Assembly, v geom.View, o Options) Picture {
	p := Picture{View: v, Window: o.Window, drawn: &drawn{}}
	var whole []*detail.Part
	for _, part := range a.Parts {
		if !o.shows(part) || !meets(v, part.Bounds()) {
			continue
		}
		if isZone(part) {
			p.zone(part, v, o)
			continue
		}
		if wholeRoles[part.Role] {
			whole = append(whole, part)
			continue
		}
		p.cut(part, v, o)
	}
	p.claim()
	p.drawWhole(whole, v, o)
	p.beyond(a, v, o)
	p.above(a, v, o)
	return p
}

// above draws dashed what stands before the plane, where the options ask for it.
func (p *Picture) above(a *detail.Assembly, v geom.View, o Options) {
	var solids []geom.Solid
	var owner []*detail.Part
	for _, part := range a.Find(detail.RolesOf(o.Above)...) {
		if far := part.Bounds(); o.shows(part) && !meets(v, far) {
			for _, s := range part.Solids {
				solids, owner = append(solids, s), append(owner, part)
			}
		}
	}
	for _, e := range geom.Project(v, solids, geom.ProjectOptions{NoHidden: true}) {
		for _, q := range p.clip([]geom.Path{e.Path}) {
			p.Edges = append(p.Edges, Edge{Part: owner[e.Solid], Path: q, Hidden: true})
		}
	}
}

// meets reports whether the plane of v passes through the box.
func meets(v geom.View, b geom.Box3) bool {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range corners(b) {
		_, d := v.To(c)
		lo, hi = math.Min(lo, d), math.Max(hi, d)
	}
	return lo < -geom.Tol && hi > geom.Tol
}

func corners(b geom.Box3) [8]geom.Vec3 {
	var out [8]geom.Vec3
	for i := range out {
		c := b.Min
		if i&1 != 0 {
			c.X = b.Max.X
		}
		if i&2 != 0 {
			c.Y = b.Max.Y
		}
		if i&4 != 0 {
			c.Z = b.Max.Z
		}
		out[i] = c
	}
	return out
}

// zone outlines dashed what the plane meets of a place to keep off.
func (p *Picture) zone(part *detail.Part, v geom.View, o Options) {
	for _, s := range o.solids(part) {
		for _, q := range p.clip(s.Cut(v)) {
			p.Edges = append(p.Edges, Edge{Part: part, Path: q, Hidden: true})
		}
	}
}

func (p *Picture) cut(part *detail.Part, v geom.View, o Options) {
	var r geom.Region
	for _, s := range o.solids(part) {
		r = append(r, s.Cut(v)...)
	}
	if !p.Window.Empty() {
		r = r.Clip(p.Window)
	}
	if r.Empty() {
		return
	}
	piece := Piece{Part: part, Whole: r, Region: r}
	if part.Thin {
		piece.Lines = p.thinLines(part, r, v)
		piece.Region = nil
	}
	p.Pieces = append(p.Pieces, piece)
}

// thinLines returns the lines that stand for a thin sheet: its own bends where the plane is across
// them, else the middle line of each strip.
func (p *Picture) thinLines(part *detail.Part, r geom.Region, v geom.View) []geom.Path {
	var bent []geom.Path
	for _, b := range part.Bends {
		if math.Abs(v.N.Dot(b.Axis.Unit())) > 0.99 {
			bent = append(bent, seenPath(b, v))
		}
	}
	if len(bent) > 0 {
		return p.clip(bent)
	}
	var out []geom.Path
	for _, q := range r.Parts() {
		b := q.Bounds()
		c := b.Center()
		if b.W() > b.H() {
			out = append(out, geom.Polyline(geom.Vec{X: b.Min.X, Y: c.Y}, geom.Vec{X: b.Max.X, Y: c.Y}))
		} else {
			out = append(out, geom.Polyline(geom.Vec{X: c.X, Y: b.Min.Y}, geom.Vec{X: c.X, Y: b.Max.Y}))
		}
	}
	return out
}

// seenPath returns the path of a bend in the coordinates of v.
func seenPath(b detail.Bend, v geom.View) geom.Path {
	q := geom.Path{V: append([]geom.Vertex(nil), b.Path.V...), Closed: b.Path.Closed}
	for i, w := range q.V {
		q.V[i].Vec, _ = v.To(b.At(w.Vec))
	}
	return q
}

// claim settles overlaps: where two cut parts would fill the same ground, the later in the build
// keeps it (a ledger buried in insulation shows as a ledger).
func (p *Picture) claim() {
	for i := range p.Pieces {
		bi := p.Pieces[i].Region.Bounds()
		for j := i + 1; j < len(p.Pieces); j++ {
			other := p.Pieces[j].Region
			if len(other) == 0 || len(p.Pieces[i].Region) == 0 || !bi.Grow(-0.01).Overlaps(other.Bounds()) {
				continue
			}
			p.Pieces[i].Region = geom.Subtract(p.Pieces[i].Region, other)
		}
	}
}

// drawWhole shows fasteners that lie in the plane from outside, and clears the ground under them.
func (p *Picture) drawWhole(parts []*detail.Part, v geom.View, o Options) {
	var solids []geom.Solid
	var owner []*detail.Part
	var shadow geom.Region
	for _, part := range parts {
		for _, s := range part.Solids {
			solids, owner = append(solids, s), append(owner, part)
			shadow = append(shadow, s.Cut(v)...)
		}
	}
	if len(solids) == 0 {
		return
	}
	shadow = geom.Union(shadow)
	p.shadow = shadow
	for i := range p.Pieces {
		box := p.Pieces[i].Region.Bounds()
		if !box.Overlaps(shadow.Bounds()) {
			continue
		}
		var near geom.Region
		for _, ring := range shadow {
			if box.Grow(1).Overlaps(ring.Bounds()) {
				near = append(near, ring)
			}
		}
		p.Pieces[i].Region = geom.Subtract(p.Pieces[i].Region, near)
	}
	for _, e := range geom.Project(v, solids, geom.ProjectOptions{NoHidden: true}) {
		for _, q := range p.clip([]geom.Path{e.Path}) {
			p.Edges = append(p.Edges, Edge{Part: owner[e.Solid], Path: q, Whole: true})
		}
	}
}

func (p *Picture) clip(ps []geom.Path) []geom.Path {
	if p.Window.Empty() {
		return ps
	}
	return clipPaths(ps, p.Window)
}

// beyond projects what lies behind the plane.
func (p *Picture) beyond(a *detail.Assembly, v geom.View, o Options) {
	var solids []geom.Solid
	var owner []*detail.Part
	for _, part := range a.Parts {
		if !o.shows(part) || p.skip(part, v, o) {
			continue
		}
		for _, s := range o.solids(part) {
			solids, owner = append(solids, s), append(owner, part)
		}
	}
	opt := geom.ProjectOptions{Cut: true, Far: o.Depth, NoHidden: len(o.Dashed)+len(o.Behind) == 0, Clear: func(i int) bool { return o.Ghost[owner[i].Role] }}
	p.take(geom.Project(v, solids, opt), owner, o)
}

// skip leaves out what cannot be seen: wholly before the plane, too far behind it, off the window,
// and the fasteners drawn whole.
func (p *Picture) skip(part *detail.Part, v geom.View, o Options) bool {
	b := part.Bounds()
	if (wholeRoles[part.Role] || isZone(part)) && meets(v, b) {
		return true
	}
	near, far := math.Inf(-1), math.Inf(1)
	box := geom.EmptyBox()
	for _, c := range corners(b) {
		q, d := v.To(c)
		near, far = math.Max(near, d), math.Min(far, d)
		box = box.Include(q)
	}
	if far > -geom.Tol || o.Depth > 0 && near < -o.Depth {
		return true
	}
	return !p.Window.Empty() && !box.Overlaps(p.Window)
}

func (p *Picture) take(edges []geom.Edge, owner []*detail.Part, o Options) {
	for _, e := range edges {
		part := owner[e.Solid]
		if o.Behind[part.Role] {
			e.Hidden = true
		} else if e.Hidden && !o.Dashed[part.Role] {
			continue
		}
		for _, q := range p.clip([]geom.Path{e.Path}) {
			p.Edges = append(p.Edges, Edge{Part: part, Path: q, Hidden: e.Hidden, Ghost: o.Ghost[part.Role]})
		}
	}
}

// Look takes the view of the assembly without a cut.
func Look(a *detail.Assembly, v geom.View, o Options) Picture {
	p := Picture{View: v, Window: o.Window, drawn: &drawn{}}
	var solids []geom.Solid
	var owner []*detail.Part
	for _, part := range a.Parts {
		if !o.shows(part) {
			continue
		}
		for _, s := range o.solids(part) {
			solids, owner = append(solids, s), append(owner, part)
		}
	}
	opt := geom.ProjectOptions{NoHidden: len(o.Dashed)+len(o.Behind) == 0, Clear: func(i int) bool { return o.Ghost[owner[i].Role] }}
	p.take(geom.Project(v, solids, opt), owner, o)
	return p
}
