package heat

import (
	"slices"

	"standclear/detail/heat/lattice"
)

// model is a grid with its conductances.
type model struct {
	*grid
	crew  lattice.Crew
	sys   *lattice.System
	faces []face
	cells int // that hold material
}

// face is one side of a cell that an environment touches.
type face struct {
	at      int     // place of the cell
	i, j, k int32   // the cell
	axis    int8    // of its normal
	side    int8    // -1 toward lower coordinates, 1 toward higher
	env     int16   // environment
	g       float32 // W/K from the environment to the middle of the cell
	inner   float64 // K/W from the face to the middle of the cell
}

// newModel sets the conductances of g. Between two cells it is that of the two halves in series, which
// is exact for flow square to the face; over a surface the film comes in series too.
func newModel(g *grid, threads int) *model {
	m := &model{grid: g, crew: lattice.Crew{Threads: threads}, sys: lattice.New(g.shape())}
	m.crew.Each(m.sys.Shape, m.join)
	for k := range m.sys.Z {
		for j := range m.sys.Y {
			for i := range m.sys.X {
				if m.l.kind[m.region(i, j, k)] == solid {
					m.cells++
				}
			}
		}
	}
	m.expose()
	return m
}

// half returns the resistance of half a cell of the given region along a, times the area, in m2 K/W
// for widths in mm.
func (m *model) half(a Axis, c, region int) float64 {
	return m.width[a][c] / 2 / 1e3 / m.l.k[m.l.owner[region]][a]
}

// area returns the area of a cell's face square to a, m2.
func (m *model) area(a Axis, i, j, k int) float64 {
	x, y, z := m.width[0][i], m.width[1][j], m.width[2][k]
	return [...]float64{y * z, x * z, x * y}[a] / 1e6
}

// join sets the links of row j, k.
func (m *model) join(j, k int) {
	for i := range m.sys.X {
		n := m.region(i, j, k)
		if m.l.kind[n] != solid {
			continue
		}
		at := m.sys.At(i, j, k)
		if i+1 < m.sys.X {
			m.sys.East[at] = m.link(X, n, i, m.region(i+1, j, k), m.area(X, i, j, k))
		}
		if j+1 < m.sys.Y {
			m.sys.North[at] = m.link(Y, n, j, m.region(i, j+1, k), m.area(Y, i, j, k))
		}
		if k+1 < m.sys.Z {
			m.sys.Up[at] = m.link(Z, n, k, m.region(i, j, k+1), m.area(Z, i, j, k))
		}
	}
}

// link returns the conductance from cell c of region n along a to the next, of region o; W/K.
func (m *model) link(a Axis, n, c, o int, area float64) float32 {
	if m.l.kind[o] != solid {
		return 0
	}
	return float32(area / (m.half(a, c, n) + m.half(a, c+1, o)))
}

// expose finds the faces that environments touch, region by region, and sets the losses.
func (m *model) expose() {
	var cells [3][][]int // of each interval
	for a := range cells {
		cells[a] = make([][]int, m.l.regions(Axis(a)))
		for c, i := range m.in[a] {
			cells[a][i] = append(cells[a][i], c)
		}
	}
	for n, kind := range m.l.kind {
		if kind != solid {
			continue
		}
		nx, ny := m.l.regions(X), m.l.regions(Y)
		within := [3][]int{cells[0][n%nx], cells[1][n/nx%ny], cells[2][n/nx/ny]}
		for _, way := range around {
			if o := m.l.next(n, way.axis, way.step); o >= 0 && m.l.kind[o] == air {
				m.exposeSide(n, m.l.owner[o], way.axis, way.step, within)
			}
		}
	}
}

// exposeSide adds the faces of region n, of the cells given, toward box b of an environment.
func (m *model) exposeSide(n, b int, a Axis, step int, cells [3][]int) {
	last := cells[a][0]
	if step > 0 {
		last = cells[a][len(cells[a])-1]
	}
	cells[a] = []int{last}
	for _, k := range cells[2] {
		for _, j := range cells[1] {
			for _, i := range cells[0] {
				area := m.area(a, i, j, k)
				inner := m.half(a, last, n) / area
				f := face{
					at: m.sys.At(i, j, k), i: int32(i), j: int32(j), k: int32(k), axis: int8(a), side: int8(step),
					env: int16(m.l.env[b]), g: float32(1 / (inner + m.l.rs[b]/area)), inner: inner,
				}
				m.sys.Loss[f.at] += f.g
				m.faces = append(m.faces, f)
			}
		}
	}
}

// places returns the middle of a face and its corners, mm; the middle alone when the face is held at
// the temperature of its environment.
func (m *model) places(f face) []Point {
	var mid, lo, hi Point
	for a, c := range [3]int{int(f.i), int(f.j), int(f.k)} {
		lo[a], hi[a] = m.from[a][c], m.from[a][c+1]
		switch {
		case a >= m.l.c.Dim:
			lo[a], hi[a] = 0, 0
		case a == int(f.axis) && f.side < 0:
			hi[a] = lo[a]
		case a == int(f.axis):
			lo[a] = hi[a]
		}
		mid[a] = (lo[a] + hi[a]) / 2
	}
	out := []Point{mid}
	if f.inner*float64(f.g) > 1-1e-6 {
		return out
	}
	for n := range 8 {
		p := lo
		for a := range p {
			if n>>a&1 == 1 {
				p[a] = hi[a]
			}
		}
		if !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}
