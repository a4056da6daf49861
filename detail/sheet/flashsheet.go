package sheet

import (
	"fmt"
	"math"

	"standclear/detail"
	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// flashingSheet draws what is bent or folded: each piece of metal by its profile and its flat pattern, the
// membranes round a block by their flat patterns, with bends, girth, lengths and laps.
func (w *writer) flashingSheet(s *render.Sheet, l layoutOf) (string, bool) {
	room := w.room(l)
	column1 := []float64{112, 112, 104, 98}[w.tight]
	area := room
	area.Max.X -= column1 + 8
	side := room
	side.Min.X = room.Max.X - column1
	scale, fits := "NTS", false
	scales := [][2]float64{{1, 2}, {2, 4}, {2, 8}, {4, 8}}
	if w.unit() == render.Millimetre {
		scales = [][2]float64{{1, 2}, {2, 5}, {2, 10}, {5, 10}}
	}
	for i, k := range scales {
		scale = w.scale(k[0]).Text
		t := &render.Sheet{}
		if fits = w.shelves(t, area, w.bentViews(k[0], k[1])); fits || i == len(scales)-1 {
			for j, v := range t.Views {
				if j > 0 {
					v.Place = nextPlace(s.Views[j-1], v, s)
				}
				s.Views = append(s.Views, v)
			}
			break
		}
	}
	return scale, balanced(s, side, column1, column1, w.bentTables) && fits
}

// bentViews composes the views: profiles at k, flat patterns at flat.
func (w *writer) bentViews(k, flat float64) []*composer {
	var out []*composer
	for _, p := range w.bent() {
		out = append(out, w.profile(p, k), w.metalBlank(p, flat))
	}
	if len(w.a.Blocks) > 0 {
		out = append(out, w.blankView(w.a.CapBlank(0), flat, "M2 FLAT"), w.blankView(w.a.SideBlank(0), flat, "M3 FLAT, RIGHT HAND"))
	}
	return out
}

// bent lists one part of every mark that is bent from sheet metal or mesh.
func (w *writer) bent() []*detail.Part {
	var out []*detail.Part
	seen := map[string]bool{}
	for _, p := range w.a.Find(detail.Flashing, detail.Screen, detail.Base) {
		if len(p.Bends) > 0 && !seen[p.Mark] {
			seen[p.Mark] = true
			out = append(out, p)
		}
	}
	return out
}

// shelves sets views in rows from the upper left, spread over the width and the height.
func (w *writer) shelves(s *render.Sheet, room geom.Box, views []*composer) bool {
	const gap = 12
	var rows [][]*composer
	wide := math.Inf(1)
	for _, c := range views {
		if need := c.paper().W(); wide+gap+need > room.W() {
			rows, wide = append(rows, nil), need
		} else {
			wide += gap + need
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], c)
	}
	used, widest := 0.0, 0.0
	high := make([]float64, len(rows))
	for i, r := range rows {
		total := -float64(gap)
		for _, c := range r {
			high[i] = math.Max(high[i], c.paper().H())
			total += c.paper().W() + gap
		}
		used, widest = used+high[i], math.Max(widest, total)
	}
	spare := room.H() - used - gap*float64(len(rows)-1)
	between := gap + math.Max(0, math.Min(spare/float64(len(rows)+1), 24))
	y := room.Max.Y - math.Max(0, math.Min(spare/float64(len(rows)+1), 24))/2
	for i, r := range rows {
		x := room.Min.X
		for _, c := range r {
			p := c.paper()
			w.place(s, c, fmt.Sprint(len(s.Views)+1), "BENT SHEET", "see the profile or the lower left corner of the pattern", pt(x-p.Min.X, y-high[i]/2-p.Center().Y))
			x += p.W() + gap + math.Max(0, (room.W()-widest)/float64(max(3, len(r)-1)))
		}
		y -= high[i] + between
	}
	return spare >= 0 && widest <= room.W()
}

