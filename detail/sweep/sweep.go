// Package sweep tries a project over values of some of its parameters.
//
//	axis, err := sweep.Parse("blocks.max_spacing=24in..96in/4in", unit.IP)
//	rows, err := sweep.Run(ctx, base, []sweep.Axis{axis}, sweep.Options{})
//
// Rows come in a fixed order, the last axis fastest, whatever the number of threads.
package sweep

import (
	"cmp"
	"context"
	"errors"
	"runtime"
	"slices"
	"strings"
	"sync"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/trial"
)

// Row is one design.
type Row struct {
	At      []int    // place on each axis
	Values  []string // of each axis, as printed
	Sets    []string // KEY=VALUE
	Problem string   // why it could not be read or built, "" when it could

	Blocks, Fasteners int
	Spacing           float64    // greatest distance of blocks, mm
	Ratio             float64    // of the check that governs, over the largest that is still good
	Governs           check.Step // the failing check furthest beyond its limit, else the one of strength nearest to it; no ID when there is none
	Verdict           check.Verdict
	Fails, Engineer   int // how many checks say so, heat apart
	NotChecked        int
	Failing           []string // names of the checks that fail, the furthest beyond its limit first
	Heat              *Heat    // nil when it was not asked for or could not be found
	Cold              string   // why it could not be found
}

// Feasible reports whether nothing fails and everything but heat could be checked.
func (r *Row) Feasible() bool { return r.Problem == "" && r.Fails == 0 && r.NotChecked == 0 }

// Options of Run; the zero value works.
type Options struct {
	Threads  int                // 0: as many as the machine has
	Emit     func(r *Row) error // called for each row in order as soon as all before it are there; an error ends the run
	Progress func(done, of int) // called from one goroutine at a time
	Look     func(r *Row, t *trial.Trial)
}

// Run tries every design. When the context ends before all are tried, the rows that were are returned, in
// order, with its error.
func Run(ctx context.Context, base trial.Base, axes []Axis, o Options) ([]Row, error) {
	n, err := Designs(axes)
	if err != nil {
		return nil, err
	}
	base = base.Parsed()
	threads := o.Threads
	if threads <= 0 {
		threads = runtime.GOMAXPROCS(0)
	}
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	c := collector{rows: make([]Row, n), done: make([]bool, n), inRow: max(1, min(8, n/threads/4)), o: o, stop: cancel}
	var wait sync.WaitGroup
	for range min(threads, n) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for from, to := c.take(); from < to; from, to = c.take() {
				for i := from; i < to && ctx.Err() == nil; i++ {
					c.put(i, design(base, axes, i, o.Look))
				}
			}
		}()
	}
	wait.Wait()
	rows := c.rest()
	if err := errors.Join(c.err, context.Cause(ctx)); err != nil && (c.err != nil || len(rows) < n) {
		return rows, err
	}
	return rows, nil
}

// collector hands out designs and takes in rows.
type collector struct {
	mu            sync.Mutex
	rows          []Row
	done          []bool
	next, emitted int
	inRow         int // how many are handed out at once
	count         int
	o             Options
	err           error
	stop          func()
}

// take hands out the next designs, some in a row: neighbours have most in common, and one after the other can use
// what the one before left.
func (c *collector) take() (from, to int) {
	c.mu.Lock()
	defer c.mu.Unlock()
	from = c.next
	c.next = min(from+c.inRow, len(c.rows))
	return from, c.next
}

func (c *collector) put(i int, r Row) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.rows[i], c.done[i] = r, true
	c.count++
	for ; c.emitted < len(c.rows) && c.done[c.emitted]; c.emitted++ {
		c.emit(c.emitted)
	}
	if c.o.Progress != nil {
		c.o.Progress(c.count, len(c.rows))
	}
}

func (c *collector) emit(i int) {
	if c.o.Emit == nil || c.err != nil {
		return
	}
	if c.err = c.o.Emit(&c.rows[i]); c.err != nil {
		c.stop()
	}
}

// rest emits what was tried after a design that was not, and returns all that were tried.
func (c *collector) rest() []Row {
	out := c.rows[:0]
	for i := range c.rows {
		if !c.done[i] {
			continue
		}
		if i >= c.emitted {
			c.emit(i)
		}
		out = append(out, c.rows[i])
	}
	return out
}

// place returns where design i stands on each axis.
func place(axes []Axis, i int) []int {
	at := make([]int, len(axes))
	for k := len(axes) - 1; k >= 0; k-- {
		at[k] = i % len(axes[k].Points)
		i /= len(axes[k].Points)
	}
	return at
}

// design tries design i.
func design(base trial.Base, axes []Axis, i int, look func(*Row, *trial.Trial)) Row {
	r := Row{At: place(axes, i)}
	for k, a := range axes {
		p := a.Points[r.At[k]]
		r.Values = append(r.Values, p.Text)
		r.Sets = append(r.Sets, p.Sets...)
	}
	t, err := base.Try(r.Sets...)
	if err != nil {
		r.Problem, r.Verdict = problem(err), check.Fails
		return r
	}
	r.Fill(t)
	if look != nil {
		look(&r, t)
	}
	return r
}

// problem puts what keeps a design from being read or built in one line.
func problem(err error) string {
	var all spec.Problems
	if errors.As(err, &all) {
		all = slices.DeleteFunc(slices.Clone(all), func(p spec.Problem) bool { return p.Warning })
		if len(all) > 0 {
			return all[0].Error()
		}
	}
	return strings.Join(strings.Fields(err.Error()), " ")
}

// Fill takes in what a trial came to.
func (r *Row) Fill(t *trial.Trial) {
	r.Blocks, r.Fasteners = len(t.Assembly.Blocks), t.Assembly.Count(detail.Bolt)
	for _, d := range t.Assembly.Layout.Spaces() {
		r.Spacing = max(r.Spacing, d)
	}
	r.Verdict = t.Report.Worst()
	r.Fails, r.Engineer, r.NotChecked = t.Report.Count(check.Fails), t.Report.Count(check.Engineer), t.Report.Count(check.NotChecked)
	failing := failures(t.Report.Steps)
	for _, s := range failing {
		r.Failing = append(r.Failing, s.Name)
	}
	if s := t.Report.Governs(); s != nil {
		r.Governs, r.Ratio = *s, s.Used()
	}
}

// failures lists the steps that fail, the furthest beyond its limit first, facts without a ratio last.
func failures(steps []check.Step) []*check.Step {
	var out []*check.Step
	for i := range steps {
		if steps[i].Verdict == check.Fails {
			out = append(out, &steps[i])
		}
	}
	slices.SortStableFunc(out, func(a, b *check.Step) int { return cmp.Compare(b.Used(), a.Used()) })
	return out
}
