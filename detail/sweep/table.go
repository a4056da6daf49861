package sweep

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"
	"text/tabwriter"

	"standclear/detail/unit"
)

// WriteTable prints the rows as a table for people.
func WriteTable(w io.Writer, axes []Axis, rows []Row, warm bool, sys unit.System) error {
	t := tabwriter.NewWriter(w, 2, 4, 2, ' ', 0)
	for _, a := range axes {
		fmt.Fprintf(t, "%s\t", a.Key)
	}
	fmt.Fprint(t, "BLOCKS\tFASTENERS\tSPACING\t")
	if warm {
		fmt.Fprint(t, "HEAT\t")
	}
	fmt.Fprint(t, "RATIO\tVERDICT\tGOVERNS\n")
	for i := range rows {
		r := &rows[i]
		for _, v := range r.Values {
			fmt.Fprintf(t, "%s\t", v)
		}
		if r.Problem != "" {
			fmt.Fprintf(t, "-\t-\t-\t%s-\tINVALID\t%s\n", strings.Repeat("-\t", b2i(warm)), r.Problem)
			continue
		}
		fmt.Fprintf(t, "%d\t%d\t%s\t", r.Blocks, r.Fasteners, unit.Length(r.Spacing).Text(sys))
		if warm {
			fmt.Fprintf(t, "%s\t", r.heatText(sys))
		}
		fmt.Fprintf(t, "%s\t%s\t%s\n", r.ratioText(), r.verdict(), r.governs())
	}
	if err := t.Flush(); err != nil || !warm {
		return err
	}
	return writeCold(w, rows)
}

