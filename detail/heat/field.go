package heat

// Field is the temperatures of one plane of cells on the last grid. U and V are the two directions of the
// plane in their order: y and z across x, x and z across y, x and y across z.
type Field struct {
	Cut
	U, V []float64   // where the cells begin, mm; one more for the end
	T    [][]float64 // degrees C in the middle of each cell, T[v][u]
	Full [][]bool    // the cell holds material; T means nothing elsewhere
}

// field reads the plane of cells that a cut passes.
func (m *model) field(fields [][]float64, cut Cut) Field {
	a := cut.Axis
	u, v := X, Z
	switch a {
	case X:
		u = Y
	case Z:
		v = Y
	}
	n := 0
	for n+1 < len(m.width[a]) && m.from[a][n+1] <= cut.At {
		n++
	}
	f := Field{Cut: cut, U: m.from[u], V: m.from[v]}
	envs := m.l.c.Envs
	base := envs[len(envs)-1].T
	for j := range m.width[v] {
		t, full := make([]float64, len(m.width[u])), make([]bool, len(m.width[u]))
		for i := range t {
			var c [3]int
			c[a], c[u], c[v] = n, i, j
			s := m.step(c[0], c[1], c[2])
			t[i], full[i] = base, m.l.kind[s.in] == solid
			for e, w := range fields {
				t[i] += w[s.at] * (envs[e].T - base)
			}
		}
		f.T, f.Full = append(f.T, t), append(f.Full, full)
	}
	return f
}
