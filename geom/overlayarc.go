package geom

import "math"

// overlayArcs settles arcs, circle by circle, in the order in which the circles first occur.
func overlayArcs(ss []stroke) []stroke {
	var circles [][]stroke
	for _, s := range ss {
		if s.turn < 0 {
			s.curve = s.reverse()
		}
		found := false
		for i, c := range circles {
			if c[0].c.Near(s.c) && math.Abs(c[0].r-s.r) <= Tol {
				circles[i], found = append(c, s), true
				break
			}
		}
		if !found {
			circles = append(circles, []stroke{s})
		}
	}
	var out []stroke
	for _, c := range circles {
		out = append(out, overlayCircle(c)...)
	}
	return out
}

// overlayCircle settles counter-clockwise arcs of one circle. Places on it are measured along it, in
// millimetres from its rightmost point.
func overlayCircle(ss []stroke) []stroke {
	circle := ss[0].curve
	all := fullTurn * circle.r
	var cs []claim
	var ms marks
	for _, s := range ss {
		lo := placeOn(circle, s.a)
		hi := lo + s.sweep()*circle.r
		c := claim{class: s.class, on: []span{{lo, hi}}}
		if hi > all {
			c.on = []span{{lo, all}, {0, hi - all}}
		}
		ms = append(ms, mark{lo, s.a}, mark{c.on[len(c.on)-1].hi, s.b})
		cs = append(cs, c)
	}
	ms.sort()
	at := func(t float64) Vec {
		sin, cos := sincos(t / circle.r)
		return Vec{circle.c.X + circle.r*cos, circle.c.Y + circle.r*sin}
	}
	var out []stroke
	for _, c := range settle(cs) {
		for _, s := range overStart(c.on, all) {
			k := circle
			k.a, k.b = ms.at(s.lo, at), ms.at(s.hi, at)
			if s.hi-s.lo >= all-Tol {
				k.b = k.a
			}
			out = append(out, stroke{k, c.class})
		}
	}
	return out
}

func placeOn(circle curve, p Vec) float64 {
	d := p.Sub(circle.c)
	a := math.Atan2(d.Y, d.X)
	if a < 0 {
		a += fullTurn
	}
	return a * circle.r
}

// overStart joins the last stretch of a circle to the first when they meet at its start.
func overStart(ss []span, all float64) []span {
	n := len(ss)
	if n < 2 || ss[0].lo > Tol || ss[n-1].hi < all-Tol {
		return ss
	}
	joined := append([]span(nil), ss[1:n-1]...)
	return append(joined, span{ss[n-1].lo, ss[0].hi})
}
