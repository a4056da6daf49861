package sheet_test

import (
	"math"
	"strings"
	"testing"

	"standclear/detail"
	"standclear/render"
)

// Where house joists run along the rim the sheets show and count the backing that is built, say that no joist holds it,
// and name no joist and no tie.
func TestSheetsWithJoistsAlongTheRim(t *testing.T) {
	s := compose(t, "deck", variants()["deck, joists along"]...)
	for id, c := range map[string]struct{ says, not []string }{
		"A-101": {[]string{"BEHIND EACH BLOCK, FULL DEPTH", "NO JOIST HOLDS IT", "HOUSE JOISTS RUN ALONG THE RIM", "NO FORCE PATH", "BESIDE BLOCKING BY THE ENGINEER AND A DECK JOIST; HOLE", `3 1/2" x 11 7/8" x 8 3/4"`}, []string{"BETWEEN THE HOUSE JOISTS", "TS1", "EX7", "BESIDE A HOUSE JOIST AND A DECK JOIST; HOLE"}},
		"A-301": {[]string{"NO JOIST HOLDS IT", "GRIP"}, []string{"TS1", "FIXINGS TO THE JOISTS"}},
		"A-601": {[]string{"BK1", "NOT DRAWN, THE PROJECT DOES NOT PLACE THEM"}, []string{"TS1", "EX7"}},
		"S-504": {[]string{"BLOCKING BY THE ENGINEER", "ACROSS THE HOUSE JOISTS, WHICH RUN ALONG THE RIM"}, []string{"THIS JOIST", "SOUND, FULL LENGTH"}},
	} {
		all := strings.Join(strings.Fields(text(t, sheetOf(t, s, id))), " ")
		for _, w := range c.says {
			if !strings.Contains(all, w) {
				t.Errorf("%s does not say %q", id, w)
			}
		}
		for _, w := range c.not {
			if strings.Contains(all, w) {
				t.Errorf("%s says %q", id, w)
			}
		}
	}
	// The depths on A-101 begin at the inner face of a piece that is there.
	in := s.a.Find(detail.Backing)[0].Bounds().Min.Y
	found := false
	for _, it := range sheetOf(t, s, "A-101").Views[1].Items {
		if d, ok := it.(render.Dim); ok {
			found = found || math.Abs(d.P.Y+in) < 1e-6 || math.Abs(d.Q.Y+in) < 1e-6
		}
	}
	if !found {
		t.Errorf("nothing is dimensioned at the backing's face, %.1f", in)
	}
}
