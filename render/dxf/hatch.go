package dxf

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

// fill draws a region as a hatch: solid, or with a pattern whose lines stand in the file turned
// and at their size in the drawing, so that it looks the same in every program.
func (c *canvas) fill(f render.Fill) error {
	if f.White {
		return nil
	}
	rings := c.rings(f.Region)
	if len(rings) == 0 {
		c.into.drop("fill of no area on " + c.layerOf(f.Pen))
		return nil
	}
	e := &entity{kind: "HATCH", order: solids, remember: c.tagged(f.Tag)}
	title, solid, style := "SOLID", 1, 1 // style of a pattern: 1 predefined, 2 our own
	if f.Pattern != nil {
		e.order, title, solid, style = patterns, name(f.Pattern.Name), 0, 2
	}
	e.data = tags{}.class("AcDbHatch").point(10, geom.Vec{}).zeros(210, 220).real(230, 1).
		str(2, title).int(70, solid).int(71, 0)
	e.boundary(rings)
	e.data = e.data.int(75, 0).int(76, style) // 75: islands stay open, islands in islands are filled
	if f.Pattern != nil {
		e.data = append(e.data, c.pattern(f)...)
	}
	e.data = e.data.int(98, 0)
	e.same = title + " " + e.same
	return c.put(e, f.Pen)
}

// rings returns the boundaries in the file that have an area.
func (c *canvas) rings(r geom.Region) []geom.Path {
	var out []geom.Path
	for _, p := range r {
		p.Closed = true
		if p = c.path(p); len(p.V) > 1 && math.Abs(area(p)) > 1e-9 {
			out = append(out, p)
		}
	}
	return out
}

// boundary appends the rings of a hatch to its record.
func (e *entity) boundary(rings []geom.Path) {
	e.data = e.data.int(91, len(rings))
	e.box = geom.EmptyBox()
	for _, p := range rings {
		const outer, island = 1 + 2, 16 + 2 // external, outermost island; both as polylines
		kind, bulged := outer, 1
		if area(p) < 0 {
			kind = island
		}
		if straight(p) {
			bulged = 0
		}
		e.data = e.data.int(92, kind).int(72, bulged).int(73, 1).int(93, len(p.V))
		for _, v := range p.V {
			e.data = e.data.xy(10, v.Vec)
			if bulged == 1 {
				e.data = e.data.real(42, v.Bulge)
			}
			e.same += spot(v.Vec, geom.Vec{X: v.Bulge})
		}
		e.data = e.data.int(97, 0)
		e.box = e.box.Union(boxOf(p))
	}
}

// pattern returns the line families of a hatch. The step from one line to the next is the spacing
// across and the shift along:
//
//	      a  __----   step = spacing (-sin a, cos a) + shift (cos a, sin a)
//	__----__----
//	__----
func (c *canvas) pattern(f render.Fill) tags {
	t := tags{}.real(52, wrap(f.Turn)).real(41, c.k).int(77, 0).int(78, len(f.Pattern.Lines))
	size := c.k * c.per // of a plotted millimetre in the file
	for _, l := range f.Pattern.Lines {
		a := (l.Angle + f.Turn) * math.Pi / 180
		along := geom.Polar(geom.Vec{}, 1, a)
		step := along.Perp().Mul(l.Spacing * size).Add(along.Mul(l.Shift * size))
		x := geom.Polar(geom.Vec{}, c.k, f.Turn*math.Pi/180)
		base := f.Origin.Add(x.Mul(l.Base.X)).Add(x.Perp().Mul(l.Base.Y))
		t = t.real(53, wrap(l.Angle+f.Turn)).pair(43, c.at(base)).pair(45, step).int(79, len(l.Dashes))
		for _, d := range l.Dashes {
			t = t.real(49, d*size)
		}
	}
	return t
}
