package cloud

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

// ground is what of the paper is in use, by squares.
type ground struct {
	cols, rows int
	at         []use
}

// use of a square.
type use uint8

const (
	someInk  use = 1 << iota // a line or a fill
	lettered                 // a text, or near one
)

const square = 0.5 // mm

func newGround(s render.Size) ground {
	g := ground{cols: int(s.W/square) + 1, rows: int(s.H/square) + 1}
	g.at = make([]use, g.cols*g.rows)
	return g
}

func (g ground) mark(v geom.Vec, u use) {
	c, r := int(math.Floor(v.X/square)), int(math.Floor(v.Y/square))
	if c >= 0 && r >= 0 && c < g.cols && r < g.rows {
		g.at[r*g.cols+c] |= u
	}
}

// line marks a line as far as its opening shows it.
func (g ground) line(p geom.Path, open geom.Box) {
	for _, s := range p.Segs() {
		n := max(1, int(math.Ceil(s.Len()/square*2)))
		for i := range n + 1 {
			if v := s.At(float64(i) / float64(n)); open.Holds(v) {
				g.mark(v, someInk)
			}
		}
	}
}

// fill marks a box.
func (g ground) fill(b geom.Box, u use) {
	g.each(b, func(i int) { g.at[i] |= u })
}

// count returns how many squares of a box have any of the uses.
func (g ground) count(b geom.Box, u use) int {
	n := 0
	g.each(b, func(i int) {
		if g.at[i]&u != 0 {
			n++
		}
	})
	return n
}

func (g ground) each(b geom.Box, f func(i int)) {
	if b.Empty() {
		return
	}
	c0, c1 := max(0, int(math.Floor(b.Min.X/square))), min(g.cols-1, int(math.Floor(b.Max.X/square)))
	r0, r1 := max(0, int(math.Floor(b.Min.Y/square))), min(g.rows-1, int(math.Floor(b.Max.Y/square)))
	for r := r0; r <= r1; r++ {
		for c := c0; c <= c1; c++ {
			f(r*g.cols + c)
		}
	}
}
