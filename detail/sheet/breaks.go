package sheet

import (
	"math"
	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// breaks draws a long break line along each side of the window that cuts material off.
func (c *composer) breaks(p view.Picture) {
	for s := left; s <= bottom; s++ {
		for _, sp := range cutOff(p, s) {
			c.breakLine(s, p.Window, sp)
		}
	}
}

// cutOff returns the stretches of a side of the window where parts run out of the picture.
func cutOff(p view.Picture, s side) []span {
	var spans []span
	touch := func(b geom.Box) {
		w := p.Window
		const e = 0.01
		switch {
		case s == left && b.Min.X < w.Min.X+e, s == right && b.Max.X > w.Max.X-e:
			spans = append(spans, span{b.Min.Y, b.Max.Y})
		case s == top && b.Max.Y > w.Max.Y-e, s == bottom && b.Min.Y < w.Min.Y+e:
			spans = append(spans, span{b.Min.X, b.Max.X})
		}
	}
	for _, c := range p.Pieces {
		for _, r := range c.Region.Parts() {
			touch(r.Bounds())
		}
	}
	for _, e := range p.Edges {
		if e.Part.Role == detail.DeckJoist || e.Part.Role == detail.HouseJoist {
			touch(e.Path.Bounds())
		}
	}
	const orphan = 25 // a sliver of one part needs no break line
	var out []span
	for _, sp := range mergeSpans(spans, 200) {
		if sp.hi-sp.lo > orphan {
			out = append(out, sp)
		}
	}
	return out
}

func mergeSpans(in []span, gap float64) []span {
	free := gaps(in, math.Inf(-1), math.Inf(1))
	var out []span
	for i := 1; i < len(free); i++ {
		sp := span{free[i-1].hi, free[i].lo}
		if n := len(out); n > 0 && sp.lo-out[n-1].hi < gap {
			out[n-1].hi = sp.hi
			continue
		}
		out = append(out, sp)
	}
	return out
}

// breakLine is a thin line with a zigzag, a little longer than what it breaks.
func (c *composer) breakLine(s side, w geom.Box, sp span) {
	base := map[side]float64{left: w.Min.X, right: w.Max.X, top: w.Max.Y, bottom: w.Min.Y}[s]
	over, z := c.mm(2), c.mm(1.5)
	mid := (sp.lo + sp.hi) / 2
	pts := []geom.Vec{on(s, sp.lo-over, base), on(s, mid-z, base), on(s, mid-z/2, base+z), on(s, mid+z/2, base-z), on(s, mid+z, base), on(s, sp.hi+over, base)}
	c.put(render.Stroke{Pen: render.Break, Path: geom.Polyline(pts...)})
	c.grow(pts...)
}
