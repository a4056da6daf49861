package compare_test

import (
	"bytes"
	"flag"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/detail/check/thermal"
	"standclear/detail/compare"
	"standclear/detail/spec/spectest"
	"standclear/detail/trial"
)

var many = flag.Uint64("many", 10, "random projects to compare")

// Any project that can be built can be compared with the usual ways and with the next one, and every cell that is open
// says why.
func TestAnyProject(t *testing.T) {
	none := func(*detail.Assembly) (*thermal.Result, string, error) { return nil, "left out", nil }
	built := 0
	var last *compare.Design
	for i := range *many {
		p := spectest.Random(i)
		j := compare.Job{Base: trial.Base{Name: p.Demo, Src: p.Source, Sets: p.Sets}, Heat: none}
		d, err := j.Design("drawn", "AS DRAWN")
		if err != nil {
			continue
		}
		built++
		table := compare.TableOf(append([]*compare.Design{d}, j.Usual(d)...))
		for _, r := range table.Rows {
			for k, c := range r.Cells {
				if (c.Text == "NOT CHECKED") != (c.Open != "") || c.Text == "" || strings.Contains(c.Text, "NaN") || strings.Contains(c.Text, "Inf") {
					t.Errorf("%s: %s of %s: %+v", p, r.Key, table.Designs[k].Key, c)
				}
			}
		}
		var w bytes.Buffer
		if err := table.WriteText(&w); err != nil {
			t.Fatal(err)
		}
		if last != nil {
			if err := compare.WriteDiff(&w, last, d, compare.Diff(last, d)); err != nil {
				t.Fatal(err)
			}
		}
		last = d
	}
	if built < int(*many)/2 {
		t.Errorf("%d of %d built", built, *many)
	}
}
