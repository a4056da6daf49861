package sheet

import (
	"math"
	"sort"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// note is one text in a column beside the view, with a leader to what it names.
type note struct {
	anchor geom.Vec   // model
	points []geom.Vec // where its leader may end as well, the anchor first
	words  []string
	lines  []string
	end    render.LeaderEnd
	level  bool // a level: target symbol, line straight to the edge
	way    way  // where its leader bends
}

const landing = 5.0 // plotted, level part of a leader at the text

// call registers a note on a given side.
func (c *composer) call(s side, anchor geom.Vec, end render.LeaderEnd, words ...string) {
	c.callOn(s, []geom.Vec{anchor}, end, words...)
}

// callOn registers a note with the points at which its leader may end, the best first.
func (c *composer) callOn(s side, points []geom.Vec, end render.LeaderEnd, words ...string) {
	var lines []string
	for _, w := range words {
		lines = append(lines, wrap(w, c.st.Text, c.noteWidth, false)...)
	}
	c.notes[s] = append(c.notes[s], note{anchor: points[0], points: points, words: words, lines: lines, end: end})
}

// level registers a level mark: the height z at the object's edge, named.
func (c *composer) level(s side, from geom.Vec, words string) {
	c.notes[s] = append(c.notes[s], note{anchor: from, lines: []string{words}, level: true})
}

// mark registers a level mark to stand at its own height to the right of the chains.
func (c *composer) mark(z float64, words string) {
	c.levels = append(c.levels, note{anchor: geom.Vec{Y: z}, lines: []string{words}})
}

// placeLevels sets the level marks beside the chains of the right side: the notes keep clear of the
// heights the chains take.
func (c *composer) placeLevels() {
	x, _ := c.column(right)
	x = math.Max(x, c.extent.Max.X+c.mm(landing+3))
	for i, l := range c.levels {
		at := x - c.mm(landing)
		for _, o := range c.levels[:i] { // one beside the other where they stand on almost one height
			if math.Abs(o.anchor.Y-l.anchor.Y) < c.mm(c.st.Text+2.5) {
				at += c.mm(font.Width(o.lines[0], c.st.Text, false) + 9)
			}
		}
		c.levelMark(right, geom.Vec{X: at, Y: l.anchor.Y}, l.lines[0])
		c.blocked[right] = append(c.blocked[right], span{l.anchor.Y/c.k - 3, l.anchor.Y/c.k + c.st.Text + 3})
	}
}

// placeNotes sets the column of one side: by height of anchor, out of the way of the chains, and
// without crossing leaders.
func (c *composer) placeNotes(s side) {
	n := c.notes[s]
	if len(n) == 0 {
		return
	}
	sort.SliceStable(n, func(i, j int) bool { return n[i].anchor.Y < n[j].anchor.Y })
	slots := c.noteSlots(s, n)
	sort.Stable(byWant{n, slots})
	c.assign(s, slots)
	c.route(s, n, slots)
	for i := range n {
		c.drawNote(s, n[i], slots[i])
	}
}

// noteSlots asks for each note a height at which its leader slopes: up from what stands above the
// middle of the view, down from what stands below.
func (c *composer) noteSlots(s side, n []note) []slot {
	const rise = 0.36 // about 20 degrees
	x, _ := c.column(s)
	slots := make([]slot, len(n))
	for i, v := range n {
		h := c.st.Text + float64(len(v.lines)-1)*c.st.Text*render.LinePitch
		want := v.anchor.Y / c.k
		if !v.level {
			d := rise * math.Max(0, math.Abs(x-v.anchor.X)/c.k-2*landing)
			if v.anchor.Y < c.object.Center().Y {
				d = -d
			}
			want += d
		}
		slots[i] = slot{want: want, before: h/2 + c.st.Text*0.55, after: h/2 + c.st.Text*0.55}
	}
	return slots
}

// assign shares the slots out to the free stretches: those above the chains go up, those below go
// down, in order, so that no leader has to pass a dimension line.
func (c *composer) assign(s side, slots []slot) {
	lo, hi := c.object.Min.Y/c.k, c.object.Max.Y/c.k
	const beyond = 400 // downward there is room; upward stand the chains and tags over the view
	free := gaps(append([]span(nil), c.blocked[s]...), lo-beyond, hi+2)
	if len(free) == 1 {
		free[0].within(slots)
		return
	}
	at := 0
	for gi, g := range free {
		last := gi == len(free)-1
		end := at
		used := 0.0
		for end < len(slots) {
			r := slots[end].before + slots[end].after
			if !last && (used+r > g.hi-max(g.lo, lo-beyond) || slots[end].want > (g.hi+free[gi+1].lo)/2) {
				break
			}
			used += r
			end++
		}
		g.within(slots[at:end])
		at = end
	}
}

func cross(a, b, p, q geom.Vec) bool {
	d := b.Sub(a)
	e := q.Sub(p)
	det := d.Cross(e)
	if det == 0 {
		return false
	}
	t, u := p.Sub(a).Cross(e)/det, p.Sub(a).Cross(d)/det
	return t > 0 && t < 1 && u > 0 && u < 1
}

// column returns the x where the text of a side starts (ends, on the left), model.
func (c *composer) column(s side) (x, out float64) {
	base, out := c.edge(s)
	return base + out*c.mm(c.st.First+landing), out
}

// leader returns tip, elbow and end of the landing.
func (c *composer) leader(s side, n note, at slot) [3]geom.Vec {
	x, out := c.column(s)
	first := at.at + at.before - c.st.Text*0.55 - c.st.Text/2 // middle of the first line
	if s == left {
		first = at.at - at.after + c.st.Text*0.55 + c.st.Text/2 // leader starts at the last line
	}
	y := first * c.k
	end := geom.Vec{X: x - out*c.mm(1), Y: y}
	return [3]geom.Vec{n.anchor, {X: c.elbow(s, n, end), Y: y}, end}
}

func (c *composer) drawNote(s side, n note, at slot) {
	x, _ := c.column(s)
	l := c.leader(s, n, at)
	al := render.MiddleLeft
	if s == left {
		al = render.MiddleRight
	}
	if n.level {
		c.put(render.Leader{Pen: render.Note, Points: l[:], End: render.NoEnd})
		c.levelMark(s, l[2], n.lines[0])
		return
	}
	c.put(render.Leader{Pen: render.Note, Points: l[:], End: n.end})
	c.text(render.Note, geom.Vec{X: x, Y: at.at * c.k}, c.st.Text, al, 0, n.lines...)
}

// byWant orders notes and their slots together.
type byWant struct {
	n []note
	s []slot
}

func (b byWant) Len() int           { return len(b.n) }
func (b byWant) Less(i, j int) bool { return b.s[i].want < b.s[j].want }
func (b byWant) Swap(i, j int) {
	b.n[i], b.n[j] = b.n[j], b.n[i]
	b.s[i], b.s[j] = b.s[j], b.s[i]
}
