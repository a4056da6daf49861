package layout

import "math"

// spots is the grid along the ledger: which steps may carry a block.
type spots struct {
	step float64
	ok   []bool

	dist, behind []int // memory of fewest
}

func (r Rules) free() spots {
	n := int(math.Floor(r.Length/r.Grid+slack)) + 1
	s := spots{step: r.Grid, ok: make([]bool, n), dist: make([]int, n), behind: make([]int, n)}
	for i := range s.ok {
		s.ok[i] = true
	}
	reach := r.Width/2 + r.widest()
	for _, z := range r.Inside {
		s.keepOut(z.From-z.Room-reach, z.To+z.Room+reach, func(p float64) bool { return r.boltsIn(z, p) })
	}
	for _, z := range r.Outside {
		s.keepOut(z.From-reach, z.To+reach, func(p float64) bool { return r.standsIn(z, p) })
	}
	for _, ax := range r.Avoid {
		for _, j := range ax.At {
			for _, c := range r.Columns {
				s.keepOff(j-c, ax.Clear)
			}
		}
	}
	return s
}

// widest is how far a bolt column is from the middle of the block.
func (r Rules) widest() float64 {
	w := 0.0
	for _, c := range r.Columns {
		w = max(w, math.Abs(c))
	}
	return w
}

// keepOut takes the steps between two places where a block cannot stand.
func (s spots) keepOut(from, to float64, bad func(p float64) bool) {
	for i := int(max(0, math.Floor(from/s.step))); i < len(s.ok) && float64(i)*s.step <= to; i++ {
		s.ok[i] = s.ok[i] && !bad(float64(i)*s.step)
	}
}

// keepOff takes the steps nearer to x than clear.
func (s spots) keepOff(x, clear float64) {
	from, to := math.Floor((x-clear)/s.step), math.Ceil((x+clear)/s.step)
	for i := int(max(0, from)); i < len(s.ok) && float64(i) <= to; i++ {
		s.ok[i] = s.ok[i] && math.Abs(float64(i)*s.step-x) >= clear-slack
	}
}

// search returns the row of fewest blocks at the given greatest spacing, evenest spaces, or nil;
// tried lists the counts that cannot be done.
func (r Rules) search(s spots, limit float64) (x []float64, tried []int) {
	reach := int(math.Floor(limit/s.step + slack))
	lo, hi := r.ends(s)
	fewest := r.fewest(s, reach, lo, hi)
	if fewest == 0 {
		return nil, nil
	}
	least := len(r.EqualRow())
	for n := least; n < fewest; n++ {
		tried = append(tried, n)
	}
	return r.evenest(s, reach, fewest, lo, hi), tried
}

// ends returns the grid range of the first block; the last block's is its mirror.
func (r Rules) ends(s spots) (lo, hi int) {
	return int(math.Ceil(r.EndMin/s.step - slack)), int(math.Floor(r.EndMax/s.step + slack))
}

func (r Rules) isLast(s spots, i int) bool {
	d := r.Length - float64(i)*s.step
	return d >= r.EndMin-slack && d <= r.EndMax+slack
}

// least is the smallest step from one block to the next, in grid steps.
func (r Rules) least(s spots) int {
	d := r.MinSpacing
	if d == 0 {
		d = r.Width
	}
	return max(1, int(math.Ceil(d/s.step-slack)))
}

// fewest walks the grid greedily in layers: the least number of blocks from a first to a last spot.
func (r Rules) fewest(s spots, reach, lo, hi int) int {
	dist, behind := s.dist, s.behind[:0] // behind: spots within reach that no later one is better than, the best first
	clear(dist)
	best, step := 0, r.least(s)
	for i := range s.ok {
		if j := i - step; j >= 0 && dist[j] > 0 {
			for len(behind) > 0 && dist[behind[len(behind)-1]] >= dist[j] {
				behind = behind[:len(behind)-1]
			}
			behind = append(behind, j)
		}
		for len(behind) > 0 && behind[0] < i-reach {
			behind = behind[1:]
		}
		if !s.ok[i] {
			continue
		}
		switch {
		case i >= lo && i <= hi:
			dist[i] = 1
		case len(behind) > 0:
			dist[i] = dist[behind[0]] + 1
		}
		if dist[i] > 1 && r.isLast(s, i) && (best == 0 || dist[i] < best) {
			best = dist[i]
		}
	}
	return best
}

