package sheet

import (
	"math"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

// placer finds room for short names among lines, in model millimetres. What it has placed blocks what
// comes after.
type placer struct {
	k      float64 // model per plotted millimetre
	window geom.Box
	segs   map[[2]int][]geom.Seg // by the squares they pass
	boxes  []geom.Box
}

// square is the side of the squares that lines are sorted into, plotted.
const square = 8.0

func newPlacer(k float64, window geom.Box) *placer {
	return &placer{k: k, window: window, segs: map[[2]int][]geom.Seg{}}
}

// keep keeps names off a line. Arcs count as chords in short pieces.
func (p *placer) keep(l geom.Path) {
	for _, s := range l.Segs() {
		n := 1
		if s.IsArc() {
			n = 8
		}
		for i := range n {
			q := geom.Seg{A: s.At(float64(i) / float64(n)), B: s.At(float64(i+1) / float64(n))}
			p.each(geom.BoxOf(q.A, q.B), func(n [2]int) { p.segs[n] = append(p.segs[n], q) })
		}
	}
}

func (p *placer) block(b geom.Box) { p.boxes = append(p.boxes, b) }

func (p *placer) each(b geom.Box, fn func([2]int)) {
	side := square * p.k
	for i := math.Floor(b.Min.X / side); i <= math.Floor(b.Max.X/side); i++ {
		for j := math.Floor(b.Min.Y / side); j <= math.Floor(b.Max.Y/side); j++ {
			fn([2]int{int(i), int(j)})
		}
	}
}

// free reports whether a box is in the window and clear of names and of lines other than own.
func (p *placer) free(b geom.Box, own geom.Path) bool {
	if !p.window.Grow(-p.k).Holds(b.Min) || !p.window.Grow(-p.k).Holds(b.Max) {
		return false
	}
	for _, o := range p.boxes {
		if o.Overlaps(b) {
			return false
		}
	}
	clear := true
	p.each(b, func(n [2]int) {
		for _, s := range p.segs[n] {
			clear = clear && (!passes(s, b) || isOf(own, s))
		}
	})
	return clear
}

// isOf reports whether a segment is one of a line's own.
func isOf(l geom.Path, s geom.Seg) bool {
	for i := 1; i < len(l.V); i++ {
		if l.V[i-1].Vec == s.A && l.V[i].Vec == s.B {
			return true
		}
	}
	return l.Closed && len(l.V) > 0 && l.V[len(l.V)-1].Vec == s.A && l.V[0].Vec == s.B
}

// passes reports whether a straight piece touches a box (Liang and Barsky 1984).
func passes(s geom.Seg, b geom.Box) bool {
	t0, t1 := 0.0, 1.0
	d := s.B.Sub(s.A)
	for _, e := range [4][2]float64{{-d.X, s.A.X - b.Min.X}, {d.X, b.Max.X - s.A.X}, {-d.Y, s.A.Y - b.Min.Y}, {d.Y, b.Max.Y - s.A.Y}} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return false
		case e[0] < 0:
			t0 = max(t0, e[1]/e[0])
		case e[0] > 0:
			t1 = min(t1, e[1]/e[0])
		}
	}
	return t0 <= t1
}

// about returns the nearest place for a name round a point.
func (p *placer) about(from geom.Vec, name string, height float64) (geom.Vec, bool) {
	for _, away := range []float64{3.6, 4.5, 6, 8, 10, 13, 16, 20, 25} {
		for n := range 16 {
			at := geom.Polar(from, away*p.k, math.Pi/4+float64(n)*math.Pi/8)
			b := textBox(at, height, render.MiddleCentre, 0, []string{name}, p.k).Grow(0.7 * p.k)
			if p.free(b, geom.Path{}) {
				p.block(b)
				return at, true
			}
		}
	}
	return geom.Vec{}, false
}

// along returns the best place for a name in a line: upright in a level stretch, turned in a steep one,
// near the rows where the names of all lines stand together.
func (p *placer) along(l geom.Path, name string, height float64) (at geom.Vec, rot float64, ok bool) {
	rows := [2]float64{p.window.Max.Y - 16*p.k, p.window.Min.Y + 16*p.k}
	best, whole, run := math.Inf(1), l.Length(), 0.0
	ends := (font.Width(name, height, false)/2 + 2.5) * p.k // a stub of line stays on either side
	for _, s := range l.Segs() {
		from := run
		run += s.A.Dist(s.B)
		n := max(1, math.Ceil(s.A.Dist(s.B)/(1.5*p.k)))
		for i := range int(n) {
			t := (float64(i) + 0.5) / n
			q, done := s.A.Lerp(s.B, t), from+t*s.A.Dist(s.B)
			if !l.Closed && min(done, whole-done) < ends {
				continue
			}
			turn, d := 0.0, s.B.Sub(s.A)
			if math.Abs(d.Y) > math.Abs(d.X) {
				turn = 90
			}
			score := min(math.Abs(q.Y-rows[0]), math.Abs(q.Y-rows[1]))
			if score >= best {
				continue
			}
			b := textBox(q, height, render.MiddleCentre, turn, []string{name}, p.k)
			if p.free(b.Grow(0.6*p.k), l) && p.straight(l, b) {
				at, rot, ok, best = q, turn, true, score
			}
		}
	}
	if ok {
		p.block(textBox(at, height, render.MiddleCentre, rot, []string{name}, p.k).Grow(1.2 * p.k))
	}
	return at, rot, ok
}

// straight reports whether a line runs through a name from end to end, and not out at its side or round
// in it.
func (p *placer) straight(l geom.Path, b geom.Box) bool {
	in := geom.ClipPath(l, geom.Rect(b.Min.X, b.Min.Y, b.Max.X, b.Max.Y), true)
	if len(in) != 1 {
		return false
	}
	v := in[0].V
	a, z := v[0].Vec, v[len(v)-1].Vec
	return a.Dist(z) > 0.9*max(b.W(), b.H()) && in[0].Length() < 1.15*a.Dist(z)
}
