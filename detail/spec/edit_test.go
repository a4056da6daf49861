package spec_test

import (
	"strings"
	"testing"

	"standclear/detail/demo"
	"standclear/detail/spec"
)

// Only the value changes: quotes, comments and all else stay.
func TestEdit(t *testing.T) {
	const file = `# head
blocks: {width: 7in, plies: [1 1/2in, 1 1/2in], pad: {}} # how it is built
ledger:
  length: "14'-8\"" # measured
  height: 9 1/4in # a 2x10

  grade: 'No.2'
deck:
  span: 10ft`
	for _, c := range []struct{ set, old, new string }{
		{"blocks.width=8in", "width: 7in", "width: 8in"},
		{"blocks.plies=[3in]", "[1 1/2in, 1 1/2in]", "[3in]"},
		{"blocks.plies.1=3/4in", ", 1 1/2in]", ", 3/4in]"},
		{"ledger.length=12ft", `"14'-8\""`, "12ft"},
		{"ledger.grade=No.1", "'No.2'", "No.1"},
		{"blocks.max_spacing=24in", "pad: {}}", "pad: {}, max_spacing: 24in}"},
		{"blocks.pad.thickness=1/2in", "pad: {}", "pad: {thickness: 1/2in}"},
		{"ledger.species=hem-fir", "  grade: 'No.2'\n", "  grade: 'No.2'\n  species: hem-fir\n"},
		{"deck.joists.width=3in", "span: 10ft", "span: 10ft\n  joists: {width: 3in}\n"},
		{"fasteners.through.hole=9/16in", "span: 10ft", "span: 10ft\nfasteners: {through: {hole: 9/16in}}\n"},
	} {
		got, err := spec.Edit([]byte(file), []string{c.set})
		if want := strings.Replace(file, c.old, c.new, 1); err != nil || string(got) != want {
			t.Errorf("%s: %v\n%s", c.set, err, got)
		}
	}
}

// What cannot be changed in place is refused.
func TestEditRefuses(t *testing.T) {
	for name, file := range map[string]string{
		"a list line by line": "blocks:\n  plies:\n    - 1 1/2in\n",
		"an anchor":           "a: &x {plies: [3in]}\nblocks: *x\n",
		"no YAML":             "blocks: [",
	} {
		if got, err := spec.Edit([]byte(file), []string{"blocks.plies=[3in]"}); err == nil {
			t.Errorf("%s: %s", name, got)
		}
	}
}

// Every demo edited reads as the demo with the same settings, and only few lines differ.
func TestEditDemos(t *testing.T) {
	for _, name := range demo.Names() {
		src, _ := demo.File(name)
		s, problems := spec.Read(name, src, nil)
		if s == nil {
			t.Fatal(problems)
		}
		sets := []string{"blocks.max_spacing=33in", "blocks.plies=[1 1/2in, 1 1/2in, 1 1/2in]", "blocks.grid=1/2in", "ledger.top_slope=1:10"}
		for _, f := range []string{"through", "to_rim", "to_block"} {
			if map[string]*spec.Set{"through": s.Fasteners.Through, "to_rim": s.Fasteners.ToRim, "to_block": s.Fasteners.ToBlock}[f] != nil {
				sets = append(sets, "fasteners."+f+".diameter=7/8in", "fasteners."+f+".hole=15/16in")
			}
		}
		edited, err := spec.Edit(src, sets)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		want, p1 := spec.Read(name, src, sets)
		got, p2 := spec.Read(name, edited, nil)
		if want == nil || got == nil || got.Hash() != want.Hash() {
			t.Errorf("%s: reads otherwise: %v %v", name, p1, p2)
		}
		was, now := strings.Split(string(src), "\n"), strings.Split(string(edited), "\n")
		gone := 0
		for _, l := range was {
			if !strings.Contains(string(edited), l) {
				gone++
			}
		}
		if gone > len(sets) || len(now) > len(was)+len(sets) {
			t.Errorf("%s: %d of %d lines changed for %d settings", name, gone, len(was), len(sets))
		}
	}
}
