package lattice

// down sums a slice of the unfolded lattice into one of the folded: each cell gone is shared out by
// its weights.
func (f *fold) down(c Crew, to, from []float32) {
	if f.axis == alongX {
		c.Each(f.to, func(j, k int) {
			f.downRow(f.to.slice(to, j, k), f.from.slice(from, j, k), f.wide.slice(f.weight, j, k))
		})
		return
	}
	c.share(f.to, func(rs rows) {
		spare := make([]float32, f.to.X)
		for n := rs.first; n < rs.end; n++ {
			j, k := n%f.to.Y, n/f.to.Y
			f.gather(f.to.slice(to, j, k), spare, j, k, func(row []float32, j, k int) { copy(row, f.from.slice(from, j, k)) })
		}
	})
}

// gather sums into row j, k of the folded lattice, across x, what the rows of the unfolded one hold; get
// copies one of those.
func (f *fold) gather(row, spare []float32, j, k int, get func(row []float32, j, k int)) {
	p, fj, fk := f.plane(j, k)
	get(row, fj, fk)
	if g := f.after[p]; g >= 0 {
		oj, ok := f.swap(j, k, f.gone[g])
		wj, wk := f.swap(j, k, g)
		get(spare, oj, ok)
		addWeighted(row, spare, f.wide.slice(f.weight, wj, wk))
	}
	if p > 0 && f.after[p-1] >= 0 {
		g := f.after[p-1]
		oj, ok := f.swap(j, k, f.gone[g])
		wj, wk := f.swap(j, k, g)
		get(spare, oj, ok)
		addRest(row, spare, f.wide.slice(f.weight, wj, wk))
	}
}

// up spreads a slice of the folded lattice over the unfolded one, the transpose of down.
func (f *fold) up(c Crew, to, from []float32) {
	if f.axis == alongX {
		c.Each(f.from, func(j, k int) {
			f.upRow(f.from.slice(to, j, k), f.to.slice(from, j, k), f.wide.slice(f.weight, j, k))
		})
		return
	}
	f.spread(c, to, from, func(to, from []float32) { copy(to, from) }, mix)
}

// upOn is up that adds to what is there.
func (f *fold) upOn(c Crew, to, from []float32) {
	if f.axis == alongX {
		c.Each(f.from, func(j, k int) {
			f.addRow(f.from.slice(to, j, k), f.to.slice(from, j, k), f.wide.slice(f.weight, j, k))
		})
		return
	}
	f.spread(c, to, from, addAll, addMix)
}

// spread calls one for every row kept, and two for every row gone with the two beside it and its weights.
func (f *fold) spread(c Crew, to, from []float32, one func(to, from []float32), two func(to, a, b, w []float32)) {
	c.Each(f.to, func(j, k int) {
		p, fj, fk := f.plane(j, k)
		row := f.to.slice(from, j, k)
		one(f.from.slice(to, fj, fk), row)
		if g := f.after[p]; g >= 0 {
			oj, ok := f.swap(j, k, f.gone[g])
			wj, wk := f.swap(j, k, g)
			nj, nk := f.swap(j, k, p+1)
			two(f.from.slice(to, oj, ok), row, f.to.slice(from, nj, nk), f.wide.slice(f.weight, wj, wk))
		}
	})
}

// plane returns the place in keep of row j, k of the folded lattice, and that row's j and k in the
// unfolded one.
func (f *fold) plane(j, k int) (p, fj, fk int) {
	if f.axis == alongY {
		return j, f.keep[j], k
	}
	return k, j, f.keep[k]
}

// swap returns j and k with the one along the fold's axis replaced by p.
func (f *fold) swap(j, k, p int) (int, int) {
	if f.axis == alongY {
		return p, k
	}
	return j, p
}

// slice returns row j, k of v.
func (s Shape) slice(v []float32, j, k int) []float32 {
	n := s.row(j, k)
	return v[n : n+s.X]
}

func (f *fold) downRow(to, from, w []float32) {
	for i, p := range f.keep {
		to[i] = from[p]
	}
	for g, p := range f.gone {
		b, v := f.before[g], from[p]
		part := w[g] * v
		to[b] += part
		to[b+1] += v - part
	}
}

func (f *fold) upRow(to, from, w []float32) {
	for i, p := range f.keep {
		to[p] = from[i]
	}
	for g, p := range f.gone {
		b := f.before[g]
		to[p] = from[b+1] + w[g]*(from[b]-from[b+1])
	}
}

func addWeighted(to, from, w []float32) {
	from, w = from[:len(to)], w[:len(to)]
	for i := range to {
		to[i] += w[i] * from[i]
	}
}

func addRest(to, from, w []float32) {
	from, w = from[:len(to)], w[:len(to)]
	for i := range to {
		to[i] += (1 - w[i]) * from[i]
	}
}

func mix(to, a, b, w []float32) {
	a, b, w = a[:len(to)], b[:len(to)], w[:len(to)]
	for i := range to {
		to[i] = b[i] + w[i]*(a[i]-b[i])
	}
}

func addMix(to, a, b, w []float32) {
	a, b, w = a[:len(to)], b[:len(to)], w[:len(to)]
	for i := range to {
		to[i] += b[i] + w[i]*(a[i]-b[i])
	}
}

func addAll(to, from []float32) {
	from = from[:len(to)]
	for i := range to {
		to[i] += from[i]
	}
}

// addRow is upRow that adds.
func (f *fold) addRow(to, from, w []float32) {
	for i, p := range f.keep {
		to[p] += from[i]
	}
	for g, p := range f.gone {
		b := f.before[g]
		to[p] += from[b+1] + w[g]*(from[b]-from[b+1])
	}
}
