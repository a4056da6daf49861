// Package check holds the result of a calculation as data: one Step a line, printed alike on the
// sheets, in the terminal, in JSON and in the calculation report.
//
//	r.Add(check.Step{
//		ID: "block_shear", Symbol: "V", Name: "shear on one block", Formula: "1.25 w s",
//		With:  []check.Arg{{"w", w.Q()}, {"s", s.Q()}},
//		Value: v.Q(), Limit: vr.Q(), Clause: "NDS 2018 12.3.1",
//	})
package check

import (
	"cmp"
	"math"
	"slices"

	"standclear/detail/unit"
)

// Verdict is what a check says. The zero value is Info: a computed number with no limit.
type Verdict int

// The verdicts, mildest first. A check that could not be done is NotChecked, never OK.
const (
	Info       Verdict = iota // a value others rest on
	OK                        // within its limit
	NotChecked                // could not be done; Reason says why
	Engineer                  // outside what this program may judge; Reason says why
	Fails                     // beyond its limit
)

// String returns the verdict as printed.
func (v Verdict) String() string {
	return [...]string{"-", "OK", "NOT CHECKED", "ENGINEER", "FAILS"}[v]
}

// Group is the part of the design a check belongs to, in the order a reader follows.
type Group int

// The groups.
const (
	Loads      Group = iota
	Beam             // the ledger between blocks
	Connection       // fasteners at every shear plane
	Block            // the eccentric block, its foot and its pad
	Floor            // rim, backing, ties: the path behind the wall
	Fit              // dimensions, clearances, access, order of layers
	Water            // flashing, laps, gap
	Heat             // heat loss and surface temperature
	Moisture         // mould, dew point, vapour
	Scope            // what puts the design outside this program
)

// String returns the heading of the group.
func (g Group) String() string {
	return [...]string{"Loads", "Ledger beam", "Fasteners", "Block", "Rim and floor", "Fit and access", "Water and air", "Heat", "Moisture", "Scope"}[g]
}

// Arg is one number put into a formula.
type Arg struct {
	Symbol string
	Value  unit.Quantity
}

// Sense says on which side of the limit a value is good.
type Sense int

// AtMost: value <= limit is good. AtLeast: value >= limit is good.
const (
	AtMost Sense = iota
	AtLeast
)

// Step is one line of the calculation.
//
// ID is stable, lower case, words joined by underscores; it is the key in checks.json. Ratio is
// demand over capacity (Value/Limit for AtMost, Limit/Value for AtLeast), 0 when there is no limit.
type Step struct {
	ID      string
	Group   Group
	Symbol  string
	Name    string
	Formula string
	With    []Arg
	Value   unit.Quantity
	Limit   *unit.Quantity // nil: no limit
	Sense   Sense
	Ratio   float64
	Cap     float64 // largest ratio that is still good; 0 is 1
	Clause  string  // standard and clause, or "judgement: ...", "common practice, no source"
	Where   string  // part marks: "B4, top row"
	Verdict Verdict
	Reason  string // why it fails, is not checked or goes to an engineer: what, how much, limit
	Fix     string // the smallest change that mends it, re-checked before it is offered
	Note    string // anything a reader must know beside the number
}

// Report is all steps of a design, in order, with what they rest on.
type Report struct {
	Steps       []Step
	Assumptions []Assumption
	Cautions    []string
}

// Assumption is a judgement or a default the numbers rest on.
type Assumption struct {
	Key    string `json:"key"` // project-file key that changes it, or "" when fixed
	Text   string `json:"text"`
	Source string `json:"source"` // "judgement", "default", or a standard
}

// Add appends a step, filling in its ratio and, when Verdict is Info and there is a limit, its
// verdict: OK up to a ratio of Cap (within 1e-9), Fails beyond.
func (r *Report) Add(s Step) {
	r.Steps = append(r.Steps, s.Settled())
}

// NoNumber is why a step is not checked whose value, limit or a number put in is infinite or none at all.
const NoNumber = "worked out to no number: an error of this program"

// Settled returns the step as Add would hold it, with its ratio and verdict.
func (s Step) Settled() Step {
	if !s.finite() {
		s.Value, s.Limit, s.With, s.Fix = unit.Quantity{}, nil, nil, ""
		s.Verdict, s.Reason = NotChecked, NoNumber
	}
	if s.Limit == nil {
		return s
	}
	s.Ratio = ratio(s.Value.V, s.Limit.V)
	if s.Sense == AtLeast {
		s.Ratio = ratio(s.Limit.V, s.Value.V)
		if s.Value.V < s.Limit.V && s.Ratio <= 1 { // both negative: the ratio says nothing
			s.Ratio = Beyond
		}
	}
	if s.Verdict == Info {
		if s.Used() <= 1+1e-9 {
			s.Verdict = OK
		} else {
			s.Verdict = Fails
		}
	}
	return s
}

