package trial_test

import (
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"

	"standclear/detail/check"
	"standclear/detail/demo"
	"standclear/detail/trial"
	"standclear/detail/unit"
)

// FuzzTry builds and checks what can be read: it comes to an end without a panic, each verdict has its reason, and no
// number is none.
func FuzzTry(f *testing.F) {
	var srcs [][]byte
	for _, name := range demo.Names() {
		src, _ := demo.File(name)
		srcs = append(srcs, src)
	}
	listed, err := os.ReadFile(filepath.Join("..", "..", "testdata", "projects", "deck-as-listed.yaml"))
	if err != nil {
		f.Fatal(err)
	}
	srcs = append(srcs, listed)
	for i := range srcs {
		for _, set := range []string{
			"blocks.max_spacing=16in", "blocks.width=30in", "ledger.length=40ft", "ledger.length=1ft", "deck.below_floor=-20in", "blocks.equal=yes", "blocks.positions=[4in, 24in]",
			"fasteners.through.rows=[1in]", "fasteners.through.columns=3", "wall.layers.4.thickness=6in", "floor.rim.thickness=5in", "tie.kind=none", "blocks.plies=[12in]",
			"doors=[{from: 0in, to: 100in}]", "obstacles=[{name: X, from: 0in, to: 176in}]", "ledger.splices=[88in]", "blocks.top_slope=45deg", "floor.joists.spacing=4in", "blocks.pad.thickness=2in",
		} {
			f.Add(uint8(i), set, "blocks.width=7in")
		}
	}
	f.Fuzz(func(t *testing.T, which uint8, a, b string) {
		base := trial.Base{Name: "fuzz.yaml", Src: srcs[int(which)%len(srcs)]}
		s, _ := base.Read(a, b)
		if s == nil || s.Ledger.Length > 60*unit.Foot {
			return
		}
		got, err := base.Try(a, b)
		if err != nil {
			if err.Error() == "" {
				t.Error("refused without a word")
			}
			return
		}
		sound(t, &got.Report)
		again, err := base.Try(a, b)
		if err != nil || !reflect.DeepEqual(got.Report, again.Report) {
			t.Errorf("the same project gives another report: %v", err)
		}
	})
}

// sound holds what is true of every report.
func sound(t *testing.T, r *check.Report) {
	t.Helper()
	if len(r.Steps) == 0 || len(r.Cautions) == 0 {
		t.Errorf("%d steps, %d cautions", len(r.Steps), len(r.Cautions))
	}
	for _, s := range r.Steps {
		if s.Verdict > check.OK && s.Reason == "" || s.Name == "" || s.ID == "" {
			t.Errorf("%s, %q is %v without a reason", s.ID, s.Name, s.Verdict)
		}
		numbers := []float64{s.Ratio, s.Value.V}
		if s.Limit != nil {
			numbers = append(numbers, s.Limit.V)
		}
		for _, a := range s.With {
			numbers = append(numbers, a.Value.V)
		}
		if slices.ContainsFunc(numbers, func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }) {
			t.Errorf("%s holds no number: %+v", s.ID, s)
		}
	}
}
