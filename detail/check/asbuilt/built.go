package asbuilt

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/design"
	"standclear/detail/spec"
	"standclear/detail/unit"
)

// place is where a block stands.
type place struct {
	mark string
	x    float64
}

// places are the blocks found, from the left; one that was not measured stands where it is drawn.
func places(a *detail.Assembly, f *Field) []place {
	var out []place
	for _, b := range a.Blocks {
		k := f.block(b.Mark)
		switch {
		case k.missing:
		case k.at != nil:
			out = append(out, place{b.Mark, k.at.MM()})
		default:
			out = append(out, place{b.Mark, b.X})
		}
	}
	for _, k := range f.blocks {
		if !slices.ContainsFunc(a.Blocks, func(b detail.Block) bool { return b.Mark == k.mark }) && k.at != nil {
			out = append(out, place{k.mark, k.at.MM()})
		}
	}
	slices.SortStableFunc(out, func(a, b place) int { return cmp.Compare(a.x, b.x) })
	return out
}

// built is the project with the measured values, but for those taken back and with what is done to mend it.
type built struct {
	d       Design
	f       *Field
	without map[string]bool // keys of items taken as drawn
	more    []place         // blocks added
	lost    string          // mark of a block that stands but is not counted on
	packed  bool            // gaps at blocks filled by a ply
}

// but returns b with one more item taken as drawn.
func (b built) but(keys ...string) built {
	without := map[string]bool{}
	for k := range b.without {
		without[k] = true
	}
	for _, k := range keys {
		without[k] = true
	}
	b.without = without
	return b
}

// plus returns b with one more block.
func (b built) plus(p place) built {
	b.more = append(slices.Clone(b.more), p)
	return b
}

// at are the blocks that stand.
func (b built) at() []place {
	f := *b.f
	f.blocks = slices.Clone(f.blocks)
	for i, k := range f.blocks {
		if b.without["blocks."+k.mark+".at"] && b.drawnX(k.mark) >= 0 {
			f.blocks[i].at = nil
		}
		if b.without["blocks."+k.mark] {
			f.blocks[i].missing = false
		}
	}
	out := slices.DeleteFunc(append(places(b.d.Assembly, &f), b.more...), func(p place) bool { return p.mark == b.lost })
	slices.SortStableFunc(out, func(a, b place) int { return cmp.Compare(a.x, b.x) })
	return out
}

// drawnX is where the block is drawn, -1 for one that is not.
func (b built) drawnX(mark string) float64 {
	for _, k := range b.d.Assembly.Blocks {
		if k.Mark == mark {
			return k.X
		}
	}
	return -1
}

// spec changes a project to what was measured; the values of the whole in the order of the table, the gap behind
// the ledger after what lies beside it.
func (b built) spec(s *spec.Spec) {
	for _, last := range []bool{false, true} {
		for _, m := range measures(b.d.Assembly) {
			v, ok := b.f.whole[m.path()]
			if ok && m.apply != nil && !b.without[m.path()] && last == (m.path() == "gap.clear") {
				m.apply(s, v)
			}
		}
	}
	b.pin(s)
	s.Wording = b.d.Assembly.Spec.Wording
	near := nearOf(b.d.Assembly, b.d.Report).at
	s.Blocks.Positions = nil
	for _, p := range b.at() {
		s.Blocks.Positions = append(s.Blocks.Positions, unit.Length(p.x))
	}
	s.Blocks.MaxSpacing += 2 * near
	s.Blocks.EndMin -= near
	s.Blocks.EndMax += near
}

// pin holds what the program chose for the drawings where it would choose anew: the work has it as drawn.
func (b built) pin(s *spec.Spec) {
	a := b.d.Assembly
	for _, name := range setNames(a.Spec) {
		if set := setOf(s, name); set.Kind == "bolt" {
			set.Length = a.BoltLength(setOf(a.Spec, name))
		}
	}
	s.Deck.Joists.Positions = nil
	for _, x := range a.DeckJoists {
		s.Deck.Joists.Positions = append(s.Deck.Joists.Positions, unit.Length(x))
	}
}

