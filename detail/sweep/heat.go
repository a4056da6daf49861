package sweep

import (
	"context"
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/check/thermal"
	"standclear/detail/trial"
)

// Heat is what the whole attachment adds, W/K, with its error.
type Heat struct {
	Run, Err float64
	Solved   bool // else interpolated between solved designs
}

// Solver finds the heat of one assembly.
type Solver func(ctx context.Context, a *detail.Assembly) (*thermal.Result, error)

// Warm fills in the heat of rows. Exact solves every design. Otherwise, along the scaled axis of most values,
// the heat of one block is solved at five designs and taken on a straight line between them; its error is
// the greatest miss of the line through the first, the middle and the last of them at the two between, and
// the greatest error of a grid. Designs of the other axes are never mixed. tell says how many of how many
// were solved, and may be nil. When the context ends the rows filled so far keep their heat.
func Warm(ctx context.Context, base trial.Base, axes []Axis, rows []Row, exact bool, solve Solver, tell func(done, of int)) error {
	w := warmer{ctx: ctx, base: base.Parsed(), rows: rows, solve: solve, tell: tell}
	var lines [][]int
	if along := longest(axes); exact || along < 0 {
		for i := range rows {
			lines = append(lines, []int{i})
		}
	} else {
		lines = linesOf(rows, along)
	}
	for _, l := range lines {
		w.of += len(knots(len(l)))
	}
	for _, l := range lines {
		if err := w.line(l, axes, longest(axes)); err != nil {
			return err
		}
	}
	return nil
}

// longest is the scaled axis of most values, -1 when there is none.
func longest(axes []Axis) int {
	best := -1
	for i, a := range axes {
		if a.Scaled && (best < 0 || len(a.Points) > len(axes[best].Points)) {
			best = i
		}
	}
	return best
}

// linesOf groups the rows that could be built by their places on all axes but one, in order.
func linesOf(rows []Row, along int) [][]int {
	var lines [][]int
	at := map[string]int{}
	for i := range rows {
		if rows[i].Problem != "" {
			continue
		}
		key := fmt.Sprint(rows[i].At[:along], rows[i].At[along+1:])
		k, ok := at[key]
		if !ok {
			k = len(lines)
			at[key] = k
			lines = append(lines, nil)
		}
		lines[k] = append(lines[k], i)
	}
	return lines
}

// knots are the places solved of a line of n designs: all of a short one, else the ends, the middle, and one
// between each.
func knots(n int) []int {
	var all []int
	if n <= 5 {
		for i := range n {
			all = append(all, i)
		}
		return all
	}
	for k := range 5 {
		all = append(all, int(math.Round(float64(k*(n-1))/4)))
	}
	return all
}

type warmer struct {
	ctx      context.Context
	base     trial.Base
	rows     []Row
	solve    Solver
	tell     func(done, of int)
	done, of int
}

// knot is a solved design: where it stands on its axis, and the heat of one of its blocks.
type knot struct{ x, chi, err float64 }

// line fills in one line of designs.
func (w *warmer) line(at []int, axes []Axis, along int) error {
	var ks []knot
	for _, n := range knots(len(at)) {
		r := &w.rows[at[n]]
		k, err := w.knot(r)
		if err != nil {
			return err
		}
		if r.Cold != "" {
			continue
		}
		if along >= 0 {
			k.x = axes[along].Points[r.At[along]].At
		}
		ks = append(ks, k)
	}
	if len(at) <= 5 || len(ks) < 5 {
		for _, i := range at {
			if r := &w.rows[i]; r.Heat == nil && r.Cold == "" {
				r.Cold = "a design beside it could not be solved"
			}
		}
		return nil
	}
	off := 0.0
	for _, k := range ks {
		off = max(off, k.err)
	}
	miss := 0.0
	for _, i := range []int{1, 3} {
		miss = max(miss, math.Abs(between(ks[i-1], ks[i+1], ks[i].x)-ks[i].chi))
	}
	for _, i := range at {
		if r := &w.rows[i]; r.Heat == nil {
			n, x := float64(r.Blocks), axes[along].Points[r.At[along]].At
			r.Heat = &Heat{Run: n * onLine(ks, x), Err: n * (miss + off)}
		}
	}
	return nil
}

// knot solves one design.
func (w *warmer) knot(r *Row) (knot, error) {
	if r.Problem != "" {
		r.Cold = "the design could not be built"
		return knot{}, nil
	}
	t, err := w.base.Try(r.Sets...)
	if err != nil {
		return knot{}, err
	}
	res, err := w.solve(w.ctx, t.Assembly)
	if w.ctx.Err() != nil {
		return knot{}, w.ctx.Err()
	}
	if w.done++; w.tell != nil {
		w.tell(w.done, w.of)
	}
	if err != nil {
		r.Cold = err.Error()
		return knot{}, nil
	}
	d := res.Drawn()
	if d.Run.Err < 0 {
		r.Cold = "the error of its grid could not be told"
		return knot{}, nil
	}
	r.Heat = &Heat{d.Run.V, d.Run.Err, true}
	return knot{chi: d.Bay.V, err: max(0, d.Bay.Err)}, nil
}

// onLine returns the heat of a block at x on the line through the knots.
func onLine(ks []knot, x float64) float64 {
	for i := 1; i < len(ks)-1; i++ {
		if (x <= ks[i].x) == (ks[0].x < ks[1].x) {
			return between(ks[i-1], ks[i], x)
		}
	}
	return between(ks[len(ks)-2], ks[len(ks)-1], x)
}

func between(a, b knot, x float64) float64 {
	return a.chi + (b.chi-a.chi)*(x-a.x)/(b.x-a.x)
}
