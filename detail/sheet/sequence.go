package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// sequenceSheet draws the order of the membranes and flashings at one block in eight panels, each an
// axonometric and a section of what stands there after the step: the new layer black, the earlier ones grey.
func (w *writer) sequenceSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	q, ok := w.sequence()
	if !ok {
		s.Items = append(s.Items, render.Text{Pen: render.Note, At: room.Center(), Height: 3.5, Align: render.MiddleCentre, Lines: []string{"NOT DRAWN: THERE IS NO BLOCK"}})
		return "NTS", true
	}
	const cols, rows, gap = 3, 3, 12.0
	cell := geom.Vec{X: (room.W() - (cols-1)*gap) / cols, Y: (room.H() - (rows-1)*gap) / rows}
	var panels []*composer
	_, fits := w.choose(0, 4, 12, cell, func(k float64) *composer {
		panels = q.panels(k, cell)
		largest := geom.Vec{}
		for _, c := range panels {
			largest = geom.Vec{X: math.Max(largest.X, c.extent.W()), Y: math.Max(largest.Y, c.extent.H())}
		}
		return &composer{k: k, extent: geom.Box{Max: largest}}
	})
	for i, c := range panels {
		p := c.paper()
		x, y := room.Min.X+float64(i%cols)*(cell.X+gap), room.Max.Y-float64(i/cols)*(cell.Y+gap)
		w.place(s, c, fmt.Sprint(i+1), q.steps[i].title, origin, pt(x-p.Min.X, y-p.Max.Y-math.Max(0, (cell.Y-p.H())/2)))
	}
	x, y := room.Max.X-cell.X, room.Min.Y+cell.Y
	for _, t := range []*table{w.lapTable(q.block, cell.X), w.sequencePieces(q.block, cell.X)} {
		items, used, rest := t.draw(x, y, y-room.Min.Y)
		s.Items = append(s.Items, items...)
		y -= used + 5
		fits = fits && len(rest) == 0 && y >= room.Min.Y-5
	}
	return w.scale(panels[0].k).Text, fits
}

// sequence is what the panels are drawn from.
type sequence struct {
	*writer
	block  int
	all    []stage
	steps  []seqStep
	window geom.Box // of the sections
}

// sequence gathers the stages about one block, once for all sizes; false when there is no block.
func (w *writer) sequence() (*sequence, bool) {
	if w.steps != nil {
		return w.steps, true
	}
	b := w.sectionBlock()
	if b < 0 {
		return nil, false
	}
	f, blk := w.a.Frame, w.a.Blocks[b].Box
	half, off := (blk.Max.X-blk.Min.X)/2, w.stripped()
	if p := w.a.PatchBox(b); !p.Empty() {
		half = math.Max(half, p.W()/2)
	}
	const beside, beyond, inside = 60, 75, 40 // of wall shown past the patch, past the strip, past the backing, mm
	mid := blk.Center().X
	box := geom.Box3{
		Min: geom.Vec3{X: mid - half - beside, Y: math.Min(f.BackingIn, f.RimIn) - inside, Z: off.lo - beyond},
		Max: geom.Vec3{X: mid + half + beside, Y: math.Max(f.LedgerFront, f.CladOut) + 2*inside, Z: off.hi + beyond},
	}
	q := &sequence{writer: w, block: b, all: w.stages(b, box)}
	q.window = geom.Box{Min: geom.Vec{X: box.Min.Y, Y: box.Min.Z}, Max: geom.Vec{X: box.Max.Y, Y: box.Max.Z}}
	q.steps = q.words()
	w.steps = q
	return q, true
}

// at is the assembly as it stands after step n, and what went on in it.
func (q *sequence) at(n int) (a *detail.Assembly, fresh func(*detail.Part) bool) {
	now := *q.a
	now.Parts = nil
	from := map[*detail.Part]bool{}
	for _, s := range q.all {
		if s.from <= n && (s.until == 0 || n < s.until) {
			now.Parts = append(now.Parts, s.part)
			from[s.part] = s.from == n
		}
	}
	return &now, func(p *detail.Part) bool { return from[p] }
}

