package view

import (
	"math"
	"sort"

	"standclear/detail"
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
)

// cutPens is the weight of a cut outline by role; roles not listed are drawn as new cut parts.
var cutPens = map[detail.Role]render.Pen{
	detail.Ledger: render.CutMain, detail.BlockPly: render.CutMain, detail.BlockPad: render.CutMain, detail.FootPiece: render.CutMain,
	detail.Rim: render.Cut, detail.Backing: render.Cut, detail.Sheathing: render.Cut, detail.Earth: render.Ground,
	detail.Finish: render.Visible, detail.FloorBoard: render.Visible, detail.Subfloor: render.Visible, detail.Plate: render.Visible, detail.Stud: render.Visible,
	detail.HouseJoist: render.Visible, detail.Footing: render.Cut, detail.GroundIns: render.Visible, detail.DrainBoard: render.Visible, detail.Cavity: render.Visible,
	detail.DeckJoist: render.Visible, detail.Decking: render.Visible, detail.Obstacle: render.Visible, detail.Outside: render.Visible, detail.Threshold: render.Visible, detail.TieStrap: render.Cut,
}

// linePens is the pen of a thin sheet that a section shows as a line.
var linePens = map[detail.Role]render.Pen{
	detail.Barrier: render.Membrane, detail.Patch: render.Membrane, detail.Wrap: render.Membrane,
	detail.Flashing: render.ThinCut, detail.Base: render.ThinCut, detail.Screen: render.Fine, detail.Hanger: render.Cut,
}

// seenPens is the pen of edges beyond the cut by role.
var seenPens = map[detail.Role]render.Pen{
	detail.Bolt: render.Fastener, detail.Nut: render.Fastener, detail.Washer: render.Fastener, detail.TensionRod: render.Fastener,
	detail.PlyScrew: render.Fastener, detail.SpacerRing: render.Fastener, detail.TieStrap: render.Fastener, detail.Hanger: render.Fastener,
	detail.Flashing: render.Water, detail.Wrap: render.Water, detail.Patch: render.Water, detail.Base: render.Water,
	detail.Cladding: render.Existing, detail.HouseJoist: render.Existing, detail.DeckJoist: render.Visible, detail.Decking: render.Existing,
	detail.Furring: render.Existing, detail.OuterInsul: render.Existing, detail.Finish: render.Existing, detail.Stud: render.Existing, detail.Cavity: render.Existing,
	detail.Screen: render.Fine, detail.Subfloor: render.Existing, detail.FloorBoard: render.Existing, detail.Plate: render.Existing,
	detail.Earth: render.Ground, detail.Barrier: render.Fine, detail.Sheathing: render.Existing, detail.Obstacle: render.Existing, detail.Outside: render.Existing,
}

// CutPen returns the pen of a part's cut outline.
func CutPen(r detail.Role) render.Pen {
	if p, ok := cutPens[r]; ok {
		return p
	}
	return render.Cut
}

func seenPen(e Edge) render.Pen {
	switch {
	case e.Ghost:
		return render.Phantom
	case e.Hidden:
		return render.Hidden
	}
	if p, ok := seenPens[e.Part.Role]; ok {
		return p
	}
	return render.Visible
}

// TagOf returns what a file remembers of a part.
func TagOf(p *detail.Part, sys unit.System) *render.Tag {
	size := ""
	for _, l := range p.Size {
		if l <= 0 {
			continue
		}
		if size != "" {
			size += " x "
		}
		size += l.Text(sys)
	}
	return &render.Tag{Mark: p.Mark, Material: p.Material, Size: size, Role: string(p.Role)}
}

// Draw returns the items of the picture at k model millimetres per plotted millimetre: textures,
// what lies beyond, cut outlines, fasteners, membranes.
func (p *Picture) Draw(k float64, sys unit.System) []render.Item {
	var items []render.Item
	for _, c := range p.Pieces {
		items = append(items, texture(c, p.View, k)...)
	}
	p.Ready(sys)
	items = append(items, p.drawn.seen...)
	items = append(items, p.drawn.outlines...)
	items = append(items, p.drawn.whole...)
	for _, c := range p.Pieces {
		for _, l := range p.Films(c, k) {
			for _, q := range geom.ClipPath(l, p.shadow, false) {
				items = append(items, render.Stroke{Pen: linePen(c.Part.Role), Path: q, Tag: TagOf(c.Part, sys)})
			}
		}
	}
	return items
}

// Ready works out what is the same at every scale, as the first Draw does.
func (p *Picture) Ready(sys unit.System) {
	p.drawn.once.Do(func() {
		p.drawn.seen, p.drawn.whole = p.strokes(sys)
		p.drawn.outlines = p.outlinesOf(sys)
	})
}

func linePen(r detail.Role) render.Pen {
	if p, ok := linePens[r]; ok {
		return p
	}
	return render.ThinCut
}

