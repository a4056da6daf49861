package explain

import (
	"fmt"
	"math"

	"standclear/detail/check/thermal"
	"standclear/detail/unit"
)

// profile plots the temperature through the wall at the height of the ledger's middle: B through a block, - between
// blocks, as solved.
func (j *Job) profile() []string {
	h := j.Heat
	if h == nil || len(h.AtBlock.F) == 0 || len(h.Between.F) == 0 {
		return append(j.depths(), "temperatures: NOT CHECKED: "+either(j.NoHeat == "", "the heat flow was not solved", j.NoHeat))
	}
	f := j.Assembly.Frame
	z := (f.BlockTop + f.BlockBottom) / 2
	const left, high = 10, 13
	lo, hi := h.AtBlock.Y[0], h.AtBlock.Y[len(h.AtBlock.Y)-1]
	lo, hi = math.Max(lo, f.BackingIn-60), math.Min(hi, f.LedgerFront+40)
	x := ruler{lo, hi, wide - left}
	c := newCanvas(wide, high+1)
	for _, field := range []struct {
		f    thermal.Field
		mark string
	}{{h.Between, "-"}, {h.AtBlock, "B"}} {
		k := cell(field.f.Z, z)
		for col := range wide - left {
			y := lo + (hi-lo)*float64(col)/float64(wide-left-1)
			i := cell(field.f.Y, y)
			if k < 0 || i < 0 || k >= len(field.f.F) || i >= len(field.f.F[k]) || field.f.F[k][i] < 0 {
				continue
			}
			c.put(left+col, high-1-int(math.Round(field.f.F[k][i]*(high-1))), field.mark)
		}
	}
	for i := 0; i < high; i += 3 {
		c.put(0, high-1-i, j.degrees(float64(i)/(high-1)))
	}
	for _, at := range []float64{f.RimIn, f.RimOut, 0, f.InsulOut, f.LedgerBack} {
		if at > lo && at < hi {
			c.put(left+x.at(at), high, "|")
		}
	}
	out := c.lines()
	var names []label
	for _, n := range []struct {
		from, to float64
		name     string
	}{{lo, f.RimIn, "inside"}, {f.RimIn, f.RimOut, "rim"}, {0, f.InsulOut, "block, insulation"}, {f.LedgerBack, f.LedgerFront, "ledger"}} {
		names = append(names, label{left + x.at((n.from+n.to)/2), n.name})
	}
	out = append(out, labels(wide, names)...)
	out = append(out, folded(fmt.Sprintf("B through %s, - between blocks, at the middle of the block's height; where there is air nothing is drawn. f = (T - Te)/(Ti - Te): lowest that room air touches %.3f, without a deck %.3f", h.Block, h.Drawn().Low.V, h.Low.V))...)
	for _, s := range h.Spots {
		out = append(out, fmt.Sprintf("  %-52s f %.3f%s", s.Name, s.F.V, j.degreesAt(s.F.V)))
	}
	return out
}

// cell returns the cell of edges that holds v, -1 for none.
func cell(edges []float64, v float64) int {
	for i := 0; i+1 < len(edges); i++ {
		if v >= edges[i] && v < edges[i+1] {
			return i
		}
	}
	return -1
}

// degrees is the temperature of a factor at design, or the factor where no temperatures are stated.
func (j *Job) degrees(f float64) string {
	s := j.Assembly.Spec.Site
	if s.Inside == nil || s.Outside == nil {
		return fmt.Sprintf("f %.2f", f)
	}
	t := float64(*s.Outside) + f*float64(*s.Inside-*s.Outside)
	return unit.Temp(math.Round(t*10) / 10).Q().Text(j.sys())
}

func (j *Job) degreesAt(f float64) string {
	if s := j.Assembly.Spec.Site; s.Inside == nil || s.Outside == nil {
		return ""
	}
	return ", " + j.degrees(f) + " at design"
}