// panels composes the eight steps at one scale, each as wide as the cell and all equally high, so that they
// stand in line.
func (q *sequence) panels(k float64, cell geom.Vec) []*composer {
	var out []*composer
	low, high := math.Inf(1), math.Inf(-1)
	for i := range q.steps {
		c := q.panel(i, k, cell)
		low, high = math.Min(low, c.extent.Min.Y), math.Max(high, c.extent.Max.Y)
		out = append(out, c)
	}
	for i, c := range out {
		c.extent.Min.Y, c.extent.Max.Y = low, high
		spare := math.Max(0, cell.X*k-c.extent.W()) / 2
		c.extent.Min.X, c.extent.Max.X = c.extent.Min.X-spare, c.extent.Max.X+spare
		c.title(fmt.Sprint(i+1), q.steps[i].title, q.scale(k).Text)
		lines := wrap(q.steps[i].text, 2.5, cell.X, false)
		c.text(render.Note, geom.Vec{X: c.extent.Min.X, Y: c.extent.Min.Y - c.mm(1)}, 2.5, render.TopLeft, 0, lines...)
	}
	return out
}

// panel draws one step: section on the right with its dimensions, axonometric on the left with its notes.
func (q *sequence) panel(i int, k float64, cell geom.Vec) *composer {
	c := q.composer(k)
	n, st := i+1, q.steps[i]
	a, fresh := q.at(n)
	bored := n >= stepBlock && n < stepLedger
	section := q.once(fmt.Sprint("sequence section ", n), func() view.Picture {
		return view.Cut(a, view.AcrossWall(q.cutAtBlock(q.block)), view.Options{Window: q.window, Depth: 1, Bored: bored})
	})
	now, before := section.Split(fresh)
	c.add(before.Plain(render.Existing, k, &now), q.window)
	c.add(now.Draw(k, q.a.Spec.Project.System), q.window)
	c.breaks(section)
	look := q.picture(c, i, bored, cell)
	for _, d := range st.dims {
		c.dims(d.side, d.ticks, d.text...)
	}
	if n == stepMark {
		q.marks(c, look)
	}
	c.noteWidth = q.noteRoom(c, cell)
	c.ruled, c.clear, c.split = true, true, q.window.Center().Y
	for _, m := range st.notes {
		c.call(left, look.at(m.at), m.end, m.words)
	}
	c.text(render.Note, geom.Vec{X: look.box.Center().X, Y: look.box.Max.Y + c.mm(2)}, 2, render.BottomCentre, 0, "PICTURE, NOT TO SCALE")
	c.text(render.Note, geom.Vec{X: q.window.Center().X, Y: q.window.Max.Y + c.mm(4)}, 2, render.BottomCentre, 0, "SECTION")
	c.finish()
	return c
}

// noteRoom is the plotted width left for notes beside the views and two chains.
func (q *sequence) noteRoom(c *composer, cell geom.Vec) float64 {
	const chains, leaders = 32, 18
	return math.Max(34, math.Min(58, cell.X-c.object.W()/c.k-chains-leaders))
}

// look is the axonometric of a panel: how points of space come to lie in it, and the room it takes.
type look struct {
	view geom.View
	size float64  // plotted larger than the section by
	move geom.Vec // after that
	box  geom.Box
}

func (l look) at(p geom.Vec3) geom.Vec {
	v, _ := l.view.To(p)
	return v.Mul(l.size).Add(l.move)
}

// path returns a path of the axonometric in the panel.
func (l look) path(p geom.Path) geom.Path {
	q := geom.Path{V: append([]geom.Vertex(nil), p.V...), Closed: p.Closed}
	for i := range q.V {
		q.V[i].Vec = q.V[i].Mul(l.size).Add(l.move)
	}
	return q
}

// fromLeft looks at the wall from outside, from the left and from above, more at its face than an
// isometric does.
func fromLeft(o geom.Vec3) geom.View { return geom.Axonometric(o, geom.Vec3{X: -0.55, Y: 1, Z: 0.5}) }

