package check

import (
	"encoding/json"
	"io"

	"standclear/detail/unit"
)

// Amount is a quantity in JSON: in inch-pound and SI units, or in one of them alone.
type Amount struct {
	Value   float64  `json:"value"`
	Unit    string   `json:"unit"`
	ValueSI *float64 `json:"value_si,omitempty"`
	UnitSI  *string  `json:"unit_si,omitempty"`
}

// JSONAmount returns q in the one system, for nil in both.
func JSONAmount(q unit.Quantity, alone *unit.System) Amount {
	if alone != nil {
		v, u := q.In(*alone)
		return Amount{Value: v, Unit: u}
	}
	ip, iu := q.In(unit.IP)
	si, su := q.In(unit.SI)
	return Amount{ip, iu, &si, &su}
}

type jsonArg struct {
	Symbol string `json:"symbol"`
	Amount
}

type jsonStep struct {
	ID      string    `json:"id"`
	Group   string    `json:"group"`
	Symbol  string    `json:"symbol,omitempty"`
	Name    string    `json:"name"`
	Formula string    `json:"formula,omitempty"`
	With    []jsonArg `json:"with,omitempty"`
	Amount
	Limit   *Amount  `json:"limit,omitempty"`
	Sense   string   `json:"sense,omitempty"`
	Ratio   *float64 `json:"ratio,omitempty"`
	Verdict string   `json:"verdict"`
	Clause  string   `json:"clause,omitempty"`
	Where   string   `json:"where,omitempty"`
	Reason  string   `json:"reason,omitempty"`
	Fix     string   `json:"smallest_change,omitempty"`
	Note    string   `json:"note,omitempty"`
}

type jsonReport struct {
	Project     string         `json:"project"`
	Parameters  string         `json:"parameters"`
	Program     string         `json:"program"`
	Verdict     string         `json:"verdict"`
	Counts      map[string]int `json:"counts"`
	Cautions    []string       `json:"cautions"`
	Checks      []jsonStep     `json:"checks"`
	Assumptions []Assumption   `json:"assumptions"`
	Defaults    []Assumption   `json:"defaults"`
}

// Header says whose report it is.
type Header struct {
	Project, Parameters, Program string
	Defaults                     []Assumption // parameters the project file left out
	Units                        *unit.System // the one to write quantities in, nil for both
}

// Counts returns how many steps have each verdict.
func (r *Report) Counts() map[string]int {
	return map[string]int{"fails": r.Count(Fails), "engineer": r.Count(Engineer), "not_checked": r.Count(NotChecked), "ok": r.Count(OK), "info": r.Count(Info)}
}

// WriteJSON writes the report as one JSON object, every quantity in inch-pound and SI units, or in the one the header
// asks for.
func (r *Report) WriteJSON(w io.Writer, h Header) error {
	out := jsonReport{Project: h.Project, Parameters: h.Parameters, Program: h.Program, Verdict: r.Worst().String(), Cautions: r.Cautions, Assumptions: r.Assumptions, Defaults: h.Defaults,
		Counts: r.Counts()}
	for _, s := range r.Steps {
		out.Checks = append(out.Checks, s.json(h.Units))
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(out)
}

func (s *Step) json(units *unit.System) jsonStep {
	j := jsonStep{ID: s.ID, Group: s.Group.String(), Symbol: s.Symbol, Name: s.Name, Formula: s.Formula, Amount: JSONAmount(s.Value, units),
		Verdict: s.Verdict.String(), Clause: s.Clause, Where: s.Where, Reason: s.Reason, Fix: s.Fix, Note: s.Note}
	for _, a := range s.With {
		j.With = append(j.With, jsonArg{a.Symbol, JSONAmount(a.Value, units)})
	}
	if s.Limit != nil {
		l, r := JSONAmount(*s.Limit, units), s.Ratio
		j.Limit, j.Ratio, j.Sense = &l, &r, "at most"
		if s.Sense == AtLeast {
			j.Sense = "at least"
		}
	}
	return j
}
