package main

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"github.com/spf13/pflag"

	"standclear/detail/check"
	"standclear/detail/layermap"
	"standclear/detail/sheet"
	"standclear/detail/sheet/judge"
	"standclear/detail/together"
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
	out := f.StringP("out", "o", "", "write the set into `FOLDER` (made when it is not there)")
	only := f.String("only", "", "write only these `KINDS` of drawing: svg, dxf, pdf, comma between them")
	short := f.Bool("short", false, "draw the short set: the five sheets that nobody can do without")
	one := f.String("sheet", "", "draw this `SHEET` alone, as it is in the set: A-301")
	strict := f.Bool("strict", false, "exit with 1 also when a check is left to the engineer or not checked")
	layerMap := f.String("layers", "", "name and draw the layers of the DXF files by this `MAP`, a file or one of "+strings.Join(layermap.Names(), ", ")+"; other drawings keep their look (standclear layers prints a map)")
	against := f.String("against", "", "cloud on every sheet what differs from this `FILE`, the project in an earlier state, and list it in "+changesFile)
	holds(f, "layers", layermap.Names()...)
	holds(f, "only", "svg", "dxf", "pdf")
	holds(f, "sheet")
	var how printing
	how.flags(f)
	how.unitFlag(f)
	src.flags(f)
	if code, ok := parse(e, f, "standclear draw [PROJECT.yaml] --out DIR\ndraws and checks a project and writes its set of sheets, checks, calculation and schedule.",
		"  standclear draw --out out\n  standclear draw deck.yaml --out set --set blocks.max_spacing=20in --only dxf\n  standclear draw deck.yaml --out set --layers iso13567\n  standclear draw deck.yaml --out set --against issued/deck.yaml\n  standclear draw - --out set --quiet <deck.yaml\n", args); !ok {
		return code
	}
	e, units, ok := how.read(e, "draw")
	if !ok {
		return exitInput
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
	var was *earlier
	if *against != "" {
		if was, code = src.loadOld(e, *against, f.Args()); code != exitOK {
			return code
		}
	}
	o := sheet.Options{Version: version, Heat: j.heat, Short: *short, Sheet: strings.ToUpper(*one)}
	if names := sheet.Names(o); o.Sheet != "" && !slices.Contains(names, o.Sheet) {
		fmt.Fprintf(e.err, "standclear draw: --sheet: there is no sheet %q in this set; its sheets are %s\n", *one, strings.Join(names, ", "))
		return exitInput
	}
	if err := j.in(units); err != nil {
		fmt.Fprintf(e.err, "standclear draw: %v\n", err)
		return exitInput
	}
	d, err := j.drawn(e, o, kinds, dxf.Options{Layers: layers}, was)
	if err != nil {
		fmt.Fprintf(e.err, "standclear draw: %v\n", err)
		return exitInput
	}
	if err := writeAll(*out, d.files); err != nil {
		fmt.Fprintf(e.err, "standclear draw: could not write: %v\n", err)
		return exitWrite
	}
	if code := written(e, "draw", func(w io.Writer) error {
		if how.json {
			return j.summaryJSON(w, *out, d, units)
		}
		return j.summary(w, *out, d)
	}); code != exitOK {
		return code
	}
	return j.code(*strict)
}

// drawn is a set as it is written.
type drawn struct {
	sheets  []*render.Sheet
	files   []file
	differs *changes // from an earlier state, when that was asked
}

// drawn draws the sheets and every file of the set, with clouds round what differs from an earlier state.
func (j *job) drawn(e env, o sheet.Options, kinds map[string]bool, cad dxf.Options, was *earlier) (d drawn, err error) {
	var said bytes.Buffer
	done := e.busy("drawing the set")
	defer func() {
		done()
		fmt.Fprint(e.err, said.String())
	}()
	set := sheet.Plan(j.assembly, &j.report, j.results, o)
	d.sheets = set.Sheets()
	if was != nil {
		if d.differs, err = j.against(was, d.sheets, o); err != nil {
			return d, err
		}
	}
	pages, shop := set.Calculation(), set.ShopPages(d.sheets)
	if err = j.judged(&said, d.sheets, slices.Concat(pages, shop), o); err != nil {
		return d, err
	}
	if d.files, err = j.files(d.sheets, shop, pages, kinds, cad); err == nil && d.differs != nil && !d.differs.none() {
		d.files = append(d.files, file{changesFile, []byte(d.differs.text())})
	}
	return d, err
}

