// Package cutting finds how few sticks a list of pieces can be cut from, and says when it is sure.
//
// Lengths are whole numbers of any small unit, all the same. A stick loses Trim at one end and a Kerf
// between pieces.
//
//	p := cutting.Solve(cutting.Job{Stock: 240, Pieces: []cutting.Piece{{100, 3}}})
//	fmt.Println(len(p.Sticks), p.Exact) // 2 true
package cutting

import "slices"

// Piece is a length wanted Count times.
type Piece struct {
	Length int64
	Count  int
}

// Job is what is to be cut.
type Job struct {
	Pieces     []Piece
	Stock      int64   // length of one stick
	Kerf, Trim int64   // lost at each cut, and once a stick
	Begun      []int64 // room left on sticks bought for other pieces, the kerf after those pieces taken off; they are used up first
	Effort     int     // fillings tried before the search gives up; 0 is DefaultEffort
}

// DefaultEffort keeps a search well under a tenth of a second.
const DefaultEffort = 200000

// Plan says what is cut from each stick.
type Plan struct {
	Sticks [][]int // for each stick, the begun ones first, how many of each piece of the job; begun ones may be empty
	New    int     // sticks of the stock length among them
	Least  int     // no plan needs fewer new sticks than this
	Exact  bool    // New is proved to be the fewest
	Unfit  []int   // pieces, by index, that are longer than a stick holds: not cut
}

// Solve cuts the pieces from the fewest new sticks, by a search over the ways to fill one stick after
// another: each begun stick as full as it gets, each new one with the longest piece left in it. A state
// met before is not searched again, and a bound on what is left cuts the rest. When Effort runs out the
// plan is the best found and Least says what is proved.
func Solve(j Job) Plan {
	s := newSearch(j)
	s.greedy()
	left := slices.Clone(s.count)
	s.proved = s.bound(left, 0)
	s.fill(left, 0, 0)
	least := s.proved
	if !s.stopped {
		least = s.best
	}
	p := Plan{New: s.best, Least: least, Exact: least == s.best, Unfit: s.unfit}
	for _, row := range s.plan {
		out := make([]int, len(j.Pieces))
		for k, n := range row {
			out[s.index[k]] += n
		}
		p.Sticks = append(p.Sticks, out)
	}
	return p
}

// search holds the pieces by weight, heaviest first: the weight of a piece is its length and one kerf,
// the room of a stick its length less the trim and plus one kerf.
type search struct {
	weight  []int64
	count   []int
	index   []int // of the piece in the job
	unfit   []int
	begun   []int64
	room    int64
	best    int
	plan    [][]int
	rows    [][]int // of the branch being searched
	seen    map[string]int
	effort  int
	proved  int
	stopped bool
}

func newSearch(j Job) *search {
	s := &search{begun: j.Begun, room: j.Stock - j.Trim + j.Kerf, seen: map[string]int{}, effort: j.Effort}
	if s.effort == 0 {
		s.effort = DefaultEffort
	}
	for i, p := range j.Pieces {
		switch {
		case p.Count <= 0:
		case p.Length <= 0 || p.Length+j.Kerf > s.room:
			s.unfit = append(s.unfit, i)
		default:
			s.index = append(s.index, i)
		}
	}
	slices.SortStableFunc(s.index, func(a, b int) int { return int(max(-1, min(1, j.Pieces[b].Length-j.Pieces[a].Length))) })
	for _, i := range s.index {
		s.weight, s.count = append(s.weight, j.Pieces[i].Length+j.Kerf), append(s.count, j.Pieces[i].Count)
	}
	return s
}

// greedy puts the longest pieces first, each into the first stick with room: a plan to begin from.
func (s *search) greedy() {
	room := slices.Clone(s.begun)
	rows := make([][]int, len(room))
	for i := range rows {
		rows[i] = make([]int, len(s.weight))
	}
	for k, w := range s.weight {
		for range s.count[k] {
			i := slices.IndexFunc(room, func(r int64) bool { return r >= w })
			if i < 0 {
				i = len(room)
				room, rows = append(room, s.room), append(rows, make([]int, len(s.weight)))
			}
			room[i] -= w
			rows[i][k]++
		}
	}
	s.plan, s.best = rows, len(rows)-len(s.begun)
}

// fill searches on from what is left after n sticks, used of them new.
func (s *search) fill(left []int, n, used int) {
	if s.stopped || used+s.bound(left, n) >= s.best {
		return
	}
	first := slices.IndexFunc(left, func(c int) bool { return c > 0 })
	if first < 0 {
		s.best, s.plan = used, slices.Clone(s.rows)
		for len(s.plan) < len(s.begun) {
			s.plan = append(s.plan, make([]int, len(left)))
		}
		return
	}
	if was, ok := s.seen[key(left, n, len(s.begun))]; ok && was <= used {
		return
	}
	s.seen[key(left, n, len(s.begun))] = used
	room, fresh := s.room, 1
	if n < len(s.begun) {
		room, fresh, first = s.begun[n], 0, -1
	}
	s.fillings(left, make([]int, len(left)), 0, room, first, func(row []int) {
		rest := slices.Clone(left)
		for k := range rest {
			rest[k] -= row[k]
		}
		s.rows = append(s.rows, slices.Clone(row))
		s.fill(rest, n+1, used+fresh)
		s.rows = s.rows[:len(s.rows)-1]
	})
}

// fillings visits every way to fill room with what is left so that nothing more goes in, at least one of
// piece must in it (-1: none), the longest pieces first.
func (s *search) fillings(left, row []int, k int, room int64, must int, visit func([]int)) {
	if s.stopped {
		return
	}
	if k == len(left) {
		if s.effort--; s.effort < 0 {
			s.stopped = true
			return
		}
		for i, w := range s.weight {
			if left[i] > row[i] && w <= room {
				return // not full: a fuller one is never worse
			}
		}
		visit(row)
		return
	}
	least := 0
	if k == must {
		least = 1
	}
	for n := int(min(int64(left[k]), room/s.weight[k])); n >= least; n-- {
		row[k] = n
		s.fillings(left, row, k+1, room-int64(n)*s.weight[k], must, visit)
	}
	row[k] = 0
}

// key names what is left at a stage: which begun stick comes next, or that all are used.
func key(left []int, n, begun int) string {
	b := []byte{byte(min(n, begun)), byte(min(n, begun) >> 8)}
	for _, c := range left {
		b = append(b, byte(c), byte(c>>8), byte(c>>16))
	}
	return string(b)
}
