package cloud

import (
	"math"
	"slices"
	"strings"
	"unicode"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// comparison collects what differs on one sheet.
type comparison struct {
	now, was *render.Sheet
	wants    []want
	change   Change
}

// compare finds what differs between two sheets; the pages of both say which rows and words are there at all.
func compare(now, was *render.Sheet, pages, old []*render.Sheet) *comparison {
	c := &comparison{now: now, was: was, change: Change{Sheet: now.ID}}
	taken := make([]bool, len(was.Views))
	for i := range now.Views {
		if o := match(&now.Views[i], was.Views, taken); o != nil {
			c.view(i, &now.Views[i], o)
		} else {
			c.want(i, &now.Views[i], inkOf(&now.Views[i]))
		}
	}
	for i, v := range was.Views {
		if !taken[i] {
			c.change.Lost = append(c.change.Lost, "VIEW "+v.ID+" "+v.Title)
		}
	}
	c.paper(pages, old)
	slices.Sort(c.change.Marks)
	c.change.Marks = slices.Compact(c.change.Marks)
	return c
}

// match returns the old view that a view is compared with: of the same title, else of the same number.
func match(v *render.View, old []render.View, taken []bool) *render.View {
	for _, same := range []func(o render.View) bool{
		func(o render.View) bool { return o.ID == v.ID && o.Title == v.Title },
		func(o render.View) bool { return o.Title == v.Title },
		func(o render.View) bool { return o.ID == v.ID },
	} {
		for i := range old {
			if !taken[i] && same(old[i]) {
				taken[i] = true
				return &old[i]
			}
		}
	}
	return nil
}

// want notes a box of a view, in model millimetres, as far as the view shows it.
func (c *comparison) want(i int, v *render.View, box geom.Box) {
	box = box.Intersect(v.Window)
	if !box.Empty() {
		c.wants = append(c.wants, want{box: onPaper(v, box), group: i})
	}
}

func onPaper(v *render.View, b geom.Box) geom.Box {
	k := 1 / v.Scale.K
	return geom.Box{Min: b.Min.Mul(k).Add(v.At), Max: b.Max.Mul(k).Add(v.At)}
}

// inkOf is the box of the linework of a view.
func inkOf(v *render.View) geom.Box {
	b := geom.EmptyBox()
	for _, it := range v.Items {
		if s, ok := it.(render.Stroke); ok {
			b = b.Union(s.Path.Bounds())
		}
	}
	return b
}

// view compares a view with what it was.
func (c *comparison) view(i int, now, was *render.View) {
	rescaled := now.Scale.K != was.Scale.K
	a, pa := pictured(now, runsOf(now, rescaled))
	b, pb := pictured(was, runsOf(was, rescaled))
	for _, r := range redrawn(pa, pb, now.Scale.K) {
		c.run(i, now, r, r.bounds())
	}
	d := shift(a, b)
	was, b = moved(was, d), movedRuns(b, d)
	crop := cropOf(now, a).Intersect(cropOf(was, b))
	for _, r := range append(rests(a, b), rests(b, a)...) { // what is gone is clouded where it was
		if box := r.bounds().Intersect(crop); !box.Empty() && math.Max(box.W(), box.H()) > least { // else beyond where a picture is broken off
			c.run(i, now, r, box)
		}
	}
	for _, box := range otherPatterns(now, was) {
		c.want(i, now, box)
	}
	style := c.now.Unit.Style()
	for _, d := range otherDims(dimsOf(now, c.now), dimsOf(was, c.was)) {
		p := d.Picture(style, now.Scale.K, c.now.Number)
		c.want(i, now, textBox(render.Text{At: p.TextAt, Height: style.Text, Align: render.MiddleCentre, Rot: p.Rot, Lines: []string{p.Label}}, now.Scale.K))
	}
	n, w := wordsOf(now, rescaled), wordsOf(was, rescaled)
	fresh := missing(n, w)
	for _, t := range fresh {
		c.want(i, now, t.box)
	}
	c.lost(missing(w, n), fresh, n)
}

// run notes a line that differs.
func (c *comparison) run(i int, v *render.View, r run, box geom.Box) {
	c.want(i, v, box)
	if r.tag != nil && r.tag.Mark != "" {
		c.change.Marks = append(c.change.Marks, r.tag.Mark)
	}
}

// lost notes words that are gone and have nothing in their place: no fresh ones that begin alike, or that are the
// same but for figures. A row that was only set in other columns is none: all its cells are there still.
func (c *comparison) lost(gone, fresh, now []words) {
	cells := map[string]bool{}
	for _, w := range now {
		for _, t := range strings.Split(w.text, cellMark) {
			cells[t] = true
		}
	}
	for _, g := range gone {
		there := !slices.ContainsFunc(strings.Split(g.text, cellMark), func(t string) bool { return !cells[t] })
		replaced := slices.ContainsFunc(fresh, func(f words) bool { return start(f.text) == start(g.text) || letters(f.text) == letters(g.text) })
		if !there && !replaced {
			c.change.Lost = append(c.change.Lost, g.text)
		}
	}
}

// cellMark stands between the cells of a row.
const cellMark = " | "

// start is the first cell of a row, or the first two words.
func start(text string) string {
	if first, _, row := strings.Cut(text, cellMark); row {
		return first
	}
	f := strings.Fields(text)
	return strings.Join(f[:min(2, len(f))], " ")
}

func letters(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) {
			return r
		}
		return -1
	}, text)
}