// judged measures what is about to be written against the rules of drafting and says so when it breaks one:
// the set is written all the same, since what it says is as right as ever. Sheets are compared with each other
// where the set is whole.
func (j *job) judged(to io.Writer, sheets, pages []*render.Sheet, o sheet.Options) error {
	all := slices.Concat(sheets, pages)
	parts, errs := make([][]judge.Violation, len(all)+1), make([]error, len(all)+1)
	together.Each(len(parts), func(i int) {
		switch {
		case i > 0:
			parts[i], errs[i] = judge.Layout(all[i-1])
		case !o.Short && o.Sheet == "":
			parts[i], errs[i] = judge.Agree(sheets, j.assembly)
		}
	})
	if err := errors.Join(errs...); err != nil {
		return err
	}
	if found := slices.Concat(parts...); len(found) > 0 {
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

// output is one file that is yet to be written.
type output struct {
	name  string
	write func(w io.Writer) error
}

// files draws everything into memory; the PDF holds the sheets, then the shop pages, then those of the calculation.
func (j *job) files(sheets, shop, pages []*render.Sheet, kinds map[string]bool, cad dxf.Options) ([]file, error) {
	var all []output
	if kinds["pdf"] { // those that take longest come first
		all = append(all, output{"set.pdf", func(w io.Writer) error {
			return pdf.Write(w, slices.Concat(sheets, shop, pages), pdf.Options{Title: j.title(), Chapters: []pdf.Chapter{
				{Title: "SHOP PAGES, LETTER OR A4", First: len(sheets)}, {Title: "CALCULATION", First: len(sheets) + len(shop)},
			}})
		}})
	}
	if kinds["dxf"] {
		all = append(all, drawings(sheets, cad)...)
	}
	drawn := map[*render.Sheet]func() ([]byte, error){} // once, for its file and for the page
	for _, s := range sheets {
		drawn[s] = sync.OnceValues(func() ([]byte, error) {
			var b bytes.Buffer
			err := svg.Write(&b, s, svg.Options{Inline: true})
			return b.Bytes(), err
		})
		if kinds["svg"] {
			all = append(all, output{s.ID + ".svg", func(w io.Writer) error {
				b, err := drawn[s]()
				if err == nil {
					_, err = w.Write(slices.Concat([]byte(svg.Declaration), b))
				}
				return err
			}})
		}
	}
	page := j.page(sheets)
	page.Drawn = func(s *render.Sheet) ([]byte, error) { return drawn[s]() }
	all = append(all,
		output{"checks.json", func(w io.Writer) error {
			return j.report.WriteJSON(w, j.header(nil))
		}},
		output{"calculation.txt", func(w io.Writer) error { return j.report.WriteText(w, j.header(nil), j.spec.Project.System) }},
		output{"calculation.html", func(w io.Writer) error { return html.WriteReport(w, j.calculation()) }},
		output{"schedule.csv", j.schedule},
		output{"index.html", func(w io.Writer) error { return html.Write(w, page) }},
	)
	out, errs := make([]file, len(all)), make([]error, len(all))
	together.Each(len(all), func(i int) {
		var b bytes.Buffer
		if err := all[i].write(&b); err != nil {
			errs[i] = fmt.Errorf("%s: %w", all[i].name, err)
		}
		out[i] = file{all[i].name, b.Bytes()}
	})
	return out, errors.Join(errs...)
}

// drawings are the file of the whole set, one file for each sheet and one for each view.
func drawings(sheets []*render.Sheet, o dxf.Options) []output {
	out := []output{{"set.dxf", func(w io.Writer) error { return dxf.WriteSet(w, sheets, o) }}}
	for _, s := range sheets {
		out = append(out, output{s.ID + ".dxf", func(w io.Writer) error { return dxf.Write(w, s, o) }})
		for i, v := range s.Views {
			out = append(out, output{detailFile(s.ID, v.ID), func(w io.Writer) error { return dxf.WriteView(w, s, i, o) }})
		}
	}
	return out
}

// detailFile names the file of one view.
func detailFile(sheet, view string) string { return "details/" + sheet + "-" + view + ".dxf" }

func (j *job) title() string {
	if p := j.spec.Project; p.Name == "" || p.Element == "" {
		return cmp.Or(p.Name+p.Element, "PROJECT WITHOUT A NAME")
	}
	return j.spec.Project.Name + " - " + j.spec.Project.Element
}

// schedule writes the counted parts as CSV, sizes in the project's units.
func (j *job) schedule(w io.Writer) error {
	c := csv.NewWriter(w)
	rows := [][]string{{"mark", "name", "quantity", "thickness", "width", "length", "material", "note", "status"}}
	for _, l := range j.assembly.Schedule() {
		row := []string{l.Mark, inCell(l.Name), fmt.Sprint(l.Qty)}
		for _, v := range l.Size {
			t := ""
			if v > 0 {
				t = v.Text(j.spec.Project.System)
			}
			row = append(row, t)
		}
		rows = append(rows, append(row, inCell(l.Material), inCell(l.Note), map[bool]string{true: "existing or by others", false: "new"}[l.Existing]))
	}
	if err := c.WriteAll(rows); err != nil {
		return err
	}
	return c.Error()
}

// inCell is a text as a cell that no program that opens the file takes for a formula.
func inCell(s string) string {
	if s != "" && strings.IndexByte("=+-@", s[0]) >= 0 {
		return "'" + s
	}
	return s
}

func (j *job) verdict() string {
	r := &j.report
	t := fmt.Sprintf("%d fail, %d for the engineer, %d not checked, %d ok", r.Count(check.Fails), r.Count(check.Engineer), r.Count(check.NotChecked), r.Count(check.OK))
	if r.Count(check.Fails) > 0 {
		return "DO NOT BUILD: " + t
	}
	return t
}
