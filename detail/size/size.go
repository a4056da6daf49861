// Package size finds the sizes of a project, out of what is sold, that keep every check and ask for the least.
//
//	r, err := size.Search(ctx, base, size.Options{Free: []string{"blocks.max_spacing"}, Least: size.Blocks})
//	fmt.Println(r.Best.Sets)
//
// Every combination is built and checked, heat apart. What is called the rank of heat here is only that: the
// steel and the wood that pass the insulation, each by its conductivity over the stand-off. It puts designs in
// order and is no flow of heat.
package size

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/compare"
	"standclear/detail/stock"
	"standclear/detail/sweep"
	"standclear/detail/trial"
)

// Least is what is to be least.
type Least string

// The aims.
const (
	Heat      Least = "heat"
	Blocks    Least = "blocks"
	Fasteners Least = "fasteners"
	Cost      Least = "cost"
)

// Aims lists them, for messages.
func Aims() []Least { return []Least{Heat, Blocks, Fasteners, Cost} }

// MostDesigns is how many combinations a search may have (judgement: some seconds on two cores).
const MostDesigns = 20000

// Options of Search.
type Options struct {
	Free     []string // keys; see Stock
	Least    Least
	Threads  int                // as in sweep.Options
	Progress func(done, of int) // as in sweep.Options
}

// Design is one combination.
type Design struct {
	sweep.Row
	rank float64 // of heat; W/K by its unit, but of nothing that flows
	Cost float64 // by the rates of the project, in their currency; counted when it is the aim
}

// Parts is how many blocks and fasteners there are.
func (d *Design) Parts() int { return d.Blocks + d.Fasteners }

// Reserve is what is left of the check that governs: 0.2 when a fifth of it is not used.
func (d *Design) Reserve() float64 { return 1 - d.Ratio }

// Stop says what keeps one parameter from going further.
type Stop struct {
	Key, Value string // the next value of stock
	Check      string // name of the check that fails there, "" when none does
	Why        string // what is wrong there
	Sets       []string
}

// Result of a search.
type Result struct {
	Axes  []sweep.Axis
	Tried int
	Good  int      // designs that fail nothing
	Now   Design   // the project as it stands
	Best  *Design  // nil when every design fails something
	Front []Design // of those that fail nothing, each that no other beats in heat, parts and reserve at once; by rank of heat
	Stops []Stop   // of the best, one a parameter and way
}

// ErrNoRates says that cost cannot be an aim.
var ErrNoRates = errors.New("cost is not known")

// noRates says which rates a project lacks.
func noRates(lacks []string) error {
	return fmt.Errorf("%w: the project file does not state %s; no price is built in. Heat, blocks and fasteners can be least without prices", ErrNoRates, strings.Join(lacks, ", "))
}

// Search tries every combination of the free parameters.
func Search(ctx context.Context, base trial.Base, o Options) (*Result, error) {
	base = base.Parsed()
	sp, problems := base.Read()
	if sp == nil {
		return nil, problems
	}
	r := &Result{}
	var err error
	if r.Now, err = now(base, o.Least); err != nil {
		return nil, err
	}
	n := 1
	for _, key := range o.Free {
		a, err := Stock(key, sp)
		if err != nil {
			return nil, err
		}
		if n *= len(a.Points); n > MostDesigns {
			return nil, fmt.Errorf("that is more than %d designs; free fewer parameters", MostDesigns)
		}
		r.Axes = append(r.Axes, a)
	}
	all := make([]Design, n)
	rows, err := sweep.Run(ctx, base, r.Axes, sweep.Options{Threads: o.Threads, Progress: o.Progress,
		Look: func(row *sweep.Row, t *trial.Trial) { all[r.number(row.At)].look(t, o.Least) }})
	if err != nil {
		return nil, err
	}
	for i := range rows {
		all[i].Row = rows[i]
		if rows[i].Feasible() {
			r.Good++
		}
	}
	r.Tried = n
	r.choose(all, o.Least)
	return r, nil
}

// number is the place of a design among all, from its places on the axes.
func (r *Result) number(at []int) int {
	n := 0
	for k, a := range r.Axes {
		n = n*len(a.Points) + at[k]
	}
	return n
}

// now tries the project as it stands. The error is ErrNoRates when its cost is wanted and cannot be told.
func now(base trial.Base, least Least) (Design, error) {
	t, err := base.Try()
	if err != nil {
		return Design{}, err
	}
	var d Design
	if lacks := d.look(t, least); len(lacks) > 0 {
		return d, noRates(lacks)
	}
	d.Fill(t)
	return d, nil
}

// look takes from a trial what orders it; lacks are the rates that its cost would need.
func (d *Design) look(t *trial.Trial, least Least) (lacks []string) {
	d.rank = rank(t.Assembly)
	if least != Cost {
		return nil
	}
	c := compare.CostOf(t.Assembly)
	d.Cost = math.Inf(1)
	if c.Sum != nil {
		d.Cost = *c.Sum
	}
	return c.Lacks
}

