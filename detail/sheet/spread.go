package sheet

import "sort"

// slot is one thing to place along a line: where it wants to be and how much room it takes on
// either side, in plotted millimetres.
type slot struct {
	want   float64
	before float64
	after  float64
	at     float64 // result
}

// spread moves the slots apart until none overlap, keeping their order and staying as near to
// where each wants to be as the others let it (pool adjacent violators: least squares).
func spread(s []slot) {
	type pool struct {
		sum   float64 // of wanted starts, each less the room taken before it in the pool
		n     int
		width float64
		first int
	}
	var pools []pool
	start := func(p pool) float64 { return p.sum / float64(p.n) }
	for i := range s {
		p := pool{sum: s[i].want - s[i].before, n: 1, width: s[i].before + s[i].after, first: i}
		for len(pools) > 0 && start(pools[len(pools)-1])+pools[len(pools)-1].width > start(p) {
			q := pools[len(pools)-1]
			pools = pools[:len(pools)-1]
			p = pool{sum: q.sum + p.sum - float64(p.n)*q.width, n: q.n + p.n, width: q.width + p.width, first: q.first}
		}
		pools = append(pools, p)
	}
	for k, p := range pools {
		end := len(s)
		if k+1 < len(pools) {
			end = pools[k+1].first
		}
		at := start(p)
		for i := p.first; i < end; i++ {
			s[i].at = at + s[i].before
			at += s[i].before + s[i].after
		}
	}
}

// span is a stretch that must stay free.
type span struct{ lo, hi float64 }

// gaps returns what is left of the line between the blocked spans, ends open.
func gaps(blocked []span, lo, hi float64) []span {
	sort.Slice(blocked, func(i, j int) bool { return blocked[i].lo < blocked[j].lo })
	var out []span
	at := lo
	for _, b := range blocked {
		if b.lo > at {
			out = append(out, span{at, b.lo})
		}
		if b.hi > at {
			at = b.hi
		}
	}
	if hi > at {
		out = append(out, span{at, hi})
	}
	return out
}

// within spreads the slots inside one gap; when the gap is too small the overflow runs past hi.
func (g span) within(s []slot) {
	spread(s)
	if len(s) == 0 {
		return
	}
	if lo := s[0].at - s[0].before; lo < g.lo {
		push(s, g.lo)
	}
	if hi := s[len(s)-1].at + s[len(s)-1].after; hi > g.hi {
		pull(s, g.hi)
	}
	if lo := s[0].at - s[0].before; lo < g.lo {
		push(s, g.lo)
	}
}

// push keeps the slots at or after lo.
func push(s []slot, lo float64) {
	for i := range s {
		if v := lo + s[i].before; s[i].at < v {
			s[i].at = v
		}
		lo = s[i].at + s[i].after
	}
}

// pull keeps the slots at or before hi.
func pull(s []slot, hi float64) {
	for i := len(s) - 1; i >= 0; i-- {
		if v := hi - s[i].after; s[i].at > v {
			s[i].at = v
		}
		hi = s[i].at - s[i].before
	}
}
