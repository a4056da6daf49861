package cloud

import (
	"math"

	"standclear/geom"
	"standclear/render"
)

// shift returns how far old runs are to move across for most of their lines to lie on those of the new: a view of one
// block follows that block along the wall. Up and down it is never moved, since levels are told from one datum.
func shift(a, b []run) geom.Vec {
	const much = 0.5 // less than this share of what differs in place: a judgement
	from, to := boxOf(b), boxOf(a)
	if from.Empty() || to.Empty() {
		return geom.Vec{}
	}
	best, differ := geom.Vec{}, much*(total(rests(a, b))+total(rests(b, a)))
	for _, d := range []geom.Vec{{X: to.Min.X - from.Min.X}, {X: to.Max.X - from.Max.X}} {
		if d.Len() <= tol {
			continue
		}
		r := movedRuns(b, d)
		if t := total(rests(a, r)) + total(rests(r, a)); t < differ {
			best, differ = d, t
		}
	}
	return best
}

func movedRuns(runs []run, d geom.Vec) []run {
	out := make([]run, len(runs))
	for i, r := range runs {
		r.at, r.box = r.at.Add(d), r.box.Move(d)
		out[i] = r
	}
	return out
}

func boxOf(runs []run) geom.Box {
	b := geom.EmptyBox()
	for _, r := range runs {
		b = b.Union(r.box)
	}
	return b
}

func total(runs []run) float64 {
	sum := 0.0
	for _, r := range runs {
		sum += r.length()
	}
	return sum
}

// moved is a view with what is compared of it by place elsewhere.
func moved(v *render.View, d geom.Vec) *render.View {
	out := *v
	out.Items = make([]render.Item, len(v.Items))
	by := geom.Translate(d)
	for i, it := range v.Items {
		switch k := it.(type) {
		case render.Stroke:
			k.Path = k.Path.Transform(by)
			it = k
		case render.Fill:
			k.Region = k.Region.Transform(by)
			it = k
		case render.Dim:
			k.P, k.Q = k.P.Add(d), k.Q.Add(d)
			it = k
		}
		out.Items[i] = it
	}
	return &out
}

// cropOf is how far a picture reaches where break lines say that it is broken off, and without end elsewhere.
func cropOf(v *render.View, runs []run) geom.Box {
	mid := boxOf(runs).Center()
	crop := geom.Box{Min: geom.Vec{X: math.Inf(-1), Y: math.Inf(-1)}, Max: geom.Vec{X: math.Inf(1), Y: math.Inf(1)}}
	for _, it := range v.Items {
		s, ok := it.(render.Stroke)
		if !ok || s.Pen != render.Break || len(s.Path.V) < 2 {
			continue
		}
		a, b := s.Path.V[0].Vec, s.Path.V[len(s.Path.V)-1].Vec
		switch {
		case math.Abs(a.X-b.X) <= tol && a.X < mid.X:
			crop.Min.X = math.Max(crop.Min.X, a.X)
		case math.Abs(a.X-b.X) <= tol:
			crop.Max.X = math.Min(crop.Max.X, a.X)
		case math.Abs(a.Y-b.Y) <= tol && a.Y < mid.Y:
			crop.Min.Y = math.Max(crop.Min.Y, a.Y)
		case math.Abs(a.Y-b.Y) <= tol:
			crop.Max.Y = math.Min(crop.Max.Y, a.Y)
		}
	}
	return crop
}
