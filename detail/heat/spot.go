package heat

// step is a cell with the numbers it is found by.
type step struct {
	c  [3]int // along x, y, z
	at int    // place in the lattice
	in int    // region
}

func (m *model) step(i, j, k int) step {
	return step{[3]int{i, j, k}, m.sys.At(i, j, k), m.region(i, j, k)}
}

// side returns the temperature on a side of a cell that holds material, from the flow over it, with
// environment e at 1 degree and the others at 0. No flow passes over the edge of the domain and into a
// void: there the temperature runs level, as a parabola through the middle and the other side.
func (m *model) side(u []float64, e int, s step, a Axis, dir int) float64 {
	if v, passes := m.passing(u, e, s, a, dir); passes {
		return v
	}
	t := u[s.at]
	if v, passes := m.passing(u, e, s, a, -dir); passes {
		return t - (v-t)/3
	}
	return t
}

// passing is side where heat passes over it.
func (m *model) passing(u []float64, e int, s step, a Axis, dir int) (t float64, passes bool) {
	t = u[s.at]
	n := s.c
	n[a] += dir
	if n[a] < 0 || n[a] >= len(m.width[a]) {
		return t, false
	}
	o := m.step(n[0], n[1], n[2])
	own := m.half(a, s.c[a], s.in)
	switch m.l.kind[o.in] {
	case solid:
		return t + (u[o.at]-t)*own/(own+m.half(a, o.c[a], o.in)), true
	case air:
		b := m.l.owner[o.in]
		return t + (indicator(m.l.env[b], e)-t)*own/(own+m.l.rs[b]), true
	}
	return t, false
}

// point returns the temperature at p. Each cell that p lies in or on gives its own, in a straight line
// from its middle to its sides, and they count by their conductance k/d: where materials meet, the
// conductor decides.
func (m *model) point(u []float64, e int, p Point) float64 {
	var sum, weight float64
	for _, n := range m.l.touching(p) {
		nx, ny := m.l.regions(X), m.l.regions(Y)
		in := [3]int{n % nx, n / nx % ny, n / nx / ny}
		var cells [3][]int
		for a := range cells {
			cells[a] = []int{0}
			if a < m.l.c.Dim {
				cells[a] = m.cell(Axis(a), p[a], in[a])
			}
		}
		for _, k := range cells[2] {
			for _, j := range cells[1] {
				for _, i := range cells[0] {
					t, w := m.within(u, e, m.step(i, j, k), p)
					sum, weight = sum+t*w, weight+w
				}
			}
		}
	}
	return sum / weight
}

// within returns the temperature at p as the cell s has it, and how much that counts.
func (m *model) within(u []float64, e int, s step, p Point) (t, weight float64) {
	t = u[s.at]
	for a := X; int(a) < m.l.c.Dim; a++ {
		c := s.c[a]
		off := 2*(p[a]-m.from[a][c])/m.width[a][c] - 1 // -1 to 1 across the cell
		dir := 1
		if off < 0 {
			dir, off = -1, -off
		}
		t += min(off, 1) * (m.side(u, e, s, a, dir) - u[s.at])
		weight += 1 / m.half(a, c, s.in)
	}
	return min(max(t, 0), 1), weight // the straight line may not pass the environments
}

// spread fills u with the temperatures of the grid before, in straight lines from the middle of its cells to
// their sides: the start of the solver.
func (m *model) spread(u []float64, old *model, was []float64, e int) {
	var parent [3][]int
	var off [3][]float64 // from the middle of the parent to its sides, -1 to 1
	for a := range parent {
		parent[a], off[a] = make([]int, len(m.width[a])), make([]float64, len(m.width[a]))
		o := 0
		for c := range parent[a] {
			mid := m.from[a][c] + m.width[a][c]/2
			for mid > old.from[a][o+1] {
				o++
			}
			parent[a][c], off[a][c] = o, 2*(mid-old.from[a][o])/old.width[a][o]-1
		}
	}
	m.crew.Each(m.sys.Shape, func(j, k int) {
		for i := range m.sys.X {
			s := old.step(parent[0][i], parent[1][j], parent[2][k])
			if m.l.kind[s.in] != solid {
				continue
			}
			t := was[s.at]
			for a, c := range [3]int{i, j, k} {
				dir, by := 1, off[a][c]
				if by < 0 {
					dir, by = -1, -by
				}
				if by > 1e-9 {
					t += by * (old.side(was, e, s, Axis(a), dir) - was[s.at])
				}
			}
			u[m.sys.At(i, j, k)] = t
		}
	})
}
