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
	one, two := f.axis.others()
	out := New(f.to)
	r := &reducer{
		fold: f, step: s.stride(f.axis), loss: s.Loss,
		link: s.links(f.axis), across: [2][]float32{s.links(one), s.links(two)},
		aside: [2]int{f.wide.stride(one), f.wide.stride(two)},
	}
	to := reducer{loss: out.Loss, link: out.links(f.axis), across: [2][]float32{out.links(one), out.links(two)}}
	c.Each(f.to, func(j, k int) {
		row := f.to.row(j, k)
		for i := range f.to.X {
			to.link[row+i], to.loss[row+i], to.across[0][row+i], to.across[1][row+i] = r.cell(i, j, k)
		}
	})
	return out
}

// reducer is a fold with the conductances of a system along its axis and across.
type reducer struct {
	*fold
	step       int // along the axis, in the system
	link, loss []float32
	across     [2][]float32
	aside      [2]int // steps across, in the weights
}

// cell returns the conductances of one cell that stays.
func (r *reducer) cell(i, j, k int) (along, loss, one, two float32) {
	n, p := r.fine(i, j, k, r.keep), [...]int{i, j, k}[r.axis]
	along, loss, one, two = r.link[n], r.loss[n], r.across[0][n], r.across[1][n]
	if g := r.after[p]; g >= 0 {
		m, w := n+r.step, r.at(i, j, k, g)
		if a, b := r.link[n], r.link[m]; a+b > 0 {
			along = a * b / (a + b)
		}
		own := r.weight[w]
		loss += own * r.loss[m]
		if t := r.across[0][m]; t > 0 {
			one += (own + r.weight[w+r.aside[0]]) / 2 * t
		}
		if t := r.across[1][m]; t > 0 {
			two += (own + r.weight[w+r.aside[1]]) / 2 * t
		}
	}
	if p > 0 && r.after[p-1] >= 0 {
		m, w := n-r.step, r.at(i, j, k, r.after[p-1])
		own := 1 - r.weight[w]
		loss += own * r.loss[m]
		if t := r.across[0][m]; t > 0 {
			one += (own + 1 - r.weight[w+r.aside[0]]) / 2 * t
		}
		if t := r.across[1][m]; t > 0 {
			two += (own + 1 - r.weight[w+r.aside[1]]) / 2 * t
		}
	}
	return along, loss, one, two
}

// at returns the place in weight of the cell beside i, j, k in gone plane g.
func (f *fold) at(i, j, k, g int) int {
	switch f.axis {
	case alongX:
		i = g
	case alongY:
		j = g
	default:
		k = g
	}
	return f.wide.At(i, j, k)
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
