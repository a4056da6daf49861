package view

import (
	"standclear/detail"
	"standclear/geom"
	"standclear/render"
)

// Moved is a part as a pictorial view shows it: cropped, or drawn away from where it is built.
type Moved struct {
	Part   *detail.Part
	Solids []geom.Solid
}

// By returns m displaced by d.
func (m Moved) By(d geom.Vec3) Moved {
	out := Moved{Part: m.Part, Solids: make([]geom.Solid, len(m.Solids))}
	for i, s := range m.Solids {
		out.Solids[i] = s.Move(d)
	}
	return out
}

// Pictorial is a view of moved parts without a cut.
type Pictorial struct {
	View    geom.View
	Edges   []Edge
	Traces  []geom.Path
	outline map[*detail.Part]*geom.Over
}

// Lay takes the view of moved parts, and of straight lines in space that trace how they come together, as
// far as each is seen. A part without solids shows nothing.
func Lay(v geom.View, parts []Moved, lines [][2]geom.Vec3) Pictorial {
	p := Pictorial{View: v, outline: map[*detail.Part]*geom.Over{}}
	var solids []geom.Solid
	var owner []*detail.Part
	for _, m := range parts {
		var covers []geom.Region
		for _, s := range m.Solids {
			solids, owner = append(solids, s), append(owner, m.Part)
			if profiled[outlinePen(m.Part)] {
				covers = append(covers, s.Shadow(v))
			}
		}
		p.outline[m.Part] = &geom.Over{}
		p.outline[m.Part].Add(geom.Union(covers...)...)
	}
	for _, e := range geom.Project(v, solids, geom.ProjectOptions{NoHidden: true, Lines: lines}) {
		if e.Solid >= len(solids) {
			p.Traces = append(p.Traces, e.Path)
			continue
		}
		p.Edges = append(p.Edges, Edge{Part: owner[e.Solid], Path: e.Path})
	}
	return p
}

// Box returns the bounds of everything the view shows.
func (p Pictorial) Box() geom.Box {
	b := geom.EmptyBox()
	for _, e := range p.Edges {
		b = b.Union(e.Path.Bounds())
	}
	for _, t := range p.Traces {
		b = b.Union(t.Bounds())
	}
	return b
}

// profiled are the pens that are drawn round a part and not within it.
var profiled = map[render.Pen]bool{render.Profile: true, render.Visible: true}

// outlinePen is the pen round a part in a pictorial view: heavy round what is built, lighter round the layers
// of the wall and what stands there already.
func outlinePen(p *detail.Part) render.Pen {
	pen := seenPen(Edge{Part: p})
	switch {
	case pen == render.Visible && !p.Existing:
		return render.Profile
	case pen == render.Existing && !p.Existing, pen == render.Fine:
		return render.Visible
	}
	return pen
}

// Draw returns the strokes of the view: outlines of parts over the edges within them, traces last. Nothing
// is drawn twice.
func (p Pictorial) Draw() []render.Item {
	var items []render.Item
	by := map[render.Pen][]geom.Path{}
	for _, e := range p.Edges {
		inner := []geom.Path{e.Path}
		if pen := outlinePen(e.Part); profiled[pen] {
			inner = p.outline[e.Part].Less(e.Path)
			by[pen] = append(by[pen], geom.MergeAgainst([]geom.Path{e.Path}, inner)...)
		}
		pen := seenPen(e)
		by[pen] = append(by[pen], inner...)
	}
	var over []geom.Path
	for _, pen := range []render.Pen{render.Profile, render.Fastener, render.Water, render.Visible, render.Existing, render.Fine} {
		for _, q := range geom.MergeAgainst(geom.Merge(by[pen]), over) {
			items = append(items, render.Stroke{Pen: pen, Path: q})
		}
		over = append(over, by[pen]...)
	}
	for _, q := range p.Traces {
		items = append(items, render.Stroke{Pen: render.Centre, Path: q})
	}
	return items
}
