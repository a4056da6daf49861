package trial_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/demo"
	"standclear/detail/spec"
	"standclear/detail/trial"
)

// Blocks twice as far apart carry about twice the load: the trial, not the base, is checked.
func TestTryChangesTheDesign(t *testing.T) {
	src, _ := demo.File("deck")
	b := trial.Base{Name: "deck", Src: src}
	base, err := b.Try()
	if err != nil {
		t.Fatal(err)
	}
	far, err := b.Try("blocks.max_spacing=60in")
	if err != nil {
		t.Fatal(err)
	}
	if n, m := len(base.Assembly.Blocks), len(far.Assembly.Blocks); m >= n {
		t.Errorf("%d blocks at 60 in, %d in the demo", m, n)
	}
	if g := far.Report.Governs(); g.Verdict != check.Fails || g.Used() <= base.Report.Governs().Used() {
		t.Errorf("%s governs with %.2f, %s; the demo has %.2f", g.ID, g.Used(), g.Verdict, base.Report.Governs().Used())
	}
}

func TestTryTellsWhatIsWrong(t *testing.T) {
	src, _ := demo.File("deck")
	_, err := trial.Base{Name: "deck", Src: src}.Try("blocks.max_spacing=red")
	var p spec.Problems
	if !errors.As(err, &p) || !strings.Contains(err.Error(), "blocks.max_spacing") {
		t.Errorf("got %v", err)
	}
}

func TestCommas(t *testing.T) {
	got := trial.Commas("a=1in, b=[2in, {c: 3, d: 4}],e=5")
	if want := []string{"a=1in", "b=[2in, {c: 3, d: 4}]", "e=5"}; !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}
