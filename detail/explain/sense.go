package explain

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/spec"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// share is how far a number is moved; counts move by one, temperatures by 1 K, bolts to the next size.
const share = 0.05

// Sweep is a design tried with one number at a time a little less and a little more.
type Sweep struct {
	rows []swept
	held bool // the blocks stayed where they stand
}

type swept struct {
	near       spec.Near
	less, more tried
}

// tried is the outcome of one change.
type tried struct {
	typed  spec.Typed
	report *check.Report // nil when it was not tried or cannot be built
	why    string        // it cannot
}

// Sweep tries every number that can bear on a check. What moves climate alone is judged with the heat there is; what
// moves the wall needs a heat solve of its own and is left out for checks of heat and moisture. tell is told how far it
// is, by several goroutines, and may be nil. With keys, those numbers alone are tried. It stops early when ctx ends.
func (j *Job) Sweep(ctx context.Context, id string, tell func(step, of int), keys ...string) *Sweep {
	s := j.Report.Find(id)
	if s == nil {
		return nil
	}
	sw := &Sweep{}
	hold := j.hold(s)
	sw.held = hold != nil
	if sw.held && len(keys) == 0 {
		sw.rows = append(sw.rows, j.spread())
	}
	for _, n := range j.Assembly.Spec.Nears(share) {
		if slices.Contains(keys, n.Key) || len(keys) == 0 && bears(n.Key, s.Group) {
			sw.rows = append(sw.rows, swept{near: n, less: tried{typed: n.Less}, more: tried{typed: n.More}})
		}
	}
	var wait sync.WaitGroup
	var next, done atomic.Int64
	for range runtime.GOMAXPROCS(0) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for {
				i := int(next.Add(1)) - 1
				if i >= len(sw.rows) || ctx.Err() != nil {
					return
				}
				r := &sw.rows[i]
				r.bolts(j.Assembly.Spec)
				j.try(&r.more, hold, s.Group)
				if r.more.report == nil || differs(s, r.more.report.Find(id)) {
					j.try(&r.less, hold, s.Group)
				}
				if n := done.Add(1); tell != nil {
					tell(int(n), len(sw.rows))
				}
			}
		}()
	}
	wait.Wait()
	return sw
}

// hold is the change that keeps the blocks where they stand, so that a number shows what it does itself and not where
// the search for places then jumps to. It is nil where the check does not come out alike with it.
func (j *Job) hold(s *check.Step) []string {
	if len(j.Assembly.Blocks) == 0 || s.Group == check.Heat || s.Group == check.Moisture {
		return nil
	}
	sets := []string{j.axes(1)}
	r, err := j.report(sets, s.Group)
	if err != nil {
		return nil
	}
	if now := r.Find(s.ID); now == nil || differs(s, now) {
		return nil
	}
	return sets
}

// axes are the places of the blocks, drawn apart from the middle of the ledger.
func (j *Job) axes(by float64) string {
	mid := j.Assembly.Spec.Ledger.Length.MM() / 2
	var at []string
	for _, b := range j.Assembly.Blocks {
		at = append(at, fmt.Sprintf("%.9gmm", mid+(b.X-mid)*by))
	}
	return "blocks.positions=[" + strings.Join(at, ", ") + "]"
}

// spread moves the blocks nearer to each other and farther apart, all by one share.
func (j *Job) spread() swept {
	greatest := 0.0
	for i, b := range j.Assembly.Blocks[1:] {
		greatest = max(greatest, b.X-j.Assembly.Blocks[i].X)
	}
	typed := func(by float64) tried {
		return tried{typed: spec.Typed{Number: greatest * by, Value: unit.Length(greatest * by).Q().Text(j.sys()), Sets: [][]string{{j.axes(by)}}}}
	}
	return swept{near: spec.Near{Entry: spec.Entry{Key: spaces, Value: unit.Length(greatest).Q().Text(j.sys())}, Number: greatest}, less: typed(1 - share), more: typed(1 + share)}
}

// spaces stands for the distances between blocks, which the project file has only where it gives their places.
const spaces = "all spaces of the blocks"

// Numbers lists the keys of the project that hold a number which can be moved.
func (j *Job) Numbers() []string {
	var out []string
	for _, n := range j.Assembly.Spec.Nears(share) {
		out = append(out, n.Key)
	}
	return out
}

// bears reports whether a key can bear on a group of checks.
func bears(key string, g check.Group) bool {
	section, _, _ := strings.Cut(key, ".")
	if g == check.Heat || g == check.Moisture {
		return section == "site" && !slices.Contains([]string{"site.ground_snow", "site.wind", "site.frost"}, key)
	}
	switch section {
	case "project", "sheets", "rates":
		return false
	case "site":
		return key == "site.ground_snow" || g == check.Water || g == check.Scope
	case "foundation", "water", "doors", "obstacles", "stock":
		return g >= check.Fit
	}
	return true
}

// bolts turns a diameter into the next bolt on either side, with a hole that has as much play.
func (r *swept) bolts(s *spec.Spec) {
	if !r.near.Diameter {
		return
	}
	at, ok := stock.BoltOf(unit.Length(r.near.Number))
	if !ok {
		return
	}
	var thinner, thicker *stock.Bolt
	for _, b := range stock.Bolts() {
		switch {
		case b.Metric != at.Metric:
		case b.D < at.D-0.05:
			thinner = &b
		case b.D > at.D+0.05 && thicker == nil:
			thicker = &b
		}
	}
	set := strings.TrimSuffix(r.near.Key, ".diameter")
	for _, e := range []struct {
		to *stock.Bolt
		at *tried
	}{{thinner, &r.less}, {thicker, &r.more}} {
		if e.to == nil {
			e.at.typed = spec.Typed{}
			continue
		}
		e.at.typed = r.near.Set(e.to.D.MM(), s.Project.System)
		for _, f := range s.Fasteners.Sets() {
			if f.Diameter == unit.Length(r.near.Number) {
				hole := fmt.Sprintf("%s.hole=%.6gmm", set, (e.to.D + f.Hole - f.Diameter).MM())
				for i := range e.at.typed.Sets {
					e.at.typed.Sets[i] = append(e.at.typed.Sets[i], hole)
				}
				break
			}
		}
	}
}

// try fills in the report of a change.
func (j *Job) try(t *tried, hold []string, g check.Group) {
	var first error
	for _, sets := range t.typed.Sets {
		r, err := j.report(slices.Concat(hold, sets), g)
		if err == nil {
			t.report = r
			return
		}
		if first == nil {
			first = err
		}
	}
	if first != nil {
		t.why = first.Error()
	}
}

// report checks the design with changes: all of it, or what climate moves.
func (j *Job) report(sets []string, g check.Group) (*check.Report, error) {
	if g != check.Heat && g != check.Moisture {
		t, err := j.Base.Try(sets...)
		if err != nil {
			return nil, err
		}
		return &t.Report, nil
	}
	s, problems := spec.Read(j.Base.Name, j.Base.Src, slices.Concat(j.Base.Sets, sets))
	if s == nil {
		return nil, problems
	}
	a := *j.Assembly
	a.Spec = s
	r := &check.Report{}
	design.Heat(&a, j.Heat, j.NoHeat, r)
	return r, nil
}
