package cloud

import (
	"math"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// noScale is what a picture without a scale says: places in it mean nothing, shapes do.
const noScale = "NOT TO SCALE"

// Of pictures without a scale, mm on paper.
const (
	together = 6.0 // lines this near belong to one picture
	slack    = 0.3 // a line is the same up to this length
	short    = 0.5 // shorter lines are not compared
)

// pictured parts the runs of a view into those at scale and those of pictures without one: the whole view, or each
// picture right under words that say so.
func pictured(v *render.View, runs []run) (scaled, pictures []run) {
	if v.Scale.Text == noScale {
		return nil, runs
	}
	in := underWords(v, runs)
	for i, r := range runs {
		if in[i] {
			pictures = append(pictures, r)
		} else {
			scaled = append(scaled, r)
		}
	}
	return scaled, pictures
}

// redrawn returns the runs of pictures that have no like in the old ones, which may have been drawn larger or smaller.
func redrawn(now, was []run, k float64) []run {
	a, b := boxOf(now), boxOf(was)
	best := shapes(now, was, k)
	if a.Empty() || b.Empty() {
		return best
	}
	for _, f := range []float64{a.W() / b.W(), a.H() / b.H()} {
		if !(f > 0) || math.IsInf(f, 0) || len(best) == 0 {
			continue
		}
		if r := shapes(now, enlarged(was, f), k); total(r) < total(best) {
			best = r
		}
	}
	return best
}

func enlarged(runs []run, f float64) []run {
	out := make([]run, len(runs))
	for i, r := range runs {
		r.at, r.box = r.at.Mul(f), geom.Box{Min: r.box.Min.Mul(f), Max: r.box.Max.Mul(f)}
		if r.r > 0 {
			r.r *= f
		} else {
			r.lo, r.hi = r.lo*f, r.hi*f
		}
		out[i] = r
	}
	return out
}

// shapes returns the runs that have no like among the others: of the same pen, direction and length or radius, each
// counted once, the nearest first. K is that of the view.
func shapes(of, in []run, k float64) []run {
	used := make([]bool, len(in))
	var out []run
	for _, r := range of {
		if r.length() < short*k {
			continue
		}
		best, near := -1, 0.0
		for i, o := range in {
			if used[i] || !r.alike(o, slack*k) {
				continue
			}
			if d := r.box.Center().Dist(o.box.Center()); best < 0 || d < near {
				best, near = i, d
			}
		}
		if best < 0 {
			out = append(out, r)
		} else {
			used[best] = true
		}
	}
	return out
}

// alike reports whether the runs differ in place alone, lengths up to slack.
func (r run) alike(o run, slack float64) bool {
	if r.pen != o.pen || (r.r > 0) != (o.r > 0) || math.Abs(r.length()-o.length()) > slack {
		return false
	}
	if r.r > 0 {
		return math.Abs(r.r-o.r) <= slack
	}
	return math.Abs(r.u.Cross(o.u))*r.length() <= slack
}

// clusters parts runs into those that lie together, in the order of their first.
func clusters(runs []run, gap float64) [][]run {
	var out [][]run
	var boxes []geom.Box
	for _, r := range runs {
		home := -1
		for i := 0; i < len(out); i++ {
			if distance(boxes[i], r.box) > gap {
				continue
			}
			if home < 0 {
				home = i
				continue
			}
			out[home], boxes[home] = append(out[home], out[i]...), boxes[home].Union(boxes[i])
			out, boxes = append(out[:i], out[i+1:]...), append(boxes[:i], boxes[i+1:]...)
			i--
		}
		if home < 0 {
			out, boxes = append(out, nil), append(boxes, geom.EmptyBox())
			home = len(out) - 1
		}
		out[home], boxes[home] = append(out[home], r), boxes[home].Union(r.box)
	}
	return out
}

// underWords tells which runs belong to a picture next under words that say it has no scale.
func underWords(v *render.View, runs []run) []bool {
	out := make([]bool, len(runs))
	for _, t := range textsOf(v.Items, v.Scale.K) {
		if !strings.Contains(t.text, noScale) {
			continue
		}
		under := geom.EmptyBox()
		for _, c := range clusters(runs, together*v.Scale.K) {
			b := boxOf(c)
			if x := t.box.Center().X; x >= b.Min.X && x <= b.Max.X && b.Max.Y <= t.box.Min.Y && (under.Empty() || b.Max.Y > under.Max.Y) {
				under = b
			}
		}
		for i, r := range runs {
			out[i] = out[i] || under.Holds(r.box.Min) && under.Holds(r.box.Max)
		}
	}
	return out
}
