package sheet

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"standclear/detail/check/thermal"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/geom/contour"
	"standclear/render"
	"standclear/render/font"
)

// heatCut is one section with the temperatures in it, in model millimetres: the same at every scale.
type heatCut struct {
	picture view.Picture
	edges   []render.Item
	window  geom.Box
	levels  []float64 // printed: the isotherms, and the dew point among them
	dewed   float64   // the dew point of the room air, where it is known
	spots   []placed
	contour.Map
}

// placed is a named place where a section shows it.
type placed struct {
	letter string
	at     geom.Vec
}

// heatThin is how far a line of the temperature may leave the solved one, mm: a tenth of a line's width
// on paper at 1:4.
const heatThin = 0.1

// heatCuts returns the section at the block and the one between blocks for the present width of view.
func (w *writer) heatCuts() [2]*heatCut {
	if c, ok := w.heatSeen[w.tight]; ok {
		return c
	}
	c := [2]*heatCut{w.heatCut(w.heat.AtBlock), w.heatCut(w.heat.Between)}
	for i, s := range w.heat.Spots {
		n := 0
		if math.Abs(s.At[0]-w.heat.Between.X) < math.Abs(s.At[0]-w.heat.AtBlock.X) {
			n = 1
		}
		p := placed{letter(i), geom.Vec{X: s.At[1], Y: s.At[2]}}
		if c[n].window.Holds(p.at) {
			c[n].spots = append(c[n].spots, p)
		}
	}
	if w.heatSeen == nil {
		w.heatSeen = map[int][2]*heatCut{}
	}
	w.heatSeen[w.tight] = c
	return c
}

// letter names place i: A to Z without I and O, then A2 and on.
func letter(i int) string {
	const all = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	name := all[i%len(all) : i%len(all)+1]
	if i >= len(all) {
		name += fmt.Sprint(i/len(all) + 1)
	}
	return name
}

// heatCut cuts the assembly in the plane of a field and finds the bands and lines of the field in it.
func (w *writer) heatCut(f thermal.Field) *heatCut {
	o := w.sectionOptions()
	o.Window = w.heatWindow(f)
	c := &heatCut{picture: view.Cut(w.a, view.AcrossWall(f.X), o), window: o.Window}
	c.edges = c.picture.Outline(render.HeatEdge)
	g := contour.Grid{X: f.Y, Y: f.Z}
	for _, row := range f.F {
		v := make([]float64, len(row))
		for i := range row {
			v[i] = row[i]
			if row[i] < 0 {
				v[i] = math.NaN()
			}
		}
		g.V = append(g.V, v)
	}
	h := w.heatScale()
	levels := h.levels()
	if dew, ok := w.roomDew(); ok && h.stated {
		c.dewed = h.degrees(dew)
		levels = append(levels, c.dewed)
	}
	slices.Sort(levels)
	c.levels = slices.Compact(levels)
	factors := make([]float64, len(c.levels))
	for i, v := range c.levels {
		factors[i] = h.factor(v)
	}
	c.Map = contour.Of(g, c.window, factors, heatThin)
	return c
}

// heatWindow is what a section of temperatures shows: the wall with little of the floor and the deck, as
// high as there is material in the solution. A narrow sheet takes from the sides first.
func (w *writer) heatWindow(f thermal.Field) geom.Box {
	if len(f.F) == 0 {
		return w.sectionWindow()
	}
	side := []float64{390, 220, 130, 100}[w.tight]
	reach := []float64{580, 580, 580, 300}[w.tight]
	a := w.a.Frame
	lowest := math.Min(math.Min(a.PlateBottom, a.LedgerBottom), a.BlockBottom)
	top := len(f.F)
	for top > 1 && !slices.ContainsFunc(f.F[top-1], func(v float64) bool { return v >= 0 }) {
		top--
	}
	high := f.Z[top]
	if top < len(f.F) {
		high += 60 // a door stands where the wall ends: a little of the room over the floor
	}
	return geom.Box{
		Min: geom.Vec{X: math.Min(a.FinishIn, a.BackingIn) - 0.8*side, Y: math.Max(lowest-0.9*reach, f.Z[0])},
		Max: geom.Vec{X: a.LedgerFront + side, Y: math.Min(1.1*reach, high)},
	}
}

