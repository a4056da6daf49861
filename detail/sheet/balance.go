package sheet

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

// balanced sets tables in as many columns as the room holds, each table whole and the columns as even as that
// lets them be; only where no such way is found are tables parted. Tables builds them for a column's width.
func balanced(s *render.Sheet, room geom.Box, least, most float64, tables func(width float64) []*table) bool {
	const gap = 6
	n := int((room.W() + gap) / (least + gap))
	if n < 1 {
		return false
	}
	for cols := 1; cols <= n; cols++ {
		wide := math.Min(most, (room.W()+gap)/float64(cols)-gap)
		x := room.Max.X - float64(cols)*(wide+gap) + gap
		all := tables(wide)
		high := make([]float64, len(all))
		for i, t := range all {
			high[i] = t.height()
		}
		for depth := room.H() / 2; depth <= room.H()+2; depth += 4 {
			if at, ok := columnsOf(high, cols, math.Min(depth, room.H())); ok {
				for i, t := range all {
					items, _, _ := t.draw(x+float64(at[i].column)*(wide+gap), room.Max.Y-at[i].down, high[i]+1)
					s.Items = append(s.Items, items...)
				}
				return true
			}
		}
	}
	wide := math.Min(most, (room.W()+gap)/float64(n)-gap)
	flow := column{s: s, x: room.Max.X - float64(n)*(wide+gap) + gap, y: room.Max.Y, top: room.Max.Y, foot: room.Min.Y, step: wide + gap, left: n}
	for _, t := range tables(wide) {
		flow.add(t)
	}
	return flow.ok()
}

// cell is where a table goes: its column and how far down.
type cell struct {
	column int
	down   float64
}

// columnsOf sets whole tables of the heights in order into n columns of the depth; ok is false where they need
// more.
func columnsOf(high []float64, n int, depth float64) (at []cell, ok bool) {
	col, down := 0, 0.0
	for _, h := range high {
		if down > 0 && down+h > depth {
			col, down = col+1, 0
		}
		if col >= n || h > depth {
			return nil, false
		}
		at = append(at, cell{col, down})
		down += h + 4
	}
	return at, true
}
