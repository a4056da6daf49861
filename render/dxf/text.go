package dxf

import (
	"math"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// The text styles. Standard is left as every program has it.
const (
	noteStyle = "SC-NOTES"
	boldStyle = "SC-NOTES-BOLD"
)

// text draws one line as TEXT, several lines, or more than a value holds, as MTEXT.
func (c *canvas) text(t render.Text) error {
	if blank(t.Lines) {
		c.into.drop("text without a letter on " + c.layerOf(t.Pen))
		return nil
	}
	e := &entity{kind: "MTEXT", order: texts, box: c.textBox(t)}
	at, height := c.at(t.At), c.plotted(t.Height)
	one := plain(t.Lines[0])
	if len(t.Lines) == 1 && len(one) <= chunk {
		e.kind = "TEXT"
		e.data = c.single(t, at, height, one).class("AcDbText")
		if _, v := justify(t.Align); v != 0 {
			e.data = e.data.int(73, v)
		}
	} else {
		e.data = c.paragraphs(t, at, height)
	}
	e.same = spot(at) + strings.Join(t.Lines, "\n")
	return c.put(e, t.Pen)
}

func blank(lines []string) bool {
	return strings.TrimSpace(clean(strings.Join(lines, ""))) == ""
}

// justify returns the horizontal and the vertical justification of a single line: 0 left, 1 centre,
// 2 right; 0 on the baseline, 2 in the middle of the capitals, 3 under their top.
func justify(a render.Align) (h, v int) {
	return int(a-1) % 3, []int{3, 2, 0}[int(a-1)/3]
}

// single returns the part that TEXT shares with attributes. When the text is justified the second
// point counts and the first is worked out anew by each program from its own letters.
func (c *canvas) single(t render.Text, at geom.Vec, height float64, value string) tags {
	d := tags{}.class("AcDbText").point(10, at).real(40, height).str(1, value)
	if t.Rot != 0 {
		d = d.real(50, wrap(t.Rot))
	}
	d = d.str(7, textStyle(t.Bold))
	h, v := justify(t.Align)
	if h != 0 {
		d = d.int(72, h)
	}
	if h != 0 || v != 0 {
		d = d.point(11, at)
	}
	return d
}

// pitchFactor sets the lines render.LinePitch apart: 1 is five thirds of the height.
const pitchFactor = render.LinePitch * 3 / 5

// paragraphs returns the data of an MTEXT whose lines are broken where ours are: its width is that of
// the longest line with wide letters, so that nothing wraps at any usual font. Width 0 would mean the
// same, but some readers then break at every word.
func (c *canvas) paragraphs(t render.Text, at geom.Vec, height float64) tags {
	d := tags{}.class("AcDbMText").point(10, at).real(40, height).real(41, letterWidth*height*float64(longest(t.Lines))).int(71, int(t.Align)).int(72, 1)
	var all []string
	for i, l := range t.Lines {
		if i > 0 {
			all = append(all, `\P`)
		}
		all = append(all, paragraph(l)...)
	}
	parts := pack(all, chunk)
	for _, p := range parts[:len(parts)-1] {
		d = d.str(3, p)
	}
	d = d.str(1, parts[len(parts)-1]).str(7, textStyle(t.Bold))
	if t.Rot != 0 {
		d = d.real(50, wrap(t.Rot))
	}
	const exactly = 2 // not more for taller characters
	return d.int(73, exactly).real(44, pitchFactor)
}

// letterWidth is the width of a letter in cap heights, for the extent of a text: about that of a
// capital in the faces used. A judgement; nothing is placed by it.
const letterWidth = 0.9

// longest returns the number of letters of the longest line.
func longest(lines []string) int {
	n := 0
	for _, l := range lines {
		n = max(n, len([]rune(l)))
	}
	return n
}

// textBox estimates the extent of a text in the file's unit.
func (c *canvas) textBox(t render.Text) geom.Box {
	h := c.plotted(t.Height)
	w, tall := letterWidth*h*float64(longest(t.Lines)), h*(1+render.LinePitch*float64(len(t.Lines)-1))
	col, row := int(t.Align-1)%3, int(t.Align-1)/3
	x, y := -w*float64(col)/2, -tall*float64(2-row)/2
	u := geom.Polar(geom.Vec{}, 1, t.Rot*math.Pi/180)
	b := geom.EmptyBox()
	for _, p := range []geom.Vec{{X: x, Y: y}, {X: x + w, Y: y}, {X: x, Y: y + tall}, {X: x + w, Y: y + tall}} {
		b = b.Include(c.at(t.At).Add(u.Mul(p.X)).Add(u.Perp().Mul(p.Y)))
	}
	return b
}
