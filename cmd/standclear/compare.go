package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/thermal"
	"standclear/detail/compare"
	"standclear/detail/keyfile"
	"standclear/detail/sheet"
	"standclear/detail/sheet/judge"
	"standclear/detail/spec"
	"standclear/detail/trial"
	"standclear/render"
	"standclear/render/dxf"
	"standclear/render/pdf"
	"standclear/render/svg"
)

const compareAbout = `standclear compare [PROJECT.yaml] [--with OTHER.yaml]... [--variant "NAME: KEY=VALUE, KEY=VALUE"]...
sets ways to hang the deck side by side: checks, heat, drying, parts, cuts, cost, access from inside.

Alone it compares the drawn way with the usual others: a ledger tight to the sheathing, one on thin
spacers, blocks of solid wood or with foam pads, stainless fasteners, posts. What cannot be checked of
them says NOT CHECKED and why.
Each --with and each --variant is one more column, in the order given, in place of the usual ways. A
variant is the project with changes, comma between them; what stands before a colon names it. --set
changes the project itself, and so every column but those of --with.
Costs come from the section rates: of the project file; without it they are NOT CHECKED.
Exit code 1 says that a check of the project itself fails, whatever the others do.`

const compareExample = `  standclear compare
  standclear compare deck.yaml --with deck2.yaml --variant "wide: blocks.width=10in, blocks.max_spacing=28in"
  standclear compare deck.yaml --variant "fasteners.through.diameter=3/4in, fasteners.through.hole=13/16in" --diff
  standclear compare deck.yaml --sheet-out ways.svg
`

// column is one more way to compare, as typed.
type column struct{ flag, text string }

// columnFlag collects --with and --variant in the order they are typed.
type columnFlag struct {
	name string
	list *[]column
}

func (c columnFlag) String() string { return "" }
func (c columnFlag) Type() string {
	return map[string]string{"with": "FILE", "variant": "CHANGES"}[c.name]
}
func (c columnFlag) Set(s string) error { *c.list = append(*c.list, column{c.name, s}); return nil }

func compareWays(e env, args []string) int {
	f := pflag.NewFlagSet("compare", pflag.ContinueOnError)
	var src source
	var more []column
	f.Var(columnFlag{"with", &more}, "with", "one more column: another project file (may be repeated)")
	f.Var(columnFlag{"variant", &more}, "variant", "one more column: the project with changes, \"NAME: KEY=VALUE, KEY=VALUE\" (may be repeated)")
	usual := f.Bool("usual", false, "show the usual ways beside those of --with and --variant")
	diff := f.Bool("diff", false, "show only what differs: between the project and one --with or --variant, or between two of them")
	asJSON := f.Bool("json", false, "print JSON, every quantity in both unit systems")
	asCSV := f.Bool("csv", false, "print CSV")
	out := f.String("sheet-out", "", "write the sheet that compares the ways by their heat, G-002, to this .svg, .dxf or .pdf file")
	src.flags(f)
	if code, ok := parse(e, f, compareAbout, compareExample, args); !ok {
		return code
	}
	if err := compareUsage(more, *diff, *asJSON, *asCSV, *usual, src.heat.off, *out); err != nil {
		fmt.Fprintf(e.err, "standclear compare: %v\n", err)
		return exitInput
	}
	all, code := src.designs(e, f.Args(), more, *usual || len(more) == 0)
	if code != exitOK {
		return code
	}
	if *out != "" {
		if code := compareSheet(e, *out, all); code != exitOK {
			return code
		}
	}
	if code := written(e, "compare", func(w io.Writer) error { return writeCompared(w, all, *diff, *asJSON, *asCSV) }); code != exitOK {
		return code
	}
	if all[0].Report.Count(check.Fails) > 0 {
		return exitFails
	}
	return exitOK
}

// compareUsage says what flags do not go together.
func compareUsage(more []column, diff, asJSON, asCSV, usual, noHeat bool, out string) error {
	kind := strings.ToLower(filepath.Ext(out))
	switch {
	case asJSON && asCSV:
		return errors.New("--json and --csv: one of them at a time")
	case diff && (len(more) == 0 || len(more) > 2 || usual):
		return fmt.Errorf("--diff: given %s; one --with or --variant is needed to compare with the project, or two to compare with each other, without --usual", count(len(more), "column"))
	case out != "" && kind != ".svg" && kind != ".dxf" && kind != ".pdf":
		return fmt.Errorf("--sheet-out: given %s; a file that ends in .svg, .dxf or .pdf is needed", out)
	case out != "" && noHeat:
		return errors.New("--sheet-out: the sheet compares heat, and --no-heat leaves it out")
	}
	return nil
}

