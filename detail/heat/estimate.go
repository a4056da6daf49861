package heat

import "math"

// value returns a figure of the last grid with the error expected in it from the three last grids. From
// fewer no error can be told.
func (t *trial) value(of func(sample) float64) Value {
	n := len(t.samples)
	v := of(t.samples[n-1])
	if n < fewestGrids {
		return Value{v, math.Inf(1)}
	}
	return estimate(lastOf(t.grids), [fewestGrids]float64{of(t.samples[n-3]), of(t.samples[n-2]), v}, t.opt.Limit)
}

// estimate returns the last of three values with the error left in it; or, when the limit is asked for and the
// values run one way, where they run to. The limit may be half again as wrong as it is far.
func estimate(h, v [fewestGrids]float64, limit bool) Value {
	left := remaining(h, v)
	if step := v[2] - v[1]; limit && step*(v[1]-v[0]) > 0 {
		return Value{v[2] + math.Copysign(left, step), limitSafety * left}
	}
	return Value{v[2], safety * left}
}

// temperature is value for a temperature: when the grid matters at all, no less than a ten-thousandth of
// the span is claimed.
func (t *trial) temperature(of func(sample) float64) Value {
	v, span := t.value(of), t.c.span()
	if v.Err > 1e-6*span {
		v.Err = max(v.Err, 1e-4*span)
	}
	return v
}

// Bounds of the order of convergence that is believed. Corners of unlike materials give 1 to 1.5,
// smooth fields 2; the error of a coarse grid that happens to be right must not fool the estimate.
const (
	leastOrder  = 0.5
	mostOrder   = 1.0
	limitSafety = 1.5 // as safety, of the value they run to
	safety      = 2   // a judgement, as the one below; tried on some hundred random assemblies
	singular    = 3.5 // for the extremes of surfaces, which lie where the field is least smooth
)

// remaining returns the error left in the last of three values, found with cells of the sizes h, by
// Richardson's extrapolation: the error goes as C h^p with the order p that the three show.
//
//	before/after = (h0^p - h1^p)/(h1^p - h2^p)   left = after h2^p/(h1^p - h2^p)
//
// A last step smaller than the order allows is not believed: it counts as what the order leaves.
func remaining(h, v [fewestGrids]float64) float64 {
	before, after := math.Abs(v[1]-v[0]), math.Abs(v[2]-v[1])
	steps := func(p float64) float64 {
		return (math.Pow(h[0], p) - math.Pow(h[1], p)) / (math.Pow(h[1], p) - math.Pow(h[2], p))
	}
	after = max(after, before/steps(mostOrder))
	if after == 0 {
		return 0
	}
	lo, hi := leastOrder, mostOrder
	if before <= after*steps(lo) {
		hi = lo
	}
	for hi-lo > 1e-6 {
		if mid := (lo + hi) / 2; steps(mid) < before/after {
			lo = mid
		} else {
			hi = mid
		}
	}
	left := math.Pow(h[2], lo) / (math.Pow(h[1], lo) - math.Pow(h[2], lo))
	return after * left
}

// lastOf returns the sizes of the cells of the last three grids, those of the first being 1.
func lastOf(grids []Grid) (h [fewestGrids]float64) {
	for i := range h {
		h[i] = 1 / float64(grids[len(grids)-fewestGrids+i].Parts)
	}
	return h
}

// surface returns the temperature of a surface's extreme.
func (t *trial) surface(of func(sample) float64) Value {
	v := t.temperature(of)
	v.Err *= singular
	return v
}

// couple returns the coupling of two environments.
func (t *trial) couple(e, o int) Value {
	v := t.value(func(s sample) float64 { return s.coupling[e][o] })
	if t.endless[e][o] {
		v.Err = math.Inf(1)
	}
	return v
}

// flow returns the heat from environment e.
func (t *trial) flow(e int) Value {
	v := t.value(func(s sample) float64 { return s.flow[e] })
	for o, endless := range t.endless[e] {
		if endless && t.c.Envs[o].T != t.c.Envs[e].T {
			v.Err = math.Inf(1)
		}
	}
	return v
}

// minor is the part of the greatest coupling below which a coupling is judged as if it were that great.
const minor = 0.05

// met reports whether every error is small enough. Flows that have no end are left out.
func (t *trial) met() bool {
	var most float64
	for e := range t.c.Envs {
		for o := range e {
			if !t.endless[e][o] {
				most = max(most, math.Abs(t.couple(e, o).V))
			}
		}
	}
	for e := range t.c.Envs {
		for o := range e {
			if v := t.couple(e, o); !t.endless[e][o] && v.Err > t.opt.Error*max(math.Abs(v.V), minor*most) {
				return false
			}
		}
	}
	return t.flowsMet(most) && t.temperaturesMet()
}

func (t *trial) flowsMet(most float64) bool {
	for e := range t.c.Envs {
		v := t.flow(e)
		if !math.IsInf(v.Err, 1) && v.Err > t.opt.Error*max(math.Abs(v.V), minor*most*t.c.span()) {
			return false
		}
	}
	return true
}

// temperaturesMet reports whether temperatures are as close to the span of all as flows to themselves.
// As an error is at least twice the last step, 1 % lets no doubling of subdivisions move a temperature by
// more than 0.005 of the span, nor a flow by 0.5 %: ISO 10211:2017 asks for 0.005 and 1 %.
func (t *trial) temperaturesMet() bool {
	if t.opt.Temps < 0 {
		return true
	}
	allowed := t.opt.Temps * t.c.span()
	for i := range t.c.Probes {
		if t.temperature(func(s sample) float64 { return s.probe[i] }).Err > allowed {
			return false
		}
	}
	for e := range t.c.Envs {
		if t.surface(func(s sample) float64 { return s.low[e].t }).Err > allowed ||
			t.surface(func(s sample) float64 { return s.high[e].t }).Err > allowed {
			return false
		}
	}
	return true
}
