package view

import (
	"standclear/detail"
	"standclear/geom"
	"standclear/render"
)

// Split parts a picture in two by part: what picks accepts, and the rest.
func (p *Picture) Split(picks func(*detail.Part) bool) (now, before Picture) {
	now = Picture{View: p.View, Window: p.Window, shadow: p.shadow, drawn: &drawn{}}
	before = Picture{View: p.View, Window: p.Window, shadow: p.shadow, drawn: &drawn{}}
	for _, c := range p.Pieces {
		q := &before
		if picks(c.Part) {
			q = &now
		}
		q.Pieces = append(q.Pieces, c)
	}
	for _, e := range p.Edges {
		q := &before
		if picks(e.Part) {
			q = &now
		}
		q.Edges = append(q.Edges, e)
	}
	return now, before
}

// Plain returns the lines of the picture on one pen, without textures, at k model millimetres per plotted
// millimetre, each once and less whatever lies along a line of over. Of a sheet seen from the side, whose
// two faces would plot as one line, the longer line is drawn.
func (p *Picture) Plain(pen render.Pen, k float64, over *Picture) []render.Item {
	var taken []geom.Path
	if over != nil {
		taken = over.lines(k)
	}
	var items []render.Item
	for _, q := range geom.MergeAgainst(p.lines(k), taken) {
		items = append(items, render.Stroke{Pen: pen, Path: q})
	}
	return items
}

// lines are all visible lines of the picture: outlines of what is cut, films, edges.
func (p *Picture) lines(k float64) []geom.Path {
	var out []geom.Path
	for _, c := range p.Pieces {
		for _, ring := range c.Region {
			out = append(out, p.open(ring)...)
		}
		for _, l := range p.Films(c, k) {
			out = append(out, geom.ClipPath(l, p.shadow, false)...)
		}
	}
	thin := map[*detail.Part][]geom.Path{}
	for _, e := range p.Edges {
		if e.Hidden {
			continue
		}
		if e.Part.Thin {
			thin[e.Part] = append(thin[e.Part], e.Path)
			continue
		}
		out = append(out, e.Path)
	}
	for _, e := range p.Edges { // in the order of the edges, each part once
		if ps, ok := thin[e.Part]; ok {
			out = append(out, oneFace(ps, 0.2*k)...)
			delete(thin, e.Part)
		}
	}
	return out
}

// oneFace leaves out what lies within near of a longer line along its whole length: the other face of a
// sheet.
func oneFace(ps []geom.Path, near float64) []geom.Path {
	var out []geom.Path
	for i, p := range ps {
		double := false
		for j, q := range ps {
			longer := q.Length() > p.Length()+geom.Tol || q.Length() > p.Length()-geom.Tol && j < i
			double = double || longer && follows(p, q, near)
		}
		if !double {
			out = append(out, p)
		}
	}
	return out
}

// follows reports whether the straight line p lies within near of the straight line q.
func follows(p, q geom.Path, near float64) bool {
	if len(q.V) != 2 || q.V[0].Bulge != 0 {
		return false
	}
	a, d := q.V[0].Vec, q.V[1].Sub(q.V[0].Vec)
	for _, v := range p.V {
		t := v.Sub(a).Dot(d) / d.Dot(d)
		if v.Dist(a.Add(d.Mul(max(0, min(1, t))))) > near {
			return false
		}
	}
	return true
}