// picture sets the axonometric of a step left of the section, as large as the cell lets it.
func (q *sequence) picture(c *composer, i int, bored bool, cell geom.Vec) look {
	n := i + 1
	a, fresh := q.at(n)
	v := fromLeft(geom.Vec3{X: q.a.Blocks[q.block].Box.Center().X, Z: q.window.Center().Y})
	p := q.once(fmt.Sprint("sequence picture ", n), func() view.Picture {
		return view.Look(a, v, view.Options{Window: geom.EmptyBox(), Bored: bored, Only: q.outside})
	})
	box := q.bounds(v)
	const words, notes = 52, 100 // captions over and title and text under the views; chains and notes beside
	size := math.Min((cell.Y-words)*c.k/box.H(), (cell.X-notes)*c.k/box.W()-q.window.W()/box.W())
	size = math.Max(0.8, math.Min(1.4, size))
	l := look{view: v, size: size}
	box = geom.Box{Min: box.Min.Mul(size), Max: box.Max.Mul(size)}
	l.move = geom.Vec{X: q.window.Min.X - c.mm(9) - box.Max.X, Y: q.window.Center().Y - box.Center().Y}
	l.box = geom.Box{Min: box.Min.Add(l.move), Max: box.Max.Add(l.move)}
	now, before := p.Split(fresh)
	for _, it := range append(before.Plain(render.Existing, c.k, &now), now.Plain(render.Cut, c.k, nil)...) {
		st := it.(render.Stroke)
		st.Path = l.path(st.Path)
		c.put(st)
	}
	c.object.Min.X = l.box.Min.X // notes stand left of it; chains keep to the section
	c.grow(l.box.Min, l.box.Max)
	return l
}

// outside picks what the axonometric shows: the sheathing and what lies on it.
func (q *sequence) outside(p *detail.Part) bool {
	return p.Role == detail.Sheathing || p.Bounds().Max.Y > 0 && p.Role != detail.Footing && p.Role != detail.GroundIns
}

// bounds is the room the axonometric takes when everything is in place, the same for every step.
func (q *sequence) bounds(v geom.View) geom.Box {
	box := geom.EmptyBox()
	for _, s := range q.all {
		if !q.outside(s.part) {
			continue
		}
		b := s.part.Bounds()
		b.Min.Y = math.Max(b.Min.Y, q.a.Frame.SheathIn)
		for i := range 8 {
			at := geom.Vec3{X: either(i&1 == 0, b.Min.X, b.Max.X), Y: either(i&2 == 0, b.Min.Y, b.Max.Y), Z: either(i&4 == 0, b.Min.Z, b.Max.Z)}
			p, _ := v.To(at)
			box = box.Include(p)
		}
	}
	return box
}

// marks draws on the insulation, in both views, where the block will stand and its bolts go.
func (q *sequence) marks(c *composer, l look) {
	blk, y := q.a.Blocks[q.block], q.a.Frame.InsulOut
	on := func(x, z float64) geom.Vec { return l.at(geom.Vec3{X: x, Y: y, Z: z}) }
	b := blk.Box
	c.put(render.Stroke{Pen: render.Mark, Path: geom.Polygon(on(b.Min.X, b.Min.Z), on(b.Max.X, b.Min.Z), on(b.Max.X, b.Max.Z), on(b.Min.X, b.Max.Z))})
	for _, h := range blk.Bolts {
		const r = 14.0
		c.put(render.Stroke{Pen: render.Fastener, Path: geom.Polyline(on(h.X-r, h.Y), on(h.X+r, h.Y))},
			render.Stroke{Pen: render.Fastener, Path: geom.Polyline(on(h.X, h.Y-r), on(h.X, h.Y+r))})
	}
	for _, z := range []float64{b.Min.Z, b.Max.Z} {
		c.put(render.Stroke{Pen: render.Mark, Path: geom.Polyline(geom.Vec{X: y - c.mm(1), Y: z}, geom.Vec{X: y + c.mm(1), Y: z})})
	}
}
