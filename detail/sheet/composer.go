package sheet

import (
	"standclear/detail/unit"
	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// side of a view.
type side int

const (
	left side = iota
	right
	top
	bottom
)

// composer builds one view: linework first, then dimension chains outward from it, then columns of
// notes where the chains leave room. Registered things are placed by finish; nothing is placed by
// hand. Points are model millimetres; sizes are plotted millimetres.
type composer struct {
	sys       unit.System
	k         float64 // model per plotted millimetre
	st        render.DimStyle
	items     []render.Item
	object    geom.Box // model: the linework
	chains    [4][]chain
	notes     [2][]note // left, right
	levels    []note    // levels on the right, beside the chains
	tags      []tag     // words over the corners of the object
	blocked   [2][]span // plotted heights taken by chains on that side
	extent    geom.Box  // model: everything
	noteWidth float64   // plotted, widest line of a note
	ruled     bool      // leaders at one angle
	clear     bool      // ruled notes stand beside the object, not in its white parts
	keys      bool      // of keynotes in place of words; the words stand in the legend
	split     float64   // model height above which ruled leaders run up, below it down
	legend    []keyed
}

// composer starts a view at k model millimetres per plotted millimetre.
func (w *writer) composer(k float64) *composer {
	sys := w.a.Spec.Project.System
	u := render.Inch
	if sys == unit.SI {
		u = render.Millimetre
	}
	return &composer{sys: sys, k: k, st: u.Style(), object: geom.EmptyBox(), extent: geom.EmptyBox(), noteWidth: []float64{58, 58, 50, 42}[w.tight]}
}

// add puts linework into the view and grows the object by box, which may be smaller than what is
// drawn (break lines, textures).
func (c *composer) add(items []render.Item, box geom.Box) {
	c.items = append(c.items, items...)
	c.object = c.object.Union(box)
}

func (c *composer) put(it ...render.Item) { c.items = append(c.items, it...) }

// mm converts plotted millimetres to model millimetres.
func (c *composer) mm(v float64) float64 { return v * c.k }

func (c *composer) grow(pts ...geom.Vec) {
	for _, p := range pts {
		c.extent = c.extent.Include(p)
	}
}

// text adds one block of text and accounts for its room.
func (c *composer) text(pen render.Pen, at geom.Vec, h float64, al render.Align, rot float64, lines ...string) {
	c.put(render.Text{Pen: pen, At: at, Height: h, Align: al, Rot: rot, Lines: lines})
	b := textBox(at, h, al, rot, lines, c.k)
	c.grow(b.Min, b.Max)
}

// textBox is the room a text takes, in the space of at, at k space units per plotted millimetre.
func textBox(at geom.Vec, h float64, al render.Align, rot float64, lines []string, k float64) geom.Box {
	return letterBox(at, h, al, rot, lines, k, false)
}

// letterBox is the same for bold letters too.
func letterBox(at geom.Vec, h float64, al render.Align, rot float64, lines []string, k float64, bold bool) geom.Box {
	w := 0.0
	for _, l := range lines {
		w = max(w, font.Width(l, h, bold))
	}
	hh := h + float64(len(lines)-1)*h*render.LinePitch
	col, row := (int(al)-1)%3, (int(al)-1)/3
	x0 := []float64{0, -w / 2, -w}[col]
	y0 := []float64{-hh, -hh / 2, 0}[row]
	if rot == 90 {
		return geom.BoxOf(at.Add(geom.Vec{X: -(y0 + hh), Y: x0}.Mul(k)), at.Add(geom.Vec{X: -y0, Y: x0 + w}.Mul(k)))
	}
	return geom.BoxOf(at.Add(geom.Vec{X: x0, Y: y0}.Mul(k)), at.Add(geom.Vec{X: x0 + w, Y: y0 + hh}.Mul(k)))
}

// number prints a length as the dimensions of the sheet do.
func (c *composer) number(mm float64) string { return number(c.sys)(mm) }

// number returns the dimension text of a system: feet and inches to the sixteenth, or millimetres
// to the half.
func number(sys unit.System) func(float64) string {
	return func(mm float64) string {
		if sys == unit.SI {
			return unit.Length(mm).Metric(1)
		}
		return unit.Length(mm).FeetInches(unit.Sixteenth)
	}
}

// step is what running positions are rounded to, so that printed chains add up.
func step(sys unit.System) float64 {
	if sys == unit.SI {
		return 0.5
	}
	return 25.4 / 16
}

// finish places chains, then notes, and closes the extent.
func (c *composer) finish() {
	c.extent = c.extent.Union(c.object)
	for s := left; s <= bottom; s++ {
		c.placeChains(s)
	}
	c.placeLevels()
	for s := left; s <= right; s++ {
		if c.ruled && c.levelsOn(s) < 2 {
			c.placeLadder(s)
		} else {
			c.placeNotes(s)
		}
	}
	for _, t := range c.tags {
		c.placeTag(t)
	}
}
