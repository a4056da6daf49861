package thermal

import (
	"slices"

	"standclear/detail/heat"
)

// grid is the boxes of a bay and of some ways to attach to it, their faces brought together so that all of
// them share one grid and most of its error falls out of their differences.
type grid struct {
	b     *bay
	wall  []heat.Box
	voids []heat.Box
	ways  []variant
}

func (r *run) align(ways []variant) *grid {
	g := &grid{b: r.b, wall: slices.Clone(r.b.wall), voids: slices.Clone(r.b.voids)}
	lists := [][]heat.Box{g.wall, g.voids}
	firm := []heat.Box{{Lo: r.b.lo, Hi: r.b.hi}} // places to look at lie on the ends of the window
	for _, w := range ways {
		w.boxes = slices.Clone(w.boxes)
		g.ways = append(g.ways, w)
		lists = append(lists, w.boxes)
		firm = append(firm, slices.DeleteFunc(slices.Clone(w.boxes), func(q heat.Box) bool { return !metal(q) })...)
	}
	for _, a := range []heat.Axis{heat.X, heat.Z} {
		align(a, firm, lists...)
	}
	g.wall = solidOnly(g.wall)
	for i := range g.ways {
		g.ways[i].boxes = solidOnly(g.ways[i].boxes)
	}
	return g
}

// compose returns the case of the wall with some boxes on it. The boxes of all ways come first, painted over:
// they cut the grid all the same.
func (g *grid) compose(name string, boxes []heat.Box, rs float64, probes []heat.Probe) heat.Case {
	c := heat.Case{Name: name, Dim: 3, Materials: g.b.mix.list, Probes: probes,
		Envs: []heat.Env{{Name: room, T: 1, Rs: rs}, {Name: outside, T: 0, Rs: rsOutside}}}
	for _, v := range g.ways {
		c.Boxes = append(c.Boxes, v.boxes...)
	}
	c.Boxes = slices.Concat(c.Boxes, g.wall, boxes, g.voids)
	return c
}

// metal reports whether a box is of a fastener or a sheet of metal.
func metal(q heat.Box) bool {
	switch q.Material {
	case "steel", "stainless", "aluminium":
		return true
	}
	return false
}

// wooden leaves out the metal.
func wooden(boxes []heat.Box) []heat.Box {
	return slices.DeleteFunc(slices.Clone(boxes), metal)
}
