package thermal

import (
	"math"
	"slices"

	"standclear/detail"
	"standclear/detail/heat"
	"standclear/geom"
)

// boxesOf returns the boxes that stand for a solid. A profile with corners at right angles is cut into
// rectangles; where an edge slopes, each stands at its mean height.
func boxesOf(s geom.Solid) [][2]heat.Point {
	var xs []float64
	for _, p := range s.Profile {
		for _, v := range p.V {
			xs = append(xs, v.X)
		}
	}
	slices.Sort(xs)
	bounds := s.Profile.Bounds()
	var out [][2]heat.Point
	for i := 1; i < len(xs); i++ {
		if xs[i]-xs[i-1] < geom.Tol {
			continue
		}
		slab := geom.Intersect(s.Profile, geom.Rect(xs[i-1], bounds.Min.Y-1, xs[i], bounds.Max.Y+1))
		for _, part := range slab.Parts() {
			b := part.Bounds()
			b.Max.Y = b.Min.Y + part.Area()/b.W() // flat below, sloped above
			one := s
			one.Profile, one.Bores = geom.Rect(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y), nil
			w := one.Bounds()
			out = append(out, [2]heat.Point{{w.Min.X, w.Min.Y, w.Min.Z}, {w.Max.X, w.Max.Y, w.Max.Z}})
		}
	}
	return out
}

// whole returns the box around a part.
func whole(p *detail.Part) [2]heat.Point {
	b := p.Bounds()
	return [2]heat.Point{{b.Min.X, b.Min.Y, b.Min.Z}, {b.Max.X, b.Max.Y, b.Max.Z}}
}

// clip cuts a box to the window; ok is false when nothing is left of it.
func clip(b heat.Box, lo, hi heat.Point) (heat.Box, bool) {
	for a := range lo {
		b.Lo[a], b.Hi[a] = math.Max(b.Lo[a], lo[a]), math.Min(b.Hi[a], hi[a])
		if b.Hi[a]-b.Lo[a] < 0.01 {
			return b, false
		}
	}
	return b, true
}

// near is how close along the wall and up it two faces may be to be taken as one, mm: a grid that told
// them apart would spend its cells there. Depth is never rounded.
const near = 3

// align moves faces along axis a that are nearly at one place together, in all lists alike: onto a face of
// firm where one is near, else to the middle between them. The boxes of firm stay as they are.
func align(a heat.Axis, firm []heat.Box, lists ...[]heat.Box) {
	to := places(a, firm, lists)
	for _, l := range lists {
		for i := range l {
			l[i].Lo[a], l[i].Hi[a] = to[l[i].Lo[a]], to[l[i].Hi[a]]
		}
	}
}

// places says where each face of the lists goes.
func places(a heat.Axis, firm []heat.Box, lists [][]heat.Box) map[float64]float64 {
	held, all := faces(a, firm), faces(a, lists...)
	to := map[float64]float64{}
	for i := 0; i < len(all); {
		j := i
		for j < len(all) && all[j]-all[i] < near {
			j++
		}
		for _, v := range all[i:j] {
			to[v] = (all[i] + all[j-1]) / 2
		}
		i = j
	}
	for _, v := range all {
		if _, ok := slices.BinarySearch(held, v); ok {
			to[v] = v
			continue
		}
		best, middle := near/2.0, to[v]
		for _, h := range held {
			if d := math.Abs(h - middle); d < best {
				best, to[v] = d, h
			}
		}
	}
	return to
}

// faces lists where boxes begin and end along a, rising.
func faces(a heat.Axis, lists ...[]heat.Box) []float64 {
	var all []float64
	for _, l := range lists {
		for _, b := range l {
			all = append(all, b.Lo[a], b.Hi[a])
		}
	}
	slices.Sort(all)
	return all
}

// solidOnly drops boxes that aligning has closed.
func solidOnly(l []heat.Box) []heat.Box {
	return slices.DeleteFunc(l, func(b heat.Box) bool {
		return b.Hi[0]-b.Lo[0] < 0.01 || b.Hi[1]-b.Lo[1] < 0.01 || b.Hi[2]-b.Lo[2] < 0.01
	})
}
