package check

import (
	"encoding/json"
	"io"

	"standclear/detail/unit"
)

// amount is a quantity in both systems.
type amount struct {
	Value   float64 `json:"value"`
	Unit    string  `json:"unit"`
	ValueSI float64 `json:"value_si"`
	UnitSI  string  `json:"unit_si"`
}

func amountOf(q unit.Quantity) amount {
	ip, iu := q.In(unit.IP)
	si, su := q.In(unit.SI)
	return amount{ip, iu, si, su}
}

type jsonArg struct {
	Symbol string `json:"symbol"`
	amount
}

type jsonStep struct {
	ID      string    `json:"id"`
	Group   string    `json:"group"`
	Symbol  string    `json:"symbol,omitempty"`
	Name    string    `json:"name"`
	Formula string    `json:"formula,omitempty"`
	With    []jsonArg `json:"with,omitempty"`
	amount
	Limit   *amount  `json:"limit,omitempty"`
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
}

// WriteJSON writes the report as one JSON object, every quantity in inch-pound and SI units.
func (r *Report) WriteJSON(w io.Writer, h Header) error {
	out := jsonReport{Project: h.Project, Parameters: h.Parameters, Program: h.Program, Verdict: r.Worst().String(), Cautions: r.Cautions, Assumptions: r.Assumptions, Defaults: h.Defaults,
		Counts: map[string]int{"fails": r.Count(Fails), "engineer": r.Count(Engineer), "not_checked": r.Count(NotChecked), "ok": r.Count(OK), "info": r.Count(Info)}}
	for _, s := range r.Steps {
		out.Checks = append(out.Checks, s.json())
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(out)
}

func (s *Step) json() jsonStep {
	j := jsonStep{ID: s.ID, Group: s.Group.String(), Symbol: s.Symbol, Name: s.Name, Formula: s.Formula, amount: amountOf(s.Value),
		Verdict: s.Verdict.String(), Clause: s.Clause, Where: s.Where, Reason: s.Reason, Fix: s.Fix, Note: s.Note}
	for _, a := range s.With {
		j.With = append(j.With, jsonArg{a.Symbol, amountOf(a.Value)})
	}
	if s.Limit != nil {
		l, r := amountOf(*s.Limit), s.Ratio
		j.Limit, j.Ratio, j.Sense = &l, &r, "at most"
		if s.Sense == AtLeast {
			j.Sense = "at least"
		}
	}
	return j
}
