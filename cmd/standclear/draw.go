package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"standclear/detail/check"
	"standclear/detail/layermap"
	"standclear/detail/sheet"
	"standclear/detail/sheet/judge"
	"standclear/render"
	"standclear/render/dxf"
	"standclear/render/html"
	"standclear/render/pdf"
	"standclear/render/svg"
)

// file is one output, held in memory until all of them are good.
type file struct {
	name string
	data []byte
}

func draw(e env, args []string) int {
	f := pflag.NewFlagSet("draw", pflag.ContinueOnError)
	var src source
	out := f.StringP("out", "o", "", "folder to write the set into (made when it is not there)")
	only := f.String("only", "", "write only these kinds of drawing: svg, dxf, pdf, comma between them")
	short := f.Bool("short", false, "draw the short set: the five sheets that nobody can do without")
	one := f.String("sheet", "", "draw this sheet alone, as it is in the set: A-301")
	strict := f.Bool("strict", false, "exit with 1 also when a check is left to the engineer or not checked")
	layerMap := f.String("layers", "", "name and draw the layers of the DXF files by this map, a file or one of "+strings.Join(layermap.Names(), ", ")+"; other drawings keep their look (standclear layers prints a map)")
	src.flags(f)
	if code, ok := parse(e, f, "standclear draw [PROJECT.yaml] --out DIR\ndraws and checks a project and writes its set of sheets, checks, calculation and schedule.",
		"  standclear draw --out out\n  standclear draw deck.yaml --out set --set blocks.max_spacing=20in --only dxf\n  standclear draw deck.yaml --out set --layers iso13567\n", args); !ok {
		return code
	}
	kinds, err := kindsOf(*only)
	if err != nil {
		fmt.Fprintf(e.err, "standclear draw: %v\n", err)
		return exitInput
	}
	if *out == "" {
		fmt.Fprintln(e.err, "standclear draw: say where the set goes: --out DIR")
		return exitInput
	}
	layers, ok := readLayers(e, *layerMap, kinds)
	if !ok {
		return exitInput
	}
	j, code := src.load(e, f.Args())
	if code != exitOK {
		return code
	}
	o := sheet.Options{Version: version, Heat: j.heat, Short: *short, Sheet: strings.ToUpper(*one)}
	if names := sheet.Names(o); o.Sheet != "" && !slices.Contains(names, o.Sheet) {
		fmt.Fprintf(e.err, "standclear draw: --sheet: there is no sheet %q in this set; its sheets are %s\n", *one, strings.Join(names, ", "))
		return exitInput
	}
	sheets := sheet.Compose(j.assembly, &j.report, j.results, o)
	pages := sheet.Calculation(j.assembly, &j.report, j.results, o)
	shop := sheet.ShopPages(j.assembly, &j.report, j.results, o, sheets)
	if err := j.judged(e.err, sheets, slices.Concat(pages, shop), o); err != nil {
		fmt.Fprintf(e.err, "standclear draw: %v\n", err)
		return exitInput
	}
	files, err := j.files(sheets, shop, pages, kinds, dxf.Options{Layers: layers})
	if err != nil {
		fmt.Fprintf(e.err, "standclear draw: %v\n", err)
		return exitInput
	}
	if err := writeAll(*out, files); err != nil {
		fmt.Fprintf(e.err, "standclear draw: could not write: %v\n", err)
		return exitWrite
	}
	if err := j.summary(e.out, *out, sheets, files); err != nil {
		return exitWrite
	}
	return j.code(*strict)
}

// judged measures what is about to be written against the rules of drafting and says so when it breaks one:
// the set is written all the same, since what it says is as right as ever. Sheets are compared with each other
// where the set is whole.
func (j *job) judged(to io.Writer, sheets, pages []*render.Sheet, o sheet.Options) error {
	var found []judge.Violation
	if !o.Short && o.Sheet == "" {
		var err error
		if found, err = judge.Agree(sheets, j.assembly); err != nil {
			return err
		}
	}
	for _, s := range slices.Concat(sheets, pages) {
		more, err := judge.Layout(s)
		if err != nil {
			return err
		}
		found = append(found, more...)
	}
	if len(found) > 0 {
		fmt.Fprintf(to, "LAYOUT: %s, first: %v\n", count(len(found), "violation"), found[0])
	}
	return nil
}