// designs makes the columns: the project, the usual ways or none, and those asked for.
func (s *source) designs(e env, args []string, more []column, usual bool) ([]*compare.Design, int) {
	name, text, err := s.read(e, args)
	if err != nil {
		fmt.Fprintf(e.err, "standclear: %v\n", err)
		return nil, exitInput
	}
	job := compare.Job{Base: trial.Base{Name: name, Src: text, Sets: s.sets}.Parsed(), Heat: s.heater(e)}
	drawn, err := job.Design("drawn", "AS DRAWN")
	if err != nil {
		return nil, compareFault(e, "", err)
	}
	for _, w := range drawn.Trial.Spec.Warnings {
		fmt.Fprintln(e.err, w)
	}
	all := []*compare.Design{drawn}
	if usual {
		all = append(all, job.Usual(drawn)...)
	}
	for i, c := range more {
		j, label, changes := job, c.text, []string(nil)
		if c.flag == "with" {
			b, err := readFile(c.text)
			if err != nil {
				fmt.Fprintf(e.err, "standclear compare: --with: the project file cannot be read: %v\n", err)
				return nil, exitInput
			}
			j.Base = trial.Base{Name: keyfile.Printed(c.text), Src: b}.Parsed()
		} else if label, changes, err = compare.Variant(c.text); err != nil {
			fmt.Fprintf(e.err, "standclear compare: --variant: %v\n", err)
			return nil, exitInput
		}
		d, err := j.Design(fmt.Sprintf("%s_%d", c.flag, i+1), label, changes...)
		if err != nil {
			return nil, compareFault(e, fmt.Sprintf("--%s %q: ", c.flag, label), err)
		}
		all = append(all, d.In(drawn.Trial.Spec.Project.System))
	}
	return all, exitOK
}

// compareFault prints why a column cannot be made.
func compareFault(e env, head string, err error) int {
	var problems spec.Problems
	switch {
	case errors.As(err, &problems):
		return tellProblems(e, head, problems)
	case errors.Is(err, compare.ErrBroken):
		fmt.Fprintln(e.err, "standclear: broken off; nothing was written")
		return exitWrite
	}
	fmt.Fprintf(e.err, "standclear: %s%v\n", head, err)
	return exitInput
}

// tellProblems prints what is wrong with a project, each line with its head.
func tellProblems(e env, head string, problems spec.Problems) (code int) {
	for _, p := range problems {
		fmt.Fprintf(e.err, "%s%v\n", head, p)
	}
	fmt.Fprintf(e.err, "standclear: %s; nothing was written\n", count(len(problems), "problem"))
	return exitInput
}

// heater finds heat by way of the cache; in one run no assembly is solved twice.
func (s *source) heater(e env) compare.Heater {
	seen := map[string]*thermal.Result{}
	return func(a *detail.Assembly) (*thermal.Result, string, error) {
		key, _ := thermal.Key(a, thermal.Options{}) // find says what is wrong
		if r := seen[key]; r != nil {
			return r, "", nil
		}
		r, why, err := s.heat.find(e, a)
		seen[key] = r
		return r, why, err
	}
}

func writeCompared(w io.Writer, all []*compare.Design, diff, asJSON, asCSV bool) error {
	const program = "standclear " + version
	if diff {
		a, b := all[len(all)-2], all[len(all)-1]
		changes := compare.Diff(a, b)
		switch {
		case asJSON:
			return compare.WriteDiffJSON(w, program, a, b, changes)
		case asCSV:
			return compare.WriteDiffCSV(w, changes)
		}
		return compare.WriteDiff(w, a, b, changes)
	}
	t := compare.TableOf(all)
	switch {
	case asJSON:
		return t.WriteJSON(w, program)
	case asCSV:
		return t.WriteCSV(w)
	}
	return t.WriteText(w)
}

// compareSheet writes the sheet G-002 with every way whose heat is known.
func compareSheet(e env, name string, all []*compare.Design) int {
	drawn := all[0].Trial
	heat, why := compare.Ways(all)
	if heat == nil {
		fmt.Fprintf(e.err, "standclear compare: --sheet-out: the sheet compares heat, which is not known: %s\n", why)
		return exitInput
	}
	sheets := sheet.Compose(drawn.Assembly, &all[0].Report, drawn.Results, sheet.Options{Version: version, Heat: heat, Sheet: "G-002"})
	if found, err := judge.Layout(sheets[0]); err != nil {
		fmt.Fprintf(e.err, "standclear compare: %v\n", err)
		return exitInput
	} else if len(found) > 0 {
		fmt.Fprintf(e.err, "LAYOUT: %s, first: %v\n", count(len(found), "violation"), found[0])
	}
	var b bytes.Buffer
	if err := writeSheet(&b, strings.ToLower(filepath.Ext(name)), sheets[0]); err != nil {
		fmt.Fprintf(e.err, "standclear compare: %v\n", err)
		return exitInput
	}
	if err := errors.Join(os.MkdirAll(filepath.Dir(name), 0o777), replaceFile(name, b.Bytes())); err != nil {
		fmt.Fprintf(e.err, "standclear compare: could not write: %v\n", err)
		return exitWrite
	}
	return exitOK
}

func writeSheet(w io.Writer, kind string, s *render.Sheet) error {
	switch kind {
	case ".dxf":
		return dxf.Write(w, s, dxf.Options{})
	case ".pdf":
		return pdf.Write(w, []*render.Sheet{s}, pdf.Options{Title: s.Title})
	}
	return svg.Write(w, s, svg.Options{})
}
