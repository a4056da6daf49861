package dxf

import (
	"bytes"
	"math"
	"strconv"

	"standclear/geom"
)

// tiny is the length in the file's unit up to which a piece has no length.
const tiny = 2e-6

// farArc is the radius in the file's unit beyond which an arc is written by its ends and bulge: its
// ends, computed from a centre so far off, would miss by more than the ninth decimal of a degree allows.
const farArc = 1e4

// frame takes a space of the sheet to the file: millimetres to the file's unit, a view to its place.
type frame struct {
	place geom.Vec // mm, added to every point
	per   float64  // file units in a millimetre
	k     float64  // space millimetres per plotted millimetre
}

// exact returns the place of p in the file, not rounded: for centres worked out from it.
func (f frame) exact(p geom.Vec) geom.Vec { return p.Add(f.place).Mul(f.per) }

// at returns the place of p in the file.
func (f frame) at(p geom.Vec) geom.Vec {
	p = f.exact(p)
	return geom.Vec{X: round(p.X), Y: round(p.Y)}
}

// plotted returns a paper length as it stands in the space, in the file's unit.
func (f frame) plotted(mm float64) float64 { return round(mm * f.k * f.per) }

// path returns p in the file: without pieces of no length and arcs that are flat to the last
// decimal, closed if it ends where it began. It has fewer than two vertices when nothing is left.
func (f frame) path(p geom.Path) geom.Path {
	var v []geom.Vertex
	for _, c := range p.V {
		c.Vec = f.exact(c.Vec)
		if round(c.Bulge) == 0 {
			c.Bulge = 0
		}
		if n := len(v); n > 0 && v[n-1].Dist(c.Vec) <= tiny {
			v[n-1].Bulge = c.Bulge
			continue
		}
		v = append(v, c)
	}
	if n := len(v); n > 2 && v[0].Dist(v[n-1].Vec) <= tiny {
		p.Closed = true
	}
	for n := len(v); p.Closed && n > 1 && v[0].Dist(v[n-1].Vec) <= tiny; n-- {
		v = v[:n-1]
	}
	return geom.Path{V: v, Closed: p.Closed}
}

// straight reports whether p has no arcs. The bulge of the last vertex of an open path means nothing.
func straight(p geom.Path) bool {
	for i, v := range p.V {
		if v.Bulge != 0 && (p.Closed || i < len(p.V)-1) {
			return false
		}
	}
	return true
}

// pieces calls fn for each segment from a to b.
func pieces(p geom.Path, fn func(a, b geom.Vertex)) {
	for i, a := range p.V {
		if i+1 < len(p.V) {
			fn(a, p.V[i+1])
		} else if p.Closed {
			fn(a, p.V[0])
		}
	}
}

// arc is a circular arc, counter-clockwise from angle a0 to a1, in radians.
type arc struct {
	c         geom.Vec
	r, a0, a1 float64
}

//	       b = tan(sweep / 4)
//	  .-'''-.     height of the arc over its chord: b * chord/2
//	 /       \    radius: chord (1 + b*b) / (4 |b|)
//	p --chord-- q centre: left of p-q by chord (1 - b*b) / (4 b)
//	      +
//
// arcOf returns the arc of the segment from p to q; its bulge is not 0.
func arcOf(p geom.Vertex, q geom.Vec) arc {
	b, chord := p.Bulge, q.Sub(p.Vec)
	c := p.Lerp(q, 0.5).Add(chord.Perp().Mul((1 - b*b) / (4 * b)))
	from, to := p.Sub(c), q.Sub(c)
	if b < 0 {
		from, to = to, from
	}
	return arc{c, chord.Len() * (1 + b*b) / (4 * math.Abs(b)), math.Atan2(from.Y, from.X), math.Atan2(to.Y, to.X)}
}

// holds reports whether the arc passes direction a.
func (r arc) holds(a float64) bool { return turn(a-r.a0) <= turn(r.a1-r.a0) }

// turn brings an angle in radians to [0, 2 pi).
func turn(a float64) float64 {
	a = math.Mod(a, 2*math.Pi)
	if a < 0 {
		a += 2 * math.Pi
	}
	return a
}

// degrees returns an angle in radians as rounded degrees in [0, 360).
func degrees(a float64) float64 { return wrap(a * 180 / math.Pi) }

// wrap brings an angle in degrees to [0, 360), rounded.
func wrap(d float64) float64 {
	d = round(math.Mod(d, 360))
	if d < 0 {
		d += 360
	}
	return d
}

// boxOf returns the extent of p, arcs included.
func boxOf(p geom.Path) geom.Box {
	x := geom.EmptyBox()
	pieces(p, func(a, b geom.Vertex) {
		x = x.Include(a.Vec).Include(b.Vec)
		if a.Bulge == 0 {
			return
		}
		r := arcOf(a, b.Vec)
		for q := range 4 {
			if t := float64(q) * math.Pi / 2; r.holds(t) {
				x = x.Include(geom.Polar(r.c, r.r, t))
			}
		}
	})
	return x
}

// area returns the signed area of a closed path: positive when it runs counter-clockwise.
func area(p geom.Path) float64 {
	sum := 0.0
	pieces(p, func(a, b geom.Vertex) {
		sum += a.Cross(b.Vec) / 2
		if a.Bulge != 0 { // the sliver between chord and arc
			sweep, r := 4*math.Atan(a.Bulge), arcOf(a, b.Vec).r
			sum += r * r / 2 * (sweep - math.Sin(sweep))
		}
	})
	return sum
}

// spot names a place to five decimals: two things are repeats when their places have one name.
func spot(ps ...geom.Vec) string {
	var buf [128]byte
	return string(appendSpots(buf[:0], ps...))
}

func appendSpots(b []byte, ps ...geom.Vec) []byte {
	for _, p := range ps {
		for _, v := range [2]float64{p.X, p.Y} {
			b = append(strconv.AppendInt(b, int64(math.Round(v*1e5)), 10), ' ')
		}
	}
	return b
}

// straightAlong opens the name of a straight line between two places.
const straightAlong = "LINE "

// edge names the straight line between two places, whichever way it runs.
func edge(a, b geom.Vec) string { return straightAlong + piece(geom.Vertex{Vec: a}, b) }

// piece names the segment from a to b, whichever way it runs.
func piece(a geom.Vertex, b geom.Vec) string {
	var one, other [128]byte
	from, to := appendSpots(one[:0], a.Vec), appendSpots(other[:0], b)
	if bytes.Compare(from, to) > 0 {
		from, to, a.Bulge = to, from, -a.Bulge
	}
	return string(appendSpots(append(from, to...), geom.Vec{X: a.Bulge}))
}
