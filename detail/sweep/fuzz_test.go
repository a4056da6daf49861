package sweep

import (
	"math"
	"strings"
	"testing"

	"standclear/detail/spec"
	"standclear/detail/unit"
)

// FuzzParse reads any text as an axis: refused in one line, or some values, each a change of its key as --set takes
// it, on a scale that is all numbers.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"blocks.max_spacing=24in..96in/4in", "fasteners.through.diameter=1/2in,5/8in", "blocks.plies=[1 1/2in, 1 1/2in],[3in]", "fasteners.through.columns=1..3/1",
		"fasteners.through.diameter=1/2in with fasteners.through.hole=9/16in, 5/8in with fasteners.through.hole=11/16in and blocks.width=7in",
		"blocks.width=1in..2in/0in", "blocks.width=1in..1e99in/1in", "blocks.width=5/8in..2in/1/8in", "blocks.width=2in..1in/-1in", "blocks.width=100mm..0.2m/50mm", "blocks.width=1in..2/1", "=", "a=b", "blocks.width=[", "blocks.width=..", "ledger.species=hem-fir,spf", "blocks.width=0.1..0.3/0.1",
		"climate.months.0=1C..5C/1C", "loads.live=NaNpsf..3psf/1psf", "blocks.width=1in with x=1",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, err := Parse(text, unit.IP)
		if err != nil {
			if s := err.Error(); s == "" || len(s) > 4*len(text)+600 {
				t.Errorf("%d bytes of refusal: %q", len(s), s)
			}
			return
		}
		if a.Key == "" || len(a.Points) == 0 || len(a.Points) > MostDesigns {
			t.Fatalf("%q gives %d values of %q", text, len(a.Points), a.Key)
		}
		for i, p := range a.Points {
			if len(p.Sets) == 0 || p.Sets[0] != a.Key+"="+p.Text {
				t.Fatalf("value %d, %q, sets %q", i, p.Text, p.Sets)
			}
			if a.Scaled && (math.IsNaN(p.At) || math.IsInf(p.At, 0) || i > 0 && p.At == a.Points[i-1].At) {
				t.Fatalf("value %d, %q, stands at %v", i, p.Text, p.At)
			}
		}
		if s, problems := spec.Read("empty", nil, a.Points[0].Sets); s == nil && !strings.Contains(problems.Error(), "empty:1:1") && !strings.Contains(problems.Error(), "--set") {
			t.Errorf("%q: %v", a.Points[0].Sets, problems)
		}
	})
}
