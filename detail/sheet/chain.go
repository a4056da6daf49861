package sheet

import (
	"math"
	"slices"
	"sort"

	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// tick is one measured place of a chain: where along the side, and where its extension line starts.
type tick struct {
	at   float64 // along the side, model
	from float64 // across it, model
}

// chain is one line of dimensions on a side; chains are placed outward in the order they come.
type chain struct {
	ticks   []tick
	text    []string // around the value of each segment; "" is the value alone, "-" leaves it out
	running bool     // ordinates from the first tick instead of segments
	datum   *float64 // of ordinates whose datum is not among the ticks: off the picture
}

// drawn reports whether segment i of the chain is dimensioned.
func (ch chain) drawn(i int) bool {
	return i >= 0 && i+1 < len(ch.ticks) && (i >= len(ch.text) || ch.text[i] != "-")
}

// dims registers a chain of segments.
func (c *composer) dims(s side, ticks []tick, text ...string) {
	c.chains[s] = append(c.chains[s], chain{ticks: c.snap(ticks), text: text})
}

// run registers running dimensions from the first tick.
func (c *composer) run(s side, ticks []tick) {
	c.chains[s] = append(c.chains[s], chain{ticks: c.snap(ticks), running: true})
}

// runFrom registers running dimensions from a datum that the picture does not show.
func (c *composer) runFrom(s side, datum float64, ticks []tick) {
	c.chains[s] = append(c.chains[s], chain{ticks: c.snap(ticks), running: true, datum: &datum})
}

// snap sorts the ticks, rounds their running positions from the view's datum to the printed step,
// and drops those that coincide.
func (c *composer) snap(ticks []tick) []tick {
	t := append([]tick(nil), ticks...)
	sort.SliceStable(t, func(i, j int) bool { return t[i].at < t[j].at })
	u := step(c.sys)
	var out []tick
	for _, v := range t {
		v.at = math.Round(v.at/u) * u
		if n := len(out); n > 0 && v.at-out[n-1].at < u/2 {
			continue
		}
		out = append(out, v)
	}
	return out
}

// alone moves a measured pair to the printed step by its first point, so that the distance prints as it is:
// for one dimension that stands by itself, beside no chain.
func alone(sys unit.System, from, to tick) []tick {
	u := step(sys)
	d := math.Round(from.at/u)*u - from.at
	from.at, to.at = from.at+d, to.at+d
	return []tick{from, to}
}

// frame of a side: which way is outward, where chains start.
func (c *composer) edge(s side) (base, out float64) {
	switch s {
	case left:
		return c.object.Min.X, -1
	case right:
		return c.object.Max.X, 1
	case top:
		return c.object.Max.Y, 1
	}
	return c.object.Min.Y, -1
}

func vertical(s side) bool { return s == left || s == right }

// on returns the model point at a along the side and b across it.
func on(s side, a, b float64) geom.Vec {
	if vertical(s) {
		return geom.Vec{X: b, Y: a}
	}
	return geom.Vec{X: a, Y: b}
}

func (c *composer) placeChains(s side) {
	c.chains[s] = c.inOrder(c.chains[s])
	base, out := c.edge(s)
	off := c.st.First
	for _, ch := range c.chains[s] {
		for j, t := range ch.ticks {
			if (t.from-base)*out > 0 {
				ch.ticks[j].from = base // a hole off the object
			}
		}
	}
	for i, ch := range c.chains[s] {
		line := base + out*c.mm(off)
		before := len(c.items)
		if ch.running {
			off += c.ordinates(s, ch, line, out)
		} else {
			off += c.segments(s, ch, line, out, c.outerTicks(s, i))
		}
		c.startBeyond(c.chains[s][i+1:], ch, line+out*c.mm(c.st.Offset))
		c.block(s, before)
	}
}

// inOrder puts the chains of a side so that the fewest extension lines of outer chains pass through dimension
// lines of inner ones; of equal orders the first, the one asked for, is kept.
func (c *composer) inOrder(chains []chain) []chain {
	best, least := chains, c.passes(chains)
	for i := range chains {
		for j := range chains {
			if least == 0 {
				return best
			}
			moved := slices.Insert(slices.Delete(slices.Clone(chains), i, i+1), j, chains[i])
			if n := c.passes(moved); n < least {
				best, least = moved, n
			}
		}
	}
	return best
}

// passes counts the extension lines that pass through a dimension line further in.
func (c *composer) passes(chains []chain) int {
	n := 0
	for i, ch := range chains {
		for _, o := range chains[i+1:] {
			for j := range o.ticks {
				if o.used(j) && c.within(ch, o.ticks[j].at) {
					n++
				}
			}
		}
	}
	return n
}

// within reports whether a place along the side lies inside a segment of a chain.
func (c *composer) within(ch chain, at float64) bool {
	for i := 1; i < len(ch.ticks); i++ {
		if !ch.running && ch.drawn(i-1) && at > ch.ticks[i-1].at+c.mm(0.1) && at < ch.ticks[i].at-c.mm(0.1) {
			return true
		}
	}
	return false
}

// used reports whether tick j of the chain has an extension line.
func (ch chain) used(j int) bool { return ch.running || ch.drawn(j-1) || ch.drawn(j) }

// startBeyond lets the extension lines of outer chains that would pass through a chain start outside of it.
func (c *composer) startBeyond(outer []chain, ch chain, from float64) {
	for _, o := range outer {
		for j := range o.ticks {
			if c.within(ch, o.ticks[j].at) {
				o.ticks[j].from = from
			}
		}
	}
}

// outerTicks lists where extension lines of chains further out pass.
func (c *composer) outerTicks(s side, i int) []float64 {
	var out []float64
	for _, ch := range c.chains[s][i+1:] {
		for j, t := range ch.ticks {
			if ch.used(j) {
				out = append(out, t.at)
			}
		}
	}
	return out
}

// block keeps notes out of the heights a vertical chain takes with its texts; its items come last.
func (c *composer) block(s side, first int) {
	if !vertical(s) || len(c.items) == first {
		return
	}
	box := geom.EmptyBox()
	t := &taken{}
	t.add(c, c.items[first:], geom.Identity(), 1)
	for _, b := range t.texts {
		box = box.Union(b)
	}
	for _, l := range t.lines {
		box = box.Include(l[0]).Include(l[1])
	}
	const clear = 4.5
	c.blocked[s] = append(c.blocked[s], span{box.Min.Y/c.k - clear, box.Max.Y/c.k + clear})
}

// segments draws a chain and returns how far out the next one starts. Text that does not fit its
// segment goes to a lane beyond the line, with a thin tie to its place.
func (c *composer) segments(s side, ch chain, line, out float64, outer []float64) float64 {
	var lane []slot
	var dims []render.Dim
	var laned []int
	for i := 1; i < len(ch.ticks); i++ {
		words := ""
		if i-1 < len(ch.text) {
			words = ch.text[i-1]
		}
		if words == "-" {
			continue
		}
		a, b := ch.ticks[i-1], ch.ticks[i]
		d := render.Dim{Pen: render.Dimension, P: on(s, a.at, a.from), Q: on(s, b.at, b.from), Line: on(s, a.at, line), Text: words}
		if vertical(s) {
			d.Angle = 90
		}
		w := font.Width(d.Label(c.number), c.st.Text, false)
		if w+1.5 > (b.at-a.at)/c.k || c.crossed((a.at+b.at)/2, w, outer) {
			lane = append(lane, slot{want: (a.at + b.at) / 2 / c.k, before: w/2 + 1, after: w/2 + 1})
			laned = append(laned, len(dims))
		}
		dims = append(dims, d)
	}
	depth := c.st.Step
	if len(lane) > 0 {
		c.lane(lane, outer)
		depth += c.laneDepth(s, lane, laned, dims, line, out)
	}
	for _, d := range dims {
		c.put(d)
		pic := d.Picture(c.st, c.k, c.number)
		for _, l := range append(pic.Lines, pic.Ticks...) {
			b := l.Bounds()
			c.grow(b.Min, b.Max)
		}
		tb := textBox(pic.TextAt, c.st.Text, render.MiddleCentre, pic.Rot, []string{pic.Label}, c.k)
		c.grow(tb.Min, tb.Max)
	}
	return depth
}

// crossed reports whether an extension line of a chain further out would run through a text of
// plotted width w in the middle of its segment.
func (c *composer) crossed(mid, w float64, outer []float64) bool {
	for _, o := range outer {
		if math.Abs(o-mid)/c.k < w/2+0.8 {
			return true
		}
	}
	return false
}

// lane spreads the displaced texts, keeping them off the extension lines that pass further out:
// once from the left and once from the right, the nearer result is taken.
func (c *composer) lane(l []slot, outer []float64) {
	spread(l)
	var walls []float64
	for _, o := range outer {
		walls = append(walls, o/c.k)
	}
	sort.Float64s(walls)
	up, down := pass(l, walls, 1), pass(l, walls, -1)
	best := up
	if away(l, down) < away(l, up) {
		best = down
	}
	for i := range l {
		l[i].at = best[i]
	}
}

// pass places the slots one after the other in direction dir, each as near to where it is as the
// walls and the ones before let it.
func pass(l []slot, walls []float64, dir float64) []float64 {
	at := make([]float64, len(l))
	edge := math.Inf(-1)
	for k := range l {
		i := k
		if dir < 0 {
			i = len(l) - 1 - k
		}
		near, far := l[i].before, l[i].after
		if dir < 0 {
			near, far = far, near
		}
		x := math.Max(l[i].at*dir, edge+near)
		for range walls {
			for _, w := range walls {
				if p := w * dir; p > x-near && p < x+far {
					x = p + near + 0.2
				}
			}
		}
		edge = x + far
		at[i] = x * dir
	}
	return at
}

func away(l []slot, at []float64) float64 {
	d := 0.0
	for i := range l {
		d += (at[i] - l[i].want) * (at[i] - l[i].want)
	}
	return d
}

// laneDepth sets the displaced texts beyond the overshoot of the extension lines and ties them.
func (c *composer) laneDepth(s side, lane []slot, laned []int, dims []render.Dim, line, out float64) float64 {
	away := c.st.Over + c.st.Gap + c.st.Text/2 + 1.2
	if out > 0 == (s == top) && s != right { // text of fitting segments lies on the outer side there
		away += c.st.Text + c.st.Gap
	}
	for j, i := range laned {
		at := on(s, lane[j].at*c.k, line+out*c.mm(away))
		d := &dims[i]
		d.TextAt = &at
		mid := on(s, (along(s, d.P)+along(s, d.Q))/2, line)
		near := on(s, lane[j].at*c.k, line+out*c.mm(away-c.st.Text/2-0.8))
		c.put(render.Stroke{Pen: render.Dimension, Path: geom.Polyline(mid, near)})
	}
	return away
}

func along(s side, p geom.Vec) float64 {
	if vertical(s) {
		return p.Y
	}
	return p.X
}

// ordinates draws running dimensions, their ends spread to the height of the text.
func (c *composer) ordinates(s side, ch chain, line, out float64) float64 {
	if len(ch.ticks) == 0 {
		return 0
	}
	datum := ch.ticks[0]
	if ch.datum != nil {
		datum.at = *ch.datum
	}
	slots := make([]slot, len(ch.ticks))
	longest := 0.0
	kind := render.OrdinateX
	if vertical(s) {
		kind = render.OrdinateY
	}
	for i, t := range ch.ticks {
		slots[i] = slot{want: t.at / c.k, before: c.st.Text * 0.8, after: c.st.Text * 0.8}
	}
	spread(slots)
	for i, t := range ch.ticks {
		d := render.Dim{Pen: render.Dimension, Kind: kind, P: on(s, datum.at, datum.from), Q: on(s, t.at, t.from), Line: on(s, slots[i].at*c.k, line)}
		label := d.Label(c.number)
		w := font.Width(label, c.st.Text, false)
		longest = max(longest, w)
		mid := on(s, slots[i].at*c.k, line+out*c.mm(c.st.Gap+w/2))
		d.TextAt = &mid
		rot := 90.0
		if vertical(s) {
			rot = 0
		}
		if i == 0 && ch.datum == nil { // the datum itself: an ordinate of zero measures nothing
			c.text(render.Dimension, mid, c.st.Text, render.MiddleCentre, rot, "0")
			c.put(render.Stroke{Pen: render.Dimension, Path: geom.Polyline(on(s, t.at, t.from+out*c.mm(c.st.Offset)), on(s, slots[i].at*c.k, line))})
			continue
		}
		c.put(d)
		b := textBox(mid, c.st.Text, render.MiddleCentre, rot, []string{label}, c.k)
		c.grow(b.Min, b.Max)
	}
	return longest + c.st.Gap + c.st.Step/2
}
