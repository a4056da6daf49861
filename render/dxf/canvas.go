package dxf

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// canvas draws items of the sheet into one block or space.
type canvas struct {
	*document
	sheet *render.Sheet
	into  *block
	frame
	figure  *figure // inside a symbol
	byBlock bool    // inside the picture of a dimension
}

// item draws one item. Its kind is known: inspect has seen it.
func (c *canvas) item(it render.Item) error {
	switch it := it.(type) {
	case render.Stroke:
		return c.stroke(it)
	case render.Fill:
		return c.fill(it)
	case render.Text:
		return c.text(it)
	case render.Dim:
		return c.dim(it)
	case render.Leader:
		return c.leader(it)
	case render.Insert:
		return c.insert(it)
	}
	return nil
}

// put adds an entity drawn with the pen.
func (c *canvas) put(e *entity, p render.Pen) error {
	if !e.data.sound() {
		return errors.New("a number is too large")
	}
	remembered := 0
	for _, s := range e.remember {
		remembered += len(s)
	}
	if remembered > maxRemember {
		return fmt.Errorf("what it should remember is longer than %d bytes", maxRemember)
	}
	e.layer, e.byBlock = c.layerOf(p), c.byBlock
	if def := p.Def(); !def.NoPlot {
		e.weight = def.Weight
	}
	if e.same != "" && e.kind != "LINE" {
		e.same = e.kind + " " + e.layer + " " + e.same
	}
	c.into.items = append(c.into.items, e)
	return nil
}

// layerOf returns the layer of the pen; in a symbol that is layer 0, which takes on the layer of
// the insert, wherever that comes to the same.
func (c *canvas) layerOf(p render.Pen) string {
	if c.figure != nil && !c.figure.mixed && c.figure.pen == p {
		return "0"
	}
	return c.layer(c.sheet, p)
}

// strokeOrder is the place of a pen's lines in the order of drawing.
func strokeOrder(p render.Pen) order {
	switch p {
	case render.Pattern, render.Insulation:
		return patterns
	case render.Hidden, render.Centre, render.Phantom:
		return dashed
	case render.Visible, render.Fine, render.Existing, render.HeatEdge, render.Grid, render.Border, render.TitleText, render.NoPlot:
		return thin
	}
	return outlines
}

func (c *canvas) stroke(s render.Stroke) error {
	p := c.path(s.Path)
	e := shape(p)
	if e == nil {
		c.into.drop("stroke of no length on " + c.layerOf(s.Pen))
		return nil
	}
	e.order, e.remember, e.box = strokeOrder(s.Pen), c.tagged(s.Tag), boxOf(p)
	return c.put(e, s.Pen)
}

// shape returns the simplest entity that is the path: a line, an arc, a circle or a chain; nil
// when there is nothing to draw.
func shape(p geom.Path) *entity {
	switch {
	case len(p.V) < 2:
		return nil
	case len(p.V) == 2 && straight(p): // there and, if closed, back again
		return line(p.V[0].Vec, p.V[1].Vec)
	case len(p.V) == 2 && p.Closed:
		if e := circle(p); e != nil {
			return e
		}
	case len(p.V) == 2:
		if r := arcOf(p.V[0], p.V[1].Vec); r.r < farArc {
			return arcEntity(r)
		}
	}
	return chain(p)
}

func line(a, b geom.Vec) *entity {
	return &entity{kind: "LINE", same: edge(a, b), data: make(tags, 0, 7).class("AcDbLine").point(10, a).point(11, b)}
}

func arcEntity(r arc) *entity {
	from, to := degrees(r.a0), degrees(r.a1)
	t := tags{}.class("AcDbCircle").point(10, r.c).real(40, r.r).class("AcDbArc").real(50, from).real(51, to)
	return &entity{kind: "ARC", data: t, same: spot(r.c, geom.Vec{X: r.r}, geom.Vec{X: from, Y: to})}
}

// circle returns the circle that two arcs from end to end make, nil when they make another shape.
func circle(p geom.Path) *entity {
	if d := p.V[0].Bulge*p.V[1].Bulge - 1; d < -1e-8 || d > 1e-8 {
		return nil
	}
	r := arcOf(p.V[0], p.V[1].Vec)
	t := tags{}.class("AcDbCircle").point(10, r.c).real(40, r.r)
	return &entity{kind: "CIRCLE", data: t, same: spot(r.c, geom.Vec{X: r.r})}
}

// chain returns a polyline. Its first vertex is not repeated; a bulge belongs to the segment that
// starts at its vertex.
func chain(p geom.Path) *entity {
	e := &entity{kind: "LWPOLYLINE"}
	closed := 0
	if p.Closed {
		closed = 1
	}
	e.data = make(tags, 0, 4+3*len(p.V)).class("AcDbPolyline").int(90, len(p.V)).int(70, closed).real(43, 0)
	for i, v := range p.V {
		e.data = e.data.xy(10, v.Vec)
		if v.Bulge != 0 && (p.Closed || i < len(p.V)-1) {
			e.data = e.data.real(42, v.Bulge)
		}
	}
	all := make([]string, 0, len(p.V))
	pieces(p, func(a, b geom.Vertex) {
		n := piece(a, b.Vec)
		all = append(all, n)
		if a.Bulge == 0 {
			e.edges = append(e.edges, straightAlong+n)
		}
	})
	slices.Sort(all)
	e.same = strings.Join(all, "")
	e.island = p.Closed && area(p) < 0
	return e
}
