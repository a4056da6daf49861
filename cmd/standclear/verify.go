package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/asbuilt"
	"standclear/detail/check/design"
	"standclear/detail/unit"
)

// verify holds what was measured on site against the design, or prints the sheet to fill in.
func verify(e env, args []string) int {
	f := pflag.NewFlagSet("verify", pflag.ContinueOnError)
	var src source
	measured := f.String("measured", "", "the field sheet that was filled in, `FIELD.yaml`, - for standard input")
	form := f.Bool("form", false, "print an empty field sheet of the project, drawn values beside each key")
	var how printing
	how.flags(f)
	how.unitFlag(f)
	strict := f.Bool("strict", false, "exit with 1 also when something is not measured, not checked or left to the engineer")
	src.plainFlags(f)
	if code, ok := parse(e, f, "standclear verify [PROJECT.yaml] --measured FIELD.yaml\nholds what was measured on the finished work against the design: what is within tolerance, and which checks turn\nwhen the project is built anew with the measured values.",
		"  standclear verify deck.yaml --form >field.yaml\n  standclear verify deck.yaml --measured field.yaml\n", args); !ok {
		return code
	}
	switch {
	case *form && (*measured != "" || how.json || how.quiet || how.units != "" || *strict):
		fmt.Fprintln(e.err, "standclear verify: --form prints an empty sheet and goes with no other flag but --demo and --set")
		return exitInput
	case !*form && *measured == "":
		fmt.Fprintln(e.err, "standclear verify: say what was measured: --measured FIELD.yaml (--form prints a sheet to fill in)")
		return exitInput
	case *measured == "-" && f.NArg() == 1 && f.Arg(0) == "-":
		fmt.Fprintln(e.err, "standclear verify: project and field sheet cannot both come from standard input")
		return exitInput
	}
	e, units, ok := how.read(e, "verify")
	if !ok {
		return exitInput
	}
	j, code := src.open(e, f.Args())
	if code != exitOK {
		return code
	}
	if err := j.reword(units); err != nil {
		fmt.Fprintf(e.err, "standclear verify: %v\n", err)
		return exitInput
	}
	if *form {
		return written(e, "verify", func(w io.Writer) error {
			_, err := w.Write(asbuilt.Form(j.title(), j.assembly, &j.report))
			return err
		})
	}
	r, code := j.fieldResult(e, *measured)
	if code != exitOK {
		return code
	}
	write := func(w io.Writer) error { return j.verified(w, r) }
	if how.json {
		write = func(w io.Writer) error {
			return r.WriteJSON(w, j.header(units))
		}
	}
	if code := written(e, "verify", write); code != exitOK {
		return code
	}
	if r.Bad() || *strict && r.Open() {
		return exitFails
	}
	return exitOK
}

// reword builds and checks the job anew with its reasons worded in another system of units; nil is its own.
func (j *job) reword(sys *unit.System) error {
	if sys == nil {
		return nil
	}
	j.spec.Wording = sys
	a, err := detail.Build(j.spec)
	if err == nil {
		j.assembly = a
		j.report, j.results = design.Check(a)
	}
	return err
}

// fieldResult reads a field sheet and verifies it; everything wrong with it is printed.
func (j *job) fieldResult(e env, from string) (*asbuilt.Result, int) {
	name, src, err := e.file(from)
	if err != nil {
		fmt.Fprintf(e.err, "standclear verify: the field sheet cannot be read: %v\n", err)
		return nil, exitInput
	}
	field, problems := asbuilt.Read(name, src, j.assembly)
	if !said(e, problems) {
		return nil, exitInput
	}
	defer e.busy("checking anew with what was measured")()
	r, err := asbuilt.Verify(asbuilt.Design{Assembly: j.assembly, Report: &j.report, Again: j.again}, field)
	if err != nil {
		fmt.Fprintf(e.err, "standclear verify: %s: %v\n", name, err)
		return nil, exitInput
	}
	return r, exitOK
}

