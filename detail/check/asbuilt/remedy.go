package asbuilt

import (
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/unit"
)

func lengthText(mm float64, sys unit.System) string { return unit.Length(mm).Q().Text(sys) }

// spot is room for one more block.
type spot struct {
	place
	left, right string
}

// mostSpots is how many places for one more block are tried.
const mostSpots = 12

// room lists where one more block could stand without breaking a rule of the layout: in the spans beside the marks,
// the widest first, from the middle of each outward on the grid of the project.
func (b built) room(marks []string) []spot {
	a, _, err := b.assembly("")
	if err != nil {
		return nil
	}
	rules, at, grid := a.Rules(), b.at(), a.Spec.Blocks.Grid.MM()
	var spans []int
	for i := 1; i < len(at); i++ {
		if slices.Contains(marks, at[i].mark) || slices.Contains(marks, at[i-1].mark) || b.lostBetween(at[i-1], at[i], marks) {
			spans = append(spans, i)
		}
	}
	slices.SortStableFunc(spans, func(i, j int) int { return compare(at[j].x-at[j-1].x, at[i].x-at[i-1].x) })
	var out []spot
	for _, i := range spans {
		lo, hi := at[i-1].x, at[i].x
		mid := math.Round((lo+hi)/2/grid) * grid
		for k := 0.0; k*grid < (hi-lo)/2 && len(out) < mostSpots; k++ {
			for _, x := range []float64{mid + k*grid, mid - k*grid} {
				if x-lo < rules.MinSpacing || hi-x < rules.MinSpacing || !free(a, x) || k == 0 && len(out) > 0 && out[len(out)-1].x == x {
					continue
				}
				out = append(out, spot{place{"new block", x}, at[i-1].mark, at[i].mark})
				k += 3 // not every step of a fine grid
				break
			}
		}
	}
	return out
}

// lostBetween reports whether a missing block was drawn between two that stand.
func (b built) lostBetween(l, r place, marks []string) bool {
	return slices.ContainsFunc(marks, func(m string) bool { x := b.drawnX(m); return x > l.x && x < r.x })
}

func compare(a, b float64) int { return pickInt(a < b, -1, pickInt(a > b, 1, 0)) }

// free reports whether a block at x misses joists and obstacles.
func free(a *detail.Assembly, x float64) bool {
	for _, c := range a.Rules().Judge([]float64{x}).Clashes {
		if c.Kind != "end" {
			return false
		}
	}
	return true
}

// atBlocks checks every block with what was measured at it alone.
func (r *Result) atBlocks(b built) {
	for _, p := range b.at() {
		moved := r.moved(p.mark)
		if len(moved) == 0 {
			continue
		}
		now, err := b.checkBlock(p.mark)
		if err != nil {
			r.Turns = append(r.Turns, Turn{Where: p.mark, Worse: true, Causes: moved, Remedy: r.putRight(moved),
				Step: check.Step{ID: "block_as_built", Group: check.Connection, Name: "block as it was found", Where: p.mark, Verdict: check.Fails, Clause: "judgement", Reason: err.Error()}})
			continue
		}
		turns := against(&now, &r.Report, p.mark)
		for i := range turns {
			turns[i].Drawn = b.d.Report.Find(turns[i].Step.ID)
		}
		r.Turns = append(r.Turns, turns...)
		if len(turns) == 0 {
			continue
		}
		for _, key := range moved {
			if back, err := b.but(key).checkBlock(p.mark); err == nil {
				r.cure(key, &back, &r.Report, p.mark)
			}
		}
		r.mendBlock(b, p.mark, &now)
	}
}

// mendBlock finds what mends the failing checks of one block: to fit what is missing or change what is wrong, to
// pack its gap, one more block beside it, or blocks beside it that do without it.
func (r *Result) mendBlock(b built, mark string, now *check.Report) {
	bad := failing(now)
	for id := range failing(&r.Report) {
		delete(bad, id)
	}
	packs, beside, tried := b.packs(mark, bad), "", false
	for i := range r.Turns {
		t := &r.Turns[i]
		if t.Where != mark || !t.Worse || t.Step.Verdict != check.Fails {
			continue
		}
		if t.Remedy = r.putRight(t.Causes); packs && slices.Contains(t.Causes, "blocks."+mark+".gap") {
			t.Remedy += "; or fill the gap over the whole face of the block with one treated board, screwed to it as its plies are (checked anew)"
		}
		if t.Remedy == "" && !tried {
			beside, tried = b.beside(mark), true
		}
		if t.Remedy == "" {
			t.Remedy = beside
		}
	}
}

