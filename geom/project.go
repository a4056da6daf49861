package geom

import "math"

// Edge is a line to be drawn: one straight segment, one arc, a closed circle, or a curve in chords. Solid is
// the index of the solid it belongs to, or of the line beyond the solids. A hidden edge lies behind something.
type Edge struct {
	Path   Path
	Solid  int
	Hidden bool
}

// ProjectOptions says what of the solids is drawn. The zero value draws everything.
type ProjectOptions struct {
	// Near and Far limit the depth that is drawn: from Near in front of the plane of the view to Far
	// behind it, in millimetres; 0 is no limit. Solids are sliced at the limits. The slice at Near is
	// closed and its outline drawn.
	Near, Far float64

	// Cut slices the solids at the plane of the view, whatever Near says: only what lies behind the
	// plane is drawn. The slices (Solid.Cut) hide what is behind them, but no line is drawn along
	// their outlines: the caller draws those.
	Cut bool

	// Clear reports for the solid with index i that it hides nothing, itself included.
	Clear func(i int) bool

	// Whole reports for the solid with index i that it is drawn whole though Cut or Near slices the
	// others, as bolts are by custom. It is left out when it lies wholly in front of the slice.
	Whole func(i int) bool

	// NoHidden leaves the hidden edges out, which saves most of the work on them.
	NoHidden bool

	// Lines are drawn as wires that hide nothing: axes, lines that trace how parts come together. In the
	// edges they are numbered on from the last solid.
	Lines [][2]Vec3
}

// Project draws solids as seen in v, with hidden lines marked.
//
// Drawn are the corners of every solid, the outlines of its ends, the lines at which round sides turn out
// of sight, and the mouths, ends and sides of bores. An edge that several solids share is drawn once, for
// the first of them; where a visible and a hidden edge coincide the visible one is drawn. An edge right
// behind the outline of a nearer face counts as hidden by it. Pieces shorter than Tol vanish. The edges
// come in order of their starts, bottom first, then left.
//
// Depth is exact for flat faces. Round sides seen from the side hide with a depth that is exact within
// depthTol; ends of round solids seen at a slant are followed by chords within ChordTol. The mouth of a
// bore in a round side is drawn in chords. Where two bores meet inside a solid no line is drawn, and there
// the sides of bores hide in steps a chord wide.
//
// How it is done:
//
//  1. Each solid gives wires (edges, with the depth at both ends) and faces (areas of the drawing, with
//     a depth at every point). A wire of a solid none of whose two faces looks at the viewer is known
//     to be hidden at once.
//
//  2. The faces are filed in a grid over the drawing.
//
//  3. Each wire is compared with the faces filed where it passes. A face hides the stretch of the wire
//     that lies inside its outline and deeper than the face.
//
//  4. What is left over is visible. Stretches that lie on each other are drawn once (overlay), and chords of
//     one curve strung together (chain).
//
//     .-------.            wire w, from the left:
//     | face  |              before the face        visible
//     w ----|- - - -|----          over it, and deeper    hidden
//     |_______|              after it               visible
func Project(v View, solids []Solid, o ProjectOptions) []Edge {
	sc := &scene{view: v, noHidden: o.NoHidden}
	for i, s := range solids {
		sc.add(i, s, o)
	}
	for i, l := range o.Lines {
		b := builder{sc: sc, solid: int32(len(solids) + i), slab: slab{math.Inf(1), math.Inf(-1)}}
		b.line(l[0], l[1], false, false)
	}
	runs := chain(overlay(sc.strokes()))
	edges := make([]Edge, 0, len(runs))
	for _, run := range runs {
		if s := run[0]; s.rank != rankCut {
			edges = append(edges, Edge{runPath(run), int(s.owner), s.rank == rankHidden})
		}
	}
	return edges
}

// The ranks of strokes: the outline of a slice beats a visible edge, and that a hidden one.
const (
	rankCut int32 = iota
	rankVisible
	rankHidden
)

// depthTol is how far in millimetres the depth of a round side may be off where it hides an edge.
const depthTol = 0.05

// scene is everything that takes part in a projection.
type scene struct {
	view     View
	noHidden bool
	wires    []wire
	faces    []face
	slices   []stroke // the outlines of cut solids, not drawn
}

// wire is an edge of a solid as it is drawn, with its depth at both ends. The depth changes evenly
// along a line and not at all along an arc.
type wire struct {
	curve
	d0, d1 float64
	solid  int32
	hidden bool // known to be hidden by its own solid
	bent   bool // a chord of a curve
}

// slab is the range of depth that is drawn of a solid.
type slab struct{ near, far float64 }

// add takes up the solid with index i.
func (sc *scene) add(i int, s Solid, o ProjectOptions) {
	if s.Empty() {
		return
	}
	near, far := math.Inf(1), math.Inf(-1)
	switch {
	case o.Cut:
		near = 0
	case o.Near > 0:
		near = o.Near
	}
	if o.Far > 0 {
		far = -o.Far
	}
	back, front := s.depths(sc.view)
	if !isFinite(back, front) || back >= near-Tol || front < far-Tol {
		return
	}
	b := builder{sc: sc, s: s, solid: int32(i), slab: slab{near, far}}
	b.clear = o.Clear != nil && o.Clear(i)
	switch whole := o.Whole != nil && o.Whole(i); {
	case whole:
		b.near = math.Inf(1)
	case front >= near-Tol:
		b.slice(!o.Cut)
	}
	b.build()
}

// depths returns the depth of the rearmost and of the foremost point of s, taken for the rectangle round
// its profile.
func (s Solid) depths(v View) (back, front float64) {
	back, front = math.Inf(1), math.Inf(-1)
	for _, c := range corners(s.Profile.Bounds()) {
		for _, h := range [2]float64{0, s.Length} {
			_, d := v.To(s.at(c, h))
			back, front = math.Min(back, d), math.Max(front, d)
		}
	}
	return back, front
}

// strokes cuts every wire into visible and hidden stretches.
func (sc *scene) strokes() []stroke {
	out := append(make([]stroke, 0, len(sc.slices)+2*len(sc.wires)), sc.slices...)
	g := newFaceGrid(sc.faces)
	for _, w := range sc.wires {
		l := w.length()
		if l <= Tol {
			continue
		}
		all, slack := spans{{0, 1}}, Tol/l
		hidden := all
		if !w.hidden {
			hidden = g.hidden(&w, slack)
		}
		for _, t := range all.less(hidden, slack) {
			out = append(out, stroke{w.part(t.lo, t.hi), class{rankVisible, w.solid, w.bent}})
		}
		if sc.noHidden {
			continue
		}
		for _, t := range hidden {
			out = append(out, stroke{w.part(t.lo, t.hi), class{rankHidden, w.solid, w.bent}})
		}
	}
	return out
}
