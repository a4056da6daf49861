package sheet

import (
	"cmp"
	"math"
	"slices"

	"standclear/geom"
	"standclear/render"
)

// rung is one thing in a column beside the object: a key or a note, led to one of the points that stand for what
// it names. All lengths of a rung are plotted; up and down are its room.
type rung struct {
	no       int        // of the notes of its side
	points   []geom.Vec // model, the best first
	end      render.LeaderEnd
	up, down float64
	foot     float64 // where the leader meets it, over its middle
}

// ladder leads the rungs of one side at one angle: up to those named above a height, down to those below, so that
// leaders run side by side and none can cross. The column stands as near to the object as it finds room.
type ladder struct {
	c     *composer
	side  side
	out   float64 // 1 to the right
	split float64 // model height between what leads up and what leads down
	width float64 // plotted, of a rung
	ink   *ink
	taken *taken
}

// led is a ladder as it came out.
type led struct {
	x       float64 // model: where the leaders end and the rungs start
	at      []float64
	leaders [][3]geom.Vec
	cost    float64
}

const (
	rungStep = 3.0 // plotted, between the heights that are tried
	run      = 4.0 // plotted, the level part of a leader at least
	usual    = 60.0
)

// slopes are the angles of leaders, the first as far as it serves.
var slopes = []float64{1, math.Sqrt(3), 1 / math.Sqrt(3)}

// solve orders the rungs from the lowest up and finds the upright with the shortest and clearest leaders.
func (l *ladder) solve(rungs []rung) led {
	l.order(rungs)
	edge, _ := l.c.edge(l.side)
	from := math.Inf(-1) // outward: every rung has a point inside of the upright
	for _, r := range rungs {
		in := math.Inf(1)
		for _, p := range r.points {
			in = math.Min(in, p.X*l.out)
		}
		from = math.Max(from, in)
	}
	far := math.Max(0, edge*l.out-from) / l.c.k // of the object's edge, plotted
	first := run + 4
	if l.c.clear {
		first = far + l.c.st.First
	}
	var all []upright
	for d := first; d <= far+80; d += 5 {
		all = append(all, l.upright(rungs, (from+l.c.mm(d))*l.out))
	}
	slices.SortStableFunc(all, func(a, b upright) int { return cmp.Compare(a.led.cost, b.led.cost) })
	best := upright{led: led{cost: math.Inf(1)}}
	for _, u := range all {
		if u.led.cost >= best.led.cost { // what it spoils comes on top
			break
		}
		if l.settle(&u); u.led.cost < best.led.cost {
			best = u
		}
	}
	l.reorder(&best)
	copy(rungs, best.rungs)
	return best.led
}

// reorder takes rungs to other places among the others as long as that takes away a crossing.
func (l *ladder) reorder(u *upright) {
	for was := math.Inf(1); u.led.cost < was && u.led.cost >= clash; {
		was = u.led.cost
		for i := range u.rows {
			for j := range u.rows {
				if i == j || u.led.cost < clash {
					continue
				}
				v := upright{rungs: moved(u.rungs, i, j), rows: moved(u.rows, i, j), led: led{x: u.led.x}}
				v.pick(l)
				if v.led.cost >= u.led.cost {
					continue
				}
				if l.settle(&v); v.led.cost < u.led.cost {
					*u = v
				}
			}
		}
	}
}

// moved is a copy of a list with one of it at another place.
func moved[T any](list []T, from, to int) []T {
	v := list[from]
	return slices.Insert(slices.Delete(slices.Clone(list), from, from+1), to, v)
}

// settle looks at what the leaders of a column run through, those alone that are taken, until none has to give way.
func (l *ladder) settle(c *upright) {
	for {
		clean := true
		for i, j := range c.chosen {
			if ch := &c.rows[i][j]; !ch.seen {
				was := ch.cost
				*ch = l.lead(c.rungs[i], c.led.x, ch.y, true)
				clean = clean && ch.cost <= was
			}
		}
		if clean {
			return
		}
		c.pick(l)
	}
}

// order sorts by the lines of the leaders: what leads down by one slope, above it what leads up by the other.
func (l *ladder) order(rungs []rung) {
	key := func(r rung) (bool, float64) {
		p := r.points[0]
		return p.Y >= l.split, p.Y - l.dir(p)*l.out*p.X
	}
	slices.SortStableFunc(rungs, func(a, b rung) int {
		up, at := key(a)
		over, bt := key(b)
		return cmp.Or(cmp.Compare(either(up, 1, 0), either(over, 1, 0)), cmp.Compare(at, bt))
	})
}

func (l *ladder) dir(p geom.Vec) float64 { return either(p.Y >= l.split, 1.0, -1.0) }

// choice is a rung at one height with its best leader.
type choice struct {
	y      float64
	leader [3]geom.Vec
	cost   float64
	seen   bool // what the leader runs through is in the cost
}

// upright is the rungs at one x: the heights each finds room at, and those taken.
type upright struct {
	rungs  []rung
	rows   [][]choice
	chosen []int
	led    led
}

// upright places the rungs in a column at x: the cheapest heights in order.
func (l *ladder) upright(rungs []rung, x float64) upright {
	c := upright{rungs: slices.Clone(rungs), led: led{x: x}}
	for _, r := range rungs {
		c.rows = append(c.rows, l.choices(r, x))
	}
	c.pick(l)
	return c
}

