package cloud

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

const (
	tol   = 0.01 // model mm: lines this near are one
	least = 0.05 // model mm: a shorter rest of a line is none. A judgement: below what is built or drawn
)

// parts are the pens that draw parts, and whether what they draw depends on the scale of the view.
var parts = map[render.Pen]struct{ scaled bool }{
	render.Cut: {}, render.CutMain: {}, render.Profile: {}, render.Visible: {}, render.Existing: {}, render.Hidden: {},
	render.Phantom: {}, render.Fastener: {}, render.Ground: {}, render.HeatEdge: {},
	render.ThinCut: {true}, render.Membrane: {true}, render.Water: {true},
}

// run is a straight line, or an arc run counter-clockwise; lo and hi are along it, in mm or, on an arc, radians.
type run struct {
	pen    render.Pen
	at     geom.Vec // start of a line, centre of an arc
	u      geom.Vec // direction of a line
	r      float64  // radius of an arc; 0 for a line
	lo, hi float64
	box    geom.Box
	tag    *render.Tag
}

// runsOf are the lines of the parts of a view; without those that depend on its scale, where that is another.
func runsOf(v *render.View, rescaled bool) []run {
	var out []run
	for _, it := range v.Items {
		s, ok := it.(render.Stroke)
		if !ok {
			continue
		}
		p, ok := parts[s.Pen]
		if !ok || p.scaled && rescaled {
			continue
		}
		for _, g := range s.Path.Segs() {
			if g.A.Dist(g.B) > geom.Tol {
				r := runOf(g)
				r.pen, r.tag = s.Pen, s.Tag
				out = append(out, r)
			}
		}
	}
	return out
}

func runOf(g geom.Seg) run {
	if !g.IsArc() {
		return run{at: g.A, u: g.B.Sub(g.A).Unit(), hi: g.A.Dist(g.B), box: g.Bounds()}
	}
	c, r, start, sweep := g.Arc()
	if sweep < 0 {
		start, sweep = start+sweep, -sweep
	}
	return run{at: c, r: r, lo: start, hi: start + sweep, box: g.Bounds()}
}

// bounds is the box of what of the run is meant.
func (r run) bounds() geom.Box {
	if r.r == 0 {
		return geom.BoxOf(r.at.Add(r.u.Mul(r.lo)), r.at.Add(r.u.Mul(r.hi)))
	}
	return geom.Arc(r.at, r.r, r.lo, r.hi-r.lo).Bounds()
}

func (r run) length() float64 {
	if r.r > 0 {
		return (r.hi - r.lo) * r.r
	}
	return r.hi - r.lo
}

// rests returns what of the runs does not lie on runs of the same pen in the others.
func rests(of, in []run) []run {
	type key [6]int
	keyOf := func(r run) key {
		cent := func(v float64) int { return int(math.Round(v / tol)) }
		b := r.box
		return key{int(r.pen), cent(r.r), cent(b.Min.X), cent(b.Min.Y), cent(b.Max.X), cent(b.Max.Y)}
	}
	same := map[key][]run{}
	for _, o := range in {
		same[keyOf(o)] = append(same[keyOf(o)], o)
	}
	var out []run
	for _, r := range of {
		left := r.less(same[keyOf(r)]) // most lines are where they were
		if len(left) > 0 {
			left = r.less(in)
		}
		out = append(out, left...)
	}
	return out
}

// less returns what of the run no other covers.
func (r run) less(others []run) []run {
	left := []run{r}
	for _, o := range others {
		if o.pen != r.pen || !o.box.Grow(tol).Overlaps(r.box.Grow(tol)) {
			continue
		}
		lo, hi, ok := r.share(o)
		if !ok {
			continue
		}
		left = cutOut(left, lo, hi)
		if r.r > 0 { // the same arc, told a turn before or after
			left = cutOut(cutOut(left, lo-2*math.Pi, hi-2*math.Pi), lo+2*math.Pi, hi+2*math.Pi)
		}
		if len(left) == 0 {
			return nil
		}
	}
	var out []run
	for _, l := range left {
		if l.length() > least {
			out = append(out, l)
		}
	}
	return out
}

// share returns where the other lies along the line or circle of r; ok is false where it lies on another.
func (r run) share(o run) (lo, hi float64, ok bool) {
	if r.r > 0 {
		return o.lo, o.hi, o.r > 0 && r.at.Dist(o.at) <= tol && math.Abs(r.r-o.r) <= tol
	}
	a, b := o.at.Sub(r.at), o.at.Add(o.u.Mul(o.hi)).Sub(r.at)
	if o.r > 0 || math.Abs(a.Cross(r.u)) > tol || math.Abs(b.Cross(r.u)) > tol {
		return 0, 0, false
	}
	s, t := a.Dot(r.u), b.Dot(r.u)
	return math.Min(s, t), math.Max(s, t), true
}

// cutOut takes a stretch out of the runs.
func cutOut(runs []run, lo, hi float64) []run {
	var out []run
	for _, r := range runs {
		if hi <= r.lo || lo >= r.hi {
			out = append(out, r)
			continue
		}
		if lo > r.lo {
			before := r
			before.hi = lo
			out = append(out, before)
		}
		if hi < r.hi {
			after := r
			after.lo = hi
			out = append(out, after)
		}
	}
	return out
}
