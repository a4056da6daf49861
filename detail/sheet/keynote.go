package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// keySymbol is the hexagon of a keynote, about its middle.
var keySymbol = &render.Symbol{Name: "SC-KEY", Items: []render.Item{
	render.Stroke{Pen: render.Mark, Path: geom.Polygon(pt(keyHalf, 0), pt(keyHalf/2, 4), pt(-keyHalf/2, 4), pt(-keyHalf, 0), pt(-keyHalf/2, -4), pt(keyHalf/2, -4))},
	render.Text{Pen: render.Mark, At: pt(0, 0), Height: 2.2, Align: render.MiddleCentre, Lines: []string{"W1"}, Attr: "KEY"},
}}

// keyHalf is half the width of the hexagon from corner to corner, plotted.
const keyHalf = 4.8

// keyed is one row of the legend.
type keyed struct{ key, words string }

var leadingMarks = pattern(`^([A-Z]{1,2}[0-9]{1,2})(, [A-Z]{1,2}[0-9]{1,2})* `)

// keyOf parts a note into the key that stands in the view and its row of the legend: the marks it opens with, which
// mean the same on every sheet, else the gap, else a letter.
func (c *composer) keyOf(words string) (key string, row keyed) {
	if m := leadingMarks().FindStringSubmatch(words); m != nil {
		marks := strings.TrimSpace(m[0])
		return m[1], keyed{marks, strings.TrimPrefix(words, m[0])}
	}
	if strings.Contains(words, "GAP") {
		return "GAP", keyed{"GAP", words}
	}
	for i, r := range c.legend {
		if r.words == words {
			return r.key, c.legend[i]
		}
	}
	n := 0
	for _, r := range c.legend {
		if len(r.key) == 1 {
			n++
		}
	}
	return letter(n), keyed{letter(n), words}
}

// enter puts a note into the legend; what has more to say of a key follows in its row.
func (c *composer) enter(r keyed) {
	for i := range c.legend {
		if c.legend[i].key == r.key {
			if !strings.Contains(c.legend[i].words, r.words) {
				c.legend[i].words += "; " + r.words
			}
			return
		}
	}
	c.legend = append(c.legend, r)
}

// placeLadder sets the notes of one side, as keys or in words, with leaders at one angle.
func (c *composer) placeLadder(s side) {
	notes := c.notes[s]
	if len(notes) == 0 {
		return
	}
	_, out := c.edge(s)
	notes = c.standLevels(s, notes)
	if len(notes) == 0 {
		return
	}
	l := &ladder{c: c, side: s, out: out, split: c.split, ink: c.inkOf(140), taken: c.taken(), width: 2*keyHalf + 1}
	var rungs []rung
	keys := map[string]int{}
	var names []string
	for _, n := range notes {
		r := rung{points: n.points, end: n.end, up: 4.8, down: 4.8}
		if !c.keys {
			h := c.st.Text + float64(len(n.lines)-1)*c.st.Text*render.LinePitch
			r.up, r.down = h/2+c.st.Text*0.55, h/2+c.st.Text*0.55
			r.foot = h/2 - c.st.Text/2
			if s == left {
				r.foot = -r.foot
			}
			for _, t := range n.lines {
				l.width = math.Max(l.width, font.Width(t, c.st.Text, false)+2)
			}
		} else {
			key, row := c.keyOf(strings.Join(n.words, " "))
			c.enter(row)
			if _, ok := keys[key]; ok { // one key leads to one place of a view
				continue
			}
			keys[key] = len(rungs)
			names = append(names, key)
		}
		r.no = len(rungs)
		rungs = append(rungs, r)
	}
	v := l.solve(rungs)
	for i, r := range rungs {
		if len(v.leaders) == 0 {
			continue
		}
		c.put(render.Leader{Pen: render.Note, Points: v.leaders[i][:], End: r.end})
		at := geom.Vec{X: v.x + out*c.mm(keyHalf), Y: v.at[i]}
		if c.keys {
			c.put(render.Insert{Pen: render.Mark, Symbol: keySymbol, At: at, Scale: c.k, Fields: []render.Field{{Name: "KEY", Value: names[r.no]}}})
			c.grow(at.Sub(geom.Vec{X: c.mm(5), Y: c.mm(5)}), at.Add(geom.Vec{X: c.mm(5), Y: c.mm(5)}))
			continue
		}
		c.text(render.Note, geom.Vec{X: v.x + out*c.mm(1), Y: v.at[i]}, c.st.Text, either(s == left, render.MiddleRight, render.MiddleLeft), 0, notes[r.no].lines...)
	}
}

// levelsOn counts the level marks among the notes of a side.
func (c *composer) levelsOn(s side) int {
	n := 0
	for _, v := range c.notes[s] {
		if v.level {
			n++
		}
	}
	return n
}