// rank is the conductivity of all steel and wood that passes from wall to ledger, times its section, over the
// stand-off: nothing but an order.
func rank(a *detail.Assembly) float64 {
	steel, _ := stock.MaterialOf("steel")
	wood, _ := stock.MaterialOf("softwood")
	sum := 0.0
	for _, r := range a.Rows {
		d := r.Set.Diameter.MM() / 1e3
		sum += float64(max(1, r.Set.Columns)*len(a.Blocks)) * math.Pi / 4 * d * d * float64(steel.Across)
	}
	for _, b := range a.Blocks {
		size := b.Box.Size()
		sum += size.X * size.Z / 1e6 * float64(wood.Across)
	}
	return sum / max(1e-3, a.Frame.LedgerBack/1e3)
}

// order compares two designs by the aim, then by the rest, the better first.
func order(least Least) func(a, b *Design) int {
	return func(a, b *Design) int {
		byHeat, byBlocks, byFasteners := near(a.rank, b.rank), cmp.Compare(a.Blocks, b.Blocks), cmp.Compare(a.Fasteners, b.Fasteners)
		switch least {
		case Blocks:
			return cmp.Or(byBlocks, byFasteners, byHeat, near(a.Ratio, b.Ratio))
		case Fasteners:
			return cmp.Or(byFasteners, byBlocks, byHeat, near(a.Ratio, b.Ratio))
		case Cost:
			return cmp.Or(near(a.Cost, b.Cost), byHeat, byBlocks, byFasteners, near(a.Ratio, b.Ratio))
		}
		return cmp.Or(byHeat, byBlocks, byFasteners, near(a.Ratio, b.Ratio))
	}
}

// near is cmp.Compare with rounding left aside.
func near(a, b float64) int {
	if math.Abs(a-b) <= 1e-9*(math.Abs(a)+math.Abs(b)) {
		return 0
	}
	return cmp.Compare(a, b)
}

// choose finds the best design, the front, and what stops the best.
func (r *Result) choose(all []Design, least Least) {
	var good []*Design
	for i := range all {
		if all[i].Feasible() {
			good = append(good, &all[i])
		}
	}
	if len(good) == 0 {
		return
	}
	slices.SortStableFunc(good, order(least))
	best := *good[0]
	r.Best = &best
	r.Front = front(good)
	for k := range r.Axes {
		for _, way := range []int{1, -1} {
			if s, ok := r.stop(all, &best, k, way); ok {
				r.Stops = append(r.Stops, s)
			}
		}
	}
}

// front returns the designs that none beats, one of each kind, by rank of heat.
func front(good []*Design) []Design {
	var out []Design
	for _, d := range good {
		beaten := slices.ContainsFunc(good, func(o *Design) bool {
			h, p, f := near(o.rank, d.rank), cmp.Compare(o.Parts(), d.Parts()), near(o.Ratio, d.Ratio)
			return h <= 0 && p <= 0 && f <= 0 && (h < 0 || p < 0 || f < 0)
		})
		same := slices.ContainsFunc(out, func(o Design) bool {
			return near(o.rank, d.rank) == 0 && o.Parts() == d.Parts() && near(o.Ratio, d.Ratio) == 0
		})
		if !beaten && !same {
			out = append(out, *d)
		}
	}
	slices.SortStableFunc(out, func(a, b Design) int { return order(Heat)(&a, &b) })
	return out
}

// stop walks one way along an axis from the best design to the first that is another, and says how it fares.
func (r *Result) stop(all []Design, best *Design, axis, way int) (Stop, bool) {
	at := slices.Clone(best.At)
	a := r.Axes[axis]
	for at[axis] += way; at[axis] >= 0 && at[axis] < len(a.Points); at[axis] += way {
		d := &all[r.number(at)]
		if d.Feasible() && near(d.rank, best.rank) == 0 && d.Parts() == best.Parts() {
			continue // the same blocks
		}
		s := Stop{Key: a.Key, Value: a.Points[at[axis]].Text, Sets: d.Sets}
		switch {
		case d.Problem != "":
			s.Why = d.Problem
		case d.Fails > 0:
			s.Check = d.Governs.Name
			s.Why = "fails: " + d.Failed()
		case d.NotChecked > 0:
			s.Why = fmt.Sprintf("%d checks could not be done", d.NotChecked)
		default:
			s.Why = fmt.Sprintf("no check fails, but it asks for more: %d blocks, %d fasteners, heat %s", d.Blocks, d.Fasteners, against(d.rank, best.rank))
		}
		return s, true
	}
	return Stop{}, false
}

// against says how the rank of a design stands to another.
func against(a, b float64) string {
	switch near(a, b) {
	case 0:
		return "ranked the same"
	case -1:
		return "ranked lower"
	}
	return "ranked higher"
}
