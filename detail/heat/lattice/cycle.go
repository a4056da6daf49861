package lattice

import "context"

// cycle is the preconditioner: one V-cycle of multigrid with red-black Gauss-Seidel, which is
// symmetric and positive.
type cycle struct {
	crew   Crew
	levels []*level
	bottom *factor
}

const (
	bottomCells = 400 // at which the equations are solved directly
	strong      = 0.2 // least strength of a plane to be folded; isotropic cells have 1/3 in 3-D
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
		s = l.fold(c, strength)
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
	s := l.sys.Shape
	if f := l.folds[0]; f.axis == alongX {
		c.share(s, func(rs rows) {
			r := make([]float32, s.X)
			for n := rs.first; n < rs.end; n++ {
				j, k := n%s.Y, n/s.Y
				l.left(r, j, k)
				f.downRow(f.to.slice(to(0), j, k), r, f.wide.slice(f.weight, j, k))
			}
		})
	} else {
		c.Each(s, func(j, k int) { l.left(s.slice(l.whole, j, k), j, k) })
		f.down(c, to(0), l.whole)
	}
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
	l.correct(c, l.folds[0], from)
	c.Each(l.sys.Shape, func(j, k int) { l.smooth(j, k, 1) })
}
