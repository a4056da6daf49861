package geom

import (
	"cmp"
	"slices"
)

// span is a stretch of a line, from lo to hi.
type span struct{ lo, hi float64 }

// spans is a set of stretches, in order and apart from each other.
type spans []span

// unite returns the union of stretches in any order. Gaps up to slack are closed, and stretches no
// longer than slack left out.
func unite(ss []span, slack float64) spans {
	slices.SortFunc(ss, func(a, b span) int { return cmp.Or(cmp.Compare(a.lo, b.lo), cmp.Compare(a.hi, b.hi)) })
	var out spans
	for _, s := range ss {
		if n := len(out); n > 0 && s.lo <= out[n-1].hi+slack {
			out[n-1].hi = max(out[n-1].hi, s.hi)
		} else {
			out = append(out, s)
		}
	}
	return slices.DeleteFunc(out, func(s span) bool { return s.hi-s.lo <= slack })
}

// less returns what of ss lies outside os; leavings no longer than slack vanish.
func (ss spans) less(os spans, slack float64) spans {
	var out spans
	j := 0
	for _, s := range ss {
		for j > 0 && os[j-1].hi > s.lo {
			j--
		}
		lo := s.lo
		for ; j < len(os) && os[j].lo < s.hi; j++ {
			if os[j].lo-lo > slack {
				out = append(out, span{lo, os[j].lo})
			}
			lo = max(lo, os[j].hi)
		}
		if s.hi-lo > slack {
			out = append(out, span{lo, s.hi})
		}
	}
	return out
}

// common returns what ss and os share; leavings no longer than slack vanish.
func (ss spans) common(os spans, slack float64) spans {
	var out spans
	for i, j := 0, 0; i < len(ss) && j < len(os); {
		lo, hi := max(ss[i].lo, os[j].lo), min(ss[i].hi, os[j].hi)
		if hi-lo > slack {
			out = append(out, span{lo, hi})
		}
		if ss[i].hi < os[j].hi {
			i++
		} else {
			j++
		}
	}
	return out
}

// total returns the summed length.
func (ss spans) total() float64 {
	var t float64
	for _, s := range ss {
		t += s.hi - s.lo
	}
	return t
}