// block changes a project to what was measured at one block, as if every block were so. left are the columns that
// count in each set with fasteners missing; ok is false when none does.
func (b built) block(s *spec.Spec, mark string) (left map[string]int, ok bool) {
	k, path := b.f.block(mark), "blocks."+mark
	if k.gap != nil && !b.without[path+".gap"] && *k.gap > s.Blocks.Spacer+nearOf(b.d.Assembly, b.d.Report).gap {
		if b.packed {
			s.Blocks.Plies[len(s.Blocks.Plies)-1] += *k.gap - s.Blocks.Spacer
		} else {
			s.Blocks.Spacer = *k.gap
		}
	}
	left, ok = map[string]int{}, true
	for _, name := range setNames(b.d.Assembly.Spec) {
		set, found, at := setOf(s, name), k.sets[name], path+"."+name
		if found.diameter != nil && !b.without[at+".diameter"] {
			set.Diameter = *found.diameter
		}
		for i, z := range found.rows {
			if !b.without[rowKey(at, i)] {
				set.Rows[i] = z
			}
		}
		if found.end != nil && !b.without[at+".end"] {
			endAt(s, set, *found.end)
		}
		if found.count != nil && !b.without[at+".count"] {
			if lost := perBlock(b.d.Assembly, name) - *found.count; lost > 0 {
				left[name] = whole(max(1, set.Columns), lost)
				ok = ok && left[name] > 0
			}
		}
	}
	return left, ok
}

// endAt puts the outermost fasteners of a set at a distance from the ends of the block: nearer, the block is the
// shorter; farther, the columns stand the closer together. Either is the reading that holds less.
func endAt(s *spec.Spec, set *spec.Set, end unit.Length) {
	x := set.Offsets()
	if half := unit.Length(x[len(x)-1]) + end; half < s.Blocks.Width/2 {
		s.Blocks.Width = 2 * half
	} else if len(x) > 1 {
		set.ColumnStep = max(0, s.Blocks.Width-2*end) / unit.Length(len(x)-1)
	}
}

// rowKey names the row of a set, counted from 0 as lists are in messages.
func rowKey(set string, i int) string { return fmt.Sprintf("%s.rows.%d", set, i) }

// whole is how many of n columns of a block count when some of its fasteners are missing, nobody having said which.
// Each may spoil another column; of two, the other alone counts, so that half the fasteners stand for the three
// that are there: the one nearest the load takes less than half of it.
//
//	o   .       load V between the columns, b apart, rows h apart: the three have their centre b/6 from it,
//	|   o       V/3 + V b^2/(6 (b^2 + h^2)) on the lone column's partner across, at most V/2 for any h
//	o   o
//
// Of more than two, the mirror of a spoilt column does not count either: the rest stays even about the load.
func whole(n, lost int) int {
	if n == 2 && lost == 1 {
		return 1
	}
	return max(0, n-2*lost)
}

// again reads the project with further changes and what was measured.
func (b built) again(changes ...string) (*spec.Spec, bool) {
	s, ok := b.d.Again(changes...)
	if ok {
		b.spec(s)
	}
	return s, ok
}

// assembly builds the project with the measured values; mark names the block whose own measures are in it, "" for
// none. Blocks keep the marks they have on the drawings.
func (b built) assembly(mark string) (*detail.Assembly, map[string]int, error) {
	s, ok := b.again()
	if !ok {
		return nil, nil, fmt.Errorf("the project cannot be read again")
	}
	left := map[string]int{}
	if mark != "" {
		if left, ok = b.block(s, mark); !ok {
			return nil, nil, errNothingHolds
		}
	}
	a, err := detail.Build(s)
	if err != nil {
		return nil, nil, err
	}
	for i, p := range b.at() {
		a.Blocks[i].Mark = p.mark
	}
	return a, left, nil
}

// errNothingHolds says that no fastener of a block can be counted.
var errNothingHolds = fmt.Errorf("with these fasteners missing no pair of columns is left to count on")

// check checks the whole with what was measured on it.
func (b built) check() (check.Report, error) {
	a, _, err := b.assembly("")
	if err != nil {
		return check.Report{}, err
	}
	r, _ := design.Check(a)
	return r, nil
}

// checkBlock checks one block with what was measured at it.
func (b built) checkBlock(mark string) (check.Report, error) {
	a, left, err := b.assembly(mark)
	if err != nil {
		return check.Report{}, err
	}
	return design.CheckBlock(a, mark, left), nil
}

// failing are the IDs of the checks that fail.
func failing(r *check.Report) map[string]bool {
	out := map[string]bool{}
	for _, s := range r.Steps {
		if s.Verdict == check.Fails {
			out[s.ID] = true
		}
	}
	return out
}

// changed reports whether the value or the ratio of a check moved by more than a thousandth; of the layout's own
// rules, which the re-check widens, the value counts.
func changed(a, b *check.Step) bool {
	moved := func(x, y float64) bool { return math.Abs(x-y) > 1e-3*math.Max(math.Abs(x), math.Abs(y))+1e-9 }
	rule := a.ID == "block_spacing_max" || a.ID == "block_end_left" || a.ID == "block_end_right"
	return moved(a.Value.V, b.Value.V) || !rule && moved(a.Ratio, b.Ratio)
}
