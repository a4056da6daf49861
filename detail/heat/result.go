package heat

import "standclear/detail/heat/lattice"

// Value is a figure with the error the grid leaves in it: the answer of ever finer grids is expected
// within Err of V. Err is infinite when there were fewer than three
// grids to tell it from, and for a flow that has no end, between surfaces that are held at different
// temperatures and meet.
type Value struct{ V, Err float64 }

// Result is what Solve finds.
type Result struct {
	Name     string
	Dim      int
	Envs     []EnvResult   // in the order of the case
	Coupling [][]Value     // heat from one environment to another per kelvin: W/K, or W/(m K) in two dimensions; 0 on the diagonal
	Probes   []ProbeResult // in the order of the case
	Cuts     []Field       // in the order of the case
	Grids    []Grid        // coarsest first; the values are those of the last
	Met      bool          // the errors asked for are met
}

// EnvResult is what one environment gives and feels.
type EnvResult struct {
	Name      string
	T         float64 // degrees C
	Flow      Value   // into the assembly: W, or W/m in two dimensions
	Low, High Spot    // of the surface it touches
}

// Spot is the coldest or warmest place of a surface, to the nearest middle or corner of a cell.
type Spot struct {
	T  Value // degrees C
	At Point // mm
}

// ProbeResult is the temperature at one point.
type ProbeResult struct {
	Name    string
	At      Point
	T       Value     // degrees C
	Weights []float64 // part of each environment's temperature in it; they sum to 1 (ISO 10211:2017, g)
}

// Grid is one of the grids a result rests on.
type Grid struct {
	Shape    lattice.Shape
	Cells    int       // that hold material
	Parts    int       // into which it divides each cell of the first grid
	Rounds   int       // of the solver, all environments together
	Residual float64   // over the right side, the worst
	Balance  float64   // heat missing over heat passing, the worst
	Flow     []float64 // from each environment on this grid, W or W/m
}

// sample is what one grid says.
type sample struct {
	coupling [][]float64
	flow     []float64
	weights  [][]float64 // of each probe
	probe    []float64
	low      []spot // of each environment
	high     []spot
}

type spot struct {
	t  float64
	at Point
}

// sample reads off what is wanted from the temperatures for each environment at 1 degree.
func (m *model) sample(fields [][]float64) sample {
	c := m.l.c
	n := len(c.Envs)
	s := sample{coupling: make([][]float64, n), flow: make([]float64, n)}
	for e := range s.coupling {
		s.coupling[e] = make([]float64, n)
	}
	for e, u := range fields {
		for o, q := range m.flows(u, e) {
			switch {
			case o == e:
			case o < len(fields): // found twice, once from each side
				s.coupling[e][o] -= q / 2
				s.coupling[o][e] -= q / 2
			default:
				s.coupling[e][o], s.coupling[o][e] = -q, -q
			}
		}
	}
	for e := range n {
		for o := range n {
			s.flow[e] += s.coupling[e][o] * (c.Envs[e].T - c.Envs[o].T)
		}
	}
	m.sampleProbes(&s, fields)
	m.sampleFaces(&s, fields)
	return s
}

func (m *model) sampleProbes(s *sample, fields [][]float64) {
	for _, p := range m.l.c.Probes {
		t, w := m.temperature(fields, p.At)
		s.weights, s.probe = append(s.weights, w), append(s.probe, t)
	}
}

// sampleFaces finds the coldest and warmest place of each environment's surface: the coldest face cell,
// and of its middle and corners the coldest. A corner of a room is colder than any middle.
func (m *model) sampleFaces(s *sample, fields [][]float64) {
	envs := m.l.c.Envs
	base := envs[len(envs)-1].T
	low, high := make([]extreme, len(envs)), make([]extreme, len(envs))
	for n, f := range m.faces {
		t := base
		for e, u := range fields {
			v := u[f.at]
			v += (indicator(int(f.env), e) - v) * f.inner * float64(f.g)
			t += v * (envs[e].T - base)
		}
		low[f.env].see(-t, n)
		high[f.env].see(t, n)
	}
	for e := range envs {
		s.low = append(s.low, m.corner(fields, m.faces[low[e].face], -1))
		s.high = append(s.high, m.corner(fields, m.faces[high[e].face], 1))
	}
}

// extreme is the greatest value of any face seen so far.
type extreme struct {
	v    float64
	face int
	any  bool
}

func (x *extreme) see(v float64, face int) {
	if !x.any || v > x.v {
		*x = extreme{v, face, true}
	}
}

// corner returns the warmest of the middle and corners of a face, or the coldest when sign is -1.
func (m *model) corner(fields [][]float64, f face, sign float64) spot {
	var best spot
	for n, p := range m.places(f) {
		if t, _ := m.temperature(fields, p); n == 0 || sign*t > sign*best.t {
			best = spot{t, p}
		}
	}
	return best
}

// temperature returns the temperature at p, and the part each environment has in it.
func (m *model) temperature(fields [][]float64, p Point) (t float64, weights []float64) {
	envs := m.l.c.Envs
	last := len(envs) - 1
	weights = make([]float64, len(envs))
	weights[last], t = 1, envs[last].T
	for e, u := range fields {
		weights[e] = m.point(u, e, p)
		weights[last] -= weights[e]
		t += weights[e] * (envs[e].T - envs[last].T)
	}
	return t, weights
}

// result puts the samples of all grids together.
func (t *trial) result() *Result {
	c, last := t.c, t.samples[len(t.samples)-1]
	r := &Result{Name: c.Name, Dim: c.Dim, Grids: t.grids, Met: t.met()}
	for e, env := range c.Envs {
		r.Envs = append(r.Envs, EnvResult{
			Name: env.Name, T: env.T,
			Flow: t.flow(e),
			Low:  t.spot(last.low[e], func(s sample) float64 { return s.low[e].t }),
			High: t.spot(last.high[e], func(s sample) float64 { return s.high[e].t }),
		})
		var row []Value
		for o := range c.Envs {
			row = append(row, t.couple(e, o))
		}
		r.Coupling = append(r.Coupling, row)
	}
	for _, cut := range c.Cuts {
		r.Cuts = append(r.Cuts, t.last.field(t.fields, cut))
	}
	for i, p := range c.Probes {
		v := t.temperature(func(s sample) float64 { return s.probe[i] })
		r.Probes = append(r.Probes, ProbeResult{p.Name, p.At, v, last.weights[i]})
	}
	return r
}

func (t *trial) spot(s spot, of func(sample) float64) Spot {
	return Spot{t.surface(of), s.at}
}
