package main

import (
	"encoding/json"
	"fmt"
	"io"
	"sort"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/thermal"
	"standclear/detail/sheet"
	"standclear/detail/unit"
)

// summary prints what was written and how the checks stand.
func (j *job) summary(w io.Writer, dir string, d drawn) error {
	fmt.Fprintf(w, "%s\n%s in %s:", j.title(), count(len(d.files), "file"), dir)
	for _, s := range d.sheets {
		fmt.Fprintf(w, " %s", s.ID)
	}
	a := j.assembly
	ids := sheet.Names(sheet.Options{Heat: &thermal.Result{}}) // of every set there can be
	fmt.Fprintf(w, "\n%s%s, %s, %s, %s\n", leftOverLine(leftOver(dir, ids, d.files)), count(len(a.Blocks), "block"), count(a.Count(detail.Bolt), "fastener"), count(a.Count(detail.Washer), "washer"), count(len(j.spec.Defaults), "default"))
	if d.differs != nil {
		fmt.Fprint(w, d.differs.head())
	}
	fmt.Fprint(w, j.heatLine())
	return j.table(w, true)
}

// summaryJSON writes the same as one JSON object; the checks themselves are in checks.json of the set.
func (j *job) summaryJSON(w io.Writer, dir string, d drawn, units *unit.System) error {
	out := struct {
		Project    string              `json:"project"`
		Parameters string              `json:"parameters"`
		Program    string              `json:"program"`
		Folder     string              `json:"folder"`
		Sheets     []string            `json:"sheets"`
		Files      []string            `json:"files"`
		Left       []string            `json:"from_an_earlier_drawing"`
		Counts     map[string]int      `json:"counts"`
		Verdict    string              `json:"verdict"`
		Open       []map[string]string `json:"open_checks"`
		Heat       any                 `json:"heat_added"`
	}{Project: j.title(), Parameters: j.spec.Hash(), Program: "standclear " + version, Folder: dir, Sheets: []string{}, Files: []string{}, Counts: j.report.Counts(), Verdict: j.report.Worst().String(), Open: []map[string]string{},
		Left: append([]string{}, leftOver(dir, sheet.Names(sheet.Options{Heat: &thermal.Result{}}), d.files)...)}
	for _, s := range d.sheets {
		out.Sheets = append(out.Sheets, s.ID)
	}
	for _, f := range d.files {
		out.Files = append(out.Files, f.name)
	}
	for _, s := range j.shown().Steps {
		if s.Verdict > check.OK {
			out.Open = append(out.Open, map[string]string{"id": s.ID, "verdict": s.Verdict.String(), "reason": s.Reason, "smallest_change": s.Fix})
		}
	}
	if j.heat != nil {
		out.Heat = check.JSONAmount(unit.Conductance(j.heat.Drawn().Run.V).Q(), units)
	}
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(out)
}

// heatLine says what the attachment costs in heat; "" when it is not known.
func (j *job) heatLine() string {
	if j.heat == nil {
		return ""
	}
	sys := j.words()
	d := j.heat.Drawn()
	t := "heat: the attachment adds " + unit.Conductance(d.Run.V).Q().Text(sys)
	if days := j.spec.Site.DegreeDays; days != nil {
		t += ", " + unit.Energy(d.Season(float64(*days)).V).Q().Text(sys) + " a season"
	}
	return fmt.Sprintf("%s; %.0f %% less than a ledger tight to the sheathing\n", t, 100*j.heat.Saved(d))
}

// table prints the checks; short leaves out what is well within its limit.
func (j *job) table(w io.Writer, short bool) error {
	fmt.Fprintln(w)
	steps := j.pick(short)
	rows := make([][]string, 0, len(steps)+1)
	rows = append(rows, []string{"CHECK", "WHERE", "VALUE", "LIMIT", "RATIO", "VERDICT"})
	sys, colour := j.words(), coloured(w)
	for i := range steps {
		s := &steps[i]
		limit, ratio := "-", "-"
		if s.Limit != nil {
			limit, ratio = s.LimitText(sys), s.RatioText()+s.CapText()
		}
		value := "-"
		if !s.Bare() {
			value = s.Value.Text(sys)
		}
		rows = append(rows, []string{s.Name, s.Where, value, limit, ratio, tintIf(colour, s.Verdict.String())})
	}
	if err := columns(w, rows); err != nil {
		return err
	}
	for i := range j.shown().Steps {
		s := &j.shown().Steps[i]
		if s.Verdict > check.OK && s.Reason != "" {
			name := s.Name + ": "
			if strings.HasPrefix(s.Reason, s.Name) {
				name = ""
			}
			fmt.Fprintf(w, "%s: %s%s\n", tint(w, s.Verdict.String()), name, s.Reason)
			if s.Fix != "" {
				fmt.Fprintf(w, "  smallest change: %s\n", s.Fix)
			}
		}
	}
	var unstated []string
	if !short {
		unstated = j.unstated()
	}
	if len(unstated) > 0 {
		fmt.Fprintf(w, "To be stated, each with a sample that shows how it is written and is no advice:\n%s\n", strings.Join(unstated, "\n"))
	}
	_, err := fmt.Fprintf(w, "%s. A calculation aid: local code and a licensed engineer decide.\n", j.verdict())
	if err == nil && !short {
		_, err = fmt.Fprintln(w, j.next(unstated))
	}
	return err
}

// pick returns every check that is not OK, then, for a short table, the nearest to their limits.
func (j *job) pick(short bool) []check.Step {
	if !short {
		return j.shown().Steps
	}
	var open, good []check.Step
	for _, s := range j.shown().Steps {
		switch {
		case s.Verdict > check.OK:
			open = append(open, s)
		case s.Verdict == check.OK:
			good = append(good, s)
		}
	}
	sort.SliceStable(good, func(a, b int) bool { return good[a].Ratio > good[b].Ratio })
	return append(open, good[:min(10, len(good))]...)
}
