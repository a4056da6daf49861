package lattice

import (
	"slices"
	"sync"
)

// level is one lattice of the multigrid with the folds that lead to the next.
type level struct {
	sys   *System
	inv   []float32 // one over the sum of links and loss; 0 where the cell takes no part
	zeros []float32
	b, x  []float32 // right side, answer

	folds []*fold     // along the axes that are folded
	mid   [][]float32 // between the folds
}

// newLevel returns the level of a system, with how strongly the planes of each axis are joined to their
// neighbours: the mean over their cells of the links along the axis over all links, 0 to 1.
func newLevel(c Crew, s *System) (*level, [3][]float64) {
	n := s.Len()
	l := &level{sys: s, inv: make([]float32, n), zeros: make([]float32, s.X), b: make([]float32, n), x: make([]float32, n)}
	total := newTally(s.Shape)
	var lock sync.Mutex
	c.share(s.Shape, func(rs rows) {
		mine := newTally(s.Shape)
		for r := rs.first; r < rs.end; r++ {
			l.invert(r%s.Y, r/s.Y, mine)
		}
		lock.Lock()
		defer lock.Unlock()
		total.add(mine)
	})
	return l, total.means()
}

// tally sums the strength of planes in whole numbers, so that the order of the sum does not matter.
type tally struct{ strength, cells [3][]int64 }

const tallyUnit = 1 << 16

func newTally(s Shape) *tally {
	t := &tally{}
	for a := range t.cells {
		n := *s.size(axis(a))
		t.strength[a], t.cells[a] = make([]int64, n), make([]int64, n)
	}
	return t
}

func (t *tally) add(o *tally) {
	for a := range t.cells {
		for i := range t.cells[a] {
			t.strength[a][i] += o.strength[a][i]
			t.cells[a][i] += o.cells[a][i]
		}
	}
}

func (t *tally) means() (m [3][]float64) {
	for a := range m {
		m[a] = make([]float64, len(t.cells[a]))
		for i, n := range t.cells[a] {
			if n > 0 {
				m[a][i] = float64(t.strength[a][i]) / tallyUnit / float64(n)
			}
		}
	}
	return m
}

// invert fills in one row of inv and counts its cells in t.
func (l *level) invert(j, k int, t *tally) {
	s := l.sys
	a := s.around(j, k, l.zeros)
	inv, g := s.slice(l.inv, j, k), s.slice(s.Loss, j, k)
	var y, z float32
	cells := int64(0)
	for i := range inv {
		cx, cy, cz := a.east[i]+a.east[i+1], a.south[i]+a.north[i], a.down[i]+a.up[i]
		d := cx + cy + cz + g[i]
		if d == 0 {
			continue
		}
		inv[i] = 1 / d
		y += cy / d
		z += cz / d
		cells++
		t.strength[0][i] += int64(cx / d * tallyUnit)
		t.cells[0][i]++
	}
	t.strength[1][j] += int64(y * tallyUnit)
	t.strength[2][k] += int64(z * tallyUnit)
	t.cells[1][j] += cells
	t.cells[2][k] += cells
}

// chosen returns the planes to take out: those at least as strong as least, none beside another,
// never the first or last.
func chosen(strength []float64, least float64) (gone []bool, count int) {
	gone = make([]bool, len(strength))
	for p := 1; p < len(strength)-1; p++ {
		if !gone[p-1] && strength[p] >= least {
			gone[p] = true
			count++
		}
	}
	return gone, count
}

// choose returns the planes to take out along each axis: the strongest that thin the lattice out by a
// factor of worthwhile, in the end any.
func choose(strength [3][]float64, worthwhile float64) (gone [3][]bool) {
	for least := strongest; ; least *= 0.8 {
		if least < strongest/100 {
			least = 0
		}
		thinner := 1.0
		for a := range strength {
			var n int
			gone[a], n = chosen(strength[a], least)
			thinner *= float64(len(gone[a])) / float64(len(gone[a])-n)
		}
		if thinner >= worthwhile || least == 0 {
			return gone
		}
	}
}

// fold takes planes out of the level, to a factor of worthwhile when it can, and returns the
// system that stays; nil when nothing can be taken out.
func (l *level) fold(c Crew, strength [3][]float64, worthwhile float64) *System {
	s := l.sys
	for a, gone := range choose(strength, worthwhile) {
		if !slices.Contains(gone, true) {
			continue
		}
		f := newFold(axis(a), s.Shape, gone)
		f.weigh(c, s)
		s = f.reduce(c, s)
		l.folds = append(l.folds, f)
		l.mid = append(l.mid, make([]float32, s.Len()))
	}
	if len(l.folds) == 0 {
		return nil
	}
	l.mid = l.mid[:len(l.mid)-1] // the last one is the right side of the next level
	return s
}
