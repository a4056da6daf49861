package geom

import "math"

// hatchLimit is the number of strokes beyond which a hatch is no hatch any more but black.
const hatchLimit = 200_000

// Hatch returns parallel lines across a region, as open paths of one straight segment each, line by
// line. The lines run in the direction angle (radians) at the distance spacing (mm) from each other;
// one passes through origin.
//
// With dashes each line is broken: a positive length draws, a negative one leaves a gap, 0 makes a dot
// (a stroke of spacing/100). The pattern starts anew at origin on its line, and from one line to the
// next the start moves shift millimetres along, so that two hatches with one origin always agree.
//
//	   start of line 1
//	        |<---- dash ---->|<- gap ->|
//	 shift->|
//	origin  |   spacing between the lines
//	|<---- dash ---->|<- gap ->|
//
// Where a line lies exactly on an edge of the region it is left out. A spacing that is not positive,
// or so fine that more than 200000 strokes come of it, gives no lines.
func Hatch(r Region, angle, spacing float64, origin Vec, dashes []float64, shift float64) []Path {
	if !(spacing > 0) || !isFinite(angle, spacing, origin.X, origin.Y, shift) {
		return nil
	}
	level := Translate(origin.Mul(-1)).Then(Rotate(-angle, Vec{}))
	back := Rotate(angle, Vec{}).Then(Translate(origin))
	o := newOutline(r.Transform(level))
	first, last := math.Ceil(o.box.Min.Y/spacing), math.Floor(o.box.Max.Y/spacing)
	if o.box.Empty() || last-first > hatchLimit {
		return nil
	}
	pat := newPattern(dashes, spacing/100)
	var ps []Path
	for n := first; n <= last; n++ {
		y := n * spacing
		// Inside just above and just under the line: an edge on the line bounds only one of them.
		for _, s := range o.scan(y, above).common(o.scan(y, under), Tol) {
			strokes, ok := pat.strokes(s, n*shift, hatchLimit-len(ps))
			if !ok {
				return nil
			}
			for _, d := range strokes {
				ps = append(ps, Polyline(back.Apply(Vec{d.lo, y}), back.Apply(Vec{d.hi, y})))
			}
		}
	}
	return ps
}

func isFinite(fs ...float64) bool {
	for _, f := range fs {
		if math.IsNaN(f) || math.IsInf(f, 0) {
			return false
		}
	}
	return true
}

// pattern is one period of a dashed line.
type pattern struct {
	drawn  []span  // from the start of the period
	period float64 // 0 for an unbroken line
}

func newPattern(dashes []float64, dot float64) pattern {
	var p pattern
	for _, d := range dashes {
		if !isFinite(d) {
			return pattern{}
		}
		switch {
		case d > 0:
			p.drawn = append(p.drawn, span{p.period, p.period + d})
		case d == 0:
			p.drawn = append(p.drawn, span{p.period, p.period + dot})
		}
		p.period += math.Abs(d)
	}
	return p
}

// strokes returns what the pattern, started at from, draws of the stretch s, touching strokes as one. It
// reports false when that is more than limit strokes.
func (p pattern) strokes(s span, from float64, limit int) ([]span, bool) {
	if p.period <= 0 {
		return []span{s}, limit > 0
	}
	first, last := math.Floor((s.lo-from)/p.period), math.Floor((s.hi-from)/p.period)
	if (last-first+1)*float64(len(p.drawn)) > float64(limit) {
		return nil, false
	}
	var out []span
	for n := first; n <= last; n++ {
		at := from + n*p.period
		for _, d := range p.drawn {
			lo, hi := math.Max(s.lo, at+d.lo), math.Min(s.hi, at+d.hi)
			if hi-lo > Tol {
				out = append(out, span{lo, hi})
			}
		}
	}
	return unite(out, Tol), true
}
