package geom

import "slices"

// Squared regions have only straight edges along the axes, as most parts of a building do. Boolean
// operations on them need no arrangement: their coordinates divide the plane into a small lattice of
// cells, each of which is wholly in or out.
//
//	 ___________
//	|   :___:   |      x and y of every corner are the lines of the lattice; each cell
//	|...|   |...|      knows how often the rings of either group run round it, and the
//	|   |___|   |      outline runs between the cells that are wanted and those that are not
//	|___:___:___|
type squared struct {
	xs, ys []float64
	in     []bool // cells, row by row from the bottom
}

// Bounds of the short way: more cells than that are no quicker, and lines nearer than apart may be one.
const (
	manyCells = 1 << 14
	apart     = 100 * Tol
)

// combineSquared is combine for groups of squared regions; ok is false when they are not.
func combineSquared(groups [2][]Region, wanted func(a, b int32) bool) (r Region, ok bool) {
	var xbuf, ybuf [48]float64
	s := squared{xs: xbuf[:0], ys: ybuf[:0]}
	for _, rs := range groups {
		for _, r := range rs {
			for _, p := range r {
				if !s.take(p) {
					return nil, false
				}
			}
		}
	}
	if s.xs, ok = latticeLines(s.xs); !ok {
		return nil, false
	}
	if s.ys, ok = latticeLines(s.ys); !ok {
		return nil, false
	}
	nx, ny := len(s.xs)-1, len(s.ys)-1
	if nx < 1 || ny < 1 {
		return nil, true
	}
	if nx*ny > manyCells {
		return nil, false
	}
	s.fill(groups, wanted)
	return s.rings().inOrder(), true
}

// take notes the coordinates of a ring; false when it is not squared.
func (s *squared) take(p Path) bool {
	for i, v := range p.V {
		w := p.V[0]
		if i+1 < len(p.V) {
			w = p.V[i+1]
		}
		if v.Bulge != 0 || v.X != w.X && v.Y != w.Y {
			return false
		}
		s.xs, s.ys = append(s.xs, v.X), append(s.ys, v.Y)
	}
	return p.finite()
}

// latticeLines sorts coordinates, each once; false when two are so near that they may be meant as one.
func latticeLines(all []float64) ([]float64, bool) {
	slices.Sort(all)
	all = slices.Compact(all)
	for i := 1; i < len(all); i++ {
		if all[i]-all[i-1] < apart {
			return nil, false
		}
	}
	return all, true
}

// fill counts the rings round every cell: right of an edge that runs up there is one ring less.
func (s *squared) fill(groups [2][]Region, wanted func(a, b int32) bool) {
	nx, ny := len(s.xs)-1, len(s.ys)-1
	steps := make([][2]int32, nx*ny)
	for g, rs := range groups {
		for _, r := range rs {
			for _, p := range r {
				for i, v := range p.V {
					w := p.V[(i+1)%len(p.V)]
					if v.X != w.X || v.Y == w.Y {
						continue
					}
					x, _ := slices.BinarySearch(s.xs, v.X)
					lo, _ := slices.BinarySearch(s.ys, min(v.Y, w.Y))
					hi, _ := slices.BinarySearch(s.ys, max(v.Y, w.Y))
					step := int32(1)
					if w.Y > v.Y {
						step = -1
					}
					for y := lo; x < nx && y < hi; y++ {
						steps[y*nx+x][g] += step
					}
				}
			}
		}
	}
	s.in = make([]bool, nx*ny)
	for y := range ny {
		var n [2]int32
		for i := y * nx; i < (y+1)*nx; i++ {
			n[0], n[1] = n[0]+steps[i][0], n[1]+steps[i][1]
			s.in[i] = wanted(n[0], n[1])
		}
	}
}

// at reports whether the cell right of line x and above line y is wanted.
func (s *squared) at(x, y int) bool {
	nx := len(s.xs) - 1
	return x >= 0 && y >= 0 && x < nx && y < len(s.ys)-1 && s.in[y*nx+x]
}

// The ways along the lattice, each a quarter turn left of the one before.
const (
	east = iota
	north
	west
	south
)

// runs reports whether the outline runs from a node in a way: area on the left, none on the right.
func (s *squared) runs(x, y, way int) bool {
	switch way {
	case east:
		return s.at(x, y) && !s.at(x, y-1)
	case north:
		return s.at(x-1, y) && !s.at(x, y)
	case west:
		return s.at(x-1, y-1) && !s.at(x-1, y)
	}
	return s.at(x, y-1) && !s.at(x-1, y-1)
}

// node is a place of the lattice that a ring passes, and the way it leaves.
type node struct{ x, y, way int }

// rings strings the outline into rings: to the left where two touch at a corner, and a ring that comes back
// to a corner is one of its own.
func (s *squared) rings() Region {
	across := len(s.xs)
	used := make([]bool, across*len(s.ys))   // edges that run east from a node
	place := make([]int32, across*len(s.ys)) // one more than where the node stands in the chain
	var chain []node
	var r Region
	for y := range s.ys {
		for x := range s.xs {
			if used[y*across+x] || !s.runs(x, y, east) {
				continue
			}
			chain = append(chain[:0], node{x, y, east})
			place[y*across+x] = 1
			for len(chain) > 0 {
				n := chain[len(chain)-1]
				switch n.way {
				case east:
					used[n.y*across+n.x] = true
					n.x++
				case north:
					n.y++
				case west:
					n.x--
				default:
					n.y--
				}
				here := n.y*across + n.x
				if at := place[here]; at > 0 {
					r = append(r, s.ring(chain[at-1:]))
					for _, m := range chain[at-1:] {
						place[m.y*across+m.x] = 0
					}
					chain = chain[:at-1]
					if len(chain) == 0 {
						break
					}
				}
				n.way = s.turn(n)
				chain = append(chain, n)
				place[here] = int32(len(chain))
			}
		}
	}
	return r
}

// turn returns the way on from a node that was reached in a way: left before straight on before right.
func (s *squared) turn(n node) int {
	for _, t := range [3]int{1, 0, 3} {
		if way := (n.way + t) % 4; s.runs(n.x, n.y, way) {
			return way
		}
	}
	return n.way
}

// ring returns the corners of a chain as a path that starts at the lowest, the leftmost of several.
func (s *squared) ring(chain []node) Path {
	corners, first := 0, -1
	for i, n := range chain {
		if n.way == chain[(i+len(chain)-1)%len(chain)].way {
			continue
		}
		corners++
		if first < 0 || n.y < chain[first].y || n.y == chain[first].y && n.x < chain[first].x {
			first = i
		}
	}
	p := Path{V: make([]Vertex, 0, corners), Closed: true}
	for k := range chain {
		i := (first + k) % len(chain)
		if n := chain[i]; n.way != chain[(i+len(chain)-1)%len(chain)].way {
			p.V = append(p.V, Vertex{Vec: Vec{s.xs[n.x], s.ys[n.y]}})
		}
	}
	return p
}
