package explain_test

import (
	"bytes"
	"flag"
	"strings"
	"testing"

	"standclear/detail/check/design"
	"standclear/detail/explain"
	"standclear/detail/spec/spectest"
	"standclear/detail/trial"
)

var many = flag.Uint64("many", 12, "random projects to explain")

// Any project that can be built can be explained, every check of it, failing and unchecked ones among them.
func TestAnyProject(t *testing.T) {
	built, failing := 0, 0
	for i := range *many {
		p := spectest.Random(i)
		b := trial.Base{Name: p.Demo, Src: p.Source, Sets: p.Sets}
		tr, err := b.Try()
		if err != nil {
			continue
		}
		built++
		design.Heat(tr.Assembly, nil, "left out", &tr.Report)
		j := &explain.Job{Base: b, Assembly: tr.Assembly, Report: &tr.Report, Results: tr.Results, NoHeat: "left out"}
		for _, id := range j.IDs() {
			var w bytes.Buffer
			if err := j.Write(&w, id, nil, 5); err != nil {
				t.Fatalf("%s: %s: %v", p, id, err)
			}
			if text := w.String(); strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
				t.Errorf("%s: %s:\n%s", p, id, text)
			}
			if tr.Report.Find(id).Verdict.String() == "FAILS" {
				failing++
			}
		}
	}
	if built < int(*many)/2 || failing == 0 {
		t.Errorf("%d of %d built, %d checks fail", built, *many, failing)
	}
}
