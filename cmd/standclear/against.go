package main

import (
	"fmt"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/sheet"
	"standclear/detail/sheet/cloud"
	"standclear/detail/spec"
	"standclear/detail/unit"
	"standclear/render"
)

// changesFile is what changed, among the files of a set.
const changesFile = "changes.txt"

// changes is what differs from an earlier state of the project.
type changes struct {
	from   string // name of its file
	mark   string // on the clouds
	was    *job
	now    *job
	sheets []cloud.Change
}

// earlier is an earlier state of the project.
type earlier struct {
	from string // name of its file as given
	job  *job
}

// loadOld reads, builds and checks the earlier state, as the new one is; what is wrong with it names its file.
func (s *source) loadOld(e env, name string, args []string) (*earlier, int) {
	if name == "-" && slices.Contains(args, "-") {
		fmt.Fprintln(e.err, "standclear draw: --against: standard input is the project already; name the file of the earlier state")
		return nil, exitInput
	}
	old := source{heat: s.heat}
	from, src, err := old.read(e, []string{name})
	if err != nil {
		fmt.Fprintf(e.err, "standclear draw: --against %s: %v\n", name, err)
		return nil, exitInput
	}
	j, code := old.build(e, from, src)
	return &earlier{name, j}, code
}

// against clouds on the sheets what differs from the earlier state, and tells what it is.
func (j *job) against(old *earlier, sheets []*render.Sheet, o sheet.Options) (*changes, error) {
	was := old.job
	c := &changes{from: old.from, mark: newest(was.spec.Project.Revisions, j.spec.Project.Revisions), was: was, now: j}
	o.Heat = was.heat
	var err error
	c.sheets, err = cloud.Draw(sheets, sheet.Compose(was.assembly, &was.report, was.results, o), c.mark)
	return c, err
}

// newest is the mark of the newest revision, unless the earlier state had it already: then this one has no entry
// yet.
func newest(was, now []spec.Revision) string {
	if len(now) == 0 {
		return cloud.Next
	}
	mark := now[len(now)-1].Mark
	if slices.ContainsFunc(was, func(r spec.Revision) bool { return r.Mark == mark }) {
		return cloud.Next
	}
	return mark
}

// none reports whether nothing differs.
func (c *changes) none() bool {
	return len(c.sheets) == 0 && len(spec.Changes(c.was.spec, c.now.spec)) == 0
}

// head says in one line how much differs.
func (c *changes) head() string {
	if c.none() {
		return "nothing differs from " + c.from + "\n"
	}
	clouds, on := 0, 0
	for _, s := range c.sheets {
		clouds += s.Clouds
		if s.Clouds > 0 {
			on++
		}
	}
	t := fmt.Sprintf("against %s: %s changed, %s on %s, marked %s; all in %s\n", c.from,
		count(len(spec.Changes(c.was.spec, c.now.spec)), "parameter"), count(clouds, "cloud"), count(on, "sheet"), c.mark, changesFile)
	if c.mark == cloud.Next {
		t += "  no entry of project.revisions is newer than those of " + c.from + "; add one, and its mark takes the place of " + cloud.Next + "\n"
	}
	return t
}

// text lists what differs: parameters, checks, quantities, then sheet by sheet.
func (c *changes) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\nfrom %s, parameters %s\nto   %s, parameters %s\nclouds are marked %s\n", c.now.title(), c.from, c.was.spec.Hash(), c.now.spec.Source, c.now.spec.Hash(), c.mark)
	part := func(title string, lines []string) {
		if len(lines) == 0 {
			lines = []string{"none"}
		}
		fmt.Fprintf(&b, "\n%s\n  %s\n", title, strings.Join(lines, "\n  "))
	}
	part("PARAMETERS", c.parameters())
	part("CHECKS THAT TURNED", c.checks())
	part("QUANTITIES", c.quantities())
	part("SHEETS", c.onSheets())
	return b.String()
}

func (c *changes) parameters() []string {
	var out []string
	for _, d := range spec.Changes(c.was.spec, c.now.spec) {
		out = append(out, fmt.Sprintf("%s: %s -> %s", d.Key, orNothing(d.Old), orNothing(d.New)))
	}
	return out
}

// checks are those whose verdict is another, that are new, or that are no longer done.
func (c *changes) checks() []string {
	name := func(s check.Step) string {
		if s.Where != "" {
			return s.Name + " (" + s.Where + ")"
		}
		return s.Name
	}
	same := func(s check.Step) func(o check.Step) bool {
		return func(o check.Step) bool { return o.ID == s.ID }
	}
	var out []string
	for _, s := range c.now.report.Steps {
		i := slices.IndexFunc(c.was.report.Steps, same(s))
		switch {
		case i < 0 && s.Verdict != check.Info:
			out = append(out, fmt.Sprintf("%s: new, %s", name(s), s.Verdict))
		case i >= 0 && c.was.report.Steps[i].Verdict != s.Verdict:
			out = append(out, fmt.Sprintf("%s: %s -> %s", name(s), c.was.report.Steps[i].Verdict, s.Verdict))
		}
	}
	for _, s := range c.was.report.Steps {
		if s.Verdict != check.Info && !slices.ContainsFunc(c.now.report.Steps, same(s)) {
			out = append(out, fmt.Sprintf("%s: no longer done, was %s", name(s), s.Verdict))
		}
	}
	return out
}

// quantities are the parts whose number or size is another, by mark and name; what stands there already is left out.
func (c *changes) quantities() []string {
	sys := c.now.spec.Project.System
	now, was := c.now.assembly.Schedule(), c.was.assembly.Schedule()
	name := func(l detail.Line) string { return strings.TrimSpace(l.Mark + " " + l.Name) }
	side := func(of []detail.Line, n string) (text string, rows []string) {
		sum := 0
		for _, l := range of {
			if name(l) == n && !l.Existing {
				sum += l.Qty
				rows = append(rows, strings.TrimSpace(fmt.Sprintf("%d of %s %s", l.Qty, sizeText(l, sys), l.Material)))
			}
		}
		switch len(rows) {
		case 0:
			return "none", nil
		case 1:
			return rows[0], rows
		}
		return fmt.Sprintf("%d in %d sizes", sum, len(rows)), rows
	}
	var names, out []string
	for _, l := range slices.Concat(now, was) {
		n := name(l)
		if slices.Contains(names, n) {
			continue
		}
		names = append(names, n)
		a, old := side(was, n)
		b, rows := side(now, n)
		switch {
		case slices.Equal(old, rows):
		case a == b:
			out = append(out, fmt.Sprintf("%s: %s, others than before", n, b))
		default:
			out = append(out, fmt.Sprintf("%s: %s -> %s", n, a, b))
		}
	}
	return out
}

func sizeText(l detail.Line, sys unit.System) string {
	var out []string
	for _, v := range l.Size {
		if v > 0 {
			out = append(out, v.Text(sys))
		}
	}
	return strings.Join(out, " x ")
}

func (c *changes) onSheets() []string {
	var out []string
	for _, s := range c.sheets {
		switch {
		case s.New:
			out = append(out, s.Sheet+": new")
		case s.Gone:
			out = append(out, s.Sheet+": no longer in the set")
		default:
			t := s.Sheet + ": " + count(s.Clouds, "cloud")
			if len(s.Marks) > 0 {
				t += "; cut outlines of " + strings.Join(s.Marks, ", ")
			}
			out = append(out, t)
		}
		for _, l := range s.Lost {
			out = append(out, "  no longer there: "+l)
		}
	}
	return out
}
