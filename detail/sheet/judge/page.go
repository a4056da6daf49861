package judge

import (
	"math"
	"slices"
	"strings"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// page is a sheet drawn out: every text, every straight piece of line, every fill in paper millimetres.
type page struct {
	sheet *render.Sheet
	frame geom.Box // the border; the paper where there is none
	texts []lettering
	lines []stroke
	fills []fill
	views []shown // one for every view that has ink
	found []Violation
}

// own is the frame number of the sheet's own items.
const own = -1

// lettering is one printed line of text as a turned box, from the baseline to the cap height.
type lettering struct {
	render.Words
	from  geom.Vec // left end of the baseline
	along geom.Vec // unit vector
	width float64
	box   geom.Box // upright box that holds it
	in    int      // index into page.views, or own
	order int      // of painting
}

// stroke is a straight piece of a line, or a chord of an arc, cut to the opening of its view.
type stroke struct {
	a, b  geom.Vec
	line  *render.Line
	in    int
	order int
}

// fill is an area with its rings as chords.
type fill struct {
	area  *render.Area
	rings [][]geom.Vec
	box   geom.Box
	in    int
	order int
}

// shown is one view as it came out.
type shown struct {
	view *render.View
	open geom.Box // its opening on paper
	ink  geom.Box // what is drawn in it
}

const chord = 0.02 // mm an arc may lie off its chords: a judgement, a tenth of the thinnest line

// read draws the sheet out.
func read(s *render.Sheet) (*page, error) {
	frames, err := s.Flatten()
	if err != nil {
		return nil, err
	}
	p := &page{sheet: s}
	order := 0
	for _, f := range frames {
		in := own
		if f.View != nil {
			in = len(p.views)
			p.views = append(p.views, shown{f.View, f.Box, geom.EmptyBox()})
		}
		for _, ink := range f.Ink {
			order++
			p.take(ink, f.Box, in, order)
		}
	}
	p.frame = p.border()
	return p, nil
}

func (p *page) take(ink render.Ink, open geom.Box, in, order int) {
	box := geom.EmptyBox()
	switch k := ink.(type) {
	case render.Words:
		t := letter(k, in, order)
		p.texts = append(p.texts, t)
		box = t.box
	case render.Line:
		if in != own && strings.HasPrefix(k.Pen.Def().Layer, "ANNO-") && !within(k.Path.Bounds(), open.Grow(0.02)) {
			p.fail("L3", k.Path.Bounds().Center(), nil, "a line on %s is cut off by the opening of view %s", k.Pen.Def().Layer, p.views[in].view.ID)
		}
		vs := k.Path.Flatten(chord)
		if k.Path.Closed && len(vs) > 0 && !vs[0].Near(vs[len(vs)-1]) {
			vs = append(vs, vs[0])
		}
		for i := 1; i < len(vs); i++ {
			if a, b, ok := clip(vs[i-1], vs[i], open); ok {
				p.lines = append(p.lines, stroke{a, b, &k, in, order})
				box = box.Include(a).Include(b)
			}
		}
	case render.Area:
		f := fill{area: &k, box: k.Region.Bounds(), in: in, order: order}
		for _, ring := range k.Region {
			f.rings = append(f.rings, ring.Flatten(chord))
		}
		p.fills = append(p.fills, f)
		box = f.box.Intersect(open)
	}
	if in != own && !box.Empty() {
		p.views[in].ink = p.views[in].ink.Union(box)
	}
}

// letter measures a line of lettering.
func letter(w render.Words, in, order int) lettering {
	t := lettering{Words: w, in: in, order: order, width: font.Width(w.Text, w.Height, w.Bold)}
	t.along = geom.Polar(geom.Vec{}, 1, w.Rot*math.Pi/180)
	t.from = w.At.Sub(t.along.Mul(t.width * w.Side.Share()))
	c := t.corners()
	t.box = geom.BoxOf(c[:]...)
	return t
}

// corners are those of the text, counter-clockwise from the start of the baseline.
func (t lettering) corners() [4]geom.Vec {
	u, v := t.along.Mul(t.width), t.along.Perp().Mul(t.Height)
	return [4]geom.Vec{t.from, t.from.Add(u), t.from.Add(u).Add(v), t.from.Add(v)}
}

// own returns a point in the text's own frame: along the baseline, and up from it.
func (t lettering) own(p geom.Vec) geom.Vec {
	d := p.Sub(t.from)
	return geom.Vec{X: d.Dot(t.along), Y: d.Dot(t.along.Perp())}
}

// onPaper is the reverse of own.
func (t lettering) onPaper(q geom.Vec) geom.Vec {
	return t.from.Add(t.along.Mul(q.X)).Add(t.along.Perp().Mul(q.Y))
}

// middle is the centre of the text.
func (t lettering) middle() geom.Vec {
	return t.onPaper(geom.Vec{X: t.width / 2, Y: t.Height / 2})
}

// border is the largest closed outline on the border pen, or the paper.
func (p *page) border() geom.Box {
	box := geom.Box{Max: geom.Vec{X: p.sheet.Size.W, Y: p.sheet.Size.H}}
	area := 0.0
	for _, it := range p.sheet.Items {
		s, ok := it.(render.Stroke)
		if !ok || s.Pen != render.Border || !s.Path.Closed {
			continue
		}
		if b := s.Path.Bounds(); b.W()*b.H() > area {
			box, area = b, b.W()*b.H()
		}
	}
	return box
}

// clip returns the piece of a segment that lies in the box; ok is false where none does.
func clip(a, b geom.Vec, box geom.Box) (p, q geom.Vec, ok bool) {
	t0, t1 := 0.0, 1.0
	d := b.Sub(a)
	for _, e := range [4][2]float64{{-d.X, a.X - box.Min.X}, {d.X, box.Max.X - a.X}, {-d.Y, a.Y - box.Min.Y}, {d.Y, box.Max.Y - a.Y}} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return a, b, false
		case e[0] < 0:
			t0 = math.Max(t0, e[1]/e[0])
		case e[0] > 0:
			t1 = math.Min(t1, e[1]/e[0])
		}
	}
	return a.Lerp(b, t0), a.Lerp(b, t1), t0 <= t1
}

// holds reports whether a point lies in the fill, by the even-odd rule.
func (f fill) holds(q geom.Vec) bool { return f.box.Holds(q) && inside(f.rings, q) }

// inside reports whether a point lies in closed rings, by the even-odd rule.
func inside(rings [][]geom.Vec, q geom.Vec) bool {
	in := false
	for _, r := range rings {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(q.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				in = !in
			}
		}
	}
	return in
}

// grounds are the white fills painted between two orders.
func (p *page) grounds(after, before int) []fill {
	i, _ := slices.BinarySearchFunc(p.fills, after, func(f fill, o int) int { return f.order - o - 1 })
	var out []fill
	for _, f := range p.fills[i:] {
		if f.order >= before {
			break
		}
		if f.area.White {
			out = append(out, f)
		}
	}
	return out
}
