package cloud

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

// Sizes on paper, mm. Judgements, after the usual cloud of arcs 5 to 8 mm wide and a triangle of some 6 mm.
const (
	chord   = 6.0 // width of an arc, nearly; two to a side at least
	rise    = 1.3 // of an arc over its chord
	margin  = 1.5 // from what differs to the chords
	rowSide = 0.9 // the same at a row of a table, whose neighbours are near
	apart   = 6.0 // clouds nearer than this become one
	small   = 8.0 // no cloud is smaller
	reach   = 15  // a side moves out as far as this to clear texts
	clear   = 0.5 // from a text to the ink of a cloud, line weight included
	edge    = 0.6 // from a cloud to the frame
)

func sideOf(row bool) float64 {
	if row {
		return rowSide
	}
	return margin
}

// between is how near two boxes may lie before their clouds become one.
func between(row bool) float64 { return apart + 2*(sideOf(row)+rise) }

// fit returns the box that the chords of a cloud lie on: round what differs, each side where its arcs run through
// the fewest texts and no farther out than that takes.
func (p *page) fit(w want) geom.Box {
	box := w.box
	if grow := (small - 2*(sideOf(w.row)+rise) - box.W()) / 2; grow > 0 {
		box.Min.X, box.Max.X = box.Min.X-grow, box.Max.X+grow
	}
	if grow := (small - 2*(sideOf(w.row)+rise) - box.H()) / 2; grow > 0 && !w.row {
		box.Min.Y, box.Max.Y = box.Min.Y-grow, box.Max.Y+grow
	}
	var out [4]float64 // left, right, foot, top
	for i := range out {
		out[i] = sideOf(w.row)
	}
	for range 3 { // a side's length depends on its neighbours
		for i := range out {
			out[i] = p.side(box, out, i, sideOf(w.row))
		}
	}
	return sides(box, out)
}

// sides moves the sides of a box out.
func sides(b geom.Box, out [4]float64) geom.Box {
	return geom.Box{Min: geom.Vec{X: b.Min.X - out[0], Y: b.Min.Y - out[2]}, Max: geom.Vec{X: b.Max.X + out[1], Y: b.Max.Y + out[3]}}
}

// side finds how far out side i goes.
func (p *page) side(box geom.Box, out [4]float64, i int, usual float64) float64 {
	best, cost := usual, math.Inf(1)
	for step := clear; step <= reach; step += 0.25 {
		out[i] = step
		b := sides(box, out)
		if !inside(b.Grow(rise+edge), p.field) && out[i] > usual {
			break
		}
		if c := reach*float64(p.crossed(band(b, i))) + math.Abs(out[i]-usual); c < cost {
			best, cost = out[i], c
		}
	}
	return best
}

func inside(b, in geom.Box) bool { return in.Holds(b.Min) && in.Holds(b.Max) }

// band is where the arcs of a side run.
func band(b geom.Box, i int) geom.Box {
	o := b.Grow(rise)
	switch i {
	case 0:
		o.Max.X = b.Min.X
	case 1:
		o.Min.X = b.Max.X
	case 2:
		o.Max.Y = b.Min.Y
	default:
		o.Min.Y = b.Max.Y
	}
	return o.Grow(clear)
}

// crossed counts the texts in a box.
func (p *page) crossed(b geom.Box) int {
	n := 0
	for _, t := range p.texts {
		if t.Overlaps(b) {
			n++
		}
	}
	return n
}

// arcs runs round a box counter-clockwise in arcs that swell outward.
//
//	 _ _ _
//	(     )
//	(_ _ _)
func arcs(b geom.Box) geom.Path {
	p := geom.Path{Closed: true}
	at := [4]geom.Vec{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
	for i, a := range at {
		e := at[(i+1)%4]
		n := max(2, int(math.Round(a.Dist(e)/chord)))
		bulge := 2 * rise * float64(n) / a.Dist(e)
		for j := range n {
			p.V = append(p.V, geom.Vertex{Vec: a.Lerp(e, float64(j)/float64(n)), Bulge: bulge})
		}
	}
	return p
}

// outline is the cloud on the box, broken where an arc would run through a text.
func (p *page) outline(b geom.Box) []render.Item {
	whole := arcs(b)
	segs := whole.Segs()
	hit := make([]bool, len(segs))
	from, any := 0, false
	for i, s := range segs {
		if hit[i] = p.throughText(s); hit[i] {
			from, any = i, true
		}
	}
	if !any {
		return []render.Item{render.Stroke{Pen: render.Revision, Path: whole}}
	}
	var out []render.Item
	var run geom.Path
	for k := 1; k <= len(segs); k++ { // from behind a gap, so that no run is cut at the start
		i := (from + k) % len(segs)
		if hit[i] {
			if len(run.V) > 0 {
				out = append(out, render.Stroke{Pen: render.Revision, Path: run})
			}
			run = geom.Path{}
			continue
		}
		if len(run.V) == 0 {
			run.V = append(run.V, geom.Vertex{Vec: segs[i].A})
		}
		run.V[len(run.V)-1].Bulge = segs[i].Bulge
		run.V = append(run.V, geom.Vertex{Vec: segs[i].B})
	}
	return out
}

// throughText reports whether an arc or line comes nearer to a text than clear.
func (p *page) throughText(s geom.Seg) bool {
	const step = 0.2
	b := s.Bounds().Grow(clear)
	for _, t := range p.texts {
		if !t.Overlaps(b) {
			continue
		}
		near := t.Grow(clear - 0.1) // what band leaves is enough
		n := int(math.Ceil(s.Len() / step))
		for i := range n + 1 {
			if near.Holds(s.At(float64(i) / float64(n))) {
				return true
			}
		}
	}
	return false
}