// writeCold says of which designs the heat is not known, and why.
func writeCold(w io.Writer, rows []Row) error {
	var why []string
	which := map[string][]string{}
	for i := range rows {
		r := &rows[i]
		if r.Heat != nil || r.Cold == "" || r.Problem != "" {
			continue
		}
		if which[r.Cold] == nil {
			why = append(why, r.Cold)
		}
		which[r.Cold] = append(which[r.Cold], strings.Join(r.Values, ", "))
	}
	for _, c := range why {
		if _, err := fmt.Fprintf(w, "NOT CHECKED, heat of %s: %s\n", strings.Join(which[c], "; "), c); err != nil {
			return err
		}
	}
	return nil
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// verdict counts what fails and what is open.
func (r *Row) verdict() string {
	switch {
	case r.Problem != "":
		return "INVALID"
	case r.Fails > 0:
		return fmt.Sprintf("%d FAIL", r.Fails)
	case r.NotChecked > 0:
		return fmt.Sprintf("%d NOT CHECKED", r.NotChecked)
	case r.Engineer > 0:
		return fmt.Sprintf("no FAIL, %d ENGINEER", r.Engineer)
	}
	return "OK"
}

func (r *Row) ratioText() string {
	if r.Governs.Limit == nil {
		return "-"
	}
	return strconv.FormatFloat(r.Ratio, 'f', 2, 64)
}

// governs names the check that governs and its place.
func (r *Row) governs() string {
	switch {
	case r.Governs.ID == "":
		return "-"
	case r.Governs.Where == "":
		return r.Governs.Name
	}
	return r.Governs.Name + ", " + r.Governs.Where
}

// Failed names the check that governs, its place and its ratio.
func (r *Row) Failed() string {
	if r.Governs.Limit == nil {
		return r.governs()
	}
	return r.governs() + ", ratio " + r.ratioText()
}

func (r *Row) heatText(sys unit.System) string {
	if r.Heat == nil {
		return "NOT CHECKED"
	}
	t := unit.Conductance(r.Heat.Run).Q().Text(sys) + " within " + unit.Conductance(r.Heat.Err).Q().Text(sys)
	if !r.Heat.Solved {
		t += " (between)"
	}
	return t
}

// WriteCSV writes the rows; lengths in millimetres and heat in W/K, whatever the units of the project.
func WriteCSV(w io.Writer, axes []Axis, rows []Row, warm bool) error {
	c := csv.NewWriter(w)
	var head []string
	for _, a := range axes {
		head = append(head, a.Key)
	}
	head = append(head, "blocks", "fasteners", "spacing_mm", "ratio", "verdict", "fails", "engineer", "not_checked", "check", "name", "where", "problem")
	if warm {
		head = append(head, "heat_w_per_k", "heat_within_w_per_k", "heat_solved", "heat_not_checked")
	}
	if err := c.Write(head); err != nil {
		return err
	}
	for i := range rows {
		r := &rows[i]
		line := append([]string(nil), r.Values...)
		line = append(line, strconv.Itoa(r.Blocks), strconv.Itoa(r.Fasteners), short(r.Spacing), r.ratioText(), r.word(),
			strconv.Itoa(r.Fails), strconv.Itoa(r.Engineer), strconv.Itoa(r.NotChecked), r.Governs.ID, r.Governs.Name, r.Governs.Where, r.Problem)
		if warm && r.Heat != nil {
			line = append(line, short(r.Heat.Run), short(r.Heat.Err), map[bool]string{true: "yes", false: "no"}[r.Heat.Solved], "")
		} else if warm {
			line = append(line, "", "", "", r.Cold)
		}
		if err := c.Write(line); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

func (r *Row) word() string {
	if r.Problem != "" {
		return "INVALID"
	}
	return r.Verdict.String()
}

func short(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// JSON writes rows one by one as they come, as one JSON object.
type JSON struct {
	w     io.Writer
	axes  []Axis
	count int
}

type jsonRow struct {
	Values     map[string]string `json:"values"`
	Set        []string          `json:"set"`
	Verdict    string            `json:"verdict"`
	Problem    string            `json:"problem,omitempty"`
	Blocks     int               `json:"blocks"`
	Fasteners  int               `json:"fasteners"`
	Spacing    float64           `json:"spacing_mm"`
	Ratio      *float64          `json:"ratio,omitempty"`
	Check      string            `json:"check,omitempty"`
	Name       string            `json:"name,omitempty"`
	Where      string            `json:"where,omitempty"`
	Fails      int               `json:"fails"`
	Engineer   int               `json:"engineer"`
	NotChecked int               `json:"not_checked"`
	Failing    []string          `json:"failing,omitempty"`
	Heat       *jsonHeat         `json:"heat,omitempty"`
	Cold       string            `json:"heat_not_checked,omitempty"`
}

type jsonHeat struct {
	Run    float64 `json:"w_per_k"`
	Err    float64 `json:"within_w_per_k"`
	Solved bool    `json:"solved"`
}

// NewJSON begins the object.
func NewJSON(w io.Writer, project string, axes []Axis) (*JSON, error) {
	var keys []string
	for _, a := range axes {
		keys = append(keys, a.Key)
	}
	head, err := json.Marshal(struct {
		Project string   `json:"project"`
		Vary    []string `json:"vary"`
	}{project, keys})
	if err != nil {
		return nil, err
	}
	_, err = fmt.Fprintf(w, "%s,\n\"designs\": [", head[:len(head)-1])
	return &JSON{w: w, axes: axes}, err
}

// Row writes one row.
func (j *JSON) Row(r *Row) error {
	out := jsonRow{Values: map[string]string{}, Set: r.Sets, Verdict: r.word(), Problem: r.Problem, Blocks: r.Blocks, Fasteners: r.Fasteners,
		Spacing: r.Spacing, Check: r.Governs.ID, Name: r.Governs.Name, Where: r.Governs.Where, Fails: r.Fails, Engineer: r.Engineer, NotChecked: r.NotChecked, Failing: r.Failing, Cold: r.Cold}
	for i, a := range j.axes {
		out.Values[a.Key] = r.Values[i]
	}
	if r.Governs.Limit != nil {
		out.Ratio = &r.Ratio
	}
	if r.Heat != nil {
		out.Heat = &jsonHeat{r.Heat.Run, r.Heat.Err, r.Heat.Solved}
	}
	b, err := json.Marshal(out)
	if err != nil {
		return err
	}
	comma := ","
	if j.count == 0 {
		comma = ""
	}
	j.count++
	_, err = fmt.Fprintf(j.w, "%s\n%s", comma, b)
	return err
}

// End ends the object, and says whether all designs are in it.
func (j *JSON) End(complete bool) error {
	_, err := fmt.Fprintf(j.w, "\n],\n\"complete\": %v\n}\n", complete)
	return err
}

// Summary says in one line how many designs fail nothing.
func Summary(rows []Row, of int) string {
	good, bad, invalid := 0, 0, 0
	for i := range rows {
		switch r := &rows[i]; {
		case r.Problem != "":
			invalid++
		case r.Feasible():
			good++
		case r.Fails > 0:
			bad++
		}
	}
	t := fmt.Sprintf("%d of %d designs tried: in %d no check fails, in %d one fails, %d could not be fully checked, %d are invalid", len(rows), of, good, bad, len(rows)-good-bad-invalid, invalid)
	if len(rows) < of {
		t = "BROKEN OFF: " + t
	}
	return t
}
