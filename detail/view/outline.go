package view

import (
	"standclear/geom"
	"standclear/render"
)

// Outline returns what is cut, and the fasteners that lie in the plane, as lines of one pen without
// texture: every line once.
func (p *Picture) Outline(pen render.Pen) []render.Item {
	var lines []geom.Path
	for _, c := range p.Pieces {
		for _, ring := range c.Region {
			lines = append(lines, p.open(ring)...)
		}
	}
	for _, e := range p.Edges {
		if e.Whole {
			lines = append(lines, e.Path)
		}
	}
	var items []render.Item
	for _, l := range geom.Merge(lines) {
		items = append(items, render.Stroke{Pen: pen, Path: l})
	}
	return items
}
