package strength

import "math"

// carry fills in shear and moment along a span between two supports from its end moments.
func (s *span) carry(left, right float64) {
	v := (right-left)/s.length + s.pieces[0].w*s.length/2
	for _, p := range s.pieces {
		v += p.v * (s.x0 + s.length - p.x) / s.length
	}
	s.run(v, left)
}

// run walks a span from its left end with shear v and moment m there. The load at the left end of each
// piece is taken off the shear before the piece begins.
func (s *span) run(v, m float64) {
	for i := range s.pieces {
		p := &s.pieces[i]
		p.v, p.m = v-p.v, m
		v, m = p.v-p.w*p.l, p.momentAt(p.l)
	}
}

func (p *piece) momentAt(x float64) float64 { return p.m + p.v*x - p.w*x*x/2 }

func (p *piece) slopeAt(x, ei float64) float64 {
	return p.slope - (p.m*x+p.v*x*x/2-p.w*x*x*x/6)/ei
}

func (p *piece) dropAt(x, ei float64) float64 {
	return p.y + p.slope*x - (p.m*x*x/2+p.v*x*x*x/6-p.w*x*x*x*x/24)/ei
}

// end returns the moment and the shear at the right end of a span.
func (s span) end() (m, v float64) {
	p := &s.pieces[len(s.pieces)-1]
	return p.momentAt(p.l), p.v - p.w*p.l
}

func (s span) startShear() float64 { return s.pieces[0].v }

// bend fills in the overhangs, then slope and deflection of every segment.
func (b beam) bend(r *bent, a action) {
	n := len(b.at)
	first, last := &r.spans[0], &r.spans[n]
	first.run(0, 0)
	last.run(last.load(), r.moment[n-1])
	for i := 1; i < n; i++ {
		s := &r.spans[i]
		from, to := a.level(i-1), a.level(i)
		_, y := s.sweep(0, 0, b.ei)
		s.sweep((to-from-y)/s.length, from, b.ei)
	}
	slope, _ := r.spans[n-1].lean(b.ei)
	last.sweep(slope, a.level(n-1), b.ei)
	turn, drop := first.sweep(0, 0, b.ei)
	start := r.spans[1].pieces[0].slope - turn
	first.sweep(start, a.level(0)-drop-start*first.length, b.ei)
}

// load returns the whole load on a span.
func (s span) load() float64 {
	sum := s.pieces[0].w * s.length
	for _, p := range s.pieces {
		sum += p.v
	}
	return sum
}

// level returns the deflection of support i, down positive.
func (a action) level(i int) float64 {
	if a.lift == nil {
		return 0
	}
	return -a.lift[i]
}

// sweep integrates slope and deflection from the left end and returns both at the right end.
func (s *span) sweep(slope, y, ei float64) (endSlope, endY float64) {
	for i := range s.pieces {
		p := &s.pieces[i]
		p.slope, p.y = slope, y
		slope, y = p.slopeAt(p.l, ei), p.dropAt(p.l, ei)
	}
	return slope, y
}

// lean returns slope and deflection at the right end of a span already swept.
func (s span) lean(ei float64) (slope, y float64) {
	p := &s.pieces[len(s.pieces)-1]
	return p.slopeAt(p.l, ei), p.dropAt(p.l, ei)
}

// moments returns the least and the greatest moment in a span and the greatest shear either way. They
// stand at the ends of pieces or where the shear is nothing.
func (s span) moments() (least, most, shear float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for i := range s.pieces {
		p := &s.pieces[i]
		at := [3]float64{0, p.l, 0}
		if x := p.v / p.w; p.w != 0 && x > 0 && x < p.l {
			at[2] = x
		}
		for _, x := range at {
			m := p.momentAt(x)
			least, most = min(least, m), max(most, m)
			shear = max(shear, math.Abs(p.v-p.w*x))
		}
	}
	return least, most, shear
}

// drop returns the greatest deflection of a span, up or down, as a positive length. It stands at the
// ends of pieces or where the slope is nothing; between zeros of the moment the slope only rises or
// only falls, so each such zero is found between its neighbours. What stays under floor is not found exactly.
func (s span) drop(ei, floor float64) float64 {
	most := 0.0
	for i := range s.pieces {
		p := &s.pieces[i]
		ends := p.endDrop(ei)
		most = max(most, ends)
		if ends+p.sag(ei) < max(floor, most)*(1-1e-9) {
			continue
		}
		stops := p.stops()
		for k := 1; k < len(stops) && stops[k-1] < p.l; k++ {
			if x, ok := p.level(stops[k-1], stops[k], ei, max(floor, most)); ok {
				most = max(most, math.Abs(p.dropAt(x, ei)))
			}
		}
	}
	return most
}

// endDrop is the greater deflection of the two ends of the piece.
func (p *piece) endDrop(ei float64) float64 {
	return max(math.Abs(p.y), math.Abs(p.dropAt(p.l, ei)))
}

// sag is more than the piece strays anywhere from the line between its ends: as if its greatest moment, which is not
// more than this, bent all of it.
func (p *piece) sag(ei float64) float64 {
	m := max(math.Abs(p.m), math.Abs(p.momentAt(p.l))) + math.Abs(p.w)*p.l*p.l/8
	return m * p.l * p.l / 8 / ei
}

// stops returns the ends of the piece and between them where its moment is nothing, from left to right; what
// is over is the right end again.
func (p *piece) stops() [4]float64 {
	out, n := [4]float64{0, p.l, p.l, p.l}, 1
	stop := func(x float64) {
		if x > 0 && x < p.l {
			out[n] = x
			n++
		}
	}
	if p.w == 0 {
		if p.v != 0 {
			stop(-p.m / p.v)
		}
	} else if d := p.v*p.v + 2*p.w*p.m; d > 0 {
		r := math.Sqrt(d)
		stop(min((p.v-r)/p.w, (p.v+r)/p.w))
		stop(max((p.v-r)/p.w, (p.v+r)/p.w))
	}
	return out
}

// level returns where between a and b the slope is nothing, or a when it keeps its sign; false as soon as it
// is plain that the deflection there is no more than floor: from a it can grow by the slope at a at most.
func (p *piece) level(a, b, ei, floor float64) (float64, bool) {
	fa := p.slopeAt(a, ei)
	if fa*p.slopeAt(b, ei) > 0 {
		return a, true
	}
	up, end := fa > 0, 1e-12*(b-a)
	x := (a + b) / 2
	for range 80 {
		if math.Abs(p.dropAt(a, ei))+math.Abs(fa)*(b-a) < floor*(1-1e-9) {
			return a, false
		}
		f := p.slopeAt(x, ei)
		if (f > 0) == up {
			a, fa = x, f
		} else {
			b = x
		}
		next := x + f*ei/p.momentAt(x) // Newton's, where it stays between
		if !(next > a && next < b) {
			next = (a + b) / 2
		}
		if math.Abs(next-x) <= end {
			return next, true
		}
		x = next
	}
	return x, true
}
