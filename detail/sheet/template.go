package sheet

import (
	"fmt"
	"math"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// tiling divides the face of the block into pages: how the page lies, and where the seams are in the face's own
// datum, its lower left corner.
type tiling struct {
	posture
	face   geom.Box
	xs, ys []float64 // seams, the edges of the face first and last
}

func (t tiling) columns() int { return len(t.xs) - 1 }

func (t tiling) pages() int { return t.columns() * (len(t.ys) - 1) }

// cell is the share of page n: rows from the top, columns from the left.
func (t tiling) cell(n int) geom.Box {
	c, r := n%t.columns(), len(t.ys)-2-n/t.columns()
	return geom.Box{Min: geom.Vec{X: t.xs[c], Y: t.ys[r]}, Max: geom.Vec{X: t.xs[c+1], Y: t.ys[r+1]}}
}

// overlap is how far a page shows what lies past its seam, mm.
const overlap = 9.0

// shown is what page n shows: its cell and a strip past every seam.
func (t tiling) shown(n int) geom.Box { return t.cell(n).Grow(overlap).Intersect(t.face) }

// tiles lays the face out on the fewest pages, upright rather than across, the strip rather at the foot. Each seam stands where it is
// farthest from holes and screws.
func (w *writer) tiles() tiling {
	b := w.a.Blocks[0].Box
	face := geom.Box{Max: geom.Vec{X: b.Max.X - b.Min.X, Y: w.a.Frame.BlockTopFront - b.Min.Z}}
	var xs, ys []float64
	for _, h := range append(w.faceHoles(), w.faceScrews()...) {
		xs, ys = append(xs, h.at.X), append(ys, h.at.Y)
	}
	var best tiling
	for _, as := range []posture{{upright: true}, {}, {aside: true}} {
		f := w.slimOf(w.pageSizes()[0], as).field
		t := tiling{posture: as, face: face, xs: seams(face.W(), f.W(), xs), ys: seams(face.H(), f.H(), ys)}
		if best.xs == nil || t.pages() < best.pages() {
			best = t
		}
	}
	return best
}

// seams divides a length into the fewest stretches that a page of the room holds with its overlaps.
func seams(length, room float64, keep []float64) []float64 {
	n := 1
	for length > room && length/float64(n)+2*overlap > room-2 {
		n++
	}
	out := []float64{0}
	for i := 1; i < n; i++ {
		even := length * float64(i) / float64(n)
		slack := math.Max(0, (room-2-2*overlap-length/float64(n))/2)
		at, clear := even, -1.0
		for s := -8; s <= 8; s++ {
			x := even + slack*float64(s)/8
			d := math.Inf(1)
			for _, k := range keep {
				d = math.Min(d, math.Abs(k-x))
			}
			if d = math.Min(d, 4*overlap) - math.Abs(x-even)*0.05; d > clear {
				at, clear = x, d
			}
		}
		out = append(out, at)
	}
	return append(out, length)
}

// faceMark is something to mark on the face: a hole to drill or a screw.
type faceMark struct {
	at   geom.Vec // from the lower left corner of the face
	dia  float64  // of a hole; 0 for a screw
	name string
	what string
	kind int // of a screw, the joint it crosses
}

func (w *writer) faceHoles() []faceMark {
	b := w.a.Blocks[0].Box.Min
	var out []faceMark
	for i, h := range w.a.Holes(0) {
		out = append(out, faceMark{at: geom.Vec{X: h.X - b.X, Y: h.Z - b.Z}, dia: h.Dia, name: holeName(i), what: w.holeFor(h)})
	}
	return out
}

// faceScrews are the screws between the pieces of the block.
func (w *writer) faceScrews() []faceMark {
	b := w.a.Blocks[0].Box.Min
	var out []faceMark
	for j, joint := range w.a.Joints() {
		for _, at := range w.a.ScrewSpots(0, j, joint.Screws.Count) {
			out = append(out, faceMark{at: geom.Vec{X: at.X - b.X, Y: at.Y - b.Z}, name: joint.Outer + " TO " + joint.Inner, kind: j})
		}
	}
	return out
}

func (w *writer) templatePages() int {
	if len(w.a.Blocks) == 0 {
		return 1
	}
	return w.tiles().pages()
}

func (w *writer) templateLayout(size string) layoutOf {
	if len(w.a.Blocks) == 0 {
		return w.slimOf(size, posture{upright: true})
	}
	return w.slimOf(size, w.tiles().posture)
}

// templateSheet draws one page of the outside face of the block at full size.
func (w *writer) templateSheet(s *render.Sheet, l layoutOf) (string, bool) {
	if len(w.a.Blocks) == 0 {
		return "NTS", true
	}
	t := w.tiles()
	shown, room := t.shown(w.page), l.field
	at := room.Center().Sub(shown.Center())
	c := w.composer(1)
	paper := geom.Box{Min: room.Min.Sub(at), Max: room.Max.Sub(at)} // in the datum of the face
	w.template(c, t, paper.Grow(-1.5))
	c.extent = paper.Grow(-1)
	w.place(s, c, "1", "OUTSIDE FACE", blockOrigin, at)
	return w.scale(1).Text, shown.W() <= room.W() && shown.H() <= room.H()
}

// template draws what page w.page shows: edges, holes, screws, seams, then the words where the paper has room.
func (w *writer) template(c *composer, t tiling, paper geom.Box) {
	box := t.shown(w.page)
	page := geom.Rect(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y)
	var taken []geom.Box
	line := func(pen render.Pen, a, b geom.Vec) {
		for _, p := range geom.ClipPath(geom.Polyline(a, b), page, true) {
			c.put(render.Stroke{Pen: pen, Path: p})
			taken = append(taken, p.Bounds().Grow(1.2))
		}
	}
	f := t.face
	v := func(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }
	for _, e := range [][2]geom.Vec{{v(0, 0), v(f.Max.X, 0)}, {v(f.Max.X, 0), f.Max}, {f.Max, v(0, f.Max.Y)}, {v(0, f.Max.Y), v(0, 0)}} {
		line(render.Visible, e[0], e[1])
	}
	holes := w.faceHoles()
	var xs, ys []float64
	for _, h := range holes {
		xs, ys = append(xs, h.at.X), append(ys, h.at.Y)
	}
	for _, x := range distinct(xs) {
		line(render.Centre, v(x, 0), v(x, f.Max.Y))
	}
	for _, y := range distinct(ys) {
		line(render.Centre, v(0, y), v(f.Max.X, y))
	}
	for _, h := range holes {
		if box.Holds(h.at) {
			taken = append(taken, c.drillMark(h))
		}
	}
	for _, h := range w.faceScrews() {
		if box.Holds(h.at) {
			taken = append(taken, c.screwMark(h))
		}
	}
	taken = append(taken, c.seamMarks(t, w.page)...)
	c.trim(paper)
	w.templateWords(c, t, box, paper, taken)
}

// trim cuts the lines drawn so far off at the edges of a box: a mark at the edge of the face may reach past it.
func (c *composer) trim(box geom.Box) {
	within := geom.Rect(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y)
	var kept []render.Item
	for _, it := range c.items {
		s, ok := it.(render.Stroke)
		if b := s.Path.Bounds(); !ok || box.Holds(b.Min) && box.Holds(b.Max) {
			kept = append(kept, it)
			continue
		}
		for _, p := range geom.ClipPath(s.Path, within, true) {
			kept = append(kept, render.Stroke{Pen: s.Pen, Path: p})
		}
	}
	c.items = kept
}

// drillMark is a hole with the cross to prick; it returns the room it takes.
func (c *composer) drillMark(h faceMark) geom.Box {
	for _, r := range []float64{h.dia / 2, 1} {
		c.put(render.Stroke{Pen: render.Visible, Path: geom.Circle(h.at, r)[0]})
	}
	d := h.dia/2 + 4
	c.cross(render.Note, h.at, d, false)
	return geom.BoxOf(h.at).Grow(d + 0.6)
}

// cross draws two strokes through a point, upright or slanting.
func (c *composer) cross(pen render.Pen, at geom.Vec, r float64, slant bool) {
	u := geom.Vec{X: r}
	if slant {
		u = geom.Polar(geom.Vec{}, r, math.Pi/4)
	}
	for _, d := range []geom.Vec{u, u.Perp()} {
		c.put(render.Stroke{Pen: pen, Path: geom.Polyline(at.Sub(d), at.Add(d))})
	}
}

// screwMark is the cross of a screw: slanting for every second joint.
func (c *composer) screwMark(h faceMark) geom.Box {
	c.cross(render.Note, h.at, 2, h.kind%2 == 1)
	return geom.BoxOf(h.at).Grow(2.6)
}

// seamMarks draws the seams of the page and the crosses that must lie on each other.
func (c *composer) seamMarks(t tiling, page int) []geom.Box {
	box := t.shown(page)
	var taken []geom.Box
	mark := func(at geom.Vec) {
		if box.Grow(-1).Holds(at) {
			c.put(render.Stroke{Pen: render.Mark, Path: geom.Circle(at, 2.5)[0]})
			c.cross(render.Mark, at, 5, false)
			taken = append(taken, geom.BoxOf(at).Grow(5.6))
		}
	}
	for _, x := range t.xs[1 : len(t.xs)-1] {
		if x > box.Min.X && x < box.Max.X {
			p := geom.Polyline(geom.Vec{X: x, Y: box.Min.Y}, geom.Vec{X: x, Y: box.Max.Y})
			c.put(render.Stroke{Pen: render.Hidden, Path: p})
			taken = append(taken, p.Bounds().Grow(1.2))
		}
		for i := 1; i < len(t.ys); i++ {
			for _, part := range []float64{0.12, 0.88} {
				mark(geom.Vec{X: x, Y: t.ys[i-1] + part*(t.ys[i]-t.ys[i-1])})
			}
		}
	}
	for _, y := range t.ys[1 : len(t.ys)-1] {
		if y > box.Min.Y && y < box.Max.Y {
			p := geom.Polyline(geom.Vec{X: box.Min.X, Y: y}, geom.Vec{X: box.Max.X, Y: y})
			c.put(render.Stroke{Pen: render.Hidden, Path: p})
			taken = append(taken, p.Bounds().Grow(1.2))
		}
		for i := 1; i < len(t.xs); i++ {
			for _, part := range []float64{0.12, 0.88} {
				mark(geom.Vec{X: t.xs[i-1] + part*(t.xs[i]-t.xs[i-1]), Y: y})
			}
		}
	}
	return taken
}

// templateWords sets the words where they are clear of everything else: beside each hole its own, then what
// the page is and how to use it, on the face or beside it.
func (w *writer) templateWords(c *composer, t tiling, box, paper geom.Box, taken []geom.Box) {
	put := func(near geom.Vec, within geom.Box, h float64, bold bool, lines []string) bool {
		b := textBox(geom.Vec{}, h, render.MiddleCentre, 0, lines, 1).Grow(1)
		at, ok := clearSpot(geom.Vec{X: b.W() / 2, Y: b.H() / 2}, within, near, taken)
		if ok {
			c.put(render.Text{Pen: render.Note, At: at, Height: h, Align: render.MiddleCentre, Lines: lines, Bold: bold})
			taken = append(taken, geom.Box{Min: at.Add(b.Min), Max: at.Add(b.Max)})
		}
		return ok
	}
	para := func(near geom.Vec, h float64, bold bool, texts ...string) bool { // as wide as there is room for
		for _, width := range []float64{66, 50, 38, 28, 21} {
			var lines []string
			for _, t := range texts {
				lines = append(append(lines, wrap(t, h, width, bold)...), "")
			}
			if put(near, paper, h, bold, lines[:len(lines)-1]) {
				return true
			}
		}
		return false
	}
	for _, h := range w.faceHoles() {
		if box.Holds(h.at) {
			off := h.dia/2 + 10
			put(h.at.Add(geom.Vec{X: off, Y: off}), box.Grow(-1), 2.5, false, []string{h.name + "  Ø" + w.text(h.dia), "X " + w.text(h.at.X) + "  Y " + w.text(h.at.Y)})
		}
	}
	mid := box.Center()
	if box.Max.Y > t.face.Max.Y-1 {
		para(geom.Vec{X: mid.X, Y: box.Max.Y}, 3, true, "TOP OF BLOCK")
	}
	if box.Min.Y < 1 {
		para(geom.Vec{X: mid.X, Y: box.Min.Y}, 3, true, "FOOT OF BLOCK")
	}
	if all := w.templateNotes(t); !para(mid, 2.5, false, all...) {
		for _, n := range all {
			para(mid, 2.5, false, n)
		}
	}
}

// templateNotes say what the page is and how to use it.
func (w *writer) templateNotes(t tiling) []string {
	n := len(w.a.Blocks)
	out := []string{fmt.Sprintf("BLOCKS %s TO %s, %d PIECES. OUTSIDE FACE, THIS SIDE OUT. FULL SIZE, %s", w.a.Blocks[0].Mark, w.a.Blocks[n-1].Mark, n, w.scale(1).Text)}
	if t.pages() > 1 {
		out = append(out, fmt.Sprintf("PAGE %d OF %d: CUT ONE PAGE ON THE DASHED SEAM AND LAY THE RINGED CROSSES ON EACH OTHER", w.page+1, t.pages()))
	}
	out = append(out, "FOLD BACK ON THE EDGE LINES; PRICK EACH CROSS; DRILL SQUARE, A BOARD BEHIND, HOLES WITHIN "+strings.ReplaceAll(w.tolerance(), " ", "\u00a0")+" OF PLACE")
	if l := w.screwLegend(); l != "" {
		out = append(out, l)
	}
	return out
}

// screwLegend tells the small crosses of the joints apart.
func (w *writer) screwLegend() string {
	var ways [2][]string
	for j, joint := range w.a.Joints() {
		ways[j%2] = append(ways[j%2], joint.Outer+" TO "+joint.Inner)
	}
	if len(ways[0]) == 0 {
		return ""
	}
	t := "SMALL CROSSES ARE SCREWS: UPRIGHT " + strings.Join(ways[0], ", ")
	if len(ways[1]) > 0 {
		t += "; SLANTING " + strings.Join(ways[1], ", ")
	}
	return t
}

// clearSpot returns the place nearest to near, inside box, where a rectangle of the half size given touches
// nothing that is taken.
func clearSpot(half geom.Vec, box geom.Box, near geom.Vec, taken []geom.Box) (geom.Vec, bool) {
	best, dist := geom.Vec{}, math.Inf(1)
	const step = 1.5
	for y := box.Min.Y + half.Y; y <= box.Max.Y-half.Y; y += step {
		for x := box.Min.X + half.X; x <= box.Max.X-half.X; x += step {
			at := geom.Vec{X: x, Y: y}
			if d := at.Dist(near); d < dist && free(geom.Box{Min: at.Sub(half), Max: at.Add(half)}, taken) {
				best, dist = at, d
			}
		}
	}
	return best, !math.IsInf(dist, 1)
}

func free(b geom.Box, taken []geom.Box) bool {
	for _, t := range taken {
		if t.Overlaps(b) {
			return false
		}
	}
	return true
}
