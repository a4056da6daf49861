package explain

import (
	"fmt"
	"strings"

	"standclear/detail/check/strength"
)

// fastener draws one fastener at its limit through the layers, or the pattern of bores where no dowel was solved.
func (j *Job) fastener(id string) (string, []string) {
	figure := -1
	for i, d := range j.Results.Dowels {
		if len(d.Beds) == 0 || d.Z == 0 {
			continue
		}
		if figure < 0 || d.Counts && !j.Results.Dowels[figure].Counts || strings.HasPrefix(id, d.Reading) {
			figure = i
		}
		if strings.HasPrefix(id, d.Reading) {
			break
		}
	}
	if figure < 0 {
		return "block and its fasteners, seen from outside", j.pattern()
	}
	for _, word := range []string{"edge", "end_", "spacing", "washer", "ledger_de"} {
		if strings.HasPrefix(id, word) || strings.HasPrefix(id, "row_"+word) {
			return "block and its fasteners, seen from outside", j.pattern()
		}
	}
	return "one fastener at its limit, inside of the house on the left", j.dowel(j.Results.Dowels[figure])
}

// dowel draws the layers side by side: v where the wood pushes the fastener down, ^ where it pushes up, O where the
// steel bends, . where a layer counts as empty.
//
//	|  a   |b|  c  |
//	|vvvvvv| |     |
//	=======O========
//	|      | |^^^^^|
func (j *Job) dowel(d strength.DowelFigure) []string {
	last := d.Beds[len(d.Beds)-1].To.MM()
	r := ruler{0, last, wide}
	c := newCanvas(wide, 7)
	var names []string
	for i, b := range d.Beds {
		x0, x1 := r.at(b.From.MM()), r.at(b.To.MM())
		mark := string(rune('a' + i))
		c.put((x0+x1)/2, 0, mark)
		for _, y := range []int{1, 2, 4, 5} {
			c.put(x0, y, "|")
			c.put(x1, y, "|")
			if b.Hold == strength.Void {
				c.across(x0+1, x1-1, y, '.')
			}
		}
		text := mark + " " + b.Name + " " + j.text(b.To.MM()-b.From.MM())
		if b.Hold == strength.Void {
			text += ", counted as empty"
		}
		names = append(names, text)
		for _, s := range b.Bears {
			y, arrow := 2, byte('v')
			if s.Up {
				y, arrow = 4, '^'
			}
			from, to := max(x0+1, r.at(s.From.MM())), min(x1-1, r.at(s.To.MM()))
			c.across(from, max(from, to), y, arrow)
		}
	}
	c.across(0, wide-1, 3, '=')
	for _, h := range d.Hinges {
		c.put(r.at(h.MM()), 3, "O")
	}
	out := c.lines()
	out = append(out, folded(strings.Join(names, "; "))...)
	sys := j.sys()
	return append(out, folded(fmt.Sprintf("%s, %s through: P %s at its limit by %s, reference value Z %s; v the wood pushes it down, ^ up, O it bends", d.Set, d.Shank.Text(sys), d.Load.Q().Text(sys), d.Governs, d.Z.Q().Text(sys)))...)
}

// pattern draws a block with its fasteners and the distances to its edges.
func (j *Job) pattern() []string {
	if len(j.Assembly.Blocks) == 0 {
		return nil
	}
	b := j.Assembly.Blocks[max(0, min(j.Results.Worst, len(j.Assembly.Blocks)-1))]
	w, h := b.Box.Max.X-b.Box.Min.X, b.Box.Max.Z-b.Box.Min.Z
	high := max(8, min(18, int(32*h/w/2)))
	const across = 32
	c := newCanvas(across+60, high)
	x, z := ruler{b.Box.Min.X, b.Box.Max.X, across}, ruler{b.Box.Min.Z, b.Box.Max.Z, high}
	c.box(0, 0, across-1, high-1)
	seen := map[int]bool{}
	for _, at := range b.Bolts {
		y := high - 1 - z.at(at.Y)
		c.put(x.at(at.X), y, "O")
		if !seen[y] {
			seen[y] = true
			c.put(across+1, y, fmt.Sprintf("row %s under the top, %s over the foot", j.text(b.Box.Max.Z-at.Y), j.text(at.Y-b.Box.Min.Z)))
		}
	}
	out := c.lines()
	return append(out, fmt.Sprintf("%s: %s wide, %s high at the wall, %d fasteners", b.Mark, j.text(w), j.text(h), len(b.Bolts)))
}
