package dxf

import (
	"fmt"
	"strconv"
	"strings"

	"standclear/render"
)

// numbering is how a dimension style prints lengths, in the numbers of the format.
type numbering struct {
	unit      render.Unit
	precision int // inch: binary places of the fraction, 4 is 1/16; millimetre: decimal places
	zeros     int // which zeros are printed, see below
}

// Values of numbering.zeros, as the published reference of the format gives them (from memory,
// confirm): in feet and inches a style either keeps the 0 in 0 3/8" and 1'-0", or drops both.
const (
	dropBoth     = 0 // 3/8", 6", 1', 1'-0 3/8"
	dropFeet     = 3 // 0 3/8", 6", 1'-0", 1'-0 3/8"
	keepDecimals = 0 // 12.50
	dropTrailing = 8 // 12.5
)

// usualNumbering is what the dimension styles hold: sixteenths of an inch, or whole millimetres.
func usualNumbering(u render.Unit) numbering {
	if u == render.Inch {
		return numbering{u, 4, dropFeet}
	}
	return numbering{u, 0, dropTrailing}
}

// numberingFor returns the numbering that prints v, in the file's unit, as shown: the usual one if
// it does, else the nearest to it. A value halfway between two prints may go either way.
func numberingFor(u render.Unit, v float64, shown string) (numbering, bool) {
	usual := usualNumbering(u)
	all := []numbering{usual}
	for _, zeros := range []int{usual.zeros, dropBoth} {
		all = append(all, numbering{u, usual.precision, zeros})
		for p := range 9 {
			all = append(all, numbering{u, p, zeros})
		}
	}
	for _, n := range all {
		if n.print(v-tiny) == shown || n.print(v) == shown || n.print(v+tiny) == shown {
			return n, true
		}
	}
	return usual, false
}

// print returns v, in the file's unit, as the style prints it.
func (n numbering) print(v float64) string {
	v = max(v, 0)
	if n.unit == render.Inch {
		return n.feetInches(v)
	}
	s := strconv.FormatFloat(v, 'f', n.precision, 64)
	if n.zeros == dropTrailing && strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

func (n numbering) feetInches(v float64) string {
	parts := 1 << n.precision
	total := int64(v*float64(parts) + 0.5)
	f := int(total % int64(parts))
	feet, inches := total/int64(parts)/12, total/int64(parts)%12
	s := fmt.Sprintf("%d", inches)
	if f > 0 {
		for f%2 == 0 {
			f, parts = f/2, parts/2
		}
		s += fmt.Sprintf(" %d/%d", f, parts)
	}
	switch {
	case feet == 0 && inches == 0 && f > 0 && n.zeros == dropBoth:
		return fmt.Sprintf(`%d/%d"`, f, parts)
	case feet == 0:
		return s + `"`
	case inches == 0 && f == 0 && n.zeros == dropBoth:
		return fmt.Sprintf("%d'", feet)
	}
	return fmt.Sprintf(`%d'-%s"`, feet, s)
}

// override returns the extended data by which one dimension differs from its style.
func (n numbering) override(style numbering) tags {
	const dimDec, dimZin = 271, 78
	t := tags{}.str(1001, "ACAD").str(1000, "DSTYLE").str(1002, "{")
	if n.precision != style.precision {
		t = t.int(1070, dimDec).int(1070, n.precision)
	}
	if n.zeros != style.zeros {
		t = t.int(1070, dimZin).int(1070, n.zeros)
	}
	return t.str(1002, "}")
}
