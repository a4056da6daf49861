package heat

import (
	"context"
	"fmt"
	"math"

	"standclear/detail/heat/lattice"
)

// Options of Solve; the zero value works.
type Options struct {
	Threads  int            // 0: as many as the program may use; the result does not depend on it
	Error    float64        // of each flow, and of the span of temperatures in each of them, that the grid may leave; 0: 0.01
	MaxCells int            // of the finest grid, with those of air; 0: 12 million
	Limit    bool           // give the values that ever finer grids run to, with less error, not those of the last grid
	Coarse   float64        // how much wider the cells of the first grid may be at a face, for a case of many faces; 0: 1
	Temps    float64        // as Error, for the temperatures of probes and surfaces; 0: as Error, less than 0: whatever comes
	Progress func(Progress) // called after each round of the solver, when not nil
}

// Progress is how far Solve has come.
type Progress struct {
	Grid     int     // from 0; each has twice the subdivisions of the one before
	Cells    int     // of that grid that hold material
	Env      int     // environment whose influence is being found
	Round    int     // of the solver
	Residual float64 // over the right side
}

func (o Options) filled() Options {
	if o.Error <= 0 {
		o.Error = 0.01
	}
	if o.Temps == 0 {
		o.Temps = o.Error
	}
	if o.Coarse <= 0 {
		o.Coarse = 1
	}
	if o.MaxCells <= 0 {
		o.MaxCells = 12e6
	}
	return o
}

// closeBalance is how much of the heat through the assembly may be missing in any run.
const closeBalance = 1e-6

// fewestGrids is how many grids every answer rests on.
const fewestGrids = 3

// parts yields into how many parts each grid divides the cells of the first: 1, 2, 3, 4, 6, 8, 12, 16 and on.
// Doubling alone would overshoot: the last grid costs as much as all before it, several times over.
func parts(yield func(int) bool) {
	if !yield(1) {
		return
	}
	for n := 2; yield(n) && yield(n+n/2); n *= 2 {
	}
}

// Solve finds flows, coupling coefficients and temperatures of c, on ever finer grids until
// the errors asked for are met or the next grid would have more than MaxCells; Met of the Result tells
// which. What is wrong with the case comes back as Faults, a cancelled ctx as its error.
func Solve(ctx context.Context, c Case, opt Options) (*Result, error) {
	opt = opt.filled()
	if fs := c.valid(); len(fs) > 0 {
		return nil, fs
	}
	l, err := newLayout(&c, opt.MaxCells)
	if err != nil {
		return nil, err
	}
	t := &trial{c: &c, l: l, opt: opt, endless: l.endless()}
	first := firstGrid(l, opt.Coarse)
	if n := first.shape().Cells(); n > opt.MaxCells {
		return nil, Faults{{Part: InCase, Given: fmt.Sprintf("its coarsest grid has %d cells", n), Allowed: fmt.Sprintf("at most %d are allowed here", opt.MaxCells), Do: "allow more, line faces up, or leave out small parts"}}
	}
	for n := range parts {
		g := first.divided(n)
		if g.shape().Cells() > opt.MaxCells {
			break
		}
		if err := t.solve(ctx, g, n); err != nil {
			return nil, err
		}
		if len(t.samples) >= fewestGrids && t.met() {
			break
		}
	}
	return t.result(), nil
}

// trial is the solving of one case on its grids.
type trial struct {
	c       *Case
	l       *layout
	opt     Options
	endless [][]bool

	last    *model
	fields  [][]float64 // on the last grid: temperature where one environment is at 1 degree, the rest at 0
	samples []sample
	grids   []Grid
}

// solve adds the sample of one grid. Each environment but the last is put at 1 degree in turn, the others
// at 0; the influence of the last is the rest.
func (t *trial) solve(ctx context.Context, g *grid, parts int) error {
	m := newModel(g, t.opt.Threads)
	info := Grid{Shape: m.sys.Shape, Cells: m.cells, Parts: parts}
	var unit int
	opt := lattice.Options{Threads: t.opt.Threads}
	if t.opt.Progress != nil {
		opt.Progress = func(round int, residual float64) {
			t.opt.Progress(Progress{len(t.samples), m.cells, unit, round, residual})
		}
	}
	solver, err := lattice.Prepare(ctx, m.sys, opt)
	if err != nil {
		return err
	}
	var fields [][]float64
	for e := range len(t.c.Envs) - 1 {
		unit = e
		u := make([]float64, m.sys.Len())
		if t.last != nil {
			m.spread(u, t.last, t.fields[e], e)
			t.fields[e] = nil
		}
		if err := m.run(ctx, solver, u, e, &info); err != nil {
			return err
		}
		fields = append(fields, u)
	}
	t.last, t.fields = m, fields
	now := m.sample(fields)
	info.Flow = now.flow
	t.grids, t.samples = append(t.grids, info), append(t.samples, now)
	return nil
}

// run solves for environment e at 1 degree, to the closeness that the balance of heat needs.
func (m *model) run(ctx context.Context, s *lattice.Solver, u []float64, e int, info *Grid) error {
	heat := make([]float64, m.sys.Len())
	for _, f := range m.faces {
		if int(f.env) == e {
			heat[f.at] += float64(f.g)
		}
	}
	for tolerance := 1e-6; ; tolerance /= 10 {
		run, err := s.Solve(ctx, u, heat, tolerance)
		info.Rounds += run.Rounds
		off := m.balance(u, e)
		if err != nil && ctx.Err() == nil {
			err = fmt.Errorf("heat: %d cells, environment %q, %.0e of the heat missing: %w", m.cells, m.l.c.Envs[e].Name, off, err)
		}
		if err != nil || off <= closeBalance {
			info.Residual = max(info.Residual, run.Residual)
			info.Balance = max(info.Balance, off)
			return err
		}
	}
}

// balance returns the heat that comes in and does not go out, over the heat that comes in; 0 when none
// passes but the rounding of what the surfaces could pass.
func (m *model) balance(u []float64, e int) float64 {
	var in, net, could float64
	for _, q := range m.flows(u, e) {
		net += q
		in += math.Abs(q) / 2
	}
	for _, f := range m.faces {
		if int(f.env) == e {
			could += float64(f.g)
		}
	}
	if in < 1e-13*could {
		return 0
	}
	return math.Abs(net) / in
}

// flows returns the heat into the assembly from each environment, W, with environment e at 1 degree.
func (m *model) flows(u []float64, e int) []float64 {
	q := make([]float64, len(m.l.c.Envs))
	for _, f := range m.faces {
		q[f.env] += float64(f.g) * (indicator(int(f.env), e) - u[f.at])
	}
	return q
}

func indicator(env, e int) float64 {
	if env == e {
		return 1
	}
	return 0
}
