package pdf

import (
	"math"
	"strconv"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// page draws the ink of one frame and remembers what it has set, so that it sets only what changes.
type page struct {
	*book
	h      float64 // of the sheet, mm
	stroke stroke
	fill   string  // colour
	size   float64 // of the letters, points; 0 before any are set
	bold   bool
}

// stroke is how lines are drawn.
type stroke struct {
	rgb    string
	weight int // 1/100 mm
	pen    render.Pen
	dashed bool
}

const (
	black = "#000000"
	white = "#ffffff"
)

// ink draws marks in order. It takes nothing for granted of what earlier frames left set.
func (p *page) ink(all []render.Ink) {
	p.f.SetLineJoinStyle("round")
	p.ground(black)
	for _, k := range all {
		switch k := k.(type) {
		case render.Line:
			p.line(k)
		case render.Area:
			p.area(k)
		case render.Words:
			p.words(k)
		}
	}
}

func (p *page) line(l render.Line) {
	def := l.Pen.Def()
	s := stroke{rgb: def.RGB, weight: l.Weight}
	if len(def.Type.Dashes) > 0 && !l.Hatch {
		s.pen, s.dashed = l.Pen, true
	}
	if s != p.stroke {
		p.take(s)
	}
	p.path(l.Path)
	p.f.DrawPath("S")
}

// take sets the pen: colour, weight, dashes. Solid lines end round, so that corners drawn as two
// lines close; dashes end square, at their true length.
func (p *page) take(s stroke) {
	p.stroke = s
	r, g, b := rgb(s.rgb)
	p.f.SetDrawColor(r, g, b)
	p.f.SetLineWidth(float64(s.weight) / 100)
	if s.dashed {
		p.f.SetLineCapStyle("butt")
		p.f.SetDashPattern(dashes(s.pen.Def().Type), 0)
	} else {
		p.f.SetLineCapStyle("round")
		p.f.SetDashPattern(nil, 0)
	}
}

func dashes(t render.LineType) []float64 {
	list := make([]float64, len(t.Dashes))
	for i, d := range t.Dashes {
		list[i] = math.Abs(d)
	}
	return list
}

func (p *page) area(a render.Area) {
	if a.White {
		p.ground(white)
	} else {
		p.ground(a.Pen.Def().RGB)
	}
	for _, ring := range a.Region {
		ring.Closed = true
		p.path(ring)
	}
	p.f.DrawPath("f*")
}

// ground sets the colour of fills.
func (p *page) ground(colour string) {
	if colour != p.fill {
		r, g, b := rgb(colour)
		p.f.SetFillColor(r, g, b)
		p.fill = colour
	}
}

// words sets a line of text by its baseline.
func (p *page) words(w render.Words) {
	text := clean(w.Text)
	along := geom.Polar(geom.Vec{}, font.Width(text, w.Height, w.Bold), w.Rot*math.Pi/180)
	at := w.At.Sub(along.Mul(w.Side.Share()))
	r, g, b := rgb(w.Pen.Def().RGB)
	p.f.SetTextColor(r, g, b)
	p.face(w.Bold, p.f.UnitToPointConvert(font.Em(w.Height)))
	x, y := at.X, p.h-at.Y
	if w.Rot == 0 {
		p.f.Text(x, y, text)
		return
	}
	p.f.TransformBegin()
	p.f.TransformRotate(w.Rot, x, y)
	p.f.Text(x, y, text)
	p.f.TransformEnd()
}

// face chooses the face and its size in points. The bold one comes into the document on first use.
func (p *page) face(bold bool, size float64) {
	style := ""
	if bold {
		style = "B"
		if !p.hasBold {
			p.f.AddUTF8FontFromBytes(family, style, font.Bold())
			p.hasBold = true
		}
	}
	if size != p.size || bold != p.bold {
		p.f.SetFont(family, style, size)
		p.size, p.bold = size, bold
	}
}

// rgb reads a colour "#rrggbb"; a test holds that those of render.Pens can be read.
func rgb(s string) (r, g, b int) {
	v, err := strconv.ParseUint(s[1:], 16, 24)
	if err != nil {
		panic("pdf: colour " + s)
	}
	return int(v >> 16), int(v >> 8 & 0xff), int(v & 0xff)
}
