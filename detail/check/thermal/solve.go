package thermal

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"

	"standclear/detail"
	"standclear/detail/heat"
)

// Options of Solve; the zero value works.
type Options struct {
	Error    float64                         // of each flow; 0: 0.01
	Threads  int                             // as in heat.Options
	Progress func(step, of int, what string) // called often while a step is solved, when not nil
}

// run is a result in the making.
type run struct {
	ctx      context.Context
	b        *bay
	opt      Options
	step, of int
	out      *Result
}

// Solve finds what the attachment of a costs in heat, and what the usual other ways would. It fails when the
// context is cancelled or the assembly cannot be cut into boxes.
func Solve(ctx context.Context, a *detail.Assembly, opt Options) (*Result, error) {
	if len(a.Blocks) == 0 {
		return nil, errNoBlock
	}
	r := newRun(a, opt)
	r.ctx = ctx
	drawn, others := r.b.ways(r.out.Block)
	r.of = 6 + len(others)
	for _, step := range []func() error{r.clearWall, func() error { return r.asDrawn(drawn) }, func() error { return r.compare(others) }} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	r.out.Assumed = r.b.assumed()
	return r.out, nil
}

var errNoBlock = errors.New("thermal: there is no block to solve for")

func newRun(a *detail.Assembly, opt Options) *run {
	if opt.Error <= 0 {
		opt.Error = defaultError
	}
	i := typical(a)
	b := newBay(a, i)
	return &run{b: b, opt: opt, out: &Result{
		Asked: opt.Error, Block: a.Blocks[i].Mark, Bay: [2]float64{b.lo[0], b.hi[0]}, Length: a.Spec.Ledger.Length.MM(), Blocks: len(a.Blocks),
	}}
}

const defaultError = 0.01

// care says how closely a case is solved.
type care struct {
	coarse float64 // width of the first grid's cells, as in heat.Options; more where a larger error is asked for
	loose  float64 // times the error asked for
}

// The ways compared with the drawn one share a grid with the faces of all of them, and twice its error.
var (
	drawnCare = care{5, 1}
	waysCare  = care{6, 2}
)

// asDrawn solves the drawn attachment: the wall without it, with it, with it but without its fasteners, and with
// the surface resistance of the mould criterion.
func (r *run) asDrawn(v variant) error {
	b := r.b
	g := r.align([]variant{v})
	probes := b.probes()
	base, err := r.one(g.compose("the wall without a deck", nil, rsInside, nil), drawnCare)
	if err != nil {
		return err
	}
	whole := g.compose("the attachment as drawn", g.ways[0].boxes, rsInside, probes)
	hole := b.a.Holes(b.block)
	whole.Cuts = []heat.Cut{{Axis: heat.X, At: hole[0].X}, {Axis: heat.X, At: b.hi[0]}}
	with, err := r.one(whole, drawnCare)
	if err != nil {
		return err
	}
	bare, err := r.one(g.compose("the attachment without its fasteners", wooden(g.ways[0].boxes), rsInside, nil), drawnCare)
	if err != nil {
		return err
	}
	mould, err := r.one(g.compose("the attachment, room surfaces", g.ways[0].boxes, rsMould, probes), drawnCare)
	if err != nil {
		return err
	}
	w := v.Way
	r.fill(&w, with, base)
	r.out.Ways = append(r.out.Ways, w)
	r.out.Bolts = added(with, bare)
	r.out.Low = value(base.Envs[0].Low.T)
	r.out.Spots = b.spots(with, mould)
	r.out.AtBlock, r.out.Between = fieldOf(with.Cuts[0]), fieldOf(with.Cuts[1])
	return nil
}

// compare solves the other ways on one grid.
func (r *run) compare(others []variant) error {
	g := r.align(others)
	base, err := r.one(g.compose("the wall without a deck, for the other ways", nil, rsInside, nil), waysCare)
	if err != nil {
		return err
	}
	for i, v := range g.ways {
		var probes []heat.Probe
		if v.Blocks {
			probes = r.b.probes()
		}
		with, err := r.one(g.compose(strings.ToLower(v.Name), v.boxes, rsInside, probes), waysCare)
		if err != nil {
			return err
		}
		w := others[i].Way
		r.fill(&w, with, base)
		if w.Blocks {
			w.Spots = r.b.spots(with, nil)
		}
		r.out.Ways = append(r.out.Ways, w)
	}
	r.out.Ways = append(r.out.Ways, Way{Key: "freestanding", Name: "FREESTANDING ON POSTS AT THE WALL", Note: "nothing passes the insulation; its posts, footings and bracing are not checked here", Low: r.out.Low})
	return nil
}

// fill sets what a way adds to a bay and to the whole ledger.
func (r *run) fill(w *Way, with, base *heat.Result) {
	w.Bay = added(with, base)
	n := float64(r.out.Blocks)
	if !w.Blocks {
		n = r.out.Length / (r.out.Bay[1] - r.out.Bay[0])
	}
	w.Run = w.Bay.Times(n)
	w.Low = value(with.Envs[0].Low.T)
}

// one solves a case; room is at 1 and outside at 0, so that temperatures are factors and flows W/K.
func (r *run) one(c heat.Case, with care) (*heat.Result, error) {
	r.step++
	o := heat.Options{Threads: r.opt.Threads, Error: with.loose * r.opt.Error, Temps: -1, Coarse: with.coarse * math.Sqrt(max(1, r.opt.Error/defaultError)), Limit: true}
	if r.opt.Progress != nil {
		o.Progress = func(heat.Progress) { r.opt.Progress(r.step, r.of, c.Name) }
		o.Progress(heat.Progress{})
	}
	res, err := heat.Solve(r.ctx, c, o)
	if err != nil {
		return nil, fmt.Errorf("heat of %s: %w", c.Name, err)
	}
	for _, g := range res.Grids {
		r.out.Balance = max(r.out.Balance, g.Balance)
		r.out.Cells = max(r.out.Cells, g.Cells)
	}
	if f := res.Envs[0].Flow; !math.IsInf(f.Err, 1) {
		r.out.Error = max(r.out.Error, f.Err/math.Abs(f.V)/with.loose)
	} else {
		r.out.Error = 1 // too few grids to tell
	}
	return res, nil
}

func value(v heat.Value) Value {
	if math.IsInf(v.Err, 0) {
		return Value{v.V, -1}
	}
	return Value{v.V, v.Err}
}

func added(with, without *heat.Result) Value {
	v, _ := heat.Added(with, without, 0, true)
	return value(v)
}

func fieldOf(f heat.Field) Field {
	out := Field{X: f.At, Y: f.U, Z: f.V, F: f.T}
	for k, row := range f.Full {
		for j, full := range row {
			if out.F[k][j] = math.Round(out.F[k][j]*1e5) / 1e5; !full {
				out.F[k][j] = -1
			}
		}
	}
	return out
}
