package sheet

import (
	"math"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// layerName is the mark and name of the layer with the role.
func (w *writer) layerName(role string) string {
	for i, l := range w.a.Spec.Wall.Layers {
		if l.Role == role {
			return detail.LayerMark(i) + " " + l.Name
		}
	}
	return ""
}

// near picks points at about height z.
func near(z float64) func(geom.Vec) bool {
	return func(v geom.Vec) bool { return math.Abs(v.Y-z) < 3 }
}

// atLedger picks points at a share of the ledger's height; for a ruled leader, most of the height.
func (w *writer) atLedger(c *composer, share float64) func(geom.Vec) bool {
	f := w.a.Frame
	high := f.LedgerTop - f.LedgerBottom
	if !c.ruled {
		return near(f.LedgerBottom + share*high)
	}
	return func(v geom.Vec) bool { return v.Y > f.LedgerBottom+0.15*high && v.Y < f.LedgerBottom+0.9*high }
}

// filmNote points at a membrane as it is drawn, at the first of its points that match picks.
func (w *writer) filmNote(c *composer, p view.Picture, role detail.Role, match func(geom.Vec) bool, words string) {
	w.filmNoteOn(c, right, p, role, match, words)
}

// filmNoteOn does so on a given side; a ruled leader may end at any point that match picks.
func (w *writer) filmNoteOn(c *composer, s side, p view.Picture, role detail.Role, match func(geom.Vec) bool, words string) {
	var points []geom.Vec
	for _, q := range p.Pieces {
		if q.Part.Role != role {
			continue
		}
		for _, l := range p.Films(q, c.k) {
			points = append(points, pointsOn(l, match)...)
		}
	}
	if len(points) > 0 {
		const most = 12
		few := points[:1]
		for i := most; i < len(points); i += max(1, len(points)/most) {
			few = append(few, points[i])
		}
		c.callOn(s, few, render.Arrow, caps(words))
	}
}

// pointsOn walks a path by hundredths of each side to the points that match picks.
func pointsOn(l geom.Path, match func(geom.Vec) bool) []geom.Vec {
	var out []geom.Vec
	for i := 1; i < len(l.V); i++ {
		for k := range 101 {
			if v := l.V[i-1].Lerp(l.V[i].Vec, float64(k)/100); match(v) {
				out = append(out, v)
			}
		}
	}
	return out
}