// heatView composes one section: grounds, outlines, break lines, levels. Lines and names over them come
// with heatNames.
func (w *writer) heatView(cut *heatCut, k float64) *composer {
	c := w.composer(k)
	isotherms := w.heatScale().levels()
	for i, b := range cut.Bands {
		n := 0 // isotherms below: the dew point parts a band, not its ground
		for n < len(isotherms) && i > 0 && isotherms[n] <= cut.levels[i-1] {
			n++
		}
		if !b.Empty() {
			c.put(render.Fill{Pen: ground(n, len(isotherms)+1), Region: b})
		}
	}
	c.add(cut.edges, cut.window)
	c.breaks(cut.picture)
	w.heatRow(c, cut, top)
	w.heatRow(c, cut, bottom)
	w.levels(c)
	c.finish()
	return c
}

// heatRun is the lines of one temperature.
type heatRun struct {
	pen   render.Pen
	name  string
	paths []geom.Path
}

// heatRuns lists the isotherms and the dew-point line, coldest first.
func (w *writer) heatRuns(cut *heatCut) []heatRun {
	h := w.heatScale()
	isotherms := h.levels()
	var runs []heatRun
	for i, v := range cut.levels {
		if slices.Contains(isotherms, v) {
			runs = append(runs, heatRun{render.Isotherm, h.text(v), cut.Lines[i]})
		}
		if _, ok := w.roomDew(); ok && h.stated && v == cut.dewed {
			runs = append(runs, heatRun{render.DewPoint, "DEW " + h.tenths(v), cut.Lines[i]})
		}
	}
	return runs
}

// heatNames draws isotherms, the dew-point line and the named places. A line that runs out of the picture
// has its name there; any other in itself, opened for it. Names keep clear of each other and of every line.
func (w *writer) heatNames(c *composer, cut *heatCut) {
	p := newPlacer(c.k, cut.window)
	for _, e := range cut.edges {
		p.keep(e.(render.Stroke).Path)
	}
	runs := w.heatRuns(cut)
	for _, r := range runs {
		for _, l := range r.paths {
			p.keep(l)
		}
	}
	for _, s := range cut.spots {
		p.block(geom.BoxOf(s.at).Grow(c.mm(2)))
	}
	for _, s := range cut.spots {
		w.spotMark(c, p, s)
	}
	for _, r := range runs {
		for _, l := range r.paths {
			rest := []geom.Path{l}
			_, up := cut.leaves(l, top)
			if _, down := cut.leaves(l, bottom); !up && !down {
				rest = w.lineName(c, p, l, r.name)
			}
			for _, q := range rest {
				c.put(render.Stroke{Pen: r.pen, Path: q})
			}
		}
	}
}

// leaves returns where a line runs out of the picture at its top or its foot.
func (cut *heatCut) leaves(l geom.Path, at side) (x float64, ok bool) {
	if l.Closed {
		return 0, false
	}
	for _, v := range []geom.Vertex{l.V[0], l.V[len(l.V)-1]} {
		if at == top && v.Y > cut.window.Max.Y-0.01 || at == bottom && v.Y < cut.window.Min.Y+0.01 {
			return v.X, true
		}
	}
	return 0, false
}

// heatRow names the lines that run out at one side, in a row beyond it; the dew point stands beyond the row.
// At the foot there is a row only where a line is not named at the top.
func (w *writer) heatRow(c *composer, cut *heatCut, at side) {
	var slots []slot
	var runs []heatRun
	named := at == bottom
	for _, r := range w.heatRuns(cut) {
		for _, l := range r.paths {
			x, ok := cut.leaves(l, at)
			if !ok {
				continue
			}
			half := 0.8
			if r.pen == render.Isotherm {
				half += font.Width(r.name, lineText, false) / 2
			}
			slots, runs = append(slots, slot{want: x / c.k, before: half, after: half}), append(runs, r)
			_, up := cut.leaves(l, top)
			named = named && up
		}
	}
	if named {
		return
	}
	sort.Stable(byPlace{slots, runs})
	spread(slots)
	base, out, align := cut.window.Max.Y, c.mm(1), render.BottomCentre
	if at == bottom {
		base, out, align = cut.window.Min.Y, c.mm(-1), render.TopCentre
	} else {
		w.heatSides(c, cut.window, slots)
	}
	for i, s := range slots {
		end := geom.Vec{X: s.at * c.k, Y: base + 4.8*out}
		tie := geom.Polyline(geom.Vec{X: s.want * c.k, Y: base + 2*out}, end)
		if runs[i].pen == render.DewPoint {
			end.Y += 4 * out
			tie.V = append(tie.V, geom.Vertex{Vec: end})
		}
		c.put(render.Stroke{Pen: render.Note, Path: tie})
		c.text(render.Note, end.Add(geom.Vec{Y: 0.7 * out}), lineText, align, 0, runs[i].name)
	}
}