// profile cuts a bent part between two blocks, with the outline of what it lies against.
func (w *writer) profile(part *detail.Part, k float64) *composer {
	c := w.composer(k)
	path := part.Bends[0].Path
	box := path.Bounds()
	win := box.Grow(14)
	near := map[detail.Role]bool{detail.Ledger: true, detail.Cladding: true, detail.OuterInsul: true, detail.Sheathing: true}
	at := (part.Bounds().Min.X + part.Bounds().Max.X) / 2
	if part.Role != detail.Screen {
		at = w.cutBetween()
	}
	p := w.once("profile "+part.Mark, func() view.Picture {
		return view.Cut(w.a, view.AcrossWall(at), view.Options{Window: win, Only: func(q *detail.Part) bool { return near[q.Role] }})
	})
	inner := win.Grow(-0.05)
	for _, piece := range p.Pieces {
		for _, ring := range piece.Region {
			for _, q := range geom.ClipPath(ring, geom.Rect(inner.Min.X, inner.Min.Y, inner.Max.X, inner.Max.Y), true) {
				c.put(render.Stroke{Pen: render.Existing, Path: q})
			}
		}
	}
	c.add([]render.Item{render.Stroke{Pen: render.ThinCut, Path: path, Tag: view.TagOf(part, w.a.Spec.Project.System)}}, win)
	w.profileDims(c, path, win)
	w.profileNotes(c, part)
	c.finish()
	c.caption(part.Mark+" PROFILE", w.scale(k).Text)
	return c
}

// profileDims measures the profile: outward along the foot, heights on either side.
func (w *writer) profileDims(c *composer, path geom.Path, win geom.Box) {
	var out []tick
	for _, v := range path.V {
		out = append(out, tick{v.X, win.Min.Y})
	}
	c.dims(bottom, out)
	first := path.V[0]
	c.dims(left, []tick{{path.V[1].Y, win.Min.X}, {first.Y, win.Min.X}})
	last := path.V[len(path.V)-1]
	c.dims(right, []tick{{last.Y, win.Max.X}, {path.V[len(path.V)-2].Y, win.Max.X}, {path.V[2].Y, win.Max.X}})
}

// profileNotes number the bends.
func (w *writer) profileNotes(c *composer, part *detail.Part) {
	_, folds := part.Unfold()
	n := 0
	for i, v := range part.Bends[0].Path.V {
		if i == 0 || i == len(part.Bends[0].Path.V)-1 || n >= len(folds) {
			continue
		}
		s := right
		if v.X < c.object.Center().X {
			s = left
		}
		c.call(s, v.Vec, render.Arrow, fmt.Sprintf("BEND %d: %.0f°", n+1, folds[n].Included))
		n++
	}
}

// metalBlank is a bent metal part laid flat: F1 from its left end to past its second notch, others a short piece.
func (w *writer) metalBlank(part *detail.Part, k float64) *composer {
	if part.Role == detail.Flashing {
		x1 := w.blankEnd()
		b := w.a.FlashingBlank(-1000, x1)
		return w.blankView(b, k, "F1 FLAT, LEFT END")
	}
	return w.blankView(plainBlank(part), k, part.Mark+" FLAT")
}

// plainBlank is a short piece of a part that runs on.
func plainBlank(part *detail.Part) detail.Blank {
	const shown = 200
	legs, folds := part.Unfold()
	girth := sum(legs)
	b := detail.Blank{Outline: geom.Rect(0, 0, shown, girth)}
	for _, f := range folds {
		b.Bends = append(b.Bends, detail.BendLine{Path: geom.Polyline(geom.Vec{Y: girth - f.At}, geom.Vec{X: shown, Y: girth - f.At}), Fold: f})
	}
	return b
}

func sum(v []float64) float64 {
	t := 0.0
	for _, x := range v {
		t += x
	}
	return t
}

// blankEnd is where the pattern of F1 breaks off: in the leg past its second notch.
func (w *writer) blankEnd() float64 {
	long := w.a.Spec.Ledger.Length.MM()
	runs := detail.FlashingLegs(w.a.Find(detail.Flashing)[0])
	if len(runs) > 1 {
		return math.Min(long-1, runs[1][0]+math.Min(60, (runs[1][1]-runs[1][0])/2))
	}
	return math.Min(long-1, 400)
}
