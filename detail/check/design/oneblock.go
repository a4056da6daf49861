package design

import (
	"slices"

	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/check/fit"
	"standclear/detail/check/strength"
)

// CheckBlock returns the report of an assembly in which one block, by its mark, carries its own load with the
// columns of fasteners that are left to it; the other blocks are left out of every check of fasteners, block and
// floor. The key of left is "through", "to_rim" or "to_block", its value how many columns count, the outermost
// first: they have the least distance to the ends. A set that is not named has all of its columns.
func CheckBlock(a *detail.Assembly, mark string, left map[string]int) check.Report {
	m := Model(a)
	m.Blocks.Alone = mark
	f := m.Fasteners
	for _, s := range []struct {
		name string
		set  *strength.Set
	}{{"through", f.Through}, {"to_rim", f.ToRim}, {"to_block", f.ToBlock}} {
		if n, ok := left[s.name]; ok && s.set != nil && n < len(s.set.Columns) {
			cols := slices.Sorted(slices.Values(s.set.Columns))
			s.set.Columns = slices.Concat(cols[:(n+1)/2], cols[len(cols)-n/2:])
		}
	}
	report, _ := strength.Run(m)
	fit.Run(a, &report)
	return report
}
