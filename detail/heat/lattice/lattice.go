// Package lattice solves the balance of heat on a box of cells: each cell is joined to its six
// neighbours by conductances and to the environments by a loss.
//
// The equations are: for every cell c, the sum over neighbours n of link(c,n) (T(c) - T(n)) plus
// loss(c) T(c) equals the heat put into c. They are solved by conjugate gradients in float64, with
// one multigrid cycle in float32 as preconditioner.
//
//	sys := lattice.New(lattice.Shape{X: 2, Y: 1, Z: 1})
//	sys.East[sys.At(0, 0, 0)] = 1                        // W/K between the two cells
//	sys.Loss[sys.At(1, 0, 0)] = 1                        // W/K from the second to 0 degrees
//	solver, _ := lattice.Prepare(ctx, sys, lattice.Options{})
//	heat := make([]float64, sys.Len())
//	heat[sys.At(0, 0, 0)] = 3                            // W into the first
//	t := make([]float64, sys.Len())                      // start; becomes 6 and 3 degrees
//	_, err := solver.Solve(ctx, t, heat, 1e-8)
package lattice

// Shape is the number of cells along x, y and z; each at least 1.
type Shape struct{ X, Y, Z int }

// Cells returns the number of cells.
func (s Shape) Cells() int { return s.X * s.Y * s.Z }

// Len returns the length of a slice that holds one value a cell. Beside the cells it holds one spare
// value before the first row and one after each row, so that every cell has a left and a right.
func (s Shape) Len() int { return 1 + (s.X+1)*s.Y*s.Z }

// At returns the place of cell i, j, k in such a slice.
func (s Shape) At(i, j, k int) int { return 1 + i + (s.X+1)*(j+s.Y*k) }

// row returns the place of the first cell of row j, k.
func (s Shape) row(j, k int) int { return 1 + (s.X+1)*(j+s.Y*k) }

// System is the conductances of a lattice. A cell whose links and loss are all zero takes no part; its
// temperature stays 0. Every other cell must reach a loss over links, or the equations have no
// solution. The spare places stay 0.
//
// Conductances are float32: rounding each by 6e-8 of itself moves no heat flow by more than 6e-8 of
// itself, because the flow grows with every conductance.
type System struct {
	Shape
	East  []float32 // W/K to the next cell along x; 0 at the last
	North []float32 // W/K to the next along y; 0 at the last
	Up    []float32 // W/K to the next along z; 0 at the last
	Loss  []float32 // W/K to the environments
}

// New returns a system of that shape with all conductances 0.
func New(s Shape) *System {
	n := s.Len()
	return &System{s, make([]float32, n), make([]float32, n), make([]float32, n), make([]float32, n)}
}

// links are the conductances around one row: East with the place before the row, the others as long
// as the row. Where there is no neighbour the slice holds zeros.
type links struct {
	east               []float32 // east[i] joins i-1 and i, east[i+1] joins i and i+1
	south, north       []float32
	down, up           []float32
	southAt, northAt   int // places of the rows beyond; the row itself where there is none
	downAt, upAt, here int
}

// around returns the links of row j, k; zeros is a slice of at least X zeros.
func (s *System) around(j, k int, zeros []float32) links {
	n, nx := s.row(j, k), s.X
	plane := (s.X + 1) * s.Y
	l := links{
		east: s.East[n-1 : n+nx], north: s.North[n : n+nx], up: s.Up[n : n+nx],
		south: zeros[:nx], down: zeros[:nx],
		here: n, southAt: n, northAt: n, downAt: n, upAt: n,
	}
	if j > 0 {
		l.southAt = n - nx - 1
		l.south = s.North[l.southAt : l.southAt+nx]
	}
	if k > 0 {
		l.downAt = n - plane
		l.down = s.Up[l.downAt : l.downAt+nx]
	}
	if j < s.Y-1 {
		l.northAt = n + nx + 1
	}
	if k < s.Z-1 {
		l.upAt = n + plane
	}
	return l
}
