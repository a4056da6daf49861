package sheet

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

// balanced sets tables in as many columns as the room holds, each table whole and the columns as even as that
// lets them be; only where no such way is found are tables parted. Tables builds them for a column's width.
func balanced(s *render.Sheet, room geom.Box, least, most float64, tables func(width float64) []*table) bool {
	return around(s, room, geom.Vec{}, least, most, tables)
}

// around is balanced in a room whose upper left corner, of the size of views, is taken: columns beside it have
// the whole height, those under it what is left.
func around(s *render.Sheet, room geom.Box, views geom.Vec, least, most float64, tables func(width float64) []*table) bool {
	const gap = 6
	n := int((room.W() + gap) / (least + gap))
	if n < 1 {
		return false
	}
	for cols := 1; cols <= n; cols++ {
		beside := (room.W()-views.X)/float64(cols) - gap
		for _, wide := range []float64{math.Min(most, beside), math.Min(most, (room.W()+gap)/float64(cols)-gap)} {
			if wide < least {
				continue
			}
			all := tables(wide)
			high := make([]float64, len(all))
			for i, t := range all {
				high[i] = t.height()
			}
			of := columnsIn(room, views, cols, wide, gap)
			for depth := room.H() / 2; depth <= room.H()+2; depth += 4 {
				if at, ok := columnsOf(high, of, room.Max.Y-math.Min(depth, room.H())); ok {
					for i, t := range all {
						items, _, _ := t.draw(at[i].X, at[i].Y, high[i]+1)
						s.Items = append(s.Items, items...)
					}
					return true
				}
			}
		}
	}
	wide := math.Min(most, (room.W()+gap)/float64(n)-gap)
	var of []columnAt
	for _, at := range columnsIn(room, views, n, wide, gap) {
		of = append(of, columnAt{at, s, room.Min.Y})
	}
	f := columnsFrom(of)
	for _, t := range tables(wide) {
		f.add(t)
	}
	return f.ok()
}

// columnsIn returns the upper left corners of n columns that stand against the right side of a room, lower where
// they stand under views in its upper left corner; without views, against its left side.
func columnsIn(room geom.Box, views geom.Vec, n int, wide, gap float64) []geom.Vec {
	const under = 10 // the last view's title keeps its distance
	var out []geom.Vec
	for i := range n {
		at := pt(room.Max.X-float64(n-i)*(wide+gap)+gap, room.Max.Y)
		if views.X == 0 {
			at.X = room.Min.X + float64(i)*(wide+gap)
		}
		if views.X > 0 && at.X < room.Min.X+views.X+gap {
			at.Y -= views.Y + under
		}
		out = append(out, at)
	}
	return out
}

// columnsOf sets whole tables of the heights in order into columns down to the foot, and returns where each
// goes; ok is false where they need more.
func columnsOf(high []float64, of []geom.Vec, foot float64) (at []geom.Vec, ok bool) {
	col, down := 0, 0.0
	for _, h := range high {
		for col < len(of) && of[col].Y-down-h < foot-1e-6 {
			col, down = col+1, 0
		}
		if col == len(of) {
			return nil, false
		}
		at = append(at, of[col].Sub(geom.Vec{Y: down}))
		down += h + tableGap
	}
	return at, true
}
