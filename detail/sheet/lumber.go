package sheet

import (
	"fmt"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/stock"
	"standclear/render"
)

// stickRow is one stick of the cut list, or several cut alike.
type stickRow struct {
	lumber detail.Lumber
	stick  detail.Stick
	first  int // number of the first of them
	count  int
}

// stickRows numbers the sticks of the whole cut list and takes neighbours cut alike together.
func (w *writer) stickRows() []stickRow {
	var out []stickRow
	n := 0
	for _, l := range w.a.CutList() {
		for i, s := range l.Sticks {
			n++
			if k := len(out) - 1; i > 0 && sameCuts(out[k].stick, s) {
				out[k].count++
				continue
			}
			out = append(out, stickRow{lumber: l, stick: s, first: n, count: 1})
		}
	}
	return out
}

func sameCuts(a, b detail.Stick) bool {
	return a.Length == b.Length && slices.EqualFunc(a.Cuts, b.Cuts, func(x, y detail.Cut) bool { return x.Mark == y.Mark && len(x.IDs) == len(y.IDs) })
}

func (r stickRow) numbers() string {
	if r.count == 1 {
		return fmt.Sprint(r.first)
	}
	return fmt.Sprintf("%d-%d", r.first, r.first+r.count-1)
}

func (r stickRow) holds(match func(detail.Cut) bool) bool {
	return slices.ContainsFunc(r.stick.Cuts, match)
}

// sectionWords name the wood: species, grade, treatment, section.
func (w *writer) sectionWords(l detail.Lumber) string {
	t := caps(strings.TrimSpace(materialName(l.Material) + " " + l.Note))
	if l.Treated {
		t += ", TREATED"
	}
	return t + ", " + w.sectionSize(l)
}

// sectionSize is the section as bought: 2x10 (1 1/2" x 9 1/4").
func (w *writer) sectionSize(l detail.Lumber) string {
	size := w.text(l.Thickness.MM()) + " x " + w.text(l.Height.MM())
	if n, ok := stock.NominalOf(l.Thickness, l.Height); ok && w.unit() == render.Inch {
		size = n.Name + " (" + size + ")"
	}
	if l.Ripped > 0 {
		size += " RIPPED TO " + w.text(l.Ripped.MM())
	}
	return size
}

// stickLength is the length bought, or that the pieces come from a sheet.
func (w *writer) stickLength(r stickRow) string {
	if r.lumber.Sheet {
		return "FROM SHEET"
	}
	return w.text(r.stick.Length.MM())
}

func (w *writer) leftText(r stickRow) string {
	if r.lumber.Sheet {
		return "-"
	}
	return w.down(r.stick.Left.MM())
}

// cutWords list what is cut from a stick: 9 P1 + 4 P2 @ 8 3/4".
func (w *writer) cutWords(s detail.Stick) string {
	var out []string
	for i, c := range s.Cuts {
		t := fmt.Sprintf("%d %s", len(c.IDs), c.Mark)
		if i+1 == len(s.Cuts) || s.Cuts[i+1].Each != c.Each {
			t += " @ " + w.text(c.Each.MM())
		}
		out = append(out, t)
	}
	return strings.Join(out, " + ")
}

// lumberTable says what to buy: sticks by section and length, what of it is waste, and whether fewer would do.
func (w *writer) lumberTable(width float64) *table {
	t := &table{title: "LUMBER TO BUY", head: []string{"SECTION", "STICKS", "WASTE", "FEWEST"}, width: shares(width, 3.4, 2, 1, 1.6)}
	for _, l := range w.a.CutList() {
		if l.Sheet {
			t.rows = append(t.rows, []string{w.sectionWords(l), fmt.Sprintf("%d PIECES FROM SHEET", l.Sticks[0].Pieces()), "-", "-"})
			continue
		}
		proof := "YES, PROVED"
		if !l.Exact {
			proof = fmt.Sprintf("%d AT LEAST; SEARCH STOPPED", l.Least)
		}
		t.rows = append(t.rows, []string{w.sectionWords(l), w.stickCounts(l), fmt.Sprintf("%.0f %%", 100*float64(l.Waste())), proof})
	}
	return t
}

// stickCounts lists the lengths to buy: 1 x 16'-0", 2 x 10'-0".
func (w *writer) stickCounts(l detail.Lumber) string {
	var out []string
	for i := 0; i < len(l.Sticks); {
		n := 1
		for i+n < len(l.Sticks) && l.Sticks[i+n].Length == l.Sticks[i].Length {
			n++
		}
		out = append(out, fmt.Sprintf("%d x %s", n, w.text(l.Sticks[i].Length.MM())))
		i += n
	}
	return strings.Join(out, ", ")
}