// pick takes one height for each rung, in order, for the least cost of all together.
func (c *upright) pick(l *ladder) {
	type state struct {
		cost float64
		prev int
	}
	rows := c.rows
	states := make([][]state, len(rows))
	for i, row := range rows {
		states[i] = make([]state, len(row))
		free, least := 0, 0 // of the row below: those that leave room, the cheapest of them
		for j, ch := range row {
			states[i][j] = state{cost: ch.cost, prev: -1}
			if i == 0 {
				continue
			}
			room := (c.rungs[i-1].up + c.rungs[i].down) * l.c.k
			for free < len(rows[i-1]) && rows[i-1][free].y <= ch.y-room+1e-6 {
				if states[i-1][free].cost < states[i-1][least].cost {
					least = free
				}
				free++
			}
			s := state{cost: math.Inf(1)}
			try := func(p int) {
				if cost := states[i-1][p].cost + ch.cost; cost < s.cost {
					if cost += sideBySide(rows[i-1][p].leader, ch.leader, l.c.k); cost < s.cost {
						s = state{cost, p}
					}
				}
			}
			if free > 0 {
				try(least) // the cheapest below; what else there is can only be as cheap
				for p := 0; p < free && s.cost > states[i-1][least].cost+ch.cost; p++ {
					try(p)
				}
			}
			states[i][j] = s
		}
	}
	c.led.cost, c.chosen = math.Inf(1), nil
	last := -1
	for j, s := range states[len(rows)-1] {
		if s.cost < c.led.cost {
			c.led.cost, last = s.cost, j
		}
	}
	if last < 0 {
		return
	}
	n := len(rows)
	c.chosen, c.led.at, c.led.leaders = make([]int, n), make([]float64, n), make([][3]geom.Vec, n)
	for i := n - 1; i >= 0; i-- {
		c.chosen[i], c.led.at[i], c.led.leaders[i] = last, rows[i][last].y, rows[i][last].leader
		last = states[i][last].prev
	}
}

// sideBySide is what two leaders of neighbours cost beside what each costs alone: much where they cross, something
// where they run so close that they read as one line.
func sideBySide(a, b [3]geom.Vec, k float64) float64 {
	for i := range 2 {
		for j := range 2 {
			if cross(a[i], a[i+1], b[j], b[j+1]) {
				return clash
			}
		}
	}
	const near, same = 2.5, 1.0 // plotted
	d, e := a[1].Sub(a[0]), b[1].Sub(b[0])
	if apart := math.Abs(b[0].Sub(a[0]).Cross(d)); math.Abs(d.Cross(e)) < 0.1*math.Abs(d.Dot(e)) && apart < near*k*d.Len() {
		return either(apart < same*k*d.Len(), 200.0, 20)
	}
	return 0
}

// choices are the heights at which a rung finds room in a column, from the lowest, each with its best leader.
func (l *ladder) choices(r rung, x float64) []choice {
	c := l.c
	lo, hi := c.object.Min.Y-c.mm(120), c.object.Max.Y
	out := make([]choice, 0, int((hi-lo)/c.mm(rungStep))+1)
	for y := lo; y <= hi; y += c.mm(rungStep) {
		b := geom.BoxOf(geom.Vec{X: x, Y: y - c.mm(r.down-0.4)}, geom.Vec{X: x + l.out*c.mm(l.width), Y: y + c.mm(r.up-0.4)})
		if l.ink.in(b) > 0 {
			continue
		}
		out = append(out, l.lead(r, x, y, false))
	}
	return out
}

// lead finds the best leader of a rung at a place: at 45 degrees if it goes, with as short a level part as it goes.
// What it runs through counts where that is asked for.
func (l *ladder) lead(r rung, x, y float64, look bool) choice {
	c := l.c
	foot := geom.Vec{X: x, Y: y + c.mm(r.foot)}
	best := choice{y: y, cost: math.Inf(1), seen: look}
	for pi, p := range r.points {
		rise := (foot.Y - p.Y) * l.dir(p)
		for si, slope := range slopes {
			if si > 0 && best.cost < clash {
				break
			}
			elbow := geom.Vec{X: p.X + l.out*math.Abs(rise)/slope, Y: foot.Y}
			level := (foot.X - elbow.X) * l.out / c.k
			cost := 0.3*float64(pi) + 8*float64(si)
			if level < run-0.01 {
				continue
			}
			if rise < 0 {
				cost += 12 // against the way of the others
			}
			if math.Abs(rise) < c.mm(1.5) {
				cost += 6 // a level leader through the layers is taken for one of their lines
			}
			long := level + p.Dist(elbow)/c.k
			cost += 0.25*(level-run) + 0.08*long + math.Max(0, long-usual)
			if cost >= best.cost {
				continue
			}
			cost += 0.5 * float64(l.ink.in(geom.BoxOf(elbow, foot)))
			for _, s := range [2][2]geom.Vec{{p, elbow}, {elbow, foot}} {
				if !look {
					break
				}
				cost += clash * float64(l.taken.spoils(s[0], s[1], c.mm(0.6)))
			}
			if cost < best.cost {
				best.cost, best.leader = cost, [3]geom.Vec{p, elbow, foot}
			}
		}
	}
	if math.IsInf(best.cost, 1) { // no slope reaches: straight
		p := r.points[0]
		best.leader, best.cost = [3]geom.Vec{p, {X: foot.X - l.out*c.mm(run), Y: foot.Y}, foot}, 3*clash
		for k := 0; k < 2 && look; k++ {
			best.cost += clash * float64(l.taken.spoils(best.leader[k], best.leader[k+1], c.mm(0.6)))
		}
	}
	return best
}
