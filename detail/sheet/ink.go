package sheet

import (
	"math"
	"slices"

	"standclear/geom"
	"standclear/render"
)

// ink is where a view has something on paper, in cells of one plotted millimetre, so that many places can be
// asked about quickly.
type ink struct {
	k      float64 // model per plotted millimetre
	at     geom.Vec
	nx, ny int
	cells  []bool
	sum    []int32 // of the cells below and to the left
}

// inkOf looks at the items of a view, over its object and reach plotted millimetres around it.
func (c *composer) inkOf(reach float64) *ink {
	room := c.extent.Union(c.object).Grow(c.mm(reach))
	n := &ink{k: c.k, at: room.Min, nx: int(room.W()/c.k) + 1, ny: int(room.H()/c.k) + 1}
	n.cells = make([]bool, n.nx*n.ny)
	t := c.taken()
	for _, b := range t.texts {
		n.box(b)
	}
	for _, all := range [][][2]geom.Vec{t.lines, t.leaders} {
		for _, l := range all {
			n.line(l[0], l[1])
		}
	}
	for _, it := range c.items {
		if f, ok := it.(render.Fill); ok {
			n.area(f.Region)
		}
	}
	n.count()
	return n
}

// cell is the column and row of a model point.
func (n *ink) cell(p geom.Vec) (x, y int) {
	return int(math.Floor((p.X - n.at.X) / n.k)), int(math.Floor((p.Y - n.at.Y) / n.k))
}

func (n *ink) set(x, y int) {
	if x >= 0 && y >= 0 && x < n.nx && y < n.ny {
		n.cells[y*n.nx+x] = true
	}
}

func (n *ink) line(a, b geom.Vec) {
	steps := max(1, math.Ceil(2*a.Dist(b)/n.k))
	if steps > 1e5 {
		return // out of all proportion to a sheet
	}
	for i := range int(steps) + 1 {
		x, y := n.cell(a.Lerp(b, float64(i)/steps))
		n.set(x, y)
	}
}

func (n *ink) box(b geom.Box) {
	x0, y0 := n.cell(b.Min)
	x1, y1 := n.cell(b.Max)
	for y := max(0, y0); y <= min(n.ny-1, y1); y++ {
		for x := max(0, x0); x <= min(n.nx-1, x1); x++ {
			n.set(x, y)
		}
	}
}

// area marks the inside of a region row by row, between the crossings of its outline.
func (n *ink) area(r geom.Region) {
	flat := r.Flatten(0.2 * n.k)
	_, y0 := n.cell(flat.Bounds().Min)
	_, y1 := n.cell(flat.Bounds().Max)
	for y := max(0, y0); y <= min(n.ny-1, y1); y++ {
		level := n.at.Y + (float64(y)+0.5)*n.k
		var at []float64
		for _, s := range flat.Segs() {
			if (s.A.Y > level) != (s.B.Y > level) {
				at = append(at, s.A.X+(level-s.A.Y)/(s.B.Y-s.A.Y)*(s.B.X-s.A.X))
			}
		}
		slices.Sort(at)
		for i := 1; i < len(at); i += 2 {
			x0, _ := n.cell(geom.Vec{X: at[i-1]})
			x1, _ := n.cell(geom.Vec{X: at[i]})
			for x := max(0, x0); x <= min(n.nx-1, x1); x++ {
				n.set(x, y)
			}
		}
	}
}

// count fills the sums.
func (n *ink) count() {
	n.sum = make([]int32, (n.nx+1)*(n.ny+1))
	for y := range n.ny {
		row := int32(0)
		below, here := n.sum[y*(n.nx+1)+1:][:n.nx], n.sum[(y+1)*(n.nx+1)+1:][:n.nx]
		for x, inked := range n.cells[y*n.nx:][:n.nx] {
			if inked {
				row++
			}
			here[x] = below[x] + row
		}
	}
}

// in counts the cells with ink in a model box; outside of what was looked at there is none.
func (n *ink) in(b geom.Box) int {
	x0, y0 := n.cell(b.Min)
	x1, y1 := n.cell(b.Max)
	x0, y0, x1, y1 = max(0, x0), max(0, y0), min(n.nx, x1+1), min(n.ny, y1+1)
	if x0 >= x1 || y0 >= y1 {
		return 0
	}
	w := n.nx + 1
	return int(n.sum[y1*w+x1] - n.sum[y0*w+x1] - n.sum[y1*w+x0] + n.sum[y0*w+x0])
}
