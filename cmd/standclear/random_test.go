package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"flag"
	"fmt"
	"io"
	"maps"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"testing"

	"standclear/detail/check"
	"standclear/detail/check/asbuilt"
	"standclear/detail/sheet"
	"standclear/detail/sheet/judge"
	"standclear/detail/spec/spectest"
	"standclear/detail/together"
	"standclear/detail/unit"
	"standclear/render"
	"standclear/render/dxf"
	"standclear/render/svg"
)

var (
	many  = flag.Int("many", 200, "random projects that are read, built, checked, drawn and judged")
	first = flag.Uint64("first", 0, "number of the first of them")
	whole = flag.Uint64("whole", 40, "of so many projects one is drawn as a whole set, of the others one sheet")
	only  = flag.String("only", "", "the sheets that are drawn of every project, by their IDs with commas between, or none")
	dxfTo = flag.String("dxf", "", "folder that the DXF files of the projects are written into, for outside readers")
)

// turns are the sheets in the order they take turns, those that are quick to draw twice as often.
var turns = []string{
	"G-001", "A-101", "S-501", "G-003", "S-503", "S-702", "A-201", "A-402", "S-701", "A-303", "S-502", "S-504",
	"A-301", "G-001", "S-501", "A-401", "G-003", "S-702", "A-601", "A-402", "S-701", "S-502", "S-503",
}

// tally is what a run over many projects has seen.
type tally struct {
	sync.Mutex
	seen map[string]int
}

func (c *tally) add(what string, n int) {
	c.Lock()
	defer c.Unlock()
	c.seen[what] += n
}

func (c *tally) log(t *testing.T) {
	for _, what := range slices.Sorted(maps.Keys(c.seen)) {
		t.Logf("%6d %s", c.seen[what], what)
	}
}

// Any project a user may write is read, built, checked and drawn: no panic, no number that is none, no check
// without a verdict, every file well-formed, the hard rules of layout kept, every sheet saying what the assembly says.
func TestRandomProjects(t *testing.T) {
	for _, id := range sheet.Names(sheet.Options{}) {
		if !slices.Contains(turns, id) {
			t.Errorf("%s never takes its turn", id)
		}
	}
	n, count := *many, &tally{seen: map[string]int{}}
	if testing.Short() {
		n = 6
	}
	together.Each(n, func(k int) {
		i := *first + uint64(k)
		p := spectest.Random(i)
		if wrong := tryProject(i, p, count); len(wrong) > 0 {
			t.Errorf("project %d: %d wrong\n\t%s\n%v", i, len(wrong), strings.Join(wrong[:min(len(wrong), 6)], "\n\t"), p)
		}
	})
	count.log(t)
}

// Random projects whose checks once said what they should not: a block flush with the end of the ledger and a bolt on
// the edge of the rim, which failed by rounding and without a reason.
func TestRandomProjectsMended(t *testing.T) {
	count := &tally{seen: map[string]int{}}
	for _, i := range []uint64{52097, 57056} {
		p := spectest.Random(i)
		j, problems, err := (&source{sets: p.Sets}).start(p.Demo, p.Source)
		if err != nil || len(problems) > 0 {
			t.Fatalf("project %d: %v %v", i, problems, err)
		}
		if wrong := wrongReport(j, count); len(wrong) > 0 {
			t.Errorf("project %d: %v", i, wrong)
		}
	}
}

// tryProject lists what is wrong with a project, a panic among it.
func tryProject(i uint64, p spectest.Project, count *tally) (wrong []string) {
	defer func() {
		if r := recover(); r != nil {
			wrong = append(wrong, fmt.Sprintf("panic: %v\n%s", r, debug.Stack()))
		}
	}()
	src := source{sets: p.Sets}
	j, problems, err := src.start(p.Demo, p.Source)
	if err != nil || len(problems) > 0 {
		return []string{fmt.Sprintf("not read or not built: %v %v", problems, err)}
	}
	j = j.warmed(nil, "the heat was left out")
	wrong = append(wrongReport(j, count), wrongSchedule(j.assembly)...)
	switch {
	case *only == "none":
	case *only != "":
		for _, id := range strings.Split(*only, ",") {
			wrong = append(wrong, wrongSheet(i, j, id, count)...)
		}
	case i%*whole == 0:
		wrong = append(wrong, wrongSet(i, j, count)...)
	default:
		wrong = append(wrong, wrongSheet(i, j, turns[i%uint64(len(turns))], count)...)
	}
	return wrong
}

