package asbuilt

import (
	"standclear/detail"
	"standclear/detail/check"
	"standclear/detail/unit"
)

// Field is what was measured. What is not in it was not measured.
type Field struct {
	Parameters, By, Date string
	whole                map[string]Value // by the path of its measure
	blocks               []fieldBlock     // in the order of the file
}

// fieldBlock is what was measured at one block.
type fieldBlock struct {
	mark    string
	missing bool
	at, gap *unit.Length
	sets    map[string]fieldSet
}

// fieldSet is one set of fasteners at one block.
type fieldSet struct {
	count         *int
	diameter, end *unit.Length
	rows          []unit.Length
}

// block returns what was measured at the block, nothing where it is not in the file.
func (f *Field) block(mark string) fieldBlock {
	for _, b := range f.blocks {
		if b.mark == mark {
			return b
		}
	}
	return fieldBlock{mark: mark}
}

// Measured returns how many values the field holds.
func (f *Field) Measured() int {
	n := len(f.whole)
	for _, b := range f.blocks {
		n += count(b.missing) + count(b.at != nil) + count(b.gap != nil)
		for _, s := range b.sets {
			n += count(s.count != nil) + count(s.diameter != nil) + count(s.end != nil) + len(s.rows)
		}
	}
	return n
}

func count(is bool) int {
	if is {
		return 1
	}
	return 0
}

// blockNear are the tolerances of what is measured at each block.
type blockNear struct {
	at, gap, diameter, row, end unit.Length
}

// nearOf returns them. A gap is closed where a feeler of 1/32 in, 1 mm does not enter; a diameter tells one nominal
// size from the next (judgements).
func nearOf(a *detail.Assembly, r *check.Report) blockNear {
	sys := a.Spec.Project.System
	fine := check.HoleTolerance(sys)
	return blockNear{at: check.BlockTolerance(sys, r), gap: pick(sys, unit.Inch/32, 1), diameter: pick(sys, unit.Inch/64, 0.4), row: fine, end: fine}
}

const byJoists = "as sheet S-702 says: what bolts have to spare at the house joists, judgement"

// endOf is the distance of the outermost column of a set from the end of a block, as drawn.
func endOf(a *detail.Assembly, name string) unit.Length {
	x := setOf(a.Spec, name).Offsets()
	return a.Spec.Blocks.Width/2 - unit.Length(x[len(x)-1])
}

// perBlock is how many fasteners of a set each block has, as drawn.
func perBlock(a *detail.Assembly, name string) int {
	set := setOf(a.Spec, name)
	return len(set.Rows) * max(1, set.Columns)
}