// packs reports whether a board in the gap of a block mends all of its failing checks.
func (b built) packs(mark string, bad map[string]bool) bool {
	b.packed = true
	r, err := b.checkBlock(mark)
	now := failing(&r)
	for id := range bad {
		if err != nil || now[id] {
			return false
		}
	}
	return len(bad) > 0
}

// beside says where new blocks beside one carry what it cannot be counted on for: one of the two, else both; ""
// when they do not.
func (b built) beside(mark string) string {
	sys := b.d.Assembly.Spec.Words()
	room, was := b.room([]string{mark}), failing(b.d.Report)
	var left, right []spot
	for _, p := range room {
		if p.right == mark {
			left = append(left, p)
		} else {
			right = append(right, p)
		}
	}
	try := func(at ...spot) bool {
		n := b
		n.lost = mark
		for _, p := range at {
			n = n.plus(p.place)
		}
		r, err := n.check()
		for id := range failing(&r) {
			if !was[id] {
				return false
			}
		}
		return err == nil
	}
	const rest = ", with backing, ties and fasteners as drawn, and do not count on "
	for _, p := range room {
		if try(p) {
			return "add a block beside it at " + lengthText(p.x, sys) + rest + mark + " (checked anew)"
		}
	}
	for _, l := range left[:min(2, len(left))] {
		for _, k := range right[:min(2, len(right))] {
			if try(l, k) {
				return "add two blocks beside it at " + lengthText(l.x, sys) + " and " + lengthText(k.x, sys) + rest + mark + " (checked anew)"
			}
		}
	}
	return ""
}

// blame gives every item that turned a check the verdict of that check, and its reason. Where no item turns it alone,
// all do that are off, or else all that were found otherwise than drawn.
func (r *Result) blame() {
	for i := range r.Turns {
		t := &r.Turns[i]
		if !t.Worse {
			continue
		}
		if t.Remedy == "" && t.Step.Verdict == check.Fails {
			t.Remedy = "no single change that was tried mends it: stop, and ask the engineer"
		}
		causes, together := t.Causes, ""
		if len(causes) == 0 {
			causes, together = r.off(t.Where), "together with the others "
		}
		for k := range r.Items {
			if it := &r.Items[k]; slices.Contains(causes, it.Key) && it.Verdict.rank() < of(t.Step.Verdict).rank() {
				why := together + "it turns " + t.Step.Name
				if it.Verdict == OK {
					why = "within tolerance, yet " + why + ": the design leaves no room for it"
				}
				it.Reason, it.Verdict = join(it.Reason, why), of(t.Step.Verdict)
			}
		}
	}
}

// doubt takes "holds" from what is off where the checks it would have to hold in are not done, or rest with the
// engineer, as drawn already.
func (r *Result) doubt() {
	open := map[check.Verdict]int{}
	for _, s := range r.Report.Steps {
		open[s.Verdict]++
	}
	for i := range r.Items {
		it := &r.Items[i]
		switch {
		case it.Verdict != Off:
		case len(r.Already) > 0:
			it.Verdict, it.Reason = NotChecked, join(it.Reason, "the design fails as drawn already: whether it would hold with it is not known")
		case open[check.NotChecked] > 0:
			it.Verdict, it.Reason = NotChecked, join(it.Reason, plural(open[check.NotChecked], "check")+" of the design cannot be done: whether they hold with it is not known")
		case open[check.Engineer] > 0:
			it.Verdict, it.Reason = Engineer, join(it.Reason, "no check turns, but "+plural(open[check.Engineer], "check")+" of the design rest with the engineer, who is to know of it")
		}
	}
}

// off are the keys of what is off, of the whole or of one block; where none is, of all that is not as drawn.
func (r *Result) off(mark string) []string {
	moved := r.moved(mark)
	var out []string
	for _, i := range r.Items {
		if i.Verdict != OK && slices.Contains(moved, i.Key) {
			out = append(out, i.Key)
		}
	}
	if len(out) > 0 {
		return out
	}
	return moved
}
