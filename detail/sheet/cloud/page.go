package cloud

import (
	"math"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// page is a sheet as it came out, for what is added to it to keep clear of.
type page struct {
	sheet *render.Sheet
	field geom.Box   // within the frame, without the title strip
	texts []geom.Box // every line of lettering
	used  ground
}

// read draws the sheet out.
func read(s *render.Sheet) (*page, error) {
	frames, err := s.Flatten()
	if err != nil {
		return nil, err
	}
	p := &page{sheet: s, used: newGround(s.Size)}
	_, p.field = field(s)
	for _, f := range frames {
		for _, ink := range f.Ink {
			switch k := ink.(type) {
			case render.Words:
				p.letter(wordsBox(k))
			case render.Line:
				p.used.line(k.Path, f.Box)
			case render.Area:
				if !k.White {
					p.used.fill(k.Region.Bounds().Intersect(f.Box), someInk)
				}
			}
		}
	}
	return p, nil
}

// letter keeps the room of a text.
func (p *page) letter(b geom.Box) {
	p.texts = append(p.texts, b)
	p.used.fill(b.Grow(clear), lettered)
}

// wordsBox is the upright box of a line of lettering.
func wordsBox(w render.Words) geom.Box {
	width := font.Width(w.Text, w.Height, w.Bold)
	u := geom.Polar(geom.Vec{}, 1, w.Rot*math.Pi/180)
	a := w.At.Sub(u.Mul(width * w.Side.Share()))
	b, up := a.Add(u.Mul(width)), u.Perp().Mul(w.Height)
	return geom.BoxOf(a, b, a.Add(up), b.Add(up))
}

// draw puts a cloud round everything wanted, and a triangle beside each; it returns how many clouds there are.
func (p *page) draw(wants []want, mark string) int {
	wants = gather(wants)
	var boxes []geom.Box
	for {
		boxes = boxes[:0]
		for _, w := range wants {
			boxes = append(boxes, p.fit(w))
		}
		again := p.joined(wants, boxes)
		if len(again) == len(wants) {
			break
		}
		wants = again
	}
	for _, b := range boxes {
		for _, it := range p.outline(b) {
			p.sheet.Items = append(p.sheet.Items, it)
			p.used.line(it.(render.Stroke).Path, p.field)
		}
	}
	for _, b := range boxes {
		p.delta(b, mark)
	}
	return len(boxes)
}

// joined unites the wants of a group whose clouds have come nearer than apart while clearing texts.
func (p *page) joined(wants []want, boxes []geom.Box) []want {
	for i, w := range wants {
		for j := range i {
			if wants[j].group == w.group && distance(boxes[i], boxes[j]) < apart+2*rise-0.001 {
				w.box = w.box.Union(wants[j].box)
				rest := append(append([]want{}, wants[:j]...), wants[j+1:i]...)
				return merge(append(append(rest, w), wants[i+1:]...), between)
			}
		}
	}
	return wants
}
