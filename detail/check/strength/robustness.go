package strength

import (
	"fmt"
	"math"

	"standclear/detail/check"
)

// robustness adds, for information, what happens when one block stands high and when one is missing.
func (c *calc) robustness() {
	c.slack()
	c.oneMissing()
}

// slack raises one block after another by the support slip. The blocks give way like springs as their
// fasteners tilt and as they turn; on rigid supports a short span of deep ledger would take no slip at all.
func (c *calc) slack() {
	k := c.spring()
	if missing(given{"", c.m.Ledger.Wood.E.PSI()}) != "" || k == 0 {
		c.notChecked(check.Step{ID: "support_slip", Group: check.Beam,
			Name: "one block high", Clause: "judgement: information"}, "modulus of elasticity of the ledger, or slip of the fasteners, not known")
		return
	}
	b, h := c.beam(), c.heaviest()
	rigid := b.solve(c.smeared(b, h.total())).reaction
	stiff := b.liftMatrix()
	most, mark, slip := 0.0, "", c.a.SupportSlip.Inches()
	for i := range b.at {
		lift := make([]float64, len(b.at))
		lift[i] = slip
		for j, r := range onSprings(rigid, stiff, lift, k) {
			if r > most {
				most, mark = r, c.m.Blocks.At[j].Mark
			}
		}
	}
	c.add(check.Step{ID: "support_slip", Group: check.Beam, Symbol: "R", Name: "load on a block when one stands high",
		With: []check.Arg{arg("slip", inch(slip)), arg("k", springs(k))}, Value: lb(most),
		Clause: "judgement: information", Where: mark,
		Note: fmt.Sprintf("%.2f of the reaction the block is checked for; k is the load of a block over the first slip of its fasteners and its turning, elastic: crushing past that, which passes more on to the neighbours, is not in it", most/(h.most()+1e-9))})
}

// spring is the load of one block per inch its load line goes down, by the slip of its fasteners and by its
// turning one after the other, lb/in; 0 when not known or when a pound lets it down by a tenth of an inch. It
// is what ledger_drop counts, without creep and the play of the holes.
func (c *calc) spring() float64 {
	_, e := c.offsets()
	give := 0.0
	for _, g := range c.groups {
		if g.Kind == Evaluated || c.unknown(g) != "" {
			return 0
		}
		give += c.slip(g, 1/float64(g.Count()))
	}
	if give += c.turning(1) * e; give > 0.1 {
		return 0
	}
	return 1 / give
}

// liftMatrix returns the change of every reaction per inch each support is raised, lb/in.
func (b beam) liftMatrix() [][]float64 {
	out := make([][]float64, len(b.at))
	for j := range b.at {
		lift := make([]float64, len(b.at))
		lift[j] = 1
		for i, r := range b.solve(action{spread: make([]float64, len(b.at)+1), lift: lift}).reaction {
			out[i] = append(out[i], r)
		}
	}
	return out
}

// onSprings returns the reactions of a beam on springs of stiffness k whose seats are raised by lift,
// from those on rigid supports: R = rigid + S (lift - R/k).
func onSprings(rigid []float64, stiff [][]float64, lift []float64, k float64) []float64 {
	n := len(rigid)
	a, rhs := make([][]float64, n), make([]float64, n)
	for i := range n {
		a[i], rhs[i] = make([]float64, n), rigid[i]
		for j := range n {
			a[i][j] = stiff[i][j] / k
			rhs[i] += stiff[i][j] * lift[j]
		}
		a[i][i]++
	}
	return gauss(a, rhs)
}

// gauss solves a x = rhs by elimination with row exchange; a and rhs are used up.
func gauss(a [][]float64, rhs []float64) []float64 {
	n := len(rhs)
	for i := range n {
		p := i
		for r := i + 1; r < n; r++ {
			if math.Abs(a[r][i]) > math.Abs(a[p][i]) {
				p = r
			}
		}
		a[i], a[p], rhs[i], rhs[p] = a[p], a[i], rhs[p], rhs[i]
		for r := i + 1; r < n; r++ {
			f := a[r][i] / a[i][i]
			for q := i; q < n; q++ {
				a[r][q] -= f * a[i][q]
			}
			rhs[r] -= f * rhs[i]
		}
	}
	for i := n - 1; i >= 0; i-- {
		for q := i + 1; q < n; q++ {
			rhs[i] -= a[i][q] * rhs[q]
		}
		rhs[i] /= a[i][i]
	}
	return rhs
}

// oneMissing takes out one block after another and solves the rest.
func (c *calc) oneMissing() {
	b, h := c.beam(), c.heaviest()
	if len(b.at) < 3 {
		return
	}
	most, at, lost := 0.0, "", ""
	for i := range b.at {
		rest := b.without(i)
		r := rest.solve(c.smeared(rest, h.total()))
		for k, v := range r.reaction {
			if v > most {
				most, lost = v, c.m.Blocks.At[i].Mark
				at = c.m.Blocks.At[k+skip(k, i)].Mark
			}
		}
	}
	times := most / (h.most() + 1e-9)
	ratio, id := c.strengthRatio()
	c.add(check.Step{ID: "block_missing_reaction", Group: check.Beam, Symbol: "R",
		Name: "load on a block with " + lost + " missing", Value: lb(most), Clause: "judgement: information", Where: at,
		Note: fmt.Sprintf("%.2f of the reaction the block is checked for", times)})
	c.add(check.Step{ID: "block_missing_ratio", Group: check.Beam, Name: "greatest ratio with " + lost + " missing",
		Value: num(ratio * times), Clause: "judgement: information", Where: at,
		Note: "of " + id + ", in proportion to the load"})
}

func skip(k, gone int) int {
	if k >= gone {
		return 1
	}
	return 0
}

// without is the beam with support i taken away.
func (b beam) without(i int) beam {
	rest := b
	rest.at = append(append([]float64{}, b.at[:i]...), b.at[i+1:]...)
	rest.cut = append(append([]bool{}, b.cut[:i]...), b.cut[i+1:]...)
	rest.cut[0], rest.cut[len(rest.cut)-1] = false, false
	return rest
}

// strengthRatio is the greatest ratio of the strength checks of fasteners, block and floor, and its id.
func (c *calc) strengthRatio() (ratio float64, id string) {
	for _, s := range c.rep.Steps {
		if s.Cap != 0 && s.Limit != nil && s.Group != check.Beam && s.Group != check.Loads && s.Ratio > ratio && s.Ratio < check.Beyond {
			ratio, id = math.Max(ratio, s.Ratio), s.ID
		}
	}
	return ratio, id
}
