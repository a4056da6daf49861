package explain

import (
	"math"
	"strings"
)

// canvas is a sketch in plain characters, rows from the top.
type canvas struct {
	rows [][]byte
	wide int
}

func newCanvas(wide, high int) *canvas {
	c := &canvas{wide: wide}
	for range high {
		c.rows = append(c.rows, []byte(strings.Repeat(" ", wide)))
	}
	return c
}

// put writes text from x on; what lies off the sketch is left out.
func (c *canvas) put(x, y int, text string) {
	if y < 0 || y >= len(c.rows) {
		return
	}
	for i := range len(text) {
		if x+i >= 0 && x+i < c.wide {
			c.rows[y][x+i] = text[i]
		}
	}
}

// across draws a line of one character from x0 to x1.
func (c *canvas) across(x0, x1, y int, b byte) {
	for x := min(x0, x1); x <= max(x0, x1); x++ {
		c.put(x, y, string(b))
	}
}

func (c *canvas) down(x, y0, y1 int, b byte) {
	for y := min(y0, y1); y <= max(y0, y1); y++ {
		c.put(x, y, string(b))
	}
}

// box draws an outline.
func (c *canvas) box(x0, y0, x1, y1 int) {
	c.across(x0, x1, y0, '-')
	c.across(x0, x1, y1, '-')
	c.down(x0, y0, y1, '|')
	c.down(x1, y0, y1, '|')
	for _, x := range []int{x0, x1} {
		c.put(x, y0, "+")
		c.put(x, y1, "+")
	}
}

// fill puts one character into the inside of a box.
func (c *canvas) fill(x0, y0, x1, y1 int, b byte) {
	for y := y0 + 1; y < y1; y++ {
		c.across(x0+1, x1-1, y, b)
	}
}

func (c *canvas) lines() []string {
	var out []string
	for _, r := range c.rows {
		out = append(out, strings.TrimRight(string(r), " "))
	}
	for len(out) > 0 && out[len(out)-1] == "" {
		out = out[:len(out)-1]
	}
	return out
}

// ruler turns a measure into a column or a row.
type ruler struct {
	lo, hi float64
	n      int // places from 0 to n-1
}

func (r ruler) at(v float64) int {
	if r.hi <= r.lo {
		return 0
	}
	return int(math.Round((v - r.lo) / (r.hi - r.lo) * float64(r.n-1)))
}

// label is a text centred at a column.
type label struct {
	x    int
	text string
}

// labels sets texts at their columns, on as many lines as keep them apart.
func labels(wide int, all []label) []string {
	var rows [][]byte
	var end []int
	for _, l := range all {
		x := max(0, min(l.x-len(l.text)/2, wide-len(l.text)))
		k := 0
		for k < len(end) && end[k] >= x {
			k++
		}
		if k == len(end) {
			rows, end = append(rows, []byte(strings.Repeat(" ", wide))), append(end, -1)
		}
		if x >= 0 && x+len(l.text) <= wide {
			copy(rows[k][x:], l.text)
		}
		end[k] = x + len(l.text)
	}
	var out []string
	for _, r := range rows {
		out = append(out, strings.TrimRight(string(r), " "))
	}
	return out
}

// plot draws a curve, columns evenly over its run, least value at the foot; a line marks 0 where it lies within.
func plot(wide, high int, value func(at float64) float64, lo, hi float64, mark byte) []string {
	c := newCanvas(wide, high)
	r := ruler{lo, hi, high}
	if lo < 0 && hi > 0 {
		c.across(0, wide-1, high-1-r.at(0), '-')
	}
	for x := range wide {
		c.put(x, high-1-r.at(value(float64(x)/float64(wide-1))), string(mark))
	}
	return c.lines()
}
