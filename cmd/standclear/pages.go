package main

import (
	"fmt"
	"slices"
	"strings"

	"standclear/detail/check"
	"standclear/detail/sheet"
	"standclear/render"
	"standclear/render/html"
)

// page is the set on one page: the table of checks, and every sheet that is given.
func (j *job) page(sheets []*render.Sheet) html.Page {
	var ids []string
	for _, s := range sheets {
		ids = append(ids, s.ID)
	}
	p := j.checksPage(ids)
	p.Sheets = sheets
	return p
}

// checksPage is the table of checks alone, for a set of these sheets.
func (j *job) checksPage(ids []string) html.Page {
	p := html.Page{Title: j.title(), Notes: j.report.Cautions, Head: []string{"Check", "Where", "Value", "Limit", "Ratio", "Verdict", "Clause", "Why, and the smallest change"}, Verdict: j.verdict(), Bad: j.report.Count(check.Fails) > 0}
	sys := j.spec.Project.System
	for _, s := range j.report.Steps {
		limit, ratio := "", ""
		if s.Limit != nil {
			limit, ratio = s.Limit.Text(sys), s.RatioText()
		}
		p.Rows = append(p.Rows, html.Row{Sheet: drawnOn(s.Group, ids), Class: classOf(s.Verdict), Cells: []string{s.Name, s.Where, s.Value.Text(sys), limit, ratio, s.Verdict.String(), s.Clause, strings.TrimSpace(s.Reason + " " + s.Fix)}})
	}
	return p
}

// drawnOn returns the sheet that shows what a group of checks is about, the first where that one is not there.
func drawnOn(g check.Group, ids []string) string {
	want := map[check.Group]string{check.Beam: "A-201", check.Connection: "S-501", check.Block: "S-501", check.Floor: "A-101", check.Fit: "A-201", check.Water: "A-301", check.Heat: "A-311", check.Moisture: "A-311"}[g]
	switch {
	case slices.Contains(ids, want):
		return want
	case len(ids) > 0:
		return ids[0]
	}
	return ""
}

// classOf is how the pages colour a verdict.
func classOf(v check.Verdict) string {
	return map[check.Verdict]string{check.OK: "ok", check.Fails: "fails", check.Engineer: "engineer", check.NotChecked: "unchecked"}[v]
}

// calculation is the report as a page: a chapter a group, then what it rests on.
func (j *job) calculation() html.Report {
	notes := append(slices.Clip(j.report.Cautions), "Parameters "+j.spec.Hash()+", standclear "+version+".")
	r := html.Report{Title: j.title(), Notes: notes, Verdict: j.verdict(), Bad: j.report.Count(check.Fails) > 0}
	for g := check.Loads; g <= check.Scope; g++ {
		c := html.Chapter{Title: g.String(), Figures: sheet.Figures(j.assembly, &j.report, j.results, g)}
		for _, s := range j.report.Steps {
			if s.Group != g {
				continue
			}
			e := html.Entry{ID: s.ID, Name: s.Name, Class: classOf(s.Verdict)}
			if s.Verdict != check.Info {
				e.Verdict = s.Verdict.String()
			}
			if s.Where != "" {
				e.Name += " (" + s.Where + ")"
			}
			for _, row := range s.Rows(j.spec.Project.System) {
				e.Lines = append(e.Lines, row.Head+row.Text)
			}
			c.Entries = append(c.Entries, e)
		}
		if len(c.Entries) > 0 {
			r.Chapters = append(r.Chapters, c)
		}
	}
	last := html.Chapter{Title: "Assumptions"}
	for i, a := range j.report.Assumptions {
		last.Entries = append(last.Entries, html.Entry{ID: fmt.Sprintf("assumption_%d", i+1), Name: a.Text, Lines: []string{strings.TrimPrefix(a.Key+"; "+a.Source, "; ")}})
	}
	r.Chapters = append(r.Chapters, last)
	return r
}
