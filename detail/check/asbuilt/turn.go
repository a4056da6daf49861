package asbuilt

import (
	"fmt"
	"slices"
	"strings"

	"standclear/detail/check"
	"standclear/detail/check/design"
)

// turned lists the checks of the whole that changed, and for those that got worse what turned them and what mends
// them.
func (r *Result) turned(b built) {
	moved := r.moved("")
	if len(moved) == 0 {
		return
	}
	r.Turns = against(&r.Report, b.d.Report, "")
	bad := map[string]bool{}
	for _, t := range r.Turns {
		if t.Worse {
			bad[t.Step.ID] = true
		}
	}
	if len(bad) == 0 {
		return
	}
	for _, key := range moved {
		back, err := b.but(key).check()
		if err != nil {
			continue
		}
		r.cure(key, &back, b.d.Report, "")
	}
	r.mend(b)
}

// cure notes the item as a cause of every turn that does not come about without it.
func (r *Result) cure(key string, back, drawn *check.Report, where string) {
	for i := range r.Turns {
		t := &r.Turns[i]
		if !t.Worse || t.Where != where {
			continue
		}
		if s := back.Find(t.Step.ID); s == nil || s.Verdict < t.Step.Verdict {
			t.Causes = append(t.Causes, key)
		}
	}
}

// against lists the checks that are otherwise in now than in was.
func against(now, was *check.Report, where string) []Turn {
	var out []Turn
	for i := range now.Steps {
		s := &now.Steps[i]
		old := was.Find(s.ID)
		worse := s.Verdict > check.OK && (old == nil || s.Verdict > old.Verdict)
		if worse || old != nil && where == "" && s.Limit != nil && (s.Verdict != old.Verdict || changed(s, old)) {
			out = append(out, Turn{Step: *s, Drawn: old, Where: where, Worse: worse})
		}
	}
	return out
}

// mend finds for every failing turn of the whole the smallest change: one block more, then to put right what
// turned it, then one parameter of the project.
func (r *Result) mend(b built) {
	bad := failing(&r.Report)
	for id := range failing(b.d.Report) {
		delete(bad, id)
	}
	if len(bad) == 0 {
		return
	}
	more, mends := b.oneMore(bad, func(b built) (check.Report, error) { return b.check() }, r.near(b))
	other := false
	for i := range r.Turns {
		t := &r.Turns[i]
		if t.Step.Verdict != check.Fails || !t.Worse {
			continue
		}
		var ways []string
		if mends[t.Step.ID] {
			ways = append(ways, more)
		}
		if put := r.putRight(t.Causes); put != "" {
			ways = append(ways, put)
		}
		t.Remedy = strings.Join(ways, "; or ")
		other = other || len(ways) == 0
	}
	if !other {
		return
	}
	a, _, err := b.assembly("")
	if err != nil {
		return
	}
	again := r.Report
	again.Steps = slices.Clone(again.Steps)
	design.Mend(a, &again, b.again)
	for i := range r.Turns {
		if t := &r.Turns[i]; t.Remedy == "" && t.Worse && t.Step.Verdict == check.Fails {
			t.Remedy = again.Find(t.Step.ID).Fix
		}
	}
}

// putRight says how the first cause that can be put right is.
func (r *Result) putRight(causes []string) string {
	for _, c := range causes {
		for _, i := range r.Items {
			if i.Key == c && i.Remedy != "" {
				return i.Remedy
			}
		}
	}
	return ""
}

// near are the marks of the blocks that stand off their places or are missing.
func (r *Result) near(b built) []string {
	var out []string
	for _, i := range r.Items {
		if strings.HasPrefix(i.Key, "blocks.") && i.Where != "" && (i.Key == "blocks."+i.Where || strings.HasSuffix(i.Key, ".at")) && (i.Verdict == Off || i.Verdict == Fails) {
			out = append(out, i.Where)
		}
	}
	return out
}

// oneMore tries one more block between neighbours beside the marks and returns what to do and which of the failing
// checks that mends; it breaks no other.
func (b built) oneMore(bad map[string]bool, try func(b built) (check.Report, error), marks []string) (words string, mends map[string]bool) {
	mends = map[string]bool{}
	for _, p := range b.room(marks) {
		r, err := try(b.plus(p.place))
		if err != nil {
			continue
		}
		now := failing(&r)
		got, broken := map[string]bool{}, false
		for id := range bad {
			got[id] = !now[id]
		}
		for id := range now {
			broken = broken || !bad[id] && !failing(b.d.Report)[id]
		}
		n := 0
		for _, is := range got {
			n += count(is)
		}
		if m := 0; n > 0 && !broken {
			for _, is := range mends {
				m += count(is)
			}
			if n > m {
				sys := b.d.Assembly.Spec.Words()
				words, mends = fmt.Sprintf("add a block between %s and %s at %s, with backing, ties and fasteners as drawn (checked anew)", p.left, p.right, lengthText(p.x, sys)), got
			}
			if n == len(bad) {
				break
			}
		}
	}
	return words, mends
}