// finite reports whether every number of the step is one.
func (s *Step) finite() bool {
	bad := func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }
	return !bad(s.Value.V) && (s.Limit == nil || !bad(s.Limit.V)) && !slices.ContainsFunc(s.With, func(a Arg) bool { return bad(a.Value.V) })
}

// Used returns the ratio over the largest that is still good: up to 1 is good.
func (s *Step) Used() float64 {
	if s.Cap == 0 {
		return s.Ratio
	}
	return s.Ratio / s.Cap
}

// NotUnder returns s with a value that must reach limit; while it does there is no reason and no fix.
func (s Step) NotUnder(value, limit unit.Quantity) Step {
	if value.V >= limit.V-slack {
		value.V = max(value.V, limit.V) // reached but for rounding
	}
	s.Value, s.Limit, s.Sense = value, Limit(limit), AtLeast
	return s.clear(value.V >= limit.V)
}

// NotOver returns s with a value that must stay within limit; while it does there is no reason and no fix.
func (s Step) NotOver(value, limit unit.Quantity) Step {
	if value.V <= limit.V+slack {
		value.V = min(value.V, limit.V) // kept but for rounding
	}
	s.Value, s.Limit, s.Sense = value, Limit(limit), AtMost
	return s.clear(value.V <= limit.V)
}

// Holds returns s as a fact that is kept, without reason and fix, or fails.
func (s Step) Holds(good bool) Step {
	s.Verdict = Fails
	if good {
		s.Verdict = OK
	}
	return s.clear(good)
}

// slack is how far a value may miss its limit by rounding, in the base unit of the quantity.
const slack = 1e-6

func (s Step) clear(good bool) Step {
	if good {
		s.Reason, s.Fix = "", ""
	}
	return s
}

// Bare reports whether the step carries no number: it states a fact, or what it works out was not checked.
func (s *Step) Bare() bool {
	return s.Limit == nil && s.Value == unit.Quantity{} && (s.Formula == "" || s.Verdict == NotChecked)
}

// LimitText prints the limit with its sense, "-" when there is none.
func (s *Step) LimitText(sys unit.System) string {
	switch {
	case s.Limit == nil:
		return "-"
	case s.Sense == AtLeast:
		return ">= " + s.Limit.Text(sys)
	}
	return "<= " + s.Limit.Text(sys)
}

// ratio of what is asked to what there is: Beyond when there is nothing and something is asked.
func ratio(asked, there float64) float64 {
	switch {
	case there > 0:
		return min(asked/there, Beyond)
	case asked <= there:
		return 0
	}
	return Beyond
}

// Beyond is the ratio printed when the capacity is nothing: any demand is too much.
const Beyond = 999

// Limit returns q as a limit for a Step.
func Limit(q unit.Quantity) *unit.Quantity { return &q }

// Worst returns the most severe verdict of the report; Info when it is empty.
func (r *Report) Worst() Verdict {
	w := Info
	for _, s := range r.Steps {
		if s.Verdict > w {
			w = s.Verdict
		}
	}
	return w
}

// Governs returns the check that fails furthest beyond its limit, of strength if one of those fails; where none does,
// the check of strength nearest its limit; nil when there is none. Of strength are those of the ledger, the fasteners,
// the block, the rim and the floor. A distance or a number that is just reached is no sign of how much a design has left.
func (r *Report) Governs() *Step {
	var found [3]*Step // strength that fails, another that fails, strength that holds
	for i := range r.Steps {
		s := &r.Steps[i]
		strength := s.Group >= Beam && s.Group <= Floor
		n := 0
		switch {
		case s.Verdict == Fails && !strength:
			n = 1
		case s.Verdict != Fails && (!strength || s.Limit == nil || s.Sense == AtLeast):
			continue
		case s.Verdict != Fails:
			n = 2
		}
		if found[n] == nil || s.Used() > found[n].Used() {
			found[n] = s
		}
	}
	return cmp.Or(found[:]...)
}

// Count returns how many steps have verdict v.
func (r *Report) Count(v Verdict) int {
	n := 0
	for _, s := range r.Steps {
		if s.Verdict == v {
			n++
		}
	}
	return n
}

// Find returns the step with the given ID, or nil.
func (r *Report) Find(id string) *Step {
	for i := range r.Steps {
		if r.Steps[i].ID == id {
			return &r.Steps[i]
		}
	}
	return nil
}