// standLevels draws the level marks of a side at their own heights and returns the notes.
func (c *composer) standLevels(s side, all []note) []note {
	var rest []note
	x, out := c.column(s)
	for _, v := range all {
		if !v.level {
			rest = append(rest, v)
			continue
		}
		end := geom.Vec{X: x - out*c.mm(1), Y: v.anchor.Y}
		c.put(render.Leader{Pen: render.Note, Points: []geom.Vec{v.anchor, end}, End: render.NoEnd})
		c.levelMark(s, end, v.lines[0])
	}
	return rest
}

// legendBeside writes what the keys stand for to the right of everything else of the view.
func (c *composer) legendBeside() {
	x, top := c.extent.Max.X+c.mm(10), c.object.Max.Y
	high := math.Max(top-c.extent.Min.Y, c.mm(120))
	n := math.Max(1, math.Round(c.mm(c.legendHeight()+8)/high)) // columns
	c.placeLegend(x, top, c.mm(c.legendHeight()/n+either(n > 1, 16.0, 9)))
}

// legendBelow writes it under the title, in as many columns as the view is wide and of one height.
func (c *composer) legendBelow() {
	n := max(1, math.Floor((c.extent.W()/c.k+6)/(c.noteWidth+20)))
	high := c.mm(c.legendHeight()/n + 16)
	c.placeLegend(c.extent.Min.X, c.extent.Min.Y-c.mm(8), high)
}

// legendRow is a row of the legend in its lines, with its plotted height.
func (c *composer) legendRow(r keyed, wide float64) (lines []string, height float64) {
	lines = wrap(r.words, c.st.Text, c.noteWidth+14-wide, false)
	return lines, float64(len(lines)-1)*c.st.Text*render.LinePitch + c.st.Text*1.9
}

// keyWidth is the width of the column of keys.
func (c *composer) keyWidth() float64 {
	wide := 9.0
	for _, r := range c.legend {
		wide = math.Max(wide, font.Width(r.key, c.st.Text, true)+3)
	}
	return wide
}

func (c *composer) legendHeight() float64 {
	sum := 0.0
	for _, r := range c.legend {
		_, h := c.legendRow(r, c.keyWidth())
		sum += h
	}
	return sum
}

// placeLegend writes the rows by key, from a corner down in columns of a height.
func (c *composer) placeLegend(x, top, high float64) {
	if len(c.legend) == 0 {
		return
	}
	slices.SortStableFunc(c.legend, func(a, b keyed) int { return strings.Compare(sortable(a.key), sortable(b.key)) })
	wide := c.keyWidth()
	y := top - c.mm(8)
	c.heads(x, top, "KEYNOTES")
	for _, r := range c.legend {
		lines, h := c.legendRow(r, wide)
		if y-c.mm(h) < top-high {
			x += c.mm(c.noteWidth + 20)
			y = top - c.mm(8)
		}
		c.put(render.Text{Pen: render.Note, At: geom.Vec{X: x, Y: y}, Height: c.st.Text, Align: render.TopLeft, Lines: []string{r.key}, Bold: true})
		c.text(render.Note, geom.Vec{X: x + c.mm(wide), Y: y}, c.st.Text, render.TopLeft, 0, lines...)
		y -= c.mm(h)
	}
}

func (c *composer) heads(x, top float64, words string) {
	c.put(render.Text{Pen: render.Heading, At: geom.Vec{X: x, Y: top}, Height: 3.5, Align: render.TopLeft, Lines: []string{words}, Bold: true})
	c.grow(geom.Vec{X: x, Y: top}, geom.Vec{X: x + c.mm(font.Width(words, 3.5, true)), Y: top - c.mm(4)})
}

// sortable orders marks by letters, then number.
func sortable(key string) string {
	first, _, _ := strings.Cut(key, ",")
	word := strings.TrimRight(first, "0123456789")
	return fmt.Sprintf("%-3s%3s", word, first[len(word):])
}

// spots are points that stand for a role in a picture, the one that spot picks first: the same line up or along the
// part, at which a leader may end as well.
func (c *composer) spots(p view.Picture, at geom.Vec, role detail.Role, match func(view.Piece) bool) []geom.Vec {
	out := []geom.Vec{at}
	if !c.ruled {
		return out
	}
	for _, q := range p.Pieces {
		if q.Part.Role != role || match != nil && !match(q) {
			continue
		}
		b := q.Region.Bounds()
		for _, l := range q.Lines {
			b = geom.EmptyBox() // a thin sheet: points of its line
			for t := 0.1; t < 0.95; t += 0.2 {
				out = append(out, l.V[0].Lerp(l.V[1].Vec, t))
			}
		}
		if b.Empty() {
			continue
		}
		const n = 10
		for i := range n {
			t := (float64(i) + 0.5) / n
			v := geom.Vec{X: b.Min.X + b.W()/2, Y: b.Min.Y + t*b.H()}
			if b.W() > b.H() {
				v = geom.Vec{X: b.Min.X + t*b.W(), Y: b.Min.Y + b.H()/2}
			}
			if q.Region.Contains(v) {
				out = append(out, v)
			}
		}
	}
	return out
}
