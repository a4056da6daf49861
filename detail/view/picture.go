// Package view cuts and projects an assembly and draws what comes out: outlines on pens, textures
// by material, membranes as lines. Every picture is taken from the same parts.
//
//	p := view.Cut(a, view.AcrossWall(x), view.Options{Window: w})
//	items := p.Draw(4) // at 1:4
package view

import (
	"sync"

	"standclear/detail"
	"standclear/geom"
	"standclear/render"
)

// AcrossWall is the vertical section at x: inside to the left, outside to the right, seen from the
// left end of the ledger. View coordinates are (y, z).
func AcrossWall(x float64) geom.View {
	return geom.View{O: geom.Vec3{X: x}, U: geom.Vec3{Y: 1}, V: geom.Vec3{Z: 1}, N: geom.Vec3{X: -1}}
}

// FromOutside is the elevation seen from in front. View coordinates are (x, z).
func FromOutside(y float64) geom.View {
	return geom.View{O: geom.Vec3{Y: y}, U: geom.Vec3{X: 1}, V: geom.Vec3{Z: 1}, N: geom.Vec3{Y: 1}}
}

// FromAbove is the plan cut at z, looking down, inside at the top. View coordinates are (x, -y).
func FromAbove(z float64) geom.View {
	return geom.View{O: geom.Vec3{Z: z}, U: geom.Vec3{X: 1}, V: geom.Vec3{Y: -1}, N: geom.Vec3{Z: 1}}
}

// FromLeft is the side view from the left end, without a cut. View coordinates are (y, z).
func FromLeft(x float64) geom.View { return AcrossWall(x) }

// Options says what a picture shows.
type Options struct {
	Window geom.Box                // in view coordinates; everything outside is left off
	Depth  float64                 // how far beyond the cut things are seen; 0 is without limit
	Leave  map[detail.Role]bool    // roles left out
	Dashed map[detail.Role]bool    // roles whose hidden edges are drawn
	Behind map[detail.Role]bool    // roles drawn dashed wherever they are, as standing behind the wall
	Ghost  map[detail.Role]bool    // roles drawn transparent, as phantom outlines
	Above  map[detail.Role]bool    // roles drawn dashed where they stand before the cut plane
	Only   func(*detail.Part) bool // nil shows all
	Bored  bool                    // draw the holes too
}

// Piece is a part where the plane cuts it.
type Piece struct {
	Part   *detail.Part
	Whole  geom.Region // before the fasteners that run through it are taken out
	Region geom.Region
	Lines  []geom.Path // what a thin sheet shows instead of a region
}

// Edge is a line of a part beyond the cut, or of a fastener shown whole.
type Edge struct {
	Part   *detail.Part
	Path   geom.Path
	Hidden bool
	Ghost  bool
	Whole  bool // of a fastener lying in the plane, drawn over the cut
}

// Picture is one view of an assembly.
type Picture struct {
	View   geom.View
	Window geom.Box
	Pieces []Piece
	Edges  []Edge
	shadow geom.Region // of the fasteners shown whole
	drawn  *drawn      // what is the same at every scale, once it was drawn
}

// drawn are the strokes of a picture beside its textures and films.
type drawn struct {
	once                  sync.Once
	seen, outlines, whole []render.Item
}

// wholeRoles are never cut lengthwise (drafting convention: fasteners are shown whole).
var wholeRoles = map[detail.Role]bool{
	detail.Bolt: true, detail.Nut: true, detail.Washer: true, detail.TensionRod: true, detail.PlyScrew: true,
}

func (o Options) shows(p *detail.Part) bool {
	return !o.Leave[p.Role] && (o.Only == nil || o.Only(p))
}

// isZone reports whether the part is a place to keep off and not a body: it is never cut.
func isZone(p *detail.Part) bool { return p.Role == detail.Obstacle || p.Role == detail.Outside }

// solids returns what of the part is drawn: with its holes or without.
func (o Options) solids(p *detail.Part) []geom.Solid {
	if o.Bored {
		return p.Bored()
	}
	return p.Solids
}

// clipPaths keeps what lies in the window.
func clipPaths(ps []geom.Path, w geom.Box) []geom.Path {
	r := geom.Rect(w.Min.X, w.Min.Y, w.Max.X, w.Max.Y)
	var out []geom.Path
	for _, p := range ps {
		b := p.Bounds()
		if w.Holds(b.Min) && w.Holds(b.Max) {
			out = append(out, p)
			continue
		}
		if b.Min.X > w.Max.X || b.Max.X < w.Min.X || b.Min.Y > w.Max.Y || b.Max.Y < w.Min.Y {
			continue
		}
		out = append(out, geom.ClipPath(p, r, true)...)
	}
	return out
}

// Box returns the bounds of everything the picture shows.
func (p *Picture) Box() geom.Box {
	b := geom.EmptyBox()
	for _, c := range p.Pieces {
		b = b.Union(c.Whole.Bounds())
	}
	for _, e := range p.Edges {
		b = b.Union(e.Path.Bounds())
	}
	return b
}
