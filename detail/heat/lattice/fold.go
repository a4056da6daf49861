package lattice

// axis is a direction of the lattice.
type axis int

const (
	alongX axis = iota
	alongY
	alongZ
)

// fold takes planes out of a lattice along one axis. A plane taken out lies between two that stay;
// each of its cells takes its temperature from the two, by the conductances to them:
//
//	   kept      gone      kept
//	---[n]---a---[m]---b---[o]---      weight of n in m: a/(a+b), of o: b/(a+b)
//
// which is exact for one row of cells without links across. The links across from m are shared out
// to n and o by the same weights.
type fold struct {
	axis     axis
	from, to Shape
	keep     []int     // planes that stay
	gone     []int     // planes taken out
	before   []int     // place in keep of the plane before each one gone
	after    []int     // for each kept plane, place in gone of the plane after it, or -1
	wide     Shape     // of weight
	weight   []float32 // of the kept cell before, for each cell gone
}

// newFold takes out the planes for which gone is true; the first and last must stay, and no two
// gone are neighbours.
func newFold(a axis, from Shape, gone []bool) *fold {
	f := &fold{axis: a, from: from}
	for p, out := range gone {
		if out {
			f.before = append(f.before, len(f.keep)-1)
			f.gone = append(f.gone, p)
			continue
		}
		f.keep = append(f.keep, p)
	}
	f.after = make([]int, len(f.keep))
	for i := range f.after {
		f.after[i] = -1
	}
	for g, b := range f.before {
		f.after[b] = g
	}
	f.to, f.wide = from, from
	*f.to.size(a), *f.wide.size(a) = len(f.keep), len(f.gone)
	f.weight = make([]float32, f.wide.Len())
	return f
}

func (s *Shape) size(a axis) *int { return [...]*int{&s.X, &s.Y, &s.Z}[a] }

// stride returns the distance between neighbours along a in a slice of one value a cell.
func (s Shape) stride(a axis) int {
	return [...]int{1, s.X + 1, (s.X + 1) * s.Y}[a]
}

// links returns the conductances of s along a.
func (s *System) links(a axis) []float32 { return [...][]float32{s.East, s.North, s.Up}[a] }

// weigh fills in the weights.
func (f *fold) weigh(c Crew, s *System) {
	link, step := s.links(f.axis), s.stride(f.axis)
	c.Each(f.wide, func(j, k int) {
		w := f.weight[f.wide.row(j, k):][:f.wide.X]
		for i := range w {
			n := f.fine(i, j, k, f.gone)
			if a, b := link[n-step], link[n]; a+b > 0 {
				w[i] = a / (a + b)
			}
		}
	})
}

// fine returns the place in the unfolded lattice of cell i, j, k of a lattice that has only planes.
func (f *fold) fine(i, j, k int, planes []int) int {
	switch f.axis {
	case alongX:
		i = planes[i]
	case alongY:
		j = planes[j]
	default:
		k = planes[k]
	}
	return f.from.At(i, j, k)
}

// reduce returns the system of the planes that stay.
func (f *fold) reduce(c Crew, s *System) *System {
	out := New(f.to)
	c.Each(f.to, func(j, k int) {
		for i := range f.to.X {
			f.reduceCell(s, out, i, j, k)
		}
	})
	return out
}

// reduceCell fills in one cell of the system of the planes that stay.
func (f *fold) reduceCell(s, out *System, i, j, k int) {
	one, two := f.axis.others()
	link, t1, t2 := s.links(f.axis), s.links(one), s.links(two)
	n, p := f.fine(i, j, k, f.keep), [...]int{i, j, k}[f.axis]
	along, loss, a1, a2 := link[n], s.Loss[n], t1[n], t2[n]
	share := func(m, g int, after bool) {
		at := [...]int{i, j, k}
		at[f.axis] = g
		w := f.wide.At(at[0], at[1], at[2])
		of := func(n int) float32 {
			if after {
				return f.weight[n]
			}
			return 1 - f.weight[n]
		}
		own := of(w)
		loss += own * s.Loss[m]
		if t1[m] > 0 {
			a1 += (own + of(w+f.wide.stride(one))) / 2 * t1[m]
		}
		if t2[m] > 0 {
			a2 += (own + of(w+f.wide.stride(two))) / 2 * t2[m]
		}
	}
	step := s.stride(f.axis)
	if g := f.after[p]; g >= 0 {
		share(n+step, g, true)
		if a, b := link[n], link[n+step]; a+b > 0 {
			along = a * b / (a + b)
		}
	}
	if p > 0 && f.after[p-1] >= 0 {
		share(n-step, f.after[p-1], false)
	}
	to := f.to.At(i, j, k)
	out.links(f.axis)[to], out.Loss[to], out.links(one)[to], out.links(two)[to] = along, loss, a1, a2
}

func (a axis) others() (axis, axis) {
	switch a {
	case alongX:
		return alongY, alongZ
	case alongY:
		return alongX, alongZ
	}
	return alongX, alongY
}
