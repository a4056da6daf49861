package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/render"
	"standclear/render/font"
)

// Every step stands in the calculation once and in order, with its clause; nothing runs over an edge of
// its page, and no two texts of a page meet.
func TestCalculationHoldsEveryStep(t *testing.T) {
	eachSet(t, func(t *testing.T, s set) {
		var all []string
		for i, p := range s.pages {
			if want := fmt.Sprintf("C-%03d", i+1); p.ID != want {
				t.Errorf("page %d is %s", i+1, p.ID)
			}
			for _, it := range p.Items {
				x, ok := it.(render.Text)
				if !ok {
					continue
				}
				all = append(all, strings.Join(x.Lines, " "))
				for _, l := range x.Lines {
					if w := font.Width(l, x.Height, x.Bold); (x.Align-1)%3 == 0 && x.At.X+w > p.Size.W-8 {
						t.Errorf("%s: %q runs over the edge", p.ID, l)
					}
				}
				if low := x.At.Y - float64(len(x.Lines))*x.Height*render.LinePitch; low < 5 {
					t.Errorf("%s: %q ends at %.1f mm", p.ID, x.Lines[0], low)
				}
			}
		}
		text := strings.Join(all, "\n")
		at := 0
		for g := check.Loads; g <= check.Scope; g++ {
			for _, st := range s.report.Steps {
				if st.Group != g {
					continue
				}
				i := strings.Index(text[at:], st.Name)
				if i < 0 {
					t.Fatalf("%q is not in the calculation, or not in its place", st.ID)
				}
				at += i + len(st.Name)
			}
		}
		for _, a := range s.report.Assumptions {
			if !strings.Contains(text, a.Text) {
				t.Errorf("assumption %q is left out", a.Text)
			}
		}
	})
}
