package lattice

import (
	"context"
	"errors"
	"fmt"
	"math"
)

// Options of the solver; the zero value works.
type Options struct {
	Threads   int                               // 0: as many as the program may use; the result does not depend on it
	MaxRounds int                               // 0: 2000
	Progress  func(round int, residual float64) // called after each round, when not nil
}

func (o Options) filled() Options {
	if o.MaxRounds <= 0 {
		o.MaxRounds = 2000
	}
	return o
}

// Run is how a solution came about.
type Run struct {
	Rounds   int     // of conjugate gradients
	Residual float64 // true residual over right side, in the Euclidean norm
}

// ErrStalled is returned, wrapped, when the rounds allowed did not reach the tolerance.
var ErrStalled = errors.New("the solver did not reach its tolerance")

// Solver holds a system with all that is made once for it. It serves one Solve at a time.
type Solver struct {
	sys   *System
	opt   Options
	crew  Crew
	cycle *cycle
	zeros []float32

	r, p, q []float64
}

// Prepare builds the multigrid of sys, which must not change afterwards.
func Prepare(ctx context.Context, sys *System, opt Options) (*Solver, error) {
	s := &Solver{sys: sys, opt: opt.filled(), crew: Crew{opt.Threads}, zeros: make([]float32, sys.X)}
	var err error
	if s.cycle, err = newCycle(ctx, sys, s.crew); err != nil {
		return nil, err
	}
	n := sys.Len()
	s.r, s.p, s.q = make([]float64, n), make([]float64, n), make([]float64, n)
	return s, nil
}

// Solve finds t, in degrees above the environments, from the heat put into each cell, W. The t given is
// the start. It stops when the residual is tolerance times the right side. Cancelling ctx ends it between rounds with the context's error.
func (s *Solver) Solve(ctx context.Context, t, heat []float64, tolerance float64) (Run, error) {
	size := math.Sqrt(s.dot(heat, heat))
	if size == 0 {
		clear(t)
		return Run{}, nil
	}
	var run Run
	for {
		run.Residual = s.residual(t, heat) / size
		switch {
		case run.Residual <= tolerance:
			return run, nil
		case run.Rounds >= s.opt.MaxRounds || math.IsNaN(run.Residual):
			return run, fmt.Errorf("%w: residual %.1e after %d rounds", ErrStalled, run.Residual, run.Rounds)
		}
		if err := s.descend(ctx, t, size, tolerance, &run); err != nil {
			return run, err
		}
	}
}

// descend runs conjugate gradients from the residual in s.r until its own count of the residual meets
// the tolerance; the caller checks against the true one.
func (s *Solver) descend(ctx context.Context, t []float64, size, tolerance float64, run *Run) error {
	var rz float64
	for first := true; run.Rounds < s.opt.MaxRounds; first = false {
		if err := ctx.Err(); err != nil {
			return err
		}
		z, rzNew := s.cycle.run(s.r)
		beta := 0.0
		if !first {
			beta = rzNew / rz
		}
		rz = rzNew
		pq := s.direction(z, beta)
		res := math.Sqrt(s.step(t, rz/pq)) / size
		run.Rounds++
		if s.opt.Progress != nil {
			s.opt.Progress(run.Rounds, res)
		}
		if !(res > 0.95*tolerance) {
			return nil
		}
	}
	return nil
}

// residual puts heat less what flows off at t into s.r, hands it to the cycle, and returns its norm.
func (s *Solver) residual(t, heat []float64) float64 {
	s.apply(s.q, t)
	out := s.cycle.input()
	return math.Sqrt(s.crew.sum(s.sys.Shape, func(j, k int) float64 {
		n := s.sys.row(j, k)
		r := s.r[n : n+s.sys.X]
		q, b, f := s.q[n:][:len(r)], heat[n:][:len(r)], out[n:][:len(r)]
		var sum float64
		for i := range r {
			v := b[i] - q[i]
			r[i] = v
			f[i] = float32(v)
			sum += v * v
		}
		s.cycle.begin(j, k)
		return sum
	}))
}

// apply puts what flows off each cell at temperatures t into q, and returns the sum of t q.
func (s *Solver) apply(q, t []float64) float64 {
	return s.crew.sum(s.sys.Shape, func(j, k int) float64 {
		l := s.sys.around(j, k, s.zeros)
		return l.flow(q, t, s.sys.Loss)
	})
}

// flow computes one row of apply.
func (l *links) flow(q, t []float64, loss []float32) float64 {
	n := len(l.north)
	out, next := q[l.here:][:n], t[l.here+1:][:n]
	south, north := t[l.southAt:][:len(out)], t[l.northAt:][:len(out)]
	down, up := t[l.downAt:][:len(out)], t[l.upAt:][:len(out)]
	cs, cn, cd, cu := l.south[:len(out)], l.north[:len(out)], l.down[:len(out)], l.up[:len(out)]
	g, ce := loss[l.here:][:len(out)], l.east[1:][:len(out)]
	next = next[:len(out)]
	var sum, west float64
	v := t[l.here]
	for i := range out {
		w := next[i]
		e := float64(ce[i]) * (v - w)
		f := float64(cs[i])*(v-south[i]) + float64(cn[i])*(v-north[i]) +
			float64(cd[i])*(v-down[i]) + float64(cu[i])*(v-up[i]) +
			float64(g[i])*v + e - west
		out[i] = f
		sum += v * f
		west, v = e, w
	}
	return sum
}

// direction sets p = z + beta p and q to what flows off p; it returns the sum of p q.
func (s *Solver) direction(z []float32, beta float64) float64 {
	s.crew.Each(s.sys.Shape, func(j, k int) {
		n := s.sys.row(j, k)
		p := s.p[n : n+s.sys.X]
		z := z[n:][:len(p)]
		for i := range p {
			p[i] = float64(z[i]) + beta*p[i]
		}
	})
	return s.apply(s.q, s.p)
}

// step goes by alpha along p, and returns the square of the new residual, which the cycle gets too.
func (s *Solver) step(t []float64, alpha float64) float64 {
	out := s.cycle.input()
	return s.crew.sum(s.sys.Shape, func(j, k int) float64 {
		n := s.sys.row(j, k)
		r := s.r[n : n+s.sys.X]
		q, p, t, f := s.q[n:][:len(r)], s.p[n:][:len(r)], t[n:][:len(r)], out[n:][:len(r)]
		var sum float64
		for i := range r {
			t[i] += alpha * p[i]
			v := r[i] - alpha*q[i]
			r[i] = v
			f[i] = float32(v)
			sum += v * v
		}
		s.cycle.begin(j, k)
		return sum
	})
}

func (s *Solver) dot(a, b []float64) float64 {
	return s.crew.sum(s.sys.Shape, func(j, k int) float64 {
		n := s.sys.row(j, k)
		x := a[n : n+s.sys.X]
		y := b[n:][:len(x)]
		var sum float64
		for i, v := range x {
			sum += v * y[i]
		}
		return sum
	})
}
