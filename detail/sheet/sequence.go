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
		panels = q.panels(k, cell.X)
		largest := geom.Vec{}
		for _, c := range panels {
			largest = geom.Vec{X: math.Max(largest.X, c.extent.W()), Y: math.Max(largest.Y, c.extent.H())}
		}
		return &composer{k: k, extent: geom.Box{Max: largest}}
	})
	for i, c := range panels {
		p := c.paper()
		x, y := room.Min.X+float64(i%cols)*(cell.X+gap), room.Max.Y-float64(i/cols)*(cell.Y+gap)
		w.place(s, c, fmt.Sprint(i+1), q.steps[i].title, origin, pt(x-p.Min.X+math.Max(0, (cell.X-p.W())/2), y-p.Max.Y-math.Max(0, (cell.Y-p.H())/2)))
	}
	x, y := room.Max.X-cell.X, room.Min.Y+cell.Y
	for _, t := range []*table{w.lapTable(q.block, cell.X), w.pieceTable(q.block, cell.X)} {
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

// sequence gathers the stages about one block; false when there is none.
func (w *writer) sequence() (*sequence, bool) {
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

// panels composes the eight steps at one scale, their titles on one line.
func (q *sequence) panels(k, width float64) []*composer {
	var out []*composer
	low := math.Inf(1)
	for i := range q.steps {
		c := q.panel(i, k, width)
		low = math.Min(low, c.extent.Min.Y)
		out = append(out, c)
	}
	for i, c := range out {
		c.extent.Min.Y = low
		c.title(fmt.Sprint(i+1), q.steps[i].title, q.scale(k).Text)
		lines := wrap(q.steps[i].text, 2.5, width, false)
		c.text(render.Note, geom.Vec{X: c.extent.Min.X, Y: c.extent.Min.Y - c.mm(1)}, 2.5, render.TopLeft, 0, lines...)
	}
	return out
}

// panel draws one step: section on the right with its dimensions, axonometric on the left with its notes.
func (q *sequence) panel(i int, k, width float64) *composer {
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
	c.text(render.Note, geom.Vec{X: q.window.Max.X, Y: q.window.Max.Y + c.mm(4)}, 2.5, render.BottomRight, 0, "SECTION")
	v, box := q.picture(c, i, bored)
	for _, d := range st.dims {
		c.dims(d.side, d.ticks, d.text...)
	}
	if n == stepMark {
		q.marks(c, v)
	}
	c.noteWidth = math.Max(30, math.Min(58, width-(box.W()+q.window.W())/k-60))
	for _, m := range st.notes {
		p, _ := v.To(m.at)
		c.call(left, p, m.end, m.words)
	}
	c.finish()
	return c
}

// fromLeft looks at the wall from outside, from the left and from above, more at its face than an
// isometric does.
func fromLeft(o geom.Vec3) geom.View { return geom.Axonometric(o, geom.Vec3{X: -0.55, Y: 1, Z: 0.5}) }

// picture sets the axonometric of a step left of the section, and returns its view there and its box.
func (q *sequence) picture(c *composer, i int, bored bool) (geom.View, geom.Box) {
	n := i + 1
	a, fresh := q.at(n)
	blk := q.a.Blocks[q.block].Box
	v := fromLeft(geom.Vec3{X: blk.Center().X, Z: (q.window.Min.Y + q.window.Max.Y) / 2})
	behind := q.a.Frame.SheathIn - 1
	p := q.once(fmt.Sprint("sequence picture ", n), func() view.Picture {
		return view.Look(a, v, view.Options{Window: geom.EmptyBox(), Bored: bored, Only: func(p *detail.Part) bool { return p.Bounds().Max.Y > behind && p.Role != detail.Subfloor && p.Role != detail.Stud }})
	})
	box := q.bounds(v)
	move := geom.Vec{X: q.window.Min.X - c.mm(9) - box.Max.X, Y: q.window.Center().Y - box.Center().Y}
	now, before := p.Split(fresh)
	for _, it := range append(before.Plain(render.Existing, c.k, &now), now.Plain(render.Visible, c.k, nil)...) {
		st := it.(render.Stroke)
		st.Path = moved(st.Path, move)
		c.put(st)
	}
	box = geom.Box{Min: box.Min.Add(move), Max: box.Max.Add(move)}
	c.object = c.object.Union(box)
	v.O = v.O.Sub(v.U.Mul(move.X)).Sub(v.V.Mul(move.Y))
	return v, box
}

// bounds is the room the axonometric takes when everything is in place, the same for every step.
func (q *sequence) bounds(v geom.View) geom.Box {
	box := geom.EmptyBox()
	for _, s := range q.all {
		b := s.part.Bounds()
		b.Min.Y = math.Max(b.Min.Y, q.a.Frame.SheathIn)
		if b.Max.Y <= b.Min.Y {
			continue
		}
		for i := range 8 {
			at := geom.Vec3{X: either(i&1 == 0, b.Min.X, b.Max.X), Y: either(i&2 == 0, b.Min.Y, b.Max.Y), Z: either(i&4 == 0, b.Min.Z, b.Max.Z)}
			p, _ := v.To(at)
			box = box.Include(p)
		}
	}
	return box
}

// marks draws on the insulation, in both views, where the block will stand and its bolts go.
func (q *sequence) marks(c *composer, v geom.View) {
	blk, y := q.a.Blocks[q.block], q.a.Frame.InsulOut
	ring := func(x, z float64) geom.Vec { p, _ := v.To(geom.Vec3{X: x, Y: y, Z: z}); return p }
	b := blk.Box
	c.put(render.Stroke{Pen: render.Mark, Path: geom.Polygon(ring(b.Min.X, b.Min.Z), ring(b.Max.X, b.Min.Z), ring(b.Max.X, b.Max.Z), ring(b.Min.X, b.Max.Z))})
	for _, h := range blk.Bolts {
		r := 14.0
		c.put(render.Stroke{Pen: render.Fastener, Path: geom.Polyline(ring(h.X-r, h.Y), ring(h.X+r, h.Y))},
			render.Stroke{Pen: render.Fastener, Path: geom.Polyline(ring(h.X, h.Y-r), ring(h.X, h.Y+r))})
	}
	past := y + c.mm(5)
	for _, z := range []float64{b.Min.Z, b.Max.Z} {
		c.put(render.Stroke{Pen: render.Mark, Path: geom.Polyline(geom.Vec{X: y - c.mm(1), Y: z}, geom.Vec{X: past, Y: z})})
	}
}

// moved returns a path displaced by d.
func moved(p geom.Path, d geom.Vec) geom.Path {
	q := geom.Path{V: append([]geom.Vertex(nil), p.V...), Closed: p.Closed}
	for i := range q.V {
		q.V[i].Vec = q.V[i].Add(d)
	}
	return q
}
