package sheet

import (
	"fmt"

	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

const stickOrigin = "left end of the first stick"

// Plotted sizes of the cutting plan.
const (
	barHeight = 5.5  // of a stick, whatever its section
	barPitch  = 12.5 // stick to stick
)

// sticks are the rows that are cut from sticks, and the longest of these.
func (w *writer) sticks() (rows []stickRow, longest unit.Length) {
	for _, r := range w.stickRows() {
		if !r.lumber.Sheet {
			rows, longest = append(rows, r), max(longest, r.stick.Length)
		}
	}
	return rows, longest
}

// cuttingPlan draws every stick to length, its trimmed end left, each piece with its mark, the offcut crossed
// by a diagonal.
func (w *writer) cuttingPlan(k float64) *composer {
	c := w.composer(k)
	rows, longest := w.sticks()
	for i, r := range rows {
		w.bar(c, r, -c.mm(float64(i)*barPitch), longest)
	}
	c.finish()
	c.title("1", "CUTTING PLAN", w.scale(k).Text)
	return c
}

// bar draws one stick with its lower edge at y, its words over it.
func (w *writer) bar(c *composer, r stickRow, y float64, longest unit.Length) {
	st, end, top := w.a.Spec.Stock, r.stick.Length.MM(), y+c.mm(barHeight)
	words := fmt.Sprintf("NO. %s%s  %s, %s: %s; LEFT %s", r.numbers(), either(r.count > 1, fmt.Sprintf(" (%d ALIKE)", r.count), ""), w.sectionSize(r.lumber), w.stickLength(r), w.cutWords(r.stick), w.leftText(r))
	h := 2.5
	for h > 2 && font.Width(words, h, false) > longest.MM()/c.k {
		h -= 0.1
	}
	c.text(render.Note, geom.Vec{Y: top + c.mm(1)}, h, render.BottomLeft, 0, words)
	c.add([]render.Item{render.Stroke{Pen: render.Visible, Path: geom.Rect(0, y, end, top)[0]}}, geom.Box{Min: geom.Vec{Y: y}, Max: geom.Vec{X: end, Y: top + c.mm(4)}})
	at := st.Trim.MM()
	cut := func(x float64) {
		c.put(render.Stroke{Pen: render.Note, Path: geom.Polyline(geom.Vec{X: x, Y: y}, geom.Vec{X: x, Y: top})})
	}
	if at > c.mm(0.7) {
		cut(at)
	}
	for _, p := range r.stick.Cuts {
		for range p.IDs {
			to := at + p.Each.MM()
			if font.Width(p.Mark, 2.2, false)+1.4 < (to-at)/c.k {
				c.put(render.Text{Pen: render.Note, At: geom.Vec{X: (at + to) / 2, Y: (y + top) / 2}, Height: 2.2, Align: render.MiddleCentre, Lines: []string{p.Mark}})
			}
			if to < end-c.mm(0.2) {
				cut(to)
			}
			at = to + st.Kerf.MM()
		}
	}
	if at < end-c.mm(2) {
		c.put(render.Stroke{Pen: render.Pattern, Path: geom.Polyline(geom.Vec{X: at, Y: y}, geom.Vec{X: end, Y: top})})
	}
}