// evenest places n blocks so that they carry alike: it makes the sum of s^2 over the spaces and of
// 2 e^2 over the two ends least, with lever for an end that juts out. The ledger's length is the sum of all spaces and ends, so the least
// lies at equal spaces with half a space beyond either end, or as near to that as the rules let it.
// For every first spot a layered shortest path gives the best way to each last spot.
func (r Rules) evenest(s spots, reach, n, lo, hi int) []float64 {
	var best []int
	bestCost := math.Inf(1)
	ideal := r.Length * r.Length / float64(n) // what a row costs that no rule disturbs
	var on []window
	bound := math.Inf(1)
	for _, enough := range [...]float64{1.02 * ideal, 1.2 * ideal, math.Inf(1)} {
		on = r.leasts(s, reach, n, lo, hi, enough)
		for _, least := range on[0].least {
			bound = min(bound, least*(1+1e-9)+1e-6) // rounding apart, nothing dearer can be the best
		}
		if bound <= enough {
			break
		}
	}
	for first := lo; first <= hi && first < len(s.ok); first++ {
		if !s.ok[first] || on[0].at(first) > bound {
			continue
		}
		row, cost := r.path(s, reach, n, first, on, bound)
		if row != nil && cost < bestCost-1e-9 {
			best, bestCost = row, cost
		}
	}
	if best == nil {
		return nil
	}
	x := make([]float64, len(best))
	for i, k := range best {
		x[i] = float64(k) * s.step
	}
	return x
}

// window is what the best row costs from a block on, for that block at each of a run of spots.
type window struct {
	from  int
	least []float64
}

// at is the cost from a spot on, infinite outside the window.
func (w window) at(i int) float64 {
	if i -= w.from; i < 0 || i >= len(w.least) {
		return math.Inf(1)
	}
	return w.least[i]
}

// leasts finds for each block of a row of n what the best row costs from every spot on where it may stand, in one
// walk from the last spots back; infinite where there is none, or none that costs no more than enough. With the
// first block the space before it counts too.
func (r Rules) leasts(s spots, reach, n, lo, hi int, enough float64) []window {
	on := make([]window, n)
	last, nearest := len(s.ok)-1, len(s.ok)
	step := r.least(s)
	for i := range s.ok {
		if s.ok[i] && r.isLast(s, i) {
			nearest = min(nearest, i)
		}
	}
	end := window{nearest, make([]float64, len(s.ok)-nearest)}
	for i := range end.least {
		end.least[i] = math.Inf(1)
		if e := r.Length - float64(nearest+i)*s.step; s.ok[nearest+i] && r.isLast(s, nearest+i) {
			end.least[i] = 2 * e * e
		}
	}
	on[n-1] = end
	next, beyond := nearest, last // where the block behind can stand
	for k := n - 2; k >= 0; k-- {
		from, until := max(lo+k*step, nearest-(n-1-k)*reach, next-reach), min(hi+k*reach, last-(n-1-k)*step, beyond-step) // where the k-th can stand
		for from <= until && (!s.ok[from] || r.atLeast(s, n, k, from) > enough+1e-6) {
			from++
		}
		for from <= until && (!s.ok[until] || r.atLeast(s, n, k, until) > enough+1e-6) {
			until--
		}
		on[k] = window{from, make([]float64, max(0, until-from+1))}
		for i := range on[k].least {
			on[k].least[i] = math.Inf(1)
			if at := from + i; s.ok[at] {
				on[k].least[i] = r.leastOn(s, on[k+1], at, max(at+step, next), min(at+reach, beyond), k == 0, k == n-2)
			}
		}
		next, beyond = from, until
	}
	for i := range on[0].least {
		e := float64(on[0].from+i) * s.step
		on[0].least[i] += 2 * e * e
	}
	return on
}

// atLeast is what a row of n blocks costs at the least whose k-th stands at spot i: the spaces on either side
// alike, and half a space beyond the ends.
func (r Rules) atLeast(s spots, n, k, i int) float64 {
	before, after := float64(i)*s.step, r.Length-float64(i)*s.step
	return 2*before*before/float64(2*k+1) + 2*after*after/float64(2*(n-1-k)+1)
}

// leastOn returns the least cost from spot i on over a next spot from the nearest to the farthest, first and final
// saying whether that space is the first or the last of the row.
func (r Rules) leastOn(s spots, to window, i, nearest, farthest int, first, final bool) float64 {
	best := math.Inf(1)
	for j := nearest; j <= farthest; j++ {
		d := float64(j-i) * s.step
		c := to.least[j-to.from] + d*d
		if c >= best {
			continue
		}
		if final {
			c += lever(r.Length-float64(j)*s.step, d)
		}
		if first {
			c += lever(float64(i)*s.step, d)
		}
		best = min(best, c)
	}
	return best
}

