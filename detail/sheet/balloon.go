package sheet

import (
	"math"
	"slices"

	"standclear/detail/view"
	"standclear/geom"
	"standclear/render"
)

// balloons name the parts of a pictorial view by their marks, in two rows along its axis: over it and under
// it. Each line runs square to the axis from an edge that is seen, at the place where it meets the fewest
// other lines, and bends only beyond everything that is drawn; so no two cross.
//
//	 (B) (C)        row
//	  |   \         bends
//	--|----\------  the farthest that anything reaches
//	  |     |
type balloons struct {
	axis, side geom.Vec // along the rows, and square to them toward the upper row
	k          float64
	segs       []alongSeg
	shelves    [][]int32 // segments by the stretch of the axis they reach into
	from, wide float64   // where the shelves start, and of one
	hi, lo     float64   // how far everything reaches along side
}

// alongSeg is a piece of linework by where it lies along the axis and across it.
type alongSeg struct {
	a, b geom.Vec
	mark string
}

// named is one mark with the place its line starts from.
type named struct {
	mark string
	at   geom.Vec // along and across
	up   bool
}

const (
	balloonR     = 4.0  // plotted
	balloonPitch = 9.6  // between centres in a row
	balloonBend  = 3.0  // from the farthest line to the bend
	balloonRow   = 17.0 // from there to the row
)

func newBalloons(p view.Pictorial, axis geom.Vec) *balloons {
	b := &balloons{axis: axis.Unit(), hi: math.Inf(-1), lo: math.Inf(1)}
	b.side = b.axis.Perp()
	for _, e := range p.Edges {
		b.take(e.Path, e.Part.Mark)
	}
	for _, t := range p.Traces {
		b.take(t, "")
	}
	b.file()
	return b
}

// file shelves the segments, so that a line meets only those near it.
func (b *balloons) file() {
	const n = 400
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range b.segs {
		lo, hi = math.Min(lo, math.Min(s.a.X, s.b.X)), math.Max(hi, math.Max(s.a.X, s.b.X))
	}
	b.from, b.wide, b.shelves = lo, (hi-lo)/n, make([][]int32, n)
	for i, s := range b.segs {
		for k := b.shelf(math.Min(s.a.X, s.b.X)); k <= b.shelf(math.Max(s.a.X, s.b.X)); k++ {
			b.shelves[k] = append(b.shelves[k], int32(i))
		}
	}
}

func (b *balloons) shelf(x float64) int {
	return max(0, min(len(b.shelves)-1, int((x-b.from)/b.wide)))
}

func (b *balloons) take(p geom.Path, mark string) {
	pts := p.Flatten(1)
	if p.Closed {
		pts = append(pts, pts[0])
	}
	for i, v := range pts {
		q := geom.Vec{X: v.Dot(b.axis), Y: v.Dot(b.side)}
		b.hi, b.lo = math.Max(b.hi, q.Y), math.Min(b.lo, q.Y)
		if i > 0 {
			o := geom.Vec{X: pts[i-1].Dot(b.axis), Y: pts[i-1].Dot(b.side)}
			b.segs = append(b.segs, alongSeg{o, q, mark})
		}
	}
}

// point is the inverse of along and across.
func (b *balloons) point(q geom.Vec) geom.Vec { return b.axis.Mul(q.X).Add(b.side.Mul(q.Y)) }

// over and under report whether a point stands clear of the band of parts by a distance.
func (b *balloons) over(p geom.Vec, by float64) bool  { return p.Dot(b.side) > b.hi+by }
func (b *balloons) under(p geom.Vec, by float64) bool { return p.Dot(b.side) < b.lo-by }

// crossings counts what a line from q square to the axis meets on its way out.
func (b *balloons) crossings(q geom.Vec, up bool) int {
	n, dir := 0, 1.0
	if !up {
		dir = -1
	}
	for _, i := range b.shelves[b.shelf(q.X)] {
		s := &b.segs[i]
		if math.Min(s.a.X, s.b.X) > q.X || math.Max(s.a.X, s.b.X) < q.X {
			continue
		}
		y := s.a.Y
		if d := s.b.X - s.a.X; math.Abs(d) > 1e-9 {
			y += (s.b.Y - s.a.Y) * (q.X - s.a.X) / d
		}
		if (y-q.Y)*dir > 0.3*b.k {
			n++
		}
	}
	return n
}

// choose finds for each mark where its line starts and to which row it runs.
func (b *balloons) choose(marks []string) []named {
	var out []named
	for _, m := range marks {
		best, least := named{mark: m}, math.Inf(1)
		for _, s := range b.segs {
			if s.mark != m {
				continue
			}
			for _, f := range []float64{0.5, 0.2, 0.8} {
				at := s.a.Lerp(s.b, f)
				for _, up := range []bool{true, false} {
					c := b.cost(at, up, out)
					if c < least-1e-6 {
						c += crossed * float64(b.crossings(at, up))
					}
					if c < least-1e-6 {
						best, least = named{m, at, up}, c
					}
				}
			}
		}
		if !math.IsInf(least, 1) {
			out = append(out, best)
		}
	}
	return out
}

// crossed is what a line is charged for each line it crosses, in the measure of cost.
const crossed = 6.0

// cost weighs a line, crossings apart: how long it is, and how near others of its row start.
func (b *balloons) cost(at geom.Vec, up bool, others []named) float64 {
	long := b.hi - at.Y
	if !up {
		long = at.Y - b.lo
	}
	c := 0.12 * long / b.k
	for _, o := range others {
		d := math.Abs(o.at.X-at.X) / b.k
		switch over := o.up == up || (o.at.Y > at.Y) != o.up; {
		case over && d < 2:
			c += 60 // one along the other
		case o.up == up && d < balloonPitch:
			c += 6 * (1 - d/balloonPitch)
		}
	}
	return c
}

// draw sets the balloons of both rows.
func (b *balloons) draw(c *composer, marks []string) {
	all := b.choose(marks)
	slices.SortStableFunc(all, func(p, q named) int {
		if p.at.X < q.at.X {
			return -1
		}
		return 1
	})
	for _, up := range []bool{true, false} {
		edge, dir := b.hi, 1.0
		if !up {
			edge, dir = b.lo, -1
		}
		var row []named
		var slots []slot
		for _, n := range all {
			if n.up == up {
				row = append(row, n)
				slots = append(slots, slot{want: n.at.X / b.k, before: balloonPitch / 2, after: balloonPitch / 2})
			}
		}
		spread(slots)
		for i, n := range row {
			bend := geom.Vec{X: n.at.X, Y: edge + dir*c.mm(balloonBend)}
			at := geom.Vec{X: slots[i].at * b.k, Y: edge + dir*c.mm(balloonRow)}
			end := at.Add(bend.Sub(at).Unit().Mul(c.mm(balloonR)))
			c.put(
				render.Leader{Pen: render.Note, Points: []geom.Vec{b.point(n.at), b.point(bend), b.point(end)}, End: render.Arrow},
				render.Insert{Pen: render.Mark, Symbol: partMark, At: b.point(at), Scale: c.k, Fields: []render.Field{{Name: "MARK", Value: n.mark}}},
			)
			m := b.point(at)
			c.grow(m.Sub(geom.Vec{X: c.mm(balloonR), Y: c.mm(balloonR)}), m.Add(geom.Vec{X: c.mm(balloonR), Y: c.mm(balloonR)}))
		}
	}
}
