package heat

// edge is a line between planes along which faces meet: its axis and the numbers of the planes and of
// the interval it lies in.
type edge struct {
	along Axis
	at    [3]int
}

// endless finds the pairs of environments held at the very surface (Rs 0) that meet along an edge: the
// flow between them grows without end as the grid is refined.
func (l *layout) endless() [][]bool {
	pairs := make([][]bool, len(l.c.Envs))
	for e := range pairs {
		pairs[e] = make([]bool, len(l.c.Envs))
	}
	held := map[edge][]int{} // environments that hold a face at each edge
	for n, k := range l.kind {
		for _, way := range around {
			o := l.next(n, way.axis, way.step)
			if k != solid || o < 0 || l.kind[o] != air || l.rs[l.owner[o]] > 0 {
				continue
			}
			env := l.env[l.owner[o]]
			for _, ed := range l.edges(n, way.axis, way.step) {
				for _, f := range held[ed] {
					if f != env {
						pairs[env][f], pairs[f][env] = true, true
					}
				}
				held[ed] = append(held[ed], env)
			}
		}
	}
	return pairs
}

// edges returns the edges of the face of region n on one side along a; in two dimensions those along z.
func (l *layout) edges(n int, a Axis, side int) []edge {
	nx, ny := l.regions(X), l.regions(Y)
	at := [3]int{n % nx, n / nx % ny, n / nx / ny}
	at[a] += max(side, 0)
	var out []edge
	for along := X; along <= Z; along++ {
		if along == a || l.c.Dim == 2 && along != Z {
			continue
		}
		near, far := edge{along, at}, edge{along, at}
		far.at[X+Y+Z-along-a]++
		out = append(out, near, far)
	}
	return out
}