// words is a block of text as one line, and its box in its own space.
type words struct {
	text string
	box  geom.Box
}

// wordsOf are the texts of a view. Where the scale is another, what stands under the rule of the title says so and
// is left out.
func wordsOf(v *render.View, rescaled bool) []words {
	foot := math.Inf(-1)
	for _, it := range v.Items {
		if s, ok := it.(render.Stroke); ok && rescaled && s.Pen == render.Heading {
			foot = s.Path.Bounds().Min.Y
		}
	}
	var out []words
	for _, w := range textsOf(v.Items, v.Scale.K) {
		if w.box.Max.Y >= foot {
			out = append(out, w)
		}
	}
	return out
}

// textsOf are the texts among items and in the symbols inserted, at k units of the space per plotted millimetre.
func textsOf(items []render.Item, k float64) []words {
	var out []words
	for _, it := range items {
		switch it := it.(type) {
		case render.Text:
			out = append(out, words{strings.Join(it.Lines, " "), textBox(it, k)})
		case render.Insert:
			scale := it.Scale
			if scale == 0 {
				scale = 1
			}
			for _, s := range it.Symbol.Items {
				if t, ok := s.(render.Text); ok {
					t = it.Filled(t)
					t.At = it.At.Add(t.At.Mul(scale))
					out = append(out, words{strings.Join(t.Lines, " "), textBox(t, scale)})
				}
			}
		}
	}
	return out
}

// missing returns the texts that the others have not, each as often as they have it less often.
func missing(of, in []words) []words {
	have := map[string]int{}
	for _, w := range in {
		have[w.text]++
	}
	var out []words
	for _, w := range of {
		if have[w.text]--; have[w.text] < 0 {
			out = append(out, w)
		}
	}
	return out
}

// textBox is the room a text takes in its space, at k units per plotted millimetre.
func textBox(t render.Text, k float64) geom.Box {
	w := 0.0
	for _, l := range t.Lines {
		w = max(w, font.Width(l, t.Height, t.Bold))
	}
	h := t.Height * (1 + render.LinePitch*float64(len(t.Lines)-1))
	x := -w * float64((int(t.Align)-1)%3) / 2
	y := -h * float64(2-(int(t.Align)-1)/3) / 2
	b := geom.Box{Min: geom.Vec{X: x, Y: y}, Max: geom.Vec{X: x + w, Y: y + h}}
	if math.Abs(t.Rot) == 90 {
		turn := t.Rot / 90
		b = geom.BoxOf(b.Min.Perp().Mul(turn), b.Max.Perp().Mul(turn))
	}
	return geom.Box{Min: t.At.Add(b.Min.Mul(k)), Max: t.At.Add(b.Max.Mul(k))}
}

// otherPatterns are the boxes of parts that stand where they were with another pattern.
func otherPatterns(now, was *render.View) []geom.Box {
	var out []geom.Box
	for _, it := range now.Items {
		f, ok := it.(render.Fill)
		if !ok || f.Pattern == nil {
			continue
		}
		b := f.Region.Bounds()
		same, seen := false, false
		for _, o := range was.Items {
			if g, ok := o.(render.Fill); ok && g.Pattern != nil && near(b.Min, g.Region.Bounds().Min) && near(b.Max, g.Region.Bounds().Max) {
				seen, same = true, same || g.Pattern.Name == f.Pattern.Name
			}
		}
		if seen && !same {
			out = append(out, b)
		}
	}
	return out
}

func near(a, b geom.Vec) bool { return a.Dist(b) <= tol }
