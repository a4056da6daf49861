package dxf

import (
	"standclear/geom"
	"standclear/render"
)

// leader draws a leader from tip to landing; its text is a Text of its own beside it. The arrow is
// the format's own, at the size of the dimension style; a dot is a solid hatch at the tip.
func (c *canvas) leader(l render.Leader) error {
	p := c.path(geom.Path{V: geom.Polyline(l.Points...).V})
	if p.Closed { // back at its tip: the repeated point is wanted
		p.V = append(p.V, p.V[0])
	}
	if len(p.V) < 2 {
		c.into.drop("leader of no length on " + c.layerOf(l.Pen))
		return nil
	}
	arrow := 0
	if l.End == render.Arrow {
		arrow = 1
	}
	const noText = 3 // nothing is tied to it
	e := &entity{kind: "LEADER", order: leaders, box: boxOf(p)}
	e.data = tags{}.class("AcDbLeader").str(3, c.dimStyle(c.k)).int(71, arrow).int(72, 0).int(73, noText).
		int(74, 0).int(75, 0).real(40, c.plotted(c.unit.Style().Text)).real(41, 0).int(76, len(p.V))
	for _, v := range p.V {
		e.data = e.data.point(10, v.Vec)
		e.same += spot(v.Vec)
	}
	if err := c.put(e, l.Pen); err != nil || l.End != render.Dot {
		return err
	}
	_, tip := l.Picture(c.unit.Style(), c.k)
	return c.dot(l.Pen, tip)
}

// dot fills the tip of a leader, over what the leader points at.
func (c *canvas) dot(p render.Pen, tip geom.Region) error {
	n := len(c.into.items)
	err := c.fill(render.Fill{Pen: p, Region: tip})
	for _, e := range c.into.items[n:] {
		e.order = leaders
	}
	return err
}
