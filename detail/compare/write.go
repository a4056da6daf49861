package compare

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"standclear/detail/unit"
)

// letter names a column of the printed table.
func letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return fmt.Sprintf("A%d", i)
}

// WriteText writes the table for a terminal: a column for each design under a letter, what the letters stand for, and
// why anything is not checked.
func (t *Table) WriteText(w io.Writer) error {
	p := &printer{w: w}
	for i, d := range t.Designs {
		p.f("%s  %s", letter(i), d.Name)
		if c := strings.Join(d.Changes, ", "); c != "" && c != d.Name {
			p.f("  (%s)", c)
		}
		p.f("\n")
	}
	p.f("\n")
	tab := tabwriter.NewWriter(p, 0, 0, 2, ' ', 0)
	var head []string
	for i := range t.Designs {
		head = append(head, letter(i))
	}
	group := ""
	for _, r := range t.Rows {
		if r.Key == "governs" || r.Group == groupCost && !t.rated() && r.Key != "cost_sum" {
			continue // long words, they stand below; nothing to say
		}
		if r.Group != group {
			group = r.Group
			fmt.Fprintf(tab, "%s\t%s\n", strings.ToUpper(group), strings.Join(head, "\t"))
		}
		name := r.Name
		if r.Unit != "" && !slices.Contains([]string{"in", "mm", "%"}, r.Unit) { // lengths and shares say theirs
			name += ", " + r.Unit
		}
		var cells []string
		for _, c := range r.Cells {
			cells = append(cells, short(c.Text))
		}
		fmt.Fprintf(tab, "  %s\t%s\n", name, strings.Join(cells, "\t"))
	}
	if err := tab.Flush(); err != nil {
		return err
	}
	p.f("\n")
	for i, d := range t.Designs {
		p.f("%s  %s", letter(i), d.Says(t.Designs[0]))
		if g := d.Report.Governs(); g != nil {
			p.f("; governs: %s", g.ID)
		}
		p.f("\n")
	}
	t.reasons(p)
	p.f("A calculation aid: local code and a licensed engineer decide.\n")
	return p.err
}

// rated reports whether any project has rates.
func (t *Table) rated() bool {
	return slices.ContainsFunc(t.Designs, func(d *Design) bool { return d.Rates != nil })
}

// short keeps the first words of a cell: a verdict in capitals before a colon.
func short(s string) string {
	head, _, _ := strings.Cut(s, ":")
	return head
}

// reasons lists why cells are not checked, once for all designs that share a reason.
func (t *Table) reasons(p *printer) {
	type reason struct{ group, text string }
	var order []reason
	who := map[reason][]string{}
	for _, r := range t.Rows {
		for i, c := range r.Cells {
			if c.Open == "" || c.Quiet {
				continue
			}
			k := reason{r.Group, c.Open}
			if !slices.Contains(order, k) {
				order = append(order, k)
			}
			if l := letter(i); !slices.Contains(who[k], l) {
				who[k] = append(who[k], l)
			}
		}
	}
	for _, k := range order {
		p.f("%s, %s of %s: %s\n", notChecked, k.group, strings.Join(who[k], " "), k.text)
	}
}

// printer keeps the first write error.
type printer struct {
	w   io.Writer
	err error
}

func (p *printer) f(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format, args...)
	}
}

// Write passes on what a tabwriter lays out.
func (p *printer) Write(b []byte) (int, error) {
	if p.err != nil {
		return 0, p.err
	}
	n, err := p.w.Write(b)
	p.err = err
	return n, err
}

// WriteCSV writes the table with a column for each design: figures in the unit of the row, words, or NOT CHECKED
// with its reason.
func (t *Table) WriteCSV(w io.Writer) error {
	c := csv.NewWriter(w)
	head := []string{"group", "key", "name", "unit"}
	for _, d := range t.Designs {
		head = append(head, d.Name)
	}
	rows := [][]string{head}
	for _, r := range t.Rows {
		row := []string{r.Group, r.Key, r.Name, r.Unit}
		for _, cell := range r.Cells {
			row = append(row, cell.field(t.System))
		}
		rows = append(rows, row)
	}
	says := []string{"summary", "says", "what it fails or costs", ""}
	for _, d := range t.Designs {
		says = append(says, d.Says(t.Designs[0]))
	}
	return c.WriteAll(append(rows, says))
}

func (c Cell) field(sys unit.System) string {
	switch {
	case c.Open != "":
		return notChecked + ": " + c.Open
	case c.Q != nil:
		v, _ := c.Q.In(sys)
		return fmt.Sprintf("%.6g", v)
	}
	return c.Text
}

type jsonDesign struct {
	Key     string   `json:"key"`
	Name    string   `json:"name"`
	File    string   `json:"file"`
	Changes []string `json:"changes"`
	Hash    string   `json:"parameters,omitempty"`
	Says    string   `json:"says"`
	Why     string   `json:"structure_not_checked,omitempty"`
}

type jsonCell struct {
	Text    string   `json:"text"`
	Value   *float64 `json:"value,omitempty"`
	Unit    string   `json:"unit,omitempty"`
	ValueSI *float64 `json:"value_si,omitempty"`
	UnitSI  string   `json:"unit_si,omitempty"`
	ErrorSI *float64 `json:"error_si,omitempty"`
	Open    string   `json:"reason,omitempty"`
}

type jsonRow struct {
	Key   string              `json:"key"`
	Group string              `json:"group"`
	Name  string              `json:"name"`
	Cells map[string]jsonCell `json:"designs"` // by key of the design, written in order of the keys
}

// WriteJSON writes the table as one object, every quantity in inch-pound and SI units.
func (t *Table) WriteJSON(w io.Writer, program string) error {
	out := struct {
		Program string       `json:"program"`
		Designs []jsonDesign `json:"designs"`
		Rows    []jsonRow    `json:"rows"`
	}{Program: program}
	for _, d := range t.Designs {
		j := jsonDesign{Key: d.Key, Name: d.Name, File: d.File, Changes: append([]string{}, d.Changes...), Says: d.Says(t.Designs[0])}
		if d.Trial == nil {
			j.Why = d.Why
		} else {
			j.Hash = d.Trial.Spec.Hash()
		}
		out.Designs = append(out.Designs, j)
	}
	for _, r := range t.Rows {
		row := jsonRow{Key: r.Key, Group: r.Group, Name: r.Name, Cells: map[string]jsonCell{}}
		for i, c := range r.Cells {
			row.Cells[t.Designs[i].Key] = c.json(r)
		}
		out.Rows = append(out.Rows, row)
	}
	return encode(w, out)
}

func encode(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

func (c Cell) json(r Row) jsonCell {
	j := jsonCell{Text: c.Text, Open: c.Open}
	if c.Q == nil {
		return j
	}
	ip, iu := c.Q.In(unit.IP)
	si, su := c.Q.In(unit.SI)
	if r.Group == groupCost {
		iu, su = r.Unit, r.Unit
	}
	j.Value, j.Unit, j.ValueSI, j.UnitSI, j.ErrorSI = &ip, iu, &si, su, c.Err
	return j
}
