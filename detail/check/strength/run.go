package strength

import (
	"strings"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// Results are the numbers others draw and schedule from, of the combination with the greatest load.
// They are zero when the Model could not be worked out; the report then says why.
type Results struct {
	Combination  string        // "D + L"
	LineLoad     unit.LineLoad // on the ledger
	Reactions    []Reaction    // one a block, left to right
	Worst        int           // index of the block with the greatest design reaction
	Eccentricity unit.Length   // rim face to load line
	LoadLine     unit.Length   // y of the load line from the sheathing face
	Moment       unit.Moment   // at the rim face, on the worst block
	LeverArm     unit.Length
	Tension      unit.Force    // pull behind the rim at one block, and push at its foot
	PerBolt      unit.Force    // pull on one bolt of the top row
	RequiredTie  unit.Force    // least rating of one floor tie; of the pull at one block where no tie is measured
	Plane        Plane         // the shear plane nearest its limit
	Planes       []Plane       // all of them, in the order of the report
	Dowels       []DowelFigure // every reading of every set of dowels, for diagrams
	Drop         unit.Length   // of the ledger edge by slip and play, estimated
	Turn         unit.Length   // of the load line by the turning of the block, estimated
	Diagram      []Station     // uniform load on all spans
}

// Reaction is what one block carries, downward positive.
type Reaction struct {
	Mark   string
	X      unit.Length
	Design unit.Force // what every check of a block uses
	Solved unit.Force // uniform load on all spans
	Least  unit.Force // load on the least favourable spans; negative lifts the block
}

// Plane is one shear plane of the fasteners at a block.
type Plane struct {
	ID, Name string
	Modes    []Mode     // reference values of one fastener
	Capacity unit.Force // of all fasteners at one block, adjusted, for a load duration of CD = 1
	Ratio    float64    // in the combination nearest its limit
}

// Station is shear, sagging moment and downward deflection of the ledger at x.
type Station struct {
	X          unit.Length
	Shear      unit.Force
	Moment     unit.Moment
	Deflection unit.Length
}

// Run works the model out. Any Model gives a report; one that cannot be worked out gives a report that
// says so. The same Model always gives the same report.
func Run(m Model) (check.Report, Results) {
	c := &calc{m: m, a: m.Assume.filled()}
	c.rep.Steps = make([]check.Step, 0, 256) // room for what fit and air add too
	c.assumptions()
	c.cautions()
	if faults := m.faults(); len(faults) > 0 {
		c.add(check.Step{ID: "model", Group: check.Scope, Name: "dimensions to work with",
			Verdict: check.NotChecked, Reason: "nothing was checked: " + strings.Join(faults, "; ")})
		return c.rep, c.res
	}
	c.loads()
	if len(c.combos) > 0 {
		c.solve()
		c.ledger()
		c.alone()
		c.fasteners()
		c.block()
		c.uplift()
		c.floor()
		c.robustness()
	} else {
		c.add(check.Step{ID: "strength", Group: check.Scope, Name: "strength of ledger, fasteners, block and floor",
			Verdict: check.NotChecked,
			Reason:  "no load combination can be formed: state loads.dead, and loads.live or loads.snow"})
	}
	c.scope()
	return c.rep, c.res
}

// calc is a Model being worked out.
type calc struct {
	m       Model
	a       Assume // with its zeros filled in
	rep     check.Report
	res     Results
	combos  []combo     // those whose loads are stated
	solved  []solution  // one a combination
	live    deflections // of the ledger under live and snow load, worst of all combinations
	all     deflections // under all load
	groups  []*group    // fastener sets with their dowels and planes
	partial string      // the loads that are not stated: what rests on them is not OK
}

// add adds a step to the report and returns it with its ratio and verdict. A failure without a reason
// gets the plain one.
func (c *calc) add(s check.Step) check.Step {
	s = s.Settled()
	if s.Verdict == check.Fails && s.Reason == "" {
		s.Reason = c.beyond(s)
	}
	c.rep.Add(s)
	return s
}

// beyond says by how much a step misses its limit.
func (c *calc) beyond(s check.Step) string {
	word := "at most"
	if s.Sense == check.AtLeast {
		word = "at least"
	}
	text := s.Name + " is " + c.say(s.Value) + ", must be " + word + " " + c.say(*s.Limit)
	if s.Cap != 0 && s.Cap != 1 {
		text += ", with a ratio up to " + c.say(num(s.Cap)) + " (is " + c.say(num(s.Ratio)) + ")"
	}
	return text
}

// notChecked adds the step as not checked for want of something.
func (c *calc) notChecked(s check.Step, reason string) {
	s.Verdict, s.Reason, s.Limit = check.NotChecked, reason, nil
	c.add(s)
}

// addLoaded adds a step that rests on the loads: while one of them is not stated it is not OK.
func (c *calc) addLoaded(s check.Step) check.Step {
	if s = s.Settled(); s.Verdict == check.OK && c.partial != "" {
		s.Verdict, s.Reason = check.NotChecked, "holds for the loads that are stated, but "+c.partial
	}
	return c.add(s)
}

// worst adds, of the steps f makes for each combination, the one nearest its limit, and says in its
// note which combination that was.
func (c *calc) worst(f func(s solution) check.Step) check.Step {
	var most check.Step
	for i, s := range c.solved {
		step := f(s).Settled()
		step.Note = join(step.Note, s.name)
		if i == 0 || step.Ratio > most.Ratio {
			most = step
		}
	}
	return c.addLoaded(most)
}

// heaviest returns the solution of the combination with the greatest load.
func (c *calc) heaviest() solution {
	h := c.solved[0]
	for _, s := range c.solved[1:] {
		if s.total() > h.total() {
			h = s
		}
	}
	return h
}

func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}
