package explain_test

import (
	"strings"
	"testing"
)

// Where house joists run along the rim the sketch of the force path has the backing as long as it is built, no joist
// and no tie: 8 3/4 in of 8 3/4 in and 300 mm either side, (222.25 / 822.25) x 75 = 20 places from end to end.
func TestFloorSketchAlongTheRim(t *testing.T) {
	j := jobOf(t, "deck", "floor.joists.direction=parallel")
	_, lines := j.Sketch(j.Report.Find("rim_blocking"))
	all := strings.Join(lines, "\n")
	if top := strings.TrimSpace(lines[1]); top != "+"+strings.Repeat("-", 20)+"+" {
		t.Errorf("the backing is drawn %q", top)
	}
	for word, want := range map[string]bool{"backing, carried": true, "#": false, "~": false, "no tie: house joists run along the rim": true, "joist ends": false} {
		if strings.Contains(all, word) != want {
			t.Errorf("%q in the sketch, want %v:\n%s", word, want, all)
		}
	}
	j = jobOf(t, "deck", "floor.joists.direction=parallel", "floor.backing={kind: none}")
	if _, lines = j.Sketch(j.Report.Find("rim_blocking")); strings.Contains(strings.Join(lines, "\n"), "backing") {
		t.Errorf("backing in a sketch of none:\n%s", strings.Join(lines, "\n"))
	}
}
