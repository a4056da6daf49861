package sheet

import (
	"fmt"
	"math"
	"sort"

	"standclear/detail"
	"standclear/geom"
	"standclear/render"
)

// blankView draws a piece of sheet laid flat: its outline, bends up solid and bends down dashed, slits, and the
// distances across and along it. Where the piece runs on the right side is broken.
func (w *writer) blankView(b detail.Blank, k float64, title string) *composer {
	c := w.composer(k)
	box := b.Outline.Bounds()
	runsOn := w.breaksOff(b, box)
	for _, ring := range b.Outline {
		for _, q := range openRight(ring, box.Max.X, runsOn) {
			c.put(render.Stroke{Pen: render.Cut, Path: q})
		}
	}
	for _, s := range b.Cuts {
		c.put(render.Stroke{Pen: render.Cut, Path: s})
	}
	for _, l := range b.Bends {
		pen := render.Note
		if !l.Up {
			pen = render.Hidden
		}
		c.put(render.Stroke{Pen: pen, Path: l.Path})
	}
	c.add(nil, box)
	if runsOn {
		c.breakLine(right, box, span{box.Min.Y, box.Max.Y})
	}
	c.blankDims(b, box, runsOn)
	c.bendNotes(b)
	c.finish()
	c.caption(title, w.scale(k).Text)
	return c
}

// breaksOff reports whether a bend runs out at the right side of the piece.
func (w *writer) breaksOff(b detail.Blank, box geom.Box) bool {
	for _, l := range b.Bends {
		p, q := l.Path.V[0], l.Path.V[len(l.Path.V)-1]
		if math.Abs(p.Y-q.Y) < 0.01 && math.Max(p.X, q.X) > box.Max.X-0.01 {
			return true
		}
	}
	return false
}

// openRight leaves out the right side of a ring that is broken off there.
func openRight(ring geom.Path, x float64, broken bool) []geom.Path {
	if !broken {
		return []geom.Path{ring}
	}
	side := geom.Polyline(geom.Vec{X: x, Y: -1e5}, geom.Vec{X: x, Y: 1e5})
	return geom.MergeAgainst([]geom.Path{ring}, []geom.Path{side})
}

// blankDims measures the girth on the left, edge to bend to edge, and the steps of the outline below.
func (c *composer) blankDims(b detail.Blank, box geom.Box, runsOn bool) {
	ys, xs := []float64{box.Min.Y, box.Max.Y}, []float64{box.Min.X}
	if !runsOn {
		xs = append(xs, box.Max.X)
	}
	for _, l := range b.Bends {
		p, q := l.Path.V[0], l.Path.V[len(l.Path.V)-1]
		if math.Abs(p.Y-q.Y) < 0.01 {
			ys = append(ys, p.Y)
		} else {
			xs = append(xs, p.X)
		}
	}
	for _, ring := range b.Outline {
		for _, v := range ring.V {
			if v.X < box.Max.X-0.01 || !runsOn {
				xs = append(xs, v.X)
			}
		}
	}
	var across, along []tick
	for _, y := range distinct(ys) {
		across = append(across, tick{y, box.Min.X})
	}
	for _, x := range distinct(xs) {
		along = append(along, tick{x, box.Min.Y})
	}
	c.dims(left, across)
	if len(across) > 2 {
		c.dims(left, []tick{across[0], across[len(across)-1]})
	}
	c.dims(bottom, along)
	if len(along) > 2 && !runsOn {
		c.dims(bottom, []tick{along[0], along[len(along)-1]})
	}
}

// bendNotes name each bend once, from the top, at its right end.
func (c *composer) bendNotes(b detail.Blank) {
	lines := append([]detail.BendLine(nil), b.Bends...)
	sort.SliceStable(lines, func(i, j int) bool { return lines[i].At < lines[j].At })
	last := -1.0
	for _, l := range lines {
		p, q := l.Path.V[0].Vec, l.Path.V[len(l.Path.V)-1].Vec
		level := math.Abs(p.Y-q.Y) < 0.01
		words := fmt.Sprintf("%s %.0f°", either(l.Up, "UP", "DOWN"), l.Included)
		if level && l.At > 0 {
			if l.At == last {
				continue
			}
			last = l.At
		}
		at := q
		if p.X > q.X || !level {
			at = p.Lerp(q, 0.5)
		}
		c.call(right, at, render.Arrow, words)
	}
}