// notFinite is how a number that is none shows in text, the last where it was made a whole number.
var notFinite = regexp.MustCompile(`\bNaN\b|[+-]Inf\b|9223372036854775808`)

func wrongText(name string, data []byte) []string {
	if !bytes.Contains(data, []byte("NaN")) && !bytes.Contains(data, []byte("Inf")) && !bytes.Contains(data, []byte("9223372036854775808")) {
		return nil // quicker than the pattern
	}
	if at := notFinite.FindIndex(data); at != nil {
		return []string{fmt.Sprintf("%s holds a number that is none: %q", name, data[max(0, at[0]-40):min(len(data), at[1]+20)])}
	}
	return nil
}

// wrongReport looks at every check and at the report as it is written.
func wrongReport(j *job, count *tally) (wrong []string) {
	bad := func(s *check.Step, format string, a ...any) {
		wrong = append(wrong, fmt.Sprintf("check %s (%s): %s", s.ID, s.Where, fmt.Sprintf(format, a...)))
	}
	for i := range j.report.Steps {
		s := &j.report.Steps[i]
		numbers := []float64{s.Value.V, s.Ratio}
		if s.Limit != nil {
			numbers = append(numbers, s.Limit.V)
		}
		for _, a := range s.With {
			numbers = append(numbers, a.Value.V)
		}
		for _, v := range numbers {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				bad(s, "a number is %v", v)
			}
		}
		if s.ID == "" || s.Name == "" {
			bad(s, "it has no name")
		}
		switch s.Verdict {
		case check.Info:
			if s.Limit != nil || s.Bare() && s.Note == "" {
				bad(s, "it has no verdict and nothing that says why")
			}
		case check.OK:
		case check.NotChecked, check.Engineer, check.Fails:
			if s.Reason == check.NoNumber {
				bad(s, "it has no number")
			}
			if strings.TrimSpace(s.Reason) == "" {
				bad(s, "%v without a reason", s.Verdict)
			}
		default:
			bad(s, "verdict %d", s.Verdict)
		}
		count.add("checks "+s.Verdict.String(), 1)
	}
	var b bytes.Buffer
	if err := j.report.WriteJSON(&b, j.header(nil)); err != nil {
		return append(wrong, err.Error())
	}
	wrong = append(wrong, wrongText("checks.json", b.Bytes())...)
	var read struct {
		Checks []struct{ ID, Verdict string }
	}
	if err := json.Unmarshal(b.Bytes(), &read); err != nil || len(read.Checks) != len(j.report.Steps) || len(read.Checks) == 0 {
		wrong = append(wrong, fmt.Sprintf("checks.json holds %d checks of %d: %v", len(read.Checks), len(j.report.Steps), err))
	}
	for _, sys := range []unit.System{unit.IP, unit.SI} {
		b.Reset()
		if err := j.report.WriteText(&b, j.header(nil), sys); err != nil {
			wrong = append(wrong, err.Error())
		}
		wrong = append(wrong, wrongText("calculation.txt", b.Bytes())...)
	}
	return wrong
}

// wrongSheet draws one sheet with its pages and shop pages.
func wrongSheet(i uint64, j *job, id string, count *tally) (wrong []string) {
	o := sheet.Options{Version: version, Sheet: id}
	set := sheet.Plan(j.assembly, &j.report, j.results, o)
	sheets := set.Sheets()
	count.add("drawn "+id, 1)
	if len(sheets) == 0 {
		return []string{"no sheet " + id}
	}
	found, err := judge.Agree(sheets, j.assembly)
	if err != nil {
		return []string{err.Error()}
	}
	for _, v := range found {
		if alone(v) {
			wrong = append(wrong, v.String())
		}
	}
	all := append(sheets, set.ShopPages(nil)...)
	wrong = append(wrong, wrongLayout(all)...)
	wrong = append(wrong, wrongDims(j.assembly, all, count)...)
	for _, s := range all {
		wrong = append(wrong, wrongSVG(s)...)
	}
	return append(wrong, wrongDXF(fmt.Sprintf("%d-%s.dxf", i, id), sheets)...)
}