func kindsOf(only string) (map[string]bool, error) {
	all := map[string]bool{"svg": true, "dxf": true, "pdf": true}
	if only == "" {
		return all, nil
	}
	out := map[string]bool{}
	for _, k := range strings.Split(only, ",") {
		k = strings.TrimSpace(k)
		if !all[k] {
			return nil, fmt.Errorf("--only: %q is not a kind of drawing; allowed are svg, dxf, pdf", k)
		}
		out[k] = true
	}
	return out, nil
}

// files draws everything into memory; the PDF holds the sheets, then the shop pages, then those of the calculation.
func (j *job) files(sheets, shop, pages []*render.Sheet, kinds map[string]bool, cad dxf.Options) ([]file, error) {
	var out []file
	add := func(name string, write func(w io.Writer) error) error {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		out = append(out, file{name, b.Bytes()})
		return nil
	}
	for _, s := range sheets {
		if kinds["svg"] {
			if err := add(s.ID+".svg", func(w io.Writer) error { return svg.Write(w, s, svg.Options{}) }); err != nil {
				return nil, err
			}
		}
		if kinds["dxf"] {
			if err := add(s.ID+".dxf", func(w io.Writer) error { return dxf.Write(w, s, cad) }); err != nil {
				return nil, err
			}
		}
	}
	if kinds["dxf"] {
		if err := drawings(sheets, cad, add); err != nil {
			return nil, err
		}
	}
	if kinds["pdf"] {
		if err := add("set.pdf", func(w io.Writer) error {
			return pdf.Write(w, slices.Concat(sheets, shop, pages), pdf.Options{Title: j.title(), Chapters: []pdf.Chapter{
				{Title: "SHOP PAGES, LETTER OR A4", First: len(sheets)}, {Title: "CALCULATION", First: len(sheets) + len(shop)},
			}})
		}); err != nil {
			return nil, err
		}
	}
	for _, f := range []struct {
		name  string
		write func(w io.Writer) error
	}{
		{"checks.json", func(w io.Writer) error {
			return j.report.WriteJSON(w, check.Header{Project: j.title(), Parameters: j.spec.Hash, Program: "standclear " + version, Defaults: j.defaults()})
		}},
		{"calculation.txt", func(w io.Writer) error { return j.report.WriteText(w, j.title(), j.spec.Project.System) }},
		{"calculation.html", func(w io.Writer) error { return html.WriteReport(w, j.calculation()) }},
		{"schedule.csv", j.schedule},
		{"index.html", func(w io.Writer) error { return html.Write(w, j.page(sheets)) }},
	} {
		if err := add(f.name, f.write); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// drawings adds the file of the whole set and one file for each view.
func drawings(sheets []*render.Sheet, o dxf.Options, add func(name string, write func(w io.Writer) error) error) error {
	if err := add("set.dxf", func(w io.Writer) error { return dxf.WriteSet(w, sheets, o) }); err != nil {
		return err
	}
	for _, s := range sheets {
		for i, v := range s.Views {
			if err := add(detailFile(s.ID, v.ID), func(w io.Writer) error { return dxf.WriteView(w, s, i, o) }); err != nil {
				return err
			}
		}
	}
	return nil
}

// detailFile names the file of one view.
func detailFile(sheet, view string) string { return "details/" + sheet + "-" + view + ".dxf" }

func (j *job) title() string {
	return strings.TrimSpace(j.spec.Project.Name + " - " + j.spec.Project.Element)
}

// schedule writes the counted parts as CSV, sizes in the project's units.
func (j *job) schedule(w io.Writer) error {
	c := csv.NewWriter(w)
	rows := [][]string{{"mark", "name", "quantity", "thickness", "width", "length", "material", "note", "status"}}
	for _, l := range j.assembly.Schedule() {
		row := []string{l.Mark, l.Name, fmt.Sprint(l.Qty)}
		for _, v := range l.Size {
			t := ""
			if v > 0 {
				t = v.Text(j.spec.Project.System)
			}
			row = append(row, t)
		}
		rows = append(rows, append(row, l.Material, l.Note, map[bool]string{true: "existing or by others", false: "new"}[l.Existing]))
	}
	if err := c.WriteAll(rows); err != nil {
		return err
	}
	return c.Error()
}

func (j *job) verdict() string {
	r := &j.report
	t := fmt.Sprintf("%d fail, %d for the engineer, %d not checked, %d ok", r.Count(check.Fails), r.Count(check.Engineer), r.Count(check.NotChecked), r.Count(check.OK))
	if r.Count(check.Fails) > 0 {
		return "DO NOT BUILD: " + t
	}
	return t
}