// heatSides writes which side is which, beside the row of names, or over it where the row reaches too far.
func (w *writer) heatSides(c *composer, window geom.Box, row []slot) {
	up := 5.5
	for _, s := range row {
		if s.at-s.before < window.Min.X/c.k+24 || s.at+s.after > window.Max.X/c.k-28 {
			up = 13
		}
	}
	y := window.Max.Y + c.mm(up)
	c.put(
		render.Text{Pen: render.Note, At: geom.Vec{X: window.Min.X, Y: y}, Height: 3.5, Align: render.BottomLeft, Lines: []string{"INSIDE"}, Bold: true},
		render.Text{Pen: render.Note, At: geom.Vec{X: window.Max.X, Y: y}, Height: 3.5, Align: render.BottomRight, Lines: []string{"OUTSIDE"}, Bold: true},
	)
	c.grow(geom.Vec{X: window.Min.X, Y: y + c.mm(4)})
}

// byPlace orders slots and what stands in them together.
type byPlace struct {
	s    []slot
	runs []heatRun
}

func (b byPlace) Len() int           { return len(b.s) }
func (b byPlace) Less(i, j int) bool { return b.s[i].want < b.s[j].want }
func (b byPlace) Swap(i, j int) {
	b.s[i], b.s[j] = b.s[j], b.s[i]
	b.runs[i], b.runs[j] = b.runs[j], b.runs[i]
}

// spotMark draws the cross of a place and its letter in the nearest clear room, tied to it when far.
func (w *writer) spotMark(c *composer, p *placer, s placed) {
	arm := c.mm(1.6)
	c.put(
		render.Stroke{Pen: render.Mark, Path: geom.Polyline(s.at.Sub(geom.Vec{X: arm}), s.at.Add(geom.Vec{X: arm}))},
		render.Stroke{Pen: render.Mark, Path: geom.Polyline(s.at.Sub(geom.Vec{Y: arm}), s.at.Add(geom.Vec{Y: arm}))},
	)
	at, ok := p.about(s.at, s.letter, spotText)
	if !ok {
		at = s.at.Add(geom.Vec{X: c.mm(4), Y: c.mm(4)})
	}
	away := at.Sub(s.at)
	if reach := away.Len() - c.mm(3); reach > c.mm(2.5) {
		u := away.Unit()
		tie := geom.Polyline(s.at.Add(u.Mul(c.mm(0.8))), s.at.Add(u.Mul(reach)))
		c.put(render.Stroke{Pen: render.Note, Path: tie})
		p.keep(tie)
	}
	c.put(render.Text{Pen: render.Mark, At: at, Height: spotText, Align: render.MiddleCentre, Lines: []string{s.letter}, Bold: true})
}

const (
	spotText = 3.0 // plotted height of the letters of places
	lineText = 2.2 // and of the names of isotherms
)

// lineName writes the name of an isotherm into it where there is room, and returns what is left of the
// line. A line too short to be followed has no name.
func (w *writer) lineName(c *composer, p *placer, l geom.Path, name string) []geom.Path {
	if l.Length() < c.mm(14) {
		return []geom.Path{l}
	}
	at, rot, ok := p.along(l, name, lineText)
	if !ok {
		return []geom.Path{l}
	}
	c.put(render.Text{Pen: render.Mark, At: at, Height: lineText, Align: render.MiddleCentre, Rot: rot, Lines: []string{name}})
	b := textBox(at, lineText, render.MiddleCentre, rot, []string{name}, c.k).Grow(c.mm(0.5))
	return geom.ClipPath(l, geom.Rect(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y), false)
}
