package sheet

import (
	"math"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// taken is what stands in a view already, model: texts and fills as boxes, lines as straight pieces.
type taken struct {
	texts   []geom.Box
	fills   []geom.Region
	lines   [][2]geom.Vec // linework and annotation alike
	dims    [][2]geom.Vec // dimension lines: no leader may cross one
	leaders [][2]geom.Vec
}

// taken looks at the items of the view as they are.
func (c *composer) taken() *taken {
	t := &taken{}
	t.add(c, c.items, geom.Identity(), 1)
	return t
}

// add takes items drawn by x, their texts times scale.
func (t *taken) add(c *composer, items []render.Item, x geom.Xform, scale float64) {
	for _, it := range items {
		switch it := it.(type) {
		case render.Stroke:
			t.path(&t.lines, it.Path.Transform(x), c.k)
		case render.Fill:
			t.fills = append(t.fills, it.Region.Transform(x))
		case render.Text:
			t.texts = append(t.texts, letterBox(x.Apply(it.At), it.Height*scale, it.Align, it.Rot, it.Lines, c.k, it.Bold))
		case render.Leader:
			to := &t.leaders
			if it.Pen != render.Note {
				to = &t.lines // an arrow of water, air or force may be crossed
			}
			t.path(to, geom.Polyline(it.Points...).Transform(x), c.k)
		case render.Dim:
			pic := it.Picture(c.st, c.k, c.number)
			for i, l := range pic.Lines {
				if i == 0 && it.Kind < render.OrdinateX {
					t.path(&t.dims, l, c.k)
				}
				t.path(&t.lines, l, c.k)
			}
			for _, l := range pic.Ticks {
				t.path(&t.lines, l, c.k)
			}
			t.texts = append(t.texts, textBox(pic.TextAt, c.st.Text, render.MiddleCentre, pic.Rot, []string{pic.Label}, c.k))
		case render.Insert:
			t.add(c, it.Symbol.Items, geom.Scale(it.Scale).Then(geom.Translate(it.At)).Then(x), scale*it.Scale/c.k)
		}
	}
}

func (t *taken) path(to *[][2]geom.Vec, p geom.Path, k float64) {
	v := p.Flatten(0.05 * k)
	if p.Closed && len(v) > 0 {
		v = append(v, v[0])
	}
	for i := 1; i < len(v); i++ {
		*to = append(*to, [2]geom.Vec{v[i-1], v[i]})
	}
}

// meets reports whether anything stands in a box.
func (t *taken) meets(b geom.Box) bool {
	for _, o := range t.texts {
		if o.Overlaps(b) {
			return true
		}
	}
	for _, r := range t.fills {
		if r.Bounds().Overlaps(b) {
			return true
		}
	}
	for _, all := range [][][2]geom.Vec{t.lines, t.leaders} {
		for _, l := range all {
			if segmentMeets(l[0], l[1], b) {
				return true
			}
		}
	}
	return false
}

// spoils counts what a leader would run through: texts, dimension lines, other leaders.
func (t *taken) spoils(a, b geom.Vec, near float64) int {
	n := 0
	for _, o := range t.texts {
		if segmentMeets(a, b, o.Grow(near)) {
			n++
		}
	}
	for _, all := range [][][2]geom.Vec{t.dims, t.leaders} {
		for _, l := range all {
			if cross(a, b, l[0], l[1]) {
				n++
			}
		}
	}
	return n
}

// segmentMeets reports whether a segment passes through a box.
func segmentMeets(a, b geom.Vec, box geom.Box) bool {
	if math.Max(a.X, b.X) < box.Min.X || math.Min(a.X, b.X) > box.Max.X || math.Max(a.Y, b.Y) < box.Min.Y || math.Min(a.Y, b.Y) > box.Max.Y {
		return false
	}
	t0, t1 := 0.0, 1.0
	d := b.Sub(a)
	for _, e := range [4][2]float64{{-d.X, a.X - box.Min.X}, {d.X, box.Max.X - a.X}, {-d.Y, a.Y - box.Min.Y}, {d.Y, box.Max.Y - a.Y}} {
		switch {
		case e[0] < 0:
			t0 = math.Max(t0, e[1]/e[0])
		case e[0] > 0:
			t1 = math.Min(t1, e[1]/e[0])
		}
	}
	return t0 <= t1
}

// tagAt writes a short name of a point of radius r as near to it as there is room, up and right first. Far
// off it is tied to its point.
func (c *composer) tagAt(at geom.Vec, r float64, words string) {
	t := c.taken()
	w, h := c.mm(font.Width(words, c.st.Text, false)), c.mm(c.st.Text)
	for away := c.mm(1); away < c.mm(60); away += c.mm(0.75) {
		for i := range 16 {
			u := geom.Polar(geom.Vec{}, 1, (math.Pi/4 + float64((i+1)/2)*math.Pi/8*float64(1-2*(i%2))))
			mid := at.Add(u.Mul(r + away)).Add(geom.Vec{X: u.X * w / 2, Y: u.Y * h / 2})
			box := geom.Box{Min: mid.Sub(geom.Vec{X: w / 2, Y: h / 2}), Max: mid.Add(geom.Vec{X: w / 2, Y: h / 2})}
			if t.meets(box.Grow(c.mm(0.5))) {
				continue
			}
			foot, end := at.Add(u.Mul(r)), mid.Sub(geom.Vec{X: u.X * (w/2 + c.mm(0.6)), Y: u.Y * (h/2 + c.mm(0.6))})
			if away > c.mm(4) {
				if t.spoils(foot, end, c.mm(0.3)) > 0 {
					continue
				}
				c.put(render.Leader{Pen: render.Note, Points: []geom.Vec{foot, end}, End: render.NoEnd})
			}
			c.text(render.Note, mid, c.st.Text, render.MiddleCentre, 0, words)
			return
		}
	}
	c.text(render.Note, at, c.st.Text, render.MiddleCentre, 0, words)
}

// tag is a word over a corner of the object.
type tag struct {
	at    geom.Vec // the corner's end of its baseline, model
	in    float64  // the way along the object: 1 to the right, -1 to the left
	words string
}

// placeTag sets a tag at its corner, or along the object or over it where something stands there.
func (c *composer) placeTag(g tag) {
	const high = 3.5
	t := c.taken()
	w, h := c.mm(font.Width(g.words, high, true)), c.mm(high)
	at := g.at
	for up := 0.0; up < 40; up += 5 {
		for along := 0.0; c.mm(along) < c.object.W()*0.45; along += 3 {
			p := g.at.Add(geom.Vec{X: g.in * c.mm(along), Y: c.mm(up)})
			box := geom.BoxOf(p, p.Add(geom.Vec{X: g.in * w, Y: h}))
			if !t.meets(box.Grow(c.mm(1))) {
				c.setTag(p, g, box)
				return
			}
		}
	}
	c.setTag(at, g, geom.BoxOf(at))
}

func (c *composer) setTag(at geom.Vec, g tag, box geom.Box) {
	al := render.BottomLeft
	if g.in < 0 {
		al = render.BottomRight
	}
	c.put(render.Text{Pen: render.Note, At: at, Height: 3.5, Align: al, Lines: []string{g.words}, Bold: true})
	c.grow(box.Min, box.Max)
}
