package design_test

import (
	"strings"
	"testing"

	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/demo"
	"standclear/detail/spec"
)

// again reads a demo with changes and more changes.
func again(name string, changes []string) design.Reread {
	src, _ := demo.File(name)
	return func(more ...string) (*spec.Spec, bool) {
		s, problems := spec.Read(name, src, append(append([]string{}, changes...), more...))
		return s, len(problems) == 0
	}
}

// settings splits "a.b=1in c.d=[1in, 2in]" into its KEY=VALUE pairs: a word with an = opens one.
func settings(change string) (out []string) {
	for _, w := range strings.Fields(change) {
		if strings.Contains(w, "=") || len(out) == 0 {
			out = append(out, w)
		} else {
			out[len(out)-1] += " " + w
		}
	}
	return out
}

// A change that is offered as checked anew does mend its step, and breaks no other but those it names.
func TestOfferedChangesMend(t *testing.T) {
	offers := 0
	for _, c := range []struct {
		name    string
		changes []string
	}{
		{"deck", []string{"tie.rating=900lb"}},
		{"deck", []string{"deck.joists.hanger=500lb"}},
		{"deck", []string{"blocks.ply_screws.count=10"}},
		{"deck", []string{"loads.live=60psf"}},
		{"deck", []string{"loads.snow=70psf"}},
		{"deck", []string{"floor.backing.kind=none"}},
		{"deck", []string{"floor.backing.fixing=200lb"}},
		{"deck-metric", []string{"tie.rating=3kN", "fasteners.through.washer.size=50mm"}},
		{"balcony-metric", []string{"blocks.ply_screws.count=6"}},
	} {
		read := again(c.name, c.changes)
		s, ok := read()
		if !ok {
			t.Fatalf("%v cannot be read", c.changes)
		}
		a, r := built(t, s)
		before := failing(&r)
		if len(before) == 0 {
			t.Errorf("%v: nothing fails", c.changes)
		}
		design.Mend(a, &r, read)
		for _, st := range r.Steps {
			fix, checked := strings.CutSuffix(st.Fix, " (checked anew)")
			if st.Verdict == check.Fails && fix == "" {
				t.Errorf("%v: %s fails and says nothing of what would mend it", c.changes, st.ID)
			}
			if st.Verdict != check.Fails || !checked {
				continue
			}
			first, _, _ := strings.Cut(fix, "; or ")
			change, breaks, _ := strings.Cut(first, ", then also to be mended: ")
			s, ok := read(settings(change)...)
			if !ok {
				t.Errorf("%v: %s offers %q, which cannot be read", c.changes, st.ID, change)
				continue
			}
			offers++
			_, after := built(t, s)
			if now := after.Find(st.ID); now != nil && now.Verdict == check.Fails {
				t.Errorf("%v: %s still fails with %q", c.changes, st.ID, change)
			}
			for _, other := range after.Steps {
				if other.Verdict == check.Fails && !before[other.ID] && breaks == "" {
					t.Errorf("%v: %q breaks %s and does not say so", c.changes, change, other.ID)
				}
			}
		}
	}
	if offers < 8 {
		t.Errorf("%d changes offered in all", offers)
	}
}

// By hand: the load of one tie is 1,010 lb in the deck, of which 0.9 of the rating may be used: a rating of
// 900 lb fails, 10 % more is 990 and fails, 25 % more is 1,125 lb and holds: 1,130 to the next ten pounds.
func TestSmallestRatingIsOffered(t *testing.T) {
	read := again("deck", []string{"tie.rating=900lb"})
	s, _ := read()
	a, r := built(t, s)
	design.Mend(a, &r, read)
	st := r.Find("tie_rating")
	if load := st.Value.V / 4.4482216; load < 0.9*990 || load > 0.9*1130 {
		t.Fatalf("the load of a tie is %.0f lb", load)
	}
	if !strings.HasPrefix(st.Fix, "tie.rating=1130lb") {
		t.Errorf("offered: %s", st.Fix)
	}
}

// Nothing is offered where nothing fails.
func TestMendLeavesAPassingDesignAlone(t *testing.T) {
	read := again("deck", wide("deck"))
	s, _ := read()
	a, r := built(t, s)
	design.Mend(a, &r, read)
	for _, st := range r.Steps {
		if st.Fix != "" {
			t.Errorf("%s has a fix: %s", st.ID, st.Fix)
		}
	}
}

func failing(r *check.Report) map[string]bool {
	out := map[string]bool{}
	for _, s := range r.Steps {
		if s.Verdict == check.Fails {
			out[s.ID] = true
		}
	}
	return out
}

// The best change leaves as many checks failing as it says, and fewer than there were: built and checked anew here.
func TestBestChangeLeavesWhatItSays(t *testing.T) {
	for _, c := range []struct {
		name    string
		changes []string
		left    int
	}{
		{"deck", []string{"tie.rating=900lb"}, 0},
		{"deck", []string{"tie.lateral.count=0"}, 0},
		{"deck", []string{"floor.backing.kind=none", "tie.kind=none"}, 1},
		{"deck", []string{"deck.joists.hanger_depth=lower"}, 0},
		{"deck", []string{"wall.layers.5.thickness=2 1/2in"}, 1},
		{"deck-metric", []string{"blocks.end_max=200mm"}, 0},
	} {
		read := again(c.name, c.changes)
		s, ok := read()
		if !ok {
			t.Fatalf("%v cannot be read", c.changes)
		}
		a, r := built(t, s)
		before := len(failing(&r))
		best := design.Mend(a, &r, read)
		if best.Among != before || before == 0 || len(best.Sets) == 0 || best.Left >= before {
			t.Errorf("%v: %d fail, offered %+v", c.changes, before, best)
			continue
		}
		s, ok = read(best.Sets...)
		if !ok {
			t.Errorf("%v: %v cannot be read", c.changes, best.Sets)
			continue
		}
		_, after := built(t, s)
		if n := len(failing(&after)); n != best.Left || n > c.left {
			t.Errorf("%v: %v leaves %d failing, said %d", c.changes, best.Sets, n, best.Left)
		}
	}
}
