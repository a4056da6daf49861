package sheet

import "standclear/geom"

// way is where a leader bends: at its landing, or earlier, so that it runs level past what stands beside the
// object.
type way int

const (
	atLanding way = iota
	atEdge        // of the object
	before        // half way from the anchor to the edge
	ways
)

// elbow is the x of a leader's bend.
func (c *composer) elbow(s side, n note, end geom.Vec) float64 {
	base, out := c.edge(s)
	late, edge := end.X-out*c.mm(landing), base+out*c.mm(1)
	switch {
	case n.way == atEdge && (edge-n.anchor.X)*out > 0:
		return edge
	case n.way == before && (edge-n.anchor.X)*out > 0:
		return (edge + n.anchor.X) / 2
	}
	return late
}

// route bends the leaders of a column and moves notes to other places in it until none can be led better:
// clear of texts and dimension lines, and of each other.
func (c *composer) route(s side, n []note, slots []slot) {
	t := c.taken()
	cost := func() float64 {
		sum := 0.0
		for i := range n {
			sum += c.costs(s, t, n, slots, i)
		}
		return sum
	}
	move := func(i, j int) { moveNote(n, slots, i, j) }
	swap := func(i, j int) { n[i], n[j], slots[i], slots[j] = n[j], n[i], slots[j], slots[i] }
	best := cost()
	for round := 0; round < 6 && best >= clash; round++ {
		was := best
		for i := range n {
			keep := n[i].way
			for n[i].way = range ways {
				if v := cost(); v < best {
					best, keep = v, n[i].way
				}
			}
			n[i].way = keep
		}
		for i := range n {
			for j := range n {
				if best < clash || i == j {
					continue
				}
				for _, change := range []func(i, j int){move, swap} {
					change(i, j)
					c.assign(s, slots)
					if v := cost(); v < best {
						best = v
						continue
					}
					change(j, i)
					c.assign(s, slots)
				}
			}
		}
		if best == was {
			return
		}
	}
}

// moveNote takes a note from one place in its column to another.
func moveNote(n []note, slots []slot, from, to int) {
	a, b := n[from], slots[from]
	step := 1
	if to < from {
		step = -1
	}
	for k := from; k != to; k += step {
		n[k], slots[k] = n[k+step], slots[k+step]
	}
	n[to], slots[to] = a, b
}

// clash is what one crossing costs; a leader bent early, or long, costs little: of two ways that cross as often,
// the shorter leads on to fewer crossings.
const clash = 1000.0

// costs is what the leader of note i spoils; a crossing of two leaders counts for both.
func (c *composer) costs(s side, t *taken, n []note, slots []slot, i int) float64 {
	l := c.leader(s, n[i], slots[i])
	sum := float64(n[i].way) + (l[0].Dist(l[1])+l[1].Dist(l[2]))/c.k/100
	for k := range 2 {
		sum += clash * float64(t.spoils(l[k], l[k+1], c.mm(0.4)))
	}
	for j := range n {
		if j == i {
			continue
		}
		o := c.leader(s, n[j], slots[j])
		for k := range 2 {
			for m := range 2 {
				if cross(l[k], l[k+1], o[m], o[m+1]) {
					sum += clash
				}
			}
		}
	}
	return sum
}
