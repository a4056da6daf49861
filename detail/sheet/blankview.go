package sheet

import (
	"fmt"
	"maps"
	"math"
	"slices"

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
	steps := 0
	for _, ring := range b.Outline {
		for _, v := range ring.V {
			if v.X < box.Max.X-0.01 || !runsOn {
				xs = append(xs, v.X)
			}
			if v.X < box.Min.X+0.01 && len(ys) == 2+steps {
				ys, steps = append(ys, v.Y), steps+1 // no bend along the piece: the steps of its left side
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

// bendNotes name each bend that runs along the piece once, at its right end, and of those across it the last one
// in the right half: the others are like it.
func (c *composer) bendNotes(b detail.Blank) {
	ends := map[float64]geom.Vec{}
	fold := map[float64]detail.Fold{}
	var across *detail.BendLine
	for i, l := range b.Bends {
		p, q := l.Path.V[0].Vec, l.Path.V[len(l.Path.V)-1].Vec
		if math.Abs(p.Y-q.Y) > 0.01 {
			if p.X > c.object.Center().X && (across == nil || p.X > across.Path.V[0].X) {
				across = &b.Bends[i]
			}
			continue
		}
		if p.X > q.X {
			q = p
		}
		if e, ok := ends[p.Y]; !ok || q.X > e.X {
			ends[p.Y], fold[p.Y] = q, l.Fold
		}
	}
	words := func(f detail.Fold) string { return fmt.Sprintf("%s %.0f°", either(f.Up, "UP", "DOWN"), f.Included) }
	for _, y := range slices.Sorted(maps.Keys(ends)) {
		c.call(right, ends[y], render.Arrow, words(fold[y]))
	}
	if across != nil {
		c.call(right, across.Path.V[0].Lerp(across.Path.V[len(across.Path.V)-1].Vec, 0.5), render.Arrow, words(across.Fold))
	}
}
