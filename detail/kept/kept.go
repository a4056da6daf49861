// Package kept holds what was lately worked out, by what it was worked out from.
//
//	rows := kept.New(1<<20, func(x []float64) int { return 8 * len(x) })
//	x := rows.Get(same.Of(rules), rules.search)
package kept

import (
	"slices"
	"sync"

	"standclear/detail/same"
)

// Store holds the things last asked for, as many as it has room for. It may be used by several goroutines at once.
// What it returns is shared and must not be changed.
type Store[T any] struct {
	room int
	size func(T) int

	mu    sync.Mutex
	by    map[same.Sum]T
	last  []same.Sum // the one asked for last at the end
	taken int
}

// New returns a Store of things that together take up to so many bytes, by size of one, which need be no more than a
// fair guess. One thing is held, however large it is.
func New[T any](bytes int, size func(T) int) *Store[T] {
	return &Store[T]{room: bytes, size: size, by: map[same.Sum]T{}}
}

// Get returns the thing of a key, made if it is not there. Two who ask at the same time may both make it.
func (s *Store[T]) Get(key same.Sum, make func() T) T {
	if v, ok := s.find(key); ok {
		return v
	}
	v := make()
	s.put(key, v)
	return v
}

func (s *Store[T]) find(key same.Sum) (v T, ok bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if v, ok = s.by[key]; ok {
		i := slices.Index(s.last, key)
		s.last = append(slices.Delete(s.last, i, i+1), key)
	}
	return v, ok
}

func (s *Store[T]) put(key same.Sum, v T) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if _, ok := s.by[key]; ok {
		return // by someone who asked at the same time
	}
	s.by[key], s.last = v, append(s.last, key)
	for s.taken += s.size(v); s.taken > s.room && len(s.last) > 1; {
		s.taken -= s.size(s.by[s.last[0]])
		delete(s.by, s.last[0])
		s.last = slices.Delete(s.last, 0, 1)
	}
}
