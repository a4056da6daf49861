package strength

// measured is a beam under an action with the extremes of each span.
type measured struct {
	bent
	most []extremes
	ends [][2]float64 // shear left and right of each support
}

// extremes are the least and the greatest moment in a span, the greatest shear, and what no deflection is greater than.
type extremes struct {
	least, most, shear, drop float64
	exact                    bool // drop is reached
}

// solve works the beam out in the memory of what was measured before.
func (m *measured) solve(b beam, a action) {
	b.solveIn(&m.bent, a)
	m.measure()
}

// measure finds the extremes of what was solved.
func (m *measured) measure() {
	m.ends = sized(m.ends, len(m.bent.at))
	for i := range m.ends {
		_, left := m.bent.spans[i].end()
		m.ends[i] = [2]float64{left, m.bent.spans[i+1].startShear()}
	}
	m.most = sized(m.most, len(m.bent.spans))
	for i, s := range m.bent.spans {
		e := &m.most[i]
		e.least, e.most, e.shear = s.moments()
		e.drop, e.exact = 0, false
		for j := range s.pieces {
			e.drop = max(e.drop, s.pieces[j].endDrop(m.ei)+s.pieces[j].sag(m.ei))
		}
	}
}

// sum is a beam under several actions at once, each so many times, none of them less than nothing. They all load the
// beam at the same places. Its spans are added up one by one when they are asked for.
type sum struct {
	of    [3]*measured
	times [3]float64
	work  *[]piece // memory for a span
}

func (s *sum) ei() float64          { return s.of[0].ei }
func (s *sum) spans() int           { return len(s.of[0].bent.spans) }
func (s *sum) length(i int) float64 { return s.of[0].bent.spans[i].length }

// support is what happens at a support: reaction, moment, and the shear on either side.
type support struct{ reaction, moment, left, right float64 }

// at returns what happens at support i.
func (s *sum) at(i int) (h support) {
	for k, m := range s.of {
		f := s.times[k]
		h.reaction += f * m.reaction[i]
		h.moment += f * m.moment[i]
		h.left += f * m.ends[i][0]
		h.right += f * m.ends[i][1]
	}
	return h
}

// beyond returns what moments and shear of span i cannot pass: as if those of all actions stood at one place.
func (s *sum) beyond(i int) (least, most, shear float64) {
	for k, m := range s.of {
		f, one := s.times[k], &m.most[i]
		least += f * one.least
		most += f * one.most
		shear += f * one.shear
	}
	return least, most, shear
}

// dropsLess reports whether span i plainly deflects less than a floor: by what no deflection of the actions passes,
// and where that is not enough by their greatest deflections, found once.
func (s *sum) dropsLess(i int, floor float64) bool {
	return s.dropBeyond(i) < floor || floor > 0 && s.exactly(i).dropBeyond(i) < floor
}

// dropBeyond returns what no deflection of span i can pass.
func (s *sum) dropBeyond(i int) (drop float64) {
	for k, m := range s.of {
		drop += s.times[k] * m.most[i].drop
	}
	return drop
}

// exactly finds the greatest deflection of span i under each action that counts, and notes it for the next who asks.
func (s *sum) exactly(i int) *sum {
	for k, m := range s.of {
		if e := &m.most[i]; s.times[k] > 0 && !e.exact {
			e.drop, e.exact = m.bent.spans[i].drop(m.ei, 0), true
		}
	}
	return s
}

// span adds span i up; it holds until the next one is asked for.
func (s *sum) span(i int) span {
	first := s.of[0].bent.spans[i]
	pieces := sized(*s.work, len(first.pieces))
	for j := range pieces {
		p := piece{x: first.pieces[j].x, l: first.pieces[j].l}
		for k, m := range s.of {
			f, q := s.times[k], &m.bent.spans[i].pieces[j]
			p.w += f * q.w
			p.v += f * q.v
			p.m += f * q.m
			p.slope += f * q.slope
			p.y += f * q.y
		}
		pieces[j] = p
	}
	*s.work = pieces
	return span{first.x0, first.length, pieces}
}
