package sheet

import (
	"math"
	"strings"

	"standclear/render"
	"standclear/render/font"
)

// table is a schedule on paper: a head, columns, rows that may run over several lines.
type table struct {
	title string
	head  []string
	width []float64 // of each column, plotted
	rows  [][]string
	pens  []render.Pen // of each row, nil for all Note
	text  float64      // cap height; 0 is 2.5
	right []bool       // columns set to the right
	least float64      // height of a row at least, to write in
	even  bool         // the columns hold their words
}

// Plotted sizes of a table.
const (
	cellPad   = 1.5
	titleText = 3.5 // cap height of its title
)

func (t *table) size() float64 {
	if t.text == 0 {
		return 2.5
	}
	return t.text
}

func (t *table) total() float64 {
	w := 0.0
	for _, c := range t.width {
		w += c
	}
	return w
}

// settle widens columns narrower than their longest word at the cost of those that have more than they need.
func (t *table) settle() {
	if t.even {
		return
	}
	t.even = true
	need := make([]float64, len(t.width))
	for n, row := range append([][]string{t.head}, t.rows...) {
		for i := range min(len(row), len(need)) {
			for _, word := range strings.Split(held(row[i]), " ") {
				need[i] = math.Max(need[i], font.Width(word, t.size(), n == 0)+2*cellPad)
			}
		}
	}
	lack, spare := 0.0, 0.0
	for i, n := range need {
		lack, spare = lack+math.Max(0, n-t.width[i]), spare+math.Max(0, t.width[i]-n)
	}
	if lack == 0 || spare < lack {
		return
	}
	for i, n := range need {
		t.width[i] = math.Max(n, t.width[i]-math.Max(0, t.width[i]-n)*lack/spare)
	}
}

// cells wraps one row and returns its lines and height.
func (t *table) cells(row []string) ([][]string, float64) {
	h := t.size()
	most := 1
	out := make([][]string, len(t.width))
	for i := range t.width {
		if i >= len(row) || row[i] == "" {
			continue
		}
		out[i] = wrap(row[i], h, t.width[i]-2*cellPad, false)
		most = max(most, len(out[i]))
	}
	return out, math.Max(t.least, float64(most-1)*h*render.LinePitch+h+2*h*0.65)
}

// height returns how tall the table is.
func (t *table) height() float64 {
	t.settle()
	y := t.headHeight()
	for _, r := range t.rows {
		_, h := t.cells(r)
		y += h
	}
	return y
}

// start returns how tall the table is with its first row, which is never parted.
func (t *table) start() float64 {
	t.settle()
	y := t.headHeight()
	if len(t.rows) > 0 {
		_, h := t.cells(t.rows[0])
		y += h
	}
	return y
}

// titled returns the title in lines as wide as the table, and titleHeight the room they take.
func (t *table) titled() []string { return wrap(t.title, titleText, t.total(), true) }

func (t *table) titleHeight() float64 {
	if t.title == "" {
		return 0
	}
	return 7.5 + float64(len(t.titled())-1)*titleText*render.LinePitch
}

func (t *table) headHeight() float64 {
	y := 0.0
	y += t.titleHeight()
	if len(t.head) > 0 {
		_, h := t.cells(t.head)
		y += h
	}
	return y
}

// draw sets the table with its upper left corner at (x, y), no deeper than room; it returns the
// items, the height used, and the rows that did not fit.
func (t *table) draw(x, y, room float64) (items []render.Item, used float64, rest [][]string) {
	t.settle()
	at := y
	if t.title != "" {
		items = append(items, render.Text{Pen: render.Heading, At: pt(x, at-1), Height: titleText, Align: render.TopLeft, Lines: t.titled(), Bold: true})
		at -= t.titleHeight()
	}
	top := at
	items = append(items, rule(render.Mark, pt(x, at), pt(x+t.total(), at)))
	if len(t.head) > 0 {
		cells, h := t.cells(t.head)
		items = append(items, t.row(cells, x, at, h, render.Note, true)...)
		at -= h
		items = append(items, rule(render.Mark, pt(x, at), pt(x+t.total(), at)))
	}
	for i, r := range t.rows {
		cells, h := t.cells(r)
		if y-(at-h) > room && i > 0 {
			rest = t.rows[i:]
			break
		}
		pen := render.Note
		if i < len(t.pens) {
			pen = t.pens[i]
		}
		items = append(items, t.row(cells, x, at, h, pen, false)...)
		at -= h
		items = append(items, rule(render.Grid, pt(x, at), pt(x+t.total(), at)))
	}
	cx := x
	for i := range len(t.width) + 1 {
		items = append(items, rule(render.Grid, pt(cx, top), pt(cx, at)))
		if i < len(t.width) {
			cx += t.width[i]
		}
	}
	return items, y - at, rest
}

func (t *table) row(cells [][]string, x, y, h float64, pen render.Pen, bold bool) []render.Item {
	var items []render.Item
	for i, lines := range cells {
		if len(lines) > 0 {
			at, al := pt(x+cellPad, y-h/2), render.MiddleLeft
			if i < len(t.right) && t.right[i] {
				at, al = pt(x+t.width[i]-cellPad, y-h/2), render.MiddleRight
			}
			items = append(items, render.Text{Pen: pen, At: at, Height: t.size(), Align: al, Lines: lines, Bold: bold})
		}
		x += t.width[i]
	}
	return items
}

// underView is what asView adds under the tables.
const underView = 9.0

// asView makes the tables of a sheet without any other view one of its own, full size, so that they can be inserted
// into another drawing as every view can.
func (w *writer) asView(s *render.Sheet, title string) {
	c := w.composer(1)
	c.items, s.Items = s.Items, nil
	t := c.taken()
	for _, b := range t.texts {
		c.grow(b.Min, b.Max)
	}
	for _, l := range t.lines {
		c.grow(l[0], l[1])
	}
	c.object = c.extent
	c.caption(title, "NTS")
	w.place(s, c, "1", title, "lower left corner of the sheet", pt(0, 0))
	s.Views[0].Scale.Text = "NTS"
}
