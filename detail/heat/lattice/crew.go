package lattice

import (
	"runtime"
	"sync"
)

// Crew shares the rows of a lattice among threads. What each row computes never depends on how the
// rows are shared, and sums are taken in a fixed order, so results do not depend on the crew's size.
type Crew struct {
	Threads int // 0: as many as the program may use
}

// small is the number of cells below which sharing the work costs more than it saves.
const small = 1 << 13

// rows is a run of rows: from first up to, not including, end. Row r is j = r % Y, k = r / Y.
type rows struct{ first, end int }

// share calls do with runs that together cover all rows of s, at the same time.
func (c Crew) share(s Shape, do func(rows)) {
	n, threads := s.Y*s.Z, c.Threads
	if threads <= 0 {
		threads = runtime.GOMAXPROCS(0)
	}
	if threads == 1 || s.Cells() < small || n < 2 {
		do(rows{0, n})
		return
	}
	parts := min(threads, n)
	var wg sync.WaitGroup
	for p := 1; p < parts; p++ {
		wg.Go(func() { do(rows{n * p / parts, n * (p + 1) / parts}) })
	}
	do(rows{0, n / parts})
	wg.Wait()
}

// sum adds up what each row returns: rows within a bundle first, then the bundles in order.
func (c Crew) sum(s Shape, row func(j, k int) float64) float64 {
	part := make([]float64, s.Y*s.Z)
	c.share(s, func(rs rows) {
		for r := rs.first; r < rs.end; r++ {
			part[r] = row(r%s.Y, r/s.Y)
		}
	})
	var total float64
	for _, v := range part {
		total += v
	}
	return total
}

// Each calls row for every row j, k of s, several at a time.
func (c Crew) Each(s Shape, row func(j, k int)) {
	c.share(s, func(rs rows) {
		for r := rs.first; r < rs.end; r++ {
			row(r%s.Y, r/s.Y)
		}
	})
}