// layer holds the costs of one block of the row over a window of the grid.
type layer struct {
	from int
	cost []float64
	prev []int
}

// path returns the best row from a first spot. Spots that make it dearer than bound, by what is to come (on), are
// passed over.
func (r Rules) path(s spots, reach, n, first int, on []window, bound float64) ([]int, float64) {
	layers := make([]layer, n)
	e := float64(first) * s.step
	layers[0] = layer{from: first, cost: []float64{2 * e * e}, prev: []int{-1}}
	step := r.least(s)
	for k := 1; k < n; k++ {
		p := layers[k-1]
		from := max(first+k*step, on[k].from)
		to := min(first+k*reach, on[k].from+len(on[k].least)-1)
		if from > to {
			return nil, 0
		}
		l := layer{from: from, cost: make([]float64, to-from+1), prev: make([]int, to-from+1)}
		for i := range l.cost {
			at := from + i
			l.cost[i], l.prev[i] = math.Inf(1), -1
			run := float64(at-first) * s.step
			if !s.ok[at] || 2*e*e+run*run/float64(k)+on[k].at(at) > bound {
				continue
			}
			var more func(d float64) float64
			if k == 1 || k == n-1 {
				more = func(d float64) float64 {
					c := 0.0
					if k == 1 {
						c += lever(e, d)
					}
					if k == n-1 {
						c += lever(r.Length-float64(at)*s.step, d)
					}
					return c
				}
			}
			if cost, prev := p.best(at, step, reach, s.step, more); cost+on[k].at(at) <= bound {
				l.cost[i], l.prev[i] = cost, prev
			}
		}
		layers[k] = l.trimmed()
	}
	end, cost := -1, math.Inf(1)
	l := layers[n-1]
	for i, c := range l.cost {
		at := l.from + i
		e := r.Length - float64(at)*s.step
		if v := c + 2*e*e; r.isLast(s, at) && v < cost-1e-9 {
			end, cost = at, v
		}
	}
	if end < 0 {
		return nil, 0
	}
	row := make([]int, n)
	for k := n - 1; k >= 0; k-- {
		row[k] = end
		end = layers[k].prev[end-layers[k].from]
	}
	return row, cost
}

// trimmed leaves out the spots at either end that no row reaches.
func (l layer) trimmed() layer {
	for len(l.cost) > 0 && math.IsInf(l.cost[0], 1) {
		l.from, l.cost, l.prev = l.from+1, l.cost[1:], l.prev[1:]
	}
	for n := len(l.cost) - 1; n >= 0 && math.IsInf(l.cost[n], 1); n-- {
		l.cost, l.prev = l.cost[:n], l.prev[:n]
	}
	return l
}

// lever is the cost of an end e beyond a space d: an end longer than half of it prises up the next
// block.
func lever(e, d float64) float64 {
	over := math.Max(0, e-d/2)
	return 4 * over * over
}

// best returns the cheapest way to spot i from the layer before it; more is what a space costs besides its
// square, nil for nothing.
func (p layer) best(i, least, reach int, step float64, more func(space float64) float64) (float64, int) {
	cost, prev := math.Inf(1), -1
	for j := max(p.from, i-reach); j < min(i-least+1, p.from+len(p.cost)); j++ {
		d := float64(i-j) * step
		c := p.cost[j-p.from] + d*d
		if more != nil {
			c += more(d)
		}
		if c < cost {
			cost, prev = c, j
		}
	}
	return cost, prev
}

// relax returns the smallest greater spacing, on the grid, at which a row exists.
func (r Rules) relax(s spots) (float64, []float64) {
	from := int(math.Floor(r.MaxSpacing/s.step+slack)) + 1
	to := len(s.ok)
	lo, hi := r.ends(s)
	if r.fewest(s, to, lo, hi) == 0 {
		return 0, nil
	}
	for from < to { // a row at one limit is a row at every greater one
		mid := (from + to) / 2
		if r.fewest(s, mid, lo, hi) > 0 {
			to = mid
		} else {
			from = mid + 1
		}
	}
	limit := float64(from) * s.step
	x, _ := r.search(s, limit)
	return limit, x
}