// verified prints what was measured, then the checks that changed, then what fails and what mends it.
func (j *job) verified(w io.Writer, r *asbuilt.Result) error {
	head := j.title() + ", as measured"
	if r.By != "" {
		head += " by " + r.By
	}
	if r.Date != "" {
		head += " on " + r.Date
	}
	fmt.Fprintf(w, "%s\n\n", head)
	rows := [][]string{{"MEASURED", "WHERE", "DRAWN", "FOUND", "TOLERANCE", "VERDICT"}}
	var sources []string
	for _, g := range grouped(r) {
		k := slices.Index(sources, g.item.Source)
		if k < 0 {
			k, sources = len(sources), append(sources, g.item.Source)
		}
		near := ""
		if !g.item.Exact {
			near = asbuilt.NearText(g.item.Tolerance, r.System) + " "
		}
		rows = append(rows, []string{g.item.Name, marks(g.where), g.drawn, g.found, fmt.Sprintf("%s(%d)", near, k+1), tint(w, string(g.item.Verdict))})
	}
	if err := columns(w, rows); err != nil {
		return err
	}
	for k, s := range sources {
		fmt.Fprintf(w, "(%d) %s\n", k+1, s)
	}
	if err := j.turns(w, r); err != nil {
		return err
	}
	j.reasons(w, r)
	for _, n := range r.Notes {
		fmt.Fprintf(w, "note: %s\n", n)
	}
	_, err := fmt.Fprintf(w, "%s. A calculation aid: local code and a licensed engineer decide.\n", verifyVerdict(r))
	return err
}

// turns prints the checks that changed: those that got worse, then the ten nearest to their limits.
func (j *job) turns(w io.Writer, r *asbuilt.Result) error {
	if len(r.Turns) == 0 {
		fmt.Fprintf(w, "\nRE-CHECK: no check of the design changes\n\n")
		return nil
	}
	fmt.Fprintln(w)
	rows := [][]string{{"RE-CHECK", "WHERE", "DRAWN", "MEASURED", "LIMIT", "RATIO", "VERDICT"}}
	more := 0
	for _, k := range r.Turns {
		if !k.Worse {
			if more++; more > 10 {
				continue
			}
		}
		drawn, value, limit, ratio := "-", "-", "-", "-"
		if k.Drawn != nil && !k.Drawn.Bare() {
			drawn = k.Drawn.Value.Text(r.System)
		}
		if !k.Step.Bare() && k.Step.Verdict != check.NotChecked {
			value = k.Step.Value.Text(r.System)
		}
		if k.Step.Limit != nil {
			limit, ratio = k.Step.LimitText(r.System), k.Step.RatioText()+k.Step.CapText()
		}
		where := k.Step.Where
		if k.Where != "" {
			where = k.Where
		}
		rows = append(rows, []string{k.Step.Name, where, drawn, value, limit, ratio, tint(w, turnText(k))})
	}
	if err := columns(w, rows); err != nil {
		return err
	}
	if more > 10 {
		fmt.Fprintf(w, "and %s that changed and hold\n", count(more-10, "check"))
	}
	fmt.Fprintln(w)
	return nil
}

func turnText(k asbuilt.Turn) string {
	if k.Worse && k.Drawn != nil {
		return k.Step.Verdict.String() + ", was " + k.Drawn.Verdict.String()
	}
	return k.Step.Verdict.String()
}

