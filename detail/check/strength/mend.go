package strength

import (
	"fmt"
	"strings"

	"standclear/detail/check"
	"standclear/detail/stock"
	"standclear/detail/unit"
)

// mend is a change that may repair what fails, in the words of the project file, and the model with it. A row
// of blocks that moves leaves backing and ties to be measured anew: its findings about them say nothing.
type mend struct {
	text  string
	model Model
	moves bool
}

// mends lists the changes to try, the smallest first.
func (c *calc) mends() []mend {
	return append(c.thicker(), c.nearer()...)
}

// thicker are the next two stock sizes of the bolts, in holes as wide over the bolt as before.
func (c *calc) thicker() []mend {
	f := c.m.Fasteners
	set := f.Through
	if set == nil {
		set = f.ToRim
	}
	now, ok := stock.BoltOf(set.Diameter)
	if set.Kind != Bolt || !ok {
		return nil
	}
	var out []mend
	for _, b := range stock.Bolts() {
		if b.Metric != now.Metric || b.D <= now.D || b.D > unit.Inch || len(out) == 2 {
			continue
		}
		m := mend{text: "bolts of " + c.say(b.D.Q()) + " (diameter and hole of the fasteners)", model: c.m}
		for _, s := range []**Set{&m.model.Fasteners.Through, &m.model.Fasteners.ToRim, &m.model.Fasteners.ToBlock} {
			if *s == nil || (*s).Kind != Bolt {
				continue
			}
			larger := **s
			if larger.Hole > 0 {
				larger.Hole += b.D - larger.Diameter
			}
			larger.Diameter = b.D
			*s = &larger
		}
		out = append(out, m)
	}
	return out
}

// nearer are rows of one and of two blocks more, equally spaced between the same end blocks.
func (c *calc) nearer() []mend {
	at := c.m.Blocks.At
	first, last := at[0].X, at[len(at)-1].X
	var out []mend
	for more := 1; more <= 2; more++ {
		n := len(at) + more
		space := (last - first) / unit.Length(n-1)
		if space < 1.5*c.m.Blocks.Width {
			break
		}
		m := mend{text: fmt.Sprintf("blocks %s apart or nearer, %d of them (blocks.max_spacing)", c.say(space.Q()), n), model: c.m, moves: true}
		m.model.Blocks.At, m.model.Backing.Pieces, m.model.Tie.At = nil, nil, nil
		for i := range n {
			m.model.Blocks.At = append(m.model.Blocks.At, Place{fmt.Sprintf("B%d", i+1), first + unit.Length(i)*space})
		}
		out = append(out, m)
	}
	return out
}

// repair offers, for every failing strength of fasteners and block that has no fix yet, the first change that
// mends it and breaks nothing, each worked out anew.
func (c *calc) repair() {
	var open []int
	for i, s := range c.rep.Steps {
		if s.Verdict == check.Fails && s.Fix == "" && s.Cap != 0 && (s.Group == check.Connection || s.Group == check.Block) {
			open = append(open, i)
		}
	}
	if open == nil {
		return
	}
	for _, m := range c.mends() {
		trial, _ := run(m.model, true)
		if c.breaks(trial, m) {
			continue
		}
		for _, i := range open {
			s := &c.rep.Steps[i]
			if t := trial.Find(s.ID); s.Fix == "" && t != nil && t.Verdict <= check.OK {
				s.Fix = m.text
			}
		}
	}
}

// breaks tells whether a trial fails where the model as it is does not.
func (c *calc) breaks(trial check.Report, m mend) bool {
	for _, t := range trial.Steps {
		aside := m.moves && (strings.HasPrefix(t.ID, "backing_") || strings.HasPrefix(t.ID, "tie_"))
		if now := c.rep.Find(t.ID); t.Verdict == check.Fails && !aside && (now == nil || now.Verdict != check.Fails) {
			return true
		}
	}
	return false
}
