package cloud

import (
	"math"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

const (
	letter = 2.2  // cap height of a mark
	far    = 40.0 // mm from a cloud to its triangle at most
)

// Next marks clouds that no entry of the revisions stands for yet.
const Next = "NEXT"

// Triangle is the outline of the triangle that holds a revision's mark, lettered bold 2.2 mm high about at: some
// 6 mm high, larger where the mark is long.
func Triangle(at geom.Vec, mark string) geom.Path {
	const base = 1.2 // letters stand this far over the lower side
	half := font.Width(mark, letter, true)/2 + 0.7
	r := math.Max(4.2, (half+(base+letter)/math.Sqrt(3))*2/math.Sqrt(3))
	c := at.Add(geom.Vec{Y: r/2 - base - letter/2})
	p := geom.Path{Closed: true}
	for i := range 3 {
		p.V = append(p.V, geom.Vertex{Vec: geom.Polar(c, r, math.Pi/2+float64(i)*2*math.Pi/3)})
	}
	return p
}

func lettering(at geom.Vec, mark string) render.Text {
	return render.Text{Pen: render.Revision, At: at, Height: letter, Align: render.MiddleCentre, Lines: []string{mark}, Bold: true}
}

// delta puts the triangle of a cloud, whose chords lie on b, where it costs least, with a line to the cloud where
// it does not stand close by.
func (p *page) delta(b geom.Box, mark string) {
	at, ok := p.spot(b, mark)
	if !ok {
		return
	}
	outline, text := Triangle(at, mark), lettering(at, mark)
	strokes := []geom.Path{outline}
	if t := tie(b, outline); t.Len() > apart {
		strokes = append(strokes, geom.Polyline(t.A, t.B))
	}
	for _, s := range strokes {
		p.sheet.Items = append(p.sheet.Items, render.Stroke{Pen: render.Revision, Path: s})
		p.used.line(s, p.field)
	}
	p.sheet.Items = append(p.sheet.Items, text)
	p.letter(textBox(text, 1))
}

// spot looks for the place of a triangle in rings round the cloud, from close by outward, and then within it.
func (p *page) spot(b geom.Box, mark string) (best geom.Vec, found bool) {
	const step = 1.5
	size := Triangle(geom.Vec{}, mark).Bounds()
	cost := math.Inf(1)
	ring := func(off, extra float64) {
		r := b.Grow(rise + off)
		r = geom.Box{Min: r.Min.Sub(size.Max), Max: r.Max.Sub(size.Min)}
		if r.Empty() {
			return
		}
		for _, s := range geom.Rect(r.Min.X, r.Min.Y, r.Max.X, r.Max.Y)[0].Segs() {
			n := max(1, int(s.Len()/step))
			for i := range n {
				at := s.At(float64(i) / float64(n))
				if c := math.Abs(off) + extra + 0.02*at.Dist(r.Max); c < cost {
					if c += p.price(b, at, mark); c < cost {
						best, cost = at, c
					}
				}
			}
		}
	}
	for off := 0.6; off < math.Min(far, cost); off += step {
		ring(off, 0)
	}
	for off := -2*rise - size.H() - 0.6; off > -far && -off < cost; off -= step {
		ring(off, size.H())
	}
	return best, !math.IsInf(cost, 1)
}

// price is what a place for a triangle costs in mm of distance: squares of ink under it count, ink under the
// letters or a text under the triangle rules it out.
func (p *page) price(b geom.Box, at geom.Vec, mark string) float64 {
	const each = 0.4
	outline := Triangle(at, mark)
	size := outline.Bounds()
	switch {
	case !inside(size.Grow(edge), p.field), p.used.count(size, lettered) > 0,
		p.used.count(textBox(lettering(at, mark), 1).Grow(clear), someInk) > 0, p.throughText(tie(b, outline)):
		return math.Inf(1)
	}
	return each * float64(p.used.count(size, someInk))
}

// tie is the way from the triangle to the nearest chord of the cloud.
func tie(b geom.Box, outline geom.Path) geom.Seg {
	best := geom.Seg{B: geom.Vec{X: math.Inf(1)}}
	for _, v := range outline.V {
		for _, s := range geom.Rect(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y)[0].Segs() {
			box := s.Bounds()
			q := geom.Vec{X: math.Min(math.Max(v.X, box.Min.X), box.Max.X), Y: math.Min(math.Max(v.Y, box.Min.Y), box.Max.Y)}
			if v.Dist(q) < best.Len() {
				best = geom.Seg{A: v.Vec, B: q}
			}
		}
	}
	return best
}
