package sheet

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

// tables leaves out those without rows.
func tables(ts ...*table) []*table {
	var out []*table
	for _, t := range ts {
		if len(t.rows) > 0 {
			out = append(out, t)
		}
	}
	return out
}

// stackHeight is how tall tables stand one under the other.
func stackHeight(ts []*table) float64 {
	h := -tableGap
	for _, t := range ts {
		h += t.height() + tableGap
	}
	return math.Max(h, 0)
}

// columns fills columns with blocks, as short as they go and of about one height; false when they do not fit.
// blocks is asked anew for each try, since a table parted over two columns is changed by it.
func columns(s *render.Sheet, room geom.Box, n int, gap float64, blocks func(width float64) []*table) bool {
	width := (room.W() - float64(n-1)*gap) / float64(n)
	try := func(on *render.Sheet, tall float64) bool {
		f := column{s: on, x: room.Min.X, y: room.Max.Y, top: room.Max.Y, foot: room.Max.Y - tall, step: width + gap, left: n}
		for _, t := range blocks(width) {
			if h := t.height(); h > f.y-f.foot && h <= f.top-f.foot {
				f.next() // whole rather than parted
			}
			f.add(t)
		}
		return f.ok()
	}
	whole := stackHeight(blocks(width)) / float64(n)
	if whole > room.H() || !try(&render.Sheet{}, room.H()) {
		return try(s, room.H())
	}
	lo, hi := whole*0.9, room.H()
	for hi-lo > 2 {
		if mid := (lo + hi) / 2; try(&render.Sheet{}, mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return try(s, math.Min(hi, room.H()))
}