// alone reports whether a rule of sets holds for one sheet of a set too.
func alone(v judge.Violation) bool {
	switch v.Rule {
	case "L10", "C1", "C3", "C5":
		return true
	}
	return v.Rule == "L9" && v.Sheet != ""
}

func wrongLayout(sheets []*render.Sheet) (wrong []string) {
	for _, s := range sheets {
		found, err := judge.Layout(s)
		if err != nil {
			return append(wrong, err.Error())
		}
		for _, v := range found {
			wrong = append(wrong, v.String())
		}
	}
	return wrong
}

// wrongSVG writes a sheet as SVG and reads it as XML.
func wrongSVG(s *render.Sheet) []string {
	var b bytes.Buffer
	if err := svg.Write(&b, s, svg.Options{}); err != nil {
		return []string{err.Error()}
	}
	return append(wrongText(s.ID+".svg", b.Bytes()), wrongXML(s.ID+".svg", b.Bytes())...)
}

func wrongXML(name string, data []byte) []string {
	for d := xml.NewDecoder(bytes.NewReader(data)); ; {
		switch _, err := d.Token(); {
		case err == io.EOF:
			return nil
		case err != nil:
			return []string{name + ": " + err.Error()}
		}
	}
}

// wrongDXF writes sheets as one DXF file, into the folder asked for as well.
func wrongDXF(name string, sheets []*render.Sheet) []string {
	var b bytes.Buffer
	if err := dxf.WriteSet(&b, sheets, dxf.Options{}); err != nil {
		return []string{err.Error()}
	}
	return append(wrongText(name, b.Bytes()), saved(name, b.Bytes())...)
}

// saved writes a file into the folder that was asked for.
func saved(name string, data []byte) []string {
	if *dxfTo == "" {
		return nil
	}
	if err := os.WriteFile(filepath.Join(*dxfTo, name), data, 0o666); err != nil {
		return []string{err.Error()}
	}
	return nil
}

// wrongSet draws the whole set, every file of it.
func wrongSet(i uint64, j *job, count *tally) (wrong []string) {
	o := sheet.Options{Version: version}
	count.add("drawn whole sets", 1)
	wrong = saved(fmt.Sprintf("%d-form.yaml", i), asbuilt.Form(j.title(), j.assembly, &j.report))
	set := sheet.Plan(j.assembly, &j.report, j.results, o)
	sheets, pages := set.Sheets(), set.Calculation()
	shop := set.ShopPages(sheets)
	found, err := judge.Agree(sheets, j.assembly)
	if err != nil {
		return []string{err.Error()}
	}
	for _, v := range found {
		wrong = append(wrong, v.String())
	}
	wrong = append(wrong, wrongLayout(slices.Concat(sheets, pages, shop))...)
	wrong = append(wrong, wrongDims(j.assembly, slices.Concat(sheets, shop), count)...)
	files, err := j.files(sheets, shop, pages, map[string]bool{"svg": true, "dxf": true, "pdf": true}, dxf.Options{})
	if err != nil {
		return append(wrong, err.Error())
	}
	for _, f := range files {
		switch filepath.Ext(f.name) {
		case ".pdf":
			if !bytes.HasPrefix(f.data, []byte("%PDF-")) || !bytes.HasSuffix(bytes.TrimSpace(f.data), []byte("%%EOF")) {
				wrong = append(wrong, f.name+" is no whole PDF")
			}
			continue
		case ".svg":
			wrong = append(wrong, wrongXML(f.name, f.data)...)
		case ".dxf":
			wrong = append(wrong, saved(fmt.Sprintf("%d-%s", i, strings.ReplaceAll(f.name, "/", "-")), f.data)...)
		case ".csv":
			wrong = append(wrong, wrongCSV(j.assembly, f.data)...)
		}
		wrong = append(wrong, wrongText(f.name, f.data)...)
	}
	return wrong
}
