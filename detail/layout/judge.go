package layout

import (
	"fmt"
	"math"
)

const slack = 1e-6

// Judge lists what the positions break, block by block from the left.
func (r Rules) Judge(x []float64) Row {
	row := Row{X: x}
	for i, p := range x {
		row.Clashes = append(row.Clashes, r.clashes(i, p)...)
		if i > 0 && p-x[i-1] > r.MaxSpacing+slack {
			row.Clashes = append(row.Clashes, Clash{Block: i, X: p, Kind: "spacing", Distance: p - x[i-1], Need: r.MaxSpacing})
		}
	}
	if len(x) > 0 {
		row.end(r, 0, x[0])
		row.end(r, len(x)-1, r.Length-x[len(x)-1])
	}
	return row
}

func (row *Row) end(r Rules, i int, d float64) {
	if d < r.EndMin-slack {
		row.Clashes = append(row.Clashes, Clash{Block: i, X: row.X[i], Kind: "end", Distance: d, Need: r.EndMin})
	}
	if d > r.EndMax+slack {
		row.Clashes = append(row.Clashes, Clash{Block: i, X: row.X[i], Kind: "end", Distance: d, Need: r.EndMax})
	}
}

// clashes returns what a block centred at p breaks by itself.
func (r Rules) clashes(i int, p float64) []Clash {
	var out []Clash
	for _, ax := range r.Avoid {
		if c, ok := r.nearest(ax, p); ok && c.Distance < ax.Clear-slack {
			c.Block = i
			out = append(out, c)
		}
	}
	for _, z := range r.Inside {
		if r.boltsIn(z, p) {
			out = append(out, Clash{Block: i, X: p, Kind: "inside", Name: z.Name, At: z.From, Need: z.To})
		}
	}
	for _, z := range r.Outside {
		if r.standsIn(z, p) {
			out = append(out, Clash{Block: i, X: p, Kind: "outside", Name: z.Name, At: z.From, Need: z.To})
		}
	}
	return out
}

// boltsIn reports whether a bolt of a block at p passes a zone inside, or too near to it.
func (r Rules) boltsIn(z Zone, p float64) bool {
	for _, c := range r.Columns {
		if p+c > z.From-z.Room+slack && p+c < z.To+z.Room-slack {
			return true
		}
	}
	return false
}

// standsIn reports whether a block at p stands in a zone outside.
func (r Rules) standsIn(z Zone, p float64) bool {
	return p+r.Width/2 > z.From+slack && p-r.Width/2 < z.To-slack
}

// nearest returns the joist of the row nearest to any bolt axis of a block at p.
func (r Rules) nearest(ax Axes, p float64) (Clash, bool) {
	best := Clash{Kind: ax.Kind, X: p, Distance: math.Inf(1), Need: ax.Clear}
	i, d := r.closest(ax.At, p)
	if i < 0 {
		return best, false
	}
	best.Distance, best.At, best.Name = d, ax.At[i], fmt.Sprintf("%s %d", ax.Kind, i+1)
	return best, true
}

// closest returns which of some axes is nearest to a bolt axis of a block at p, and how near; -1 for none.
func (r Rules) closest(at []float64, p float64) (int, float64) {
	best, least := -1, math.Inf(1)
	for i, j := range at {
		for _, c := range r.Columns {
			if d := math.Abs(p + c - j); d < least {
				best, least = i, d
			}
		}
	}
	return best, least
}

// Closest returns the least distance from a bolt axis of a block at p to a joist of the given kind.
func (r Rules) Closest(kind string, p float64) (Clash, bool) {
	for _, ax := range r.Avoid {
		if ax.Kind == kind {
			return r.nearest(ax, p)
		}
	}
	return Clash{}, false
}
