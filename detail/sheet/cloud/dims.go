package cloud

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

// measured is a dimension with what it prints and where it stands along its own direction.
type measured struct {
	render.Dim
	label  string
	lo, hi float64
}

// dimsOf are the dimensions of a view of a sheet.
func dimsOf(v *render.View, s *render.Sheet) []measured {
	number := s.Number
	var out []measured
	for _, it := range v.Items {
		d, ok := it.(render.Dim)
		if !ok {
			continue
		}
		m := measured{Dim: d, label: d.Label(number)}
		switch d.Kind {
		case render.Linear, render.Aligned:
			u := d.Direction()
			m.lo, m.hi = d.P.Dot(u), d.Q.Dot(u)
		case render.OrdinateX:
			m.lo, m.hi = d.P.X, d.Q.X
		case render.OrdinateY:
			m.lo, m.hi = d.P.Y, d.Q.Y
		}
		m.lo, m.hi = math.Min(m.lo, m.hi), math.Max(m.lo, m.hi)
		out = append(out, m)
	}
	return out
}

// otherDims returns the dimensions that print another value than they did. One that prints the same between the
// same points is none, wherever its line stands. A straight one of the same value that has moved as a whole is
// none either, unless another value stood at one of its ends: then that one has changed into it.
func otherDims(now, was []measured) []measured {
	gone := make([]bool, len(was))
	var open []measured
	for _, d := range now {
		if i := first(was, gone, func(o measured) bool { return d.like(o) && d.meets(o.lo, d.lo) && d.meets(o.hi, d.hi) }); i < 0 {
			open = append(open, d)
		}
	}
	var out []measured
	for _, d := range open {
		before := func(o measured) bool {
			return d.parallel(o) && d.label != o.label && (d.meets(o.lo, d.lo) || d.meets(o.hi, d.hi))
		}
		if d.straight() && has(was, gone, before) || first(was, gone, d.like) < 0 {
			out = append(out, d)
		}
	}
	return out
}

func (m measured) straight() bool { return m.Kind == render.Linear || m.Kind == render.Aligned }

// parallel reports whether the other is of the same kind and direction.
func (m measured) parallel(o measured) bool {
	return m.Kind == o.Kind && (!m.straight() || math.Abs(m.Direction().Cross(o.Direction())) < 1e-6)
}

func (m measured) like(o measured) bool { return m.parallel(o) && m.label == o.label }

func (m measured) meets(a, b float64) bool { return near(geom.Vec{X: a}, geom.Vec{X: b}) }

// first takes the first that is not gone and fits; -1 when none does.
func first(of []measured, gone []bool, fits func(measured) bool) int {
	for i, o := range of {
		if !gone[i] && fits(o) {
			gone[i] = true
			return i
		}
	}
	return -1
}

func has(of []measured, gone []bool, fits func(measured) bool) bool {
	for i, o := range of {
		if !gone[i] && fits(o) {
			return true
		}
	}
	return false
}
