package lattice

import "context"

// cycle is the preconditioner: one V-cycle of multigrid with red-black Gauss-Seidel, which is
// symmetric and positive.
//
// Each level folds away planes that are strongly joined to their neighbours, the strongest first, until it
// is thinned out enough, and leaves the others: cells thin along an axis are paired along it first, until
// all are about as thick as wide. Measured to a residual of 1e-8:
//
//	planes folded                       wall with bolts     random blocks, ratio 10000,
//	                                    (a million cells)   cells stretched to 100
//	every second one                    36 rounds           not tried
//	all of strength 0.1 and more        23 rounds           45 to 124
//	all of strength 0.2 and more        19 rounds           28 to 77
//	the strongest, 3 times thinner      19 rounds           28 to 106
//	the strongest, 1.7 then 2.2 times   16 rounds           16 to 34
//
// With planes of strength 0.2 and more, a weight on the correction of 1.1 took 20 rounds for the wall, of
// 1.35 29. Shape by shape the last row was slower by a fifth than the second for the wall (each round
// costs more) and faster on the case files with bolts, corners and bars.
type cycle struct {
	crew   Crew
	levels []*level
	bottom *factor
}

const (
	bottomCells  = 400 // at which the equations are solved directly
	strongest    = 0.6 // strength of planes that are folded first; isotropic cells have 1/3 in 3-D
	thinnerFirst = 1.7 // least factor by which the finest level is thinned out
	thinnerNext  = 2.2 // the same of the others, whose work and memory count less
)

func newCycle(ctx context.Context, s *System, c Crew) (*cycle, error) {
	cy := &cycle{crew: c}
	for s != nil {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		l, strength := newLevel(c, s)
		cy.levels = append(cy.levels, l)
		if s.Cells() <= bottomCells {
			break
		}
		thinner := thinnerNext
		if len(cy.levels) == 1 {
			thinner = thinnerFirst
		}
		s = l.fold(c, strength, thinner)
	}
	cy.bottom = newFactor(cy.levels[len(cy.levels)-1])
	return cy, nil
}

// input returns the right side of the finest level. Whoever fills a row of it calls begin for the row.
func (c *cycle) input() []float32 { return c.levels[0].b }

// begin takes in row j, k of the right side.
func (c *cycle) begin(j, k int) { c.levels[0].firstRed(j, k) }

// run returns the answer of one cycle on the finest level, z, and the sum of r z.
func (c *cycle) run(r []float64) (z []float32, rz float64) {
	last := len(c.levels) - 1
	for i := range last {
		l := c.levels[i]
		if i > 0 {
			c.crew.Each(l.sys.Shape, l.firstRed)
		}
		l.descend(c.crew, c.levels[i+1])
	}
	c.bottom.solve(c.levels[last])
	for i := last - 1; i >= 0; i-- {
		l := c.levels[i]
		l.ascend(c.crew, c.levels[i+1])
		if i > 0 {
			c.crew.Each(l.sys.Shape, func(j, k int) { l.smooth(j, k, 0) })
		}
	}
	l := c.levels[0]
	rz = c.crew.sum(l.sys.Shape, func(j, k int) float64 {
		if last > 0 {
			l.smooth(j, k, 0)
		}
		z := l.sys.slice(l.x, j, k)
		r := r[l.sys.row(j, k):][:len(z)]
		var sum float64
		for i, v := range z {
			sum += r[i] * float64(v)
		}
		return sum
	})
	return l.x, rz
}

// descend finishes smoothing from zero, where the red cells are done, and hands the residual down.
func (l *level) descend(c Crew, next *level) {
	c.Each(l.sys.Shape, func(j, k int) { l.smooth(j, k, 1) })
	l.residual(c, next)
}

// residual folds what is left of the right side into the next level's.
func (l *level) residual(c Crew, next *level) {
	to := func(f int) []float32 {
		if f < len(l.mid) {
			return l.mid[f]
		}
		return next.b
	}
	s, f := l.sys.Shape, l.folds[0]
	rowsOf := s
	if f.axis != alongX {
		rowsOf = f.to
	}
	c.share(rowsOf, func(rs rows) {
		r := make([]float32, s.X)
		for n := rs.first; n < rs.end; n++ {
			j, k := n%rowsOf.Y, n/rowsOf.Y
			row := f.to.slice(to(0), j, k)
			if f.axis == alongX {
				l.left(r, j, k)
				f.downRow(row, r, f.wide.slice(f.weight, j, k))
				continue
			}
			f.gather(row, r, j, k, l.left)
		}
	})
	for i, f := range l.folds[1:] {
		f.down(c, to(i+1), l.mid[i])
	}
}

// ascend adds the next level's answer and smooths the black cells. The red ones are left to the caller:
// with them it is the mirror image of descend.
func (l *level) ascend(c Crew, next *level) {
	from := next.x
	for i := len(l.folds) - 1; i > 0; i-- {
		l.folds[i].up(c, l.mid[i-1], from)
		from = l.mid[i-1]
	}
	l.folds[0].upOn(c, l.x, from)
	c.Each(l.sys.Shape, func(j, k int) { l.smooth(j, k, 1) })
}
