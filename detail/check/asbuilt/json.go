package asbuilt

import (
	"encoding/json"
	"io"

	"standclear/detail/check"
	"standclear/detail/unit"
)

// said is a word or an amount.
func said(v Value, kind unit.Kind, alone *unit.System) any {
	if v.Word != "" {
		return v.Word
	}
	return check.JSONAmount(unit.Quantity{V: v.V, Kind: kind}, alone)
}

type jsonItem struct {
	Key       string  `json:"key"`
	Name      string  `json:"name"`
	Where     string  `json:"where,omitempty"`
	Drawn     any     `json:"drawn"`
	Found     any     `json:"found"`
	Tolerance any     `json:"tolerance,omitempty"`
	Source    string  `json:"tolerance_source"`
	Verdict   Verdict `json:"verdict"`
	Reason    string  `json:"reason,omitempty"`
	Remedy    string  `json:"to_put_it_right,omitempty"`
}

type jsonTurn struct {
	ID      string   `json:"id"`
	Name    string   `json:"name"`
	Where   string   `json:"where,omitempty"`
	Was     any      `json:"drawn"`
	Value   any      `json:"measured"`
	Limit   any      `json:"limit"`
	Ratio   float64  `json:"ratio"`
	From    string   `json:"verdict_drawn,omitempty"`
	Verdict string   `json:"verdict"`
	Worse   bool     `json:"worse"`
	Clause  string   `json:"clause,omitempty"`
	Reason  string   `json:"reason,omitempty"`
	Causes  []string `json:"causes,omitempty"`
	Remedy  string   `json:"smallest_remedy,omitempty"`
}

// WriteJSON writes the result as one JSON object, every quantity in inch-pound and SI units, or in the one
// the header asks for; null is a value that
// was not measured or is not there.
func (r *Result) WriteJSON(w io.Writer, h check.Header) error {
	out := struct {
		Project    string         `json:"project"`
		Parameters string         `json:"parameters"`
		Program    string         `json:"program"`
		By         string         `json:"measured_by,omitempty"`
		Date       string         `json:"date,omitempty"`
		Bad        bool           `json:"fails"`
		Counts     map[string]int `json:"counts"`
		Items      []jsonItem     `json:"measured"`
		Turns      []jsonTurn     `json:"recheck"`
		Already    []string       `json:"fails_as_drawn"`
		Notes      []string       `json:"notes"`
		Cautions   []string       `json:"cautions"`
	}{h.Project, h.Parameters, h.Program, r.By, r.Date, r.Bad(), map[string]int{"fails": r.Count(Fails), "engineer": r.Count(Engineer), "off": r.Count(Off), "not_checked": r.Count(NotChecked), "ok": r.Count(OK)},
		[]jsonItem{}, []jsonTurn{}, append([]string{}, r.Already...), r.Notes, r.Report.Cautions}
	for _, i := range r.Items {
		j := jsonItem{Key: i.Key, Name: i.Name, Where: i.Where, Drawn: said(i.Drawn, i.Kind, h.Units), Source: i.Source, Verdict: i.Verdict, Reason: i.Reason, Remedy: i.Remedy}
		if i.Found != nil {
			j.Found = said(*i.Found, i.Kind, h.Units)
		}
		if !i.Exact {
			j.Tolerance = said(Value{V: i.Tolerance.MM()}, unit.KLength, h.Units)
		}
		out.Items = append(out.Items, j)
	}
	for _, t := range r.Turns {
		s := t.Step
		j := jsonTurn{ID: s.ID, Name: s.Name, Where: s.Where, Value: said(Value{V: s.Value.V}, s.Value.Kind, h.Units), Ratio: s.Ratio, Verdict: s.Verdict.String(), Worse: t.Worse, Clause: s.Clause, Reason: s.Reason, Causes: t.Causes, Remedy: t.Remedy}
		if t.Where != "" {
			j.Where = t.Where
		}
		if t.Drawn != nil {
			j.Was, j.From = said(Value{V: t.Drawn.Value.V}, t.Drawn.Value.Kind, h.Units), t.Drawn.Verdict.String()
		}
		if s.Limit != nil {
			j.Limit = said(Value{V: s.Limit.V}, s.Limit.Kind, h.Units)
		}
		out.Turns = append(out.Turns, j)
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(out)
}
