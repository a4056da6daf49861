// Package kept holds what was lately worked out, by what it was worked out from.
//
//	var rows kept.Store[[]float64]
//	x := rows.Get(same.Of(rules), rules.search)
package kept

import (
	"slices"
	"sync"

	"standclear/detail/same"
)

// Most is how many things a Store holds: what the inner axes of a sweep come back to.
const Most = 64

// Store holds the things last asked for; the zero value holds none. It may be used by several goroutines at once.
// What it returns is shared and must not be changed.
type Store[T any] struct {
	mu   sync.Mutex
	by   map[same.Sum]T
	last []same.Sum // the one asked for last at the end
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
	if s.by == nil {
		s.by = map[same.Sum]T{}
	}
	if _, ok := s.by[key]; !ok {
		s.last = append(s.last, key)
	}
	s.by[key] = v
	if len(s.last) > Most {
		delete(s.by, s.last[0])
		s.last = slices.Delete(s.last, 0, 1)
	}
}