// strokes merges the edges of each pen, so that nothing is drawn twice and nothing along a cut
// outline, and gives every stroke its part where one part alone drew it.
func (p *Picture) strokes(sys unit.System) (seen, whole []render.Item) {
	over := p.outlines()
	for _, pen := range []render.Pen{render.Hidden, render.Phantom, render.Existing, render.Fine, render.Ground, render.Visible, render.Water, render.Fastener} {
		var beyond, front []geom.Path
		for _, e := range p.Edges {
			if seenPen(e) != pen {
				continue
			}
			if e.Whole {
				front = append(front, e.Path)
			} else {
				beyond = append(beyond, e.Path)
			}
		}
		front = geom.Merge(front)
		for _, q := range geom.MergeAgainst(geom.MergeAgainst(geom.Merge(beyond), over), front) {
			seen = append(seen, render.Stroke{Pen: pen, Path: q})
		}
		for _, q := range front {
			whole = append(whole, render.Stroke{Pen: pen, Path: q})
		}
		over = append(over, beyond...)
	}
	return seen, whole
}

func (p *Picture) outlines() []geom.Path {
	var out []geom.Path
	for _, c := range p.Pieces {
		out = append(out, c.Region...)
	}
	return out
}

// outlinesOf strokes the rings of the cut parts, heaviest pen last. Where the window cuts a part off
// its ring stays open; a single side left over that lies along another outline is not drawn again.
func (p *Picture) outlinesOf(sys unit.System) []render.Item {
	var items []render.Item
	var sides []render.Stroke
	var drawn geom.Over
	for _, c := range p.Pieces {
		pen, tag := CutPen(c.Part.Role), TagOf(c.Part, sys)
		for _, ring := range c.Region {
			for _, q := range p.open(ring) {
				if len(q.V) == 2 && !q.Closed {
					sides = append(sides, render.Stroke{Pen: pen, Path: q, Tag: tag})
					continue
				}
				items = append(items, render.Stroke{Pen: pen, Path: q, Tag: tag})
				drawn.Add(q)
			}
		}
	}
	sort.SliceStable(sides, func(i, j int) bool { return sides[i].Pen.Def().Weight > sides[j].Pen.Def().Weight })
	for _, s := range sides {
		for _, q := range drawn.Less(s.Path) {
			items = append(items, render.Stroke{Pen: s.Pen, Path: q, Tag: s.Tag})
			drawn.Add(q)
		}
	}
	return items
}

// open removes what of a ring lies on the border of the window.
func (p *Picture) open(ring geom.Path) []geom.Path {
	if p.Window.Empty() || p.Window.Grow(-0.001).Holds(ring.Bounds().Min) && p.Window.Grow(-0.001).Holds(ring.Bounds().Max) {
		return []geom.Path{ring}
	}
	border := geom.Rect(p.Window.Min.X, p.Window.Min.Y, p.Window.Max.X, p.Window.Max.Y)
	left := geom.MergeAgainst([]geom.Path{ring}, border)
	return Join(left)
}

// Join chains paths that meet end to end into longer ones, in the order they come.
func Join(ps []geom.Path) []geom.Path {
	var out []geom.Path
	for _, p := range ps {
		if n := len(out); n > 0 && !p.Closed && !out[n-1].Closed && last(out[n-1]).Near(p.V[0].Vec) {
			v := out[n-1].V
			v[len(v)-1].Bulge = p.V[0].Bulge
			out[n-1].V = append(v, p.V[1:]...)
			continue
		}
		q := geom.Path{V: append([]geom.Vertex(nil), p.V...), Closed: p.Closed}
		out = append(out, q)
	}
	if n := len(out); n > 1 && !out[0].Closed && !out[n-1].Closed && last(out[n-1]).Near(out[0].V[0].Vec) {
		v := out[n-1].V
		v[len(v)-1].Bulge = out[0].V[0].Bulge
		out[0].V = append(v, out[0].V[1:]...)
		out = out[:n-1]
	}
	return out
}

func last(p geom.Path) geom.Vec { return p.V[len(p.V)-1].Vec }

// Films returns the lines of a thin sheet as they are drawn: membranes with their thickness exaggerated: a film lies 0.8 mm plotted off the one below
// it, so that the order of the laps reads.
func (p *Picture) Films(c Piece, k float64) []geom.Path {
	if !isFilm(c.Part.Role) || math.Abs(p.View.N.X) < 0.99 {
		return c.Lines
	}
	out := make([]geom.Path, 0, len(c.Lines))
	for _, l := range c.Lines {
		q := geom.Path{V: append([]geom.Vertex(nil), l.V...), Closed: l.Closed}
		for i, v := range q.V {
			q.V[i].Vec = lifted(v.Vec, c.Part.Role, k)
		}
		out = append(out, q)
	}
	return out
}

func isFilm(r detail.Role) bool {
	return r == detail.Barrier || r == detail.Patch || r == detail.Wrap
}

// lifted moves a point of a film outward by the layer it lies in; the run of a cap over a block is lifted
// off the block.
func lifted(v geom.Vec, r detail.Role, k float64) geom.Vec {
	const pitch = 0.8
	if v.X > 4*detail.Film {
		return geom.Vec{X: v.X, Y: v.Y + pitch/2*k}
	}
	n := math.Floor(v.X / detail.Film)
	out := geom.Vec{X: (0.4 + pitch*n) * k, Y: v.Y}
	if r == detail.Wrap {
		out.Y += pitch / 2 * k
	}
	return out
}
