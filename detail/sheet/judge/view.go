package judge

import (
	"math"
	"strings"

	"standclear/geom"
	"standclear/render"
)

const (
	apart   = 12.0 // mm between views: L12
	tooThin = 2.5  // mm plotted: a part narrower than this stays empty
)

// cutUnmarked is L11: a cut part is hatched, or a leader ends on it, or its mark is named in its view. One
// piece of a part in a view stands for all of it there.
func cutUnmarked(p *page) {
	type part struct {
		in         int
		mark, role string
	}
	bare := map[part]ring{}
	told := map[part]bool{}
	var order []part
	for _, r := range p.rings() {
		k := part{r.in, r.tag.Mark, r.tag.Role}
		if _, ok := bare[k]; !ok {
			bare[k] = r
			order = append(order, k)
		}
		told[k] = told[k] || p.hatched(r) || p.named(r)
	}
	for _, k := range order {
		if !told[k] {
			p.fail("L11", bare[k].box.Center(), []string{k.mark}, "%s is cut in view %s and neither hatched nor noted", k.role, p.views[k.in].view.ID)
		}
	}
}

// ring is the outline of a cut part.
type ring struct {
	rings [][]geom.Vec
	box   geom.Box
	tag   *render.Tag
	in    int
}

// rings are the outlines of cut parts wide enough to be hatched. Where the edge of the picture cuts a part
// off, its outline is open and the chord closes it; any other open line is a thin sheet.
func (p *page) rings() []ring {
	object := make([]geom.Box, len(p.views))
	for i := range object {
		object[i] = geom.EmptyBox()
	}
	for _, l := range p.lines {
		if l.in != own && l.line.Tag != nil {
			object[l.in] = object[l.in].Include(l.a).Include(l.b)
		}
	}
	var out []ring
	last := -1
	for _, l := range p.lines {
		if l.line.Pen != render.Cut && l.line.Pen != render.CutMain || l.line.Tag == nil || l.in == own || l.order == last {
			continue
		}
		last = l.order
		path := l.line.Path
		if v := path.V; !path.Closed && !(onEdge(object[l.in], v[0].Vec) && onEdge(object[l.in], v[len(v)-1].Vec)) {
			continue
		}
		r := ring{rings: [][]geom.Vec{path.Flatten(chord)}, box: path.Bounds(), tag: l.line.Tag, in: l.in}
		if thickness(path) >= tooThin && len(r.rings[0]) > 2 {
			out = append(out, r)
		}
	}
	return out
}

// onEdge reports whether a point lies on an edge of a box.
func onEdge(b geom.Box, q geom.Vec) bool {
	const near = 0.1
	return !b.Grow(-near).Holds(q)
}

// thickness is how wide a part is, bent sheets along their bends: the strip of its area and outline.
func thickness(outline geom.Path) float64 {
	outline.Closed = true
	b := outline.Bounds()
	return math.Min(math.Min(b.W(), b.H()), 2*math.Abs(outline.Area())/outline.Length())
}

func (p *page) hatched(r ring) bool {
	for _, l := range p.lines {
		if l.in == r.in && hatchLike(l) {
			if m := l.a.Lerp(l.b, 0.5); r.box.Holds(m) && inside(r.rings, m) {
				return true
			}
		}
	}
	for _, f := range p.fills {
		if f.in == r.in && !f.area.White && f.box.Overlaps(r.box) && r.box.Holds(f.box.Center()) {
			return true
		}
	}
	return false
}

func (p *page) named(r ring) bool {
	for _, l := range p.of(render.LeaderLine) {
		if l.in == r.in && r.box.Grow(0.2).Holds(l.a) && inside(r.rings, l.a) {
			return true
		}
	}
	for _, t := range p.texts {
		if t.in == r.in && r.tag.Mark != "" && hasWord(t.Text, r.tag.Mark) {
			return true
		}
	}
	return false
}

// hasWord reports whether a text holds a word, alone between other signs.
func hasWord(text, word string) bool {
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !(r >= '0' && r <= '9' || r >= 'A' && r <= 'Z') }) {
		if w == word {
			return true
		}
	}
	return false
}

// viewsApart is L12.
func viewsApart(p *page) {
	for i, a := range p.views {
		for _, b := range p.views[i+1:] {
			if a.ink.Empty() || b.ink.Empty() {
				continue
			}
			if d := distance(a.ink, b.ink); d < apart-0.01 {
				p.fail("L12", a.ink.Center(), nil, "views %s and %s stand %.1f mm apart", a.view.ID, b.view.ID, d)
			}
		}
		p.over(a)
	}
}

// over finds what of the sheet's own lies in a view; clouds of a revision belong there.
func (p *page) over(v shown) {
	if v.ink.Empty() || v.view.Scale.Text == pictorial {
		return // a picture is no rectangle: what crosses its lines is L2
	}
	in := v.ink.Grow(-0.01)
	for _, t := range p.texts {
		if t.in == own && t.Pen != render.Revision && t.box.Overlaps(in) {
			p.fail("L12", t.middle(), []string{t.Text}, "a text of the sheet lies in view %s", v.view.ID)
			return
		}
	}
	for _, l := range p.lines {
		if l.in != own || l.line.Pen == render.Revision {
			continue
		}
		if a, b, ok := clip(l.a, l.b, in); ok {
			p.fail("L12", a.Lerp(b, 0.5), nil, "a line of the sheet lies in view %s", v.view.ID)
			return
		}
	}
}

// distance is the clear distance of two boxes, 0 where they overlap.
func distance(a, b geom.Box) float64 {
	dx := math.Max(0, math.Max(b.Min.X-a.Max.X, a.Min.X-b.Max.X))
	dy := math.Max(0, math.Max(b.Min.Y-a.Max.Y, a.Min.Y-b.Max.Y))
	return math.Hypot(dx, dy)
}
