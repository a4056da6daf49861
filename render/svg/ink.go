package svg

import (
	"strings"
	"unicode/utf8"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// kind tells lines from areas and words.
type kind int

const (
	line kind = iota
	area
	words
)

// look is what ink of one group has in common.
type look struct {
	kind   kind
	pen    render.Pen
	weight int     // lines
	hatch  bool    // lines
	white  bool    // areas
	height float64 // words
	bold   bool    // words
}

func lookOf(k render.Ink) look {
	switch k := k.(type) {
	case render.Line:
		return look{kind: line, pen: k.Pen, weight: k.Weight, hatch: k.Hatch}
	case render.Area:
		return look{kind: area, pen: k.Pen, white: k.White}
	case render.Words:
		return look{kind: words, pen: k.Pen, height: k.Height, bold: k.Bold}
	}
	return look{}
}

// ink writes marks in painting order, those of the same look that follow each other as one group.
func (d *drawing) ink(all []render.Ink) {
	for len(all) > 0 {
		l, n := lookOf(all[0]), 1
		for n < len(all) && lookOf(all[n]) == l {
			n++
		}
		d.c.Group(d.attrs(l)...)
		d.group(all[:n])
		d.c.Gend()
		all = all[n:]
	}
}

// attrs returns what a group says of its look. The class is the layer without the discipline
// letter; hatch lines and white grounds have a second one.
func (d *drawing) attrs(l look) []string {
	def := l.pen.Def()
	class := strings.ToLower(def.Layer)
	switch {
	case l.hatch:
		class += " hatch"
	case l.white:
		class += " ground"
	}
	a := []string{attr("class", class), attr("data-layer", d.sheet.Layer(l.pen))}
	switch l.kind {
	case line:
		a = append(a, attr("stroke", def.RGB), attr("stroke-width", num(float64(l.weight)/100)))
		if len(def.Type.Dashes) > 0 && !l.hatch {
			a = append(a, attr("stroke-dasharray", dashes(def.Type)), `stroke-linecap="butt"`)
		}
	case area:
		fill := def.RGB
		if l.white {
			fill = paper
		}
		a = append(a, attr("fill", fill))
	case words:
		a = append(a, attr("fill", def.RGB), attr("font-size", num(font.Em(l.height))))
		if l.bold {
			a = append(a, `font-weight="bold"`)
		}
	}
	return a
}

// dashes returns a line type as SVG takes it: dash, gap, dash, gap.
func dashes(t render.LineType) string {
	var list []string
	for _, v := range t.Dashes {
		list = append(list, num(max(v, -v)))
	}
	return strings.Join(list, " ")
}

// group writes marks of one look, those of the same part that follow each other under its name.
func (d *drawing) group(run []render.Ink) {
	var open render.Tag
	d.buf = d.buf[:0]
	for _, k := range run {
		tag := tagOf(k)
		if tag != open {
			d.flush()
			d.part(open, tag)
			open = tag
		}
		switch k := k.(type) {
		case render.Line:
			d.path(k.Path)
			if len(d.buf) > pathLen {
				d.flush()
			}
		case render.Area:
			d.area(k.Region)
		case render.Words:
			d.words(k)
		}
	}
	d.flush()
	d.part(open, render.Tag{})
}

// pathLen is the length of path data, in bytes, past which strokes go on in the next element: a
// file of bearable lines, and elements that a program can pick and measure. A judgement.
const pathLen = 2000

func tagOf(k render.Ink) render.Tag {
	var t *render.Tag
	switch k := k.(type) {
	case render.Line:
		t = k.Tag
	case render.Area:
		t = k.Tag
	}
	if t == nil {
		return render.Tag{}
	}
	return *t
}

// part closes the group of one part and opens that of the next; an empty tag is none.
func (d *drawing) part(was, is render.Tag) {
	if was != (render.Tag{}) {
		d.c.Gend()
	}
	if is == (render.Tag{}) {
		return
	}
	var a, says []string
	if is.Mark != "" {
		a = append(a, attr("data-mark", is.Mark))
	}
	if is.Role != "" {
		a = append(a, attr("data-role", is.Role))
	}
	for _, s := range []string{is.Mark, is.Material, is.Size} {
		if s != "" {
			says = append(says, s)
		}
	}
	if key := d.view + "\x00" + is.Mark; is.Mark != "" && !d.met[key] { // one stop of the keyboard for a mark in a view
		d.met[key] = true
		a = append(a, `tabindex="0"`, `role="img"`, attr("aria-label", strings.Join(says, ", ")))
	}
	d.c.Group(a...)
	if len(says) > 0 {
		d.note("title", "", strings.Join(says, ", "))
	}
}

// flush writes the path data under way.
func (d *drawing) flush() {
	if len(d.buf) > 0 {
		d.c.Path(string(d.buf))
		d.buf = d.buf[:0]
	}
}

func (d *drawing) area(r geom.Region) {
	for _, p := range r {
		p.Closed = true
		d.path(p)
	}
	d.flush()
}

func (d *drawing) words(w render.Words) {
	var a []string
	switch w.Side {
	case render.Middle:
		a = append(a, `text-anchor="middle"`)
	case render.End:
		a = append(a, `text-anchor="end"`)
	}
	x, y := d.point(w.At)
	if w.Rot != 0 {
		a = append(a, attr("transform", "rotate("+num(-w.Rot)+" "+num(x)+" "+num(y)+")"))
	}
	if steady(w.Text) {
		a = append(a, attr("textLength", num(font.Width(w.Text, w.Height, w.Bold))), `lengthAdjust="spacingAndGlyphs"`)
	}
	d.c.Text(x, y, w.Text, a...)
}

// steady reports whether a text is given its length, so that it keeps to its place where the reader
// has none of the faces and takes a wider one. A text too short to matter is left alone, and one
// with characters that our face lacks must be: its true width is not known.
func steady(text string) bool {
	for _, r := range text {
		if !font.Has(r) {
			return false
		}
	}
	return utf8.RuneCountInString(text) > 3
}
