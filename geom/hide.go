package geom

import (
	"cmp"
	"math"
	"slices"
)

// faceGrid files faces by the squares of a grid over the drawing that they may cover, in each square the
// foremost first.
type faceGrid struct {
	faces []face
	box   Box
	n     int     // squares each way
	w, h  float64 // of one square
	cells [][]int32
	seen  []int32 // the number of the last wire that was compared with each face
	wire  int32
	found []span // room for the stretches of one wire
}

func newFaceGrid(faces []face) *faceGrid {
	slices.SortStableFunc(faces, func(a, b face) int { return cmp.Compare(b.dmax, a.dmax) })
	g := &faceGrid{faces: faces, box: EmptyBox(), seen: make([]int32, len(faces))}
	for i := range faces {
		g.box = g.box.Union(faces[i].box)
	}
	g.n = min(max(int(math.Sqrt(float64(len(faces)))), 1), 64)
	g.w, g.h = math.Max(g.box.W()/float64(g.n), Tol), math.Max(g.box.H()/float64(g.n), Tol)
	g.cells = make([][]int32, g.n*g.n)
	for i := range faces {
		b := faces[i].box.Grow(Tol)
		for row := g.row(b.Min.Y); row <= g.row(b.Max.Y); row++ {
			lo, hi := g.faceColumns(&faces[i], row)
			for col := lo; col <= hi; col++ {
				g.cells[row*g.n+col] = append(g.cells[row*g.n+col], int32(i))
			}
		}
	}
	return g
}

// col and row return the square at a coordinate; beyond the grid the outermost.
func (g *faceGrid) col(x float64) int { return gridIndex((x-g.box.Min.X)/g.w, g.n) }
func (g *faceGrid) row(y float64) int { return gridIndex((y-g.box.Min.Y)/g.h, g.n) }

func gridIndex(f float64, n int) int {
	return int(math.Max(0, math.Min(float64(n-1), math.Floor(f))))
}

// hidden returns the stretches of a wire that lie behind a face. Those no longer than slack, and gaps as
// short, are passed over.
func (g *faceGrid) hidden(w *wire, slack float64) spans {
	if len(g.faces) == 0 {
		return nil
	}
	g.wire++
	found := g.found[:0]
	box, back := w.box(), math.Min(w.d0, w.d1)
	g.visit(w, box, back, func(f *face) bool {
		if f.dmax <= back+f.slack || !touch(f.box.Grow(Tol), box) {
			return true
		}
		n := len(found)
		found = f.hides(w, found)
		for _, s := range found[n:] {
			if s.lo <= slack && s.hi >= 1-slack {
				found = append(found[:0], span{0, 1})
				return false
			}
		}
		return true
	})
	g.found = found
	return unite(found, slack)
}

// visit calls f for each face filed in a square that the wire passes, and that reaches further forward
// than the depth back, until f returns false.
func (g *faceGrid) visit(w *wire, box Box, back float64, f func(*face) bool) {
	for row := g.row(box.Min.Y); row <= g.row(box.Max.Y); row++ {
		lo, hi := g.columns(w, box, row)
		for col := lo; col <= hi; col++ {
			for _, i := range g.cells[row*g.n+col] {
				if g.faces[i].dmax <= back {
					break
				}
				if g.seen[i] == g.wire {
					continue
				}
				g.seen[i] = g.wire
				if !f(&g.faces[i]) {
					return
				}
			}
		}
	}
}

// band returns the heights between which a row lies, a little widened; the outermost rows have no end.
func (g *faceGrid) band(row int) (lo, hi float64) {
	lo, hi = g.box.Min.Y+float64(row)*g.h-2*Tol, g.box.Min.Y+float64(row+1)*g.h+2*Tol
	if row == 0 {
		lo = math.Inf(-1)
	}
	if row == g.n-1 {
		hi = math.Inf(1)
	}
	return lo, hi
}

// columns returns the first and last square of a row that the wire may pass.
func (g *faceGrid) columns(w *wire, box Box, row int) (first, last int) {
	x := span{box.Min.X, box.Max.X}
	if w.turn == 0 {
		lo, hi := g.band(row)
		x = sideIn(w.a, w.b, lo, hi)
	}
	if x.lo > x.hi {
		return 0, -1
	}
	return g.col(x.lo - 2*Tol), g.col(x.hi + 2*Tol)
}

// faceColumns returns the first and last square of a row that the face may cover; none when first is
// greater.
func (g *faceGrid) faceColumns(f *face, row int) (first, last int) {
	x := span{f.box.Min.X, f.box.Max.X}
	if f.poly != nil {
		lo, hi := g.band(row)
		x = span{math.Inf(1), math.Inf(-1)}
		for i, p := range f.poly {
			s := sideIn(p, f.poly[(i+1)%len(f.poly)], lo, hi)
			x.lo, x.hi = math.Min(x.lo, s.lo), math.Max(x.hi, s.hi)
		}
		if x.lo > x.hi {
			return 0, -1
		}
	}
	return g.col(x.lo - 2*Tol), g.col(x.hi + 2*Tol)
}

// sideIn returns from where to where the line from p to q reaches sideways between two heights; lo is
// greater than hi when it does not come between them.
func sideIn(p, q Vec, lo, hi float64) span {
	if p.Y > q.Y {
		p, q = q, p
	}
	if q.Y < lo || p.Y > hi {
		return span{math.Inf(1), math.Inf(-1)}
	}
	a, b := p.X, q.X
	if slope := (q.X - p.X) / (q.Y - p.Y); q.Y-p.Y > Tol {
		if p.Y < lo {
			a = p.X + (lo-p.Y)*slope
		}
		if q.Y > hi {
			b = q.X + (hi-q.Y)*slope
		}
	}
	return span{math.Min(a, b), math.Max(a, b)}
}

// piecesWhere returns the stretches between neighbouring values of ts whose middles satisfy in.
func piecesWhere(ts []float64, in func(float64) bool) spans {
	slices.Sort(ts)
	var out []span
	for i := 1; i < len(ts); i++ {
		if ts[i] > ts[i-1] && in((ts[i-1]+ts[i])/2) {
			out = append(out, span{ts[i-1], ts[i]})
		}
	}
	return unite(out, 0)
}