// reasons prints why something is not as it should be and what mends it, what one remedy mends together.
func (j *job) reasons(w io.Writer, r *asbuilt.Result) {
	for _, name := range r.Already {
		fmt.Fprintf(w, "FAILS: %s: it fails as drawn already (standclear check)\n", name)
	}
	said := map[string]bool{}
	for _, k := range r.Turns {
		if !k.Worse || said[k.Remedy] && k.Remedy != "" {
			continue
		}
		said[k.Remedy] = true
		for _, o := range r.Turns {
			if o.Worse && o.Remedy == k.Remedy && (k.Remedy != "" || o.Step.ID == k.Step.ID && o.Where == k.Where) {
				fmt.Fprintf(w, "%s: %s\n", tint(w, o.Step.Verdict.String()), turnReason(o))
			}
		}
		if k.Remedy != "" {
			fmt.Fprintf(w, "  smallest remedy: %s\n", k.Remedy)
		}
	}
	for _, i := range r.Items {
		if i.Verdict == asbuilt.OK || i.Found == nil {
			continue
		}
		name := i.Name
		if i.Where != "" {
			name += " " + i.Where
		}
		fmt.Fprintf(w, "%s: %s: %s\n", tint(w, string(i.Verdict)), name, i.Reason)
		if i.Verdict == asbuilt.Fails && i.Remedy != "" && !said[i.Remedy] {
			fmt.Fprintf(w, "  to put it right: %s\n", i.Remedy)
		}
	}
}

// turnReason says why a check turned, its name said once.
func turnReason(k asbuilt.Turn) string {
	name := k.Step.Name
	if k.Where != "" {
		name += " at block " + k.Where
	}
	reason := strings.TrimPrefix(strings.TrimPrefix(k.Step.Reason, k.Step.Name), ": ")
	if len(reason) < len(k.Step.Reason) && strings.HasPrefix(reason, " is") {
		return name + reason
	}
	return name + ": " + strings.TrimSpace(reason)
}

func verifyVerdict(r *asbuilt.Result) string {
	t := fmt.Sprintf("%d fail, %d for the engineer, %d off but hold, %d not checked, %d within tolerance; of the checks %d turned to FAILS, %d to ENGINEER, %d to NOT CHECKED",
		r.Count(asbuilt.Fails), r.Count(asbuilt.Engineer), r.Count(asbuilt.Off), r.Count(asbuilt.NotChecked), r.Count(asbuilt.OK), r.Turned(check.Fails), r.Turned(check.Engineer), r.Turned(check.NotChecked))
	if e, n := r.Report.Count(check.Engineer), r.Report.Count(check.NotChecked); e+n > 0 {
		t += fmt.Sprintf("; the whole as measured leaves %d to the engineer and %d not checked", e, n)
	}
	if r.Bad() {
		return "STOP: " + t
	}
	return t
}

// group is the items of one kind that read alike, at several blocks.
type group struct {
	item         asbuilt.Item
	where        []string
	drawn, found string
}

// grouped joins items that differ in their block alone; what was not measured is joined whatever is drawn.
func grouped(r *asbuilt.Result) []*group {
	var out []*group
	at := map[string]*group{}
	for _, i := range r.Items {
		g := &group{item: i, drawn: i.Drawn.Text(i.Kind, r.System), found: "-"}
		if i.Found != nil {
			g.found = i.Found.Text(i.Kind, r.System)
		}
		key := strings.Join([]string{i.Name, g.drawn, g.found, string(i.Verdict)}, "|")
		if i.Found == nil {
			key = i.Name
		}
		if was := at[key]; was != nil && i.Where != "" {
			was.where = append(was.where, i.Where)
			if was.drawn != g.drawn {
				was.drawn = "-"
			}
			continue
		}
		at[key] = g
		if i.Where != "" {
			g.where = []string{i.Where}
		}
		out = append(out, g)
	}
	return out
}

// marks shortens a row of marks: B1 to B4, B6.
func marks(of []string) string {
	var out []string
	for i := 0; i < len(of); {
		k := i
		for k+1 < len(of) && follows(of[k], of[k+1]) {
			k++
		}
		switch k - i {
		case 0:
			out = append(out, of[i])
		case 1:
			out = append(out, of[i], of[k])
		default:
			out = append(out, of[i]+" to "+of[k])
		}
		i = k + 1
	}
	return strings.Join(out, ", ")
}

func follows(a, b string) bool {
	var i, k int
	if _, err := fmt.Sscanf(a, "B%d", &i); err != nil {
		return false
	}
	_, err := fmt.Sscanf(b, "B%d", &k)
	return err == nil && k == i+1
}
