package design

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/spec"
	"standclear/detail/together"
)

// Reread reads the project anew with further KEY=VALUE changes; ok is false when it then has problems.
type Reread func(changes ...string) (s *spec.Spec, ok bool)

// Mend finds for every failing step the smallest change of one parameter that mends it, and writes it
// into the step's Fix. A change is offered only after the whole design was built and checked with it; what
// would then begin to fail is named beside it. Steps that no tried change mends keep the fix they have,
// or say so. The change that leaves the fewest failing comes back.
func Mend(a *detail.Assembly, r *check.Report, again Reread) Best {
	failing := failures(r)
	if len(failing) == 0 {
		return Best{}
	}
	if a.Count(detail.BlockPly)+a.Count(detail.DeckJoist)+a.Count(detail.HouseJoist) > mostParts {
		for i := range r.Steps {
			if s := &r.Steps[i]; s.Verdict == check.Fails && s.Fix == "" {
				s.Fix = "not looked for: the row is so long that trying changes would take minutes; try a part of it"
			}
		}
		return Best{}
	}
	all := levers(a.Spec, a)
	if len(a.Blocks) > manyBlocks {
		for i := range all {
			all[i].thin()
		}
	}
	known := NewKnown()
	together.Each(len(all), func(i int) { all[i].try(failing, again, known) })
	for i := range r.Steps {
		if s := &r.Steps[i]; s.Verdict == check.Fails {
			s.Fix = fixText(all, s)
		}
	}
	return best(all, len(failing))
}

// Best is the change that leaves the fewest checks failing.
type Best struct {
	Sets  []string // KEY=VALUE; none when no change leaves fewer than there are
	Left  int      // how many then fail
	Among int      // how many fail now
}

// best looks through what was tried; of changes alike the first counts, which costs least, and one of the blocks
// before one of the house or of what the deck is to be.
func best(all []lever, failing int) Best {
	b := Best{Left: failing, Among: failing}
	for _, given := range []bool{false, true} {
		for _, l := range all {
			if (l.given || l.many) == given && l.left < b.Left && len(l.best) > 0 {
				b.Left, b.Sets = l.left, l.best
			}
		}
	}
	return b
}

// fixText is what mends the step at the least cost to others, and one other to choose from.
func fixText(all []lever, s *check.Step) string {
	var found []mending
	for _, l := range all {
		if m, ok := l.mends[s.ID]; ok && !l.many {
			found = append(found, m)
		}
	}
	slices.SortStableFunc(found, func(a, b mending) int {
		return cmp.Or(len(a.breaks)-len(b.breaks), a.turns-b.turns)
	})
	if s.Fix != "" && len(found) > 0 && len(found[0].breaks) > 0 {
		return s.Fix // it names the parameter itself; no change that was tried mends it without breaking others
	}
	var out []string
	for _, m := range found[:min(2, len(found))] {
		if len(out) > 0 && (len(m.breaks) > len(found[0].breaks) || m.turns > found[0].turns) {
			break
		}
		t := m.change
		if n := len(m.breaks); n > 0 {
			t += ", then also to be mended: " + strings.Join(m.breaks[:min(2, n)], ", ")
			if n > 2 {
				t += fmt.Sprintf(" and %d more", n-2)
			}
		}
		out = append(out, t)
	}
	switch {
	case len(out) > 0:
		return strings.Join(out, "; or ") + " (checked anew)"
	case s.Fix != "":
		return s.Fix
	}
	return "no change of one parameter that was tried mends it alone"
}

// lever is one parameter and the values to try, the smallest change first.
type lever struct {
	changes [][]string // KEY=VALUE; the first is the parameter, others follow from it
	given   bool       // a change of the house, or of what the deck is to be
	adds    bool       // adds a part the design has not got
	many    bool       // turns several parameters that have nothing to do with each other: no smallest change of one step
	all     bool       // the changes go more than one way: the greatest does not tell for the others
	mends   map[string]mending
	best    []string // of the changes tried, the smallest that leaves the fewest failing
	left    int      // how many
}

// manyBlocks is from where on building and checking takes so long that only some of the changes are tried.
const manyBlocks = 15

// mostParts is how many plies of blocks and joists a row may have for changes to be tried at all.
const mostParts = 400

// thin leaves the smallest change, the greatest and the one between.
func (l *lever) thin() {
	if n := len(l.changes); n > 3 {
		l.changes = [][]string{l.changes[0], l.changes[n/2], l.changes[n-1]}
	}
}

// mending is a change that mends a step, and the names of the steps that then begin to fail.
type mending struct {
	change string
	turns  int // how many parameters it turns
	breaks []string
}

// try builds and checks the design with each change. The greatest goes first: what it does not mend, a
// smaller one is not asked for. Of changes that mend a step the one that breaks fewest others counts, and
// of those the smallest.
func (l *lever) try(failing map[string]bool, again Reread, known *Known) {
	l.mends = map[string]mending{}
	for i := len(l.changes) - 1; i >= 0; i-- {
		mended, breaks, left := outcome(l.changes[i], failing, again, known)
		if len(mended) == 0 && !l.all {
			return
		}
		if len(mended) > 0 && (len(l.best) == 0 || left <= l.left) {
			l.best, l.left = l.changes[i], left
		}
		for _, id := range mended {
			if m, ok := l.mends[id]; !ok || len(breaks) <= len(m.breaks) {
				l.mends[id] = mending{strings.Join(l.changes[i], " "), len(l.changes[i]), breaks}
			}
		}
	}
}

// outcome returns the steps that a change mends and the names of those it breaks, both in the order of
// the report, and how many then fail or are no longer known to hold.
func outcome(change []string, failing map[string]bool, again Reread, known *Known) (mended, breaks []string, left int) {
	s, ok := again(change...)
	if !ok {
		return nil, nil, 0
	}
	_, r, _, err := known.Check(s)
	if err != nil {
		return nil, nil, 0
	}
	now := failures(&r)
	for _, st := range r.Steps {
		if st.Verdict == check.Fails && !failing[st.ID] && !slices.Contains(breaks, st.Name) {
			breaks = append(breaks, st.Name)
		}
	}
	for id := range failing {
		st := r.Find(id)
		gone := st == nil && len(breaks) > 0 // perhaps under another name
		if !now[id] && !gone && (st == nil || st.Verdict != check.NotChecked) {
			mended = append(mended, id)
		}
	}
	slices.Sort(mended)
	left = len(now)
	for id := range failing {
		if !now[id] && !slices.Contains(mended, id) {
			left++
		}
	}
	return mended, breaks, left
}

// failures are the IDs of the failing steps.
func failures(r *check.Report) map[string]bool {
	out := map[string]bool{}
	for _, s := range r.Steps {
		if s.Verdict == check.Fails {
			out[s.ID] = true
		}
	}
	return out
}
